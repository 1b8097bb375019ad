/* commands/size/table.h -- the smallest heat for one load into the steady boil, by how heavy and how thick it is. */
#ifndef COMMANDS_SIZE_TABLE_H
#define COMMANDS_SIZE_TABLE_H

#include <stdbool.h>
#include <stdio.h>

#include "base/format.h"
#include "reading/quantity.h"
#include "scenario/scenario.h"

/* Half, once, and twice the load in question (NULL: the scenario's limit), in plates of an eighth of an inch to an inch.
   BOIL_OK or a failure, after which nothing was written. */
int size_table(const scenario *s, double limit_s, const quantity *heaviness, unit_system system, bool as_json, FILE *to);

#endif
