/* Water and steam against IF97 by another author's library, and against themselves. */
#include "support/close.h"
#include "support/steam.h"

/* What tests/published/iapws.csv may deviate by, relative or absolute in the row's unit. That table has ten digits, so where both are
   IF97 only the last may differ. Saturated liquid and vapour are SR1-86 here and IF97 there; the bounds are the largest deviations
   found in 0.5 K steps from 0 to 200 degC, rounded up: density 2.2e-5 at 65 degC, enthalpy 0.22 kJ/kg at 196 degC, heat capacity 0.30 %
   at 200 degC (where it also differs in meaning: SR1-86's is taken along the saturation line), vapour density 1.3e-4 at 44 degC, vapour
   enthalpy 0.37 kJ/kg at 0 degC. */
typedef struct {
    const char *name;
    double relative, absolute, worst;
} bound;

static bound *bound_of(bound *bounds, size_t count, const char *quantity)
{
    for (size_t i = 0; i < count; i++)
        if (strcmp(bounds[i].name, quantity) == 0)
            return &bounds[i];
    fail_msg("no bound of %s", quantity);
    return NULL;
}

/* Row by row against the releases' check points and printed tables: tests/validate/water.c. */
static void if97_by_another_author(void **state)
{
    (void)state;
    bound bounds[] = {
        {"saturation pressure", 1e-9, 0, 0},
        {"saturated liquid density", 2.5e-5, 0, 0},
        {"saturated liquid enthalpy", 0, 0.25, 0},
        {"saturated liquid heat capacity", 3.1e-3, 0, 0},
        {"saturated vapour density", 1.5e-4, 0, 0},
        {"saturated vapour enthalpy", 0, 0.4, 0},
        {"steam enthalpy", 1e-9, 0, 0},
        {"steam density", 1e-9, 0, 0},
        {"steam heat capacity", 1e-9, 0, 0},
    };
    const size_t count = sizeof bounds / sizeof *bounds;
    published *table = published_open("tests/published/iapws.csv");
    while (published_next(table)) {
        bound *b = bound_of(bounds, count, published_text(table, "quantity"));
        const double got = steam_row_model(table), want = published_number(table, "value");
        b->worst = fmax(b->worst, fabs(got / want - 1));
        assert_close(got, want, b->relative, b->absolute);
    }
    published_close(table);
    for (size_t i = 0; i < count; i++)
        print_message("iapws.csv: %s within %.2g\n", bounds[i].name, bounds[i].worst);
}

/* Dense steam, where the highest powers tell: 700 K and 30 MPa, to the digits of IAPWS R7-97(2012), table 15. */
static void dense_steam_has_every_term(void **state)
{
    (void)state;
    assert_close(1 / boil_steam_density(700, 30e6), 0.542946619e-2, 1e-9, 0);
    assert_close(boil_steam_enthalpy(700, 30e6), 2631.49474e3, 2e-9, 0);
    assert_close(boil_steam_heat_capacity(700, 30e6), 10.3505092e3, 5e-9, 0);
}

/* --- The functions against each other --- */

static void saturation_temperature_undoes_pressure(void **state)
{
    (void)state;
    for (double t = 273.16; t < 647; t += 0.37)
        assert_close(boil_water_saturation_temperature(boil_water_saturation_pressure(t)), t, 1e-9, 0);
}

static void pressure_slope_is_the_derivative(void **state)
{
    (void)state;
    const double step = 0.01;
    for (double t = 273.2; t < 640; t += 1.3) {
        const double rise = boil_water_saturation_pressure(t + step) - boil_water_saturation_pressure(t - step);
        assert_close(boil_water_saturation_pressure_slope(t), rise / (2 * step), 1e-7, 0);
    }
}

/* The central difference's own error, h'''/6 step^2, is at most 3e-8 of the heat capacity. */
static void heat_capacity_is_the_derivative(void **state)
{
    (void)state;
    const double step = 0.05;
    for (double t = 273.2; t < 473.1; t += 0.73) {
        const double rise = boil_water_enthalpy(t + step) - boil_water_enthalpy(t - step);
        assert_close(boil_water_heat_capacity(t), rise / (2 * step), 1e-7, 0);
    }
}

