/* unit/model/findings/test_judged_bath.c -- the bath itself, its level, crystals and crust in histories written down by hand: at each
   side of every limit that decides a word. The limits are common practice or judgement, no source (model/case/grading.h); that the
   words follow them is what is asserted. */
#include "support/hand_made.h"

#include "equipment/tank.h"
#include "properties/solubility.h"
#include "transfer/flash.h"

/* Each is its measure past a zero of its own, and told as the value itself. */
static void what_is_watched_is_told_as_the_value_itself(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    const double high_K = m.plant.limits.boiling_point_high_K, low_K = m.plant.limits.boiling_point_low_K;
    m.plant.tank.heated = BOIL_TANK_HEATED_INSIDE;
    m.plant.tank.heater_top_m = 0.2;
    m.plant.tank.parts_top_m = 0.45;
    m.plant.tank.mark_m = 0.5;
    const struct {
        boil_watch_kind k;
        const char *id;
        double x, value, limit; /* of a notice or caution, whichever is the lowest */
        boil_severity severity;
    } all[] = {{BOIL_WATCH_TOO_HOT, "bath-too-hot", 3, high_K + 3, high_K, BOIL_SEVERITY_CAUTION},
               {BOIL_WATCH_TOO_COOL, "bath-too-cool", 3, low_K - 3, low_K, BOIL_SEVERITY_NOTICE},
               {BOIL_WATCH_NEARLY_DRY, "bath-nearly-dry", -0.3, 0.3, 0.36, BOIL_SEVERITY_WARNING},
               {BOIL_WATCH_HEATER_BARE, "heater-uncovered", -0.03, 0.23, 0.2508, BOIL_SEVERITY_CAUTION},
               {BOIL_WATCH_FLOOR_BARE, "floor-bare", -0.1, 0.1, 0.1524, BOIL_SEVERITY_CAUTION},
               {BOIL_WATCH_FLOOR_HOT, "floor-hot", 480, 480, 477.6, BOIL_SEVERITY_CAUTION},
               {BOIL_WATCH_PARTS_BARE, "parts-uncovered", 0.02, 0.43, 0.45, BOIL_SEVERITY_NOTICE},
               {BOIL_WATCH_LEVEL_HIGH, "level-high", 0.02, 0.52, 0.5127, BOIL_SEVERITY_NOTICE},
               {BOIL_WATCH_CRYSTALS, "crystals", 0.02, 0.02, 1e-3, BOIL_SEVERITY_CAUTION}};
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++) {
        assert_no_find(&m, all[i].id);
        hand_made_watch(&m, all[i].k, all[i].x, 100 + (double)i);
        boil_finding f = hand_made_find(&m, all[i].id);
        assert_int_equal(f.severity, all[i].severity);
        assert_close(f.value, all[i].value, 1e-12, 0);
        assert_close(f.limit, all[i].limit, 1e-9, 0);
        assert_true(f.worst_s == 100 + (double)i);
    }
    assert_close(hand_made_find(&m, "heater-uncovered").value, boil_tank_heater_top(&m.plant.tank) + 0.03, 1e-12, 0);
}

/* What goes into a bath of less than one water to each hydroxide, past its WARNING, makes it a danger. */
static void what_meets_a_melt_is_a_danger(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    hand_made_watch(&m, BOIL_WATCH_NEARLY_DRY, -0.3, 200);
    m.history.summary.watched[BOIL_WATCH_NEARLY_DRY].fed = BOIL_SEVERITY_WARNING;
    assert_grade(&m, "bath-nearly-dry", BOIL_SEVERITY_WARNING);
    m.history.summary.watched[BOIL_WATCH_NEARLY_DRY].fed = BOIL_SEVERITY_WARNING + 1;
    assert_grade(&m, "bath-nearly-dry", BOIL_SEVERITY_DANGER);
}

