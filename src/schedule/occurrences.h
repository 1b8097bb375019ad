/* schedule/occurrences.h -- from a line of a schedule to each time it is done: "every" unrolled, portions one after another,
   what follows an act once for each time of that. */
#ifndef SCHEDULE_OCCURRENCES_H
#define SCHEDULE_OCCURRENCES_H

#include "schedule/draft.h"
#include "schedule/timing.h"

/* Enters all times of the last line of the draft, whose act stands at `place`; messages say what is wrong with them. */
void occurrences_enter(schedule_draft *a, const cursor *place, const timing *t, boil_action *action);

#endif
