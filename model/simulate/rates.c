#include <math.h>

#include "base/boil.h"
#include "properties/water.h"
#include "simulate/rates_parts.h"
#include "transfer/dissolution.h"

/* simulate/rates.c -- everything that follows from a state: flows of mass and heat, levels, and the rates of all unknowns. The
   order is that of cause: solution and temperature, pool, streams, layer, surface, loads, salts (simulate/rates_parts.h), and
   last the steam, which takes what heat is left. */

/* What a kilogram of a component counts for in the boiling bath: K_i of simulate/bath.h. */
static double counts(double partial_J_kg, double capacity_J_K, double slope_K_kg)
{
    return partial_J_kg + capacity_J_K * slope_K_kg;
}

/* Equation (1) of simulate/bath.h: each stream adds its enthalpy less what its substance counts for in the boiling bath. */
static void steam_at(const boil_bath *b, const boil_bath_heat *heat, const boil_slope *slope, const boil_rates_inflow *s,
                     double water_J_kg, double vapour_J_kg, boil_rates_view *v)
{
    double capacity = heat->capacity_J_K, k_water = counts(heat->solution.water, capacity, slope->water);
    double calm = v->heater_W - v->wall_W - v->surface.radiation_W - v->surface.convection_W;
    double spare = calm - v->loads_W - v->layer_W + v->layer_mixing_kg_s * (water_J_kg - k_water) -
                   v->surface.evaporation_kg_s * (vapour_J_kg - k_water);
    double liquid = s->liquid_W - s->component_kg_s[0] * k_water, salts = s->salts_W;
    for (int i = 0; i < BOIL_SALTS; i++) {
        double k = counts(heat->solution.salt[i], capacity, slope->salt[i]);
        double solid = boil_salt_solid_enthalpy(i, v->temperature_K);
        liquid -= s->component_kg_s[1 + i] * k;
        salts += v->dissolving_kg_s[i] * (solid - k) - s->salt_kg_s[i] * solid;
    }
    double latent = boil_bath_steam_enthalpy(b, v->temperature_K) - k_water;
    v->liquid_cooling_W = -liquid;
    v->salts_cooling_W = -salts;
    v->steam_if_boiling_kg_s = (spare + liquid + salts) / latent;
    v->calm_steam_kg_s = fmax(0, calm) / latent;
    v->steam_kg_s = b->boiling ? v->steam_if_boiling_kg_s : 0;
    v->water_cooling_W = v->layer_mixing_kg_s * (k_water - water_J_kg);
    v->loop = 1;
    if (b->boiling && v->water_cooling_W > 0 && v->leaving_kg_s > 0)
        v->loop += fmin(1, fmax(0, v->steam_kg_s / v->leaving_kg_s)) * (k_water - water_J_kg) / latent *
                   v->layer_mixing_slope_kg_s / v->leaving_kg_s;
    v->air_W = v->surface.radiation_W + v->surface.convection_W + v->layer_surface.radiation_W + v->layer_surface.convection_W;
}

/* Heat and mass of one moment, ready to be put where they belong. */
typedef struct {
    double water_J_kg, vapour_J_kg, solution_J_kg; /* of water mixing in, of evaporation, of the bath itself */
    double steam_W, layer_vapour_W;
} boil_heats;

static void bath_rates(const boil_rates_view *v, const boil_rates_inflow *s, const boil_heats *h, double dydt[])
{
    double e = v->surface.evaporation_kg_s, drag = v->drag_kg_s / v->mass_kg;
    dydt[BOIL_STATE_BATH_WATER] = v->layer_mixing_kg_s - e - v->steam_kg_s + s->component_kg_s[0] - drag * v->mixture.water;
    for (int i = 0; i < BOIL_SALTS; i++) {
        dydt[BOIL_STATE_BATH_NAOH + i] = s->component_kg_s[1 + i] + v->dissolving_kg_s[i] - drag * v->mixture.salt[i];
        dydt[BOIL_STATE_SOLID_NAOH + i] = s->salt_kg_s[i] - v->dissolving_kg_s[i];
    }
    dydt[BOIL_STATE_BED_MASS] = v->settling_kg_s;
    dydt[BOIL_STATE_BATH_HEAT] = v->heater_W - v->wall_W - v->surface.radiation_W - v->surface.convection_W - v->loads_W -
                                 v->layer_W + v->layer_mixing_kg_s * h->water_J_kg - e * h->vapour_J_kg - h->steam_W +
                                 s->liquid_W + s->salts_W - v->drag_kg_s * h->solution_J_kg;
}

static void layer_rates(const boil_bath *b, const boil_rates_view *v, const boil_rates_inflow *s, const boil_heats *h,
                        double dydt[])
{
    if (b->layer == BOIL_WATER_LAYER_NONE) {
        dydt[BOIL_STATE_LAYER_MASS] = dydt[BOIL_STATE_LAYER_HEAT] = 0;
        return;
    }
    double air = v->layer_surface.radiation_W + v->layer_surface.convection_W;
    dydt[BOIL_STATE_LAYER_MASS] =
        v->feed_kg_s - v->layer_mixing_kg_s - v->layer_surface.evaporation_kg_s - v->layer_boiled_kg_s;
    dydt[BOIL_STATE_LAYER_HEAT] = s->water_W + v->layer_W - air - v->layer_mixing_kg_s * h->water_J_kg - h->layer_vapour_W;
}

