/* base/units.c -- the table of units.

   Factors are exact by definition: inch, foot, pound, bar and standard atmosphere from GSL; the others from these. GSL's
   gallons, Btu per hour, psi and inch of mercury are rounded or of an older vintage, so they are composed here: US gallon
   231 in3; UK gallon 4.54609 L (Units of Measurement Regulations 1995, SI 1995/1804); Btu (IT) 1055.05585262 J (from 4.1868
   J/cal, 1 lb, 1 degF); pound-force from standard gravity; mercury at 0 degC, 13 595.1 kg/m3 (NIST SP 811, appendix B). */
#include "base/units.h"

#include <gsl/gsl_const_mksa.h>
#include <math.h>
#include <string.h>

#include "base/words.h"

#define INCH GSL_CONST_MKSA_INCH
#define FOOT GSL_CONST_MKSA_FOOT
#define POUND GSL_CONST_MKSA_POUND_MASS
#define OUNCE (POUND / 16.0)
#define GALLON (231.0 * INCH * INCH * INCH)
#define UK_GALLON 4.54609e-3
#define LITRE 1e-3
#define MINUTE 60.0
#define HOUR 3600.0
#define FAHRENHEIT (5.0 / 9.0)
#define BTU 1055.05585262
#define PSI (POUND * GSL_CONST_MKSA_GRAV_ACCEL / (INCH * INCH))
#define MERCURY (13595.1 * GSL_CONST_MKSA_GRAV_ACCEL)

#define UNITS_OF_ONE 9 /* the most of one dimension */

