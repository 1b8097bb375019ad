/* The window of heats: what it says is run again, just inside its ends and just outside. */
#include <gsl/gsl_errno.h>

#include "support/close.h"

#include "analysis/heater_size.h"
#include "analysis/heater_window.h"
#include "support/cases.h"

static const double limit_s = 120;

static boil_schedule one_load(double times)
{
    const boil_action load = plate_action(60, times);
    return schedule_with(400, &load, 1);
}

/* Whether every load of a run that reached its end had the boil back in time. */
static bool meets(const boil_history *h)
{
    for (size_t i = 0; i < h->loads_count; i++)
        if (!(h->loads[i].recovery_s <= limit_s))
            return false;
    return h->end == BOIL_RUN_DONE;
}

/* By all laws, with so much heat. */
static boil_holding all_with(const boil_plant *p, const boil_schedule *s, double heat_W)
{
    boil_simulation *own = NULL;
    const boil_holding_case of = {p, s, boil_run_options_default(), limit_s, false, &own};
    boil_holding all;
    assert_int_equal(boil_holding_by_all(&of, heat_W, &all), BOIL_OK);
    boil_simulation_free(own);
    return all;
}

/* With so much heat: whether the boil is back in time by all laws, and whether it stays below the rim by the likely ones. */
static void run_with(const boil_plant *p, const boil_schedule *s, double heat_W, bool *back, bool *below)
{
    boil_simulation *own = NULL;
    const boil_holding_case of = {p, s, boil_run_options_default(), limit_s, false, &own};
    boil_holding all = all_with(p, s, heat_W), likely;
    assert_int_equal(boil_holding_by(&of, heat_W, BOIL_CLOSURES_LIKELY, &likely), BOIL_OK);
    boil_simulation_free(own);
    *back = !(all.breaks & BOIL_BREAKS_SLOW);
    *below = likely.freeboard_min_m >= 0;
}

/* A tank with room: open from the smallest heat to well above it, and neither a little less nor a little more will do. */
static void test_an_open_window_ends_where_it_says(void **state)
{
    (void)state;
    boil_plant p = open_plant(40e3);
    boil_schedule s = one_load(1);
    boil_run_options o = boil_run_options_default();
    boil_heater_window w;
    bool back, below;
    p.tank.depth_m = 0.7;
    p.limits.freeboard_m = 0.1;
    assert_int_equal(boil_heater_window_of(&p, &s, &o, limit_s, &w), BOIL_OK);
    print_message("window %.2f to %.2f kW, at the gravest %.2f\n", w.heat_W / 1e3, w.likely.heat_W / 1e3,
                  w.possible.heat_W / 1e3);
    assert_true(w.found == BOIL_WINDOW_FOUND && !boil_heater_window_shut(&w) && w.likely.rim == BOIL_RIM_AT);
    assert_true(w.likely.from_W == w.heat_W);
    assert_int_equal(boil_heater_window_opening_load(&p, &s, &o, limit_s, &w), BOIL_OK);
    assert_int_equal(boil_heater_window_opening_area(&p, &s, &o, limit_s, &w), BOIL_OK);
    assert_true(isnan(w.opening_load) && isnan(w.opening_area));
    run_with(&p, &s, w.heat_W, &back, &below);
    assert_true(back && below);
    run_with(&p, &s, 0.99 * w.heat_W, &back, &below);
    assert_false(back);
    run_with(&p, &s, w.likely.heat_W, &back, &below);
    assert_true(back && below);
    run_with(&p, &s, 1.02 * w.likely.heat_W, &back, &below);
    assert_false(below);
    assert_close(w.own_W, p.heater.input_W * p.heater.efficiency, 1e-12, 0);
    assert_close(w.input_W, w.heat_W / p.heater.efficiency, 1e-12, 0);
    assert_true(meets(&w.proof) && !meets(&w.less));
    boil_heater_window_free(&w);
    boil_schedule_free(&s);
}

/* The possible ends hold by all laws in all that is done, and lie below the likely ones. A valve of
   the plant's own, too small for more, ends it before the freeboard does; one that is put in its place never. */
static void test_the_possible_ends_are_of_all_that_is_done(void **state)
{
    (void)state;
    boil_plant p = open_plant(40e3), watered;
    const boil_action loads[] = {plate_action(60, 1), plate_action(900, 1)};
    boil_schedule s = schedule_with(2 * 3600, loads, 2);
    boil_run_options o = boil_run_options_default();
    boil_heater_window w;
    p.tank.depth_m = 0.7;
    p.limits.freeboard_m = 0.1;
    assert_int_equal(boil_heater_window_of(&p, &s, &o, limit_s, &w), BOIL_OK);
    assert_true(w.leaves_possible.heat_W <= w.leaves_likely.heat_W && w.possible.heat_W <= w.likely.heat_W);
    assert_true(all_with(&p, &s, w.leaves_possible.heat_W).freeboard_min_m >= 0.1);
    assert_true(all_with(&p, &s, w.possible.heat_W).freeboard_min_m >= 0);
    assert_true(isnan(w.strength_W));
    assert_int_equal(boil_holding_plant(&p, w.leaves_possible.heat_W, &watered), BOIL_OK);
    watered.control.rate_kg_s = 0.5 * w.leaves_possible.heat_W / 2.65e6;
    boil_heater_window_free(&w);
    assert_int_equal(boil_heater_window_of(&watered, &s, &o, limit_s, &w), BOIL_OK);
    assert_true(w.strength_W > w.heat_W && w.strength_W < w.leaves_possible.heat_W);
    assert_int_equal(all_with(&watered, &s, w.strength_W).breaks, 0);
    assert_true(all_with(&watered, &s, 1.021 * w.strength_W).breaks & BOIL_BREAKS_STRONG);
    boil_heater_window_free(&w);
    boil_schedule_free(&s);
}

