#include "integrate/integrator_rkc.h"

#include <gsl/gsl_errno.h>
#include <math.h>
#include <stdlib.h>

enum { STAGES = BOIL_RKC_STAGES };

/* Of stage j: y_j = (1 - mu - nu) y_0 + mu y_(j-1) + nu y_(j-2) + h (rate f_(j-1) + rate_0 f_0), at t + when h. */
typedef struct {
    double mu, nu, rate, rate_0, when;
} stage;

typedef struct {
    stage of[STAGES + 1];
    double *work, *start, *start_rates, *rates, *last, *one_before;
} state;

/* From Chebyshev polynomials at w0, a little beyond 1: damping 2/13. Order and stability are tested. */
static void set_stages(stage s[])
{
    const double w0 = 1 + (2.0 / 13) / (STAGES * STAGES);
    double T[STAGES + 1] = {1, w0}, dT[STAGES + 1] = {0, 1}, ddT[STAGES + 1] = {0, 0}, b[STAGES + 1];
    for (int j = 2; j <= STAGES; j++) {
        T[j] = 2 * w0 * T[j - 1] - T[j - 2];
        dT[j] = 2 * T[j - 1] + 2 * w0 * dT[j - 1] - dT[j - 2];
        ddT[j] = 4 * dT[j - 1] + 2 * w0 * ddT[j - 1] - ddT[j - 2];
        b[j] = ddT[j] / (dT[j] * dT[j]);
    }
    const double w1 = dT[STAGES] / ddT[STAGES];
    b[0] = b[1] = b[2];
    s[1] = (stage){.rate = b[1] * w1};
    for (int j = 2; j <= STAGES; j++) {
        s[j].mu = 2 * b[j] * w0 / b[j - 1];
        s[j].nu = -b[j] / b[j - 2];
        s[j].rate = 2 * b[j] * w1 / b[j - 1];
        s[j].rate_0 = -(1 - b[j - 1] * T[j - 1]) * s[j].rate;
        s[j].when = w1 * ddT[j] / dT[j];
    }
    s[1].when = s[2].when / dT[2];
}

static void stabilised_free(void *of)
{
    state *s = of;
    if (s != NULL)
        free(s->work);
    free(s);
}

static void *stabilised_alloc(size_t dim)
{
    state *s = calloc(1, sizeof *s);
    if (s == NULL || (s->work = calloc(5 * dim, sizeof(double))) == NULL) {
        stabilised_free(s);
        return NULL;
    }
    s->start = s->work;
    s->start_rates = s->work + dim;
    s->rates = s->work + 2 * dim;
    s->last = s->work + 3 * dim;
    s->one_before = s->work + 4 * dim;
    set_stages(s->of);
    return s;
}

static void combine(const state *s, const stage *g, size_t dim, double h, double y[])
{
    for (size_t i = 0; i < dim; i++)
        y[i] = (1 - g->mu - g->nu) * s->start[i] + g->mu * s->last[i] + g->nu * s->one_before[i] +
               h * (g->rate * s->rates[i] + g->rate_0 * s->start_rates[i]);
}

/* y comes in as at the start; it goes out as the last stage. */
static int carry_through_stages(state *s, size_t dim, double t, double h, double y[], const gsl_odeiv2_system *system)
{
    for (size_t i = 0; i < dim; i++) {
        s->start[i] = s->one_before[i] = y[i];
        s->last[i] = y[i] + h * s->of[1].rate * s->start_rates[i];
    }
    for (int j = 2; j <= STAGES; j++) {
        int status = GSL_ODEIV_FN_EVAL(system, t + s->of[j - 1].when * h, s->last, s->rates);
        if (status != GSL_SUCCESS)
            return status;
        combine(s, &s->of[j], dim, h, y);
        for (size_t i = 0; i < dim; i++) {
            s->one_before[i] = s->last[i];
            s->last[i] = y[i];
        }
    }
    return GSL_SUCCESS;
}

static int stabilised_apply(void *of, size_t dim, double t, double h, double y[], double yerr[], const double dydt_in[],
                            double dydt_out[], const gsl_odeiv2_system *system)
{
    state *s = of;
    int status = GSL_SUCCESS;
    if (dydt_in == NULL)
        status = GSL_ODEIV_FN_EVAL(system, t, y, s->start_rates);
    for (size_t i = 0; dydt_in != NULL && i < dim; i++)
        s->start_rates[i] = dydt_in[i];
    if (status == GSL_SUCCESS)
        status = carry_through_stages(s, dim, t, h, y, system);
    if (status == GSL_SUCCESS)
        status = GSL_ODEIV_FN_EVAL(system, t + h, y, s->rates);
    if (status != GSL_SUCCESS)
        return status;
    for (size_t i = 0; i < dim; i++) {
        yerr[i] = 0.8 * (s->start[i] - y[i]) + 0.4 * h * (s->start_rates[i] + s->rates[i]);
        if (dydt_out != NULL)
            dydt_out[i] = s->rates[i];
    }
    return GSL_SUCCESS;
}

static int stabilised_set_driver(void *of, const gsl_odeiv2_driver *d)
{
    (void)of;
    (void)d;
    return GSL_SUCCESS;
}

static int stabilised_reset(void *of, size_t dim)
{
    (void)of;
    (void)dim;
    return GSL_SUCCESS;
}

static unsigned int stabilised_order(void *of)
{
    (void)of;
    return 2;
}

static const gsl_odeiv2_step_type type = {
    "rkc2",         1, 1, stabilised_alloc, stabilised_apply, stabilised_set_driver, stabilised_reset, stabilised_order,
    stabilised_free};
const gsl_odeiv2_step_type *const boil_rkc = &type;
