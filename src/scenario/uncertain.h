/* scenario/uncertain.h -- a line of [uncertain]: what is not known well, and how well it is known.

       heat efficiency        = 50 % to 70 %                       evenly in between
       bath elevation factor  = 0.92 to 1.0, likely 0.98           triangular
       bath boiling point     = 285 degF +- 1 degF                 normal, one standard deviation, cut off at three
       mixing time factor     = 0.34 | 1 | 3                       each as likely

   A setting is named by the words of its section, then its own; constants of the model stand by themselves. */
#ifndef SCENARIO_UNCERTAIN_H
#define SCENARIO_UNCERTAIN_H

#include "scenario/keys.h"
#include "statistics/sampling.h"

#define UNCERTAIN_WRITTEN 240 /* bytes of a spread as written: sixteen values have room */

/* A setting of one number, or a constant. */
typedef struct {
    char words[64]; /* "heat efficiency" */
    const key *key; /* NULL: a constant */
    const char *meaning;
    key_kind kind;            /* quantity, share or factor */
    unit_dimension dimension; /* that of its values */
    bounds within;
    size_t where; /* in the scenario */
} uncertain_thing;

typedef struct uncertain {
    uncertain_thing thing;
    boil_spread spread;                 /* in SI */
    char as_written[UNCERTAIN_WRITTEN]; /* the spread as written */
    size_t line;                        /* of the file */
} uncertain;

const uncertain_thing *uncertain_constant(size_t index); /* for the manual; NULL beyond the last */

uncertain_thing uncertain_setting(const key *k);

bool uncertain_read(cursor *c, uncertain *out);

/* "heat input = 200 kBtu/h to 500 kBtu/h : 7": evenly spaced steps, both ends included. */
#define UNCERTAIN_STEPS_MAX 200

typedef struct {
    uncertain over;
    size_t steps;
} uncertain_grid;

bool uncertain_grid_read(cursor *c, void *grid);

#endif
