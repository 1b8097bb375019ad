#include <math.h>
#include <string.h>

#include "bath/rates.h"
#include "simulate/simulation.h"

/* simulate/simulation_march.c -- the bath as a system to be carried on: its rates and guards, sizes, and how it hangs together. */

/* Of its volume, steam in a quiet bath: of its level that is less than a micrometre. */
static const double QUIET_STEAM_LEAST = 1e-6;

static boil_outcome rates(double t, const double y[], double dydt[], void *context)
{
    boil_simulation *r = context;
    boil_outcome outcome = boil_simulation_evaluate(r, t, y);
    if (outcome == BOIL_OK)
        memcpy(dydt, r->rates, r->unknowns * sizeof(double));
    return outcome;
}

static void guards(double t, const double y[], double g[], void *context)
{
    boil_simulation *r = context;
    if (boil_simulation_evaluate(r, t, y) == BOIL_OK) {
        boil_modes_guards(&r->bath, &r->view, boil_simulation_boils_by(r, t, y), g);
        return;
    }
    for (int i = 0; i < BOIL_GUARDS; i++)
        g[i] = -1;
    g[BOIL_GUARD_RANGE] = 1; /* the properties refuse this state: that is where the range ends */
}

/* A thermometer that something is switched by must be right to 3e-6 K: it may pass its set point at a thousandth of a kelvin a second,
   and as late as it is so are all switchings after it. One that may trip once, to 1e-4 K. Any other is only shown, and right to
   0.01 K. */
static double sensor_size(bool switches, bool trips)
{
    return switches ? 0.3 : trips ? 10 : 1000;
}

/* Steel is right to 6 mK, and to what moves a bath of so many J/K by 6e-5 K; trapped water to 4 J/kg, a thousandth of a kelvin. */
static double body_size(const boil_bath_body *b, double bath_J_K)
{
    const double steel_K = 600, bath_K = 6, steel_J_kgK = 500, water_J_kg = 4e5;
    return b->pocket_kg > 0 ? water_J_kg : fmin(steel_K, bath_K * bath_J_K / (steel_J_kgK * b->body.mass_kg));
}

/* The bath's own temperature, K, where a control reads it, and where none does. */
static double bath_size(const boil_simulation *r)
{
    return r->plant.control.mode != BOIL_WATER_CONTROL_NONE || r->bath.heat_controlled ? 1 : 10;
}

/* Typical magnitudes for error control. */
static void set_sizes(boil_simulation *r)
{
    double mass = r->history.summary.bath_mass_start_kg, *s = r->size;
    double heat = r->view.solution.heat.capacity_J_K * bath_size(r);
    for (size_t i = 0; i < BOIL_STATE_FIXED; i++)
        s[i] = 0.03 * mass;
    for (size_t i = BOIL_STATE_SOLID_NAOH; i <= BOIL_STATE_CRUST_MASS; i++)
        s[i] = 0.01 * mass; /* a film of crystals more or less, and a surface evaporates otherwise */
    for (size_t i = BOIL_STATE_HEAT_FROM_HEATER; i <= BOIL_STATE_HEAT_WITH_DRAG; i++)
        s[i] = heat;
    s[BOIL_STATE_BATH_HEAT] = s[BOIL_STATE_HELD_HEAT] = heat;
    s[BOIL_STATE_SENSOR] = sensor_size(r->plant.control.mode != BOIL_WATER_CONTROL_NONE, false);
    s[BOIL_STATE_HEATER_OUTPUT] = fmax(1e3, boil_heater_output(&r->plant.heater, 1, r->view.solution.temperature_K));
    for (size_t i = 0; i < r->bath.bodies_count; i++)
        for (int k = 0; k < r->bath.bodies[i].body.unknowns; k++)
            s[BOIL_STATE_FIXED + r->bath.bodies[i].at + (size_t)k] =
                body_size(&r->bath.bodies[i], r->view.solution.heat.capacity_J_K);
}

/* kg of steam that is as large as the bath. */
static double full_of_steam(const boil_simulation *r)
{
    return r->view.solution.volume_m3 * r->view.pool.vapour_kg_m3;
}

/* As far as a step may be off in what can come near nothing: so much, and a share of what is there. */
static double size_near(double least, double share, double there, double tolerance)
{
    return (least + share * fmax(0, there)) / tolerance;
}

