#include "commands/run/parts.h"

#include <math.h>
#include <stdlib.h>

#include "base/memory.h"

/* How bad a line is: a boil that never came back, then the longest without boil. */
static double badness(const carried_out_line *l)
{
    double recovery = l->load != NULL ? l->load->recovery_s : l->addition != NULL ? l->addition->recovery_s : -1;
    bool quiet = l->load != NULL ? l->load->was_quiet : l->addition != NULL ? l->addition->was_quiet : false;
    return (isnan(recovery) ? 1e12 : recovery) + (quiet ? 1e9 : 0);
}

static const double rounding_s = 1e-6;

/* When it comes out by itself, by the run; NaN: an act takes it out, or nothing does. */
static double out_s(const boil_action *a, double time_s, const boil_load_result *r)
{
    const double never = (double)NAN;
    const boil_load *l = action_load_of(a);
    if (l == NULL || !isfinite(l->immersed_s))
        return never;
    double its_time_s = time_s + (l->at_boil ? l->lowering_s : 0) + l->immersed_s;
    if (r == NULL)
        return its_time_s;
    if (!l->at_boil)
        return r->lifted_s < its_time_s - rounding_s ? never : its_time_s;
    return r->boil_short_s > 0 && !(r->lifted_s >= l->latest_s - rounding_s && l->latest_s > 0) ? never : r->lifted_s;
}

/* Without a moment of its own it stands where it could be done at the earliest. */
static size_t list_all(const carried_out *o, run_action *list)
{
    const boil_schedule *s = &o->scenario->schedule;
    size_t count = 0, lines_count;
    carried_out_line *lines = carried_out_lines(o, &lines_count);
    const carried_out_line **of = memory_needed(calloc(s->count + 1, sizeof *of));
    for (size_t i = 0; of != NULL && i < lines_count; i++)
        of[lines[i].action] = &lines[i];
    for (size_t i = 0; of != NULL && i < s->count; i++) {
        const boil_action *a = &s->actions[i];
        double done_s = carried_out_done_s(o, i), time_s = isnan(done_s) ? a->time_s : done_s;
        run_action in = {.time_s = time_s, .last_s = time_s, .times = 1, .action = i};
        if (of[i] != NULL)
            in.line = *of[i];
        list[count++] = in;
        double lifts_s = out_s(a, time_s, in.line.load);
        if (!isnan(lifts_s))
            list[count++] = (run_action){.time_s = lifts_s, .last_s = lifts_s, .times = 1, .action = i, .lifting = true};
    }
    free(of);
    free(lines);
    return count;
}

/* What comes out makes room for what goes in at the same moment. */
static int by_time(const void *a, const void *b)
{
    const run_action *x = a, *y = b;
    if (x->time_s != y->time_s)
        return x->time_s < y->time_s ? -1 : 1;
    if (x->lifting != y->lifting)
        return x->lifting ? -1 : 1;
    return x->action < y->action ? -1 : x->action > y->action;
}

static void join(run_action *first, const run_action *again)
{
    first->last_s = again->time_s;
    first->times++;
    if (badness(&again->line) > badness(&first->line))
        first->line = again->line;
}

/* All that one line of the scenario asks for becomes one order, where its first stands. Unchanged when memory is
   refused. */
static size_t group(const scenario *s, run_action *list, size_t count)
{
    size_t *place = memory_needed(calloc(2 * s->wording.lines_count + 1, sizeof *place)), kept = 0;
    for (size_t i = 0; place != NULL && i < count; i++) {
        size_t *at = &place[2 * s->wording.line_of[list[i].action] + list[i].lifting];
        if (*at > 0) {
            join(&list[*at - 1], &list[i]);
            continue;
        }
        list[kept] = list[i];
        *at = ++kept;
    }
    bool good = place != NULL;
    free(place);
    return good ? kept : count;
}

run_action *run_actions_of(const carried_out *o, size_t *count)
{
    size_t actions = o->scenario->schedule.count;
    run_action *list = actions > 0 ? memory_needed(malloc(2 * actions * sizeof *list)) : NULL;
    *count = list != NULL ? list_all(o, list) : 0;
    if (list == NULL)
        return NULL;
    qsort(list, *count, sizeof *list, by_time);
    if (*count > ORDERS_SINGLE_MAX)
        *count = group(o->scenario, list, *count);
    return list;
}
