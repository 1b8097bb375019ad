#include "transfer/water_layer.h"

#include <math.h>
#include <stddef.h>

#include "base/constants.h"
#include "base/exponential.h"
#include "transfer/entrainment.h"
#include "transfer/interface_heat.h"

boil_water_layer_law boil_water_layer_law_default(void)
{
    return (boil_water_layer_law){.turnover_factor = 1,
                                  .mixing_efficiency = 0.05,
                                  .erosion_factor = 1,
                                  .mixer_share = 1,
                                  .drift_coefficient = BOIL_ENTRAINMENT_DRIFT,
                                  .path_m = BOIL_INTERFACE_PATH_LIKELY,
                                  .cover_m = 3e-3};
}

const char *boil_water_layer_law_problem(const boil_water_layer_law *l)
{
    if (!(l->turnover_factor >= 0.3 && l->turnover_factor <= 3))
        return "mixing time factor must be between 0.3 and 3";
    if (!(l->mixing_efficiency >= 0.02 && l->mixing_efficiency <= 0.2))
        return "mixing efficiency must be between 0.02 and 0.2";
    if (!(l->erosion_factor >= 0.3 && l->erosion_factor <= 3))
        return "erosion factor of a water layer must be between 0.3 and 3";
    if (!(l->mixer_share >= 0 && l->mixer_share <= 1))
        return "the share of a mixer that stirs the layer must be 0 to 1";
    if (!(l->path_m >= BOIL_INTERFACE_PATH_FAST && l->path_m <= BOIL_INTERFACE_PATH_SLOW))
        return "heat path into a water layer must be between 1.3 mm and 8 mm";
    if (!(l->cover_m >= 1e-3 && l->cover_m <= 10e-3))
        return "cover thickness of a water layer must be between 1 mm and 10 mm";
    return NULL;
}

double boil_water_layer_cover(const boil_water_layer_law *l, double thickness_m)
{
    return thickness_m > 0 ? -boil_exponential_less_1(-thickness_m / l->cover_m) : 0;
}

/* Share of a layer that falls in each second: none of one that is clearly lighter, all of one clearly heavier, and a smooth
   step in between: a switch would chatter, and the densities are not known to a thousandth. */
static double falling(double buoyancy)
{
    const double fall_s = 1, unsure = 1e-3 * BOIL_GRAVITY; /* either way; 5e-4 to 5e-3, judgement */
    double x = fmin(1, fmax(0, (1 - buoyancy / unsure) / 2));
    return x * x * (3 - 2 * x) / fall_s;
}

double boil_water_layer_mixing(const boil_water_layer_law *l, double turnover_factor, const boil_overturn_pool *pool,
                               double speed_m_s, double mass_kg, double cover, double *by_log_stirring)
{
    boil_overturn turns = {turnover_factor, l->mixing_efficiency};
    double buoyancy = boil_overturn_buoyancy(pool);
    double eroded = l->erosion_factor * boil_overturn_erosion(buoyancy, pool->depth_m, speed_m_s);
    return boil_overturn_mixing(&turns, pool, mass_kg, by_log_stirring) + pool->water_kg_m3 * pool->area_m2 * cover * eroded +
           mass_kg * falling(buoyancy);
}
