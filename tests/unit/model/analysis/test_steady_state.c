/* The steady boil's own numbers, each run as it says: fed at the makeup it stands still, at the hold it boils on. */
#include <gsl/gsl_errno.h>

#include "support/close.h"

#include "analysis/steady_state.h"
#include "boilback.h"
#include "support/cases.h"
#include "support/numbers.h"
#include "support/shop.h"

static const drawn_numbers usual = {0, 3};

static boil_history run_for(const boil_plant *p, boil_closures laws, double heat_W, double feed_kg_s, double duration_s)
{
    boil_plant sized;
    boil_schedule s;
    boil_history h;
    boil_run_options o = boil_run_options_default();
    o.closures = laws;
    boil_action feed = {.kind = BOIL_ACTION_WATER};
    feed.is.water = (boil_action_water){feed_kg_s * duration_s, duration_s, fmax(p->ambient.temperature_K, BOIL_ZERO_CELSIUS)};
    assert_int_equal(boil_heater_size_plant(p, heat_W, &sized), BOIL_OK);
    boil_schedule_init(&s, duration_s);
    if (feed_kg_s > 0)
        assert_int_equal(boil_schedule_add(&s, &feed), BOIL_OK);
    assert_int_equal(boil_run(&sized, &s, &o, &h), BOIL_OK);
    boil_schedule_free(&s);
    return h;
}

/* Half a degree Fahrenheit and a tenth of an inch: what a shop would see. */
static void test_fed_at_the_makeup_it_stands_still(void **state)
{
    (void)state;
    double worst_K = 0, worst_m = 0;
    const drawn_numbers tried = numbers_asked("PLANTS", usual);
    for (int i = tried.from; i < tried.to; i++) {
        boil_plant p = shop_plant((size_t)i);
        boil_steady_state least, calm;
        double heat_W;
        assert_int_equal(boil_steady_state_at(&p, 0, &least), BOIL_OK);
        p.fittings.lid_on = i % 5 == 4;
        heat_W = least.losses_W * (1.2 + 0.2 * (i % 7));
        assert_int_equal(boil_steady_state_at(&p, heat_W, &calm), BOIL_OK);
        boil_history h = run_for(&p, BOIL_CLOSURES_LIKELY, heat_W, calm.makeup_kg_s, 8 * 3600);
        double off_K = h.summary.boiling_point_end_K - h.summary.boiling_point_start_K;
        double off_m = h.summary.still_level_end_m - h.summary.still_level_start_m;
        print_message("plant %d%s: %.3g kW, %.4g kg/h: after 8 h %+.2f K, %+.1f mm\n", i, p.fittings.lid_on ? ", lid" : "",
                      heat_W / 1e3, calm.makeup_kg_s * 3600, off_K, 1e3 * off_m);
        assert_int_equal(h.end, BOIL_RUN_DONE);
        worst_K = fmax(worst_K, fabs(off_K));
        worst_m = fmax(worst_m, fabs(off_m));
        boil_history_free(&h);
    }
    print_message("worst %.2f K, %.1f mm\n", worst_K, 1e3 * worst_m);
    assert_true(worst_K <= 0.5 / 1.8 && worst_m <= 2.54e-3);
}

static bool boils_on(const boil_plant *p, double heat_W, boil_closures laws)
{
    boil_steady_state calm;
    assert_int_equal(boil_steady_state_at(p, heat_W, &calm), BOIL_OK);
    boil_history h = run_for(p, laws, heat_W, p->fittings.lid_on ? 0 : calm.makeup_kg_s, 14 * 3600);
    bool on = h.end == BOIL_RUN_DONE && h.quiet_count == 0;
    boil_history_free(&h);
    return on;
}

static bool surely_boils_on(const boil_plant *p, double heat_W)
{
    return boils_on(p, heat_W, BOIL_CLOSURES_LIKELY) && boils_on(p, heat_W, BOIL_CLOSURES_GRAVE) &&
           boils_on(p, heat_W, BOIL_CLOSURES_SUDDEN);
}

/* Over a night, lid off and on; 3 % less may lose the boil. */
static void test_the_hold_keeps_the_boil(void **state)
{
    (void)state;
    boil_run_options o = boil_run_options_default();
    const drawn_numbers tried = numbers_asked("PLANTS", usual);
    for (int i = tried.from; i < tried.to; i++)
        for (int lid = 0; lid < 2; lid++) {
            boil_plant p = shop_plant((size_t)i);
            boil_steady_state calm;
            double hold_W;
            p.fittings.lid_on = lid;
            assert_int_equal(boil_steady_state_at(&p, 0, &calm), BOIL_OK);
            assert_int_equal(boil_steady_state_hold(&p, &o, &hold_W), BOIL_OK);
            bool held = surely_boils_on(&p, hold_W), less = surely_boils_on(&p, 0.97 * hold_W);
            print_message("plant %d, lid %s: losses %.4g kW, hold x%.3f: %s; 3 %% less: %s\n", i, lid ? "on" : "off",
                          calm.losses_W / 1e3, hold_W / calm.losses_W, held ? "boils on" : "lost", less ? "boils on" : "lost");
            assert_true(held && !less);
        }
}

