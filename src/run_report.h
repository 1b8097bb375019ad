/* run_report.h -- the outcome of a run for the person at the tank: the verdict first, all of it read in a minute. */
#ifndef RUN_REPORT_H
#define RUN_REPORT_H

#include <stdbool.h>
#include <stdio.h>

#include "outcome.h"
#include "show.h"

typedef struct {
    show_system system;
    bool colour;
    bool verbose; /* with the statistics of the run */
} report_style;

void report(const outcome *o, const report_style *style, FILE *to);

#endif
