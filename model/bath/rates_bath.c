#include <math.h>
#include <string.h>

#include "base/constants.h"
#include "base/larger.h"
#include "properties/solubility.h"
#include "properties/viscosity.h"
#include "properties/water.h"
#include "bath/rates.h"
#include "bath/rates_parts.h"
#include "transfer/dissolution.h"

/* bath/rates_bath.c -- the bath itself, its heater and control, and the salt in it. */

double boil_rates_spare_heat(const boil_rates_solution *s, const double more[BOIL_RATES_HELD])
{
    const boil_heat *h = &s->heat.solution;
    double spare_J = more[BOIL_STATE_BATH_HEAT] - h->water * more[BOIL_STATE_BATH_WATER];
    for (int i = 0; i < BOIL_SALTS; i++) {
        double solid_kg = more[BOIL_STATE_SOLID_NAOH + i];
        spare_J -= h->salt[i] * more[BOIL_STATE_BATH_NAOH + i];
        if (solid_kg != 0)
            spare_J -= solid_kg * boil_salt_solid_enthalpy(i, s->temperature_K);
    }
    return spare_J;
}

/* Where the temperature must be by now, from where it was found last. */
static double expected_temperature(const double y[], const boil_rates_guess *g)
{
    const double most_K = 5;
    double more[BOIL_RATES_HELD];
    if (!(g->solution.mass_kg > 0))
        return g->solution.temperature_K;
    for (size_t i = 0; i < BOIL_RATES_HELD; i++)
        more[i] = y[i] - g->held[i];
    double warmer_K = boil_rates_spare_heat(&g->solution, more) / g->solution.heat.capacity_J_K;
    return g->solution.temperature_K + boil_larger(-most_K, boil_smaller(most_K, warmer_K));
}

/* T at which the bath holds the enthalpy H. */
static boil_outcome quiet_temperature(const boil_bath *b, const double y[], const boil_rates_guess *g, double *temperature_K,
                                      boil_bath_heat *heat)
{
    const double near_K = 1e-6;
    double T = expected_temperature(y, g);
    for (int i = 0; i < 30; i++) {
        *heat = boil_bath_heat_at(b, y, T);
        double step = (y[BOIL_STATE_BATH_HEAT] - heat->total_J) / heat->capacity_J_K;
        T += fmax(-40, fmin(40, step));
        if (!(T > 200 && T < 600))
            return BOIL_NO_ROOT;
        if (fabs(step) < near_K) { /* the next correction is of second order in this one */
            *temperature_K = T;
            return BOIL_OK;
        }
    }
    return BOIL_NO_ROOT;
}

/* A bath may be carried on as a supersaturated liquid to five kelvin below its hydroxide's liquidus; there it ends. */
static boil_range range_of(const boil_mixture *m, double temperature_K, double equivalent_molality)
{
    const double carried_on_K = 5, per_kelvin = 100; /* the scale of boil_solution_range_at's margins */
    boil_range range = boil_solution_range_at(temperature_K, equivalent_molality);
    if (temperature_K > BOIL_ZERO_CELSIUS + 140)
        return range;
    double left = boil_solubility_above_liquidus(m, temperature_K) + carried_on_K;
    if (left < per_kelvin * range.margin)
        range = (boil_range){equivalent_molality > 0 ? "temperature of a bath whose hydroxide crystallises"
                                                     : "temperature of water that freezes",
                             "K", temperature_K, temperature_K - left, left / per_kelvin};
    return range;
}

/* A bath that is all but gone is none: what little salt there is would have ended a weaker one's range before. */
static boil_range or_depth(boil_range range, double depth_m)
{
    const double least_m = 0.005, per_metre = 10;
    double left = depth_m - least_m;
    if (left < range.margin / per_metre)
        return (boil_range){"depth of a bath that boils dry", "m", depth_m, least_m, per_metre * left};
    return range;
}

boil_range boil_rates_range(const boil_bath *b, const boil_rates_solution *s)
{
    return or_depth(range_of(&s->mixture, s->temperature_K, s->equivalent_molality), s->volume_m3 / b->area_m2);
}

