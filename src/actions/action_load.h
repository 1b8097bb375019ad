/* actions/action_load.h -- the clauses of a load, for the manual. */
#ifndef ACTIONS_ACTION_LOAD_H
#define ACTIONS_ACTION_LOAD_H

#include "actions/action_clauses.h"

const action_clause *action_load_clause_listed(size_t index); /* NULL beyond the last; "as NAME" stands apart */

#endif
