/* commands/size/load.h -- how much steel the heat that is there carries: the heaviest load, the shortest interval. */
#ifndef COMMANDS_SIZE_LOAD_H
#define COMMANDS_SIZE_LOAD_H

#include "commands/size/case.h"
#include "simulate/run.h"

typedef struct {
    const size_case *size;
    double times; /* as heavy as planned all loads may be; 0: not even the lightest holds */
} size_heaviest;

/* BOIL_OK, or a failure. */
int size_heaviest_of(const size_case *c, size_heaviest *out);

typedef struct {
    const size_case *size;
    double interval_s;  /* NaN: however long one waits, it does not hold */
    boil_history proof; /* loads at that interval; none when there is no interval */
} size_interval;

/* BOIL_OK, or a failure after which nothing is left to free. */
int size_interval_of(const size_case *c, size_interval *out);
void size_interval_free(size_interval *i);

#endif
