/* commands/solution/text.h -- what is known of a solution, for reading and for other programs. */
#ifndef COMMANDS_SOLUTION_TEXT_H
#define COMMANDS_SOLUTION_TEXT_H

#include <stdio.h>

#include "commands/solution/answer.h"

void look_up_report(const boil_plant *p, const looked_up *a, FILE *to);
void look_up_json(const looked_up *a, FILE *to);

void look_up_table_report(const boil_plant *p, const looked_up *rows, size_t count, FILE *to); /* US and SI */
void look_up_table_json(const looked_up *rows, size_t count, FILE *to);
void look_up_csv(const looked_up *rows, size_t count, FILE *to); /* SI, the names of the JSON */

#endif
