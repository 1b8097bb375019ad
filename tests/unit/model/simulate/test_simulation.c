/* A run stopped, copied and carried on is the run that was left alone, to the last bit. */
#include <gsl/gsl_errno.h>
#include <string.h>

#include "support/close.h"

#include "integrate/march_parts.h"
#include "simulate/simulation.h"
#include "support/cases.h"
#include "support/same_history.h"

#define HOUR 3600.0

/* A load goes in and is lifted, water is poured, salts follow, heat is changed, a valve works; water again at `late_s`. Two acts wait
   for what the load does, and water pours while it boils. */
static void fill_schedule(boil_schedule *s, double late_s, double late_kg)
{
    boil_action load = plate_action(60, 2), water = two_gallons_action(300, 120), late = two_gallons_action(late_s, 60);
    boil_action salts = {.time_s = 900, .kind = BOIL_ACTION_SALTS};
    boil_action dial = {.time_s = 1500, .kind = BOIL_ACTION_HEAT, .is.heat.dial = 0.7};
    load.is.load.immersed_s = 800;
    load.is.load.rinse_kg_m2 = 0.1;
    salts.is.salts = (boil_action_salts){4, 60, CELSIUS(20), {0.80, 0.15, 0.05}};
    late.is.water.mass_kg = late_kg;
    boil_action quiet = {.time_s = 30, .kind = BOIL_ACTION_MIXER, .wait.state = BOIL_WAIT_QUIET, .is.on = true};
    boil_action back = {.time_s = 62, .kind = BOIL_ACTION_MIXER, .is.on = false};
    back.wait = (boil_wait){.state = BOIL_WAIT_BACK, .follows = true, .after = 0, .for_s = 100};
    boil_action tap = two_gallons_action(40, 400);
    tap.pour.while_boiling = true;
    boil_action bail = {.time_s = 320, .kind = BOIL_ACTION_BAIL, .name = 2, .is = {.take = {0.01, 60}}};
    boil_action run_back = {.time_s = 500, .kind = BOIL_ACTION_RETURN, .name = 2, .is = {.back = {.over_s = 60}}};
    boil_action all[] = {load, water, salts, dial, late, quiet, back, tap, bail, run_back};
    boil_schedule_init(s, 1.5 * HOUR);
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++)
        assert_int_equal(boil_schedule_add(s, &all[i]), BOIL_OK);
    boil_schedule_sort(s);
}

static boil_plant watched_plant(void)
{
    boil_plant p = open_plant(34e3);
    p.control.mode = BOIL_WATER_CONTROL_ON_OFF;
    p.control.set_point_K = CELSIUS(140.8);
    p.control.differential_K = 0.2;
    p.control.rate_kg_s = 0.04;
    return p;
}

static boil_run_options traced(void)
{
    boil_run_options o = boil_run_options_default();
    o.row_interval_s = 30;
    return o;
}

/* Stopped at a moment, copied, and both carried on: the copy first, so that what it does could spoil the original. */
static void copy_at(const boil_plant *p, const boil_schedule *s, double until_s, const boil_history *whole)
{
    boil_run_options o = traced();
    boil_simulation *r = NULL, *copy = NULL;
    assert_int_equal(boil_simulation_begin(p, s, &o, &r), BOIL_OK);
    assert_int_equal(boil_simulation_advance(r, until_s), BOIL_OK);
    assert_int_equal(boil_simulation_copy(r, s, &copy), BOIL_OK);
    assert_int_equal(boil_simulation_finish(copy), BOIL_OK);
    assert_int_equal(boil_simulation_finish(r), BOIL_OK);
    assert_same_history(boil_simulation_so_far(copy), whole);
    assert_same_history(boil_simulation_so_far(r), whole);
    boil_simulation_free(copy);
    boil_simulation_free(r);
}

static void a_copy_goes_on_as_the_run_left_alone(void **state)
{
    (void)state;
    const double moments[] = {0, 1, 60, 60.5, 75, 140, 333, 500, 905, 1500, 2400, 1.5 * HOUR, 1e9};
    boil_plant p = watched_plant();
    boil_run_options o = traced();
    boil_schedule s;
    boil_history whole;
    fill_schedule(&s, 2400, 8);
    assert_int_equal(boil_run(&p, &s, &o, &whole), BOIL_OK);
    assert_true(whole.quiet_count > 0 && whole.valve_count > 2 && whole.loads_count == 1 && whole.additions_count == 5);
    for (size_t i = 0; i < sizeof moments / sizeof moments[0]; i++)
        copy_at(&p, &s, moments[i], &whole);
    boil_history_free(&whole);
    boil_schedule_free(&s);
}

