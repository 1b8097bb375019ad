/* unit/model/simulate/test_crust.c -- a cold bath with a crust of salt is heated again: carelessly and with care. No measured eruption
   was found to compare with; these are balances, limits and order. */
#include <gsl/gsl_errno.h>
#include <string.h>

#include "support/close.h"

#include "properties/solubility.h"
#include "support/cases.h"

static boil_action set_at(double time_s, boil_action_kind kind, double to)
{
    boil_action a = {.time_s = time_s, .kind = kind};
    if (kind == BOIL_ACTION_HEAT)
        a.is.heat.dial = to;
    else
        a.is.on = to > 0;
    return a;
}

/* Half nitrate, cold overnight with the heat off, in a trough of 0.9 m2; the heat comes on after an hour. */
static boil_plant cold_plant(double celsius)
{
    boil_plant p = open_plant(60e3);
    p.tank.depth_m = 0.9;
    p.charge = (boil_initial_charge){{0.5, 0.5, 0}, BOIL_INITIAL_BY_BOILING_POINT, CELSIUS(140.5), CELSIUS(celsius)};
    p.heater.dial = 0;
    return p;
}

static boil_history reheated(const boil_plant *p, double dial, const boil_action *first)
{
    boil_action actions[2] = {set_at(3600, BOIL_ACTION_HEAT, dial)};
    boil_run_options o = boil_run_options_default();
    o.row_interval_s = 30;
    size_t count = 1;
    if (first != NULL)
        actions[count++] = *first;
    boil_history h = run_actions(p, 3 * 3600, &o, actions, count);
    print_message("crust %.1f kg, %.2f K over the boil, steam at most %.3f kg/s, level %.3f m\n", h.summary.crust_max_kg,
                  h.summary.crust_superheat_K.value, h.summary.steam_peak_kg_s.value, h.summary.level_max_m.value);
    assert_int_equal(h.end, BOIL_RUN_DONE);
    assert_close(h.balance.energy.closure, 0, 0, 1e-9);
    assert_close(h.balance.salts.closure, 0, 0, 1e-9);
    assert_close(h.balance.water.closure, 0, 0, 1e-9);
    return h;
}

/* Steam that forms while it boils calmly. */
static double calm(const boil_history *h)
{
    return h->rows[h->rows_count - 1].steam_kg_s;
}

/* Half of what the cold bath cannot hold hangs over it; the heat held back is set free within seconds as steam. */
static void a_careless_restart_surges(void **state)
{
    (void)state;
    boil_plant p = cold_plant(50);
    boil_history h = reheated(&p, 1, NULL);
    boil_initial_state cold;
    assert_int_equal(boil_plant_initial(&p, &cold), BOIL_OK);
    assert_close(h.summary.crust_max_kg, boil_solubility_excess(&cold.mixture, CELSIUS(50)) / 2, 0.05, 0);
    assert_true(h.summary.crust_superheat_K.value > 0.5);
    assert_true(h.summary.steam_peak_kg_s.value > 5 * calm(&h));
    /* By hand: C dT/(hv - K) within two seconds, C 2.7 kJ/kgK, hv - K 2.5 MJ/kg. */
    double set_free_kg = h.summary.crust_superheat_K.value * boil_mixture_mass(&cold.mixture) * 2.7e3 / 2.5e6;
    assert_close(h.summary.steam_peak_kg_s.value, set_free_kg / 2, 0.35, 0);
    boil_history_free(&h);
}

static void care_leaves_no_surge(void **state)
{
    (void)state;
    boil_plant p = cold_plant(50);
    const boil_action broken = set_at(3500, BOIL_ACTION_CRUST, 0), mixer = set_at(3500, BOIL_ACTION_MIXER, 1);
    const boil_action *first[] = {&broken, &mixer};
    for (int i = 0; i < 2; i++) {
        boil_history h = reheated(&p, 1, first[i]);
        assert_true(h.summary.crust_max_kg > 5);
        assert_false(h.summary.crust_superheat_K.value > 0.01);
        assert_true(h.summary.steam_peak_kg_s.value < 1.5 * calm(&h));
        boil_history_free(&h);
    }
}

/* Broken in the moment before it would give way, it lets go no less than it held: nobody is to do it then. */
static void broken_while_hot_it_lets_go(void **state)
{
    (void)state;
    boil_plant p = cold_plant(50);
    boil_history alone = reheated(&p, 1, NULL);
    const boil_action broken = set_at(alone.summary.crust_superheat_K.time_s - 20, BOIL_ACTION_CRUST, 0);
    boil_history h = reheated(&p, 1, &broken);
    assert_true(h.summary.crust_superheat_K.value > 0.8 * alone.summary.crust_superheat_K.value);
    assert_true(h.summary.steam_peak_kg_s.value > 0.7 * alone.summary.steam_peak_kg_s.value);
    boil_history_free(&alone);
    boil_history_free(&h);
}

/* Gentle heat leaves the crust time to dissolve, as it should: what is left holds less. */
static void gentle_heat_is_milder(void **state)
{
    (void)state;
    boil_plant p = cold_plant(70);
    boil_history fast = reheated(&p, 1, NULL), gentle = reheated(&p, 0.5, NULL);
    assert_true(gentle.summary.crust_superheat_K.value < fast.summary.crust_superheat_K.value);
    assert_true(gentle.summary.steam_peak_kg_s.value < fast.summary.steam_peak_kg_s.value);
    boil_history_free(&fast);
    boil_history_free(&gentle);
}

