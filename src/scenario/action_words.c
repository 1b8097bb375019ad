#include "scenario/scenario.h"

#include <math.h>
#include <string.h>

#include "schedule/waiting.h"

/* The words kept of a load do not name it as one; those of the other actions speak for themselves. */
action_name action_name_of(const scenario *s, size_t action)
{
    const schedule_wording *w = &s->wording;
    const action_type *type = action_type_of(s->schedule.actions[action].kind);
    const char *words = w->lines != NULL && w->line_of != NULL ? w->lines[w->line_of[action]].words : "";
    action_name t;
    if (words[0] == '\0')
        snprintf(t.text, sizeof t.text, "%s", type->keyword);
    else if (type->group == ACTION_LOAD)
        snprintf(t.text, sizeof t.text, "%s %.100s", type->keyword, words);
    else
        snprintf(t.text, sizeof t.text, "%.100s", words);
    return t;
}

const char *action_name_of_load(const action_name *n)
{
    size_t length = strlen(action_load.keyword);
    return strncmp(n->text, action_load.keyword, length) == 0 && n->text[length] == ' ' ? n->text + length + 1 : n->text;
}

action_name scenario_break_time(const scenario *s, size_t index)
{
    const boil_break *b = &s->schedule.breaks[index];
    action_name t;
    snprintf(t.text, sizeof t.text, "%s to %s", format_clock(s->start_s, b->from_s).text,
             format_clock(s->start_s, b->to_s).text);
    return t;
}

action_view action_view_of(const scenario *s, size_t action, action_units units)
{
    const boil_action *a = &s->schedule.actions[action];
    return (action_view){.plant = &s->plant,
                         .schedule = &s->schedule,
                         .action = a,
                         .start_s = s->start_s,
                         .time_s = waiting_is_open(&a->wait) ? (double)NAN : a->time_s,
                         .units = units};
}

action_text action_details(const scenario *s, size_t action, action_units units)
{
    action_text t = {""};
    action_view v = action_view_of(s, action, units);
    const action_type *type = action_type_of(v.action->kind);
    if (type->details != NULL)
        type->details(&v, &t);
    action_wait_add(&v, &t);
    return t;
}
