#include "plan/pours.h"

#include <math.h>

#include "plan/hands.h"

/* Nothing where it would be too short. */
static boil_break window(const boil_plan_case *c, double back_s, double until_s)
{
    const boil_plan_bath *b = c->bath;
    boil_break w = boil_plan_hands_longest(c->problem, boil_plan_hands_second(back_s + b->steady_s), until_s - b->guard_s);
    w.to_s = isfinite(w.to_s) ? floor(w.to_s) : w.to_s;
    return w.to_s - w.from_s >= BOIL_PLAN_POUR_LEAST_S && b->flow_kg_s > 0 ? w : (boil_break){w.from_s, w.from_s};
}

/* In the window of a gap, all through it, and so slowly that nothing is missing at its end. */
static double pourable(const boil_plan_bath *b, const boil_break *w, double back_s, double missing_kg)
{
    double there = missing_kg + b->boils_off_kg_s * (w->to_s - back_s);
    return fmax(0, fmin(there, b->flow_kg_s * (w->to_s - w->from_s)));
}

double boil_plan_missing(const boil_plan_case *c, double back_s, double t, double missing_kg)
{
    const boil_plan_bath *b = c->bath;
    if (b->valve)
        return missing_kg;
    boil_break w = window(c, back_s, t);
    return missing_kg + b->boils_off_kg_s * fmax(0, t - back_s) - pourable(b, &w, back_s, missing_kg);
}

/* The gap before dip k, or behind the last. */
typedef struct {
    double back_s, enters_s, recovery_s;
} gap;

static gap gap_of(const boil_plan_case *c, const boil_plan_timetable *t, size_t k)
{
    gap g = {k > 0 ? t->dips[k - 1].back_s : c->bath->ready_s, HUGE_VAL, 0};
    if (k < t->dips_count) {
        g.enters_s = t->dips[k].enters_s;
        g.recovery_s = t->dips[k].recovery_s;
    }
    return g;
}

static double growth_of(const boil_plan_bath *b, const gap *g)
{
    return b->boils_off_kg_s * fmax(0, g->enters_s - g->back_s) + b->dries_kg_s * g->recovery_s;
}

static double last_out_s(const boil_plan_timetable *t)
{
    double last = 0;
    for (size_t k = 0; k < t->dips_count; k++)
        last = fmax(last, t->dips[k].leaves_s);
    return last;
}

/* From then on nobody pours: the shift is over, and all is out. */
static double closed_s(const boil_plan_case *c, const boil_plan_timetable *t)
{
    return fmax(c->problem->end_s, last_out_s(t));
}

/* Water that may be missing as the last boil is back, and all of it is poured in by the end of the shift. */
static double restorable(const boil_plan_case *c, const boil_plan_timetable *t)
{
    const boil_plan_bath *b = c->bath;
    const boil_plan_problem *p = c->problem;
    gap g = gap_of(c, t, t->dips_count);
    double end_s = closed_s(c, t), start_s = boil_plan_hands_second(g.back_s + b->steady_s), poured = 0;
    if (!isfinite(end_s) || !(b->flow_kg_s > b->boils_off_kg_s))
        return HUGE_VAL;
    for (size_t i = 0; i <= p->breaks_count; i++) {
        double over_s = floor(fmin(i < p->breaks_count ? p->breaks[i].from_s : HUGE_VAL, end_s) - start_s);
        poured += over_s >= BOIL_PLAN_POUR_LEAST_S ? b->flow_kg_s * over_s : 0;
        start_s = i < p->breaks_count ? fmax(start_s, p->breaks[i].to_s) : start_s;
    }
    return fmax(0, poured - b->boils_off_kg_s * fmax(0, end_s - g.back_s));
}

/* (1), from the gap behind the last dip to the first, into the masses of the pours, which hold nothing yet. */
static void find_bounds(const boil_plan_case *c, boil_plan_timetable *t)
{
    double room = c->bath->strongest_kg;
    t->pours[t->dips_count].mass_kg = fmin(room, restorable(c, t));
    for (size_t k = t->dips_count; k-- > 0;) {
        gap g = gap_of(c, t, k);
        boil_break w = window(c, g.back_s, g.enters_s);
        double most = c->bath->flow_kg_s * (w.to_s - w.from_s);
        t->pours[k].mass_kg = fmin(room, t->pours[k + 1].mass_kg - growth_of(c->bath, &g) + most);
    }
}

/* What is still missing poured in, until the last dip is out where that leaves time, else for as long as it takes, an hour at most:
   judgement; but not beyond the end of the shift. A flow that gains nothing brings nothing back: it only keeps the band until then. */
static double restored_s(const boil_plan_case *c, const boil_plan_timetable *t, double start_s, double there_kg)
{
    const double longest_s = 3600;
    double net_kg_s = c->bath->flow_kg_s - c->bath->boils_off_kg_s;
    double needed_s = net_kg_s > 0 ? fmin(longest_s, there_kg / net_kg_s) : 0;
    return fmin(closed_s(c, t), start_s + fmax(needed_s, last_out_s(t) - start_s));
}

/* After the last dip once more; where a break cuts that, before it and after it. */
static void restore(const boil_plan_case *c, boil_plan_timetable *t, double missing)
{
    const boil_plan_bath *b = c->bath;
    const boil_plan_problem *p = c->problem;
    gap g = gap_of(c, t, t->dips_count);
    double start_s = boil_plan_hands_second(g.back_s + b->steady_s), as_of_s = g.back_s;
    for (size_t i = 0; i <= p->breaks_count; i++) {
        double shut_s = i < p->breaks_count ? p->breaks[i].from_s : HUGE_VAL;
        double there = missing + b->boils_off_kg_s * (start_s - as_of_s), restored = restored_s(c, t, start_s, there);
        double over_s = floor(fmin(shut_s, restored) - start_s),
               kg = fmin(b->flow_kg_s * over_s, there + b->boils_off_kg_s * over_s);
        if (over_s >= BOIL_PLAN_POUR_LEAST_S && kg > 0) {
            t->pours[t->pours_count++] = (boil_plan_pour){start_s, over_s, kg};
            missing = there + b->boils_off_kg_s * over_s - kg;
            as_of_s = start_s + over_s;
        }
        if (restored <= shut_s)
            break;
        start_s = fmax(start_s, p->breaks[i].to_s);
    }
    t->left_kg = fmax(0, missing + b->boils_off_kg_s * fmax(0, (isfinite(p->end_s) ? closed_s(c, t) : as_of_s) - as_of_s));
}

void boil_plan_pours_of(const boil_plan_case *c, boil_plan_timetable *t)
{
    const boil_plan_bath *b = c->bath;
    double missing = b->missing_kg;
    t->pours_count = 0;
    t->left_kg = 0;
    if (b->valve || !(b->flow_kg_s > 0) || t->dips_count == 0)
        return;
    find_bounds(c, t);
    for (size_t k = 0; k < t->dips_count; k++) { /* no more are kept than gaps were passed: the bounds ahead still stand */
        gap g = gap_of(c, t, k);
        boil_break w = window(c, g.back_s, g.enters_s);
        double grown = missing + growth_of(b, &g), next = t->pours[k + 1].mass_kg;
        double poured = grown > next || b->weakens_W_kg > 0 ? pourable(b, &w, g.back_s, missing) : 0;
        if (poured > 0)
            t->pours[t->pours_count++] = (boil_plan_pour){w.from_s, w.to_s - w.from_s, poured};
        missing = grown - poured;
    }
    restore(c, t, missing);
}
