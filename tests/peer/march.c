/* march.c -- integrate/march.h by an integrator of the distribution: CVODE of SUNDIALS 6, steps of variable order (BDF) by Newton's
   method. It is linked before the library, whose own march is then left out: rates, guards and all that follows from an event are
   the library's own. */
#include <cvode/cvode.h>
#include <math.h>
#include <nvector/nvector_serial.h>
#include <stdlib.h>
#include <string.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>

#include "integrate/march.h"

struct boil_march {
    boil_march_problem is;
    boil_guards guards;
    SUNContext context;
    void *cvode;
    size_t n;
    N_Vector y, room[4]; /* room: a step's ends and the rates there */
    SUNMatrix jacobian;
    SUNLinearSolver solver;
    double t0, t1;
    size_t steps, evaluations;
};

static int rates(double t, N_Vector y, N_Vector f, void *of)
{
    boil_march *m = of;
    m->evaluations++;
    return boil_system_rates(&m->is.system, t, NV_DATA_S(y), NV_DATA_S(f)) ? 0 : 1;
}

/* By differences; nothing hangs on sums. */
static int take_jacobian(double t, N_Vector y, N_Vector f, SUNMatrix J, void *of, N_Vector trial, N_Vector moved,
                         N_Vector unused)
{
    (void)unused;
    boil_march *m = of;
    const boil_system *s = &m->is.system;
    N_VScale(1, y, trial);
    SUNMatZero(J);
    for (size_t k = 0; k < m->n; k++) {
        if (k >= s->sums_first && k < s->sums_end)
            continue;
        double *column = SM_COLUMN_D(J, k), d = 1e-6 * fmax(fabs(NV_Ith_S(y, k)), 1e-2 * s->size[k]);
        NV_Ith_S(trial, k) += d;
        if (rates(t, trial, moved, m) != 0)
            return 1;
        NV_Ith_S(trial, k) = NV_Ith_S(y, k);
        for (size_t i = 0; i < m->n; i++)
            column[i] = (NV_Ith_S(moved, i) - NV_Ith_S(f, i)) / d;
    }
    return 0;
}

static void say_nothing(int code, const char *module, const char *function, char *message, void *of)
{
    (void)code, (void)module, (void)function, (void)message, (void)of;
}

boil_march *boil_march_create(void)
{
    boil_march *m = calloc(1, sizeof *m);
    if (m != NULL && SUNContext_Create(NULL, &m->context) != 0) {
        free(m);
        return NULL;
    }
    return m;
}

static void forget(boil_march *m)
{
    if (m->cvode == NULL)
        return;
    CVodeFree(&m->cvode);
    SUNLinSolFree(m->solver);
    SUNMatDestroy(m->jacobian);
    N_VDestroy(m->y);
    for (int i = 0; i < 4; i++)
        N_VDestroy(m->room[i]);
}

void boil_march_free(boil_march *m)
{
    if (m == NULL)
        return;
    forget(m);
    SUNContext_Free(&m->context);
    free(m);
}

boil_outcome boil_march_reset(boil_march *m, size_t unknowns) /* a run alone resets only a new one */
{
    (void)m, (void)unknowns;
    return BOIL_OK;
}

boil_outcome boil_march_copy(boil_march *to, const boil_march *from) /* and needs none */
{
    (void)to, (void)from;
    return BOIL_NO_MEMORY;
}

/* As small as the library allows errors to be at this step. */
static int weigh(N_Vector y, N_Vector weight, void *of)
{
    (void)y;
    const boil_march *m = of;
    for (size_t i = 0; i < m->n; i++)
        NV_Ith_S(weight, i) = 1 / (m->is.tolerance * m->is.system.size[i]);
    return 0;
}

static boil_outcome prepare(boil_march *m, double t, const double y[])
{
    sunindextype n = (sunindextype)m->n;
    m->y = N_VNew_Serial(n, m->context);
    for (int i = 0; i < 4; i++)
        m->room[i] = N_VNew_Serial(n, m->context);
    memcpy(NV_DATA_S(m->y), y, m->n * sizeof *y);
    m->cvode = CVodeCreate(CV_BDF, m->context);
    m->jacobian = SUNDenseMatrix(n, n, m->context);
    m->solver = SUNLinSol_Dense(m->y, m->jacobian, m->context);
    CVodeSetErrHandlerFn(m->cvode, say_nothing, NULL);
    if (CVodeInit(m->cvode, rates, t, m->y) < 0)
        return BOIL_NO_MEMORY;
    CVodeSetUserData(m->cvode, m);
    CVodeWFtolerances(m->cvode, weigh);
    CVodeSetLinearSolver(m->cvode, m->solver, m->jacobian);
    CVodeSetJacFn(m->cvode, take_jacobian);
    CVodeSetMaxNumSteps(m->cvode, 100000);
    return BOIL_OK;
}

