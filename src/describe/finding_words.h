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

/* "first 9:05; freeboard it would leave -53.0 in at 9:06, limit 6.0; outside 57 s": what there is of it. */
finding_words finding_facts_of(const carried_out *o, const boil_finding *f, unit_system s);
finding_words finding_worst_of(const carried_out *o, const boil_finding *f, unit_system s); /* the same without "first" */

/* "CAUTION from 9:38, WARNING from 10:48"; nothing where it had one grade only. */
finding_words finding_grades_of(const carried_out *o, const boil_finding *f);

/* It depends on the laws of mixing, and holds by each of them: "certain in the band". */
bool finding_is_certain_in_band(const boil_finding *f);

/* A moment of it: to the second when the run is under an hour, or it lasts under two minutes. */
formatted_text finding_moment(const carried_out *o, const boil_finding *f, double t);
formatted_text finding_clock(const carried_out *o, const boil_finding *f); /* "9:05"; nothing when it holds for the whole run */

/* The signal word, in its colour where one is wanted [ANSI Z535: red, orange, yellow, blue; a terminal has no orange]. */
void finding_severity_print(FILE *to, boil_severity s, bool colour);

#endif
