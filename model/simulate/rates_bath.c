#include <math.h>
#include <string.h>

#include "base/boil.h"
#include "properties/solubility.h"
#include "simulate/rates_parts.h"
#include "transfer/dissolution.h"

/* simulate/rates_bath.c -- the bath itself, its heater and control, and the steel in it. */

/* T at which the bath holds the enthalpy H. */
static int quiet_temperature(boil_bath *b, const double y[], double *temperature, boil_bath_heat *heat)
{
    double T = b->temperature_guess_K;
    for (int i = 0; i < 30; i++) {
        *heat = boil_bath_heat_at(b, y, T);
        double step = (y[BOIL_STATE_BATH_HEAT] - heat->total_J) / heat->capacity_J_K;
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
static void watch_liquidus(boil_rates_view *v)
{
    const double carried_on_K = 5, per_kelvin = 100; /* the scale of boil_solution_range's margins */
    if (v->temperature_K > BOIL_ZERO_CELSIUS + 140)
        return;
    double left = boil_solubility_above_liquidus(&v->mixture, v->temperature_K) + carried_on_K;
    if (left < per_kelvin * v->range.margin)
        v->range = (boil_range){v->equivalent_molality > 0 ? "temperature of a bath whose hydroxide crystallises"
                                                           : "temperature of water that freezes",
                                "K", v->temperature_K, v->temperature_K - left, left / per_kelvin};
}

/* A bath that is all but gone is none: what little salt there is would have ended a weaker one's range before. */
static void watch_depth(const boil_bath *b, boil_rates_view *v)
{
    const double least_m = 0.005, per_metre = 10;
    double depth = v->mass_kg / (v->density_kg_m3 * b->area_m2), left = depth - least_m;
    if (left < v->range.margin / per_metre)
        v->range = (boil_range){"depth of a bath that boils dry", "m", depth, least_m, per_metre * left};
}

/* Mode and temperature, and the thermodynamics at it. */
int boil_rates_of_solution(boil_bath *b, const double y[], boil_rates_view *v, boil_bath_heat *heat, boil_slope *slope)
{
    v->mixture = boil_bath_mixture(y);
    for (int i = BOIL_STATE_BATH_WATER; i <= BOIL_STATE_BATH_NANO2; i++)
        if (!(y[i] >= 0) || !(y[BOIL_STATE_BATH_WATER] > 0))
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
    watch_depth(b, v);
    return BOIL_OK;
}

void boil_rates_of_heater(const boil_bath *b, const double y[], boil_rates_view *v)
{
    const boil_heater *h = &b->plant->heater;
    v->heater_target_W = b->heat_cut ? 0 : boil_heater_output(h, b->dial, v->temperature_K);
    v->heater_W = h->lag_s > 0 ? y[BOIL_STATE_HEATER_OUTPUT] : v->heater_target_W;
}

void boil_rates_of_control(const boil_bath *b, const double y[], boil_rates_view *v)
{
    const boil_water_control *c = &b->plant->control;
    v->sensor_K = c->sensor_lag_s > 0 ? y[BOIL_STATE_SENSOR] : v->temperature_K;
    v->valve_open = c->mode != BOIL_WATER_CONTROL_NONE && b->valve_set && (b->boiling || !c->only_while_boiling);
    v->valve_kg_s = v->valve_open ? c->rate_kg_s : 0;
}

void boil_rates_of_pool(const boil_bath *b, double t, const double y[], boil_rates_view *v)
{
    const boil_plant *p = b->plant;
    v->vapour_kg_m3 = boil_bath_steam_density(b, v->temperature_K);
    v->drift_velocity_m_s =
        boil_swell_drift_velocity(&p->pool, p->transport.surface_tension_N_m, v->density_kg_m3, v->vapour_kg_m3);
    v->solution_m3 = v->mass_kg / v->density_kg_m3;
    double held_m3 = fmax(0, y[BOIL_STATE_STEAM_HELD]) / v->vapour_kg_m3;
    v->steam_velocity_m_s = boil_swell_steam_velocity(&p->pool, v->drift_velocity_m_s, held_m3, v->solution_m3);
    v->leaving_kg_s = v->steam_velocity_m_s * b->area_m2 * v->vapour_kg_m3;
    v->void_upper = held_m3 / (held_m3 + v->solution_m3);
    v->void_lower = boil_swell_void_lower(&p->pool, v->drift_velocity_m_s, v->steam_velocity_m_s);
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
        volume += fmax(0, y[BOIL_STATE_SOLID_NAOH + i]) / boil_salt_solid_density(i);
    return volume;
}

void boil_rates_of_levels(const boil_bath *b, const double y[], boil_rates_view *v)
{
    double other = v->displaced_m3 + v->layer_m * b->area_m2 + solids_volume(y);
    v->still_level_m = (v->solution_m3 + other) / b->area_m2;
    v->surge_m = lowering_surge(b, v->still_level_m);
    v->level_m = (v->solution_m3 / (1 - v->void_upper) + other) / b->area_m2 + v->surge_m;
    v->level_lower_m = (v->solution_m3 / (1 - v->void_lower) + other) / b->area_m2;
}

boil_convection_liquid boil_rates_of_liquid(const boil_bath *b, const boil_rates_view *v, double heat_capacity_J_K)
{
    const boil_transport *x = &b->plant->transport;
    return (boil_convection_liquid){v->density_kg_m3, heat_capacity_J_K / v->mass_kg, x->viscosity_Pa_s, x->conductivity_W_mK,
                                    x->expansion_1_K};
}

void boil_rates_of_loads(boil_bath *b, double t, const double y[], const boil_convection_liquid *liquid, boil_rates_view *v,
                         double dydt[])
{
    v->loads_W = 0;
    for (size_t i = 0; i < b->bodies_count; i++) {
        const boil_bath_body *o = &b->bodies[i];
        const double *own = y + BOIL_STATE_FIXED + o->at;
        double rates[BOIL_CONDUCTION_UNKNOWNS_MAX];
        double h = o->coefficient_W_m2K;
        if (!(h > 0))
            h = b->plant->pool.part_coefficient_factor *
                boil_convection_bath_side(liquid, o->body.height_m, v->temperature_K - own[0], v->steam_velocity_m_s);
        v->loads_W += boil_conduction_rates(&o->body, own, v->temperature_K, h, boil_bath_body_immersed(o, t), rates);
        if (dydt)
            memcpy(dydt + BOIL_STATE_FIXED + o->at, rates, (size_t)o->body.unknowns * sizeof(double));
    }
}

/* Salt on its way into solution: dissolving from suspension and from the bed, settling, being stirred up again. */
void boil_rates_of_solids(const boil_bath *b, const double y[], boil_rates_view *v)
{
    double solid[BOIL_SALTS], all = 0;
    for (int i = 0; i < BOIL_SALTS; i++)
        all += solid[i] = fmax(0, y[BOIL_STATE_SOLID_NAOH + i]);
    v->undissolved_kg = all;
    v->settling_kg_s = v->bed_m = v->bed_superheat_K = 0;
    memset(v->dissolving_kg_s, 0, sizeof v->dissolving_kg_s);
    if (!(all > 0))
        return;
    const boil_plant *p = b->plant;
    double bed = fmin(all, fmax(0, y[BOIL_STATE_BED_MASS]));
    boil_dissolution_place place = {p->fittings.grain_m, v->density_kg_m3, p->transport.viscosity_Pa_s,
                                    v->stirring_W_kg,    b->area_m2,       v->solution_m3 / b->area_m2};
    boil_dissolution_flow f = boil_dissolution_exchange(&place, all - bed, bed);
    for (int i = 0; i < BOIL_SALTS; i++)
        v->dissolving_kg_s[i] = (f.from_suspension_kg_s + f.from_bed_kg_s) * solid[i] / all;
    v->settling_kg_s = f.settling_kg_s - f.stirred_up_kg_s - f.from_bed_kg_s;
    v->bed_m = f.bed_m;
    if (p->tank.heated == BOIL_HEATED_FROM_BELOW)
        v->bed_superheat_K = boil_dissolution_bed_superheat(f.bed_m, fmax(0, v->heater_W) / b->area_m2);
}

void boil_rates_of_drag(const boil_bath *b, boil_rates_view *v)
{
    v->drag_kg_s = 0;
    for (size_t i = 0; i < b->bodies_count; i++) {
        const boil_bath_body *o = &b->bodies[i];
        if (o->lifting)
            v->drag_kg_s += o->drag_out_kg / (o->out_end_s - o->out_start_s);
    }
}
