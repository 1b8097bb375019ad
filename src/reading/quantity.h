/* reading/quantity.h -- the numbers of the scenario language: measure, quantity, percentage, range, clock. Every function
   reads at the cursor and moves it; on a mistake it reports and returns false. `what` is the name a message gives to the
   value. */
#ifndef READING_QUANTITY_H
#define READING_QUANTITY_H

#include "base/units.h"
#include "reading/cursor.h"

typedef struct {
    double si;
    unit_dimension dimension;
    const unit *unit; /* NULL when written with "per", or as a clock */
    const char *text; /* as written */
    size_t length;
} quantity;

/* What is sane, in a unit of the table: both ends allowed. */
typedef struct {
    const char *unit; /* NULL: a bare number */
    double low, high;
} bounds;

bool quantity_read(cursor *c, const char *what, unsigned dimensions, quantity *q); /* number and unit */
bool quantity_share(cursor *c, const char *what, quantity *q);                     /* 60 %, as 0.6 */
bool quantity_factor(cursor *c, const char *what, quantity *q);                    /* a bare number */
bool quantity_clock(cursor *c, const char *what, quantity *q);                     /* 1:30 or 1:30:00, in s */
bool quantity_when(cursor *c, const char *what, quantity *q);                      /* a clock or a time with its unit */

/* Says so when a quantity lies outside: the bounds as documented and in the person's own unit. */
bool quantity_within(const cursor *c, const char *what, const quantity *q, const bounds *b);

#endif
