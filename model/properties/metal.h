/* properties/metal.h -- metals that may enter the bath or make the tank. */
#ifndef BOIL_PROPERTIES_METAL_H
#define BOIL_PROPERTIES_METAL_H

/* cp(t) = sum heat_capacity[i] t^i in J/kgK, k(t) = sum conductivity[i] t^i in W/mK, t in degC. */
typedef struct {
    double density_kg_m3;
    double heat_capacity[4];
    double conductivity[2];
} boil_metal;

boil_metal boil_carbon_steel(void); /* EN 1993-1-2, 20 to 600 degC: 7850 kg/m3 */

double boil_metal_heat_capacity(const boil_metal *m, double temperature_K); /* J/kgK */
double boil_metal_conductivity(const boil_metal *m, double temperature_K);  /* W/mK */
double boil_metal_enthalpy(const boil_metal *m, double temperature_K);      /* J/kg, zero at 0 degC; exact integral of cp */

#endif
