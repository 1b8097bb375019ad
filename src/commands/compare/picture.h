/* commands/compare/picture.h -- two runs drawn over each other, on the clock of the first. */
#ifndef COMMANDS_COMPARE_PICTURE_H
#define COMMANDS_COMPARE_PICTURE_H

#include "base/format.h"
#include "commands/compare/answer.h"
#include "pictures/picture.h"

/* Traces: see describe/trace.h. */
bool compare_picture(const compare_answer *c, const boil_history *trace_a, const boil_history *trace_b, unit_system s,
                     picture_format format, picture_drawn *drawn, picture_problem *problem);

#endif
