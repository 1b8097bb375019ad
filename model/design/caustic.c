#include "design/caustic.h"

/* What is not a number is past both. */
boil_caustic_zone boil_caustic_zone_of(double wetted_metal_K)
{
    if (wetted_metal_K <= BOIL_CAUSTIC_FIRST_LINE_K)
        return BOIL_CAUSTIC_BELOW;
    return wetted_metal_K <= BOIL_CAUSTIC_SECOND_LINE_K ? BOIL_CAUSTIC_PAST_FIRST : BOIL_CAUSTIC_PAST_SECOND;
}

double boil_caustic_over(double wetted_metal_K)
{
    return wetted_metal_K - BOIL_CAUSTIC_FIRST_LINE_K;
}
