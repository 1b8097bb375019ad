#include "design/rinse.h"

#include <math.h>

double boil_rinse_flow(double drag_out_m3_s, double ratio, double stages)
{
    return drag_out_m3_s * pow(ratio, 1 / stages);
}
