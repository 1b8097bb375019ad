/* commands/solution/output.h -- what is known of a solution: for reading, and for other programs. */
#ifndef COMMANDS_SOLUTION_OUTPUT_H
#define COMMANDS_SOLUTION_OUTPUT_H

#include "cli/output.h"
#include "commands/solution/answer.h"

/* One solution, or the rows of a table. */
typedef struct {
    solution_answer one; /* the only row, when it is no table */
    const boil_plant *plant;
    solution_answer *rows;
    size_t count;
} solution_answers;

/* Both systems of units side by side. */
void solution_report(const void *answers, const output *o, FILE *to);
void solution_table_report(const void *answers, const output *o, FILE *to);

extern const document solution_documents[];       /* of one, of a table */
void solution_csv(const void *answers, FILE *to); /* the names of the JSON */
bool solution_picture(const void *answers, const output *o, picture_format format, picture_drawn *drawn,
                      picture_problem *problem); /* of a table */

#endif
