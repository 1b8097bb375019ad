#include "design/burner.h"

#include <math.h>

#include "design/published_units.h"

#define UNTIL_M (2000 * BOIL_FOOT)
#define A_STEP_M (1000 * BOIL_FOOT)

static double lessened(double altitude_m, double from_m)
{
    return altitude_m > UNTIL_M ? fmax(0.2, 1 - 0.04 * (altitude_m - from_m) / A_STEP_M) : 1;
}

double boil_burner_derate(double altitude_m)
{
    return lessened(altitude_m, 0);
}

double boil_burner_derate_from_2000_ft(double altitude_m)
{
    return lessened(altitude_m, UNTIL_M);
}

double boil_burner_turndown(double heat_W, double calm_W)
{
    return heat_W / (BOIL_BURNER_LOW_FIRE * calm_W);
}
