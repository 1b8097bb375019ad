/* plan/order.h -- parts put into dips, and dips into an order: what the search changes and the decoder turns into times. */
#ifndef BOIL_PLAN_ORDER_H
#define BOIL_PLAN_ORDER_H

#include "plan/plan.h"

typedef struct {
    size_t parts_count, dips_count;
    size_t *parts; /* dip by dip */
    size_t *first; /* of each dip among them, and one place more that says where the last ends */
} boil_plan_order;

/* Room for so many parts, each a dip of its own, in the order of their numbers. BOIL_OK, or BOIL_NO_MEMORY with nothing to free. */
boil_outcome boil_plan_order_begin(boil_plan_order *o, size_t parts);
void boil_plan_order_free(boil_plan_order *o);
void boil_plan_order_copy(const boil_plan_order *from, boil_plan_order *to); /* both of as many parts */

size_t boil_plan_order_size(const boil_plan_order *o, size_t dip); /* parts in it */

/* One dip moved to another place, the others closing up. */
void boil_plan_order_move(boil_plan_order *o, size_t dip, size_t to);
void boil_plan_order_swap(boil_plan_order *o, size_t a, size_t b);

/* One part out of its dip and into another; one that is left empty is gone. */
void boil_plan_order_join(boil_plan_order *o, size_t dip, size_t part, size_t into);

/* One part out of its dip and into one of its own, before the dip `before`. */
void boil_plan_order_part(boil_plan_order *o, size_t dip, size_t part, size_t before);

#endif
