#include "schedule/moment.h"

#include <math.h>
#include <string.h>

#include "base/words.h"

#define DAY_S 86400.0
#define LATEST_S (14 * DAY_S)

static const bounds moments = {"h", 0, LATEST_S / 3600};

static moment_text clock_text(double s)
{
    moment_text t;
    double whole = floor(s + 0.5), minutes = floor(whole / 60);
    snprintf(t.text, sizeof t.text, "%.0f:%02.0f", floor(minutes / 60), fmod(minutes, 60));
    if (fmod(whole, 60) > 0)
        TEXT_ADD(t.text, ":%02.0f", fmod(whole, 60));
    return t;
}

/* On the wall, with the days since the start's. */
static moment_text wall_text(const moment_frame *f, double s)
{
    double wall = f->start_s + floor(s + 0.5), days = floor(wall / DAY_S);
    moment_text t = clock_text(fmod(wall, DAY_S));
    if (days > 0)
        TEXT_ADD(t.text, "+%.0fd", days);
    return t;
}

moment_text moment_words(const moment_frame *f, double s)
{
    return f->count == MOMENTS_BY_CLOCK ? wall_text(f, s) : clock_text(s);
}

/* What a clock that was read from the start may have been meant for. */
static bool half_of_day(cursor *c, const moment_frame *f, const quantity *q)
{
    const char *at = c->at;
    bool after_noon = cursor_take(c, "pm");
    if (!after_noon && !cursor_take(c, "am"))
        return true;
    double wall = fmod(q->si, DAY_S / 2) + (after_noon ? DAY_S / 2 : 0);
    if (f->count == MOMENTS_BY_CLOCK || !f->start_said || wall < f->start_s)
        return cursor_error(c, at, "the clock has 24 hours: write %s", clock_text(wall).text);
    return cursor_error(
        c, q->text,
        "times count from the start: %s is %s by the clock; write %s, or 'times = by the clock' above the first "
        "section",
        clock_text(q->si).text, wall_text(f, q->si).text, clock_text(wall - f->start_s).text);
}

/* "+1d" or "+10d", if that comes next: the days. */
static double take_days(cursor *c)
{
    double days = 0;
    const char *at = c->at + 1;
    for (; at < c->end && at < c->at + 3 && *at >= '0' && *at <= '9'; at++)
        days = 10 * days + (*at - '0');
    if (c->at == c->end || *c->at != '+' || at == c->at + 1 || at == c->end || *at != 'd')
        return 0;
    c->at = at + 1;
    return days;
}

/* A clock on the wall, with the days behind it, which then counts from the start. */
static bool from_wall(cursor *c, const moment_frame *f, quantity *q)
{
    double days = take_days(c);
    double s = q->si + days * DAY_S - f->start_s;
    if (s < 0)
        return cursor_error(c, q->text, "'by the clock' %s is before the start, %s; the next morning is '%s+1d'",
                            clock_text(q->si).text, clock_text(f->start_s).text, clock_text(q->si).text);
    q->si = s;
    q->length = (size_t)(c->at - q->text);
    return true;
}

/* Up to the "+" of the days, so that the reader of clocks sees none. */
static cursor before_days(const cursor *c)
{
    cursor clock = *c;
    const char *plus = memchr(c->at, '+', cursor_token(&clock));
    if (plus != NULL)
        clock.end = plus;
    return clock;
}

bool moment_read(const moment_frame *f, cursor *c, const char *what, quantity *q)
{
    cursor_done(c);
    cursor clock = f->count == MOMENTS_BY_CLOCK ? before_days(c) : *c;
    bool good = quantity_when(&clock, what, q);
    c->at = clock.at;
    if (!good)
        return false;
    if (memchr(q->text, ':', q->length) != NULL &&
        (!half_of_day(c, f, q) || (f->count == MOMENTS_BY_CLOCK && !from_wall(c, f, q))))
        return false;
    return quantity_within(c, what, q, &moments);
}

bool moment_within(const moment_frame *f, const cursor *c, const char *at, double s)
{
    if (s <= f->end_s)
        return true;
    moment_text wall = wall_text(f, s), end = moment_words(f, f->end_s), meant = clock_text(s - f->start_s);
    if (f->count == MOMENTS_BY_CLOCK || !f->start_said)
        return cursor_error(c, at, "%s is after the end, %s. For a longer shift: duration = %.0f h", moment_words(f, s).text,
                            end.text, ceil(s / 3600));
    if (s >= f->start_s && s < DAY_S)
        return cursor_error(c, at,
                            "%s is after the end, %s; by the clock it is %s. For %s by the clock write %s, or 'times = by the "
                            "clock' above the first section",
                            clock_text(s).text, end.text, wall.text, clock_text(s).text, meant.text);
    return cursor_error(c, at, "%s is after the end, %s; by the clock it is %s. For a longer shift: duration = %.0f h",
                        clock_text(s).text, end.text, wall.text, ceil(s / 3600));
}

bool moment_read_within(const moment_frame *f, cursor *c, const char *what, double *s)
{
    quantity q;
    if (!moment_read(f, c, what, &q) || !moment_within(f, c, q.text, q.si))
        return false;
    *s = q.si;
    return true;
}

void moment_remark_late(const moment_frame *f, const cursor *c, double s)
{
    if (f->count == MOMENTS_FROM_START && f->start_said && s >= f->start_s && s < DAY_S)
        messages_remark(c->messages, c->source, c->line, c->at,
                        "%s counts from the start: %s by the clock. For %s by the clock write %s, or 'times = by the clock'",
                        clock_text(s).text, wall_text(f, s).text, clock_text(s).text, clock_text(s - f->start_s).text);
}
