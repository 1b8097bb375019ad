#include <math.h>
#include <string.h>

#include "base/constants.h"
#include "properties/water.h"
#include "bath/rates.h"
#include "simulate/simulation.h"

/* simulate/simulation_step.c -- the state evaluated, a stretch begun, a step taken, and what follows from it. */

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

double boil_simulation_boils_by(boil_simulation *r, double t, const double y[])
{
    if (!r->bath.boiling || !boil_modes_is_in_doubt(&r->view))
        return boil_modes_boils_by(&r->view, NULL);
    boil_rates_guess guess = r->guess;
    boil_rates_view bubbleless;
    memcpy(r->bubbleless_y, y, r->unknowns * sizeof(double));
    r->bubbleless_y[BOIL_STATE_STEAM_HELD] = 0;
    bool known = boil_rates_at(&r->bath, t, r->bubbleless_y, &guess, &bubbleless, NULL) == BOIL_OK;
    return boil_modes_boils_by(&r->view, known ? &bubbleless : NULL);
}

double boil_simulation_steam_rounding(const boil_simulation *r)
{
    return 1e-11 * r->view.solution.mass_kg;
}

/* While it boils the bath is as warm as its composition has it, and the heat carried along beside that parts from it by the error of
   the steps. What is over has boiled off as a little more steam, what is lacking as a little less: so both balances close whatever
   the tolerance. */
boil_outcome boil_simulation_settle_heat(boil_simulation *r)
{
    boil_outcome outcome = boil_simulation_evaluate(r, r->t, r->y);
    if (outcome != BOIL_OK || !r->bath.boiling)
        return outcome;
    double over_J = r->y[BOIL_STATE_BATH_HEAT] - r->view.solution.heat.total_J, steam_kg = over_J / r->view.heat.latent_J_kg;
    double with_it_J = steam_kg * boil_bath_steam_enthalpy(&r->bath, r->view.solution.temperature_K);
    r->y[BOIL_STATE_BATH_WATER] -= steam_kg;
    r->y[BOIL_STATE_TOTAL_STEAM] += steam_kg;
    r->y[BOIL_STATE_BATH_HEAT] -= with_it_J;
    r->y[BOIL_STATE_HEAT_WITH_VAPOUR] += with_it_J;
    return boil_simulation_evaluate(r, r->t, r->y);
}

/* The bath boils, or has stopped. A layer that was held back is let go as the boil comes back, for a minute whatever the boil does
   meanwhile: else a bath that cold water quenches would lose its boil and find it without end. */
static boil_outcome change_mode(boil_simulation *r, bool boiling)
{
    const double loose_s = 60;
    boil_outcome outcome = boil_simulation_settle_heat(r);
    if (outcome != BOIL_OK)
        return outcome;
    r->evaluated = false;
    r->since_s = r->t;
    r->bath.valve_free = false;
    double *heat_J = &r->y[BOIL_STATE_BATH_HEAT], *held_J = &r->y[BOIL_STATE_HELD_HEAT], before_J = *heat_J + *held_J;
    boil_modes_change(&r->bath, r->y, &r->view, boiling);
    if (boiling) /* what it was a microsecond past its boil goes into the boil: boil_simulation_settle_heat */
        *heat_J += before_J - *heat_J - *held_J;
    if (boiling && r->bath.layer_held) {
        r->bath.layer_held = false;
        r->held_again_s = r->t + loose_s;
    }
    outcome = boil_simulation_evaluate(r, r->t, r->y);
    if (outcome == BOIL_OK)
        boil_recorder_mode(&r->record, r->t, &r->bath, r->y, &r->view);
    return outcome;
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
    double rounding = boil_simulation_steam_rounding(r);
    double spare_kg_s = r->view.steam.if_boiling_kg_s - r->view.steam.at_once_kg_s;
    bool at_boil = r->view.solution.temperature_K >= boil_modes_boils_from(&r->bath, &r->view) - 1e-8;
    bool boiling = r->bath.boiling ? boil_simulation_boils_by(r, r->t, r->y) >= -rounding : at_boil && spare_kg_s > rounding;
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
    boil_outcome outcome = open_layer(r);
    if (outcome != BOIL_OK || (outcome = boil_simulation_evaluate(r, r->t, r->y)) != BOIL_OK)
        return outcome;
    boil_simulation_see_goals(r);
    if (r->view.levels.still_m > r->plant.tank.depth_m + BOIL_SIMULATION_FULL_BY_M)
        r->history.end = BOIL_RUN_FULL;
    boil_recorder_restart(&r->record);
    boil_recorder_moment(&r->record, r->t, &r->bath, r->y, &r->view);
    outcome = boil_recorder_row_now(&r->record, r->t, &r->bath, &r->view, r->y);
    return outcome == BOIL_OK ? boil_simulation_begin_march(r) : outcome;
}

