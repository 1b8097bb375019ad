/* practise/lines.h -- practising by lines: orders in, what happens out. For files of orders, pipes, and terminals that show no
   screen. */
#ifndef PRACTISE_LINES_H
#define PRACTISE_LINES_H

#include "practise/shift.h"

typedef struct {
    const char *orders; /* file of orders; "-": standard input */
    bool asks;          /* somebody types: a sign to go on is shown */
    unit_system units;
    const scenario *read; /* of which the shift was begun */
    FILE *to;
} lines_options;

typedef struct {
    bool mistaken; /* a line had a mistake, and was passed over */
    bool never;    /* what an act waited for never came */
    bool stopped;  /* the run ended before the shift */
    bool left;     /* it was left before the shift's end */
    bool refused;  /* memory */
    bool unread;   /* the orders could not be read: the complaint is made */
} lines_outcome;

lines_outcome lines_practise(shift *s, const lines_options *o);

#endif
