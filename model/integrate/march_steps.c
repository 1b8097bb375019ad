#include "integrate/march_parts.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "integrate/ark.h"
#include "integrate/fehlberg.h"

enum { ROOM = BOIL_STEP_ROOM + 3 }; /* doubles for each unknown */

static boil_outcome counted_rates(double t, const double y[], double dydt[], void *context)
{
    boil_march *m = context;
    m->evaluations++;
    return m->is.system.rates(t, y, dydt, m->is.system.context);
}

static size_t counted_block(size_t number, void *context)
{
    const boil_march *m = context;
    return boil_system_block(&m->is.system, number);
}

static void counted_slopes(size_t number, double t, const double y[], double own[], double takes[], void *context)
{
    const boil_march *m = context;
    m->is.system.slopes(number, t, y, own, takes, m->is.system.context);
}

static void set_room(boil_march *m, double *room, size_t capacity)
{
    m->room = room;
    m->capacity = capacity;
    boil_step_init(&m->step, room, capacity);
    m->slope0 = room + BOIL_STEP_ROOM * capacity;
    m->slope1 = m->slope0 + capacity;
    m->mean = m->slope1 + capacity;
}

/* Where it grows nothing is kept of what was in it. */
static boil_outcome reserve(boil_march *m, size_t capacity)
{
    if (capacity <= m->capacity)
        return BOIL_OK;
    double *room = calloc(ROOM * capacity, sizeof *room);
    if (!room)
        return BOIL_NO_MEMORY;
    free(m->room);
    m->age = -1;
    set_room(m, room, capacity);
    return BOIL_OK;
}

boil_march *boil_march_create(void)
{
    boil_march *m = calloc(1, sizeof *m);
    if (m)
        m->age = -1;
    return m;
}

boil_outcome boil_march_reset(boil_march *m, size_t unknowns)
{
    boil_outcome outcome = reserve(m, unknowns);
    if (outcome != BOIL_OK)
        return outcome;
    double *room = m->room;
    size_t capacity = m->capacity;
    *m = (boil_march){.age = -1};
    set_room(m, room, capacity);
    return BOIL_OK;
}

void boil_march_free(boil_march *m)
{
    if (m)
        free(m->room);
    free(m);
}

boil_outcome boil_march_copy(boil_march *to, const boil_march *from)
{
    boil_outcome outcome = reserve(to, from->capacity);
    if (outcome != BOIL_OK)
        return outcome;
    double *room = to->room;
    size_t capacity = to->capacity;
    *to = *from;
    set_room(to, room, capacity);
    boil_jacobian_copy(&to->step.jacobian, &from->step.jacobian, from->is.system.unknowns);
    return BOIL_OK;
}

static bool is_kept(const boil_march *m, const boil_march_problem *p)
{
    const boil_system *was = &m->is.system, *is = &p->system;
    return was->unknowns == is->unknowns && m->is.kind == p->kind && was->leads == is->leads &&
           was->followers == is->followers && memcmp(was->lead, is->lead, is->leads * sizeof is->lead[0]) == 0 &&
           memcmp(was->follower, is->follower, is->followers * sizeof is->follower[0]) == 0;
}

boil_outcome boil_march_begin(boil_march *m, const boil_march_problem *p, double t, const double y[])
{
    size_t unknowns = p->system.unknowns;
    boil_outcome outcome = reserve(m, unknowns > m->capacity ? 2 * unknowns : unknowns);
    if (outcome != BOIL_OK)
        return outcome;
    if (!is_kept(m, p))
        m->age = -1;
    m->is = *p;
    m->counted = p->system;
    m->counted.rates = counted_rates;
    m->counted.block = counted_block;
    m->counted.slopes = p->system.slopes != NULL ? counted_slopes : NULL;
    m->counted.context = m;
    m->step.jacobian.w = 0; /* sizes may have changed */
    m->step_s = m->last_step_s = 0;
    m->begun_steps = m->steps;
    double g[BOIL_GUARDS_MAX];
    m->guards.count = p->guards;
    memcpy(m->guards.arm, p->arm, sizeof p->arm);
    boil_march_guards_at(m, t, y, g);
    boil_guards_begin(&m->guards, g);
    return BOIL_OK;
}

void boil_march_guards_at(const boil_march *m, double t, const double y[], double g[])
{
    if (m->is.guards > 0)
        m->is.guard(t, y, g, m->is.system.context);
}

static double largest(const boil_march *m, const double x[])
{
    double most = 0;
    for (size_t i = 0; i < m->is.system.unknowns; i++) {
        double of = fabs(x[i]) / m->is.system.size[i];
        if (!(of <= most))
            most = isfinite(of) ? of : HUGE_VAL;
    }
    return most;
}

