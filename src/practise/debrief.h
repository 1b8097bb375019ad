/* practise/debrief.h -- what came of a shift that is over: of a lesson whether it passed; each act with what
   the bath did, and what was found. */
#ifndef PRACTISE_DEBRIEF_H
#define PRACTISE_DEBRIEF_H

#include "practise/shift.h"

/* BOIL_OK, or a failure of the runs it is judged by: nothing is written then. */
boil_outcome debrief_write(const shift *s, unit_system u, FILE *to);

#endif