static double turning_K(const hand_made *m, double water_K)
{
    double turns_K;
    boil_conditions air = boil_conditions_at(m->plant.ambient.pressure_Pa, m->plant.elevation_factor);
    assert_int_equal(boil_flash_turning_point(&air, m->plant.charge.blend, m->plant.dilution_factor, water_K, &turns_K),
                     BOIL_OK);
    return turns_K;
}

static void boils_at_least_at(hand_made *m, double least_K)
{
    hand_made_watch(m, BOIL_WATCH_TOO_COOL, m->plant.limits.boiling_point_low_K - least_K, 300);
}

/* By the coldest water at hand: of the hose, of the valve, else of the room, where it is not frozen. */
static void a_bath_that_water_quenches_is_told_by_the_coldest_at_hand(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    m.plant.ambient.temperature_K = 263;
    m.plant.control.water_K = 280;
    boils_at_least_at(&m, 390);
    assert_close(hand_made_find(&m, "water-quenches").limit, turning_K(&m, 273.15), 1e-9, 0);
    m.plant.ambient.temperature_K = 300;
    assert_close(hand_made_find(&m, "water-quenches").limit, turning_K(&m, 300), 1e-9, 0);
    m.actions[1] = two_gallons_action(10, 10);
    m.actions[1].is.water.temperature_K = 320;
    assert_close(hand_made_find(&m, "water-quenches").limit, turning_K(&m, 320), 1e-9, 0);
    m.actions[2] = two_gallons_action(10, 10);
    m.actions[2].is.water.temperature_K = 310;
    assert_close(hand_made_find(&m, "water-quenches").limit, turning_K(&m, 310), 1e-9, 0);
    m.plant.control.mode = BOIL_WATER_CONTROL_ON_OFF;
    assert_close(hand_made_find(&m, "water-quenches").limit, turning_K(&m, 280), 1e-9, 0);
}

/* A caution; poured, a warning; meant by the shop, and none poured, a notice. */
static void a_bath_that_water_quenches_is_graver_once_it_is_poured(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    const double turns_K = turning_K(&m, m.plant.ambient.temperature_K);
    m.plant.limits.boiling_point_low_K = turns_K - 1;
    boils_at_least_at(&m, turns_K - 2);
    boil_finding f = hand_made_find(&m, "water-quenches");
    assert_int_equal(f.severity, BOIL_SEVERITY_CAUTION);
    assert_close(f.value, turns_K - 2, 1e-12, 0);
    assert_true(f.time_s == 300 && f.worst_s == 300);
    boils_at_least_at(&m, turns_K - 1);
    assert_grade(&m, "water-quenches", BOIL_SEVERITY_NOTICE);
    boils_at_least_at(&m, turns_K - 0.06);
    assert_grade(&m, "water-quenches", BOIL_SEVERITY_NOTICE);
    boils_at_least_at(&m, turns_K - 0.04);
    assert_no_find(&m, "water-quenches");
    boils_at_least_at(&m, turns_K - 2);
    m.history.additions_count = 2;
    m.additions[0].boiling_point_K = m.additions[1].boiling_point_K = turns_K + 1;
    m.additions[0].time_s = 50;
    m.additions[1].time_s = 70;
    assert_grade(&m, "water-quenches", BOIL_SEVERITY_CAUTION);
    m.additions[1].boiling_point_K = turns_K; /* it takes the water as it is */
    assert_grade(&m, "water-quenches", BOIL_SEVERITY_CAUTION);
    m.additions[1].boiling_point_K = turns_K - 1;
    f = hand_made_find(&m, "water-quenches");
    assert_true(f.severity == BOIL_SEVERITY_WARNING && f.time_s == 70 && f.worst_s == 300);
    m.additions[1].kind = BOIL_ACTION_SALTS;
    assert_grade(&m, "water-quenches", BOIL_SEVERITY_CAUTION);
    m.plant.control.mode = BOIL_WATER_CONTROL_ON_OFF;
    m.plant.control.water_K = m.plant.ambient.temperature_K;
    f = hand_made_find(&m, "water-quenches");
    assert_true(f.severity == BOIL_SEVERITY_WARNING && f.time_s == 300);
}

