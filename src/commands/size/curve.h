/* commands/size/curve.h -- the case carried out with many heats: how recovery and rim go with them. */
#ifndef COMMANDS_SIZE_CURVE_H
#define COMMANDS_SIZE_CURVE_H

#include "boilback.h"
#include "commands/size/answer.h"

typedef enum {
    SIZE_POINT_BELOW, /* stays below the rim */
    SIZE_POINT_OVER,  /* boils over, at the central mixing time */
    SIZE_POINT_BEYOND /* left what is known of the bath before its end */
} size_point_kind;

typedef struct {
    double heat_W;
    double slowest_s; /* recovery; NaN: a boil was never back, or the run did not come so far */
    size_point_kind kind;
} size_point;

enum { SIZE_CURVE_POINTS = 33 };

/* From the calm losses to beyond the window, closer together at first; the answer's own heat is one of them. */
typedef struct {
    double from_W, to_W;
    size_t count;
    size_point points[SIZE_CURVE_POINTS];
} size_curve;

/* BOIL_OK, or why a run could not be carried out. */
boil_outcome size_curve_of(const size_answer *a, size_curve *out);

#endif
