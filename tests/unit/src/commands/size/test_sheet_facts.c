/* What runs say for the designer's sheet, of a shipped trough with a hood and without. */
#include <gsl/gsl_errno.h>

#include "support/close.h"

#include "commands/size/sheet.h"
#include "design/published_units.h"
#include "reading/source.h"

/* One light load, so that little is run; with that need, W, as if it had been found without the hood. */
static sheet_facts facts_with(scenario *scene, boil_hood hood, double need_W)
{
    boil_load plate = boil_load_default();
    plate.mass_kg = 5;
    plate.size_m = 6e-3;
    plate.immersed_s = 300;
    size_case one;
    size_answer a = {.size = &one};
    sheet_facts f;
    scene->exhaust.hood = hood;
    assert_int_equal(size_case_one(scene, 600, &plate, &one), BOIL_OK);
    a.heats = (boil_heater_window){.found = BOIL_WINDOW_FOUND, .heat_W = need_W};
    assert_int_equal(boil_steady_state_heat_up(&scene->plant, &one.run, need_W, &a.heats.heat_up_s), BOIL_OK);
    assert_int_equal(sheet_facts_of(&a, &f), BOIL_OK);
    f.size = NULL; /* it ends here */
    size_case_free(&one);
    return f;
}

/* A fan that draws air over an open tank "could more than double the heat losses" (DOE Steam Tip Sheet 19, from memory): what is
   ordered and what is waited for never get less by a hood. A lateral hood draws 100 ft/min over a caustic bath that boils (a
   regulation's table, from memory). */
static void a_hood_asks_for_more_heat_and_time(void **state)
{
    (void)state;
    scenario scene;
    messages complaints;
    boil_run_options o = boil_run_options_default();
    double hooded_s;
    messages_init(&complaints);
    assert_int_equal(scenario_read("scenarios/normal-shift.bath", &scene, &complaints), BOIL_OK);
    sheet_facts open = facts_with(&scene, BOIL_HOOD_NONE, 50e3), hood = facts_with(&scene, BOIL_HOOD_ONE_SIDE, 50e3);
    boil_plant drawn = scene.plant;
    drawn.ambient.draught_m_s = 100 * BOIL_FOOT_A_MINUTE;
    assert_int_equal(boil_steady_state_heat_up(&drawn, &o, open.need_W, &hooded_s), BOIL_OK);
    print_message("heat-up %.3f h, with a hood %.3f h\n", open.heat_up_s / 3600, hood.heat_up_s / 3600);
    assert_true(hood.design_W >= open.design_W && hood.calm_W[0] > open.calm_W[0] && hood.hold_W[0] > open.hold_W[0]);
    assert_true(hood.heat_up_s > open.heat_up_s);
    assert_close(hood.heat_up_s, hooded_s, 1e-9, 0);
    messages_free(&complaints);
    scenario_free(&scene);
}

/* Calm air and a need little over the losses: the hood's draught takes more than that, and the time is of the heat that is ordered
   for the hood. */
static void a_need_that_a_hood_takes_away_is_not_waited_for(void **state)
{
    (void)state;
    scenario scene;
    messages complaints;
    messages_init(&complaints);
    assert_int_equal(scenario_read("scenarios/normal-shift.bath", &scene, &complaints), BOIL_OK);
    scene.plant.ambient.draught_m_s = 0;
    sheet_facts hood = facts_with(&scene, BOIL_HOOD_ONE_SIDE, 25e3);
    print_message("need %.4g kW, losses in the hood's draught %.4g kW, heat-up %.3f h\n", hood.need_W / 1e3,
                  hood.calm_W[0] / 1e3, hood.heat_up_s / 3600);
    assert_true(hood.need_W < hood.calm_W[0] && hood.hood_need_W > hood.calm_W[0]);
    assert_true(hood.heat_up_s > 0 && hood.heat_up_s < 24 * 3600);
    messages_free(&complaints);
    scenario_free(&scene);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_hood_asks_for_more_heat_and_time),
        cmocka_unit_test(a_need_that_a_hood_takes_away_is_not_waited_for),
    };
    gsl_set_error_handler_off();
    return cmocka_run_group_tests_name("sheet facts", tests, NULL, NULL);
}