static int order(const boil_march *m)
{
    return m->is.plain ? BOIL_FEHLBERG_ORDER : BOIL_ARK_ORDER;
}

/* How far to go at first: as slope and bend of the solution at its beginning allow, which one look at the rates a little on
   tells [Hairer, Norsett & Wanner, Solving Ordinary Differential Equations I, II.4, from memory]; five times as far where the
   system is of the kind it was: at a kink a first step errs by a thousandth of what is allowed (seen where loads go in and
   water begins or ends). */
static double first_step(boil_march *m, double t, double room_s)
{
    const double least_s = 1e-3, look_s = 0.5, look_change = 1e-3, most_s = 20, further = m->age < 0 ? 1 : 5;
    boil_step *p = &m->step;
    double change = largest(m, p->f0), look = fmin(fmin(room_s, look_s), look_change / fmax(change, 1e-12));
    for (size_t i = 0; i < m->is.system.unknowns; i++)
        p->y1[i] = p->y0[i] + look * p->f0[i];
    if (!boil_system_rates(&m->counted, t + look, p->y1, p->f1))
        return least_s;
    for (size_t i = 0; i < m->is.system.unknowns; i++)
        p->f1[i] = (p->f1[i] - p->f0[i]) / look;
    double fast = fmax(change, largest(m, p->f1));
    double h = fast > 0 ? further * pow(m->is.tolerance / fast, 1.0 / (order(m) + 1)) : most_s;
    return fmin(fmin(fmax(h, least_s), 100 * further * look), most_s);
}

static void take_jacobian(boil_march *m, double t)
{
    if (m->is.plain)
        return;
    boil_jacobian_take(&m->step.jacobian, &m->counted, t, m->step.y0, m->step.f0, m->step.trial, m->step.error);
    m->age = 0;
}

bool boil_march_try(boil_march *m, double t, double h)
{
    return m->is.plain ? boil_fehlberg_step(&m->step, &m->counted, t, h) : boil_ark_step(&m->step, &m->counted, t, h);
}

double boil_march_off(boil_march *m)
{
    if (m->is.sizes != NULL)
        m->is.sizes(m->step.y0, m->step.y1, m->is.system.context);
    return largest(m, m->step.error) / m->is.tolerance;
}

/* No sliver before the end. */
static double fitting(double h, double left)
{
    return h >= left * (1 - 1e-12) ? left : h > left / 2 ? left / 2 : h;
}

/* After a step whose error was so much of what is allowed. Small changes are left alone: they keep the factors of I - w A. */
static double next_step(const boil_march *m, double h, double off, bool again)
{
    const double safety = 0.95, most = m->last_step_s > 0 ? 8 : 100, worth = 1.1;
    double grow = fmin(again ? 1 : most, fmax(0.2, safety * pow(fmax(off, 1e-12), -1.0 / order(m))));
    return grow > 1 && grow < worth ? h : h * grow;
}

/* The step may end where the rates are told, and there only. */
static bool is_accepted(boil_march *m, double off, double t1)
{
    return off <= 1 && boil_system_rates(&m->counted, t1, m->step.y1, m->step.f1);
}

/* A step toward `end`, as long as its error allows: its length, 0 where there is none. */
static double advance(boil_march *m, double t, double end)
{
    const double safety = 0.9, least = 0.15, refused = 0.25;
    enum { PATIENT = 4 }; /* an error that falls no faster than what is allowed is not to be met by steps a little shorter */
    double h = fmin(m->step_s, m->is.step_max_s);
    for (int tries = 0; tries < 60; tries++) {
        double use = fitting(h, end - t);
        if (!(t + use > t))
            return 0;
        bool told = boil_march_try(m, t, use);
        double off = told ? boil_march_off(m) : 0;
        if (told && is_accepted(m, off, use < end - t ? t + use : end)) {
            m->last_off = off;
            m->step_s = next_step(m, use, off, tries > 0);
            return use;
        }
        h = use * (off > 1 && tries < PATIENT ? fmax(least, safety * pow(off, -1.0 / order(m))) : refused);
        if (m->age > 0)
            take_jacobian(m, t);
    }
    return 0;
}

/* An old one is kept while steps err little with it; that of a beginning, where bubbles are none as yet, is soon no good. */
static bool wants_jacobian(const boil_march *m)
{
    const int keep = 5, most = 24;
    const double little = 0.2;
    bool begun = m->steps - m->begun_steps <= 2;
    return m->age < 0 || m->age >= most || (m->age >= (begun ? 1 : keep) && m->last_step_s > 0 && m->last_off > little);
}