static void totals(const boil_rates_view *v, const boil_rates_inflow *s, const boil_heats *h, double dydt[])
{
    double salts = 1 - v->mixture.water / v->mass_kg;
    dydt[BOIL_STATE_TOTAL_STEAM] = v->steam_kg_s;
    dydt[BOIL_STATE_TOTAL_EVAPORATED] = v->surface.evaporation_kg_s + v->layer_surface.evaporation_kg_s;
    dydt[BOIL_STATE_TOTAL_LAYER_BOILED] = v->layer_boiled_kg_s;
    dydt[BOIL_STATE_TOTAL_WATER_IN] = v->feed_kg_s;
    dydt[BOIL_STATE_TOTAL_VALVE] = v->valve_kg_s;
    dydt[BOIL_STATE_TOTAL_CONDENSATE] = v->condensate_kg_s;
    dydt[BOIL_STATE_TOTAL_LIQUID_IN] = v->liquid_kg_s;
    dydt[BOIL_STATE_TOTAL_LIQUID_SALTS] = s->component_kg_s[1] + s->component_kg_s[2] + s->component_kg_s[3];
    dydt[BOIL_STATE_TOTAL_SALTS_IN] = v->salts_kg_s;
    dydt[BOIL_STATE_TOTAL_DRAG] = v->drag_kg_s;
    dydt[BOIL_STATE_TOTAL_DRAG_SALTS] = v->drag_kg_s * salts;
    dydt[BOIL_STATE_HEAT_FROM_HEATER] = v->heater_W;
    dydt[BOIL_STATE_HEAT_TO_WALLS] = v->wall_W;
    dydt[BOIL_STATE_HEAT_TO_AIR] = v->air_W;
    dydt[BOIL_STATE_HEAT_TO_LOADS] = v->loads_W;
    dydt[BOIL_STATE_HEAT_WITH_VAPOUR] = h->steam_W + v->surface.evaporation_kg_s * h->vapour_J_kg + h->layer_vapour_W;
    dydt[BOIL_STATE_HEAT_WITH_WATER] = s->water_W;
    dydt[BOIL_STATE_HEAT_WITH_LIQUID] = s->liquid_W;
    dydt[BOIL_STATE_HEAT_WITH_SALTS] = s->salts_W;
    dydt[BOIL_STATE_HEAT_WITH_DRAG] = v->drag_kg_s * h->solution_J_kg;
}

static void rates_of(const boil_bath *b, const double y[], const boil_rates_view *v, const boil_rates_inflow *s, boil_heats *h,
                     double dydt[])
{
    const boil_plant *p = b->plant;
    h->steam_W = v->steam_kg_s * boil_bath_steam_enthalpy(b, v->temperature_K);
    h->layer_vapour_W = v->layer_surface.evaporation_kg_s * boil_water_vapour_enthalpy(v->layer_surface.skin_K) +
                        v->layer_boiled_kg_s * boil_bath_steam_enthalpy(b, b->air.saturation_K);
    bath_rates(v, s, h, dydt);
    layer_rates(b, v, s, h, dydt);
    totals(v, s, h, dydt);
    dydt[BOIL_STATE_STEAM_HELD] = (v->steam_kg_s - v->leaving_kg_s) / v->loop;
    dydt[BOIL_STATE_HEATER_OUTPUT] =
        p->heater.lag_s > 0 ? (v->heater_target_W - y[BOIL_STATE_HEATER_OUTPUT]) / p->heater.lag_s : 0;
    dydt[BOIL_STATE_SENSOR] =
        p->control.sensor_lag_s > 0 ? (v->temperature_K - y[BOIL_STATE_SENSOR]) / p->control.sensor_lag_s : 0;
}

int boil_rates_at(boil_bath *b, double t, const double y[], boil_rates_view *v, double dydt[])
{
    boil_bath_heat heat;
    boil_slope slope;
    double cover;
    int outcome = boil_rates_of_solution(b, y, v, &heat, &slope);
    if (outcome != BOIL_OK)
        return outcome;
    boil_rates_of_heater(b, y, v);
    boil_rates_of_control(b, y, v);
    boil_rates_of_pool(b, t, y, v);
    boil_rates_inflow s = boil_rates_of_feeds(b, v);
    boil_convection_liquid liquid = boil_rates_of_liquid(b, v, heat.solution.heat_capacity_J_K);
    outcome = boil_rates_of_layer(b, t, y, &liquid, v, &cover);
    if (outcome == BOIL_OK)
        outcome = boil_rates_of_surface(b, cover, v);
    if (outcome != BOIL_OK)
        return outcome;
    boil_rates_of_lid(b, v);
    v->feed_kg_s += v->condensate_kg_s;
    s.water_W += v->condensate_kg_s * v->condensate_J_kg;
    boil_rates_of_levels(b, y, v);
    boil_rates_of_loads(b, t, y, &liquid, v, dydt);
    boil_rates_of_layer_boil(b, &s, v);
    boil_rates_of_solids(b, y, v);
    boil_rates_of_drag(b, v);
    boil_heats h = {.water_J_kg = b->layer == BOIL_WATER_LAYER_NONE ? 0 : boil_water_enthalpy(v->layer_K),
                    .vapour_J_kg = boil_water_vapour_enthalpy(v->surface.skin_K),
                    .solution_J_kg = heat.solution.enthalpy_J / v->mass_kg};
    steam_at(b, &heat, &slope, &s, h.water_J_kg, h.vapour_J_kg, v);
    if (!isfinite(v->steam_if_boiling_kg_s))
        return BOIL_NOT_FINITE;
    if (dydt)
        rates_of(b, y, v, &s, &h, dydt);
    return BOIL_OK;
}
