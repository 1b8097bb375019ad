/* analysis/correct.h -- back to set point and level from what thermometer and dipstick say: what to add, in which order, how
   fast, or how long to boil down; whether it fits, and how much to bail out first when it does not.

   Strength follows from the boiling temperature read, mass from the level. With S kg of salts and W of water in the
   tank, and a bath of salt fraction s and mass M wanted,  dry salts  s M - S,  water  (1 - s) M - W  and what boils
   off meanwhile. Too much salt for the level wanted makes the level higher. Order: water first (or boil down), then
   salts or liquid, so that the bath is never stronger on the way and no water meets undissolved salt; each at the
   fastest pace that its own run allows (analysis/pour_rate.h). Water and duration are then corrected until the run of the whole
   ends at the set point.

   It fits, and nothing has to be bailed out, when the bath as it will be keeps the freeboard with the next load going
   in, mixing fast, and each addition keeps it too. Automatic water is shut meanwhile; nothing is dragged out. The
   mixer, the dial and the lid stay as the scenario has them at the start. */
#ifndef BOIL_ANALYSIS_CORRECT_H
#define BOIL_ANALYSIS_CORRECT_H

#include <stdbool.h>

#include "analysis/pour_rate.h"
#include "boilback.h"

#define BOIL_CORRECT_LEVEL_M 2e-3 /* a level is met to that: a dipstick's mark; judgement */

/* So much of a bath of a salt fraction is there; with those salts in all, or what there is if that is more, it is to
   have the wanted fraction. The level is left 0. */
boil_correct_amounts boil_correct_balance(double fraction, double mass_kg, double wanted_fraction, double wanted_salts_kg,
                                          double liquid_fraction);

/* What fits was judged by: the bath at the set point and a still level, and the load going in after a few seconds. */
boil_outcome boil_correct_loaded(const boil_correction *a, double still_level_m, boil_plant *plant, boil_schedule *out);

#endif
