#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/constants.h"
#include "properties/water.h"
#include "bath/rates.h"
#include "simulate/simulation.h"

/* simulate/simulation_step.c -- the state evaluated, a stretch begun, a step taken, and what follows from it. */

#define FULL_BY_M 1e-6 /* over the rim, where what happens at once may leave the still surface: rounding is less */

boil_outcome boil_simulation_evaluate(boil_simulation *r, double t, const double y[])
{
    size_t bytes = r->unknowns * sizeof(double);
    if (r->evaluated && t == r->evaluated_t && memcmp(y, r->evaluated_y, bytes) == 0)
        return BOIL_OK;
    r->evaluated = false;
    boil_outcome outcome = boil_rates_at(&r->bath, t, y, &r->guess, &r->view, r->rates);
    if (outcome != BOIL_OK)
        return outcome;
    memcpy(r->evaluated_y, y, bytes);
    r->evaluated_t = t;
    r->evaluated = true;
    return BOIL_OK;
}

static boil_outcome integrator_rates(double t, const double y[], double dydt[], void *context)
{
    boil_simulation *r = context;
    boil_outcome outcome = boil_simulation_evaluate(r, t, y);
    if (outcome == BOIL_OK)
        memcpy(dydt, r->rates, r->unknowns * sizeof(double));
    return outcome;
}

static void integrator_guards(double t, const double y[], double g[], void *context)
{
    boil_simulation *r = context;
    if (boil_simulation_evaluate(r, t, y) == BOIL_OK) {
        boil_modes_guards(&r->bath, &r->view, g);
        return;
    }
    for (int i = 0; i < BOIL_GUARDS; i++)
        g[i] = -1;
    g[BOIL_GUARD_RANGE] = 1; /* the properties refuse this state: that is where the range ends */
}

/* Typical magnitudes for error control. The steam held takes no part in mass or energy; it may be a hundred times coarser
   than the rest. */
static void set_sizes(boil_simulation *r)
{
    double mass = r->history.summary.bath_mass_start_kg, *s = r->size;
    double heat = r->view.solution.heat.capacity_J_K * 10;
    for (size_t i = 0; i < BOIL_STATE_FIXED; i++)
        s[i] = 0.1 * mass;
    for (size_t i = BOIL_STATE_HEAT_FROM_HEATER; i <= BOIL_STATE_HEAT_WITH_DRAG; i++)
        s[i] = heat;
    s[BOIL_STATE_BATH_HEAT] = s[BOIL_STATE_HELD_HEAT] = heat;
    s[BOIL_STATE_SENSOR] = s[BOIL_STATE_HEAT_SENSOR] = 100;
    /* A layer is kept down to 1e-6 of the bath: no tolerance may let its error come near that, or it goes below zero. */
    double least = r->options.use_rkc ? 1e-7 : 1e-8, layer = fmin(0.1, least / r->options.tolerance) * mass;
    s[BOIL_STATE_LAYER_MASS] = layer;
    s[BOIL_STATE_LAYER_HEAT] = layer * 2e5;
    s[BOIL_STATE_STEAM_HELD] = 10 * r->view.solution.volume_m3 * r->view.pool.vapour_kg_m3;
    s[BOIL_STATE_HEATER_OUTPUT] = fmax(1e3, boil_heater_output(&r->plant.heater, 1, r->view.solution.temperature_K));
    for (size_t i = BOIL_STATE_FIXED; i < r->unknowns; i++)
        s[i] = 100;
    for (size_t i = 0; i < r->bath.bodies_count; i++)
        if (r->bath.bodies[i].pocket_kg > 0)
            s[BOIL_STATE_FIXED + r->bath.bodies[i].at] = 4e5;
}

boil_outcome boil_simulation_reserve(boil_simulation *r, size_t unknowns)
{
    if (unknowns <= r->unknowns_capacity)
        return BOIL_OK;
    double **all[] = BOIL_SIMULATION_ARRAYS(r);
    size_t capacity = 2 * unknowns;
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++) {
        double *moved = realloc(*all[i], capacity * sizeof(double));
        if (!moved)
            return BOIL_NO_MEMORY;
        *all[i] = moved;
    }
    r->unknowns_capacity = capacity;
    return BOIL_OK;
}

void boil_simulation_end_stretch(boil_simulation *r)
{
    if (!r->integrator)
        return;
    r->history.steps += boil_integrator_steps(r->integrator);
    r->history.evaluations += boil_integrator_evaluations(r->integrator);
    boil_integrator_free(r->integrator);
    r->integrator = NULL;
}

/* kg/s, what steam that is none may be after a change of mode. One bound for all who ask: a boil that may begin as far below nothing as
   settle_mode lets it must not be beyond its guard by then, or it would never end. */
static double steam_rounding(const boil_simulation *r)
{
    return 1e-11 * r->view.solution.mass_kg;
}

