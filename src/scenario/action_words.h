/* scenario/action_words.h -- an action of a scenario in words: as the person planned it, and what there is to know beyond. */
#ifndef SCENARIO_ACTION_WORDS_H
#define SCENARIO_ACTION_WORDS_H

#include "actions/action_table.h"
#include "scenario/scenario.h"

typedef struct {
    char text[128];
} action_name;

/* "load 100 lb of 1/4 in plate"; the keyword alone when no words were kept. */
action_name action_name_of(const scenario *s, size_t action);
const char *action_name_of_load(const action_name *n); /* "100 lb of 1/4 in plate"; others whole */

action_view action_view_of(const scenario *s, size_t action, action_units units);

/* "at 70.0 degF, out at 9:20, basket 7.00 lb"; nothing for actions that say all by themselves. */
action_text action_details(const scenario *s, size_t action, action_units units);

#endif
