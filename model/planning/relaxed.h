/* planning/relaxed.h -- whether what plan/relax.h found to help does: with that given, the jobs are planned anew, bath and parts probed
   where they are others then, and the plan is carried out by all the runs that judge a case. */
#ifndef BOIL_PLANNING_RELAXED_H
#define BOIL_PLANNING_RELAXED_H

#include "plan/relax.h"
#include "planning/planning.h"

/* Sets `proof`, and `last_out_s` where it holds. Of a shift from its start alone. BOIL_OK, whether it holds or not; BOIL_NO_MEMORY, or a
   failure of a run. */
boil_outcome boil_planning_relaxed(const boil_planning *g, uint64_t seed, boil_plan_relaxation *r);

#endif