/* By dimension: a reader knows which it asks for. */
/* clang-format off */
static const unit table[DIM_COUNT][UNITS_OF_ONE] = {
    [DIM_LENGTH] = {
        {DIM_LENGTH, 1.0, 0.0, {"m", "metre", "metres", "meter", "meters"}},
        {DIM_LENGTH, 1e-2, 0.0, {"cm"}},
        {DIM_LENGTH, 1e-3, 0.0, {"mm"}},
        {DIM_LENGTH, INCH, 0.0, {"in", "inch", "inches"}},
        {DIM_LENGTH, FOOT, 0.0, {"ft", "foot", "feet"}},
    },
    [DIM_AREA] = {
        {DIM_AREA, 1.0, 0.0, {"m2"}},
        {DIM_AREA, FOOT * FOOT, 0.0, {"ft2"}},
        {DIM_AREA, INCH * INCH, 0.0, {"in2"}},
    },
    [DIM_VOLUME] = {
        {DIM_VOLUME, LITRE, 0.0, {"L", "l", "litre", "litres", "liter", "liters"}},
        {DIM_VOLUME, 1e-6, 0.0, {"mL", "ml"}},
        {DIM_VOLUME, 1.0, 0.0, {"m3"}},
        {DIM_VOLUME, GALLON, 0.0, {"gal", "gallon", "gallons", "US gal", "USgal"}},
        {DIM_VOLUME, GALLON / 4, 0.0, {"qt", "quart", "quarts"}},
        {DIM_VOLUME, GALLON / 8, 0.0, {"pt", "pint", "pints"}},
        {DIM_VOLUME, UK_GALLON, 0.0, {"UKgal", "UK gal"}},
        {DIM_VOLUME, FOOT * FOOT * FOOT, 0.0, {"ft3"}},
    },
    [DIM_MASS] = {
        {DIM_MASS, 1.0, 0.0, {"kg"}},
        {DIM_MASS, 1e-3, 0.0, {"g", "gram", "grams"}},
        {DIM_MASS, 1e3, 0.0, {"t", "tonne", "tonnes"}},
        {DIM_MASS, POUND, 0.0, {"lb", "lbs", "pound", "pounds"}},
        {DIM_MASS, OUNCE, 0.0, {"oz", "ounce", "ounces"}},
    },
    [DIM_TIME] = {
        {DIM_TIME, 1.0, 0.0, {"s", "sec", "second", "seconds"}},
        {DIM_TIME, MINUTE, 0.0, {"min", "minute", "minutes"}},
        {DIM_TIME, HOUR, 0.0, {"h", "hr", "hrs", "hour", "hours"}},
    },
    [DIM_TEMPERATURE] = {
        {DIM_TEMPERATURE, 1.0, 273.15, {"degC", "deg C"}},
        {DIM_TEMPERATURE, FAHRENHEIT, 459.67, {"degF", "deg F"}},
        {DIM_TEMPERATURE, 1.0, 0.0, {"K"}},
    },
    [DIM_DIFFERENCE] = {
        {DIM_DIFFERENCE, 1.0, 0.0, {"K"}},
        {DIM_DIFFERENCE, 1.0, 0.0, {"degC", "deg C"}},
        {DIM_DIFFERENCE, FAHRENHEIT, 0.0, {"degF", "deg F"}},
    },
    [DIM_GAUGE_PRESSURE] = {
        {DIM_GAUGE_PRESSURE, PSI, 0.0, {"psig"}},
        {DIM_GAUGE_PRESSURE, GSL_CONST_MKSA_BAR, 0.0, {"barg", "bar g", "bar(g)"}},
    },
    [DIM_PRESSURE] = {
        {DIM_PRESSURE, 1.0, 0.0, {"Pa"}},
        {DIM_PRESSURE, 1e3, 0.0, {"kPa"}},
        {DIM_PRESSURE, GSL_CONST_MKSA_BAR, 0.0, {"bar"}},
        {DIM_PRESSURE, 1e-3 * GSL_CONST_MKSA_BAR, 0.0, {"mbar"}},
        {DIM_PRESSURE, 1e2, 0.0, {"hPa"}},
        {DIM_PRESSURE, PSI, 0.0, {"psia"}},
        {DIM_PRESSURE, MERCURY * INCH, 0.0, {"inHg", "in Hg"}},
        {DIM_PRESSURE, MERCURY * 1e-3, 0.0, {"mmHg", "mm Hg"}},
        {DIM_PRESSURE, GSL_CONST_MKSA_STD_ATMOSPHERE, 0.0, {"atm"}},
    },
    [DIM_POWER] = {
        {DIM_POWER, 1.0, 0.0, {"W"}},
        {DIM_POWER, 1e3, 0.0, {"kW"}},
        {DIM_POWER, BTU / HOUR, 0.0, {"Btu/h", "Btu/hr", "BTU/h", "BTU/hr"}},
        {DIM_POWER, 1e3 * BTU / HOUR, 0.0, {"kBtu/h", "kBtu/hr", "kBTU/h", "kBTU/hr"}},
        {DIM_POWER, 1e6 * BTU / HOUR, 0.0, {"MMBtu/h", "MMBtu/hr", "MMBTU/h", "MMBTU/hr"}},
    },
    [DIM_ENERGY] = {
        {DIM_ENERGY, 1.0, 0.0, {"J"}},
        {DIM_ENERGY, 1e6, 0.0, {"MJ"}},
        {DIM_ENERGY, 1e3 * HOUR, 0.0, {"kWh"}},
        {DIM_ENERGY, 1e3 * BTU, 0.0, {"kBtu", "kBTU"}},
        {DIM_ENERGY, 1e6 * BTU, 0.0, {"MMBtu", "MMBTU"}},
        {DIM_ENERGY, 1e5 * BTU, 0.0, {"therm", "therms"}},
    },
    [DIM_CONCENTRATION] = {
        {DIM_CONCENTRATION, 1.0, 0.0, {"g/L", "g/l"}},
        {DIM_CONCENTRATION, 1.0, 0.0, {"kg/m3"}},
        {DIM_CONCENTRATION, POUND / GALLON, 0.0, {"lb/gal", "lbs/gal"}},
        {DIM_CONCENTRATION, OUNCE / GALLON, 0.0, {"oz/gal"}},
    },
    [DIM_VOLUME_FLOW] = {
        {DIM_VOLUME_FLOW, LITRE / MINUTE, 0.0, {"L/min", "l/min"}},
        {DIM_VOLUME_FLOW, 1e-6 / MINUTE, 0.0, {"mL/min", "ml/min"}},
        {DIM_VOLUME_FLOW, LITRE / HOUR, 0.0, {"L/h", "l/h", "L/hr", "l/hr"}},
        {DIM_VOLUME_FLOW, GALLON / HOUR, 0.0, {"gal/h", "gal/hr", "gph"}},
        {DIM_VOLUME_FLOW, GALLON / MINUTE, 0.0, {"gal/min", "gpm"}},
    },
    [DIM_MASS_FLOW] = {
        {DIM_MASS_FLOW, 1.0 / HOUR, 0.0, {"kg/h", "kg/hr"}},
        {DIM_MASS_FLOW, 1.0 / MINUTE, 0.0, {"kg/min"}},
        {DIM_MASS_FLOW, POUND / HOUR, 0.0, {"lb/h", "lb/hr", "lbs/h", "lbs/hr"}},
    },
    [DIM_COEFFICIENT] = {
        {DIM_COEFFICIENT, 1.0, 0.0,
         {"W/m2K", "W/m2/K", "W/m2.K", "W/m2 K", "W/m2-K", "W/(m2K)", "W/(m2 K)", "W/(m2.K)", "W/(m2*K)", "W/m2degC",
          "W/m2\u00b7K", "W/(m2\u00b7K)"}},
        {DIM_COEFFICIENT, BTU / (HOUR * FOOT * FOOT * FAHRENHEIT), 0.0,
         {"Btu/hft2F", "Btu/h/ft2/F", "Btu/h ft2 F", "Btu/h-ft2-F", "Btu/hr-ft2-F", "Btu/hr ft2 F", "Btu/(h ft2 F)",
          "Btu/(hr ft2 F)", "Btu/(h ft2 degF)", "Btu/(hr ft2 degF)", "Btu/hft2degF", "Btu/(h\u00b7ft2\u00b7degF)",
          "BTU/hft2F"}},
    },
    [DIM_VOLUME_PER_AREA] = {
        {DIM_VOLUME_PER_AREA, 1e-6, 0.0, {"mL/m2", "ml/m2"}},
        {DIM_VOLUME_PER_AREA, GALLON / (1000.0 * FOOT * FOOT), 0.0, {"gal/1000ft2", "gal/1000 ft2"}},
    },
    [DIM_SPEED] = {
        {DIM_SPEED, 1.0, 0.0, {"m/s"}},
        {DIM_SPEED, FOOT / MINUTE, 0.0, {"ft/min", "fpm"}},
        {DIM_SPEED, FOOT, 0.0, {"ft/s", "fps"}},
        {DIM_SPEED, 5280 * FOOT / HOUR, 0.0, {"mph"}},
    },
    [DIM_FLUX] = {
        {DIM_FLUX, 1.0, 0.0, {"W/m2"}},
        {DIM_FLUX, 1e3, 0.0, {"kW/m2"}},
        {DIM_FLUX, 1e4, 0.0, {"W/cm2"}},
        {DIM_FLUX, 1.0 / (INCH * INCH), 0.0, {"W/in2"}},
        {DIM_FLUX, 1e3 * BTU / (HOUR * FOOT * FOOT), 0.0, {"kBtu/hft2", "kBtu/h ft2", "kBtu/h/ft2"}},
    },
    [DIM_STRESS] = {
        {DIM_STRESS, 1e3 * PSI, 0.0, {"ksi"}},
        {DIM_STRESS, 1e6, 0.0, {"MPa", "N/mm2"}},
    },
    [DIM_FRACTION] = {
        {DIM_FRACTION, 0.01, 0.0, {"%"}},
    },
};
/* clang-format on */

