#include "commands/run/parts.h"

#include <math.h>
#include <stdarg.h>
#include <string.h>

#include "describe/costs.h"
#include "equipment/heater.h"
#include "describe/report.h"

typedef struct {
    const carried_out *o;
    const boil_summary *summary;
    unit_system system;
    account *to;
} accountant;

__attribute__((format(printf, 2, 3))) static void tell(const accountant *a, const char *format, ...)
{
    va_list values;
    va_start(values, format);
    vsnprintf(a->to->told[a->to->told_count], sizeof a->to->told[0], format, values);
    va_end(values);
    a->to->told_count++;
}

typedef struct {
    const char *what;
    unit_dimension dimension;
    size_t where; /* in boil_summary */
} item;

#define AT(member) offsetof(boil_summary, member)

/* A line that begins with a blank is part of the one above it. */
static const item items[] = {
    {"heat to the tank", DIM_ENERGY, AT(heater_total_J)},
    {"vapour given off", DIM_MASS, AT(vented_total_kg)},
    {" of it evaporated", DIM_MASS, AT(evaporated_total_kg)},
    {" of it boiled off floating water", DIM_MASS, AT(layer_boiled_total_kg)},
    {"water by hand", DIM_MASS, AT(water_added_kg)},
    {"water by the valve", DIM_MASS, AT(water_controlled_kg)},
    {"water carried in by parts", DIM_MASS, AT(rinse_added_kg)},
    {"water trapped in parts", DIM_MASS, AT(trapped_kg)},
    {" of it let go in the bath", DIM_MASS, AT(released_kg)},
    {"condensate from the lid", DIM_MASS, AT(condensate_kg)},
    {"dry salts", DIM_MASS, AT(salts_added_kg)},
    {"ready-mixed liquid", DIM_MASS, AT(mixed_kg)},
    {"bath liquid run back in", DIM_MASS, AT(returned_kg)},
    {"bath liquid carried out by parts", DIM_MASS, AT(drag_out_kg)},
    {" of it salts", DIM_MASS, AT(drag_out_salts_kg)},
    {"bailed and drained", DIM_MASS, AT(taken_kg)},
    {" of it not run back", DIM_MASS, AT(waste_kg)},
    {" salts in that", DIM_MASS, AT(waste_salts_kg)},
};

#define ITEMS (sizeof items / sizeof items[0])
_Static_assert(ITEMS + 2 + COST_ITEMS + 1 <= ACCOUNT_ROWS_MAX, "the items, what the heater is fed with, and costs");

#define NOTHING 1e-6 /* kg or J: less is rounding */

/* What steel is reckoned by. */
static double hundred(unit_system s)
{
    return unit_to_si(DIM_MASS, format_unit(s, DIM_MASS), 100);
}

static void add_row(const accountant *a, const char *what, unit_dimension d, double total)
{
    double loads = (double)a->o->central.loads_count, steel = a->summary->steel_kg;
    account_row *r = &a->to->rows[a->to->rows_count++];
    *r = (account_row){.what = what, .total = format_quantity(a->system, d, total)};
    if (!a->to->has_loads)
        return;
    r->per_load = format_quantity(a->system, d, total / loads);
    r->per_hundred = format_quantity(a->system, d, total / steel * hundred(a->system));
}

/* What a heater is fed with; the steam of a coil is its heat. */
static void add_input(const accountant *a)
{
    static const char *const inputs[] = {
        [BOIL_HEAT_GAS] = "fuel", [BOIL_HEAT_ELECTRIC] = "electricity", [BOIL_HEAT_STEAM] = NULL};
    const char *what = inputs[a->o->scenario->plant.heater.source];
    if (what != NULL)
        add_row(a, what, DIM_ENERGY, a->summary->input_total_J);
    if (a->o->scenario->plant.heater.source == BOIL_HEAT_GAS && a->o->scenario->fuel == FUEL_PROPANE)
        add_row(a, " as liquid propane", DIM_VOLUME, a->summary->input_total_J / BOIL_PROPANE_J_M3);
}

