/* What surrounds the tank: pressure, humidity, and the ranges of its numbers. */
#include "support/range.h"

#include "equipment/ambient.h"
#include "properties/water.h"

static void ambient_refuses_what_is_out_of_range(void **state)
{
    (void)state;
    boil_ambient r = boil_ambient_default();
    assert_null(boil_ambient_problem(&r));
    ASSERT_RANGE(r, boil_ambient_problem, pressure_Pa, 59999, 60e3, 110e3, 110001, "station pressure",
                 "60000 Pa and 110000 Pa");
    ASSERT_RANGE(r, boil_ambient_problem, temperature_K, 242.9, 243, 333.15, 333.2, "room temperature", "243 K and 333.15 K");
    ASSERT_RANGE(r, boil_ambient_problem, relative_humidity, -0.01, 0, 1, 1.01, "relative humidity", "0 and 1");
    ASSERT_RANGE(r, boil_ambient_problem, draught_m_s, -0.01, 0, 3, 3.01, "draught", "0 m/s and 3 m/s");
}

static void humidity_is_a_share_of_saturation(void **state)
{
    (void)state;
    boil_ambient r = boil_ambient_default();
    assert_close(boil_ambient_vapour_pressure(&r), 0.5 * boil_water_saturation_pressure(293.15), 1e-15, 0);
    r.temperature_K = 250;
    r.relative_humidity = 1;
    assert_close(boil_ambient_vapour_pressure(&r), boil_water_saturation_pressure(273.15), 1e-15, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(ambient_refuses_what_is_out_of_range),
        cmocka_unit_test(humidity_is_a_share_of_saturation),
    };
    return cmocka_run_group_tests_name("ambient", tests, NULL, NULL);
}
