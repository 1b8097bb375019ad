/* run_json.h -- the outcome of a run for other programs: SI, the unit in the name, names that stay. */
#ifndef RUN_JSON_H
#define RUN_JSON_H

#include <stdio.h>

#include "outcome.h"

void run_json(const outcome *o, FILE *to);

#endif
