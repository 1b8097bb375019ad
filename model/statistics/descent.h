/* statistics/descent.h -- down to the least sum of squares of residuals r(u), from a start, by Levenberg's and Marquardt's method.

   A step d makes |r + J d|^2 + mu |D d|^2 least; J by central differences, D the longest that each column of J has been so far
   [Moré, Lecture Notes in Mathematics 630 (1978) 105]. mu begins at a thousandth; with rho, the gain over that expected, a step
   that gains multiplies it by max(1/3, 1 - (2 rho - 1)^3), one that does not by 2, 4, 8, ... [Nielsen, IMM-REP-1999-05,
   Technical University of Denmark]. Both from memory.

   All memory is taken once, by boil_descent_begin. */
#ifndef BOIL_STATISTICS_DESCENT_H
#define BOIL_STATISTICS_DESCENT_H

#include <stdbool.h>
#include <stddef.h>

#include "boilback.h"
#include "statistics/triangle.h"

typedef struct {
    /* What is asked. */
    boil_outcome (*residuals)(void *context, const double u[], double residual[]); /* other than BOIL_OK: u is no case */
    void *context;
    size_t rows, parameters; /* rows at least as many; parameters 1 to BOIL_LEAST_SQUARES_PARAMETERS */
    double difference;       /* of u, for derivatives */
    /* Where it is: to be read. */
    double u[BOIL_LEAST_SQUARES_PARAMETERS]; /* the start is to be written here */
    double *residual;
    double *jacobian; /* column i begins at jacobian + i rows */
    /* Its own. */
    double *memory, *trial, *other, *right;
    boil_triangle system;
    double gradient[BOIL_LEAST_SQUARES_PARAMETERS], scale[BOIL_LEAST_SQUARES_PARAMETERS], step[BOIL_LEAST_SQUARES_PARAMETERS];
    double damping, growth;
} boil_descent;

/* With what is asked filled in. BOIL_OK or BOIL_NO_MEMORY; to be freed by boil_descent_end either way. */
boil_outcome boil_descent_begin(boil_descent *d);

/* From u down. BOIL_OK, converged or not; the failure of the residuals at the start; BOIL_NO_ROOT where there is no
   derivative; BOIL_NO_MEMORY as soon as the residuals say so. */
boil_outcome boil_descent_run(boil_descent *d, size_t most_steps, bool *converged);

void boil_descent_end(boil_descent *d);

#endif
