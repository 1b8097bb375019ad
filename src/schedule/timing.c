#include "schedule/timing.h"

#include <math.h>

#include "base/words.h"
#include "schedule/waiting.h"

static const bounds every_time = {"s", 1, SCHEDULE_LATEST_S};

static bool read_every(const moment_frame *f, const break_list *b, cursor *c, timing *t)
{
    quantity q;
    cursor_done(c);
    const char *start = c->at;
    if (!quantity_read(c, "every", UNIT_OF(DIM_TIME), &q) || !quantity_within(c, "every", &q, &every_time))
        return false;
    *t = (timing){.to_s = f->end_s, .period_s = q.si};
    if (cursor_take(c, "from") && !moment_read_within(f, c, "from", &t->from_s))
        return false;
    if (cursor_take(&(cursor){c->messages, c->source, c->line, c->at, c->end}, "until"))
        return cursor_error(c, words_skip(c->at, c->end), "'until' is called 'to' here");
    if (cursor_take(c, "to") && !moment_read_within(f, c, "to", &t->to_s))
        return false;
    if (!exceptions_read(f, b, c, &t->except))
        return false;
    if (isinf(t->to_s))
        return cursor_error(c, start, "'every' without 'to' needs a 'duration' above the first section");
    if (t->to_s < t->from_s)
        return cursor_error(c, start, "'to' is before 'from'");
    return true;
}

static bool read_once(const moment_frame *f, cursor *c, timing *t)
{
    quantity q;
    cursor ahead = *c;
    if (!waiting_plus_read(c, &t->wait))
        return false;
    if (t->wait.follows || cursor_take(&ahead, "when"))
        return true;
    if (!moment_read(f, c, "time of the act", &q))
        return false;
    if (cursor_take(c, "after the boil is back")) {
        t->wait = (boil_wait){.state = BOIL_WAIT_BACK, .follows = true, .for_s = q.si};
        return true;
    }
    t->from_s = t->to_s = q.si;
    return moment_within(f, c, q.text, q.si);
}

bool timing_read(const moment_frame *f, const break_list *b, cursor *c, timing *t)
{
    cursor_done(c);
    const char *start = c->at;
    *t = (timing){0};
    if (!(cursor_take(c, "every") ? read_every(f, b, c, t) : read_once(f, c, t)) || !waiting_state_read(c, &t->wait))
        return false;
    if (t->wait.state != BOIL_WAIT_NONE && isinf(f->end_s))
        return cursor_error(c, start, "nobody knows when this will be: set a 'duration' above the first section");
    return true;
}
