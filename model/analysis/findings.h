/* analysis/findings.h -- what in a run deserves a word, how grave it is, and the quantity behind it. */
#ifndef BOIL_ANALYSIS_FINDINGS_H
#define BOIL_ANALYSIS_FINDINGS_H

#include "analysis/remedies.h"
#include "boilback.h"
#include "simulate/run.h"

extern const char *const boil_unit_words[BOIL_UNITS]; /* "s", ... */

/* boil_findings_of for a part of a search, whose case need not stand by itself. */
boil_outcome boil_findings_of_unchecked(const boil_plant *p, const boil_schedule *s, const boil_remedies *needed,
                                        const boil_history *central, const boil_history *fast, boil_findings *of_central,
                                        boil_findings *of_fast);

#endif
