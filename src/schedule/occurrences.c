#include "schedule/occurrences.h"

#include <math.h>

#include "base/array.h"
#include "schedule/waiting.h"

/* What is bounded by time alone is as much as runs in until then. */
static void bound_by_time(boil_action *action)
{
    boil_action_water *w = &action->is.water;
    double left_s = action->pour.no_later_s - action->time_s;
    w->mass_kg *= left_s / w->over_s;
    w->over_s = left_s;
}

/* False, with a message, when it cannot be planned. */
static bool plan(schedule_draft *a, const cursor *c, const boil_action *planned, size_t line)
{
    boil_action action = *planned;
    const boil_load *load = action_load_of(&action);
    double latest_s = load != NULL ? load->latest_s : action.pour.no_later_s;
    if (latest_s > 0 && latest_s <= action.time_s)
        return cursor_error(c, c->at, "'no later than' is not after the act's own time");
    if (a->lines[line].most_by_time)
        bound_by_time(&action);
    schedule_planned *list = boil_array_reserve(a->list, &a->capacity, a->count, sizeof *list);
    if (list == NULL)
        return messages_lost(c->messages);
    a->list = list;
    list[a->count++] = (schedule_planned){action, line, HUGE_VAL, HUGE_VAL};
    return true;
}

/* At a moment: all of it, or portion after portion. */
static bool plan_portions(schedule_draft *a, const cursor *c, boil_action *action, double s)
{
    const action_line *line = &a->lines[a->line_count - 1];
    for (size_t k = 0; k < line->portions; k++) {
        action->time_s = s + (double)k * line->portion_every_s;
        if (!moment_within(&a->frame, c, c->at, action->time_s))
            return false;
        if (!plan(a, c, action, a->line_count - 1))
            return false;
    }
    return true;
}

/* A load that is left out is work not done: said, and which. */
static void remark_left_out(const schedule_draft *a, const cursor *c, size_t count, double first_s)
{
    char others[40] = "";
    if (count > 1)
        snprintf(others, sizeof others, " and %zu more", count - 1);
    if (count > 0)
        messages_remark(c->messages, c->source, c->line, c->at,
                        "left out by 'except', and not done at another time: the act of %s%s",
                        moment_words(&a->frame, first_s).text, others);
}

/* "to" is included, though the sum of the periods may miss it by rounding. */
static void unroll(schedule_draft *a, const cursor *c, const timing *t, boil_action *action)
{
    double count = t->period_s > 0 ? floor((t->to_s - t->from_s) / t->period_s + 1e-9) + 1 : 1;
    if (count * (double)a->lines[a->line_count - 1].portions + (double)a->count > SCHEDULE_ACTIONS_MAX) {
        cursor_error(c, c->at, "there are more than %.0f acts", SCHEDULE_ACTIONS_MAX);
        return;
    }
    size_t before = a->count, left_out = 0;
    double first_s = 0;
    for (double i = 0; i < count; i++) {
        double s = fmin(t->from_s + i * t->period_s, t->to_s);
        bool is_left_out = exceptions_hold(&t->except, s);
        if (is_left_out && left_out++ == 0)
            first_s = s;
        if (!is_left_out && !plan_portions(a, c, action, s))
            return;
    }
    if (a->count == before)
        cursor_error(c, c->at, "'except' left nothing of this line");
    else
        remark_left_out(a, c, left_out, first_s);
}

/* How much later than what it follows it is at the earliest. */
static double follows_after_s(const schedule_planned *before, const boil_wait *w)
{
    return w->state == BOIL_WAIT_BACK ? before->action.is.load.lowering_s + w->for_s : w->delay_s;
}

/* Once for each time that what it follows is done. What follows an act of the clock is one itself. */
static void follow(schedule_draft *a, const cursor *c, const timing *t, boil_action *action)
{
    bool back = t->wait.state == BOIL_WAIT_BACK;
    schedule_occurrences of = back ? a->last_load : a->last;
    if (!of.any)
        cursor_error(c, c->at, "%s",
                     back ? "no load stands before this whose boil could be back" : "no act stands before this");
    for (size_t i = 0; i < of.count; i++) {
        const schedule_planned *before = &a->list[of.first + i];
        action->time_s = before->action.time_s + follows_after_s(before, &t->wait);
        action->wait = t->wait;
        action->wait.after = of.first + i;
        action->wait.follows = back || waiting_is_open(&before->action.wait);
        if (of.count == 1 && !moment_within(&a->frame, c, c->at, action->time_s))
            return;
        if (action->time_s > a->frame.end_s)
            continue;
        if ((double)a->count >= SCHEDULE_ACTIONS_MAX)
            cursor_error(c, c->at, "there are more than %.0f acts", SCHEDULE_ACTIONS_MAX);
        if ((double)a->count >= SCHEDULE_ACTIONS_MAX || !plan(a, c, action, a->line_count - 1))
            return;
    }
}

void occurrences_enter(schedule_draft *a, const cursor *place, const timing *t, boil_action *action)
{
    bool is_load = action_load_of(action) != NULL;
    size_t first = a->count;
    if (is_load)
        a->reader.names.loaded[action->name] = true;
    action->line = (int)a->line_count;
    if (waiting_is_open(&t->wait) && a->lines[a->line_count - 1].portions > 1)
        cursor_error(place, place->at, "'one every' needs a moment that the clock says");
    else if (t->wait.follows)
        follow(a, place, t, action);
    else
        unroll(a, place, t, action);
    a->last.any = true;
    a->last.first = first;
    a->last.count = a->count - first;
    if (is_load)
        a->last_load = a->last;
}
