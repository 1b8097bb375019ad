/* practise/briefing.h -- what is said before a shift is worked: what it is about, what happens in any case, what the file would
   do and the shift does not, what has to hold. */
#ifndef PRACTISE_BRIEFING_H
#define PRACTISE_BRIEFING_H

#include "practise/shift.h"

void briefing_write(const shift *s, const scenario *read, FILE *to); /* `read`: of which the shift was begun */

#endif
