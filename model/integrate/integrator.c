#include "integrate/integrator.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_odeiv2.h>
#include <float.h>
#include <math.h>
#include <stdbool.h>
#include <stdlib.h>
#include <string.h>

#include "base/root.h"
#include "integrate/integrator_rkc.h"
#include "integrate/integrator_rkf45.h"

/* A failure code of the rates that makes GSL halve the step and try again: above its own codes. */
#define RATES_REFUSED 1025
/* Events are located to this share of a second: far below the 0.1 s anybody could ask for, above rounding at 1e6 s. */
#define EVENT_RESOLUTION 1e-9

struct boil_integrator {
    boil_integrator_problem is;
    gsl_odeiv2_system system;
    /* GSL's structures over memory of our own: GSL would end the process where memory is refused. */
    gsl_odeiv2_step step, again; /* `again` repeats a step while an event is being located */
    gsl_odeiv2_control control;
    gsl_odeiv2_evolve evolve;
    double *work, *size, *before, *before_rates, *trial, *trial_error;
    double step_s, last_step_s;
    double guard_before[BOIL_INTEGRATOR_GUARDS_MAX];
    bool armed[BOIL_INTEGRATOR_GUARDS_MAX];
    size_t steps, evaluations;
};

static int counted_rates(double t, const double y[], double dydt[], void *context)
{
    boil_integrator *m = context;
    m->evaluations++;
    if (m->is.rates(t, y, dydt, m->is.context) != BOIL_OK)
        return RATES_REFUSED;
    for (size_t i = 0; i < m->is.unknowns; i++)
        if (!isfinite(dydt[i]))
            return RATES_REFUSED;
    return GSL_SUCCESS;
}

/* GSL's control by a fixed error of each unknown, tolerance times its size: a step is shortened when its error is a tenth
   over that, by five times at the most, and drawn out when it is below half of that, by 4.9. */
static int adjust_step(void *context, size_t dim, unsigned int order, const double y[], const double error[],
                       const double rates[], double *h)
{
    (void)y;
    (void)rates;
    const boil_integrator *m = context;
    const double safety = 0.9;
    double worst = DBL_MIN;
    for (size_t i = 0; i < dim; i++)
        worst = fmax(fabs(error[i]) / fabs(m->is.tolerance * m->size[i]), worst);
    if (worst > 1.1) {
        *h *= fmax(safety / pow(worst, 1.0 / order), 0.2);
        return GSL_ODEIV_HADJ_DEC;
    }
    if (worst >= 0.5)
        return GSL_ODEIV_HADJ_NIL;
    *h *= fmin(safety / pow(worst, 1.0 / (order + 1.0)), 4.9);
    return GSL_ODEIV_HADJ_INC;
}

static const gsl_odeiv2_control_type by_size = {.name = "by size", .hadjust = adjust_step};

static void set_work(boil_integrator *m, size_t n)
{
    m->before = m->work;
    m->before_rates = m->work + n;
    m->trial = m->work + 2 * n;
    m->trial_error = m->work + 3 * n;
    m->evolve = (gsl_odeiv2_evolve){.dimension = n,
                                    .y0 = m->work + 4 * n,
                                    .yerr = m->work + 5 * n,
                                    .dydt_in = m->work + 6 * n,
                                    .dydt_out = m->work + 7 * n};
    m->size = m->work + 8 * n;
    memcpy(m->size, m->is.size, n * sizeof(double));
}

boil_integrator *boil_integrator_create(const boil_integrator_problem *c)
{
    /* Fifth-order pair: the pool's second or two caps the step by stability, so higher orders buy nothing
       (see the work-precision table that `make bench` prints). */
    const gsl_odeiv2_step_type *method = c->use_rkc ? boil_rkc : boil_rkf45;
    boil_integrator *m = calloc(1, sizeof *m);
    if (!m)
        return NULL;
    size_t n = c->unknowns;
    m->is = *c;
    m->system = (gsl_odeiv2_system){counted_rates, NULL, n, m};
    m->step = (gsl_odeiv2_step){method, n, method->alloc(n)};
    m->again = (gsl_odeiv2_step){method, n, method->alloc(n)};
    m->control = (gsl_odeiv2_control){&by_size, m};
    m->work = calloc(9 * n, sizeof(double));
    if (!m->step.state || !m->again.state || !m->work) {
        boil_integrator_free(m);
        return NULL;
    }
    set_work(m, n);
    return m;
}

void boil_integrator_free(boil_integrator *m)
{
    if (!m)
        return;
    m->step.type->free(m->step.state);
    m->again.type->free(m->again.state);
    free(m->work);
    free(m);
}

/* A guard that has been clearly negative counts from then on. */
static void note_guards(boil_integrator *m, const double g[])
{
    for (size_t i = 0; i < m->is.guards; i++) {
        m->guard_before[i] = g[i];
        if (g[i] < -m->is.arm[i])
            m->armed[i] = true;
    }
}

