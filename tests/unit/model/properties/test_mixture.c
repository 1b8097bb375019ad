/* unit/model/properties/test_mixture.c -- activity and heats of solutions of single salts against the rows of
   tests/published/mixture.csv: measured humidities, and published models of activity with their heats. */
#include "properties/water.h"
#include "support/brine.h"
#include "support/evidence.h"

#include <gsl/gsl_errno.h>

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

static double activity(published *row, double T)
{
    const boil_mixture m = solution_of(row);
    boil_solution_guess guess = {0, 0};
    return boil_solution_activity_near(&m, T, &guess);
}

static double humidity(published *row, double T)
{
    return 100 * activity(row, T);
}

static double water_enthalpy(published *row, double T)
{
    const boil_mixture m = solution_of(row);
    return (boil_solution_heat(&m, T).water - boil_water_enthalpy(T)) / 1e3;
}

/* kJ/mol of the row's salt in its solution. */
static double salt_enthalpy(published *row, double T, const boil_mixture *m)
{
    return boil_solution_heat(m, T).salt[salt_of(row)] * boil_salt_molar_mass(salt_of(row)) / 1e3;
}

static double salt_enthalpy_above_dilution(published *row, double T)
{
    const boil_mixture m = solution_of(row), water = {.water = 1};
    return salt_enthalpy(row, T, &m) - salt_enthalpy(row, T, &water);
}

static double heat_of_solution(published *row, double T)
{
    const boil_mixture water = {.water = 1};
    const double solid = boil_salt_solid_enthalpy(salt_of(row), T) * boil_salt_molar_mass(salt_of(row)) / 1e3;
    return salt_enthalpy(row, T, &water) - solid;
}

static const struct {
    const char *property;
    double (*of)(published *row, double T);
} properties[] = {
    {"relative humidity over its saturated solution", humidity},
    {"water activity", activity},
    {"water's partial enthalpy less pure water's", water_enthalpy},
    {"partial enthalpy less that at infinite dilution", salt_enthalpy_above_dilution},
    {"heat of solution at infinite dilution", heat_of_solution},
};

static evidence work(published *row)
{
    const char *property = published_text(row, "property");
    for (size_t i = 0; i < sizeof properties / sizeof *properties; i++)
        if (strcmp(properties[i].property, property) == 0)
            return evidence_of(properties[i].of(row, KELVIN(published_number(row, "t_degC"))));
    fail_msg("%s: no such property: %s", row->path, property);
    return evidence_of((double)NAN);
}

static void solutions_are_where_the_table_says(void **state)
{
    (void)state;
    evidence_table("tests/published/mixture.csv", work);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(solutions_are_where_the_table_says),
    };
    gsl_set_error_handler_off();
    return cmocka_run_group_tests_name("mixture", tests, NULL, NULL);
}
