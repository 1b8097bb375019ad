/* design/rinse.h -- rinse water for what parts carry out. SI units. */
#ifndef BOIL_DESIGN_RINSE_H
#define BOIL_DESIGN_RINSE_H

/* Flow of water, m3/s, that keeps the last of n counterflow rinses at 1/ratio of the bath: D r^(1/n), D what is carried out,
   m3/s. [the usual short form; with one rinse the exact one is D (r - 1): "one gallon of drag-out in 99 of water is 100:1"]. It
   is never less than the exact answer, the root of 1 + k + ... + k^n = r with k = F/D, and comes to it as F grows over D. ratio
   1 or more, stages 1 or more. */
double boil_rinse_flow(double drag_out_m3_s, double ratio, double stages);

#endif
