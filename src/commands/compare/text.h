/* commands/compare/text.h -- two runs side by side: for people, and for other programs. */
#ifndef COMMANDS_COMPARE_TEXT_H
#define COMMANDS_COMPARE_TEXT_H

#include <stdio.h>

#include "base/format.h"
#include "commands/compare/answer.h"

void compare_report(const compare_answer *c, unit_system s, FILE *to);
void compare_json(const compare_answer *c, FILE *to); /* SI, the unit in the name */

#endif
