/* describe/trace.h -- the trace of a run for a picture: fine enough that no surge of seconds is missed, few enough rows to
   draw. */
#ifndef DESCRIBE_TRACE_H
#define DESCRIBE_TRACE_H

#include "base/field.h"
#include "boilback.h"
#include "scenario/scenario.h"
#include "simulate/run.h"

/* Carries the scenario out once more with rows a second apart (in runs beyond a day as many as there are seconds in one),
   and thins them. The peaks of steam and level are then within 1 % of those between rows, measured on the shipped scenarios;
   at 10 s the surge of a layer that turns over misses 5 %. BOIL_OK, or a failure after which nothing is left to free. */
boil_outcome trace_of(const scenario *s, const boil_run_options *options, boil_history *out);

/* The rows of a run in SI, one a line; what is not there is empty. */
extern const field trace_fields[]; /* of boil_row */
void trace_csv(const void *history, FILE *to);

/* Fewer rows of a trace for a picture, without losing what it is looked at for. */

/* Leaves about `most` rows (12 at least, else nothing is done), in place and in order, and returns how many. In each
   stretch of time first and last row are kept, and the highest and lowest of temperature, boiling point, steam, level and
   layer; and everywhere the rows on both sides of a change between boiling and quiet, even beyond `most`. */
size_t trace_thinned(boil_row *rows, size_t count, size_t most);

#endif
