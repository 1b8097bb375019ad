#include "integrate/jacobian.h"

#include <math.h>
#include <string.h>

enum { LEADS = BOIL_SYSTEM_LEADS_MAX, BLOCK = BOIL_SYSTEM_BLOCK_MAX };

void boil_jacobian_init(boil_jacobian *j, double *room, size_t unknowns)
{
    j->by_lead = room;
    j->own = room + LEADS * unknowns;
    j->blocks_inverse = j->own + BLOCK * unknowns;
}

/* Far above rounding of what the rates find by searches, far below where they bend. */
static double increment(const boil_system *s, const double y[], size_t i)
{
    return 1e-6 * fmax(fabs(y[i]), 1e-2 * s->size[i]);
}

static void take_lead(boil_jacobian *j, const boil_system *s, size_t column, double t, const double rates[], double trial[],
                      double dydt[])
{
    size_t at = s->lead[column];
    double before = trial[at];
    trial[at] += increment(s, trial, at);
    double d = trial[at] - before;
    bool told = boil_system_rates(s, t, trial, dydt);
    trial[at] = before;
    for (size_t i = 0; i < s->leads; i++)
        j->lead[i][column] = told ? (dydt[s->lead[i]] - rates[s->lead[i]]) / d : 0;
    for (size_t i = s->blocks_first; i < s->unknowns; i++)
        j->by_lead[i * LEADS + column] = told ? (dydt[i] - rates[i]) / d : 0;
}

/* The unknowns at one place in all blocks. False: no block has so many. */
static bool move_place(const boil_system *s, size_t place, const double y[], double trial[])
{
    bool any = false;
    size_t count;
    for (size_t b = 0, first = s->blocks_first; (count = boil_system_block(s, b)) > 0; b++, first += count)
        if (place < count) {
            trial[first + place] = y[first + place] + increment(s, y, first + place);
            any = true;
        }
    return any;
}

static void take_place(boil_jacobian *j, const boil_system *s, size_t place, const double y[], const double rates[],
                       const double trial[], const double dydt[])
{
    size_t count;
    for (size_t b = 0, first = s->blocks_first; (count = boil_system_block(s, b)) > 0; b++, first += count)
        for (size_t i = 0; place < count && i < count; i++)
            j->own[(first + i) * BLOCK + place] =
                dydt != NULL ? (dydt[first + i] - rates[first + i]) / (trial[first + place] - y[first + place]) : 0;
}

void boil_jacobian_take(boil_jacobian *j, const boil_system *s, double t, const double y[], const double rates[],
                        double trial[], double dydt[])
{
    memcpy(trial, y, s->unknowns * sizeof *y);
    for (size_t i = 0; i < s->leads; i++)
        take_lead(j, s, i, t, rates, trial, dydt);
    for (size_t place = 0; place < BLOCK && move_place(s, place, y, trial); place++) {
        bool told = boil_system_rates(s, t, trial, dydt);
        take_place(j, s, place, y, rates, trial, told ? dydt : NULL);
        memcpy(trial, y, s->unknowns * sizeof *y);
    }
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

/* Scaled by the sizes: joules stand beside kilograms. */
static bool factor_leads(boil_jacobian *j, const boil_system *s, double w)
{
    double_row a[LEADS];
    size_t n = s->leads;
    for (size_t i = 0; i < n; i++)
        for (size_t c = 0; c < n; c++)
            a[i][c] = (i == c) - w * j->lead[i][c] * s->size[s->lead[c]] / s->size[s->lead[i]];
    if (!invert(a, n))
        return false;
    for (size_t i = 0; i < n; i++)
        for (size_t c = 0; c < n; c++)
            j->inverse[i][c] = a[i][n + c] * s->size[s->lead[i]] / s->size[s->lead[c]];
    return true;
}

static bool factor_block(boil_jacobian *j, size_t first, size_t n, double w)
{
    double_row a[BLOCK];
    for (size_t i = 0; i < n; i++)
        for (size_t c = 0; c < n; c++)
            a[i][c] = (i == c) - w * j->own[(first + i) * BLOCK + c];
    if (!invert(a, n))
        return false;
    for (size_t i = 0; i < n; i++)
        memcpy(j->blocks_inverse + (first + i) * BLOCK, a[i] + n, n * sizeof(double));
    return true;
}

bool boil_jacobian_factor(boil_jacobian *j, const boil_system *s, double w)
{
    if (j->w == w)
        return true;
    j->w = 0;
    bool done = factor_leads(j, s, w);
    size_t count;
    for (size_t b = 0, first = s->blocks_first; done && (count = boil_system_block(s, b)) > 0; b++, first += count)
        done = factor_block(j, first, count, w);
    if (done)
        j->w = w;
    return done;
}

static void solve_leads(const boil_jacobian *j, const boil_system *s, double x[], double lead[])
{
    for (size_t i = 0; i < s->leads; i++) {
        lead[i] = 0;
        for (size_t c = 0; c < s->leads; c++)
            lead[i] += j->inverse[i][c] * x[s->lead[c]];
    }
    for (size_t i = 0; i < s->leads; i++)
        x[s->lead[i]] = lead[i];
}

static void solve_block(const boil_jacobian *j, size_t first, size_t n, double x[])
{
    double r[BLOCK];
    memcpy(r, x + first, n * sizeof(double));
    for (size_t i = 0; i < n; i++) {
        const double *row = j->blocks_inverse + (first + i) * BLOCK;
        x[first + i] = 0;
        for (size_t c = 0; c < n; c++)
            x[first + i] += row[c] * r[c];
    }
}

void boil_jacobian_solve(const boil_jacobian *j, const boil_system *s, double x[])
{
    double lead[LEADS];
    solve_leads(j, s, x, lead);
    for (size_t i = s->blocks_first; i < s->unknowns; i++)
        for (size_t c = 0; c < s->leads; c++)
            x[i] += j->w * j->by_lead[i * LEADS + c] * lead[c];
    size_t count;
    for (size_t b = 0, first = s->blocks_first; (count = boil_system_block(s, b)) > 0; b++, first += count)
        solve_block(j, first, count, x);
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
