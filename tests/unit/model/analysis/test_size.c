/* The designer's answers: each is run again, just at the answer and just beyond it, and the ideal case has a closed form. */
#include <gsl/gsl_errno.h>

#include "support/close.h"

#include "analysis/heater_size.h"
#include "analysis/load_size.h"
#include "analysis/steady_state.h"
#include "base/bisection.h"
#include "case/closures.h"
#include "sizing/holding.h"
#include "sizing/leaving.h"
#include "sizing/turning.h"
#include "boilback.h"
#include "base/constants.h"
#include "scenario/scenario.h"
#include "support/cases.h"

static boil_history run_with(const boil_plant *p, const boil_schedule *s, double heat_W)
{
    boil_plant sized;
    boil_history h;
    boil_run_options o = boil_run_options_default();
    assert_int_equal(boil_heater_size_plant(p, heat_W, &sized), BOIL_OK);
    assert_int_equal(boil_run(&sized, s, &o, &h), BOIL_OK);
    return h;
}

static boil_history grave_run(const boil_plant *p, const boil_schedule *s, double heat_W)
{
    boil_simulation *own = NULL;
    const boil_holding_case of = {p, s, boil_run_options_default(), 120, false, &own};
    boil_history h;
    assert_int_equal(boil_holding_run(&of, heat_W, BOIL_CLOSURES_GRAVE, &h), BOIL_OK);
    boil_simulation_free(own);
    return h;
}

static bool leaves_freeboard(const boil_plant *p, const boil_schedule *s, double heat_W)
{
    boil_simulation *own = NULL;
    const boil_holding_case of = {p, s, boil_run_options_default(), 120, false, &own};
    boil_holding a;
    assert_int_equal(boil_holding_by_all(&of, heat_W, &a), BOIL_OK);
    boil_simulation_free(own);
    return !(a.breaks & BOIL_BREAKS_FREEBOARD);
}

static bool meets(const boil_plant *p, const boil_schedule *s, double heat_W, double limit_s)
{
    boil_simulation *own = NULL;
    const boil_holding_case of = {p, s, boil_run_options_default(), limit_s, false, &own};
    boil_holding a;
    assert_int_equal(boil_holding_by_all(&of, heat_W, &a), BOIL_OK);
    boil_simulation_free(own);
    return a.breaks == 0;
}

static bool over_rim(const boil_plant *p, const boil_schedule *s, double heat_W)
{
    boil_history h = run_with(p, s, heat_W);
    bool over = !isnan(h.summary.overflow_s);
    boil_history_free(&h);
    return over;
}

/* search ---------------------------------------------------------------------------------------------------------- */

typedef struct {
    double turn;
    bool above;
    int asked;
} turning;

static int beyond_turn(void *context, double x, bool *yes)
{
    turning *t = context;
    t->asked++;
    *yes = t->above ? x >= t->turn : x <= t->turn;
    return BOIL_OK;
}

static void test_search_brackets(void **state)
{
    (void)state;
    double no, yes;
    turning t = {7, true, 0};
    boil_bisection up = {beyond_turn, &t, 1, 100, 1.5, 0.002};
    assert_int_equal(boil_bisect(&up, &no, &yes), BOIL_OK);
    assert_true(no < 7 && yes >= 7 && yes - no <= 0.002 * yes);
    t = (turning){0.03, false, 0};
    boil_bisection down = {beyond_turn, &t, 1, 0.001, 0.8, 0.002};
    assert_int_equal(boil_bisect(&down, &no, &yes), BOIL_OK);
    assert_true(no > 0.03 && yes <= 0.03 && no - yes <= 0.002 * no);
}

static void test_search_ends(void **state)
{
    (void)state;
    double no, yes;
    turning t = {0.5, true, 0};
    boil_bisection up = {beyond_turn, &t, 1, 100, 1.5, 0.002};
    assert_int_equal(boil_bisect(&up, &no, &yes), BOIL_OK);
    assert_true(isnan(no) && yes == 1 && t.asked == 1);
    t.turn = 1000;
    assert_int_equal(boil_bisect(&up, &no, &yes), BOIL_NO_ROOT);
}

