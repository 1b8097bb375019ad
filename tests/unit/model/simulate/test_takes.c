/* Bath liquid bailed, drained and run back: amounts by hand, and nothing lost. */
#include <gsl/gsl_errno.h>

#include "support/close.h"

#include "properties/solubility.h"
#include "support/cases.h"

static boil_action take_action(double time_s, boil_action_kind kind, double volume_m3, double over_s, int name)
{
    return (boil_action){.time_s = time_s, .kind = kind, .name = name, .is = {.take = {volume_m3, over_s}}};
}

/* Nothing crosses the tank's wall, and no heat is put in: only what is taken leaves. */
static boil_plant closed_plant(void)
{
    boil_plant p = pinned_plant();
    p.heater.dial = 0;
    return p;
}

static void what_is_bailed_is_bath_liquid(void **state)
{
    (void)state;
    const double volume_m3 = 0.02;
    boil_plant p = closed_plant();
    boil_initial_state start;
    boil_run_options o = boil_run_options_default();
    boil_action all[] = {take_action(60, BOIL_ACTION_BAIL, volume_m3, 120, 0),
                         take_action(300, BOIL_ACTION_DRAIN, volume_m3, 60, 0)};
    assert_int_equal(boil_plant_initial(&p, &start), BOIL_OK);
    boil_history h = run_actions(&p, 600, &o, all, 2);
    double salts = boil_mixture_salts(&start.mixture) / boil_mixture_mass(&start.mixture);
    assert_int_equal(h.takes_count, 2);
    for (int i = 0; i < 2; i++) {
        assert_close(h.takes[i].mass_kg, volume_m3 * start.density_kg_m3, 1e-9, 0);
        assert_close(h.takes[i].temperature_K, start.temperature_K, 0, 1e-6);
        assert_int_equal(h.takes[i].end, BOIL_POUR_ALL_IN);
    }
    assert_close(h.takes[0].over_s, 120, 1e-12, 0);
    assert_close(h.summary.taken_kg, 2 * volume_m3 * start.density_kg_m3, 1e-9, 0);
    assert_close(h.summary.taken_salts_kg, salts * h.summary.taken_kg, 1e-9, 0);
    assert_close(h.summary.waste_kg, h.summary.taken_kg, 1e-12, 0);
    assert_close(h.summary.boiling_point_end_K, start.boiling_point_K, 0, 1e-6); /* as strong as before, and as warm */
    assert_close(h.summary.temperature_end_K, start.temperature_K, 0, 1e-6);
    assert_close(h.summary.still_level_start_m - h.summary.still_level_end_m, 2 * volume_m3 / 0.9, 1e-6, 0);
    boil_history_free(&h);
}

/* Two gallons float on a quiet bath; a pail of half of that takes water alone. */
static void what_floats_goes_first(void **state)
{
    (void)state;
    boil_plant p = closed_plant();
    boil_run_options o = boil_run_options_default();
    p.charge.temperature_K = CELSIUS(60);
    boil_action all[] = {two_gallons_action(10, 10), take_action(30, BOIL_ACTION_BAIL, 3.0e-3, 20, 0)};
    boil_history h = run_actions(&p, 60, &o, all, 2);
    assert_true(h.takes[0].layer_kg > 6 && !h.takes[0].was_boiling);
    /* the layer is warmed to some 20 to 60 degC: 998 to 983 kg/m3; a vessel dips two seconds' worth deep, 0.3 of 7.5 kg */
    assert_close(h.takes[0].mass_kg, 3.0e-3 * 990, 0.03, 0);
    assert_true(h.summary.taken_salts_kg < 0.06 * h.summary.taken_kg);
    boil_history_free(&h);
}

