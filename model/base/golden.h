/* base/golden.h -- the top of a function that has one, by the golden section. */
#ifndef BOIL_BASE_GOLDEN_H
#define BOIL_BASE_GOLDEN_H

typedef struct {
    double x, value;
} boil_golden;

/* Between low and high, looked at two places and so many times more: each leaves 0.618 of the bracket. A function with several
   tops: one of them. */
boil_golden boil_golden_top(double (*of)(double x, void *context), void *context, double low, double high, int times);

#endif
