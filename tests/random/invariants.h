/* random/invariants.h -- what must hold of every scenario, whatever stands in it. */
#ifndef RANDOM_INVARIANTS_H
#define RANDOM_INVARIANTS_H

#include "random/draft.h"
#include "scenario/scenario.h"

typedef enum {
    HOLDS_READ,    /* the same in other units, by another clock and in another order is read as well */
    HOLDS_RUN,     /* it can be carried out, and ends in one of the ways that are no failure */
    HOLDS_CLOSED,  /* what came in, went out and is there: to 1e-9 */
    HOLDS_SOUND,   /* nothing is infinite, and no mass, flow or time below zero */
    HOLDS_RIM,     /* no level over the rim without a finding that says so, by then; none above the highest */
    HOLDS_HEAT,    /* more heat lengthens no recovery */
    HOLDS_LOAD,    /* a heavier load shortens none */
    HOLDS_UNITS,   /* other units ... */
    HOLDS_CLOCK,   /* ... another clock ... */
    HOLDS_ORDER,   /* ... and another order of lines change no figure and no grade */
    HOLDS_TWO,     /* nor does a pour that is written as two */
    HOLDS_GRAM,    /* nor a gram of steel */
    HOLDS_SET,     /* every run of the set is sound and closed as well */
    HOLDS_PROGRAM, /* text, JSON, CSV and page say the same */
    HOLDS_ALL
} invariant;

extern const char *const invariant_words[HOLDS_ALL];

typedef struct {
    const char *program; /* for the last of them */
    const char *scratch; /* where files of its own are written: a path to which endings are added */
    bool whole;          /* the last two as well, which cost as much as all others */
} invariant_means;

typedef struct {
    bool valid; /* the scenario is one: else nothing was asked */
    bool broken[HOLDS_ALL];
    char why[HOLDS_ALL][200];
    double hours; /* that it was followed */
} verdict_of;

/* Of one invariant, or HOLDS_ALL: of all. */
void invariants_judge(const draft *d, const invariant_means *m, invariant asked, verdict_of *out);

#endif