/* Salt that lies on the floor of a quiet bath leaves by the drain in its share; the bailing vessel leaves it. */
static void undissolved_salt_leaves_by_the_drain(void **state)
{
    (void)state;
    boil_plant p = closed_plant();
    boil_run_options o = boil_run_options_default();
    double salts_kg[2];
    p.charge.temperature_K = CELSIUS(60);
    p.fittings.grain_m = 0.01;
    boil_action salts = {.time_s = 10, .kind = BOIL_ACTION_SALTS};
    salts.is.salts = (boil_action_salts){40, 10, CELSIUS(20), {1, 0, 0}};
    for (int i = 0; i < 2; i++) {
        boil_action all[] = {salts, take_action(25, i == 0 ? BOIL_ACTION_BAIL : BOIL_ACTION_DRAIN, 0.03, 10, 0)};
        boil_history h = run_actions(&p, 60, &o, all, 2);
        salts_kg[i] = h.summary.taken_salts_kg;
        boil_history_free(&h);
    }
    assert_true(salts_kg[1] > salts_kg[0] + 0.5);
}

static void what_is_kept_runs_back(void **state)
{
    (void)state;
    boil_plant p = open_plant(34e3);
    boil_run_options o = boil_run_options_default();
    boil_action back = {.time_s = 600, .kind = BOIL_ACTION_RETURN, .name = 4, .is = {.back = {120, 0}}}, again = back;
    again.time_s = 900;
    boil_action all[] = {take_action(60, BOIL_ACTION_BAIL, 0.01, 60, 4), take_action(90, BOIL_ACTION_DRAIN, 0.005, 60, 4),
                         take_action(90, BOIL_ACTION_DRAIN, 0.002, 60, 5), back, again};
    boil_history h = run_actions(&p, 1200, &o, all, 5);
    assert_close(h.summary.taken_kg, h.takes[0].mass_kg + h.takes[1].mass_kg + h.takes[2].mass_kg, 1e-12, 0);
    assert_close(h.additions[0].mass_kg, h.takes[0].mass_kg + h.takes[1].mass_kg, 1e-12, 0);
    assert_close(h.summary.liquid_added_kg, h.additions[0].mass_kg, 1e-9, 0);
    assert_close(h.summary.mixed_kg, 0, 0, 1e-9 * h.additions[0].mass_kg);
    assert_true(h.additions[0].run_back);
    assert_close(h.summary.waste_kg, h.takes[2].mass_kg, 1e-9, 0);
    assert_close(h.summary.waste_salts_kg, h.summary.taken_salts_kg - h.summary.returned_salts_kg, 1e-12, 0);
    assert_true(h.summary.waste_salts_kg > 0.4 * h.summary.waste_kg && h.summary.waste_salts_kg < 0.6 * h.summary.waste_kg);
    assert_int_equal(h.acts[4].end, BOIL_ACT_NOT_NEEDED); /* the drum is empty */
    assert_int_equal(h.additions_count, 1);
    boil_history_free(&h);
}

/* Of what is being run back as the run ends, and of liquid that was mixed, each is counted once. */
static void half_run_back_is_half(void **state)
{
    (void)state;
    boil_plant p = open_plant(34e3);
    boil_run_options o = boil_run_options_default();
    boil_action back = {.time_s = 600, .kind = BOIL_ACTION_RETURN, .name = 4, .is = {.back = {120, 0}}};
    boil_action liquid = {.time_s = 300, .kind = BOIL_ACTION_LIQUID};
    liquid.is.liquid = (boil_action_liquid){5, 60, CELSIUS(20), {1, 0, 0}, 0.3};
    boil_action all[] = {take_action(60, BOIL_ACTION_BAIL, 0.01, 60, 4), liquid, back};
    boil_history h = run_actions(&p, 660, &o, all, 3);
    assert_close(h.summary.liquid_added_kg, 5 + h.takes[0].mass_kg / 2, 1e-9, 0);
    assert_close(h.summary.mixed_kg, 5, 1e-9, 0);
    boil_history_free(&h);
}

/* What was bailed a minute ago and goes back as hot as the bath takes no heat from it: the heat of what is run back is told by the
   balance, and so is how little it quiets the boil. As cold as the room it is the graver of the two for the boil, and no milder for the
   level. */
