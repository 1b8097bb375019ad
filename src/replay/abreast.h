/* replay/abreast.h -- the clock of one run of a set laid on that of the likely one, so that what is done, the boil lost and the boil
   back fall together: when a boil comes back is uncertain by minutes, and by the clock one run's eruption would stand beside
   another's quiet. Between those moments time runs evenly. */
#ifndef REPLAY_ABREAST_H
#define REPLAY_ABREAST_H

#include "boilback.h"

typedef struct {
    double likely_s, other_s;
} abreast_moment;

typedef struct {
    abreast_moment *moments; /* both times rise; first and last are the ends of the likely run */
    size_t count;
} abreast;

/* To be freed by abreast_free; without memory the clocks are taken as one. */
abreast abreast_of(const boil_history *likely, const boil_history *other);
void abreast_free(abreast *a);

double abreast_other(const abreast *a, double likely_s); /* s, of the other run's clock */

/* The quiet spell of another run that answers to one of the likely run: as many before it, begun within ten minutes of it and by the
   same cause. NULL: none. */
const boil_quiet_result *abreast_spell(const boil_history *likely, size_t spell, const boil_history *other);

#endif
