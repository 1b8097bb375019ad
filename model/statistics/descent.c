#include "statistics/descent.h"

#include <math.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

boil_outcome boil_descent_begin(boil_descent *d)
{
    const size_t n = d->rows, p = d->parameters, most = SIZE_MAX / sizeof(double);
    d->memory = n <= most / (2 * p + 4) - p ? calloc(2 * n * p + p * p + 4 * n + p, sizeof(double)) : NULL;
    if (d->memory == NULL)
        return BOIL_NO_MEMORY;
    d->jacobian = d->memory;
    d->residual = d->jacobian + n * p;
    d->trial = d->residual + n;
    d->other = d->trial + n;
    d->right = d->other + n;
    d->system = (boil_triangle){.rows = n + p, .columns = p, .at = d->right + n + p};
    return BOIL_OK;
}

void boil_descent_end(boil_descent *d)
{
    free(d->memory);
    d->memory = NULL;
}

static double square(const double x[], size_t count)
{
    double sum = 0;
    for (size_t i = 0; i < count; i++)
        sum += x[i] * x[i];
    return sum;
}

static boil_outcome ask(const boil_descent *d, const double u[], double residual[])
{
    boil_outcome outcome = d->residuals(d->context, u, residual);
    return outcome == BOIL_OK && !isfinite(square(residual, d->rows)) ? BOIL_NOT_FINITE : outcome;
}

/* Derivatives ----------------------------------------------------------------------------------------------------- */

/* How far to that side: 0 where there is no case, and then the middle itself is what is given. */
static boil_outcome one_side(const boil_descent *d, size_t i, double by, double residual[], double *far)
{
    double trial[BOIL_LEAST_SQUARES_PARAMETERS];
    memcpy(trial, d->u, sizeof trial);
    trial[i] += by;
    *far = fabs(by);
    boil_outcome outcome = ask(d, trial, residual);
    if (outcome == BOIL_OK || outcome == BOIL_NO_MEMORY)
        return outcome;
    *far = 0;
    memcpy(residual, d->residual, d->rows * sizeof *residual);
    return BOIL_OK;
}

/* Column i of J by central differences; where one side is no case, from the other and the middle. */
static boil_outcome differentiate(boil_descent *d, size_t i)
{
    double *column = d->jacobian + i * d->rows, up, down = 0;
    boil_outcome outcome = one_side(d, i, d->difference, column, &up);
    if (outcome == BOIL_OK)
        outcome = one_side(d, i, -d->difference, d->other, &down);
    if (outcome == BOIL_OK && up + down == 0)
        outcome = BOIL_NO_ROOT;
    for (size_t k = 0; outcome == BOIL_OK && k < d->rows; k++)
        column[k] = (column[k] - d->other[k]) / (up + down);
    return outcome;
}

/* J, the gradient J'r and the scales, where u now is. */
static boil_outcome look_around(boil_descent *d)
{
    for (size_t i = 0; i < d->parameters; i++) {
        boil_outcome outcome = differentiate(d, i);
        if (outcome != BOIL_OK)
            return outcome;
        const double *column = d->jacobian + i * d->rows;
        double length = sqrt(square(column, d->rows));
        d->scale[i] = fmax(d->scale[i], length > 0 ? length : 1);
        d->gradient[i] = 0;
        for (size_t k = 0; k < d->rows; k++)
            d->gradient[i] += column[k] * d->residual[k];
    }
    return BOIL_OK;
}

/* Steps ----------------------------------------------------------------------------------------------------------- */

static void find_step(boil_descent *d)
{
    const size_t n = d->rows, p = d->parameters;
    for (size_t i = 0; i < p; i++) {
        double *column = d->system.at + i * (n + p);
        memcpy(column, d->jacobian + i * n, n * sizeof *column);
        memset(column + n, 0, p * sizeof *column);
        column[n + i] = sqrt(d->damping) * d->scale[i];
    }
    for (size_t k = 0; k < n; k++)
        d->right[k] = -d->residual[k];
    memset(d->right + n, 0, p * sizeof *d->right);
    boil_triangle_make(&d->system, d->right);
    boil_triangle_solve(&d->system, d->right, d->step);
}

