#include "statistics/stream.h"

#define GOLDEN 0x9E3779B97F4A7C15u

uint64_t boil_stream_hash(uint64_t x)
{
    x = (x ^ (x >> 30)) * 0xBF58476D1CE4E5B9u;
    x = (x ^ (x >> 27)) * 0x94D049BB133111EBu;
    return x ^ (x >> 31);
}

/* Chain 0 is the published generator of that seed; others begin far from it and from each other. */
boil_stream boil_stream_begin(uint64_t seed, uint64_t chain)
{
    return (boil_stream){chain == 0 ? seed : seed ^ boil_stream_hash(chain * GOLDEN)};
}

uint64_t boil_stream_next(boil_stream *s)
{
    s->counter += GOLDEN;
    return boil_stream_hash(s->counter);
}

double boil_stream_share(boil_stream *s)
{
    return (double)(boil_stream_next(s) >> 11) * 0x1p-53;
}

/* The upper half of a product: no number is likelier than another by more than n in 2^32. */
size_t boil_stream_below(boil_stream *s, size_t n)
{
    return (size_t)((boil_stream_next(s) >> 32) * (uint64_t)n >> 32);
}
