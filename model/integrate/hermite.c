#include "integrate/hermite.h"

#include <math.h>

void boil_hermite_at(const boil_hermite *h, size_t unknowns, double t, double y[])
{
    double length = h->t1 - h->t0, p = length > 0 ? fmin(1, fmax(0, (t - h->t0) / length)) : 1, q = 1 - p;
    double at0 = (1 + 2 * p) * q * q, at1 = p * p * (3 - 2 * p), by0 = p * q * q * length, by1 = -p * p * q * length;
    for (size_t i = 0; i < unknowns; i++)
        y[i] = at0 * h->y0[i] + by0 * h->slope0[i] + at1 * h->y1[i] + by1 * h->slope1[i];
}

void boil_hermite_range(double y0, double slope0, double y1, double slope1, double h, double *least, double *most)
{
    double by0 = slope0 * h, square = 3 * (y1 - y0) - 2 * by0 - slope1 * h, cube = by0 + slope1 * h - 2 * (y1 - y0);
    double root = sqrt(square * square - 3 * by0 * cube), q = -square - copysign(root, square);
    double turns[2] = {q / (3 * cube), by0 / q}; /* of by0 + 2 square p + 3 cube p^2, where there are any */
    *least = fmin(y0, y1);
    *most = fmax(y0, y1);
    for (int i = 0; i < 2; i++) {
        double p = turns[i], y = y0 + p * (by0 + p * (square + p * cube));
        if (!(p > 0 && p < 1))
            continue;
        *least = fmin(*least, y);
        *most = fmax(*most, y);
    }
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
