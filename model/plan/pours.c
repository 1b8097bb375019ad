#include "plan/pours.h"

#include <math.h>

#include "plan/hands.h"

/* The gap before dip k, or behind the last. */
typedef struct {
    double back_s, enters_s, recovery_s;
    boil_plan_pour salts; /* sifted in at its end */
} gap;

static gap gap_of(const boil_plan_case *c, const boil_plan_timetable *t, size_t k)
{
    gap g = {k > 0 ? t->dips[k - 1].back_s : c->bath->ready_s, HUGE_VAL, 0, {0, 0, 0}};
    if (k < t->dips_count) {
        g.enters_s = t->dips[k].enters_s;
        g.recovery_s = t->dips[k].recovery_s;
        g.salts = t->dips[k].salts;
    }
    return g;
}

/* For water; nothing where it would be too short. */
static boil_break window(const boil_plan_case *c, const gap *g)
{
    const boil_plan_bath *b = c->bath;
    double from_s = boil_plan_hands_second(g->back_s + b->steady_s);
    boil_break w = boil_plan_hands_longest(c->problem, from_s, g->enters_s - b->guard_s);
    w.to_s = g->salts.mass_kg > 0 ? g->salts.start_s - BOIL_PLAN_REST_S : w.to_s;
    w.to_s = isfinite(w.to_s) ? floor(w.to_s) : w.to_s;
    return w.to_s - w.from_s >= BOIL_PLAN_POUR_LEAST_S && b->flow_kg_s > 0 ? w : (boil_break){w.from_s, w.from_s};
}

/* Water that may come before the salts that it belongs to. */
static double ahead(const boil_plan_bath *b, double salts_kg)
{
    return fmin(boil_plan_water_with(b, salts_kg), b->weakest_kg);
}

/* In the window of a gap, all through it, and so slowly that nothing is missing at its end, or once salts are in. */
static double pourable(const boil_plan_bath *b, const gap *g, const boil_break *w, double missing_kg)
{
    double there = missing_kg + b->boils_off_kg_s * (w->to_s - g->back_s) + ahead(b, g->salts.mass_kg);
    return fmax(0, fmin(there, b->flow_kg_s * (w->to_s - w->from_s)));
}

/* Water that goes until the next entry, and that salts take. */
static double used_until_entry(const boil_plan_bath *b, const gap *g)
{
    return b->boils_off_kg_s * fmax(0, g->enters_s - g->back_s) + boil_plan_water_with(b, g->salts.mass_kg);
}

double boil_plan_missing(const boil_plan_case *c, const boil_plan_calm *calm, double t)
{
    gap g = {calm->back_s, t, 0, {0, 0, 0}};
    if (c->bath->valve)
        return calm->missing_kg;
    g.salts = boil_plan_sifting(c, calm, t);
    boil_break w = window(c, &g);
    return calm->missing_kg + used_until_entry(c->bath, &g) - pourable(c->bath, &g, &w, calm->missing_kg);
}

static double growth_of(const boil_plan_bath *b, const gap *g)
{
    return used_until_entry(b, g) + b->dries_kg_s * g->recovery_s;
}

double boil_plan_last_out(const boil_plan_timetable *t)
{
    double last = 0;
    for (size_t k = 0; k < t->dips_count; k++)
        last = fmax(last, t->dips[k].leaves_s);
    return last;
}

double boil_plan_closes(const boil_plan_case *c, const boil_plan_timetable *t)
{
    return fmax(c->problem->end_s, boil_plan_last_out(t));
}

/* Water that may be missing as the last boil is back, and all of it is poured in by the end of the shift. */
static double restorable(const boil_plan_case *c, const boil_plan_timetable *t)
{
    const boil_plan_bath *b = c->bath;
    const boil_plan_problem *p = c->problem;
    gap g = gap_of(c, t, t->dips_count);
    double end_s = boil_plan_closes(c, t), start_s = boil_plan_hands_second(g.back_s + b->steady_s), poured = 0;
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
        boil_break w = window(c, &g);
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
    return fmin(boil_plan_closes(c, t), start_s + fmax(needed_s, boil_plan_last_out(t) - start_s));
}

