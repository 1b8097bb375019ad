/* support/tally.h -- mean and worst deviation of a model from a table of published values. */
#ifndef SUPPORT_TALLY_H
#define SUPPORT_TALLY_H

#include "support/pins.h"

#include <math.h>

typedef struct {
    int count;
    double sum, worst;
    char worst_row[16];
} tally;

static inline void tally_add(tally *t, double deviation, const char *row)
{
    t->count++;
    t->sum += deviation;
    if (fabs(deviation) > fabs(t->worst)) {
        t->worst = deviation;
        snprintf(t->worst_row, sizeof t->worst_row, "%s", row);
    }
}

static inline void tally_print(const tally *t, const char *what, const char *unit)
{
    assert_true(t->count > 0);
    print_message("%s: %d values, mean %+.3g, worst %+.3g %s (%s)\n", what, t->count, t->sum / t->count, t->worst, unit,
                  t->worst_row);
}

#endif
