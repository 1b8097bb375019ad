#include "design/heaters.h"

#include <math.h>

#include "design/published_units.h"
#include "properties/water.h"

static const double shares[] = {0.60, 0.65, 0.70, 0.75, 0.80}, lengths[] = {0.75, 0.95, 1.21, 1.55, 2.00};
enum { SHARES = sizeof shares / sizeof shares[0] };

static double tube_factor(double efficiency)
{
    for (int i = 1; i < SHARES; i++)
        if (efficiency <= shares[i] && efficiency >= shares[0]) {
            double along = (efficiency - shares[i - 1]) / (shares[i] - shares[i - 1]);
            return lengths[i - 1] + along * (lengths[i] - lengths[i - 1]);
        }
    return (double)NAN;
}

double boil_tube_length(double heat_W, double efficiency)
{
    return BOIL_FOOT * tube_factor(efficiency) * sqrt(heat_W / BOIL_KBTU_H);
}

double boil_tube_efficiency_at(double efficiency, double bath_K)
{
    return efficiency - 0.02 * (bath_K - BOIL_FAHRENHEIT(180)) / (105 / 1.8);
}

double boil_element_area(double heat_W, double flux_W_m2)
{
    return heat_W / flux_W_m2;
}

boil_coil_size boil_coil_size_of(const boil_coil *c)
{
    const double least_K = 10 / 1.8;
    boil_coil_size s = {BOIL_COIL_SIZED, c->steam_K - c->bath_K, (double)NAN, (double)NAN};
    if (!(s.difference_K > 0))
        s.verdict = BOIL_COIL_CANNOT;
    else if (!(s.difference_K >= least_K))
        s.verdict = BOIL_COIL_TOO_NEAR;
    if (s.verdict != BOIL_COIL_SIZED)
        return s;
    s.area_m2 = c->heat_W / (c->coefficient_W_m2K * s.difference_K);
    s.steam_kg_s = c->heat_W / boil_water_latent_heat(c->steam_K);
    return s;
}