static void a_tall_tank_is_told_by_level_and_area(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    m.plant.tank.length_m = m.plant.tank.width_m = 0.5;
    const struct {
        double level_m;
        boil_severity severity;
    } all[] = {
        {0.602, BOIL_SEVERITIES}, {0.603, BOIL_SEVERITY_NOTICE}, {1.002, BOIL_SEVERITY_NOTICE}, {1.003, BOIL_SEVERITY_CAUTION}};
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++) {
        m.plant.tank.level_m = all[i].level_m;
        assert_grade(&m, "tank-tall", all[i].severity);
    }
    boil_finding f = hand_made_find(&m, "tank-tall");
    assert_true(isnan(f.time_s) && isnan(f.worst_s));
    assert_close(f.value, 2.006, 1e-12, 0);
    assert_close(f.limit, 1.2, 1e-12, 0);
    m.history.summary.stored_rise_m = 0.45; /* of 0.4 m */
    f = hand_made_find(&m, "superheat-stored");
    assert_int_equal(f.severity, BOIL_SEVERITY_CAUTION);
    assert_true(f.value == 0.45 && isnan(f.time_s) && isnan(f.worst_s));
    assert_close(f.limit, 0.4, 1e-12, 0);
    assert_close(f.grades[BOIL_SEVERITY_WARNING].limit, 1.2, 1e-12, 0);
}

/* Half a kelvin held back under a crust is a warning, what is met in it a danger; a haze is nothing. */
static void heat_under_crystals_is_told_by_what_it_may_do(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    boil_summary *of = &m.history.summary;
    hand_made_watch(&m, BOIL_WATCH_RESTART, 20, 500);
    assert_no_find(&m, "restart-over-crystals");
    of->heated_crystals_kg.value = 1e-3 * 500;
    assert_no_find(&m, "restart-over-crystals");
    of->heated_crystals_kg.value = 1.01e-3 * 500;
    boil_finding f = hand_made_find(&m, "restart-over-crystals");
    assert_true(f.severity == BOIL_SEVERITY_CAUTION && f.value == 20 && f.limit == 30);
    of->crust_superheat_K.value = 0.5;
    assert_grade(&m, "restart-over-crystals", BOIL_SEVERITY_CAUTION);
    of->crust_superheat_K.value = 0.51;
    assert_grade(&m, "restart-over-crystals", BOIL_SEVERITY_WARNING);
    of->watched[BOIL_WATCH_RESTART].fed = 1;
    assert_grade(&m, "restart-over-crystals", BOIL_SEVERITY_DANGER);
    of->watched[BOIL_WATCH_RESTART].fed = 0;
    of->crust_superheat_K.value = UNKNOWN;
    hand_made_watch(&m, BOIL_WATCH_RESTART, -5, 500); /* the floor stays cold: heated from the side */
    assert_grade(&m, "restart-over-crystals", BOIL_SEVERITY_CAUTION);
}

static void a_crust_is_a_warning_for_who_puts_anything_onto_it(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    hand_made_watch(&m, BOIL_WATCH_CRUST, 7e-3, 400);
    m.history.summary.watched[BOIL_WATCH_CRUST].fed = BOIL_SEVERITY_CAUTION;
    assert_grade(&m, "crust", BOIL_SEVERITY_CAUTION);
    m.history.summary.watched[BOIL_WATCH_CRUST].fed = BOIL_SEVERITY_CAUTION + 1;
    assert_grade(&m, "crust", BOIL_SEVERITY_WARNING);
}

