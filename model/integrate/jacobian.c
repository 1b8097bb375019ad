#include "integrate/jacobian.h"

#include <math.h>
#include <string.h>

enum { LEADS = BOIL_SYSTEM_LEADS_MAX, BLOCK = BOIL_SYSTEM_BLOCK_MAX };

void boil_jacobian_init(boil_jacobian *j, double *room, size_t unknowns)
{
    double **by_leads[] = {&j->by_leads, &j->on_leads, &j->with_leads}, **by_block[] = {&j->own, &j->own_inverse};
    for (size_t i = 0; i < sizeof by_leads / sizeof by_leads[0]; i++, room += LEADS * unknowns)
        *by_leads[i] = room;
    for (size_t i = 0; i < sizeof by_block / sizeof by_block[0]; i++, room += BLOCK * unknowns)
        *by_block[i] = room;
}

/* Far above rounding of what the rates find by searches, far below where they bend. */
static double increment(const boil_system *s, const double y[], size_t i)
{
    return 1e-6 * fmax(fabs(y[i]), 1e-2 * s->size[i]);
}

/* What one unknown does, as rates that it moves: dydt becomes df/dy. */
static void look(const boil_system *s, size_t unknown, double t, const double rates[], double trial[], double dydt[])
{
    double before = trial[unknown];
    trial[unknown] += increment(s, trial, unknown);
    double d = trial[unknown] - before;
    bool told = boil_system_rates(s, t, trial, dydt);
    trial[unknown] = before;
    for (size_t i = 0; i < s->unknowns; i++)
        dydt[i] = told ? (dydt[i] - rates[i]) / d : 0;
}

/* What a lead does. Of one that only follows it is known. */
static void look_at_lead(const boil_system *s, size_t k, double t, const double rates[], double trial[], double dydt[])
{
    if (!(s->lag_s[k] > 0)) {
        look(s, s->lead[k], t, rates, trial, dydt);
        return;
    }
    memset(dydt, 0, s->unknowns * sizeof *dydt);
    dydt[s->lead[k]] = -1 / s->lag_s[k];
}

static void take_block(boil_jacobian *j, const boil_system *s, size_t first, size_t count, double t, const double rates[],
                       double trial[], double dydt[])
{
    for (size_t k = first; k < first + count; k++) {
        look(s, k, t, rates, trial, dydt);
        for (size_t i = 0; i < s->leads; i++)
            j->on_leads[k * LEADS + i] = dydt[s->lead[i]];
        for (size_t i = first; i < first + count; i++)
            j->own[i * BLOCK + k - first] = dydt[i];
    }
}

void boil_jacobian_take(boil_jacobian *j, const boil_system *s, double t, const double y[], const double rates[],
                        double trial[], double dydt[])
{
    memcpy(trial, y, s->unknowns * sizeof *y);
    for (size_t k = 0; k < s->leads; k++) {
        look_at_lead(s, k, t, rates, trial, dydt);
        for (size_t i = 0; i < s->leads; i++)
            j->lead[i][k] = dydt[s->lead[i]];
        for (size_t i = s->blocks_first; i < s->unknowns; i++)
            j->by_leads[i * LEADS + k] = dydt[i];
    }
    size_t count;
    for (size_t b = 0, first = s->blocks_first; (count = boil_system_block(s, b)) > 0; b++, first += count)
        take_block(j, s, first, count, t, rates, trial, dydt);
    j->w = 0;
}

/* Row of a square matrix of n columns with its inverse to come beside it. */
typedef double double_row[2 * LEADS];

static bool eliminate(double_row a[], size_t n, size_t k)
{
    size_t best = k;
    for (size_t i = k + 1; i < n; i++)
        if (fabs(a[i][k]) > fabs(a[best][k]))
            best = i;
    if (!(fabs(a[best][k]) > 0))
        return false;
    for (size_t c = 0; c < 2 * n && best != k; c++) {
        double other = a[best][c];
        a[best][c] = a[k][c];
        a[k][c] = other;
    }
    double pivot = 1 / a[k][k];
    for (size_t c = k; c < 2 * n; c++)
        a[k][c] *= pivot;
    for (size_t i = 0; i < n; i++) {
        double of = a[i][k];
        for (size_t c = k; c < 2 * n && i != k && of != 0; c++)
            a[i][c] -= of * a[k][c];
    }
    return true;
}

/* By Gauss and Jordan; the matrix stands in the left half. */
static bool invert(double_row a[], size_t n)
{
    for (size_t i = 0; i < n; i++)
        for (size_t c = 0; c < n; c++)
            a[i][n + c] = i == c;
    for (size_t k = 0; k < n; k++)
        if (!eliminate(a, n, k))
            return false;
    return true;
}

