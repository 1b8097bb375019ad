/* scenario/action_pour.h -- the acts that add something: water, dry salts, ready-mixed liquid. */
#ifndef SCENARIO_ACTION_POUR_H
#define SCENARIO_ACTION_POUR_H

#include "scenario/actions.h"

bool pouring_water(acts *a, cursor *c, boil_act *act, act_line *said);
bool pouring_salts(acts *a, cursor *c, boil_act *act, act_line *said);
bool pouring_liquid(acts *a, cursor *c, boil_act *act, act_line *said);

#endif
