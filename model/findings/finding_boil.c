/* finding_boil.c -- the boil that does not come, or stays away. */
#include <math.h>
#include <string.h>

#include "findings/finding_parts.h"

const boil_quiet_result *boil_finding_quiet_end(const boil_history *h)
{
    if (h->end != BOIL_RUN_DONE || h->quiet_count == 0 || !(h->end_s > 0))
        return NULL;
    const boil_quiet_result *q = &h->quiet[h->quiet_count - 1];
    /* somebody turned it down: no fault of the heat */
    return isnan(q->end_s) && q->cause != BOIL_QUIET_HEAT ? q : NULL;
}

static bool is_anything_due(const boil_schedule *s)
{
    for (size_t i = 0; i < s->count; i++)
        if (s->actions[i].kind == BOIL_ACTION_LOAD || s->actions[i].kind == BOIL_ACTION_WATER)
            return true;
    return false;
}

void boil_judge_never_boils(boil_judged *j)
{
    const boil_quiet_result *q = boil_finding_quiet_end(j->history);
    double needed_W = j->needed.heat_W, any = 1e-3;
    if (q == NULL || q->cause != BOIL_QUIET_START)
        return;
    double heat_W = boil_heater_output(&j->plant->heater, 1, j->history->summary.boiling_point_end_K);
    boil_find(j, &(boil_sighting){.x = needed_W > heat_W ? 1 - heat_W / needed_W : any,
                                  .value = heat_W,
                                  .limit = needed_W,
                                  .time_s = q->start_s,
                                  .most = is_anything_due(j->schedule) ? BOIL_AT_WARNING : BOIL_AT_CAUTION,
                                  .needed_W = needed_W});
}

/* For what stopped it; NULL: loads did, and the row's advice is for them. */
static const char *advice_for(boil_quiet_cause cause)
{
    switch (cause) {
    case BOIL_QUIET_WATER:
        return "No water until the boil is steady; then a thinner stream.";
    case BOIL_QUIET_LIQUID:
        return "Add it in smaller portions, each after the boil is back.";
    case BOIL_QUIET_SALTS:
        return "No salts until the boil is steady; then many times more slowly.";
    case BOIL_QUIET_LOSSES:
        return "Nothing goes in until the boil is back: more heat, or a lid.";
    case BOIL_QUIET_START:
    case BOIL_QUIET_HEAT:
    case BOIL_QUIET_LOAD:
        break;
    }
    return NULL;
}

static bool is_loaded(const boil_history *h)
{
    for (size_t i = 0; i < h->loads_count; i++)
        if (isnan(h->loads[i].lifted_s))
            return true;
    return false;
}

void boil_judge_never_returns(boil_judged *j)
{
    const boil_quiet_result *q = boil_finding_quiet_end(j->history);
    if (q == NULL || q->cause == BOIL_QUIET_START)
        return;
    double limit = j->plant->limits.recovery_s, lasted = j->history->end_s - q->start_s;
    boil_find(j, &(boil_sighting){.x = lasted / limit,
                                  .value = lasted,
                                  .limit = limit,
                                  .per_x = limit,
                                  .time_s = q->start_s,
                                  .worst_s = j->history->end_s,
                                  .outside_s = lasted,
                                  .least = is_loaded(j->history) ? BOIL_AT_CAUTION : BOIL_AT_NOTICE,
                                  .needed_W = j->needed.heat_W,
                                  .advice = advice_for(q->cause)});
}

/* Then the liquid's finding says it. */
static bool is_of_liquid(const boil_history *h, const boil_quiet_result *q)
{
    for (size_t i = 0; i < h->additions_count; i++)
        if (h->additions[i].boil_lost_s == q->start_s && boil_finding_stopped_for(h, &h->additions[i]) > 0)
            return true;
    return false;
}

void boil_judge_boil_lost(boil_judged *j)
{
    const boil_history *h = j->history;
    double limit = j->plant->limits.recovery_s;
    for (size_t i = 0; i < h->quiet_count; i++) {
        const boil_quiet_result *q = &h->quiet[i];
        double end_s = isnan(q->end_s) ? h->end_s : q->end_s, lasted = end_s - q->start_s;
        if (q->cause == BOIL_QUIET_START || q->cause == BOIL_QUIET_HEAT || is_of_liquid(h, q))
            continue;
        boil_find(j, &(boil_sighting){.x = lasted / limit,
                                      .value = lasted,
                                      .limit = limit,
                                      .per_x = limit,
                                      .time_s = q->start_s,
                                      .worst_s = end_s,
                                      .outside_s = lasted - limit,
                                      .advice = advice_for(q->cause)});
    }
}

/* A likely run that leaves the known range says so itself, and stops there. */
void boil_judge_not_resolved(boil_judged *j)
{
    const boil_history *h = j->history;
    if (h->end == BOIL_RUN_FAILED || (h->end == BOIL_RUN_OUT_OF_RANGE && j->reaches_end))
        boil_find(j, &(boil_sighting){
                         .x = 1, .value = (double)NAN, .limit = (double)NAN, .time_s = j->refused ? (double)NAN : h->end_s});
}

/* Of temperature or strength it is graver: what comes then nobody has measured. */
void boil_judge_left_range(boil_judged *j)
{
    const boil_history *h = j->history;
    if (h->end != BOIL_RUN_OUT_OF_RANGE)
        return;
    bool grave = strstr(h->stop_quantity, "temperature") != NULL || strstr(h->stop_quantity, "strength") != NULL;
    boil_find(j, &(boil_sighting){.x = grave ? 1 : 0.25, .value = (double)NAN, .limit = (double)NAN, .time_s = h->end_s});
}