/* Two variants that part at 2400 s, from one run up to there, against each from its start; the original is freed first. */
static void variants_go_on_from_their_last_common_moment(void **state)
{
    (void)state;
    const double late_kg[] = {2, 8};
    boil_plant p = watched_plant();
    boil_run_options o = traced();
    boil_schedule s[2];
    boil_simulation *common = NULL, *variant[2] = {NULL, NULL};
    for (int i = 0; i < 2; i++)
        fill_schedule(&s[i], 2400, late_kg[i]);
    assert_int_equal(boil_simulation_begin(&p, &s[0], &o, &common), BOIL_OK);
    assert_int_equal(boil_simulation_advance(common, 2400), BOIL_OK);
    for (int i = 0; i < 2; i++)
        assert_int_equal(boil_simulation_copy(common, &s[i], &variant[i]), BOIL_OK);
    boil_simulation_free(common);
    double water_kg[2];
    for (int i = 0; i < 2; i++) {
        boil_history whole, parted;
        assert_int_equal(boil_run(&p, &s[i], &o, &whole), BOIL_OK);
        assert_int_equal(boil_simulation_finish(variant[i]), BOIL_OK);
        assert_int_equal(boil_simulation_hand_over(variant[i], &parted), BOIL_OK);
        boil_simulation_free(variant[i]);
        assert_same_history(&parted, &whole);
        water_kg[i] = parted.summary.water_added_kg;
        boil_history_free(&whole);
        boil_history_free(&parted);
        boil_schedule_free(&s[i]);
    }
    assert_close(water_kg[1] - water_kg[0], late_kg[1] - late_kg[0], 0, 1e-9);
}

/* At tolerances from 1e-5 on, each a tenth of the one before; K/s by which the bath warms over a quarter of an hour. */
enum { HOT_TOLERANCES = 5 };

static double hot_at_tolerances(const boil_plant *p, const boil_action *load, double hot_s[HOT_TOLERANCES])
{
    const double duration_s = 900;
    double warms_K = 0;
    boil_schedule s;
    boil_schedule_init(&s, duration_s);
    assert_int_equal(boil_schedule_add(&s, load), BOIL_OK);
    for (int i = 0; i < HOT_TOLERANCES; i++) {
        boil_history h;
        boil_run_options o = boil_run_options_default();
        o.tolerance = pow(10, -5 - i);
        assert_int_equal(boil_run(p, &s, &o, &h), BOIL_OK);
        hot_s[i] = h.loads[0].hot_s;
        warms_K = h.summary.temperature_end_K - h.summary.temperature_start_K;
        print_message("hot after %.3f s at a tolerance of %g\n", hot_s[i], o.tolerance);
        boil_history_free(&h);
    }
    boil_schedule_free(&s);
    return warms_K / duration_s;
}

/* Steps are as long as the tolerance lets them be; when a load is hot does not hang on where they end. */
static void hot_is_a_moment_within_a_step(void **state)
{
    (void)state;
    double hot_s[HOT_TOLERANCES];
    boil_plant p = open_plant(34e3);
    boil_action load = plate_action(60, 2);
    hot_at_tolerances(&p, &load, hot_s);
    for (int i = 0; i < 4; i++)
        assert_close(hot_s[i], hot_s[4], 0, 0.1);
}

/* It follows the bath, and comes nearer to being hot only as a twentieth of its way grows: by that the error that steps allow its
   steel, 600 K times the tolerance, is told as a time. */
static void hot_in_a_bath_that_warms(void **state)
{
    (void)state;
    const double lacks = 0.05, steel_K = 600, looked_s = 5e-3;
    double hot_s[HOT_TOLERANCES];
    boil_plant p = open_plant(60e3);
    boil_action load = {.time_s = 60, .kind = BOIL_ACTION_LOAD, .is.load = boil_load_default()};
    p.charge.temperature_K = CELSIUS(30);
    load.is.load.mass_kg = 20;
    load.is.load.size_m = 0.008;
    load.is.load.temperature_K = CELSIUS(20);
    double warms_K_s = hot_at_tolerances(&p, &load, hot_s);
    for (int i = 0; i < 4; i++)
        assert_close(hot_s[i], hot_s[4], 0, steel_K * pow(10, -5 - i) / (lacks * warms_K_s) + looked_s);
}

/* Where there is no such bath the range has ended, and nothing else has happened. */
static void a_state_that_is_refused_is_out_of_range(void **state)
{
    (void)state;
    boil_plant p = open_plant(34e3);
    boil_schedule s;
    boil_run_options o = boil_run_options_default();
    boil_simulation *r = NULL;
    boil_schedule_init(&s, HOUR);
    assert_int_equal(boil_simulation_begin(&p, &s, &o, &r), BOIL_OK);
    assert_int_equal(boil_simulation_advance(r, 60), BOIL_OK);
    assert_true(boil_march_steps(r->march) > 0);
    double y[BOIL_STATE_FIXED], g[BOIL_GUARDS_MAX];
    assert_int_equal(r->unknowns, BOIL_STATE_FIXED); /* no parts */
    memcpy(y, r->y, sizeof y);
    y[BOIL_STATE_BATH_WATER] = -1;
    for (size_t i = 0; i < BOIL_GUARDS_MAX; i++)
        g[i] = 7;
    boil_march_guards_at(r->march, r->t, y, g);
    for (size_t i = 0; i < BOIL_GUARDS; i++)
        assert_close(g[i], i == BOIL_GUARD_RANGE ? 1 : -1, 0, 0);
    boil_simulation_free(r);
    boil_schedule_free(&s);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_copy_goes_on_as_the_run_left_alone),
        cmocka_unit_test(variants_go_on_from_their_last_common_moment),
        cmocka_unit_test(hot_is_a_moment_within_a_step),
        cmocka_unit_test(hot_in_a_bath_that_warms),
        cmocka_unit_test(a_state_that_is_refused_is_out_of_range),
    };
    return cmocka_run_group_tests_name("simulation", tests, NULL, NULL);
}
