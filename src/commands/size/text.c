#include "commands/size/answer.h"

#include <math.h>

#include "base/constants.h"
#include "describe/listing.h"
#include "describe/report.h"

#define LOADS_LISTED ((size_t)24)

typedef struct {
    const size_answer *a;
    unit_system system;
    FILE *to;
} writing;

/* Positive: to so many digits, never less, or never more, than the value. */
static formatted_text rounded(double x, int digits, bool up)
{
    formatted_text t;
    int decimals = digits - 1 - (int)floor(log10(x));
    double scale = pow(10, decimals), whole = up ? ceil(x * scale - 1e-6) : floor(x * scale + 1e-6);
    snprintf(t.text, sizeof t.text, "%.*f", decimals > 0 ? decimals : 0, whole / scale);
    return t;
}

static bool is_shown(double x)
{
    return isfinite(x) && x > 0;
}

formatted_text size_number_up(unit_system s, unit_dimension d, double si)
{
    double x = unit_from_si(d, format_unit(s, d), si);
    return is_shown(x) ? rounded(x, 4, true) : (formatted_text){"-"};
}

formatted_text size_shown_down(unit_system s, unit_dimension d, double si)
{
    formatted_text t = {"-"};
    double x = unit_from_si(d, format_unit(s, d), si);
    if (is_shown(x))
        snprintf(t.text, sizeof t.text, "%.24s %.12s", rounded(x, 3, false).text, format_unit(s, d));
    return t;
}

formatted_text size_shown_up(unit_system s, unit_dimension d, double si)
{
    formatted_text t;
    snprintf(t.text, sizeof t.text, "%.24s %.12s", size_number_up(s, d, si).text, format_unit(s, d));
    return t;
}

static formatted_text heat_words(const writing *w, double heat_W)
{
    formatted_text t;
    unit_system other = w->system == UNITS_US ? UNITS_SI : UNITS_US;
    snprintf(t.text, sizeof t.text, "%.20s (%.20s)", size_shown_up(w->system, DIM_POWER, heat_W).text,
             size_shown_up(other, DIM_POWER, heat_W).text);
    return t;
}

static void verdict_shut(const writing *w)
{
    const size_answer *a = w->a;
    formatted_text limit = format_duration(a->size->limit_s);
    const boil_holding *at = &a->heats.at;
    if (a->heats.found == BOIL_WINDOW_FOUND && !(at->breaks & BOIL_BREAKS_FREEBOARD))
        report_verdict(w->to,
                       "No heat does both: it takes %s to the tank to bring every boil back within %s, and with that the "
                       "water does not hold the strength",
                       heat_words(w, a->heats.heat_W).text, limit.text);
    else if (a->heats.found == BOIL_WINDOW_FOUND && at->freeboard_min_m > 0)
        report_verdict(w->to,
                       "No heat does both: it takes %s to the tank to bring every boil back within %s, and that leaves %s "
                       "of freeboard, not %s",
                       heat_words(w, a->heats.heat_W).text, limit.text,
                       size_shown_down(w->system, DIM_LENGTH, at->freeboard_min_m).text,
                       SHOWN(w->system, LENGTH, a->size->scenario->plant.limits.freeboard_m));
    else if (a->heats.found == BOIL_WINDOW_FOUND)
        report_verdict(w->to,
                       "No heat does both: it takes %s to the tank to bring every boil back within %s, and with that it "
                       "boils over",
                       heat_words(w, a->heats.heat_W).text, limit.text);
    else if (a->heats.found == BOIL_WINDOW_BEYOND)
        report_verdict(w->to, "It needs water, not heat: before any heat has the boil back within %s it boils too strong",
                       limit.text);
    else
        report_verdict(w->to, "No heat brings the boil back within %s after every load", limit.text);
}

static void verdict_open(const writing *w)
{
    const size_answer *a = w->a;
    const boil_window_end *e = &a->heats.leaves_possible;
    char over[120] = "";
    if (!isnan(a->heats.strength_W))
        TEXT_ADD(over, "; above %s its water does not hold the strength",
                 size_shown_down(w->system, DIM_POWER, a->heats.strength_W).text);
    else if (e->rim == BOIL_RIM_AT)
        TEXT_ADD(over, "; above %s too little freeboard may be left", size_shown_down(w->system, DIM_POWER, e->heat_W).text);
    report_verdict(w->to, "%s to the tank bring every boil back within %s%s", heat_words(w, a->heats.heat_W).text,
                   format_duration(a->size->limit_s).text, over);
}

static void quantity_line(const writing *w, const char *name, unit_dimension d, double si, const char *note)
{
    listing_both(w->to, name, format_quantity(UNITS_US, d, si).text, format_quantity(UNITS_SI, d, si).text, note);
}

static void up_line(const writing *w, const char *name, double heat_W, const char *note)
{
    listing_both(w->to, name, size_shown_up(UNITS_US, DIM_POWER, heat_W).text, size_shown_up(UNITS_SI, DIM_POWER, heat_W).text,
                 note);
}

