/* describe/finding_words.h -- a finding in words, the same in every report. */
#ifndef DESCRIBE_FINDING_WORDS_H
#define DESCRIBE_FINDING_WORDS_H

#include <stdbool.h>
#include <stdio.h>

#include "base/format.h"
#include "describe/carried_out.h"

typedef TEXT_OF(400) finding_words;

/* "freeboard below the limit: 1.7 in, limit 6.0 in", without its severity, time and advice. */
finding_words finding_words_of(const carried_out *o, const boil_finding *f, unit_system s);

formatted_text finding_clock(const carried_out *o, const boil_finding *f); /* "9:05"; nothing when it holds for the whole run */

/* The signal word, in its colour where one is wanted [ANSI Z535: red, orange, yellow, blue; a terminal has no orange]. */
void finding_severity_print(FILE *to, boil_severity s, bool colour);

#endif
