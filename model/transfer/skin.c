#include "transfer/skin.h"

#include <math.h>

double boil_skin_mass_transfer(const boil_skin_liquid *l, double liquid_coefficient_W_m2K)
{
    double stored = l->density_kg_m3 * l->heat_capacity_J_kgK;
    return liquid_coefficient_W_m2K / stored * sqrt(l->salt_diffusivity_m2_s * stored / l->conductivity_W_mK);
}

double boil_skin_salt_fraction(double bulk_fraction, double flux_kg_m2s, double density_kg_m3, double mass_transfer_m_s)
{
    return fmin(1, bulk_fraction * exp(flux_kg_m2s / (density_kg_m3 * mass_transfer_m_s)));
}

double boil_skin_convection_factor(double flux_kg_m2s, double vapour_heat_capacity_J_kgK, double coefficient_W_m2K)
{
    double phi = flux_kg_m2s * vapour_heat_capacity_J_kgK / coefficient_W_m2K;
    return fabs(phi) < 1e-9 ? 1 : phi / expm1(phi);
}
