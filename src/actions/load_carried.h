/* actions/load_carried.h -- what a load brings in with it: water in the hollows of its pieces, and whether it came through the rinse;
   and where it hangs. Closed hollows are refused. */
#ifndef ACTIONS_LOAD_CARRIED_H
#define ACTIONS_LOAD_CARRIED_H

#include "actions/action.h"

typedef struct {
    quantity hollows;                     /* text NULL: not said */
    const char *drained_at, *straight_at; /* NULL: not said */
    int position;                         /* 0: not said */
    bool in_all;                          /* the hollows' volume is that of all pieces */
} load_carried;

/* For the manual: a clause as it is written, and what it means; form NULL beyond the last. */
typedef struct {
    const char *form, *meaning;
} load_carried_clause;
load_carried_clause load_carried_listed(size_t index);

/* Reads a part of a load as one of these clauses. WRONG: with a message. */
action_clause_end load_carried_read(cursor *part, const action_reader *r, load_carried *c);

/* Puts it into the load, whose mass and shape are known. rinse_said, at_said: its clauses 'rinse' and 'at'. False, with messages. */
bool load_carried_settle(const load_carried *c, const cursor *place, const boil_plant *p, bool rinse_said, bool at_said,
                         boil_load *l);

#endif
