/* commands/check/output.h -- a scenario laid open: for reading, and for other programs. */
#ifndef COMMANDS_CHECK_OUTPUT_H
#define COMMANDS_CHECK_OUTPUT_H

#include <stdio.h>

#include "base/field.h"
#include "scenario/scenario.h"

void check_report(const scenario *s, FILE *to);
void check_json(const scenario *s, FILE *to);
void check_csv(const void *of, FILE *to); /* its settings */
extern const document check_documents[];

#endif