/* Begun on either side, near and far, and at the ends of where it may look. */
static void test_turning_from_near(void **state)
{
    (void)state;
    for (int above = 0; above < 2; above++)
        for (double near = 2; near < 30; near *= 1.7) {
            turning t = {7, above, 0};
            boil_turning s = {beyond_turn, &t, near, 1, 100, above, 0.002};
            double yes;
            assert_int_equal(boil_turning_find(&s, &yes), BOIL_OK);
            assert_true(above ? yes >= 7 && yes <= 7 * 1.0021 : yes <= 7 && yes >= 7 / 1.0021);
        }
    turning t = {1000, true, 0};
    boil_turning s = {beyond_turn, &t, 5, 1, 100, true, 0.002};
    double yes;
    assert_int_equal(boil_turning_find(&s, &yes), BOIL_NO_ROOT);
    t.turn = 0.5;
    assert_int_equal(boil_turning_find(&s, &yes), BOIL_OK);
    assert_true(yes == 1);
}

/* heat ------------------------------------------------------------------------------------------------------------ */

/* Thin plate, every loss off, no steel in the tank: in t the heater must give what the steel took, m c dT. The bath returns
   to its own boiling point, so nothing else needs heat. */
static void test_ideal_case(void **state)
{
    (void)state;
    const double limits_s[] = {60, 120, 300};
    boil_plant p = pinned_plant();
    boil_metal steel = boil_carbon_steel();
    boil_run_options o = boil_run_options_default();
    for (size_t i = 0; i < sizeof limits_s / sizeof limits_s[0]; i++) {
        boil_action load = plate_action(10, 1);
        load.is.load.size_m = 0.5e-3;
        boil_schedule s = schedule_with(400 + limits_s[i], &load, 1);
        double heat, boil_K = (285 - 32) / 1.8 + BOIL_ZERO_CELSIUS;
        assert_int_equal(boil_heater_size_for_recovery(&p, &s, &o, limits_s[i], 0.002, &heat), BOIL_OK);
        double taken_J =
            load.is.load.mass_kg * (boil_metal_enthalpy(&steel, boil_K) - boil_metal_enthalpy(&steel, CELSIUS(20)));
        print_message("ideal case, %.0f s: %.3f kW, m c dT / t %.3f kW, off by %+.2f %%\n", limits_s[i], heat / 1000,
                      taken_J / limits_s[i] / 1000, 100 * (heat / (taken_J / limits_s[i]) - 1));
        assert_close(heat, taken_J / limits_s[i], 0.02, 0);
        boil_schedule_free(&s);
    }
}

static void test_answer_meets_and_one_per_cent_less_does_not(void **state)
{
    (void)state;
    boil_plant p = open_plant(1);
    boil_run_options o = boil_run_options_default();
    const double loads[] = {0.5, 1, 3};
    for (size_t i = 0; i < 3; i++) {
        boil_action load = plate_action(60, loads[i]);
        boil_schedule s = schedule_with(600, &load, 1);
        double heat;
        assert_int_equal(boil_heater_size_for_recovery(&p, &s, &o, 120, 0.002, &heat), BOIL_OK);
        print_message("%.1f kg back in 2 min: %.2f kW\n", load.is.load.mass_kg, heat / 1000);
        assert_true(meets(&p, &s, heat, 120));
        assert_false(meets(&p, &s, 0.99 * heat, 120));
        boil_schedule_free(&s);
    }
}

/* Two coefficients apart from steel that soaks heat up fast: what takes it slowly never stops the boil once the heat exceeds
   losses and intake, h A dT at most; with less the boil is lost for as long as the steel takes. */
