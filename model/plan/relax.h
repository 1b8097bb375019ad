/* plan/relax.h -- where no plan was found: what would have to give, one thing at a time, as little as will do. By the search's own
   knowledge of the bath, with short searches from the best order: what works is to be carried out (planning/relaxed.h), and that
   something does not help is not proved. */
#ifndef BOIL_PLAN_RELAX_H
#define BOIL_PLAN_RELAX_H

#include <stdint.h>

#include "plan/case.h"
#include "plan/order.h"

typedef enum {
    BOIL_PLAN_GIVES_END,       /* the shift is over later: when, s */
    BOIL_PLAN_GIVES_MUST,      /* a job need not be out when it is due */
    BOIL_PLAN_GIVES_JOB,       /* or is left out */
    BOIL_PLAN_GIVES_POSITIONS, /* one more: how many then */
    BOIL_PLAN_GIVES_HEAT,      /* times as much to the tank */
    BOIL_PLAN_GIVES_LIMIT,     /* of recovery, s, and the heaviest dip in step */
    BOIL_PLAN_GIVES_HOIST      /* one move in half the time, s */
} boil_plan_gives;

typedef enum { BOIL_PLAN_UNPROVED, BOIL_PLAN_PROVED, BOIL_PLAN_DISPROVED } boil_plan_proven;

typedef struct {
    boil_plan_gives what;
    size_t job; /* of what concerns one */
    double value;
    bool works;
    double last_out_s;      /* then */
    boil_plan_proven proof; /* by runs; disproved: the plan that was made then does not hold */
} boil_plan_relaxation;

#define BOIL_PLAN_RELAXATIONS_MAX ((size_t)60)
#define BOIL_PLAN_GIVES_TIMES 2.0 /* of heat, or of a limit, at the most: nobody gives more for one shift; judgement */

/* Gives it in a problem and the jobs that it has; what is about the bath, or a job that is left out, is for the caller. */
void boil_plan_relax_shift(const boil_plan_relaxation *r, boil_plan_problem *p, boil_plan_job jobs[]);

/* heater_W: what the fire gives the tank. In the order of the kinds; jobs are tried only where that many have room. BOIL_OK or
   BOIL_NO_MEMORY. */
boil_outcome boil_plan_relax(const boil_plan_case *c, const boil_plan_order *best, double heater_W, uint64_t seed,
                             boil_plan_relaxation list[BOIL_PLAN_RELAXATIONS_MAX], size_t *count);

#endif
