#include <math.h>

#include "simulate/actions.h"
#include "simulate/simulation.h"

/* simulate/simulation_taps.c -- pours that hang on the boil, on a gauge or on a moment: what acts/tap.h decides is done to the bath, and
   written down. */

static const boil_action *action_of(const boil_simulation *r, const boil_simulation_tap *t)
{
    return &r->schedule->actions[t->action];
}

static boil_wait_bath seen_by_hand(const boil_simulation *r)
{
    return (boil_wait_bath){r->bath.boiling, r->since_s};
}

static bool goes_on(const boil_simulation_tap *t)
{
    return t->tap.end == BOIL_POUR_GOES_ON;
}

void boil_simulation_add_tap(boil_simulation *r, size_t action)
{
    const boil_action *a = &r->schedule->actions[action];
    if (boil_action_takes(a->kind) && a->name > 0)
        boil_simulation_kept(r, a->name);
    boil_tap tap = boil_action_takes(a->kind) ? boil_tap_shut(a->is.take.volume_m3, a->is.take.over_s, r->t)
                                              : boil_tap_shut(a->is.water.mass_kg, a->is.water.over_s, r->t);
    r->taps[r->taps_count++] = (boil_simulation_tap){.tap = tap, .action = action};
}

/* The goal of a tap as its feed has it. */
static boil_bath_feed goal_of(const boil_simulation *r, const boil_simulation_tap *t)
{
    const boil_action *a = action_of(r, t);
    return (boil_bath_feed){.kind = boil_action_takes(a->kind) ? BOIL_FEED_DRAIN : BOIL_FEED_WATER,
                            .goal = a->pour.goal,
                            .goal_value = a->pour.goal_value};
}

static double missed_by(const boil_simulation *r, const boil_simulation_tap *t)
{
    boil_bath_feed f = goal_of(r, t);
    bool reached = f.goal == BOIL_GOAL_NONE || t->tap.end == BOIL_POUR_GOAL;
    return reached ? (double)NAN : boil_modes_goal_lacks(&r->bath, &r->view, &f);
}

static void write_down_take(boil_simulation *r, const boil_simulation_tap *t)
{
    boil_take_result *a = &r->history.takes[t->addition - 1];
    a->end = t->tap.end;
    a->over_s = r->t - a->time_s;
    a->missed_by_m = missed_by(r, t);
}

/* What the result says while it pours, and once it is over. */
static void write_down(boil_simulation *r, const boil_simulation_tap *t)
{
    if (boil_action_takes(action_of(r, t)->kind)) {
        write_down_take(r, t);
        return;
    }
    boil_addition_result *a = &r->history.additions[t->addition - 1];
    bool is_level = action_of(r, t)->pour.goal == BOIL_GOAL_LEVEL;
    a->mass_kg = t->tap.poured_kg;
    a->end = t->tap.end;
    if (!goes_on(t))
        a->over_s = r->t - a->time_s;
    *(is_level ? &a->missed_by_m : &a->missed_by_K) = missed_by(r, t);
}

static void open_tap(boil_simulation *r, boil_simulation_tap *t)
{
    const boil_action *a = action_of(r, t);
    boil_actions_moment m = {.time_s = r->t,
                             .state = r->y,
                             .bath = &r->bath,
                             .recorder = &r->record,
                             .view = &r->view,
                             .tap = (size_t)(t - r->taps) + 1,
                             .addition = t->addition};
    r->record.action = t->action;
    boil_actions_apply(a, &m);
    if (t->addition > 0)
        return;
    t->addition = boil_action_takes(a->kind) ? r->history.takes_count : r->history.additions_count;
    if (!boil_action_takes(a->kind))
        r->history.additions[t->addition - 1].over_s = (double)INFINITY;
    r->history.acts[t->action] = (boil_act_result){r->t, BOIL_ACT_DONE};
}

static void shut_feed(boil_simulation *r, size_t tap)
{
    for (size_t i = 0; i < r->bath.feeds_count; i++)
        if (r->bath.feeds[i].tap == tap)
            r->bath.feeds[i].end_s = r->t;
}