static bool factor_block(boil_jacobian *j, const boil_system *s, size_t first, size_t n, double w)
{
    double_row a[BLOCK];
    for (size_t i = 0; i < n; i++)
        for (size_t c = 0; c < n; c++)
            a[i][c] = (i == c) - w * j->own[(first + i) * BLOCK + c];
    if (!invert(a, n))
        return false;
    for (size_t i = 0; i < n; i++) {
        memcpy(j->own_inverse + (first + i) * BLOCK, a[i] + n, n * sizeof(double));
        for (size_t k = 0; k < s->leads; k++) {
            double sum = 0;
            for (size_t c = 0; c < n; c++)
                sum += a[i][n + c] * j->by_leads[(first + c) * LEADS + k];
            j->with_leads[(first + i) * LEADS + k] = w * sum;
        }
    }
    return true;
}

/* I - w A of the leads, less what the blocks give back. */
static double left_of(const boil_jacobian *j, const boil_system *s, size_t row, size_t column, double w)
{
    double sum = j->lead[row][column];
    for (size_t i = s->blocks_first; i < s->unknowns; i++)
        sum += j->on_leads[i * LEADS + row] * j->with_leads[i * LEADS + column];
    return (row == column) - w * sum;
}

/* Scaled by the sizes: joules stand beside kilograms. */
static bool factor_leads(boil_jacobian *j, const boil_system *s, double w)
{
    double_row a[LEADS];
    size_t n = s->leads;
    for (size_t i = 0; i < n; i++)
        for (size_t c = 0; c < n; c++)
            a[i][c] = left_of(j, s, i, c, w) * s->size[s->lead[c]] / s->size[s->lead[i]];
    if (!invert(a, n))
        return false;
    for (size_t i = 0; i < n; i++)
        for (size_t c = 0; c < n; c++)
            j->inverse[i][c] = a[i][n + c] * s->size[s->lead[i]] / s->size[s->lead[c]];
    return true;
}

bool boil_jacobian_factor(boil_jacobian *j, const boil_system *s, double w)
{
    if (j->w == w)
        return true;
    bool done = true;
    size_t count;
    for (size_t b = 0, first = s->blocks_first; done && (count = boil_system_block(s, b)) > 0; b++, first += count)
        done = factor_block(j, s, first, count, w);
    done = done && factor_leads(j, s, w);
    j->w = done ? w : 0;
    return done;
}

static void solve_block(const boil_jacobian *j, size_t first, size_t n, double x[])
{
    double r[BLOCK];
    memcpy(r, x + first, n * sizeof(double));
    for (size_t i = 0; i < n; i++) {
        const double *row = j->own_inverse + (first + i) * BLOCK;
        x[first + i] = 0;
        for (size_t c = 0; c < n; c++)
            x[first + i] += row[c] * r[c];
    }
}

static void solve_leads(const boil_jacobian *j, const boil_system *s, double x[])
{
    double r[LEADS];
    for (size_t i = 0; i < s->leads; i++) {
        r[i] = x[s->lead[i]];
        for (size_t k = s->blocks_first; k < s->unknowns; k++)
            r[i] += j->w * j->on_leads[k * LEADS + i] * x[k];
    }
    for (size_t i = 0; i < s->leads; i++) {
        double sum = 0;
        for (size_t c = 0; c < s->leads; c++)
            sum += j->inverse[i][c] * r[c];
        x[s->lead[i]] = sum;
    }
}

void boil_jacobian_solve(const boil_jacobian *j, const boil_system *s, double x[])
{
    size_t count;
    for (size_t b = 0, first = s->blocks_first; (count = boil_system_block(s, b)) > 0; b++, first += count)
        solve_block(j, first, count, x);
    solve_leads(j, s, x);
    for (size_t i = s->blocks_first; i < s->unknowns; i++)
        for (size_t c = 0; c < s->leads; c++)
            x[i] += j->with_leads[i * LEADS + c] * x[s->lead[c]];
}

double boil_jacobian_own(const boil_jacobian *j, const boil_system *s, size_t unknown)
{
    for (size_t i = 0; i < s->leads; i++)
        if (s->lead[i] == unknown)
            return j->lead[i][i];
    size_t count;
    for (size_t b = 0, first = s->blocks_first; (count = boil_system_block(s, b)) > 0; b++, first += count)
        if (unknown >= first && unknown < first + count)
            return j->own[unknown * BLOCK + (unknown - first)];
    return 0;
}
