/* commands/size/load.h -- how much steel the heat that is there carries: the heaviest load, the shortest interval. */
#ifndef COMMANDS_SIZE_LOAD_H
#define COMMANDS_SIZE_LOAD_H

#include <stdio.h>

#include "commands/size/case.h"

/* Each writes its answer. BOIL_OK, or a failure, after which nothing was written. */
int size_heaviest(const size_case *c, unit_system s, bool as_json, FILE *to);
int size_interval(const size_case *c, unit_system s, bool as_json, FILE *to);

#endif
