/* unit/model/findings/test_judged_hands.c -- what people at the tank do, in histories written down by hand: at each side of every limit
   that decides a word. The limits are common practice or judgement, no source (model/case/grading.h); that the words follow them is
   what is asserted. */
#include "support/hand_made.h"

/* While it boils, or with more than a film of water on it, a warning. */
static void a_hot_bail_is_graver_at_the_boil_and_under_water(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    m.history.takes_count = 1;
    m.takes[0].time_s = 40;
    m.takes[0].temperature_K = 338.74; /* 150 degF and the margin */
    assert_no_find(&m, "bailing-hot");
    m.takes[0].temperature_K = 338.76;
    boil_finding f = hand_made_find(&m, "bailing-hot");
    assert_true(f.severity == BOIL_SEVERITY_CAUTION && f.value == 338.76 && f.time_s == 40);
    assert_close(f.limit, 338.7, 1e-12, 0);
    m.takes[0].layer_kg = 0.0227;
    assert_grade(&m, "bailing-hot", BOIL_SEVERITY_CAUTION);
    m.takes[0].layer_kg = 0.0228;
    assert_grade(&m, "bailing-hot", BOIL_SEVERITY_WARNING);
    m.takes[0].layer_kg = 0;
    m.takes[0].was_boiling = true;
    assert_grade(&m, "bailing-hot", BOIL_SEVERITY_WARNING);
}

/* In steps of the gauge, or of a millimetre and a twentieth of a kelvin where it has none. */
static void a_missed_goal_is_told_in_steps_of_the_gauge(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    m.history.takes_count = m.history.additions_count = 1;
    m.plant.by_hand.mark_step_m = 0.003;
    m.plant.by_hand.thermometer_step_K = 0.5;
    m.takes[0].time_s = 500;
    m.takes[0].over_s = 20;
    m.additions[0].time_s = 700;
    m.additions[0].over_s = 30;
    assert_no_find(&m, "goal-missed");
    const struct {
        double of_take_m, of_addition_m, of_addition_K, steps, time_s;
    } all[] = {{0.0033, UNKNOWN, UNKNOWN, 1.1, 520}, {-0.0033, UNKNOWN, UNKNOWN, 1.1, 520}, {0.003, UNKNOWN, UNKNOWN, 0, 0},
               {UNKNOWN, 0.006, UNKNOWN, 2, 730},    {UNKNOWN, 0.006, 5, 2, 730},           {UNKNOWN, UNKNOWN, -0.6, 1.2, 730},
               {UNKNOWN, UNKNOWN, 0.5, 0, 0}};
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++) {
        m.takes[0].missed_by_m = all[i].of_take_m;
        m.additions[0].missed_by_m = all[i].of_addition_m;
        m.additions[0].missed_by_K = all[i].of_addition_K;
        boil_finding f = hand_made_find(&m, "goal-missed");
        assert_int_equal(f.severity, all[i].steps > 0 ? BOIL_SEVERITY_NOTICE : BOIL_SEVERITIES);
        assert_close(f.severity == BOIL_SEVERITIES ? 0 : f.value, all[i].steps, 1e-9, 0);
        assert_close(f.severity == BOIL_SEVERITIES ? 0 : f.time_s, all[i].time_s, 1e-9, 0);
    }
    m.plant.by_hand.mark_step_m = m.plant.by_hand.thermometer_step_K = 0;
    m.additions[0].missed_by_K = 0.1;
    assert_close(hand_made_find(&m, "goal-missed").value, 2, 1e-9, 0);
    m.additions[0].missed_by_m = 0.003;
    assert_close(hand_made_find(&m, "goal-missed").value, 3, 1e-9, 0);
}

static void rest(hand_made *m, double from_s, double to_s)
{
    m->schedule.breaks[m->schedule.breaks_count++] = (boil_break){from_s, to_s};
}

/* What ends as the break begins, or begins as it ends, is seen by somebody; what begins as the break does is not. */
static void what_is_poured_in_a_break_has_nobody_by(void **state)
{
    (void)state;
    const struct {
        double time_s, over_s;
        bool seen;
    } all[] = {{1000, 0, false}, {990, 10, true},   {990, 10.1, false}, {1000, 10, false}, {1299, 10, false},
               {1300, 10, true}, {900, 900, false}, {100, 50, true},    {1400, 50, true},  {1150, 0, false}};
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++) {
        hand_made m;
        hand_made_begin(&m);
        rest(&m, 2000, 2100);
        rest(&m, 1000, 1300);
        m.history.additions_count = 1;
        m.additions[0].time_s = all[i].time_s;
        m.additions[0].over_s = all[i].over_s;
        boil_finding f = hand_made_find(&m, "unattended");
        assert_int_equal(f.severity, all[i].seen ? BOIL_SEVERITIES : BOIL_SEVERITY_CAUTION);
        assert_true(all[i].seen || f.time_s == all[i].time_s);
    }
}

static void a_load_that_comes_out_in_a_break_is_a_notice(void **state)
{
    (void)state;
    const double at_s[] = {999.9, 1000, 1299.9, 1300, UNKNOWN};
    for (int i = 0; i < 5; i++) {
        hand_made m;
        hand_made_begin(&m);
        rest(&m, 1000, 1300);
        m.history.loads_count = 1;
        m.loads[0].lifted_s = at_s[i];
        assert_grade(&m, "unattended", i == 1 || i == 2 ? BOIL_SEVERITY_NOTICE : BOIL_SEVERITIES);
    }
}

