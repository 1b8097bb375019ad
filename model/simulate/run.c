#include "simulate/run.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/constants.h"
#include "case/grading.h"
#include "case/closures.h"
#include "case/checks.h"
#include "simulate/simulation.h"

boil_run_options boil_run_options_default(void)
{
    return (boil_run_options){.closures = BOIL_CLOSURES_LIKELY, .tolerance = 1e-5};
}

/* Between two stretches, or at the end. Where the properties refuse the state there is no going on. */
static boil_outcome stretch(boil_simulation *r)
{
    boil_outcome outcome = boil_simulation_make_room(r);
    if (outcome != BOIL_OK)
        return outcome;
    if (boil_march_steps(r->march) > 0)
        outcome = boil_simulation_settle_heat(r);
    if (outcome == BOIL_OK)
        outcome = boil_simulation_do_due(r);
    r->evaluated = false;
    if (outcome != BOIL_OK || (outcome = boil_simulation_settle_mode(r)) != BOIL_OK ||
        (outcome = boil_simulation_restart(r)) != BOIL_OK)
        return outcome;
    boil_simulation_turn_stays(r);
    r->over = !(r->t < r->schedule->duration_s);
    double stop = boil_simulation_next_stop(r);
    for (bool going = !r->over; going && r->history.end == BOIL_RUN_DONE;)
        if ((outcome = boil_simulation_step(r, stop, &going)) != BOIL_OK)
            return outcome;
    return BOIL_OK;
}

boil_outcome boil_simulation_advance(boil_simulation *r, double until_s)
{
    while (r->history.end == BOIL_RUN_DONE && !r->over && r->t < until_s) {
        boil_outcome outcome = stretch(r);
        if (outcome == BOIL_NO_MEMORY)
            return outcome;
        if (outcome != BOIL_OK)
            r->history.end = BOIL_RUN_FAILED;
    }
    return BOIL_OK;
}

/* What another is, in memory of its own; NULL: there is none. */
static boil_simulation *become(boil_simulation **own, const boil_simulation *other)
{
    if (*own == NULL && (*own = calloc(1, sizeof **own)) == NULL)
        return NULL;
    boil_simulation *r = *own;
    const boil_simulation_memory memory = r->memory;
    boil_row *rows = r->history.rows;
    size_t rows_capacity = r->record.rows_capacity;
    boil_march *march = r->march != NULL ? r->march : boil_march_create();
    *r = *other;
    r->memory = memory;
    r->history.rows = rows;
    r->record.rows_capacity = rows_capacity;
    r->march = march;
    return march != NULL ? r : NULL;
}

static boil_outcome fill(boil_simulation *r)
{
    double y[BOIL_STATE_FIXED];
    boil_outcome outcome = boil_modes_start(&r->bath, &r->plant, y, &r->tables, &r->guess);
    if (outcome != BOIL_OK)
        return outcome;
    boil_simulation_expect(r);
    if ((outcome = boil_simulation_lay_out(r)) != BOIL_OK ||
        (outcome = boil_march_reset(r->march, boil_simulation_most_unknowns(r))) != BOIL_OK)
        return outcome;
    memcpy(r->y, y, sizeof y);
    r->unknowns = BOIL_STATE_FIXED;
    r->since_s = r->bath.boiling ? -(double)INFINITY : 0;
    r->bath.layer_held = r->plant.layer.held_factor > 0;
    return boil_simulation_evaluate(r, 0, r->y);
}

static boil_outcome begin(boil_simulation *r)
{
    boil_outcome outcome = fill(r);
    if (outcome != BOIL_OK)
        return outcome;
    r->start = (boil_simulation_start){r->view.solution.mixture.water + r->y[BOIL_STATE_LAYER_MASS],
                                       boil_mixture_salts(&r->view.solution.mixture) + r->view.salts.crust_kg +
                                           r->view.salts.undissolved_kg,
                                       boil_modes_inventory(&r->bath, r->y, &r->view)};
    boil_recorder_begin(&r->record, &r->history, &r->plant, &r->options, &r->bath, r->y, &r->view);
    r->record.step = (boil_recorder_step){{0, 0, r->y, r->rates, r->y, r->rates}, &r->guess};
    outcome = boil_recorder_rows(&r->record, &r->bath);
    r->evaluated = false;
    const boil_water_control *c = &r->plant.control;
    if (c->mode == BOIL_WATER_CONTROL_ON_OFF &&
        r->view.control.sensor_K >= c->set_point_K + c->differential_K / 2 - BOIL_BATH_READING_K)
        boil_simulation_decide_valve(r);
    return outcome;
}

boil_outcome boil_simulation_begin(const boil_plant *p, const boil_schedule *s, const boil_run_options *o,
                                   boil_simulation **own)
{
    const double never = (double)INFINITY;
    const boil_simulation empty = {.schedule = s, .options = *o, .held_again_s = never, .let_go_s = never, .lights_s = never};
    boil_simulation *r = become(own, &empty);
    if (!r)
        return BOIL_NO_MEMORY;
    r->plant = boil_closures_put(o->closures, p);
    if (o->own_elevation)
        r->plant.elevation_factor = p->elevation_factor;
    return begin(r);
}

