/* scenario/run_sheet.h -- the actions of a CSV file: the header time,action, then a row an action. */
#ifndef SCENARIO_RUN_SHEET_H
#define SCENARIO_RUN_SHEET_H

#include "scenario/schedule.h"

/* Reads all rows. A cell may be quoted; an action that is not may hold commas, and is then the whole rest of its row.
   Empty rows, and rows that start with "#", are passed over. */
void run_sheet_read(const source *s, schedule_draft *d, messages *m);

#endif
