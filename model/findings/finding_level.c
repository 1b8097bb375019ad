/* finding_level.c -- the surface too high or too low. */
#include <math.h>

#include "equipment/tank.h"
#include "findings/finding_parts.h"

void boil_judge_overflow(boil_judged *j)
{
    const boil_summary *s = &j->history->summary;
    if (!isnan(s->overflow_s))
        boil_find(j, BOIL_SEVERITY_DANGER, s->overflow_s, s->level_max_m.value, j->plant->tank.depth_m);
}

void boil_judge_overflow_still(boil_judged *j)
{
    double since = j->history->summary.still_overflow_s, depth = j->plant->tank.depth_m;
    if (!isnan(since))
        boil_find(j, BOIL_SEVERITY_DANGER, since, depth, depth);
}

void boil_judge_freeboard(boil_judged *j)
{
    const boil_extreme *least = &j->history->summary.freeboard_min_m;
    double limit = j->plant->limits.freeboard_m;
    if (least->value < limit && least->value > 0)
        boil_find(j, least->value < limit / 2 ? BOIL_SEVERITY_WARNING : BOIL_SEVERITY_CAUTION, least->time_s, least->value,
                  limit);
}

static void judge_bare(boil_judged *j, boil_severity severity, double top_m)
{
    const boil_extreme *lowest = &j->history->summary.still_level_min_m;
    if (lowest->value < top_m)
        boil_find(j, severity, lowest->time_s, lowest->value, top_m);
}

void boil_judge_heater_bare(boil_judged *j)
{
    if (j->plant->tank.heated == BOIL_TANK_HEATED_INSIDE)
        judge_bare(j, BOIL_SEVERITY_WARNING, boil_tank_heater_top(&j->plant->tank));
}

void boil_judge_parts_bare(boil_judged *j)
{
    judge_bare(j, BOIL_SEVERITY_CAUTION, boil_tank_parts_top(&j->plant->tank));
}
