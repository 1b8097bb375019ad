/* commands/size/output.h -- a heat that suffices, or what the heat that is there carries: for the person who buys the
   burner, and for other programs. */
#ifndef COMMANDS_SIZE_OUTPUT_H
#define COMMANDS_SIZE_OUTPUT_H

#include <stdbool.h>
#include <stdio.h>

#include "base/format.h"
#include "commands/size/answer.h"
#include "commands/size/case.h"
#include "commands/size/curve.h"
#include "pictures/picture.h"
#include "reading/quantity.h"
#include "scenario/scenario.h"

void size_report(const size_answer *a, unit_system s, FILE *to);
void size_json(const size_answer *a, FILE *to);

/* Four digits, never less than the value: "41.38 kW". */
formatted_text size_shown_up(unit_system s, unit_dimension d, double si);
formatted_text size_number_up(unit_system s, unit_dimension d, double si); /* without the unit */

/* The head of every answer about a case: its title, and what its loads are. */
void size_report_case(const size_case *c, unit_system s, FILE *to);

bool size_picture(const size_answer *a, const size_curve *c, unit_system s, picture_format format, picture_drawn *drawn,
                  picture_problem *problem);

/* Each writes its answer. BOIL_OK, or a failure, after which nothing was written. */
int size_heaviest(const size_case *c, unit_system s, bool as_json, FILE *to);
int size_interval(const size_case *c, unit_system s, bool as_json, FILE *to);

/* Half, once, and twice the load in question (NULL: the scenario's limit), in plates of an eighth of an inch to an inch.
   BOIL_OK or a failure, after which nothing was written. */
int size_table(const scenario *s, double limit_s, const quantity *heaviness, unit_system system, bool as_json, FILE *to);

#endif
