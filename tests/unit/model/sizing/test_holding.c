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
    boil_simulation *own;
} held_case;

static void set_up(held_case *c)
{
    const boil_action loads[] = {plate_action(60, 1), plate_action(900, 1.2)};
    c->plant = open_plant(1);
    c->plant.tank.depth_m = 0.6;
    c->plant.limits.freeboard_m = 0.04;
    c->schedule = schedule_with(1800, loads, 2);
    c->of = (boil_holding_case){&c->plant, &c->schedule, boil_run_options_default(), 120, false, &c->own};
    c->own = NULL;
}

static const double heats_W[] = {22e3, 31e3, 40e3, 60e3, 90e3};
enum { HEATS = sizeof heats_W / sizeof heats_W[0] };

/* A history that holds, and what it is told for each thing that is not well; just at a limit it is. */
static boil_history made_up(boil_load_result loads[2], const boil_limits *l)
{
    loads[0] = (boil_load_result){.recovery_s = 120};
    loads[1] = (boil_load_result){.recovery_s = 0};
    boil_history h = {.end = BOIL_RUN_DONE, .loads = loads, .loads_count = 2};
    h.summary.boiling_point_start_K = (l->boiling_point_low_K + l->boiling_point_high_K) / 2;
    h.summary.temperature_min_K.value = l->boiling_point_low_K;
    h.summary.temperature_max_K.value = l->boiling_point_high_K;
    h.summary.freeboard_min_m.value = l->freeboard_m;
    return h;
}

static void test_what_breaks_is_told(void **state)
{
    (void)state;
    held_case c;
    set_up(&c);
    boil_load_result loads[2];
    const boil_limits *l = &c.plant.limits;
    boil_history h = made_up(loads, l);
    assert_int_equal(boil_holding_told(&c.of, &h).breaks, 0);
    loads[1].was_quiet = true;
    assert_int_equal(boil_holding_told(&c.of, &h).breaks, 0);
    c.of.spaced = true;
    assert_int_equal(boil_holding_told(&c.of, &h).breaks, BOIL_BREAKS_RECOVERY);
    c.of.spaced = false;
    loads[1].recovery_s = 120.01;
    assert_int_equal(boil_holding_told(&c.of, &h).breaks, BOIL_BREAKS_RECOVERY);
    loads[1].recovery_s = (double)NAN;
    assert_int_equal(boil_holding_told(&c.of, &h).breaks, BOIL_BREAKS_RECOVERY);
    assert_true(isnan(boil_holding_told(&c.of, &h).slowest_s));
    h = made_up(loads, l);
    h.summary.freeboard_min_m.value -= 1e-6;
    assert_int_equal(boil_holding_told(&c.of, &h).breaks, BOIL_BREAKS_FREEBOARD);
    h = made_up(loads, l);
    h.end = BOIL_RUN_FULL;
    assert_int_equal(boil_holding_told(&c.of, &h).breaks, BOIL_BREAKS_RECOVERY | BOIL_BREAKS_FREEBOARD);
    h.end = BOIL_RUN_FAILED;
    assert_int_equal(boil_holding_told(&c.of, &h).breaks, BOIL_BREAKS_RECOVERY | BOIL_BREAKS_KNOWN);
    boil_simulation_free(c.own);
    boil_schedule_free(&c.schedule);
}

