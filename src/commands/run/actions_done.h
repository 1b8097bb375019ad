/* commands/run/actions_done.h -- the run sheet as the person at the tank works it: what is done, by the clock, the lifting of
   loads as well, and what is to be expected of each. */
#ifndef COMMANDS_RUN_ACTIONS_DONE_H
#define COMMANDS_RUN_ACTIONS_DONE_H

#include "describe/carried_out.h"

/* More than this, and what one line of the scenario asks for is one order, done many times. */
#define ORDERS_SINGLE_MAX ((size_t)120)

typedef struct {
    double time_s, last_s; /* the first time and the last: the same for an order done once */
    size_t times;
    size_t action;         /* in the schedule: the first of them */
    bool lifting;          /* the load of that action comes out again */
    carried_out_line line; /* how it goes, of many the worst; neither load nor addition when that is not known */
} run_action;

/* By the first time, to be freed by the caller; NULL when there are none, or memory is refused. */
run_action *run_actions_of(const carried_out *o, size_t *count);

#endif
