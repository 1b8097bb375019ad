/* schedule/attendance.h -- the comings and goings of loads, checked: who is in the bath as the acts go by, and who hangs where. */
#ifndef SCHEDULE_ATTENDANCE_H
#define SCHEDULE_ATTENDANCE_H

#include "schedule/draft.h"

/* Goes through the acts, which are in order; each load is told when it comes out. False when memory is refused. */
bool attendance_check(schedule_draft *a);

#endif