static boil_convection_liquid to_convection(const boil_bath *b, const boil_rates_solution *s, boil_viscosity_table *v)
{
    const boil_transport *x = &b->plant->transport;
    return (boil_convection_liquid){s->density_kg_m3, s->heat.solution.heat_capacity_J_K / s->mass_kg,
                                    x->viscosity_factor * boil_viscosity_told(v, &s->mixture, s->temperature_K),
                                    x->conductivity_W_mK, x->expansion_1_K};
}

static boil_outcome find_solution(const boil_bath *b, const double y[], boil_rates_guess *g, boil_rates_solution *s)
{
    const double rounding = 1e-15; /* of a salt that is not there, beside the water */
    s->mixture = boil_bath_mixture(y);
    for (int i = BOIL_STATE_BATH_WATER; i <= BOIL_STATE_BATH_NANO2; i++)
        if (!(y[BOIL_STATE_BATH_WATER] > 0) || !(y[i] >= -rounding * y[BOIL_STATE_BATH_WATER]))
            return BOIL_NOT_FINITE;
    boil_outcome outcome =
        boil_boiling_curve_at(&g->tables->curve, &b->air, &s->mixture, &g->boiling, &s->boiling_point_K, &s->slope);
    if (outcome != BOIL_OK)
        return outcome;
    s->temperature_K = s->boiling_point_K;
    if (b->boiling)
        s->heat = boil_bath_heat_at(b, y, s->boiling_point_K);
    else if ((outcome = quiet_temperature(b, y, g, &s->temperature_K, &s->heat)) != BOIL_OK)
        return outcome;
    s->equivalent_molality = g->boiling.equivalent_molality;
    s->mass_kg = boil_mixture_mass(&s->mixture);
    s->density_kg_m3 = boil_solution_density(&s->mixture, s->temperature_K);
    s->volume_m3 = s->mass_kg / s->density_kg_m3;
    s->convection = to_convection(b, s, &g->tables->viscosity);
    return BOIL_OK;
}

boil_outcome boil_rates_of_solution(const boil_bath *b, const double y[], boil_rates_guess *g, boil_rates_solution *s)
{
    if (g->solution.mass_kg > 0 && g->boils == b->boiling && memcmp(g->held, y, sizeof g->held) == 0) {
        *s = g->solution;
        return BOIL_OK;
    }
    boil_outcome outcome = find_solution(b, y, g, s);
    if (outcome != BOIL_OK)
        return outcome;
    memcpy(g->held, y, sizeof g->held);
    g->boils = b->boiling;
    g->solution = *s;
    return BOIL_OK;
}

boil_rates_heater boil_rates_of_heater(const boil_bath *b, const double y[], double bath_K)
{
    const boil_heater *h = &b->plant->heater;
    double sensor_K = b->plant->heat_control.sensor_lag_s > 0 ? y[BOIL_STATE_HEAT_SENSOR] : bath_K;
    double target = boil_heater_output(h, boil_bath_fire(b, sensor_K), bath_K);
    return (boil_rates_heater){sensor_K, target, h->lag_s > 0 ? y[BOIL_STATE_HEATER_OUTPUT] : target};
}

boil_rates_control boil_rates_of_control(const boil_bath *b, const double y[], double bath_K)
{
    const boil_water_control *c = &b->plant->control;
    bool open = c->mode != BOIL_WATER_CONTROL_NONE && b->valve_set && ((b->boiling && b->valve_free) || !c->only_while_boiling);
    return (boil_rates_control){c->sensor_lag_s > 0 ? y[BOIL_STATE_SENSOR] : bath_K, open, open ? c->rate_kg_s : 0};
}

