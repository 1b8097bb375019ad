/* analysis/charge.h -- filling a tank to the working level and strength: water first, then dry salts in batches or ready-mixed
   liquid, each stirred in with the heat off, then heating up and what is still missing or too much of water.

   Amounts are balances. Every batch is a run of the model, from the bath that the one before left, with the mixer on
   and every loss. A batch raises the bath by 10 K at the most, and is an eighth of the salts at the most; it waits for
   the one before it to dissolve or mix in but for a hundredth and, if need be, to cool: with the batch in, well mixed
   and without losses, the bath must stay 15 K below its boil. Its pace keeps the surface below the boil too: what goes
   in within one mixing time gives its heat to a tenth of the bath,
       pace <= 0.1 M c (T_boil - T)/(q t_mix),   q its heat of solution in that bath, J/kg.                                (1)
   The adiabatic bound of a temperature leaves tank, losses and evaporation out. Once it boils, the water that
   evaporated goes in at the pace that its own run allows (analysis/pour_rate.h). */
#ifndef BOIL_ANALYSIS_CHARGE_H
#define BOIL_ANALYSIS_CHARGE_H

#include "boilback.h"

#define BOIL_CHARGE_WATER_HOT_K                                                                                                \
    363.15 /* a bath as hot as this takes no water without boiling, nor is liquid as hot put in: 90 degC, judgement */
#define BOIL_CHARGE_BY_HAND_W 50.0 /* that a person with a paddle gives the bath for long; 30 to 75, judgement */

/* A plan that is done, carried out in one go: from the bath in the tank, or the first thing in an empty one, through every
   step with the heat off, then on full, to the boil; an hour beyond the last step where that is never. Rows stand a thousandth
   of it apart, 10 s at least. *begin_s: when, on the plan's clock, the history begins. To be freed after BOIL_OK. */
boil_outcome boil_charge_run(const boil_plant *p, const boil_charge_plan *plan, const boil_run_options *o, double *begin_s,
                             boil_history *out);

#endif
