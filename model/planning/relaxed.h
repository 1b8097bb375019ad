/* planning/relaxed.h -- whether what plan/relax.h found to help does: with that given, the jobs are planned anew, bath and parts probed
   where they are others then, and the plan is carried out by all the runs that judge a case. */
#ifndef BOIL_PLANNING_RELAXED_H
#define BOIL_PLANNING_RELAXED_H

#include "plan/relax.h"
#include "planning/proof.h"
#include "planning/resume.h"

typedef struct {
    const boil_planning *of;
    const boil_plan_under_way
        *under_way;               /* the rest of a shift, taken up again where the bath is another; NULL: from its start */
    const boil_plan_order *best;  /* that was found */
    const boil_plan_proof *found; /* its proof: with an open end it may hold as it is; NULL: there is none */
    uint64_t seed;
} boil_plan_asked;

/* Sets `proof`, and `last_out_s` where it holds. Where a value does not do that could be more, the least that does is sought above it.
   BOIL_OK, whether it holds or not; BOIL_NO_MEMORY, or a failure of a run. */
boil_outcome boil_planning_relaxed(const boil_plan_asked *a, boil_plan_relaxation *r);

#endif
