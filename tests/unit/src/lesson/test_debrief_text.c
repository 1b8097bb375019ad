/* unit/src/lesson/test_debrief_text.c -- what is printed of a shift that is looked back upon, from one made up here: no run. */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "lesson/debrief.h"
#include "support/hand_made.h"
#include "support/printed.h"

enum { WATER, LOAD, HEAT };

typedef struct {
    hand_made of;
    debrief_care care[OF_EACH];
    size_t origin[OF_EACH];
    boil_action cared[OF_EACH];
    boil_act_result done[OF_EACH];
    double alone_m[OF_EACH];
    debrief d;
    lesson lesson;
} made;

/* Water, a load and heat, of which the water went onto the quiet bath. */
static void make(made *m)
{
    *m = (made){0};
    hand_made_begin(&m->of);
    m->of.actions[WATER] = (boil_action){.kind = BOIL_ACTION_WATER, .is.water = {4, 60, 290}};
    m->of.actions[HEAT] = (boil_action){.kind = BOIL_ACTION_HEAT, .is.heat = {BOIL_HEAT_TURN, 0.5, 0}};
    m->of.schedule.count = m->of.history.acts_count = OF_EACH;
    m->of.history.additions_count = 1;
    m->of.history.loads_count = 1;
    m->of.loads[0].action = LOAD;
    for (size_t i = 0; i < OF_EACH; i++) {
        m->origin[i] = i;
        m->cared[i] = m->of.actions[i];
        m->of.acts[i] = m->done[i] = (boil_act_result){60 * (double)i, BOIL_ACT_DONE};
        m->alone_m[i] = UNKNOWN;
    }
    m->d =
        (debrief){.acts = m->care, .acts_count = OF_EACH, .bad = 1, .care = m->of.schedule, .origin = m->origin, .holds = true};
    m->d.care.actions = m->cared;
    m->d.history = (boil_history){.acts = m->done, .acts_count = OF_EACH, .summary = m->of.history.summary};
}

static bool told(const made *m, const char *words)
{
    static const char *const names[] = {"water 4 kg", "load 1 kg", "heat 50 %"};
    const debrief_shift of = {.lesson = m->lesson.terms_count > 0 ? &m->lesson : NULL,
                              .plant = &m->of.plant,
                              .schedule = &m->of.schedule,
                              .history = &m->of.history,
                              .names = names,
                              .start_s = 6 * 3600,
                              .system = UNITS_SI,
                              .lets_go = {UNKNOWN, UNKNOWN}};
    printed p;
    printed_begin(&p);
    debrief_print(&m->d, &of, p.to);
    return printed_says(&p, words);
}

static void what_the_bath_did_is_told_act_by_act(void **state)
{
    made m;
    (void)state;
    make(&m);
    boil_addition_result *a = &m.of.additions[0];
    assert_true(told(&m, "6:00 water 4 kg it boiled on; least room to the rim 300 mm"));
    *a = (boil_addition_result){.kind = BOIL_ACTION_WATER,
                                .quiet_poured_kg = 2,
                                .layer_peak_kg = 3,
                                .boil_lost_s = 10,
                                .recovery_s = UNKNOWN,
                                .steam_before_kg_s = 0.01,
                                .steam_peak_kg_s = 0.03,
                                .freeboard_min_m = -0.1};
    assert_true(told(&m, "2.00 kg went onto the quiet bath; at most 3.00 kg floated; the boil was lost, and never came back"));
    assert_true(told(&m, "steam 3.0 times that before; over the rim"));
    a->steam_more_than = true;
    assert_true(told(&m, "steam more than 3 times that before"));
    m.of.acts[WATER].done_s = UNKNOWN;
    assert_true(told(&m, "never water 4 kg"));
}

