/* unit/model/findings/test_judged_boil.c -- a boil that does not come or stays away, and loads, in histories written down by hand: at
   each side of every limit that decides a word. The limits are common practice or judgement, no source (model/case/grading.h); that the
   words follow them is what is asserted. */
#include "support/hand_made.h"

#include "equipment/tank.h"

/* Without anything due in it a cold bath is nobody's danger. */
static void a_bath_that_never_boils_is_graver_with_something_due(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    hand_made_spell(&m, 0, UNKNOWN, BOIL_QUIET_START);
    m.needed.heat_W = 68e3; /* of 34 kW */
    boil_finding f = hand_made_find(&m, "never-boils");
    assert_int_equal(f.severity, BOIL_SEVERITY_WARNING);
    assert_close(f.measure, 0.5, 1e-9, 0);
    assert_close(f.value, 34e3, 1e-9, 0);
    assert_true(f.limit == 68e3 && f.needed_W == 68e3 && f.time_s == 0);
    for (int i = 0; i < OF_EACH; i++)
        m.actions[i].kind = BOIL_ACTION_STIR;
    assert_grade(&m, "never-boils", BOIL_SEVERITY_CAUTION);
    m.actions[2].kind = BOIL_ACTION_WATER;
    assert_grade(&m, "never-boils", BOIL_SEVERITY_WARNING);
    m.needed.heat_W = 34e3; /* as much as it has: it does not boil all the same */
    assert_close(hand_made_find(&m, "never-boils").measure, 1e-3, 1e-9, 0);
    m.needed.heat_W = UNKNOWN;
    assert_grade(&m, "never-boils", BOIL_SEVERITY_WARNING);
    m.quiet[0].end_s = 3000;
    assert_no_find(&m, "never-boils");
    m.quiet[0].end_s = UNKNOWN;
    m.history.end = BOIL_RUN_OUT_OF_RANGE;
    m.history.stop_quantity = "level";
    assert_no_find(&m, "never-boils");
    m.history.end = BOIL_RUN_DONE;
    m.history.end_s = 0;
    assert_no_find(&m, "never-boils");
}

static void a_boil_that_does_not_return_is_told_by_how_long(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    hand_made_spell(&m, 100, 200, BOIL_QUIET_START);
    hand_made_spell(&m, 3540, UNKNOWN, BOIL_QUIET_WATER);
    boil_finding f = hand_made_find(&m, "boil-never-returns");
    assert_int_equal(f.severity, BOIL_SEVERITY_NOTICE);
    assert_true(f.value == 60 && f.limit == 120 && f.time_s == 3540 && f.worst_s == 3600 && f.outside_s == 60);
    assert_non_null(strstr(f.advice, "thinner stream"));
    m.history.loads_count = 1; /* it hangs in it */
    assert_grade(&m, "boil-never-returns", BOIL_SEVERITY_CAUTION);
    m.loads[0].lifted_s = 900;
    assert_grade(&m, "boil-never-returns", BOIL_SEVERITY_NOTICE);
    m.quiet[1].start_s = 3600 - 120 - 0.9; /* within a second of the limit */
    assert_grade(&m, "boil-never-returns", BOIL_SEVERITY_NOTICE);
    m.quiet[1].start_s = 3600 - 120 - 1.1;
    assert_grade(&m, "boil-never-returns", BOIL_SEVERITY_CAUTION);
    m.quiet[1].cause = BOIL_QUIET_HEAT; /* somebody's wish */
    assert_no_find(&m, "boil-never-returns");
    m.quiet[1].cause = BOIL_QUIET_START;
    assert_no_find(&m, "boil-never-returns");
    m.quiet[1].cause = BOIL_QUIET_LOAD;
    assert_grade(&m, "boil-never-returns", BOIL_SEVERITY_CAUTION);
    assert_no_find(&m, "never-boils");
    m.quiet[1].end_s = 3590;
    assert_no_find(&m, "boil-never-returns");
}

