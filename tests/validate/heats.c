/* validate/heats.c -- enthalpies and heats of solution, and what steel holds and conducts. */
#include "validate/validate.h"

#include "properties/metal.h"
#include "properties/water.h"
#include "support/brine.h"
#include "transfer/flash.h"

#define WATER_MOLAR_MASS 0.01801528

static double enthalpy_kJ(double wt_pct, double celsius)
{
    const boil_mixture m = brine_of_caustic(wt_pct);
    return boil_solution_heat(&m, KELVIN(celsius)).enthalpy_J / 1e3;
}

static double chart_enthalpy(published *row)
{
    return enthalpy_kJ(published_number(row, "wt_pct"), published_number(row, "t_degC"));
}

/* --- Heats of solution --- */

/* kJ per mol of a solid salt brought into water at 25 degC. */
static double integral_heat(int salt, double moles_of_water)
{
    boil_mixture m = {.water = moles_of_water * WATER_MOLAR_MASS};
    m.salt[salt] = boil_salt_molar_mass(salt);
    const double before = m.water * boil_water_enthalpy(298.15) + m.salt[salt] * boil_salt_solid_enthalpy(salt, 298.15);
    return (boil_solution_heat(&m, 298.15).enthalpy_J - before) / 1e3;
}

/* The older tables' solid lies 1.62 kJ/mol lower against its solutions than Parker's: -42.89 at infinite dilution where he has -44.51,
   which is the model's datum (-44.5). The same constant belongs to every row. */
static double by_the_older_basis(double moles_of_water)
{
    return integral_heat(BOIL_NAOH, moles_of_water) - (-44.51 - -42.89);
}

static double table_heat(published *row)
{
    return by_the_older_basis(published_number(row, "r"));
}

static double moles_beside_caustic(double wt_pct)
{
    return (100 - wt_pct) / wt_pct * boil_salt_molar_mass(BOIL_NAOH) / WATER_MOLAR_MASS;
}

static double caustic_to_infinite_dilution(published *row)
{
    (void)row;
    return integral_heat(BOIL_NAOH, 1e7);
}

static double nitrate_to_infinite_dilution(published *row)
{
    (void)row;
    return integral_heat(BOIL_NANO3, 1e7);
}

static double nitrite_to_infinite_dilution(published *row)
{
    (void)row;
    return integral_heat(BOIL_NANO2, 1e7);
}

static double dilution(published *row)
{
    (void)row;
    return integral_heat(BOIL_NAOH, moles_beside_caustic(25)) - integral_heat(BOIL_NAOH, moles_beside_caustic(46));
}

static double twenty_moles(published *row)
{
    (void)row;
    return -20 * by_the_older_basis(4);
}

static double making_weak(published *row)
{
    (void)row;
    return by_the_older_basis(moles_beside_caustic(10));
}

static double making_strong(published *row)
{
    (void)row;
    return by_the_older_basis(moles_beside_caustic(50));
}

static double crystal_kJ_mol(void)
{
    return -425.7;
}

static double formation_at_46(published *row)
{
    (void)row;
    return crystal_kJ_mol() + integral_heat(BOIL_NAOH, moles_beside_caustic(46));
}

static double formation_at_25(published *row)
{
    (void)row;
    return crystal_kJ_mol() + integral_heat(BOIL_NAOH, moles_beside_caustic(25));
}

static double formation_by_the_older_basis(published *row)
{
    (void)row;
    return -426.6 + by_the_older_basis(8.889);
}

/* kJ per mol of solid nitrate added to much solution: taken up counts positive. */
static double differential_heat(double mol_kg)
{
    const double molar_mass = boil_salt_molar_mass(BOIL_NANO3);
    const boil_mixture m = {1, {0, mol_kg * molar_mass, 0}};
    return (boil_solution_heat(&m, 298.15).salt[BOIL_NANO3] - boil_salt_solid_enthalpy(BOIL_NANO3, 298.15)) * molar_mass / 1e3;
}

