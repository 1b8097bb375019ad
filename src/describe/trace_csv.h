/* describe/trace_csv.h -- the trace of a run, one row a step of time: SI, the unit in the column's name. */
#ifndef DESCRIBE_TRACE_CSV_H
#define DESCRIBE_TRACE_CSV_H

#include <stdio.h>

#include "simulate/run.h"

void trace_csv(const boil_history *h, FILE *to);

#endif
