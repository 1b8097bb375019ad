#include <math.h>

#include "acts/wait.h"
#include "case/schedule.h"
#include "properties/water.h"
#include "simulate/actions.h"
#include "simulate/simulation.h"

/* simulate/simulation_acts.c -- the schedule: what is due of it is done, what waits is kept until the bath is as it should be. */

/* Bodies that have just gone in, behind the others, get their unknowns. */
static void begin_bodies(boil_simulation *r)
{
    size_t at = 0;
    for (size_t i = 0; i < r->bath.bodies_count; i++) {
        boil_bath_body *o = &r->bath.bodies[i];
        size_t begin = BOIL_STATE_FIXED + at;
        at += (size_t)o->body.unknowns;
        if (begin < r->unknowns)
            continue;
        o->at = begin - BOIL_STATE_FIXED;
        if (o->pocket_kg > 0)
            r->y[begin] = boil_water_enthalpy(o->entry_K);
        else
            boil_conduction_init(&o->body, o->entry_K, r->y + begin);
        r->unknowns = BOIL_STATE_FIXED + at;
    }
}

/* A load that is to be out by now does not go in. */
static bool is_late(const boil_simulation *r, const boil_action *a)
{
    return a->kind == BOIL_ACTION_LOAD && a->is.load.latest_s > 0 && r->t >= a->is.load.latest_s;
}

static void carry_out(boil_simulation *r, size_t action)
{
    const boil_action *a = &r->schedule->actions[action];
    if (is_late(r, a)) {
        r->history.acts[action].end = BOIL_ACT_TOO_LATE;
        return;
    }
    if (boil_action_takes(a->kind) || boil_tap_is_needed(&a->pour)) {
        boil_simulation_add_tap(r, action);
        return;
    }
    boil_actions_moment m = {.time_s = r->t, .state = r->y, .bath = &r->bath, .recorder = &r->record, .view = &r->view};
    if (a->kind == BOIL_ACTION_RETURN)
        m.kept = boil_simulation_kept(r, a->name);
    bool nothing = a->kind == BOIL_ACTION_RETURN && !(boil_mixture_mass(m.kept) > 0);
    r->history.acts[action] = (boil_act_result){nothing ? (double)NAN : r->t, nothing ? BOIL_ACT_NOT_NEEDED : BOIL_ACT_DONE};
    r->record.action = action;
    if (a->kind == BOIL_ACTION_LOAD || a->kind == BOIL_ACTION_HEAT)
        boil_recorder_meet(&r->record, r->t);
    boil_actions_apply(a, &m);
    begin_bodies(r);
}

/* When an action whose time has come is due if the bath stays as it is; infinite: not as long as it does. */
static double due(const boil_simulation *r, size_t action)
{
    const boil_action *a = &r->schedule->actions[action];
    const boil_wait_bath bath = {r->bath.boiling, r->since_s};
    double earliest_s = a->time_s;
    if (a->wait.follows) {
        size_t after = boil_schedule_followed(r->schedule, action);
        const boil_act_result *before = after < r->history.acts_count ? &r->history.acts[after] : NULL;
        if (before == NULL || isnan(before->done_s))
            return (double)INFINITY;
        bool load = a->wait.state == BOIL_WAIT_BACK;
        earliest_s = before->done_s + (load ? r->schedule->actions[after].is.load.lowering_s : a->wait.delay_s);
    }
    return boil_wait_due(&a->wait, earliest_s, &r->plant.by_hand, &bath);
}

static bool waits(const boil_action *a)
{
    return a->wait.state != BOIL_WAIT_NONE || a->wait.follows;
}

bool boil_simulation_is_idle(const boil_simulation *r, double at_s)
{
    return r->schedule->idle_after_s > 0 && at_s > r->schedule->idle_after_s;
}

static void forget(boil_simulation *r, size_t place)
{
    for (size_t i = place + 1; i < r->waiting_count; i++)
        r->waiting[i - 1] = r->waiting[i];
    r->waiting_count--;
}

/* Nobody does a thing twice at once because the first time has been late. */
static void lapse_same_line(boil_simulation *r, int line)
{
    for (size_t i = 0; line != 0 && i < r->waiting_count;) {
        if (r->schedule->actions[r->waiting[i]].line != line) {
            i++;
            continue;
        }
        r->history.acts[r->waiting[i]].end = BOIL_ACT_LAPSED;
        forget(r, i);
    }
}

/* The next action's time has come. */
static void reach(boil_simulation *r)
{
    boil_history *h = &r->history;
    const boil_action *a = &r->schedule->actions[r->next_action];
    h->acts[h->acts_count++] = (boil_act_result){(double)NAN, BOIL_ACT_WAITING};
    lapse_same_line(r, a->line);
    boil_simulation_next_of_line(r, a->line);
    if (waits(a))
        r->waiting[r->waiting_count++] = r->next_action;
    else
        carry_out(r, r->next_action);
}

void boil_simulation_do_acts(boil_simulation *r)
{
    const boil_schedule *s = r->schedule;
    for (; r->next_action < s->count && s->actions[r->next_action].time_s <= r->t; r->next_action++)
        reach(r);
    for (size_t i = 0; i < r->waiting_count && !boil_simulation_is_idle(r, r->t);) {
        size_t action = r->waiting[i];
        if (due(r, action) > r->t) {
            i++;
            continue;
        }
        forget(r, i);
        carry_out(r, action);
    }
}

double boil_simulation_next_act(const boil_simulation *r)
{
    double best = (double)INFINITY;
    for (size_t i = 0; i < r->waiting_count; i++)
        best = fmin(best, due(r, r->waiting[i]));
    return boil_simulation_is_idle(r, best) ? (double)INFINITY : best;
}

bool boil_simulation_lowers(const boil_simulation *r)
{
    const boil_schedule *s = r->schedule;
    for (size_t i = 0; i < r->waiting_count; i++)
        if (s->actions[r->waiting[i]].kind == BOIL_ACTION_LOAD && due(r, r->waiting[i]) <= r->t)
            return !boil_simulation_is_idle(r, r->t);
    for (size_t i = r->next_action; i < s->count && s->actions[i].time_s <= r->t; i++)
        if (s->actions[i].kind == BOIL_ACTION_LOAD && due(r, i) <= r->t)
            return true;
    return false;
}
