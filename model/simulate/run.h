/* simulate/run.h -- a schedule carried out on a plant: what happened, moment by moment and action by action. SI; times from the
   start. A time that never came is NaN. The result is plain data: nothing in it points into the plant or the schedule. */
#ifndef BOIL_SIMULATE_RUN_H
#define BOIL_SIMULATE_RUN_H

#include <stdbool.h>
#include <stddef.h>

#include "boilback.h"
#include "case/plant.h"
#include "case/schedule.h"

/* boil_run for a case that is known to make sense, or whose plant need not stand by itself: a part of a search. */
boil_outcome boil_run_unchecked(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, boil_history *out);

#endif
