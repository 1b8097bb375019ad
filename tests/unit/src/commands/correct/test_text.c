/* What is said of a correction that is made up here: no run. What runs find is tested in model/analysis. */
#include "support/close.h"
#include "support/complained.h"
#include "support/printed.h"
#include "support/shipped.h"

#include "commands/correct/output.h"

typedef struct {
    scenario scene;
    correct_answer answer;
} made_up;

/* A little water into a shipped trough. */
static void make_up(made_up *m)
{
    *m = (made_up){0};
    read_shipped("normal-shift.bath", &m->scene);
    m->answer.scenario = &m->scene;
    m->answer.plan = (boil_correction){.end = BOIL_CORRECT_DONE,
                                       .asked = {.reads_K = 414, .level_m = 0.5, .added_K = 297, .liquid_fraction = 0.5},
                                       .salt_fraction = 0.5,
                                       .still_level_m = 0.5,
                                       .freeboard_now_m = 0.2,
                                       .set_point_K = 413.7,
                                       .wanted_level_m = 0.508,
                                       .most_level_m = 0.55,
                                       .cold_K = 330,
                                       .crystals_from_K = (double)NAN,
                                       .start = m->scene.plant,
                                       .water = {0, 60, 2, {0.1, NULL, NULL}},
                                       .done_s = 120,
                                       .end_K = 413.7,
                                       .end_still_m = 0.508};
}

static bool told(const made_up *m, const char *words)
{
    const output o = {.system = UNITS_SI};
    printed p;
    printed_begin(&p);
    correct_report(&m->answer, &o, p.to);
    return printed_says(&p, words);
}

static bool refused(const made_up *m, const char *words)
{
    complained c;
    complained_begin(&c);
    correct_refuse(&m->answer, UNITS_SI);
    return strstr(complained_end(&c), words) != NULL;
}

static void each_refusal_says_what_to_do(void **state)
{
    static const struct {
        boil_correct_end end;
        const char *words;
    } of[] = {{BOIL_CORRECT_NO_BATH, "look at altitude or pressure, and at the blend"},
              {BOIL_CORRECT_NO_SALTS, "name the bath that it shall be in [bath]"},
              {BOIL_CORRECT_NO_FULL_BOIL, "Add nothing: get a full boil all over"},
              {BOIL_CORRECT_NEARLY_DRY, "No water on it: let it cool"},
              {BOIL_CORRECT_NO_BAILING, "more heat, or a lower level in the scenario"},
              {BOIL_CORRECT_NO_BOIL, "More heat first"},
              {BOIL_CORRECT_NO_FREEBOARD, "a lighter load, less heat or a deeper tank"},
              {BOIL_CORRECT_TOO_WEAK, "use stronger liquid or dry salts"}};
    made_up m;
    (void)state;
    make_up(&m);
    for (size_t i = 0; i < sizeof of / sizeof of[0]; i++) {
        m.answer.plan.end = of[i].end;
        assert_true(refused(&m, of[i].words));
    }
    scenario_free(&m.scene);
}

/* What at no pace goes in well is named, and what helps against that. */
static void what_goes_in_at_no_pace_is_named(void **state)
{
    made_up m;
    (void)state;
    make_up(&m);
    boil_correction *p = &m.answer.plan;
    p->end = BOIL_CORRECT_NO_POUR_RATE;
    p->water.pace = (boil_pour_rate){(double)NAN, "the surface reaches the rim", "overflow"};
    assert_true(refused(&m, "at no pace does the water go in well: the surface reaches the rim. Instead, less heat"));
    p->salts = p->water;
    assert_true(refused(&m, "at no pace do the dry salts go in well") && refused(&m, "try it with the mixer on"));
    m.scene.plant.fittings.mixer_on = true;
    assert_true(refused(&m, "let it cool and fill it up by 'charge --from', or go to a lower level first"));
    p->salts = p->water = (boil_correct_step){0};
    p->harm = "salt lies on the floor";
    assert_true(refused(&m, "what goes in well step by step does not as a whole: salt lies on the floor. Instead, less heat"));
    scenario_free(&m.scene);
}

static void bailing_says_why_and_what_falls_out(void **state)
{
    made_up m;
    (void)state;
    make_up(&m);
    boil_correction *p = &m.answer.plan;
    p->bail = BOIL_BAIL_FOR_LOAD;
    p->bail_m3 = 0.05;
    p->cool_s = 36000;
    assert_true(told(&m, "the next load would not leave the freeboard"));
    assert_false(told(&m, "DANGER"));
    p->bail = BOIL_BAIL_FOR_POUR;
    p->crystals_from_K = 340;
    assert_true(told(&m, "at no pace would the additions") && told(&m, "DANGER: salts fall out from 66.9 degC down"));
    p->water.mass_kg = p->done_s = 0;
    assert_true(told(&m, "nothing to add"));
    scenario_free(&m.scene);
}

/* A reading outside the band may be none of a boiling point: common practice, no source. */
static void a_reading_outside_the_band_is_doubted(void **state)
{
    made_up m;
    (void)state;
    make_up(&m);
    assert_false(told(&m, "WARNING"));
    m.answer.plan.asked.reads_K = m.scene.plant.limits.boiling_point_low_K - 0.1;
    assert_true(told(&m, "A quiet bath is cooler, not weaker"));
    m.answer.plan.asked.reads_K = m.scene.plant.limits.boiling_point_high_K + 0.1;
    assert_true(told(&m, "What is quiet there is overheated"));
    scenario_free(&m.scene);
}

static void a_level_that_is_given_up_is_said(void **state)
{
    made_up m;
    (void)state;
    make_up(&m);
    assert_false(told(&m, "not to the"));
    m.answer.plan.end_still_m = m.answer.plan.wanted_level_m - 4.8e-3; /* under half a centimetre is rounding */
    assert_false(told(&m, "not to the"));
    m.answer.plan.end_still_m = m.answer.plan.wanted_level_m - 5.2e-3;
    assert_true(told(&m, "higher, the next load would not leave the freeboard"));
    m.answer.plan.lowered_from_m = 0.5;
    assert_true(told(&m, "So nothing has to be bailed out"));
    m.scene.plant.fittings.mixer_on = true;
    assert_true(told(&m, "the mixer on"));
    scenario_free(&m.scene);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(each_refusal_says_what_to_do),        cmocka_unit_test(what_goes_in_at_no_pace_is_named),
        cmocka_unit_test(bailing_says_why_and_what_falls_out), cmocka_unit_test(a_reading_outside_the_band_is_doubted),
        cmocka_unit_test(a_level_that_is_given_up_is_said),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
