/* One hoist and people with breaks, on a clock: a move takes 60 s, and a load that went in is let go of after BOIL_PLAN_CLEAR_S. */
#include "plan/hands.h"
#include "support/close.h"

static const boil_break breaks[] = {{1000, 1300}, {2000, 2600}};
static const boil_plan_problem problem = {.hoist_s = 60, .breaks = breaks, .breaks_count = 2};

static void expect(const boil_plan_hands *h, double from_s, double to_s, double until_s, bool is_break)
{
    bool a_break;
    assert_close(boil_plan_hands_busy(h, from_s, to_s, &a_break), until_s, 0, 0);
    assert_int_equal(a_break, is_break);
}

static void expect_free(const boil_plan_hands *h, double from_s, double to_s)
{
    bool is_break;
    assert_true(isnan(boil_plan_hands_busy(h, from_s, to_s, &is_break)));
}

/* Up to a break and from its end on, but for a rounding. */
static void nobody_moves_in_a_break(void **state)
{
    (void)state;
    const boil_plan_hands h = {&problem, NULL, 0};
    expect_free(&h, 900, 1000);
    expect_free(&h, 900, 1000 + 1e-8);
    expect(&h, 900, 1001, 1300, true);
    expect(&h, 1299, 1400, 1300, true);
    expect_free(&h, 1300, 2000);
    expect(&h, 1400, 2001, 2600, true);
    expect_free(&h, 2600, 9000);
}

/* In from a move before its entry to 10 s after it, and out for one move. */
static void the_hoist_makes_one_move_at_a_time(void **state)
{
    (void)state;
    const boil_plan_hanging list[] = {{-HUGE_VAL, 100}, {400, 800}};
    const boil_plan_hands h = {&problem, list, 2};
    expect_free(&h, 40, 100);
    expect(&h, 41, 101, 160, false);
    expect(&h, 159, 219, 160, false);
    expect_free(&h, 160, 340);
    expect(&h, 281, 341, 400 + BOIL_PLAN_CLEAR_S, false);
    expect(&h, 409, 420, 400 + BOIL_PLAN_CLEAR_S, false);
    expect_free(&h, 410, 800);
    expect(&h, 859, 919, 860, false);
    expect_free(&h, 860, 920);
}

static void a_lift_waits_for_hands(void **state)
{
    (void)state;
    const boil_plan_hanging list[] = {{400, 800}};
    const boil_plan_hands h = {&problem, list, 1};
    assert_close(boil_plan_hands_lift(&h, 100.2), 101, 0, 0);
    assert_close(boil_plan_hands_lift(&h, 101.0000001), 101, 0, 0); /* what a rounding misses */
    assert_close(boil_plan_hands_lift(&h, 280), 280, 0, 0);
    assert_close(boil_plan_hands_lift(&h, 281), 410, 0, 0);
    assert_close(boil_plan_hands_lift(&h, 790), 860, 0, 0);
    assert_close(boil_plan_hands_lift(&h, 950), 1300, 0, 0);
    assert_close(boil_plan_hands_lift(&h, 1999.5), 2600, 0, 0);
}

static void expect_longest(double from_s, double to_s, double start_s, double end_s)
{
    boil_break w = boil_plan_hands_longest(&problem, from_s, to_s);
    assert_close(w.from_s, start_s, 0, 0);
    assert_close(w.to_s, end_s, 0, 0);
}

static void the_longest_stretch_between_breaks_is_found(void **state)
{
    (void)state;
    expect_longest(0, 500, 0, 500);
    expect_longest(0, 1500, 0, 1000);
    expect_longest(500, 1900, 1300, 1900);
    expect_longest(700, 2200, 1300, 2000);
    expect_longest(300, 2200, 300, 1000); /* of two that are as long the first */
    expect_longest(1900, 3000, 2600, 3000);
    expect_longest(1100, 1200, 1100, 1100); /* none: all of it is a break */
    expect_longest(800, 700, 800, 800);
    expect_longest(3000, 3100, 3000, 3100);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(nobody_moves_in_a_break), cmocka_unit_test(the_hoist_makes_one_move_at_a_time),
        cmocka_unit_test(a_lift_waits_for_hands), cmocka_unit_test(the_longest_stretch_between_breaks_is_found)};
    return cmocka_run_group_tests_name("hands", tests, NULL, NULL);
}
