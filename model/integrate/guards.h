/* integrate/guards.h -- values of which each rises through zero where something changes. One that rests within `arm` of zero at
   the beginning must clear arm to count; from the moment it has been below -arm, zero. One that begins above arm is off until it
   has been below. */
#ifndef BOIL_INTEGRATE_GUARDS_H
#define BOIL_INTEGRATE_GUARDS_H

#include <stdbool.h>
#include <stddef.h>

#define BOIL_GUARDS_MAX 16

typedef struct {
    size_t count;
    double arm[BOIL_GUARDS_MAX];
    double before[BOIL_GUARDS_MAX];  /* as last noted */
    double earlier[BOIL_GUARDS_MAX]; /* as noted before that, */
    double earlier_s;                /* so long before; 0: not since the beginning */
    bool armed[BOIL_GUARDS_MAX];
} boil_guards;

void boil_guards_begin(boil_guards *g, const double now[]);               /* count and arm are given */
void boil_guards_note(boil_guards *g, const double now[], double step_s); /* so long after they were last noted */

double boil_guards_beyond(const boil_guards *g, size_t i,
                          double value);                              /* the height it must rise through: 0 or more is past */
bool boil_guards_rises(const boil_guards *g, size_t i, double value); /* since it was noted */

/* One that is not past may have been, in between: it is closer to that than three times what it has moved, and has not fallen twice. */
bool boil_guards_near(const boil_guards *g, const double now[]);

/* Likewise, step_s after they were last noted: the parabola through the last three of it has its top between the last two, and past. */
bool boil_guards_top(const boil_guards *g, const double now[], double step_s);

#endif
