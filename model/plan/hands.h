/* plan/hands.h -- one hoist, and people who have breaks: when a move can be made. */
#ifndef BOIL_PLAN_HANDS_H
#define BOIL_PLAN_HANDS_H

#include "plan/plan.h"

/* Dips that hang, or whose last move may still stand in somebody's way. */
typedef struct {
    double enters_s, leaves_s;
} boil_plan_hanging;

typedef struct {
    const boil_plan_problem *problem;
    const boil_plan_hanging *list;
    size_t count;
} boil_plan_hands;

/* The end of what keeps the hoist from moving all through [from, to]; NaN: nothing does. In *is_break whether that is a break. */
double boil_plan_hands_busy(const boil_plan_hands *h, double from_s, double to_s, bool *is_break);

/* The next whole second; one that a rounding misses is it. */
double boil_plan_hands_second(double s);

/* The first whole second from from_s on at which a lift can be made. */
double boil_plan_hands_lift(const boil_plan_hands *h, double from_s);

/* The longest stretch of [from, to] that no break cuts; its length is 0 or more. */
boil_break boil_plan_hands_longest(const boil_plan_problem *p, double from_s, double to_s);

#endif
