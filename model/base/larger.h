/* base/larger.h -- the larger and the smaller of two numbers for the innermost loop: fmax and fmin are calls. Neither may be NaN; of
   one that is, b is given. */
#ifndef BOIL_BASE_LARGER_H
#define BOIL_BASE_LARGER_H

static inline double boil_larger(double a, double b)
{
    return a > b ? a : b;
}

static inline double boil_smaller(double a, double b)
{
    return a < b ? a : b;
}

#endif
