/* findings/run_set.h -- one case carried out as often as it takes to judge it: once with the likely closures, and with those that
   err either way (case/closures.h).

   Likely, likely with the wide pool's drift, grave and sudden always; the slower heat paths only where water afloat on a quiet
   bath, were it at its boil, would leave less than the freeboard asked for: elsewhere they change no grade; the mild ones only
   where the likely run says something that they might not, the second only where the first says it too: they decide on
   certainty alone. A run that ends in a quiet spell in which water floated or anything was put, or one that was cut there, is not
   the end of it: likely, grave and sudden runs then go on without further actions, for an hour at most, and are judged by what
   comes (`continued`).
   Where the scenario's own drift is that of a foam, grave and sudden runs are made with the usual one too; where bubbles rise faster
   than usual, the likely one. Then, from the worst moments of the sudden runs, those in which what floats lets go of itself
   (findings/trigger.h). Grave and sudden runs, and what lets go in them, are made once more with the plant's own boiling curve where
   the graver one left what is known, and last where loads went through what floats, with those held back (findings/held_back.h).

   No run is left out: one that cannot be carried out, or does not come to its end, is found as not resolved.

   The runs share no past. Drift and heat of dilution act from the start; those that differ in the layer's laws alone, grave and
   sudden, and the mild ones, are the same only until the first part or water goes in, minutes into most schedules. */
#ifndef BOIL_FINDINGS_RUN_SET_H
#define BOIL_FINDINGS_RUN_SET_H

#include "boilback.h"

/* Its run with the least freeboard, the mild ones apart. */
const boil_history *boil_run_set_least_freeboard(const boil_run_set *set);

#endif
