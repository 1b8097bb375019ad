/* reading/quantity.h -- the numbers of the scenario language: measure, quantity, percentage, range, clock. Every function
   reads at the cursor and moves it; on a mistake it reports and returns false. `what` is the name a message gives to the
   value. */
#ifndef READING_QUANTITY_H
#define READING_QUANTITY_H

#include "base/units.h"
#include "base/words.h"
#include "properties/solution.h"
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

bool quantity_read(cursor *c, const char *what, unsigned dimensions, quantity *q);  /* number and unit */
bool quantity_comes(cursor c, unsigned dimensions);                                 /* such a one; nothing is reported */
bool quantity_number(cursor *c, const char *what, double *value);                   /* 2, 0.5, 1/2, 1 1/2 */
bool quantity_share(cursor *c, const char *what, quantity *q);                      /* 60 %, as 0.6 */
bool quantity_factor(cursor *c, const char *what, quantity *q);                     /* a bare number */
bool quantity_count(cursor *c, const char *what, quantity *q);                      /* likewise, for what is whole */
bool quantity_turndown(cursor *c, const char *what, quantity *q);                   /* 4 to 1, or 4:1, as 4 */
bool quantity_price(cursor *c, const char *what, unsigned dimensions, quantity *q); /* "6 per 1000 gal", by the SI unit */
bool quantity_clock(cursor *c, const char *what, quantity *q);                      /* 1:30 or 1:30:00, in s */
bool quantity_when(cursor *c, const char *what, quantity *q);                       /* a clock or a time with its unit */

/* As written, for reports; a whole number with a fraction as the one number that was read: "1 1/2 in" as "1.5 in". */
words_quote quantity_echo(const quantity *q);

/* Says so when a quantity lies outside: the bounds as documented and in the person's own unit. One that is off an end by the
   rounding of its unit becomes that end, to twelve digits: as whoever else asks for it has it. */
bool quantity_within(const cursor *c, const char *what, quantity *q, const bounds *b);

/* A dry blend of salts: "80 % NaOH, 15 % NaNO3, 5 % NaNO2", by mass. */

/* Reads a blend to the end, or to a comma before the word `until` (NULL: none). Shares must add up to 100 %; the
   rounding that is allowed there is taken out. False, with a message, when it is none; `out` is then unchanged. */
bool blend_read(cursor *c, const char *what, const char *until, double out[BOIL_SALTS]);

#endif
