/* integrate/integrator.h -- integrates a system of ordinary differential equations from event to event. It knows nothing of
   baths.

   Adaptive explicit Runge-Kutta steps (gsl_odeiv2); a guard that rises through zero during a step is located by repeating
   that step, shortened, inside a bracketing root finder, and the state is left just past it. A guard that rests within arm of
   zero after a restart must clear arm to count; from the moment it has been below -arm, zero. One that starts above arm is
   off until it has been below. Guards are evaluated where steps end, so a guard that rises and falls
   again within one step is not seen: step_max must be short against what the guards watch. */
#ifndef BOIL_INTEGRATE_INTEGRATOR_H
#define BOIL_INTEGRATE_INTEGRATOR_H

#include <stdbool.h>
#include <stddef.h>

#include "boilback.h"

#define BOIL_INTEGRATOR_GUARDS_MAX 12

typedef struct {
    size_t unknowns, guards;
    boil_outcome (*rates)(double t, const double y[], double dydt[], void *context); /* BOIL_OK, or a failure code */
    void (*guard)(double t, const double y[], double g[], void *context);
    void *context;
    const double *size; /* typical magnitude of each unknown, > 0; kept by the caller */
    double arm[BOIL_INTEGRATOR_GUARDS_MAX];
    double tolerance; /* error per step relative to size */
    bool use_rkc;     /* steps by integrate/integrator_rkc.h in place of a fifth-order pair: longer, coarser */
    double step_max_s;
    double step_first_s; /* first step after a start or restart */
} boil_integrator_problem;

typedef struct boil_integrator boil_integrator;

boil_integrator *boil_integrator_create(const boil_integrator_problem *c); /* NULL: no memory. Copies *c. */
void boil_integrator_free(boil_integrator *m);                             /* NULL is fine */

/* Forget everything known of the past: after any change of y or of the system from outside. */
void boil_integrator_restart(boil_integrator *m, double t, const double y[]);

typedef enum {
    BOIL_INTEGRATOR_STEPPED = 2, /* one step taken, short of the end */
    BOIL_INTEGRATOR_EVENT = 1,   /* a guard rose: which is in *guard */
    BOIL_INTEGRATOR_ARRIVED = 0, /* t is the end */
    BOIL_INTEGRATOR_FAILED = -1  /* the rates refuse any step from here; t and y are the last good ones */
} boil_integrator_status;

/* One accepted step toward `end`. */
boil_integrator_status boil_integrator_step(boil_integrator *m, double *t, double y[], double end, size_t *guard);

size_t boil_integrator_steps(const boil_integrator *m);
size_t boil_integrator_evaluations(const boil_integrator *m);
double boil_integrator_last_step(const boil_integrator *m);

#endif
