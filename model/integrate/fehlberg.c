#include "integrate/fehlberg.h"

#include <string.h>

enum { STAGES = BOIL_STEP_STAGES };

static const double when[STAGES] = {0, 1.0 / 4, 3.0 / 8, 12.0 / 13, 1, 1.0 / 2};
static const double from[STAGES][STAGES] = {
    {0},
    {1.0 / 4},
    {3.0 / 32, 9.0 / 32},
    {1932.0 / 2197, -7200.0 / 2197, 7296.0 / 2197},
    {8341.0 / 4104, -32832.0 / 4104, 29440.0 / 4104, -845.0 / 4104},
    {-6080.0 / 20520, 41040.0 / 20520, -28352.0 / 20520, 9295.0 / 20520, -5643.0 / 20520},
};
static const double whole[STAGES] = {902880.0 / 7618050, 0, 3953664.0 / 7618050, 3855735.0 / 7618050, -1371249.0 / 7618050,
                                     277020.0 / 7618050};
static const double off[STAGES] = {1.0 / 360, 0, -128.0 / 4275, -2197.0 / 75240, 1.0 / 50, 2.0 / 55};

bool boil_fehlberg_step(boil_step *p, const boil_system *s, double t, double h)
{
    for (int q = 1; q < STAGES; q++) {
        double weight[STAGES];
        for (int k = 0; k < q; k++)
            weight[k] = h * from[q][k];
        memcpy(p->trial, p->y0, s->unknowns * sizeof(double));
        boil_step_gather(s, weight, p->f, q, p->trial);
        if (!boil_system_rates(s, t + when[q] * h, p->trial, p->f[q]))
            return false;
    }
    boil_step_end(p, s, h, whole, off);
    return true;
}
