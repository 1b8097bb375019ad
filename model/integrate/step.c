#include "integrate/step.h"

void boil_step_init(boil_step *s, double *room, size_t unknowns)
{
    double **plain[] = {&s->y0, &s->f0, &s->y1, &s->error, &s->f1, &s->trial};
    for (size_t i = 0; i < sizeof plain / sizeof plain[0]; i++, room += unknowns)
        *plain[i] = room;
    s->f[0] = s->f0;
    s->g[0] = NULL;
    for (int k = 1; k < BOIL_STEP_STAGES; k++, room += 2 * unknowns) {
        s->f[k] = room;
        s->g[k] = room + unknowns;
    }
    boil_jacobian_init(&s->jacobian, room, unknowns);
}

static void add(double to[], const double of[], double weight, size_t first, size_t end)
{
    for (size_t i = first; i < end; i++)
        to[i] += weight * of[i];
}

void boil_step_gather(const boil_system *s, const double weight[], double *const of[], int count, double to[])
{
    for (int k = 0; k < count; k++) {
        if (weight[k] == 0)
            continue;
        add(to, of[k], weight[k], 0, s->sums_first);
        add(to, of[k], weight[k], s->sums_end, s->unknowns);
    }
}

void boil_step_end(boil_step *p, const boil_system *s, double h, const double weight[], const double weight_of_error[])
{
    for (size_t i = 0; i < s->unknowns; i++) {
        double sum = weight[0] * p->f[0][i], off = weight_of_error[0] * p->f[0][i];
        for (int k = 2; k < BOIL_STEP_STAGES; k++) {
            sum += weight[k] * p->f[k][i];
            off += weight_of_error[k] * p->f[k][i];
        }
        p->y1[i] = p->y0[i] + h * sum;
        p->error[i] = h * off;
    }
}
