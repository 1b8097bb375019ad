/* unit/model/findings/test_judged_steam.c -- water afloat, surges, valve and thermostat in histories written down by hand: at each side
   of every limit that decides a word. The limits are common practice or judgement, no source (model/case/grading.h); that the words
   follow them is what is asserted. */
#include "support/hand_made.h"

/* Over the rim only where the surge can get there, and then from that moment. */
static void a_layer_is_told_by_what_it_would_leave(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    m.history.quiet_count = 2;
    boil_watched *w = &m.history.summary.watched[BOIL_WATCH_LAYER];
    for (int i = 0; i < BOIL_SEVERITIES; i++)
        w->from_s[i] = 100 * (i + 1);
    hand_made_watch(&m, BOIL_WATCH_LAYER, 0.7, 350);
    boil_finding f = hand_made_find(&m, "water-layer");
    assert_true(f.severity == BOIL_SEVERITY_WARNING && f.time_s == 300 && f.worst_s == 350);
    assert_close(f.value, 0.3 * 0.15, 1e-9, 0);
    assert_close(f.limit, 0.15, 1e-9, 0);
    hand_made_watch(&m, BOIL_WATCH_LAYER, 1.5, 350);
    assert_grade(&m, "water-layer", BOIL_SEVERITY_WARNING);
    m.quiet[0].may_overflow_s = 340;
    m.quiet[1].may_overflow_s = 345;
    f = hand_made_find(&m, "water-layer");
    assert_true(f.severity == BOIL_SEVERITY_DANGER && f.time_s == 340);
    hand_made_watch(&m, BOIL_WATCH_LAYER, 0.2, 350); /* another moment was worse for the surge */
    assert_grade(&m, "water-layer", BOIL_SEVERITY_DANGER);
}

static void water_on_a_bath_not_too_warm_to_bail_comes_off_first(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    hand_made_watch(&m, BOIL_WATCH_LAYER, 0.7, 0);
    m.plant.heater.dial = 0;
    const double at_K[] = {338, 338.7, 339.5, 338}, afloat_kg[] = {5, 5, 5, 0}; /* 150 degF: case/grading.c */
    for (int i = 0; i < 4; i++) {
        m.plant.charge.temperature_K = at_K[i];
        m.plant.afloat = (boil_water_afloat){afloat_kg[i], 293};
        boil_finding f = hand_made_find(&m, "water-layer");
        assert_int_equal(strstr(f.advice, "from the surface") != NULL, i == 0);
        assert_int_equal(f.own_cause, i == 0);
    }
}

static void a_layer_that_outlasts_the_run_is_told_as_at_its_boil(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    assert_no_find(&m, "layer-outlasts-run");
    m.history.quiet_count = 2;
    m.quiet[0].end_s = 900;
    m.quiet[0].end_left_m = 0.01;
    m.quiet[1].end_s = 3500;
    m.quiet[1].end_left_m = 0.1;
    assert_no_find(&m, "layer-outlasts-run");
    m.quiet[1].end_s = UNKNOWN;
    boil_finding f = hand_made_find(&m, "layer-outlasts-run");
    assert_true(f.severity == BOIL_SEVERITY_WARNING && f.value == 0.1 && f.limit == 0.15 && f.time_s == 3600);
    assert_int_equal(hand_made_possible(&m, BOIL_CLOSURES_SUDDEN, "layer-outlasts-run").severity, BOIL_SEVERITY_WARNING);
    assert_int_equal(hand_made_possible(&m, BOIL_CLOSURES_TRIGGER, "layer-outlasts-run").severity, BOIL_SEVERITIES);
    m.quiet[1].end_left_m = -0.1;
    assert_grade(&m, "layer-outlasts-run", BOIL_SEVERITY_WARNING);
    m.quiet[1].end_overflows = true;
    assert_grade(&m, "layer-outlasts-run", BOIL_SEVERITY_DANGER);
    m.quiet[1].end_overflows = false;
    m.quiet[1].end_left_m = 0.2; /* the limit stays free */
    assert_grade(&m, "layer-outlasts-run", BOIL_SEVERITY_NOTICE);
    m.quiet[1].end_left_m = UNKNOWN;
    assert_no_find(&m, "layer-outlasts-run");
}

