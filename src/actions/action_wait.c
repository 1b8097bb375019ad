/* actions/action_wait.c -- what an act waits for beyond the clock, in words. */

#include "actions/action.h"

static void add_state(const boil_wait *w, action_text *t)
{
    const char *state = w->state == BOIL_WAIT_QUIET ? "quiet" : "boiling";
    if (w->for_s > 0)
        TEXT_ADD(t->text, "when %s for %s", state, format_duration(w->for_s).text);
    else
        TEXT_ADD(t->text, "when %s", state);
}

void action_wait_add(const action_view *v, action_text *t)
{
    const boil_wait *w = &v->action->wait;
    if (w->state == BOIL_WAIT_NONE && !w->follows)
        return;
    if (t->text[0] != '\0')
        TEXT_ADD(t->text, "; ");
    if (w->state == BOIL_WAIT_BACK) {
        TEXT_ADD(t->text, "%s after the boil is back", format_duration(w->for_s).text);
        return;
    }
    if (w->follows)
        TEXT_ADD(t->text, "%s after the act before it%s", format_duration(w->delay_s).text,
                 w->state != BOIL_WAIT_NONE ? ", " : "");
    if (w->state != BOIL_WAIT_NONE)
        add_state(w, t);
    if (!w->follows && !v->many && v->action->time_s > 0)
        TEXT_ADD(t->text, ", not before %s", format_clock(v->start_s, v->action->time_s).text);
}
