/* commands/explore/csv.h -- the file of a study's rows: names of columns, then a row a run, in SI. The first row says in its last
   cell, under "study", what study it is; from this and the rows everything that is reported can be made again. */
#ifndef COMMANDS_EXPLORE_CSV_H
#define COMMANDS_EXPLORE_CSV_H

#include <stdio.h>

#include "base/field.h"
#include "commands/explore/answer.h"

extern const field explore_csv_fields[]; /* for the manual */

/* The plan, a line a fact, to be freed: equal texts mean the same study. NULL when memory is refused. */
char *explore_csv_plan(const explore_answer *s);
void explore_csv_names(const explore_answer *s, FILE *to);

#endif
