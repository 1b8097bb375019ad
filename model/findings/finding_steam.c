/* finding_steam.c -- water afloat, and steam that comes at once. */
#include <math.h>

#include "findings/finding_parts.h"

/* A layer is as grave as the freeboard would be that is left once it has let go: of the limit less than all, two thirds, one third;
   and over the rim where the surge can get there. One that no boil takes away in the run, or beyond it, is graded as if it were at
   its boil: unresolved, it lets go when the boil returns. */
static void judge_spell(boil_judged *j, const boil_quiet_result *q)
{
    double limit = j->plant->limits.freeboard_m;
    bool unresolved = isnan(q->end_s) && !j->let_go;
    double left = unresolved ? q->left_hot_m : q->left_m, over_s = unresolved ? q->may_overflow_hot_s : q->may_overflow_s;
    if (!isnan(over_s))
        boil_find(j, BOIL_SEVERITY_DANGER, over_s, left, limit);
    else if (left < limit && (unresolved || left < limit / 3))
        boil_find(j, BOIL_SEVERITY_WARNING, unresolved ? q->start_s : q->left_s, left, limit);
    else if (left < limit)
        boil_find(j, left < 2 * limit / 3 ? BOIL_SEVERITY_CAUTION : BOIL_SEVERITY_NOTICE, q->left_s, left, limit);
}

void boil_judge_layer(boil_judged *j)
{
    for (size_t i = 0; i < j->history->quiet_count; i++)
        judge_spell(j, &j->history->quiet[i]);
}

void boil_judge_surface_boils(boil_judged *j)
{
    double since = j->history->summary.layer_boil_s;
    if (!isnan(since))
        boil_find(j, BOIL_SEVERITY_WARNING, since, since, (double)NAN);
}

/* Many times the calm steam harms only where the freeboard runs short: within the limit, or a quarter above it (judgement). */
void boil_judge_surge(boil_judged *j)
{
    const boil_summary *s = &j->history->summary;
    double calm = s->steam_steady_kg_s, peak = s->steam_peak_kg_s.value, limit = j->plant->limits.freeboard_m;
    double least = s->freeboard_min_m.value;
    j->more_than = s->steam_more_than;
    if (calm > 0 && peak > SURGE_RATIO * calm && s->surge_peak_kg_s.value > (SURGE_RATIO - 1) * calm)
        boil_find(j,
                  least < limit          ? BOIL_SEVERITY_WARNING
                  : least < 1.25 * limit ? BOIL_SEVERITY_CAUTION
                                         : BOIL_SEVERITY_NOTICE,
                  s->steam_peak_kg_s.time_s, peak / calm, SURGE_RATIO);
}
