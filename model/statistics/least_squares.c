#include "statistics/least_squares.h"

#include <gsl/gsl_cdf.h>
#include <gsl/gsl_errno.h>
#include <gsl/gsl_multifit_nlinear.h>
#include <math.h>

#define GIVEN_UP 1e10 /* residual of a case that is none: no such trial is ever the better one */
#define AT_BOUND 1e-3 /* of the way between the bounds: what lies closer is taken to be at one */
#define MOST_SERIAL 0.98

typedef struct {
    const boil_least_squares_problem *problem;
    double deviation; /* s sqrt(k) of the readings, or 0: what was known does not count yet */
    size_t trials;
    boil_outcome outcome; /* of the last one */
} asked;

static size_t rows_of(const boil_least_squares_problem *p)
{
    return p->count + (p->known ? p->parameters : 0);
}

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

/* Residuals and their derivatives --------------------------------------------------------------------------------- */

static boil_outcome ask(asked *a, const gsl_vector *u, gsl_vector *residual)
{
    double value[BOIL_LEAST_SQUARES_PARAMETERS];
    for (size_t i = 0; i < a->problem->parameters; i++)
        value[i] = value_of(a->problem, i, gsl_vector_get(u, i));
    a->trials++;
    boil_outcome outcome = a->problem->residuals(a->problem->context, value, residual->data);
    for (size_t i = 0; a->problem->known && i < a->problem->parameters; i++)
        gsl_vector_set(residual, a->problem->count + i,
                       a->deviation * (value[i] - a->problem->mean[i]) / a->problem->deviation[i]);
    for (size_t i = 0; outcome == BOIL_OK && i < residual->size; i++)
        if (!isfinite(gsl_vector_get(residual, i)))
            outcome = BOIL_NOT_FINITE;
    return outcome;
}

static int residuals_at(const gsl_vector *u, void *context, gsl_vector *residual)
{
    asked *a = context;
    a->outcome = ask(a, u, residual);
    if (a->outcome != BOIL_OK)
        gsl_vector_set_all(residual, GIVEN_UP);
    return GSL_SUCCESS;
}

/* Column i of J by central differences; where one side is no case, from the other and the middle. */
static int column_at(asked *a, const gsl_vector *u, size_t i, gsl_vector *trial, gsl_vector *column, gsl_vector *other)
{
    double h = a->problem->difference, up = h, down = h;
    gsl_vector_memcpy(trial, u);
    gsl_vector_set(trial, i, gsl_vector_get(u, i) + h);
    if (ask(a, trial, column) != BOIL_OK) {
        up = 0;
        if (ask(a, u, column) != BOIL_OK)
            return GSL_EFAILED;
    }
    gsl_vector_set(trial, i, gsl_vector_get(u, i) - h);
    if (ask(a, trial, other) != BOIL_OK) {
        down = 0;
        if (up == 0 || ask(a, u, other) != BOIL_OK)
            return GSL_EFAILED;
    }
    gsl_vector_sub(column, other);
    gsl_vector_scale(column, 1 / (up + down));
    return GSL_SUCCESS;
}

static int jacobian_at(const gsl_vector *u, void *context, gsl_matrix *jacobian)
{
    asked *a = context;
    gsl_vector *trial = gsl_vector_alloc(u->size);
    gsl_vector *column = gsl_vector_alloc(jacobian->size1), *other = gsl_vector_alloc(jacobian->size1);
    int status = trial != NULL && column != NULL && other != NULL ? GSL_SUCCESS : GSL_ENOMEM;
    for (size_t i = 0; status == GSL_SUCCESS && i < u->size; i++) {
        status = column_at(a, u, i, trial, column, other);
        if (status == GSL_SUCCESS)
            gsl_matrix_set_col(jacobian, i, column);
    }
    gsl_vector_free(trial);
    gsl_vector_free(column);
    gsl_vector_free(other);
    return status;
}

/* What came out --------------------------------------------------------------------------------------------------- */

/* Of the readings alone, each with the one so far before it. */
static double products(const boil_least_squares_problem *p, const gsl_vector *residual, size_t before)
{
    double sum = 0;
    for (size_t i = before; i < p->count; i++)
        sum += gsl_vector_get(residual, i) * gsl_vector_get(residual, i - before);
    return sum;
}

/* chi2, r and what follows from them. */
static void judge_readings(const boil_least_squares_problem *p, const gsl_vector *residual, boil_least_squares *out)
{
    double n = (double)p->count;
    out->chi2 = products(p, residual, 0);
    out->serial = out->chi2 > 0 ? fmin(MOST_SERIAL, fmax(0, products(p, residual, 1) / out->chi2)) : 0;
    out->effective = n * (1 - out->serial) / (1 + out->serial);
}

