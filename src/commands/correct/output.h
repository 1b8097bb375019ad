/* commands/correct/output.h -- how a bath is brought back to set point and level: a list of steps, and the same for
   other programs. */
#ifndef COMMANDS_CORRECT_OUTPUT_H
#define COMMANDS_CORRECT_OUTPUT_H

#include "analysis/correct.h"
#include "cli/output.h"
#include "scenario/scenario.h"

typedef struct {
    const scenario *scenario;
    boil_correction plan;
} correct_answer;

void correct_report(const void *answer, const output *o, FILE *to);
void correct_csv(const void *answer, FILE *to); /* the steps */
extern const document correct_documents[];
void correct_refuse(const correct_answer *a, unit_system s); /* the reason, on standard error */

#endif
