/* base/cubic.h -- the cubic of a table's cell: through the values at both of its ends with their slopes, by powers of u, the share of the
   way. Slopes are over the whole cell. */
#ifndef BOIL_BASE_CUBIC_H
#define BOIL_BASE_CUBIC_H

static inline void boil_cubic_between(double c[4], double y0, double by0, double y1, double by1)
{
    c[0] = y0;
    c[1] = by0;
    c[2] = 3 * (y1 - y0) - 2 * by0 - by1;
    c[3] = 2 * (y0 - y1) + by0 + by1;
}

static inline double boil_cubic_at(const double c[4], double u)
{
    return c[0] + u * (c[1] + u * (c[2] + u * c[3]));
}

#endif
