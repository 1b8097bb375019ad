/* statistics/least_squares.h -- least squares: which values of a few parameters make a model agree best with what was measured,
   and how well that tells them. Pure numbers, in whatever unit a parameter has.

   chi2 = sum r_i^2, r_i = (model - measured)/standard deviation, is made least by Levenberg's and Marquardt's method (GSL's, in
   a trust region). A parameter between two bounds p_lo and p_hi is sought as u, p = p_lo + (p_hi - p_lo)/(1 + exp(-u)), so that
   no trial leaves them; one without is sought on its own scale. Derivatives are central differences: a run's own noise is some
   1e-7, so a step must be far above that.

   Of u the covariance is C = s^2 (J'J)^-1, s^2 = chi2/(n - p). Readings one after another tend to err alike: with a correlation
   r from one to the next, n of them tell as much as n/k, k = (1 + r)/(1 - r), independent ones [Bayley & Hammersley 1946, from
   memory]. Intervals are wider by the root of k, and by Student's t for n/k readings.

   What was known before counts as one reading more of each parameter: chi2/(s^2 k) + sum ((p - mean)/deviation)^2 is made
   least, with the s^2 k that the readings alone leave. So a parameter that the readings hardly tell stays where it was
   known to be, as wide as it was known, and does not drag others along. */
#ifndef BOIL_STATISTICS_LEAST_SQUARES_H
#define BOIL_STATISTICS_LEAST_SQUARES_H

#include <stdbool.h>
#include <stddef.h>

#include "boilback.h"

#define BOIL_LEAST_SQUARES_PARAMETERS ((size_t)8)

/* Writes `count` residuals. BOIL_OK, or a failure where there is no such case: that trial is given up. */
typedef boil_outcome boil_least_squares_residuals(void *context, const double value[], double residual[]);

typedef struct {
    boil_least_squares_residuals *residuals;
    void *context;
    size_t parameters; /* 1 to BOIL_LEAST_SQUARES_PARAMETERS */
    size_t count;      /* more than parameters */
    double start[BOIL_LEAST_SQUARES_PARAMETERS];
    double low[BOIL_LEAST_SQUARES_PARAMETERS],
        high[BOIL_LEAST_SQUARES_PARAMETERS]; /* both finite, or both infinite; start between them */
    bool known;                              /* whether anything was known before, as below; deviations above 0 */
    double mean[BOIL_LEAST_SQUARES_PARAMETERS], deviation[BOIL_LEAST_SQUARES_PARAMETERS];
    double difference; /* of u, for derivatives: 1e-2 for runs, 1e-5 for formulas; 1e-8 to 0.1 */
} boil_least_squares_problem;

/* One parameter. */
typedef struct {
    double value;
    double error;     /* standard error as if readings were independent; NaN when nothing tells it */
    double low, high; /* 95 % interval as above, within the bounds; NaN likewise */
    bool at_bound;    /* the best value lies at a bound, or beyond it; then there is no error and no interval */
} boil_least_squares_estimate;

typedef struct {
    boil_least_squares_estimate of[BOIL_LEAST_SQUARES_PARAMETERS];
    double correlation[BOIL_LEAST_SQUARES_PARAMETERS][BOIL_LEAST_SQUARES_PARAMETERS]; /* NaN where one of both is not told */
    double chi2;                                                                      /* of the readings */
    double serial;                                                                    /* r above; at most 0.98 */
    double effective; /* independent readings that the residuals are worth */
    size_t trials;    /* times the model was asked */
    bool converged;
} boil_least_squares;

/* BOIL_OK; BOIL_BAD_INPUT: counts or bounds make no sense; BOIL_NO_MEMORY; or the failure of the model at the start. */
boil_outcome boil_least_squares_run(const boil_least_squares_problem *p, boil_least_squares *out);

#endif
