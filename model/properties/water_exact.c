/* Source: IAPWS SR1-86(1992), Revised Supplementary Release on Saturation Properties of Ordinary Water Substance; printed in
   Wagner & Pruss 1993, J. Phys. Chem. Ref. Data 22, 783. Coefficients carry the names the release gives them. */
#include "properties/water_exact.h"

#include <math.h>

#include "properties/water.h"

#define CRITICAL_TEMPERATURE_K 647.096
#define CRITICAL_DENSITY_KG_M3 322.0
#define CRITICAL_PRESSURE_PA 22.064e6

/* A quantity along the saturation line and its derivative with respect to temperature. */
typedef struct {
    double value, slope;
} along;

/* dp/dT of the release's own vapour-pressure equation 1, and d2p/dT2. With theta = T / Tc, tau = 1 - theta
   and ln(p / pc) = L = f(tau) / theta, the derivatives with respect to theta are
   L' = -(f' + L) / theta and L'' = (f'' - 2 L') / theta.
   Its pressure differs from region 4's by less than 0.02 %, but the enthalpies below were fitted with this one. */
static inline along pressure_slope(double temperature_K)
{
    const double a1 = -7.85951783, a2 = 1.84408259, a3 = -11.7866497, a4 = 22.6807411, a5 = -15.9618719, a6 = 1.80122502;
    const double theta = temperature_K / CRITICAL_TEMPERATURE_K;
    const double t = 1 - theta, t2 = t * t, t3 = t2 * t, root = sqrt(t);
    const double f = t * (a1 + a3 * t2 + a5 * t3 + root * (a2 + a4 * t2 + a6 * t3 * t3));
    const double f1 = a1 + 3 * a3 * t2 + 4 * a5 * t3 + root * (1.5 * a2 + 3.5 * a4 * t2 + 7.5 * a6 * t3 * t3);
    const double f2 = 6 * a3 * t + 12 * a5 * t2 + (0.75 * a2 + 8.75 * a4 * t2 + 48.75 * a6 * t3 * t3) / root;
    const double log_p = f / theta;
    const double log_p1 = -(f1 + log_p) / theta;
    const double log_p2 = (f2 - 2 * log_p1) / theta;
    const double scale = CRITICAL_PRESSURE_PA * exp(log_p) / CRITICAL_TEMPERATURE_K;
    return (along){.value = scale * log_p1, .slope = scale * (log_p2 + log_p1 * log_p1) / CRITICAL_TEMPERATURE_K};
}

/* tau^(1/3), which both densities are written in. */
static inline double cube_root(double temperature_K)
{
    return cbrt(1 - temperature_K / CRITICAL_TEMPERATURE_K);
}

/* Equation 2, in c = tau^(1/3). */
static inline along liquid_density(double c)
{
    const double b1 = 1.99274064, b2 = 1.09965342, b3 = -0.510839303, b4 = -1.75493479, b5 = -45.5170352, b6 = -6.74694450e5;
    const double c2 = c * c, c4 = c2 * c2, c5 = c4 * c, c8 = c4 * c4, c16 = c8 * c8;
    const double c43 = c16 * c16 * c8 * c2 * c, c110 = c43 * c43 * c16 * c8;
    const double value = 1 + b1 * c + b2 * c2 + b3 * c5 + b4 * c16 + b5 * c43 + b6 * c110;
    const double by_c_times_c = b1 * c + 2 * b2 * c2 + 5 * b3 * c5 + 16 * b4 * c16 + 43 * b5 * c43 + 110 * b6 * c110;
    const double slope = -by_c_times_c / (3 * c2 * c) / CRITICAL_TEMPERATURE_K;
    return (along){.value = CRITICAL_DENSITY_KG_M3 * value, .slope = CRITICAL_DENSITY_KG_M3 * slope};
}

