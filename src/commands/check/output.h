/* commands/check/output.h -- a scenario laid open: for reading, and for other programs. */
#ifndef COMMANDS_CHECK_OUTPUT_H
#define COMMANDS_CHECK_OUTPUT_H

#include "cli/output.h"
#include "scenario/scenario.h"

/* The answer is the scenario. */
void check_report(const void *answer, const output *o, FILE *to); /* both systems of units side by side */
void check_csv(const void *answer, FILE *to);                     /* its settings */
extern const document check_documents[];

#endif
