#include "integrate/ark.h"

#include <math.h>
#include <string.h>

enum { STAGES = BOIL_STEP_STAGES };

/* clang-format off */
static const double when[STAGES] = {0, 1.0 / 2, 83.0 / 250, 31.0 / 50, 17.0 / 20, 1};
static const double by_rates[STAGES][STAGES] = { /* aE */
    {0},
    {1.0 / 2},
    {13861.0 / 62500, 6889.0 / 62500},
    {-116923316275.0 / 2393684061468.0, -2731218467317.0 / 15368042101831.0, 9408046702089.0 / 11113171139209.0},
    {-451086348788.0 / 2902428689909.0, -2682348792572.0 / 7519795681897.0, 12662868775082.0 / 11960479115383.0,
     3355817975965.0 / 11060851509271.0},
    {647845179188.0 / 3216320057751.0, 73281519250.0 / 8382639484533.0, 552539513391.0 / 3454668386233.0,
     3354512671639.0 / 8306763924573.0, 4040.0 / 17871},
};
static const double by_matrix[STAGES][STAGES] = { /* aI */
    {0},
    {1.0 / 4, 1.0 / 4},
    {8611.0 / 62500, -1743.0 / 31250, 1.0 / 4},
    {5012029.0 / 34652500, -654441.0 / 2922500, 174375.0 / 388108, 1.0 / 4},
    {15267082809.0 / 155376265600.0, -71443401.0 / 120774400, 730878875.0 / 902184768, 2285395.0 / 8070912, 1.0 / 4},
    {82889.0 / 524892, 0, 15625.0 / 83664, 69875.0 / 102672, -2260.0 / 8211, 1.0 / 4},
};
static const double whole[STAGES] = {82889.0 / 524892, 0, 15625.0 / 83664, 69875.0 / 102672, -2260.0 / 8211, 1.0 / 4}; /* b */
static const double third_order[STAGES] = { /* b^ */
    4586570599.0 / 29645900160.0, 0, 178811875.0 / 945068544, 814220225.0 / 1159782912, -3700637.0 / 11593932, 61727.0 / 225920};
/* clang-format on */

/* From what a stage is to solve for in r, and the solution in z: A times what it moves, and the state it is at. */
static void set_stage(boil_step *p, double r[], double per_w, size_t first, size_t end)
{
    double *z = p->trial;
    for (size_t i = first; i < end; i++) {
        r[i] = (z[i] - r[i]) * per_w;
        z[i] += p->y0[i];
    }
}

static bool stage(boil_step *p, const boil_system *s, double t, double h, int q)
{
    double from_rates[STAGES], from_matrix[STAGES], w = h * by_matrix[q][q], *r = p->g[q], *z = p->trial;
    size_t before = s->sums_first, after = s->unknowns - s->sums_end; /* the sums stand still */
    for (int k = 0; k < q; k++) {
        from_rates[k] = h * by_rates[q][k];
        from_matrix[k] = h * (by_matrix[q][k] - by_rates[q][k]);
    }
    memset(r, 0, before * sizeof *r);
    memset(r + s->sums_end, 0, after * sizeof *r);
    boil_step_gather(s, from_rates, p->f, q, r);
    boil_step_gather(s, from_matrix + 1, p->g + 1, q - 1, r); /* the first has not moved: its g is zero */
    memcpy(z, r, before * sizeof *z);
    memcpy(z + s->sums_end, r + s->sums_end, after * sizeof *z);
    boil_jacobian_solve(&p->jacobian, s, z);
    set_stage(p, r, 1 / w, 0, s->sums_first);
    set_stage(p, r, 1 / w, s->sums_end, s->unknowns);
    return boil_system_rates(s, t + when[q] * h, z, p->f[q]);
}

/* The last stage, too, is a state at the end. Where A changes within the step the two part by hundreds of times the error that the
   pair tells; in smooth stretches by a few times. */
static void heed_last_stage(boil_step *p, size_t first, size_t end)
{
    const double apart = 5;
    for (size_t i = first; i < end; i++) {
        double off = (p->y1[i] - p->trial[i]) / apart;
        if (fabs(off) > fabs(p->error[i]))
            p->error[i] = off;
    }
}

bool boil_ark_step(boil_step *p, const boil_system *s, double t, double h)
{
    double off[STAGES];
    if (!boil_jacobian_factor(&p->jacobian, s, h * by_matrix[1][1]))
        return false;
    memcpy(p->trial + s->sums_first, p->y0 + s->sums_first, (s->sums_end - s->sums_first) * sizeof(double));
    for (int q = 1; q < STAGES; q++)
        if (!stage(p, s, t, h, q))
            return false;
    for (int k = 0; k < STAGES; k++)
        off[k] = whole[k] - third_order[k];
    boil_step_end(p, s, h, whole, off);
    boil_jacobian_solve(&p->jacobian, s, p->error);
    heed_last_stage(p, 0, s->sums_first);
    heed_last_stage(p, s->sums_end, s->unknowns);
    return true;
}
