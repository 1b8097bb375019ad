#include "base/format.h"

#include <math.h>
#include <string.h>

/* In which unit, and with how many decimals; SIGNIFICANT: three significant digits instead. */
#define SIGNIFICANT (-1)

typedef struct {
    const char *unit;
    int decimals;
} habit;

static const habit habits[DIM_COUNT][2] = {
    [DIM_LENGTH] = {{"in", 1}, {"mm", 0}},
    [DIM_AREA] = {{"ft2", SIGNIFICANT}, {"m2", SIGNIFICANT}},
    [DIM_VOLUME] = {{"gal", SIGNIFICANT}, {"L", SIGNIFICANT}},
    [DIM_MASS] = {{"lb", SIGNIFICANT}, {"kg", SIGNIFICANT}},
    [DIM_TIME] = {{"s", 0}, {"s", 0}},
    [DIM_TEMPERATURE] = {{"degF", 1}, {"degC", 1}},
    [DIM_DIFFERENCE] = {{"degF", 1}, {"K", 1}},
    [DIM_GAUGE_PRESSURE] = {{"psig", SIGNIFICANT}, {"barg", SIGNIFICANT}},
    [DIM_PRESSURE] = {{"inHg", 2}, {"kPa", 1}},
    [DIM_POWER] = {{"kBtu/h", SIGNIFICANT}, {"kW", SIGNIFICANT}},
    [DIM_ENERGY] = {{"kBtu", SIGNIFICANT}, {"kWh", SIGNIFICANT}},
    [DIM_CONCENTRATION] = {{"lb/gal", SIGNIFICANT}, {"kg/m3", SIGNIFICANT}},
    [DIM_VOLUME_FLOW] = {{"gal/h", SIGNIFICANT}, {"L/min", SIGNIFICANT}},
    [DIM_MASS_FLOW] = {{"lb/h", SIGNIFICANT}, {"kg/h", SIGNIFICANT}},
    [DIM_COEFFICIENT] = {{"Btu/hft2F", SIGNIFICANT}, {"W/m2K", SIGNIFICANT}},
    [DIM_VOLUME_PER_AREA] = {{"gal/1000ft2", SIGNIFICANT}, {"mL/m2", SIGNIFICANT}},
    [DIM_SPEED] = {{"ft/min", SIGNIFICANT}, {"m/s", SIGNIFICANT}},
    [DIM_FLUX] = {{"W/in2", SIGNIFICANT}, {"kW/m2", SIGNIFICANT}},
    [DIM_STRESS] = {{"ksi", SIGNIFICANT}, {"MPa", SIGNIFICANT}},
    [DIM_FRACTION] = {{"%", 1}, {"%", 1}},
};

/* Decimals that leave three significant digits, at most three decimals: what is smaller is nothing, "0". */
static int significant_decimals(double x)
{
    double size = fabs(x);
    return size >= 99.95 || size < 0.0005 ? 0 : size >= 9.995 ? 1 : size >= 0.9995 ? 2 : 3;
}

/* Fixed decimals, and never "-0.0". */
static formatted_text fixed(double x, int decimals)
{
    formatted_text t;
    if (fabs(x) < 0.5 * pow(10, -decimals))
        x = 0;
    snprintf(t.text, sizeof t.text, "%.*f", decimals, x);
    return t;
}

static formatted_text with_unit(formatted_text value, const char *spelling)
{
    formatted_text t;
    snprintf(t.text, sizeof t.text, "%.30s %.12s", value.text, spelling);
    return t;
}

static bool is_there(double x)
{
    return isfinite(x) && fabs(x) < 1e15;
}

static formatted_text number(const habit *h, double x, int more)
{
    int decimals = h->decimals == SIGNIFICANT ? significant_decimals(x) : h->decimals + more;
    return is_there(x) ? fixed(x, decimals) : (formatted_text){"-"};
}

formatted_text format_number(unit_system s, unit_dimension d, double si)
{
    const habit *h = &habits[d][s];
    return number(h, unit_from_si(d, h->unit, si), 0);
}

const char *format_unit(unit_system s, unit_dimension d)
{
    return habits[d][s].unit;
}

