/* Water trapped in hollows: it warms by its own time constant, lets go at water's boil, floats on a quiet bath and mixes into a boiling
   one, and comes out with a load that is lifted before. */
#include <gsl/gsl_errno.h>

#include "support/close.h"

#include "case/carried_in.h"
#include "properties/water.h"
#include "support/cases.h"

#define TRAPPED_KG 0.5

/* Next to no steel, so that what it takes is the water's. */
static boil_action caps(double time_s)
{
    boil_action a = plate_action(time_s, 1e-4);
    a.is.load.trapped_kg = TRAPPED_KG;
    a.is.load.hollow_m3 = 15e-6;
    return a;
}

static double time_constant(const boil_load *l)
{
    return boil_hollows_of(l, CELSIUS(100)).release_s / BOIL_HOLLOW_RELEASE;
}

/* T = Tbath - (Tbath - T0) exp(-t/tau), to water's boil at 1 atm; lowered within a second. */
static void it_lets_go_after_its_own_time(void **state)
{
    (void)state;
    boil_plant p = pinned_plant();
    boil_run_options o = boil_run_options_default();
    boil_action a = caps(100);
    double tau = time_constant(&a.is.load), bath = (285 - 32) / 1.8;
    boil_history h = run_actions(&p, 400, &o, &a, 1);
    assert_close(h.loads[0].released_s - 100.5, tau * log((bath - 20) / (bath - 99.97)), 0.01, 0);
    assert_close(h.summary.released_kg, TRAPPED_KG, 1e-9, 0);
    assert_close(h.summary.trapped_kg, TRAPPED_KG, 0, 0);
    assert_close(h.summary.layer_max_kg.value, 0, 0, 0);
    boil_history_free(&h);
}

/* What it drew is what it brings: the heat that the load took, less the steel's, is in the water. */
static void its_heat_is_in_the_account(void **state)
{
    (void)state;
    boil_plant p = pinned_plant();
    boil_run_options o = boil_run_options_default();
    boil_action with = caps(100), without = caps(100);
    without.is.load.trapped_kg = 0;
    boil_history h = run_actions(&p, 400, &o, &with, 1), dry = run_actions(&p, 400, &o, &without, 1);
    double boils_J_kg = boil_water_enthalpy(boil_water_saturation_temperature(BOIL_STANDARD_ATMOSPHERE));
    double took_J = TRAPPED_KG * (boils_J_kg - boil_water_enthalpy(CELSIUS(20)));
    assert_close(h.balance.energy.loads_J - dry.balance.energy.loads_J, took_J, 1e-4, 0);
    assert_close(h.balance.energy.from_hollows_J, TRAPPED_KG * boils_J_kg, 1e-8, 0);
    boil_history_free(&h);
    boil_history_free(&dry);
}

static void lifted_before_it_comes_out_again(void **state)
{
    (void)state;
    boil_plant p = pinned_plant();
    boil_run_options o = boil_run_options_default();
    boil_action a = caps(100);
    a.is.load.immersed_s = 30;
    boil_history h = run_actions(&p, 400, &o, &a, 1);
    assert_true(isnan(h.loads[0].released_s));
    assert_close(h.summary.released_kg, 0, 0, 0);
    boil_history_free(&h);
    /* and lifted while it lets go, half comes out */
    a = caps(100);
    h = run_actions(&p, 400, &o, &a, 1);
    double began_s = h.loads[0].released_s, takes_s = boil_hollows_of(&a.is.load, CELSIUS(100)).release_s;
    boil_history_free(&h);
    a.is.load.immersed_s = began_s - 100 + takes_s / 2;
    h = run_actions(&p, 400, &o, &a, 1);
    assert_close(h.summary.released_kg, TRAPPED_KG / 2, 1e-4, 0);
    boil_history_free(&h);
    boil_action lift = {.time_s = began_s + takes_s / 4, .kind = BOIL_ACTION_LIFT};
    boil_action both[] = {caps(100), lift};
    h = run_actions(&p, 400, &o, both, 2);
    assert_close(h.summary.released_kg, TRAPPED_KG / 4, 1e-4, 0);
    boil_history_free(&h);
}

