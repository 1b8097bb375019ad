#include "integrate/hermite.h"

#include <math.h>

void boil_hermite_at(const boil_hermite *h, size_t unknowns, double t, double y[])
{
    double length = h->t1 - h->t0, p = length > 0 ? fmin(1, fmax(0, (t - h->t0) / length)) : 1, q = 1 - p;
    double at0 = (1 + 2 * p) * q * q, at1 = p * p * (3 - 2 * p), by0 = p * q * q * length, by1 = -p * p * q * length;
    for (size_t i = 0; i < unknowns; i++)
        y[i] = at0 * h->y0[i] + by0 * h->slope0[i] + at1 * h->y1[i] + by1 * h->slope1[i];
}

void boil_hermite_limit(double change, double h, double *slope0, double *slope1)
{
    double mean = change / h;
    if (*slope0 * mean <= 0)
        *slope0 = 0;
    if (*slope1 * mean <= 0)
        *slope1 = 0;
    double steep = hypot(*slope0, *slope1), most = 3 * fabs(mean);
    if (steep > most) {
        *slope0 *= most / steep;
        *slope1 *= most / steep;
    }
}
