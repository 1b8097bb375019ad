#include "statistics/least_squares.h"

#include <gsl/gsl_cdf.h>
#include <math.h>
#include <stdint.h>
#include <string.h>

#include "statistics/descent.h"
#include "statistics/triangle.h"

#define AT_BOUND 1e-3 /* of the way between the bounds: what lies closer is taken to be at one */
#define MOST_SERIAL 0.98

typedef double square_matrix[BOIL_LEAST_SQUARES_PARAMETERS][BOIL_LEAST_SQUARES_PARAMETERS];

typedef struct {
    const boil_least_squares_problem *problem;
    double deviation; /* s sqrt(k) of the readings, or 0: what was known does not count yet */
    size_t trials;
} asked;

/* A parameter as it is sought ------------------------------------------------------------------------------------- */

static bool bounded(const boil_least_squares_problem *p, size_t i)
{
    return isfinite(p->low[i]);
}

static double scale_of(const boil_least_squares_problem *p, size_t i)
{
    return p->start[i] != 0 ? fabs(p->start[i]) : 1;
}

static double value_of(const boil_least_squares_problem *p, size_t i, double u)
{
    if (!bounded(p, i))
        return p->start[i] + scale_of(p, i) * u;
    return p->low[i] + (p->high[i] - p->low[i]) / (1 + exp(-u));
}

static double slope_of(const boil_least_squares_problem *p, size_t i, double u)
{
    return bounded(p, i) ? (p->high[i] - p->low[i]) / (2 + exp(u) + exp(-u)) : scale_of(p, i);
}

static double share_of(const boil_least_squares_problem *p, size_t i, double value)
{
    return (value - p->low[i]) / (p->high[i] - p->low[i]);
}

static bool at_bound(const boil_least_squares_problem *p, size_t i, double u)
{
    return bounded(p, i) && fabs(share_of(p, i, value_of(p, i, u)) - 0.5) > 0.5 - AT_BOUND;
}

static double start_of(const boil_least_squares_problem *p, size_t i)
{
    if (!bounded(p, i))
        return 0;
    double share = fmin(1 - AT_BOUND, fmax(AT_BOUND, share_of(p, i, p->start[i])));
    return log(share / (1 - share));
}

static boil_outcome residuals_at(void *context, const double u[], double residual[])
{
    asked *a = context;
    const boil_least_squares_problem *p = a->problem;
    double value[BOIL_LEAST_SQUARES_PARAMETERS];
    for (size_t i = 0; i < p->parameters; i++)
        value[i] = value_of(p, i, u[i]);
    a->trials++;
    for (size_t i = 0; p->known && i < p->parameters; i++)
        residual[p->count + i] = a->deviation * (value[i] - p->mean[i]) / p->deviation[i];
    return p->residuals(p->context, value, residual);
}

/* What came out --------------------------------------------------------------------------------------------------- */

/* Of the readings alone, each with the one so far before it. */
static double products(const boil_least_squares_problem *p, const double residual[], size_t before)
{
    double sum = 0;
    for (size_t i = before; i < p->count; i++)
        sum += residual[i] * residual[i - before];
    return sum;
}

/* chi2, r and what follows from them. */
static void judge_readings(const boil_least_squares_problem *p, const double residual[], boil_least_squares *out)
{
    double n = (double)p->count;
    out->chi2 = products(p, residual, 0);
    out->serial = out->chi2 > 0 ? fmin(MOST_SERIAL, fmax(0, products(p, residual, 1) / out->chi2)) : 0;
    out->effective = n * (1 - out->serial) / (1 + out->serial);
}

/* (J'J)^-1 of the parameters that are free: one at its bound stays there, and neither has an interval nor blurs the others'.
   In the memory of the descent, which is over. */
static void covariance_of(const boil_least_squares_problem *p, boil_descent *d, square_matrix covariance)
{
    size_t is[BOIL_LEAST_SQUARES_PARAMETERS];
    square_matrix own;
    boil_triangle free = {.rows = d->rows, .at = d->jacobian};
    for (size_t i = 0; i < p->parameters; i++)
        if (!at_bound(p, i, d->u[i])) {
            memmove(free.at + free.columns * d->rows, d->jacobian + i * d->rows, d->rows * sizeof *free.at);
            is[free.columns++] = i;
        }
    boil_triangle_make(&free, NULL);
    boil_triangle_covariance(&free, own);
    for (size_t i = 0; i < free.columns; i++)
        for (size_t j = 0; j < free.columns; j++)
            covariance[is[i]][is[j]] = own[i][j];
}