static boil_outcome new_integrator(boil_simulation *r)
{
    set_sizes(r);
    boil_integrator_problem c = {.unknowns = r->unknowns,
                                 .guards = BOIL_GUARDS,
                                 .rates = integrator_rates,
                                 .guard = integrator_guards,
                                 .context = r,
                                 .size = r->size,
                                 .tolerance = r->options.tolerance,
                                 .use_rkc = r->options.use_rkc,
                                 .step_max_s = 30,
                                 .step_first_s = 0.05};
    /* Rounding of the boiling point and of the enthalpy's inverse must not arm a guard. */
    c.arm[BOIL_GUARD_MODE] = r->bath.boiling ? steam_rounding(r) : 1e-8;
    c.arm[BOIL_GUARD_LAYER] = 1e-9;
    c.arm[BOIL_GUARD_RIM] = 1e-9; /* nothing follows from the rim: found a rounding below it, it would be found without end */
    c.arm[BOIL_GUARD_FULL] = FULL_BY_M; /* of a quiet bath the swelled surface is at the rim at the same moment */
    r->integrator = boil_integrator_create(&c);
    return r->integrator ? BOIL_OK : BOIL_NO_MEMORY;
}

/* The bath boils, or has stopped. A layer that was held back is let go as the boil comes back, for a minute whatever the boil does
   meanwhile: else a bath that cold water quenches would lose its boil and find it without end. */
static int change_mode(boil_simulation *r, bool boiling)
{
    const double loose_s = 60;
    r->evaluated = false;
    r->since_s = r->t;
    boil_modes_change(&r->bath, r->y, &r->view, boiling);
    if (boiling && r->bath.layer_held) {
        r->bath.layer_held = false;
        r->held_again_s = r->t + loose_s;
    }
    int outcome = boil_simulation_evaluate(r, r->t, r->y);
    return outcome == BOIL_OK ? boil_recorder_mode(&r->record, r->t, &r->bath, r->y, &r->view) : outcome;
}

/* Modes as they must be at this instant: heat, feeds or loads may just have changed. */
boil_outcome boil_simulation_settle_mode(boil_simulation *r)
{
    boil_outcome outcome = boil_simulation_evaluate(r, r->t, r->y);
    if (outcome != BOIL_OK)
        return outcome;
    if (r->bath.layer == BOIL_WATER_LAYER_BOILS && r->view.layer_vapour.boil_margin_W < 0) {
        r->bath.layer = BOIL_WATER_LAYER_STILL;
        r->evaluated = false;
        if ((outcome = boil_simulation_evaluate(r, r->t, r->y)) != BOIL_OK)
            return outcome;
    }
    /* Right after a change of mode the steam is zero within rounding: that decides nothing. */
    double rounding = steam_rounding(r);
    double spare_kg_s = r->view.steam.if_boiling_kg_s - r->view.steam.at_once_kg_s;
    bool at_boil = r->view.solution.temperature_K >= boil_modes_boils_from(&r->view) - 1e-8;
    bool boiling = r->bath.boiling ? spare_kg_s >= -rounding : at_boil && spare_kg_s > rounding;
    return boiling == r->bath.boiling ? BOIL_OK : change_mode(r, boiling);
}

/* Water that begins to run onto the surface begins a layer. */
static boil_outcome open_layer(boil_simulation *r)
{
    boil_outcome outcome = boil_simulation_evaluate(r, r->t, r->y);
    if (outcome != BOIL_OK || r->bath.layer != BOIL_WATER_LAYER_NONE || !(r->view.inflow.water_kg_s > 0 || r->bath.lid_on))
        return outcome;
    double fresh = r->view.control.valve_open ? boil_water_enthalpy(r->plant.control.water_K) : r->view.surface.condensate_J_kg;
    boil_bath_begin_layer(&r->bath, r->t, fresh > 0 ? fresh : boil_water_enthalpy(r->plant.ambient.temperature_K));
    r->evaluated = false;
    return BOIL_OK;
}

boil_outcome boil_simulation_restart(boil_simulation *r)
{
    r->evaluated = false;
    boil_outcome outcome = open_layer(r);
    if (outcome != BOIL_OK || (outcome = new_integrator(r)) != BOIL_OK)
        return outcome;
    if ((outcome = boil_simulation_evaluate(r, r->t, r->y)) != BOIL_OK)
        return outcome;
    boil_simulation_see_goals(r);
    if (r->view.levels.still_m > r->plant.tank.depth_m + FULL_BY_M)
        r->history.end = BOIL_RUN_FULL;
    boil_recorder_restart(&r->record);
    outcome = boil_recorder_moment(&r->record, r->t, &r->bath, r->y, &r->view);
    if (outcome == BOIL_OK)
        outcome = boil_recorder_row_now(&r->record, r->t, &r->bath, &r->view, r->y);
    boil_integrator_restart(r->integrator, r->t, r->y);
    return outcome;
}

