/* The bath-side coefficient: limits, smoothness. Published values: tests/validate. */
#include "transfer/convection.h"

#include "support/close.h"

/* A caustic bath near 141 degC, round numbers. */
static boil_convection_liquid bath(void)
{
    return (boil_convection_liquid){.density_kg_m3 = 1450,
                                    .heat_capacity_J_kgK = 3300,
                                    .viscosity_Pa_s = 2e-3,
                                    .conductivity_W_mK = 0.65,
                                    .expansion_1_K = 5e-4};
}

static double bath_side(const boil_convection_liquid *f, double height_m, double difference_K, double gas_velocity_m_s)
{
    const boil_convection_bath b = boil_convection_bath_of(f, gas_velocity_m_s);
    return boil_convection_bath_side(&b, height_m, difference_K);
}

static void blend_tends_to_its_two_limits(void **state)
{
    (void)state;
    const boil_convection_liquid f = bath();
    const double natural = boil_convection_natural(&f, 0.1, 20), stirred = boil_convection_stirred(&f, 0.03);
    assert_close(bath_side(&f, 0.1, 20, 0), natural, 1e-15, 0);
    assert_close(bath_side(&f, 0.1, 0, 0.03), stirred, 1e-6, 0);
    assert_close(bath_side(&f, 0.1, 20, 0.03), pow(pow(natural, 4) + pow(stirred, 4), 0.25), 1e-14, 0);
    assert_close(bath_side(&f, 0.1, -20, -0.1), natural, 1e-15, 0);
    assert_true(isnan(bath_side(&f, 0.1, 20, (double)NAN)));
    assert_true(isnan(bath_side(&f, 0.1, (double)NAN, 0.01)));
}

/* No difference leaves conduction, Nu = 0.825^2, and no gas no stirring. */
static void nothing_moves_and_all_stays_finite(void **state)
{
    (void)state;
    const boil_convection_liquid f = bath();
    assert_close(boil_convection_natural(&f, 0.1, 0), 0.825 * 0.825 * 0.65 / 0.1, 1e-14, 0);
    assert_close(boil_convection_stirred(&f, 0), 0, 0, 0);
    assert_close(bath_side(&f, 0.1, 0, 0), 0.825 * 0.825 * 0.65 / 0.1, 1e-14, 0);
}

/* d h/d j at j = 0 is h_b^4/(4 j h_n^3): finite, and the blend meets it from the very first bubble. */
static void first_gas_meets_a_finite_slope(void **state)
{
    (void)state;
    const boil_convection_liquid f = bath();
    const double natural = bath_side(&f, 0.1, 20, 0);
    const double slope = pow(boil_convection_stirred(&f, 1e-3), 4) / 1e-3 / (4 * pow(natural, 3));
    for (double j = 1e-7; j < 2e-6; j *= 10) {
        const double h = bath_side(&f, 0.1, 20, j);
        assert_close((h - natural) / j, slope, 0.01, 0);
    }
}

/* The heat flow rises with the difference, through zero without a step, and with the gas. */
static void more_difference_or_gas_is_more_heat(void **state)
{
    (void)state;
    const boil_convection_liquid f = bath();
    double before = -1;
    for (double difference = 0; difference < 130; difference = difference * 1.3 + 1e-6) {
        const double flow = difference * boil_convection_natural(&f, 0.1, difference);
        assert_true(flow > before);
        before = flow;
    }
    before = 0;
    for (double j = 0; j < 0.2; j += 1e-3) {
        const double h = bath_side(&f, 0.1, 20, j);
        assert_true(h > before);
        before = h;
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(blend_tends_to_its_two_limits),
        cmocka_unit_test(nothing_moves_and_all_stays_finite),
        cmocka_unit_test(first_gas_meets_a_finite_slope),
        cmocka_unit_test(more_difference_or_gas_is_more_heat),
    };
    return cmocka_run_group_tests_name("stirred", tests, NULL, NULL);
}
