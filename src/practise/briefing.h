/* practise/briefing.h -- what is said before a shift is worked: what it is about, what happens in any case, what has to hold. */
#ifndef PRACTISE_BRIEFING_H
#define PRACTISE_BRIEFING_H

#include "practise/shift.h"

void briefing_write(const shift *s, FILE *to);

#endif
