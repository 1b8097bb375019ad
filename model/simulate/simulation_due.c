#include <math.h>
#include <string.h>

#include "base/constants.h"
#include "case/closures.h"
#include "properties/water.h"
#include "simulate/simulation.h"

/* simulate/simulation_due.c -- what is to be done at a moment, and when something is to be done next. */

/* Take out what is fully lifted, and the feeds that have ended. */
static void clear_finished(boil_simulation *r)
{
    boil_bath *b = &r->bath;
    size_t kept = 0, at = 0;
    for (size_t i = 0; i < b->bodies_count; i++) {
        boil_bath_body o = b->bodies[i];
        if (o.out_start_s <= r->t && isnan(r->history.loads[o.load].lifted_s))
            boil_recorder_lift(&r->record, o.out_start_s, o.load, o.drag_out_kg, o.unheated);
        if (o.out_end_s <= r->t)
            continue;
        size_t n = (size_t)o.body.unknowns;
        memmove(r->y + BOIL_STATE_FIXED + at, r->y + BOIL_STATE_FIXED + o.at, n * sizeof(double));
        o.at = at;
        at += n;
        b->bodies[kept++] = o;
    }
    b->bodies_count = kept;
    r->unknowns = BOIL_STATE_FIXED + at;
    kept = 0;
    for (size_t i = 0; i < b->feeds_count; i++)
        if (b->feeds[i].end_s > r->t)
            b->feeds[kept++] = b->feeds[i];
    b->feeds_count = kept;
}

/* What moves in the stretch that begins now. */
static void set_moving(boil_simulation *r)
{
    r->bath.paddle_on = r->t < r->bath.paddle_until_s;
    for (size_t i = 0; i < r->bath.bodies_count; i++) {
        boil_bath_body *o = &r->bath.bodies[i];
        o->lowering = r->t < o->in_end_s;
        o->lifting = r->t >= o->out_start_s && r->t < o->out_end_s;
    }
}

/* From now on what mixes into a bath below its boil gives off its steam. A nucleus, a dropped part or a ripple begins it: bubbles
   of a millionth of the bath, without mass or heat, where the heat is off and nothing else stirs. */
static void let_layer_go(boil_simulation *r)
{
    const double nucleus = 1e-6;
    if (r->let_go_s > r->t || boil_simulation_evaluate(r, r->t, r->y) != BOIL_OK)
        return;
    double *held = &r->y[BOIL_STATE_STEAM_HELD];
    *held = fmax(*held, nucleus * r->view.solution.volume_m3 * r->view.pool.vapour_kg_m3);
    boil_flash_bath bath = {r->bath.air, r->view.solution.mixture, r->view.solution.boiling_point_K, r->plant.dilution_factor};
    r->tables.flash = boil_flash_table_of(&bath);
    r->plant = boil_closures_put(BOIL_CLOSURES_TRIGGER, &r->plant);
    r->bath.layer_held = false;
    r->held_again_s = r->let_go_s = (double)INFINITY;
    r->evaluated = false;
}

static void hold_layer_again(boil_simulation *r)
{
    if (r->held_again_s > r->t)
        return;
    r->bath.layer_held = true;
    r->held_again_s = (double)INFINITY;
}

/* Water in hollows that has come to its boil throws itself out, until all is out or the load is lifted. */
static void release_hollows(boil_simulation *r)
{
    const double rounding_J_kg = 1e-6;
    boil_bath *b = &r->bath;
    double boils_J_kg = boil_water_enthalpy(b->air.saturation_K);
    for (size_t i = 0; i < b->bodies_count; i++) {
        boil_bath_body *o = &b->bodies[i];
        double holds_J_kg = r->y[BOIL_STATE_FIXED + o->at];
        if (!(o->pocket_kg > 0) || isfinite(o->released_s) || o->out_start_s <= r->t || holds_J_kg < boils_J_kg - rounding_J_kg)
            continue;
        const boil_bath_feed out = {.kind = BOIL_FEED_WATER,
                                    .start_s = r->t,
                                    .end_s = fmin(r->t + o->release_s, o->out_start_s),
                                    .rate_kg_s = o->pocket_kg / o->release_s,
                                    .enthalpy_J_kg = holds_J_kg,
                                    .from_hollows = true,
                                    .load = o->load};
        boil_bath_add_feed(b, &out);
        o->released_s = r->history.loads[o->load].released_s = r->t;
    }
}

boil_outcome boil_simulation_do_due(boil_simulation *r)
{
    boil_simulation_share_taken(r);
    boil_simulation_turn_stays(r);
    clear_finished(r);
    let_layer_go(r);
    hold_layer_again(r);
    boil_outcome outcome = boil_simulation_evaluate(r, r->t, r->y);
    if (outcome == BOIL_OK) {
        boil_simulation_move_valve(r);
        boil_simulation_do_acts(r);
        boil_simulation_turn_taps(r);
    }
    clear_finished(r);
    set_moving(r);
    boil_simulation_settle_fire(r);
    if (outcome == BOIL_OK)
        release_hollows(r);
    return outcome;
}

static double sooner(double now, double best, double candidate)
{
    return candidate > now && candidate < best ? candidate : best;
}

/* The next moment at which something known begins or ends: no step may cross it. */
double boil_simulation_next_stop(const boil_simulation *r)
{
    const boil_bath *b = &r->bath;
    double best = r->schedule->duration_s;
    if (r->next_action < r->schedule->count)
        best = sooner(r->t, best, r->schedule->actions[r->next_action].time_s);
    best = sooner(r->t, best, boil_simulation_next_act(r));
    best = sooner(r->t, best, boil_simulation_next_tap(r));
    best = sooner(r->t, best, boil_simulation_next_valve(r));
    best = sooner(r->t, best, r->bath.paddle_until_s);
    best = sooner(r->t, best, r->held_again_s);
    best = sooner(r->t, best, r->let_go_s);
    best = sooner(r->t, best, r->lights_s);
    for (size_t i = 0; i < b->feeds_count; i++)
        best = sooner(r->t, best, b->feeds[i].end_s);
    for (size_t i = 0; i < b->bodies_count; i++) {
        best = sooner(r->t, best, b->bodies[i].in_end_s);
        best = sooner(r->t, best, b->bodies[i].out_start_s);
        best = sooner(r->t, best, b->bodies[i].out_end_s);
    }
    return best;
}
