/* practise/screen/screen.h -- practising on a terminal of 80 by 24: the clock runs, a key opens an act filled in with a usual amount,
   and what the bath does is seen as it comes. */
#ifndef PRACTISE_SCREEN_SCREEN_H
#define PRACTISE_SCREEN_SCREEN_H

#include "practise/lines.h"

typedef struct {
    unit_system units;
    const scenario *read; /* of which the shift was begun, which keeps no question of a lesson */
    double speed;         /* of the clock, times as fast as a real one; 1 to 3600 */
    const char *save;     /* where the shift is to be kept; NULL: it is asked for */
    const char *page;     /* where the page is to be written; NULL: debrief.html */
} screen_options;

typedef struct {
    bool refused;       /* memory */
    bool unusable;      /* the terminal cannot be made a screen: nothing was begun */
    int signal;         /* that ended it; 0: none */
    bool stopped;       /* the run ended before the shift */
    TEXT_OF(4096) save; /* where it is to be kept; empty: nowhere. No longer path can be opened (Linux, PATH_MAX) */
} screen_outcome;

screen_outcome screen_practise(shift *s, const screen_options *o);

#endif
