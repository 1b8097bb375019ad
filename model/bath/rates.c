#include "bath/rates.h"

#include <math.h>

#include "base/larger.h"
#include "bath/rates_parts.h"

/* bath/rates.c -- the parts in the order of cause, and from them the rates of all unknowns but the steel's temperatures
   (bath/rates_parts.h). The steam comes last: it takes the heat that everything else leaves, equation (1) of
   bath/bath.h. */

boil_rates_guess boil_rates_guess_at(double temperature_K, boil_rates_tables *tables)
{
    return (boil_rates_guess){.solution.temperature_K = temperature_K, .skin_times = 1, .skin_stronger = 1, .tables = tables};
}

/* What a kilogram of a component counts for in the boiling bath: K_i of bath/bath.h. */
static double counts(double partial_J_kg, double capacity_J_K, double slope_K_kg)
{
    return partial_J_kg + capacity_J_K * slope_K_kg;
}

/* Each stream adds its enthalpy less what its substance counts for in the boiling bath. */
static boil_rates_heat heat_of(const boil_bath *b, const double y[], const boil_rates_view *v)
{
    const double set_free_s = 2;
    const boil_rates_solution *s = &v->solution;
    const boil_rates_inflow *in = &v->inflow;
    double capacity = s->heat.capacity_J_K, k_water = counts(s->heat.solution.water, capacity, s->slope.water);
    double liquid = in->liquid_W - in->component_kg_s[0] * k_water, salts = in->salts_W;
    for (int i = 0; i < BOIL_SALTS; i++) {
        double k = counts(s->heat.solution.salt[i], capacity, s->slope.salt[i]);
        liquid -= in->component_kg_s[1 + i] * k;
        if (v->salts.dissolving_kg_s[i] == 0 && in->salt_kg_s[i] == 0)
            continue;
        double solid = boil_salt_solid_enthalpy(i, s->temperature_K);
        salts += v->salts.dissolving_kg_s[i] * (solid - k) - in->salt_kg_s[i] * solid;
    }
    boil_rates_heat h = {
        .held_W = y[BOIL_STATE_HELD_HEAT] / set_free_s, .liquid_cooling_W = -liquid, .salts_cooling_W = -salts};
    h.calm_W = v->heater.heat_W - v->surface.wall_W - v->surface.bath.radiation_W - v->surface.bath.convection_W;
    h.mixing_J_kg = k_water - v->layer.enthalpy_J_kg;
    h.water_cooling_W = v->layer.mixing_kg_s * h.mixing_J_kg;
    double evaporating_W = v->surface.bath.evaporation_kg_s * (v->surface.bath.vapour_J_kg - k_water);
    h.spare_W = h.calm_W - v->loads.heat_W - v->layer.heat_W - h.water_cooling_W - evaporating_W + liquid + salts + h.held_W;
    h.latent_J_kg = boil_bath_steam_enthalpy(b, s->temperature_K) - k_water;
    return h;
}

static boil_rates_steam steam_of(const boil_bath *b, const boil_rates_heat *heat, const boil_rates_layer *layer,
                                 double leaving_kg_s)
{
    boil_rates_steam s = {.if_boiling_kg_s = heat->spare_W / heat->latent_J_kg,
                          .at_once_kg_s = layer->soaking_kg_s * layer->wetted.steam,
                          .calm_kg_s = boil_larger(0, heat->calm_W) / heat->latent_J_kg,
                          .loop = 1};
    s.formed_kg_s = b->boiling ? s.if_boiling_kg_s : layer->flashing_kg_s;
    if (b->boiling && heat->water_cooling_W > 0 && leaving_kg_s > 0)
        s.loop += fmin(1, fmax(0, s.formed_kg_s / leaving_kg_s)) * heat->mixing_J_kg / heat->latent_J_kg *
                  layer->mixing_slope_kg_s / leaving_kg_s;
    return s;
}

/* Of a salt that leaves undissolved. */
static double solid_W(const boil_rates_outflow *o, int salt, double temperature_K)
{
    return o->solid_kg_s[salt] > 0 ? o->solid_kg_s[salt] * boil_salt_solid_enthalpy(salt, temperature_K) : 0;
}

