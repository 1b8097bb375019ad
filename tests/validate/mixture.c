/* validate/mixture.c -- activity and heats of solutions of single salts, from which the mixture is made. */
#include "validate/validate.h"

#include "properties/water.h"
#include "support/brine.h"

static int salt_of(published *row)
{
    const char *salt = published_text(row, "salt");
    return strcmp(salt, "NaOH") == 0 ? BOIL_NAOH : strcmp(salt, "NaNO3") == 0 ? BOIL_NANO3 : BOIL_NANO2;
}

/* In a kilogram of water. */
static boil_mixture solution_of(published *row)
{
    const int salt = salt_of(row);
    const bool by_mass = strcmp(published_text(row, "of"), "g/100 g") == 0;
    boil_mixture m = {.water = 1};
    m.salt[salt] = published_number(row, "amount") * (by_mass ? 0.01 : boil_salt_molar_mass(salt));
    return m;
}

static double temperature(published *row)
{
    return KELVIN(published_number(row, "t_degC"));
}

static double activity(published *row)
{
    const boil_mixture m = solution_of(row);
    boil_solution_guess guess = {0, 0};
    return boil_solution_activity_near(&m, temperature(row), &guess);
}

static double humidity(published *row)
{
    return 100 * activity(row);
}

static double water_enthalpy(published *row)
{
    const boil_mixture m = solution_of(row);
    return (boil_solution_heat(&m, temperature(row)).water - boil_water_enthalpy(temperature(row))) / 1e3;
}

/* kJ/mol of the row's salt in its solution. */
static double salt_enthalpy(published *row, const boil_mixture *m)
{
    return boil_solution_heat(m, temperature(row)).salt[salt_of(row)] * boil_salt_molar_mass(salt_of(row)) / 1e3;
}

static double salt_enthalpy_above_dilution(published *row)
{
    const boil_mixture m = solution_of(row), water = {.water = 1};
    return salt_enthalpy(row, &m) - salt_enthalpy(row, &water);
}

static double heat_of_solution(published *row)
{
    const boil_mixture water = {.water = 1};
    const double solid = boil_salt_solid_enthalpy(salt_of(row), temperature(row)) * boil_salt_molar_mass(salt_of(row)) / 1e3;
    return salt_enthalpy(row, &water) - solid;
}

validate_list validate_mixture(void)
{
    static const validate_quantity quantities[] = {
        {"solution", "relative humidity over its saturated solution", "humidity over {salt}, {amount} {of}, {t_degC} degC",
         NULL, humidity, NULL},
        {"solution", "water activity", "activity, {salt} {amount} {of}, {t_degC} degC", NULL, activity, NULL},
        {"heats", "water's partial enthalpy less pure water's", "dilution, {salt} {amount} {of}, {t_degC} degC", NULL,
         water_enthalpy, NULL},
        {"heats", "partial enthalpy less that at infinite dilution", "salt's own heat, {salt} {amount} {of}, {t_degC} degC",
         NULL, salt_enthalpy_above_dilution, NULL},
        {"heats", "heat of solution at infinite dilution", "heat of solution, {salt}, {t_degC} degC", NULL, heat_of_solution,
         NULL},
    };
    static const validate_table tables[] = {
        {"tests/published/mixture.csv", quantities, COUNT(quantities)},
    };
    return (validate_list){tables, 1};
}
