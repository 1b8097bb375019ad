#include "bath/potential.h"

#include <math.h>

#include "base/constants.h"
#include "properties/water.h"
#include "transfer/flash.h"
#include "transfer/overflow.h"
#include "transfer/overturn.h"

/* Level of the bath boiling calmly with the heat full on: what swell comes back with the boil. */
static double calm_boil_level(const boil_bath *b, const boil_rates_view *v)
{
    const boil_swell *law = &b->plant->pool;
    double full_W = boil_heater_output(&b->plant->heater, 1, v->solution.boiling_point_K);
    double calm_W = v->heat.calm_W - v->heater.heat_W + full_W;
    double velocity = fmax(0, calm_W) / v->heat.latent_J_kg / (b->area_m2 * v->pool.vapour_kg_m3);
    double alpha = boil_swell_void_upper(law, v->pool.drift_velocity_m_s, velocity);
    return v->levels.still_m + v->solution.volume_m3 / b->area_m2 * alpha / (1 - alpha);
}

/* No mixture yields more than the thinnest in a bath at its boil, but for rounding of what the boil costs. */
static double yield_bound(const boil_rates_view *v, double layer_K)
{
    const double spare = 1.1;
    double warmer = boil_water_enthalpy(layer_K) - v->layer.enthalpy_J_kg;
    return spare * fmax(0, (warmer - v->heat.mixing_J_kg) / v->heat.latent_J_kg);
}

/* Near enough to the moment it was worked out for, the nearer to its boil the bath was then; or there was none, and all warmed too
   little since for any: it rises by at most 0.033 a kelvin of the bath (both: tests/unit/model/transfer/test_flash.c). */
static bool is_known(const boil_potential_known *k, double layer, double bath, double boils)
{
    const double least_K = 0.5, most_K = 6, share = 0.25, most_per_K = 0.02;
    double moved = fabs(layer) + 2 * fabs(bath) + 2 * fabs(boils);
    double warmed = fmax(0, layer) + 2 * fmax(0, bath) + 2 * fabs(boils);
    return k->layer_K > 0 && (moved <= fmin(most_K, fmax(least_K, share * (k->boiling_point_K - k->bath_K))) ||
                              k->top.yield + most_per_K * warmed <= 0);
}

static double yield_of(const boil_bath *b, const boil_rates_view *v, boil_potential_known *known)
{
    const double spare = 1.2e-3; /* kg/kg, for what it is off that near */
    double layer_K = v->layer.temperature_K, bath_K = v->solution.temperature_K, boils_K = v->solution.boiling_point_K;
    double layer = layer_K - known->layer_K, bath = bath_K - known->bath_K;
    if (!is_known(known, layer, bath, boils_K - known->boiling_point_K)) {
        boil_flash_bath at = {b->air, v->solution.mixture, bath_K, b->plant->dilution_factor};
        *known = (boil_potential_known){layer_K, bath_K, boils_K, boil_flash_top_near(&at, layer_K, known->top.bath_share)};
        layer = bath = 0;
        if (!isfinite(known->top.yield)) /* beyond the correlation: err on the side of steam */
            known->top = (boil_flash_top){.yield = yield_bound(v, layer_K), .bath_share = known->top.bath_share};
    }
    double yield = known->top.yield + known->top.by_layer_K * layer + known->top.by_bath_K * bath;
    return yield > 0 ? yield + spare : 0;
}

static boil_potential judged(const boil_bath *b, const boil_rates_view *v, double yield)
{
    boil_overflow_pool pool = {b->area_m2, b->plant->tank.depth_m, v->levels.still_m, v->pool.vapour_kg_m3};
    double calm_m = calm_boil_level(b, v);
    boil_potential p = {.steam_kg = v->layer.mass_kg * yield};
    p.left_m = boil_overflow_freeboard_left(&pool, p.steam_kg, v->levels.upper_m, calm_m);
    p.without_m = boil_overflow_freeboard_left(&pool, 0, v->levels.upper_m, calm_m);
    p.surge_kg_s = boil_overflow_surge_rate(p.steam_kg, v->levels.still_m, 0.3);
    p.critical_kg_s = boil_overflow_critical_steam_rate(&pool, &b->plant->pool, v->pool.drift_velocity_m_s);
    boil_overturn turns = {b->plant->layer.turnover_factor, b->plant->layer.mixing_efficiency};
    boil_overturn_pool stirred = {b->area_m2, v->solution.volume_m3 / b->area_m2, v->solution.density_kg_m3,
                                  boil_water_density(v->layer.temperature_K), 0};
    p.gain = boil_overturn_gain(&turns, &stirred, v->pool.vapour_kg_m3, yield);
    p.overflows = boil_overflow_possible(&pool, p.steam_kg, p.left_m, p.critical_kg_s);
    return p;
}

boil_potential boil_potential_of(const boil_bath *b, const boil_rates_view *v, double clear_m, boil_potential_known *known)
{
    boil_potential p = judged(b, v, yield_bound(v, v->layer.temperature_K));
    return p.left_m < clear_m ? judged(b, v, yield_of(b, v, known)) : p;
}

boil_potential boil_potential_hot(const boil_bath *b, const boil_rates_view *v)
{
    return judged(b, v, yield_bound(v, fmax(v->layer.temperature_K, b->air.saturation_K)));
}

boil_potential boil_potential_of_hollows(const boil_bath *b, const boil_rates_view *v, double water_kg, double displaced_m3)
{
    const double rounding = 1e-9; /* water in a bath of water flashes not at all */
    boil_flash_bath bath = {b->air, v->solution.mixture, v->solution.boiling_point_K, b->plant->dilution_factor};
    double saturation_K = b->air.saturation_K, y = boil_flash_yield(&bath, saturation_K, NULL);
    boil_rates_view then = *v;
    then.layer.mass_kg = water_kg;
    then.layer.temperature_K = saturation_K;
    then.levels.still_m += displaced_m3 / b->area_m2;
    then.levels.upper_m = then.levels.still_m;
    return judged(b, &then, isfinite(y) ? (y > rounding ? y : 0) : yield_bound(v, saturation_K));
}

double boil_potential_erupts(const boil_bath *b, const boil_rates_view *v)
{
    boil_potential_known none = {.layer_K = 0};
    if (b->boiling || !(v->layer.mass_kg > 0))
        return 0;
    boil_potential now = boil_potential_of(b, v, b->plant->limits.freeboard_m, &none);
    return now.left_m < b->plant->limits.freeboard_m && now.gain > 1 ? now.steam_kg : 0;
}
