/* scenario/settings.h -- from the lines "key = value" to the plant. */
#ifndef SCENARIO_SETTINGS_H
#define SCENARIO_SETTINGS_H

#include "scenario/scenario.h"

/* A setting as found: where its key stands, and its value. */
typedef struct {
    bool found, good; /* good: its value was read without a mistake */
    const char *key_at;
    cursor value; /* without comment and outer blanks */
} setting_line;

/* Reads one setting into the scenario's field. False, with a message, when the value is wrong; the field is then
   unchanged. */
bool setting_read(const key *k, const setting_line *line, scenario *out);

#endif
