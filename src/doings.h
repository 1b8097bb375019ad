/* doings.h -- the verbs of the run sheet, each with its own words. */
#ifndef DOINGS_H
#define DOINGS_H

#include "acts.h"

/* Reads the doing of an act: kind, name and content of `act`, and its words for reports. False, with messages,
   otherwise. */
bool doing_read(acts *a, cursor *c, boil_act *act, act_line *said);

/* The number of a load's name, which is added when it is new; 0 and a message when it cannot be. */
int doing_name(acts *a, cursor *c);

#endif
