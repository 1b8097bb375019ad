/* analysis/remedies.h -- how much would have been enough, found by running the case again: for the findings that name it. */
#ifndef BOIL_ANALYSIS_REMEDIES_H
#define BOIL_ANALYSIS_REMEDIES_H

#include "simulate/run.h"

typedef struct {
    double heat_W;    /* smallest heat to the tank with which a run that ends quiet would end boiling */
    double liquid_kg; /* the first addition of liquid that stops the boil for longer than the limit: largest that would not */
} boil_remedies;

boil_remedies boil_remedies_unknown(void); /* NaN both */

/* Of a run of this case with these options. Each is NaN where it is not wanting, or nothing tried would do. */
boil_remedies boil_remedies_of(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, const boil_history *h);

#endif
