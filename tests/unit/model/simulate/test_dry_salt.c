/* unit/model/simulate/test_dry_salt.c -- salts poured on a shallow bath until they stand dry, then water; and the right way round. No
   measured eruption was found to compare with; these are balances, limits and order. */
#include <gsl/gsl_errno.h>

#include "support/close.h"

#include "support/cases.h"
#include "transfer/flash.h"

/* A bath of 0.9 m2 at its boil, so deep, in a tank of half a metre. */
static boil_plant shallow(double level_m)
{
    boil_plant p = open_plant(20e3);
    p.tank.depth_m = 0.5;
    p.tank.level_m = level_m;
    return p;
}

static boil_action salts_action(double time_s, double kg, double over_s)
{
    boil_action a = {.time_s = time_s, .kind = BOIL_ACTION_SALTS};
    a.is.salts = (boil_action_salts){kg, over_s, CELSIUS(25), {0.80, 0.15, 0.05}};
    return a;
}

static boil_action mixer_on(double time_s)
{
    boil_action a = {.time_s = time_s, .kind = BOIL_ACTION_MIXER};
    a.is.on = true;
    return a;
}

static boil_history run_on(const boil_plant *p, const boil_action *actions, size_t count)
{
    boil_run_options o = boil_run_options_default();
    o.row_interval_s = 1;
    boil_history h = run_actions(p, 2400, &o, actions, count);
    print_message("water on dry salt at %.0f s, could give %.4f kg/s, %.4f lift it; steam at most %.4f kg/s\n",
                  h.summary.dry_wetted_s, h.summary.dry_steam_kg_s.value, h.summary.dry_steam_lifts_kg_s,
                  h.summary.steam_peak_kg_s.value);
    return h;
}

/* Two centimetres of bath, 84 kg of salt on it, half an hour of heat: a hot bed, two thirds of its pores full. */
static boil_history careless(double water_kg)
{
    boil_plant p = shallow(0.02);
    boil_action actions[2] = {salts_action(60, 84, 60), water_action(1800, water_kg, 10)};
    return run_on(&p, actions, water_kg > 0 ? 2 : 1);
}

static double most_steam(const boil_history *h, double from_s, double to_s)
{
    double most = 0;
    for (size_t i = 0; i < h->rows_count; i++)
        if (h->rows[i].time_s >= from_s && h->rows[i].time_s <= to_s)
            most = fmax(most, h->rows[i].steam_kg_s);
    return most;
}

/* It flashes within seconds, by what (4) of transfer/flash.h gives for the bed as it was; and the salt it wets goes into solution.
   What comes once the pores are full floats. */
static void careless_water_erupts(void **state)
{
    (void)state;
    boil_history none = careless(0), h = careless(10);
    assert_true(none.end == BOIL_RUN_DONE && h.end == BOIL_RUN_DONE);
    assert_true(isnan(none.summary.dry_wetted_s) && isnan(none.summary.dry_steam_kg_s.value));
    assert_true(most_steam(&none, 1800, 1820) == 0);
    assert_close(h.summary.dry_wetted_s, 1800, 0, 1e-9);
    const boil_row *before = &h.rows[1800], *after = &h.rows[1806];
    const boil_row *start = &h.rows[0];
    const double lying[BOIL_SALTS] = {0.80 * 84 + start->naoh_kg - before->naoh_kg,
                                      0.15 * 84 + start->nano3_kg - before->nano3_kg,
                                      0.05 * 84 + start->nano2_kg - before->nano2_kg};
    const boil_conditions air = boil_conditions_at(BOIL_STANDARD_ATMOSPHERE, shallow(0.02).elevation_factor);
    const double yield = boil_flash_on_salt(&air, lying, before->temperature_K, CELSIUS(20)).steam;
    const double could = h.summary.dry_steam_kg_s.value; /* as it pours in, 1 kg/s; what has gathered may soak in with it */
    assert_true(could >= 0.999 * yield && could < 1.2 * yield);
    assert_true(most_steam(&h, 1800, 1803) > 0.5 * yield);
    assert_true(before->undissolved_kg - after->undissolved_kg > 5);
    assert_true(after->layer_kg > 1);
    boil_history_free(&none);
    boil_history_free(&h);
}

