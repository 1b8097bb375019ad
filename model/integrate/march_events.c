#include "integrate/march_parts.h"

#include <math.h>
#include <string.h>

#include "base/false_position.h"

/* integrate/march_events.c -- where a guard rises within a step. */

/* A crossing between two places of a step, s from its beginning, and how far the guard is past there: below 0 at low, not at
   high. */
typedef struct {
    size_t which;
    double low, at_low, high, at_high;
} crossing;

static double at(const boil_march *m, double t, const double y[], size_t which)
{
    double g[BOIL_GUARDS_MAX];
    boil_march_guards_at(m, t, y, g);
    return boil_guards_beyond(&m->guards, which, g[which]);
}

/* On the cubic, to a hundredth of the bracket it was given: the step anew is nearer than that cubic. */
static void close_in(boil_march *m, const boil_hermite *cubic, crossing *c)
{
    const double fine = 1e-2 * (c->high - c->low);
    double *y = m->step.trial;
    boil_false_position f = {c->low, c->at_low, c->high, c->at_high, 0};
    for (int i = 0; i < 40 && f.high - f.low > fine; i++) {
        double x = boil_false_position_next(&f);
        boil_hermite_at(cubic, m->is.system.unknowns, cubic->t0 + x, y);
        double v = at(m, cubic->t0 + x, y, c->which);
        bool past = v >= 0;
        boil_false_position_narrow(&f, x, v, past);
        *(past ? &c->at_high : &c->at_low) = v;
    }
    c->low = f.low;
    c->high = f.high;
}

/* The earliest of the guards that rise to what they are at `high`; its crossing in *c, high infinite when there is none. */
static void close_in_on_first(boil_march *m, const boil_hermite *cubic, double high, const double g[], crossing *c)
{
    for (size_t i = 0; i < m->guards.count; i++) {
        if (!boil_guards_rises(&m->guards, i, g[i]))
            continue;
        double before = m->guards.before[i];
        crossing found = {i, 0, boil_guards_beyond(&m->guards, i, before), high, boil_guards_beyond(&m->guards, i, g[i])};
        close_in(m, cubic, &found);
        if (found.high < c->high)
            *c = found;
    }
}

static bool any_rises(const boil_march *m, const double g[])
{
    for (size_t i = 0; i < m->guards.count; i++)
        if (boil_guards_rises(&m->guards, i, g[i]))
            return true;
    return false;
}

/* One may have risen and fallen again, sooner than c: at *past the cubic is past it. Those that are past at the end are c's. */
static bool look_inside(boil_march *m, const boil_hermite *cubic, double h, const double end[], crossing *c, double *past)
{
    enum { PARTS = 4 };
    const double end_s = c->high;
    double g[BOIL_GUARDS_MAX];
    for (int k = 1; k < PARTS && h * k / PARTS < end_s && c->high == end_s; k++) {
        *past = h * k / PARTS;
        boil_hermite_at(cubic, m->is.system.unknowns, cubic->t0 + *past, m->step.trial);
        boil_march_guards_at(m, cubic->t0 + *past, m->step.trial, g);
        for (size_t i = 0; i < m->guards.count; i++)
            g[i] = boil_guards_rises(&m->guards, i, end[i]) ? m->guards.before[i] : g[i];
        close_in_on_first(m, cubic, *past, g, c);
    }
    return c->high < end_s;
}

/* Whether it is worth while to look: three looks at the rates. */
static bool may_have_risen(const boil_march *m, double h, const double g[])
{
    const double long_s = 10;
    return (h > long_s && boil_guards_near(&m->guards, g)) || boil_guards_top(&m->guards, g, h);
}

/* A step to somewhere within one that was as good as is allowed may be no good where a rate has a kink, and then says so. */
static bool try_within(boil_march *m, double t, double h)
{
    const double most = 2;
    return boil_march_try(m, t, h) && boil_march_off(m) <= most;
}

/* What the cubic is past the solution may not be. */
static bool is_past(boil_march *m, double t, double h, size_t which)
{
    return try_within(m, t, h) && at(m, t + h, m->step.y1, which) >= 0;
}

/* From the end of a step, h long, a little further or back along its rates; where they may change, by those half-way there. False:
   refused. */
static bool nudge(boil_march *m, double t, double h, double by)
{
    const double steady_s = 1e-3;
    const boil_system *s = &m->counted;
    boil_step *p = &m->step;
    if (!boil_system_rates(s, t + h, p->y1, p->f1))
        return false;
    if (fabs(by) > steady_s) {
        for (size_t i = 0; i < s->unknowns; i++)
            p->trial[i] = p->y1[i] + by / 2 * p->f1[i];
        if (!boil_system_rates(s, t + h + by / 2, p->trial, p->f1))
            return false;
    }
    for (size_t i = 0; i < s->unknowns; i++)
        p->y1[i] += by * p->f1[i];
    return true;
}

/* Past by so little, as a time, lands: far below the 0.1 s anybody could ask for, above rounding at 1e6 s. */
static const double close_s = 2e-6;

/* Past its crossing by next to no time, or as near before it as the problem has it. */
static bool lands(const boil_march *m, size_t which, double v, double slope)
{
    return v >= -m->is.near[which] && v <= close_s * slope;
}

/* A search by steps anew from t: between low and high the guard rises, x was tried last and left it at v. */
typedef struct {
    double low, high, x, v, slope, aim_s;
} landing;

/* Where to try next: along the slope to just past the crossing, further each time, for where the guard is flat it is passed all the
   same; else in the middle. */
