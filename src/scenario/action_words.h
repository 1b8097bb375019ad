/* scenario/action_words.h -- an action by the clock: what there is to know beyond the words of the person who planned it. */
#ifndef SCENARIO_ACTION_WORDS_H
#define SCENARIO_ACTION_WORDS_H

#include "scenario/scenario.h"

typedef enum { ACTION_US, ACTION_SI, ACTION_BOTH } action_units; /* both: the one, and the other in brackets */

typedef struct {
    char text[500];
} action_words;

/* "at 70.0 degF, out at 9:20, basket 7.00 lb"; nothing for actions that say all by themselves. */
action_words action_details(const scenario *s, size_t action, action_units units);

/* What holds for it whenever it is done: "at 70.0 degF, in for 15 min, basket 7.00 lb". */
action_words action_details_of_any(const scenario *s, size_t action, action_units units);

#endif