static void a_surface_that_boils_is_graver_under_heat_and_feed(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    boil_watched *w = &m.history.summary.watched[BOIL_WATCH_SURFACE_BOILS];
    hand_made_watch(&m, BOIL_WATCH_SURFACE_BOILS, 0.9, 350);
    assert_no_find(&m, "surface-boils");
    hand_made_watch(&m, BOIL_WATCH_SURFACE_BOILS, 40, 350);
    boil_finding f = hand_made_find(&m, "surface-boils");
    assert_true(f.severity == BOIL_SEVERITY_CAUTION && f.value == 40 && isnan(f.limit));
    w->heated_s = 1;
    assert_grade(&m, "surface-boils", BOIL_SEVERITY_WARNING);
    w->heated_s = 0;
    w->fed = 1;
    assert_grade(&m, "surface-boils", BOIL_SEVERITY_WARNING);
}

/* In calm ones; and no graver than the room that is left meanwhile. */
static void a_surge_is_told_by_the_freeboard_it_leaves(void **state)
{
    (void)state;
    const struct {
        double steam, least_m;
        boil_severity severity;
    } all[] = {{2.005, 0.1, BOIL_SEVERITIES},       {2.02, 0.1, BOIL_SEVERITY_NOTICE},
               {3.005, 0.1, BOIL_SEVERITY_NOTICE},  {3.02, 0.149, BOIL_SEVERITY_WARNING},
               {3.02, 0.15, BOIL_SEVERITY_CAUTION}, {3.02, 0.187, BOIL_SEVERITY_CAUTION},
               {3.02, 0.188, BOIL_SEVERITY_NOTICE}, {3.02, 1.25 * 0.15, BOIL_SEVERITY_NOTICE}};
    hand_made m;
    hand_made_begin(&m);
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++) {
        hand_made_watch(&m, BOIL_WATCH_SURGE, all[i].steam, 640);
        m.history.summary.surge_freeboard_m = all[i].least_m;
        assert_grade(&m, "steam-surge", all[i].severity);
        m.history.summary.surge_freeboard_m = UNKNOWN; /* then by the run's least */
        m.history.summary.freeboard_min_m.value = all[i].least_m;
        assert_grade(&m, "steam-surge", all[i].severity);
        m.history.summary.freeboard_min_m.value = 0.3;
    }
    boil_finding f = hand_made_find(&m, "steam-surge");
    assert_true(f.value == 3.02 && f.limit == 3 && f.worst_s == 640 && !f.more_than);
    m.history.summary.steam_more_than = true;
    assert_true(hand_made_find(&m, "steam-surge").more_than);
    hand_made_watch(&m, BOIL_WATCH_TOO_HOT, 5, 1);
    assert_false(hand_made_find(&m, "bath-too-hot").more_than);
}

/* A layer that is a warning by itself, in a run that only may be so. */
static void what_floats_counts_as_a_surge_where_it_only_may_be_so(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    m.history.quiet_count = 2;
    m.quiet[1] =
        (boil_quiet_result){.left_m = 0.049, .left_s = 480, .surge_kg_s = 0.04, .may_overflow_s = UNKNOWN, .end_s = 500};
    m.quiet[0] = m.quiet[1];
    m.quiet[0].left_m = 0.15 / 3; /* a third is left: no warning by itself */
    m.quiet[0].surge_kg_s = 0.09;
    hand_made_watch(&m, BOIL_WATCH_SURGE, 2.5, 640);
    assert_grade(&m, "steam-surge", BOIL_SEVERITY_NOTICE);
    boil_finding f = hand_made_possible(&m, BOIL_CLOSURES_GRAVE, "steam-surge");
    assert_true(f.severity == BOIL_SEVERITY_WARNING && f.time_s == 480 && f.worst_s == 480);
    assert_close(f.value, 1 + 0.04 / 0.01, 1e-12, 0);
    hand_made_watch(&m, BOIL_WATCH_SURGE, 1 + 0.04 / 0.01, 640); /* the run did as much itself */
    assert_true(hand_made_possible(&m, BOIL_CLOSURES_GRAVE, "steam-surge").worst_s == 640);
    hand_made_watch(&m, BOIL_WATCH_SURGE, 2.5, 640);
    assert_int_equal(hand_made_possible(&m, BOIL_CLOSURES_LIKELY, "steam-surge").severity, BOIL_SEVERITIES);
    m.quiet[0].left_m = 0.0495; /* both count, in their order, by the larger surge */
    m.quiet[0].left_s = 481;
    f = hand_made_possible(&m, BOIL_CLOSURES_GRAVE, "steam-surge");
    assert_true(f.worst_s == 481);
    assert_close(f.value, 10, 1e-12, 0);
    hand_made_watch(&m, BOIL_WATCH_SURGE, 12, 640); /* the run's own is more: and the room is what floats leaves */
    f = hand_made_possible(&m, BOIL_CLOSURES_GRAVE, "steam-surge");
    assert_true(f.severity == BOIL_SEVERITY_WARNING && f.value == 12 && f.worst_s == 640);
    hand_made_watch(&m, BOIL_WATCH_SURGE, 2.5, 640);
    const double calm[] = {UNKNOWN, 0}; /* it has no calm steam to be counted in */
    for (int i = 0; i < 2; i++) {
        m.history.summary.steam_steady_kg_s = calm[i];
        assert_close(hand_made_possible(&m, BOIL_CLOSURES_GRAVE, "steam-surge").value, 2.5, 1e-12, 0);
    }
}

