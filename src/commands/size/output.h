/* commands/size/output.h -- a heat that suffices, or what the heat that is there carries: for the person who buys the
   burner, and for other programs. */
#ifndef COMMANDS_SIZE_OUTPUT_H
#define COMMANDS_SIZE_OUTPUT_H

#include "cli/output.h"
#include "commands/size/answer.h"

/* Of a size_answer, size_heaviest, size_interval, size_cells. */
void size_report(const void *answer, const output *o, FILE *to);
void size_heaviest_report(const void *answer, const output *o, FILE *to);
void size_interval_report(const void *answer, const output *o, FILE *to);
void size_table_report(const void *answer, const output *o, FILE *to);

extern const document size_documents[]; /* of the same four, in that order, then: */
void size_table_csv(const void *cells, FILE *to);

bool size_picture(const void *answer, const output *o, picture_format format, picture_drawn *drawn, picture_problem *problem);

/* Four digits, never less than the value: "41.38 kW". */
formatted_text size_shown_up(unit_system s, unit_dimension d, double si);
formatted_text size_number_up(unit_system s, unit_dimension d, double si); /* without the unit */

/* The head of every answer about a case: its title, and what its loads are. */
void size_report_case(const size_case *c, unit_system s, FILE *to);

#endif
