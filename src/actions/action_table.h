/* actions/action_table.h -- the verbs of the run sheet, each with its own words. */
#ifndef ACTIONS_ACTION_TABLE_H
#define ACTIONS_ACTION_TABLE_H

#include "scenario/schedule.h"

/* A verb as the manual describes it. */
typedef struct {
    const char *verb;
    const char *form;    /* what follows the verb: capitals stand for a value, brackets for what may be left out */
    const char *meaning; /* one line, no full stop */
    bool (*read)(action_list *a, cursor *c, boil_action *action, action_line *said);
} action_type;

const action_type *action_type_listed(size_t index); /* in the order of the manual; NULL beyond the last */

/* Reads the doing of an action: kind, name and content of `action`, and its words for reports. False, with messages,
   otherwise. */
bool action_read(action_list *a, cursor *c, boil_action *action, action_line *said);

/* The number of a load's name, which is added when it is new; 0 and a message when it cannot be. */
int action_load_name(action_list *a, cursor *c);

#endif