static void a_valve_that_opens_often_hunts(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    m.plant.control.mode = BOIL_WATER_CONTROL_ON_OFF;
    m.history.summary.valve_openings = 12;
    assert_no_find(&m, "control-hunts");
    m.history.summary.valve_openings = 13;
    boil_finding f = hand_made_find(&m, "control-hunts");
    assert_true(f.severity == BOIL_SEVERITY_NOTICE && f.value == 13 && isnan(f.time_s) && isnan(f.worst_s));
    assert_close(f.limit, 12, 1e-12, 0);
    m.history.end_s = 600; /* four say nothing */
    m.history.summary.valve_openings = 4;
    assert_no_find(&m, "control-hunts");
    m.history.summary.valve_openings = 5;
    assert_close(hand_made_find(&m, "control-hunts").value, 30, 1e-12, 0);
    m.history.end_s = 0;
    assert_no_find(&m, "control-hunts");
    m.history.end_s = 600;
    m.plant.control.mode = BOIL_WATER_CONTROL_PROPORTIONED;
    assert_no_find(&m, "control-hunts");
    m.plant.control.mode = BOIL_WATER_CONTROL_NONE;
    assert_no_find(&m, "control-hunts");
}

/* Two differentials over its set point, or two kelvin where that is more. */
static void a_valve_that_cannot_keep_up_is_told_by_the_end(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    boil_summary *of = &m.history.summary;
    m.plant.control.mode = BOIL_WATER_CONTROL_ON_OFF;
    m.plant.control.set_point_K = 412;
    m.plant.control.differential_K = 0.5;
    of->valve_open_share = 0.21;
    of->temperature_end_K = 414.04;
    assert_no_find(&m, "control-cannot-keep-up");
    of->temperature_end_K = 414.06;
    boil_finding f = hand_made_find(&m, "control-cannot-keep-up");
    assert_true(f.severity == BOIL_SEVERITY_NOTICE && f.value == 414.06 && f.limit == 412 && f.time_s == 3600);
    m.plant.control.differential_K = 1.01;
    assert_grade(&m, "control-cannot-keep-up", BOIL_SEVERITIES);
    m.plant.control.differential_K = 1;
    of->boiling_point_end_K = m.plant.limits.boiling_point_high_K;
    assert_grade(&m, "control-cannot-keep-up", BOIL_SEVERITY_NOTICE);
    of->boiling_point_end_K += 1e-6;
    assert_grade(&m, "control-cannot-keep-up", BOIL_SEVERITY_CAUTION);
    of->valve_open_share = 0.2;
    assert_no_find(&m, "control-cannot-keep-up");
    of->valve_open_share = 1;
    m.plant.control.mode = BOIL_WATER_CONTROL_NONE;
    assert_no_find(&m, "control-cannot-keep-up");
}

/* For five minutes with nothing that shuts it, or with two thirds of the freeboard limit left, it is a warning. */
static void a_valve_that_runs_on_a_quiet_bath_is_found(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    m.plant.control.mode = BOIL_WATER_CONTROL_PROPORTIONED;
    m.plant.control.rate_kg_s = 0.03;
    m.plant.control.only_while_boiling = false;
    m.history.summary.valve_quiet_kg = 9;
    boil_finding f = hand_made_find(&m, "control-on-quiet-bath");
    assert_true(f.severity == BOIL_SEVERITY_CAUTION && f.value == 9 && isnan(f.time_s) && isnan(f.worst_s));
    m.history.summary.valve_quiet_kg = 9.01;
    assert_grade(&m, "control-on-quiet-bath", BOIL_SEVERITY_WARNING);
    m.plant.control.only_while_boiling = true;
    assert_grade(&m, "control-on-quiet-bath", BOIL_SEVERITY_CAUTION);
    m.history.quiet_count = 1;
    m.quiet[0].end_s = 100;
    m.quiet[0].left_m = 0.15 * 2 / 3;
    assert_grade(&m, "control-on-quiet-bath", BOIL_SEVERITY_CAUTION);
    m.quiet[0].left_m = 0.0999;
    assert_grade(&m, "control-on-quiet-bath", BOIL_SEVERITY_WARNING);
    m.plant.control.mode = BOIL_WATER_CONTROL_NONE;
    assert_no_find(&m, "control-on-quiet-bath");
}

