/* Metals (carbon steel against its standard: tests/validate/heats.c), and the enthalpy as the integral of the heat capacity. */
#include "properties/metal.h"
#include "support/close.h"

static void carbon_steel_is_the_standards(void **state)
{
    (void)state;
    assert_close(boil_carbon_steel().density_kg_m3, 7850, 0, 0);
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
