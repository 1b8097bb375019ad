/* integrate/integrator_rkf45.h -- a fifth-order step with an error of fourth order [Fehlberg, NASA TR R-315 (1969)], for gsl_odeiv2:
   the same as GSL's own, bit by bit, but refused memory is said by NULL and not by GSL's error handler. */
#ifndef BOIL_INTEGRATE_INTEGRATOR_RKF45_H
#define BOIL_INTEGRATE_INTEGRATOR_RKF45_H

#include <gsl/gsl_odeiv2.h>

extern const gsl_odeiv2_step_type *const boil_rkf45;

#endif
