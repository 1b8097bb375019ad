/* The tank: its faces by elementary geometry, heights by default, and the ranges of its numbers. */
#include "support/range.h"

#include "base/constants.h"
#include "equipment/tank.h"

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
    t.heated = BOIL_TANK_HEATED_INSIDE;
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
    t.heated = BOIL_TANK_HEATED_INSIDE;
    assert_close(boil_tank_heater_top(&t), 0.28, 1e-15, 0);
    t.heater_top_m = 0.33;
    t.parts_top_m = 0.55;
    assert_close(boil_tank_heater_top(&t), 0.33, 0, 0);
    assert_close(boil_tank_parts_top(&t), 0.55, 0, 0);
    t.parts_top_m = 0;
    t.level_m = 0.15;
    assert_close(boil_tank_parts_top(&t), 0.075, 1e-15, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(tank_refuses_what_is_out_of_range),
        cmocka_unit_test(a_box_has_a_floor_and_four_walls),
        cmocka_unit_test(a_cylinder_is_round),
        cmocka_unit_test(heights_are_as_stated_or_by_default),
    };
    return cmocka_run_group_tests_name("tank", tests, NULL, NULL);
}