typedef struct {
    const char *si, *name, *example; /* si: NULL for a ratio or a bare number */
    bool quotient;
    unit_dimension over, under;
} dimension_facts;

static const dimension_facts facts[DIM_COUNT + 1] = {
    [DIM_LENGTH] = {.si = "m", .name = "a length", .example = "24 in"},
    [DIM_AREA] = {.si = "m2", .name = "an area", .example = "10 ft2"},
    [DIM_VOLUME] = {.si = "m3", .name = "a volume", .example = "2 gal"},
    [DIM_MASS] = {.si = "kg", .name = "a mass", .example = "100 lb"},
    [DIM_TIME] = {.si = "s", .name = "a time", .example = "20 min"},
    [DIM_TEMPERATURE] = {.si = "K", .name = "a temperature", .example = "285 degF"},
    [DIM_DIFFERENCE] = {.si = "K", .name = "a temperature difference", .example = "2 degF"},
    [DIM_GAUGE_PRESSURE] = {.si = "Pa", .name = "a gauge pressure", .example = "60 psig"},
    [DIM_PRESSURE] = {.si = "Pa", .name = "a pressure", .example = "29.9 inHg"},
    [DIM_POWER] = {.si = "W", .name = "a power", .example = "300 kBtu/h"},
    [DIM_ENERGY] = {.si = "J", .name = "an energy", .example = "10 kWh"},
    [DIM_CONCENTRATION] = {"kg/m3", "a mass per volume", "6 lb/gal", true, DIM_MASS, DIM_VOLUME},
    [DIM_VOLUME_FLOW] = {"m3/s", "a volume flow", "12 gal/h", true, DIM_VOLUME, DIM_TIME},
    [DIM_MASS_FLOW] = {"kg/s", "a mass flow", "40 lb/h", true, DIM_MASS, DIM_TIME},
    [DIM_COEFFICIENT] = {.si = "W/m2K", .name = "a heat transfer coefficient", .example = "500 W/m2K"},
    [DIM_VOLUME_PER_AREA] = {"m", "a volume per area", "50 mL/m2", true, DIM_VOLUME, DIM_AREA},
    [DIM_SPEED] = {"m/s", "a speed", "0.3 m/s", true, DIM_LENGTH, DIM_TIME},
    [DIM_FLUX] = {.si = "W/m2", .name = "a heat flux", .example = "15 W/in2"},
    [DIM_STRESS] = {.si = "Pa", .name = "a stress", .example = "13.7 ksi"},
    [DIM_FRACTION] = {.name = "a percentage", .example = "60 %"},
};

