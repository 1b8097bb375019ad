#include "base/cube_root.h"

#include <math.h>
#include <stdint.h>
#include <string.h>

/* A third of the exponent is a third of the bits, but for a constant that makes it exact on the whole: within 6 %. Halley's step cubes
   that, twice; Newton's last one ends the rounding. The library has what is tiny, negative or no number. */
double boil_cube_root(double x)
{
    const uint64_t origin = 0x2A9F7893782DA1CE;
    const double least = 1e-200;
    uint64_t bits;
    double y;
    if (!(x > least && x < HUGE_VAL))
        return cbrt(x);
    memcpy(&bits, &x, sizeof bits);
    bits = bits / 3 + origin;
    memcpy(&y, &bits, sizeof y);
    for (int i = 0; i < 2; i++) {
        double c = y * y * y;
        y *= (c + 2 * x) / (2 * c + x);
    }
    return y - (y * y * y - x) / (3 * y * y);
}
