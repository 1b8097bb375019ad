/* simulate/run.h -- a schedule carried out on a plant: what happened, moment by moment and action by action. SI; times from the
   start. A time that never came is NaN. The result is plain data: nothing in it points into the plant or the schedule. */
#ifndef BOIL_SIMULATE_RUN_H
#define BOIL_SIMULATE_RUN_H

#include <stdbool.h>
#include <stddef.h>

#include "boilback.h"
#include "case/plant.h"
#include "case/schedule.h"

#endif
