/* cli/argument.h -- values of options, read by a scenario's rules. Each complains and returns false on a mistake. */
#ifndef CLI_ARGUMENT_H
#define CLI_ARGUMENT_H

#include <stdbool.h>

#include "scenario/scenario.h"

/* One dimension; nothing happens when text is NULL. */
bool argument_quantity(const char *option, const char *text, unit_dimension d, const bounds *within, double *si);
bool argument_number(const char *option, const char *text, const bounds *within, double *x);

/* Whatever a reader of the scenario language makes of it, up to its end. */
bool argument_read(const char *option, const char *text, bool (*read)(cursor *c, void *into), void *into);

/* A whole number. */
bool argument_count(const char *option, const char *text, const bounds *within, unsigned long *n);

/* A quantity of either dimension, each within its own bounds. */
bool argument_either(const char *option, const char *text, unit_dimension one, const bounds *within_one, unit_dimension other,
                     const bounds *within_other, quantity *q);

/* A setting of the scenario's table: its value goes where the table says. `into->settings` has room for all keys. */
bool argument_setting(const char *option, const char *text, const key *k, scenario *into);

#endif