/* Water a while after the boil is back, and sooner: a minute of steady boil is common practice, no source. */
static void what_goes_in_too_soon_is_told(void **state)
{
    made m;
    (void)state;
    make(&m);
    m.of.history.quiet_count = 1;
    m.of.quiet[0].end_s = 100;
    m.of.additions[0].time_s = 161;
    assert_false(told(&m, "after the boil came back"));
    m.of.additions[0].time_s = 100;
    assert_true(told(&m, "it went in 0 s after the boil came back"));
    m.of.additions[0].time_s = 120;
    assert_true(told(&m, "it went in 20 s after the boil came back: wait for a minute of steady boil"));
}

static void what_care_makes_of_it_is_told(void **state)
{
    made m;
    (void)state;
    make(&m);
    m.care[WATER] = (debrief_care){.waits = true, .because = "water-on-quiet-bath"};
    assert_true(told(&m, "found: ") && told(&m, "with care: when boiling for 1 min, over 60 s, at 6:00"));
    m.care[WATER] = (debrief_care){.less = 1, .because = "bath-too-cool"};
    assert_true(told(&m, "with care: 4.00 kg, no more than had gone off as vapour, over 60 s"));
    m.care[WATER] = (debrief_care){0};
    m.care[LOAD] = (debrief_care){.drained = true, .parts = 3, .because = "pockets"};
    assert_true(told(&m, "its hollows emptied before; in 3 parts, each a minute after the boil is back"));
    m.care[LOAD].parts = 0;
    m.care[LOAD].waits = true;
    assert_true(told(&m, "its hollows emptied before; when boiling for 1 min, at 6:01"));
    m.care[LOAD] = (debrief_care){0};
    m.care[HEAT] = (debrief_care){.gentle = true, .gone_s = 1800, .because = "restart-over-crystals"};
    assert_true(told(&m, "a quarter of the heat until the crystals are gone at 6:30, then as it was"));
    m.care[HEAT].gone_s = (double)INFINITY;
    assert_true(told(&m, "until the crystals are gone") && !told(&m, "then as it was"));
    m.care[HEAT] = (debrief_care){.steps = 1, .because = "overflow"};
    assert_true(told(&m, "with care: 50 %"));
    m.d.alone_m = m.alone_m;
    m.alone_m[HEAT] = 0.25;
    assert_true(told(&m, "that alone: least room to the rim 250 mm"));
}

/* Care that is not enough is no lesson in care. */
static void whether_care_is_enough_is_told(void **state)
{
    made m;
    (void)state;
    make(&m);
    assert_false(told(&m, "this plan cannot work") || told(&m, "not good enough in a real shop"));
    m.d.gravest = BOIL_SEVERITY_WARNING;
    assert_true(told(&m, "take it as not good enough in a real shop"));
    m.d.holds = false;
    assert_true(told(&m, "this plan cannot work"));
    m.d.bad = 0;
    assert_false(told(&m, "this plan cannot work"));
}

static void a_lesson_that_waits_in_vain_or_stops_is_told(void **state)
{
    char debrief_words[] = "What it was about.", care_words[] = "Done with care.";
    made m;
    (void)state;
    make(&m);
    m.lesson.terms_count = 1;
    m.lesson.terms[0].measure = lesson_measure_named("rim", 3);
    m.lesson.debrief = debrief_words;
    m.lesson.care = care_words;
    m.d.yours = (lesson_verdict){.failed = 1, .waited = 2, .stopped = true};
    assert_true(told(&m, "Not passed: 0 of 1 term holds"));
    assert_true(told(&m, "2 acts wait in vain") && told(&m, "the run stopped early"));
    assert_true(told(&m, "What it was about.") && told(&m, "Done with care."));
    m.d.yours = (lesson_verdict){.passed = true, .holds = {true}};
    assert_true(told(&m, "Passed: 1 of 1 term holds"));
    assert_false(told(&m, "in vain"));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_the_bath_did_is_told_act_by_act),
        cmocka_unit_test(what_goes_in_too_soon_is_told),
        cmocka_unit_test(what_care_makes_of_it_is_told),
        cmocka_unit_test(whether_care_is_enough_is_told),
        cmocka_unit_test(a_lesson_that_waits_in_vain_or_stops_is_told),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
