#include "schedule/waiting.h"

static const bounds waiting_time = {"s", 1, 14 * 86400.0};
static const bounds delay_time = {"s", 0, 14 * 86400.0};

bool waiting_state_read(cursor *c, boil_wait *w)
{
    quantity q;
    cursor_done(c);
    const char *start = c->at;
    if (!cursor_take(c, "when"))
        return true;
    if (w->state != BOIL_WAIT_NONE)
        return cursor_error(c, start, "'after the boil is back' waits for the boil by itself: leave 'when' out");
    if (cursor_take(c, "boiling"))
        w->state = BOIL_WAIT_BOILING;
    else if (cursor_take(c, "quiet"))
        w->state = BOIL_WAIT_QUIET;
    else
        return cursor_error(c, c->at, "say 'when boiling' or 'when quiet'");
    if (!cursor_take(c, "for"))
        return true;
    if (!quantity_read(c, "for", UNIT_OF(DIM_TIME), &q) || !quantity_within(c, "for", &q, &waiting_time))
        return false;
    w->for_s = q.si;
    return true;
}

bool waiting_plus_read(cursor *c, boil_wait *w)
{
    const char *what = "time after the act before";
    quantity q;
    if (cursor_done(c) || *c->at != '+')
        return true;
    c->at++;
    w->follows = true;
    if (!quantity_when(c, what, &q) || !quantity_within(c, what, &q, &delay_time))
        return false;
    w->delay_s = q.si;
    return true;
}

bool waiting_is_open(const boil_wait *w)
{
    return w->state != BOIL_WAIT_NONE || w->follows;
}
