/* integrate/integrator_rkc.h -- a step for systems that answer fast but move slowly: the Runge-Kutta-Chebyshev method of second
   order [Sommeijer, Shampine & Verwer, J. Comput. Appl. Math. 88 (1998) 315, from memory], with a fixed number of stages, as a
   step type of gsl_odeiv2. Its stability reaches along the negative real axis as the square of the stages, so where stability
   and not accuracy bounds the step, it takes several times longer steps for the same number of rates. */
#ifndef BOIL_INTEGRATE_INTEGRATOR_RKC_H
#define BOIL_INTEGRATE_INTEGRATOR_RKC_H

#include <gsl/gsl_odeiv2.h>

/* Of two to ten, three were the fastest in a shift of four hours. A step of three rates may be six times as long as the
   fastest unknown's own time. */
enum { BOIL_RKC_STAGES = 3 };

extern const gsl_odeiv2_step_type *const boil_rkc;

#endif
