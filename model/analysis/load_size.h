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

/* Largest number of times as heavy as planned all loads may be so that it holds; to 0.2 %, from the lower side.
   BOIL_NO_ROOT when not even a thousandth does; BOIL_OUT_OF_RANGE when a run leaves the properties' range first. */
boil_outcome boil_load_size_heaviest(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, double limit_s,
                                     double *times);

/* A plant whose water is made up automatically: its own control if it has one, else an on/off valve of three times the calm
   boil-off, cold, at the starting boiling point, shut while the bath does not boil. */
boil_outcome boil_load_size_watered(const boil_plant *p, boil_plant *out);

/* One load like this every interval_s, eight more than are in the bath at once; one without a time of its own stays in until
   the next. To be freed, also after BOIL_NO_MEMORY. */
boil_outcome boil_load_size_repeated(const boil_load *l, double interval_s, double limit_s, boil_schedule *out);

/* Shortest interval, s, between loads like this, on the watered plant, so that it holds, no load meets a quiet bath, and the
   boiling bath stays in its temperature band; to 1 %, from the upper side. BOIL_NO_ROOT when twelve hours are too short. */
boil_outcome boil_load_size_interval(const boil_plant *watered, const boil_load *l, const boil_run_options *o, double limit_s,
                                     double *interval_s);

/* Where no heat brings the boil back in time and stays below the rim, the change that makes one do both, to 2 %: the largest
   share of the loads' mass, or the smallest number of times the tank's area. BOIL_NO_ROOT: not even a hundredth, or
   sixteen times. */
boil_outcome boil_load_size_opening_load(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, double limit_s,
                                         double *share);
boil_outcome boil_load_size_opening_area(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, double limit_s,
                                         double *times);

#endif
