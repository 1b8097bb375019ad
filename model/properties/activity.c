#include "properties/activity.h"

#include <math.h>

#include "base/exponential.h"
#include "properties/naoh.h"
#include "properties/water.h"

#define WATER_MOLAR_MASS 0.01801528 /* kg/mol */
#define NITRITE_ACTIVITY 1.10       /* estimate; 1.0 to 1.2 */

boil_molalities boil_molalities_of(const boil_mixture *m)
{
    boil_molalities n = {m->salt[BOIL_NAOH] / (BOIL_NAOH_MOLAR_MASS * m->water),
                         m->salt[BOIL_NANO3] / (BOIL_NANO3_MOLAR_MASS * m->water),
                         m->salt[BOIL_NANO2] / (BOIL_NANO2_MOLAR_MASS * m->water), 0};
    n.others = 2 * WATER_MOLAR_MASS * (n.nitrate + NITRITE_ACTIVITY * n.nitrite);
    return n;
}

double boil_molalities_about(const boil_molalities *n)
{
    const double counts = 0.4;
    return n->hydroxide + counts * (n->nitrate + n->nitrite);
}

/* ln a of a NaOH solution of molality M with derivatives by M and T. */
double boil_activity_log(double M, double T, double *by_M, double *by_T)
{
    double water = 1 / (1 + BOIL_NAOH_MOLAR_MASS * M), by_log_x;
    double ln_a = boil_naoh_log_activity(log(water), T, &by_log_x, by_T);
    *by_M = -by_log_x * BOIL_NAOH_MOLAR_MASS * water;
    return ln_a;
}

/* M/s with its derivative by ln a at constant M; in water itself s ~ M vanishes, and the limit is taken from the slope. */
double boil_activity_ratio(double M, double ln_a, double by_M, double *s, double *by_ln_a)
{
    *s = boil_exponential_less_1(-ln_a);
    if (M < 1e-9) {
        *by_ln_a = 0;
        return -1 / by_M;
    }
    *by_ln_a = M * (1 + *s) / (*s * *s);
    return M / *s;
}

/* ln of the activity that boils at T under the conditions, (2), and its derivative. */
double boil_activity_boiling(const boil_conditions *c, double T, double *by_T)
{
    double lowered = T - (T - c->saturation_K) / c->elevation_factor;
    double lowered_by_K, by_K, low = boil_water_log_saturation_pressure(lowered, &lowered_by_K);
    double ln_a = low - boil_water_log_saturation_pressure(T, &by_K);
    *by_T = lowered_by_K * (1 - 1 / c->elevation_factor) - by_K;
    return ln_a;
}

boil_slope boil_activity_slope(const boil_mixture *m, const boil_molalities *n, double T_M, double M_hydroxide, double ratio)
{
    double by_hydroxide = T_M * M_hydroxide, by_others = by_hydroxide * ratio;
    boil_slope s;
    s.salt[BOIL_NAOH] = by_hydroxide / (BOIL_NAOH_MOLAR_MASS * m->water);
    s.salt[BOIL_NANO3] = by_others * 2 * WATER_MOLAR_MASS / (BOIL_NANO3_MOLAR_MASS * m->water);
    s.salt[BOIL_NANO2] = by_others * 2 * WATER_MOLAR_MASS * NITRITE_ACTIVITY / (BOIL_NANO2_MOLAR_MASS * m->water);
    s.water = -(by_hydroxide * n->hydroxide + by_others * n->others) / m->water;
    s.molality = M_hydroxide;
    return s;
}
