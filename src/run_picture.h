/* run_picture.h -- the picture of a run: temperature, steam, level and layer over the clock, what was done, what was found. */
#ifndef RUN_PICTURE_H
#define RUN_PICTURE_H

#include "outcome.h"
#include "picture.h"
#include "show.h"

/* `trace`: see trace.h. */
bool run_picture(const outcome *o, const boil_history *trace, show_system s, picture_format format,
                 picture_drawn *drawn, picture_problem *problem);

#endif
