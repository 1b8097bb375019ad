/* commands/plan/rest.h -- the rest of a shift as a scenario of its own, which begins now: by [now] of the scenario that it is of. */
#ifndef COMMANDS_PLAN_REST_H
#define COMMANDS_PLAN_REST_H

#include "planning/resume.h"
#include "scenario/scenario.h"

/* It borrows all of the scenario that it is of, but its list of jobs: what is left of each, with the times from now. */
typedef struct {
    scenario scenario;
    const now_section *now;        /* of the other */
    const scenario_job *of;        /* its jobs */
    boil_plan_hung *hung;          /* what hangs in the tank, with times from now */
    boil_plan_under_way under_way; /* the same; held is the boiling point at the start of the shift */
} plan_rest;

/* False, with complaints, where there is none; to be freed either way. */
bool plan_rest_of(const scenario *s, plan_rest *out, boil_outcome *result);
void plan_rest_free(plan_rest *r);

/* The same in a scenario of the same text with other numbers: the bath as it was read, all else as it is there. Into jobs[] as many as
   r->scenario has, with the times from now. */
void plan_rest_drawn(const plan_rest *r, const scenario *drawn, boil_plant *plant, boil_plan_job jobs[]);

bool plan_rest_reads(const key *k); /* a key in whose place [now] says how the bath is; of NULL, which is none: it does not */

#endif