/* What the lid condenses leaves, whatever it comes from: with 3 % less heat than the losses a covered bath stands a little below
   its boil a night long, where it loses as much less. */
static void test_a_covered_bath_loses_no_more_off_its_boil(void **state)
{
    (void)state;
    boil_plant p = shop_plant(1);
    boil_steady_state calm;
    p.fittings.lid_on = true;
    assert_int_equal(boil_steady_state_at(&p, 0, &calm), BOIL_OK);
    boil_history h = run_for(&p, BOIL_CLOSURES_LIKELY, 0.97 * calm.losses_W, 0, 14 * 3600);
    double below_K = h.summary.boiling_point_end_K - h.summary.temperature_end_K;
    print_message("with 3 %% less than its losses %.2f K below its boil\n", below_K);
    assert_true(below_K > 0 && below_K < 3);
    boil_history_free(&h);
}

/* Losses off, all heat makes vapour of the feed: m = Q/(h_v - h_w), 2757 - 83.9 kJ/kg at 140.6 and 20 degC and 1 atm [steam tables,
   from memory; 0.3 %]; a kilogram of water holds 100.2 kJ at 23.9 degC and 419.1 at 100 [the same]. A factor on what evaporates changes
   it by less than 1 %: what boils off less evaporates more. */
static void test_makeup_is_heat_over_vapour(void **state)
{
    (void)state;
    boil_plant p = pinned_plant(), open = open_plant(60e3);
    boil_steady_state c, as_much;
    assert_int_equal(boil_steady_state_at(&p, 30e3, &c), BOIL_OK);
    assert_close(c.makeup_kg_s, 30e3 / (2757e3 - 83.9e3), 3e-3, 0);
    double cold, warm;
    assert_int_equal(boil_steady_state_makeup(&open, 60e3, 297.05, &cold), BOIL_OK);
    assert_int_equal(boil_steady_state_makeup(&open, 60e3, 373.15, &warm), BOIL_OK);
    assert_close(warm / cold, (2757 - 100.2) / (2757 - 419.1), 2e-3, 0);
    assert_int_equal(boil_steady_state_at(&open, 60e3, &c), BOIL_OK);
    open.losses.evaporation_factor = 0.5;
    assert_int_equal(boil_steady_state_at(&open, 60e3, &as_much), BOIL_OK);
    assert_close(as_much.makeup_kg_s, c.makeup_kg_s, 1e-2, 0);
}

/* An hour, two, four: the longest that is not over two weeks has 256. */
static void test_a_cold_bath_is_given_two_weeks(void **state)
{
    (void)state;
    boil_plant p = open_plant(0);
    p.charge.temperature_K = CELSIUS(25);
    boil_run_options o = boil_run_options_default();
    boil_history h;
    assert_int_equal(boil_steady_state_reached(&p, &o, false, &h), BOIL_OK);
    assert_true(isnan(h.summary.time_to_boil_s));
    assert_close(h.end_s, 256 * 3600, 1e-12, 0);
    boil_history_free(&h);
}

static void test_what_makes_no_sense_is_refused(void **state)
{
    (void)state;
    boil_plant p = pinned_plant();
    boil_steady_state c;
    assert_int_equal(boil_steady_state_at(NULL, 30e3, &c), BOIL_BAD_INPUT);
    assert_int_equal(boil_steady_state_at(&p, 30e3, NULL), BOIL_BAD_INPUT);
    assert_int_equal(boil_steady_state_at(&p, (double)NAN, &c), BOIL_BAD_INPUT);
    assert_int_equal(boil_steady_state_at(&p, (double)INFINITY, &c), BOIL_BAD_INPUT);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_fed_at_the_makeup_it_stands_still),
        cmocka_unit_test(test_the_hold_keeps_the_boil),
        cmocka_unit_test(test_a_covered_bath_loses_no_more_off_its_boil),
        cmocka_unit_test(test_makeup_is_heat_over_vapour),
        cmocka_unit_test(test_a_cold_bath_is_given_two_weeks),
        cmocka_unit_test(test_what_makes_no_sense_is_refused),
    };
    gsl_set_error_handler_off();
    return cmocka_run_group_tests_name("steady state", tests, NULL, NULL);
}
