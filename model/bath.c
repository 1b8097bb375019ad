#include "bath.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "boil.h"
#include "water.h"

static boil_mixture mixture_of(const double y[])
{
    return (boil_mixture){y[BATH_WATER], {y[BATH_NAOH], y[BATH_NANO3], y[BATH_NANO2]}};
}

static double quadratic(const double c[3], double x)
{
    return c[0] + x * (c[1] + x * c[2]);
}

/* Quadratic in (T - Tsat) through three values 40 K apart; steam at one pressure is that smooth (within 0.2 kJ/kg
   and 0.02 % of density to 80 K above saturation). */
static void fit_quadratic(const double f[3], double spacing, double c[3])
{
    c[0] = f[0];
    c[1] = (-3 * f[0] + 4 * f[1] - f[2]) / (2 * spacing);
    c[2] = (f[0] - 2 * f[1] + f[2]) / (2 * spacing * spacing);
}

static void fit_steam(boil_bath *b)
{
    const double spacing = 40;
    double h[3], v[3], p = b->air.pressure_Pa;
    for (int i = 0; i < 3; i++) {
        double T = b->air.saturation_K + i * spacing;
        h[i] = boil_steam_enthalpy(T, p);
        v[i] = 1 / boil_steam_density(T, p);
    }
    fit_quadratic(h, spacing, b->steam_enthalpy);
    fit_quadratic(v, spacing, b->steam_density);
}

double boil_bath_steam_enthalpy(const boil_bath *b, double temperature_K)
{
    return quadratic(b->steam_enthalpy, temperature_K - b->air.saturation_K);
}

double boil_bath_steam_density(const boil_bath *b, double temperature_K)
{
    return 1 / quadratic(b->steam_density, temperature_K - b->air.saturation_K);
}

double boil_bath_body_immersed(const boil_bath_body *b, double t)
{
    double in = (t - b->in_start_s) / (b->in_end_s - b->in_start_s);
    double out = isfinite(b->out_start_s) ? (t - b->out_start_s) / (b->out_end_s - b->out_start_s) : 0;
    return fmin(1, fmax(0, in)) - fmin(1, fmax(0, out));
}

size_t boil_bath_unknowns(const boil_bath *b)
{
    size_t n = BATH_FIXED;
    for (size_t i = 0; i < b->bodies_count; i++)
        n += (size_t)b->bodies[i].body.unknowns;
    return n;
}

static double steel_enthalpy(const boil_bath *b, double T)
{
    return b->steel_kg * boil_metal_enthalpy(&b->steel, T);
}

/* T at which solution and tank steel hold the enthalpy H. */
static int quiet_temperature(boil_bath *b, const boil_mixture *m, double H, double *temperature, boil_heat *heat)
{
    double T = b->temperature_guess_K;
    for (int i = 0; i < 30; i++) {
        *heat = boil_solution_heat(m, T);
        double capacity = heat->heat_capacity_J_K + b->steel_kg * boil_metal_heat_capacity(&b->steel, T);
        double step = (H - heat->enthalpy_J - steel_enthalpy(b, T)) / capacity;
        T += fmax(-40, fmin(40, step));
        if (!(T > 200 && T < 600))
            return BOIL_NO_ROOT;
        if (fabs(step) < 1e-9) { /* the next correction is of second order in this one */
            b->temperature_guess_K = *temperature = T;
            return BOIL_OK;
        }
    }
    return BOIL_NO_ROOT;
}