static void salt_not_looked_for_is_told_by_where_it_falls_out(void **state)
{
    (void)state;
    hand_made m;
    boil_initial_state bath;
    hand_made_begin(&m);
    m.plant.charge = (boil_initial_charge){{0.65, 0.35, 0}, BOIL_INITIAL_BY_BOILING_POINT, CELSIUS(140.5), 0};
    m.plant.charge.temperature_K = CELSIUS(20);
    m.plant.heater.dial = 0;
    assert_int_equal(boil_plant_initial(&m.plant, &bath), BOIL_OK);
    const double falls_K = boil_solubility_crystals_from(&bath.mixture);
    assert_no_find(&m, "salt-not-stated");
    m.plant.salt_stated = false;
    const double at_K[] = {falls_K - 10, falls_K - 0.06, falls_K - 0.04, falls_K + 1};
    for (int i = 0; i < 4; i++) {
        m.plant.charge.temperature_K = at_K[i];
        boil_finding f = hand_made_find(&m, "salt-not-stated");
        assert_int_equal(f.severity, i < 2 ? BOIL_SEVERITY_CAUTION : BOIL_SEVERITIES);
        if (i < 2) {
            assert_close(f.value, at_K[i], 1e-12, 0);
            assert_close(f.limit, falls_K, 1e-12, 0);
            assert_true(f.time_s == 0);
        }
    }
}

/* Over the rim it is a danger, from when it was first there; a still surface that rises over it is told as at it. */
static void a_surface_at_the_rim_is_a_danger(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    hand_made_watch(&m, BOIL_WATCH_OVERFLOW, -0.01, 900);
    assert_no_find(&m, "overflow");
    m.history.summary.overflow_s = 800;
    boil_finding f = hand_made_find(&m, "overflow");
    assert_true(f.severity == BOIL_SEVERITY_DANGER && f.time_s == 800 && f.worst_s == 900);
    assert_close(f.value, 0.89, 1e-12, 0);
    hand_made_watch(&m, BOIL_WATCH_OVERFLOW_STILL, -1e-9, 950);
    assert_no_find(&m, "overflow-still");
    hand_made_watch(&m, BOIL_WATCH_OVERFLOW_STILL, 0, 950);
    assert_grade(&m, "overflow-still", BOIL_SEVERITY_DANGER);
    hand_made_watch(&m, BOIL_WATCH_OVERFLOW_STILL, 1e-7, 950);
    f = hand_made_find(&m, "overflow-still");
    assert_true(f.severity == BOIL_SEVERITY_DANGER && f.value == 0.9 && f.measure == 0 && f.limit == 0.9);
}

/* Of a run that only may be so: what floats counts as if it came off. */
static void what_may_overflow_counts_where_it_only_may_be_so(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    m.history.quiet_count = OF_EACH;
    for (size_t i = 0; i < OF_EACH; i++)
        m.quiet[i].end_s = 100;
    m.quiet[1].left_m = -0.02;
    m.quiet[2].left_m = -0.01;
    assert_int_equal(hand_made_possible(&m, BOIL_CLOSURES_GRAVE, "overflow").severity, BOIL_SEVERITIES);
    m.quiet[1].may_overflow_s = 420;
    m.quiet[2].may_overflow_s = 310;
    assert_no_find(&m, "overflow");
    boil_finding f = hand_made_possible(&m, BOIL_CLOSURES_GRAVE, "overflow");
    assert_true(f.severity == BOIL_SEVERITY_DANGER && f.certainty == BOIL_POSSIBLE && f.time_s == 310);
    assert_close(f.value, 0.92, 1e-12, 0);
    assert_close(f.limit, 0.9, 1e-12, 0);
    m.history.summary.overflow_s = 900; /* it did so: then that is told */
    hand_made_watch(&m, BOIL_WATCH_OVERFLOW, 0.05, 950);
    f = hand_made_possible(&m, BOIL_CLOSURES_GRAVE, "overflow");
    assert_true(f.time_s == 900);
    assert_close(f.value, 0.95, 1e-12, 0);
}

