/* properties/solubility.h -- which salts fall out of a cooling bath, from what temperature, and how much.

   Nitrate and nitrite: solubility in water from 0 to 100 degC (handbook tables; straight on above), times a factor for the
   sodium hydroxide beside them. No measured table for strong hydroxide was found: the factor is calculated (7.5, 5.4, 4.7, 3.5
   mol/kg of nitrate at 4, 8, 10, 20 mol/kg NaOH and 25 degC, against 10.7 in water), and taken for both salts at all
   temperatures, which is early: by the activities of properties/solution.h 1.2 to 1.9 times as much stays dissolved at 60 to
   100 degC. Above 65 % of salts nothing is behind the temperatures: what separates there may be a double salt [E. Jaenecke
   1930, abstract]. Hydroxide: the liquidus of NaOH and water, digitised, 1 to 2 K, from 52 to 64 wt% a handbook's
   solubilities, up to 3 K higher; above 73.4 wt% the curve lies about 20 K above four other sources: the higher temperature
   stands, it warns earlier. Beside nitrate and nitrite, n mol/kg together, it is read at the molality of NaOH times
       1 + 0.39 [1 - exp(-n/0.5)]:                                                                               (1)
   a mole of either, in a kg of water saturated with NaOH, throws out 12 mol of NaOH.H2O where the common ion would
   throw out one [J.G. Reynolds et al., Fluid Phase Equilibria 532 (2021), abstract]. 0.39 is from that one value; 0.5
   mol/kg is judgement, 0.2 to 1: some 10 K either way. */
#ifndef BOIL_PROPERTIES_SOLUBILITY_H
#define BOIL_PROPERTIES_SOLUBILITY_H

#include "boilback.h"
#include "properties/solution.h"

/* mol per kg of water that dissolve beside hydroxide of a molality; salt is BOIL_NANO3 or BOIL_NANO2. */
double boil_solubility(int salt, double temperature_K, double hydroxide_mol_kg);

/* Liquidus of NaOH in water, K; strength in kg NaOH per kg of NaOH and water, 0 to 0.788 (held beyond). */
double boil_solubility_liquidus(double strength);

/* Nitrate and nitrite, kg, beyond what the mixture's water holds at a temperature. */
double boil_solubility_excess(const boil_mixture *m, double temperature_K);

/* And each of them; 0 of a salt of which more would dissolve, and of hydroxide. */
double boil_solubility_excess_each(const boil_mixture *m, double temperature_K, double each[BOIL_SALTS]);

/* How far a mixture is above its hydroxide's liquidus, K; negative below. */
double boil_solubility_above_liquidus(const boil_mixture *m, double temperature_K);

/* The mixture with as much of a solid in it as dissolves at a temperature: `solid` in kg of each salt, its proportions. Each
   salt of the solid counts by itself: the first to be saturated ends it. The mixture as it was where one is already. Hydroxide
   counts to 95 % of it and water, where the liquidus nears its melting point. */
boil_mixture boil_solubility_saturated(const boil_mixture *m, const double solid[BOIL_SALTS], double temperature_K);

/* At which a liquid is kept and poured, K: as warm as the room, or 5 K over where it would crystallise (judgement). */
double boil_solubility_clear(const boil_mixture *m, double room_K);

#endif
