/* practise/afterwards.h -- what came of a shift: in a line, what was found, and the look back of lesson/debrief.h, act by act and done
   with care. */
#ifndef PRACTISE_AFTERWARDS_H
#define PRACTISE_AFTERWARDS_H

#include "practise/shift.h"

/* BOIL_OK, or a failure of the runs it is judged by, of which some words may have been written. */
boil_outcome afterwards_write(const shift *s, unit_system u, FILE *to);

#endif
