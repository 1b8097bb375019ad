/* Answers that stop early against the whole runs that they stand for: nothing here is known from outside. */
#include <gsl/gsl_errno.h>

#include "support/close.h"

#include "sizing/holding.h"
#include "sizing/leaving.h"
#include "support/cases.h"

/* Two loads into a tank that little more heat brings near its rim; the second is the heavier, so that what breaks late is seen. */
typedef struct {
    boil_plant plant;
    boil_schedule schedule;
    boil_holding_case of;
} held_case;

static void set_up(held_case *c)
{
    const boil_action loads[] = {plate_action(60, 1), plate_action(900, 1.2)};
    c->plant = open_plant(1);
    c->plant.tank.depth_m = 0.6;
    c->plant.limits.freeboard_m = 0.04;
    c->schedule = schedule_with(1800, loads, 2);
    c->of = (boil_holding_case){&c->plant, &c->schedule, boil_run_options_default(), 120, false};
}

static const double heats_W[] = {22e3, 31e3, 40e3, 60e3, 90e3};
enum { HEATS = sizeof heats_W / sizeof heats_W[0] };

static void test_a_run_cut_short_breaks_what_the_whole_one_does(void **state)
{
    (void)state;
    static const unsigned heeded[] = {BOIL_BREAKS_SLOW, BOIL_BREAKS_FREEBOARD, BOIL_BREAKS_STRONG | BOIL_BREAKS_KNOWN, ~0u};
    unsigned seen = 0, held = 0;
    held_case c;
    set_up(&c);
    for (size_t i = 0; i < HEATS; i++)
        for (size_t law = 0; law < BOIL_HOLDING_LAWS; law++) {
            boil_holding whole;
            assert_int_equal(boil_holding_by(&c.of, heats_W[i], boil_holding_laws[law], &whole), BOIL_OK);
            seen |= whole.breaks;
            held += whole.breaks == 0;
            for (size_t k = 0; k < sizeof heeded / sizeof heeded[0]; k++) {
                unsigned breaks;
                assert_int_equal(boil_holding_breaks(&c.of, heats_W[i], boil_holding_laws[law], heeded[k], &breaks), BOIL_OK);
                assert_int_equal((breaks & heeded[k]) != 0, (whole.breaks & heeded[k]) != 0);
                assert_int_equal(breaks & ~whole.breaks, 0);
                if (!(whole.breaks & heeded[k]))
                    assert_int_equal(breaks, whole.breaks);
            }
        }
    assert_true(held > 0 && seen & BOIL_BREAKS_RECOVERY && seen & BOIL_BREAKS_FREEBOARD);
    boil_schedule_free(&c.schedule);
}

/* No load may meet a quiet bath: 100 s apart the second does where the first takes longer than that. */
static void test_a_quiet_bath_is_seen_at_once(void **state)
{
    (void)state;
    const boil_action loads[] = {plate_action(60, 1), plate_action(160, 1)};
    held_case c;
    unsigned breaks;
    boil_holding whole;
    set_up(&c);
    boil_schedule_free(&c.schedule);
    c.schedule = schedule_with(1800, loads, 2);
    c.of.limit_s = 1200;
    for (int spaced = 0; spaced < 2; spaced++) {
        c.of.spaced = spaced;
        assert_int_equal(boil_holding_by(&c.of, 22e3, BOIL_CLOSURES_GRAVE, &whole), BOIL_OK);
        assert_int_equal(boil_holding_breaks(&c.of, 22e3, BOIL_CLOSURES_GRAVE, BOIL_BREAKS_RECOVERY, &breaks), BOIL_OK);
        assert_int_equal(whole.breaks & BOIL_BREAKS_RECOVERY, spaced ? BOIL_BREAKS_RECOVERY : 0);
        assert_int_equal(breaks & BOIL_BREAKS_RECOVERY, whole.breaks & BOIL_BREAKS_RECOVERY);
    }
    boil_schedule_free(&c.schedule);
}

static void test_any_law_breaks_it_whichever_is_asked_first(void **state)
{
    (void)state;
    held_case c;
    set_up(&c);
    for (size_t i = 0; i < HEATS; i++) {
        boil_holding all, one;
        assert_int_equal(boil_holding_by_all(&c.of, heats_W[i], &all), BOIL_OK);
        for (size_t law = 0; law < BOIL_HOLDING_LAWS; law++) {
            size_t first = law;
            bool breaks;
            assert_int_equal(boil_holding_breaks_by_any(&c.of, heats_W[i], BOIL_HOLDING_LAWS, ~0u, &first, &breaks), BOIL_OK);
            assert_int_equal(breaks, all.breaks != 0);
            assert_int_equal(boil_holding_by(&c.of, heats_W[i], boil_holding_laws[first], &one), BOIL_OK);
            if (breaks)
                assert_true(one.breaks != 0);
            else
                assert_int_equal(first, law);
        }
    }
    boil_schedule_free(&c.schedule);
}

/* The freeboards in an order in which what the first search asked tells the second; each answer leaves it and 1 % more does not. */
static void test_most_heat_that_leaves_a_freeboard(void **state)
{
    (void)state;
    static const double freeboards_m[] = {0, 0.02, 0.04, 0.01};
    held_case c;
    set_up(&c);
    for (size_t law = 0; law < BOIL_HOLDING_LAWS; law++) {
        boil_leaving l = {.of = &c.of, .laws = boil_holding_laws[law]};
        for (size_t i = 0; i < sizeof freeboards_m / sizeof freeboards_m[0]; i++) {
            double heat_W;
            boil_holding at, over;
            assert_int_equal(boil_leaving_most(&l, 25e3, 2e6, freeboards_m[i], &heat_W), BOIL_OK);
            assert_int_equal(boil_holding_by(&c.of, heat_W, l.laws, &at), BOIL_OK);
            assert_int_equal(boil_holding_by(&c.of, 1.0102 * heat_W, l.laws, &over), BOIL_OK);
            assert_true(at.freeboard_min_m >= freeboards_m[i] && over.freeboard_min_m < freeboards_m[i]);
        }
        print_message("%zu runs\n", l.count);
        assert_in_range(l.count, 1, 24); /* a search that learns nothing asks 48 */
    }
    boil_schedule_free(&c.schedule);
}

static void test_no_heat_uses_up_a_deep_tank_and_any_a_full_one(void **state)
{
    (void)state;
    held_case c;
    double heat_W;
    set_up(&c);
    boil_leaving l = {.of = &c.of, .laws = BOIL_CLOSURES_LIKELY}, full = l;
    assert_int_equal(boil_leaving_most(&l, 25e3, 30e3, 0, &heat_W), BOIL_NO_ROOT);
    assert_int_equal(boil_leaving_most(&full, 25e3, 30e3, 0.5, &heat_W), BOIL_OK);
    assert_true(heat_W == 0);
    boil_schedule_free(&c.schedule);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_a_run_cut_short_breaks_what_the_whole_one_does),
        cmocka_unit_test(test_a_quiet_bath_is_seen_at_once),
        cmocka_unit_test(test_any_law_breaks_it_whichever_is_asked_first),
        cmocka_unit_test(test_most_heat_that_leaves_a_freeboard),
        cmocka_unit_test(test_no_heat_uses_up_a_deep_tank_and_any_a_full_one),
    };
    gsl_set_error_handler_off();
    return cmocka_run_group_tests_name("holding", tests, NULL, NULL);
}
