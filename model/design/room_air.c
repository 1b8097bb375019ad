#include "design/room_air.h"

#include <math.h>

#include "base/constants.h"
#include "design/published_units.h"
#include "properties/water.h"

/* J/m3K of standard air: 1.08 Btu/h for a cubic foot a minute and degree Fahrenheit. */
static const double heat_J_m3K = 1.08 * BOIL_BTU / 3600 / (BOIL_FOOT * BOIL_FOOT * BOIL_FOOT_A_MINUTE) * 1.8;

double boil_room_air_heat(double air_m3_s, double pressure_Pa, double rise_K)
{
    return heat_J_m3K * pressure_Pa / BOIL_STANDARD_ATMOSPHERE * air_m3_s * rise_K;
}

double boil_room_air_year(double air_m3_s, double pressure_Pa, double hours_a_week, double degree_days_K)
{
    return boil_room_air_heat(air_m3_s, pressure_Pa, degree_days_K) * 86400 * hours_a_week / 168;
}

double boil_room_air_dew_point(double air_m3_s, double pressure_Pa, double room_K, double room_vapour_Pa, double vapour_kg_s)
{
    const double water_kg_mol = 18.015e-3;
    double air_mol_s = air_m3_s * (pressure_Pa - room_vapour_Pa) / (BOIL_GAS_CONSTANT * room_K);
    double ratio = room_vapour_Pa / (pressure_Pa - room_vapour_Pa) + vapour_kg_s / water_kg_mol / air_mol_s;
    if (!(air_mol_s > 0))
        return (double)NAN;
    return boil_water_saturation_temperature(pressure_Pa * ratio / (1 + ratio));
}
