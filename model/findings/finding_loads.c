/* finding_loads.c -- loads too heavy, too soon, lifted too early, or hollow. */
#include <math.h>

#include "findings/finding_parts.h"

/* The loads of the schedule, one after the other: those of the history's loads. */
static const boil_load *next_load(const boil_schedule *s, size_t *at)
{
    while (*at < s->count && s->actions[*at].kind != BOIL_ACTION_LOAD)
        ++*at;
    return *at < s->count ? &s->actions[(*at)++].is.load : NULL;
}

void boil_judge_load_heavy(boil_judged *j)
{
    const boil_tank *t = &j->plant->tank;
    double rule = j->plant->limits.load_per_volume_kg_m3, volume = boil_tank_area(t) * t->level_m;
    const boil_load *l;
    for (size_t n = 0, at = 0; n < j->history->loads_count && (l = next_load(j->schedule, &at)) != NULL; n++) {
        double heavy = (l->mass_kg + l->basket_kg) / volume;
        /* a load of just the rule's weight is not over it */
        if (heavy > rule * (1 + 1e-6))
            boil_find(j, heavy > 2 * rule ? BOIL_SEVERITY_WARNING : BOIL_SEVERITY_CAUTION, j->history->loads[n].time_s, heavy,
                      rule);
    }
}

void boil_judge_tubes(boil_judged *j)
{
    const boil_load *l;
    for (size_t n = 0, at = 0; n < j->history->loads_count && (l = next_load(j->schedule, &at)) != NULL; n++)
        if (l->shape == BOIL_SHAPE_TUBE)
            boil_find(j, BOIL_SEVERITY_CAUTION, j->history->loads[n].time_s, l->mass_kg, (double)NAN);
}

void boil_judge_load_quiet(boil_judged *j)
{
    for (size_t n = 0; n < j->history->loads_count; n++) {
        const boil_load_result *r = &j->history->loads[n];
        if (r->was_quiet)
            boil_find(j, BOIL_SEVERITY_NOTICE, r->time_s, r->time_s, (double)NAN);
    }
}

void boil_judge_load_cold(boil_judged *j)
{
    for (size_t n = 0; n < j->history->loads_count; n++) {
        const boil_load_result *r = &j->history->loads[n];
        if (!isnan(r->lifted_s) && isnan(r->hot_s))
            boil_find(j, BOIL_SEVERITY_NOTICE, r->lifted_s, r->lifted_s - r->time_s, (double)NAN);
    }
}