static void estimate(const boil_least_squares_problem *p, size_t i, double u, double error, double reach,
                     boil_least_squares_estimate *e)
{
    e->value = value_of(p, i, u);
    e->error = slope_of(p, i, u) * error;
    e->low = value_of(p, i, u - reach * error);
    e->high = value_of(p, i, u + reach * error);
    e->at_bound = at_bound(p, i, u);
}

static void conclude(const boil_least_squares_problem *p, boil_descent *d, double deviation, boil_least_squares *out)
{
    square_matrix covariance = {{0}};
    covariance_of(p, d, covariance);
    double k = (double)p->count / out->effective, freedom = fmax(1, out->effective - (double)p->parameters);
    double reach = gsl_cdf_tdist_Pinv(0.975, freedom) * sqrt(k);
    for (size_t i = 0; i < p->parameters; i++) {
        double own = covariance[i][i];
        double error = own > 0 ? deviation / sqrt(k) * sqrt(own) : (double)NAN;
        estimate(p, i, d->u[i], error, reach, &out->of[i]);
        for (size_t j = 0; j < p->parameters; j++)
            out->correlation[i][j] = covariance[i][j] / sqrt(own * covariance[j][j]);
    }
}

/* What the readings alone leave: how far a single one is off, as one of so many independent ones. A perfect fit must not
   silence what was known. */
static double deviation_of(const boil_least_squares_problem *p, const boil_least_squares *f)
{
    const double least = 1e-6;
    double n = (double)p->count;
    return fmax(least, sqrt(f->chi2 / (n - (double)p->parameters) * n / f->effective));
}

static boil_outcome descend(const boil_least_squares_problem *p, boil_descent *d, size_t most_steps, boil_least_squares *out)
{
    for (size_t i = 0; i < p->parameters; i++)
        d->u[i] = start_of(p, i);
    boil_outcome outcome = boil_descent_run(d, most_steps, &out->converged);
    if (outcome == BOIL_OK)
        judge_readings(p, d->residual, out);
    return outcome;
}

static boil_outcome search(asked *a, boil_descent *d, boil_least_squares *out)
{
    const size_t enough = 200, for_scatter = 5; /* of steps: the scatter is settled long before parameters hardly told are */
    const boil_least_squares_problem *p = a->problem;
    boil_outcome outcome = descend(p, d, p->known ? for_scatter : enough, out);
    if (outcome != BOIL_OK)
        return outcome;
    double deviation = deviation_of(p, out);
    if (p->known) {
        a->deviation = deviation;
        outcome = descend(p, d, enough, out);
    }
    if (outcome == BOIL_OK)
        conclude(p, d, deviation, out);
    return outcome;
}

static bool makes_sense(const boil_least_squares_problem *p)
{
    if (p->parameters < 1 || p->parameters > BOIL_LEAST_SQUARES_PARAMETERS || p->count <= p->parameters ||
        p->count > SIZE_MAX - p->parameters || !(p->difference >= 1e-8 && p->difference <= 0.1))
        return false;
    for (size_t i = 0; i < p->parameters; i++)
        if (p->known && !(p->deviation[i] > 0 && isfinite(p->mean[i])))
            return false;
    for (size_t i = 0; i < p->parameters; i++)
        if (!isfinite(p->start[i]) || isfinite(p->low[i]) != isfinite(p->high[i]) ||
            !(p->low[i] < p->high[i] && p->start[i] >= p->low[i] && p->start[i] <= p->high[i]))
            return false;
    return true;
}

boil_outcome boil_least_squares_run(const boil_least_squares_problem *p, boil_least_squares *out)
{
    if (p == NULL || out == NULL || p->residuals == NULL)
        return BOIL_BAD_INPUT;
    *out = (boil_least_squares){0};
    if (!makes_sense(p))
        return BOIL_BAD_INPUT;
    asked a = {.problem = p};
    boil_descent d = {.residuals = residuals_at,
                      .context = &a,
                      .rows = p->count + (p->known ? p->parameters : 0),
                      .parameters = p->parameters,
                      .difference = p->difference};
    boil_outcome outcome = boil_descent_begin(&d);
    if (outcome == BOIL_OK)
        outcome = search(&a, &d, out);
    boil_descent_end(&d);
    out->trials = a.trials;
    return outcome;
}