/* Of the sum of squares, by the straight model: |J d|^2 + 2 mu |D d|^2. */
static double expected_gain(const boil_descent *d)
{
    double gain = 0;
    for (size_t k = 0; k < d->rows; k++) {
        double sum = 0;
        for (size_t i = 0; i < d->parameters; i++)
            sum += d->jacobian[i * d->rows + k] * d->step[i];
        gain += sum * sum;
    }
    for (size_t i = 0; i < d->parameters; i++)
        gain += 2 * d->damping * d->scale[i] * d->scale[i] * d->step[i] * d->step[i];
    return gain;
}

/* The gain of the step over what was expected of it; not above 0: it must not be taken. */
static boil_outcome try_step(boil_descent *d, double u[], double *rho)
{
    *rho = -1;
    for (size_t i = 0; i < d->parameters; i++)
        u[i] = d->u[i] + d->step[i];
    boil_outcome outcome = ask(d, u, d->trial);
    if (outcome != BOIL_OK)
        return outcome == BOIL_NO_MEMORY ? outcome : BOIL_OK;
    double gain = square(d->residual, d->rows) - square(d->trial, d->rows), expected = expected_gain(d);
    if (gain > 0 && expected > 0)
        *rho = gain / expected;
    return BOIL_OK;
}

static boil_outcome take_step(boil_descent *d, const double u[], double rho)
{
    memcpy(d->u, u, d->parameters * sizeof *u);
    memcpy(d->residual, d->trial, d->rows * sizeof *d->residual);
    d->damping *= fmax(1.0 / 3, 1 - pow(2 * rho - 1, 3));
    d->growth = 2;
    return look_around(d);
}

/* One step that gains; *found is false when sixteen shorter and shorter ones do not. */
static boil_outcome go_down(boil_descent *d, bool *found)
{
    const int enough = 16;
    *found = false;
    for (int i = 0; i < enough; i++) {
        double u[BOIL_LEAST_SQUARES_PARAMETERS], rho;
        find_step(d);
        boil_outcome outcome = try_step(d, u, &rho);
        *found = outcome == BOIL_OK && rho > 0;
        if (*found)
            return take_step(d, u, rho);
        if (outcome != BOIL_OK)
            return outcome;
        d->damping *= d->growth;
        d->growth *= 2;
    }
    return BOIL_OK;
}

/* The last step was short, or the slope is gentle. Derivatives are no better than the square of their difference. */
static bool settled(const boil_descent *d)
{
    const double close = d->difference * d->difference;
    bool is_short = true, is_level = true;
    for (size_t i = 0; i < d->parameters; i++) {
        is_short = is_short && fabs(d->step[i]) < close * (close + fabs(d->u[i]));
        is_level = is_level && fabs(d->gradient[i] * fmax(d->u[i], 1)) <= close * fmax(square(d->residual, d->rows) / 2, 1);
    }
    return is_short || is_level;
}

boil_outcome boil_descent_run(boil_descent *d, size_t most_steps, bool *converged)
{
    *converged = false;
    memset(d->scale, 0, sizeof d->scale);
    boil_outcome outcome = ask(d, d->u, d->residual);
    if (outcome == BOIL_OK)
        outcome = look_around(d);
    d->damping = 1e-3; /* columns of J are as long as their scale */
    d->growth = 2;
    bool found = true;
    for (size_t i = 0; outcome == BOIL_OK && found && !*converged && i < most_steps; i++) {
        outcome = go_down(d, &found);
        *converged = outcome == BOIL_OK && (found || i > 0) && settled(d);
    }
    return outcome;
}
