/* support/evidence.h -- what the model gives for a row of a published table, against the row's value and its source's own band.
   Columns: value; kind and band, how far the model may lie from the value, both ways: relative, a share of the value; absolute, in
   its unit; factor, times or divided by; encloses, the model gives a lower and an upper estimate; none, nothing to compare with. */
#ifndef SUPPORT_EVIDENCE_H
#define SUPPORT_EVIDENCE_H

#include <math.h>

#include "support/published.h"

/* What the model gives: the same twice, or its lower and upper estimate. */
typedef struct {
    double low, high;
} evidence;

static inline evidence evidence_of(double value)
{
    return (evidence){value, value};
}

/* Model less value as the kind measures it: share, unit, or ratio. Of an estimate that does not enclose the value, the end nearer to
   it. NaN: nothing to compare with. */
static inline double evidence_deviation(const char *kind, double value, evidence ours)
{
    if (strcmp(kind, "relative") == 0)
        return (ours.low - value) / fabs(value);
    if (strcmp(kind, "absolute") == 0)
        return ours.low - value;
    if (strcmp(kind, "factor") == 0)
        return ours.low / value;
    if (strcmp(kind, "encloses") == 0)
        return ours.low > value ? ours.low - value : ours.high < value ? ours.high - value : 0;
    if (strcmp(kind, "none") != 0)
        fail_msg("no such kind of band: %s", kind);
    return (double)NAN;
}

/* The same over the band: within -1 to 1 is inside. An estimate is inside, 0, or outside, 2. */
static inline double evidence_distance(const char *kind, double value, double band, evidence ours)
{
    const double deviation = evidence_deviation(kind, value, ours);
    if (strcmp(kind, "factor") == 0)
        return log(deviation) / log(band);
    if (strcmp(kind, "encloses") == 0)
        return deviation == 0 ? 0 : copysign(2, deviation);
    return deviation / band;
}

/* Of the present row. */
static inline double evidence_row_deviation(published *row, double ours)
{
    return evidence_deviation(published_text(row, "kind"), published_number(row, "value"), evidence_of(ours));
}

#endif