/* (J'J)^-1 of the parameters that are free: one at its bound stays there, and neither has an interval nor blurs the others'. */
static boil_outcome covariance_of(const boil_least_squares_problem *p, const gsl_vector *u, const gsl_matrix *jacobian,
                                  gsl_matrix *covariance)
{
    size_t is[BOIL_LEAST_SQUARES_PARAMETERS], free = 0;
    gsl_matrix_set_zero(covariance);
    for (size_t i = 0; i < p->parameters; i++)
        if (!at_bound(p, i, gsl_vector_get(u, i)))
            is[free++] = i;
    if (free == 0)
        return BOIL_OK;
    gsl_matrix *some = gsl_matrix_alloc(jacobian->size1, free), *own = gsl_matrix_alloc(free, free);
    boil_outcome outcome = some != NULL && own != NULL ? BOIL_OK : BOIL_NO_MEMORY;
    for (size_t i = 0; outcome == BOIL_OK && i < free; i++) {
        gsl_vector_const_view column = gsl_matrix_const_column(jacobian, is[i]);
        gsl_matrix_set_col(some, i, &column.vector);
    }
    if (outcome == BOIL_OK && gsl_multifit_nlinear_covar(some, 1e-12, own) != GSL_SUCCESS)
        outcome = BOIL_NO_ROOT;
    for (size_t i = 0; outcome == BOIL_OK && i < free; i++)
        for (size_t j = 0; j < free; j++)
            gsl_matrix_set(covariance, is[i], is[j], gsl_matrix_get(own, i, j));
    gsl_matrix_free(some);
    gsl_matrix_free(own);
    return outcome;
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

static void conclude(const boil_least_squares_problem *p, const gsl_vector *u, const gsl_matrix *covariance, double deviation,
                     boil_least_squares *out)
{
    double k = (double)p->count / out->effective, freedom = fmax(1, out->effective - (double)p->parameters);
    double reach = gsl_cdf_tdist_Pinv(0.975, freedom) * sqrt(k);
    for (size_t i = 0; i < p->parameters; i++) {
        double own = gsl_matrix_get(covariance, i, i);
        double error = own > 0 ? deviation / sqrt(k) * sqrt(own) : (double)NAN;
        estimate(p, i, gsl_vector_get(u, i), error, reach, &out->of[i]);
        for (size_t j = 0; j < p->parameters; j++)
            out->correlation[i][j] = gsl_matrix_get(covariance, i, j) / sqrt(own * gsl_matrix_get(covariance, j, j));
    }
}

/* From *u towards the least sum of squares, where *u then is. */
static boil_outcome descend(asked *a, gsl_multifit_nlinear_workspace *w, size_t most_steps, gsl_vector *u,
                            boil_least_squares *out)
{
    const boil_least_squares_problem *p = a->problem;
    double settled = p->difference * p->difference; /* derivatives are no better */
    gsl_multifit_nlinear_fdf f = {.f = residuals_at, .df = jacobian_at, .n = rows_of(p), .p = p->parameters, .params = a};
    int why = 0;
    int status = gsl_multifit_nlinear_init(u, &f, w);
    if (a->outcome != BOIL_OK)
        return a->outcome;
    if (status != GSL_SUCCESS)
        return BOIL_NO_ROOT;
    status = gsl_multifit_nlinear_driver(most_steps, settled, settled, 0, NULL, NULL, &why, w);
    out->converged = status == GSL_SUCCESS || status == GSL_ENOPROG; /* no progress: down to the model's own noise */
    gsl_vector_memcpy(u, gsl_multifit_nlinear_position(w));
    judge_readings(p, gsl_multifit_nlinear_residual(w), out);
    return BOIL_OK;
}

/* What the readings alone leave: how far a single one is off, as one of so many independent ones. A perfect fit must not
   silence what was known. */
static double deviation_of(const boil_least_squares_problem *p, const boil_least_squares *f)
{
    const double least = 1e-6;
    double n = (double)p->count;
    return fmax(least, sqrt(f->chi2 / (n - (double)p->parameters) * n / f->effective));
}

static boil_outcome search(const boil_least_squares_problem *p, gsl_multifit_nlinear_workspace *w, gsl_matrix *covariance,
                           boil_least_squares *out)
{
    const size_t enough = 200, for_scatter = 5; /* of steps: the scatter is settled long before parameters hardly told are */
    asked a = {p, 0, 0, BOIL_OK};
    double at[BOIL_LEAST_SQUARES_PARAMETERS];
    for (size_t i = 0; i < p->parameters; i++)
        at[i] = start_of(p, i);
    gsl_vector_view u = gsl_vector_view_array(at, p->parameters);
    boil_outcome outcome = descend(&a, w, p->known ? for_scatter : enough, &u.vector, out);
    double deviation = deviation_of(p, out);
    if (outcome == BOIL_OK && p->known) {
        a.deviation = deviation;
        for (size_t i = 0; i < p->parameters; i++)
            at[i] = start_of(p, i);
        outcome = descend(&a, w, enough, &u.vector, out);
    }
    if (outcome == BOIL_OK)
        outcome = covariance_of(p, &u.vector, gsl_multifit_nlinear_jac(w), covariance);
    if (outcome == BOIL_OK)
        conclude(p, &u.vector, covariance, deviation, out);
    out->trials = a.trials;
    return outcome;
}

static bool makes_sense(const boil_least_squares_problem *p)
{
    if (p->parameters < 1 || p->parameters > BOIL_LEAST_SQUARES_PARAMETERS || p->count <= p->parameters ||
        !(p->difference >= 1e-8 && p->difference <= 0.1))
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
    gsl_multifit_nlinear_parameters how = gsl_multifit_nlinear_default_parameters();
    gsl_multifit_nlinear_workspace *w = gsl_multifit_nlinear_alloc(gsl_multifit_nlinear_trust, &how, rows_of(p), p->parameters);
    gsl_matrix *covariance = gsl_matrix_alloc(p->parameters, p->parameters);
    boil_outcome outcome = w != NULL && covariance != NULL ? search(p, w, covariance, out) : BOIL_NO_MEMORY;
    gsl_matrix_free(covariance);
    gsl_multifit_nlinear_free(w);
    return outcome;
}
