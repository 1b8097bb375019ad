#include "properties/viscosity.h"

#include <math.h>

#include "base/constants.h"
#include "base/cubic.h"
#include "base/larger.h"

#define STRONGEST 0.56 /* kg salts per kg */
#define LEAST_MPA_S 0.2
#define PA_S 1e-3 /* of a mPa s */

typedef struct {
    double v1, v2, v3, v4, v5, v6;
} coefficients;

/* clang-format off */
static const coefficients HYDROXIDE = {448.457566713375, 0.00871452408983102, -431.97212334697, 0.0160144202449452,
                                       104.011738670148, 4.64493684488816};
static const coefficients NITRATE = {6.7313473153146, 1.05612138465955, 0.877718891436357, 0.0107285288664735,
                                     3.05655294565016, 0.955895443778298};
/* clang-format on */

static double water_mPa_s(double t)
{
    return (t + 246) / ((0.05594 * t + 5.2842) * t + 137.37);
}

double boil_viscosity_water(double temperature_K)
{
    return PA_S * water_mPa_s(temperature_K - BOIL_ZERO_CELSIUS);
}

/* Of a salt by the strength of all, w: v1 w^v2 + v3, and ln(v5 w^v6 + 1). */
typedef struct {
    double warm, cold;
} part;

static part part_of(const coefficients *v, double log_w)
{
    return (part){v->v1 * exp(v->v2 * log_w) + v->v3, log(1 + v->v5 * exp(v->v6 * log_w))};
}

/* Their slopes by w. */
static part slope_of(const coefficients *v, double w)
{
    double grown = v->v5 * exp(v->v6 * log(w));
    return (part){v->v1 * v->v2 * exp(v->v2 * log(w)) / w, grown / (1 + grown) * v->v6 / w};
}

static double held_of(const boil_mixture *m)
{
    return boil_smaller(boil_mixture_salt_fraction(m), STRONGEST);
}

static double log_salt(const coefficients *v, const part *p, double t)
{
    return p->warm / (v->v4 * t + 1) - p->cold;
}

static double of_parts(const boil_mixture *m, double temperature_K, double held, const part *of_hydroxide,
                       const part *of_nitrate)
{
    double t = temperature_K - BOIL_ZERO_CELSIUS, hydroxide = held > 0 ? held * m->salt[BOIL_NAOH] / boil_mixture_salts(m) : 0;
    double log_mu = (1 - held) * log(water_mPa_s(t)) + hydroxide * log_salt(&HYDROXIDE, of_hydroxide, t) +
                    (held - hydroxide) * log_salt(&NITRATE, of_nitrate, t);
    return PA_S * boil_larger(LEAST_MPA_S, exp(log_mu));
}

double boil_viscosity_solution(const boil_mixture *m, double temperature_K)
{
    double held = held_of(m), log_w = log(fmax(held, 1e-12));
    const part of_hydroxide = part_of(&HYDROXIDE, log_w), of_nitrate = part_of(&NITRATE, log_w);
    return of_parts(m, temperature_K, held, &of_hydroxide, &of_nitrate);
}

static const double CELL = STRONGEST / BOIL_VISCOSITY_CELLS;

static void fill(double to[2][4], const coefficients *v, double w)
{
    const part a = part_of(v, log(w)), b = part_of(v, log(w + CELL)), by_a = slope_of(v, w), by_b = slope_of(v, w + CELL);
    boil_cubic_between(to[0], a.warm, CELL * by_a.warm, b.warm, CELL * by_b.warm);
    boil_cubic_between(to[1], a.cold, CELL * by_a.cold, b.cold, CELL * by_b.cold);
}

static part at(double c[2][4], double u)
{
    return (part){boil_cubic_at(c[0], u), boil_cubic_at(c[1], u)};
}

double boil_viscosity_told(boil_viscosity_table *t, const boil_mixture *m, double temperature_K)
{
    const double least = 0.2; /* below, powers of strength bend too much */
    double held = held_of(m);
    if (!(held >= least))
        return boil_viscosity_solution(m, temperature_K);
    int cell = (int)boil_smaller(BOIL_VISCOSITY_CELLS - 1, held / CELL);
    if (!t->known[cell]) {
        fill(t->hydroxide[cell], &HYDROXIDE, cell * CELL);
        fill(t->nitrate[cell], &NITRATE, cell * CELL);
        t->known[cell] = true;
    }
    const part of_hydroxide = at(t->hydroxide[cell], held / CELL - cell), of_nitrate = at(t->nitrate[cell], held / CELL - cell);
    return of_parts(m, temperature_K, held, &of_hydroxide, &of_nitrate);
}
