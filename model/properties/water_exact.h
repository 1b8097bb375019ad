/* properties/water_exact.h -- liquid water on its saturation line by the formulas of IAPWS SR1-86(1992) themselves. What runs ask for
   is in properties/water.h, by polynomials through these within 1e-10 K or 1e-11 (properties/water_line.c), and beyond their ends by these. */
#ifndef BOIL_PROPERTIES_WATER_EXACT_H
#define BOIL_PROPERTIES_WATER_EXACT_H

double boil_water_exact_density(double temperature_K);                               /* kg/m3 */
double boil_water_exact_enthalpy(double temperature_K, double *heat_capacity_J_kgK); /* J/kg, and its derivative */
double boil_water_exact_temperature(double enthalpy_J_kg);                           /* K, the inverse to 1e-9 K */
double boil_water_exact_latent_heat(double temperature_K);                           /* J/kg */

#endif
