#include "properties/metal.h"

#define ICE_POINT_K 273.15

/* EN 1993-1-2:2005, 3.4.1.2(1) and 3.4.1.3(1) and 3.2.2: heat capacity (20 to 600 degC), conductivity
   (20 to 800 degC) and density of carbon steel, in degC as the standard prints them. */
boil_metal boil_carbon_steel(void)
{
    return (boil_metal){
        .density_kg_m3 = 7850,
        .heat_capacity = {425, 7.73e-1, -1.69e-3, 2.22e-6},
        .conductivity = {54, -3.33e-2},
    };
}

double boil_metal_heat_capacity(const boil_metal *m, double temperature_K)
{
    const double t = temperature_K - ICE_POINT_K;
    const double *c = m->heat_capacity;
    return c[0] + t * (c[1] + t * (c[2] + t * c[3]));
}

double boil_metal_conductivity(const boil_metal *m, double temperature_K)
{
    return m->conductivity[0] + m->conductivity[1] * (temperature_K - ICE_POINT_K);
}

double boil_metal_enthalpy(const boil_metal *m, double temperature_K)
{
    const double t = temperature_K - ICE_POINT_K;
    const double *c = m->heat_capacity;
    return t * (c[0] + t * (c[1] / 2 + t * (c[2] / 3 + t * c[3] / 4)));
}
