/* What is told as a shift goes on: each happening at the moment that the history has for it, in the order of time, and once. */
#include <gsl/gsl_errno.h>

#include "support/worked.h"

#include <math.h>

#include "practise/happened.h"

#define TEXT WORKED_TOP WORKED_PLANT
#define LOAD "load 42 lb, plate 1/4 in, at 70 degF, for 5 min, lowered over 20 s"

static void go_on(worked *w, double until_s)
{
    assert_int_equal(shift_go_on(&w->shift, until_s), BOIL_OK);
}

static const happening *told(const happenings *h, const char *words)
{
    const happening *found = NULL;
    for (size_t i = 0; i < h->count; i++)
        if (strcmp(h->list[i].text.text, words) == 0) {
            assert_null(found);
            found = &h->list[i];
        }
    return found;
}

static void is_told(const happenings *h, const char *words, double time_s)
{
    const happening *one = told(h, words);
    if (one == NULL)
        fail_msg("'%s' is not told", words);
    assert_close(one->time_s, time_s, 0, 1e-9);
}

static void it_is_kept_in_the_order_of_time(void **state)
{
    (void)state;
    happenings h = {0};
    static const double times[] = {5, 1, 3, 3, 9, 0};
    for (size_t i = 0; i < 6; i++) {
        char words[8];
        snprintf(words, sizeof words, "%zu", i);
        assert_true(happened_add(&h, times[i], words));
    }
    static const char *const order[] = {"5", "1", "2", "3", "0", "4"}; /* of one moment as they came */
    assert_int_equal(h.count, 6);
    for (size_t i = 0; i < 6; i++)
        assert_string_equal(h.list[i].text.text, order[i]);
    happenings_free(&h);
    assert_int_equal(h.count, 0);
}

/* A load and a pour onto the quiet bath, all of it at once. */
static void loads_pours_and_the_boil_are_told(void **state)
{
    (void)state;
    worked w = {.read = {0}};
    happenings h = {0};
    worked_begin(&w, TEXT);
    go_on(&w, 60);
    assert_int_equal(worked_act(&w, LOAD), BOIL_OK);
    go_on(&w, 90);
    assert_int_equal(worked_act(&w, "water 0.5 gal over 40 s"), BOIL_OK);
    go_on(&w, 900);
    const boil_history *of = shift_history(&w.shift);
    assert_true(happened_since(&w.shift, -1, UNITS_US, &h));
    is_told(&h, "the load stops the boil", of->quiet[0].start_s);
    is_told(&h, "water floats on the quiet bath", of->quiet[0].layer_s);
    is_told(&h, "42.0 lb of parts are in", 80);
    is_told(&h, "the water is in", 130);
    is_told(&h, "42.0 lb of parts are out", 380);
    assert_null(told(&h, "the bath is quiet"));
    for (size_t i = 1; i < h.count; i++)
        assert_true(h.list[i].time_s >= h.list[i - 1].time_s);
    happenings_free(&h);
    worked_end(&w);
}

/* Of the return of the boil how long it was gone, and what had gathered by then, if that is worth a word. */
static void the_boil_is_back(void **state)
{
    (void)state;
    static const struct {
        const char *act, *words;
    } of[] = {{"heat 100 %", "the boil is back after "}, {"water 0.5 gal over 5 s", " of water on top mix in"}};
    for (size_t i = 0; i < 2; i++) {
        worked w = {.read = {0}};
        happenings h = {0};
        size_t found = 0;
        worked_begin(&w, TEXT);
        assert_int_equal(worked_act(&w, LOAD), BOIL_OK);
        go_on(&w, 30);
        assert_int_equal(worked_act(&w, of[i].act), BOIL_OK);
        go_on(&w, 200);
        const boil_quiet_result *q = &shift_history(&w.shift)->quiet[0];
        assert_true(happened_since(&w.shift, -1, UNITS_US, &h));
        for (size_t k = 0; k < h.count; k++)
            if (h.list[k].time_s == q->end_s) {
                assert_memory_equal(h.list[k].text.text, "the boil is back after ", 23);
                assert_int_equal(atol(h.list[k].text.text + 23), lround(q->end_s - q->start_s));
                assert_int_equal(strstr(h.list[k].text.text, "mix in") != NULL, i == 1);
                assert_non_null(strstr(h.list[k].text.text, of[i].words));
                found++;
            }
        assert_int_equal(found, 1);
        happenings_free(&h);
        worked_end(&w);
    }
}

/* From one moment to the next: what came before, and what is still to come, is not told; nothing is told twice. */
static void only_what_is_new_is_told(void **state)
{
    (void)state;
    worked w = {.read = {0}};
    happenings all = {0}, parts = {0};
    worked_begin(&w, TEXT);
    assert_int_equal(worked_act(&w, LOAD), BOIL_OK);
    double from_s = -1;
    for (double s = 10; s <= 600; s += 10) { /* 20 and 320 are moments of the load itself */
        go_on(&w, s);
        assert_true(happened_since(&w.shift, from_s, UNITS_US, &parts));
        from_s = w.shift.now_s;
    }
    assert_true(happened_since(&w.shift, -1, UNITS_US, &all));
    assert_int_equal(parts.count, all.count);
    for (size_t i = 0; i < all.count; i++)
        assert_string_equal(parts.list[i].text.text, all.list[i].text.text);
    assert_true(all.count >= 4);
    happenings_free(&all);
    happenings_free(&parts);
    worked_end(&w);
}

