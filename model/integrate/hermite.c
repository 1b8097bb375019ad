#include "integrate/hermite.h"

#include <math.h>

void boil_hermite_at(const boil_hermite *h, size_t unknowns, double t, double y[])
{
    double length = h->t1 - h->t0, p = length > 0 ? fmin(1, fmax(0, (t - h->t0) / length)) : 1, q = 1 - p;
    double at0 = (1 + 2 * p) * q * q, at1 = p * p * (3 - 2 * p), by0 = p * q * q * length, by1 = -p * p * q * length;
    for (size_t i = 0; i < unknowns; i++)
        y[i] = at0 * h->y0[i] + by0 * h->slope0[i] + at1 * h->y1[i] + by1 * h->slope1[i];
}

/* Of y0 + p (by0 + p (square + p cube)), p from 0 to 1; and where that turns, anywhere or NaN where it does not. */
typedef struct {
    double y0, by0, square, cube, turns[2];
} polynomial;

static polynomial polynomial_of(double y0, double slope0, double y1, double slope1, double h)
{
    polynomial c = {.y0 = y0, .by0 = slope0 * h};
    c.square = 3 * (y1 - y0) - 2 * c.by0 - slope1 * h;
    c.cube = c.by0 + slope1 * h - 2 * (y1 - y0);
    double root = sqrt(c.square * c.square - 3 * c.by0 * c.cube), q = -c.square - copysign(root, c.square);
    c.turns[0] = q / (3 * c.cube);
    c.turns[1] = c.by0 / q;
    return c;
}

static double value(const polynomial *c, double p)
{
    return c->y0 + p * (c->by0 + p * (c->square + p * c->cube));
}

void boil_hermite_range(double y0, double slope0, double y1, double slope1, double h, double *least, double *most)
{
    const polynomial c = polynomial_of(y0, slope0, y1, slope1, h);
    *least = fmin(y0, y1);
    *most = fmax(y0, y1);
    for (int i = 0; i < 2; i++) {
        if (!(c.turns[i] > 0 && c.turns[i] < 1))
            continue;
        double y = value(&c, c.turns[i]);
        *least = fmin(*least, y);
        *most = fmax(*most, y);
    }
}

double boil_hermite_top(double y0, double slope0, double y1, double slope1, double h)
{
    const polynomial c = polynomial_of(y0, slope0, y1, slope1, h);
    double most = fmax(y0, y1), p = y1 > y0 ? 1 : 0;
    for (int i = 0; i < 2; i++)
        if (c.turns[i] > 0 && c.turns[i] < 1 && value(&c, c.turns[i]) > most) {
            p = c.turns[i];
            most = value(&c, p);
        }
    return p * h;
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