/* What of the quiet lies in the break, in recovery limits; and one that has not boiled yet is expected to be. */
static void a_boil_lost_in_a_break_is_told_by_what_lies_in_it(void **state)
{
    (void)state;
    const struct {
        double from_s, to_s, lasted_s, first_s, worst_s;
        boil_severity severity;
    } all[] = {{900, 1100, 100, 1000, 1100, BOIL_SEVERITY_NOTICE},
               {1200, 1400, 100, 1200, 1300, BOIL_SEVERITY_NOTICE},
               {900, 1121.1, 121.1, 1000, 1121.1, BOIL_SEVERITY_CAUTION},
               {900, 1120.9, 120.9, 1000, 1120.9, BOIL_SEVERITY_NOTICE},
               {900, UNKNOWN, 300, 1000, 1300, BOIL_SEVERITY_CAUTION},
               {900, 1000, 0, 0, 0, BOIL_SEVERITIES},
               {1300, 1400, 0, 0, 0, BOIL_SEVERITIES},
               {900, 1001.1, 1.1, 1000, 1001.1, BOIL_SEVERITY_NOTICE}};
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++) {
        hand_made m;
        hand_made_begin(&m);
        rest(&m, 1000, 1300);
        m.history.quiet_count = 1;
        m.quiet[0].start_s = all[i].from_s;
        m.quiet[0].end_s = all[i].to_s;
        m.quiet[0].cause = BOIL_QUIET_HEAT;
        boil_finding f = hand_made_find(&m, "quiet-in-break");
        assert_int_equal(f.severity, all[i].severity);
        if (f.severity == BOIL_SEVERITIES)
            continue;
        assert_close(f.value, all[i].lasted_s, 1e-9, 0);
        assert_true(f.time_s == all[i].first_s && f.worst_s == all[i].worst_s && isnan(f.limit));
        assert_close(f.grades[BOIL_SEVERITY_CAUTION].limit, 120, 1e-9, 0);
        m.quiet[0].cause = BOIL_QUIET_START;
        assert_no_find(&m, "quiet-in-break");
    }
}

/* The end of the run ends a spell that has none. */
static void a_break_after_the_run_has_no_quiet(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    rest(&m, 3550, 4000);
    m.history.quiet_count = 1;
    m.quiet[0].start_s = 3000;
    m.quiet[0].end_s = UNKNOWN;
    assert_close(hand_made_find(&m, "quiet-in-break").value, 50, 1e-9, 0);
}

/* Stated, or the lowest that is free; the last moment of its lifting counts as out. */
static void a_place_is_free_once_its_load_is_out(void **state)
{
    (void)state;
    const struct {
        int positions, first, second, third;
        double second_s, third_s;
        size_t taken;
    } all[] = {{0, 0, 0, 0, 100, 100, 0}, {1, 0, 0, 0, 510, 700, 1}, {1, 0, 0, 0, 509, 700, 1}, {1, 0, 0, 0, 510, 1010, 0},
               {2, 0, 0, 0, 200, 300, 1}, {3, 0, 0, 0, 200, 300, 0}, {3, 3, 3, 3, 200, 300, 2}, {3, 2, 0, 1, 200, 300, 1},
               {3, 1, 0, 3, 200, 300, 0}, {2, 2, 0, 0, 200, 511, 0}, {2, 3, 0, 0, 200, 300, 1}, {3, 1, 1, 3, 200, 300, 1}};
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++) {
        hand_made m;
        hand_made_begin(&m);
        m.plant.tank.positions = all[i].positions;
        m.history.loads_count = OF_EACH;
        const int places[] = {all[i].first, all[i].second, all[i].third};
        const double in_s[] = {100, all[i].second_s, all[i].third_s}, out_s[] = {500, 1000, UNKNOWN};
        for (int k = 0; k < OF_EACH; k++) {
            m.actions[k].position = places[k];
            m.actions[k].is.load.lowering_s = 10;
            m.loads[k].time_s = in_s[k];
            m.loads[k].lifted_s = out_s[k];
        }
        boil_finding f = hand_made_find(&m, "place-taken");
        assert_int_equal(f.severity, all[i].taken > 0 ? BOIL_SEVERITY_CAUTION : BOIL_SEVERITIES);
        assert_int_equal(f.count, all[i].taken);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_hot_bail_is_graver_at_the_boil_and_under_water),
        cmocka_unit_test(a_missed_goal_is_told_in_steps_of_the_gauge),
        cmocka_unit_test(what_is_poured_in_a_break_has_nobody_by),
        cmocka_unit_test(a_load_that_comes_out_in_a_break_is_a_notice),
        cmocka_unit_test(a_boil_lost_in_a_break_is_told_by_what_lies_in_it),
        cmocka_unit_test(a_break_after_the_run_has_no_quiet),
        cmocka_unit_test(a_place_is_free_once_its_load_is_out),
    };
    return cmocka_run_group_tests_name("judged hands", tests, NULL, NULL);
}
