#include "sizing/leaving.h"

#include <math.h>

#include "base/bisection.h"

boil_outcome boil_leaving_at(boil_leaving *l, double heat_W, boil_left *out)
{
    boil_holding a;
    for (size_t i = 0; i < l->count; i++)
        if (l->left[i].heat_W == heat_W) {
            *out = l->left[i];
            return BOIL_OK;
        }
    boil_outcome outcome = boil_holding_by(l->of, heat_W, l->laws, &a);
    if (outcome != BOIL_OK)
        return outcome;
    *out = (boil_left){heat_W, a.freeboard_min_m, a.breaks & BOIL_BREAKS_KNOWN};
    if (l->count < BOIL_LEAVING_MOST)
        l->left[l->count++] = *out;
    return BOIL_OK;
}

typedef struct {
    boil_leaving *leaving;
    double freeboard_m;
} asked_for;

/* The most of the heats that leave enough, and the least of those that do not; NULL: none so far. */
static void ends(const asked_for *q, const boil_left **enough, const boil_left **less)
{
    *enough = *less = NULL;
    for (size_t i = 0; i < q->leaving->count; i++) {
        const boil_left *l = &q->leaving->left[i];
        if (l->freeboard_m < q->freeboard_m)
            *less = *less == NULL || l->heat_W < (*less)->heat_W ? l : *less;
        else if (!l->beyond)
            *enough = *enough == NULL || l->heat_W > (*enough)->heat_W ? l : *enough;
    }
}

/* Which heat to ask where that one is to be told of: one hardly beyond where the freeboard is used up, seen from it, since then it
   need not be asked itself. */
static double better(const asked_for *q, double heat_W)
{
    const double beyond = 0.003; /* what a straight line misses by */
    const boil_left *enough, *less;
    ends(q, &enough, &less);
    if (enough == NULL || less == NULL || !(enough->heat_W < less->heat_W))
        return heat_W;
    double share = (enough->freeboard_m - q->freeboard_m) / (enough->freeboard_m - less->freeboard_m);
    double turn_W = enough->heat_W + share * (less->heat_W - enough->heat_W);
    double near_W = heat_W < turn_W ? (1 - beyond) * turn_W : (1 + beyond) * turn_W;
    return heat_W < turn_W ? fmax(heat_W, near_W) : fmin(heat_W, near_W);
}

static bool is_told(const asked_for *q, double heat_W, bool *yes)
{
    const boil_left *enough, *less;
    ends(q, &enough, &less);
    *yes = less != NULL && heat_W >= less->heat_W;
    return *yes || (enough != NULL && heat_W <= enough->heat_W);
}

static boil_outcome leaves_too_little(void *context, double heat_W, bool *yes)
{
    const asked_for *q = context;
    boil_left left;
    boil_outcome outcome = BOIL_OK;
    if (!is_told(q, heat_W, yes))
        outcome = boil_leaving_at(q->leaving, better(q, heat_W), &left);
    if (outcome != BOIL_OK || is_told(q, heat_W, yes))
        return outcome;
    outcome = boil_leaving_at(q->leaving, heat_W, &left);
    *yes = outcome == BOIL_OK && left.freeboard_m < q->freeboard_m;
    return outcome == BOIL_OK && !*yes && left.beyond ? BOIL_OUT_OF_RANGE : outcome;
}

boil_outcome boil_leaving_most(boil_leaving *l, double from_W, double most_W, double freeboard_m, double *heat_W)
{
    asked_for q = {l, freeboard_m};
    double over;
    boil_bisection search = {leaves_too_little, &q, from_W, most_W, 1.3, 0.01};
    boil_outcome outcome = boil_bisect(&search, heat_W, &over);
    if (outcome == BOIL_OK && isnan(*heat_W))
        *heat_W = 0;
    return outcome;
}
