/* commands/explore/csv.h -- a study as a file: what varied, in lines that begin with "#", then one row a run, in SI. Everything
   that is reported can be made from it again. */
#ifndef COMMANDS_EXPLORE_CSV_H
#define COMMANDS_EXPLORE_CSV_H

#include <stdio.h>

#include "commands/explore/answer.h"

void explore_csv_write(const explore_answer *s, FILE *to); /* the rows that were made */

/* Reads the rows of one or more files of the same study, each row once. False, with a complaint, when one is none, or of
   another study, or a row stands in two of them and differs. To be freed either way. */
bool explore_csv_read(explore_answer *s, const char *const paths[], size_t count);

#endif
