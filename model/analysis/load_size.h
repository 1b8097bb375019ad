/* analysis/load_size.h -- how much steel: answers found by running the case itself, with the heat that is there or with as much
   as it takes. What "holds" means: sizing/holding.h. */
#ifndef BOIL_ANALYSIS_LOAD_SIZE_H
#define BOIL_ANALYSIS_LOAD_SIZE_H

#include "boilback.h"
#include "simulate/run.h"
#include "sizing/holding.h"

/* A copy of the schedule with every load (parts, and a stated area) made so many times as heavy. To be freed, also after
   BOIL_NO_MEMORY. */
boil_outcome boil_load_size_scaled(const boil_schedule *s, double times, boil_schedule *out);

/* Whether the schedule holds with its loads so many times as heavy, and loads like this at that interval: by all laws. */
boil_outcome boil_load_size_holds(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, double limit_s,
                                  double times, boil_holding *out);
boil_outcome boil_load_size_interval_holds(const boil_plant *p, const boil_load *l, const boil_run_options *o, double limit_s,
                                           double interval_s, boil_holding *out);

/* One such load alone, into the steady boil: by all laws. */
boil_outcome boil_load_size_alone(const boil_plant *p, const boil_load *l, const boil_run_options *o, double limit_s,
                                  boil_holding *out);

#define BOIL_LOAD_SIZE_LONGEST (4.0 * 3600) /* s: longer intervals are not sought */
#define BOIL_LOAD_SIZE_LIGHTEST 0.001       /* of the loads that were planned: lighter ones neither */

/* The shortest time, s, between equal loads for which there is room: of the tank's positions, and of the hand that lowers
   them. */
double boil_load_size_soonest(const boil_plant *p, const boil_load *l);

/* The tank with so many times the area, of the same shape, depth and level. */
boil_plant boil_load_size_widened(const boil_plant *p, double times);

#endif
