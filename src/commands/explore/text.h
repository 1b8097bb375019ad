/* commands/explore/text.h -- what a study says, for a person and for another program. */
#ifndef COMMANDS_EXPLORE_TEXT_H
#define COMMANDS_EXPLORE_TEXT_H

#include <stdio.h>

#include "base/format.h"
#include "commands/explore/answer.h"

void explore_report(const explore_answer *s, unit_system system, bool colour, FILE *to);
void explore_json(const explore_answer *s, FILE *to);

#endif
