/* finding_boil.c -- the boil that does not come, or stays away. */
#include <math.h>

#include "findings/finding_parts.h"

const boil_quiet_result *boil_finding_quiet_end(const boil_history *h)
{
    if (h->end != BOIL_RUN_DONE || h->quiet_count == 0 || !(h->end_s > 0))
        return NULL;
    const boil_quiet_result *q = &h->quiet[h->quiet_count - 1];
    /* somebody turned it down: no fault of the heat */
    return isnan(q->end_s) && q->cause != BOIL_QUIET_HEAT ? q : NULL;
}

void boil_judge_never_boils(boil_judged *j)
{
    const boil_quiet_result *q = boil_finding_quiet_end(j->history);
    double needed_W = j->needed.heat_W;
    if (q != NULL && q->cause == BOIL_QUIET_START)
        boil_find_needing(j, BOIL_SEVERITY_WARNING, q->start_s,
                          boil_heater_output(&j->plant->heater, 1, j->history->summary.boiling_point_end_K), needed_W, needed_W,
                          (double)NAN);
}

void boil_judge_never_returns(boil_judged *j)
{
    const boil_quiet_result *q = boil_finding_quiet_end(j->history);
    if (q != NULL && q->cause != BOIL_QUIET_START)
        boil_find_needing(j, BOIL_SEVERITY_WARNING, q->start_s, j->history->end_s - q->start_s, j->plant->limits.recovery_s,
                          j->needed.heat_W, (double)NAN);
}

void boil_judge_boil_lost(boil_judged *j)
{
    const boil_history *h = j->history;
    double limit = j->plant->limits.recovery_s;
    for (size_t i = 0; i < h->quiet_count; i++) {
        const boil_quiet_result *q = &h->quiet[i];
        double lasted = (isnan(q->end_s) ? h->end_s : q->end_s) - q->start_s;
        if (q->cause != BOIL_QUIET_START && q->cause != BOIL_QUIET_HEAT && lasted > limit)
            boil_find(j, BOIL_SEVERITY_CAUTION, q->start_s, lasted, limit);
    }
}

/* A likely run that leaves the known range says so itself, and stops there. */
void boil_judge_not_resolved(boil_judged *j)
{
    const boil_history *h = j->history;
    if (h->end == BOIL_RUN_FAILED || (h->end == BOIL_RUN_OUT_OF_RANGE && j->reaches_end))
        boil_find(j, BOIL_SEVERITY_WARNING, j->refused ? (double)NAN : h->end_s, (double)NAN, (double)NAN);
}
