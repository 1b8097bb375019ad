#include "integrate/march_parts.h"

#include <math.h>
#include <string.h>

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

/* On the cubic, to a thousandth of the bracket it was given, by false position with the Illinois change of the end that
   stays [Dowell & Jarratt, BIT 11 (1971) 168, from memory]. */
static void close_in(boil_march *m, const boil_hermite *cubic, crossing *c)
{
    const double fine = 1e-3 * (c->high - c->low);
    double *y = m->step.trial, pull_low = c->at_low, pull_high = c->at_high;
    int side = 0;
    for (int i = 0; i < 40 && c->high - c->low > fine; i++) {
        double x = c->low + (c->high - c->low) * pull_low / (pull_low - pull_high);
        if (!(x > c->low && x < c->high))
            x = (c->low + c->high) / 2;
        boil_hermite_at(cubic, m->is.system.unknowns, cubic->t0 + x, y);
        double v = at(m, cubic->t0 + x, y, c->which);
        bool past = v >= 0;
        *(past ? &c->high : &c->low) = x;
        *(past ? &c->at_high : &c->at_low) = v;
        pull_low = past ? (side > 0 ? pull_low / 2 : pull_low) : v;
        pull_high = past ? v : (side < 0 ? pull_high / 2 : pull_high);
        side = past ? 1 : -1;
    }
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

/* In a long step one may have risen and fallen again. */
static void look_inside(boil_march *m, const boil_hermite *cubic, double h, crossing *c)
{
    enum { PARTS = 4 };
    double g[BOIL_GUARDS_MAX];
    for (int k = 1; k < PARTS && !isfinite(c->high); k++) {
        double x = h * k / PARTS;
        boil_hermite_at(cubic, m->is.system.unknowns, cubic->t0 + x, m->step.trial);
        boil_march_guards_at(m, cubic->t0 + x, m->step.trial, g);
        close_in_on_first(m, cubic, x, g, c);
    }
}

/* Steps anew from t, until one ends past the crossing by no more than a few microseconds: its length, at most `most`. 0: refused, or
   even the longest is not past it. */
static double land(boil_march *m, double t, const crossing *c, double most)
{
    const double aim_s = 2e-7, close_s = 2e-6;
    double slope = (c->at_high - c->at_low) / (c->high - c->low), low = 0, high = most, before_x = 0, before_v = 0;
    double x = fmin(most, c->low - c->at_low / slope + aim_s);
    for (int i = 0; i < 60; i++) {
        if (!boil_march_try(m, t, x))
            return 0;
        double v = at(m, t + x, m->step.y1, c->which);
        *(v >= 0 ? &high : &low) = x;
        if (v >= 0 && (v <= close_s * slope || high - low <= close_s))
            return x;
        if (x >= most && v < 0)
            return 0;
        if (i > 0 && (v - before_v) / (x - before_x) > 0)
            slope = (v - before_v) / (x - before_x);
        before_x = x;
        before_v = v;
        double next = high - low <= close_s ? high : x - v / slope + aim_s;
        x = next > low && next <= high ? next : (low + high) / 2;
    }
    return 0;
}

boil_march_news boil_march_find_event(boil_march *m, double t, double *h, const double g[], size_t *guard)
{
    const double long_s = 10;
    bool rises = any_rises(m, g);
    if (!rises && !(*h > long_s && boil_guards_near(&m->guards, g)))
        return BOIL_MARCH_STEPPED;
    double full = *h;
    boil_hermite cubic = boil_march_cubic(m, t, full);
    crossing first = {.high = HUGE_VAL};
    if (rises)
        close_in_on_first(m, &cubic, full, g, &first);
    else
        look_inside(m, &cubic, full, &first);
    if (!isfinite(first.high))
        return BOIL_MARCH_STEPPED;
    *guard = first.which;
    *h = land(m, t, &first, rises ? full : first.high + (full - first.high) / 4);
    bool landed = *h > 0;
    if (!landed) { /* between two quarters the cubic came past, the solution does not */
        *h = full;
        if (rises || !boil_march_try(m, t, full))
            return BOIL_MARCH_FAILED;
    }
    if (!boil_system_rates(&m->counted, t + *h, m->step.y1, m->step.f1))
        return BOIL_MARCH_FAILED;
    return landed ? BOIL_MARCH_EVENT : BOIL_MARCH_STEPPED;
}
