/* finding_level.c -- the surface too high or too low. */
#include <math.h>

#include "equipment/tank.h"
#include "findings/finding_parts.h"

void boil_judge_overflow(boil_judged *j)
{
    boil_sighting s = boil_sighting_watched(j, BOIL_WATCH_OVERFLOW, j->plant->tank.depth_m, 1);
    double since = j->history->summary.overflow_s;
    if (isnan(since))
        return;
    s.time_s = since;
    s.least = BOIL_AT_DANGER;
    boil_find(j, &s);
}

void boil_judge_overflow_still(boil_judged *j)
{
    boil_sighting s = boil_sighting_watched(j, BOIL_WATCH_OVERFLOW_STILL, j->plant->tank.depth_m, 1);
    boil_find(j, &s);
}

/* Over the rim the overflow says it. */
void boil_judge_freeboard(boil_judged *j)
{
    double limit = j->plant->limits.freeboard_m;
    boil_sighting s = boil_sighting_watched(j, BOIL_WATCH_FREEBOARD, limit, -boil_finding_freeboard_unit(j));
    if (j->history->summary.freeboard_min_m.value > 0)
        boil_find(j, &s);
}

/* An electric element that stays bare under power for a minute burns out and can set fire to what touches it. */
void boil_judge_heater_bare(boil_judged *j)
{
    const double burns_s = 60;
    double bare_s = j->history->summary.watched[BOIL_WATCH_HEATER_BARE].heated_s;
    boil_sighting s = boil_sighting_watched(j, BOIL_WATCH_HEATER_BARE, boil_tank_heater_top(&j->plant->tank), -1);
    if (j->plant->heater.source == BOIL_HEAT_ELECTRIC && bare_s > burns_s)
        s.least = BOIL_AT_DANGER;
    boil_find(j, &s);
}

void boil_judge_floor_bare(boil_judged *j)
{
    boil_sighting s = boil_sighting_watched(j, BOIL_WATCH_FLOOR_BARE, 0, -1);
    boil_find(j, &s);
}

void boil_judge_parts_bare(boil_judged *j)
{
    boil_sighting s = boil_sighting_watched(j, BOIL_WATCH_PARTS_BARE, boil_tank_parts_top(&j->plant->tank), -1);
    boil_find(j, &s);
}