static void it_runs_back_as_warm_as_it_is_said(void **state)
{
    (void)state;
    boil_plant p = open_plant(34e3);
    boil_run_options o = boil_run_options_default();
    const double warm_K[] = {0, CELSIUS(90), CELSIUS(190)};
    boil_history h[3];
    for (int i = 0; i < 3; i++) {
        boil_action back = {.time_s = 300, .kind = BOIL_ACTION_RETURN, .name = 4, .is = {.back = {60, warm_K[i]}}};
        boil_action all[] = {take_action(60, BOIL_ACTION_BAIL, 0.03, 60, 4), back};
        h[i] = run_actions(&p, 1800, &o, all, 2);
        print_message("run back: quiet %.0f s, level %.4f m\n", h[i].additions[0].recovery_s, h[i].summary.level_max_m.value);
    }
    boil_mixture kilogram = boil_mixture_of(p.charge.blend, h[0].summary.taken_salts_kg / h[0].summary.taken_kg);
    double colder_J = h[1].balance.energy.with_liquid_J - h[0].balance.energy.with_liquid_J;
    double by_hand_J = boil_solution_heat(&kilogram, CELSIUS(90)).enthalpy_J -
                       boil_solution_heat(&kilogram, boil_solubility_clear(&kilogram, CELSIUS(20))).enthalpy_J;
    assert_close(colder_J, by_hand_J * h[0].summary.returned_kg, 1e-3, 0);
    assert_true(h[0].additions[0].recovery_s > h[1].additions[0].recovery_s);
    assert_true(h[1].additions[0].recovery_s > h[2].additions[0].recovery_s);
    assert_close(h[2].additions[0].recovery_s, 0, 0, 0); /* no hotter than its own boil, which is the bath's */
    assert_true(h[0].summary.level_max_m.value > h[2].summary.level_max_m.value - 1e-3);
    for (int i = 0; i < 3; i++)
        boil_history_free(&h[i]);
}

static void a_level_ends_it(void **state)
{
    (void)state;
    const double step_m = 0.003175, goal_m = 0.40;
    boil_plant p = closed_plant();
    boil_run_options o = boil_run_options_default();
    boil_action take = take_action(60, BOIL_ACTION_DRAIN, 1, 1000, 0);
    take.pour = (boil_pour){.goal = BOIL_GOAL_LEVEL, .goal_value = goal_m};
    boil_history h = run_actions(&p, 600, &o, &take, 1);
    double seconds = (0.4206 - goal_m - step_m / 2) * 0.9 / 1e-3 + 10; /* a litre a second from 0.9 m2, and the reaction */
    assert_int_equal(h.takes[0].end, BOIL_POUR_GOAL);
    assert_close(h.takes[0].over_s, seconds, 1e-4, 0);
    assert_true(isnan(h.takes[0].missed_by_m));
    boil_history_free(&h);
}

/* The paddle does as the mixer does for the same time. */
static void a_paddle_is_a_mixer_for_a_time(void **state)
{
    (void)state;
    boil_plant p = open_plant(34e3);
    boil_run_options o = boil_run_options_default();
    boil_action on = {.time_s = 100, .kind = BOIL_ACTION_MIXER, .is = {.on = true}},
                off = {.time_s = 220, .kind = BOIL_ACTION_MIXER};
    boil_action stir = {.time_s = 100, .kind = BOIL_ACTION_STIR, .is = {.stir_s = 120}};
    boil_action mixed[] = {two_gallons_action(60, 120), on, off}, stirred[] = {two_gallons_action(60, 120), stir};
    boil_history a = run_actions(&p, 600, &o, mixed, 3), b = run_actions(&p, 600, &o, stirred, 2);
    assert_memory_equal(&a.summary, &b.summary, sizeof a.summary);
    assert_true(a.steps == b.steps);
    boil_history_free(&a);
    boil_history_free(&b);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_is_bailed_is_bath_liquid),
        cmocka_unit_test(what_floats_goes_first),
        cmocka_unit_test(undissolved_salt_leaves_by_the_drain),
        cmocka_unit_test(what_is_kept_runs_back),
        cmocka_unit_test(half_run_back_is_half),
        cmocka_unit_test(it_runs_back_as_warm_as_it_is_said),
        cmocka_unit_test(a_level_ends_it),
        cmocka_unit_test(a_paddle_is_a_mixer_for_a_time),
    };
    return cmocka_run_group_tests_name("takes", tests, NULL, NULL);
}
