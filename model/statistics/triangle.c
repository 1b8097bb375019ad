#include "statistics/triangle.h"

#include <math.h>

enum { MOST = (int)BOIL_LEAST_SQUARES_PARAMETERS };

static double product(const double a[], const double b[], size_t count)
{
    double sum = 0;
    for (size_t i = 0; i < count; i++)
        sum += a[i] * b[i];
    return sum;
}

static void exchange(boil_triangle *t, size_t j, size_t k)
{
    for (size_t i = 0; i < t->rows; i++) {
        double kept = t->at[j * t->rows + i];
        t->at[j * t->rows + i] = t->at[k * t->rows + i];
        t->at[k * t->rows + i] = kept;
    }
    size_t kept = t->order[j];
    t->order[j] = t->order[k];
    t->order[k] = kept;
}

static void bring_longest(boil_triangle *t, size_t k)
{
    size_t longest = k;
    double most = -1;
    for (size_t j = k; j < t->columns; j++) {
        const double *rest = t->at + j * t->rows + k;
        double length = product(rest, rest, t->rows - k);
        if (length > most) {
            most = length;
            longest = j;
        }
    }
    if (longest != k)
        exchange(t, k, longest);
}

/* From x to v of the reflection 1 - v v'/share that leaves of x but its first element, which is what comes back. */
static double reflect(double *x, size_t count, double *share)
{
    double length = sqrt(product(x, x, count)), first = x[0] > 0 ? -length : length;
    x[0] -= first;
    *share = length * fabs(x[0]);
    return first;
}

static void apply(const double *v, double share, size_t count, double *to)
{
    double times = product(v, to, count) / share;
    for (size_t i = 0; i < count; i++)
        to[i] -= times * v[i];
}

void boil_triangle_make(boil_triangle *t, double *right)
{
    for (size_t k = 0; k < t->columns; k++)
        t->order[k] = k;
    for (size_t k = 0; k < t->columns; k++) {
        bring_longest(t, k);
        double *v = t->at + k * t->rows + k, share;
        t->diagonal[k] = reflect(v, t->rows - k, &share);
        for (size_t j = k + 1; share > 0 && j < t->columns; j++)
            apply(v, share, t->rows - k, t->at + j * t->rows + k);
        if (share > 0 && right != NULL)
            apply(v, share, t->rows - k, right + k);
    }
}

/* R of the first `count` columns times x is as given, x in R's own order. */
static void back(const boil_triangle *t, size_t count, const double given[], double x[])
{
    for (size_t k = count; k-- > 0;) {
        x[k] = given[k];
        for (size_t j = k + 1; j < count; j++)
            x[k] -= t->at[j * t->rows + k] * x[j];
        x[k] /= t->diagonal[k];
    }
}

void boil_triangle_solve(const boil_triangle *t, const double right[], double x[])
{
    double own[MOST];
    back(t, t->columns, right, own);
    for (size_t j = 0; j < t->columns; j++)
        x[t->order[j]] = own[j];
}

void boil_triangle_covariance(const boil_triangle *t, double c[][BOIL_LEAST_SQUARES_PARAMETERS])
{
    const double dependent = 1e-12;
    double inverse[MOST][MOST]; /* row j: column j of R^-1 */
    size_t rank = 0;
    while (rank < t->columns && fabs(t->diagonal[rank]) > dependent * fabs(t->diagonal[0]))
        rank++;
    for (size_t j = 0; j < rank; j++) {
        double unit[MOST] = {0};
        unit[j] = 1;
        back(t, rank, unit, inverse[j]);
    }
    for (size_t i = 0; i < t->columns; i++)
        for (size_t k = 0; k < t->columns; k++) {
            double *sum = &c[t->order[i]][t->order[k]];
            *sum = 0;
            for (size_t j = 0; i < rank && k < rank && j < rank; j++)
                *sum += inverse[j][i] * inverse[j][k];
        }
}
