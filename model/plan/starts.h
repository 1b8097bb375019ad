/* plan/starts.h -- orders that a person would try first: where a search begins, and what it must beat. */
#ifndef BOIL_PLAN_STARTS_H
#define BOIL_PLAN_STARTS_H

#include "plan/case.h"
#include "plan/order.h"

typedef enum {
    BOIL_PLAN_BY_LIST, /* as the jobs stand there: first come, first served */
    BOIL_PLAN_BY_DUE,
    BOIL_PLAN_BY_LONGEST,
    BOIL_PLAN_BY_HEAVIEST,
    BOIL_PLAN_BY_EARLIEST_AND_DUE,
    BOIL_PLAN_BY_EARLIEST_AND_LONGEST,
    BOIL_PLAN_RULES
} boil_plan_rule;

/* The case's parts by a rule, each alone or, packed, with one of the last few dips that takes it. `o` was begun for as many parts. */
void boil_plan_start(const boil_plan_case *c, boil_plan_rule rule, bool packed, boil_plan_order *o);

#endif
