/* describe/headline.h -- what was found, likely and possible together, in one order: by rank, then by when it began; and what of
   that comes first. */
#ifndef DESCRIBE_HEADLINE_H
#define DESCRIBE_HEADLINE_H

#include "describe/carried_out.h"

/* The finding behind `after` in that order; NULL: the first. NULL behind the last. */
const boil_finding *headline_next(const carried_out *o, const boil_finding *after);

/* The first of all; NULL when nothing is above NOTICE. */
const boil_finding *headline_of(const carried_out *o);

/* What was first beyond its limit, and when, of all above NOTICE and of the user's own limits at any grade: what holds for the whole run
   began with it. NULL: nothing was. */
const boil_finding *headline_first_out(const carried_out *o, double *time_s);

bool headline_is_possible(const carried_out *o, const boil_finding *f); /* only other runs of the set show it, or so grave */
const boil_finding *headline_cause(const carried_out *o, const boil_finding *f); /* NULL: none is known, or it is a NOTICE */

#endif
