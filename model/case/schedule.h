/* case/schedule.h -- what is done, and when: actions in SI, expanded ("every" unrolled by the caller) and ordered. */
#ifndef BOIL_CASE_SCHEDULE_H
#define BOIL_CASE_SCHEDULE_H

#include <stdbool.h>
#include <stddef.h>

#include "boilback.h"
#include "case/load.h"
#include "properties/solution.h"

/* The same, breaks and all, to be freed by boil_schedule_free also after a failure. BOIL_OK or BOIL_NO_MEMORY. */
boil_outcome boil_schedule_copy(const boil_schedule *s, boil_schedule *out);

bool boil_action_takes(boil_action_kind kind); /* bath liquid out of the tank: bail or drain */

/* The action that `waiting`, an index, follows; its own index where there is none. */
size_t boil_schedule_followed(const boil_schedule *s, size_t waiting);

#endif
