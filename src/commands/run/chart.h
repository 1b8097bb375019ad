/* commands/run/chart.h -- temperature and level over time in plain characters, 80 columns wide. */
#ifndef COMMANDS_RUN_CHART_H
#define COMMANDS_RUN_CHART_H

#include <stdio.h>

#include "base/format.h"
#include "describe/carried_out.h"

void chart_print(const carried_out *o, unit_system s, FILE *to); /* nothing when the run has no trace */

#endif