/* More water in the same time: more steam at once, and from some amount on more than lifts the bath. */
static void more_water_is_never_milder(void **state)
{
    (void)state;
    double could = 0, steam = 0;
    for (double kg = 0.5; kg < 20; kg *= 2) {
        boil_history h = careless(kg);
        assert_true(h.summary.dry_steam_kg_s.value > could && most_steam(&h, 1800, 1803) > steam);
        could = h.summary.dry_steam_kg_s.value;
        steam = most_steam(&h, 1800, 1803);
        assert_true(kg > 1 || could < h.summary.dry_steam_lifts_kg_s);
        assert_true(kg < 15 || could > h.summary.dry_steam_lifts_kg_s);
        boil_history_free(&h);
    }
}

/* As much salt, sifted into ten times the liquid with the mixer on: it never stands dry. */
static void careful_water_meets_no_dry_salt(void **state)
{
    (void)state;
    boil_plant p = shallow(0.2);
    boil_action actions[3] = {mixer_on(0), salts_action(60, 84, 1500), water_action(1800, 10, 300)};
    boil_history h = run_on(&p, actions, 3);
    assert_true(isnan(h.summary.dry_wetted_s) && isnan(h.summary.dry_steam_kg_s.value));
    boil_history_free(&h);
}

/* On cold salt it soaks in, dissolves some and gives nothing: it is noted all the same. */
static void cold_salt_is_noted(void **state)
{
    (void)state;
    boil_plant p = shallow(0.02);
    boil_action actions[2] = {salts_action(60, 120, 60), water_action(150, 5, 10)};
    boil_history h = run_on(&p, actions, 2);
    assert_close(h.summary.dry_wetted_s, 150, 0, 1e-9);
    assert_close(h.summary.dry_steam_kg_s.value, 0, 0, 1e-3);
    assert_true(h.rows[170].undissolved_kg < h.rows[150].undissolved_kg - 1);
    boil_history_free(&h);
}

/* Salt thrown onto water that floats on a quiet bath meets it as well. */
static void salt_onto_a_layer_is_the_same(void **state)
{
    (void)state;
    boil_plant p = shallow(0.02);
    p.heater.dial = 0;
    boil_action actions[2] = {water_action(60, 1, 10), salts_action(75, 100, 20)};
    boil_history h = run_on(&p, actions, 2);
    assert_true(h.summary.dry_wetted_s > 75 && h.summary.dry_wetted_s < 95);
    boil_history_free(&h);
}

/* In a boiling bath what flashes is part of the boil, until it is more than the heat gives: then the bath as a whole no longer boils,
   and the steam comes all the same. The range of the properties ends this run later; what met the salt is known by then. */
static void a_bath_boiled_nearly_dry(void **state)
{
    (void)state;
    boil_plant p = shallow(0.02);
    p.heater.input_W = 60e3;
    boil_action actions[2] = {salts_action(60, 84, 60), water_action(540, 1, 10)};
    boil_history h = run_on(&p, actions, 2);
    assert_true(h.rows[539].boiling);
    assert_close(h.summary.dry_wetted_s, 540, 0, 1e-9);
    assert_true(!h.rows[542].boiling && h.end == BOIL_RUN_OUT_OF_RANGE);
    assert_true(most_steam(&h, 540, 550) > 5 * h.rows[539].steam_kg_s);
    boil_history_free(&h);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(careless_water_erupts),           cmocka_unit_test(more_water_is_never_milder),
        cmocka_unit_test(careful_water_meets_no_dry_salt), cmocka_unit_test(cold_salt_is_noted),
        cmocka_unit_test(salt_onto_a_layer_is_the_same),   cmocka_unit_test(a_bath_boiled_nearly_dry),
    };
    return cmocka_run_group_tests_name("dry salt", tests, NULL, NULL);
}
