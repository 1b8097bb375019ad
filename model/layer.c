#include "layer.h"

#include <math.h>
#include <stddef.h>

#include "boil.h"

#define WATER_CONDUCTIVITY 0.65   /* W/mK, liquid water 40 to 100 degC: 0.63 to 0.68 [IAPWS R15-11] */
#define WATER_DIFFUSIVITY 1.6e-7  /* m2/s, same range */

boil_layer_law boil_layer_law_default(void)
{
    return (boil_layer_law){.mixing_efficiency = 0.05, .cover_m = 3e-3, .conduction_floor_m = 2e-3};
}

const char *boil_layer_law_problem(const boil_layer_law *l)
{
    if (!(l->mixing_efficiency >= 0.02 && l->mixing_efficiency <= 0.2))
        return "mixing efficiency must be between 0.02 and 0.2";
    if (!(l->cover_m >= 1e-3 && l->cover_m <= 10e-3))
        return "cover thickness of a water layer must be between 1 mm and 10 mm";
    if (!(l->conduction_floor_m >= 1e-3 && l->conduction_floor_m <= 5e-3))
        return "conduction floor of a water layer must be between 1 mm and 5 mm";
    return NULL;
}

double boil_layer_cover(const boil_layer_law *l, double thickness_m)
{
    return thickness_m > 0 ? -expm1(-thickness_m / l->cover_m) : 0;
}

static double erosion_velocity(const boil_layer_stirring *s, double buoyancy)
{
    const double constant = 3.8, fastest = 0.2;
    double u = s->interface_m_s, well = buoyancy * s->depth_m; /* u^2 Ri */
    double by_power = constant * pow(u * u / well, 1.5);
    return u * fmin(fastest, by_power);
}

double boil_layer_mixing(const boil_layer_law *l, const boil_layer_stirring *s, double mass_kg, double cover,
                         double *by_log_stirring)
{
    const double fall_s = 1;
    double unused, *slope = by_log_stirring ? by_log_stirring : &unused;
    *slope = 0;
    double buoyancy = BOIL_GRAVITY * (s->bath_kg_m3 - s->water_kg_m3) / s->water_kg_m3;
    if (!(buoyancy > 0))
        return mass_kg / fall_s;
    double slow = s->water_kg_m3 * s->area_m2 * cover * erosion_velocity(s, buoyancy);
    double limit = 2 * l->mixing_efficiency * s->bath_kg_m3 * s->area_m2 * s->stirring_W_kg / buoyancy;
    if (!(limit > 0))
        return slow;
    double takes_s = s->mixing_time_s + mass_kg / limit;
    *slope = mass_kg * (s->mixing_time_s / 3 + mass_kg / limit) / (takes_s * takes_s);
    return mass_kg / takes_s + slow;
}

double boil_layer_conductance(const boil_layer_law *l, double area_m2, double cover, double thickness_m, double age_s,
                              double bath_side_W_m2K)
{
    double reach = fmin(thickness_m / 2, sqrt(BOIL_PI * WATER_DIFFUSIVITY * age_s));
    double path = fmax(reach, l->conduction_floor_m);
    return area_m2 * cover / (1 / bath_side_W_m2K + path / WATER_CONDUCTIVITY);
}