/* A layer is kept down to 1e-6 of the bath: no tolerance may let its error come near that, or it goes below zero, or its temperature,
   of next to no mass, is anything. */
static double layer_size(const boil_simulation *r, double kg)
{
    const double least = 2e-8, share = 2e-4, most = 0.1;
    double mass = r->history.summary.bath_mass_start_kg;
    return fmin(most * mass, size_near(least * mass, share, kg, r->options.tolerance));
}

/* kg: so little steam counts. Of a boil that cold water all but quenches it must not be lost in its error, or the modes flutter; of one
   that comes back a twentieth of what it has come to, up to what counts on a quiet bath: there only its level hangs on it, by less than a
   micrometre. */
static double steam_least(const boil_simulation *r, double was_kg, double is_kg)
{
    const double quenched = 2e-10, comes_back = 0.05;
    double full = full_of_steam(r), quiet_kg = QUIET_STEAM_LEAST * full, least_kg = quenched * full;
    if (!r->bath.boiling || !(fmax(was_kg, is_kg) > 0)) /* none yet: how fast it comes is not known */
        return quiet_kg;
    return is_kg < 2 * was_kg ? least_kg : fmin(quiet_kg, fmax(least_kg, comes_back * is_kg));
}

/* It takes no part in mass or energy. */
static double steam_size(const boil_simulation *r, double was_kg, double is_kg)
{
    const double most = 3, falling = 2e-4, rising = 1e-3;
    double share = is_kg < was_kg ? falling : rising;
    return fmin(most * full_of_steam(r),
                size_near(steam_least(r, was_kg, is_kg), share, fmax(was_kg, is_kg), r->options.tolerance));
}

static void sizes(const double y0[], const double y1[], void *context)
{
    boil_simulation *r = context;
    double *s = r->size;
    s[BOIL_STATE_LAYER_MASS] = layer_size(r, fmax(y0[BOIL_STATE_LAYER_MASS], y1[BOIL_STATE_LAYER_MASS]));
    s[BOIL_STATE_LAYER_HEAT] =
        s[BOIL_STATE_LAYER_MASS] * 2e5; /* J: right to a hundredth of a kelvin where the mass is right to a share of 2e-4 */
    s[BOIL_STATE_HEAT_SENSOR] = sensor_size(r->bath.heat_controlled, r->plant.heat_control.high_limit_K > 0);
    s[BOIL_STATE_STEAM_HELD] = steam_size(r, y0[BOIL_STATE_STEAM_HELD], y1[BOIL_STATE_STEAM_HELD]);
}

static void lead(boil_system *s, bool is, size_t unknown)
{
    if (is)
        s->lead[s->leads++] = unknown;
}

/* A thermometer that nothing listens to, or a control that changes its mind at moments of its own. */
static void follower(boil_system *s, double lag_s, size_t unknown)
{
    if (!(lag_s > 0))
        return;
    s->lag_s[s->followers] = lag_s;
    s->follower[s->followers++] = unknown;
}

/* What answers within seconds or minutes, and the bath's water and heat, whose temperature all of that follows: without these two
   steps are shorter by half. */
static void set_leads(const boil_simulation *r, boil_system *s)
{
    const boil_plant *p = &r->plant;
    bool layer = r->bath.layer != BOIL_WATER_LAYER_NONE, flashes = layer && p->layer.local_steam > 0;
    lead(s, true, BOIL_STATE_BATH_WATER);
    lead(s, true, BOIL_STATE_BATH_HEAT);
    lead(s, layer, BOIL_STATE_LAYER_MASS);
    lead(s, layer, BOIL_STATE_LAYER_HEAT);
    lead(s, r->bath.boiling || flashes || r->y[BOIL_STATE_STEAM_HELD] > 0, BOIL_STATE_STEAM_HELD);
    lead(s, p->heater.lag_s > 0, BOIL_STATE_HEATER_OUTPUT);
    follower(s, p->control.sensor_lag_s, BOIL_STATE_SENSOR);
    if (r->bath.heat_controlled)
        lead(s, p->heat_control.sensor_lag_s > 0, BOIL_STATE_HEAT_SENSOR);
    else
        follower(s, p->heat_control.sensor_lag_s, BOIL_STATE_HEAT_SENSOR);
    lead(s, r->y[BOIL_STATE_HELD_HEAT] != 0, BOIL_STATE_HELD_HEAT);
    const boil_rates_salts *v = &r->view.salts;
    if (!(v->undissolved_kg > 0 || v->crust_kg > 0 || r->view.inflow.salts_kg_s > 0))
        return;
    for (size_t i = 0; i < BOIL_SALTS; i++) {
        bool moves = r->y[BOIL_STATE_SOLID_NAOH + i] > 0 || v->dissolving_kg_s[i] != 0 || r->view.inflow.salt_kg_s[i] > 0;
        lead(s, moves, BOIL_STATE_BATH_NAOH + i);
        lead(s, moves, BOIL_STATE_SOLID_NAOH + i);
    }
    lead(s, true, BOIL_STATE_BED_MASS);
    lead(s, true, BOIL_STATE_CRUST_MASS);
}

