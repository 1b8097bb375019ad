/* describe/carried_out.h -- a scenario carried out at the central mixing time and at a third of it, and what was found in each: all
   that the writers of reports are given. */
#ifndef DESCRIBE_CARRIED_OUT_H
#define DESCRIBE_CARRIED_OUT_H

#include <stdbool.h>

#include "analysis/findings.h"
#include "boilback.h"
#include "scenario/scenario.h"
#include "simulate/run.h"

/* Published mixing times differ by three either way: a third gives the larger surge. */
#define CARRIED_OUT_FAST_MIXING (1.0 / 3)

typedef struct {
    const scenario *scenario;
    boil_history central, fast;
    boil_findings found;    /* in the central run: likely */
    boil_findings possible; /* only in the fast run */
    double tolerance;
} carried_out;

/* Carries it out. BOIL_OK, or a failure after which nothing is left to free. */
boil_outcome carried_out_of(const scenario *s, const boil_run_options *options, carried_out *out);
void carried_out_free(carried_out *o);

boil_severity carried_out_gravest(const carried_out *o); /* of both runs */
bool carried_out_stopped(const carried_out *o);          /* the central run did not reach its end */

/* One line of the run sheet as it went: a load or an addition, whichever is not NULL. */
typedef struct {
    action_name words;
    size_t action; /* in the schedule */
    double time_s;
    const boil_load_result *load;
    const boil_addition_result *addition;
    bool after_overflow; /* its results reach beyond the overflow: not a prediction */
} carried_out_line;

/* The lines in the order of the actions, to be freed by the caller; NULL when there are none, or memory is refused. */
carried_out_line *carried_out_lines(const carried_out *o, size_t *count);

#endif
