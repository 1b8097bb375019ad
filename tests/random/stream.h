/* random/stream.h -- what tests draw from the numbers of statistics/stream.h, chain 0: the same from the same seed on every machine.
   Those are held to the published generator by unit/model/statistics/test_stream.c. */
#ifndef RANDOM_STREAM_H
#define RANDOM_STREAM_H

#include <math.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "statistics/stream.h"

typedef boil_stream stream;

static inline bool stream_chance(stream *r, double share)
{
    return boil_stream_share(r) < share;
}

static inline size_t stream_below(stream *r, size_t count)
{
    return (size_t)(boil_stream_next(r) % count);
}

/* Three digits, as a person would write it: what fails is read by one. */
static inline double stream_rounded(double x)
{
    double step = x == 0 ? 1 : pow(10, floor(log10(fabs(x))) - 2);
    return step * round(x / step);
}

static inline double stream_evenly(stream *r, double low, double high)
{
    return low + (high - low) * boil_stream_share(r);
}

static inline double stream_between(stream *r, double low, double high)
{
    return stream_rounded(stream_evenly(r, low, high));
}

/* As likely to be within a factor of the low end as of the high one. */
static inline double stream_spread(stream *r, double low, double high)
{
    return stream_rounded(low * pow(high / low, boil_stream_share(r)));
}

#endif