static void stop_out_of_range(boil_simulation *r)
{
    boil_history *h = &r->history;
    h->end = BOIL_RUN_OUT_OF_RANGE;
    h->stop_quantity = r->view.solution.range.quantity;
    h->stop_value = r->view.solution.range.value;
    h->stop_limit = r->view.solution.range.limit;
    h->stop_unit = r->view.solution.range.unit;
}

static boil_outcome event(boil_simulation *r, size_t guard)
{
    r->evaluated = false;
    boil_outcome outcome = boil_simulation_evaluate(r, r->t, r->y);
    switch (guard) {
    case BOIL_GUARD_LAYER:
        r->bath.layer = r->bath.layer == BOIL_WATER_LAYER_STILL ? BOIL_WATER_LAYER_BOILS : BOIL_WATER_LAYER_STILL;
        break;
    case BOIL_GUARD_LAYER_GONE:
        outcome = boil_bath_absorb_layer(&r->bath, r->y);
        break;
    case BOIL_GUARD_RANGE:
        stop_out_of_range(r);
        return BOIL_OK;
    case BOIL_GUARD_FULL:
        r->history.end = BOIL_RUN_FULL;
        return BOIL_OK;
    case BOIL_GUARD_VALVE:
        outcome = boil_simulation_decide_valve(r);
        break;
    case BOIL_GUARD_GOAL:
        if (outcome == BOIL_OK)
            boil_simulation_see_goals(r);
        break;
    case BOIL_GUARD_LOW_LEVEL:
        r->bath.heat_cut = !r->bath.heat_cut;
        break;
    case BOIL_GUARD_FIRE:
        r->bath.fire_wanted = !r->bath.fire_wanted;
        break;
    case BOIL_GUARD_HIGH_LIMIT:
        boil_simulation_trip(r);
        break;
    case BOIL_GUARD_MODE:
        if (outcome == BOIL_OK)
            outcome = change_mode(r, !r->bath.boiling);
        break;
    default: /* the rim: it is only watched */
        break;
    }
    return outcome;
}

/* Steps that pile up would go on for ever, no known run takes a tenth of these; and so would changes of mode within one second. */
static bool is_stuck(boil_simulation *r)
{
    const double second_s = 1;
    const size_t most_changes = 2000;
    double most = 1e5 + 5 * r->schedule->duration_s + 300 * (double)r->schedule->count;
    if (r->t - r->counted_from_s > second_s) {
        r->counted_from_s = r->t;
        r->counted_changes = r->history.mode_changes;
    }
    return r->history.mode_changes - r->counted_changes > most_changes ||
           (double)(r->history.steps + boil_integrator_steps(r->integrator)) > most;
}

static void note_heating(boil_simulation *r)
{
    for (size_t i = 0; i < r->bath.bodies_count; i++)
        r->bath.bodies[i].unheated = boil_recorder_unheated(&r->bath.bodies[i], r->y, &r->view);
}

/* One step and what follows from it. */
boil_outcome boil_simulation_step(boil_simulation *r, double stop, bool *going)
{
    size_t guard = 0;
    boil_outcome outcome = boil_simulation_evaluate(r, r->t, r->y);
    if (outcome != BOIL_OK)
        return outcome;
    r->t_before = r->t;
    memcpy(r->y_before, r->y, r->unknowns * sizeof(double));
    memcpy(r->rates_before, r->rates, r->unknowns * sizeof(double));
    boil_integrator_status news = boil_integrator_step(r->integrator, &r->t, r->y, stop, &guard);
    if (news == BOIL_INTEGRATOR_FAILED || is_stuck(r)) {
        r->history.end = BOIL_RUN_FAILED;
        r->evaluated = false;
        return boil_simulation_evaluate(r, r->t, r->y);
    }
    if (boil_simulation_evaluate(r, r->t, r->y) != BOIL_OK) {
        stop_out_of_range(r);
        memcpy(r->y, r->y_before, r->unknowns * sizeof(double));
        r->t = r->t_before;
        return boil_simulation_evaluate(r, r->t, r->y);
    }
    const boil_recorder_step step = {r->t_before, r->t, r->y_before, r->rates_before, r->y, r->rates, &r->guess};
    outcome = boil_recorder_within(&r->record, &r->bath, &r->view, &step);
    if (outcome == BOIL_OK)
        outcome = boil_recorder_moment(&r->record, r->t, &r->bath, r->y, &r->view);
    note_heating(r);
    if (outcome == BOIL_OK)
        outcome = boil_recorder_rows(&r->record, &r->bath, &step);
    if (outcome == BOIL_OK && news == BOIL_INTEGRATOR_EVENT)
        outcome = event(r, guard);
    *going = news == BOIL_INTEGRATOR_STEPPED;
    if (r->options.keep_going && !r->options.keep_going(r->options.context, r->t))
        r->history.end = BOIL_RUN_INTERRUPTED;
    return outcome;
}
