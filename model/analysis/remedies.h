/* analysis/remedies.h -- how much would have been enough, found by running the case again: for the findings that name it. */
#ifndef BOIL_ANALYSIS_REMEDIES_H
#define BOIL_ANALYSIS_REMEDIES_H

#include "boilback.h"
#include "simulate/run.h"

boil_remedies boil_remedies_unknown(void); /* NaN both */

#endif
