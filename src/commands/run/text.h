/* commands/run/text.h -- the outcome of a run for the person at the tank: the verdict first, all of it read in a minute. */
#ifndef COMMANDS_RUN_TEXT_H
#define COMMANDS_RUN_TEXT_H

#include <stdbool.h>
#include <stdio.h>

#include "base/format.h"
#include "describe/outcome.h"

typedef struct {
    unit_system system;
    bool colour;
    bool verbose; /* with the statistics of the run */
} report_style;

void report(const outcome *o, const report_style *style, FILE *to);

#endif
