/* plan/search.h -- a good order of dips, sought by changing one: late acceptance [Burke and Bykov, The late acceptance hill-climbing
   heuristic, Eur. J. Oper. Res. 258 (2017) 70; from memory] with restarts. What is found depends on case, seed and chain alone; it
   stops by count, never by the clock. */
#ifndef BOIL_PLAN_SEARCH_H
#define BOIL_PLAN_SEARCH_H

#include <stdint.h>

#include "plan/case.h"
#include "plan/order.h"

enum { BOIL_PLAN_CHAINS = 4 }; /* of one search: equally long, apart from each other */

typedef struct {
    uint64_t seed, chain;
    size_t tries; /* timetables made */
    /* Told every few hundred, and of all at the end; may be NULL. */
    bool (*keep_going)(void *context, const boil_plan_value *best, size_t tried);
    void *context;
} boil_plan_search;

/* As many tries as a chain makes for so many parts: 6000 and 600 a part, 40 000 at most (judgement: trials). */
size_t boil_plan_search_tries(size_t parts);

/* From an order, and what people would try first, to one that is no worse; it and its value take their places. BOIL_OK or
   BOIL_NO_MEMORY, and the order is as it was. */
boil_outcome boil_plan_search_run(const boil_plan_case *c, const boil_plan_search *s, boil_plan_order *order,
                                  boil_plan_value *value);

#endif
