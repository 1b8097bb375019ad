/* Metals: carbon steel against its standard, and the enthalpy as the integral of the heat capacity. */
#include "properties/metal.h"
#include "support/close.h"
#include "support/published.h"

static double row_model(published *table, const boil_metal *m)
{
    const double temperature_K = published_number(table, "temperature_degC") + 273.15;
    const char *quantity = published_text(table, "quantity");
    if (strcmp(quantity, "heat capacity") == 0)
        return boil_metal_heat_capacity(m, temperature_K);
    if (strcmp(quantity, "conductivity") != 0)
        fail_msg("no such quantity: %s", quantity);
    return boil_metal_conductivity(m, temperature_K);
}

static void carbon_steel_is_the_standards(void **state)
{
    (void)state;
    const boil_metal steel = boil_carbon_steel();
    double lowest = 1, highest = 1;
    published *table = published_open("tests/published/steel.csv");
    while (published_next(table)) {
        const double ratio = row_model(table, &steel) / published_number(table, "value");
        const double low = published_number(table, "low"), high = published_number(table, "high");
        assert_close(ratio, (low + high) / 2, 0, (high - low) / 2);
        lowest = fmin(lowest, ratio);
        highest = fmax(highest, ratio);
    }
    published_close(table);
    assert_close(steel.density_kg_m3, 7850, 0, 0);
    print_message("steel.csv: model / value from %.4f to %.4f\n", lowest, highest);
}

/* Gauss's three-point rule is exact for the cubic; so is the polynomial, up to rounding. */
static void enthalpy_is_the_integral(void **state)
{
    (void)state;
    const boil_metal steel = boil_carbon_steel();
    for (double t = 10; t <= 600; t += 59) {
        const double middle = 273.15 + t / 2, reach = t / 2 * sqrt(0.6);
        const double sides =
            boil_metal_heat_capacity(&steel, middle - reach) + boil_metal_heat_capacity(&steel, middle + reach);
        const double mean = (5 * sides + 8 * boil_metal_heat_capacity(&steel, middle)) / 18;
        assert_close(boil_metal_enthalpy(&steel, 273.15 + t), t * mean, 1e-12, 0);
    }
    assert_close(boil_metal_enthalpy(&steel, 273.15), 0, 0, 0);
}

/* By hand, 20 to 141 degC: 425 * 121 + 0.3865 * 19481 - 1.69e-3 / 3 * 2795221 + 5.55e-7 * 395094161. */
static void warming_a_load_takes_known_heat(void **state)
{
    (void)state;
    const boil_metal steel = boil_carbon_steel();
    const double heat = boil_metal_enthalpy(&steel, 414.15) - boil_metal_enthalpy(&steel, 293.15);
    assert_close(heat, 57599.0, 0, 0.5);
}

static void any_polynomial_may_be_given(void **state)
{
    (void)state;
    const boil_metal metal = {.density_kg_m3 = 8000, .heat_capacity = {1, 2, 3, 4}, .conductivity = {5, 6}};
    assert_close(boil_metal_heat_capacity(&metal, 283.15), 1 + 20 + 300 + 4000, 1e-12, 0);
    assert_close(boil_metal_conductivity(&metal, 283.15), 65, 1e-12, 0);
    assert_close(boil_metal_enthalpy(&metal, 283.15), 10 + 100 + 1000 + 10000, 1e-12, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(carbon_steel_is_the_standards),
        cmocka_unit_test(enthalpy_is_the_integral),
        cmocka_unit_test(warming_a_load_takes_known_heat),
        cmocka_unit_test(any_polynomial_may_be_given),
    };
    return cmocka_run_group_tests_name("steel", tests, NULL, NULL);
}
