#include "findings/trigger.h"

#include <math.h>

static void swap(boil_trigger *a, boil_trigger *b)
{
    boil_trigger other = *a;
    *a = *b;
    *b = other;
}

/* In its place by potential; it becomes what does not find room, a base that is done with. */
static void take_in(boil_triggers *found, boil_trigger *t)
{
    for (size_t i = 0; i < found->count; i++)
        if (t->steam_kg > found->list[i].steam_kg)
            swap(&found->list[i], t);
    if (found->count < BOIL_TRIGGERS)
        swap(&found->list[found->count++], t);
}

static boil_outcome take_lowering(boil_simulation *r, const boil_schedule *s, boil_triggers *found)
{
    boil_simulation_place at = boil_simulation_at(r);
    boil_trigger t = {found->spare, at.time_s, 0};
    if (!at.lowers || !((t.steam_kg = boil_simulation_erupts(r)) > 0))
        return BOIL_OK;
    boil_outcome outcome = boil_simulation_copy(r, s, &t.base);
    if (outcome == BOIL_OK)
        take_in(found, &t);
    found->spare = t.base;
    return outcome;
}

static boil_outcome next_stretch(boil_simulation *r)
{
    return boil_simulation_advance(r, nextafter(boil_simulation_at(r).time_s, (double)INFINITY));
}

/* One stretch of a quiet bath. Where the spell's largest so far lies in it, it begins from where that began. */
static boil_outcome pass(boil_simulation *r, const boil_schedule *s, boil_triggers *found)
{
    boil_trigger *worst = &found->worst;
    boil_outcome outcome = take_lowering(r, s, found);
    if (outcome != BOIL_OK || (outcome = boil_simulation_copy(r, s, &found->spare)) != BOIL_OK)
        return outcome;
    outcome = next_stretch(r);
    const boil_quiet_result *q = boil_simulation_at(r).last_quiet;
    if (q != NULL && q->erupts_s > worst->time_s) {
        boil_simulation *base = found->spare;
        found->spare = worst->base;
        *worst = (boil_trigger){base, q->erupts_s, q->erupts_kg};
    }
    return outcome;
}

/* A spell is over. */
static void end_spell(boil_triggers *found)
{
    if (found->worst.steam_kg > 0)
        take_in(found, &found->worst);
    found->worst.time_s = found->worst.steam_kg = 0;
}

static boil_outcome watch(boil_simulation *r, const boil_schedule *s, boil_triggers *found)
{
    boil_outcome outcome = BOIL_OK;
    found->worst.time_s = found->worst.steam_kg = 0;
    for (boil_simulation_place at; outcome == BOIL_OK && !(at = boil_simulation_at(r)).over;) {
        if (at.quiet) {
            outcome = pass(r, s, found);
            continue;
        }
        end_spell(found);
        outcome = next_stretch(r);
    }
    end_spell(found);
    return outcome;
}

boil_outcome boil_trigger_watch(boil_simulation **own, const boil_plant *p, const boil_schedule *s, const boil_run_options *o,
                                boil_triggers *found, boil_history *out)
{
    *out = (boil_history){.end = BOIL_RUN_DONE};
    boil_outcome outcome = boil_simulation_begin(p, s, o, own);
    if (outcome == BOIL_OK)
        outcome = watch(*own, s, found);
    if (outcome == BOIL_OK)
        outcome = boil_simulation_finish(*own);
    return outcome == BOIL_OK ? boil_simulation_hand_over(*own, out) : outcome;
}

boil_outcome boil_trigger_follow(const boil_trigger *t, boil_simulation **own, const boil_schedule *s, boil_history *out)
{
    const double follow_s = 60;
    boil_schedule until = *s;
    *out = (boil_history){.end = BOIL_RUN_DONE};
    until.duration_s = t->time_s + follow_s;
    until.idle_after_s = s->duration_s;
    while (until.count > 0 && until.actions[until.count - 1].time_s > fmin(s->duration_s, until.duration_s))
        until.count--;
    boil_outcome outcome = boil_simulation_copy(t->base, &until, own);
    if (outcome != BOIL_OK)
        return outcome;
    boil_simulation_let_go(*own, t->time_s);
    outcome = boil_simulation_finish(*own);
    return outcome == BOIL_OK ? boil_simulation_hand_over(*own, out) : outcome;
}

void boil_triggers_move(boil_triggers *to, boil_triggers *from)
{
    for (size_t i = 0; i < from->count; i++)
        take_in(to, &from->list[i]);
    from->count = 0;
}

void boil_triggers_free(boil_triggers *t)
{
    for (size_t i = 0; i < BOIL_TRIGGERS; i++)
        boil_simulation_free(t->list[i].base);
    boil_simulation_free(t->worst.base);
    boil_simulation_free(t->spare);
    *t = (boil_triggers){.count = 0};
}
