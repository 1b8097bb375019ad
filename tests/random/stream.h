/* random/stream.h -- numbers that only look drawn: the same from the same seed on every machine. SplitMix64
   [Steele, Lea & Flood, OOPSLA 2014, from memory]: each seed begins a stream of its own. */
#ifndef RANDOM_STREAM_H
#define RANDOM_STREAM_H

#include <math.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

typedef struct {
    uint64_t state;
} stream;

static inline uint64_t stream_next(stream *r)
{
    uint64_t z = r->state += UINT64_C(0x9e3779b97f4a7c15);
    z = (z ^ (z >> 30)) * UINT64_C(0xbf58476d1ce4e5b9);
    z = (z ^ (z >> 27)) * UINT64_C(0x94d049bb133111eb);
    return z ^ (z >> 31);
}

/* From 0 to below 1. */
static inline double stream_share(stream *r)
{
    return (double)(stream_next(r) >> 11) * 0x1p-53;
}

static inline bool stream_chance(stream *r, double share)
{
    return stream_share(r) < share;
}

static inline size_t stream_below(stream *r, size_t count)
{
    return (size_t)(stream_next(r) % count);
}

/* Three digits, as a person would write it: what fails is read by one. */
static inline double stream_rounded(double x)
{
    double step = x == 0 ? 1 : pow(10, floor(log10(fabs(x))) - 2);
    return step * round(x / step);
}

static inline double stream_between(stream *r, double low, double high)
{
    return stream_rounded(low + (high - low) * stream_share(r));
}

/* As likely to be within a factor of the low end as of the high one. */
static inline double stream_spread(stream *r, double low, double high)
{
    return stream_rounded(low * pow(high / low, stream_share(r)));
}

#endif