static void per_volume_line(const writing *w)
{
    const size_answer *a = w->a;
    formatted_text us, si;
    snprintf(us.text, sizeof us.text, "%.3g kBtu/h",
             unit_from_si(DIM_POWER, "kBtu/h", a->heats.heat_W) / unit_from_si(DIM_VOLUME, "gal", a->heats.calm.volume_m3));
    snprintf(si.text, sizeof si.text, "%.3g W", a->heats.heat_W / unit_from_si(DIM_VOLUME, "L", a->heats.calm.volume_m3));
    listing_both(w->to, " per gal, per L", us.text, si.text, "of bath");
}

static void steam_line(const writing *w, const char *name, double m3_s, const char *note)
{
    formatted_text us, si;
    snprintf(us.text, sizeof us.text, "%.0f cfm", unit_from_si(DIM_VOLUME, "ft3", m3_s * 60));
    snprintf(si.text, sizeof si.text, "%.0f m3/h", m3_s * 3600);
    listing_both(w->to, name, us.text, si.text, note);
}

/* Of the scenario's own heater. */
static const char *own_words(const boil_heater_window *h)
{
    if (h->own_W < h->heat_W)
        return "too little";
    if (h->own_W > h->strength_W)
        return "its water does not hold the strength";
    return size_is_beyond(&h->leaves_possible, h->own_W) ? "enough, but may leave too little freeboard" : "enough";
}

static void heat(const writing *w)
{
    const size_answer *a = w->a;
    const boil_heater *h = &a->size->scenario->plant.heater;
    char note[60];
    fputs("\nHeat\n", w->to);
    up_line(w, "to the tank", a->heats.heat_W, "the smallest that does");
    per_volume_line(w);
    if (h->source != BOIL_HEAT_STEAM) {
        snprintf(note, sizeof note, "at %.4g %%", 100 * h->efficiency);
        up_line(w, h->source == BOIL_HEAT_GAS ? "fuel" : "electricity", a->heats.input_W, note);
    }
    quantity_line(w, "calm losses", DIM_POWER, a->heats.calm.losses_W, "likely; with less it does not boil");
    if (!isnan(a->heats.hold_W))
        up_line(w, "to hold the boil", a->heats.hold_W, "with less it may be lost");
    quantity_line(w, "in the scenario", DIM_POWER, a->heats.own_W, own_words(&a->heats));
    if (!isnan(a->heats.heat_up_s))
        listing_one(w->to, "heating up", format_duration(a->heats.heat_up_s).text, "from a room-cold bath");
}

/* Steam that leaves is water that must be made up. */
static void calm_boil(const writing *w)
{
    const boil_steady_state *c = &w->a->heats.calm;
    double vapour = c->steam_kg_s + c->evaporated_kg_s, water_kg_m3 = boil_water_density(BOIL_ZERO_CELSIUS + 20);
    fputs("\nCalm, boiling with that heat\n", w->to);
    quantity_line(w, "vapour given off", DIM_MASS_FLOW, vapour, "");
    quantity_line(w, "makeup water", DIM_VOLUME_FLOW, c->makeup_kg_s / water_kg_m3, "to hold strength and level");
    steam_line(w, "steam", c->steam_m3_s, "as it leaves: a small part of what a hood draws");
    quantity_line(w, "swell", DIM_LENGTH, c->swell_m, "upper estimate");
    quantity_line(w, "freeboard", DIM_LENGTH, c->freeboard_m, "");
}

static void end_line(const writing *w, const char *name, const boil_window_end *e, const char *more)
{
    if (boil_window_end_shut(e))
        listing_both(w->to, name, "none", "none", "the heat above is too much already");
    else if (e->rim == BOIL_RIM_AT)
        listing_both(w->to, name, size_shown_down(UNITS_US, DIM_POWER, e->heat_W).text,
                     size_shown_down(UNITS_SI, DIM_POWER, e->heat_W).text, more);
    else
        listing_both(w->to, name, "any", "any",
                     e->rim == BOIL_RIM_NEVER ? "never too much" : "until it has boiled too strong to be known");
}

static void window(const writing *w)
{
    const boil_heater_window *h = &w->a->heats;
    fprintf(w->to, "\nMost heat to the tank that leaves %s of freeboard\n",
            SHOWN(w->system, LENGTH, w->a->size->scenario->plant.limits.freeboard_m));
    end_line(w, "likely", &h->leaves_likely, "");
    end_line(w, "possible", &h->leaves_possible, isnan(h->strength_W) ? "count on this one" : "");
    if (!isnan(h->strength_W))
        listing_both(w->to, "its water", size_shown_down(UNITS_US, DIM_POWER, h->strength_W).text,
                     size_shown_down(UNITS_SI, DIM_POWER, h->strength_W).text,
                     "count on this one: with more it leaves its band");
    fputs("\nMost heat to the tank that stays below the rim\n", w->to);
    end_line(w, "likely", &h->likely, "with more it boils over");
    end_line(w, "possible", &h->possible, "with more it may boil over");
    report_paragraph(w->to, "Likely: by the likely laws of mixing; possible: by any, in all that is done.");
}

