/* random/told.h -- whether the program tells the same in text, JSON, CSV and page. */
#ifndef RANDOM_TOLD_H
#define RANDOM_TOLD_H

#include "base/text.h"
#include "scenario/scenario.h"

/* How far a row may lie above the highest level, relative: between its ends a step is followed by a cubic, which is right to the
   tolerance and no more, and may wave by that without a crest being looked for. */
#define TOLD_CREST 1e-5

typedef TEXT_OF(200) told_text;

/* What differs; empty: nothing. The scenario as read stands in the file at `path`, beside which answers are written. */
told_text told_alike(const char *program, const char *path, const scenario *s);

#endif