static double nitrate_in_solution(published *row)
{
    return differential_heat(published_number(row, "mol_kg"));
}

static double nitrate_crystallising(published *row)
{
    (void)row;
    return differential_heat(10.8);
}

static double nitrate_to_8_molal(published *row)
{
    (void)row;
    return integral_heat(BOIL_NANO3, 1 / (8 * WATER_MOLAR_MASS));
}

/* --- Worked examples --- */

static double heat_capacity_kJ(double wt_pct, double celsius)
{
    const boil_mixture m = brine_of_caustic(wt_pct);
    return boil_solution_heat(&m, KELVIN(celsius)).heat_capacity_J_K / 1e3;
}

static double cool_heat_capacity(published *row)
{
    (void)row;
    return heat_capacity_kJ(20, 7);
}

static double warm_heat_capacity(published *row)
{
    (void)row;
    return heat_capacity_kJ(20, 87);
}

static double warming(published *row)
{
    (void)row;
    return enthalpy_kJ(20, 87) - enthalpy_kJ(20, 7);
}

static double evaporation(published *row)
{
    (void)row;
    return 0.25 * enthalpy_kJ(50, 88) + boil_steam_enthalpy(KELVIN(88), 10130) / 1e3 - 1.25 * enthalpy_kJ(10, 21);
}

/* 200 kg of 50 % at 380 K and 800 kg of steam at 100 degC. */
static double evaporation_of_a_ton(published *row)
{
    (void)row;
    return 200 * enthalpy_kJ(50, 106.85) + 800 * boil_water_vapour_enthalpy(373.15) / 1e3 - 1000 * enthalpy_kJ(10, 31.85);
}

static double solid_kJ(published *row)
{
    (void)row;
    return boil_salt_solid_enthalpy(BOIL_NAOH, KELVIN(21)) / 1e3;
}

static double making_from_solid(published *row)
{
    return enthalpy_kJ(45, 21) - 0.45 * solid_kJ(row) - 0.55 * boil_water_enthalpy(KELVIN(21)) / 1e3;
}

/* 600 lb of 10 % at 200 degF and 400 lb of 50 % at its boil, mixed at 1 atm, flash; masses in lb. */
static double flash(double *boils_F)
{
    const boil_conditions c = boil_conditions_at(BOIL_STANDARD_ATMOSPHERE, 1);
    const boil_mixture strong = brine_of_caustic(50);
    const double hot = brine_boils_at(&c, &strong, NULL) - BOIL_ZERO_CELSIUS;
    boil_mixture both = {740, {260, 0, 0}};
    const double steam =
        boil_flash_steam(&c, &both, 1e3 * (600 * enthalpy_kJ(10, (200 - 32) / 1.8) + 400 * enthalpy_kJ(50, hot)));
    both.water -= steam;
    *boils_F = (brine_boils_at(&c, &both, NULL) - BOIL_ZERO_CELSIUS) * 1.8 + 32;
    return steam;
}

static double flash_temperature(published *row)
{
    (void)row;
    double boils_F;
    flash(&boils_F);
    return boils_F;
}

static double flash_steam(published *row)
{
    (void)row;
    double boils_F;
    return flash(&boils_F);
}

/* --- Steel --- */

static double steel_heat_capacity(published *row)
{
    const boil_metal steel = boil_carbon_steel();
    return boil_metal_heat_capacity(&steel, KELVIN(published_number(row, "temperature_degC")));
}

static double steel_conductivity(published *row)
{
    const boil_metal steel = boil_carbon_steel();
    return boil_metal_conductivity(&steel, KELVIN(published_number(row, "temperature_degC")));
}

