/* habits/pour.h -- "add 5 gal of water over 5 min" as "water 5 gal over 5 min". */
#ifndef HABITS_POUR_H
#define HABITS_POUR_H

#include "reading/reword.h"

/* Where "add" or "pour" stands at a place, what is added comes first. */
void pour_add_first(reword *w, size_t at);

#endif
