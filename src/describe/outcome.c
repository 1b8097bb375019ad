#include "describe/outcome.h"

#include <math.h>
#include <stdlib.h>

#include "base/boil.h"

int outcome_of(const scenario *s, const boil_run_options *options, outcome *out)
{
    boil_run_options no_trace = *options;
    no_trace.row_interval_s = 0;
    boil_run_options fast = no_trace;
    fast.mixing_time_factor *= OUTCOME_FAST_MIXING;
    *out = (outcome){.scenario = s, .tolerance = options->tolerance};
    int result = boil_run(&s->plant, &s->schedule, options, &out->central);
    if (result == BOIL_OK)
        result = boil_run(&s->plant, &s->schedule, &fast, &out->fast);
    if (result == BOIL_OK) {
        boil_remedies needed = boil_remedies_of(&s->plant, &s->schedule, &no_trace, &out->central);
        result = boil_findings_of(&s->plant, &s->schedule, &needed, &out->central, &out->fast, &out->found, &out->possible);
    }
    if (result != BOIL_OK)
        outcome_free(out);
    return result;
}

void outcome_free(outcome *o)
{
    boil_history_free(&o->central);
    boil_history_free(&o->fast);
    boil_findings_free(&o->found);
    boil_findings_free(&o->possible);
    *o = (outcome){0};
}

boil_severity outcome_gravest(const outcome *o)
{
    boil_severity found = boil_findings_gravest(&o->found), possible = boil_findings_gravest(&o->possible);
    return found > possible ? found : possible;
}

bool outcome_stopped(const outcome *o)
{
    return o->central.end != BOIL_RUN_DONE;
}

/* A line of an addition tells of the ten minutes after its end, see simulate/run.h. */
#define ADDITION_TAIL_S 600

/* The last moment of which a line tells; infinite when something in it never came. */
static double told_until(const outcome_line *l)
{
    if (l->addition != NULL)
        return l->time_s + l->addition->over_s + ADDITION_TAIL_S;
    const boil_load_result *r = l->load;
    double back = isnan(r->boil_lost_s) ? l->time_s : isnan(r->recovery_s) ? (double)INFINITY : r->boil_lost_s + r->recovery_s;
    return fmax(back, isnan(r->hot_s) ? l->time_s : l->time_s + r->hot_s);
}

/* Results stand in the order of their actions; a run that stopped early has fewer. */
static bool line_of(const outcome *o, size_t action, size_t *loads, size_t *additions, outcome_line *l)
{
    const boil_history *h = &o->central;
    action_group group = action_type_of(o->scenario->schedule.actions[action].kind)->group;
    *l = (outcome_line){.words = action_name_of(o->scenario, action), .action = action};
    if (group == ACTION_LOAD && *loads < h->loads_count) {
        l->load = &h->loads[(*loads)++];
        l->time_s = l->load->time_s;
    } else if (group == ACTION_ADDITION && *additions < h->additions_count) {
        l->addition = &h->additions[(*additions)++];
        l->time_s = l->addition->time_s;
    } else {
        return false;
    }
    l->after_overflow = told_until(l) >= h->summary.overflow_s;
    return true;
}

outcome_line *outcome_lines(const outcome *o, size_t *count)
{
    size_t loads = 0, additions = 0, most = o->central.loads_count + o->central.additions_count;
    outcome_line *lines = most > 0 ? malloc(most * sizeof *lines) : NULL;
    *count = 0;
    for (size_t i = 0; lines != NULL && i < o->scenario->schedule.count && *count < most; i++)
        *count += line_of(o, i, &loads, &additions, &lines[*count]);
    return lines;
}
