#include "describe/carried_out.h"

#include <math.h>
#include <stdlib.h>

#include "base/constants.h"
#include "base/memory.h"

/* Of several of a kind that which rises highest. */
static const boil_history *traced_of(const carried_out *o, boil_closures closures)
{
    const boil_history *of = closures == BOIL_CLOSURES_LIKELY ? &o->central : NULL;
    for (size_t i = 0; i < o->set.count; i++) {
        const boil_run_of_set *r = &o->set.other[i];
        bool higher = of == NULL || r->history.summary.freeboard_min_m.value < of->summary.freeboard_min_m.value;
        if (r->closures == closures && closures != BOIL_CLOSURES_LIKELY && !r->refused && higher)
            of = &r->history;
    }
    return of;
}

boil_outcome carried_out_of(const scenario *s, const boil_run_options *options, carried_out *out)
{
    boil_run_options no_trace = *options;
    no_trace.row_interval_s = 0;
    *out = (carried_out){.scenario = s, .tolerance = options->tolerance};
    boil_outcome result = boil_run_set_of(&s->plant, &s->schedule, options, &out->set);
    if (result != BOIL_OK)
        return result;
    out->central = out->set.likely;
    out->traced = traced_of(out, options->traced);
    boil_bands_of(&out->central, out->set.other, out->set.count, &out->bands);
    boil_remedies needed;
    result = boil_remedies_of(&s->plant, &s->schedule, &no_trace, &out->central, &needed);
    if (result == BOIL_OK)
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

formatted_text carried_out_clock(const carried_out *o, double t)
{
    double start_s = o->scenario->start_s;
    return o->central.end_s < 3600 ? format_clock_exact(start_s, t) : format_clock(start_s, t);
}

const boil_load_result *carried_out_slowest(const carried_out *o)
{
    const boil_load_result *slowest = NULL;
    for (size_t i = 0; i < o->central.loads_count; i++) {
        const boil_load_result *l = &o->central.loads[i];
        if (slowest == NULL || (!isnan(slowest->recovery_s) && !(l->recovery_s <= slowest->recovery_s)))
            slowest = l;
    }
    return slowest;
}

carried_out_water carried_out_water_of(const carried_out *o)
{
    const boil_water_balance *w = &o->central.balance.water;
    double density = boil_water_density(fmax(o->scenario->plant.ambient.temperature_K, BOIL_ZERO_CELSIUS));
    return (carried_out_water){
        (w->by_hand_kg + w->by_valve_kg + w->in_liquid_kg) / density,
        (w->steam_kg + w->evaporated_kg + w->layer_boiled_kg + w->drag_out_kg - w->with_parts_kg - w->from_lid_kg) / density};
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

static carried_out_line line_of(const carried_out *o, size_t action, double time_s)
{
    return (carried_out_line){.words = action_name_of(o->scenario, action), .action = action, .time_s = time_s};
}

static int by_time(const void *left, const void *right)
{
    const carried_out_line *a = left, *b = right;
    if (a->time_s != b->time_s)
        return a->time_s < b->time_s ? -1 : 1;
    return a->action < b->action ? -1 : a->action > b->action;
}

carried_out_line *carried_out_lines(const carried_out *o, size_t *count)
{
    const boil_history *h = &o->central;
    size_t most = h->loads_count + h->additions_count;
    carried_out_line *lines = most > 0 ? memory_needed(malloc(most * sizeof *lines)) : NULL;
    *count = lines != NULL ? most : 0;
    if (lines == NULL)
        return NULL;
    for (size_t i = 0; i < h->loads_count; i++) {
        lines[i] = line_of(o, h->loads[i].action, h->loads[i].time_s);
        lines[i].load = &h->loads[i];
    }
    for (size_t i = 0; i < h->additions_count; i++) {
        lines[h->loads_count + i] = line_of(o, h->additions[i].action, h->additions[i].time_s);
        lines[h->loads_count + i].addition = &h->additions[i];
    }
    for (size_t i = 0; i < most; i++)
        lines[i].after_overflow = told_until(&lines[i]) >= h->summary.overflow_s;
    qsort(lines, most, sizeof *lines, by_time);
    return lines;
}

double carried_out_done_s(const carried_out *o, size_t action)
{
    return action < o->central.acts_count ? o->central.acts[action].done_s : (double)NAN;
}

const char *carried_out_why_not(const carried_out *o, size_t action)
{
    if (action >= o->central.acts_count)
        return "its time did not come";
    static const char *const ends[] = {[BOIL_ACT_LAPSED] = "the next of the same line came first",
                                       [BOIL_ACT_TOO_LATE] = "it could not begin before its time was over",
                                       [BOIL_ACT_NOT_NEEDED] = "not needed: the gauge showed it already, or nothing is kept"};
    if (o->central.acts[action].end > BOIL_ACT_DONE)
        return ends[o->central.acts[action].end];
    switch (o->scenario->schedule.actions[action].wait.state) {
    case BOIL_WAIT_BOILING:
    case BOIL_WAIT_BACK:
        return "the bath did not boil long enough";
    case BOIL_WAIT_QUIET:
        return "the bath was not quiet long enough";
    case BOIL_WAIT_NONE:
        break;
    }
    return o->scenario->schedule.actions[action].wait.follows ? "what it follows was not done in time"
                                                              : "the bath did not boil long enough";
}
