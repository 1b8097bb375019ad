#include "describe/costs.h"

#include <math.h>
#include <string.h>

#include "actions/action.h"
#include "base/constants.h"
#include "equipment/heater.h"
#include "properties/solution.h"
#include "properties/water.h"

typedef struct {
    double of; /* an SI unit */
    unit_dimension per;
} price;

static price price_of(const scenario *s, const char *words)
{
    const key *k = key_named("prices", words);
    if (s->settings == NULL) /* a scenario that was not read */
        return (price){(double)NAN, DIM_COUNT};
    price p = {.per = s->settings[key_index(k)].dimension};
    memcpy(&p.of, (const char *)s + k->where, sizeof p.of);
    return p;
}

/* The fuel, or the steam of a coil, which gives its heat as it condenses. */
static double heat(const carried_out *o)
{
    static const char *const words[] = {
        [BOIL_HEAT_GAS] = "gas", [BOIL_HEAT_ELECTRIC] = "electricity", [BOIL_HEAT_STEAM] = "steam"};
    const boil_heater *h = &o->scenario->plant.heater;
    price p = price_of(o->scenario, words[h->source]);
    double J = o->central.summary.input_total_J;
    double of_steam = J / boil_water_latent_heat(h->steam_K), of_propane = J / BOIL_PROPANE_J_M3;
    return p.of * (p.per == DIM_MASS ? of_steam : p.per == DIM_VOLUME ? of_propane : J);
}

/* How long the mixer was on, s. */
static double mixer_on_s(const carried_out *o)
{
    const boil_schedule *s = &o->scenario->schedule;
    bool on = o->scenario->plant.fittings.mixer_on;
    double from_s = 0, sum_s = 0;
    for (size_t i = 0; i < s->count; i++) {
        double s_done = carried_out_done_s(o, i);
        if (s->actions[i].kind != BOIL_ACTION_MIXER || isnan(s_done))
            continue;
        sum_s += on ? s_done - from_s : 0;
        on = s->actions[i].is.on;
        from_s = s_done;
    }
    return sum_s + (on ? o->central.end_s - from_s : 0);
}

static double mixer(const carried_out *o)
{
    return price_of(o->scenario, "electricity").of * boil_plant_mixer_power(&o->scenario->plant) * mixer_on_s(o);
}

/* By volume: as cold as it comes, of the room. */
static double water(const carried_out *o)
{
    price p = price_of(o->scenario, "water");
    double kg = o->central.summary.water_added_kg + o->central.summary.water_controlled_kg;
    double room_K = fmax(o->scenario->plant.ambient.temperature_K, 273.15);
    return p.of * (p.per == DIM_MASS ? kg : kg / boil_water_density(room_K));
}

/* What was put in, and what must be to make up for what the parts carried out and what was thrown away. */
static double salts(const carried_out *o)
{
    const boil_summary *s = &o->central.summary;
    return price_of(o->scenario, "salts").of * (s->salts_added_kg + s->drag_out_salts_kg + s->waste_salts_kg);
}

/* By volume: as it was measured. */
static double liquid(const carried_out *o)
{
    price p = price_of(o->scenario, "liquid");
    double amount = 0;
    for (size_t i = 0; i < o->central.additions_count; i++) {
        const boil_addition_result *r = &o->central.additions[i];
        const boil_action *act = &o->scenario->schedule.actions[r->action];
        const boil_action_liquid *l = &act->is.liquid;
        if (r->kind != BOIL_ACTION_LIQUID || r->run_back) /* that was paid for before */
            continue;
        boil_mixture m = boil_mixture_of(l->blend, l->salt_fraction);
        amount += p.per == DIM_MASS ? r->mass_kg : r->mass_kg / boil_solution_density(&m, l->temperature_K);
    }
    return p.of * amount;
}

/* By volume: cold, of the bath's blend, as strong as it is on average. */
static double waste(const carried_out *o)
{
    price p = price_of(o->scenario, "waste");
    const boil_summary *s = &o->central.summary;
    const boil_plant *plant = &o->scenario->plant;
    if (!(s->waste_kg > 0))
        return p.of * 0;
    boil_mixture m = boil_mixture_of(plant->charge.blend, s->waste_salts_kg / s->waste_kg);
    double room_K = fmax(plant->ambient.temperature_K, BOIL_ZERO_CELSIUS);
    return p.of * (p.per == DIM_MASS ? s->waste_kg : s->waste_kg / boil_solution_density(&m, room_K));
}

static double labour(const carried_out *o)
{
    return price_of(o->scenario, "labour").of * o->central.end_s;
}

costs costs_of(const carried_out *o)
{
    static double (*const items[COST_ITEMS])(const carried_out *o) = {
        [COST_HEAT] = heat,     [COST_MIXER] = mixer, [COST_WATER] = water,   [COST_SALTS] = salts,
        [COST_LIQUID] = liquid, [COST_WASTE] = waste, [COST_LABOUR] = labour,
    };
    costs c = {.total = (double)NAN};
    for (int i = 0; i < COST_ITEMS; i++) {
        c.of[i] = items[i](o);
        if (!isnan(c.of[i]))
            c.total = isnan(c.total) ? c.of[i] : c.total + c.of[i];
    }
    return c;
}
