#include "transfer/water_layer.h"

#include <math.h>
#include <stddef.h>

#include "base/constants.h"
#include "transfer/overturn.h"

#define WATER_CONDUCTIVITY 0.65  /* W/mK, liquid water 40 to 100 degC: 0.63 to 0.68 [IAPWS R15-11] */
#define WATER_DIFFUSIVITY 1.6e-7 /* m2/s, same range */

boil_water_layer_law boil_water_layer_law_default(void)
{
    return (boil_water_layer_law){.mixing_efficiency = 0.05, .cover_m = 3e-3, .conduction_floor_m = 2e-3};
}

const char *boil_water_layer_law_problem(const boil_water_layer_law *l)
{
    if (!(l->mixing_efficiency >= 0.02 && l->mixing_efficiency <= 0.2))
        return "mixing efficiency must be between 0.02 and 0.2";
    if (!(l->cover_m >= 1e-3 && l->cover_m <= 10e-3))
        return "cover thickness of a water layer must be between 1 mm and 10 mm";
    if (!(l->conduction_floor_m >= 1e-3 && l->conduction_floor_m <= 5e-3))
        return "conduction floor of a water layer must be between 1 mm and 5 mm";
    return NULL;
}

double boil_water_layer_cover(const boil_water_layer_law *l, double thickness_m)
{
    return thickness_m > 0 ? -expm1(-thickness_m / l->cover_m) : 0;
}

/* Share of a layer that falls in each second: none of one that is clearly lighter, all of one clearly heavier, and a smooth
   step in between: a switch would chatter, and the densities are not known to a thousandth. */
static double falling(double buoyancy)
{
    const double fall_s = 1, unsure = 1e-3 * BOIL_GRAVITY; /* either way; 5e-4 to 5e-3, judgement */
    double x = fmin(1, fmax(0, (1 - buoyancy / unsure) / 2));
    return x * x * (3 - 2 * x) / fall_s;
}

double boil_water_layer_mixing(const boil_water_layer_law *l, const boil_water_layer_stirring *s, double mass_kg, double cover,
                               double *by_log_stirring)
{
    double unused, *slope = by_log_stirring ? by_log_stirring : &unused;
    double buoyancy = BOIL_GRAVITY * (s->bath_kg_m3 - s->water_kg_m3) / s->water_kg_m3;
    double still = s->water_kg_m3 * s->area_m2 * cover * boil_overturn_erosion(buoyancy, s->depth_m, s->interface_m_s) +
                   mass_kg * falling(buoyancy);
    double lifts = 2 * l->mixing_efficiency * s->bath_kg_m3 * s->area_m2 * s->stirring_W_kg;
    *slope = 0;
    if (!(lifts > 0))
        return still;
    double limited_s = mass_kg * fmax(0, buoyancy) / lifts, takes_s = s->mixing_time_s + limited_s;
    *slope = mass_kg * (s->mixing_time_s / 3 + limited_s) / (takes_s * takes_s);
    return mass_kg / takes_s + still;
}

double boil_water_layer_conductance(const boil_water_layer_law *l, double area_m2, double cover, double thickness_m,
                                    double age_s, double bath_side_W_m2K)
{
    double reach = fmin(thickness_m / 2, sqrt(BOIL_PI * WATER_DIFFUSIVITY * age_s));
    double path = fmax(reach, l->conduction_floor_m);
    return area_m2 * cover / (1 / bath_side_W_m2K + path / WATER_CONDUCTIVITY);
}