boil_outcome boil_march_begin(boil_march *m, const boil_march_problem *p, double t, const double y[])
{
    double g[BOIL_GUARDS_MAX];
    if (m->n != p->system.unknowns)
        forget(m);
    m->is = *p;
    m->n = p->system.unknowns;
    boil_outcome outcome = m->cvode == NULL ? prepare(m, t, y) : BOIL_OK;
    if (outcome != BOIL_OK)
        return outcome;
    memcpy(NV_DATA_S(m->y), y, m->n * sizeof *y);
    CVodeReInit(m->cvode, t, m->y);
    CVodeSetMaxStep(m->cvode, p->step_max_s);
    m->guards.count = p->guards;
    memcpy(m->guards.arm, p->arm, sizeof p->arm);
    p->guard(t, y, g, p->system.context);
    boil_guards_begin(&m->guards, g);
    return BOIL_OK;
}

static double beyond_at(boil_march *m, double t, size_t which)
{
    double g[BOIL_GUARDS_MAX];
    N_Vector y = m->room[3];
    CVodeGetDky(m->cvode, t, 0, y);
    m->evaluations++;
    m->is.guard(t, NV_DATA_S(y), g, m->is.system.context);
    return boil_guards_beyond(&m->guards, which, g[which]);
}

/* Just past where a guard rises, on the integrator's own polynomial, by false position (Illinois) to 1e-7 s. */
static double rises_at(boil_march *m, double low, double high, size_t which, double at_high)
{
    double at_low = boil_guards_beyond(&m->guards, which, m->guards.before[which]);
    for (int i = 0, side = 0; i < 80 && high - low > 1e-7; i++) {
        double t = low + (high - low) * at_low / (at_low - at_high);
        if (!(t > low && t < high))
            t = (low + high) / 2;
        double v = beyond_at(m, t, which);
        bool past = v >= 0;
        *(past ? &high : &low) = t;
        *(past ? &at_high : &at_low) = v;
        if (side == (past ? 1 : -1))
            *(past ? &at_low : &at_high) /= 2;
        side = past ? 1 : -1;
    }
    return high;
}

/* The step ends at t with y; what is asked of it later is kept. */
static void end_at(boil_march *m, double t, double y[])
{
    CVodeGetDky(m->cvode, t, 0, m->room[2]);
    memcpy(y, NV_DATA_S(m->room[2]), m->n * sizeof *y);
    rates(t, m->room[2], m->room[3], m);
    m->t1 = t;
}

boil_march_news boil_march_step(boil_march *m, double *t, double y[], double end, size_t *guard)
{
    double now = *t, first = HUGE_VAL, g[BOIL_GUARDS_MAX];
    if (!(*t < end))
        return BOIL_MARCH_ARRIVED;
    m->t0 = *t;
    memcpy(NV_DATA_S(m->room[0]), y, m->n * sizeof *y);
    rates(*t, m->room[0], m->room[1], m);
    CVodeSetStopTime(m->cvode, end);
    if (CVode(m->cvode, end, m->y, &now, CV_ONE_STEP) < 0)
        return BOIL_MARCH_FAILED;
    m->steps++;
    m->is.guard(now, NV_DATA_S(m->y), g, m->is.system.context);
    for (size_t i = 0; i < m->guards.count; i++) {
        double at = boil_guards_rises(&m->guards, i, g[i]) ? rises_at(m, *t, now, i, boil_guards_beyond(&m->guards, i, g[i]))
                                                           : HUGE_VAL;
        if (at < first) {
            first = at;
            *guard = i;
        }
    }
    *t = fmin(first, fmin(now, end));
    end_at(m, *t, y);
    if (isfinite(first))
        return BOIL_MARCH_EVENT;
    boil_guards_note(&m->guards, g, *t - m->t0);
    return *t < end ? BOIL_MARCH_STEPPED : BOIL_MARCH_ARRIVED;
}

boil_hermite boil_march_within(boil_march *m)
{
    return (boil_hermite){
        m->t0, m->t1, NV_DATA_S(m->room[0]), NV_DATA_S(m->room[1]), NV_DATA_S(m->room[2]), NV_DATA_S(m->room[3])};
}

size_t boil_march_steps(const boil_march *m)
{
    return m->steps;
}

size_t boil_march_evaluations(const boil_march *m)
{
    return m->evaluations;
}
