/* sizing/most_heat.h -- the most heat with which a case breaks none of what is asked, in all that is done. It breaks nothing
   with least_W; near_W is more, and what one set of laws allows. */
#ifndef BOIL_SIZING_MOST_HEAT_H
#define BOIL_SIZING_MOST_HEAT_H

#include "sizing/holding.h"

/* W: leaves that freeboard, m, by the grave and the sudden laws. left_m is what is left with least_W; what a straight line
   between two heats says is tried, so the answer is on the lower side, by a per cent or two. */
boil_outcome boil_most_heat_leaving(const boil_holding_case *of, double freeboard_m, double least_W, double left_m,
                                    double near_W, double *heat_W);

/* W: the bath stays in its band, and known, by all laws; to two per cent from the lower side. near_W itself where it does so
   with that. */
boil_outcome boil_most_heat_in_band(const boil_holding_case *of, double least_W, double near_W, double *heat_W);

#endif
