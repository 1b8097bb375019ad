/* Where the tank stands and what it is: room, tank, heater. */
#include "support/close.h"

#include <string.h>

#include "base/boil.h"
#include "equipment/ambient.h"
#include "equipment/heater.h"
#include "equipment/tank.h"
#include "properties/water.h"

/* The problem must speak of the quantity and of its range's end. */
static void assert_says(const char *problem, const char *quantity, const char *range)
{
    assert_non_null(problem);
    if (!strstr(problem, quantity) || !strstr(problem, range))
        fail_msg("\"%s\" lacks \"%s\" or \"%s\"", problem, quantity, range);
}

/* Sets a field out of range, to NaN and just inside, and asks each time. Leaves it just inside. */
#define ASSERT_RANGE(object, problem_of, field, below, lowest, highest, above, quantity, range)                                \
    do {                                                                                                                       \
        (object).field = (below);                                                                                              \
        assert_says(problem_of(&(object)), quantity, range);                                                                   \
        (object).field = (above);                                                                                              \
        assert_says(problem_of(&(object)), quantity, range);                                                                   \
        (object).field = (double)NAN;                                                                                          \
        assert_says(problem_of(&(object)), quantity, range);                                                                   \
        (object).field = (highest);                                                                                            \
        assert_null(problem_of(&(object)));                                                                                    \
        (object).field = (lowest);                                                                                             \
        assert_null(problem_of(&(object)));                                                                                    \
    } while (0)

static void room_refuses_what_is_out_of_range(void **state)
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

/* [International Standard Atmosphere, ISO 2533:1975: pressure at geopotential altitude, printed to 1 Pa] */
static void pressure_falls_with_altitude(void **state)
{
    (void)state;
    const double table[][2] = {{0, 101325}, {1000, 89875}, {2000, 79495}, {3000, 70109}};
    for (size_t i = 0; i < sizeof table / sizeof table[0]; i++)
        assert_close(boil_ambient_pressure_at_altitude(table[i][0]), table[i][1], 0, 1);
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

static boil_tank box(void)
{
    boil_tank t = boil_tank_default();
    t.length_m = 1.2;
    t.width_m = 0.8;
    t.depth_m = 0.9;
    t.level_m = 0.7;
    return t;
}

static boil_tank cylinder(void)
{
    boil_tank t = box();
    t.shape = BOIL_TANK_UPRIGHT_CYLINDER;
    t.length_m = t.width_m = 0;
    t.diameter_m = 0.6;
    return t;
}

static void tank_refuses_what_is_out_of_range(void **state)
{
    (void)state;
    boil_tank t = boil_tank_default();
    assert_non_null(boil_tank_problem(&t)); /* it has no sizes yet */
    t = box();
    assert_null(boil_tank_problem(&t));
    ASSERT_RANGE(t, boil_tank_problem, length_m, 0.09, 0.1, 20, 20.1, "length", "0.1 m and 20 m");
    ASSERT_RANGE(t, boil_tank_problem, width_m, 0.09, 0.1, 20, 20.1, "width", "0.1 m and 20 m");
    ASSERT_RANGE(t, boil_tank_problem, wall_thickness_m, -0.001, 0, 0.05, 0.051, "wall thickness", "0 m and 0.05 m");
    ASSERT_RANGE(t, boil_tank_problem, insulation_m, -0.001, 0, 0.5, 0.51, "insulation", "0 m and 0.5 m");
    ASSERT_RANGE(t, boil_tank_problem, heater_top_m, -0.1, 0, 0.89, 0.9, "top of the heater", "0 m and the rim");
    ASSERT_RANGE(t, boil_tank_problem, parts_top_m, -0.1, 0, 0.89, 0.9, "top of the parts", "0 m and the rim");
    ASSERT_RANGE(t, boil_tank_problem, level_m, 0.019, 0.02, 0.89, 0.9, "level", "0.02 m and the rim");
    ASSERT_RANGE(t, boil_tank_problem, depth_m, 0.09, 0.1, 5, 5.1, "depth", "0.1 m and 5 m");
    t = cylinder();
    assert_null(boil_tank_problem(&t));
    ASSERT_RANGE(t, boil_tank_problem, diameter_m, 0.09, 0.1, 20, 20.1, "diameter", "0.1 m and 20 m");
}

static void a_box_has_a_floor_and_four_walls(void **state)
{
    (void)state;
    boil_tank t = box();
    assert_close(boil_tank_area(&t), 0.96, 1e-15, 0);
    assert_close(boil_tank_perimeter(&t), 4.0, 1e-15, 0);
    assert_close(boil_tank_longest_side(&t), 1.2, 0, 0);
    assert_close(boil_tank_equivalent_radius(&t), 0.55279062, 1e-7, 0);
    assert_close(boil_tank_wetted_steel(&t), (0.96 + 4 * 0.7) * 0.006 * 7850, 1e-14, 0);
    assert_close(boil_tank_cooled_area(&t), 2.8, 1e-15, 0);
    t.heated = BOIL_HEATED_INSIDE;
    assert_close(boil_tank_cooled_area(&t), 3.76, 1e-15, 0);
    t.wall_thickness_m = 0;
    assert_close(boil_tank_wetted_steel(&t), 0, 0, 0);
    t.width_m = 2;
    assert_close(boil_tank_longest_side(&t), 2, 0, 0);
}

static void a_cylinder_is_round(void **state)
{
    (void)state;
    boil_tank t = cylinder();
    assert_close(boil_tank_area(&t), BOIL_PI * 0.09, 1e-15, 0);
    assert_close(boil_tank_perimeter(&t), BOIL_PI * 0.6, 1e-15, 0);
    assert_close(boil_tank_longest_side(&t), 0.6, 0, 0);
    assert_close(boil_tank_equivalent_radius(&t), 0.3, 1e-15, 0);
}

static void heights_are_as_stated_or_by_default(void **state)
{
    (void)state;
    boil_tank t = box();
    assert_close(boil_tank_heater_top(&t), 0, 0, 0);
    assert_close(boil_tank_parts_top(&t), 0.6, 1e-15, 0);
    t.heated = BOIL_HEATED_INSIDE;
    assert_close(boil_tank_heater_top(&t), 0.28, 1e-15, 0);
    t.heater_top_m = 0.33;
    t.parts_top_m = 0.55;
    assert_close(boil_tank_heater_top(&t), 0.33, 0, 0);
    assert_close(boil_tank_parts_top(&t), 0.55, 0, 0);
    t.parts_top_m = 0;
    t.level_m = 0.15;
    assert_close(boil_tank_parts_top(&t), 0.075, 1e-15, 0);
}

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
        cmocka_unit_test(room_refuses_what_is_out_of_range),   cmocka_unit_test(pressure_falls_with_altitude),
        cmocka_unit_test(humidity_is_a_share_of_saturation),   cmocka_unit_test(tank_refuses_what_is_out_of_range),
        cmocka_unit_test(a_box_has_a_floor_and_four_walls),    cmocka_unit_test(a_cylinder_is_round),
        cmocka_unit_test(heights_are_as_stated_or_by_default), cmocka_unit_test(heater_refuses_what_is_out_of_range),
        cmocka_unit_test(heater_gives_its_share_of_the_input),
    };
    return cmocka_run_group_tests_name("place", tests, NULL, NULL);
}
