#include "design/makeup.h"

#include <math.h>

#include "boilback.h"
#include "design/published_units.h"
#include "properties/water.h"

double boil_makeup(double heat_W, double dry_W, double bath_K, double pressure_Pa, double water_K)
{
    return fmax(0, heat_W - dry_W) / (boil_steam_enthalpy(bath_K, pressure_Pa) - boil_water_enthalpy(water_K));
}

double boil_makeup_valve(double flow_m3_s, double pressure_Pa)
{
    return flow_m3_s / BOIL_GALLON_A_MINUTE / sqrt(pressure_Pa / BOIL_PSI);
}

double boil_makeup_orifice(double flow_m3_s, double pressure_Pa, double discharge)
{
    return BOIL_INCH * sqrt(boil_makeup_valve(flow_m3_s, pressure_Pa) / (29.84 * discharge));
}
