/* case/schedule.h -- what is done, and when: actions in SI, expanded ("every" unrolled by the caller) and ordered. */
#ifndef BOIL_CASE_SCHEDULE_H
#define BOIL_CASE_SCHEDULE_H

#include <stdbool.h>
#include <stddef.h>

#include "boilback.h"
#include "case/load.h"
#include "properties/solution.h"

#endif
