/* commands/fit/output.h -- what a log says about a scenario's uncertain numbers: for people, and for other programs. */
#ifndef COMMANDS_FIT_OUTPUT_H
#define COMMANDS_FIT_OUTPUT_H

#include "cli/output.h"
#include "commands/fit/answer.h"

void fit_report(const void *answer, const output *o, FILE *to);
void fit_csv(const void *answer, FILE *to); /* the readings */
bool fit_picture(const void *answer, const output *o, picture_format format, picture_drawn *drawn, picture_problem *problem);
extern const document fit_documents[];

#endif
