#include "design/combustion.h"

#include <math.h>

#include "base/constants.h"
#include "design/published_units.h"

#define REFERENCE_K 298.15
#define HIGHEST_K 1600.0
static const double lower_J_mol = 802.6e3, higher_J_mol = 890.6e3;

/* h/(R T) = a0 + a1 T/2 + a2 T2/3 + a3 T3/4 + a4 T4/5 + a5/T, below and from 1000 K. */
typedef struct {
    double low[6], high[6];
} gas;

/* clang-format off */
static const gas carbon_dioxide = {{2.35677352, 8.98459677e-3, -7.12356269e-6, 2.45919022e-9, -1.43699548e-13, -48371.9697},
                                   {3.85746029, 4.41437026e-3, -2.21481404e-6, 5.23490188e-10, -4.72084164e-14, -48759.166}};
static const gas steam = {{4.19864056, -2.0364341e-3, 6.52040211e-6, -5.48797062e-9, 1.77197817e-12, -30293.7267},
                          {3.03399249, 2.17691804e-3, -1.64072518e-7, -9.7041987e-11, 1.68200992e-14, -30004.2971}};
static const gas oxygen = {{3.78245636, -2.99673416e-3, 9.84730201e-6, -9.68129509e-9, 3.24372837e-12, -1063.94356},
                           {3.28253784, 1.48308754e-3, -7.57966669e-7, 2.09470555e-10, -2.16717794e-14, -1088.45772}};
static const gas nitrogen = {{3.298677, 1.4082404e-3, -3.963222e-6, 5.641515e-9, -2.444854e-12, -1020.8999},
                             {2.92664, 1.4879768e-3, -5.68476e-7, 1.0097038e-10, -6.753351e-15, -922.7977}};
/* clang-format on */

static double enthalpy(const gas *g, double T)
{
    const double *a = T < 1000 ? g->low : g->high;
    double sum = a[0] + T * (a[1] / 2 + T * (a[2] / 3 + T * (a[3] / 4 + T * a[4] / 5)));
    return BOIL_GAS_CONSTANT * (sum * T + a[5]);
}

static double above_reference(const gas *g, double T)
{
    return enthalpy(g, T) - enthalpy(g, REFERENCE_K);
}

double boil_combustion_available(double flue_K, double air_K, double excess_air)
{
    double x = excess_air, air = 2 * above_reference(&oxygen, air_K) + 7.52 * above_reference(&nitrogen, air_K);
    double flue = above_reference(&carbon_dioxide, flue_K) + 2 * above_reference(&steam, flue_K) +
                  2 * x * above_reference(&oxygen, flue_K) + 7.52 * (1 + x) * above_reference(&nitrogen, flue_K);
    return (lower_J_mol + (1 + x) * air - flue) / higher_J_mol;
}

double boil_combustion_flue_temperature(double available, double air_K, double excess_air)
{
    double low = air_K, high = HIGHEST_K;
    if (!(available <= boil_combustion_available(low, air_K, excess_air)) ||
        !(available >= boil_combustion_available(high, air_K, excess_air)))
        return (double)NAN;
    while (high - low > 1e-6) {
        double middle = (low + high) / 2;
        *(boil_combustion_available(middle, air_K, excess_air) > available ? &low : &high) = middle;
    }
    return high;
}

double boil_combustion_excess_of(double dry_oxygen)
{
    return 8.52 * dry_oxygen / (2 - 9.52 * dry_oxygen);
}

double boil_combustion_air(double input_W, double excess_air)
{
    return input_W / (1000 * BOIL_BTU) * 10 * BOIL_FOOT * BOIL_FOOT * BOIL_FOOT * (1 + excess_air);
}