/* What stopped it has its own advice. */
static void a_lost_boil_is_told_by_how_long_and_by_what(void **state)
{
    (void)state;
    const struct {
        boil_quiet_cause cause;
        const char *advice;
    } causes[] = {{BOIL_QUIET_LOAD, "Load less at a time"},
                  {BOIL_QUIET_WATER, "thinner stream"},
                  {BOIL_QUIET_LIQUID, "smaller portions"},
                  {BOIL_QUIET_SALTS, "many times more slowly"},
                  {BOIL_QUIET_LOSSES, "a lid"}};
    const struct {
        double lasted_s;
        boil_severity severity;
    } spells[] = {{120.9, BOIL_SEVERITIES},       {121.1, BOIL_SEVERITY_NOTICE},   {360.9, BOIL_SEVERITY_NOTICE},
                  {361.1, BOIL_SEVERITY_CAUTION}, {1800.9, BOIL_SEVERITY_CAUTION}, {1801.1, BOIL_SEVERITY_WARNING}};
    hand_made m;
    hand_made_begin(&m);
    hand_made_spell(&m, 300, 300, BOIL_QUIET_LOAD);
    for (size_t i = 0; i < sizeof spells / sizeof spells[0]; i++) {
        m.quiet[0].end_s = 300 + spells[i].lasted_s;
        assert_grade(&m, "boil-lost-long", spells[i].severity);
    }
    for (size_t i = 0; i < sizeof causes / sizeof causes[0]; i++) {
        m.quiet[0].cause = causes[i].cause;
        boil_finding f = hand_made_find(&m, "boil-lost-long");
        assert_non_null(strstr(f.advice, causes[i].advice));
        assert_true(f.limit == 120 && f.time_s == 300);
        assert_close(f.outside_s, 1681.1, 1e-9, 0);
        assert_close(f.worst_s, 2101.1, 1e-9, 0);
    }
    m.quiet[0].cause = BOIL_QUIET_START;
    assert_no_find(&m, "boil-lost-long");
    m.quiet[0].cause = BOIL_QUIET_HEAT;
    assert_no_find(&m, "boil-lost-long");
    m.quiet[0].cause = BOIL_QUIET_LOAD;
    m.quiet[0].end_s = UNKNOWN;
    assert_close(hand_made_find(&m, "boil-lost-long").value, 3300, 1e-12, 0);
}

/* Of temperature and strength a warning, of anything else a notice; one that failed is not resolved. */
static void a_run_that_ends_early_says_why(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    m.history.end = BOIL_RUN_OUT_OF_RANGE;
    m.history.end_s = 1234;
    m.history.stop_quantity = "bath temperature";
    boil_finding f = hand_made_find(&m, "left-known-range");
    assert_int_equal(f.severity, BOIL_SEVERITY_WARNING);
    assert_true(f.time_s == 1234 && isnan(f.value));
    m.history.stop_quantity = "sodium hydroxide strength";
    assert_grade(&m, "left-known-range", BOIL_SEVERITY_WARNING);
    m.history.stop_quantity = "level";
    assert_grade(&m, "left-known-range", BOIL_SEVERITY_NOTICE);
    assert_no_find(&m, "not-resolved"); /* it says so itself */
    f = hand_made_possible(&m, BOIL_CLOSURES_GRAVE, "not-resolved");
    assert_true(f.severity == BOIL_SEVERITY_WARNING && f.time_s == 1234);
    m.history.end = BOIL_RUN_FAILED;
    assert_grade(&m, "not-resolved", BOIL_SEVERITY_WARNING);
    assert_no_find(&m, "left-known-range");
    m.history.end = BOIL_RUN_DONE;
    assert_no_find(&m, "not-resolved");
    assert_int_equal(hand_made_possible(&m, BOIL_CLOSURES_GRAVE, "not-resolved").severity, BOIL_SEVERITIES);
}

