/* unit/model/simulate/test_plain_water.c -- a tank of plain water, heated, boiling and boiling down, against sums with steam tables:
   tests/published/iapws.csv, IAPWS-IF97 by a general-purpose library. run_actions holds every run to closures of 1e-9. */
#include <gsl/gsl_errno.h>
#include <stdlib.h>
#include <string.h>

#include "support/close.h"

#include "support/cases.h"
#include "support/published.h"

enum { START_K = 298, BOIL_K = 368 }; /* whole kelvins of rows at 25 and 95 degC */

static double steam_table(const char *quantity, int kelvin)
{
    published *t = published_open("tests/published/iapws.csv");
    double value = (double)NAN;
    while (published_next(t))
        if (strcmp(published_text(t, "quantity"), quantity) == 0 && (int)published_number(t, "temperature_K") == kelvin)
            value = published_number(t, "value");
    published_close(t);
    assert_true(value > 0);
    return value;
}

/* Under the pressure at which water boils at 95 degC, from 25 degC, all losses off. */
static boil_plant water_plant(void)
{
    boil_plant p = pinned_plant();
    p.charge = (boil_initial_charge){{1, 0, 0}, BOIL_INITIAL_BY_SALT_FRACTION, 0, START_K + 0.15};
    p.ambient.pressure_Pa = 1e6 * steam_table("saturation pressure", BOIL_K);
    return p;
}

static boil_history follow(const boil_plant *p, double duration_s)
{
    boil_run_options o = boil_run_options_default();
    o.row_interval_s = 60;
    return run_actions(p, duration_s, &o, NULL, 0);
}

static double mass_of(const boil_plant *p)
{
    return steam_table("saturated liquid density", START_K) * boil_tank_area(&p->tank) * p->tank.level_m;
}

static void it_takes_the_heat_of_the_steam_tables_to_its_boil(void **state)
{
    (void)state;
    boil_plant p = water_plant();
    double rise = steam_table("saturated liquid enthalpy", BOIL_K) - steam_table("saturated liquid enthalpy", START_K);
    double wanted_s = mass_of(&p) * 1e3 * rise / p.heater.input_W;
    boil_history h = follow(&p, 1.1 * wanted_s);
    print_message("plain water, 25 to 95 degC on 30 kW: %.1f s, by steam tables %.1f s\n", h.summary.time_to_boil_s, wanted_s);
    assert_close(h.summary.time_to_boil_s, wanted_s, 1e-3, 0);
    assert_close(h.summary.boiling_point_start_K, BOIL_K + 0.15, 0, 1e-3);
    assert_true(h.summary.salt_fraction_start == 0 && h.summary.strength_end_kg_m3 == 0);
    assert_true(isnan(h.summary.restoring_water_kg) && isnan(h.summary.restored_level_m));
    boil_history_free(&h);
}

static void it_boils_off_at_heat_over_latent_heat(void **state)
{
    (void)state;
    boil_plant p = water_plant();
    p.charge.temperature_K = 0;
    double latent = steam_table("saturated vapour enthalpy", BOIL_K) - steam_table("saturated liquid enthalpy", BOIL_K);
    double wanted_kg_s = p.heater.input_W / (1e3 * latent);
    boil_history h = follow(&p, 7200);
    print_message("plain water boiling on 30 kW: %.6f kg/s, by steam tables %.6f\n", h.summary.steam_total_kg / 7200,
                  wanted_kg_s);
    assert_close(h.summary.steam_total_kg / 7200, wanted_kg_s, 1e-3, 0);
    for (size_t i = 0; i < h.rows_count; i++) {
        assert_true(h.rows[i].boiling);
        assert_close(h.rows[i].steam_kg_s, wanted_kg_s, 1e-3, 0);
        assert_close(h.rows[i].temperature_K, BOIL_K + 0.15, 0, 1e-3);
    }
    boil_history_free(&h);
}