static void steam_heat_capacity_is_the_derivative(void **state)
{
    (void)state;
    const double step = 0.05, pressure = 101325;
    for (double t = 373.2; t < 473.1; t += 3.1) {
        const double rise = boil_steam_enthalpy(t + step, pressure) - boil_steam_enthalpy(t - step, pressure);
        assert_close(boil_steam_heat_capacity(t, pressure), rise / (2 * step), 1e-6, 0);
    }
}

static void temperature_undoes_enthalpy(void **state)
{
    (void)state;
    for (double t = 273.15; t <= 473.15; t += 0.1)
        assert_close(boil_water_temperature(boil_water_enthalpy(t)), t, 0, 1e-9);
}

/* Clapeyron's slope from SR1-86 against IF97's exact one: two formulations, one line. Largest deviation found:
   2.4e-4 at 160 degC, where the pressures themselves differ by up to 1.8e-4. */
static void two_formulations_share_a_slope(void **state)
{
    (void)state;
    for (double t = 273.16; t <= 473.15; t += 1)
        assert_close(steam_row_clapeyron_slope(t, 0), boil_water_saturation_pressure_slope(t), 3e-4, 0);
}

/* SR1-86 defines both enthalpies so that their difference is Clapeyron's latent heat. */
static void latent_heat_is_the_difference_of_both_enthalpies(void **state)
{
    (void)state;
    for (double t = 273.16; t <= 473.15; t += 0.5)
        assert_close(boil_water_latent_heat(t), boil_water_vapour_enthalpy(t) - boil_water_enthalpy(t), 1e-12, 0);
}

static void saturation_line_is_monotonic(void **state)
{
    (void)state;
    const double step = 0.05;
    for (double t = 273.15; t + step <= 473.15; t += step) {
        assert_true(boil_water_saturation_pressure(t + step) > boil_water_saturation_pressure(t));
        assert_true(boil_water_saturation_pressure_slope(t + step) > boil_water_saturation_pressure_slope(t));
        assert_true(boil_water_enthalpy(t + step) > boil_water_enthalpy(t));
        assert_true(boil_water_vapour_density(t + step) > boil_water_vapour_density(t));
        assert_true(boil_water_vapour_enthalpy(t + step) > boil_water_vapour_enthalpy(t));
    }
}

/* Water is densest at 4 degC and its heat capacity (SR1-86) least near 36 degC; each turns once. */
static void density_and_heat_capacity_turn_once(void **state)
{
    (void)state;
    const double step = 0.05;
    for (double t = 273.15; t + step <= 473.15; t += step) {
        if (t > 277.5)
            assert_true(boil_water_density(t + step) < boil_water_density(t));
        if (t + step < 276.5)
            assert_true(boil_water_density(t + step) > boil_water_density(t));
        if (t > 313.15)
            assert_true(boil_water_heat_capacity(t + step) > boil_water_heat_capacity(t));
        if (t + step < 303.15)
            assert_true(boil_water_heat_capacity(t + step) < boil_water_heat_capacity(t));
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(if97_by_another_author),
        cmocka_unit_test(dense_steam_has_every_term),
        cmocka_unit_test(saturation_temperature_undoes_pressure),
        cmocka_unit_test(pressure_slope_is_the_derivative),
        cmocka_unit_test(heat_capacity_is_the_derivative),
        cmocka_unit_test(steam_heat_capacity_is_the_derivative),
        cmocka_unit_test(temperature_undoes_enthalpy),
        cmocka_unit_test(two_formulations_share_a_slope),
        cmocka_unit_test(latent_heat_is_the_difference_of_both_enthalpies),
        cmocka_unit_test(saturation_line_is_monotonic),
        cmocka_unit_test(density_and_heat_capacity_turn_once),
    };
    return cmocka_run_group_tests_name("water", tests, NULL, NULL);
}
