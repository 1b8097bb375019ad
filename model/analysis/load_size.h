/* analysis/load_size.h -- how much steel: answers found by running the case itself, with the heat that is there or with as much
   as it takes. "Holds" means that every load has the boil back within the limit and that the bath stays below the rim. */
#ifndef BOIL_ANALYSIS_LOAD_SIZE_H
#define BOIL_ANALYSIS_LOAD_SIZE_H

#include "boilback.h"
#include "simulate/run.h"

/* A copy of the schedule with every load (parts, and a stated area) made so many times as heavy. To be freed, also after
   BOIL_NO_MEMORY. */
boil_outcome boil_load_size_scaled(const boil_schedule *s, double times, boil_schedule *out);

/* The tank with so many times the area, of the same shape, depth and level. */
boil_plant boil_load_size_widened(const boil_plant *p, double times);

#endif