static void bath_rates(const boil_rates_view *v, double steam_W, double dydt[])
{
    const boil_rates_inflow *in = &v->inflow;
    const boil_surface_flow *surface = &v->surface.bath;
    const boil_rates_solution *s = &v->solution;
    const boil_rates_outflow *out = &v->outflow;
    double leaving_kg_s = v->loads.drag_kg_s + out->liquid_kg_s, with_solids_W = 0;
    double e = surface->evaporation_kg_s, drag = leaving_kg_s / s->mass_kg;
    double mixing = v->layer.mixing_kg_s;
    dydt[BOIL_STATE_BATH_WATER] = mixing - e - v->steam.formed_kg_s + in->component_kg_s[0] - drag * s->mixture.water;
    for (int i = 0; i < BOIL_SALTS; i++) {
        double dissolving = v->salts.dissolving_kg_s[i];
        dydt[BOIL_STATE_BATH_NAOH + i] = in->component_kg_s[1 + i] + dissolving - drag * s->mixture.salt[i];
        dydt[BOIL_STATE_SOLID_NAOH + i] = in->salt_kg_s[i] - dissolving - out->solid_kg_s[i];
        with_solids_W += solid_W(out, i, s->temperature_K);
    }
    dydt[BOIL_STATE_BED_MASS] = v->salts.settling_kg_s - out->bed_kg_s;
    dydt[BOIL_STATE_CRUST_MASS] = v->salts.crust_kg_s;
    dydt[BOIL_STATE_HELD_HEAT] = -v->heat.held_W;
    dydt[BOIL_STATE_BATH_HEAT] = v->heat.calm_W - v->loads.heat_W - v->layer.heat_W + mixing * v->layer.enthalpy_J_kg -
                                 e * v->surface.bath.vapour_J_kg - steam_W + in->liquid_W + in->salts_W -
                                 leaving_kg_s * (s->heat.solution.enthalpy_J / s->mass_kg) - with_solids_W + v->heat.held_W;
}

static void layer_rates(const boil_bath *b, const boil_rates_view *v, double dydt[])
{
    if (b->layer == BOIL_WATER_LAYER_NONE) {
        dydt[BOIL_STATE_LAYER_MASS] = dydt[BOIL_STATE_LAYER_HEAT] = 0;
        return;
    }
    double air = v->surface.layer.radiation_W + v->surface.layer.convection_W, mixing = v->layer.mixing_kg_s;
    dydt[BOIL_STATE_LAYER_MASS] =
        v->inflow.water_kg_s - mixing - v->layer_vapour.evaporated_kg_s - v->layer_vapour.boiled_kg_s - v->outflow.layer_kg_s;
    dydt[BOIL_STATE_LAYER_HEAT] = v->inflow.water_W + v->layer.heat_W - air -
                                  (mixing + v->outflow.layer_kg_s) * v->layer.enthalpy_J_kg - v->layer_vapour.heat_W;
}

/* What is bailed and drained, each component and its heat. */
static void taken_rates(const boil_rates_view *v, double dydt[])
{
    const boil_rates_outflow *o = &v->outflow;
    const boil_rates_solution *s = &v->solution;
    double share_s = o->liquid_kg_s / s->mass_kg;
    dydt[BOIL_STATE_TOTAL_TAKEN_WATER] = share_s * s->mixture.water + o->layer_kg_s;
    dydt[BOIL_STATE_HEAT_WITH_TAKEN] = share_s * s->heat.solution.enthalpy_J + o->layer_kg_s * v->layer.enthalpy_J_kg;
    for (int i = 0; i < BOIL_SALTS; i++) {
        dydt[BOIL_STATE_TOTAL_TAKEN_NAOH + i] = share_s * s->mixture.salt[i] + o->solid_kg_s[i];
        dydt[BOIL_STATE_HEAT_WITH_TAKEN] += solid_W(o, i, s->temperature_K);
    }
}

/* Of what leaves hollows, the part that goes the way of water, not of liquid. */
static double floating_released(const boil_bath *b, double released)
{
    return b->boiling ? 0 : released;
}