static void test_slow_load_never_stops_the_boil(void **state)
{
    (void)state;
    boil_plant p = open_plant(1);
    boil_run_options o = boil_run_options_default();
    boil_plant grave = boil_closures_put(BOIL_CLOSURES_GRAVE, &p);
    boil_steady_state calm;
    boil_action load = plate_action(60, 4);
    load.is.load.size_m = 0.08;
    load.is.load.coefficient_W_m2K = 30;
    boil_schedule s = schedule_with(2 * 3600, &load, 1);
    double heat;
    assert_int_equal(boil_steady_state_at(&grave, 0, &calm), BOIL_OK);
    assert_int_equal(boil_heater_size_for_recovery(&p, &s, &o, 120, 0.002, &heat), BOIL_OK);
    boil_history at = grave_run(&p, &s, heat), less = grave_run(&p, &s, 0.99 * heat);
    double intake_W = 30 * boil_load_area(&load.is.load) * (calm.boiling_point_K - CELSIUS(20));
    print_message("slow load: %.2f kW, losses %.2f kW and first intake %.2f kW; 1 %% less: lost for %.0f s\n", heat / 1000,
                  calm.losses_W / 1000, intake_W / 1000, less.loads[0].recovery_s);
    assert_true(at.loads[0].recovery_s <= 120);
    assert_true(!(less.loads[0].recovery_s <= 120));
    assert_true(heat > calm.losses_W && heat < calm.losses_W + 1.05 * intake_W);
    boil_history_free(&at);
    boil_history_free(&less);
    boil_schedule_free(&s);
}

static double freeboard(const boil_holding_case *of, double heat_W)
{
    boil_holding a;
    assert_int_equal(boil_holding_by(of, heat_W, BOIL_CLOSURES_LIKELY, &a), BOIL_OK);
    return a.freeboard_min_m;
}

/* Down to a bolt: a lighter load needs no more heat, but for what the search leaves open, and never less than the calm losses. */
static void test_tiny_loads_need_no_more(void **state)
{
    (void)state;
    static const double times[] = {0.01, 0.1, 0.5, 1, 2, 5, 10};
    const boil_plant p = open_plant(1);
    const boil_run_options o = boil_run_options_default();
    boil_steady_state calm;
    double before_W;
    assert_int_equal(boil_steady_state_at(&p, 0, &calm), BOIL_OK);
    before_W = calm.losses_W;
    for (size_t i = 0; i < sizeof times / sizeof times[0]; i++) {
        const boil_action load = plate_action(60, times[i]);
        boil_schedule s = schedule_with(400, &load, 1);
        double heat_W;
        assert_int_equal(boil_heater_size_for_recovery(&p, &s, &o, 120, 0.002, &heat_W), BOIL_OK);
        print_message("x%.3g: %.2f kW\n", times[i], heat_W / 1e3);
        assert_true(heat_W >= 0.996 * before_W);
        before_W = heat_W;
        boil_schedule_free(&s);
    }
}

/* A bath that loses nothing keeps its boil with next to nothing: no search goes below 100 W/m2 of surface (judgement). */
static void test_no_search_goes_below_the_least(void **state)
{
    (void)state;
    boil_plant p = pinned_plant();
    boil_schedule nothing;
    p.tank.length_m = 3;
    p.tank.width_m = 0.8;
    boil_schedule_init(&nothing, 600);
    boil_simulation *own = NULL;
    const boil_holding_case of = {&p, &nothing, boil_run_options_default(), 120, false, &own};
    for (double near_W = 150; near_W < 2000; near_W *= 4) {
        double heat_W;
        assert_int_equal(boil_heater_size_near(&of, near_W, 0.02, &heat_W), BOIL_OK);
        assert_close(heat_W, 100 * 2.4, 1e-12, 0);
    }
    boil_simulation_free(own);
}

/* the window ------------------------------------------------------------------------------------------------------ */