/* The height a guard must rise through: zero, or, for one that has rested at zero since the restart, clear of it. */
static double threshold(const boil_integrator *m, size_t i)
{
    return m->armed[i] ? 0 : m->is.arm[i];
}

void boil_integrator_restart(boil_integrator *m, double t, const double y[])
{
    gsl_odeiv2_step_reset(&m->step);
    gsl_odeiv2_evolve_reset(&m->evolve);
    m->step_s = m->is.step_first_s;
    double g[BOIL_INTEGRATOR_GUARDS_MAX];
    memset(m->armed, 0, sizeof m->armed);
    m->is.guard(t, y, g, m->is.context);
    note_guards(m, g);
}

/* Where a guard rises within the step just taken. */
typedef struct {
    boil_integrator *m;
    double t;
    size_t which;
} rising;

static int repeat_step(boil_integrator *m, double t, double length)
{
    memcpy(m->trial, m->before, m->is.unknowns * sizeof(double));
    gsl_odeiv2_step_reset(&m->again);
    return gsl_odeiv2_step_apply(&m->again, t, length, m->trial, m->trial_error, m->before_rates, NULL, &m->system);
}

static double guard_after(double length, void *context)
{
    rising *r = context;
    boil_integrator *m = r->m;
    if (length <= 0)
        return m->guard_before[r->which] - threshold(m, r->which);
    if (repeat_step(m, r->t, length) != GSL_SUCCESS)
        return (double)NAN;
    double g[BOIL_INTEGRATOR_GUARDS_MAX];
    m->is.guard(r->t + length, m->trial, g, m->is.context);
    return g[r->which] - threshold(m, r->which);
}

/* Length of step, within (0, full], just past the rise; negative on failure. */
static double locate(boil_integrator *m, double t, double full, size_t which)
{
    rising r = {m, t, which};
    boil_root root;
    if (!boil_root_begin(&root, guard_after, &r, 0, full))
        return full; /* the far end itself: the guard rose within rounding of it */
    for (int i = 0; i < 60; i++) {
        if (!boil_root_step(&root))
            return -1;
        if (root.far - root.near < EVENT_RESOLUTION)
            break;
    }
    /* Brent's bracket may stay wide on one side: close it around the root. */
    double tight = fmin(root.far, root.best + EVENT_RESOLUTION);
    return tight > root.near && guard_after(tight, &r) >= 0 ? tight : root.far;
}

static boil_integrator_status take_event(boil_integrator *m, double *t, double y[], double start, double full, const double g[],
                                         size_t *guard)
{
    double first = (double)INFINITY;
    for (size_t i = 0; i < m->is.guards; i++) {
        if (!(m->guard_before[i] < threshold(m, i) && g[i] >= threshold(m, i)))
            continue;
        double length = locate(m, start, full, i);
        if (length < 0)
            return BOIL_INTEGRATOR_FAILED;
        if (length < first) {
            first = length;
            *guard = i;
        }
    }
    if (!isfinite(first))
        return BOIL_INTEGRATOR_STEPPED;
    if (repeat_step(m, start, first) != GSL_SUCCESS)
        return BOIL_INTEGRATOR_FAILED;
    memcpy(y, m->trial, m->is.unknowns * sizeof(double));
    *t = start + first;
    m->last_step_s = first;
    return BOIL_INTEGRATOR_EVENT;
}

boil_integrator_status boil_integrator_step(boil_integrator *m, double *t, double y[], double end, size_t *guard)
{
    double start = *t;
    if (!(start < end))
        return BOIL_INTEGRATOR_ARRIVED;
    memcpy(m->before, y, m->is.unknowns * sizeof(double));
    if (counted_rates(start, y, m->before_rates, m) != GSL_SUCCESS)
        return BOIL_INTEGRATOR_FAILED;
    m->step_s = fmin(m->step_s, m->is.step_max_s);
    double step = m->step_s;
    int status = gsl_odeiv2_evolve_apply(&m->evolve, &m->control, &m->step, &m->system, t, end, &step, y);
    if (status != GSL_SUCCESS || !(*t > start)) {
        memcpy(y, m->before, m->is.unknowns * sizeof(double));
        *t = start;
        return BOIL_INTEGRATOR_FAILED;
    }
    /* A step cut short by the end says nothing about the next one. */
    m->step_s = *t < end ? step : fmax(step, m->step_s);
    m->steps++;
    m->last_step_s = *t - start;
    double g[BOIL_INTEGRATOR_GUARDS_MAX];
    m->is.guard(*t, y, g, m->is.context);
    boil_integrator_status news = take_event(m, t, y, start, *t - start, g, guard);
    if (news == BOIL_INTEGRATOR_STEPPED) {
        note_guards(m, g);
        if (!(*t < end))
            news = BOIL_INTEGRATOR_ARRIVED;
    }
    return news;
}

size_t boil_integrator_steps(const boil_integrator *m)
{
    return m->steps;
}

size_t boil_integrator_evaluations(const boil_integrator *m)
{
    return m->evaluations;
}

double boil_integrator_last_step(const boil_integrator *m)
{
    return m->last_step_s;
}
