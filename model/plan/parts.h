/* plan/parts.h -- jobs as the baskets they hang in: each in as few equal ones as the bath bears. */
#ifndef BOIL_PLAN_PARTS_H
#define BOIL_PLAN_PARTS_H

#include "plan/plan.h"

typedef struct {
    boil_plan_part *list; /* job by job, in their order */
    size_t count;
} boil_plan_parts;

/* Heat, time constant and time to be hot of a part, by formulas alone: what its steel and the water on it take up to bath_K; 4000 s/m of
   volume over area (judgement: trials), which is steel of 7850 kg/m3 and 490 J/kgK at 960 W/m2K on all its faces; hot after three time
   constants. */
void boil_plan_part_estimate(boil_plan_part *p, double bath_K);

/* What hangs in the basket `number`, from 0, of so many equal ones; whole pieces where they were counted, the first have one more. */
boil_load boil_plan_part_load(const boil_plan_job *j, size_t number, size_t of);

/* Every job split as it must be, by its mass and by the heat that a part may take; one that cannot be is whole.
   BOIL_OK; BOIL_BAD_INPUT: more than BOIL_PLAN_PARTS_MAX; BOIL_NO_MEMORY. Nothing is to be freed then. */
boil_outcome boil_plan_parts_of(const boil_plan_problem *p, const boil_plan_bath *b, double bath_K, boil_plan_parts *out);
void boil_plan_parts_free(boil_plan_parts *p);

/* The least number of parts in which each is light and warm enough; 0: no number does. */
size_t boil_plan_parts_needed(const boil_plan_job *j, const boil_plan_bath *b, double bath_K);

#endif
