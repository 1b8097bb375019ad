/* analysis/findings.h -- what in a run deserves a word, how grave it is, and the quantity behind it. */
#ifndef BOIL_ANALYSIS_FINDINGS_H
#define BOIL_ANALYSIS_FINDINGS_H

#include "analysis/remedies.h"
#include "boilback.h"
#include "simulate/run.h"

extern const char *const boil_unit_words[BOIL_UNITS]; /* "s", ... */

#endif
