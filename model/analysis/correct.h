/* analysis/correct.h -- back to set point and level from what thermometer and dipstick say: what to add, in which order, how
   fast, or how long to boil down; whether it fits, and how much to bail out first when it does not.

   Strength follows from the boiling temperature read, mass from the level. With S kg of salts and W of water in the
   tank, and a bath of salt fraction s and mass M wanted,  dry salts  s M - S,  water  (1 - s) M - W  and what boils
   off meanwhile. Too much salt for the level wanted makes the level higher. Order: water first (or boil down), then
   salts or liquid, so that the bath is never stronger on the way and no water meets undissolved salt; each at the
   fastest pace that its own run allows (analysis/pour_rate.h). Water and duration are then corrected until the run of the whole
   ends at the set point.

   It fits, and nothing has to be bailed out, when the bath as it will be keeps the freeboard with the next load going in,
   mixing fast, and each addition keeps it too. Where an addition does not, a lower level is aimed at; where that does not help
   either, or too much is there for the load, the bath cools with the heat off, is bailed out, and comes back to the boil: the
   plan begins there, with what has evaporated. Automatic water is shut meanwhile; nothing is dragged out. The mixer, the dial
   and the lid stay as the scenario has them at the start. */
#ifndef BOIL_ANALYSIS_CORRECT_H
#define BOIL_ANALYSIS_CORRECT_H

#include "boilback.h"

#endif