static void table(const accountant *a)
{
    add_input(a);
    for (size_t i = 0; i < ITEMS; i++) {
        double total = *(const double *)(const void *)((const char *)a->summary + items[i].where);
        if (total > NOTHING)
            add_row(a, items[i].what, items[i].dimension, total);
    }
}

#define CURRENCY_BYTES 4 /* what is longer is said once, below the table */

static const char *currency_of(const accountant *a)
{
    const char *currency = a->o->scenario->prices.currency;
    return currency != NULL ? currency : "";
}

static formatted_text money(const accountant *a, double cost)
{
    const char *currency = currency_of(a);
    bool beside = currency[0] != '\0' && strlen(currency) <= CURRENCY_BYTES;
    formatted_text t = {""};
    TEXT_ADD(t.text, "%.2f%s%s", cost, beside ? " " : "", beside ? currency : "");
    return t;
}

static void add_cost(const accountant *a, const char *what, double cost)
{
    if (!(cost > 0))
        return;
    account_row *r = &a->to->rows[a->to->rows_count++];
    *r = (account_row){.what = what, .total = money(a, cost)};
    if (!a->to->has_loads)
        return;
    r->per_load = money(a, cost / (double)a->o->central.loads_count);
    r->per_hundred = money(a, cost / a->summary->steel_kg * hundred(a->system));
}

static void add_costs(const accountant *a)
{
    static const char *const sources[] = {
        [BOIL_HEAT_GAS] = "cost of fuel", [BOIL_HEAT_ELECTRIC] = "cost of electricity", [BOIL_HEAT_STEAM] = "cost of steam"};
    static const char *const words[COST_ITEMS] = {
        [COST_MIXER] = "cost of the mixer's power", [COST_WATER] = "cost of water", [COST_SALTS] = "cost of salts",
        [COST_LIQUID] = "cost of liquid",           [COST_WASTE] = "cost of waste", [COST_LABOUR] = "cost of labour",
    };
    costs c = costs_of(a->o);
    for (int i = 0; i < COST_ITEMS; i++)
        add_cost(a, i == COST_HEAT ? sources[a->o->scenario->plant.heater.source] : words[i], c.of[i]);
    add_cost(a, "cost in all", c.total);
    if (c.total > 0 && strlen(currency_of(a)) > CURRENCY_BYTES)
        tell(a, "Costs are in %s.", text_plain(currency_of(a)).text);
}

static void heat(const accountant *a)
{
    double per_s = 1 / a->o->central.end_s;
    const boil_energy_balance *e = &a->o->central.balance.energy;
    formatted_text put_in = format_quantity(a->system, DIM_POWER, a->summary->input_total_J * per_s);
    formatted_text reached = format_quantity(a->system, DIM_POWER, a->summary->heater_total_J * per_s);
    tell(a, "Heat: %s put in, of which %s reached the tank, on average.", put_in.text, reached.text);
    if (!(e->heater_J > 0))
        return;
    tell(a,
         "Of that %.0f %% went through the walls, %.0f %% off the surface, %.0f %% into parts and baskets; the rest, %.0f %%, "
         "into vapour and the bath itself.",
         100 * e->walls_J / e->heater_J, 100 * e->air_J / e->heater_J, 100 * e->loads_J / e->heater_J,
         100 * (1 - (e->walls_J + e->air_J + e->loads_J) / e->heater_J));
}

static void automatic_water(const accountant *a)
{
    const boil_summary *s = a->summary;
    char quiet[100] = "";
    if (a->o->scenario->plant.control.mode == BOIL_WATER_CONTROL_NONE)
        return;
    if (s->valve_quiet_kg > 0)
        snprintf(quiet, sizeof quiet, ", %s of it while the bath did not boil", SHOWN(a->system, MASS, s->valve_quiet_kg));
    tell(a, "Automatic water: the valve opened %s, was open %.0f %% of the time and gave %s%s.",
         format_count(s->valve_openings, "time", "times").text, 100 * s->valve_open_share,
         SHOWN(a->system, MASS, s->water_controlled_kg), quiet);
}