/* Mode and temperature, and the thermodynamics at it. */
static int look_at_solution(boil_bath *b, const double y[], boil_bath_view *v, boil_heat *heat, boil_slope *slope)
{
    v->mixture = mixture_of(y);
    for (int i = BATH_WATER; i <= BATH_NANO2; i++)
        if (!(y[i] >= 0) || !(y[BATH_WATER] > 0))
            return BOIL_NOT_FINITE;
    v->mass_kg = boil_mixture_mass(&v->mixture);
    int outcome = boil_solution_boiling_point(&b->air, &v->mixture, &b->boil_guess, &v->boiling_point_K, slope);
    if (outcome != BOIL_OK)
        return outcome;
    v->equivalent_molality = b->boil_guess.equivalent_molality;
    if (b->boiling) {
        v->temperature_K = b->temperature_guess_K = v->boiling_point_K;
        *heat = boil_solution_heat(&v->mixture, v->temperature_K);
    } else {
        outcome = quiet_temperature(b, &v->mixture, y[BATH_HEAT], &v->temperature_K, heat);
        if (outcome != BOIL_OK)
            return outcome;
    }
    v->density_kg_m3 = boil_solution_density(&v->mixture, v->temperature_K);
    v->heat_capacity_J_K =
        heat->heat_capacity_J_K + b->steel_kg * boil_metal_heat_capacity(&b->steel, v->temperature_K);
    v->range = boil_solution_range(&v->mixture, v->temperature_K, v->equivalent_molality);
    return BOIL_OK;
}

static void look_at_pool(const boil_bath *b, double t, const double y[], boil_bath_view *v)
{
    const boil_plant *p = b->plant;
    v->vapour_kg_m3 = boil_bath_steam_density(b, v->temperature_K);
    v->drift_velocity_m_s = boil_pool_drift_velocity(&p->pool, p->transport.surface_tension_N_m, v->density_kg_m3,
                                                     v->vapour_kg_m3);
    v->solution_m3 = v->mass_kg / v->density_kg_m3;
    double held_m3 = fmax(0, y[STEAM_HELD]) / v->vapour_kg_m3;
    v->steam_velocity_m_s = boil_pool_steam_velocity(&p->pool, v->drift_velocity_m_s, held_m3, v->solution_m3);
    v->leaving_kg_s = v->steam_velocity_m_s * b->area_m2 * v->vapour_kg_m3;
    v->void_upper = held_m3 / (held_m3 + v->solution_m3);
    v->void_lower = boil_pool_void_lower(&p->pool, v->drift_velocity_m_s, v->steam_velocity_m_s);
    v->displaced_m3 = 0;
    for (size_t i = 0; i < b->bodies_count; i++)
        v->displaced_m3 += b->bodies[i].displaced_m3 * boil_bath_body_immersed(&b->bodies[i], t);
    v->stirring_W_kg = BOIL_GRAVITY * v->steam_velocity_m_s;
}

/* Wave that a load raises as it is lowered: 1.5 times the displaced flow over the area, for one period of the tank's first
   sloshing mode, f = sqrt(g pi/L tanh(pi d/L))/(2 pi). Judgement, errs high. */
static double lowering_surge(const boil_bath *b, double t, double depth_m)
{
    double flow = 0, L = boil_tank_longest_side(&b->plant->tank);
    for (size_t i = 0; i < b->bodies_count; i++) {
        const boil_bath_body *o = &b->bodies[i];
        if (t >= o->in_start_s && t < o->in_end_s)
            flow += o->displaced_m3 / (o->in_end_s - o->in_start_s);
    }
    double period = 2 * BOIL_PI / sqrt(BOIL_GRAVITY * BOIL_PI / L * tanh(BOIL_PI * depth_m / L));
    return 1.5 * flow / b->area_m2 * period;
}

static void look_at_levels(const boil_bath *b, double t, boil_bath_view *v)
{
    double other = v->displaced_m3 + v->layer_m * b->area_m2;
    v->still_level_m = (v->solution_m3 + other) / b->area_m2;
    v->surge_m = lowering_surge(b, t, v->still_level_m);
    v->level_m = (v->solution_m3 / (1 - v->void_upper) + other) / b->area_m2 + v->surge_m;
    v->level_lower_m = (v->solution_m3 / (1 - v->void_lower) + other) / b->area_m2;
}

