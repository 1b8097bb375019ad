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
    boil_outcome outcome = r->march != NULL ? boil_simulation_settle_heat(r) : BOIL_OK;
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

static boil_outcome fill(boil_simulation *r)
{
    boil_outcome outcome = boil_simulation_reserve(r, BOIL_STATE_FIXED);
    if (outcome != BOIL_OK || (outcome = boil_modes_start(&r->bath, &r->plant, r->y, &r->tables, &r->guess)) != BOIL_OK)
        return outcome;
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
    outcome = boil_recorder_begin(&r->record, &r->history, &r->plant, &r->options, &r->bath, r->y, &r->view);
    const boil_recorder_step none = {{0, 0, r->y, r->rates, r->y, r->rates}, &r->guess};
    if (outcome == BOIL_OK)
        outcome = boil_recorder_enter(&r->record, &r->bath, &none);
    if (outcome == BOIL_OK)
        outcome = boil_recorder_rows(&r->record, &r->bath);
    r->evaluated = false;
    const boil_water_control *c = &r->plant.control;
    if (outcome == BOIL_OK && c->mode == BOIL_WATER_CONTROL_ON_OFF &&
        r->view.control.sensor_K >= c->set_point_K + c->differential_K / 2 - BOIL_BATH_READING_K)
        outcome = boil_simulation_decide_valve(r);
    return outcome;
}

boil_outcome boil_simulation_begin(const boil_plant *p, const boil_schedule *s, const boil_run_options *o,
                                   boil_simulation **out)
{
    *out = NULL;
    boil_simulation *r = calloc(1, sizeof *r);
    if (!r)
        return BOIL_NO_MEMORY;
    r->plant = boil_closures_put(o->closures, p);
    if (o->own_elevation)
        r->plant.elevation_factor = p->elevation_factor;
    r->held_again_s = r->let_go_s = r->lights_s = (double)INFINITY;
    r->schedule = s;
    r->options = *o;
    boil_outcome outcome = begin(r);
    if (outcome != BOIL_OK) {
        boil_simulation_free(r);
        return outcome;
    }
    *out = r;
    return BOIL_OK;
}

/* A list of its own with the same items; *done stays true unless memory is refused. */
static void *copy_of(const void *list, size_t count, size_t capacity, size_t size, bool *done)
{
    if (list == NULL)
        return NULL;
    void *copy = malloc((capacity > 0 ? capacity : 1) * size);
    if (copy == NULL)
        *done = false;
    else
        memcpy(copy, list, count * size);
    return copy;
}

static void copy_history(boil_history *h, const boil_recorder *r, bool *done)
{
    h->acts = copy_of(h->acts, h->acts_count, r->acts_capacity, sizeof *h->acts, done);
    h->loads = copy_of(h->loads, h->loads_count, r->loads_capacity, sizeof *h->loads, done);
    h->additions = copy_of(h->additions, h->additions_count, r->additions_capacity, sizeof *h->additions, done);
    h->takes = copy_of(h->takes, h->takes_count, r->takes_capacity, sizeof *h->takes, done);
    h->quiet = copy_of(h->quiet, h->quiet_count, r->quiet_capacity, sizeof *h->quiet, done);
    h->rows = copy_of(h->rows, h->rows_count, r->rows_capacity, sizeof *h->rows, done);
    h->valve_s = copy_of(h->valve_s, h->valve_count, r->valve_capacity, sizeof *h->valve_s, done);
}

static void copy_lists(boil_simulation *r, bool *done)
{
    boil_bath *b = &r->bath;
    b->bodies = copy_of(b->bodies, b->bodies_count, b->bodies_capacity, sizeof *b->bodies, done);
    b->feeds = copy_of(b->feeds, b->feeds_count, b->feeds_capacity, sizeof *b->feeds, done);
    r->taps = copy_of(r->taps, r->taps_count, r->taps_capacity, sizeof *r->taps, done);
    r->drums = copy_of(r->drums, r->drums_count, r->drums_capacity, sizeof *r->drums, done);
    r->waiting = copy_of(r->waiting, r->waiting_count, r->waiting_capacity, sizeof *r->waiting, done);
    r->moves = copy_of(r->moves, r->moves_count, r->moves_capacity, sizeof *r->moves, done);
    double **all[] = BOIL_SIMULATION_ARRAYS(r);
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++)
        *all[i] = copy_of(*all[i], r->unknowns, r->unknowns_capacity, sizeof(double), done);
}

boil_outcome boil_simulation_copy(const boil_simulation *from, const boil_schedule *s, boil_simulation **out)
{
    bool done = true;
    boil_simulation *r = *out = malloc(sizeof *r);
    if (!r)
        return BOIL_NO_MEMORY;
    *r = *from;
    r->schedule = s;
    r->bath.plant = r->record.plant = &r->plant;
    r->record.history = &r->history;
    r->guess.tables = &r->tables;
    r->march = from->march != NULL ? boil_march_copy(from->march) : NULL;
    done = r->march != NULL || from->march == NULL;
    r->record.unknowns = NULL; /* room for a row: it holds nothing between two steps */
    r->record.unknowns_capacity = 0;
    copy_lists(r, &done);
    copy_history(&r->history, &r->record, &done);
    if (done)
        return BOIL_OK;
    boil_simulation_free(r);
    *out = NULL;
    return BOIL_NO_MEMORY;
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
    r->history.steps = r->march != NULL ? boil_march_steps(r->march) : 0;
    r->history.evaluations = r->march != NULL ? boil_march_evaluations(r->march) : 0;
    return outcome;
}

boil_outcome boil_simulation_finish(boil_simulation *r, boil_history *out)
{
    boil_outcome outcome = boil_simulation_advance(r, (double)INFINITY);
    if (outcome == BOIL_OK)
        outcome = close_history(r);
    *out = (boil_history){.end = BOIL_RUN_DONE};
    if (outcome != BOIL_OK)
        return outcome;
    *out = r->history;
    r->history = (boil_history){.end = BOIL_RUN_DONE};
    return BOIL_OK;
}

void boil_simulation_free(boil_simulation *r)
{
    if (!r)
        return;
    boil_march_free(r->march);
    boil_bath_free(&r->bath);
    boil_recorder_free(&r->record);
    boil_history_free(&r->history);
    double **all[] = BOIL_SIMULATION_ARRAYS(r);
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++)
        free(*all[i]);
    free(r->waiting);
    free(r->taps);
    free(r->drums);
    free(r->moves);
    free(r);
}

boil_outcome boil_run_unchecked(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, boil_history *out)
{
    boil_simulation *r;
    *out = (boil_history){.end = BOIL_RUN_DONE};
    boil_outcome outcome = boil_simulation_begin(p, s, o, &r);
    if (outcome == BOIL_OK)
        outcome = boil_simulation_finish(r, out);
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
    free(h->acts);
    free(h->loads);
    free(h->additions);
    free(h->takes);
    free(h->quiet);
    free(h->rows);
    free(h->valve_s);
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
