/* What is shown while a study is made: of draws of which there is no bath, so that nothing is run. */
#include "support/close.h"

#include <string.h>

#include "commands/explore/answer.h"
#include "support/complained.h"
#include "support/shipped.h"

/* The last count stands there however soon it comes after the first. */
static void the_last_count_is_of_all(void **state)
{
    (void)state;
    scenario s;
    scenario_text text;
    messages m;
    read_shipped("uncertain-shift.bath", &s);
    messages_init(&m);
    assert_true(scenario_text_read("scenarios/uncertain-shift.bath", &text, &m));
    explore_answer study = {.title = "A study", .path = "a.bath", .input_count = 1, .plan = {1, 1, 2, 1}};
    study.inputs[0].spread = (boil_spread){.kind = BOIL_SPREAD_UNIFORM, .low = 1, .high = 2}; /* K, of a boil */
    assert_true(explore_begun(&study));
    explore_work w = {.thing_count = 1, .shards = 1, .threads = 1, .progress = true};
    for (size_t i = 0; i < s.uncertain_count; i++)
        if (strcmp(s.uncertain[i].thing.words, "bath boiling point") == 0)
            w.things[0] = &s.uncertain[i].thing;
    assert_non_null(w.things[0]);
    complained c;
    complained_begin(&c);
    explore_end end = explore_run(&study, &text, &w);
    const char *said = complained_end(&c);
    assert_int_equal(end, EXPLORE_WHOLE);
    assert_int_equal(explore_rows(&study), 6);
    assert_non_null(strstr(said, " 1 of 6 runs"));
    assert_non_null(strstr(said, " 6 of 6 runs"));
    assert_int_equal(said[strlen(said) - 1], '\n');
    for (size_t row = 0; row < 6; row++)
        assert_true(explore_row(&study, row)[EXPLORE_DONE] == 0);
    explore_free(&study);
    scenario_text_free(&text);
    messages_free(&m);
    scenario_free(&s);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(the_last_count_is_of_all)};
    return cmocka_run_group_tests_name("study made", tests, NULL, NULL);
}
