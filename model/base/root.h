/* base/root.h -- where a function crosses zero between two ends, by Brent's method (GSL's) in memory of the caller's. Nothing is
   allocated, and nothing is asked of GSL that would make it call its error handler, which may end the process. */
#ifndef BOIL_BASE_ROOT_H
#define BOIL_BASE_ROOT_H

#include <gsl/gsl_roots.h>
#include <stdbool.h>

typedef struct {
    double (*of)(double x, void *context); /* not a number: it failed there */
    void *context;
    double low, high, at_low, at_high;
    double best, near, far; /* the best guess, and the ends of the bracket around it */
    bool failed;            /* the function did */
    gsl_root_fsolver solver;
    gsl_function function;
    union {
        double numbers[32]; /* what the method remembers: eleven in GSL 2.7 */
    } state;
} boil_root;

/* Asks at both ends, low < high. False when there is no crossing between them, or the function fails. Keep *r where it is. */
bool boil_root_begin(boil_root *r, double (*of)(double x, void *context), void *context, double low, double high);

bool boil_root_step(boil_root *r); /* one more step; false when the function fails */

#endif
