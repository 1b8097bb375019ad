/* commands/check/output.h -- a scenario laid open: for reading, and for other programs. */
#ifndef COMMANDS_CHECK_OUTPUT_H
#define COMMANDS_CHECK_OUTPUT_H

#include "cli/output.h"
#include "describe/proof.h"

/* The answer. It begins with the scenario, which is not its own to free: so rows that tell of a scenario read it as one. */
typedef struct {
    scenario scenario;
    proof proof; /* of a lesson */
} checked;

void check_report(const void *answer, const output *o, FILE *to); /* both systems of units side by side */
void check_csv(const void *answer, FILE *to);                     /* its settings */
extern const document check_documents[];

#endif