static boil_outcome copy_rows(boil_simulation *r, const boil_simulation *from)
{
    const boil_history *h = &from->history;
    if (r->record.rows_capacity < from->record.rows_capacity) {
        boil_row *rows = realloc(r->history.rows, from->record.rows_capacity * sizeof *rows);
        if (!rows)
            return BOIL_NO_MEMORY;
        r->history.rows = rows;
        r->record.rows_capacity = from->record.rows_capacity;
    }
    if (h->rows_count > 0)
        memcpy(r->history.rows, h->rows, h->rows_count * sizeof *h->rows);
    return BOIL_OK;
}

boil_outcome boil_simulation_copy(const boil_simulation *from, const boil_schedule *s, boil_simulation **own)
{
    boil_simulation *r = become(own, from);
    if (!r)
        return BOIL_NO_MEMORY;
    r->schedule = s;
    r->bath.plant = r->record.plant = &r->plant;
    r->record.history = &r->history;
    r->guess.tables = &r->tables;
    boil_simulation_heed_schedule(r);
    boil_outcome outcome = boil_simulation_lay_out(r);
    if (outcome == BOIL_OK)
        outcome = boil_march_copy(r->march, from->march);
    return outcome == BOIL_OK ? copy_rows(r, from) : outcome;
}

boil_simulation_place boil_simulation_at(const boil_simulation *r)
{
    const boil_history *h = &r->history;
    return (boil_simulation_place){r->t, r->over || h->end != BOIL_RUN_DONE, !r->bath.boiling, boil_simulation_lowers(r),
                                   h->quiet_count > 0 ? &h->quiet[h->quiet_count - 1] : NULL};
}

const boil_history *boil_simulation_so_far(const boil_simulation *r)
{
    return &r->history;
}

void boil_simulation_end_trace(boil_simulation *r)
{
    r->record.row_unit_s = 0;
}

double boil_simulation_erupts(boil_simulation *r)
{
    return boil_simulation_evaluate(r, r->t, r->y) == BOIL_OK ? boil_potential_erupts(&r->bath, &r->view) : 0;
}

void boil_simulation_let_go(boil_simulation *r, double at_s)
{
    r->let_go_s = at_s;
}

static boil_outcome close_history(boil_simulation *r)
{
    r->evaluated = false;
    if (boil_simulation_evaluate(r, r->t, r->y) != BOIL_OK) { /* nothing follows from this state: report up to the one before */
        r->history.end = BOIL_RUN_FAILED;
        r->t = r->t_before;
        memcpy(r->y, r->y_before, r->unknowns * sizeof(double));
        boil_outcome outcome = boil_simulation_evaluate(r, r->t, r->y);
        if (outcome != BOIL_OK)
            return outcome;
    }
    boil_outcome outcome = boil_simulation_settle_heat(r);
    if (outcome != BOIL_OK)
        return outcome;
    boil_simulation_share_taken(r);
    boil_simulation_close_taps(r);
    boil_simulation_turn_stays(r);
    outcome = boil_recorder_end(&r->record, r->t, &r->bath, r->y, &r->view);
    boil_simulation_balance(r);
    r->history.steps = boil_march_steps(r->march);
    r->history.evaluations = boil_march_evaluations(r->march);
    return outcome;
}

boil_outcome boil_simulation_finish(boil_simulation *r)
{
    boil_outcome outcome = boil_simulation_advance(r, (double)INFINITY);
    return outcome == BOIL_OK ? close_history(r) : outcome;
}

void boil_simulation_free(boil_simulation *r)
{
    if (!r)
        return;
    boil_march_free(r->march);
    free(r->history.rows);
    free(r->memory.block);
    free(r);
}

boil_outcome boil_run_in(boil_simulation **own, const boil_plant *p, const boil_schedule *s, const boil_run_options *o,
                         const boil_history **out)
{
    boil_outcome outcome = boil_simulation_begin(p, s, o, own);
    if (outcome == BOIL_OK)
        outcome = boil_simulation_finish(*own);
    *out = outcome == BOIL_OK ? boil_simulation_so_far(*own) : NULL;
    return outcome;
}

boil_outcome boil_run_unchecked(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, boil_history *out)
{
    boil_simulation *r = NULL;
    const boil_history *h;
    *out = (boil_history){.end = BOIL_RUN_DONE};
    boil_outcome outcome = boil_run_in(&r, p, s, o, &h);
    if (outcome == BOIL_OK)
        outcome = boil_simulation_hand_over(r, out);
    boil_simulation_free(r);
    return outcome;
}

boil_outcome boil_run(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, boil_history *out)
{
    if (out == NULL)
        return BOIL_BAD_INPUT;
    *out = (boil_history){.end = BOIL_RUN_DONE};
    return boil_check_case(p, s, o) ? boil_run_unchecked(p, s, o, out) : BOIL_BAD_INPUT;
}

void boil_history_free(boil_history *h)
{
    if (!h)
        return;
    free(h->lists);
    free(h->rows);
    *h = (boil_history){.end = BOIL_RUN_DONE};
}

boil_recoveries boil_history_recoveries(const boil_history *h, double limit_s)
{
    boil_recoveries r = {0, 0, (double)NAN};
    if (h == NULL || h->loads_count == 0)
        return r;
    r.slowest_s = 0;
    for (size_t i = 0; i < h->loads_count; i++) {
        double recovery_s = h->loads[i].recovery_s;
        r.back += recovery_s <= limit_s + boil_gradings[BOIL_FOUND_BOIL_LOST].margin; /* as the finding has it */
        r.never += isnan(recovery_s) ? 1 : 0;
        r.slowest_s = fmax(r.slowest_s, recovery_s);
    }
    if (r.never > 0)
        r.slowest_s = (double)NAN;
    return r;
}