static const struct {
    const char *reason, *spellings[8]; /* NULL after the last */
} refused[] = {
    {"means inches: write in", {"\"", "\u2033", "\u201d", "''"}},
    {"means feet: write ft", {"'", "\u2032", "\u2019"}},
    {"lacks its degree: write degF", {"F", "f"}},
    {"lacks its degree: write degC", {"C", "c"}},
    {"is written degF", {"Fahrenheit", "fahrenheit", "degf", "DEGF"}},
    {"is written degC", {"Celsius", "celsius", "centigrade", "degc", "DEGC"}},
    {"does not say whose degree: write degF or degC", {"deg", "degs", "degree", "degrees", "\u00b0"}},
    {"does not say from where it counts: write psia (absolute), or kPa or inHg", {"psi"}},
    {"counts from the room's own pressure: write it absolute, in psia, kPa or inHg", {"psig"}},
    {"means a thousand to some and a million to others: write kBtu/h or MMBtu/h",
     {"MBtu/h", "MBtu/hr", "MBTU/h", "MBTU/hr", "MBtuh", "MBH", "mbh"}},
    {"may be short, long or metric, or of refrigeration: write lb, kg or t (1000 kg), or a power in kW or Btu/h",
     {"ton", "tons"}},
    {"is not used here: write a power in W, kW or Btu/h", {"cal", "kcal", "cal/s", "kcal/h"}},
};

/* Signs outside ASCII that read as a word or digit of the table. */
static const struct {
    const char *sign, *reads;
} signs[] = {{"\u00b0", "deg"}, {"\u00b2", "2"}, {"\u00b3", "3"}};

static bool begins(const char *at, const char *end, const char *with)
{
    size_t length = strlen(with);
    return (size_t)(end - at) >= length && memcmp(at, with, length) == 0;
}

/* One step of the comparison: how far the text and the spelling advance; false when they differ. */
static bool step(const char **at, const char *end, const char **spelling)
{
    char c = *at < end ? **at : '\0';
    if (c > ' ' && c <= '~') {
        (*at)++;
        return c == *(*spelling)++;
    }
    bool is_sign = *at < end && ((unsigned char)**at & 0x80) != 0;
    for (size_t i = 0; i < sizeof signs / sizeof signs[0] && is_sign; i++)
        if (begins(*at, end, signs[i].sign)) {
            size_t reads = strlen(signs[i].reads);
            if (strncmp(*spelling, signs[i].reads, reads) != 0)
                return false;
            *at += strlen(signs[i].sign);
            *spelling += reads;
            return true;
        }
    if (**spelling == ' ' && words_blank(*at, end) > 0) {
        *at = words_skip(*at, end);
        (*spelling)++;
        return true;
    }
    return *at < end && *(*at)++ == *(*spelling)++;
}

/* A unit ends with its line, or before a blank or a sign that the grammar puts between quantities. */
static bool unit_ends(const char *at, const char *end)
{
    return at == end || words_blank(at, end) > 0 || strchr(",|+", *at) != NULL;
}

static size_t spelling_length(const char *spelling, const char *text, const char *end)
{
    const char *at = text;
    while (*spelling != '\0')
        if (!step(&at, end, &spelling))
            return 0;
    return unit_ends(at, end) ? (size_t)(at - text) : 0;
}

/* What every spelling of a text begins with. */
static char first_letter(const char *text, const char *end)
{
    for (size_t i = 0; i < sizeof signs / sizeof signs[0]; i++)
        if (*text == signs[i].sign[0] && begins(text, end, signs[i].sign))
            return signs[i].reads[0];
    return *text;
}

