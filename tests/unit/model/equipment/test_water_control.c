/* The valve that keeps the bath's boiling point: the ranges of its numbers, and how far it opens in a band. */
#include "support/range.h"

#include "equipment/water_control.h"

static void what_is_out_of_range_is_refused(void **state)
{
    (void)state;
    boil_water_control c = boil_water_control_default();
    assert_non_null(boil_water_control_problem(NULL));
    assert_null(boil_water_control_problem(&c)); /* there is none, whatever its numbers are */
    c.set_point_K = 413;
    c.rate_kg_s = 0.05;
    c.mode = BOIL_WATER_CONTROL_ON_OFF;
    assert_null(boil_water_control_problem(&c));
    ASSERT_RANGE(c, boil_water_control_problem, set_point_K, 373.1, 373.15, 473.15, 473.2, "set point",
                 "373.15 K and 473.15 K");
    ASSERT_RANGE(c, boil_water_control_problem, differential_K, 0.09, 0.1, 20, 20.1, "differential", "0.1 K and 20 K");
    ASSERT_RANGE(c, boil_water_control_problem, band_K, 0.19, 0.2, 20, 20.1, "band", "0.2 K and 20 K");
    ASSERT_RANGE(c, boil_water_control_problem, period_s, 9.9, 10, 3600, 3601, "period", "10 s and 3600 s");
    ASSERT_RANGE(c, boil_water_control_problem, rate_kg_s, 0, 1e-9, 10, 10.1, "rate", "above 0 and at most 10 kg/s");
    ASSERT_RANGE(c, boil_water_control_problem, water_K, 273.1, 273.15, 373.15, 373.2, "temperature", "273.15 K and 373.15 K");
    ASSERT_RANGE(c, boil_water_control_problem, dead_time_s, -0.1, 0, 600, 601, "dead time", "0 s and 600 s");
    ASSERT_RANGE(c, boil_water_control_problem, sensor_lag_s, -0.1, 0, 600, 601, "sensor lag", "0 s and 600 s");
    ASSERT_RANGE(c, boil_water_control_problem, low_level_m, -0.1, 0, 5, 5.1, "low level", "0 m and 5 m");
}

/* Half open at the set point, shut and wide open half a band below and above it, and no further. */
static void it_opens_in_its_band(void **state)
{
    (void)state;
    boil_water_control c = boil_water_control_default();
    c.set_point_K = 413;
    c.band_K = 4;
    const double from_K[] = {-10, -2, -1, 0, 1, 2, 10}, opens[] = {0, 0, 0.25, 0.5, 0.75, 1, 1};
    for (size_t i = 0; i < sizeof opens / sizeof opens[0]; i++)
        assert_close(boil_water_control_share(&c, 413 + from_K[i]), opens[i], 0, 1e-12);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_is_out_of_range_is_refused),
        cmocka_unit_test(it_opens_in_its_band),
    };
    return cmocka_run_group_tests_name("water control", tests, NULL, NULL);
}
