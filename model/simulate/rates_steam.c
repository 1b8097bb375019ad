#include <math.h>

#include "simulate/rates_parts.h"

/* simulate/rates_steam.c -- equation (1) of simulate/bath.h: the steam takes the heat that everything else leaves. */

/* What a kilogram of a component counts for in the boiling bath: K_i of simulate/bath.h. */
static double counts(double partial_J_kg, double capacity_J_K, double slope_K_kg)
{
    return partial_J_kg + capacity_J_K * slope_K_kg;
}

/* Each stream adds its enthalpy less what its substance counts for in the boiling bath. */
boil_rates_heat boil_rates_of_heat(const boil_bath *b, const boil_rates_view *v)
{
    const boil_rates_solution *s = &v->solution;
    const boil_rates_inflow *in = &v->inflow;
    double capacity = s->heat.capacity_J_K, k_water = counts(s->heat.solution.water, capacity, s->slope.water);
    double liquid = in->liquid_W - in->component_kg_s[0] * k_water, salts = in->salts_W;
    for (int i = 0; i < BOIL_SALTS; i++) {
        double k = counts(s->heat.solution.salt[i], capacity, s->slope.salt[i]);
        double solid = boil_salt_solid_enthalpy(i, s->temperature_K);
        liquid -= in->component_kg_s[1 + i] * k;
        salts += v->salts.dissolving_kg_s[i] * (solid - k) - in->salt_kg_s[i] * solid;
    }
    boil_rates_heat h = {.liquid_cooling_W = -liquid, .salts_cooling_W = -salts};
    h.calm_W = v->heater.heat_W - v->surface.wall_W - v->surface.bath.radiation_W - v->surface.bath.convection_W;
    h.mixing_J_kg = k_water - v->layer.enthalpy_J_kg;
    h.water_cooling_W = v->layer.mixing_kg_s * h.mixing_J_kg;
    double evaporating_W = v->surface.bath.evaporation_kg_s * (v->surface.vapour_J_kg - k_water);
    h.spare_W = h.calm_W - v->loads.heat_W - v->layer.heat_W - h.water_cooling_W - evaporating_W + liquid + salts;
    h.latent_J_kg = boil_bath_steam_enthalpy(b, s->temperature_K) - k_water;
    return h;
}

boil_rates_steam boil_rates_of_steam(const boil_bath *b, const boil_rates_heat *heat, const boil_rates_layer *layer,
                                     double leaving_kg_s)
{
    boil_rates_steam s = {.if_boiling_kg_s = heat->spare_W / heat->latent_J_kg,
                          .calm_kg_s = fmax(0, heat->calm_W) / heat->latent_J_kg,
                          .loop = 1};
    s.formed_kg_s = b->boiling ? s.if_boiling_kg_s : 0;
    if (b->boiling && heat->water_cooling_W > 0 && leaving_kg_s > 0)
        s.loop += fmin(1, fmax(0, s.formed_kg_s / leaving_kg_s)) * heat->mixing_J_kg / heat->latent_J_kg *
                  layer->mixing_slope_kg_s / leaving_kg_s;
    return s;
}