static void it_boils_down_with_every_loss_and_stops_before_it_is_dry(void **state)
{
    (void)state;
    boil_plant p = open_plant(40e3);
    p.charge = (boil_initial_charge){{1, 0, 0}, BOIL_INITIAL_BY_SALT_FRACTION, 0, CELSIUS(20)};
    boil_history h = follow(&p, 6 * 3600);
    assert_int_equal(h.end, BOIL_RUN_DONE);
    assert_true(h.summary.bath_mass_end_kg < 0.4 * h.summary.bath_mass_start_kg);
    assert_close(h.summary.boiling_point_end_K, h.summary.boiling_point_start_K, 1e-12, 0);
    assert_close(h.summary.bath_mass_start_kg - h.summary.bath_mass_end_kg, h.summary.vented_total_kg, 1e-9, 0);
    boil_history_free(&h);
    h = follow(&p, 24 * 3600);
    assert_int_equal(h.end, BOIL_RUN_OUT_OF_RANGE);
    assert_string_equal(h.stop_unit, "m");
    assert_close(h.stop_value, h.stop_limit, 0, 1e-6);
    assert_true(h.summary.bath_mass_end_kg > 0);
    boil_history_free(&h);
}

static void the_blend_does_not_matter(void **state)
{
    (void)state;
    boil_plant p = open_plant(40e3), other;
    p.charge = (boil_initial_charge){{0, 0, 0}, BOIL_INITIAL_BY_STRENGTH, 0, CELSIUS(80)};
    other = p;
    memcpy(other.charge.blend, (double[]){0.6, 0.3, 0.1}, sizeof other.charge.blend);
    boil_history a = follow(&p, 7200), b = follow(&other, 7200);
    assert_int_equal(a.rows_count, b.rows_count);
    assert_true(a.summary.time_to_boil_s > 0);
    for (size_t i = 0; i < a.rows_count; i++)
        assert_true(a.rows[i].temperature_K == b.rows[i].temperature_K && a.rows[i].water_kg == b.rows[i].water_kg);
    boil_history_free(&a);
    boil_history_free(&b);
}

/* Cooling below nothing: a tank left in the frost stops at five kelvin of supercooling and says so. */
static void it_stops_where_it_freezes(void **state)
{
    (void)state;
    boil_plant p = open_plant(0);
    p.ambient.temperature_K = CELSIUS(-20);
    p.tank.level_m = 0.05;
    p.charge = (boil_initial_charge){{1, 0, 0}, BOIL_INITIAL_BY_SALT_FRACTION, 0, CELSIUS(5)};
    boil_history h = follow(&p, 48 * 3600);
    assert_int_equal(h.end, BOIL_RUN_OUT_OF_RANGE);
    assert_close(h.stop_value, CELSIUS(-5), 0, 1e-3);
    boil_history_free(&h);
}

static void salts_liquid_parts_water_and_a_lid_turn_it_into_a_bath(void **state)
{
    (void)state;
    boil_plant p = open_plant(40e3);
    boil_run_options o = boil_run_options_default();
    p.charge = (boil_initial_charge){{0.8, 0.15, 0.05}, BOIL_INITIAL_BY_SALT_FRACTION, 0, 0};
    p.tank.level_m = 0.4;
    boil_action actions[] = {
        plate_action(300, 1),
        two_gallons_action(900, 240),
        {.time_s = 1800, .kind = BOIL_ACTION_SALTS, .is.salts = {40, 900, CELSIUS(20), {0.8, 0.15, 0.05}}},
        {.time_s = 3000,
         .kind = BOIL_ACTION_LIQUID,
         .is.liquid = {.mass_kg = 20, .over_s = 600, .temperature_K = CELSIUS(20), .blend = {1, 0, 0}, .salt_fraction = 0.5}},
        {.time_s = 4000, .kind = BOIL_ACTION_LID, .is.on = true},
    };
    boil_history h = run_actions(&p, 7200, &o, actions, sizeof actions / sizeof *actions);
    assert_int_equal(h.end, BOIL_RUN_DONE);
    assert_true(h.summary.salt_fraction_start == 0);
    assert_close(h.summary.salt_fraction_end * h.summary.bath_mass_end_kg, 50, 1e-6, 0);
    assert_true(h.summary.boiling_point_end_K > h.summary.boiling_point_start_K + 3);
    boil_history_free(&h);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(it_takes_the_heat_of_the_steam_tables_to_its_boil),
        cmocka_unit_test(it_boils_off_at_heat_over_latent_heat),
        cmocka_unit_test(it_boils_down_with_every_loss_and_stops_before_it_is_dry),
        cmocka_unit_test(the_blend_does_not_matter),
        cmocka_unit_test(it_stops_where_it_freezes),
        cmocka_unit_test(salts_liquid_parts_water_and_a_lid_turn_it_into_a_bath),
    };
    gsl_set_error_handler_off();
    return cmocka_run_group_tests_name("plain water", tests, NULL, NULL);
}
