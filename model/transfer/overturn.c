#include "transfer/overturn.h"

#include <math.h>
#include <stddef.h>

#include "base/constants.h"
#include "base/cube_root.h"

double boil_overturn_buoyancy(const boil_overturn_pool *p)
{
    return BOIL_GRAVITY * (p->bath_kg_m3 - p->water_kg_m3) / p->water_kg_m3;
}

double boil_overturn_time(const boil_overturn *o, const boil_overturn_pool *p)
{
    if (!(p->stirring_W_kg > 0))
        return (double)INFINITY;
    return o->turnover_factor * boil_cube_root(p->depth_m * p->depth_m / p->stirring_W_kg);
}

double boil_overturn_lifting_time(const boil_overturn *o, const boil_overturn_pool *p, double mass_kg)
{
    double lifts = 2 * o->mixing_efficiency * p->bath_kg_m3 * p->area_m2 * p->stirring_W_kg;
    if (!(lifts > 0))
        return (double)INFINITY;
    return mass_kg * fmax(0, boil_overturn_buoyancy(p)) / lifts;
}

double boil_overturn_mixing(const boil_overturn *o, const boil_overturn_pool *p, double mass_kg, double *by_log_stirring)
{
    double turns_s = boil_overturn_time(o, p), lifts_s = boil_overturn_lifting_time(o, p, mass_kg), takes_s = turns_s + lifts_s;
    if (by_log_stirring)
        *by_log_stirring = isinf(takes_s) ? 0 : mass_kg * (turns_s / 3 + lifts_s) / (takes_s * takes_s);
    return mass_kg / takes_s;
}

double boil_overturn_erosion(double buoyancy_m_s2, double depth_m, double speed_m_s)
{
    const double constant = 3.8, fastest = 0.2;
    double u = speed_m_s, well = buoyancy_m_s2 * depth_m; /* u^2 Ri */
    return well > 0 ? u * fmin(fastest, constant * u * u / well * sqrt(u * u / well)) : u * fastest;
}

double boil_overturn_gain(const boil_overturn *o, const boil_overturn_pool *p, double vapour_kg_m3, double escaping)
{
    double b = boil_overturn_buoyancy(p);
    if (!(b > 0))
        return escaping > 0 ? (double)INFINITY : 0;
    return 2 * o->mixing_efficiency * p->bath_kg_m3 / vapour_kg_m3 * BOIL_GRAVITY / b * escaping;
}