/* Bubbles in a quiet bath, once they are no more than their error. */
static void forget_bubbles(boil_simulation *r)
{
    if (r->bath.boiling || !(r->y[BOIL_STATE_STEAM_HELD] < QUIET_STEAM_LEAST * full_of_steam(r)))
        return;
    r->y[BOIL_STATE_STEAM_HELD] = 0;
    r->evaluated = false;
}

static size_t body(size_t number, void *context)
{
    const boil_simulation *r = context;
    return number < r->bath.bodies_count ? (size_t)r->bath.bodies[number].body.unknowns : 0;
}

static void slopes(size_t number, double t, const double y[], double own[], double takes[], void *context)
{
    boil_simulation *r = context;
    size_t unknowns = body(number, r);
    if (boil_simulation_evaluate(r, t, y) == BOIL_OK) {
        boil_rates_body_slopes(&r->bath, number, t, y, &r->view, BOIL_SYSTEM_BLOCK_MAX, own, takes);
        return;
    }
    for (size_t i = 0; i < unknowns; i++) {
        takes[i] = 0;
        memset(own + i * BOIL_SYSTEM_BLOCK_MAX, 0, unknowns * sizeof *own);
    }
}

boil_outcome boil_simulation_begin_march(boil_simulation *r)
{
    boil_march_problem p = {.system = {.unknowns = r->unknowns,
                                       .rates = rates,
                                       .context = r,
                                       .size = r->size,
                                       .amount = BOIL_STATE_LAYER_MASS,
                                       .content = BOIL_STATE_LAYER_HEAT,
                                       .amount_least = 1e-3, /* kg: what began the layer counts beside less */
                                       .sums_first = BOIL_STATE_TOTAL_STEAM,
                                       .sums_end = BOIL_STATE_FIXED,
                                       .blocks_first = BOIL_STATE_FIXED,
                                       .block = body,
                                       .slopes = slopes},
                            .kind = (r->bath.boiling ? 3 : 0) + (int)r->bath.layer,
                            .guards = BOIL_GUARDS,
                            .guard = guards,
                            .sizes = sizes,
                            .tolerance = r->options.tolerance,
                            .step_max_s = r->options.plain_steps ? 30 : 3600,
                            .plain = r->options.plain_steps};
    forget_bubbles(r);
    set_sizes(r);
    sizes(r->y, r->y, r);
    set_leads(r, &p.system);
    /* Rounding of the boiling point and of the enthalpy's inverse must not arm a guard. */
    p.arm[BOIL_GUARD_MODE] = r->bath.boiling ? boil_simulation_steam_rounding(r) : 1e-8;
    p.arm[BOIL_GUARD_LAYER] = 1e-9;
    p.arm[BOIL_GUARD_RIM] = 1e-9; /* nothing follows from the rim: found a rounding below it, it would be found without end */
    p.arm[BOIL_GUARD_FULL] =
        BOIL_SIMULATION_FULL_BY_M; /* of a quiet bath the swelled surface is at the rim at the same moment */
    p.near[BOIL_GUARD_LAYER_GONE] =
        0.05 * BOIL_BATH_LAYER_GONE; /* a film that mixes in by a share a second, and is none in any case */
    return boil_march_begin(r->march, &p, r->t, r->y);
}
