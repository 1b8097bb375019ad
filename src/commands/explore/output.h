/* commands/explore/output.h -- what a study says: for a person, for other programs, drawn, and as rows from which all of
   it can be made again. */
#ifndef COMMANDS_EXPLORE_OUTPUT_H
#define COMMANDS_EXPLORE_OUTPUT_H

#include "cli/output.h"
#include "commands/explore/answer.h"

void explore_report(const void *answer, const output *o, FILE *to);
extern const document explore_documents[];

void explore_csv_write(const void *answer, FILE *to); /* the rows that were made */

/* The file of rows: names of columns, then a row a run, in SI. The first row says in its last cell, under "study", what study
   it is; from this and the rows everything that is reported can be made again. */

extern const field explore_csv_fields[]; /* for the manual */

/* The plan, a line a fact, to be freed: equal texts mean the same study. NULL when memory is refused. */
char *explore_csv_plan(const explore_answer *s);
void explore_csv_names(const explore_answer *s, FILE *to);

/* Reads the rows of one or more files of the same study, each row once. False, with a complaint, when one is none, or of
   another study, or a row stands in two of them and differs. To be freed either way. */
bool explore_csv_read(explore_answer *s, const char *const paths[], size_t count);

bool explore_picture(const void *answer, const output *o, picture_format format, picture_drawn *drawn,
                     picture_problem *problem);

#endif
