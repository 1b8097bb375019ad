/* statistics/sampling.h -- uncertain inputs: which runs to make, and what their results say. Pure numbers, in whatever unit an
   input has.

   A design lists rows; a row is one run with one value for each uncertain input. Any row can be had at any time, in
   any order, on any thread or machine: nothing is drawn from a generator that remembers. Results are kept by row
   number and summed in that order, so statistics do not depend on who computed which row.

   Points come from a Sobol' sequence in twice as many dimensions as there are inputs, each repeated in several
   replicates with random shifts modulo 1 [Cranley & Patterson 1976]: a replicate is as even as the sequence, and
   replicates are independent of each other, so their scatter gives an honest error. The first half of a point's
   coordinates is the draw A, the second the draw B, and AB_i is A with input i taken from B [Saltelli et al. 2010]:

       row = (point * replicates + replicate) * (inputs + 2) + kind,   kind: 0 A, 1 B, 2 + i AB_i

   With the same seed, a design of more points begins with the rows of one of fewer. Odds and percentiles use A, B. */
#ifndef BOIL_STATISTICS_SAMPLING_H
#define BOIL_STATISTICS_SAMPLING_H

#include <stddef.h>
#include <stdint.h>

#include "boilback.h"

enum {
    BOIL_SAMPLING_INPUTS = 20,     /* most uncertain inputs: GSL's sequence has 40 dimensions */
    BOIL_SAMPLING_BITS = 20,       /* most points of a replicate: 2^20 */
    BOIL_SAMPLING_REPLICATES = 32, /* most replicates */
    BOIL_SPREAD_VALUES = 16        /* most values of a list */
};

typedef enum {
    BOIL_SPREAD_UNIFORM,    /* low to high */
    BOIL_SPREAD_TRIANGULAR, /* low to high, density highest at likely */
    BOIL_SPREAD_NORMAL,     /* likely +- one standard deviation, cut off at three: 0.27 % lie beyond, and a mass or an
                               efficiency must not turn negative for the sake of a tail nobody has seen */
    BOIL_SPREAD_LISTED      /* each of value[0 .. count - 1] equally likely */
} boil_spread_kind;

/* What is known of one input. Fields a kind does not name are ignored. */
typedef struct {
    boil_spread_kind kind;
    double low, high, likely;
    double deviation; /* > 0 */
    double value[BOIL_SPREAD_VALUES];
    size_t count;
} boil_spread;

const char *boil_spread_problem(const boil_spread *s); /* NULL, or what is wrong with it */

/* The value below which the share u of all draws lies; u = 0 and u = 1 give the ends. */
double boil_spread_at(const boil_spread *s, double u);

typedef struct {
    size_t inputs;     /* 1 to 20 */
    size_t points;     /* of each replicate, 1 to 2^20; rounded up to a power of two, where the sequence is even */
    size_t replicates; /* 2 to 32 */
    uint32_t seed;     /* 1 to 4294967295 */
} boil_sampling_plan;

boil_sampling_plan boil_sampling_plan_default(size_t inputs);        /* 64 points, 16 replicates, seed 1 */
const char *boil_sampling_plan_problem(const boil_sampling_plan *p); /* NULL, or what is wrong with it */

/* A design: constant once made, so threads may share it. Nothing to free. */
typedef struct {
    size_t inputs, points, replicates;
    uint32_t direction[BOIL_SAMPLING_BITS][2 * BOIL_SAMPLING_INPUTS]; /* the sequence's direction numbers, in 2^-30 */
    double shift[BOIL_SAMPLING_REPLICATES][2 * BOIL_SAMPLING_INPUTS];
} boil_sampling;

/* BOIL_OK, BOIL_BAD_INPUT when the plan has a problem, BOIL_NO_MEMORY. */
boil_outcome boil_sampling_init(boil_sampling *s, const boil_sampling_plan *p);

size_t boil_sampling_rows(const boil_sampling *s);  /* runs to make */
size_t boil_sampling_draws(const boil_sampling *s); /* rows of kind A or B */

/* Each input's share u, in (0, 1) and never its ends, for boil_spread_at. row < boil_sampling_rows(s). */
void boil_sampling_row(const boil_sampling *s, size_t row, double u[]);

/* What came out: value[row * outputs + output]. NaN where a run failed, was not made, or the thing did not happen. */
typedef struct {
    const boil_sampling *design;
    const double *value;
    size_t outputs;
} boil_sampling_results;

/* A chance with its 95 % interval by Clopper and Pearson (1934). Of the usual intervals it is the one that never
   covers less than it says [Brown, Cai & DasGupta 2001], and it stays sensible at 0 of n: danger is not to be
   understated. It takes draws as independent; shifted points are as a rule spread more evenly than that, so it errs
   on the wide side. */
typedef struct {
    size_t yes, count;
    double chance, low, high; /* NaN when count is 0 */
} boil_odds;

boil_odds boil_odds_of(size_t yes, size_t count);

/* Odds that an output is not zero, among the draws where it is a number. */
boil_odds boil_sampling_odds(const boil_sampling_results *r, size_t output);

/* Writes the output's draws that are numbers, ascending; room for boil_sampling_draws(). Returns how many. */
size_t boil_sampling_sort(const boil_sampling_results *r, size_t output, double sorted[]);

/* The value below which the given share of sorted draws lies, 0 to 1, interpolated between neighbours; NaN when
   empty. */
double boil_sampling_quantile(const double sorted[], size_t count, double share);

typedef struct {
    double value, half_width; /* of the 95 % interval; NaN when fewer than two replicates have points */
} boil_estimate;

/* How much of an output's variance comes from each input: alone (first), and with all that it does together with
   others (total). Estimates: by chance slightly negative where the index is 0. NaN when the output never varies. The
   bars of a yes-or-no output need happenings: measured on u1 u2 > c, they hold the total index as often as they should
   from about ten on, the first index only from about 150. */
typedef struct {
    size_t points; /* complete ones used, of points * replicates: all their inputs + 2 rows gave a number. If rows lack
                      one because something did not happen, the indices are those of the cases where it did */
    boil_estimate mean, variance;
    boil_estimate first[BOIL_SAMPLING_INPUTS], total[BOIL_SAMPLING_INPUTS];
} boil_sensitivity;

void boil_sampling_sensitivity(const boil_sampling_results *r, size_t output, boil_sensitivity *out);

#endif
