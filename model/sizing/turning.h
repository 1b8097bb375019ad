/* sizing/turning.h -- where an answer turns from no to yes, begun near it: a step at a time, twice as long each, until both are
   seen, then halved. */
#ifndef BOIL_SIZING_TURNING_H
#define BOIL_SIZING_TURNING_H

#include <stdbool.h>

#include "boilback.h"

/* Every number positive. */
typedef struct {
    boil_outcome (*ask)(void *context, double x, bool *yes); /* BOIL_OK, or a failure that ends the search */
    void *context;
    double near;
    double least, most; /* not sought beyond */
    bool rising;        /* yes above, no below */
    double precision;   /* the bracket's width, relative to its end that is no */
} boil_turning;

/* The end of the bracket that is yes, asked itself. BOIL_NO_ROOT: no yes between least and most. */
boil_outcome boil_turning_find(const boil_turning *t, double *yes);

#endif
