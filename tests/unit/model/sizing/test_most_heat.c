/* The most heat, against the runs that it stands for: just at the answer all laws allow it, a little beyond one does not. Nothing
   here is known from outside. */
#include <gsl/gsl_errno.h>

#include "support/close.h"

#include "sizing/most_heat.h"
#include "support/cases.h"

typedef struct {
    boil_plant plant;
    boil_schedule schedule;
    boil_holding_case of;
    boil_simulation *own;
} held_case;

/* Two loads, the second heavier: what breaks late is seen. */
static void set_up(held_case *c)
{
    const boil_action loads[] = {plate_action(60, 1), plate_action(700, 1.2)};
    c->plant = open_plant(1);
    c->plant.tank.depth_m = 0.65;
    c->plant.limits.freeboard_m = 0.04;
    c->schedule = schedule_with(1200, loads, 2);
    c->of = (boil_holding_case){&c->plant, &c->schedule, boil_run_options_default(), 120, false, &c->own};
    c->own = NULL;
}

static boil_holding all_with(const held_case *c, double heat_W)
{
    boil_holding all;
    assert_int_equal(boil_holding_by_all(&c->of, heat_W, &all), BOIL_OK);
    return all;
}

static void test_so_much_leaves_the_freeboard(void **state)
{
    (void)state;
    const double least_W = 35e3, near_W = 120e3;
    double heat_W, same_W;
    held_case c;
    set_up(&c);
    double left_m = all_with(&c, least_W).freeboard_min_m;
    for (double limit_m = 0; limit_m < 0.05; limit_m += 0.04) {
        assert_int_equal(boil_most_heat_leaving(&c.of, limit_m, least_W, left_m, near_W, &heat_W), BOIL_OK);
        print_message("%.0f mm: %.2f kW\n", limit_m * 1e3, heat_W / 1e3);
        assert_true(heat_W > least_W && heat_W < near_W);
        assert_true(all_with(&c, heat_W).freeboard_min_m >= limit_m);
        assert_true(all_with(&c, 1.04 * heat_W).freeboard_min_m < limit_m);
        assert_int_equal(boil_most_heat_leaving(&c.of, limit_m, least_W, left_m, heat_W, &same_W), BOIL_OK);
        assert_true(same_W == heat_W);
    }
    boil_simulation_free(c.own);
    boil_schedule_free(&c.schedule);
}

/* A valve of the plant's own that lets in half of what the most heat boils off. */
static void test_so_much_keeps_the_strength(void **state)
{
    (void)state;
    const double least_W = 35e3, near_W = 90e3, steam_J_kg = 2.65e6;
    const unsigned band = BOIL_BREAKS_WEAK | BOIL_BREAKS_STRONG | BOIL_BREAKS_KNOWN;
    double heat_W, same_W;
    held_case c;
    set_up(&c);
    c.schedule.duration_s = 6 * 3600;
    assert_int_equal(boil_holding_plant(&c.plant, near_W, &c.plant), BOIL_OK);
    c.plant.control.rate_kg_s = near_W / 2 / steam_J_kg;
    assert_int_equal(boil_most_heat_in_band(&c.of, least_W, near_W, &heat_W), BOIL_OK);
    print_message("%.2f kW\n", heat_W / 1e3);
    assert_true(heat_W > least_W && heat_W < near_W);
    assert_false(all_with(&c, heat_W).breaks & band);
    assert_true(all_with(&c, 1.021 * heat_W).breaks & band);
    assert_int_equal(boil_most_heat_in_band(&c.of, least_W, heat_W, &same_W), BOIL_OK);
    assert_true(same_W == heat_W);
    boil_simulation_free(c.own);
    boil_schedule_free(&c.schedule);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_so_much_leaves_the_freeboard),
        cmocka_unit_test(test_so_much_keeps_the_strength),
    };
    gsl_set_error_handler_off();
    return cmocka_run_group_tests_name("most heat", tests, NULL, NULL);
}
