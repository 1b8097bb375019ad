/* A boil that dies while water is stirred into it, a level that is highest between two steps, and a control that finds its bath right
   at a threshold: what is told of them is the run's, not its steps' nor its rounding's. Against the same run by other steps, down to
   short explicit ones of many digits, and against rows of the trace. */
#include <gsl/gsl_errno.h>
#include <string.h>

#include "support/close.h"

#include "support/cases.h"

static boil_run_options by(double tolerance)
{
    boil_run_options o = boil_run_options_default();
    o.tolerance = tolerance;
    return o;
}

static boil_action turn(double time_s, double dial)
{
    boil_action a = {.time_s = time_s, .kind = BOIL_ACTION_HEAT};
    a.is.heat.order = BOIL_HEAT_TURN;
    a.is.heat.dial = dial;
    return a;
}

/* At every tolerance as by short explicit steps: it changes its mode so many times, and the last time within `near_s`. */
static void dies_once(const boil_plant *p, double duration_s, const boil_action *acts, size_t count, size_t changes,
                      double near_s)
{
    const double tolerances[] = {1e-4, 1e-5, 1e-6, 1e-7};
    boil_run_options plain = by(1e-8);
    plain.plain_steps = true;
    boil_history exact = run_actions(p, duration_s, &plain, acts, count);
    double lost_s = exact.quiet[exact.quiet_count - 1].start_s;
    assert_int_equal(exact.mode_changes, changes);
    print_message("  lost at %.3f s\n", lost_s);
    for (size_t i = 0; i < sizeof tolerances / sizeof tolerances[0]; i++) {
        boil_run_options o = by(tolerances[i]);
        boil_history h = run_actions(p, duration_s, &o, acts, count);
        print_message("  at %.0e: %zu changes, lost at %.3f s\n", tolerances[i], h.mode_changes,
                      h.quiet[h.quiet_count - 1].start_s);
        assert_int_equal(h.mode_changes, changes);
        assert_close(h.quiet[h.quiet_count - 1].start_s, lost_s, 0, near_s);
        boil_history_free(&h);
    }
    boil_history_free(&exact);
}

/* The fire goes out under a slow pour: what forms comes to be the small difference of the heat left and of what the water takes, and
   the steam that stirs it is as little. */
static void a_boil_dies_once(void **state)
{
    (void)state;
    const boil_action acts[] = {water_action(60, 24, 600), turn(120, 0)};
    boil_plant p = open_plant(60e3);
    p.charge.value = CELSIUS(113); /* weak: cold water quenches it */
    p.heater.lag_s = 60;
    dies_once(&p, 600, acts, 2, 1, 0.05);
}

/* It comes back under water that its least bubbles stir in, and thins out for four minutes as what the surface evaporates comes to be
   all that the heat can: for a minute no more forms than what evaporates is known by. */
static void a_boil_that_thins_out_dies_once(void **state)
{
    (void)state;
    boil_plant p = open_plant(2717);
    p.tank.length_m = 0.651;
    p.tank.width_m = 0.305;
    p.tank.depth_m = 1.22;
    p.tank.level_m = 0.836;
    p.charge = (boil_initial_charge){{0.71, 0.18, 0.11}, BOIL_INITIAL_BY_STRENGTH, 167, 0};
    p.afloat = (boil_water_afloat){1.23, CELSIUS(21)};
    p.ambient.pressure_Pa = 81.4e3;
    dies_once(&p, 600, NULL, 0, 2, 0.1);
}

/* Fades in which what the bubbles stir in takes the heat for seconds after the last would be lost without: at every tolerance as by
   short explicit steps, however many seconds a step goes over. */
static void fades_at_one_moment(const boil_plant *p, const boil_action *acts)
{
    const double tolerances[] = {1e-4, 1e-5, 1e-6, 1e-7};
    boil_run_options plain = by(1e-8);
    plain.plain_steps = true;
    boil_history exact = run_actions(p, 300, &plain, acts, 2);
    double lost_s = exact.quiet[0].start_s;
    print_message("  lost at %.3f s\n", lost_s);
    for (size_t i = 0; i < sizeof tolerances / sizeof tolerances[0]; i++) {
        boil_run_options o = by(tolerances[i]);
        boil_history h = run_actions(p, 300, &o, acts, 2);
        assert_close(h.quiet[0].start_s, lost_s, 0, 0.01);
        boil_history_free(&h);
    }
    boil_history_free(&exact);
}

