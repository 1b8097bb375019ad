/* commands/run/picture.h -- the picture of a run: temperature, steam, level and layer over the clock, what was done, what was
   found. */
#ifndef COMMANDS_RUN_PICTURE_H
#define COMMANDS_RUN_PICTURE_H

#include "base/format.h"
#include "describe/outcome.h"
#include "pictures/picture.h"

/* `trace`: see describe/trace.h. */
bool run_picture(const outcome *o, const boil_history *trace, unit_system s, picture_format format, picture_drawn *drawn,
                 picture_problem *problem);

#endif