/* Of the way out of the band, for want of water and nothing else. */
static void water_that_is_short_is_told_by_the_way_out_of_the_band(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    boil_summary *of = &m.history.summary;
    const double high_K = m.plant.limits.boiling_point_high_K;
    of->boiling_point_start_K = high_K - 4;
    of->boiling_point_end_K = high_K - 1.97;
    of->restoring_water_kg = 7;
    assert_no_find(&m, "water-short");
    of->boiling_share = 0.1;
    boil_finding f = hand_made_find(&m, "water-short");
    assert_true(f.severity == BOIL_SEVERITY_NOTICE && f.value == high_K - 1.97 && f.limit == high_K && f.needed_kg == 7 &&
                f.time_s == 3600);
    of->boiling_point_end_K = high_K - 1.99; /* within the margin */
    assert_no_find(&m, "water-short");
    of->boiling_point_end_K = high_K + 0.03;
    f = hand_made_find(&m, "water-short");
    assert_int_equal(f.severity, BOIL_SEVERITY_CAUTION);
    assert_close(f.grades[BOIL_SEVERITY_CAUTION].limit, high_K, 1e-12, 0);
    double *fed[] = {&of->salts_added_kg, &of->liquid_added_kg, &of->undissolved_max_kg};
    for (size_t i = 0; i < sizeof fed / sizeof fed[0]; i++) {
        *fed[i] = 1e-3;
        assert_no_find(&m, "water-short");
        *fed[i] = 0;
    }
    of->boiling_point_start_K = high_K; /* it was out from the start */
    assert_no_find(&m, "water-short");
}

static void water_too_fast_is_graver_when_a_load_or_the_fire_meets_it(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    hand_made_watch(&m, BOIL_WATCH_WATER_FAST, 0.5, 600);
    for (int met = 0; met < 2; met++) {
        m.history.summary.watched[BOIL_WATCH_WATER_FAST].met = met > 0;
        boil_finding f = hand_made_find(&m, "water-too-fast");
        assert_int_equal(f.severity, met > 0 ? BOIL_SEVERITY_CAUTION : BOIL_SEVERITY_NOTICE);
        assert_close(f.value, 0.075, 1e-9, 0);
        assert_close(f.limit, 0.15, 1e-9, 0);
    }
}

static void a_thermostat_that_stills_the_boil_is_counted(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    m.history.quiet_count = 2;
    m.quiet[0].end_s = m.quiet[1].end_s = 1000;
    m.quiet[1].start_s = 950;
    m.quiet[1].by_thermostat = true;
    assert_no_find(&m, "thermostat-stops-boil");
    m.history.summary.thermostat_stilled = 2;
    boil_finding f = hand_made_find(&m, "thermostat-stops-boil");
    assert_true(f.severity == BOIL_SEVERITY_NOTICE && f.value == 2 && f.count == 2 && f.time_s == 950 && isnan(f.limit));
    m.history.quiet_count = 1; /* before it could be seen */
    assert_true(isnan(hand_made_find(&m, "thermostat-stops-boil").time_s));
    m.history.summary.thermostat_met = 1;
    assert_grade(&m, "thermostat-stops-boil", BOIL_SEVERITY_CAUTION);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_layer_is_told_by_what_it_would_leave),
        cmocka_unit_test(water_on_a_bath_not_too_warm_to_bail_comes_off_first),
        cmocka_unit_test(a_layer_that_outlasts_the_run_is_told_as_at_its_boil),
        cmocka_unit_test(a_surface_that_boils_is_graver_under_heat_and_feed),
        cmocka_unit_test(a_surge_is_told_by_the_freeboard_it_leaves),
        cmocka_unit_test(what_floats_counts_as_a_surge_where_it_only_may_be_so),
        cmocka_unit_test(a_valve_that_opens_often_hunts),
        cmocka_unit_test(a_valve_that_cannot_keep_up_is_told_by_the_end),
        cmocka_unit_test(a_valve_that_runs_on_a_quiet_bath_is_found),
        cmocka_unit_test(water_that_is_short_is_told_by_the_way_out_of_the_band),
        cmocka_unit_test(water_too_fast_is_graver_when_a_load_or_the_fire_meets_it),
        cmocka_unit_test(a_thermostat_that_stills_the_boil_is_counted),
    };
    return cmocka_run_group_tests_name("judged steam and water", tests, NULL, NULL);
}
