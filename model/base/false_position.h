/* base/false_position.h -- a bracket about where a function passes a value, closed in on by false position with the Illinois
   change of the end that stays [Dowell & Jarratt, BIT 11 (1971) 168, from memory]. For who asks himself, and looks at more than
   the number. */
#ifndef BOIL_BASE_FALSE_POSITION_H
#define BOIL_BASE_FALSE_POSITION_H

#include <stdbool.h>

/* Not past the value at low, past it at high; at either so much less or more than it. NaN: unknown there. */
typedef struct {
    double low, at_low, high, at_high;
    int side; /* the end that moved last: 1 high, -1 low; 0: none yet */
} boil_false_position;

double boil_false_position_next(const boil_false_position *f); /* between the ends: by a straight line, else in the middle */

/* At x it is v: past or not. */
void boil_false_position_narrow(boil_false_position *f, double x, double v, bool past);

#endif