static void a_boil_fades_at_one_moment_over_salts(void **state)
{
    (void)state;
    boil_plant p = open_plant(60e3);
    p.heater.lag_s = 115;
    for (int kg = 12; kg <= 14; kg++) {
        boil_action acts[] = {{.time_s = 60, .kind = BOIL_ACTION_SALTS}, turn(100, 0.1)};
        acts[0].is.salts.mass_kg = kg;
        acts[0].is.salts.over_s = 165;
        acts[0].is.salts.temperature_K = CELSIUS(20);
        memcpy(acts[0].is.salts.blend, p.charge.blend, sizeof p.charge.blend);
        fades_at_one_moment(&p, acts);
    }
}

static void a_boil_fades_at_one_moment_under_water(void **state)
{
    (void)state;
    boil_plant p = open_plant(60e3);
    p.charge.value = CELSIUS(120);
    p.heater.lag_s = 100;
    for (int k = 0; k < 3; k++) {
        const boil_action acts[] = {water_action(60, 10 + 0.6 * k, 460), turn(120, 0.03)};
        fades_at_one_moment(&p, acts);
    }
}

/* Pours that plain water can just bear, or just not: what the first bubbles stir in all but quenches a boil that comes back under them.
   It comes back and stays, or it is lost: it does not go to and fro. */
static void a_boil_that_can_hardly_bear_its_pour_does_not_flutter(void **state)
{
    (void)state;
    const double over_s = 240;
    boil_plant p = open_plant(40e3);
    p.tank.length_m = 1.2192;
    p.tank.width_m = p.tank.depth_m = 0.6096;
    p.tank.level_m = 0.3048;
    p.charge = (boil_initial_charge){{0, 0, 0}, BOIL_INITIAL_BY_SALT_FRACTION, 0, 0};
    size_t most = 0;
    for (double kg_s = 0.08; kg_s < 0.09; kg_s += 5e-5) {
        const boil_action pour = water_action(30, kg_s * over_s, over_s);
        boil_run_options o = boil_run_options_default();
        boil_history h = run_actions(&p, 300, &o, &pour, 1);
        assert_int_equal(h.end, BOIL_RUN_DONE);
        most = h.mode_changes > most ? h.mode_changes : most;
        boil_history_free(&h);
    }
    print_message("  %zu changes at most\n", most);
    assert_true(most <= 6);
}

/* A coil lags by minutes behind its valve, and the steam held in the bath follows it within a second, in steps of a minute: between their
   ends the level is where short steps have it. */
static void a_level_between_long_steps_is_where_it_is(void **state)
{
    (void)state;
    const boil_action pour = water_action(320, 0.408, 13.9);
    boil_plant p = open_plant(0);
    p.tank.length_m = 1.74;
    p.tank.width_m = 0.992;
    p.tank.depth_m = 0.394;
    p.tank.level_m = 0.229;
    p.charge = (boil_initial_charge){{0.77, 0.17, 0.06}, BOIL_INITIAL_BY_BOILING_POINT, CELSIUS(120), CELSIUS(119)};
    p.heater.source = BOIL_HEAT_STEAM;
    p.heater.coil_area_m2 = 2.19;
    p.heater.coil_W_m2K = 800;
    p.heater.steam_K = CELSIUS(190);
    p.heater.lag_s = 245;
    p.ambient.pressure_Pa = 83.2e3;
    boil_run_options o = boil_run_options_default(), fine = by(1e-9);
    o.row_interval_s = fine.row_interval_s = 8;
    boil_history h = run_actions(&p, 4500, &o, &pour, 1), exact = run_actions(&p, 4500, &fine, &pour, 1);
    assert_int_equal(h.rows_count, exact.rows_count);
    double most_m = 0;
    for (size_t i = 0; i < h.rows_count; i++)
        most_m = fmax(most_m, fabs(h.rows[i].level_m - exact.rows[i].level_m));
    print_message("  off by %.1e m at the most\n", most_m);
    assert_true(most_m < 1e-4);
    boil_history_free(&h);
    boil_history_free(&exact);
}

/* Plain water boils under a lid for two hours, and a film of milligrams that drips from it comes and goes by the second. Whichever of
   its events the steps meet, the water that boils off is what the heat allows: no step to an event is taken that errs. */
