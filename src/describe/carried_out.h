/* describe/carried_out.h -- a scenario carried out, with the likely closures and those that err either way, and what was found:
   all that the writers of reports are given. */
#ifndef DESCRIBE_CARRIED_OUT_H
#define DESCRIBE_CARRIED_OUT_H

#include <stdbool.h>

#include "findings/findings.h"
#include "base/format.h"
#include "boilback.h"
#include "scenario/scenario.h"
#include "simulate/run.h"

typedef struct {
    const scenario *scenario;
    boil_run_set set;
    boil_history central;   /* the likely run of the set */
    boil_findings found;    /* in the likely run */
    boil_findings possible; /* only in others of the set, or graver there */
    boil_bands bands;
    const boil_history *traced; /* the run of the set whose trace was asked for; NULL: it was not made */
    double tolerance;
} carried_out;

/* Carries it out. BOIL_OK, or a failure after which nothing is left to free. */
boil_outcome carried_out_of(const scenario *s, const boil_run_options *options, carried_out *out);
void carried_out_free(carried_out *o);

boil_severity carried_out_gravest(const carried_out *o); /* of all runs */
bool carried_out_stopped(const carried_out *o);          /* the central run did not reach its end */

formatted_text carried_out_clock(const carried_out *o, double t); /* of a run under an hour to the second */

/* The load whose boil was back last, NULL when there is none: one whose boil never came back, else the slowest. */
const boil_load_result *carried_out_slowest(const carried_out *o);

/* Water given and what a steady bath would have wanted: what went off as vapour and out with the parts, less what came in with
   them and from the lid. As volumes, m3, of water as warm as the room. */
typedef struct {
    double given_m3, taken_m3;
} carried_out_water;
carried_out_water carried_out_water_of(const carried_out *o);

/* One line of the run sheet as it went: a load or an addition, whichever is not NULL. */
typedef struct {
    action_name words;
    size_t action; /* in the schedule */
    double time_s;
    const boil_load_result *load;
    const boil_addition_result *addition;
    bool after_overflow; /* its results reach beyond the overflow: not a prediction */
} carried_out_line;

/* When an action was done, or begun; NaN: it was not, or the run stopped before. */
double carried_out_done_s(const carried_out *o, size_t action);
const char *carried_out_why_not(const carried_out *o, size_t action); /* why it was not, a few words */

/* The lines in the order of time, to be freed by the caller; NULL when there are none, or memory is refused. */
carried_out_line *carried_out_lines(const carried_out *o, size_t *count);

#endif
