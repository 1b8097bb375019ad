/* lesson/aftermath.h -- what an addition led to, the return of the boil included for which it waited afloat: the record of an addition
   ends ten minutes behind its pour (boilback.h), and what floats may let go an hour later. SI. */
#ifndef LESSON_AFTERMATH_H
#define LESSON_AFTERMATH_H

#include "boilback.h"

typedef struct {
    double steam_kg_s;  /* most that formed */
    bool more_than;     /* that or more */
    double freeboard_m; /* least; below 0: over the rim */
} aftermath;

aftermath aftermath_of(const boil_plant *p, const boil_history *h, const boil_addition_result *a);

#endif