/* Below its boil but over water's: there it floats, as hot as it let go. */
static void on_a_quiet_bath_it_floats(void **state)
{
    (void)state;
    boil_plant p = pinned_plant();
    p.heater.input_W = 0;
    p.charge.temperature_K = CELSIUS(130);
    boil_run_options o = boil_run_options_default();
    o.row_interval_s = 1;
    boil_action a = caps(10);
    boil_history h = run_actions(&p, 200, &o, &a, 1);
    const boil_row *r = row_at(&h, &o, ceil(h.loads[0].released_s + boil_hollows_of(&a.is.load, CELSIUS(100)).release_s));
    assert_true(r->layer_kg > 0.9 * TRAPPED_KG);
    assert_true(r->layer_K > CELSIUS(97));
    boil_history_free(&h);
}

/* A bath that never comes to water's boil keeps it in. */
static void in_a_cold_bath_it_stays(void **state)
{
    (void)state;
    boil_plant p = pinned_plant();
    p.heater.input_W = 0;
    p.charge.temperature_K = CELSIUS(90);
    boil_run_options o = boil_run_options_default();
    boil_action a = caps(10);
    boil_history h = run_actions(&p, 3600, &o, &a, 1);
    assert_true(isnan(h.loads[0].released_s));
    boil_history_free(&h);
}

/* As hot as water's boil on entry: it lets go as it goes in. */
static void hot_it_lets_go_at_once(void **state)
{
    (void)state;
    boil_plant p = pinned_plant();
    boil_run_options o = boil_run_options_default();
    boil_action a = caps(10);
    a.is.load.temperature_K = CELSIUS(120);
    boil_history h = run_actions(&p, 100, &o, &a, 1);
    assert_close(h.loads[0].released_s, 10, 0, 1e-9);
    boil_history_free(&h);
}

/* What could come of it grows with it. 1.8, 0.9 and 0.18 litres in a tank of 1.67 m2 with 254 mm of still freeboard: the first goes over
   the rim, the last leaves more than six inches. */
static void what_it_could_do_is_worked_out_on_entry(void **state)
{
    (void)state;
    boil_plant p = open_plant(58e3);
    p.tank.length_m = 1.829;
    p.tank.width_m = 0.914;
    p.tank.depth_m = 0.762;
    p.tank.level_m = 0.508;
    boil_run_options o = boil_run_options_default();
    const double kg[] = {1.8, 0.9, 0.18};
    double left[3];
    for (size_t i = 0; i < 3; i++) {
        boil_action a = plate_action(10, 1.6);
        a.is.load.trapped_kg = kg[i];
        a.is.load.hollow_m3 = 15e-6;
        boil_history h = run_actions(&p, 20, &o, &a, 1);
        left[i] = h.loads[0].pockets_left_m;
        assert_true(h.loads[0].pockets_overflow == (i == 0));
        assert_close(h.loads[0].pockets_kg, 0.1767 * kg[i], 0.03, 0); /* the yield of water at 100 degC on a bath at its boil */
        boil_history_free(&h);
    }
    assert_true(left[0] < 0 && left[1] > 0 && left[1] < 0.102 && left[2] > 0.152);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(it_lets_go_after_its_own_time),
        cmocka_unit_test(its_heat_is_in_the_account),
        cmocka_unit_test(lifted_before_it_comes_out_again),
        cmocka_unit_test(on_a_quiet_bath_it_floats),
        cmocka_unit_test(in_a_cold_bath_it_stays),
        cmocka_unit_test(hot_it_lets_go_at_once),
        cmocka_unit_test(what_it_could_do_is_worked_out_on_entry),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
