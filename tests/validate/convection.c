/* validate/convection.c -- heat from the bath to a surface in it. */
#include "validate/validate.h"

#include "transfer/convection.h"

/* Viscosity and diffusivity are kinematic: density 1 and conductivity k leave mu = nu, c = k/alpha. */
static double coefficient(published *row)
{
    const double k = published_number(row, "conductivity_W_mK");
    const boil_convection_liquid f = {.density_kg_m3 = 1,
                                      .heat_capacity_J_kgK = k / published_number(row, "diffusivity_m2_s"),
                                      .viscosity_Pa_s = published_number(row, "viscosity_m2_s"),
                                      .conductivity_W_mK = k,
                                      .expansion_1_K = published_number(row, "expansion_1_K")};
    return boil_convection_natural(&f, published_number(row, "height_m"), published_number(row, "difference_K"));
}

static double nusselt(published *row)
{
    return coefficient(row) * published_number(row, "height_m") / published_number(row, "conductivity_W_mK");
}

static double heat(published *row)
{
    return coefficient(row) * published_number(row, "height_m") * published_number(row, "width_m") *
           published_number(row, "difference_K");
}

static double gas_stirred(published *row)
{
    const boil_convection_liquid f = {.density_kg_m3 = published_number(row, "density_kg_m3"),
                                      .heat_capacity_J_kgK = published_number(row, "heat_capacity_J_kgK"),
                                      .viscosity_Pa_s = published_number(row, "viscosity_Pa_s"),
                                      .conductivity_W_mK = published_number(row, "conductivity_W_mK")};
    return boil_convection_stirred(&f, published_number(row, "gas_velocity_m_s"));
}

validate_list validate_convection(void)
{
    static const char group[] = "convection";
    static const validate_quantity natural[] = {
        {group, "nusselt", "Nusselt number, {height_m} m", NULL, nusselt, NULL},
        {group, "heat", "heat, {height_m} m, {difference_K} K", NULL, heat, NULL},
        {group, "coefficient", "coefficient, {height_m} m", NULL, coefficient, NULL},
    };
    static const validate_quantity stirred[] = {
        {group, NULL, "gas-stirred, {gas_velocity_m_s} m/s", "W/m2K", gas_stirred, NULL}};
    static const validate_table tables[] = {
        {"tests/published/natural_convection.csv", natural, COUNT(natural)},
        {"tests/published/gas_stirred.csv", stirred, COUNT(stirred)},
    };
    return (validate_list){tables, COUNT(tables)};
}