/* A brimful tank: no heat does both, and something smaller or wider does. */
static void test_a_shut_window_says_what_opens_it(void **state)
{
    (void)state;
    boil_plant p = open_plant(40e3);
    boil_schedule s = one_load(2);
    boil_run_options o = boil_run_options_default();
    boil_heater_window w;
    p.tank.depth_m = 0.523;
    p.limits.freeboard_m = 0;
    assert_int_equal(boil_heater_window_of(&p, &s, &o, limit_s, &w), BOIL_OK);
    assert_true(w.found == BOIL_WINDOW_FOUND && boil_heater_window_shut(&w) && boil_window_end_shut(&w.likely));
    assert_true(isnan(w.opening_load) && isnan(w.opening_area)); /* not asked yet */
    assert_int_equal(boil_heater_window_opening_load(&p, &s, &o, limit_s, &w), BOIL_OK);
    assert_int_equal(boil_heater_window_opening_area(&p, &s, &o, limit_s, &w), BOIL_OK);
    assert_true(w.opening_load < 1 && w.opening_area > 1);
    boil_heater_window_free(&w);
    boil_schedule_free(&s);
}

/* Its points rise, the window's own heat is among them, and each is of the kind that the window says. */
static void test_the_curve_agrees_with_its_window(void **state)
{
    (void)state;
    boil_plant p = open_plant(40e3);
    boil_schedule s = one_load(1);
    boil_run_options o = boil_run_options_default();
    boil_heater_window w;
    boil_heater_curve c;
    bool own = false;
    p.tank.depth_m = 0.7;
    p.limits.freeboard_m = 0.1;
    assert_int_equal(boil_heater_window_of(&p, &s, &o, limit_s, &w), BOIL_OK);
    assert_int_equal(boil_heater_curve_of(&p, &s, &o, limit_s, &w, &c), BOIL_OK);
    assert_int_equal(c.count, BOIL_CURVE_POINTS);
    assert_true(c.from_W < w.heat_W && c.to_W > w.likely.heat_W);
    for (const boil_curve_point *at = c.points; at < c.points + c.count; at++) {
        own = own || at->heat_W == w.heat_W;
        assert_true(at == c.points || at->heat_W >= at[-1].heat_W);
        if (at->heat_W >= w.heat_W && at->heat_W <= w.possible.heat_W)
            assert_true(at->kind == BOIL_CURVE_BELOW && at->slowest_s <= limit_s);
        if (at->heat_W > 1.02 * w.possible.heat_W)
            assert_true(at->kind != BOIL_CURVE_BELOW);
    }
    assert_true(own);
    boil_heater_window_free(&w);
    boil_schedule_free(&s);
}

/* Without a window up to four times the losses are shown; the scenario's own heat too, unless that is three times as much again. */
static void test_the_curve_shows_the_own_heat(void **state)
{
    (void)state;
    boil_plant p = open_plant(40e3);
    boil_schedule s = one_load(1);
    boil_run_options o = boil_run_options_default();
    boil_steady_state calm;
    boil_heater_curve c;
    assert_int_equal(boil_steady_state_at(&p, 0, &calm), BOIL_OK);
    boil_heater_window w = {.found = BOIL_WINDOW_NONE, .own_W = 6 * calm.losses_W};
    assert_int_equal(boil_heater_curve_of(&p, &s, &o, limit_s, &w, &c), BOIL_OK);
    assert_true(c.to_W > w.own_W && c.to_W < 1.1 * w.own_W);
    w.own_W = 20 * calm.losses_W;
    assert_int_equal(boil_heater_curve_of(&p, &s, &o, limit_s, &w, &c), BOIL_OK);
    assert_close(c.to_W, 4 * calm.losses_W, 1e-12, 0);
    boil_schedule_free(&s);
}

/* It never stops where no load stills it, be it the only one. */
static void test_one_load_that_stills_it_is_enough(void **state)
{
    (void)state;
    const double never = (double)NAN;
    for (size_t stilled = 0; stilled <= 3; stilled++) { /* 3: none of them */
        boil_load_result loads[3] = {{.boil_lost_s = never}, {.boil_lost_s = never}, {.boil_lost_s = never}};
        if (stilled < 3)
            loads[stilled].boil_lost_s = 100;
        const boil_heater_window w = {.proof = {.loads = loads, .loads_count = 3}};
        assert_int_equal(boil_heater_window_never_stops(&w), stilled == 3);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_an_open_window_ends_where_it_says),
        cmocka_unit_test(test_the_possible_ends_are_of_all_that_is_done),
        cmocka_unit_test(test_a_shut_window_says_what_opens_it),
        cmocka_unit_test(test_the_curve_agrees_with_its_window),
        cmocka_unit_test(test_the_curve_shows_the_own_heat),
        cmocka_unit_test(test_one_load_that_stills_it_is_enough),
    };
    gsl_set_error_handler_off();
    return cmocka_run_group_tests_name("heater window", tests, NULL, NULL);
}
