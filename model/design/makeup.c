#include "design/makeup.h"

#include <math.h>

#include "design/published_units.h"

double boil_makeup_valve(double flow_m3_s, double pressure_Pa)
{
    return flow_m3_s / BOIL_GALLON_A_MINUTE / sqrt(pressure_Pa / BOIL_PSI);
}

double boil_makeup_orifice(double flow_m3_s, double pressure_Pa, double discharge)
{
    return BOIL_INCH * sqrt(boil_makeup_valve(flow_m3_s, pressure_Pa) / (29.84 * discharge));
}
