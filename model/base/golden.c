#include "base/golden.h"

#include <math.h>

boil_golden boil_golden_top(double (*of)(double x, void *context), void *context, double low, double high, int times)
{
    const double share = (sqrt(5) - 1) / 2;
    boil_golden left = {.x = high - share * (high - low)}, right = {.x = low + share * (high - low)};
    left.value = of(left.x, context);
    right.value = of(right.x, context);
    for (int i = 0; i < times; i++) {
        if (right.value > left.value) {
            low = left.x;
            left = right;
            right.x = low + share * (high - low);
            right.value = of(right.x, context);
        } else {
            high = right.x;
            right = left;
            left.x = high - share * (high - low);
            left.value = of(left.x, context);
        }
    }
    return left.value > right.value ? left : right;
}
