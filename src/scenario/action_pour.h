/* scenario/action_pour.h -- the acts that add something: water, dry salts, ready-mixed liquid. */
#ifndef SCENARIO_ACTION_POUR_H
#define SCENARIO_ACTION_POUR_H

#include "scenario/actions.h"

bool action_pour_water(acts *a, cursor *c, boil_action *act, action_line *said);
bool action_pour_salts(acts *a, cursor *c, boil_action *act, action_line *said);
bool action_pour_liquid(acts *a, cursor *c, boil_action *act, action_line *said);

#endif