static boil_liquid liquid_of(const boil_bath *b, const boil_bath_view *v, double heat_capacity_J_K)
{
    const boil_transport *x = &b->plant->transport;
    return (boil_liquid){v->density_kg_m3, heat_capacity_J_K / v->mass_kg, x->viscosity_Pa_s, x->conductivity_W_mK,
                         x->expansion_1_K};
}

/* Temperature of the layer. While it has next to no mass it is that of the water that began it. */
static double layer_temperature(const boil_bath *b, const double y[])
{
    const double seed_kg = 1e-6;
    if (b->layer == BOIL_LAYER_BOILS)
        return b->air.saturation_K;
    double m = fmax(0, y[LAYER_MASS]);
    double h = (m > 0 ? y[LAYER_HEAT] + seed_kg * b->layer_fresh_J_kg : b->layer_fresh_J_kg * seed_kg) / (m + seed_kg);
    return boil_water_temperature(h);
}

static void look_at_feeds(const boil_bath *b, double t, boil_bath_view *v)
{
    v->feed_kg_s = v->feed_W = 0;
    for (size_t i = 0; i < b->feeds_count; i++) {
        const boil_bath_feed *f = &b->feeds[i];
        if (t >= f->start_s && t < f->end_s) {
            v->feed_kg_s += f->rate_kg_s;
            v->feed_W += f->rate_kg_s * f->enthalpy_J_kg;
        }
    }
}

static double water_pressure(const void *nothing, double T, double *slope)
{
    (void)nothing;
    *slope = boil_water_saturation_pressure_slope(T);
    return boil_water_saturation_pressure(T);
}

