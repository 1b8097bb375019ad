/* base/bisection.h -- where an answer turns from no to yes, found by asking. */
#ifndef BOIL_BASE_BISECTION_H
#define BOIL_BASE_BISECTION_H

#include <stdbool.h>

#include "boilback.h"

/* Every number positive. */
typedef struct {
    boil_outcome (*ask)(void *context, double x, bool *yes); /* BOIL_OK, or a failure that ends the search */
    void *context;
    double from, most;
    double ratio;     /* of one number of the scan to the one before it; above 1, or below 1 to scan down */
    double precision; /* the bracket's width, relative to its larger end */
} boil_bisection;

/* Scans from `from` to the first yes, then halves the bracket: what happens beyond it does not matter, so the answer need
   not be yes for ever. Nor is it trusted between two numbers of the scan: they should lie close. *no and *yes are the ends
   of the bracket; *no is NaN when the first answer was yes. BOIL_NO_ROOT: no yes as far as `most`. */
boil_outcome boil_bisect(const boil_bisection *s, double *no, double *yes);

#endif
