/* A tap in a hand: all moments and amounts worked out by hand, at 2 kg/s of 100 kg, a steady boil after 30 s, a reaction of 10 s. */
#include "support/close.h"

#include "acts/tap.h"

static const boil_by_hand hand = {.steady_s = 30, .reaction_s = 10};
static const double never = (double)INFINITY;

/* Goes from one of its moments to the next until `until_s`; the bath stays as it is. */
static void follow(boil_tap *t, const boil_pour *p, boil_wait_bath b, double until_s)
{
    for (int turns = 0; turns < 20; turns++) {
        boil_tap_turn(t, p, &hand, &b, t->as_of_s);
        double next_s = fmin(until_s, boil_tap_next(t, p, &hand, &b));
        bool done = next_s >= until_s;
        boil_tap_pass(t, fmax(next_s, t->as_of_s));
        if (done)
            return;
    }
    fail();
}

static void without_anything_to_wait_for_all_goes_in(void **state)
{
    (void)state;
    const boil_pour p = {.no_later_s = 1000};
    boil_tap t = boil_tap_shut(100, 50, 0);
    follow(&t, &p, (boil_wait_bath){false, 0}, 200);
    assert_int_equal(t.end, BOIL_POUR_ALL_IN);
    assert_close(t.poured_kg, 100, 1e-15, 0);
    assert_false(t.open);
}

static void it_ends_at_its_last_moment(void **state)
{
    (void)state;
    const boil_pour p = {.no_later_s = 20};
    boil_tap t = boil_tap_shut(100, 50, 0);
    follow(&t, &p, (boil_wait_bath){true, -never}, 200);
    assert_int_equal(t.end, BOIL_POUR_TIME);
    assert_close(t.poured_kg, 40, 1e-15, 0); /* 20 s at 2 kg/s */
}

/* Boils from 0; lost at 40, back at 100, never lost again. */
static void it_pauses_with_the_boil(void **state)
{
    (void)state;
    const boil_pour p = {.while_boiling = true};
    boil_tap t = boil_tap_shut(100, 50, 0);
    follow(&t, &p, (boil_wait_bath){true, 0}, 40);
    assert_close(t.poured_kg, 20, 1e-15, 0); /* from 30 to 40 */
    follow(&t, &p, (boil_wait_bath){false, 40}, 100);
    assert_close(t.poured_kg, 40, 1e-15, 0); /* shut at 50 */
    assert_false(t.open);
    follow(&t, &p, (boil_wait_bath){true, 100}, 130);
    assert_close(t.poured_kg, 40, 1e-15, 0);
    follow(&t, &p, (boil_wait_bath){true, 100}, 1000);
    assert_int_equal(t.end, BOIL_POUR_ALL_IN); /* at 160 */
    assert_close(t.poured_kg, 100, 1e-15, 0);
}

static void a_boil_that_is_back_before_the_hand_is_at_the_tap_changes_nothing(void **state)
{
    (void)state;
    const boil_pour p = {.while_boiling = true};
    boil_tap t = boil_tap_shut(100, 50, 0);
    follow(&t, &p, (boil_wait_bath){true, -never}, 20);
    follow(&t, &p, (boil_wait_bath){false, 20}, 25);
    follow(&t, &p, (boil_wait_bath){true, 25}, 40);
    assert_true(t.open);
    assert_close(t.poured_kg, 80, 1e-15, 0);
}

static void one_that_stops_with_the_boil_stays_shut(void **state)
{
    (void)state;
    const boil_pour p = {.once = true};
    boil_tap t = boil_tap_shut(100, 50, 0);
    follow(&t, &p, (boil_wait_bath){true, 0}, 40);
    follow(&t, &p, (boil_wait_bath){false, 40}, 100);
    follow(&t, &p, (boil_wait_bath){true, 100}, 1000);
    assert_int_equal(t.end, BOIL_POUR_BOIL_LOST);
    assert_close(t.poured_kg, 40, 1e-15, 0);
}

static void a_goal_that_is_seen_ends_it_a_reaction_later(void **state)
{
    (void)state;
    const boil_pour p = {.goal = BOIL_GOAL_LEVEL, .goal_value = 0.5};
    boil_tap t = boil_tap_shut(100, 50, 0);
    follow(&t, &p, (boil_wait_bath){false, 0}, 15);
    t.seen_s = 15;
    follow(&t, &p, (boil_wait_bath){false, 0}, 200);
    assert_int_equal(t.end, BOIL_POUR_GOAL);
    assert_close(t.poured_kg, 50, 1e-15, 0); /* 25 s at 2 kg/s */
}

static void a_boiling_point_is_read_on_a_boiling_bath(void **state)
{
    (void)state;
    const boil_pour p = {.goal = BOIL_GOAL_BOILING_POINT, .goal_value = 413};
    boil_tap t = boil_tap_shut(100, 50, 0);
    follow(&t, &p, (boil_wait_bath){false, 0}, 500);
    assert_close(t.poured_kg, 0, 0, 0);
    assert_int_equal(t.end, BOIL_POUR_GOES_ON);
}

static void what_makes_no_sense_is_refused(void **state)
{
    (void)state;
    assert_false(boil_tap_is_needed(&(boil_pour){0}));
    assert_true(boil_tap_is_sound(&(boil_pour){0}));
    assert_true(boil_tap_is_needed(&(boil_pour){.once = true}));
    assert_false(boil_tap_is_sound(&(boil_pour){.goal = BOIL_GOAL_LEVEL}));
    assert_false(boil_tap_is_sound(&(boil_pour){.goal = BOIL_GOAL_LEVEL, .goal_value = (double)NAN}));
    assert_false(boil_tap_is_sound(&(boil_pour){.goal = (boil_goal)7, .goal_value = 1}));
    assert_false(boil_tap_is_sound(&(boil_pour){.no_later_s = -1}));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(without_anything_to_wait_for_all_goes_in),
        cmocka_unit_test(it_ends_at_its_last_moment),
        cmocka_unit_test(it_pauses_with_the_boil),
        cmocka_unit_test(a_boil_that_is_back_before_the_hand_is_at_the_tap_changes_nothing),
        cmocka_unit_test(one_that_stops_with_the_boil_stays_shut),
        cmocka_unit_test(a_goal_that_is_seen_ends_it_a_reaction_later),
        cmocka_unit_test(a_boiling_point_is_read_on_a_boiling_bath),
        cmocka_unit_test(what_makes_no_sense_is_refused),
    };
    return cmocka_run_group_tests_name("tap", tests, NULL, NULL);
}