/* Its band, or, of a bath that was charged at its end or beyond, 3 K from where it began. */
static void test_a_bath_is_held_in_its_band(void **state)
{
    (void)state;
    held_case c;
    set_up(&c);
    boil_load_result loads[2];
    const boil_limits *l = &c.plant.limits;
    boil_history h = made_up(loads, l);
    h.summary.temperature_min_K.value -= 1e-6;
    assert_int_equal(boil_holding_told(&c.of, &h).breaks, BOIL_BREAKS_WEAK);
    h.summary.boiling_point_start_K = l->boiling_point_low_K - 1;
    h.summary.temperature_min_K.value = l->boiling_point_low_K - 4;
    assert_int_equal(boil_holding_told(&c.of, &h).breaks, 0);
    h.summary.temperature_min_K.value -= 1e-6;
    assert_int_equal(boil_holding_told(&c.of, &h).breaks, BOIL_BREAKS_WEAK);
    h = made_up(loads, l);
    h.summary.temperature_max_K.value += 1e-6;
    assert_int_equal(boil_holding_told(&c.of, &h).breaks, BOIL_BREAKS_STRONG);
    h.summary.boiling_point_start_K = l->boiling_point_high_K + 1;
    h.summary.temperature_max_K.value = l->boiling_point_high_K + 4;
    assert_int_equal(boil_holding_told(&c.of, &h).breaks, 0);
    h.summary.temperature_max_K.value += 1e-6;
    assert_int_equal(boil_holding_told(&c.of, &h).breaks, BOIL_BREAKS_STRONG);
    boil_simulation_free(c.own);
    boil_schedule_free(&c.schedule);
}

/* The valve takes over what is poured by hand; what another act waits for stays, as a drop. A plant with a control of its own keeps
   that, and its pours. */
static void test_pours_are_left_to_the_valve(void **state)
{
    (void)state;
    held_case c;
    boil_schedule poured, held;
    boil_plant trial;
    set_up(&c);
    boil_action acts[] = {{.time_s = 30, .kind = BOIL_ACTION_WATER, .is.water = {5, 60, CELSIUS(20)}},
                          {.time_s = 40, .kind = BOIL_ACTION_WATER, .is.water = {6, 60, CELSIUS(20)}},
                          plate_action(60, 1)};
    poured = schedule_with(1800, acts, 3);
    poured.actions[2].wait = (boil_wait){.follows = true, .after = poured.actions[1].order};
    assert_int_equal(boil_holding_schedule(&c.plant, &poured, &held), BOIL_OK);
    assert_int_equal(held.count, 2);
    assert_true(held.actions[0].kind == BOIL_ACTION_WATER && held.actions[0].order == poured.actions[1].order);
    assert_true(held.actions[0].is.water.mass_kg > 0 && held.actions[0].is.water.mass_kg < 1e-3);
    assert_int_equal(held.actions[1].kind, BOIL_ACTION_LOAD);
    boil_schedule_free(&held);
    assert_int_equal(boil_holding_plant(&c.plant, 0, &trial), BOIL_OK);
    assert_int_equal(trial.control.mode, BOIL_WATER_CONTROL_ON_OFF);
    assert_true(trial.heater.input_W == c.plant.heater.input_W && trial.control.rate_kg_s > 0);
    assert_int_equal(boil_holding_plant(&c.plant, 31e3, &trial), BOIL_OK);
    assert_close(trial.heater.input_W * trial.heater.efficiency, 31e3, 1e-12, 0);
    c.plant.control.mode = BOIL_WATER_CONTROL_PROPORTIONED;
    assert_int_equal(boil_holding_schedule(&c.plant, &poured, &held), BOIL_OK);
    assert_true(held.count == 3 && held.actions[0].is.water.mass_kg == 5);
    assert_int_equal(boil_holding_plant(&c.plant, 0, &trial), BOIL_OK);
    assert_int_equal(trial.control.mode, BOIL_WATER_CONTROL_PROPORTIONED);
    boil_schedule_free(&held);
    boil_schedule_free(&poured);
    boil_simulation_free(c.own);
    boil_schedule_free(&c.schedule);
}

static void test_a_run_cut_short_breaks_what_the_whole_one_does(void **state)
{
    (void)state;
    static const unsigned heeded[] = {BOIL_BREAKS_SLOW, BOIL_BREAKS_FREEBOARD, BOIL_BREAKS_STRONG | BOIL_BREAKS_KNOWN, ~0u};
    unsigned seen = 0, held = 0, cut = 0;
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
                cut += breaks != whole.breaks;
                if (!(whole.breaks & heeded[k]))
                    assert_int_equal(breaks, whole.breaks);
            }
        }
    assert_true(held > 0 && cut > 0 && seen & BOIL_BREAKS_RECOVERY && seen & BOIL_BREAKS_FREEBOARD);
    boil_simulation_free(c.own);
    boil_schedule_free(&c.schedule);
}

