#include "transfer/skin.h"

#include <math.h>

#include "base/exponential.h"

double boil_skin_mass_transfer(const boil_skin_liquid *l, double liquid_coefficient_W_m2K)
{
    double stored = l->density_kg_m3 * l->heat_capacity_J_kgK;
    return liquid_coefficient_W_m2K / stored * sqrt(l->salt_diffusivity_m2_s * stored / l->conductivity_W_mK);
}

double boil_skin_salt_fraction(double bulk_fraction, double flux_kg_m2s, double density_kg_m3, double mass_transfer_m_s)
{
    return fmin(1, bulk_fraction * exp(flux_kg_m2s / (density_kg_m3 * mass_transfer_m_s)));
}

/* Of (2) near 0, where the difference of exp phi and 1 is small: its series, whose next term is below 1e-15 there. */
static double factor_near_0(double phi)
{
    double x = phi * phi;
    return 1 - phi / 2 +
           x * (1.0 / 12 - x * (1.0 / 720 - x * (1.0 / 30240 -
                                                 x * (1.0 / 1209600 - x * (1.0 / 47900160 - x * (691.0 / 1307674368000.0))))));
}

double boil_skin_convection_factor(double flux_kg_m2s, double vapour_heat_capacity_J_kgK, double coefficient_W_m2K)
{
    double phi = flux_kg_m2s * vapour_heat_capacity_J_kgK / coefficient_W_m2K;
    return fabs(phi) < 0.5 ? factor_near_0(phi) : phi / boil_exponential_less_1(phi);
}
