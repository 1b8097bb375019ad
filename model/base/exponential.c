#include "base/exponential.h"

#include <math.h>

double boil_exponential_less_1(double x)
{
    const double near = 0.5; /* from there on the difference is no less than 0.39: it loses one bit at most */
    return fabs(x) < near ? expm1(x) : exp(x) - 1;
}
