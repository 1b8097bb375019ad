/* describe/proof.h -- whether a lesson is one: its scripts carried out and judged, careful passes, reckless and idle do not, and what
   the reckless one must be found for is found. */
#ifndef DESCRIBE_PROOF_H
#define DESCRIBE_PROOF_H

#include <stdio.h>

#include "scenario/scenario.h"

typedef struct {
    lesson_verdict likely;
    size_t others, passed; /* other runs of the set that reach the same end, and how many of them pass */
    bool as_wanted;        /* in the likely run */
} proof_script;

typedef struct {
    proof_script own; /* of one without scripts: its [schedule], which passes or not as it was worked */
    proof_script script[LESSON_SCRIPTS];
    const char *unnamed[LESSON_NAMES_MAX]; /* ids that the reckless script is not found for, likely or possible */
    size_t unnamed_count;
    bool holds; /* all of it */
} proof;

/* Of a lesson. BOIL_OK, or a failure as of boil_run. */
boil_outcome proof_of(const scenario *s, proof *out);

void proof_print(const scenario *s, const proof *p, FILE *to);

/* What keeps it from being a lesson, on standard error: file and line, what is wrong, both values. */
void proof_complain(const scenario *s, const proof *p);

#endif
