/* commands/run/json.h -- the outcome of a run for other programs: SI, the unit in the name, names that stay. */
#ifndef COMMANDS_RUN_JSON_H
#define COMMANDS_RUN_JSON_H

#include <stdio.h>

#include "describe/outcome.h"

void run_json(const outcome *o, FILE *to);

#endif
