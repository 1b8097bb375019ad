#include "transfer/swell_pool.h"

#include <math.h>

#include "base/constants.h"

static double capillary_length(const boil_swell_pool_fluid *f)
{
    return sqrt(f->surface_tension_N_m / (BOIL_GRAVITY * (f->liquid_kg_m3 - f->vapour_kg_m3)));
}

double boil_swell_pool_viscosity_number(const boil_swell_pool_fluid *f)
{
    return f->viscosity_Pa_s / sqrt(f->liquid_kg_m3 * f->surface_tension_N_m * capillary_length(f));
}

double boil_swell_pool_published(const boil_swell_pool_fluid *f, double width_m)
{
    const double wide = 30, wide_constant = 0.030, viscous = 2.25e-3, viscous_constant = 0.92;
    double number = boil_swell_pool_viscosity_number(f), diameter = width_m / capillary_length(f);
    double constant = diameter < wide ? 0.0019 * pow(diameter, 0.809) : wide_constant;
    double law = number <= viscous ? constant * pow(number, -0.562) : viscous_constant * constant / wide_constant;
    return law * pow(f->vapour_kg_m3 / f->liquid_kg_m3, -0.157);
}

double boil_swell_pool_drift(const boil_swell_pool_fluid *f, double width_m)
{
    return fmin(BOIL_SWELL_POOL_MOST, boil_swell_pool_published(f, width_m));
}