static bool get_ready(boil_march *m, double t, double end)
{
    boil_step *p = &m->step;
    if (m->last_step_s > 0) /* that step's end */
        memcpy(p->f0, p->f1, m->is.system.unknowns * sizeof(double));
    else if (!boil_system_rates(&m->counted, t, p->y0, p->f0))
        return false;
    if (!(m->step_s > 0))
        m->step_s = first_step(m, t, end - t);
    if (wants_jacobian(m))
        take_jacobian(m, t);
    else if (!m->is.plain)
        boil_jacobian_carry(&p->jacobian, &m->counted, p->y0);
    return true;
}

/* By how much each unknown moved a second in the step before, which is about to go. */
static void keep_means(boil_march *m)
{
    const boil_step *p = &m->step;
    const double per_s = 1 / m->last_step_s;
    for (size_t i = 0; i < m->is.system.unknowns && m->last_step_s > 0; i++)
        m->mean[i] = (p->y1[i] - p->y0[i]) * per_s;
    m->mean_s = m->last_step_s;
}

boil_march_news boil_march_step(boil_march *m, double *t, double y[], double end, size_t *guard)
{
    double start = *t, h, g[BOIL_GUARDS_MAX];
    if (!(start < end))
        return BOIL_MARCH_ARRIVED;
    size_t bytes = m->is.system.unknowns * sizeof(double);
    keep_means(m);
    memcpy(m->step.y0, y, bytes);
    if (!get_ready(m, start, end) || !((h = advance(m, start, end)) > 0))
        return BOIL_MARCH_FAILED;
    m->steps++;
    m->age++;
    double arrived = h < end - start ? start + h : end;
    boil_march_guards_at(m, arrived, m->step.y1, g);
    const double whole = h;
    boil_march_news news = boil_march_find_event(m, start, &h, g, guard);
    if (news == BOIL_MARCH_FAILED)
        return news;
    if (news == BOIL_MARCH_STEPPED && h < whole) {
        arrived = start + h;
        m->step_s = h;
        boil_march_guards_at(m, arrived, m->step.y1, g);
    }
    m->last_t = start;
    m->last_step_s = h;
    memcpy(y, m->step.y1, bytes);
    *t = news == BOIL_MARCH_EVENT ? start + h : arrived;
    if (news == BOIL_MARCH_EVENT)
        return news;
    boil_guards_note(&m->guards, g, h);
    return *t < end ? BOIL_MARCH_STEPPED : BOIL_MARCH_ARRIVED;
}

static double middle(double a, double b, double c)
{
    return fmax(fmin(a, b), fmin(fmax(a, b), c));
}

/* Of an unknown that follows the others within a quarter of a step. What its rates say is where they go, and so many times the error at
   an end as it answers a second: where that may be a twentieth of what it moves by, the parabola through these ends and the one before
   is asked as well, which errs less and may miss a turn, and of both and the mean the middle one is taken. */
static void draw_in(const boil_march *m, size_t i, double h, double own, double *slope0, double *slope1)
{
    const double share = 0.05, least = 0.1;
    double change = m->step.y1[i] - m->step.y0[i], mean = change / h;
    double error = fmax(fabs(m->step.error[i]), least * m->is.tolerance * m->is.system.size[i]);
    double bend = m->mean_s > 0 ? (m->mean[i] - mean) * h / (m->mean_s + h) : 0;
    if (!(fabs(own) * error < share * fabs(mean))) {
        *slope0 = middle(*slope0, mean + bend, mean);
        *slope1 = middle(*slope1, mean - bend, mean);
    }
    boil_hermite_limit(change, h, slope0, slope1);
}

boil_hermite boil_march_cubic(boil_march *m, double t, double h)
{
    const double slaved = 4;
    const boil_system *s = &m->is.system;
    boil_step *p = &m->step;
    double *own = p->trial;
    memcpy(m->slope0, p->f0, s->unknowns * sizeof(double));
    memcpy(m->slope1, p->f1, s->unknowns * sizeof(double));
    boil_jacobian_own(&p->jacobian, s, own);
    for (size_t i = 0; i < s->unknowns && !m->is.plain; i++)
        if (fabs(own[i]) * h > slaved)
            draw_in(m, i, h, own[i], &m->slope0[i], &m->slope1[i]);
    return (boil_hermite){t, t + h, p->y0, m->slope0, p->y1, m->slope1};
}

boil_hermite boil_march_within(boil_march *m)
{
    return boil_march_cubic(m, m->last_t, m->last_step_s);
}

size_t boil_march_steps(const boil_march *m)
{
    return m->steps;
}

size_t boil_march_evaluations(const boil_march *m)
{
    return m->evaluations;
}
