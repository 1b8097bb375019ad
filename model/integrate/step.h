/* integrate/step.h -- one step of a system, from (t, y0) with the rates f0 over h to y1, with an estimate of its error, by one of
   two methods, and the room for it. Sums are carried along but stand still within a step. */
#ifndef BOIL_INTEGRATE_STEP_H
#define BOIL_INTEGRATE_STEP_H

#include "integrate/jacobian.h"
#include "integrate/system.h"

#define BOIL_STEP_STAGES 6

/* Doubles of room for each unknown, which the caller gives. */
#define BOIL_STEP_ROOM (6 + 2 * (BOIL_STEP_STAGES - 1) + BOIL_JACOBIAN_ROOM)

typedef struct {
    double *y0, *f0; /* given */
    double *y1, *error;
    double *f1; /* at the end, for the caller to fill */
    double *trial;
    /* Of each stage the rates, and A times what it has moved; of the first f0, and NULL: it has not moved. */
    double *f[BOIL_STEP_STAGES], *g[BOIL_STEP_STAGES];
    boil_jacobian jacobian;
} boil_step;

void boil_step_init(boil_step *s, double *room, size_t unknowns);

/* Of each unknown but the sums: to[i] += sum of weight[k] of[k][i]. */
void boil_step_gather(const boil_system *s, const double weight[], double *const of[], int count, double to[]);

/* y1 and its error from what the stages weigh in it, sums too. The second weighs nothing, in either method. */
void boil_step_end(boil_step *p, const boil_system *s, double h, const double weight[], const double weight_of_error[]);

#endif
