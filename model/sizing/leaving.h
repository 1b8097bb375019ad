/* sizing/leaving.h -- how much heat leaves a freeboard: more heat leaves less, so what one heat left tells of others, and near
   which one a freeboard is used up is read between two of them. */
#ifndef BOIL_SIZING_LEAVING_H
#define BOIL_SIZING_LEAVING_H

#include "sizing/holding.h"

typedef struct {
    double heat_W, freeboard_m;
    bool beyond; /* it left what is known */
} boil_left;

enum { BOIL_LEAVING_MOST = 64 }; /* what is asked beyond is forgotten, and asked again */

/* A case by some laws, and what its runs left so far. */
typedef struct {
    const boil_holding_case *of;
    boil_closures laws;
    size_t count;
    boil_left left[BOIL_LEAVING_MOST];
} boil_leaving;

/* With that heat, W, itself. */
boil_outcome boil_leaving_at(boil_leaving *l, double heat_W, boil_left *out);

/* Most heat, W, from from_W up, that leaves so much freeboard, m, to a per cent from the lower side: 0 when from_W is too much
   already. BOIL_NO_ROOT when none up to most_W is too much, BOIL_OUT_OF_RANGE when the run leaves what is known first. */
boil_outcome boil_leaving_most(boil_leaving *l, double from_W, double most_W, double freeboard_m, double *heat_W);

#endif
