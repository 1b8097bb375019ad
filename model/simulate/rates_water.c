#include <math.h>

#include "base/boil.h"
#include "properties/water.h"
#include "simulate/rates_parts.h"

/* simulate/rates_water.c -- what goes in, the water afloat, and what leaves through the surface. */

boil_rates_inflow boil_rates_of_feeds(const boil_bath *b, boil_rates_view *v)
{
    boil_rates_inflow s = {0, 0, 0, {0}, {0}};
    v->feed_kg_s = v->valve_kg_s;
    s.water_W = v->valve_kg_s > 0 ? v->valve_kg_s * boil_water_enthalpy(b->plant->control.water_K) : 0;
    v->liquid_kg_s = v->salts_kg_s = 0;
    for (size_t i = 0; i < b->feeds_count; i++) {
        const boil_bath_feed *f = &b->feeds[i];
        double rate = f->rate_kg_s, power = rate * f->enthalpy_J_kg;
        switch (f->kind) {
        case BOIL_FEED_WATER:
            v->feed_kg_s += rate;
            s.water_W += power;
            break;
        case BOIL_FEED_LIQUID:
            v->liquid_kg_s += rate;
            s.liquid_W += power;
            s.component_kg_s[0] += rate * f->kilogram.water;
            for (int k = 0; k < BOIL_SALTS; k++)
                s.component_kg_s[1 + k] += rate * f->kilogram.salt[k];
            break;
        case BOIL_FEED_SALTS:
            v->salts_kg_s += rate;
            s.salts_W += power;
            for (int k = 0; k < BOIL_SALTS; k++)
                s.salt_kg_s[k] += rate * f->kilogram.salt[k];
            break;
        }
    }
    return s;
}

/* Temperature of the layer. While it has next to no mass it is that of the water that began it. */
static double layer_temperature(const boil_bath *b, const double y[])
{
    const double seed_kg = 1e-6;
    if (b->layer == BOIL_WATER_LAYER_BOILS)
        return b->air.saturation_K;
    double m = fmax(0, y[BOIL_STATE_LAYER_MASS]);
    double h =
        (m > 0 ? y[BOIL_STATE_LAYER_HEAT] + seed_kg * b->layer_fresh_J_kg : b->layer_fresh_J_kg * seed_kg) / (m + seed_kg);
    return boil_water_temperature(h);
}

static double water_pressure(const void *nothing, double T, double *slope)
{
    (void)nothing;
    *slope = boil_water_saturation_pressure_slope(T);
    return boil_water_saturation_pressure(T);
}

/* Everything the layer exchanges, but for its own boiling. */
int boil_rates_of_layer(boil_bath *b, double t, const double y[], const boil_convection_liquid *liquid, boil_rates_view *v,
                        double *cover)
{
    const boil_plant *p = b->plant;
    *cover = v->layer_kg = v->layer_m = v->layer_mixing_kg_s = v->layer_mixing_slope_kg_s = v->layer_W = 0;
    v->layer_K = v->temperature_K;
    v->layer_surface = (boil_surface_flow){.skin_K = v->temperature_K};
    double depth = v->solution_m3 / b->area_m2;
    v->mixing_time_s = boil_swell_mixing_time(&p->pool, v->stirring_W_kg, boil_tank_equivalent_radius(&p->tank), depth);
    if (b->layer == BOIL_WATER_LAYER_NONE)
        return BOIL_OK;
    v->layer_kg = fmax(0, y[BOIL_STATE_LAYER_MASS]);
    v->layer_K = layer_temperature(b, y);
    if (!(v->layer_K > 200 && v->layer_K < 500))
        return BOIL_NOT_FINITE;
    double water_kg_m3 = boil_water_density(v->layer_K);
    v->layer_m = v->layer_kg / water_kg_m3 / b->area_m2;
    *cover = boil_water_layer_cover(&p->layer, v->layer_m);
    double plume = cbrt(BOIL_GRAVITY * liquid->expansion_1_K * fmax(0, v->heater_W) * depth /
                        (liquid->density_kg_m3 * liquid->heat_capacity_J_kgK * b->area_m2));
    boil_water_layer_stirring s = {
        b->area_m2, depth, v->density_kg_m3, water_kg_m3, v->stirring_W_kg, v->mixing_time_s, hypot(plume, b->lowering_m_s)};
    v->layer_mixing_kg_s = boil_water_layer_mixing(&p->layer, &s, v->layer_kg, *cover, &v->layer_mixing_slope_kg_s);
    double difference = v->temperature_K - v->layer_K;
    double side = boil_convection_bath_side(liquid, 0.1, difference, v->steam_velocity_m_s);
    v->layer_W =
        difference * boil_water_layer_conductance(&p->layer, b->area_m2, *cover, v->layer_m, t - b->layer_since_s, side);
    boil_vapour_pressure water = {water_pressure, NULL};
    int outcome = boil_surface_exchange(&p->losses, &b->ambient, &water, b->area_m2 * *cover, v->layer_K,
                                        v->leaving_kg_s * *cover, b->layer_skin_guess_K, &v->layer_surface);
    b->layer_skin_guess_K = v->layer_surface.skin_K;
    return outcome;
}

