/* integrate/ark.h -- a step of fourth order for systems that answer fast but move slowly: the additive Runge-Kutta pair
   ARK4(3)6L[2]SA [Kennedy & Carpenter, Appl. Numer. Math. 44 (2003) 139, table of that name], taken linearly implicit: with any matrix A
       y' = [f(t, y) - A (y - y0)] + A (y - y0),
   the bracket by the explicit table, the rest by the implicit one, which is stable however fast A answers. A stage, g_j = A z_j,
   w = h/4:
       r = h sum aE_qj f_j + h sum (aI_qj - aE_qj) g_j,   z_q = (I - w A)^-1 r,   g_q = (z_q - r)/w,   f_q = f(t + c_q h, y0 + z_q)
       y1 = y0 + h sum b_j f_j,   error = (I - w A)^-1 h sum (b_j - b^_j) f_j
   The splitting is exact for any A, so the order is four, and sums of unknowns that f keeps are kept to rounding, whether A is the
   Jacobian, a part of it, an old one or wrong: A decides on stability alone. The error is filtered as Hairer & Wanner, Solving
   Ordinary Differential Equations II, IV.8, do it (from memory); where y1 and the last stage are further apart than five times that, a
   fifth of what lies between them is the error (judgement: it must not shorten smooth steps, and must not overlook a wrong A). */
#ifndef BOIL_INTEGRATE_ARK_H
#define BOIL_INTEGRATE_ARK_H

#include "integrate/step.h"

enum { BOIL_ARK_ORDER = 4 };

/* Jacobian taken before. False: the rates refuse a stage, or I - wA is singular. */
bool boil_ark_step(boil_step *p, const boil_system *s, double t, double h);

#endif
