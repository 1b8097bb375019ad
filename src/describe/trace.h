/* describe/trace.h -- the trace of a run for a picture: fine enough that no surge of seconds is missed, few enough rows to
   draw. */
#ifndef DESCRIBE_TRACE_H
#define DESCRIBE_TRACE_H

#include "base/field.h"
#include "boilback.h"
#include "describe/carried_out.h"
#include "scenario/scenario.h"
#include "simulate/run.h"

/* Carries the scenario out once more with rows a second apart (in runs beyond a day as many as there are seconds in one),
   and thins them. The peaks of steam and level are then within 1 % of those between rows, measured on the shipped scenarios;
   at 10 s the surge of a layer that turns over misses 5 %. BOIL_OK, or a failure after which nothing is left to free. */
boil_outcome trace_of(const scenario *s, const boil_run_options *options, boil_history *out);

/* Those rows of what was carried out, in `fine`, which the caller frees; its own where there are none. */
const boil_history *trace_or_rows(const carried_out *o, boil_history *fine);

/* The rows of a run in SI, one a line; what is not there is empty. */
extern const field trace_fields[]; /* of boil_row */
void trace_csv(const void *history, FILE *to);

#endif
