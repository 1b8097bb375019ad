/* reading/blend.h -- a dry blend of salts: "80 % NaOH, 15 % NaNO3, 5 % NaNO2", by mass. */
#ifndef READING_BLEND_H
#define READING_BLEND_H

#include "properties/solution.h"
#include "reading/quantity.h"

/* Reads a blend to the end, or to a comma before the word `until` (NULL: none). Shares must add up to 100 %; the
   rounding that is allowed there is taken out. False, with a message, when it is none; `out` is then unchanged. */
bool blend_read(cursor *c, const char *what, const char *until, double out[BOIL_SALTS]);

#endif
