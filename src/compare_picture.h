/* compare_picture.h -- two runs drawn over each other, on the clock of the first. */
#ifndef COMPARE_PICTURE_H
#define COMPARE_PICTURE_H

#include "contrast.h"
#include "picture.h"
#include "show.h"

/* Traces: see trace.h. */
bool compare_picture(const contrast *c, const boil_history *trace_a, const boil_history *trace_b, show_system s,
                     picture_format format, picture_drawn *drawn, picture_problem *problem);

#endif