static void test_rim_is_the_other_end(void **state)
{
    (void)state;
    boil_plant p = open_plant(1);
    boil_run_options o = boil_run_options_default();
    boil_action load = plate_action(60, 1);
    boil_schedule s = schedule_with(600, &load, 1);
    double low, high;
    p.tank.depth_m = 0.62;
    assert_int_equal(boil_heater_size_for_recovery(&p, &s, &o, 120, 0.002, &low), BOIL_OK);
    boil_simulation *own = NULL;
    const boil_holding_case of = {&p, &s, o, 120, false, &own};
    boil_leaving leaving = {.of = &of, .laws = BOIL_CLOSURES_LIKELY};
    assert_int_equal(boil_leaving_most(&leaving, low, boil_heater_size_most(&p), 0, &high), BOIL_OK);
    print_message("window from %.2f to %.2f kW\n", low / 1000, high / 1000);
    assert_true(high > low);
    assert_true(freeboard(&of, high) >= 0 && freeboard(&of, 1.02 * high) < 0);
    boil_simulation_free(own);
    boil_schedule_free(&s);
}

static bool in_time(const boil_holding_case *of, double heat_W)
{
    boil_holding a;
    assert_int_equal(boil_holding_by(of, heat_W, BOIL_CLOSURES_LIKELY, &a), BOIL_OK);
    return !(a.breaks & BOIL_BREAKS_SLOW);
}

/* Water poured while the boil is away floats and surges when it returns; more heat keeps the boil, and there is no surge. */
static void test_a_surge_ends_with_more_heat(void **state)
{
    (void)state;
    scenario s;
    messages m;
    boil_run_options o = boil_run_options_default();
    double need, enough;
    messages_init(&m);
    assert_int_equal(scenario_read("scenarios/bench-tank.bath", &s, &m), BOIL_OK);
    assert_int_equal(boil_heater_size_for_recovery(&s.plant, &s.schedule, &o, 240, 0.002, &need), BOIL_OK);
    boil_simulation *own = NULL;
    const boil_holding_case of = {&s.plant, &s.schedule, o, 240, false, &own};
    while (in_time(&of, 0.98 * need)) /* the likely laws need less than all of them */
        need *= 0.98;
    boil_simulation_free(own);
    assert_true(over_rim(&s.plant, &s.schedule, need));
    for (enough = need; over_rim(&s.plant, &s.schedule, enough);)
        assert_true((enough *= 1.05) < 2 * need);
    print_message("back in time with %.0f W, below the rim with %.0f W\n", need, enough);
    scenario_free(&s);
    messages_free(&m);
}

/* A brimful tank: the window is shut; with the lighter load or the wider tank it opens, with 10 % less of the change not. */
static void test_no_heat_does_both(void **state)
{
    (void)state;
    boil_plant p = open_plant(1);
    boil_run_options o = boil_run_options_default();
    boil_action load = plate_action(60, 2);
    boil_schedule s = schedule_with(400, &load, 1), lighter;
    double heat, high, share, times;
    p.tank.depth_m = 0.523;
    p.limits.freeboard_m = 0;
    assert_int_equal(boil_heater_size_for_recovery(&p, &s, &o, 120, 0.002, &heat), BOIL_OK);
    boil_simulation *own = NULL;
    const boil_holding_case of = {&p, &s, o, 120, false, &own};
    boil_leaving leaving = {.of = &of, .laws = BOIL_CLOSURES_LIKELY};
    assert_int_equal(boil_leaving_most(&leaving, heat, boil_heater_size_most(&p), 0, &high), BOIL_OK);
    assert_true(high == 0);
    boil_simulation_free(own);
    assert_int_equal(boil_load_size_opening_load(&p, &s, &o, 120, &share), BOIL_OK);
    assert_int_equal(boil_load_size_opening_area(&p, &s, &o, 120, &times), BOIL_OK);
    print_message("shut at %.2f kW; opens with x%.3f the load or x%.3f the area\n", heat / 1000, share, times);
    assert_true(share < 1 && times > 1);
    assert_int_equal(boil_load_size_scaled(&s, share, &lighter), BOIL_OK);
    assert_int_equal(boil_heater_size_for_recovery(&p, &lighter, &o, 120, 0.002, &heat), BOIL_OK);
    assert_true(leaves_freeboard(&p, &lighter, heat));
    boil_schedule_free(&lighter);
    boil_plant wide = boil_load_size_widened(&p, times), less_wide = boil_load_size_widened(&p, 0.9 * times);
    assert_close(boil_tank_area(&wide.tank), times * boil_tank_area(&p.tank), 1e-12, 0);
    assert_int_equal(boil_heater_size_for_recovery(&wide, &s, &o, 120, 0.002, &heat), BOIL_OK);
    assert_true(leaves_freeboard(&wide, &s, heat));
    assert_int_equal(boil_heater_size_for_recovery(&less_wide, &s, &o, 120, 0.02, &heat), BOIL_OK);
    assert_false(leaves_freeboard(&less_wide, &s, heat));
    boil_schedule_free(&s);
}

