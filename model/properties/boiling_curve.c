#include "properties/boiling_curve.h"

#include <math.h>
#include <stdbool.h>

#include "base/constants.h"
#include "properties/activity.h"

static const double SPACING = 0.05; /* mol/kg */
/* Below 3 mol/kg the curve bends too much; 80 is beyond the correlation. */
static const int FIRST_KNOT = 60, LAST_KNOT = 1600;
static const double HOTTEST_K = BOIL_ZERO_CELSIUS + 245;

/* Where (2) holds at a knot, with slopes by M along it. */
typedef struct {
    double T_K, T_M, ratio, ratio_M;
} curve_point;

/* By Newton from a usual boiling point, always the same one. */
static bool solve(const boil_conditions *c, double M, curve_point *p)
{
    double by_M = 0, by_T = 0, boil_T, ln_a = 0, T = fmin(c->saturation_K + 2 * M, HOTTEST_K - 5), step = HUGE_VAL, slope = 0;
    for (int i = 0; i < 60 && fabs(step) > 1e-11 * T; i++) {
        ln_a = boil_activity_log(M, T, &by_M, &by_T);
        double f = ln_a - boil_activity_boiling(c, T, &boil_T);
        slope = by_T - boil_T;
        step = fmax(-20, fmin(20, -f / slope));
        T += step;
        if (!(T > c->saturation_K - 5 && T < HOTTEST_K))
            return false;
    }
    double s, by_ln_a;
    p->T_K = T;
    p->T_M = -by_M / slope;
    p->ratio = boil_activity_ratio(M, ln_a, by_M, &s, &by_ln_a);
    p->ratio_M = 1 / s + by_ln_a * (by_M + by_T * p->T_M);
    return fabs(step) <= 1e-11 * T && isfinite(p->T_M) && isfinite(p->ratio_M);
}

static void put_cubic(double c[4], double f0, double d0, double f1, double d1)
{
    c[0] = f0;
    c[1] = d0 * SPACING;
    c[2] = 3 * (f1 - f0) - (2 * d0 + d1) * SPACING;
    c[3] = 2 * (f0 - f1) + (d0 + d1) * SPACING;
}

/* The place of the cell that begins with a knot; negative: it has none. */
static int cell_of(boil_boiling_curve *b, const boil_conditions *c, int knot)
{
    int at = knot % BOIL_CURVE_CELLS;
    if (b->knot[at] == knot)
        return at;
    curve_point from, to;
    if (knot < FIRST_KNOT || knot >= LAST_KNOT || !solve(c, knot * SPACING, &from) || !solve(c, (knot + 1) * SPACING, &to))
        return -1;
    b->knot[at] = knot;
    put_cubic(b->T_K[at], from.T_K, from.T_M, to.T_K, to.T_M);
    put_cubic(b->ratio[at], from.ratio, from.ratio_M, to.ratio, to.ratio_M);
    return at;
}

static double cubic(const double c[4], double u, double *by_M)
{
    *by_M = (c[1] + u * (2 * c[2] + u * 3 * c[3])) * (1 / SPACING);
    return c[0] + u * (c[1] + u * (c[2] + u * c[3]));
}

/* (1) by Newton, from the blend alone. Writes R, and how much M rises with the hydroxide; negative: there is no answer here. */
static int solve_blend(boil_boiling_curve *b, const boil_conditions *c, const boil_molalities *n, double *M, double *ratio,
                       double *by_hydroxide)
{
    const double near = 1e-8; /* the next step would be of 1e-16 */
    double step = HUGE_VAL;
    int at = -1;
    *M = boil_molalities_about(n);
    for (int i = 0; i < 30 && !(fabs(step) <= near * *M); i++) {
        double place = *M * (1 / SPACING), ratio_M;
        if (!(place > FIRST_KNOT && place < LAST_KNOT) || (at = cell_of(b, c, (int)place)) < 0)
            return -1;
        *ratio = cubic(b->ratio[at], place - (int)place, &ratio_M);
        *by_hydroxide = 1 / (1 - n->others * ratio_M);
        step = (*M - n->hydroxide - n->others * *ratio) * *by_hydroxide;
        *M -= step;
        *ratio -= ratio_M * step;
    }
    return fabs(step) <= near * *M ? at : -1;
}

boil_outcome boil_boiling_curve_at(boil_boiling_curve *b, const boil_conditions *c, const boil_mixture *m,
                                   boil_solution_guess *guess, double *boiling_point_K, boil_slope *slope)
{
    boil_molalities n = boil_molalities_of(m);
    double M, ratio, by_hydroxide, T_M;
    int at = solve_blend(b, c, &n, &M, &ratio, &by_hydroxide);
    if (at < 0) {
        *guess = (boil_solution_guess){0, 0};
        return boil_solution_boiling_point_near(c, m, guess, boiling_point_K, slope);
    }
    double place = M * (1 / SPACING);
    guess->equivalent_molality = M;
    guess->boiling_point_K = *boiling_point_K = cubic(b->T_K[at], place - b->knot[at], &T_M);
    if (slope)
        *slope = boil_activity_slope(m, &n, T_M, by_hydroxide, ratio);
    return BOIL_OK;
}