static void automatic_heat(const accountant *a)
{
    const boil_summary *s = a->summary;
    if (s->fires_lit > 0 || s->thermostat_stilled > 0)
        tell(a, "The heat's control lit the fire %s, and stilled the boil %s.",
             format_count(s->fires_lit, "time", "times").text, format_count(s->thermostat_stilled, "time", "times").text);
    if (!isnan(s->high_limit_s))
        tell(a, "The high limit put the heat out at %s.", carried_out_clock(a->o, s->high_limit_s).text);
}

/* Thinner than a grain it is no bed. */
static void bed_text(const accountant *a, char *out, size_t size)
{
    const boil_summary *s = a->summary;
    char hotter[160] = "";
    out[0] = '\0';
    if (s->bed_max_m < a->o->scenario->plant.fittings.grain_m)
        return;
    if (s->bed_superheat_max_K.value > 0)
        snprintf(hotter, sizeof hotter, ", the floor under it up to %s hotter than the bath (%s)",
                 SHOWN(a->system, DIFFERENCE, s->bed_superheat_max_K.value),
                 carried_out_clock(a->o, s->bed_superheat_max_K.time_s).text);
    snprintf(out, size, "; on the floor a bed of up to %s%s", SHOWN(a->system, LENGTH, s->bed_max_m), hotter);
}

static void dry_salt(const accountant *a)
{
    char bed[260];
    if (!(a->summary->salts_added_kg > 0))
        return;
    bed_text(a, bed, sizeof bed);
    tell(a, "Dry salt: at most %s not yet dissolved%s.", SHOWN(a->system, MASS, a->summary->undissolved_max_kg), bed);
}

static void cold(const accountant *a)
{
    const boil_summary *s = a->summary;
    char much[100] = "";
    if (isnan(s->crystals_s))
        return;
    if (s->crystals_max_kg > 0)
        snprintf(much, sizeof much, "; nitrate and nitrite up to %s", SHOWN(a->system, MASS, s->crystals_max_kg));
    tell(a, "Cooling: below %s salts crystallise, here from %s on%s.", SHOWN(a->system, TEMPERATURE, s->crystals_from_K),
         carried_out_clock(a->o, s->crystals_s).text, much);
    if (s->crust_superheat_K.value > 0.1) /* less is none to speak of */
        tell(a, "A crust kept steam back until the bath was %s over its boiling point, at %s.",
             SHOWN(a->system, DIFFERENCE, s->crust_superheat_K.value),
             carried_out_clock(a->o, s->crust_superheat_K.time_s).text);
}

/* "closes to 1e-9": the digits behind the power would be noise. */
static void closure(const accountant *a)
{
    const boil_balance *b = &a->o->central.balance;
    double worst = fmax(fabs(b->energy.closure), fmax(fabs(b->water.closure), fabs(b->salts.closure)));
    double shown_as = worst > 1e-9 ? pow(10, ceil(log10(worst))) : 1e-9;
    tell(a, "Balances of water, salts and energy close to %.0e.", shown_as);
}

account account_of(const carried_out *o, unit_system s)
{
    account to = {.has_loads = o->central.loads_count > 0,
                  .hundred = s == UNITS_US ? "per 100 lb of steel" : "per 100 kg of steel"};
    accountant a = {o, &o->central.summary, s, &to};
    table(&a);
    add_costs(&a);
    heat(&a);
    automatic_water(&a);
    automatic_heat(&a);
    dry_salt(&a);
    cold(&a);
    closure(&a);
    return to;
}

static void line_print(FILE *to, const char *what, const char *total, const char *per_load, const char *per_hundred)
{
    char line[300];
    snprintf(line, sizeof line, " %-32s %12s %12s %19s", what, total, per_load, per_hundred);
    text_line(to, line);
}

void account_print(const carried_out *o, unit_system s, FILE *to)
{
    account a = account_of(o, s);
    line_print(to, "", "in all", a.has_loads ? "per load" : "", a.has_loads ? a.hundred : "");
    for (size_t i = 0; i < a.rows_count; i++)
        line_print(to, a.rows[i].what, a.rows[i].total.text, a.rows[i].per_load.text, a.rows[i].per_hundred.text);
    for (size_t i = 0; i < a.told_count; i++)
        report_paragraph(to, "%s", a.told[i]);
}
