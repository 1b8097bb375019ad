/* commands/run/sheet.h -- the run sheet as it went: one line a load or addition, in columns. */
#ifndef COMMANDS_RUN_SHEET_H
#define COMMANDS_RUN_SHEET_H

#include <stdio.h>

#include "base/format.h"
#include "describe/carried_out.h"

/* At most this many lines; what is over is summed up in the last one. */
#define SHEET_LINES_MAX ((size_t)40)

void sheet_print(const carried_out *o, unit_system s, FILE *to);

#endif