const char *format_unit_for(unit_system s, unit_dimension d, double si)
{
    const double long_m = 30;
    return d != DIM_LENGTH || fabs(si) < long_m ? format_unit(s, d) : s == UNITS_US ? "ft" : "m";
}

/* Below one unit a length gets one more decimal: a layer of water is a few hundredths of an inch. */
static int more_decimals(const habit *h, unit_dimension d, double x)
{
    return d == DIM_LENGTH && fabs(x) < 0.95 && fabs(x) >= 0.5 * pow(10, -h->decimals - 1) ? 1 : 0;
}

formatted_text format_quantity(unit_system s, unit_dimension d, double si)
{
    const habit *h = &habits[d][s];
    double x = unit_from_si(d, h->unit, si);
    if (d == DIM_TIME)
        return format_duration(si);
    return is_there(x) ? with_unit(number(h, x, more_decimals(h, d, x)), h->unit) : (formatted_text){"-"};
}

formatted_text format_exact(unit_system s, unit_dimension d, double si)
{
    formatted_text t;
    if (d == DIM_TIME)
        return format_duration(si);
    const char *spelling = format_unit_for(s, d, si);
    double x = unit_from_si(d, spelling, si);
    if (!is_there(x))
        return (formatted_text){"-"};
    bool large = fabs(x) >= 9999.5 && fabs(x) < 1e9; /* no power of ten where the digits fit */
    snprintf(t.text, sizeof t.text, large ? "%.0f" : "%.4g", fabs(x) < 1e-9 ? 0 : x);
    return with_unit(t, spelling);
}

formatted_text format_chance(double share)
{
    formatted_text t;
    if (isnan(share))
        return (formatted_text){"-"};
    snprintf(t.text, sizeof t.text, "%.0f %%", 100 * share);
    if (share > 0 && share < 0.005)
        return (formatted_text){"<1 %"};
    if (share < 1 && share >= 0.995)
        return (formatted_text){">99 %"};
    return t;
}

formatted_text format_odds(const boil_odds *o)
{
    formatted_text t;
    snprintf(t.text, sizeof t.text, "%.10s to %.10s", format_chance(o->low).text, format_chance(o->high).text);
    return t;
}

formatted_text format_count(size_t n, const char *one, const char *many)
{
    formatted_text t;
    snprintf(t.text, sizeof t.text, "%zu %.24s", n, n == 1 ? one : many);
    return t;
}

/* One decimal unless it is a whole number. */
static formatted_text few(double x)
{
    return fixed(x, fabs(x - round(x)) < 0.05 ? 0 : 1);
}

formatted_text format_duration(double s)
{
    if (!is_there(s))
        return (formatted_text){"-"};
    if (fabs(s) < 99.5)
        return with_unit(fixed(s, 0), "s");
    if (fabs(s) < 99.5 * 60)
        return with_unit(few(unit_from_si(DIM_TIME, "min", s)), "min");
    return with_unit(few(unit_from_si(DIM_TIME, "h", s)), "h");
}

/* Cut to the minute, or with its seconds. */
static formatted_text clock_of(double whole, bool seconds)
{
    formatted_text out;
    double day = floor(whole / 86400), of_day = whole - 86400 * day;
    if (!is_there(whole))
        return (formatted_text){"-"};
    snprintf(out.text, sizeof out.text, "%.0f:%02.0f", floor(of_day / 3600), floor(fmod(of_day, 3600) / 60));
    if (seconds)
        TEXT_ADD(out.text, ":%02.0f", fmod(of_day, 60));
    if (day > 0)
        TEXT_ADD(out.text, "+%.0fd", day);
    return out;
}

formatted_text format_clock(double start_s, double t)
{
    return clock_of(60 * floor((start_s + t) / 60 + 1e-9), false); /* an action at 7:05 is not at 7:04 for a rounding error */
}

formatted_text format_clock_seconds(double start_s, double t)
{
    return clock_of(floor(start_s + t + 1e-6), true);
}

formatted_text format_clock_exact(double start_s, double t)
{
    double whole = floor(start_s + t + 1e-6);
    return clock_of(whole, fmod(whole, 60) > 0);
}

