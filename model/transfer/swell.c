#include "transfer/swell.h"

#include <math.h>
#include <stddef.h>

#include "base/constants.h"

boil_transport boil_transport_default(void)
{
    return (boil_transport){
        .viscosity_factor = 1, .conductivity_W_mK = 0.65, .expansion_1_K = 5e-4, .surface_tension_N_m = 0.085};
}

boil_swell boil_swell_default(void)
{
    return (boil_swell){.distribution = 1.2, .drift = 1.53, .part_coefficient_factor = 1};
}

const char *boil_swell_problem(const boil_swell *p)
{
    if (!(p->distribution >= 1 && p->distribution <= 1.5))
        return "distribution parameter of the drift flux must be between 1.0 and 1.5";
    if (!(p->drift >= 0.3 && p->drift <= 5))
        return "drift coefficient must be between 0.3 and 5";
    if (!(p->part_coefficient_factor >= 0.5 && p->part_coefficient_factor <= 2))
        return "part coefficient factor must be between 0.5 and 2";
    return NULL;
}

double boil_swell_drift_velocity(const boil_swell *p, double surface_tension_N_m, double liquid_kg_m3, double vapour_kg_m3)
{
    double lighter = (liquid_kg_m3 - vapour_kg_m3) / (liquid_kg_m3 * liquid_kg_m3);
    return p->drift * sqrt(sqrt(surface_tension_N_m * BOIL_GRAVITY * lighter));
}

double boil_swell_void_upper(const boil_swell *p, double drift_velocity_m_s, double steam_velocity_m_s)
{
    return steam_velocity_m_s / (p->distribution * steam_velocity_m_s + drift_velocity_m_s);
}

double boil_swell_void_lower(const boil_swell *p, double drift_velocity_m_s, double steam_velocity_m_s)
{
    double u = p->distribution * steam_velocity_m_s / drift_velocity_m_s;
    double share = u < 1e-4 ? u / 2 - u * u / 3 : 1 - log1p(u) / u;
    return share / p->distribution;
}

double boil_swell_steam_velocity(const boil_swell *p, double drift_velocity_m_s, double held_m3, double liquid_m3)
{
    double gas = held_m3 / (held_m3 + liquid_m3);
    /* alpha never reaches 1/C0 in a run; the floor keeps an integrator's wild trial finite. */
    return gas * drift_velocity_m_s / fmax(1 - p->distribution * gas, 1e-3);
}

double boil_swell_steam_held(const boil_swell *p, double drift_velocity_m_s, double steam_velocity_m_s, double liquid_m3)
{
    double gas = boil_swell_void_upper(p, drift_velocity_m_s, steam_velocity_m_s);
    return liquid_m3 * gas / (1 - gas);
}

double boil_swell_mixing_time(double factor, double stirring_W_kg, double radius_m, double depth_m)
{
    const double mixed_95 = 37, constants_in_95 = 3; /* exp(-3) = 5 % left */
    if (!(stirring_W_kg > 0))
        return (double)INFINITY;
    return factor * mixed_95 / constants_in_95 * pow(radius_m, 5.0 / 3) / (cbrt(stirring_W_kg) * depth_m);
}
