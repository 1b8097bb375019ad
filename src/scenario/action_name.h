/* scenario/action_name.h -- an action in the words of the person who planned it. */
#ifndef SCENARIO_ACTION_NAME_H
#define SCENARIO_ACTION_NAME_H

#include "scenario/scenario.h"

typedef struct {
    char text[128];
} action_name;

action_name action_name_of(const scenario *s,
                           size_t action); /* "load 100 lb of 1/4 in plate"; the kind alone when no words were kept */

#endif
