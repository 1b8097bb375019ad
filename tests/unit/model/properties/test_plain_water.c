/* unit/model/properties/test_plain_water.c -- a solution of no salts is water, whatever blend it might be given: every property
   function against those of properties/water.h, which the published tables are compared with. */
#include "support/brine.h"

#include "properties/solubility.h"
#include "properties/water.h"

static const boil_mixture water = {.water = 3};

static void every_property_is_that_of_water(void **state)
{
    (void)state;
    for (double t = 0; t <= 190; t += 10) {
        boil_solution_guess guess = {0, 0};
        double T = KELVIN(t), by_T, by_strength, molality = 0, kilograms = water.water, water_by_T;
        const boil_conditions c = boil_conditions_at(BOIL_STANDARD_ATMOSPHERE, 1);
        boil_heat h = boil_solution_heat(&water, T);
        assert_true(boil_solution_activity_near(&water, T, &guess) == 1);
        assert_close(boil_solution_log_vapour_pressure(&c, &water, T, 1e-6, &molality, &by_T, &by_strength),
                     boil_water_log_saturation_pressure(T, &water_by_T), 1e-15, 0);
        assert_close(by_T, water_by_T, 1e-14, 0);
        assert_true(by_strength == 0);
        assert_close(boil_solution_density(&water, T), boil_water_density(T), 1e-15, 0);
        assert_close(h.enthalpy_J, kilograms * boil_water_enthalpy(T), 1e-14, 1e-9);
        assert_close(h.heat_capacity_J_K, kilograms * boil_water_heat_capacity(T), 1e-12, 0);
        assert_close(h.water, boil_water_enthalpy(T), 1e-14, 1e-9);
        assert_close(boil_solution_temperature(&water, h.enthalpy_J, KELVIN(60)), T, 1e-9, 0);
        assert_true(boil_solution_range_at(T, 0).margin > 0);
        for (int i = 0; i < BOIL_SALTS; i++)
            assert_true(isfinite(h.salt[i]));
    }
}

/* 100 degC at 1 atm: 99.974 on the present scale [IAPWS R7-97]. */
static void it_boils_where_water_does(void **state)
{
    (void)state;
    for (double pressure = 60e3; pressure <= 110e3; pressure += 10e3)
        for (double factor = 0.85; factor < 1.11; factor += 0.05) {
            boil_slope slope;
            const boil_conditions c = boil_conditions_at(pressure, factor);
            assert_close(brine_boils_at(&c, &water, &slope), boil_water_saturation_temperature(pressure), 0, 1e-9);
            assert_close(slope.water, 0, 0, 1e-12);
            assert_true(slope.salt[BOIL_NAOH] > 0 && slope.salt[BOIL_NANO3] > 0 && slope.salt[BOIL_NANO2] > 0);
        }
    const boil_conditions c = boil_conditions_at(BOIL_STANDARD_ATMOSPHERE, 1);
    assert_close(brine_boils_at(&c, &water, NULL), KELVIN(99.974), 0, 1e-3);
}

static void no_salts_are_a_strength_of_any_blend(void **state)
{
    (void)state;
    const boil_conditions c = boil_conditions_at(BOIL_STANDARD_ATMOSPHERE, 1);
    for (int i = 0; i < BRINE_BLENDS; i++) {
        double fraction;
        assert_int_equal(boil_solution_fraction_of_strength(&c, brine_blends[i], 0, &fraction), BOIL_OK);
        assert_close(fraction, 0, 0, 1e-14);
        assert_int_equal(boil_solution_fraction_boiling_at(&c, brine_blends[i], c.saturation_K + 0.01, &fraction), BOIL_OK);
        assert_true(fraction > 0 && fraction < 0.001);
        const boil_mixture m = boil_mixture_of(brine_blends[i], fraction);
        assert_close(brine_boils_at(&c, &m, NULL), c.saturation_K + 0.01, 0, 1e-9);
        assert_int_equal(boil_solution_fraction_boiling_at(&c, brine_blends[i], c.saturation_K - 0.01, &fraction),
                         BOIL_OUT_OF_RANGE);
    }
    assert_true(boil_solution_strength(&c, &water) == 0);
    assert_true(boil_mixture_salt_fraction(&water) == 0);
}

static void nothing_crystallises_above_the_freezing_point(void **state)
{
    (void)state;
    assert_true(isnan(boil_solubility_crystals_from(&water)));
    assert_true(boil_solubility_excess(&water, KELVIN(1)) == 0);
    assert_close(boil_solubility_above_liquidus(&water, KELVIN(0)), 0, 0, 1e-12);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_property_is_that_of_water),
        cmocka_unit_test(it_boils_where_water_does),
        cmocka_unit_test(no_salts_are_a_strength_of_any_blend),
        cmocka_unit_test(nothing_crystallises_above_the_freezing_point),
    };
    return cmocka_run_group_tests_name("plain water", tests, NULL, NULL);
}
