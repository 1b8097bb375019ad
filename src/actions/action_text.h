/* actions/action_text.h -- what is said of an action, put together bit by bit. */
#ifndef ACTIONS_ACTION_TEXT_H
#define ACTIONS_ACTION_TEXT_H

#include <stdbool.h>

#include "base/format.h"

typedef struct {
    char text[500];
} action_text;

void action_text_add(action_text *t, const char *format, ...) __attribute__((format(printf, 2, 3)));

typedef enum { ACTION_US, ACTION_SI, ACTION_BOTH } action_units; /* both: the one, and the other in brackets */

typedef struct {
    char text[100];
} action_amount;
action_amount action_amount_of(action_units u, unit_dimension d, double si);

/* "Boil stops at 6:27, back after 4.5 min". A moment that is NaN never comes. */
void action_text_add_boil(action_text *t, double start_s, bool was_quiet, double lost_s, double recovery_s);

#endif
