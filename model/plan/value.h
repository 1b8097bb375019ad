/* plan/value.h -- what a timetable is worth: the aims of plan/plan.h, the first of which decides. */
#ifndef BOIL_PLAN_VALUE_H
#define BOIL_PLAN_VALUE_H

#include "plan/case.h"

/* Of one whose dips and pours stand. Every aim a whole number, so that two that are the same by rounding are the same. */
boil_plan_value boil_plan_value_of(const boil_plan_case *c, const boil_plan_timetable *t);

#endif