/* A run that ends with the boil away, and for less than the limit, has not shown that it comes back. */
static void test_a_boil_that_is_not_back_at_the_end_is_late(void **state)
{
    (void)state;
    const boil_action load = plate_action(60, 1);
    held_case c;
    unsigned breaks;
    set_up(&c);
    boil_simulation_free(c.own);
    boil_schedule_free(&c.schedule);
    c.schedule = schedule_with(120, &load, 1);
    boil_history h;
    assert_int_equal(boil_holding_run(&c.of, 22e3, BOIL_CLOSURES_GRAVE, &h), BOIL_OK);
    assert_true(h.loads_count == 1 && !isnan(h.loads[0].boil_lost_s) && isnan(h.loads[0].recovery_s));
    assert_true(120 - h.loads[0].boil_lost_s < c.of.limit_s);
    assert_int_equal(boil_holding_breaks(&c.of, 22e3, BOIL_CLOSURES_GRAVE, ~0u, &breaks), BOIL_OK);
    assert_int_equal(breaks, BOIL_BREAKS_RECOVERY);
    boil_history_free(&h);
    boil_simulation_free(c.own);
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
    boil_simulation_free(c.own);
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
    boil_simulation_free(c.own);
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
    boil_simulation_free(c.own);
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
        assert_in_range(l.count, 1, 20); /* of halving alone 23, of a search that learns nothing 48 */
    }
    boil_simulation_free(c.own);
    boil_schedule_free(&c.schedule);
}

/* Of a search that has filled its list the next answer is right all the same, and nothing is written beyond. */
static void test_a_full_list_is_asked_again(void **state)
{
    (void)state;
    held_case c;
    boil_left at;
    boil_holding whole;
    set_up(&c);
    boil_leaving l = {.of = &c.of, .laws = BOIL_CLOSURES_LIKELY, .count = BOIL_LEAVING_MOST};
    for (size_t i = 0; i < BOIL_LEAVING_MOST; i++)
        l.left[i] = (boil_left){.heat_W = 1 + (double)i, .freeboard_m = 0.5};
    assert_int_equal(boil_holding_by(&c.of, 31e3, l.laws, &whole), BOIL_OK);
    assert_int_equal(boil_leaving_at(&l, 31e3, &at), BOIL_OK);
    assert_true(at.heat_W == 31e3 && at.freeboard_m == whole.freeboard_min_m && !at.beyond);
    assert_int_equal(l.count, BOIL_LEAVING_MOST);
    assert_int_equal(boil_leaving_at(&l, BOIL_LEAVING_MOST, &at), BOIL_OK);
    assert_true(at.freeboard_m == 0.5); /* known, not asked */
    boil_simulation_free(c.own);
    boil_schedule_free(&c.schedule);
}

/* A load is watched while it hangs, half an hour at most, and is lowered and lifted, or until its boil is due; and a minute longer. */
static void test_a_load_is_watched_for_half_an_hour_at_most(void **state)
{
    (void)state;
    static const double immersed_s[] = {600, 1790, 1800, 1810, 86400}, watched_s[] = {680, 1870, 1880, 1880, 1880};
    for (size_t i = 0; i < sizeof immersed_s / sizeof immersed_s[0]; i++) {
        boil_load l = boil_load_default();
        l.immersed_s = immersed_s[i];
        l.lowering_s = 10;
        assert_close(boil_holding_watched(&l, 120), watched_s[i], 1e-12, 0);
        assert_close(boil_holding_watched(&l, 2000), 2060, 1e-12, 0);
    }
}

/* Until the heaviest load, the first of two alike, is out or its boil was due, and a minute longer: what is done until then, that
   moment included. */
