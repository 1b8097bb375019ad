/* describe/costs.h -- what a run costs, by the prices of its scenario. */
#ifndef DESCRIBE_COSTS_H
#define DESCRIBE_COSTS_H

#include "describe/carried_out.h"

typedef enum { COST_HEAT, COST_MIXER, COST_WATER, COST_SALTS, COST_LIQUID, COST_WASTE, COST_LABOUR, COST_ITEMS } cost_item;

typedef struct {
    double of[COST_ITEMS]; /* NaN: its price is not stated */
    double total;          /* of those whose price is; NaN: none is */
} costs;

costs costs_of(const carried_out *o);

#endif
