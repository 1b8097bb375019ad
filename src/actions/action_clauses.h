/* actions/action_clauses.h -- the clauses of an action, each its words and one quantity, read by one loop over a table. */
#ifndef ACTIONS_ACTION_CLAUSES_H
#define ACTIONS_ACTION_CLAUSES_H

#include "case/schedule.h"
#include "reading/quantity.h"

typedef struct {
    const char *words;
    const char *meaning; /* one line, no full stop, for the manual */
    unit_dimension dimension;
    bounds within; /* no unit: what is sane depends on the rest of the action, which checks it */
    size_t where;  /* in boil_action, double, SI; 0: the action makes something of it */
} action_clause;

typedef enum { ACTION_CLAUSE_READ, ACTION_CLAUSE_WRONG, ACTION_CLAUSE_UNKNOWN } action_clause_end;

/* Reads a part of an action as one of `count` clauses, into its place in `a` and into `said`, an item a clause, whose text
   is NULL until then. WRONG: with a message. */
action_clause_end action_clause_read(cursor *part, const action_clause *clauses, size_t count, quantity *said, boil_action *a);

/* False, with a message, when a clause was said before. */
bool action_clause_first(const cursor *part, const char *at, const char *words, bool said);

#endif
