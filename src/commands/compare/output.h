/* commands/compare/output.h -- two runs side by side: for people, for other programs, and drawn over each other. */
#ifndef COMMANDS_COMPARE_OUTPUT_H
#define COMMANDS_COMPARE_OUTPUT_H

#include <stdio.h>

#include "base/field.h"
#include "base/format.h"
#include "commands/compare/answer.h"
#include "pictures/picture.h"

void compare_report(const compare_answer *c, unit_system s, FILE *to);
void compare_csv(const void *of, FILE *to); /* what comes of it */
extern const document compare_documents[];
void compare_json(const compare_answer *c, FILE *to); /* SI, the unit in the name */

/* Traces: see describe/trace.h. */
bool compare_picture(const compare_answer *c, const boil_history *trace_a, const boil_history *trace_b, unit_system s,
                     picture_format format, picture_drawn *drawn, picture_problem *problem);

#endif
