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

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "boilback.h"

/* Mean and standard deviation of a spread that makes sense; a normal one's are its own, before it is cut off. */
void boil_spread_moments(const boil_spread *s, double *mean, double *deviation);

/* Whether a row is one of the draws, A or B. */
bool boil_sampling_is_draw(const boil_sampling *s, size_t row);

#endif
