/* commands/explore/output.h -- what a study says: for a person, for other programs, drawn, and as rows from which all of
   it can be made again. */
#ifndef COMMANDS_EXPLORE_OUTPUT_H
#define COMMANDS_EXPLORE_OUTPUT_H

#include "cli/output.h"
#include "commands/explore/answer.h"

void explore_report(const void *answer, const output *o, FILE *to);
extern const document explore_documents[];

void explore_csv_write(const void *answer, FILE *to); /* the rows that were made */

/* Reads the rows of one or more files of the same study, each row once. False, with a complaint, when one is none, or of
   another study, or a row stands in two of them and differs. To be freed either way. */
bool explore_csv_read(explore_answer *s, const char *const paths[], size_t count);

bool explore_picture(const void *answer, const output *o, picture_format format, picture_drawn *drawn,
                     picture_problem *problem);

#endif
