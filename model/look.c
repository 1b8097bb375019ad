#include <math.h>
#include <string.h>

#include "bath.h"
#include "boil.h"
#include "saturation.h"
#include "solids.h"
#include "water.h"

/* look.c -- everything that follows from a state: flows of mass and heat, levels, and the rates of all unknowns. The order is
   that of cause: solution and temperature, pool, streams, layer, surface, loads, salts, and last the steam, which takes what
   heat is left. */

/* T at which the bath holds the enthalpy H. */
static int quiet_temperature(boil_bath *b, const double y[], double *temperature, boil_bath_heat *heat)
{
    double T = b->temperature_guess_K;
    for (int i = 0; i < 30; i++) {
        *heat = boil_bath_heat_at(b, y, T);
        double step = (y[BATH_HEAT] - heat->total_J) / heat->capacity_J_K;
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

/* A bath may be carried on as a supersaturated liquid to five kelvin below its hydroxide's liquidus; there it ends. */
static void watch_liquidus(boil_bath_view *v)
{
    const double carried_on_K = 5, per_kelvin = 100; /* the scale of boil_solution_range's margins */
    if (v->temperature_K > BOIL_ZERO_CELSIUS + 140)
        return;
    double left = boil_above_liquidus(&v->mixture, v->temperature_K) + carried_on_K;
    if (left < per_kelvin * v->range.margin)
        v->range = (boil_range){"temperature of a bath whose hydroxide crystallises", "K", v->temperature_K,
                                v->temperature_K - left, left / per_kelvin};
}

/* Mode and temperature, and the thermodynamics at it. */
static int look_at_solution(boil_bath *b, const double y[], boil_bath_view *v, boil_bath_heat *heat, boil_slope *slope)
{
    v->mixture = boil_bath_mixture(y);
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
        *heat = boil_bath_heat_at(b, y, v->temperature_K);
    } else {
        outcome = quiet_temperature(b, y, &v->temperature_K, heat);
        if (outcome != BOIL_OK)
            return outcome;
    }
    v->density_kg_m3 = boil_solution_density(&v->mixture, v->temperature_K);
    v->heat_capacity_J_K = heat->capacity_J_K;
    v->range = boil_solution_range(v->temperature_K, v->equivalent_molality);
    watch_liquidus(v);
    return BOIL_OK;
}

static void look_at_heater(const boil_bath *b, const double y[], boil_bath_view *v)
{
    const boil_heater *h = &b->plant->heater;
    v->heater_target_W = b->heat_cut ? 0 : boil_heater_output(h, b->dial, v->temperature_K);
    v->heater_W = h->lag_s > 0 ? y[HEATER_OUTPUT] : v->heater_target_W;
}

static void look_at_control(const boil_bath *b, const double y[], boil_bath_view *v)
{
    const boil_control *c = &b->plant->control;
    v->sensor_K = c->sensor_lag_s > 0 ? y[SENSOR] : v->temperature_K;
    v->valve_open = c->mode != BOIL_CONTROL_NONE && b->valve_set && (b->boiling || !c->only_while_boiling);
    v->valve_kg_s = v->valve_open ? c->rate_kg_s : 0;
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
    if (b->mixer_on)
        v->stirring_W_kg += boil_plant_mixer_power(p) / v->mass_kg;
}

/* Wave that a load raises as it is lowered: 1.5 times the displaced flow over the area, for one period of the tank's first
   sloshing mode, f = sqrt(g pi/L tanh(pi d/L))/(2 pi). Judgement, errs high. */
static double lowering_surge(const boil_bath *b, double depth_m)
{
    double flow = 0, L = boil_tank_longest_side(&b->plant->tank);
    for (size_t i = 0; i < b->bodies_count; i++) {
        const boil_bath_body *o = &b->bodies[i];
        if (o->lowering)
            flow += o->displaced_m3 / (o->in_end_s - o->in_start_s);
    }
    double period = 2 * BOIL_PI / sqrt(BOIL_GRAVITY * BOIL_PI / L * tanh(BOIL_PI * depth_m / L));
    return 1.5 * flow / b->area_m2 * period;
}

static double solids_volume(const double y[])
{
    double volume = 0;
    for (int i = 0; i < BOIL_SALTS; i++)
        volume += fmax(0, y[SOLID_NAOH + i]) / boil_salt_solid_density(i);
    return volume;
}

static void look_at_levels(const boil_bath *b, const double y[], boil_bath_view *v)
{
    double other = v->displaced_m3 + v->layer_m * b->area_m2 + solids_volume(y);
    v->still_level_m = (v->solution_m3 + other) / b->area_m2;
    v->surge_m = lowering_surge(b, v->still_level_m);
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

/* Streams from outside, and what they add to the steam formula's numerator: each its enthalpy less what its substance counts
   for in the boiling bath (K_i, or the solid's own enthalpy). */
typedef struct {
    double water_W;                     /* onto the surface */
    double liquid_W;
    double salts_W;
    double component_kg_s[1 + BOIL_SALTS]; /* of liquid: water and each salt */
    double salt_kg_s[BOIL_SALTS];       /* dry */
} boil_streams;

static boil_streams look_at_feeds(const boil_bath *b, boil_bath_view *v)
{
    boil_streams s = {0, 0, 0, {0}, {0}};
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
    int outcome = boil_surface_exchange(&p->losses, &b->room, &water, b->area_m2 * *cover, v->layer_K,
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
    int outcome = boil_surface_exchange(&p->losses, &b->room, &vapour, b->area_m2 * (1 - cover), v->temperature_K,
                                        v->leaving_kg_s * (1 - cover), b->skin_guess_K, &v->surface);
    b->skin_guess_K = v->surface.skin_K;
    v->wall_W = boil_wall_loss(&p->losses, &p->tank, &b->room, v->temperature_K);
    return outcome;
}

/* A lid takes the place of the open air. It condenses what its own loss to the room carries away, UA (T - T_room)/latent, at
   most what there is; a share drips back as water, the rest leaks out. No more evaporates than it condenses; steam that boils
   off lifts it and leaves. Nothing radiates past it. */
static void look_at_lid(const boil_bath *b, boil_bath_view *v)
{
    v->condensate_kg_s = v->condensate_J_kg = 0;
    if (!b->lid_on)
        return;
    const boil_fittings *f = &b->plant->fittings;
    double T = fmin(v->temperature_K, b->air.saturation_K), water_J = boil_water_enthalpy(T);
    double lost = f->lid_W_m2K * b->area_m2 * fmax(0, v->temperature_K - b->room.temperature_K);
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
static void look_at_layer_boil(const boil_bath *b, const boil_streams *s, boil_bath_view *v)
{
    v->layer_boiled_kg_s = 0;
    v->layer_boil_margin_W = 0;
    if (b->layer != BOIL_LAYER_BOILS)
        return;
    double hw = boil_water_enthalpy(v->layer_K);
    double heat = v->layer_W - v->layer_surface.radiation_W - v->layer_surface.convection_W + s->water_W -
                  v->feed_kg_s * hw;
    v->layer_boiled_kg_s = heat / (boil_bath_steam_enthalpy(b, b->air.saturation_K) - hw);
    v->layer_boil_margin_W =
        heat - v->layer_surface.evaporation_kg_s * (boil_water_vapour_enthalpy(v->layer_surface.skin_K) - hw);
    v->layer_surface.evaporation_kg_s = 0;
}

/* Salt on its way into solution: dissolving from suspension and from the bed, settling, being stirred up again. */
static void look_at_solids(const boil_bath *b, const double y[], boil_bath_view *v)
{
    double solid[BOIL_SALTS], all = 0;
    for (int i = 0; i < BOIL_SALTS; i++)
        all += solid[i] = fmax(0, y[SOLID_NAOH + i]);
    v->undissolved_kg = all;
    v->settling_kg_s = v->bed_m = v->bed_superheat_K = 0;
    memset(v->dissolving_kg_s, 0, sizeof v->dissolving_kg_s);
    if (!(all > 0))
        return;
    const boil_plant *p = b->plant;
    double bed = fmin(all, fmax(0, y[BED_MASS]));
    boil_solids_place place = {p->fittings.grain_m, v->density_kg_m3, p->transport.viscosity_Pa_s,
                               v->stirring_W_kg,    b->area_m2,       v->solution_m3 / b->area_m2};
    boil_solids_flow f = boil_solids_exchange(&place, all - bed, bed);
    for (int i = 0; i < BOIL_SALTS; i++)
        v->dissolving_kg_s[i] = (f.from_suspension_kg_s + f.from_bed_kg_s) * solid[i] / all;
    v->settling_kg_s = f.settling_kg_s - f.stirred_up_kg_s - f.from_bed_kg_s;
    v->bed_m = f.bed_m;
    if (p->tank.heated == BOIL_HEATED_FROM_BELOW)
        v->bed_superheat_K = boil_solids_bed_superheat(f.bed_m, fmax(0, v->heater_W) / b->area_m2);
}

static void look_at_drag(const boil_bath *b, boil_bath_view *v)
{
    v->drag_kg_s = 0;
    for (size_t i = 0; i < b->bodies_count; i++) {
        const boil_bath_body *o = &b->bodies[i];
        if (o->lifting)
            v->drag_kg_s += o->drag_out_kg / (o->out_end_s - o->out_start_s);
    }
}

/* What a kilogram of a component counts for in the boiling bath: K_i of bath.h. */
static double counts(double partial_J_kg, double capacity_J_K, double slope_K_kg)
{
    return partial_J_kg + capacity_J_K * slope_K_kg;
}

/* Equation (1) of bath.h. */
static void look_at_steam(const boil_bath *b, const boil_bath_heat *heat, const boil_slope *slope, const boil_streams *s,
                          double water_J_kg, double vapour_J_kg, boil_bath_view *v)
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
    v->air_W = v->surface.radiation_W + v->surface.convection_W + v->layer_surface.radiation_W +
               v->layer_surface.convection_W;
}

/* Heat and mass of one moment, ready to be put where they belong. */
typedef struct {
    double water_J_kg, vapour_J_kg, solution_J_kg; /* of water mixing in, of evaporation, of the bath itself */
    double steam_W, layer_vapour_W;
} boil_heats;

static void bath_rates(const boil_bath_view *v, const boil_streams *s, const boil_heats *h, double dydt[])
{
    double e = v->surface.evaporation_kg_s, drag = v->drag_kg_s / v->mass_kg;
    dydt[BATH_WATER] = v->layer_mixing_kg_s - e - v->steam_kg_s + s->component_kg_s[0] - drag * v->mixture.water;
    for (int i = 0; i < BOIL_SALTS; i++) {
        dydt[BATH_NAOH + i] = s->component_kg_s[1 + i] + v->dissolving_kg_s[i] - drag * v->mixture.salt[i];
        dydt[SOLID_NAOH + i] = s->salt_kg_s[i] - v->dissolving_kg_s[i];
    }
    dydt[BED_MASS] = v->settling_kg_s;
    dydt[BATH_HEAT] = v->heater_W - v->wall_W - v->surface.radiation_W - v->surface.convection_W - v->loads_W -
                      v->layer_W + v->layer_mixing_kg_s * h->water_J_kg - e * h->vapour_J_kg - h->steam_W + s->liquid_W +
                      s->salts_W - v->drag_kg_s * h->solution_J_kg;
}

static void layer_rates(const boil_bath *b, const boil_bath_view *v, const boil_streams *s, const boil_heats *h,
                        double dydt[])
{
    if (b->layer == BOIL_LAYER_NONE) {
        dydt[LAYER_MASS] = dydt[LAYER_HEAT] = 0;
        return;
    }
    double air = v->layer_surface.radiation_W + v->layer_surface.convection_W;
    dydt[LAYER_MASS] =
        v->feed_kg_s - v->layer_mixing_kg_s - v->layer_surface.evaporation_kg_s - v->layer_boiled_kg_s;
    dydt[LAYER_HEAT] = s->water_W + v->layer_W - air - v->layer_mixing_kg_s * h->water_J_kg - h->layer_vapour_W;
}

static void totals(const boil_bath_view *v, const boil_streams *s, const boil_heats *h, double dydt[])
{
    double salts = 1 - v->mixture.water / v->mass_kg;
    dydt[TOTAL_STEAM] = v->steam_kg_s;
    dydt[TOTAL_EVAPORATED] = v->surface.evaporation_kg_s + v->layer_surface.evaporation_kg_s;
    dydt[TOTAL_LAYER_BOILED] = v->layer_boiled_kg_s;
    dydt[TOTAL_WATER_IN] = v->feed_kg_s;
    dydt[TOTAL_VALVE] = v->valve_kg_s;
    dydt[TOTAL_CONDENSATE] = v->condensate_kg_s;
    dydt[TOTAL_LIQUID_IN] = v->liquid_kg_s;
    dydt[TOTAL_LIQUID_SALTS] = s->component_kg_s[1] + s->component_kg_s[2] + s->component_kg_s[3];
    dydt[TOTAL_SALTS_IN] = v->salts_kg_s;
    dydt[TOTAL_DRAG] = v->drag_kg_s;
    dydt[TOTAL_DRAG_SALTS] = v->drag_kg_s * salts;
    dydt[HEAT_FROM_HEATER] = v->heater_W;
    dydt[HEAT_TO_WALLS] = v->wall_W;
    dydt[HEAT_TO_AIR] = v->air_W;
    dydt[HEAT_TO_LOADS] = v->loads_W;
    dydt[HEAT_WITH_VAPOUR] = h->steam_W + v->surface.evaporation_kg_s * h->vapour_J_kg + h->layer_vapour_W;
    dydt[HEAT_WITH_WATER] = s->water_W;
    dydt[HEAT_WITH_LIQUID] = s->liquid_W;
    dydt[HEAT_WITH_SALTS] = s->salts_W;
    dydt[HEAT_WITH_DRAG] = v->drag_kg_s * h->solution_J_kg;
}

static void rates_of(const boil_bath *b, const double y[], const boil_bath_view *v, const boil_streams *s, boil_heats *h,
                     double dydt[])
{
    const boil_plant *p = b->plant;
    h->steam_W = v->steam_kg_s * boil_bath_steam_enthalpy(b, v->temperature_K);
    h->layer_vapour_W = v->layer_surface.evaporation_kg_s * boil_water_vapour_enthalpy(v->layer_surface.skin_K) +
                        v->layer_boiled_kg_s * boil_bath_steam_enthalpy(b, b->air.saturation_K);
    bath_rates(v, s, h, dydt);
    layer_rates(b, v, s, h, dydt);
    totals(v, s, h, dydt);
    dydt[STEAM_HELD] = (v->steam_kg_s - v->leaving_kg_s) / v->loop;
    dydt[HEATER_OUTPUT] = p->heater.lag_s > 0 ? (v->heater_target_W - y[HEATER_OUTPUT]) / p->heater.lag_s : 0;
    dydt[SENSOR] = p->control.sensor_lag_s > 0 ? (v->temperature_K - y[SENSOR]) / p->control.sensor_lag_s : 0;
}

int boil_bath_look(boil_bath *b, double t, const double y[], boil_bath_view *v, double dydt[])
{
    boil_bath_heat heat;
    boil_slope slope;
    double cover;
    int outcome = look_at_solution(b, y, v, &heat, &slope);
    if (outcome != BOIL_OK)
        return outcome;
    look_at_heater(b, y, v);
    look_at_control(b, y, v);
    look_at_pool(b, t, y, v);
    boil_streams s = look_at_feeds(b, v);
    boil_liquid liquid = liquid_of(b, v, heat.solution.heat_capacity_J_K);
    outcome = look_at_layer(b, t, y, &liquid, v, &cover);
    if (outcome == BOIL_OK)
        outcome = look_at_surface(b, cover, v);
    if (outcome != BOIL_OK)
        return outcome;
    look_at_lid(b, v);
    v->feed_kg_s += v->condensate_kg_s;
    s.water_W += v->condensate_kg_s * v->condensate_J_kg;
    look_at_levels(b, y, v);
    look_at_loads(b, t, y, &liquid, v, dydt);
    look_at_layer_boil(b, &s, v);
    look_at_solids(b, y, v);
    look_at_drag(b, v);
    boil_heats h = {.water_J_kg = b->layer == BOIL_LAYER_NONE ? 0 : boil_water_enthalpy(v->layer_K),
                    .vapour_J_kg = boil_water_vapour_enthalpy(v->surface.skin_K),
                    .solution_J_kg = heat.solution.enthalpy_J / v->mass_kg};
    look_at_steam(b, &heat, &slope, &s, h.water_J_kg, h.vapour_J_kg, v);
    if (!isfinite(v->steam_if_boiling_kg_s))
        return BOIL_NOT_FINITE;
    if (dydt)
        rates_of(b, y, v, &s, &h, dydt);
    return BOIL_OK;
}
