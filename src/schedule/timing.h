/* schedule/timing.h -- when a line of a schedule is done: once, or again and again. */
#ifndef SCHEDULE_TIMING_H
#define SCHEDULE_TIMING_H

#include "schedule/breaks.h"

typedef struct {
    double from_s, to_s, period_s; /* period 0: once */
    boil_wait wait;                /* what it follows is not yet said */
    exceptions except;
} timing;

/* "1:30", "+5 min", "every 30 min from 1:00 to 3:00 except 2:00 to 2:15", each perhaps with what it waits for. False, with a
   message, on a mistake. */
bool timing_read(const moment_frame *f, const break_list *b, cursor *c, timing *t);

#endif
