#include "plan/hands.h"

#include <math.h>

/* Ends that touch do not overlap, whatever rounding did to them. */
static bool overlap(double a, double b, double from, double to)
{
    const double rounding_s = 1e-7;
    return a < to - rounding_s && from < b - rounding_s;
}

double boil_plan_hands_busy(const boil_plan_hands *h, double from_s, double to_s, bool *is_break)
{
    const boil_plan_problem *p = h->problem;
    *is_break = true;
    for (size_t i = 0; i < p->breaks_count; i++)
        if (overlap(p->breaks[i].from_s, p->breaks[i].to_s, from_s, to_s))
            return p->breaks[i].to_s;
    *is_break = false;
    for (size_t i = 0; i < h->count; i++) {
        const boil_plan_hanging *d = &h->list[i];
        if (overlap(d->enters_s - p->hoist_s, d->enters_s + BOIL_PLAN_CLEAR_S, from_s, to_s))
            return d->enters_s + BOIL_PLAN_CLEAR_S;
        if (overlap(d->leaves_s, d->leaves_s + p->hoist_s, from_s, to_s))
            return d->leaves_s + p->hoist_s;
    }
    return (double)NAN;
}

double boil_plan_hands_second(double s)
{
    const double rounding_s = 1e-6;
    return ceil(s - rounding_s);
}

double boil_plan_hands_lift(const boil_plan_hands *h, double from_s)
{
    bool is_break;
    double free_s = boil_plan_hands_second(from_s), busy_s;
    while (!isnan(busy_s = boil_plan_hands_busy(h, free_s, free_s + h->problem->hoist_s, &is_break)))
        free_s = boil_plan_hands_second(busy_s);
    return free_s;
}

boil_break boil_plan_hands_longest(const boil_plan_problem *p, double from_s, double to_s)
{
    boil_break best = {from_s, from_s};
    double start = from_s;
    for (size_t i = 0; i <= p->breaks_count; i++) {
        double stop = i < p->breaks_count ? fmin(to_s, p->breaks[i].from_s) : to_s;
        if (stop - start > best.to_s - best.from_s)
            best = (boil_break){start, stop};
        if (i < p->breaks_count)
            start = fmax(start, p->breaks[i].to_s);
    }
    return best;
}
