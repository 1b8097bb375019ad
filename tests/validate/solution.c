/* validate/solution.c -- density, boiling points and solubilities of solutions of one salt. */
#include "validate/validate.h"

#include "properties/solubility.h"
#include "support/brine.h"

static double density(published *row)
{
    const boil_mixture m = brine_of_caustic(published_number(row, "wt_pct"));
    return boil_solution_density(&m, KELVIN(published_number(row, "t_degC"))) / 1e3;
}

/* degC, or K above water at the same pressure. */
static double boils(published *row, bool above_water)
{
    static const double only_nitrate[BOIL_SALTS] = {0, 1, 0};
    const boil_conditions c = boil_conditions_at(1e3 * published_number(row, "pressure_kPa"), 1);
    const bool caustic = strcmp(published_text(row, "salt"), "NaOH") == 0;
    const boil_mixture m = boil_mixture_of(caustic ? brine_caustic : only_nitrate, published_number(row, "wt_pct") / 100);
    return brine_boils_at(&c, &m, NULL) - (above_water ? c.saturation_K : BOIL_ZERO_CELSIUS);
}

static double boiling_point(published *row)
{
    return boils(row, false);
}

static double boiling_rise(published *row)
{
    return boils(row, true);
}

static double liquidus(published *row)
{
    return boil_solubility_liquidus(published_number(row, "wt_pct") / 100) - BOIL_ZERO_CELSIUS;
}

static double solubility(published *row)
{
    const int salt = strcmp(published_text(row, "salt"), "NaNO3") == 0 ? BOIL_NANO3 : BOIL_NANO2;
    return 100 * boil_solubility(salt, KELVIN(published_number(row, "t_degC")), 0) * boil_salt_molar_mass(salt);
}

validate_list validate_solution(void)
{
    static const char group[] = "solution";
    static const validate_quantity densities[] = {{group, NULL, "density, {wt_pct} %, {t_degC} degC", "kg/L", density, NULL}};
    static const validate_quantity boiling[] = {
        {group, "boiling point", "{wt_pct} % {salt} boils, {pressure_kPa} kPa", "degC", boiling_point, NULL},
        {group, "rise", "rise, {wt_pct} % {salt}, {pressure_kPa} kPa", "K", boiling_rise, NULL},
    };
    static const validate_quantity freezing[] = {{group, NULL, "liquidus, {wt_pct} % NaOH", "degC", liquidus, NULL}};
    static const validate_quantity dissolved[] = {{group, NULL, "{salt} in water, {t_degC} degC", "g/100 g", solubility, NULL}};
    static const validate_table tables[] = {
        {"tests/published/caustic_density.csv", densities, COUNT(densities)},
        {"tests/published/boiling_points.csv", boiling, COUNT(boiling)},
        {"tests/published/caustic_liquidus.csv", freezing, COUNT(freezing)},
        {"tests/published/salt_solubility.csv", dissolved, COUNT(dissolved)},
    };
    return (validate_list){tables, COUNT(tables)};
}
