#include "design/floor_metal.h"

#include <math.h>

#include "base/constants.h"

static const double water_kg_mol = 0.01801528, water_critical_Pa = 22.064e6;
static const double caustic_share = 0.5, steel_W_mK = 45, scale_W_mK = 0.8, zuber = 0.131;

double boil_floor_coefficient(double pressure_Pa, double flux_W_m2)
{
    double pr = pressure_Pa / water_critical_Pa;
    return caustic_share * 55 * pow(pr, 0.12) * pow(-log10(pr), -0.55) * pow(1000 * water_kg_mol, -0.5) * pow(flux_W_m2, 0.67);
}

double boil_floor_per_metre_of_scale(double flux_W_m2)
{
    return flux_W_m2 / scale_W_mK;
}

boil_floor_faces boil_floor_faces_of(const boil_floor *f)
{
    double superheat = f->flux_W_m2 > 0 ? f->flux_W_m2 / boil_floor_coefficient(f->pressure_Pa, f->flux_W_m2) : 0;
    boil_floor_faces faces;
    faces.inner_K = f->bath_K + f->head_K + superheat + f->scale_m * boil_floor_per_metre_of_scale(f->flux_W_m2);
    faces.outer_K = faces.inner_K + f->flux_W_m2 * f->steel_m / steel_W_mK;
    return faces;
}

double boil_floor_head_rise(const boil_floor_liquid *l, double depth_m)
{
    double head_Pa = l->density_kg_m3 * BOIL_GRAVITY * depth_m;
    return BOIL_GAS_CONSTANT * l->temperature_K * l->temperature_K / (l->latent_J_kg * water_kg_mol * l->pressure_Pa) * head_Pa;
}

double boil_floor_critical_flux(const boil_floor_liquid *l)
{
    double buoyancy = l->surface_tension_N_m * BOIL_GRAVITY * (l->density_kg_m3 - l->vapour_kg_m3);
    return zuber * l->latent_J_kg * sqrt(l->vapour_kg_m3) * pow(buoyancy, 0.25);
}
