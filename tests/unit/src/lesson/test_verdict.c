/* unit/src/lesson/test_verdict.c -- what a lesson asks for is what its history says, term by term: every measure against a history
   made by hand, where it is known. */
#include <string.h>

#include "support/close.h"

#include "lesson/aftermath.h"
#include "lesson/lesson.h"

static boil_plant plant;

static const lesson_measure *measure(const char *words)
{
    const lesson_measure *m = lesson_measure_named(words, strlen(words));
    assert_non_null(m);
    return m;
}

static double measured(const char *words, const boil_history *h)
{
    return measure(words)->of(&plant, h);
}

static void what_a_summary_holds(void **state)
{
    (void)state;
    const boil_history h = {.summary = {.water_added_kg = 1,
                                        .steel_kg = 2,
                                        .salts_added_kg = 3,
                                        .freeboard_min_m = {4, 0},
                                        .layer_max_kg = {5, 0},
                                        .undissolved_max_kg = 6,
                                        .boiling_point_end_K = 7,
                                        .still_level_end_m = 8,
                                        .crystals_fire = {0.9, 0}}};
    static const char *const words[] = {"water", "steel", "salts", "rim", "afloat", "lying", "boils at", "level"};
    for (size_t i = 0; i < sizeof words / sizeof words[0]; i++)
        assert_close(measured(words[i], &h), (double)(i + 1), 0, 0);
    assert_close(measured("crust heat", &h), 0.9, 0, 0);
}

static void quiet_spells(void **state)
{
    (void)state;
    const double never = (double)NAN;
    boil_quiet_result spells[] = {{.start_s = 10, .end_s = 40, .layer_max_kg = 0.5, .left_m = never},
                                  {.start_s = 100, .end_s = never, .layer_max_kg = 2, .left_m = -0.1}};
    boil_history h = {.quiet = spells, .quiet_count = 2, .end_s = 160, .summary = {.freeboard_min_m = {0.2, 0}}};
    assert_close(measured("quiet", &h), 30 + 60, 0, 0);
    assert_close(measured("afloat quiet", &h), 2, 0, 0);
    assert_close(measured("left", &h), -0.1, 0, 0);
    assert_close(measured("boils", &h), 0, 0, 0);
    h.quiet_count = 1;
    assert_close(measured("left", &h), 0.2, 0, 0);
    assert_close(measured("boils", &h), 1, 0, 0);
    spells[0].left_m = 0.1;
    assert_close(measured("left", &h), 0.1, 0, 0);
    h.quiet_count = 0; /* what stands behind a list is no part of it */
    assert_close(measured("left", &h), 0.2, 0, 0);
    assert_close(measured("quiet", &h), 0, 0, 0);
    assert_close(measured("afloat quiet", &h), 0, 0, 0);
    assert_close(measured("boils", &h), 1, 0, 0);
}

static void loads_and_additions(void **state)
{
    (void)state;
    boil_load_result loads[] = {{.recovery_s = 60}, {.recovery_s = 90}, {.recovery_s = (double)NAN}};
    boil_addition_result additions[] = {{.steam_before_kg_s = 0.01, .steam_peak_kg_s = 0.02},
                                        {.steam_before_kg_s = 0, .steam_peak_kg_s = 0.06}};
    boil_history h = {.loads = loads,
                      .loads_count = 2,
                      .additions = additions,
                      .additions_count = 2,
                      .summary = {.steam_steady_kg_s = 0.02, .crystals_fire = {(double)NAN, (double)NAN}}};
    assert_close(measured("slowest", &h), 90, 0, 0);
    assert_close(measured("surge", &h), 3, 1e-12, 0);
    h.loads_count = 3;
    assert_true(isinf(measured("slowest", &h)));
    h.summary.steam_steady_kg_s = (double)NAN; /* it never boiled */
    assert_close(measured("surge", &h), 2, 1e-12, 0);
    assert_close(measured("crust heat", &h), 0, 0, 0);
    h.summary.steam_steady_kg_s = 0; /* nor ever steamed: nothing surges */
    additions[0].steam_before_kg_s = 0;
    assert_close(measured("surge", &h), 0, 0, 0);
    additions[0].steam_before_kg_s = 0.01;
    h.additions_count = 1;
    additions[1].steam_before_kg_s = 0.001;
    assert_close(measured("surge", &h), 2, 1e-12, 0);
    h.additions_count = 0;
    assert_close(measured("surge", &h), 0, 0, 0);
    h.loads_count = 1;
    assert_close(measured("slowest", &h), 60, 0, 0);
    h.loads_count = 0;
    assert_close(measured("slowest", &h), 0, 0, 0);
}

