#include "case/carried_in.h"

#include <math.h>

#include "base/constants.h"
#include "case/load.h"
#include "properties/water.h"

#define IN_WATER_W_M2K 500.0
#define THROUGH_STEEL_W_M2K 333.0

double boil_rinsed_K(const boil_load *l, double from_K, double rinse_K, double dwell_s)
{
    boil_conduction_body b = boil_load_parts(l);
    double k = b.conductivity_W_mK > 0 ? b.conductivity_W_mK : boil_metal_conductivity(&b.metal, from_K);
    double resistance = 1 / IN_WATER_W_M2K + b.radius_m / ((b.dimension + 2) * k);
    double tau = b.mass_kg * boil_metal_heat_capacity(&b.metal, from_K) * resistance / b.area_m2;
    return rinse_K + (from_K - rinse_K) * exp(-dwell_s / tau);
}

double boil_carried_in_K(const boil_load *l, double saturation_K)
{
    return fmin(fmax(l->water_K > 0 ? l->water_K : l->temperature_K, BOIL_ZERO_CELSIUS), saturation_K);
}

boil_hollows boil_hollows_of(const boil_load *l, double saturation_K)
{
    boil_hollows h = {0, 0, 0, 0};
    if (!(l->trapped_kg > 0))
        return h;
    h.water_kg = l->trapped_kg;
    h.entry_K = boil_carried_in_K(l, saturation_K);
    double ball_m2 = cbrt(36 * BOIL_PI * l->hollow_m3 * l->hollow_m3);
    double count = l->trapped_kg / (boil_water_density(h.entry_K) * l->hollow_m3);
    h.conductance_W_K = count * ball_m2 * THROUGH_STEEL_W_M2K;
    h.release_s = BOIL_HOLLOW_RELEASE * h.water_kg * boil_water_heat_capacity(h.entry_K) / h.conductance_W_K;
    return h;
}