boil_rates_pool boil_rates_of_pool(const boil_bath *b, const double y[], const boil_rates_solution *s)
{
    const boil_plant *p = b->plant;
    boil_rates_pool o;
    o.vapour_kg_m3 = boil_bath_steam_density(b, s->temperature_K);
    o.drift_velocity_m_s =
        boil_swell_drift_velocity(&p->pool, p->transport.surface_tension_N_m, s->density_kg_m3, o.vapour_kg_m3);
    double held_m3 = boil_larger(0, y[BOIL_STATE_STEAM_HELD]) / o.vapour_kg_m3;
    o.steam_velocity_m_s = boil_swell_steam_velocity(&p->pool, o.drift_velocity_m_s, held_m3, s->volume_m3);
    o.leaving_kg_s = o.steam_velocity_m_s * b->area_m2 * o.vapour_kg_m3;
    o.void_upper = held_m3 / (held_m3 + s->volume_m3);
    o.void_lower = boil_swell_void_lower(&p->pool, o.drift_velocity_m_s, o.steam_velocity_m_s);
    o.stirring_W_kg = BOIL_GRAVITY * o.steam_velocity_m_s;
    o.agitation_m_s = o.steam_velocity_m_s;
    if (boil_bath_is_stirred(b)) {
        double mixer_W_kg = boil_plant_mixer_power(p) / s->mass_kg;
        o.stirring_W_kg += mixer_W_kg;
        o.agitation_m_s += boil_convection_as_gas(mixer_W_kg);
    }
    return o;
}

double boil_rates_salts_volume(const double y[])
{
    double m3 = 0;
    for (int i = 0; i < BOIL_SALTS; i++)
        m3 += boil_larger(0, y[BOIL_STATE_SOLID_NAOH + i]) / boil_salt_solid_density(i);
    return m3;
}

/* The bath as salt that dissolves in it sees it, and its brine. */
static boil_dissolution_place dissolving_place(const boil_bath *b, const boil_rates_solution *s, const double solid[BOIL_SALTS],
                                               double stirring_W_kg)
{
    const boil_mixture brine = boil_solubility_saturated(&s->mixture, solid, s->temperature_K);
    const double thicker = b->plant->transport.viscosity_factor, viscosity_Pa_s = s->convection.viscosity_Pa_s;
    const bool none_dissolves = /* the brine is the bath */
        brine.water == s->mixture.water && boil_mixture_salts(&brine) == boil_mixture_salts(&s->mixture);
    double brine_kg_m3 = boil_solution_density(&brine, s->temperature_K);
    double stronger =
        boil_mixture_salt_fraction(&brine) * brine_kg_m3 - boil_mixture_salt_fraction(&s->mixture) * s->density_kg_m3;
    return (boil_dissolution_place){
        .grain_m = b->plant->fittings.grain_m,
        .temperature_K = s->temperature_K,
        .liquid_kg_m3 = s->density_kg_m3,
        .viscosity_Pa_s = viscosity_Pa_s,
        .brine_kg_m3 = brine_kg_m3,
        .brine_viscosity_Pa_s = none_dissolves ? viscosity_Pa_s : thicker * boil_viscosity_solution(&brine, s->temperature_K),
        .strength_difference_kg_m3 = fmax(0, stronger),
        .stirring_W_kg = stirring_W_kg,
        .area_m2 = b->area_m2,
        .depth_m = s->volume_m3 / b->area_m2};
}

/* kg of nitrate and nitrite, each, that the bath holds beyond its saturation. A boiling bath is taken to hold none. */
static double excess_of(const boil_bath *b, const boil_rates_solution *s, double each[BOIL_SALTS])
{
    return b->boiling ? 0 : boil_solubility_excess_each(&s->mixture, s->temperature_K, each);
}

/* Share of its growth that a crust has in a bath so far below its boil (transfer/dissolution.h): none at the boil, where there is none
   in a boiling bath either. Were the two modes apart there, its own heat would begin the boil that ends it, without end. */
static double still_enough(const boil_rates_solution *s)
{
    const double simmers_K = 5;
    return fmin(1, fmax(0, (s->boiling_point_K - s->temperature_K) / simmers_K));
}

