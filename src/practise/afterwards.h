/* practise/afterwards.h -- what came of a shift: in a line, what was found, and the look back of lesson/debrief.h, act by act and done
   with care. */
#ifndef PRACTISE_AFTERWARDS_H
#define PRACTISE_AFTERWARDS_H

#include "describe/carried_out.h"
#include "practise/shift.h"

/* The shift as it was asked for: what waited for the boil waits for it in each run of the set. Where the reader of schedules will
   not have that (a load in whose place another may still hang), as done. `asked` is to be freed; *of is what counts. */
boil_outcome afterwards_scenario(const shift *s, scenario *asked, const scenario **of);

/* As it was carried out, with the rows that the look back takes from how much had gone off before an act. BOIL_OK, *o to be freed, or
   a failure of the runs. */
boil_outcome afterwards_carried_out(const scenario *s, carried_out *o);

/* BOIL_OK, or a failure of the runs it is judged by, of which some words may have been written. */
boil_outcome afterwards_write(const shift *s, unit_system u, FILE *to);

#endif
