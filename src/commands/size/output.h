/* commands/size/output.h -- a heat that suffices, or what the heat that is there carries: for the person who buys the
   burner, and for other programs. */
#ifndef COMMANDS_SIZE_OUTPUT_H
#define COMMANDS_SIZE_OUTPUT_H

#include <stdbool.h>
#include <stdio.h>

#include "base/field.h"
#include "base/format.h"
#include "commands/size/answer.h"
#include "commands/size/case.h"
#include "commands/size/curve.h"
#include "commands/size/load.h"
#include "pictures/picture.h"

void size_report(const size_answer *a, unit_system s, FILE *to);
void size_json(const size_answer *a, FILE *to);
extern const document size_documents[];

/* Four digits, never less than the value: "41.38 kW". */
formatted_text size_shown_up(unit_system s, unit_dimension d, double si);
formatted_text size_number_up(unit_system s, unit_dimension d, double si); /* without the unit */

/* The head of every answer about a case: its title, and what its loads are. */
void size_report_case(const size_case *c, unit_system s, FILE *to);

bool size_picture(const size_answer *a, const size_curve *c, unit_system s, picture_format format, picture_drawn *drawn,
                  picture_problem *problem);

void size_heaviest_report(const size_heaviest *h, unit_system s, FILE *to);
void size_heaviest_json(const size_heaviest *h, FILE *to);

void size_interval_report(const size_interval *i, unit_system s, FILE *to);
void size_interval_json(const size_interval *i, FILE *to);

void size_table_report(const size_cells *t, unit_system s, FILE *to);
void size_table_json(const size_cells *t, FILE *to);
void size_table_csv(const void *cells, FILE *to);

#endif