/* In rules of thumb: of one pound per two gallons; what goes in within a minute counts together. */
static void loads_within_a_minute_are_one(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    double rule_kg = m.plant.limits.load_per_volume_kg_m3 * boil_tank_area(&m.plant.tank) * 0.5;
    const double shares[] = {0.7, 0.5, 1.5};
    for (size_t i = 0; i < OF_EACH; i++) {
        m.actions[i].is.load.mass_kg = (shares[i] - 0.1) * rule_kg;
        m.actions[i].is.load.basket_kg = 0.1 * rule_kg;
    }
    const struct {
        double second_s, third_s, most, first_s, worst_s;
        size_t count;
    } all[] = {{159, 159.9, 2.7, 100, 100, 1},
               {159, 160, 1.5, 100, 160, 2},
               {160, 219.9, 2.0, 160, 160, 1},
               {160, 220, 1.5, 220, 220, 1},
               {100, 200, 1.5, 100, 200, 2}};
    m.history.loads_count = OF_EACH;
    m.loads[0].time_s = 100;
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++) {
        m.loads[1].time_s = all[i].second_s;
        m.loads[2].time_s = all[i].third_s;
        boil_finding f = hand_made_find(&m, "load-heavy");
        assert_close(f.measure, all[i].most, 1e-9, 0);
        assert_close(f.value, all[i].most * m.plant.limits.load_per_volume_kg_m3, 1e-9, 0);
        assert_close(f.limit, m.plant.limits.load_per_volume_kg_m3, 1e-9, 0);
        assert_true(f.time_s == all[i].first_s && f.worst_s == all[i].worst_s && f.count == all[i].count);
    }
    assert_grade(&m, "load-heavy", BOIL_SEVERITY_NOTICE);
    m.history.loads_count = 1;
    assert_no_find(&m, "load-heavy");
    m.history.loads_count = 0;
    assert_no_find(&m, "load-heavy");
}

static void tubes_are_named_by_their_mass(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    m.history.loads_count = 2;
    m.loads[1].time_s = 77;
    m.actions[1].is.load.mass_kg = 5;
    assert_no_find(&m, "tubes");
    m.actions[1].is.load.shape = BOIL_SHAPE_TUBE;
    boil_finding f = hand_made_find(&m, "tubes");
    assert_true(f.severity == BOIL_SEVERITY_CAUTION && f.value == 5 && f.time_s == 77 && f.count == 1);
}

static void a_load_before_the_boil_is_back_is_told_by_how_long(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    m.history.loads_count = 1;
    m.loads[0].time_s = 1000;
    m.loads[0].quiet_before_s = 120.9;
    assert_no_find(&m, "load-on-quiet-bath");
    m.loads[0].was_quiet = true;
    boil_finding f = hand_made_find(&m, "load-on-quiet-bath");
    assert_true(f.severity == BOIL_SEVERITY_NOTICE && f.value == 120.9 && f.time_s == 1000);
    assert_non_null(strstr(f.advice, "before the next load"));
    m.loads[0].quiet_before_s = 121.1;
    assert_grade(&m, "load-on-quiet-bath", BOIL_SEVERITY_CAUTION);
    m.loads[0].quiet_before_s = 999; /* since a second after the start: it has boiled */
    assert_non_null(strstr(hand_made_find(&m, "load-on-quiet-bath").advice, "before the next load"));
    m.loads[0].quiet_before_s = 999.1;
    assert_non_null(strstr(hand_made_find(&m, "load-on-quiet-bath").advice, "not up yet"));
}

/* By the freeboard that what it goes through would leave. */
static void a_load_through_water_is_told_by_what_it_would_leave(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    m.history.loads_count = 1;
    m.loads[0].time_s = 400;
    assert_no_find(&m, "load-through-layer");
    m.loads[0].left_m = 0.1485; /* a millimetre is the margin */
    boil_finding f = hand_made_find(&m, "load-through-layer");
    assert_true(f.severity == BOIL_SEVERITY_CAUTION && f.value == 0.1485 && f.limit == 0.15 && f.time_s == 400);
    assert_close(f.grades[BOIL_SEVERITY_WARNING].limit, 0.1, 1e-9, 0);
    m.loads[0].left_m = 0.1495;
    assert_no_find(&m, "load-through-layer");
    m.loads[0].left_m = 0.0985;
    assert_grade(&m, "load-through-layer", BOIL_SEVERITY_WARNING);
    m.loads[0].left_m = -0.1;
    assert_grade(&m, "load-through-layer", BOIL_SEVERITY_WARNING);
    m.loads[0].may_overflow = true;
    assert_grade(&m, "load-through-layer", BOIL_SEVERITY_DANGER);
    m.loads[0].left_m = UNKNOWN;
    assert_no_find(&m, "load-through-layer");
    m.loads[0].pockets_left_m = 0.09;
    assert_no_find(&m, "pockets");
    m.loads[0].pockets_kg = 1e-9;
    assert_grade(&m, "pockets", BOIL_SEVERITY_CAUTION);
}

