/* statistics/least_squares.h -- least squares: which values of a few parameters make a model agree best with what was measured,
   and how well that tells them. Pure numbers, in whatever unit a parameter has.

   chi2 = sum r_i^2, r_i = (model - measured)/standard deviation, is made least by Levenberg's and Marquardt's method
   (statistics/descent.h). A parameter between two bounds p_lo and p_hi is sought as u, p = p_lo + (p_hi - p_lo)/(1 + exp(-u)), so that
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

#endif
