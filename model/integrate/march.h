/* integrate/march.h -- carries a system from event to event by steps as long as the solution allows.

   Steps are linearly implicit (integrate/ark.h); A is kept for several steps, and from one beginning to the next while the system
   is of the same kind. An event is a guard that rises through zero (integrate/guards.h): it is sought on the cubic between the ends
   of a step, and between its quarters where a guard comes near in a long step, or where the parabola through its last three values has
   its top past zero; then the step is taken anew to just past it, so that the state there is as exact as any, and to the first of all
   that have risen by then. A guard that rises and falls again between two quarters, or where neither says so, is not seen.
   Nothing is random and nothing hangs on where things lie in memory: the same problem gives the same digits. */
#ifndef BOIL_INTEGRATE_MARCH_H
#define BOIL_INTEGRATE_MARCH_H

#include "integrate/guards.h"
#include "integrate/hermite.h"
#include "integrate/system.h"

typedef struct {
    boil_system system;
    int kind; /* systems of one kind, with as many unknowns, have much the same Jacobian */
    size_t guards;
    void (*guard)(double t, const double y[], double g[], void *context); /* the system's context */
    double arm[BOIL_GUARDS_MAX];
    double near[BOIL_GUARDS_MAX]; /* a guard so far below zero may be taken to have risen, where it does rise */
    /* Sets the system's sizes for a step between two states; NULL: they stay as they are. */
    void (*sizes)(const double y0[], const double y1[], void *context);
    double tolerance; /* error per step relative to size */
    double step_max_s;
    bool plain; /* by integrate/fehlberg.h: what the other is measured against */
} boil_march_problem;

typedef struct boil_march boil_march;

boil_march *boil_march_create(void); /* NULL: no memory */
void boil_march_free(boil_march *m); /* NULL is fine */

/* It becomes one that has not marched yet, with room for so many unknowns; or what another is that was reset: once begun it goes on as
   that would. BOIL_NO_MEMORY: it has too little room, and gets no more. */
boil_outcome boil_march_reset(boil_march *m, size_t unknowns);
boil_outcome boil_march_copy(boil_march *to, const boil_march *from);

/* Before the first step, and after any change of y or of the system from outside. What the problem refers to must stand until the
   next beginning. BOIL_NO_MEMORY: more unknowns than ever before, and no room for them. */
boil_outcome boil_march_begin(boil_march *m, const boil_march_problem *p, double t, const double y[]);

typedef enum {
    BOIL_MARCH_STEPPED = 2, /* one step taken, short of the end */
    BOIL_MARCH_EVENT = 1,   /* a guard rose: which is in *guard */
    BOIL_MARCH_ARRIVED = 0, /* t is the end */
    BOIL_MARCH_FAILED = -1  /* the rates refuse any step from here; t and y are the last good ones */
} boil_march_news;

/* One accepted step toward `end`. */
boil_march_news boil_march_step(boil_march *m, double *t, double y[], double end, size_t *guard);

/* The step last taken, to look into; good until the next. Of an unknown that answers much faster than the step is long the slope at
   its ends is mostly error, and is drawn in. */
boil_hermite boil_march_within(boil_march *m);

size_t boil_march_steps(const boil_march *m); /* all there have been */
size_t boil_march_evaluations(const boil_march *m);

#endif
