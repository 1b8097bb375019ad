/* saturation.h -- which salts fall out of a cooling bath, from what temperature, and how much.

   Nitrate and nitrite: solubility in water from 0 to 100 degC (handbook tables; held above), times a factor for the sodium
   hydroxide beside them. No measured table for strong hydroxide was found: the factor is calculated (7.5, 5.4, 4.7, 3.5 mol/kg
   of nitrate at 4, 8, 10, 20 mol/kg NaOH and 25 degC, against 10.7 in water), and taken for both salts at all temperatures.
   Hydroxide: the liquidus of NaOH and water, digitised, 1 to 2 K; where a later measurement (76.28 wt% at 90 degC) and the curve
   (111 degC) differ, the higher temperature stands: it warns earlier. Nitrate beside it is left out of account. */
#ifndef BOIL_SATURATION_H
#define BOIL_SATURATION_H

#include "solution.h"

/* mol per kg of water that dissolve beside hydroxide of a molality; salt is BOIL_NANO3 or BOIL_NANO2. */
double boil_saturation(int salt, double temperature_K, double hydroxide_mol_kg);

/* Liquidus of NaOH in water, K; strength in kg NaOH per kg of NaOH and water, 0 to 0.788 (held beyond). */
double boil_saturation_liquidus(double strength);

/* Highest temperature, K, at which one of the salts of a mixture is saturated, between 0 degC and 140 degC; NaN when none is. */
double boil_crystals_from(const boil_mixture *m);

/* Nitrate and nitrite, kg, beyond what the mixture's water holds at a temperature. */
double boil_crystals(const boil_mixture *m, double temperature_K);

/* How far a mixture is above its hydroxide's liquidus, K; negative below. */
double boil_above_liquidus(const boil_mixture *m, double temperature_K);

#endif
