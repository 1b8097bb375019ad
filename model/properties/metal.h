/* properties/metal.h -- metals that may enter the bath or make the tank. */
#ifndef BOIL_PROPERTIES_METAL_H
#define BOIL_PROPERTIES_METAL_H

#include "boilback.h"

double boil_metal_heat_capacity(const boil_metal *m, double temperature_K); /* J/kgK */
double boil_metal_conductivity(const boil_metal *m, double temperature_K);  /* W/mK */
double boil_metal_enthalpy(const boil_metal *m, double temperature_K);      /* J/kg, zero at 0 degC; exact integral of cp */

#endif