/* steel ----------------------------------------------------------------------------------------------------------- */

static void test_heaviest_holds_and_one_per_cent_more_does_not(void **state)
{
    (void)state;
    boil_plant p = open_plant(40e3);
    boil_run_options o = boil_run_options_default();
    for (double planned = 0.2; planned < 6; planned *= 20) { /* from below and from above */
        boil_action load = plate_action(60, planned);
        boil_schedule s = schedule_with(600, &load, 1), at, beyond;
        double times;
        assert_int_equal(boil_load_size_heaviest(&p, &s, &o, 120, &times), BOIL_OK);
        print_message("40 kW: at most %.2f kg\n", times * load.is.load.mass_kg);
        assert_int_equal(boil_load_size_scaled(&s, times, &at), BOIL_OK);
        assert_int_equal(boil_load_size_scaled(&s, 1.01 * times, &beyond), BOIL_OK);
        assert_true(meets(&p, &at, 40e3, 120));
        assert_false(meets(&p, &beyond, 40e3, 120));
        boil_schedule_free(&at);
        boil_schedule_free(&beyond);
        boil_schedule_free(&s);
    }
}

/* Thin parts in the ideal case: none may go in before the boil of the last is back, m c dT / Q later. */
static void test_interval_of_the_ideal_case(void **state)
{
    (void)state;
    boil_plant p = pinned_plant(), watered;
    boil_metal steel = boil_carbon_steel();
    boil_run_options o = boil_run_options_default();
    boil_load l = plate_action(0, 1).is.load;
    l.size_m = 0.5e-3;
    l.immersed_s = 60;
    l.drag_out_kg_m2 = 0;
    double interval, boil_K = (285 - 32) / 1.8 + BOIL_ZERO_CELSIUS;
    double ideal = l.mass_kg * (boil_metal_enthalpy(&steel, boil_K) - boil_metal_enthalpy(&steel, CELSIUS(20))) / 30e3;
    assert_int_equal(boil_load_size_watered(&p, &watered), BOIL_OK);
    assert_int_equal(boil_load_size_interval(&watered, &l, &o, 120, &interval), BOIL_OK);
    print_message("interval %.1f s, m c dT / Q %.1f s\n", interval, ideal);
    assert_close(interval, ideal, 0.03, 0);
}

/* The last moment of its own shift says nothing of a load that is repeated, or comes next: it would stay out. */
static void test_a_moment_of_another_clock_is_forgotten(void **state)
{
    (void)state;
    boil_plant p = open_plant(25e3);
    boil_action a = plate_action(0, 4);
    a.is.load.at_boil = true;
    a.is.load.immersed_s = 600;
    a.is.load.latest_s = 700;
    boil_schedule shift, repeated;
    boil_schedule_init(&shift, 3600);
    assert_int_equal(boil_schedule_add(&shift, &a), BOIL_OK);
    assert_int_equal(boil_load_size_repeated(&a.is.load, 120, 60, &repeated), BOIL_OK);
    for (size_t i = 0; i < repeated.count; i++)
        assert_true(repeated.actions[i].is.load.at_boil && repeated.actions[i].is.load.latest_s == 0);
    assert_close(boil_correct_next_load(&p, &shift).latest_s, 0, 0, 0);
    boil_schedule_free(&shift);
    boil_schedule_free(&repeated);
}