static void total_rates(const boil_bath *b, const boil_rates_view *v, double dydt[])
{
    const boil_rates_inflow *in = &v->inflow;
    dydt[BOIL_STATE_TOTAL_STEAM] = v->steam.formed_kg_s;
    dydt[BOIL_STATE_TOTAL_EVAPORATED] = v->surface.bath.evaporation_kg_s + v->layer_vapour.evaporated_kg_s;
    dydt[BOIL_STATE_TOTAL_LAYER_BOILED] = v->layer_vapour.boiled_kg_s;
    dydt[BOIL_STATE_TOTAL_WATER_IN] = in->water_kg_s - floating_released(b, in->released_kg_s);
    dydt[BOIL_STATE_TOTAL_RELEASED] = in->released_kg_s;
    dydt[BOIL_STATE_TOTAL_VALVE] = v->control.valve_kg_s;
    dydt[BOIL_STATE_TOTAL_CONDENSATE] = v->surface.condensate_kg_s;
    dydt[BOIL_STATE_TOTAL_LIQUID_IN] = in->liquid_kg_s;
    dydt[BOIL_STATE_TOTAL_LIQUID_SALTS] = in->component_kg_s[1] + in->component_kg_s[2] + in->component_kg_s[3];
    dydt[BOIL_STATE_TOTAL_SALTS_IN] = in->salts_kg_s;
    dydt[BOIL_STATE_TOTAL_DRAG] = v->loads.drag_kg_s;
    dydt[BOIL_STATE_TOTAL_DRAG_SALTS] = v->loads.drag_kg_s * (1 - v->solution.mixture.water / v->solution.mass_kg);
}

static void heat_rates(const boil_bath *b, const boil_rates_view *v, double steam_W, double dydt[])
{
    double floats_W = floating_released(b, v->inflow.released_W);
    dydt[BOIL_STATE_HEAT_FROM_HEATER] = v->heater.heat_W;
    dydt[BOIL_STATE_HEAT_TO_WALLS] = v->surface.wall_W;
    dydt[BOIL_STATE_HEAT_TO_AIR] = v->surface.air_W;
    dydt[BOIL_STATE_HEAT_TO_LOADS] = v->loads.heat_W;
    dydt[BOIL_STATE_HEAT_WITH_VAPOUR] =
        steam_W + v->surface.bath.evaporation_kg_s * v->surface.bath.vapour_J_kg + v->layer_vapour.heat_W;
    dydt[BOIL_STATE_HEAT_WITH_WATER] = v->inflow.water_W - floats_W;
    dydt[BOIL_STATE_HEAT_WITH_RELEASED] = v->inflow.released_W;
    dydt[BOIL_STATE_HEAT_WITH_LIQUID] = v->inflow.liquid_W - (v->inflow.released_W - floats_W);
    dydt[BOIL_STATE_HEAT_WITH_SALTS] = v->inflow.salts_W;
    dydt[BOIL_STATE_HEAT_WITH_DRAG] = v->loads.drag_kg_s * (v->solution.heat.solution.enthalpy_J / v->solution.mass_kg);
}

static double lagging(double target, double value, double lag_s)
{
    return lag_s > 0 ? (target - value) / lag_s : 0;
}

static void rates_of(const boil_bath *b, const double y[], const boil_rates_view *v, double dydt[])
{
    const boil_plant *p = b->plant;
    double steam_W = v->steam.formed_kg_s * boil_bath_steam_enthalpy(b, v->solution.temperature_K);
    bath_rates(v, steam_W, dydt);
    layer_rates(b, v, dydt);
    total_rates(b, v, dydt);
    heat_rates(b, v, steam_W, dydt);
    taken_rates(v, dydt);
    dydt[BOIL_STATE_STEAM_HELD] = (v->steam.formed_kg_s - v->pool.leaving_kg_s) / v->steam.loop;
    dydt[BOIL_STATE_HEATER_OUTPUT] = lagging(v->heater.target_W, y[BOIL_STATE_HEATER_OUTPUT], p->heater.lag_s);
    dydt[BOIL_STATE_SENSOR] = lagging(v->solution.temperature_K, y[BOIL_STATE_SENSOR], p->control.sensor_lag_s);
    dydt[BOIL_STATE_HEAT_SENSOR] = lagging(v->solution.temperature_K, y[BOIL_STATE_HEAT_SENSOR], p->heat_control.sensor_lag_s);
}

