#include "transfer/convection.h"

#include <math.h>

#include "base/constants.h"
#include "base/cube_root.h"

static double prandtl(const boil_convection_liquid *f)
{
    return f->viscosity_Pa_s * f->heat_capacity_J_kgK / f->conductivity_W_mK;
}

/* St = h/(rho cp j) = 0.1 (Re Fr Pr^2)^(-1/4),  Re Fr = j^3 rho/(mu g)  [Deckwer, Chem. Eng. Sci. 35 (1980) 1341; from
   memory]. Its fourth power is linear in the gas velocity j: h^4 = 1e-4 (rho cp)^4 j mu g/(rho Pr^2). */
static double stirred_fourth_power(const boil_convection_liquid *f, double gas_velocity_m_s)
{
    const double volumetric = f->density_kg_m3 * f->heat_capacity_J_kgK;
    const double square = volumetric * volumetric;
    const double pr = prandtl(f);
    const double velocity = gas_velocity_m_s < 0 ? 0 : gas_velocity_m_s;
    return 1e-4 * square * square * velocity * f->viscosity_Pa_s * BOIL_GRAVITY / (f->density_kg_m3 * pr * pr);
}

double boil_convection_stirred(const boil_convection_liquid *f, double gas_velocity_m_s)
{
    return sqrt(sqrt(stirred_fourth_power(f, gas_velocity_m_s)));
}

double boil_convection_as_gas(double stirring_W_kg)
{
    return stirring_W_kg / BOIL_GRAVITY;
}

boil_convection_bath boil_convection_bath_of(const boil_convection_liquid *f, double gas_velocity_m_s)
{
    const double viscosity_m2_s = f->viscosity_Pa_s / f->density_kg_m3, pr = prandtl(f);
    const double half = sqrt(0.492 / pr);
    return (boil_convection_bath){
        .conductivity_W_mK = f->conductivity_W_mK,
        .rayleigh_1_m3K = BOIL_GRAVITY * f->expansion_1_K * pr / (viscosity_m2_s * viscosity_m2_s),
        .slip = pow(1 + half * sqrt(sqrt(sqrt(half))), -8.0 / 27),
        .stirred_fourth = stirred_fourth_power(f, gas_velocity_m_s),
    };
}

/* Nu = { 0.825 + 0.387 Ra^(1/6) / [1 + (0.492/Pr)^(9/16)]^(8/27) }^2, laminar and turbulent.
   [Churchill & Chu, Int. J. Heat Mass Transfer 18 (1975) 1323, eq. 9] */
static double natural(const boil_convection_bath *f, double height_m, double difference_K)
{
    const double rayleigh = f->rayleigh_1_m3K * fabs(difference_K) * height_m * height_m * height_m;
    const double root = 0.825 + 0.387 * boil_cube_root(sqrt(rayleigh)) * f->slip;
    return root * root * f->conductivity_W_mK / height_m;
}

double boil_convection_natural(const boil_convection_liquid *f, double height_m, double difference_K)
{
    const boil_convection_bath still = boil_convection_bath_of(f, 0);
    return natural(&still, height_m, difference_K);
}

double boil_convection_bath_side(const boil_convection_bath *f, double height_m, double difference_K)
{
    const double h = natural(f, height_m, difference_K), square = h * h;
    return sqrt(sqrt(square * square + f->stirred_fourth));
}