static double next_try(landing *l, double x, double v)
{
    if (isfinite(l->v) && (v - l->v) / (x - l->x) > 0)
        l->slope = (v - l->v) / (x - l->x);
    l->x = x;
    l->v = v;
    l->aim_s *= 2;
    if (l->high - l->low <= close_s)
        return l->high;
    double next = x - v / l->slope + l->aim_s;
    return next > l->low && next < l->high ? next : (l->low + l->high) / 2;
}

/* After the first step the crossing is mostly so near that no second one is needed: from its end on, to *to. */
static bool lands_by_nudges(boil_march *m, double t, size_t which, landing l, double *to)
{
    const double short_s = 1e-2;
    for (int i = 0; i < 4 && fabs(*to - l.x) < short_s && nudge(m, t, l.x, *to - l.x); i++) {
        double v = at(m, t + *to, m->step.y1, which);
        if (lands(m, which, v, l.slope))
            return true;
        *(v >= 0 ? &l.high : &l.low) = *to;
        *to = next_try(&l, *to, v);
    }
    return false;
}

/* Steps anew from t, until one ends just past the crossing: its length, at most `most`; *is false where even the longest is not past
   it, which a guard may do that is a small difference of large rates. 0: refused. */
static double land(boil_march *m, double t, const crossing *c, double most, bool *is)
{
    landing l = {.high = most, .v = HUGE_VAL, .slope = (c->at_high - c->at_low) / (c->high - c->low), .aim_s = 1e-7};
    double x = fmin(most, c->low - c->at_low / l.slope + 2 * l.aim_s);
    for (int i = 0; i < 80; i++) {
        if (!try_within(m, t, x))
            return 0;
        double v = at(m, t + x, m->step.y1, c->which);
        *(v >= 0 ? &l.high : &l.low) = x;
        if (lands(m, c->which, v, l.slope) || (v >= 0 && l.high - l.low <= close_s))
            return x;
        *is = x < most || v >= 0;
        if (!*is)
            return most;
        double next = next_try(&l, x, v), nudged = next;
        if (i == 0 && lands_by_nudges(m, t, c->which, l, &nudged))
            return nudged;
        x = next;
    }
    return 0;
}

/* Whether a guard beside c's has risen at the end of the step just tried, h long: its crossing, somewhere before. */
static bool another_rises(const boil_march *m, double t, double h, const crossing *c, crossing *other)
{
    double g[BOIL_GUARDS_MAX];
    boil_march_guards_at(m, t + h, m->step.y1, g);
    for (size_t i = 0; i < m->guards.count; i++)
        if (i != c->which && boil_guards_rises(&m->guards, i, g[i])) {
            *other = (crossing){i, 0, boil_guards_beyond(&m->guards, i, m->guards.before[i]), h,
                                boil_guards_beyond(&m->guards, i, g[i])};
            return true;
        }
    return false;
}

/* The one that the cubic has first need not be so: as that is reached, another may have been passed, and is landed on in its place. */
static double land_on_first(boil_march *m, double t, crossing *c, double most, bool *is)
{
    crossing other;
    double to = land(m, t, c, most, is);
    for (size_t i = 0; i < m->guards.count && *is && to > 0 && another_rises(m, t, to, c, &other); i++) {
        bool sooner = true;
        to = land(m, t, &other, to, &sooner);
        if (!sooner) /* by a rounding: as good as at once */
            break;
        *c = other;
    }
    return to;
}

/* The rates at the end of a step just tried. */
static bool is_told(boil_march *m, double t, double h)
{
    return boil_system_rates(&m->counted, t + h, m->step.y1, m->step.f1);
}

/* Where the rates refuse the step to the crossing, though not the whole one, a shorter one: from its end the crossing is sought anew.
   Its length; 0: refused. */
static double step_before(boil_march *m, double t, double most)
{
    double g[BOIL_GUARDS_MAX], h = most / 2;
    for (int i = 0; i < 40 && t + h > t; i++, h /= 2) {
        if (!try_within(m, t, h) || !is_told(m, t, h))
            continue;
        boil_march_guards_at(m, t + h, m->step.y1, g);
        if (!any_rises(m, g))
            return h;
    }
    return 0;
}

boil_march_news boil_march_find_event(boil_march *m, double t, double *h, const double g[], size_t *guard)
{
    double full = *h, most = full, past = full;
    bool is = any_rises(m, g), inside = may_have_risen(m, full, g);
    if (!is && !inside)
        return BOIL_MARCH_STEPPED;
    boil_hermite cubic = boil_march_cubic(m, t, full);
    crossing first = {.high = HUGE_VAL};
    if (is)
        close_in_on_first(m, &cubic, full, g, &first);
    crossing hump = {.high = first.high};
    if (inside && look_inside(m, &cubic, full, g, &hump, &past)) {
        if (is_past(m, t, past, hump.which)) {
            first = hump;
            most = past;
            is = true;
        }
    } else if (!is)
        return BOIL_MARCH_STEPPED;
    double to = is ? land_on_first(m, t, &first, most, &is) : full;
    *guard = first.which;
    if (is && to > 0 && is_told(m, t, to)) {
        *h = to;
        return BOIL_MARCH_EVENT;
    }
    if (!is && boil_march_try(m, t, full) && is_told(m, t, full))
        return BOIL_MARCH_STEPPED;
    *h = step_before(m, t, fmin(first.high, hump.high));
    return *h > 0 ? BOIL_MARCH_STEPPED : BOIL_MARCH_FAILED;
}
