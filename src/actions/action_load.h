/* actions/action_load.h -- the action "load": mass and metal, shape, clauses. */
#ifndef ACTIONS_ACTION_LOAD_H
#define ACTIONS_ACTION_LOAD_H

#include "scenario/schedule.h"

/* A clause behind the shape: its words and one quantity. */
typedef struct {
    const char *words;
    const char *meaning; /* one line, no full stop */
    unit_dimension dimension;
    bounds within;
    size_t where; /* in boil_load */
} action_load_clause;

typedef struct {
    const char *words;
    const char *size; /* what its size measures */
    boil_shape shape;
} action_load_shape;

/* For the manual; NULL beyond the last. The clause "as NAME" stands apart. */
const action_load_clause *action_load_clauses_listed(size_t index);
const action_load_shape *action_load_shapes_listed(size_t index);

bool action_load_read(action_list *a, cursor *c, boil_action *action, action_line *said);

#endif