/* Nothing is poured where the gauge shows the goal already. */
static bool has_arrived(const boil_simulation *r, const boil_simulation_tap *t)
{
    boil_bath_feed f = goal_of(r, t);
    return f.goal != BOIL_GOAL_NONE && boil_modes_goal_shows(&r->bath, &r->view, &f) >= 0;
}

static void never_began(boil_simulation *r, const boil_simulation_tap *t)
{
    r->history.acts[t->action].end = t->tap.end == BOIL_POUR_GOAL   ? BOIL_ACT_NOT_NEEDED
                                     : t->tap.end == BOIL_POUR_NEXT ? BOIL_ACT_LAPSED
                                                                    : BOIL_ACT_TOO_LATE;
}

/* What the result says by now; of one that has none, why it never will have. */
static void tell(boil_simulation *r, const boil_simulation_tap *t)
{
    if (t->addition > 0)
        write_down(r, t);
    else if (!goes_on(t))
        never_began(r, t);
}

static void turn(boil_simulation *r, boil_simulation_tap *t)
{
    const boil_pour *p = &action_of(r, t)->pour;
    const boil_wait_bath bath = seen_by_hand(r);
    bool was_open = t->tap.open;
    boil_tap_pass(&t->tap, r->t);
    boil_tap_turn(&t->tap, p, &r->plant.by_hand, &bath, r->t);
    bool opens = t->tap.open && !was_open, arrived = opens && has_arrived(r, t);
    if (arrived || (opens && boil_simulation_is_idle(r, r->t))) {
        t->tap.open = false;
        t->tap.end = arrived ? BOIL_POUR_GOAL : BOIL_POUR_TIME;
    } else if (opens)
        open_tap(r, t);
    if (was_open && !t->tap.open)
        shut_feed(r, (size_t)(t - r->taps) + 1);
    tell(r, t);
}

void boil_simulation_turn_taps(boil_simulation *r)
{
    for (size_t i = 0; i < r->taps_count; i++)
        if (goes_on(&r->taps[i]))
            turn(r, &r->taps[i]);
}

double boil_simulation_next_tap(const boil_simulation *r)
{
    const boil_wait_bath bath = seen_by_hand(r);
    double best = (double)INFINITY;
    for (size_t i = 0; i < r->taps_count; i++)
        best = fmin(best, boil_tap_next(&r->taps[i].tap, &action_of(r, &r->taps[i])->pour, &r->plant.by_hand, &bath));
    return best;
}

void boil_simulation_see_goals(boil_simulation *r)
{
    const double rounding = 1e-6;
    for (size_t i = 0; i < r->bath.feeds_count; i++) {
        boil_bath_feed *f = &r->bath.feeds[i];
        if (f->goal == BOIL_GOAL_NONE || boil_modes_goal_shows(&r->bath, &r->view, f) < -rounding)
            continue;
        f->goal = BOIL_GOAL_NONE;
        r->taps[f->tap - 1].tap.seen_s = r->t;
    }
}

void boil_simulation_next_of_line(boil_simulation *r, int line)
{
    for (size_t i = 0; line != 0 && i < r->taps_count; i++) {
        boil_simulation_tap *t = &r->taps[i];
        if (!goes_on(t) || action_of(r, t)->line != line)
            continue;
        boil_tap_pass(&t->tap, r->t);
        t->tap.open = false;
        t->tap.end = BOIL_POUR_NEXT;
        shut_feed(r, i + 1);
        tell(r, t);
    }
}

void boil_simulation_close_taps(boil_simulation *r)
{
    for (size_t i = 0; i < r->taps_count; i++) {
        boil_simulation_tap *t = &r->taps[i];
        if (!goes_on(t) || t->addition == 0)
            continue;
        boil_tap_pass(&t->tap, r->t);
        write_down(r, t);
        if (!boil_action_takes(action_of(r, t)->kind))
            r->history.additions[t->addition - 1].over_s = r->t - r->history.additions[t->addition - 1].time_s;
    }
}
