/* properties/dilution.h -- the heat of dilution taken larger or smaller than the enthalpy correlation has it.

   The partial enthalpy of water in a hot working bath less that of pure water, L1 = H_w - h_w, is known to a tenth
   (-410 +-35 kJ/kg at 141 degC and 51 % salts, against -422 by the correlation). With a factor F on it
       H' = H + (F - 1) E,   E = H - m_w h_w(T) - sum m_i [a_i + c (T - T0)],                                             (1)
   a_i and c such that at a reference mixture and T0 salts and heat capacity keep their values: there H'_i = H_i, C' = C and
   H'_w - h_w = F L1. E is extensive, so (1) is an enthalpy function like any other and everything that follows from it closes. */
#ifndef BOIL_PROPERTIES_DILUTION_H
#define BOIL_PROPERTIES_DILUTION_H

#include "properties/solution.h"

typedef struct {
    double factor;                                         /* F: 1; 0.85 to 1.10 */
    double reference_K, salt_J_kg[BOIL_SALTS], salt_J_kgK; /* T0, a_i, c */
} boil_dilution;

boil_dilution boil_dilution_at(double factor, const boil_mixture *reference, double reference_K);

/* H of the correlation made H'. */
boil_heat boil_dilution_heat(const boil_dilution *d, const boil_mixture *m, double temperature_K, boil_heat h);

#endif
