/* findings/findings.h -- what in a run deserves a word, how grave it is, and the quantity behind it. */
#ifndef BOIL_FINDINGS_FINDINGS_H
#define BOIL_FINDINGS_FINDINGS_H

#include "boilback.h"

extern const char *const boil_unit_words[BOIL_UNITS]; /* "s", ... */

/* boil_findings_of for a part of a search, whose case need not stand by itself. */
boil_outcome boil_findings_of_unchecked(const boil_plant *p, const boil_schedule *s, const boil_remedies *needed,
                                        const boil_history *likely, const boil_run_of_set *others, size_t count,
                                        boil_findings *found, boil_findings *possible);

#endif
