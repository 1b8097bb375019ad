/* finding_hands.c -- what people at the tank do: bail it hot, miss a goal, be away. */
#include <math.h>

#include "findings/finding_parts.h"

/* A warning while it boils, or with water on it. */
void boil_judge_bail_hot(boil_judged *j)
{
    const double film_kg = boil_gradings[BOIL_FOUND_WATER_QUIET].from[BOIL_SEVERITY_WARNING];
    const boil_history *h = j->history;
    for (size_t i = 0; i < h->takes_count; i++) {
        const boil_take_result *t = &h->takes[i];
        bool grave = t->was_boiling || t->layer_kg > film_kg;
        boil_find(j, &(boil_sighting){.x = t->temperature_K,
                                      .value = t->temperature_K,
                                      .per_x = 1,
                                      .time_s = t->time_s,
                                      .most = grave ? BOIL_AT_WARNING : BOIL_AT_CAUTION});
    }
}

static void find_missed(boil_judged *j, double end_s, double missed_m, double missed_K)
{
    const double least_m = 1e-3, least_K = 0.05; /* a gauge without steps */
    double steps = isnan(missed_m) ? missed_K / fmax(j->plant->by_hand.thermometer_step_K, least_K)
                                   : missed_m / fmax(j->plant->by_hand.mark_step_m, least_m);
    boil_find(j, &(boil_sighting){.x = fabs(steps), .value = fabs(steps), .per_x = 1, .time_s = end_s});
}

void boil_judge_goal_missed(boil_judged *j)
{
    const boil_history *h = j->history;
    for (size_t i = 0; i < h->additions_count; i++)
        find_missed(j, h->additions[i].time_s + h->additions[i].over_s, h->additions[i].missed_by_m,
                    h->additions[i].missed_by_K);
    for (size_t i = 0; i < h->takes_count; i++)
        find_missed(j, h->takes[i].time_s + h->takes[i].over_s, h->takes[i].missed_by_m, (double)NAN);
}

/* Whether a spell, or a moment that begins one, falls in a break: what ends as it begins does not. */
static bool is_in_break(const boil_schedule *s, double from_s, double to_s)
{
    for (size_t i = 0; i < s->breaks_count; i++) {
        const boil_break *b = &s->breaks[i];
        if (from_s < b->to_s && (to_s > b->from_s || from_s == b->from_s))
            return true;
    }
    return false;
}

/* Somebody may have turned it down for the break, which is well: but nobody sees that it is quiet. One that has not boiled yet is
   expected to be. */
static void find_quiet_in(boil_judged *j, const boil_quiet_result *q, const boil_break *b)
{
    double limit = j->plant->limits.recovery_s, end_s = isnan(q->end_s) ? j->history->end_s : q->end_s;
    double from_s = fmax(q->start_s, b->from_s), to_s = fmin(end_s, b->to_s);
    if (to_s > from_s)
        boil_find(j, &(boil_sighting){.x = (to_s - from_s) / limit,
                                      .value = to_s - from_s,
                                      .limit = (double)NAN,
                                      .per_x = limit,
                                      .time_s = from_s,
                                      .worst_s = to_s});
}

void boil_judge_break_quiet(boil_judged *j)
{
    const boil_history *h = j->history;
    for (size_t i = 0; i < h->quiet_count; i++)
        for (size_t k = 0; k < j->schedule->breaks_count && h->quiet[i].cause != BOIL_QUIET_START; k++)
            find_quiet_in(j, &h->quiet[i], &j->schedule->breaks[k]);
}

/* Of what is so or not, and in no unit. */
static void find_so(boil_judged *j, double x, double time_s)
{
    boil_find(j, &(boil_sighting){.x = x, .value = (double)NAN, .limit = (double)NAN, .time_s = time_s});
}

/* A caution where something is poured, a notice where a load comes out. */
void boil_judge_unattended(boil_judged *j)
{
    const double lifts = 1, pours = 2;
    const boil_history *h = j->history;
    for (size_t i = 0; i < h->additions_count; i++) {
        const boil_addition_result *a = &h->additions[i];
        if (is_in_break(j->schedule, a->time_s, a->time_s + a->over_s))
            find_so(j, pours, a->time_s);
    }
    for (size_t i = 0; i < h->loads_count; i++) {
        double out_s = h->loads[i].lifted_s;
        if (is_in_break(j->schedule, out_s, out_s))
            find_so(j, lifts, out_s);
    }
}

/* Since when each place is free, as loads go in one by one, and when one that states it took it; -1: none did. */
typedef struct {
    double free_s[BOIL_POSITIONS_MAX], stated_s[BOIL_POSITIONS_MAX];
    size_t count;
} places;

/* The place that a load takes, stated or the lowest that is free; false: it is not free, or none is. Those that go in at one moment and
   state one place hang there together. */
static bool take_place(places *p, int stated, double time_s, double out_s)
{
    const double rounding_s = 1e-6;
    size_t first = stated > 0 ? (size_t)stated - 1 : 0, end = stated > 0 ? first + 1 : p->count;
    for (size_t i = first; i < end && i < p->count; i++) {
        bool together = stated > 0 && p->free_s[i] > 0 && fabs(p->stated_s[i] - time_s) <= rounding_s;
        if (p->free_s[i] <= time_s + rounding_s || together) {
            p->free_s[i] = together ? fmax(p->free_s[i], out_s) : out_s;
            p->stated_s[i] = stated > 0 ? time_s : -1;
            return true;
        }
    }
    return false;
}

/* What the schedule could not know: a load waits, or stays as long as the boil makes it. */
void boil_judge_place_taken(boil_judged *j)
{
    const boil_history *h = j->history;
    places p = {.count = (size_t)j->plant->tank.positions};
    for (size_t i = 0; p.count > 0 && i < h->loads_count; i++) {
        const boil_load_result *r = &h->loads[i];
        const boil_action *a = &j->schedule->actions[r->action];
        double out_s = isnan(r->lifted_s) ? (double)INFINITY : r->lifted_s + a->is.load.lowering_s;
        if (!take_place(&p, a->position, r->time_s, out_s))
            find_so(j, 1, r->time_s);
    }
}
