/* Water and steam against the check points of their releases, against IF97 by another author's library,
   and against themselves. */
#include "properties/water.h"
#include "support/close.h"
#include "support/published.h"

/* --- What a row of a table asks for --- */

static double saturation_pressure(double temperature_K, double pressure_Pa)
{
    (void)pressure_Pa;
    return boil_water_saturation_pressure(temperature_K);
}

static double saturation_temperature(double temperature_K, double pressure_Pa)
{
    (void)temperature_K;
    return boil_water_saturation_temperature(pressure_Pa);
}

/* The slope inside SR1-86, seen through Clapeyron's equation between its two phases. */
static double clapeyron_slope(double temperature_K, double pressure_Pa)
{
    (void)pressure_Pa;
    const double latent = boil_water_vapour_enthalpy(temperature_K) - boil_water_enthalpy(temperature_K);
    const double swelling = 1 / boil_water_vapour_density(temperature_K) - 1 / boil_water_density(temperature_K);
    return latent / (temperature_K * swelling);
}

static double liquid_density(double temperature_K, double pressure_Pa)
{
    (void)pressure_Pa;
    return boil_water_density(temperature_K);
}

static double liquid_enthalpy(double temperature_K, double pressure_Pa)
{
    (void)pressure_Pa;
    return boil_water_enthalpy(temperature_K);
}

static double liquid_heat_capacity(double temperature_K, double pressure_Pa)
{
    (void)pressure_Pa;
    return boil_water_heat_capacity(temperature_K);
}

static double vapour_density(double temperature_K, double pressure_Pa)
{
    (void)pressure_Pa;
    return boil_water_vapour_density(temperature_K);
}

static double vapour_enthalpy(double temperature_K, double pressure_Pa)
{
    (void)pressure_Pa;
    return boil_water_vapour_enthalpy(temperature_K);
}

static double steam_volume(double temperature_K, double pressure_Pa)
{
    return 1 / boil_steam_density(temperature_K, pressure_Pa);
}

static double steam_above_liquid(double temperature_K, double pressure_Pa)
{
    return boil_steam_enthalpy(temperature_K, pressure_Pa) - boil_water_enthalpy(temperature_K);
}

/* library_relative, library_absolute (SI): what tests/published/iapws.csv may deviate by. That table has ten
   digits, so where both are IF97 only the last may differ. Saturated liquid and vapour are SR1-86 here and IF97
   there; the bounds are the largest deviations found in 0.5 K steps from 0 to 200 degC, rounded up: density
   2.2e-5 at 65 degC, enthalpy 0.22 kJ/kg at 196 degC, heat capacity 0.30 % at 200 degC
   (where it also differs in meaning: SR1-86's is taken along the saturation line), vapour density 1.3e-4 at
   44 degC, vapour enthalpy 0.37 kJ/kg at 0 degC. */
typedef struct {
    const char *name;
    double (*of)(double temperature_K, double pressure_Pa);
    double library_relative, library_absolute;
} quantity;

static const quantity quantities[] = {
    {"saturation pressure", saturation_pressure, 1e-9, 0},
    {"saturation temperature", saturation_temperature, 0, 0},
    {"saturation pressure slope", clapeyron_slope, 0, 0},
    {"saturated liquid density", liquid_density, 2.5e-5, 0},
    {"saturated liquid enthalpy", liquid_enthalpy, 0, 250},
    {"saturated liquid heat capacity", liquid_heat_capacity, 3.1e-3, 0},
    {"saturated vapour density", vapour_density, 1.5e-4, 0},
    {"saturated vapour enthalpy", vapour_enthalpy, 0, 400},
    {"steam volume", steam_volume, 0, 0},
    {"steam enthalpy", boil_steam_enthalpy, 1e-9, 0},
    {"steam density", boil_steam_density, 1e-9, 0},
    {"steam heat capacity", boil_steam_heat_capacity, 1e-9, 0},
    {"steam enthalpy above liquid", steam_above_liquid, 0, 0},
};

static const quantity *row_quantity(published *table)
{
    const char *name = published_text(table, "quantity");
    for (size_t i = 0; i < sizeof quantities / sizeof *quantities; i++) {
        if (strcmp(quantities[i].name, name) == 0)
            return &quantities[i];
    }
    fail_msg("no such quantity: %s", name);
    return NULL;
}

static double row_model(published *table)
{
    return row_quantity(table)->of(published_number(table, "temperature_K"), published_number(table, "pressure_Pa"));
}

/* SI units in one of the row's. */
static double row_unit(published *table)
{
    static const struct {
        const char *name;
        double size;
    } units[] = {
        {"K", 1},     {"degC", 1},    {"m3/kg", 1},   {"kg/m3", 1},     {"kPa", 1e3},
        {"MPa", 1e6}, {"MPa/K", 1e6}, {"kJ/kg", 1e3}, {"kJ/kg/K", 1e3},
    };
    const char *name = published_text(table, "unit");
    for (size_t i = 0; i < sizeof units / sizeof *units; i++) {
        if (strcmp(units[i].name, name) == 0)
            return units[i].size;
    }
    fail_msg("no such unit: %s", name);
    return 0;
}

static double row_value(published *table)
{
    const double value = published_number(table, "value");
    return strcmp(published_text(table, "unit"), "degC") == 0 ? value + 273.15 : value * row_unit(table);
}

/* --- The tables --- */

/* Rows W024, W030, W036 are SR1-86's vapour pressure, which the model does not offer; IF97's agrees to their
   printed digits. Of SR1-86's dp/dT (W029, W035) the model shows what its enthalpies contain. */
static void check_points_and_tables(void **state)
{
    (void)state;
    double worst = 0;
    char at[16] = "";
    published *table = published_open("tests/published/water_steam.csv");
    while (published_next(table)) {
        const double got = row_model(table), want = row_value(table);
        const double relative = published_number(table, "relative");
        const double absolute = published_number(table, "absolute") * row_unit(table);
        const double used = fabs(got - want) / (relative * fabs(want) + absolute);
        if (used > worst) {
            worst = used;
            snprintf(at, sizeof at, "%s", published_text(table, "id"));
        }
        assert_close(got, want, relative, absolute);
    }
    published_close(table);
    print_message("water_steam.csv: at most %.2f of the allowed deviation, row %s\n", worst, at);
}

static void if97_by_another_author(void **state)
{
    (void)state;
    double worst[sizeof quantities / sizeof *quantities] = {0};
    published *table = published_open("tests/published/iapws.csv");
    while (published_next(table)) {
        const quantity *q = row_quantity(table);
        const double got = row_model(table), want = row_value(table);
        double *largest = &worst[q - quantities];
        *largest = fmax(*largest, fabs(got / want - 1));
        assert_close(got, want, q->library_relative, q->library_absolute);
    }
    published_close(table);
    for (size_t i = 0; i < sizeof quantities / sizeof *quantities; i++) {
        if (worst[i] > 0)
            print_message("iapws.csv: %s within %.2g\n", quantities[i].name, worst[i]);
    }
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
        assert_close(clapeyron_slope(t, 0), boil_water_saturation_pressure_slope(t), 3e-4, 0);
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
        cmocka_unit_test(check_points_and_tables),
        cmocka_unit_test(if97_by_another_author),
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
