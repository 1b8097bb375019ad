#include "equipment/ambient.h"

#include <math.h>
#include <stddef.h>

#include "base/constants.h"
#include "properties/water.h"

boil_ambient boil_ambient_default(void)
{
    return (boil_ambient){
        .pressure_Pa = BOIL_STANDARD_ATMOSPHERE, .temperature_K = 293.15, .relative_humidity = 0.5, .draught_m_s = 0.3};
}

const char *boil_ambient_problem(const boil_ambient *r)
{
    if (r == NULL)
        return "there is no ambient air";
    if (!(r->pressure_Pa >= 60e3 && r->pressure_Pa <= 110e3))
        return "station pressure must be between 60000 Pa and 110000 Pa (not reduced to sea level)";
    if (!(r->temperature_K >= 243 && r->temperature_K <= 333.15))
        return "room temperature must be between 243 K and 333.15 K";
    if (!(r->relative_humidity >= 0 && r->relative_humidity <= 1))
        return "relative humidity must be between 0 and 1";
    if (!(r->draught_m_s >= 0 && r->draught_m_s <= 3))
        return "draught must be between 0 m/s and 3 m/s";
    return NULL;
}

double boil_ambient_pressure_at_altitude(double altitude_m)
{
    return BOIL_STANDARD_ATMOSPHERE * pow(1 - 2.25577e-5 * altitude_m, 5.25588);
}

double boil_ambient_vapour_pressure(const boil_ambient *r)
{
    return r->relative_humidity * boil_water_saturation_pressure(fmax(r->temperature_K, BOIL_ZERO_CELSIUS));
}