static void test_the_beginning_ends_where_the_heaviest_was_watched(void **state)
{
    (void)state;
    static const struct {
        double masses[3], limit_s, ends_s, duration_s;
        size_t count;
    } cases[] = {{{1, 3, 2}, 120, 1000 + 600 + 20 + 60, 9000, 2},
                 {{1, 2, 2}, 120, 1000 + 600 + 20 + 60, 9000, 2},
                 {{3, 1, 2}, 120, 60 + 600 + 20 + 60, 9000, 1},
                 {{3, 1, 2}, 880, 60 + 880 + 60, 9000, 2},
                 {{1, 2, 3}, 120, 2600, 2600, 3},
                 {{1, 2, 3}, 120, 2000 + 680, 9000, 3},
                 {{3, 1, 2}, 120, 30, 30, 0}};
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        boil_action loads[3];
        boil_schedule brief;
        for (int k = 0; k < 3; k++) {
            loads[k] = plate_action((double[]){60, 1000, 2000}[k], cases[i].masses[k]);
            loads[k].is.load.immersed_s = 600;
            loads[k].is.load.lowering_s = 10;
        }
        boil_schedule whole = schedule_with(cases[i].duration_s, loads, 3);
        assert_int_equal(boil_holding_brief(&whole, cases[i].limit_s, &brief), BOIL_OK);
        assert_close(brief.duration_s, cases[i].ends_s, 1e-12, 0);
        assert_int_equal(brief.count, cases[i].count);
        boil_schedule_free(&brief);
        boil_schedule_free(&whole);
    }
}

/* Where the heaviest load waits for something nobody knows when it goes in: all of the schedule is the beginning. */
static void test_a_load_that_waits_has_no_beginning(void **state)
{
    (void)state;
    for (int how = 0; how < 2; how++) {
        boil_action loads[] = {plate_action(60, 1), plate_action(600, 3), plate_action(5000, 2)};
        boil_schedule brief, whole;
        loads[1].wait.state = how == 0 ? BOIL_WAIT_BOILING : BOIL_WAIT_NONE;
        loads[1].wait.follows = how == 1;
        whole = schedule_with(9000, loads, 3);
        assert_int_equal(boil_holding_brief(&whole, 120, &brief), BOIL_OK);
        assert_true(brief.count == 3 && brief.duration_s == 9000);
        boil_schedule_free(&brief);
        boil_schedule_free(&whole);
    }
}

/* A run that left what is known with its freeboard still there says nothing of how much more heat would leave. */
static void test_what_is_not_known_is_no_answer(void **state)
{
    (void)state;
    held_case c;
    double heat_W;
    set_up(&c);
    boil_leaving l = {.of = &c.of, .laws = BOIL_CLOSURES_LIKELY, .count = 1, .left = {{25e3, 0.5, true}}}, over = l;
    assert_int_equal(boil_leaving_most(&l, 25e3, 2e6, 0, &heat_W), BOIL_OUT_OF_RANGE);
    over.left[0].freeboard_m = -0.01; /* over the rim before it did */
    assert_int_equal(boil_leaving_most(&over, 25e3, 2e6, 0, &heat_W), BOIL_OK);
    assert_true(heat_W == 0);
    boil_simulation_free(c.own);
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
    boil_simulation_free(c.own);
    boil_schedule_free(&c.schedule);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_what_breaks_is_told),
        cmocka_unit_test(test_a_bath_is_held_in_its_band),
        cmocka_unit_test(test_pours_are_left_to_the_valve),
        cmocka_unit_test(test_a_run_cut_short_breaks_what_the_whole_one_does),
        cmocka_unit_test(test_a_boil_that_is_not_back_at_the_end_is_late),
        cmocka_unit_test(test_a_quiet_bath_is_seen_at_once),
        cmocka_unit_test(test_any_law_breaks_it_whichever_is_asked_first),
        cmocka_unit_test(test_most_heat_that_leaves_a_freeboard),
        cmocka_unit_test(test_a_full_list_is_asked_again),
        cmocka_unit_test(test_a_load_is_watched_for_half_an_hour_at_most),
        cmocka_unit_test(test_the_beginning_ends_where_the_heaviest_was_watched),
        cmocka_unit_test(test_a_load_that_waits_has_no_beginning),
        cmocka_unit_test(test_what_is_not_known_is_no_answer),
        cmocka_unit_test(test_no_heat_uses_up_a_deep_tank_and_any_a_full_one),
    };
    gsl_set_error_handler_off();
    return cmocka_run_group_tests_name("holding", tests, NULL, NULL);
}
