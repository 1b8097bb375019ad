/* statistics/stream.h -- random numbers that depend on nothing but a seed, a chain and how many were drawn: any chain on any thread
   draws the same. The n-th number is the SplitMix64 hash of a counter [Steele, Lea and Flood, Fast splittable pseudorandom number
   generators, OOPSLA 2014]. Not for secrets. */
#ifndef BOIL_STATISTICS_STREAM_H
#define BOIL_STATISTICS_STREAM_H

#include <stddef.h>
#include <stdint.h>

typedef struct {
    uint64_t counter;
} boil_stream;

uint64_t boil_stream_hash(uint64_t x); /* one to one, and as if drawn */

boil_stream boil_stream_begin(uint64_t seed, uint64_t chain);
uint64_t boil_stream_next(boil_stream *s);
double boil_stream_share(boil_stream *s);           /* 0 to below 1 */
size_t boil_stream_below(boil_stream *s, size_t n); /* 0 to n - 1; n above 0, below 2^32 */

#endif
