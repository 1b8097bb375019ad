/* size_table.h -- the smallest heat for one load into the steady boil, by how heavy and how thick it is. */
#ifndef SIZE_TABLE_H
#define SIZE_TABLE_H

#include <stdbool.h>
#include <stdio.h>

#include "quantity.h"
#include "scenario.h"
#include "show.h"

/* Half, once, and twice the load in question (NULL: the scenario's limit), in plates of an eighth of an inch to an inch.
   BOIL_OK or a failure, after which nothing was written. */
int size_table(const scenario *s, double limit_s, const quantity *heaviness, show_system system, bool as_json, FILE *to);

#endif
