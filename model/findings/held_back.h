/* findings/held_back.h -- a case whose loads are held back where water floats.

   A further load that goes in through water afloat cools the bath under it and stirs it: what can let go at the worst moment is a
   little less than without that load (of one random plant 2 mm of freeboard). But nobody knows that it goes in then, and a further
   load is no cure: so such a case is judged as if it had been held back, too. */
#ifndef BOIL_FINDINGS_HELD_BACK_H
#define BOIL_FINDINGS_HELD_BACK_H

#include "boilback.h"

/* A copy of the schedule, in which the loads weigh next to nothing that in any run of the set go into a quiet bath through water that
   would leave less than `freeboard_m`, m. BOIL_OK with *any false: there are none, and *out is empty. BOIL_NO_MEMORY likewise.
   To be freed by boil_schedule_free. */
boil_outcome boil_held_back(const boil_run_set *set, const boil_schedule *s, double freeboard_m, boil_schedule *out, bool *any);

#endif