/* Everything the layer exchanges, but for its own boiling. */
static int look_at_layer(boil_bath *b, double t, const double y[], const boil_liquid *liquid, boil_bath_view *v,
                         double *cover)
{
    const boil_plant *p = b->plant;
    *cover = v->layer_kg = v->layer_m = v->layer_mixing_kg_s = v->layer_mixing_slope_kg_s = v->layer_W = 0;
    v->layer_K = v->temperature_K;
    v->layer_surface = (boil_surface_flow){.skin_K = v->temperature_K};
    double depth = v->solution_m3 / b->area_m2;
    v->mixing_time_s =
        boil_pool_mixing_time(&p->pool, v->stirring_W_kg, boil_tank_equivalent_radius(&p->tank), depth);
    if (b->layer == BOIL_LAYER_NONE)
        return BOIL_OK;
    v->layer_kg = fmax(0, y[LAYER_MASS]);
    v->layer_K = layer_temperature(b, y);
    if (!(v->layer_K > 200 && v->layer_K < 500))
        return BOIL_NOT_FINITE;
    double water_kg_m3 = boil_water_density(v->layer_K);
    v->layer_m = v->layer_kg / water_kg_m3 / b->area_m2;
    *cover = boil_layer_cover(&p->layer, v->layer_m);
    double plume = cbrt(BOIL_GRAVITY * liquid->expansion_1_K * fmax(0, v->heater_W) * depth /
                        (liquid->density_kg_m3 * liquid->heat_capacity_J_kgK * b->area_m2));
    boil_layer_stirring s = {b->area_m2,       depth,           v->density_kg_m3,
                             water_kg_m3,      v->stirring_W_kg, v->mixing_time_s,
                             hypot(plume, b->lowering_m_s)};
    v->layer_mixing_kg_s = boil_layer_mixing(&p->layer, &s, v->layer_kg, *cover, &v->layer_mixing_slope_kg_s);
    double difference = v->temperature_K - v->layer_K;
    double side = boil_bath_side_coefficient(liquid, 0.1, difference, v->steam_velocity_m_s);
    v->layer_W = difference * boil_layer_conductance(&p->layer, b->area_m2, *cover, v->layer_m, t - b->layer_since_s, side);
    boil_vapour_pressure water = {water_pressure, NULL};
    int outcome = boil_surface_exchange(&p->losses, &p->room, &water, b->area_m2 * *cover, v->layer_K,
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

static int look_at_surface(boil_bath *b, double cover, boil_bath_view *v)
{
    const boil_plant *p = b->plant;
    solution_surface s = {b, &v->mixture};
    boil_vapour_pressure vapour = {solution_pressure, &s};
    if (!(b->skin_guess.equivalent_molality > 0))
        b->skin_guess = b->boil_guess;
    int outcome = boil_surface_exchange(&p->losses, &p->room, &vapour, b->area_m2 * (1 - cover), v->temperature_K,
                                        v->leaving_kg_s * (1 - cover), b->skin_guess_K, &v->surface);
    b->skin_guess_K = v->surface.skin_K;
    v->wall_W = boil_wall_loss(&p->losses, &p->tank, &p->room, v->temperature_K);
    return outcome;
}

static void look_at_loads(boil_bath *b, double t, const double y[], const boil_liquid *liquid, boil_bath_view *v,
                          double dydt[])
{
    v->loads_W = 0;
    for (size_t i = 0; i < b->bodies_count; i++) {
        const boil_bath_body *o = &b->bodies[i];
        const double *own = y + BATH_FIXED + o->at;
        double rates[BOIL_BODY_UNKNOWNS_MAX];
        double h = o->coefficient_W_m2K;
        if (!(h > 0))
            h = boil_bath_side_coefficient(liquid, o->body.height_m, v->temperature_K - own[0], v->steam_velocity_m_s);
        v->loads_W += boil_body_rates(&o->body, own, v->temperature_K, h, boil_bath_body_immersed(o, t), rates);
        if (dydt)
            memcpy(dydt + BATH_FIXED + o->at, rates, (size_t)o->body.unknowns * sizeof(double));
    }
}

/* Boiling of the layer itself. Its temperature is locked to Tsat, so all heat becomes steam: W (hv - hw) = heat, the feed's
   warming paid. It ends when the heat falls to what evaporation without boiling would take: where the temperature of a layer
   at Tsat would fall. */
static void look_at_layer_boil(const boil_bath *b, boil_bath_view *v)
{
    v->layer_boiled_kg_s = 0;
    v->layer_boil_margin_W = 0;
    if (b->layer != BOIL_LAYER_BOILS)
        return;
    double hw = boil_water_enthalpy(v->layer_K);
    double heat = v->layer_W - v->layer_surface.radiation_W - v->layer_surface.convection_W + v->feed_W -
                  v->feed_kg_s * hw;
    v->layer_boiled_kg_s = heat / (boil_bath_steam_enthalpy(b, b->air.saturation_K) - hw);
    v->layer_boil_margin_W =
        heat - v->layer_surface.evaporation_kg_s * (boil_water_vapour_enthalpy(v->layer_surface.skin_K) - hw);
    v->layer_surface.evaporation_kg_s = 0;
}

/* Equation (1) of bath.h. */
static void look_at_steam(const boil_bath *b, const boil_heat *heat, const boil_slope *slope, double water_J_kg,
                          double vapour_J_kg, boil_bath_view *v)
{
    double k_water = heat->water + v->heat_capacity_J_K * slope->water;
    double Q = v->heater_W - v->wall_W - v->surface.radiation_W - v->surface.convection_W - v->loads_W - v->layer_W;
    double spare = Q + v->layer_mixing_kg_s * (water_J_kg - k_water) -
                   v->surface.evaporation_kg_s * (vapour_J_kg - k_water);
    double latent = boil_bath_steam_enthalpy(b, v->temperature_K) - k_water;
    v->steam_if_boiling_kg_s = spare / latent;
    v->calm_steam_kg_s = fmax(0, Q + v->loads_W + v->layer_W) / latent;
    v->steam_kg_s = b->boiling ? v->steam_if_boiling_kg_s : 0;
    v->water_cooling_W = v->layer_mixing_kg_s * (k_water - water_J_kg);
    v->loop = 1;
    if (b->boiling && v->water_cooling_W > 0 && v->leaving_kg_s > 0)
        v->loop += fmin(1, fmax(0, v->steam_kg_s / v->leaving_kg_s)) * (k_water - water_J_kg) / latent *
                   v->layer_mixing_slope_kg_s / v->leaving_kg_s;
    v->air_W = v->surface.radiation_W + v->surface.convection_W + v->layer_surface.radiation_W +
               v->layer_surface.convection_W;
}

static void rates_of(const boil_bath *b, const double y[], double water_J_kg, double vapour_J_kg,
                     const boil_bath_view *v, double dydt[])
{
    double lag = b->plant->heater.lag_s;
    double mixing = v->layer_mixing_kg_s, e = v->surface.evaporation_kg_s, e_layer = v->layer_surface.evaporation_kg_s;
    double steam_J = v->steam_kg_s * boil_bath_steam_enthalpy(b, v->temperature_K);
    double layer_J = e_layer * boil_water_vapour_enthalpy(v->layer_surface.skin_K) +
                     v->layer_boiled_kg_s * boil_bath_steam_enthalpy(b, b->air.saturation_K);
    double layer_air = v->layer_surface.radiation_W + v->layer_surface.convection_W;
    dydt[BATH_WATER] = mixing - e - v->steam_kg_s;
    dydt[BATH_NAOH] = dydt[BATH_NANO3] = dydt[BATH_NANO2] = 0;
    dydt[BATH_HEAT] = v->heater_W - v->wall_W - v->surface.radiation_W - v->surface.convection_W - v->loads_W -
                      v->layer_W + mixing * water_J_kg - e * vapour_J_kg - steam_J;
    dydt[LAYER_MASS] = b->layer == BOIL_LAYER_NONE ? 0 : v->feed_kg_s - mixing - e_layer - v->layer_boiled_kg_s;
    dydt[LAYER_HEAT] =
        b->layer == BOIL_LAYER_NONE ? 0 : v->feed_W + v->layer_W - layer_air - mixing * water_J_kg - layer_J;
    dydt[STEAM_HELD] = (v->steam_kg_s - v->leaving_kg_s) / v->loop;
    dydt[HEATER_OUTPUT] = lag > 0 ? (b->heater_set_W - y[HEATER_OUTPUT]) / lag : 0;
    dydt[TOTAL_STEAM] = v->steam_kg_s;
    dydt[TOTAL_EVAPORATED] = e + e_layer;
    dydt[TOTAL_LAYER_BOILED] = v->layer_boiled_kg_s;
    dydt[TOTAL_WATER_IN] = v->feed_kg_s;
    dydt[HEAT_FROM_HEATER] = v->heater_W;
    dydt[HEAT_TO_WALLS] = v->wall_W;
    dydt[HEAT_TO_AIR] = v->air_W;
    dydt[HEAT_TO_LOADS] = v->loads_W;
    dydt[HEAT_WITH_VAPOUR] = steam_J + e * vapour_J_kg + layer_J;
    dydt[HEAT_WITH_WATER] = v->feed_W;
}

int boil_bath_look(boil_bath *b, double t, const double y[], boil_bath_view *v, double dydt[])
{
    boil_heat heat;
    boil_slope slope;
    double cover;
    int outcome = look_at_solution(b, y, v, &heat, &slope);
    if (outcome != BOIL_OK)
        return outcome;
    v->heater_W = b->plant->heater.lag_s > 0 ? y[HEATER_OUTPUT] : b->heater_set_W;
    look_at_pool(b, t, y, v);
    look_at_feeds(b, t, v);
    boil_liquid liquid = liquid_of(b, v, heat.heat_capacity_J_K);
    outcome = look_at_layer(b, t, y, &liquid, v, &cover);
    if (outcome == BOIL_OK)
        outcome = look_at_surface(b, cover, v);
    if (outcome != BOIL_OK)
        return outcome;
    look_at_levels(b, t, v);
    look_at_loads(b, t, y, &liquid, v, dydt);
    look_at_layer_boil(b, v);
    double water_J_kg = b->layer == BOIL_LAYER_NONE ? 0 : boil_water_enthalpy(v->layer_K);
    double vapour_J_kg = boil_water_vapour_enthalpy(v->surface.skin_K);
    look_at_steam(b, &heat, &slope, water_J_kg, vapour_J_kg, v);
    if (!isfinite(v->steam_if_boiling_kg_s))
        return BOIL_NOT_FINITE;
    if (dydt)
        rates_of(b, y, water_J_kg, vapour_J_kg, v, dydt);
    return BOIL_OK;
}

void boil_bath_guards(const boil_bath *b, const boil_bath_view *v, double g[BATH_GUARDS])
{
    g[BATH_GUARD_MODE] = b->boiling ? -v->steam_kg_s : v->temperature_K - v->boiling_point_K;
    g[BATH_GUARD_LAYER] = b->layer == BOIL_LAYER_STILL   ? v->layer_K - b->air.saturation_K
                          : b->layer == BOIL_LAYER_BOILS ? -v->layer_boil_margin_W
                                                         : -1;
    bool ending = b->layer != BOIL_LAYER_NONE && !(v->feed_kg_s > 0);
    g[BATH_GUARD_LAYER_GONE] = ending ? 1e-6 - v->layer_kg / v->mass_kg : -1;
    g[BATH_GUARD_RANGE] = -v->range.margin;
    g[BATH_GUARD_RIM] = v->level_m - b->plant->tank.depth_m;
}

double boil_bath_inventory(boil_bath *b, double t, const double y[])
{
    boil_bath_view v;
    if (boil_bath_look(b, t, y, &v, NULL) != BOIL_OK)
        return (double)NAN;
    return boil_solution_heat(&v.mixture, v.temperature_K).enthalpy_J + steel_enthalpy(b, v.temperature_K) +
           y[LAYER_HEAT];
}

int boil_bath_change_mode(boil_bath *b, double t, double y[], bool boiling)
{
    boil_bath_view v;
    int outcome = boil_bath_look(b, t, y, &v, NULL);
    if (outcome != BOIL_OK)
        return outcome;
    double T = v.boiling_point_K; /* at a change of mode T = Tb whichever way */
    y[BATH_HEAT] = boil_solution_heat(&v.mixture, T).enthalpy_J + steel_enthalpy(b, T);
    b->temperature_guess_K = T;
    b->boiling = boiling;
    return BOIL_OK;
}

/* A fixed point that contracts by a few per cent: the steam's enthalpy is nearly all of hv - K_water. */
double boil_bath_flash(boil_bath *b, const double y[], double water_kg, double heat_J)
{
    const double pace_J_kg = 2.8e6;
    double flash = 0, T;
    boil_solution_guess guess = b->boil_guess;
    for (int i = 0; i < 60; i++) {
        boil_mixture m = mixture_of(y);
        m.water += water_kg - flash;
        if (!(m.water > 0) || boil_solution_boiling_point(&b->air, &m, &guess, &T, NULL) != BOIL_OK)
            return (double)NAN;
        double inventory = boil_solution_heat(&m, T).enthalpy_J + steel_enthalpy(b, T);
        double surplus = y[BATH_HEAT] + heat_J - flash * boil_bath_steam_enthalpy(b, T) - inventory;
        flash += surplus / pace_J_kg;
        if (fabs(surplus) < 1e-15 * fabs(y[BATH_HEAT]))
            break;
    }
    return flash;
}

static int flash_remnant(boil_bath *b, double y[], double water_kg, double heat_J)
{
    double flash = boil_bath_flash(b, y, water_kg, heat_J);
    if (!isfinite(flash))
        return BOIL_NO_ROOT;
    y[BATH_WATER] += water_kg - flash;
    double T;
    boil_mixture m = mixture_of(y);
    if (boil_solution_boiling_point(&b->air, &m, &b->boil_guess, &T, NULL) != BOIL_OK)
        return BOIL_NO_ROOT;
    double steam_J = flash * boil_bath_steam_enthalpy(b, T);
    y[BATH_HEAT] += heat_J - steam_J;
    y[TOTAL_STEAM] += flash;
    y[HEAT_WITH_VAPOUR] += steam_J;
    y[STEAM_HELD] = fmax(0, y[STEAM_HELD] + flash);
    return BOIL_OK;
}

int boil_bath_absorb_layer(boil_bath *b, double y[])
{
    double water = y[LAYER_MASS], heat_J = y[LAYER_HEAT];
    y[LAYER_MASS] = y[LAYER_HEAT] = 0;
    b->layer = BOIL_LAYER_NONE;
    if (b->boiling)
        return flash_remnant(b, y, water, heat_J);
    y[BATH_WATER] += water;
    y[BATH_HEAT] += heat_J;
    return BOIL_OK;
}

/* Steady boil: the steam leaving equals the steam formed. Evaporation falls as steam leaves, so the formed steam rises with
   it: from the state with no steam, let what is formed leave until nothing changes. */
static int steady_boil(boil_bath *b, double y[], bool *boils)
{
    boil_bath_view v;
    b->boiling = true;
    *boils = true;
    for (int i = 0; i < 2000; i++) {
        int outcome = boil_bath_look(b, 0, y, &v, NULL);
        if (outcome != BOIL_OK)
            return outcome;
        if (!(v.steam_kg_s > 0)) {
            *boils = false;
            y[STEAM_HELD] = 0;
            return BOIL_OK;
        }
        if (fabs(v.steam_kg_s - v.leaving_kg_s) < 1e-12)
            break;
        double velocity = v.steam_kg_s / (b->area_m2 * v.vapour_kg_m3);
        y[STEAM_HELD] = v.vapour_kg_m3 * boil_pool_steam_held(&b->plant->pool, v.drift_velocity_m_s, velocity,
                                                             v.solution_m3);
    }
    return BOIL_OK;
}

int boil_bath_init(boil_bath *b, const boil_plant *p, double y[])
{
    boil_charge_state charge;
    int outcome = boil_plant_charge(p, &charge);
    if (outcome != BOIL_OK)
        return outcome;
    *b = (boil_bath){.plant = p,
                     .air = boil_conditions_at(p->room.pressure_Pa, p->elevation_factor),
                     .area_m2 = boil_tank_area(&p->tank),
                     .steel_kg = boil_tank_wetted_steel(&p->tank),
                     .steel = boil_carbon_steel(),
                     .temperature_guess_K = charge.temperature_K,
                     .skin_guess_K = charge.temperature_K - 5,
                     .layer_skin_guess_K = p->room.temperature_K};
    fit_steam(b);
    memset(y, 0, BATH_FIXED * sizeof *y);
    y[BATH_WATER] = charge.mixture.water;
    for (int i = 0; i < BOIL_SALTS; i++)
        y[BATH_NAOH + i] = charge.mixture.salt[i];
    y[BATH_HEAT] = boil_solution_heat(&charge.mixture, charge.temperature_K).enthalpy_J +
                   steel_enthalpy(b, charge.temperature_K);
    b->heater_set_W = boil_heater_steady_output(&p->heater, p->heater.dial);
    bool hot = charge.temperature_K >= charge.boiling_point_K - 1e-9;
    y[HEATER_OUTPUT] = hot ? b->heater_set_W : 0;
    bool boils = false;
    if (hot && (outcome = steady_boil(b, y, &boils)) != BOIL_OK)
        return outcome;
    b->boiling = boils;
    return BOIL_OK;
}

void boil_bath_free(boil_bath *b)
{
    free(b->bodies);
    free(b->feeds);
    b->bodies = NULL;
    b->feeds = NULL;
    b->bodies_count = b->feeds_count = b->bodies_room = b->feeds_room = 0;
}
