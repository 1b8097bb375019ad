/* statistics/triangle.h -- a tall matrix A as Q R, R an upper triangle, by Householder's reflections, the longest remaining column
   first [Businger & Golub, Numer. Math. 7 (1965) 269, from memory]. In the caller's memory; nothing is allocated. */
#ifndef BOIL_STATISTICS_TRIANGLE_H
#define BOIL_STATISTICS_TRIANGLE_H

#include <stddef.h>

#include "boilback.h"

typedef struct {
    size_t rows, columns; /* columns at most BOIL_LEAST_SQUARES_PARAMETERS and rows */
    double *at;           /* A, then R above the diagonal: column j of it begins at `at + j rows` */
    double diagonal[BOIL_LEAST_SQUARES_PARAMETERS];
    size_t order[BOIL_LEAST_SQUARES_PARAMETERS]; /* column j of R is column order[j] of A */
} boil_triangle;

/* Rows, columns and `at` are given. `right` has as many rows, and is Q' times itself afterwards; may be NULL. */
void boil_triangle_make(boil_triangle *t, double *right);

/* x of least |A x - right|, with Q' right; the diagonal must not be zero. */
void boil_triangle_solve(const boil_triangle *t, const double right[], double x[]);

/* (A'A)^-1; 0 for a column that the others determine to 1e-12. */
void boil_triangle_covariance(const boil_triangle *t, double c[][BOIL_LEAST_SQUARES_PARAMETERS]);

#endif