static void no_step_to_an_event_loses_water(void **state)
{
    (void)state;
    const int roundings[] = {0, 7, 11, 18, 19, 28};
    boil_plant p = open_plant(16600);
    double first_kg = 0, most_kg = 0;
    p.tank.length_m = 1.77;
    p.tank.width_m = 1.17;
    p.tank.depth_m = 0.719;
    p.tank.level_m = 0.303;
    p.charge = (boil_initial_charge){{0, 0, 0}, BOIL_INITIAL_BY_SALT_FRACTION, 0, 0};
    p.fittings.lid_on = true;
    p.fittings.lid_return = 0.032;
    for (size_t i = 0; i < sizeof roundings / sizeof roundings[0]; i++) {
        boil_run_options o = boil_run_options_default();
        p.heater.input_W = 16600 * (1 + 1e-13 * roundings[i]);
        boil_history h = run_actions(&p, 7200, &o, NULL, 0);
        first_kg = i == 0 ? h.summary.bath_mass_end_kg : first_kg;
        most_kg = fmax(most_kg, fabs(h.summary.bath_mass_end_kg - first_kg));
        boil_history_free(&h);
    }
    print_message("  of %.3f kg at most %.1e kg apart\n", first_kg, most_kg);
    assert_true(most_kg < 0.02);
}

/* Dry salt quenches the boil and then lets it come back: the level has its crest within a long step. */
static void no_row_stands_above_the_highest_level(void **state)
{
    (void)state;
    boil_plant p = open_plant(90e3);
    boil_action salts = {.time_s = 60, .kind = BOIL_ACTION_SALTS};
    salts.is.salts.mass_kg = 10;
    salts.is.salts.over_s = 60;
    salts.is.salts.temperature_K = CELSIUS(20);
    memcpy(salts.is.salts.blend, p.charge.blend, sizeof p.charge.blend);
    boil_run_options o = by(1e-5);
    boil_history untraced = run_actions(&p, 900, &o, &salts, 1);
    o.row_interval_s = 0.25;
    boil_history h = run_actions(&p, 900, &o, &salts, 1);
    const boil_extreme *most = &h.summary.level_max_m;
    size_t highest = 0;
    for (size_t i = 0; i < h.rows_count; i++)
        highest = h.rows[i].level_m > h.rows[highest].level_m ? i : highest;
    print_message("  highest %.9f m at %.3f s, of the rows %.9f m at %.3f s\n", most->value, most->time_s,
                  h.rows[highest].level_m, h.rows[highest].time_s);
    assert_true(h.rows[highest].level_m <= most->value * (1 + 1e-8));
    assert_close(h.rows[highest].time_s, most->time_s, 0, 0.25);
    assert_true(untraced.summary.level_max_m.value == most->value);
    boil_history_free(&untraced);
    boil_history_free(&h);
}

/* It boils where its thermostat puts the fire out, to some roundings either way. */
static void rounding_does_not_light_a_fire(void **state)
{
    (void)state;
    boil_run_options o = by(1e-5);
    for (int roundings = -4; roundings <= 4; roundings++) {
        boil_plant p = open_plant(9e3);
        p.heat_control.mode = BOIL_HEAT_CONTROL_THERMOSTAT;
        p.heat_control.differential_K = 4;
        p.heat_control.set_point_K = CELSIUS(138.5) + roundings * 1e-10;
        boil_history h = run_actions(&p, 300, &o, NULL, 0);
        assert_true(h.summary.heater_total_J < 9e3 * 60);
        boil_history_free(&h);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_boil_dies_once),
        cmocka_unit_test(a_boil_that_thins_out_dies_once),
        cmocka_unit_test(a_boil_that_can_hardly_bear_its_pour_does_not_flutter),
        cmocka_unit_test(a_level_between_long_steps_is_where_it_is),
        cmocka_unit_test(no_step_to_an_event_loses_water),
        cmocka_unit_test(a_boil_fades_at_one_moment_over_salts),
        cmocka_unit_test(a_boil_fades_at_one_moment_under_water),
        cmocka_unit_test(no_row_stands_above_the_highest_level),
        cmocka_unit_test(rounding_does_not_light_a_fire),
    };
    gsl_set_error_handler_off();
    return cmocka_run_group_tests(tests, NULL, NULL);
}
