#include "integrate/integrator_rkf45.h"

#include <gsl/gsl_errno.h>
#include <stdlib.h>
#include <string.h>

enum { STAGES = 6 };

/* Fehlberg's table: when a stage is, what of the stages before it makes it, what of all makes the step, and its error. */
static const double when[STAGES] = {0, 1.0 / 4, 3.0 / 8, 12.0 / 13, 1, 1.0 / 2};
static const double from[STAGES][STAGES - 1] = {
    {0},
    {1.0 / 4},
    {3.0 / 32, 9.0 / 32},
    {1932.0 / 2197, -7200.0 / 2197, 7296.0 / 2197},
    {8341.0 / 4104, -32832.0 / 4104, 29440.0 / 4104, -845.0 / 4104},
    {-6080.0 / 20520, 41040.0 / 20520, -28352.0 / 20520, 9295.0 / 20520, -5643.0 / 20520},
};
static const double whole[STAGES] = {902880.0 / 7618050, 0, 3953664.0 / 7618050, 3855735.0 / 7618050, -1371249.0 / 7618050,
                                     277020.0 / 7618050};
static const double error[STAGES] = {1.0 / 360, 0, -128.0 / 4275, -2197.0 / 75240, 1.0 / 50, 2.0 / 55};

typedef struct {
    double *rates[STAGES], *start, *trial;
    double work[];
} state;

static void *rkf45_alloc(size_t dim)
{
    state *s = calloc(1, sizeof *s + (STAGES + 2) * dim * sizeof(double));
    if (s == NULL)
        return NULL;
    for (size_t j = 0; j < STAGES; j++)
        s->rates[j] = s->work + j * dim;
    s->start = s->work + STAGES * dim;
    s->trial = s->start + dim;
    return s;
}

static double weighted(const state *s, const double weight[], int stages, size_t i)
{
    double sum = 0;
    for (int j = 0; j < stages; j++)
        sum += weight[j] * s->rates[j][i];
    return sum;
}

static int carry_through_stages(state *s, size_t dim, double t, double h, const double y[], const gsl_odeiv2_system *system)
{
    for (int j = 1; j < STAGES; j++) {
        for (size_t i = 0; i < dim; i++)
            s->trial[i] = y[i] + h * weighted(s, from[j], j, i);
        int status = GSL_ODEIV_FN_EVAL(system, t + when[j] * h, s->trial, s->rates[j]);
        if (status != GSL_SUCCESS)
            return status;
    }
    return GSL_SUCCESS;
}

static int rkf45_apply(void *of, size_t dim, double t, double h, double y[], double yerr[], const double dydt_in[],
                       double dydt_out[], const gsl_odeiv2_system *system)
{
    state *s = of;
    memcpy(s->start, y, dim * sizeof *y);
    int status = GSL_SUCCESS;
    if (dydt_in != NULL)
        memcpy(s->rates[0], dydt_in, dim * sizeof *y);
    else
        status = GSL_ODEIV_FN_EVAL(system, t, y, s->rates[0]);
    if (status == GSL_SUCCESS)
        status = carry_through_stages(s, dim, t, h, y, system);
    if (status != GSL_SUCCESS)
        return status;
    for (size_t i = 0; i < dim; i++) {
        y[i] += h * weighted(s, whole, STAGES, i);
        yerr[i] = h * weighted(s, error, STAGES, i);
    }
    if (dydt_out != NULL && (status = GSL_ODEIV_FN_EVAL(system, t + h, y, dydt_out)) != GSL_SUCCESS)
        memcpy(y, s->start, dim * sizeof *y);
    return status;
}

static int rkf45_set_driver(void *of, const gsl_odeiv2_driver *d)
{
    (void)of;
    (void)d;
    return GSL_SUCCESS;
}

static int rkf45_reset(void *of, size_t dim)
{
    (void)of;
    (void)dim;
    return GSL_SUCCESS;
}

static unsigned int rkf45_order(void *of)
{
    (void)of;
    return 5;
}

static const gsl_odeiv2_step_type type = {"rkf45",          1,           1,           rkf45_alloc, rkf45_apply,
                                          rkf45_set_driver, rkf45_reset, rkf45_order, free};
const gsl_odeiv2_step_type *const boil_rkf45 = &type;