/* At the rows of the trace at which it crosses; under it again no prediction. */
static void the_rim_is_told_both_ways(void **state)
{
    (void)state;
    worked w = {.read = {0}};
    happenings h = {0};
    worked_begin(&w, TEXT);
    assert_int_equal(worked_act(&w, LOAD), BOIL_OK);
    go_on(&w, 20);
    assert_int_equal(worked_act(&w, "water 2 gal over 20 s"), BOIL_OK);
    go_on(&w, 300);
    const boil_history *of = shift_history(&w.shift);
    double over_s = -1, under_s = -1;
    for (size_t i = 0; i < of->rows_count; i++) {
        over_s = over_s < 0 && of->rows[i].freeboard_m <= 0 ? of->rows[i].time_s : over_s;
        under_s = over_s >= 0 && under_s < 0 && of->rows[i].freeboard_m > 0 ? of->rows[i].time_s : under_s;
    }
    assert_true(over_s > 20 && under_s > over_s);
    assert_true(happened_since(&w.shift, -1, UNITS_US, &h));
    is_told(&h, "OVER THE RIM; what leaves the tank is not worked out", over_s);
    is_told(&h, "under the rim again; from the overflow on this is not a prediction", under_s);
    happenings_free(&h);
    assert_true(happened_since(&w.shift, over_s, UNITS_US, &h));
    assert_null(told(&h, "OVER THE RIM; what leaves the tank is not worked out"));
    assert_non_null(told(&h, "under the rim again; from the overflow on this is not a prediction"));
    happenings_free(&h);
    worked_end(&w);
}

/* A minute, or a twentieth of what is left until something changes, and never past that. */
static void a_look_is_due_in_a_minute(void **state)
{
    (void)state;
    worked w = {.read = {0}};
    worked_begin(&w, WORKED_TOP WORKED_PLANT);
    double change_s = shift_next_change_s(&w.shift);
    assert_close(happened_next_look_s(&w.shift), fmin(change_s, fmax(60, change_s / 20)), 1e-12, 0);
    go_on(&w, 1000);
    assert_close(shift_next_change_s(&w.shift), 1800, 1e-12, 0);
    assert_close(happened_next_look_s(&w.shift), 1060, 1e-12, 0);
    go_on(&w, 1750);
    assert_close(happened_next_look_s(&w.shift), 1800, 1e-12, 0);
    worked_end(&w);
    worked_begin(&w, "duration = 10 h\n" WORKED_PLANT);
    change_s = shift_next_change_s(&w.shift);
    assert_true(change_s > 1200 && change_s < 36000); /* it boils down */
    assert_close(happened_next_look_s(&w.shift), change_s / 20, 1e-12, 0);
    worked_end(&w);
}

/* Found once, and again only where it became graver; what has no moment of its own, or an older one, now. */
static void what_is_found_is_told_once(void **state)
{
    (void)state;
    worked w = {.read = {0}};
    happenings h = {0};
    happened_findings found = {{0}};
    worked_begin(&w, TEXT);
    assert_int_equal(worked_act(&w, LOAD), BOIL_OK);
    go_on(&w, 20);
    assert_int_equal(worked_act(&w, "water 2 gal over 20 s"), BOIL_OK);
    double from_s = -1;
    for (double s = 25; s < 300; s += 5) {
        go_on(&w, s);
        size_t before = h.count;
        assert_true(happened_found(&w.shift, from_s, &found, &h));
        for (size_t i = before; i < h.count; i++)
            assert_true(h.list[i].time_s > from_s && h.list[i].time_s <= s);
        from_s = s;
    }
    assert_true(h.count >= 3);
    for (size_t i = 0; i < h.count; i++) {
        assert_true(h.list[i].finding && h.list[i].severity >= BOIL_SEVERITY_CAUTION && h.list[i].advice != NULL);
        for (size_t k = 0; k < i; k++)
            if (strcmp(h.list[i].text.text, h.list[k].text.text) == 0)
                assert_true(h.list[i].severity > h.list[k].severity);
    }
    assert_non_null(told(&h, "the boiling surface reaches the rim"));
    size_t count = h.count;
    assert_true(happened_found(&w.shift, from_s, &found, &h));
    assert_int_equal(h.count, count);
    happenings_free(&h);
    worked_end(&w);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(it_is_kept_in_the_order_of_time),
        cmocka_unit_test(loads_pours_and_the_boil_are_told),
        cmocka_unit_test(the_boil_is_back),
        cmocka_unit_test(only_what_is_new_is_told),
        cmocka_unit_test(the_rim_is_told_both_ways),
        cmocka_unit_test(a_look_is_due_in_a_minute),
        cmocka_unit_test(what_is_found_is_told_once),
    };
    return cmocka_run_group_tests_name("what happens as a shift goes on", tests, scratch_begin, scratch_end);
}
