#include "describe/trace.h"

#include <math.h>

#include "describe/trace_thin.h"

static const double finest_s = 1, rows_most = 86400;

/* As many as a picture has columns, twice. */
#define DRAWN ((size_t)2000)

int trace_of(const scenario *s, const boil_run_options *options, boil_history *out)
{
    boil_run_options fine = *options;
    fine.row_interval_s = fmax(finest_s, s->schedule.duration_s / rows_most);
    int result = boil_run(&s->plant, &s->schedule, &fine, out);
    if (result == 0)
        out->rows_count = trace_thinned(out->rows, out->rows_count, DRAWN);
    return result;
}
