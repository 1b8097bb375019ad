/* finding_level.c -- the surface too high or too low. */
#include <math.h>

#include "equipment/tank.h"
#include "findings/finding_parts.h"

/* What floats and could lift the bath over the rim is counted as if it did, in a run that only may be so: whether it comes off while
   a load, a stir or a colder bath meets it is nothing to rely on. */
static void find_may_overflow(boil_judged *j)
{
    const boil_quiet_result *least = boil_finding_least_left(j->history);
    double over_s = boil_finding_may_overflow(j->history);
    if (least != NULL && !isnan(over_s))
        boil_find(j, &(boil_sighting){.x = -least->left_m,
                                      .value = j->plant->tank.depth_m - least->left_m,
                                      .limit = j->plant->tank.depth_m,
                                      .per_x = 1,
                                      .time_s = over_s,
                                      .least = BOIL_AT_DANGER,
                                      .advice = boil_finding_advice_afloat(j)});
}

void boil_judge_overflow(boil_judged *j)
{
    boil_sighting s = boil_sighting_watched(j, BOIL_WATCH_OVERFLOW, j->plant->tank.depth_m, 1);
    s.time_s = j->history->summary.overflow_s;
    s.least = BOIL_AT_DANGER;
    s.advice = boil_finding_advice_afloat(j);
    if (!isnan(s.time_s))
        boil_find(j, &s);
    else if (j->only_may)
        find_may_overflow(j);
}

void boil_judge_overflow_still(boil_judged *j)
{
    boil_sighting s = boil_sighting_watched(j, BOIL_WATCH_OVERFLOW_STILL, j->plant->tank.depth_m, 1);
    if (s.x > 0) { /* the run ends at the rim, within a micrometre */
        s.x = 0;
        s.value = j->plant->tank.depth_m;
    }
    boil_find(j, &s);
}

/* Over the rim the overflow says it. In a run that only may be so, what floats counts as if it came off where that alone is a
   warning. */
void boil_judge_freeboard(boil_judged *j)
{
    const boil_quiet_result *least = boil_finding_least_left(j->history);
    double limit = j->plant->limits.freeboard_m, used_up = least != NULL ? boil_finding_used_up(j, least->left_m) : 0;
    boil_sighting s = boil_sighting_watched(j, BOIL_WATCH_FREEBOARD, limit, -boil_finding_freeboard_unit(j));
    if (!(j->history->summary.freeboard_min_m.value > 0))
        return;
    if (j->only_may && least != NULL && least->left_m < limit / 3 && used_up > s.x) {
        s.x = used_up;
        s.value = least->left_m;
        s.from_s = NULL;
        s.time_s = s.worst_s = least->left_s;
    }
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

void boil_judge_level_high(boil_judged *j)
{
    boil_sighting s = boil_sighting_watched(j, BOIL_WATCH_LEVEL_HIGH, j->plant->tank.mark_m, 1);
    boil_find(j, &s);
}
