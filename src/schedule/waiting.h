/* schedule/waiting.h -- what an act waits for beyond the clock, as it is written. False, with a message, on a mistake. */
#ifndef SCHEDULE_WAITING_H
#define SCHEDULE_WAITING_H

#include "boilback.h"
#include "reading/quantity.h"

/* "when boiling [for TIME]", "when quiet [for TIME]", if that comes next. */
bool waiting_state_read(cursor *c, boil_wait *w);

/* "+TIME", that long after the act before it, if that comes next. */
bool waiting_plus_read(cursor *c, boil_wait *w);

/* Whether nobody can say beforehand when it is done. */
bool waiting_is_open(const boil_wait *w);

#endif