static void stop_out_of_range(boil_simulation *r)
{
    boil_history *h = &r->history;
    const boil_range range = boil_rates_range(&r->bath, &r->view.solution);
    h->end = BOIL_RUN_OUT_OF_RANGE;
    h->stop_quantity = range.quantity;
    h->stop_value = range.value;
    h->stop_limit = range.limit;
    h->stop_unit = range.unit;
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
        boil_simulation_decide_valve(r);
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
    return r->history.mode_changes - r->counted_changes > most_changes || (double)boil_march_steps(r->march) > most;
}

static void record(boil_simulation *r, double t, const double y[], const boil_rates_view *v)
{
    boil_recorder_moment(&r->record, t, &r->bath, y, v);
    for (size_t i = 0; i < r->bath.bodies_count; i++)
        r->bath.bodies[i].unheated = boil_recorder_unheated(&r->bath.bodies[i], y, v);
}

/* A moment between the ends of the step just taken; it takes the place of its beginning. */
static void record_inside(boil_simulation *r, double t, boil_rates_guess *guess)
{
    boil_rates_view inside;
    if (boil_recorder_inside(&r->record, &r->bath, t, guess, &inside) != BOIL_OK)
        return; /* beyond the properties: the run is about to stop there */
    r->t_before = t;
    memcpy(r->y_before, r->record.unknowns, r->unknowns * sizeof(double));
    record(r, t, r->y_before, &inside);
}

/* Tops between two moments: one so near either is as good as that, and what is fitted through both would be their rounding. */
static void record_tops(boil_simulation *r, const double tops_s[BOIL_RECORDER_TOPS], double from_s, double to_s, double near_s,
                        boil_rates_guess *guess)
{
    for (int k = 0; k < BOIL_RECORDER_TOPS; k++)
        if (tops_s[k] > from_s + near_s && tops_s[k] < to_s - near_s) {
            record_inside(r, tops_s[k], guess);
            from_s = tops_s[k];
        }
}

/* The step just taken, told moment by moment. */
static boil_outcome record_step(boil_simulation *r, const boil_rates_view *before)
{
    const boil_recorder_step step = {boil_march_within(r->march), &r->guess};
    r->record.step = step;
    boil_rates_guess guess = r->guess;
    int parts = boil_recorder_parts(&r->record, before, &r->view);
    double tops_s[BOIL_RECORDER_TOPS], h = step.cubic.t1 - step.cubic.t0, near_s = 1e-3 * h / parts, last_s = step.cubic.t0;
    boil_recorder_tops(&r->record, &r->bath, before, &r->view, tops_s);
    for (int i = 1; i <= parts; i++) {
        double t = step.cubic.t0 + h * i / parts;
        record_tops(r, tops_s, last_s, t, near_s, &guess);
        if (i < parts)
            record_inside(r, t, &guess);
        last_s = t;
    }
    boil_recorder_look_inside(&r->record, &r->bath, before, &r->view);
    record(r, r->t, r->y, &r->view);
    return boil_recorder_rows(&r->record, &r->bath);
}

/* One step and what follows from it. */
boil_outcome boil_simulation_step(boil_simulation *r, double stop, bool *going)
{
    size_t guard = 0;
    boil_outcome outcome = boil_simulation_evaluate(r, r->t, r->y);
    if (outcome != BOIL_OK)
        return outcome;
    const boil_rates_view before = r->view;
    r->t_before = r->t;
    memcpy(r->y_before, r->y, r->unknowns * sizeof(double));
    boil_march_news news = boil_march_step(r->march, &r->t, r->y, stop, &guard);
    if (news == BOIL_MARCH_FAILED || is_stuck(r)) {
        r->history.end = BOIL_RUN_FAILED;
        r->evaluated = false;
        return boil_simulation_evaluate(r, r->t, r->y);
    }
    if (boil_simulation_evaluate(r, r->t, r->y) != BOIL_OK) {
        memcpy(r->y, r->y_before, r->unknowns * sizeof(double));
        r->t = r->t_before;
        outcome = boil_simulation_evaluate(r, r->t, r->y);
        stop_out_of_range(r);
        return outcome;
    }
    outcome = record_step(r, &before);
    if (outcome == BOIL_OK && news == BOIL_MARCH_EVENT)
        outcome = event(r, guard);
    *going = news == BOIL_MARCH_STEPPED;
    if (r->options.keep_going && !r->options.keep_going(r->options.context, r->t))
        r->history.end = BOIL_RUN_INTERRUPTED;
    return outcome;
}
