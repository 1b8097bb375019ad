#include "transfer/interface_heat.h"

#include <math.h>

#include "base/constants.h"
#include "base/larger.h"

double boil_interface_effusivity(const boil_interface_liquid *l)
{
    return sqrt(l->conductivity_W_mK * l->density_kg_m3 * l->heat_capacity_J_kgK);
}

double boil_interface_contact_temperature(const boil_interface_liquid *water, double water_K, const boil_interface_liquid *bath,
                                          double bath_K)
{
    double e1 = boil_interface_effusivity(water), e2 = boil_interface_effusivity(bath);
    return (e1 * water_K + e2 * bath_K) / (e1 + e2);
}

double boil_interface_conductance(const boil_interface_liquid *water, const boil_interface_liquid *bath, double path_m,
                                  double age_s)
{
    const double spreads_s = 0.1;
    double resist = 1 / boil_interface_effusivity(water) + 1 / boil_interface_effusivity(bath);
    double fresh = 1 / (sqrt(BOIL_PI * boil_larger(spreads_s, age_s)) * resist);
    return boil_larger(water->conductivity_W_mK / path_m, fresh);
}
