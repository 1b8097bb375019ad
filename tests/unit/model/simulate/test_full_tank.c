/* A tank that is filled beyond what it holds, with water or with steel: the run ends as the still surface reaches the rim, and says
   so. When that is, is geometry and densities: water 998.2 kg/m3 at 20 degC [IAPWS R7-97(2012)], steel 7850 kg/m3. */
#include <gsl/gsl_errno.h>
#include <string.h>

#include "support/close.h"

#include "findings/findings.h"
#include "support/cases.h"

/* 0.9 m2, 0.4206 m deep, with room_m up to the rim; cold, so that nothing swells and little evaporates. */
static boil_plant cold_trough(double room_m)
{
    boil_plant p = pinned_plant();
    p.tank.depth_m = p.tank.level_m + room_m;
    p.charge.temperature_K = CELSIUS(20);
    p.heater.dial = 0;
    return p;
}

static boil_history filled(const boil_plant *p, const boil_action *a)
{
    boil_run_options o = boil_run_options_default();
    o.row_interval_s = 10;
    boil_history h = run_actions(p, 4 * 3600, &o, a, 1);
    assert_int_equal(h.end, BOIL_RUN_FULL);
    assert_true(h.rows[h.rows_count - 1].still_level_m < p->tank.depth_m + 1e-3);
    assert_close(h.summary.still_overflow_s, h.end_s, 0, 1e-4); /* a micrometre later */
    return h;
}

/* 100 t into a tenth of a metre. */
static void water_ends_at_the_rim(void **state)
{
    (void)state;
    boil_plant p = cold_trough(0.1);
    boil_action a = two_gallons_action(60, 3600);
    a.is.water.mass_kg = 1e5;
    boil_history h = filled(&p, &a);
    double fills_s = 0.1 * 0.9 * 998.2 / (1e5 / 3600);
    print_message("full after %.3f s of water, by hand %.3f\n", h.end_s - 60, fills_s);
    assert_close(h.end_s - 60, fills_s, 3e-3, 0);
    assert_close(h.summary.water_added_kg, 1e5 * (h.end_s - 60) / 3600, 1e-9, 0);
    boil_history_free(&h);
}

/* 15 t of steel, wet from the rinse: what is on the parts comes in as they do, and no more of it is counted. */
static void steel_ends_at_the_rim(void **state)
{
    (void)state;
    boil_plant p = cold_trough(0.1);
    boil_action a = plate_action(60, 15e3 / 22.68);
    a.is.load.lowering_s = 300;
    boil_history dry = filled(&p, &a);
    double fills_s = 300 * 0.1 * 0.9 / (15e3 / 7850);
    print_message("full after %.3f s of steel, by hand %.3f\n", dry.end_s - 60, fills_s);
    assert_close(dry.end_s - 60, fills_s, 3e-3, 0);
    a.is.load.rinse_kg_m2 = 0.1;
    boil_history wet = filled(&p, &a);
    assert_true(wet.end_s < dry.end_s);
    assert_close(wet.summary.rinse_added_kg, 0.1 * 0.963 * 15e3 / 22.68 * (wet.end_s - 60) / 300, 2e-3, 0);
    boil_history_free(&dry);
    boil_history_free(&wet);
}

/* Among the rest a hot one, at high pressure of the boil, that swells over the rim before: the findings up to then stand. */
static void what_was_found_stands(void **state)
{
    (void)state;
    const double celsius[] = {20, 90, 0};
    for (size_t i = 0; i < sizeof celsius / sizeof celsius[0]; i++) {
        boil_plant p = open_plant(60e3);
        boil_schedule s;
        boil_run_options o = boil_run_options_default();
        boil_run_set set;
        boil_findings likely, possible;
        boil_action a = two_gallons_action(600, 3600);
        p.tank.depth_m = 0.75;
        p.charge.temperature_K = celsius[i] > 0 ? CELSIUS(celsius[i]) : 0;
        a.is.water.mass_kg = 1e4;
        boil_schedule_init(&s, 2 * 3600);
        assert_int_equal(boil_schedule_add(&s, &a), BOIL_OK);
        assert_int_equal(boil_run_set_of(&p, &s, &o, &set), BOIL_OK);
        assert_int_equal(boil_findings_of(&p, &s, NULL, &set.likely, set.other, set.count, &likely, &possible), BOIL_OK);
        assert_int_equal(set.likely.end, BOIL_RUN_FULL);
        assert_int_equal(boil_findings_gravest(&likely), BOIL_SEVERITY_DANGER);
        bool still = false;
        for (size_t k = 0; k < likely.count; k++)
            still = still || strcmp(likely.list[k].id, "overflow-still") == 0;
        for (size_t k = 0; k < possible.count; k++)
            assert_string_not_equal(possible.list[k].id, "not-resolved");
        assert_true(still);
        boil_findings_free(&likely);
        boil_findings_free(&possible);
        boil_run_set_free(&set);
        boil_schedule_free(&s);
    }
}

/* Plain caustic at 4000 m, 84 degC hot water at 400 kg/s, quiet and then boiling: no balance opens and no steam is less than none. */
static void a_flood_closes_its_balances(void **state)
{
    (void)state;
    boil_plant p = boil_plant_default();
    p.tank.length_m = 2.94561;
    p.tank.width_m = 0.500907;
    p.tank.depth_m = 0.601348;
    p.tank.level_m = 0.276521;
    p.tank.heated = BOIL_TANK_HEATED_INSIDE;
    p.charge = (boil_initial_charge){{1, 0, 0}, BOIL_INITIAL_BY_SALT_FRACTION, 0.4017, CELSIUS(100.79)};
    p.heater = boil_heater_default(BOIL_HEAT_GAS);
    p.heater.input_W = 199.94e3;
    p.ambient.pressure_Pa = 61640; /* of 4000 m [ISO 2533] */
    p.ambient.relative_humidity = 1;
    p.ambient.draught_m_s = 3;
    boil_action a = two_gallons_action(833, 252);
    a.is.water = (boil_action_water){1e5, 252, CELSIUS(84)};
    boil_history h = filled(&p, &a);
    assert_true(h.end_s > 833 && h.mode_changes <= 3);
    for (size_t i = 0; i < h.rows_count; i++)
        assert_true(h.rows[i].steam_kg_s >= 0);
    boil_history_free(&h);
}

/* 63 MW onto a fifth of a square metre is no heater's: refused, and what a heater can give is not. */
static void heat_that_no_boil_takes_up_is_refused(void **state)
{
    (void)state;
    boil_plant p = pinned_plant();
    p.heater.input_W = 2.9e6 * 0.9;
    assert_null(boil_plant_problem(&p));
    boil_history h = run_actions(&p, 600, &(boil_run_options){.tolerance = 1e-7}, NULL, 0);
    boil_history_free(&h);
    p.heater.input_W = 3.1e6 * 0.9;
    assert_non_null(boil_plant_problem(&p));
    assert_non_null(strstr(boil_plant_problem(&p), "3 MW"));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(water_ends_at_the_rim),
        cmocka_unit_test(steel_ends_at_the_rim),
        cmocka_unit_test(what_was_found_stands),
        cmocka_unit_test(a_flood_closes_its_balances),
        cmocka_unit_test(heat_that_no_boil_takes_up_is_refused),
    };
    gsl_set_error_handler_off();
    return cmocka_run_group_tests_name("full tank", tests, NULL, NULL);
}
