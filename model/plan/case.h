/* plan/case.h -- all that a timetable hangs on, and which parts may hang together. */
#ifndef BOIL_PLAN_CASE_H
#define BOIL_PLAN_CASE_H

#include "plan/lessons.h"

/* Nothing in it changes while timetables are made, so that threads may share it. */
typedef struct {
    const boil_plan_problem *problem;
    const boil_plan_bath *bath;
    const boil_plan_part *parts;
    size_t parts_count;
    const boil_plan_lessons *lessons; /* NULL: none */
} boil_plan_case;

const boil_plan_job *boil_plan_job_of(const boil_plan_case *c, size_t part);
double boil_plan_part_mass(const boil_plan_part *p); /* kg, basket too */

/* The most heat, J, that one dip may take, by H1. */
double boil_plan_most_heat(const boil_plan_bath *b);

/* Whether one more part may hang with these: all say so, all can be done by then, and the bath bears it. */
bool boil_plan_may_share(const boil_plan_case *c, const size_t parts[], size_t count, size_t more);

#endif
