/* manual/defaults.h -- what holds where a scenario leaves a key out, had from the reader itself: it is given the shortest
   scenarios there are, one for each source of heat, and says what it took. */
#ifndef MANUAL_DEFAULTS_H
#define MANUAL_DEFAULTS_H

#include <stdbool.h>

#include "manual/key_text.h"
#include "scenario/scenario.h"

#define DEFAULTS_CASES 3

typedef struct {
    scenario cases[DEFAULTS_CASES];
} defaults;

bool defaults_read(defaults *d); /* false, with a complaint, when the reader refuses one of them */
void defaults_free(defaults *d);

/* US and SI: "0.25 in (6.35 mm)", "65 % with gas, 100 % with electric"; empty where there is none. */
key_text defaults_of(const defaults *d, const key *k);

#endif
