/* commands/compare/output.h -- two runs side by side: for people, for other programs, and drawn over each other. */
#ifndef COMMANDS_COMPARE_OUTPUT_H
#define COMMANDS_COMPARE_OUTPUT_H

#include "cli/output.h"
#include "commands/compare/answer.h"

void compare_report(const void *answer, const output *o, FILE *to);
void compare_csv(const void *of, FILE *to); /* what comes of it */
extern const document compare_documents[];
bool compare_picture(const void *answer, const output *o, picture_format format, picture_drawn *drawn,
                     picture_problem *problem);

#endif