bool format_same(unit_dimension d, double a, double b)
{
    static const double apart[DIM_COUNT] = {[DIM_TIME] = 1,      [DIM_TEMPERATURE] = 0.05, [DIM_DIFFERENCE] = 0.05,
                                            [DIM_LENGTH] = 1e-3, [DIM_FRACTION] = 1e-3,    [DIM_MASS] = 0.005};
    double size = fmax(fabs(a), fabs(b)), of_it = apart[d] == 0 ? 0.005 : d == DIM_MASS ? 0.001 : 0;
    if (!is_there(a) || !is_there(b))
        return is_there(a) == is_there(b);
    return fabs(a - b) <= fmax(apart[d], of_it * size);
}

formatted_text format_bare(unit_system s, unit_dimension d, double si)
{
    formatted_text t = format_number(s, d, si);
    char *point = strchr(t.text, '.');
    if (point != NULL && strspn(point + 1, "0") == strlen(point + 1))
        *point = '\0';
    return t;
}

#define DECIMALS_MOST 6 /* what then still looks alike is */

typedef struct {
    const char *before, *behind; /* of the number: "x", "degF" */
    double value, limit;
    int decimals;
} alike;

static alike numbers(unit_system s, unit_dimension d, double value, double limit)
{
    if (d == DIM_COUNT)
        return (alike){"x", "", value, limit, fmax(fabs(value), fabs(limit)) < 9.95 ? 1 : 0};
    if (d == DIM_TIME) {
        double longest = fmax(fabs(value), fabs(limit));
        const char *in = longest < 99.5 ? "s" : longest < 99.5 * 60 ? "min" : "h";
        return (alike){"", in, unit_from_si(d, in, value), unit_from_si(d, in, limit), longest < 99.5 ? 0 : 1};
    }
    const habit *h = &habits[d][s];
    double x = unit_from_si(d, h->unit, value), y = unit_from_si(d, h->unit, limit);
    double large = fmax(fabs(x), fabs(y)), small = fmin(fabs(x), fabs(y));
    if (h->decimals != SIGNIFICANT)
        return (alike){"", h->unit, x, y, h->decimals + more_decimals(h, d, large)};
    int decimals = significant_decimals(large), first = small > 0 ? (int)ceil(-log10(small)) : 0; /* of the smaller's digits */
    return (alike){"", h->unit, x, y, first > decimals && first < DECIMALS_MOST ? first : decimals};
}

static formatted_text minutes(double s, int decimals)
{
    formatted_text t;
    double whole = floor(s / 60);
    snprintf(t.text, sizeof t.text, "%.0f min %.*f s", whole, decimals, s - 60 * whole);
    return t;
}

/* Two times that look alike in minutes. */
static format_pair in_minutes(double value, double limit)
{
    int decimals = 1;
    format_pair p;
    do {
        p = (format_pair){minutes(value, decimals), minutes(limit, decimals)};
    } while (strcmp(p.value.text, p.limit.text) == 0 && value != limit && ++decimals < DECIMALS_MOST);
    return p;
}

format_pair format_value_and_limit(unit_system s, unit_dimension d, double value, double limit)
{
    format_pair p = {{"-"}, {"-"}};
    if (!is_there(value) || !is_there(limit))
        return p;
    alike a = numbers(s, d, value, limit);
    formatted_text x, y;
    for (;; a.decimals++) {
        x = fixed(a.value, a.decimals);
        y = fixed(a.limit, a.decimals);
        if (strcmp(x.text, y.text) != 0 || value == limit || a.decimals >= DECIMALS_MOST)
            break;
        if (d == DIM_TIME && strcmp(a.behind, "min") == 0)
            return in_minutes(value, limit);
    }
    snprintf(p.value.text, sizeof p.value.text, "%s%.30s%s%s", a.before, x.text, *a.behind != '\0' ? " " : "", a.behind);
    snprintf(p.limit.text, sizeof p.limit.text, "%s%.30s", a.before, y.text);
    return p;
}

formatted_text format_ratio(double ratio)
{
    formatted_text t;
    if (!is_there(ratio))
        return (formatted_text){"-"};
    snprintf(t.text, sizeof t.text, "x%.28s", fixed(ratio, fabs(ratio) < 9.95 ? 1 : 0).text);
    return t;
}
