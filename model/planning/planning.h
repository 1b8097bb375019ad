/* planning/planning.h -- a plan in the making: what is known of bath and parts, and what proofs taught. */
#ifndef BOIL_PLANNING_PLANNING_H
#define BOIL_PLANNING_PLANNING_H

#include "plan/case.h"
#include "plan/order.h"
#include "plan/parts.h"

/* What is found of a bath above NOTICE; static text. */
typedef struct {
    const char *title;
    boil_severity severity;
} boil_plan_fault;

enum { BOIL_PLAN_IDLE_KEPT = 8 };

typedef struct {
    const boil_plant *plant;
    const boil_plan_problem *problem;
    boil_run_options options; /* tolerance and whom to tell; all else is the plan's own */
    boil_plan_bath bath;
    double bath_K;
    boil_plan_parts parts;
    boil_plan_lessons lessons;
    boil_plan_fault idle[BOIL_PLAN_IDLE_KEPT]; /* before anything goes in, once it was looked at (planning/idle.h) */
    size_t idle_count;
    bool was_idle;
} boil_planning;

/* Probes the bath and each part. Plant and problem are kept by reference. BOIL_BAD_INPUT: the problem is wrong, or comes to more than
   BOIL_PLAN_PARTS_MAX parts; else as boil_plan_probe_bath. Nothing is to be freed then. */
boil_outcome boil_planning_begin(const boil_plant *p, const boil_plan_problem *of, const boil_run_options *o,
                                 boil_planning *out);
/* The same jobs, split and probed for another view of the same bath; what proofs taught of dips is left behind. As above. */
boil_outcome boil_planning_again(const boil_planning *of, const boil_plan_bath *bath, boil_planning *out);

void boil_planning_free(boil_planning *g);

/* Good until the planning learns or is freed. */
boil_plan_case boil_planning_case(const boil_planning *g);

#endif
