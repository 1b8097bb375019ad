/* integrate/hermite.h -- a state between the ends of a step: the cubic through both ends with the slopes there. */
#ifndef BOIL_INTEGRATE_HERMITE_H
#define BOIL_INTEGRATE_HERMITE_H

#include <stddef.h>

/* Values and slopes at t0 and t1 >= t0, a moment being its end; kept by the caller. */
typedef struct {
    double t0, t1;
    const double *y0, *slope0, *y1, *slope1;
} boil_hermite;

/* At t; before t0 and after t1 it is the nearer end. */
void boil_hermite_at(const boil_hermite *h, size_t unknowns, double t, double y[]);

/* Of one unknown that goes from y0 to y1 within h, with slopes there: the least and the most on the way, both ends included. */
void boil_hermite_range(double y0, double slope0, double y1, double slope1, double h, double *least, double *most);

/* How far from y0 such a one is highest, 0 and h included. */
double boil_hermite_top(double y0, double slope0, double y1, double slope1, double h);

/* Draws both slopes of one unknown in until the cubic between them does not leave the range of its ends [Fritsch & Carlson, SIAM
   J. Numer. Anal. 17 (1980) 238, from memory]; change and slopes are over the same step. */
void boil_hermite_limit(double change, double h, double *slope0, double *slope1);

#endif