/* Each term fails alone, and nothing else that makes a run fail is forgotten. */
static void any_term_fails_the_whole(void **state)
{
    (void)state;
    const double any = (double)INFINITY;
    lesson l = {.terms = {{.measure = measure("water"), .low = 7.5, .high = any},
                          {.measure = measure("afloat"), .low = -any, .high = 0.2},
                          {.measure = measure("boils at"), .low = 411, .high = 417},
                          {.measure = measure("boils"), .low = 1, .high = any}},
                .terms_count = 4};
    boil_quiet_result spell = {.end_s = (double)NAN};
    boil_act_result act = {.end = BOIL_ACT_DONE};
    const boil_history good = {.summary = {.water_added_kg = 7.5, .layer_max_kg = {0.2, 0}, .boiling_point_end_K = 417},
                               .quiet = &spell,
                               .acts = &act,
                               .acts_count = 1};
    assert_true(lesson_judge(&l, &plant, &good).passed);
    boil_history bad[7] = {good, good, good, good, good, good, good};
    bad[0].summary.water_added_kg = 7.4;
    bad[1].summary.layer_max_kg.value = 0.21;
    bad[2].summary.boiling_point_end_K = 417.1;
    bad[3].quiet_count = 1;
    for (size_t i = 0; i < 4; i++) {
        lesson_verdict v = lesson_judge(&l, &plant, &bad[i]);
        assert_false(v.passed);
        assert_int_equal(v.failed, 1);
        assert_false(v.holds[i]);
    }
    bad[4].end = BOIL_RUN_OUT_OF_RANGE;
    assert_true(lesson_judge(&l, &plant, &bad[4]).stopped);
    assert_false(lesson_judge(&l, &plant, &bad[4]).passed);
    bad[5].summary.layer_max_kg.value = (double)NAN;
    assert_false(lesson_judge(&l, &plant, &bad[5]).passed);
    act.end = BOIL_ACT_WAITING;
    assert_int_equal(lesson_judge(&l, &plant, &bad[6]).waited, 1);
    assert_false(lesson_judge(&l, &plant, &bad[6]).passed);
}

/* What floated lets go when the boil is back, long after the pour was watched: its steam, and its room to the rim, are the pour's. */
static void what_lets_go_later_is_the_pours(void **state)
{
    (void)state;
    const boil_plant tank = {.tank = {.depth_m = 1}};
    boil_addition_result pour = {.time_s = 100,
                                 .over_s = 60,
                                 .was_quiet = true,
                                 .steam_before_kg_s = 0.01,
                                 .steam_peak_kg_s = 0.02,
                                 .freeboard_min_m = 0.3};
    boil_quiet_result spells[] = {
        {.start_s = 0, .end_s = 50, .steam_peak_after_kg_s = 9, .level_max_after_m = 3},
        {.start_s = 80, .end_s = 3000, .steam_peak_after_kg_s = 0.5, .level_max_after_m = 1.2},
        {.start_s = 3500, .end_s = 3600, .steam_peak_after_kg_s = 9, .level_max_after_m = 3},
    };
    boil_history h = {.additions = &pour, .additions_count = 1, .quiet = spells, .quiet_count = 3};
    assert_close(aftermath_of(&tank, &h, &pour).steam_kg_s, 0.5, 0, 0);
    assert_close(aftermath_of(&tank, &h, &pour).freeboard_m, -0.2, 1e-12, 0);
    assert_close(measure("surge")->of(&tank, &h), 50, 1e-12, 0);
    assert_false(aftermath_of(&tank, &h, &pour).more_than);
    h.summary.steam_more_than = true;
    assert_true(aftermath_of(&tank, &h, &pour).more_than);
    h.quiet_count = 1; /* what stands behind the list is no part of it */
    assert_close(aftermath_of(&tank, &h, &pour).steam_kg_s, 0.02, 0, 0);
    h.quiet_count = 3;
    spells[1].start_s = 160; /* it began just as the pour ended */
    assert_close(aftermath_of(&tank, &h, &pour).steam_kg_s, 0.5, 0, 0);
    spells[1].start_s = 161;
    assert_close(aftermath_of(&tank, &h, &pour).steam_kg_s, 0.02, 0, 0);
    spells[1].start_s = 80;
    spells[1].end_s = (double)NAN; /* the boil never came back */
    assert_close(aftermath_of(&tank, &h, &pour).freeboard_m, 0.3, 0, 0);
    spells[1].end_s = 3000;
    pour.was_quiet = false; /* all of it went into the boil */
    assert_close(aftermath_of(&tank, &h, &pour).freeboard_m, 0.3, 0, 0);
}