static void crust_of(const boil_dissolution_crust *c, double crust_kg, boil_rates_salts *o)
{
    o->crust_kg = crust_kg;
    o->crust_cover = c->cover;
    o->crust_kg_s = c->growing_kg_s - c->dissolving_kg_s - c->broken_kg_s;
    o->crust_holds_Pa = c->holds_Pa;
}

/* On its way into solution and out of it: dissolving from suspension, bed and crust, settling, being stirred up again, growing
   onto a crust. */
boil_rates_salts boil_rates_of_salts(const boil_bath *b, const double y[], const boil_rates_solution *s,
                                     const boil_rates_pool *pool, double heater_W)
{
    boil_rates_salts o = {.volume_m3 = boil_rates_salts_volume(y)};
    double solid[BOIL_SALTS], all = 0, each[BOIL_SALTS] = {0}, excess = excess_of(b, s, each);
    for (int i = 0; i < BOIL_SALTS; i++)
        all += solid[i] = boil_larger(0, y[BOIL_STATE_SOLID_NAOH + i]);
    if (!(all > 0 || excess > 0))
        return o;
    double bed = fmin(all, boil_larger(0, y[BOIL_STATE_BED_MASS])),
           crust = fmin(all - bed, boil_larger(0, y[BOIL_STATE_CRUST_MASS]));
    boil_dissolution_place place = dissolving_place(b, s, solid, pool->stirring_W_kg);
    boil_dissolution_flow f = boil_dissolution_exchange(&place, all - bed - crust, bed);
    boil_dissolution_crust c = boil_dissolution_crust_of(&place, crust, excess, all);
    c.growing_kg_s *= still_enough(s);
    double dissolving = f.from_suspension_kg_s + f.from_bed_kg_s + c.dissolving_kg_s;
    for (int i = 0; i < BOIL_SALTS; i++)
        o.dissolving_kg_s[i] =
            (all > 0 ? dissolving * solid[i] / all : 0) - (excess > 0 ? c.growing_kg_s * each[i] / excess : 0);
    o.undissolved_kg = all - crust;
    o.dry = boil_dissolution_dry(o.undissolved_kg, s->volume_m3);
    o.settling_kg_s = f.settling_kg_s - f.stirred_up_kg_s - f.from_bed_kg_s;
    o.bed_m = f.bed_m;
    if (b->plant->tank.heated == BOIL_TANK_HEATED_FROM_BELOW)
        o.bed_superheat_K = boil_dissolution_bed_superheat(f.bed_m, fmax(0, heater_W) / b->area_m2);
    crust_of(&c, crust, &o);
    return o;
}

void boil_rates_soak_salts(const double y[], double dissolving_kg_s, boil_rates_salts *o)
{
    double all = o->undissolved_kg + o->crust_kg, bed = fmin(o->undissolved_kg, boil_larger(0, y[BOIL_STATE_BED_MASS]));
    for (int i = 0; i < BOIL_SALTS; i++)
        o->dissolving_kg_s[i] += dissolving_kg_s * boil_larger(0, y[BOIL_STATE_SOLID_NAOH + i]) / all;
    o->settling_kg_s -= dissolving_kg_s * bed / o->undissolved_kg;
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
    if (!(flow > 0))
        return 0;
    double period = 2 * BOIL_PI / sqrt(BOIL_GRAVITY * BOIL_PI / L * tanh(BOIL_PI * depth_m / L));
    return 1.5 * flow / b->area_m2 * period;
}

boil_rates_levels boil_rates_of_levels(const boil_bath *b, const boil_rates_view *v)
{
    double liquid = v->solution.volume_m3;
    double other = v->loads.displaced_m3 + v->layer.thickness_m * b->area_m2 + v->salts.volume_m3;
    boil_rates_levels l = {.still_m = (liquid + other) / b->area_m2};
    l.surge_m = lowering_surge(b, l.still_m);
    l.upper_m = (liquid / (1 - v->pool.void_upper) + other) / b->area_m2 + l.surge_m;
    l.lower_m = (liquid / (1 - v->pool.void_lower) + other) / b->area_m2;
    return l;
}
