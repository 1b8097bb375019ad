/* pouring.h -- the acts that add something: water, dry salts, ready-mixed liquid. */
#ifndef POURING_H
#define POURING_H

#include "acts.h"

bool pouring_water(acts *a, cursor *c, boil_act *act, act_line *said);
bool pouring_salts(acts *a, cursor *c, boil_act *act, act_line *said);
bool pouring_liquid(acts *a, cursor *c, boil_act *act, act_line *said);

#endif
