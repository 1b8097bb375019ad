/* actions/measure.h -- a shop's own measures: "bag = 50 lb", and then "salts 2 bags over 30 min". */
#ifndef ACTIONS_MEASURE_H
#define ACTIONS_MEASURE_H

#include "reading/quantity.h"

#define MEASURES_MAX 20

typedef struct {
    char word[24];
    double si;                /* of one: m3 or kg */
    unit_dimension dimension; /* a volume or a mass */
} own_measure;

typedef struct {
    own_measure list[MEASURES_MAX];
    size_t count;
} measure_list;

/* Reads "WORD = AMOUNT" and adds it; a word of the language or of a unit is refused. False, with a message, then. */
bool measure_read(cursor *c, measure_list *all);

/* An amount for an act, "5 gal" or "2 bags", of the dimensions that it may have; *counted: of what, NULL: of a unit; *number: how many.
   False, with a message, otherwise. */
bool measure_amount(cursor *c, const measure_list *all, const char *act, unsigned dimensions, quantity *q,
                    const own_measure **counted, double *number);

#endif
