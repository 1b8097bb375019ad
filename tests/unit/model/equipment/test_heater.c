/* The heater: its share of the input, and the ranges of its numbers. */
#include "support/range.h"

#include "equipment/heater.h"

static void heater_refuses_what_is_out_of_range(void **state)
{
    (void)state;
    boil_heater h = boil_heater_default(BOIL_HEAT_GAS);
    assert_null(boil_heater_problem(&h));
    ASSERT_RANGE(h, boil_heater_problem, input_W, -1, 0, 1e8, 1.01e8, "heat input", "0 W and 1e8 W");
    ASSERT_RANGE(h, boil_heater_problem, efficiency, 0.04, 0.05, 1, 1.01, "efficiency", "0.05 and 1");
    ASSERT_RANGE(h, boil_heater_problem, lag_s, -1, 0, 3600, 3601, "lag", "0 s and 3600 s");
    ASSERT_RANGE(h, boil_heater_problem, dial, -0.1, 0, 1, 1.1, "dial", "0 and 1");
}

static void heater_gives_its_share_of_the_input(void **state)
{
    (void)state;
    boil_heater h = boil_heater_default(BOIL_HEAT_GAS);
    assert_close(h.lag_s, 120, 0, 0);
    h.input_W = 100e3;
    assert_close(boil_heater_output(&h, 1, 400), 65e3, 1e-15, 0);
    assert_close(boil_heater_output(&h, 0.5, 400), 32.5e3, 1e-15, 0);
    assert_close(boil_heater_default(BOIL_HEAT_ELECTRIC).efficiency, 1, 0, 0);
    assert_close(boil_heater_default(BOIL_HEAT_ELECTRIC).lag_s, 60, 0, 0);
    assert_close(boil_heater_default(BOIL_HEAT_STEAM).lag_s, 30, 0, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(heater_refuses_what_is_out_of_range),
        cmocka_unit_test(heater_gives_its_share_of_the_input),
    };
    return cmocka_run_group_tests_name("heater", tests, NULL, NULL);
}