/* More than half of those that came out, by more than a minute. */
static void loads_that_are_not_hot_are_a_caution_when_most_are(void **state)
{
    (void)state;
    const struct {
        double short_s[OF_EACH];
        size_t out;
        boil_severity severity;
    } all[] = {{{0, 0, 0}, 3, BOIL_SEVERITIES},
               {{1.1, 0, 0}, 3, BOIL_SEVERITY_NOTICE},
               {{0.9, 0, 0}, 3, BOIL_SEVERITIES},
               {{60, 60, 60}, 3, BOIL_SEVERITY_NOTICE},
               {{60.5, 60.5, 0}, 3, BOIL_SEVERITY_CAUTION},
               {{60.5, 60, 0}, 2, BOIL_SEVERITY_NOTICE},
               {{60.5, 0, 300}, 1, BOIL_SEVERITY_CAUTION}};
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++) {
        hand_made m;
        hand_made_begin(&m);
        m.history.loads_count = OF_EACH;
        for (size_t k = 0; k < OF_EACH; k++) {
            m.loads[k].short_s = all[i].short_s[k];
            m.loads[k].lifted_s = k < all[i].out ? 1000. * (double)(k + 1) : UNKNOWN;
        }
        boil_finding f = hand_made_find(&m, "load-not-hot");
        assert_int_equal(f.severity, all[i].severity);
        if (f.severity != BOIL_SEVERITIES) {
            assert_true(f.time_s == 1000 && f.value == all[i].short_s[0]);
            assert_int_equal(strstr(f.advice, "not be black") != NULL, f.severity == BOIL_SEVERITY_CAUTION);
            assert_true(f.severity != BOIL_SEVERITY_CAUTION || f.count == all[i].out - (i == 4)); /* the third was hot */
        }
    }
}

/* Beside 22.68 kg that came out cold: of less than a hundredth of it what came out hot counts for nothing. */
static void a_load_of_next_to_nothing_is_none_of_most(void **state)
{
    (void)state;
    const double hot_kg[] = {1e-3, 0.2267, 0.2269, 22.68};
    for (size_t i = 0; i < sizeof hot_kg / sizeof hot_kg[0]; i++) {
        hand_made m;
        hand_made_begin(&m);
        m.history.loads_count = 2;
        m.loads[0].lifted_s = m.loads[1].lifted_s = 1000;
        m.loads[0].short_s = 300;
        m.actions[1].is.load.mass_kg = hot_kg[i];
        assert_grade(&m, "load-not-hot", i < 2 ? BOIL_SEVERITY_CAUTION : BOIL_SEVERITY_NOTICE);
    }
}

static void the_time_at_the_boil_is_asked_for_at_the_end_too(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    m.history.loads_count = 1;
    m.loads[0].boil_short_s = 60.9;
    assert_no_find(&m, "time-at-boil-short");
    m.loads[0].boil_short_s = 61.1;
    boil_finding f = hand_made_find(&m, "time-at-boil-short");
    assert_true(f.severity == BOIL_SEVERITY_NOTICE && f.time_s == 3600 && f.value == 61.1);
    m.loads[0].lifted_s = 2000;
    assert_true(hand_made_find(&m, "time-at-boil-short").time_s == 2000);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_bath_that_never_boils_is_graver_with_something_due),
        cmocka_unit_test(a_boil_that_does_not_return_is_told_by_how_long),
        cmocka_unit_test(a_lost_boil_is_told_by_how_long_and_by_what),
        cmocka_unit_test(a_run_that_ends_early_says_why),
        cmocka_unit_test(loads_within_a_minute_are_one),
        cmocka_unit_test(tubes_are_named_by_their_mass),
        cmocka_unit_test(a_load_before_the_boil_is_back_is_told_by_how_long),
        cmocka_unit_test(a_load_through_water_is_told_by_what_it_would_leave),
        cmocka_unit_test(loads_that_are_not_hot_are_a_caution_when_most_are),
        cmocka_unit_test(a_load_of_next_to_nothing_is_none_of_most),
        cmocka_unit_test(the_time_at_the_boil_is_asked_for_at_the_end_too),
    };
    return cmocka_run_group_tests_name("judged boil and loads", tests, NULL, NULL);
}