/* Steam past the law is that or more: said so, and under no limit, however high, though not short of one. */
static void what_is_more_than_it_says_is_under_no_limit(void **state)
{
    (void)state;
    const double any = (double)INFINITY;
    lesson l = {.terms = {{.measure = measure("surge"), .low = -any, .high = 100}}, .terms_count = 1};
    boil_addition_result additions[] = {{.steam_before_kg_s = 0.01, .steam_peak_kg_s = 0.02},
                                        {.steam_before_kg_s = 0.01, .steam_peak_kg_s = 0.015}};
    const boil_history h = {.additions = additions, .additions_count = 2};
    lesson_verdict v = lesson_judge(&l, &plant, &h);
    assert_true(v.passed);
    assert_string_equal(lesson_value_text(&l.terms[0], v.value[0], UNITS_US).text, "2.0");
    additions[1].steam_more_than = true; /* it may be more than the first */
    v = lesson_judge(&l, &plant, &h);
    assert_false(v.passed);
    assert_string_equal(lesson_value_text(&l.terms[0], v.value[0], UNITS_US).text, "more than 2");
    l.terms[0] = (lesson_term){.measure = measure("surge"), .low = 2, .high = any};
    assert_true(lesson_judge(&l, &plant, &h).passed);
}

/* Each way in which an act waits in vain, and none of the others. */
static void waiting_in_vain(void **state)
{
    (void)state;
    static const struct {
        boil_act_end end;
        size_t waited;
    } ends[] = {
        {BOIL_ACT_DONE, 0}, {BOIL_ACT_WAITING, 1}, {BOIL_ACT_LAPSED, 1}, {BOIL_ACT_TOO_LATE, 1}, {BOIL_ACT_NOT_NEEDED, 0}};
    const lesson none = {.terms_count = 0};
    for (size_t i = 0; i < sizeof ends / sizeof ends[0]; i++) {
        boil_act_result acts[] = {{.end = BOIL_ACT_DONE}, {.end = ends[i].end}, {.end = BOIL_ACT_WAITING}};
        const boil_history h = {.acts = acts, .acts_count = 2};
        assert_int_equal(lesson_judge(&none, &plant, &h).waited, ends[i].waited);
        assert_int_equal(lesson_judge(&none, &plant, &h).passed, ends[i].waited == 0);
    }
}

static const char *valued(const char *words, double si, unit_system u)
{
    static lesson_text t;
    const lesson_term term = {.measure = measure(words)};
    t = lesson_value_text(&term, (lesson_value){si, false}, u);
    return t.text;
}

