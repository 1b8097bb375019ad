/* manual/key_text.h -- one key of the scenario language in words: what may be written, within which bounds, where it is
   needed. Empty where there is nothing to say. */
#ifndef MANUAL_KEY_TEXT_H
#define MANUAL_KEY_TEXT_H

#include "base/text.h"
#include "scenario/keys.h"
#include "scenario/scenario.h"

typedef TEXT_OF(400) key_text;

key_text key_form(const key *k);   /* "LENGTH|none" */
key_text key_bounds(const key *k); /* "0.1 m to 20 m (3.937 in to 787.4 in)" */
key_text key_needed(const key *k); /* "required", "give only one of 'altitude' and 'station pressure'" */

key_text key_range_text(unit_dimension d, const bounds *b); /* as key_bounds */
key_text key_dimension_form(unit_dimension d);              /* "MASS PER VOLUME" */

/* What holds where a scenario leaves a key out, had from the reader itself: it is given the shortest
   scenarios there are, one for each source of heat, and says what it took. */

#define DEFAULTS_CASES 3

typedef struct {
    scenario cases[DEFAULTS_CASES];
} defaults;

bool defaults_read(defaults *d); /* false, with a complaint, when the reader refuses one of them */
void defaults_free(defaults *d);

/* US and SI: "0.25 in (6.35 mm)", "65 % with gas, 100 % with electric"; empty where there is none. */
key_text defaults_of(const defaults *d, const key *k);

#endif
