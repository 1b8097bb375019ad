#include "properties/viscosity.h"

#include <math.h>

#include "base/constants.h"

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

static double log_salt(const coefficients *v, double log_salts, double t)
{
    return (v->v1 * exp(v->v2 * log_salts) + v->v3) / (v->v4 * t + 1) - log(1 + v->v5 * exp(v->v6 * log_salts));
}

double boil_viscosity_solution(const boil_mixture *m, double temperature_K)
{
    double t = temperature_K - BOIL_ZERO_CELSIUS, salts = boil_mixture_salt_fraction(m), held = fmin(salts, STRONGEST);
    double hydroxide = salts > 0 ? held * m->salt[BOIL_NAOH] / boil_mixture_salts(m) : 0;
    double log_salts = log(fmax(held, 1e-12)), log_mu = (1 - held) * log(water_mPa_s(t));
    log_mu += hydroxide * log_salt(&HYDROXIDE, log_salts, t) + (held - hydroxide) * log_salt(&NITRATE, log_salts, t);
    return PA_S * fmax(LEAST_MPA_S, exp(log_mu));
}
