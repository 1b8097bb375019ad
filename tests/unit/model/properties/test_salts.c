/* What each salt brings to the bath liquid: the estimates spelled out, and the solids. */
#include "properties/naoh.h"
#include "properties/water.h"
#include "support/brine.h"

#include <gsl/gsl_errno.h>

/* 1/a - 1 = 2 Mw m for nitrate alone, with 1.10 m for nitrite, at any temperature. */
static void nitrate_and_nitrite_lower_the_activity(void **state)
{
    (void)state;
    static const double counts[BOIL_SALTS] = {0, 1, 1.10};
    for (int salt = BOIL_NANO3; salt <= BOIL_NANO2; salt++) {
        for (double molality = 0.5; molality < 20; molality *= 2) {
            boil_mixture m = {.water = 1};
            boil_solution_guess guess = {0, 0};
            m.salt[salt] = molality * boil_salt_molar_mass(salt);
            const double a = boil_solution_activity_near(&m, KELVIN(110), &guess);
            assert_close(1 / a - 1, 2 * 0.01801528 * counts[salt] * molality, 1e-9, 0);
        }
    }
}

/* Olsson's own values at 6 mol/kg, computed independently; below 20 degC that of 20 degC is held. */
static void activity_over_caustic(void **state)
{
    (void)state;
    static const double known[][2] = {{25, 0.7317}, {60, 0.7458}, {100, 0.7656}};
    const boil_mixture m = {1, {6 * BOIL_NAOH_MOLAR_MASS, 0, 0}};
    boil_solution_guess guess = {0, 0};
    for (int i = 0; i < 3; i++)
        assert_close(boil_solution_activity_near(&m, KELVIN(known[i][0]), &guess), known[i][1], 0, 5.1e-5);
    double by_x, by_T;
    boil_naoh_log_activity(log(0.8), KELVIN(10), &by_x, &by_T);
    assert_true(by_T == 0);
    const double held = boil_solution_activity_near(&m, KELVIN(20), &guess);
    assert_close(boil_solution_activity_near(&m, KELVIN(5), &guess), held, 1e-13, 0);
}

/* Equation (3), with its shares of a mole of NaOH, its apparent heat capacities and the last sum's -9.1 and -5.0
   kJ/mol. */
static void enthalpy_is_what_the_equation_says(void **state)
{
    (void)state;
    unsigned long long seed = 12;
    for (int k = 0; k < 200; k++) {
        const brine_bath b = brine_draw_bath(&seed);
        const double *salt = b.m.salt, T = b.T;
        const double nitrate = salt[BOIL_NANO3] / 0.0849947, nitrite = salt[BOIL_NANO2] / 0.0689953;
        const double bound = salt[BOIL_NAOH] + BOIL_NAOH_MOLAR_MASS * (0.33 * nitrate + 0.36 * nitrite);
        const double molality = (salt[BOIL_NAOH] / BOIL_NAOH_MOLAR_MASS + nitrate + nitrite) / b.m.water;
        double by_x, by_T;
        const double phi = boil_naoh_apparent_enthalpy(b.m.water / (b.m.water + bound), T, &by_x, &by_T);
        const double want = b.m.water * boil_water_enthalpy(T) + salt[BOIL_NAOH] * phi +
                            (1350 * salt[BOIL_NANO3] + 1450 * salt[BOIL_NANO2]) * (T - 298.15) -
                            (9100 * nitrate + 5000 * nitrite) * (1 - exp(-molality / 4.6));
        assert_close(boil_solution_heat(&b.m, T).enthalpy_J, want, 1e-12, 1e-6);
    }
}

static void nitrite_fills_its_volume(void **state)
{
    (void)state;
    const boil_mixture m = {0.6, {0, 0, 0.4}};
    const double want = 1 / (0.6 / boil_water_density(KELVIN(80)) + 0.4 * 0.47e-3);
    assert_close(boil_solution_density(&m, KELVIN(80)), want, 1e-13, 0);
}

/* The slopes of the solids' enthalpies are their heat capacities. */
static void solid_heat_capacity_is_the_derivative(void **state)
{
    (void)state;
    for (int salt = 0; salt < BOIL_SALTS; salt++) {
        for (double T = 300; T < 480; T += 10) {
            const double rise = boil_salt_solid_enthalpy(salt, T + 0.05) - boil_salt_solid_enthalpy(salt, T - 0.05);
            assert_close(boil_salt_solid_heat_capacity(salt, T), rise / 0.1, 1e-6, 0);
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(nitrate_and_nitrite_lower_the_activity), cmocka_unit_test(activity_over_caustic),
        cmocka_unit_test(enthalpy_is_what_the_equation_says),     cmocka_unit_test(nitrite_fills_its_volume),
        cmocka_unit_test(solid_heat_capacity_is_the_derivative),
    };
    gsl_set_error_handler_off();
    return cmocka_run_group_tests_name("salts", tests, NULL, NULL);
}