/* After the last dip once more; where a break cuts that, before it and after it. When it is over. */
static double restore(const boil_plan_case *c, boil_plan_timetable *t, double missing)
{
    const boil_plan_bath *b = c->bath;
    const boil_plan_problem *p = c->problem;
    gap g = gap_of(c, t, t->dips_count);
    double start_s = boil_plan_hands_second(g.back_s + b->steady_s), as_of_s = g.back_s, closes_s = boil_plan_closes(c, t);
    bool is_cut = false;
    for (size_t i = 0; i <= p->breaks_count; i++) {
        double shut_s = i < p->breaks_count ? p->breaks[i].from_s : HUGE_VAL;
        double there = missing + b->boils_off_kg_s * (start_s - as_of_s), restored = restored_s(c, t, start_s, there);
        double over_s = floor(fmin(shut_s, restored) - start_s);
        double kg = fmin(b->flow_kg_s * over_s, there + b->boils_off_kg_s * over_s);
        if (over_s >= BOIL_PLAN_POUR_LEAST_S && kg > 0) {
            t->pours[t->pours_count++] = (boil_plan_pour){start_s, over_s, kg};
            missing = there + b->boils_off_kg_s * over_s - kg;
            as_of_s = start_s + over_s;
        }
        is_cut = restored >= closes_s;
        if (restored <= shut_s)
            break;
        start_s = fmax(start_s, p->breaks[i].to_s);
    }
    t->left_kg = fmax(0, missing + (is_cut ? b->boils_off_kg_s * (closes_s - as_of_s) : 0));
    return as_of_s;
}

/* Water in all gaps but the last. What is missing behind them. */
static double pour_between(const boil_plan_case *c, boil_plan_timetable *t)
{
    const boil_plan_bath *b = c->bath;
    double missing = b->missing_kg;
    find_bounds(c, t);
    for (size_t k = 0; k < t->dips_count; k++) { /* no more are kept than gaps were passed: the bounds ahead still stand */
        gap g = gap_of(c, t, k);
        boil_break w = window(c, &g);
        double grown = missing + growth_of(b, &g), next = t->pours[k + 1].mass_kg;
        double poured = grown > next || b->weakens_W_kg > 0 ? pourable(b, &g, &w, missing) : 0;
        if (poured > 0)
            t->pours[t->pours_count++] = (boil_plan_pour){w.from_s, w.to_s - w.from_s, poured};
        missing = grown - poured;
    }
    return missing;
}

/* Water, and salts once nothing is missing; where there is no time for them none of their water either. */
static void end_with(const boil_plan_case *c, boil_plan_timetable *t, double missing)
{
    const double little_kg = BOIL_PLAN_POUR_LEAST_S * c->bath->flow_kg_s;
    bool by_hand = !c->bath->valve;
    gap g = gap_of(c, t, t->dips_count);
    double owed = boil_plan_owed(c->bath, t->dips, t->dips_count, HUGE_VAL), from_s = g.back_s + c->bath->steady_s;
    bool asks = c->bath->sift_kg_s > 0 && owed > c->bath->owes_kg;
    double more = asks ? ahead(c->bath, owed) : 0;
    size_t kept = t->pours_count;
    if (by_hand)
        from_s = fmax(from_s, restore(c, t, missing + more) + (t->pours_count > kept ? BOIL_PLAN_REST_S : 0));
    boil_plan_pour last = boil_plan_last_sifting(c, t, from_s);
    if (last.mass_kg > 0 && t->left_kg <= little_kg) {
        t->salts[t->salts_count++] = last;
        owed -= last.mass_kg;
    } else if (by_hand && more > 0) {
        t->pours_count = kept;
        restore(c, t, missing);
    }
    t->owed_kg = c->bath->sift_kg_s > 0 && owed > c->bath->owes_kg ? owed : 0;
}

void boil_plan_pours_of(const boil_plan_case *c, boil_plan_timetable *t)
{
    t->pours_count = t->salts_count = 0;
    t->left_kg = t->owed_kg = 0;
    if (t->dips_count == 0 || (!c->bath->valve && !(c->bath->flow_kg_s > 0)))
        return;
    double missing = c->bath->valve ? 0 : pour_between(c, t);
    for (size_t k = 0; k < t->dips_count; k++)
        if (t->dips[k].salts.mass_kg > 0)
            t->salts[t->salts_count++] = t->dips[k].salts;
    end_with(c, t, missing);
}
