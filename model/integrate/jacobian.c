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

void boil_jacobian_copy(boil_jacobian *to, const boil_jacobian *from, size_t unknowns)
{
    memcpy(to->lead, from->lead, sizeof to->lead);
    memcpy(to->follows, from->follows, sizeof to->follows);
    to->at = from->at;
    to->w = 0;
    if (unknowns == 0)
        return;
    memcpy(to->by_leads, from->by_leads, LEADS * unknowns * sizeof(double));
    memcpy(to->on_leads, from->on_leads, LEADS * unknowns * sizeof(double));
    memcpy(to->own, from->own, BLOCK * unknowns * sizeof(double));
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

static boil_jacobian_place place_of(const boil_system *s, const double y[])
{
    return (boil_jacobian_place){y[s->amount], y[s->content] / y[s->amount]};
}

/* What blocks take, the rates of the leads know by its sum: one look, where that moves most, tells how. */
static void share_out(boil_jacobian *j, const boil_system *s, double t, const double rates[], double trial[], double dydt[])
{
    double *takes = j->with_leads; /* room: the first of each row, until it is worked out */
    size_t most = s->blocks_first;
    for (size_t k = s->blocks_first; k < s->unknowns; k++)
        if (fabs(takes[k * LEADS] * s->size[k]) > fabs(takes[most * LEADS] * s->size[most]))
            most = k;
    bool any = s->blocks_first < s->unknowns && takes[most * LEADS] != 0;
    if (any)
        look(s, most, t, rates, trial, dydt);
    for (size_t k = s->blocks_first; k < s->unknowns; k++)
        for (size_t i = 0; i < s->leads; i++)
            j->on_leads[k * LEADS + i] = any ? dydt[s->lead[i]] * takes[k * LEADS] / takes[most * LEADS] : 0;
}

static void take_slopes(boil_jacobian *j, const boil_system *s, double t, const double y[])
{
    size_t count;
    for (size_t b = 0, first = s->blocks_first; (count = boil_system_block(s, b)) > 0; b++, first += count) {
        double takes[BLOCK];
        s->slopes(b, t, y, j->own + first * BLOCK, takes, s->context);
        for (size_t k = 0; k < count; k++)
            j->with_leads[(first + k) * LEADS] = takes[k];
    }
}

static void take_blocks(boil_jacobian *j, const boil_system *s, double t, const double rates[], double trial[], double dydt[])
{
    size_t count;
    for (size_t b = 0, first = s->blocks_first; (count = boil_system_block(s, b)) > 0; b++, first += count)
        take_block(j, s, first, count, t, rates, trial, dydt);
}

void boil_jacobian_take(boil_jacobian *j, const boil_system *s, double t, const double y[], const double rates[],
                        double trial[], double dydt[])
{
    memcpy(trial, y, s->unknowns * sizeof *y);
    j->at = place_of(s, y);
    if (s->slopes != NULL) /* before any look elsewhere: what is worked out at y may still be known */
        take_slopes(j, s, t, y);
    for (size_t k = 0; k < s->leads; k++) {
        look(s, s->lead[k], t, rates, trial, dydt);
        for (size_t i = 0; i < s->leads; i++)
            j->lead[i][k] = dydt[s->lead[i]];
        for (size_t i = 0; i < s->followers; i++)
            j->follows[i][k] = dydt[s->follower[i]];
        for (size_t i = s->blocks_first; i < s->unknowns; i++)
            j->by_leads[i * LEADS + k] = dydt[i];
    }
    if (s->slopes != NULL)
        share_out(j, s, t, rates, trial, dydt);
    else
        take_blocks(j, s, t, rates, trial, dydt);
    j->w = 0;
}

static size_t lead_of(const boil_system *s, size_t unknown)
{
    size_t k = 0;
    while (k < s->leads && s->lead[k] != unknown)
        k++;
    return k;
}

/* (1) on one rate. */
static void carry(double *by_amount, double *by_content, const boil_jacobian_place *from, const boil_jacobian_place *to)
{
    double at_held = *by_amount + from->held * *by_content;
    *by_content *= from->amount / to->amount;
    *by_amount = at_held - to->held * *by_content;
}

void boil_jacobian_carry(boil_jacobian *j, const boil_system *s, const double y[])
{
    size_t a = lead_of(s, s->amount), c = lead_of(s, s->content);
    if (a == c || a == s->leads || c == s->leads || !(y[s->amount] > s->amount_least) || !(j->at.amount > s->amount_least))
        return;
    const boil_jacobian_place from = j->at;
    j->at = place_of(s, y);
    for (size_t i = 0; i < s->leads; i++)
        carry(&j->lead[i][a], &j->lead[i][c], &from, &j->at);
    for (size_t i = 0; i < s->followers; i++)
        carry(&j->follows[i][a], &j->follows[i][c], &from, &j->at);
    for (size_t i = s->blocks_first; i < s->unknowns; i++)
        carry(&j->by_leads[i * LEADS + a], &j->by_leads[i * LEADS + c], &from, &j->at);
    j->w = 0;
}

static void exchange(double *a, double *b)
{
    double other = *a;
    *a = *b;
    *b = other;
}

/* Rows of a square matrix that lie `stride` apart become its factors L U, the row that each pivot was taken from noted. A row is as
   large as its size says: joules stand beside kilograms. */
static bool eliminate(double a[], size_t stride, size_t n, double size[], size_t pivot[], size_t k)
{
    size_t best = k;
    for (size_t i = k + 1; i < n; i++)
        if (fabs(a[i * stride + k]) * size[best] > fabs(a[best * stride + k]) * size[i])
            best = i;
    double *row = a + k * stride, *from = a + best * stride;
    pivot[k] = best;
    if (!(fabs(from[k]) > 0))
        return false;
    exchange(&size[k], &size[best]);
    for (size_t c = 0; c < n && best != k; c++)
        exchange(&from[c], &row[c]);
    double by = 1 / row[k];
    for (size_t i = k + 1; i < n; i++) {
        double of = a[i * stride + k] *= by;
        for (size_t c = k + 1; c < n && of != 0; c++)
            a[i * stride + c] -= of * row[c];
    }
    row[k] = by; /* what solving multiplies with */
    return true;
}

static bool factor(double a[], size_t stride, size_t n, double size[], size_t pivot[])
{
    for (size_t k = 0; k < n; k++)
        if (!eliminate(a, stride, n, size, pivot, k))
            return false;
    return true;
}

static void solve(const double a[], size_t stride, size_t n, const size_t pivot[], double x[])
{
    for (size_t i = 0; i < n; i++) {
        double r = x[pivot[i]];
        x[pivot[i]] = x[i];
        for (size_t c = 0; c < i; c++)
            r -= a[i * stride + c] * x[c];
        x[i] = r;
    }
    for (size_t i = n; i-- > 0;) {
        double r = x[i];
        for (size_t c = i + 1; c < n; c++)
            r -= a[i * stride + c] * x[c];
        x[i] = r * a[i * stride + i];
    }
}

static bool factor_block(boil_jacobian *j, const boil_system *s, size_t first, size_t n, double w)
{
    double a[BLOCK * BLOCK], size[BLOCK], *inverse = j->own_inverse + first * BLOCK;
    size_t pivot[BLOCK];
    memcpy(size, s->size + first, n * sizeof *size);
    for (size_t i = 0; i < n; i++)
        for (size_t c = 0; c < n; c++)
            a[i * BLOCK + c] = (i == c) - w * j->own[(first + i) * BLOCK + c];
    if (!factor(a, BLOCK, n, size, pivot))
        return false;
    for (size_t c = 0; c < n; c++) {
        double column[BLOCK] = {0};
        column[c] = 1;
        solve(a, BLOCK, n, pivot, column);
        for (size_t i = 0; i < n; i++)
            inverse[i * BLOCK + c] = column[i];
    }
    for (size_t i = 0; i < n; i++)
        for (size_t k = 0; k < s->leads; k++) {
            double sum = 0;
            for (size_t c = 0; c < n; c++)
                sum += inverse[i * BLOCK + c] * j->by_leads[(first + c) * LEADS + k];
            j->with_leads[(first + i) * LEADS + k] = w * sum;
        }
    return true;
}

/* I - w A of the leads, less what the blocks give back. */
static bool factor_leads(boil_jacobian *j, const boil_system *s, double w)
{
    double(*a)[LEADS] = j->factors, size[LEADS];
    size_t n = s->leads;
    for (size_t i = 0; i < n; i++)
        memcpy(a[i], j->lead[i], n * sizeof a[i][0]);
    for (size_t k = s->blocks_first; k < s->unknowns; k++)
        for (size_t i = 0; i < n; i++) {
            double on = j->on_leads[k * LEADS + i];
            for (size_t c = 0; c < n && on != 0; c++)
                a[i][c] += on * j->with_leads[k * LEADS + c];
        }
    for (size_t i = 0; i < n; i++) {
        size[i] = s->size[s->lead[i]];
        for (size_t c = 0; c < n; c++)
            a[i][c] = (i == c) - w * a[i][c];
    }
    return factor(a[0], LEADS, n, size, j->pivot);
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

/* What the leads move by, in the order of the leads. */
static void solve_leads(const boil_jacobian *j, const boil_system *s, const double x[], double lead[])
{
    for (size_t i = 0; i < s->leads; i++)
        lead[i] = x[s->lead[i]];
    for (size_t k = s->blocks_first; k < s->unknowns; k++) {
        double moves = j->w * x[k];
        for (size_t i = 0; i < s->leads; i++)
            lead[i] += moves * j->on_leads[k * LEADS + i];
    }
    solve(j->factors[0], LEADS, s->leads, j->pivot, lead);
}

static double with_leads(const boil_system *s, const double row[], const double lead[])
{
    double sum = 0;
    for (size_t i = 0; i < s->leads; i++)
        sum += row[i] * lead[i];
    return sum;
}

void boil_jacobian_solve(const boil_jacobian *j, const boil_system *s, double x[])
{
    size_t count;
    double lead[LEADS];
    for (size_t b = 0, first = s->blocks_first; (count = boil_system_block(s, b)) > 0; b++, first += count)
        solve_block(j, first, count, x);
    solve_leads(j, s, x, lead);
    for (size_t i = 0; i < s->leads; i++)
        x[s->lead[i]] = lead[i];
    for (size_t i = 0; i < s->followers; i++)
        x[s->follower[i]] = (x[s->follower[i]] + j->w * with_leads(s, j->follows[i], lead)) / (1 + j->w / s->lag_s[i]);
    for (size_t i = s->blocks_first; i < s->unknowns; i++)
        x[i] += with_leads(s, j->with_leads + i * LEADS, lead);
}

void boil_jacobian_own(const boil_jacobian *j, const boil_system *s, double own[])
{
    memset(own, 0, s->unknowns * sizeof *own);
    for (size_t i = 0; i < s->leads; i++)
        own[s->lead[i]] = j->lead[i][i];
    for (size_t i = 0; i < s->followers; i++)
        own[s->follower[i]] = -1 / s->lag_s[i];
    size_t count;
    for (size_t b = 0, first = s->blocks_first; (count = boil_system_block(s, b)) > 0; b++, first += count)
        for (size_t i = 0; i < count; i++)
            own[first + i] = j->own[(first + i) * BLOCK + i];
}