/* Equation 4: what remains of either phase's enthalpy without T/rho dp/dT. J/kg; theta = T / Tc. */
static inline along shared_enthalpy(double temperature_K)
{
    const double d = -1135.905627715, d1 = -5.65134998e-8, d2 = 2690.66631, d3 = 127.287297, d4 = -135.003439, d5 = 0.981825814;
    const double x = temperature_K / CRITICAL_TEMPERATURE_K, inverse = 1 / x, root = sqrt(x);
    const double x2 = x * x, x4 = x2 * x2, x5 = x4 * x, x16 = x4 * x4 * x4 * x4;
    const double inverse2 = inverse * inverse, inverse4 = inverse2 * inverse2;
    const double term1 = d1 * inverse4 * inverse4 * inverse4 * inverse4 * inverse2 * inverse; /* theta^-19 */
    const double term3 = d3 * x4 * root;                                                      /* theta^4.5 */
    const double term5 = d5 * x16 * x16 * x16 * x4 * x2 * root;                               /* theta^54.5 */
    const double value = d + term1 + d2 * x + term3 + d4 * x5 + term5;
    const double slope = d2 + (-19 * term1 + 4.5 * term3 + 5 * d4 * x5 + 54.5 * term5) * inverse;
    return (along){.value = 1e3 * value, .slope = 1e3 * slope / CRITICAL_TEMPERATURE_K};
}

/* Equation 6, h' = alpha + T/rho' dp/dT. */
static inline along liquid_enthalpy(double temperature_K)
{
    const along alpha = shared_enthalpy(temperature_K);
    const along density = liquid_density(cube_root(temperature_K));
    const along pressure1 = pressure_slope(temperature_K);
    const double volume = 1 / density.value;
    const double work_slope =
        pressure1.value + temperature_K * pressure1.slope - temperature_K * pressure1.value * density.slope * volume;
    return (along){
        .value = alpha.value + temperature_K * volume * pressure1.value,
        .slope = alpha.slope + volume * work_slope,
    };
}

double boil_water_exact_density(double temperature_K)
{
    return liquid_density(cube_root(temperature_K)).value;
}

double boil_water_exact_enthalpy(double temperature_K, double *heat_capacity_J_kgK)
{
    const along h = liquid_enthalpy(temperature_K);
    *heat_capacity_J_kgK = h.slope;
    return h.value;
}

/* Newton from a mean heat capacity: that guess is within 3 K, and the steps leave 5e-3 K, 2e-8 K
   and rounding. */
double boil_water_exact_temperature(double enthalpy_J_kg)
{
    double temperature_K = 273.16 + enthalpy_J_kg / 4200;
    for (int step = 0; step < 3; step++) {
        const along h = liquid_enthalpy(temperature_K);
        temperature_K -= (h.value - enthalpy_J_kg) / h.slope;
    }
    return temperature_K;
}

/* Equation 3, in x = tau^(1/6). */
static inline double vapour_density(double x)
{
    const double c1 = -2.03150240, c2 = -2.68302940, c3 = -5.38626492, c4 = -17.2991605, c5 = -44.7586581, c6 = -63.9201063;
    const double x2 = x * x, x4 = x2 * x2, x8 = x4 * x4, x16 = x8 * x8, x18 = x16 * x2;
    const double x37 = x18 * x18 * x, x71 = x37 * x18 * x16;
    return CRITICAL_DENSITY_KG_M3 * exp(c1 * x2 + c2 * x4 + c3 * x8 + c4 * x18 + c5 * x37 + c6 * x71);
}

double boil_water_vapour_density(double temperature_K)
{
    return vapour_density(sqrt(cube_root(temperature_K)));
}

/* Equation 7. */
double boil_water_vapour_enthalpy(double temperature_K)
{
    const double work = temperature_K * pressure_slope(temperature_K).value;
    return shared_enthalpy(temperature_K).value + work / boil_water_vapour_density(temperature_K);
}

/* Equation 7 less equation 6: what both share drops out, and Clapeyron's equation is left. */
double boil_water_exact_latent_heat(double temperature_K)
{
    const double c = cube_root(temperature_K);
    const double volume = 1 / vapour_density(sqrt(c)) - 1 / liquid_density(c).value;
    return temperature_K * pressure_slope(temperature_K).value * volume;
}