static void low_freeboard_is_told_unless_it_is_gone(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    hand_made_watch(&m, BOIL_WATCH_FREEBOARD, 0.4, 700);
    boil_finding f = hand_made_find(&m, "freeboard-low");
    assert_int_equal(f.severity, BOIL_SEVERITY_CAUTION);
    assert_close(f.value, 0.09, 1e-12, 0);
    assert_close(f.limit, 0.15, 1e-12, 0);
    m.history.summary.freeboard_min_m.value = 0; /* the overflow says it */
    assert_no_find(&m, "freeboard-low");
    m.history.summary.freeboard_min_m.value = 1e-6;
    assert_grade(&m, "freeboard-low", BOIL_SEVERITY_CAUTION);
    m.history.quiet_count = 1;
    m.quiet[0].left_m = 0.15 / 3; /* a third of the limit: no warning yet */
    m.quiet[0].left_s = 222;
    assert_close(hand_made_possible(&m, BOIL_CLOSURES_GRAVE, "freeboard-low").value, 0.09, 1e-12, 0);
    m.quiet[0].left_m = 0.0499;
    assert_close(hand_made_possible(&m, BOIL_CLOSURES_GRAVE, "freeboard-low").value, 0.0499, 1e-12, 0);
    m.quiet[0].left_m = 0.048;
    f = hand_made_possible(&m, BOIL_CLOSURES_GRAVE, "freeboard-low");
    assert_true(f.severity == BOIL_SEVERITY_WARNING && f.value == 0.048 && f.time_s == 222 && f.worst_s == 222);
    assert_grade(&m, "freeboard-low", BOIL_SEVERITY_CAUTION); /* not of the likely run */
    m.history.quiet_count = 2;                                /* of two that leave as much the first is told */
    m.quiet[1] = m.quiet[0];
    m.quiet[1].left_s = 333;
    assert_true(hand_made_possible(&m, BOIL_CLOSURES_GRAVE, "freeboard-low").worst_s == 222);
    hand_made_watch(&m, BOIL_WATCH_FREEBOARD, 1 - 0.048 / 0.15, 700); /* the run did as much itself */
    assert_true(hand_made_possible(&m, BOIL_CLOSURES_GRAVE, "freeboard-low").worst_s == 700);
    hand_made_watch(&m, BOIL_WATCH_FREEBOARD, 0.8, 700); /* which did worse */
    f = hand_made_possible(&m, BOIL_CLOSURES_GRAVE, "freeboard-low");
    assert_true(f.worst_s == 700);
    assert_close(f.value, 0.03, 1e-12, 0);
}

/* Common practice, no source: an element bare under power for a minute burns out. */
static void an_element_bare_for_a_minute_is_a_danger(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    hand_made_watch(&m, BOIL_WATCH_HEATER_BARE, -0.01, 700);
    m.history.summary.watched[BOIL_WATCH_HEATER_BARE].heated_s = 60;
    assert_grade(&m, "heater-uncovered", BOIL_SEVERITY_CAUTION);
    m.history.summary.watched[BOIL_WATCH_HEATER_BARE].heated_s = 60.1;
    assert_grade(&m, "heater-uncovered", BOIL_SEVERITY_DANGER);
    m.plant.heater.source = BOIL_HEAT_STEAM;
    assert_grade(&m, "heater-uncovered", BOIL_SEVERITY_CAUTION);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_is_watched_is_told_as_the_value_itself),
        cmocka_unit_test(what_meets_a_melt_is_a_danger),
        cmocka_unit_test(a_bath_that_water_quenches_is_told_by_the_coldest_at_hand),
        cmocka_unit_test(a_bath_that_water_quenches_is_graver_once_it_is_poured),
        cmocka_unit_test(a_tall_tank_is_told_by_level_and_area),
        cmocka_unit_test(heat_under_crystals_is_told_by_what_it_may_do),
        cmocka_unit_test(a_crust_is_a_warning_for_who_puts_anything_onto_it),
        cmocka_unit_test(salt_not_looked_for_is_told_by_where_it_falls_out),
        cmocka_unit_test(a_surface_at_the_rim_is_a_danger),
        cmocka_unit_test(what_may_overflow_counts_where_it_only_may_be_so),
        cmocka_unit_test(low_freeboard_is_told_unless_it_is_gone),
        cmocka_unit_test(an_element_bare_for_a_minute_is_a_danger),
    };
    return cmocka_run_group_tests_name("judged bath", tests, NULL, NULL);
}