static void more_superheat_is_never_milder(void **state)
{
    (void)state;
    double superheat_K = 0, peak_kg_s = 0, level_m = 0;
    for (double celsius = 90; celsius >= 40; celsius -= 10) {
        boil_plant p = cold_plant(celsius);
        boil_history h = reheated(&p, 1, NULL);
        double over_K = h.summary.crust_superheat_K.value;
        assert_true(over_K > superheat_K);
        assert_true(h.summary.steam_peak_kg_s.value >= peak_kg_s && h.summary.level_max_m.value >= level_m);
        superheat_K = over_K;
        peak_kg_s = h.summary.steam_peak_kg_s.value;
        level_m = h.summary.level_max_m.value;
        boil_history_free(&h);
    }
}

/* Where nothing crystallises, breaking what is not there changes no digit. */
static void no_crust_changes_nothing(void **state)
{
    (void)state;
    boil_plant p = cold_plant(60);
    memcpy(p.charge.blend, (double[]){1, 0, 0}, sizeof p.charge.blend);
    const boil_action broken = set_at(3600, BOIL_ACTION_CRUST, 0);
    boil_history plain = reheated(&p, 1, NULL), asked = reheated(&p, 1, &broken);
    assert_true(plain.summary.crust_max_kg == 0 && isnan(plain.summary.crust_superheat_K.value));
    assert_int_equal(plain.rows_count, asked.rows_count);
    for (size_t i = 0; i < plain.rows_count; i++) {
        const boil_row *a = &plain.rows[i], *b = &asked.rows[i];
        assert_true(a->temperature_K == b->temperature_K && a->water_kg == b->water_kg && a->steam_kg_s == b->steam_kg_s &&
                    a->level_m == b->level_m && a->evaporated_kg_s == b->evaporated_kg_s);
    }
    boil_history_free(&plain);
    boil_history_free(&asked);
}

/* Boiled down for hours, left for the night, heated again under its crust, and watered before that breaks. */
static boil_history dried_out(double heat_off_s, boil_closures closures)
{
    boil_plant p = open_plant(53e3);
    p.tank.length_m = 1.676;
    p.tank.width_m = 0.914;
    p.tank.level_m = 0.508;
    p.tank.depth_m = 0.762;
    p.charge = (boil_initial_charge){{0.6, 0.3, 0.1}, BOIL_INITIAL_BY_BOILING_POINT, CELSIUS(140.6), 0};
    boil_action actions[] = {set_at(heat_off_s, BOIL_ACTION_HEAT, 0), set_at(22 * 3600, BOIL_ACTION_HEAT, 0.4),
                             two_gallons_action(23.5 * 3600, 240)};
    actions[2].is.water.mass_kg = 76;
    boil_run_options o = boil_run_options_default();
    o.row_interval_s = 30;
    o.closures = closures;
    o.own_elevation = true; /* with the graver curve it dries beyond what is known of it */
    return run_actions(&p, 26 * 3600, &o, actions, sizeof actions / sizeof actions[0]);
}

/* What falls out of a bath as its boil fades gives off heat: that neither lights the boil again without end, nor lets it go on without
   steam. */
static void a_boil_that_fades_ends_once(void **state)
{
    (void)state;
    const boil_closures runs[] = {BOIL_CLOSURES_LIKELY, BOIL_CLOSURES_SUDDEN_8};
    for (size_t k = 0; k < 2; k++) {
        boil_history h = dried_out(5 * 3600, runs[k]);
        print_message("dried out: %zu changes of mode, crust %.0f kg, %.2f K over the boil, closures %.1e %.1e %.1e\n",
                      h.mode_changes, h.summary.crust_max_kg, h.summary.crust_superheat_K.value, h.balance.water.closure,
                      h.balance.salts.closure, h.balance.energy.closure);
        assert_int_equal(h.end, BOIL_RUN_DONE);
        assert_true(h.mode_changes <= 4);
        assert_close(h.balance.energy.closure, 0, 0, 1e-9);
        assert_close(h.balance.salts.closure, 0, 0, 1e-9);
        assert_close(h.balance.water.closure, 0, 0, 1e-9);
        for (size_t i = 0; i < h.rows_count; i++)
            assert_true(h.rows[i].steam_kg_s >= 0);
        boil_history_free(&h);
    }
}

/* The crust holds more the more the bath has boiled down, and all of it is set free at once. */
static void what_a_dried_bath_holds_is_set_free(void **state)
{
    (void)state;
    boil_history wet = dried_out(3 * 3600, BOIL_CLOSURES_SUDDEN_8), dry = dried_out(5 * 3600, BOIL_CLOSURES_SUDDEN_8);
    assert_true(dry.summary.crust_max_kg > wet.summary.crust_max_kg);
    assert_true(dry.summary.crust_superheat_K.value > 1);
    assert_true(dry.summary.steam_peak_kg_s.value > 10 * dry.rows[0].steam_kg_s);
    boil_history_free(&wet);
    boil_history_free(&dry);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_careless_restart_surges),      cmocka_unit_test(care_leaves_no_surge),
        cmocka_unit_test(broken_while_hot_it_lets_go),    cmocka_unit_test(gentle_heat_is_milder),
        cmocka_unit_test(more_superheat_is_never_milder), cmocka_unit_test(no_crust_changes_nothing),
        cmocka_unit_test(a_boil_that_fades_ends_once),    cmocka_unit_test(what_a_dried_bath_holds_is_set_free),
    };
    gsl_set_error_handler_off();
    return cmocka_run_group_tests_name("crust", tests, NULL, NULL);
}