/* The liquid in the tank and what floats on it. */
static boil_outcome liquid_at(const boil_bath *b, double t, const double y[], boil_rates_guess *g, boil_rates_view *v)
{
    boil_outcome outcome = boil_rates_of_solution(b, y, g, &v->solution);
    if (outcome != BOIL_OK)
        return outcome;
    v->heater = boil_rates_of_heater(b, y, v->solution.temperature_K);
    v->pool = boil_rates_of_pool(b, y, &v->solution);
    v->salts = boil_rates_of_salts(b, y, &v->solution, &v->pool, v->heater.heat_W);
    return boil_rates_of_layer(b, t, y, &v->solution, &v->pool, &v->salts, v->heater.heat_W, g, &v->layer);
}

static double between(double a, double b, double share)
{
    return a + share * (b - a);
}

/* m3/kg of what floats; of none, water's. */
static double afloat_m3_kg(const boil_bath *b, const boil_rates_layer *l)
{
    const double water_m3_kg = 1e-3;
    return l->mass_kg > 0 ? l->thickness_m * b->area_m2 / l->mass_kg : water_m3_kg;
}

double boil_rates_level_between(const boil_bath *b, const boil_rates_view *v, const boil_rates_view *w, double share, double t,
                                const double y[])
{
    double solution_kg = 0, steam_kg = boil_larger(0, y[BOIL_STATE_STEAM_HELD]),
           afloat_kg = boil_larger(0, y[BOIL_STATE_LAYER_MASS]);
    for (int i = BOIL_STATE_BATH_WATER; i <= BOIL_STATE_BATH_NANO2; i++)
        solution_kg += y[i];
    double m3 = solution_kg * between(1 / v->solution.density_kg_m3, 1 / w->solution.density_kg_m3, share) +
                steam_kg * between(1 / v->pool.vapour_kg_m3, 1 / w->pool.vapour_kg_m3, share) +
                afloat_kg * between(afloat_m3_kg(b, &v->layer), afloat_m3_kg(b, &w->layer), share) +
                boil_rates_salts_volume(y) + boil_rates_displaced(b, t);
    return m3 / b->area_m2 + between(v->levels.surge_m, w->levels.surge_m, share);
}

boil_outcome boil_rates_at(const boil_bath *b, double t, const double y[], boil_rates_guess *g, boil_rates_view *v,
                           double dydt[])
{
    boil_outcome outcome = liquid_at(b, t, y, g, v);
    if (outcome != BOIL_OK)
        return outcome;
    v->control = boil_rates_of_control(b, y, v->solution.temperature_K);
    v->loads = boil_rates_of_loads(b, t, y, &v->solution, &v->pool, dydt);
    if (v->layer.soaking_kg_s > 0)
        boil_rates_soak_salts(y, v->layer.soaking_kg_s * v->layer.wetted.dissolved, &v->salts);
    outcome = boil_rates_of_surface(b, &v->solution, &v->salts, &v->layer, v->pool.leaving_kg_s, g, &v->surface);
    if (outcome != BOIL_OK)
        return outcome;
    v->inflow = boil_rates_of_inflow(b, v->control.valve_kg_s, &v->surface);
    v->outflow = boil_rates_of_outflow(b, y, &v->solution, &v->salts, &v->layer);
    v->layer_vapour = boil_rates_of_layer_vapour(b, &v->layer, &v->surface, &v->inflow);
    v->levels = boil_rates_of_levels(b, v);
    v->heat = heat_of(b, y, v);
    v->steam = steam_of(b, &v->heat, &v->layer, v->pool.leaving_kg_s);
    if (!isfinite(v->steam.if_boiling_kg_s))
        return BOIL_NOT_FINITE;
    if (dydt)
        rates_of(b, y, v, dydt);
    return BOIL_OK;
}
