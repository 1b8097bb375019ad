/* A crust that hangs over the bath as the run begins: it is of the charge, and it is what a night leaves. */
#include <gsl/gsl_errno.h>

#include "support/close.h"

#include "case/plant.h"
#include "support/cases.h"

/* Half nitrate, in a trough of 0.9 m2, cold, with no heat. */
static boil_plant cold_plant(double crust_kg)
{
    boil_plant p = open_plant(60e3);
    p.tank.depth_m = 0.9;
    p.charge = (boil_initial_charge){{0.5, 0.4, 0.1}, BOIL_INITIAL_BY_BOILING_POINT, CELSIUS(140.5), CELSIUS(50)};
    p.heater.dial = 0;
    p.crust_kg = crust_kg;
    return p;
}

static boil_history heated(const boil_plant *p, double at_s, double hours)
{
    boil_action on = {.time_s = at_s, .kind = BOIL_ACTION_HEAT, .is.heat = {.order = BOIL_HEAT_TURN, .dial = 1}};
    boil_run_options o = boil_run_options_default();
    o.row_interval_s = 30;
    return run_actions(p, hours * 3600, &o, &on, 1);
}

static void it_is_of_the_charge(void **state)
{
    (void)state;
    boil_plant p = cold_plant(20), without = cold_plant(0);
    boil_initial_state charge;
    assert_int_equal(boil_plant_initial(&p, &charge), BOIL_OK);
    boil_history h = heated(&p, 0, 0.5), bare = heated(&without, 0, 0.5);
    assert_close(h.balance.salts.start_kg, boil_mixture_salts(&charge.mixture), 1e-12, 0);
    assert_close(h.balance.salts.start_kg, bare.balance.salts.start_kg, 1e-12, 0);
    assert_close(h.rows[0].nano3_kg, charge.mixture.salt[BOIL_NANO3] - 16, 1e-9, 0);
    assert_close(h.rows[0].nano2_kg, charge.mixture.salt[BOIL_NANO2] - 4, 1e-9, 0);
    assert_close(h.rows[0].naoh_kg, charge.mixture.salt[BOIL_NAOH], 1e-12, 0);
    assert_true(h.summary.crust_max_kg > 20); /* cold, it goes on to grow */
    assert_true(h.quiet_count == 1 && h.quiet[0].cause == BOIL_QUIET_START);
    assert_close(h.balance.salts.closure, 0, 0, 1e-9);
    assert_close(h.balance.energy.closure, 0, 0, 1e-9);
    boil_history_free(&h);
    boil_history_free(&bare);
}

/* On the floor it is of the charge likewise, dissolves from there, and insulates it: against grains that fall, and against none. */
static void salt_may_lie_on_the_floor(void **state)
{
    (void)state;
    boil_plant p = cold_plant(0), both = cold_plant(20);
    boil_initial_charge *c = &p.charge;
    p.bed_kg = 60;
    both.bed_kg = 40;
    boil_initial_state charge;
    assert_int_equal(boil_plant_initial(&p, &charge), BOIL_OK);
    boil_history h = heated(&p, 0, 0.5), with_crust = heated(&both, 0, 0.1);
    assert_close(h.balance.salts.start_kg, boil_mixture_salts(&charge.mixture), 1e-12, 0);
    assert_close(h.rows[0].nano3_kg, charge.mixture.salt[BOIL_NANO3] - 60 * c->blend[1] / (c->blend[1] + c->blend[2]), 1e-9, 0);
    assert_close(with_crust.rows[0].nano3_kg, h.rows[0].nano3_kg, 1e-12, 0);
    assert_true(h.summary.bed_max_m > 0.02 && h.summary.undissolved_max_kg >= 60);
    assert_true(h.summary.watched[BOIL_WATCH_SALT_BED].worst.value > 30); /* at full fire */
    assert_close(h.balance.salts.closure, 0, 0, 1e-9);
    assert_close(h.balance.energy.closure, 0, 0, 1e-9);
    p.bed_kg = 1e4;
    assert_string_equal(boil_plant_problem(&p),
                        "crust and salt on the floor must be less than the nitrate and nitrite of the bath");
    boil_history_free(&h);
    boil_history_free(&with_crust);
}

/* Stated as heavy as the run itself makes it in an hour without heat, it holds back as much. */
static void it_is_what_a_night_leaves(void **state)
{
    (void)state;
    boil_plant made = cold_plant(0);
    boil_history night = heated(&made, 3600, 3);
    boil_plant found = cold_plant(night.summary.crust_max_kg);
    boil_history h = heated(&found, 0, 2);
    print_message("crust %.1f kg, held back %.2f K, found %.2f K\n", night.summary.crust_max_kg,
                  night.summary.crust_superheat_K.value, h.summary.crust_superheat_K.value);
    assert_true(night.summary.crust_superheat_K.value > 0.5);
    assert_close(h.summary.crust_superheat_K.value, night.summary.crust_superheat_K.value, 0.1, 0);
    boil_history_free(&night);
    boil_history_free(&h);
}

/* What is worked out of a bath at its boil, or of one that is charged anew, has no crust. */
static void a_trial_at_the_boil_has_none(void **state)
{
    (void)state;
    boil_plant p = cold_plant(20), bare = cold_plant(0);
    p.bed_kg = 5;
    boil_steady_state a, b;
    boil_run_options o = boil_run_options_default();
    double with_s, bare_s;
    assert_int_equal(boil_steady_state_at(&p, 50e3, &a), BOIL_OK);
    assert_int_equal(boil_steady_state_at(&bare, 50e3, &b), BOIL_OK);
    assert_memory_equal(&a, &b, sizeof a);
    assert_int_equal(boil_steady_state_heat_up(&p, &o, 50e3, &with_s), BOIL_OK);
    assert_int_equal(boil_steady_state_heat_up(&bare, &o, 50e3, &bare_s), BOIL_OK);
    assert_close(with_s, bare_s, 0, 0);
}

static void what_cannot_be_is_refused(void **state)
{
    (void)state;
    boil_plant p = cold_plant(1e4);
    assert_string_equal(boil_plant_problem(&p),
                        "crust and salt on the floor must be less than the nitrate and nitrite of the bath");
    p = cold_plant(20);
    p.charge.temperature_K = 0; /* at its boil */
    assert_string_equal(boil_plant_problem(&p),
                        "bath with crust or salt on the floor must be colder than the boiling point of what is left dissolved");
    p = cold_plant(-1);
    assert_string_equal(boil_plant_problem(&p), "crust, and salt on the floor, must be between 0 kg and 1e5 kg");
    p = cold_plant((double)NAN);
    assert_string_equal(boil_plant_problem(&p), "crust, and salt on the floor, must be between 0 kg and 1e5 kg");
    p = cold_plant(1);
    p.charge.blend[BOIL_NAOH] = 1;
    p.charge.blend[BOIL_NANO3] = p.charge.blend[BOIL_NANO2] = 0;
    assert_string_equal(boil_plant_problem(&p),
                        "crust and salt on the floor must be less than the nitrate and nitrite of the bath");
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(it_is_of_the_charge),       cmocka_unit_test(salt_may_lie_on_the_floor),
        cmocka_unit_test(it_is_what_a_night_leaves), cmocka_unit_test(a_trial_at_the_boil_has_none),
        cmocka_unit_test(what_cannot_be_is_refused),
    };
    return cmocka_run_group_tests_name("found crust", tests, NULL, NULL);
}
