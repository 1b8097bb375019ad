/* commands/size/text.h -- a heat that suffices, for the person who buys the burner. */
#ifndef COMMANDS_SIZE_TEXT_H
#define COMMANDS_SIZE_TEXT_H

#include <stdio.h>

#include "commands/size/answer.h"

void size_report(const size_answer *a, unit_system s, FILE *to);
void size_json(const size_answer *a, FILE *to);

/* Four digits, never less than the value: "41.38 kW". */
formatted_text size_shown_up(unit_system s, unit_dimension d, double si);
formatted_text size_number_up(unit_system s, unit_dimension d, double si); /* without the unit */

/* The head of every answer about a case: its title, and what its loads are. */
void size_report_case(const size_case *c, unit_system s, FILE *to);

#endif
