/* commands/solution/output.h -- what is known of a solution: for reading, and for other programs. */
#ifndef COMMANDS_SOLUTION_OUTPUT_H
#define COMMANDS_SOLUTION_OUTPUT_H

#include <stdio.h>

#include "base/field.h"
#include "base/format.h"
#include "commands/solution/answer.h"
#include "pictures/picture.h"

void solution_report(const boil_plant *p, const solution_answer *a, FILE *to);
void solution_json(const solution_answer *a, FILE *to);

void solution_table_report(const boil_plant *p, const solution_answer *rows, size_t count, FILE *to); /* US and SI */
void solution_table_json(const solution_answer *rows, size_t count, FILE *to);
/* Of a table. */
bool solution_picture(const boil_plant *p, const solution_answer *rows, size_t count, unit_system s, picture_format format,
                      picture_drawn *drawn, picture_problem *problem);
extern const document solution_documents[];
void solution_csv(const solution_answer *rows, size_t count, FILE *to); /* SI, the names of the JSON */

#endif
