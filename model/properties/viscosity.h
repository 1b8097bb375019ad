/* properties/viscosity.h -- dynamic viscosity of water and of the bath liquid.

   Mixing rule of Laliberte, J. Chem. Eng. Data 52 (2007) 321 (year from memory; coefficients as carried by the general-purpose
   library `chemicals`), w mass fractions, w_s that of all salts, t in degC, mPa s:
       ln mu = w_w ln mu_w + sum w_i ln mu_i
       mu_w = (t + 246)/((0.05594 t + 5.2842) t + 137.37)
       ln mu_i = (v1 w_s^v2 + v3)/(v4 t + 1) - ln(v5 w_s^v6 + 1)
   Fitted for NaOH at 12.5 to 70 degC to 56 %, for NaNO3 at 10 to 60 degC to 55 %; nitrite as nitrate (judgement). Above 70 degC
   extrapolated: x 0.7 to 1.5 (judgement), which is `viscosity_factor` of boil_transport. Beyond 56 % of salts that of 56 % is held: a
   stronger bath is thicker than that. Thinner than 0.2 mPa s, water's at 140 degC, is held at that. Natural and stirred
   coefficients, the drained film, dissolving and the drift of wide pools use it. */
#ifndef BOIL_PROPERTIES_VISCOSITY_H
#define BOIL_PROPERTIES_VISCOSITY_H

#include <stdbool.h>

#include "properties/solution.h"

double boil_viscosity_water(double temperature_K);                           /* Pa s; 0 to 150 degC */
double boil_viscosity_solution(const boil_mixture *m, double temperature_K); /* Pa s; at least 0.2e-3; 0 to 200 degC */

/* Of a run that asks over and over: what hangs on strength alone, by cells of 0.875 %, filled where they come by. Zero: empty. It tells
   the same to 5e-8, at a third of the cost, and the same whatever was asked before. */
#define BOIL_VISCOSITY_CELLS 64

typedef struct {
    bool known[BOIL_VISCOSITY_CELLS];
    double hydroxide[BOIL_VISCOSITY_CELLS][2][4], nitrate[BOIL_VISCOSITY_CELLS][2][4];
} boil_viscosity_table;

double boil_viscosity_told(boil_viscosity_table *t, const boil_mixture *m, double temperature_K); /* as boil_viscosity_solution */

#endif
