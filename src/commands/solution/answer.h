/* commands/solution/answer.h -- what is known of a solution, or of a row of them. */
#ifndef COMMANDS_SOLUTION_ANSWER_H
#define COMMANDS_SOLUTION_ANSWER_H

#include <stdbool.h>
#include <stddef.h>

#include "base/units.h"
#include "case/solution_facts.h"
#include "cli/output.h"

typedef boil_solution_facts solution_answer;

/* Of the plant's charge. False, with a complaint, when it is beyond what is known. */
bool look_up(const boil_plant *p, solution_answer *a);

/* The scales of a hydrometer: heavy degrees, 145 - 145/SG; 200 (SG - 1); SG over water at 60 degF. */
double solution_baume(double specific_gravity);
double solution_twaddell(double specific_gravity);

#define LOOK_UP_ROWS_MOST ((size_t)1000)

/* Rows over one of these: salts by mass (DIM_FRACTION), strength (DIM_CONCENTRATION), boiling point (DIM_TEMPERATURE). */
typedef struct {
    unit_dimension over;
    double from, to, step;
} solution_table;

/* The rows, to be freed; NULL, with a complaint, when one is beyond what is known or memory is refused. */
solution_answer *solution_rows(const boil_plant *p, const solution_table *t, size_t *count);

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
