/* sheet_row.c -- rows of the designer's sheet and their units. */
#include <math.h>
#include <stdarg.h>
#include <string.h>

#include "commands/size/sheet.h"
#include "design/published_units.h"

/* Digits 0: whole numbers. */
typedef struct {
    const char *us, *si;
    double in_us, in_si; /* SI values of one */
    double us_zero, si_zero;
    int digits;
} shown_unit;

#define HOUR 3600.0
#define FOOT2 (BOIL_FOOT * BOIL_FOOT)
#define FOOT3 (BOIL_FOOT * FOOT2)
#define GALLON 3.785411784e-3
#define POUND 0.45359237

/* clang-format off */
static const shown_unit units[SHEET_UNITS] = {
    [SHEET_HEAT] = {"kBtu/h", "kW", BOIL_KBTU_H, 1e3, 0, 0, 4},
    [SHEET_FLUX] = {"kBtu/h ft2", "kW/m2", BOIL_KBTU_H / FOOT2, 1e3, 0, 0, 3},
    [SHEET_TEMPERATURE] = {"degF", "degC", 1 / 1.8, 1, -459.67, -273.15, 3},
    [SHEET_DIFFERENCE] = {"degF", "K", 1 / 1.8, 1, 0, 0, 3},
    [SHEET_LENGTH] = {"in", "mm", BOIL_INCH, 1e-3, 0, 0, 3},
    [SHEET_SHORT] = {"ft", "m", BOIL_FOOT, 1, 0, 0, 3},
    [SHEET_AREA] = {"ft2", "m2", FOOT2, 1, 0, 0, 3},
    [SHEET_VOLUME] = {"gal", "L", GALLON, 1e-3, 0, 0, 3},
    [SHEET_MASS] = {"lb", "kg", POUND, 1, 0, 0, 4},
    [SHEET_AIR] = {"cfm", "m3/h", FOOT3 / 60, 1 / HOUR, 0, 0, 4},
    [SHEET_GAS] = {"ft3/h", "m3/h", FOOT3 / HOUR, 1 / HOUR, 0, 0, 3},
    [SHEET_SPEED] = {"ft/min", "m/s", BOIL_FOOT_A_MINUTE, 1, 0, 0, 3},
    [SHEET_DRAUGHT_LOSS] = {"in wg", "Pa", BOIL_INCH_OF_WATER, 1, 0, 0, 3},
    [SHEET_TRICKLE] = {"gal/h", "L/h", GALLON / HOUR, 1e-3 / HOUR, 0, 0, 3},
    [SHEET_FLOW] = {"gpm", "L/min", BOIL_GALLON_A_MINUTE, 1e-3 / 60, 0, 0, 3},
    [SHEET_STEAM] = {"lb/h", "kg/h", POUND / HOUR, 1 / HOUR, 0, 0, 3},
    [SHEET_HOUR] = {"h", "h", HOUR, HOUR, 0, 0, 3},
    [SHEET_ENERGY] = {"kBtu", "kWh", 1e3 * BOIL_BTU, 1e3 * HOUR, 0, 0, 3},
    [SHEET_YEAR] = {"MMBtu", "MWh", 1e6 * BOIL_BTU, 1e6 * HOUR, 0, 0, 3},
    [SHEET_LINE_LOAD] = {"lb/in", "N/mm", 4.4482216 / BOIL_INCH, 1e3, 0, 0, 3},
    [SHEET_INERTIA] = {"in4", "cm4", BOIL_INCH * BOIL_INCH * BOIL_INCH * BOIL_INCH, 1e-8, 0, 0, 3},
    [SHEET_STRESS] = {"psi", "MPa", BOIL_PSI, 1e6, 0, 0, 3},
    [SHEET_GAUGE] = {"psig", "barg", BOIL_PSI, 1e5, 0, 0, 3},
    [SHEET_RATIO] = {": 1", ": 1", 1, 1, 0, 0, 2},
    [SHEET_NUMBER] = {"", "", 1, 1, 0, 0, 3},
    [SHEET_COUNT] = {"", "", 1, 1, 0, 0, 0},
    [SHEET_SHARE] = {"%", "%", 0.01, 0.01, 0, 0, 2},
};
/* clang-format on */

/* Never less than the value. */
static void add_number(formatted_text *t, double x, int digits)
{
    if (!isfinite(x)) {
        TEXT_ADD(t->text, "-");
        return;
    }
    int size = x != 0 ? (int)floor(log10(fabs(x)) + 1e-9) : 0, decimals = digits - 1 - size;
    if (digits == 0 || decimals < 0 || x == 0)
        decimals = 0;
    double scale = pow(10, decimals), up = digits > 0 ? ceil(x * scale - 1e-6) / scale : x;
    TEXT_ADD(t->text, "%.*f", decimals, up + 0.0);
}

formatted_text sheet_shown(const sheet_row *r, unit_system system)
{
    const shown_unit *u = &units[r->unit];
    formatted_text t = {""};
    for (size_t i = 0; i < r->count; i++) {
        TEXT_ADD(t.text, "%s", i > 0 ? " / " : "");
        add_number(&t, system == UNITS_US ? r->values[i] / u->in_us + u->us_zero : r->values[i] / u->in_si + u->si_zero,
                   u->digits);
    }
    const char *name = system == UNITS_US ? u->us : u->si;
    TEXT_ADD(t.text, "%s%s", name[0] != '\0' ? " " : "", name);
    return t;
}

static sheet_row *next(sheet *s, sheet_kind kind)
{
    sheet_row *r = &s->rows[s->rows_count < SHEET_ROWS ? s->rows_count++ : SHEET_ROWS - 1];
    *r = (sheet_row){.kind = kind, .group = s->group, .unit = SHEET_COUNT, .from = SHEET_FORMULA};
    return r;
}

sheet_row *sheet_add(sheet *s, sheet_unit u, sheet_origin from, const char *name, ...)
{
    sheet_row *r = next(s, SHEET_VALUE);
    va_list list;
    va_start(list, name);
    vsnprintf(r->name, sizeof r->name, name, list);
    va_end(list);
    r->unit = u;
    r->from = from;
    return r;
}

void sheet_put(sheet_row *r, double value)
{
    if (r->count < SHEET_VALUES)
        r->values[r->count++] = value;
}

void sheet_say(sheet *s, sheet_kind kind, const char *words, ...)
{
    sheet_row *r = next(s, kind);
    va_list list;
    va_start(list, words);
    vsnprintf(r->words, sizeof r->words, words, list);
    va_end(list);
}

void sheet_missing(sheet *s, const char *name, const char *words)
{
    sheet_row *r = next(s, SHEET_MISSING);
    snprintf(r->name, sizeof r->name, "%s", name);
    snprintf(r->words, sizeof r->words, "%s%s", strncmp(words, "give", 4) == 0 ? "not asked: " : "", words);
}

bool sheet_given(const sheet *s, const char *section, const char *words)
{
    return scenario_setting_of(s->facts.scenario, section, words)->state == SETTING_GIVEN;
}
