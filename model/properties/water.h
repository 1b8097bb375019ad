/* properties/water.h -- pure water and steam. Saturation line: IAPWS-IF97 region 4. Saturated liquid and
   vapour density and enthalpy: IAPWS SR1-86(1992). Steam at a pressure: IAPWS-IF97 region 2.
   Enthalpies are J/kg with liquid water at the triple point (0.01 degC) near zero.
   Range of every function: 273.15 K to 473.15 K (0 to 200 degC) unless it says otherwise;
   callers keep the range, nothing here fails. The liquid and the latent heat are polynomials through the formulas, within 1e-10 K or 1e-11 of each
   (properties/water_line.c). */
#ifndef BOIL_PROPERTIES_WATER_H
#define BOIL_PROPERTIES_WATER_H

#include "boilback.h"

double boil_water_saturation_pressure(double temperature_K);                   /* Pa; 273.15 to 647.096 K */
double boil_water_saturation_pressure_slope(double temperature_K);             /* Pa/K, exact derivative of the above */
double boil_water_log_saturation_pressure(double temperature_K, double *by_K); /* ln of it in Pa to 1e-11, and its slope, 1/K */

double boil_water_heat_capacity(double temperature_K); /* J/kgK, exact derivative of the above; as cp to 0.3 % */
double boil_water_enthalpy_slope(double temperature_K, double *heat_capacity_J_kgK); /* both at once */
double boil_water_temperature(double enthalpy_J_kg); /* K, inverse of boil_water_enthalpy to 1e-9 K */

double boil_water_vapour_density(double temperature_K);  /* kg/m3, saturated vapour */
double boil_water_vapour_enthalpy(double temperature_K); /* J/kg, saturated vapour */
double boil_water_latent_heat(double temperature_K);     /* J/kg, of evaporation: the difference of the two, faster */

/* Steam from its saturation temperature up, and near 1 bar no further than 20 K below it: there h and rho still
   continue smoothly (h within 3 kJ/kg of a straight line), 40 K below they are wild. */
double boil_steam_enthalpy(double temperature_K, double pressure_Pa);      /* J/kg, IF97 region 2 */
double boil_steam_density(double temperature_K, double pressure_Pa);       /* kg/m3, IF97 region 2 */
double boil_steam_heat_capacity(double temperature_K, double pressure_Pa); /* J/kgK, IF97 region 2 */

#endif
