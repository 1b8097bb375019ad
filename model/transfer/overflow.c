#include "transfer/overflow.h"

#include <math.h>

#define GRAVE_TURNOVER 0.3

double boil_overflow_rim_void(const boil_overflow_pool *p)
{
    return fmax(0, 1 - p->still_level_m / p->depth_m);
}

double boil_overflow_critical_steam_rate(const boil_overflow_pool *p, const boil_swell *law, double drift_velocity_m_s)
{
    double gas = boil_overflow_rim_void(p), slip = 1 - law->distribution * gas;
    if (!(slip > 0))
        return (double)INFINITY;
    return gas * drift_velocity_m_s / slip * p->area_m2 * p->vapour_kg_m3;
}

double boil_overflow_potential_to_rim(const boil_overflow_pool *p)
{
    return fmax(0, p->depth_m - p->still_level_m) * p->area_m2 * p->vapour_kg_m3;
}

double boil_overflow_surge_rate(double potential_kg, double still_level_m, double turnover_factor)
{
    const double time_s = 0.45, level_m = 0.406;
    if (potential_kg <= 0)
        return 0;
    return potential_kg / (time_s * turnover_factor * pow(still_level_m / level_m, 2.0 / 3));
}

double boil_overflow_freeboard_left(const boil_overflow_pool *p, double potential_kg, double swelled_level_m,
                                    double calm_boil_level_m)
{
    const double boil_returns = 1.1;
    double surge_m = swelled_level_m + boil_returns * potential_kg / (p->area_m2 * p->vapour_kg_m3);
    return p->depth_m - (surge_m < calm_boil_level_m ? calm_boil_level_m : surge_m); /* not fmax, which would hide a NaN */
}

bool boil_overflow_possible(const boil_overflow_pool *p, double potential_kg, double freeboard_left_m,
                            double critical_steam_rate_kg_s)
{
    if (potential_kg <= 0 || freeboard_left_m > 0)
        return false;
    if (isinf(critical_steam_rate_kg_s))
        return true;
    return !(boil_overflow_surge_rate(potential_kg, p->still_level_m, GRAVE_TURNOVER) <= critical_steam_rate_kg_s);
}
