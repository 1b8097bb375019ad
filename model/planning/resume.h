/* planning/resume.h -- a shift that is under way planned on: what hangs in the tank already, and a bath that was read.

   What hangs keeps its place until it is lifted, and no load goes in before it takes no heat worth naming: so no run has to know how warm
   it was. Minutes count from where a part alone would have been hot through, in a bath that boils; in one that does not, from its
   boil on. What is still missing of its heat then makes the boil come later. */
#ifndef BOIL_PLANNING_RESUME_H
#define BOIL_PLANNING_RESUME_H

#include "planning/planning.h"

/* A basket that hangs there. */
typedef struct {
    boil_load load;         /* as it went in */
    double least_s, most_s; /* of its job: that it hangs once it is hot through */
    double since_s;         /* 0 or less */
    double out_s;           /* its lift was planned for then, and is: from 0; NaN: as soon as it has its minutes */
    size_t dip;             /* baskets of one number hang and leave together; the numbers run from 0 without a gap */
} boil_plan_hung;

/* Where the shift stands, beside the bath as it was read. */
typedef struct {
    const boil_plan_hung *hung;
    size_t count;
    size_t dips;     /* that hang, 0 to the positions */
    double set_K;    /* the boiling point that is held */
    double salts_kg; /* in the bath as the shift began; 0: nobody knows */
} boil_plan_under_way;

/* Into g, begun for the plant as it was read, how much water is missing for the boiling point that is held, and how many salts
   are gone; and that the boil, where it is not there, comes later for what hangs. Into out[], a place for each dip, what
   decoders have to know of it, and when each has had its most, from then on it is overdone; into *warm_s when the next load may
   go in. BOIL_OK, BOIL_NO_MEMORY, or a failure of a run. */
typedef struct {
    boil_plan_hanging_dip dip;
    double most_s;
} boil_plan_resumed;
boil_outcome boil_plan_resume(boil_planning *g, const boil_plan_under_way *w, boil_plan_resumed out[], double *warm_s);

/* The same, and heeded in the problem and the jobs that g was begun for: lifts[], a place for each dip, hang there, and no job goes in
   before the next load may. */
boil_outcome boil_plan_take_up(boil_planning *g, const boil_plan_under_way *w, boil_plan_problem *of, boil_plan_job jobs[],
                               boil_plan_resumed out[], boil_plan_hanging_dip lifts[]);

#endif
