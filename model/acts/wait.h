/* acts/wait.h -- when an act is done that waits for the bath, or follows another act. */
#ifndef BOIL_ACTS_WAIT_H
#define BOIL_ACTS_WAIT_H

#include <stdbool.h>

#include "boilback.h"

/* What the person at the tank sees. */
typedef struct {
    bool boiling;
    double since_s; /* when it began to; -infinity: it has always been so */
} boil_wait_bath;

/* The moment at which an act is due if the bath stays as it is; it may have passed. Infinite: not as long as it stays so.
   earliest_s: its own time; where it follows another, a time after that (BOIL_WAIT_BACK: the load is in). */
double boil_wait_due(const boil_wait *w, double earliest_s, const boil_by_hand *hand, const boil_wait_bath *b);

/* Whether it makes sense by itself. */
bool boil_wait_is_sound(const boil_wait *w);

#endif
