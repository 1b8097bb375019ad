/* run_csv.h -- the trace of a run, one row a step of time: SI, the unit in the column's name. */
#ifndef RUN_CSV_H
#define RUN_CSV_H

#include <stdio.h>

#include "run.h"

void run_csv(const boil_history *h, FILE *to);

#endif
