#include "schedule/schedule.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "schedule/attendance.h"

#define REST_AFTER_LAST_ACTION_S 1800.0

void schedule_wording_free(schedule_wording *w)
{
    for (size_t i = 0; i < w->names_count; i++)
        free(w->names[i]);
    free(w->names);
    free(w->lines);
    free(w->line_of);
    *w = (schedule_wording){0};
}

static int earlier(const void *left, const void *right)
{
    const schedule_planned *a = left, *b = right;
    if (a->action.time_s != b->action.time_s)
        return a->action.time_s < b->action.time_s ? -1 : 1;
    return a->action.order < b->action.order ? -1 : a->action.order > b->action.order;
}

static void order(schedule_draft *a)
{
    for (size_t i = 0; i < a->count; i++)
        a->list[i].action.order = i;
    if (a->count > 1)
        qsort(a->list, a->count, sizeof *a->list, earlier);
}

/* When an action and what it sets going are over. A load is lifted as slowly as it is lowered. */
static double ends(const schedule_planned *p)
{
    double lifts_s = isfinite(p->lifts_s) ? p->lifts_s : p->least_s;
    return (isinf(lifts_s) ? p->action.time_s : lifts_s) + action_takes_s(&p->action);
}

static double duration(const schedule_draft *a)
{
    double last = 0;
    if (isfinite(a->frame.end_s))
        return a->frame.end_s;
    for (size_t i = 0; i < a->count; i++)
        last = fmax(last, ends(&a->list[i]));
    return fmin(last + REST_AFTER_LAST_ACTION_S, SCHEDULE_LATEST_S);
}

/* What follows another knows it by its place in the order of time. False when memory is refused. */
static bool settle_follows(const schedule_draft *a, boil_schedule *schedule)
{
    size_t *place = calloc(a->count + 1, sizeof *place);
    if (place == NULL)
        return false;
    for (size_t i = 0; i < a->count; i++)
        place[a->list[i].action.order] = i;
    for (size_t i = 0; i < a->count; i++)
        if (schedule->actions[i].wait.follows)
            schedule->actions[i].wait.after = place[schedule->actions[i].wait.after];
    free(place);
    return true;
}

static bool hand_over(schedule_draft *a, boil_schedule *schedule, schedule_wording *w)
{
    w->lines = calloc(a->line_count + 1, sizeof *w->lines);
    w->line_of = calloc(a->count + 1, sizeof *w->line_of);
    if (w->lines == NULL || w->line_of == NULL)
        return false;
    for (size_t i = 0; i < a->line_count; i++) {
        memcpy(w->lines[i].words, a->lines[i].words, sizeof w->lines[i].words);
        w->lines[i].line = a->lines[i].place.line;
    }
    w->lines_count = a->line_count;
    for (size_t i = 0; i < a->count; i++) {
        w->line_of[i] = a->list[i].line;
        if (boil_schedule_add(schedule, &a->list[i].action) != BOIL_OK)
            return false;
    }
    if (!settle_follows(a, schedule))
        return false;
    for (size_t i = 0; i < a->breaks.count; i++)
        (void)boil_schedule_add_break(schedule, a->breaks.list[i].from_s, a->breaks.list[i].to_s);
    memcpy(w->breaks, a->breaks.words, sizeof w->breaks);
    w->names = a->reader.names.list;
    w->names_count = a->reader.names.count;
    a->reader.names = (load_names){0};
    return true;
}

bool schedule_finish(schedule_draft *a, boil_schedule *schedule, schedule_wording *w)
{
    *w = (schedule_wording){0};
    order(a);
    if (a->first_is_clock)
        moment_remark_late(&a->frame, &a->first, a->first_s);
    bool good = attendance_check(a);
    boil_schedule_init(schedule, duration(a));
    return good && hand_over(a, schedule, w);
}
