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

/* A number and a measure, "2 bags", if that is what comes: the cursor passes it, and `number` says how many. NULL: it does not. */
const own_measure *measure_taken(cursor *c, const measure_list *all, quantity *q, double *number);

/* False, with a message, where a number is counted in what is commonly a measure, which is not said to be one here. */
bool measure_is_known(const cursor *c, unsigned dimensions);

#endif
