/* scenario/action_load.h -- the act "load": mass and metal, shape, clauses. */
#ifndef SCENARIO_ACTION_LOAD_H
#define SCENARIO_ACTION_LOAD_H

#include "scenario/actions.h"

/* A clause behind the shape: its words and one quantity. */
typedef struct {
    const char *words;
    const char *meaning; /* one line, no full stop */
    unit_dimension dimension;
    bounds within;
    size_t where;        /* in boil_load */
} loading_clause;

typedef struct {
    const char *words;
    const char *size;    /* what its size measures */
    boil_shape shape;
} loading_shape;

/* For the manual; NULL beyond the last. The clause "as NAME" stands apart. */
const loading_clause *loading_clauses_listed(size_t index);
const loading_shape *loading_shapes_listed(size_t index);

bool loading_read(acts *a, cursor *c, boil_act *act, act_line *said);

#endif
