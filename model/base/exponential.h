/* base/exponential.h -- exp x less 1 for the innermost loop: within two units of the last place. The library's own is three times as
   slow as its exponential, and worth that near 0 alone. */
#ifndef BOIL_BASE_EXPONENTIAL_H
#define BOIL_BASE_EXPONENTIAL_H

double boil_exponential_less_1(double x);

#endif