static void test_never_short_enough(void **state)
{
    (void)state;
    boil_plant p = open_plant(25e3), watered;
    boil_run_options o = boil_run_options_default();
    boil_load l = plate_action(0, 4).is.load;
    double interval;
    assert_int_equal(boil_load_size_watered(&p, &watered), BOIL_OK);
    assert_int_equal(boil_load_size_interval(&watered, &l, &o, 60, &interval), BOIL_NO_ROOT);
}

/* calm ------------------------------------------------------------------------------------------------------------ */

/* Losses off: all heat makes steam, and a cold bath takes its own enthalpy. */
static void test_calm_ideal(void **state)
{
    (void)state;
    boil_plant p = pinned_plant();
    boil_steady_state c, hotter;
    assert_int_equal(boil_steady_state_at(&p, 30e3, &c), BOIL_OK);
    assert_int_equal(boil_steady_state_at(&p, 60e3, &hotter), BOIL_OK);
    assert_true(c.losses_W < 10 && c.evaporated_kg_s == 0);
    assert_close(hotter.steam_kg_s, 2 * c.steam_kg_s, 1e-9, 0);
    /* Steam at 101.325 kPa and 140.6 degC: 1.866 m3/kg, interpolated from memory in the steam tables; 0.5 %. */
    assert_close(c.steam_m3_s / c.steam_kg_s, 1.866, 5e-3, 0);
    assert_true(hotter.swell_m > c.swell_m && c.freeboard_m < p.tank.depth_m - p.tank.level_m);
}

static void test_heat_up(void **state)
{
    (void)state;
    boil_plant p = pinned_plant();
    boil_initial_state charged;
    boil_run_options o = boil_run_options_default();
    double time_s;
    assert_int_equal(boil_plant_initial(&p, &charged), BOIL_OK);
    double taken_J = boil_solution_heat(&charged.mixture, charged.boiling_point_K).enthalpy_J -
                     boil_solution_heat(&charged.mixture, CELSIUS(20)).enthalpy_J;
    assert_int_equal(boil_steady_state_heat_up(&p, &o, 30e3, &time_s), BOIL_OK);
    print_message("heating up: %.0f s, enthalpy over heat %.0f s\n", time_s, taken_J / 30e3);
    assert_close(time_s, taken_J / 30e3, 1e-4, 0);
    assert_int_equal(boil_steady_state_heat_up(&p, &o, 1, &time_s), BOIL_OK);
    assert_true(isnan(time_s));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_search_brackets),
        cmocka_unit_test(test_search_ends),
        cmocka_unit_test(test_turning_from_near),
        cmocka_unit_test(test_ideal_case),
        cmocka_unit_test(test_answer_meets_and_one_per_cent_less_does_not),
        cmocka_unit_test(test_slow_load_never_stops_the_boil),
        cmocka_unit_test(test_tiny_loads_need_no_more),
        cmocka_unit_test(test_no_search_goes_below_the_least),
        cmocka_unit_test(test_rim_is_the_other_end),
        cmocka_unit_test(test_a_surge_ends_with_more_heat),
        cmocka_unit_test(test_no_heat_does_both),
        cmocka_unit_test(test_heaviest_holds_and_one_per_cent_more_does_not),
        cmocka_unit_test(test_interval_of_the_ideal_case),
        cmocka_unit_test(test_a_moment_of_another_clock_is_forgotten),
        cmocka_unit_test(test_never_short_enough),
        cmocka_unit_test(test_calm_ideal),
        cmocka_unit_test(test_heat_up),
    };
    gsl_set_error_handler_off();
    return cmocka_run_group_tests_name("size", tests, NULL, NULL);
}