/* By the names that the rows of caustic_heat.csv have. */
validate_list validate_single_heats(void)
{
    static const char group[] = "heats", label[] = "{quantity}";
    /* clang-format off */
    static const validate_quantity single[] = {
        {group, "NaOH to infinite dilution", label, NULL, caustic_to_infinite_dilution, NULL},
        {group, "NaNO3 to infinite dilution", label, NULL, nitrate_to_infinite_dilution, NULL},
        {group, "NaNO2 to infinite dilution", label, NULL, nitrite_to_infinite_dilution, NULL},
        {group, "diluting 46 % to 25 %", label, NULL, dilution, NULL},
        {group, "heat capacity at 7 degC, 20 %", label, NULL, cool_heat_capacity, NULL},
        {group, "heat capacity at 87 degC, 20 %", label, NULL, warm_heat_capacity, NULL},
        {group, "warming 20 % from 7 to 87 degC", label, NULL, warming, NULL},
        {group, "evaporating 10 % at 21 degC to 50 % at 88 degC, 1.25 kg/s, 10 kPa", label, NULL, evaporation, NULL},
        {group, "solid NaOH at 21 degC", label, NULL, solid_kJ, NULL},
        {group, "making 45 % from solid and water at 21 degC", label, NULL, making_from_solid, NULL},
        {group, "temperature after mixing and flashing", label, NULL, flash_temperature, NULL},
        {group, "water flashed by mixing", label, NULL, flash_steam, NULL},
        {group, "making 8 mol/kg of NaNO3, per mol", label, NULL, nitrate_to_8_molal, NULL},
        {group, "crystallising NaNO3 at 10.8 mol/kg", label, NULL, nitrate_crystallising, NULL},
        {group, "making 20 mol of NaOH in 80 mol of water", label, NULL, twenty_moles, NULL},
        {group, "making 10 % NaOH, per mol", label, NULL, making_weak, NULL},
        {group, "making 50 % NaOH, per mol", label, NULL, making_strong, NULL},
        {group, "evaporating 1000 kg of 10 % at 305 K to 50 % at 380 K, by heats of solution", label, NULL, evaporation_of_a_ton, NULL},
        {group, "evaporating 1000 kg of 10 % at 305 K to 50 % at 380 K, by chart", label, NULL, evaporation_of_a_ton, NULL},
        {group, "formation of NaOH in 46 % solution", label, NULL, formation_at_46, NULL},
        {group, "formation of NaOH in 25 % solution", label, NULL, formation_at_25, NULL},
        {group, "formation of NaOH with 8.889 mol of water", label, NULL, formation_by_the_older_basis, NULL},
    };
    /* clang-format on */
    static const validate_table tables[] = {{"tests/published/caustic_heat.csv", single, COUNT(single)}};
    return (validate_list){tables, COUNT(tables)};
}

validate_list validate_heats(void)
{
    static const validate_quantity charts[] = {
        {"heats", NULL, "enthalpy, {wt_pct} % NaOH, {t_degC} degC", "kJ/kg", chart_enthalpy, NULL}};
    static const validate_quantity integral[] = {{"heats", NULL, "NaOH in {r} mol of water", "kJ/mol", table_heat, NULL}};
    static const validate_quantity nitrate[] = {
        {"heats", NULL, "NaNO3 into {mol_kg} mol/kg of it", "kJ/mol", nitrate_in_solution, NULL}};
    static const validate_quantity steel[] = {
        {"heats", "heat capacity", "cp, steel, {temperature_degC} degC", NULL, steel_heat_capacity, NULL},
        {"conduction", "conductivity", "k, steel, {temperature_degC} degC", NULL, steel_conductivity, NULL},
    };
    static const validate_table tables[] = {
        {"tests/published/caustic_enthalpy.csv", charts, COUNT(charts)},
        {"tests/published/heat_of_solution.csv", integral, COUNT(integral)},
        {"tests/published/heat_of_nitrate.csv", nitrate, COUNT(nitrate)},
        {"tests/published/steel.csv", steel, COUNT(steel)},
    };
    return (validate_list){tables, COUNT(tables)};
}
