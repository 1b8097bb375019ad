/* actions/action_table.h -- all actions of the scenario language. */
#ifndef ACTIONS_ACTION_TABLE_H
#define ACTIONS_ACTION_TABLE_H

#include "actions/action.h"

extern const action_type action_load, action_lift, action_water, action_salts, action_liquid, action_heat, action_mixer,
    action_lid, action_exhaust;

/* By kind, the keywords of what adds something, for tables of words; the others are NULL. */
extern const char *const action_addition_words[BOIL_ACTION_LIQUID + 1];

const action_type *action_type_listed(size_t index); /* in the order of the manual; NULL beyond the last */
const action_type *action_type_of(boil_action_kind kind);
double action_takes_s(const boil_action *a);           /* to put in, to pour; 0: it is done at once */
const boil_load *action_load_of(const boil_action *a); /* NULL: it is none */

/* Reads an action: kind, name and content of `a`, and its words for reports. False, with messages, otherwise. */
bool action_read(action_reader *r, cursor *c, boil_action *a, action_line *line);

#endif