static size_t longest_spelling(const unit *u, char first, const char *text, const char *end)
{
    size_t longest = 0;
    for (size_t i = 0; i < UNIT_SPELLINGS && u->spellings[i] != NULL; i++) {
        size_t found = u->spellings[i][0] == first ? spelling_length(u->spellings[i], text, end) : 0;
        if (found > longest)
            longest = found;
    }
    return longest;
}

const unit *unit_listed(unit_dimension d, size_t index)
{
    return d < DIM_COUNT && index < UNITS_OF_ONE && table[d][index].spellings[0] != NULL ? &table[d][index] : NULL;
}

const unit *unit_scan(unsigned dimensions, const char *text, size_t length, size_t *used)
{
    const unit *best = NULL, *u;
    size_t longest = 0;
    char first = length > 0 ? first_letter(text, text + length) : '\0';
    for (unsigned d = 0; length > 0 && dimensions >> d != 0; d++)
        for (size_t i = 0; (dimensions & UNIT_OF(d)) != 0 && (u = unit_listed((unit_dimension)d, i)) != NULL; i++) {
            size_t found = longest_spelling(u, first, text, text + length);
            if (found > longest) {
                best = u;
                longest = found;
            }
        }
    *used = longest;
    return best;
}

/* A spelling of our own is mostly one of the table's, letter by letter. */
const unit *unit_spelt(unit_dimension d, const char *spelling)
{
    const unit *u;
    for (size_t i = 0; (u = unit_listed(d, i)) != NULL; i++)
        for (size_t k = 0; k < UNIT_SPELLINGS && u->spellings[k] != NULL; k++)
            if (u->spellings[k][0] == spelling[0] && strcmp(u->spellings[k], spelling) == 0)
                return u;
    size_t used, length = strlen(spelling);
    u = unit_scan(UNIT_OF(d), spelling, length, &used);
    return used == length ? u : NULL;
}

double unit_si_value(const unit *u, double value)
{
    return u == NULL ? (double)NAN : (value + u->offset) * u->factor;
}

double unit_to_si(unit_dimension d, const char *spelling, double value)
{
    return unit_si_value(unit_spelt(d, spelling), value);
}

const char *unit_si(unit_dimension d)
{
    return facts[d].si;
}

double unit_from_si(unit_dimension d, const char *spelling, double si)
{
    const unit *u = unit_spelt(d, spelling);
    return u == NULL ? (double)NAN : si / u->factor - u->offset;
}

const char *unit_refusal(const char *text, size_t length)
{
    for (size_t i = 0; i < sizeof refused / sizeof refused[0]; i++)
        for (const char *const *s = refused[i].spellings; *s != NULL; s++)
            if (strlen(*s) == length && memcmp(*s, text, length) == 0)
                return refused[i].reason;
    return NULL;
}

/* Before an item of "a, b or c"; `left` counts those still to come after it. */
static const char *joint(const char *before, size_t left)
{
    return before[0] == '\0' ? "" : left == 0 ? " or " : ", ";
}

void unit_accepted(unsigned dimensions, char *out, size_t size)
{
    const unit *u;
    size_t left = 0;
    out[0] = '\0';
    for (unsigned d = 0; d < DIM_COUNT; d++)
        for (size_t i = 0; (dimensions & UNIT_OF(d)) != 0 && unit_listed((unit_dimension)d, i) != NULL; i++)
            left++;
    for (unsigned d = 0; d < DIM_COUNT; d++)
        for (size_t i = 0; (dimensions & UNIT_OF(d)) != 0 && (u = unit_listed((unit_dimension)d, i)) != NULL; i++)
            text_add(out, size, "%s%s", joint(out, --left), u->spellings[0]);
}

void unit_describe(unsigned dimensions, char *out, size_t size)
{
    size_t left = 0;
    out[0] = '\0';
    for (unsigned d = 0; d < DIM_COUNT; d++)
        left += (dimensions & UNIT_OF(d)) != 0;
    for (unsigned d = 0; d < DIM_COUNT; d++)
        if ((dimensions & UNIT_OF(d)) != 0)
            text_add(out, size, "%s%s", joint(out, --left), facts[d].name);
}

const char *unit_example(unit_dimension d)
{
    return facts[d].example;
}

bool unit_quotient(unit_dimension d, unit_dimension *over, unit_dimension *under)
{
    *over = facts[d].over;
    *under = facts[d].under;
    return facts[d].quotient;
}