static void opening(const writing *w)
{
    const size_answer *a = w->a;
    const boil_tank *t = &a->size->scenario->plant.tank;
    double area = boil_tank_area(t);
    fputs("\nWhat would open the window\n", w->to);
    if (isnan(a->heats.opening_load)) {
        fputs(" a lighter load: not even a hundredth of it does\n", w->to);
    } else {
        char note[80];
        snprintf(note, sizeof note, "%.0f %% of the load", 100 * a->heats.opening_load);
        quantity_line(w, "a lighter load", DIM_MASS, a->heats.opening_load * a->size->load.mass_kg, note);
    }
    if (isnan(a->heats.opening_area)) {
        fputs(" a wider tank: not even sixteen times the area does\n", w->to);
        if (isnan(a->heats.opening_load))
            fputs(" so neither is to blame: lower the level, or raise the rim\n", w->to);
    } else {
        char note[120];
        snprintf(note, sizeof note, "in place of %s, of the same depth and level", SHOWN(w->system, AREA, area));
        quantity_line(w, "a wider tank", DIM_AREA, a->heats.opening_area * area, note);
    }
}

formatted_text size_back_after(double recovery_s)
{
    formatted_text t;
    if (!(recovery_s < 600))
        return isnan(recovery_s) ? (formatted_text){"not back"} : format_duration(recovery_s);
    snprintf(t.text, sizeof t.text, "%.1f s", recovery_s);
    return t;
}

static formatted_text back_words(const boil_load_result *r)
{
    return isnan(r->boil_lost_s) ? (formatted_text){"kept"} : size_back_after(r->recovery_s);
}

static void proof(const writing *w)
{
    const size_answer *a = w->a;
    fputs("\nThe gravest run at that heat\n", w->to);
    fprintf(w->to, " %8s  %-40s %10s %12s\n", "time", "load", "back after", "at 1 % less");
    for (size_t i = 0; i < a->heats.proof.loads_count && i < LOADS_LISTED; i++)
        fprintf(w->to, " %8s  %s %10s %12s\n",
                format_clock(a->size->one_load ? 0 : a->size->scenario->start_s, a->heats.proof.loads[i].time_s).text,
                text_fitted(size_case_words(a->size, w->system, i).text, 40).text, back_words(&a->heats.proof.loads[i]).text,
                i < a->heats.less.loads_count ? back_words(&a->heats.less.loads[i]).text : "-");
    if (a->heats.proof.loads_count > LOADS_LISTED)
        fprintf(w->to, " ... and %s more; slowest %s\n",
                format_count(a->heats.proof.loads_count - LOADS_LISTED, "load", "loads").text,
                format_duration(boil_history_recoveries(&a->heats.proof, a->size->limit_s).slowest_s).text);
    report_paragraph(w->to, "least freeboard %s; most steam %s; ends boiling at %s with %s in the tank, at rest",
                     SHOWN(w->system, LENGTH, a->heats.at.freeboard_min_m),
                     SHOWN(w->system, MASS_FLOW, a->heats.proof.summary.steam_peak_kg_s.value),
                     SHOWN(w->system, TEMPERATURE, a->heats.at.end_K), SHOWN(w->system, LENGTH, a->heats.at.end_level_m));
    if (boil_heater_window_never_stops(&a->heats))
        report_paragraph(w->to, "With this heat the load never stops the boil: it takes heat more slowly than the bath can "
                                "spare it. With 1 %% less the boil is lost, and comes back only when the steel is nearly hot.");
    else if (size_is_cliff(boil_history_recoveries(&a->heats.less, a->size->limit_s).slowest_s, a->size->limit_s))
        report_paragraph(w->to,
                         "A cliff, so stay well away from it: with 1 %% less heat the boil is back long after the limit.");
}

void size_report_case(const size_case *c, unit_system s, FILE *to)
{
    report_title(to, c->scenario->title);
    if (c->one_load)
        report_paragraph(to, "one load into the steady boil: %s", text_plain(size_case_words(c, s, 0).text).text);
    else
        report_paragraph(to, "with all that is done in the scenario");
    report_paragraph(to, c->scenario->plant.control.mode == BOIL_WATER_CONTROL_NONE
                             ? "From the boil on, held by a valve that holds the boiling point, in place of any water poured"
                             : "From the boil on, held by the scenario's own valve and what it pours");
}

void size_report(const void *answer, const output *o, FILE *to)
{
    const size_answer *a = answer;
    writing w = {a, o->system, to};
    bool shut = boil_heater_window_shut(&a->heats);
    if (shut)
        verdict_shut(&w);
    else
        verdict_open(&w);
    size_report_case(a->size, o->system, to);
    if (a->heats.found == BOIL_WINDOW_FOUND) {
        heat(&w);
        calm_boil(&w);
        window(&w);
    }
    if (shut)
        opening(&w);
    if (a->heats.found == BOIL_WINDOW_FOUND)
        proof(&w);
    report_caution(to);
}
