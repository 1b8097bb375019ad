/* What is said of a filling that is made up here: no run. What runs find is tested in model/analysis. */
#include "support/close.h"
#include "support/complained.h"
#include "support/printed.h"
#include "support/shipped.h"

#include "commands/charge/output.h"

typedef struct {
    scenario scene;
    charge_answer answer;
} made_up;

/* Water, then one batch of salts, into an empty trough. */
static void make_up(made_up *m)
{
    const double none = (double)NAN;
    *m = (made_up){0};
    read_shipped("normal-shift.bath", &m->scene);
    m->answer.scenario = &m->scene;
    m->answer.plan = (boil_charge_plan){.end = BOIL_CHARGE_DONE,
                                        .asked = {.added_K = 297, .from_K = 297},
                                        .water_kg = 300,
                                        .salts_kg = 20,
                                        .water_level_m = 0.2,
                                        .from_crystals_K = none,
                                        .liquid_crystals_K = none,
                                        .steps_count = 2,
                                        .mixer_W = 40,
                                        .mixing_time_s = 20,
                                        .filled_s = 1200,
                                        .heat_up_s = 3600,
                                        .evaporated_kg = 3,
                                        .water_to_add_kg = 3,
                                        .water_pace = {0.05, "a finding", "a-finding"},
                                        .boil_down_s = none,
                                        .salt_fraction = 0.5,
                                        .boiling_point_K = 413.7,
                                        .freeboard_m = 0.2,
                                        .crystals_from_K = none};
    m->answer.plan.steps[0] = (boil_charge_step){BOIL_ACTION_WATER, 300, 0, 600, 0, 0, 297, 297, 297, 373, none, 0.2};
    m->answer.plan.steps[1] = (boil_charge_step){BOIL_ACTION_SALTS, 20, 600, 300, 60, 9e6, 330, 331, 333, 390, 350, 0.21};
}

static bool told(const made_up *m, const char *words)
{
    const output o = {.system = UNITS_SI};
    printed p;
    printed_begin(&p);
    charge_report(&m->answer, &o, p.to);
    return printed_says(&p, words);
}

static void each_refusal_says_what_to_do(void **state)
{
    static const struct {
        boil_charge_end end;
        const char *words;
    } of[] = {{BOIL_CHARGE_NO_BATH, "no such bath"},
              {BOIL_CHARGE_CRYSTALS, "warm it first"},
              {BOIL_CHARGE_TOO_MUCH, "bail out 10.0 L first"},
              {BOIL_CHARGE_TOO_HOT, "let it cool below"},
              {BOIL_CHARGE_NO_FREEBOARD, "use stronger liquid, or dry salts, or a lower level"},
              {BOIL_CHARGE_NO_COOLING, "would not be 15.0 K below its boil again within a day"},
              {BOIL_CHARGE_NO_DISSOLVING, "Charge to a weaker strength"}};
    made_up m;
    (void)state;
    make_up(&m);
    m.answer.plan.bail_m3 = 0.01;
    for (size_t i = 0; i < sizeof of / sizeof of[0]; i++) {
        complained c;
        m.answer.plan.end = of[i].end;
        complained_begin(&c);
        charge_refuse(&m.answer, UNITS_SI);
        assert_non_null(strstr(complained_end(&c), of[i].words));
    }
    scenario_free(&m.scene);
}

/* Dissolving sets heat free, or takes it up: and heat that is taken up is no reason to hurry. */
static void heat_set_free_and_taken_up_are_told_apart(void **state)
{
    made_up m;
    (void)state;
    make_up(&m);
    assert_true(told(&m, "2.50 kWh set free") && told(&m, "never a lump"));
    m.answer.plan.steps[1].heat_J = -9e6;
    assert_true(told(&m, "2.50 kWh taken up") && told(&m, "do not hurry because of that"));
    m.answer.plan.steps[1].heat_J = 0;
    assert_false(told(&m, "taken up") || told(&m, "set free"));
    scenario_free(&m.scene);
}

/* Who stirs: common practice, no source. */
static void who_can_stir_so_much_is_said(void **state)
{
    made_up m;
    (void)state;
    make_up(&m);
    assert_true(told(&m, "A person with a paddle does it"));
    m.answer.plan.mixer_W = 51;
    assert_true(told(&m, "more than a person with a paddle gives"));
    m.answer.plan.mixer_stated = true;
    assert_true(told(&m, "the scenario's mixer"));
    assert_false(told(&m, "paddle"));
    scenario_free(&m.scene);
}

static void what_is_left_to_do_at_the_boil_is_said(void **state)
{
    made_up m;
    (void)state;
    make_up(&m);
    assert_true(told(&m, "no faster than 3.00 kg a minute"));
    assert_true(told(&m, "faster: a finding"));
    m.answer.plan.water_pace = (boil_pour_rate){(double)NAN, NULL, NULL};
    assert_true(told(&m, "Too little to matter"));
    m.answer.plan.water_pace = (boil_pour_rate){0, "a finding", "a-finding"};
    assert_true(told(&m, "at no pace (a finding)"));
    assert_false(told(&m, "no faster than"));
    m.answer.plan.water_to_add_kg = -5;
    assert_true(told(&m, "boil down 5.00 kg of water Adding nothing"));
    m.answer.plan.boil_down_s = 1800;
    assert_true(told(&m, "boil down 5.00 kg of water, about 30 min"));
    m.answer.plan.heat_up_s = (double)NAN;
    assert_true(told(&m, "it never boils") && told(&m, "does not boil within two weeks"));
    assert_false(told(&m, "boil down"));
    scenario_free(&m.scene);
}

static void nothing_to_put_in_is_no_list(void **state)
{
    made_up m;
    (void)state;
    make_up(&m);
    m.answer.plan.steps_count = 0;
    m.answer.plan.water_kg = m.answer.plan.salts_kg = 0;
    m.answer.plan.asked.from_level_m = 0.5;
    assert_true(told(&m, "Nothing to put in; then 60 min to the boil") && told(&m, "What goes in nothing"));
    assert_false(told(&m, "Stirring needed"));
    scenario_free(&m.scene);
}

/* Liquid that crystallises in its drum is warned of, and liquid that does not is not. */
static void a_drum_that_crystallises_is_kept_warm(void **state)
{
    made_up m;
    (void)state;
    make_up(&m);
    m.answer.plan.salts_kg = 0;
    m.answer.plan.liquid_kg = 20;
    m.answer.plan.asked.liquid_fraction = 0.5;
    m.answer.plan.asked.liquid_K = 297;
    m.answer.plan.steps[1].kind = BOIL_ACTION_LIQUID;
    assert_true(told(&m, "ready-mixed liquid") && told(&m, "Water and liquid to put in"));
    assert_false(told(&m, "keep drum and hose warmer"));
    m.answer.plan.liquid_crystals_K = 285;
    assert_true(told(&m, "keep drum and hose warmer"));
    m.answer.plan.steps[0] = m.answer.plan.steps[1];
    m.answer.plan.steps[0].next_below_K = (double)NAN;
    assert_true(told(&m, "Heat off. Let nothing splash."));
    scenario_free(&m.scene);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(each_refusal_says_what_to_do), cmocka_unit_test(heat_set_free_and_taken_up_are_told_apart),
        cmocka_unit_test(who_can_stir_so_much_is_said), cmocka_unit_test(what_is_left_to_do_at_the_boil_is_said),
        cmocka_unit_test(nothing_to_put_in_is_no_list), cmocka_unit_test(a_drum_that_crystallises_is_kept_warm),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
