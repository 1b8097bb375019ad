/* commands/correct/output.h -- how a bath is brought back to set point and level: a list of steps, and the same for
   other programs. */
#ifndef COMMANDS_CORRECT_OUTPUT_H
#define COMMANDS_CORRECT_OUTPUT_H

#include <stdio.h>

#include "base/field.h"
#include "analysis/correct.h"
#include "base/format.h"
#include "scenario/scenario.h"

typedef struct {
    const scenario *scenario;
    boil_correction plan;
} correct_answer;

void correct_report(const correct_answer *a, unit_system s, FILE *to);
void correct_json(const correct_answer *a, FILE *to);
void correct_csv(const void *answer, FILE *to); /* the steps */
extern const document correct_documents[];
void correct_refuse(const correct_answer *a, unit_system s); /* the reason, on standard error */

#endif
