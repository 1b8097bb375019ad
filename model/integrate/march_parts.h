/* integrate/march_parts.h -- a march, for the files that carry it out: integrate/march_steps.c (steps and their length) and
   integrate/march_events.c (where guards rise). */
#ifndef BOIL_INTEGRATE_MARCH_PARTS_H
#define BOIL_INTEGRATE_MARCH_PARTS_H

#include "integrate/march.h"
#include "integrate/step.h"

struct boil_march {
    boil_march_problem is;
    boil_system counted; /* the same, each look at the rates counted */
    boil_guards guards;
    boil_step step;
    double *room;                       /* of one piece: the step's, then slopes */
    double *slope0, *slope1, *mean;     /* slopes at the ends of a step, and in the mean of the one before, */
    double mean_s;                      /* so long; 0: there was none */
    size_t capacity;                    /* unknowns that it has room for */
    int age;                            /* steps since the Jacobian was taken; negative: there is none */
    double step_s, last_step_s, last_t; /* to be tried next; of the last step length, 0 before the first, and beginning, */
    double last_off;                    /* and its error over what is allowed */
    size_t steps, evaluations;
    size_t begun_steps; /* that there had been as it was begun */
};

/* A step from y0 of h; its error is within what is allowed, or not. False: refused. */
bool boil_march_try(boil_march *m, double t, double h);

/* Its error over what is allowed; the sizes become those of that step. */
double boil_march_off(boil_march *m);

void boil_march_guards_at(const boil_march *m, double t, const double y[], double g[]);

/* Slopes for the cubic of a step of h that has just been taken. */
boil_hermite boil_march_cubic(boil_march *m, double t, double h);

/* integrate/march_events.c: does a guard rise in the step of *h just taken, whose end has the guards g? Then the step ends just past
   that, *h long. FAILED: the rates refuse that step, and shorter ones. STEPPED: none, or none yet: *h is where that step ends. */
boil_march_news boil_march_find_event(boil_march *m, double t, double *h, const double g[], size_t *guard);

#endif
