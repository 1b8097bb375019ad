/* How finely a step is told, and what is watched of a moment, of made-up views. */
#include "support/begun.h"
#include "support/close.h"

#include "bath/rates.h"
#include "simulate/recorder.h"
#include "support/cases.h"

/* Two ends of a step that differ in temperature alone, the warmer one so far below its boiling point. */
static int parts_of(double below_K, double apart_K)
{
    const boil_plant p = open_plant(60e3);
    const boil_recorder r = {.plant = &p};
    boil_rates_view a = {.solution = {.boiling_point_K = 413, .temperature_K = 413 - below_K - apart_K}}, b = a;
    b.solution.temperature_K = 413 - below_K;
    return boil_recorder_parts(&r, &a, &b);
}

/* A part for each half a kelvin near the boil; far below it for each sixteenth of the way that is left, which is less often. */
static void a_part_is_half_a_kelvin_near_the_boil(void **state)
{
    (void)state;
    assert_int_equal(parts_of(0, 0.49), 1);
    assert_int_equal(parts_of(0, 0.51), 2);
    assert_int_equal(parts_of(0, 1.01), 3);
    assert_int_equal(parts_of(7, 1.01), 3);
    assert_int_equal(parts_of(32, 1.99), 1);
    assert_int_equal(parts_of(32, 4.01), 3);
    assert_int_equal(parts_of(0, 100), 16);
}

/* How hot the floor gets under what has crystallised when the heat comes on, in a made-up moment of a cold bath of half nitrate: 50
   kg more in a crust, or none. */
static double restart_over_K(bool mixer, bool crust)
{
    boil_plant p = open_plant(60e3);
    p.charge = (boil_initial_charge){{0.5, 0.5, 0}, BOIL_INITIAL_BY_BOILING_POINT, CELSIUS(140.5), CELSIUS(50)};
    p.tank.heated = BOIL_TANK_HEATED_FROM_BELOW;
    p.fittings.mixer_on = mixer;
    begun n;
    begun_of(&n, &p);
    n.v.heater.heat_W = 30e3;
    n.v.salts.crust_kg = crust ? 50 : 0;
    boil_history h = {.summary = {.bath_mass_start_kg = n.v.solution.mass_kg}};
    boil_recorder r = {.plant = &p, .history = &h};
    const boil_recorder_peak peak = {0};
    boil_recorder_watch_begin(&r);
    boil_recorder_watch(&r, 0, &n.b, &n.v, &peak);
    return h.summary.watched[BOIL_WATCH_RESTART].worst.value;
}

/* A mixer keeps crystals off the floor; not those of a crust. */
static void a_mixer_keeps_crystals_off_the_floor(void **state)
{
    (void)state;
    assert_true(restart_over_K(false, false) > 1);
    assert_close(restart_over_K(true, false), 0, 0, 0);
    assert_close(restart_over_K(true, true), restart_over_K(false, true), 1e-12, 0);
    assert_true(restart_over_K(true, true) > 1);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(a_part_is_half_a_kelvin_near_the_boil),
                                       cmocka_unit_test(a_mixer_keeps_crystals_off_the_floor)};
    return cmocka_run_group_tests_name("recorder", tests, NULL, NULL);
}
