/* actions/action_pour.h -- the actions that add something: water, dry salts, ready-mixed liquid. */
#ifndef ACTIONS_ACTION_POUR_H
#define ACTIONS_ACTION_POUR_H

#include "scenario/schedule.h"

bool action_pour_water(action_list *a, cursor *c, boil_action *action, action_line *said);
bool action_pour_salts(action_list *a, cursor *c, boil_action *action, action_line *said);
bool action_pour_liquid(action_list *a, cursor *c, boil_action *action, action_line *said);

#endif
