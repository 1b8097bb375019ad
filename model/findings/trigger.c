#include "findings/trigger.h"

#include <math.h>

/* In its place by potential; what does not find room is freed. */
static void take_in(boil_triggers *found, boil_trigger t)
{
    for (size_t i = 0; i < found->count; i++)
        if (t.steam_kg > found->list[i].steam_kg) {
            boil_trigger less = found->list[i];
            found->list[i] = t;
            t = less;
        }
    if (found->count < BOIL_TRIGGERS)
        found->list[found->count++] = t;
    else
        boil_simulation_free(t.base);
}

/* The spell's largest so far lies in the stretch that has just been passed: it begins from where that began. */
static void begin_from(boil_trigger *worst, boil_simulation *base, const boil_quiet_result *q)
{
    boil_simulation_free(worst->base);
    *worst = (boil_trigger){base, q->erupts_s, q->erupts_kg};
}

static boil_outcome take_lowering(boil_simulation *r, const boil_schedule *s, boil_triggers *found)
{
    boil_simulation_place at = boil_simulation_at(r);
    boil_trigger t = {NULL, at.time_s, 0};
    if (!at.lowers || !((t.steam_kg = boil_simulation_erupts(r)) > 0))
        return BOIL_OK;
    boil_outcome outcome = boil_simulation_copy(r, s, &t.base);
    if (outcome == BOIL_OK)
        take_in(found, t);
    return outcome;
}

static boil_outcome next_stretch(boil_simulation *r)
{
    return boil_simulation_advance(r, nextafter(boil_simulation_at(r).time_s, (double)INFINITY));
}

/* One stretch of a quiet bath, and the copy kept if the worst lies in it. */
static boil_outcome pass(boil_simulation *r, const boil_schedule *s, boil_trigger *worst, boil_triggers *found)
{
    boil_simulation *base;
    boil_outcome outcome = take_lowering(r, s, found);
    if (outcome != BOIL_OK || (outcome = boil_simulation_copy(r, s, &base)) != BOIL_OK)
        return outcome;
    outcome = next_stretch(r);
    const boil_quiet_result *q = boil_simulation_at(r).last_quiet;
    if (q != NULL && q->erupts_s > worst->time_s)
        begin_from(worst, base, q);
    else
        boil_simulation_free(base);
    return outcome;
}

static boil_outcome watch(boil_simulation *r, const boil_schedule *s, boil_triggers *found)
{
    boil_outcome outcome = BOIL_OK;
    boil_trigger worst = {NULL, 0, 0};
    for (boil_simulation_place at; outcome == BOIL_OK && !(at = boil_simulation_at(r)).over;) {
        if (at.quiet) {
            outcome = pass(r, s, &worst, found);
            continue;
        }
        if (worst.base != NULL)
            take_in(found, worst);
        worst = (boil_trigger){NULL, worst.time_s, 0};
        outcome = next_stretch(r);
    }
    if (worst.base != NULL)
        take_in(found, worst);
    return outcome;
}

boil_outcome boil_trigger_watch(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, boil_triggers *found,
                                boil_history *out)
{
    boil_simulation *r;
    *out = (boil_history){.end = BOIL_RUN_DONE};
    boil_outcome outcome = boil_simulation_begin(p, s, o, &r);
    if (outcome == BOIL_OK)
        outcome = watch(r, s, found);
    if (outcome == BOIL_OK)
        outcome = boil_simulation_finish(r, out);
    boil_simulation_free(r);
    return outcome;
}

boil_outcome boil_trigger_follow(const boil_trigger *t, const boil_schedule *s, boil_history *out)
{
    const double follow_s = 60;
    boil_simulation *r;
    boil_schedule until = *s;
    until.duration_s = t->time_s + follow_s;
    until.idle_after_s = s->duration_s;
    while (until.count > 0 && until.actions[until.count - 1].time_s > fmin(s->duration_s, until.duration_s))
        until.count--;
    boil_outcome outcome = boil_simulation_copy(t->base, &until, &r);
    if (outcome != BOIL_OK)
        return outcome;
    boil_simulation_let_go(r, t->time_s);
    outcome = boil_simulation_finish(r, out);
    boil_simulation_free(r);
    return outcome;
}

void boil_triggers_move(boil_triggers *to, boil_triggers *from)
{
    for (size_t i = 0; i < from->count; i++)
        take_in(to, from->list[i]);
    from->count = 0;
}

void boil_triggers_free(boil_triggers *t)
{
    for (size_t i = 0; i < t->count; i++)
        boil_simulation_free(t->list[i].base);
    t->count = 0;
}
