/* random/figures.h -- the figures of a run side by side with those of another, each against its own size: of the tank, the bath
   or the shift. */
#ifndef RANDOM_FIGURES_H
#define RANDOM_FIGURES_H

#include "boilback.h"

typedef struct {
    double apart; /* furthest, relative to its size */
    const char *name;
    double one, other;
} figures_apart;

/* What one has more in it than the other may make of masses, levels and times. */
typedef struct {
    double mass_kg, level_m, time_s;
} figures_more;

/* Loads are not compared where there are more of them in one. */
figures_apart figures_compare(const boil_plant *p, const boil_history *one, const boil_history *other, figures_more more);

#endif