typedef struct {
    boil_bath *bath;
    const boil_mixture *mixture;
} solution_surface;

static double solution_pressure(const void *liquid, double T, double *slope)
{
    const solution_surface *s = liquid;
    return boil_solution_vapour_pressure(&s->bath->air, s->mixture, T, &s->bath->skin_guess, slope);
}

int boil_rates_of_surface(boil_bath *b, double cover, boil_rates_view *v)
{
    const boil_plant *p = b->plant;
    solution_surface s = {b, &v->mixture};
    boil_vapour_pressure vapour = {solution_pressure, &s};
    if (!(b->skin_guess.equivalent_molality > 0))
        b->skin_guess = b->boil_guess;
    int outcome = boil_surface_exchange(&p->losses, &b->ambient, &vapour, b->area_m2 * (1 - cover), v->temperature_K,
                                        v->leaving_kg_s * (1 - cover), b->skin_guess_K, &v->surface);
    b->skin_guess_K = v->surface.skin_K;
    v->wall_W = boil_wall_loss(&p->losses, &p->tank, &b->ambient, v->temperature_K);
    return outcome;
}

/* A lid takes the place of the open air. It condenses what its own loss to the room carries away, UA (T - T_room)/latent, at
   most what there is; a share drips back as water, the rest leaks out. No more evaporates than it condenses; steam that boils
   off lifts it and leaves. Nothing radiates past it. */
void boil_rates_of_lid(const boil_bath *b, boil_rates_view *v)
{
    v->condensate_kg_s = v->condensate_J_kg = 0;
    if (!b->lid_on)
        return;
    const boil_fittings *f = &b->plant->fittings;
    double T = fmin(v->temperature_K, b->air.saturation_K), water_J = boil_water_enthalpy(T);
    double lost = f->lid_W_m2K * b->area_m2 * fmax(0, v->temperature_K - b->ambient.temperature_K);
    double takes = lost / boil_water_latent_heat(T);
    double *e = &v->surface.evaporation_kg_s, *e_layer = &v->layer_surface.evaporation_kg_s;
    *e = fmax(0, *e);
    *e_layer = fmax(0, *e_layer);
    double open = *e + *e_layer, share = open > takes ? takes / open : 1;
    *e *= share;
    *e_layer *= share;
    v->surface.radiation_W = v->surface.convection_W = 0;
    v->layer_surface.radiation_W = v->layer_surface.convection_W = 0;
    v->condensate_kg_s = f->lid_return * fmin(takes, open * share + v->leaving_kg_s);
    v->condensate_J_kg = water_J;
}

/* Boiling of the layer itself. Its temperature is locked to Tsat, so all heat becomes steam: W (hv - hw) = heat, the feed's
   warming paid. It ends when the heat falls to what evaporation without boiling would take: where the temperature of a layer
   at Tsat would fall. */
void boil_rates_of_layer_boil(const boil_bath *b, const boil_rates_inflow *s, boil_rates_view *v)
{
    v->layer_boiled_kg_s = 0;
    v->layer_boil_margin_W = 0;
    if (b->layer != BOIL_WATER_LAYER_BOILS)
        return;
    double hw = boil_water_enthalpy(v->layer_K);
    double heat = v->layer_W - v->layer_surface.radiation_W - v->layer_surface.convection_W + s->water_W - v->feed_kg_s * hw;
    v->layer_boiled_kg_s = heat / (boil_bath_steam_enthalpy(b, b->air.saturation_K) - hw);
    v->layer_boil_margin_W =
        heat - v->layer_surface.evaporation_kg_s * (boil_water_vapour_enthalpy(v->layer_surface.skin_K) - hw);
    v->layer_surface.evaporation_kg_s = 0;
}
