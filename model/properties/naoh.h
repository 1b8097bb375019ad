/* properties/naoh.h -- the binary NaOH + water, which the mixture rests on.
   Source of all correlations: J. Olsson, A. Jernqvist, G. Aly, "Thermophysical properties of aqueous NaOH-H2O solutions
   at high concentrations", Int. J. Thermophys. 18 (1997) 779-793; coefficients read from public ports of the paper, which
   agree in every digit. Argument of all: the mass fraction of WATER, x, and the temperature in K.
   Range: x from boil_naoh_least_water(T) to 1, 0 to 200 degC. Nothing here fails outside; callers check. */
#ifndef BOIL_PROPERTIES_NAOH_H
#define BOIL_PROPERTIES_NAOH_H

#define BOIL_NAOH_MOLAR_MASS 0.0399971 /* kg/mol */

/* Least mass fraction of water the correlations were made for. The published limits are steps (0.5 to 60 degC, 0.353 to 70,
   0.3 to 150, 0.2 to 200); here each step is a 2 K ramp inside the published range, so that a run can watch the margin. */
double boil_naoh_least_water(double temperature_K);

/* ln of the water activity, p(x,T)/p(1,T), and its derivatives with respect to ln x and T (1/K). The ratio makes pure water
   exact (the raw correlation boils it at 99.93 degC); the common factor ln x is taken out, so that nothing cancels in dilute
   solutions. Below 20 degC the 20 degC value is held (moisture exchange only). */
double boil_naoh_log_activity(double log_x, double temperature_K, double *by_log_x, double *by_temperature);

/* Apparent enthalpy of NaOH, J/kg: [h(x,T) - x h(1,T)]/(1 - x), with derivatives. The division is exact algebra on the
   correlation's polynomials, so it holds to x = 1. */
double boil_naoh_apparent_enthalpy(double x, double temperature_K, double *by_x, double *by_temperature);

/* Apparent volume of NaOH, m3/kg: [1/rho(x,T) - x/rho(1,T)]/(1 - x), held below 0.1 % NaOH where it would cancel. */
double boil_naoh_apparent_volume(double x, double temperature_K);

#endif