/* 0.2 m are 7.9 in, 7.5 kg 16.5 lb: by the definitions of inch and pound. */
static void a_value_in_words(void **state)
{
    (void)state;
    assert_string_equal(valued("rim", 0.2, UNITS_US), "7.9 in");
    assert_string_equal(valued("rim", 0.2, UNITS_SI), "200 mm");
    assert_string_equal(valued("rim", 0, UNITS_US), "over the rim");
    assert_string_equal(valued("rim", -0.1, UNITS_US), "over the rim");
    assert_string_equal(valued("water", 7.5, UNITS_US), "16.5 lb");
    assert_string_equal(valued("slowest", (double)INFINITY, UNITS_US), "never back");
    assert_string_equal(valued("surge", 6.24, UNITS_US), "6.2");
    assert_string_equal(valued("boils", 1, UNITS_US), "yes");
    assert_string_equal(valued("boils", 0, UNITS_US), "no");
}

static void a_limit_in_words(void **state)
{
    (void)state;
    const double any = (double)INFINITY;
    lesson_term t = {.measure = measure("rim"), .low = 0.1524, .high = any, .low_words = {"6 in"}};
    assert_string_equal(lesson_limit_text(&t).text, "at least 6 in");
    t = (lesson_term){.measure = measure("afloat"), .low = -any, .high = 0.2, .high_words = {"0.4 lb"}};
    assert_string_equal(lesson_limit_text(&t).text, "at most 0.4 lb");
    t = (lesson_term){
        .measure = measure("boils at"), .low = 411, .high = 417, .low_words = {"281 degF"}, .high_words = {"291 degF"}};
    assert_string_equal(lesson_limit_text(&t).text, "281 degF to 291 degF");
    t = (lesson_term){.measure = measure("quiet")};
    assert_string_equal(lesson_limit_text(&t).text, "none");
    t = (lesson_term){.measure = measure("boils"), .low = 1, .high = any};
    assert_string_equal(lesson_limit_text(&t).text, "yes");
    assert_string_equal(lesson_times_text((lesson_value){99.96, true}).text, "more than 99");
    assert_string_equal(lesson_times_text((lesson_value){15288.1, true}).text, "more than 100");
}

static void what_is_found_and_measured_by_name(void **state)
{
    (void)state;
    boil_finding list[] = {{.id = "overflow"}, {.id = "steam-surge"}, {.id = "tubes"}};
    const boil_findings f = {.list = list, .count = 2};
    assert_true(lesson_names(&f, "overflow") && lesson_names(&f, "steam-surge"));
    assert_false(lesson_names(&f, "tubes") || lesson_names(&f, "surge"));
    size_t count = 0;
    while (lesson_measure_listed(count) != NULL) {
        const char *words = lesson_measure_listed(count)->words;
        assert_ptr_equal(lesson_measure_named(words, strlen(words)), lesson_measure_listed(count));
        count++;
    }
    assert_true(count > 0);
    assert_ptr_equal(lesson_measure_listed(count - 1), measure("crust heat"));
    assert_null(lesson_measure_named("nothing", 7));
}

/* Five times 60 lb are 300 lb, whatever the last bit of their sum says. */
static void a_sum_keeps_its_limit(void **state)
{
    (void)state;
    lesson l = {.terms = {{.measure = measure("steel"), .low = 300 * 0.45359237, .high = (double)INFINITY}}, .terms_count = 1};
    double sum = 0;
    for (int i = 0; i < 5; i++)
        sum += 60 * 0.45359237;
    boil_history h = {.summary = {.steel_kg = sum}};
    assert_true(lesson_judge(&l, &plant, &h).passed);
    h.summary.steel_kg = sum - 1e-6;
    assert_false(lesson_judge(&l, &plant, &h).passed);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_a_summary_holds),
        cmocka_unit_test(quiet_spells),
        cmocka_unit_test(loads_and_additions),
        cmocka_unit_test(any_term_fails_the_whole),
        cmocka_unit_test(a_sum_keeps_its_limit),
        cmocka_unit_test(what_lets_go_later_is_the_pours),
        cmocka_unit_test(waiting_in_vain),
        cmocka_unit_test(a_value_in_words),
        cmocka_unit_test(a_limit_in_words),
        cmocka_unit_test(what_is_found_and_measured_by_name),
        cmocka_unit_test(what_is_more_than_it_says_is_under_no_limit),
    };
    return cmocka_run_group_tests_name("verdict", tests, NULL, NULL);
}
