#include "describe/carried_out.h"

#include <math.h>
#include <stdlib.h>

boil_outcome carried_out_of(const scenario *s, const boil_run_options *options, carried_out *out)
{
    boil_run_options no_trace = *options;
    no_trace.row_interval_s = 0;
    *out = (carried_out){.scenario = s, .tolerance = options->tolerance};
    boil_outcome result = boil_run_set_of(&s->plant, &s->schedule, options, &out->set);
    if (result != BOIL_OK)
        return result;
    out->central = out->set.likely;
    boil_bands_of(&out->central, out->set.other, out->set.count, &out->bands);
    boil_remedies needed = boil_remedies_of(&s->plant, &s->schedule, &no_trace, &out->central);
    result = boil_findings_of(&s->plant, &s->schedule, &needed, &out->central, out->set.other, out->set.count, &out->found,
                              &out->possible);
    if (result != BOIL_OK)
        carried_out_free(out);
    return result;
}

void carried_out_free(carried_out *o)
{
    boil_run_set_free(&o->set);
    boil_findings_free(&o->found);
    boil_findings_free(&o->possible);
    *o = (carried_out){0};
}

boil_severity carried_out_gravest(const carried_out *o)
{
    boil_severity found = boil_findings_gravest(&o->found), possible = boil_findings_gravest(&o->possible);
    return found > possible ? found : possible;
}

bool carried_out_stopped(const carried_out *o)
{
    return o->central.end != BOIL_RUN_DONE;
}

/* A line of an addition tells of the ten minutes after its end, see simulate/run.h. */
#define ADDITION_TAIL_S 600

/* The last moment of which a line tells; infinite when something in it never came. */
static double told_until(const carried_out_line *l)
{
    if (l->addition != NULL)
        return l->time_s + l->addition->over_s + ADDITION_TAIL_S;
    const boil_load_result *r = l->load;
    double back = isnan(r->boil_lost_s) ? l->time_s : isnan(r->recovery_s) ? (double)INFINITY : r->boil_lost_s + r->recovery_s;
    return fmax(back, isnan(r->hot_s) ? l->time_s : l->time_s + r->hot_s);
}

/* Results stand in the order of their actions; a run that stopped early has fewer. */
static bool line_of(const carried_out *o, size_t action, size_t *loads, size_t *additions, carried_out_line *l)
{
    const boil_history *h = &o->central;
    action_group group = action_type_of(o->scenario->schedule.actions[action].kind)->group;
    *l = (carried_out_line){.words = action_name_of(o->scenario, action), .action = action};
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

carried_out_line *carried_out_lines(const carried_out *o, size_t *count)
{
    size_t loads = 0, additions = 0, most = o->central.loads_count + o->central.additions_count;
    carried_out_line *lines = most > 0 ? malloc(most * sizeof *lines) : NULL;
    *count = 0;
    for (size_t i = 0; lines != NULL && i < o->scenario->schedule.count && *count < most; i++)
        *count += line_of(o, i, &loads, &additions, &lines[*count]);
    return lines;
}
