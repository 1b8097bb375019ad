/* The page of a replay: its figures are those of the replay, what people wrote stays text, and of a lesson it has each answer. */
#include "support/close.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "replay/page/parts.h"
#include "support/json.h"
#include "support/printed.h"
#include "support/shipped.h"

typedef struct {
    scenario s[LESSON_SHOWN];
    size_t count;
    lesson_answer *a;
} shown;

static void show(shown *p, const char *first, const char *second)
{
    const scenario *failed;
    p->count = second != NULL ? 2 : 1;
    p->a = calloc(1, sizeof *p->a);
    assert_non_null(p->a);
    read_shipped(first, &p->s[0]);
    if (second != NULL)
        read_shipped(second, &p->s[1]);
    assert_int_equal(lesson_answer_of(p->s, p->count, p->a, &failed), BOIL_OK);
    assert_true(lesson_page_fits(p->a, &(output){.system = UNITS_US, .html = "page.html"}));
}

static void hide(shown *p)
{
    lesson_answer_free(p->a);
    free(p->a);
    for (size_t i = 0; i < p->count; i++)
        scenario_free(&p->s[i]);
}

static char *data_of(const lesson_answer *a)
{
    printed p;
    printed_begin(&p);
    lesson_data(a, p.to);
    char *data = printed_end(&p);
    assert_true(is_json(data));
    return data;
}

static char *page_of(const lesson_answer *a)
{
    printed p;
    printed_begin(&p);
    lesson_page(a, &(output){.system = UNITS_US}, NULL, NULL, p.to);
    return printed_end(&p);
}

/* Behind the nth text of that kind, counted from 0. */
static const char *behind(const char *text, const char *words, size_t nth)
{
    for (size_t i = 0; text != NULL && i <= nth; i++) {
        text = strstr(text, words);
        text = text != NULL ? text + strlen(words) : NULL;
    }
    return text;
}

/* The first and then differences, in a one: half of one off at the most. */
static void assert_column(const char *at, const replay *r, size_t where, double one)
{
    long sum = 0;
    assert_non_null(at);
    for (size_t i = 0; i < r->rows_count; i++) {
        char *end;
        double value;
        memcpy(&value, (const char *)&r->rows[i] + where, sizeof value);
        sum += strtol(at, &end, 10);
        assert_true(end > at && *end == (i + 1 < r->rows_count ? ',' : ']'));
        assert_close((double)sum * one, value, 0, 0.5001 * one);
        at = end + 1;
    }
}

/* Whether it boils, likewise in differences. */
static void assert_modes(const char *at, const replay *r)
{
    long sum = 0;
    assert_non_null(at);
    for (size_t i = 0; i < r->rows_count; i++) {
        char *end;
        sum += strtol(at, &end, 10);
        assert_int_equal(sum, r->rows[i].boiling);
        at = end + 1;
    }
}

static void figures_are_the_replays(void **state)
{
    (void)state;
    shown p;
    show(&p, "water-while-quiet.bath", "water-while-boiling.bath");
    char *data = data_of(p.a);
    for (size_t i = 0; i < 2; i++) {
        const char *rows = behind(data, "\"rows\":{", i);
        assert_column(behind(rows, "\"t\":[", 0), &p.a->runs[i].replay, offsetof(boil_row, time_s), 0.01);
        assert_column(behind(rows, "\"l\":[", 0), &p.a->runs[i].replay, offsetof(boil_row, level_m), 1e-4);
        assert_column(behind(rows, "\"T\":[", 0), &p.a->runs[i].replay, offsetof(boil_row, temperature_K), 0.01);
        assert_modes(behind(rows, "\"m\":[", 0), &p.a->runs[i].replay);
    }
    assert_null(strpbrk(data, "<>&'"));
    free(data);
    hide(&p);
}

/* Both on one clock: every event of either is on a line of its second, and lines rise. */
static void lines_hold_every_event(void **state)
{
    (void)state;
    shown p;
    size_t count, told[2] = {0};
    show(&p, "water-while-quiet.bath", "water-while-boiling.bath");
    lesson_line *lines = lesson_lines(p.a, &count);
    for (size_t i = 0; i < count; i++) {
        assert_true(i == 0 || floor(lines[i].time_s) > floor(lines[i - 1].time_s));
        for (size_t k = 0; k < 2; k++)
            for (size_t n = 0; n < lines[i].count[k]; n++, told[k]++)
                assert_close(floor(lines[i].of[k][n].time_s), floor(lines[i].time_s), 0, 0);
    }
    for (size_t k = 0; k < 2; k++)
        assert_int_equal(told[k], p.a->runs[k].replay.events_count);
    free(lines);
    hide(&p);
}

/* What stands behind the last event in memory is none, though it be of the same second. */
static void the_last_event_is_the_last(void **state)
{
    (void)state;
    replay_event events[3] = {{.time_s = 10}, {.time_s = 10.5}, {.time_s = 10.7}};
    lesson_answer *a = calloc(1, sizeof *a);
    size_t count;
    assert_non_null(a);
    a->count = 1;
    a->runs[0].replay = (replay){.events = events, .events_count = 2};
    lesson_line *lines = lesson_lines(a, &count);
    assert_int_equal(count, 1);
    assert_int_equal(lines[0].count[0], 2);
    free(lines);
    free(a);
}

/* By as much as its boil is back later; nothing where that is under a minute, and none of B to itself. */
static void b_may_be_laid_on_as_boil(void **state)
{
    (void)state;
    shown p;
    show(&p, "lessons/10-monday-morning.bath", NULL);
    const boil_history *h[2] = {&p.a->runs[0].done.central, &p.a->runs[1].done.central};
    double later_s = lesson_later(p.a, &p.a->runs[0]);
    assert_true(later_s > 600);
    assert_close(later_s, h[1]->quiet[0].end_s - h[0]->quiet[0].end_s, 0, 0);
    assert_close(lesson_later(p.a, &p.a->runs[1]), 0, 0, 0);
    hide(&p);
    show(&p, "water-while-quiet.bath", "water-while-boiling.bath"); /* they boil again within seconds of each other */
    assert_close(lesson_later(p.a, &p.a->runs[0]), 0, 0, 0);
    hide(&p);
    show(&p, "water-while-quiet.bath", NULL);
    assert_close(lesson_later(p.a, &p.a->runs[0]), 0, 0, 0);
    hide(&p);
}

static char *escaped(const char *text)
{
    printed p;
    printed_begin(&p);
    html h = html_to(p.to);
    html_text(&h, text);
    return printed_end(&p);
}

/* What happens to one tank within a second stands in one cell, a blank between two. */
static void events_of_a_second_share_a_cell(void **state)
{
    (void)state;
    shown p;
    size_t count, told = 0;
    show(&p, "water-while-quiet.bath", NULL);
    char *page = page_of(p.a);
    lesson_line *lines = lesson_lines(p.a, &count);
    for (size_t i = 0; i < count; i++) {
        if (lines[i].count[0] < 2)
            continue;
        char *first = escaped(lines[i].of[0][0].text.text), *second = escaped(lines[i].of[0][1].text.text), both[1000];
        snprintf(both, sizeof both, "<td>%s %s", first, second);
        told += printed_times(page, both);
        free(first);
        free(second);
    }
    assert_true(told > 0);
    free(lines);
    free(page);
    hide(&p);
}

/* One file: a style, the data and the script, nothing that is fetched; four moments a tank; no larger than 200 KiB. */
static void a_page_is_whole(void **state)
{
    (void)state;
    shown p;
    show(&p, "water-while-quiet.bath", "water-while-boiling.bath");
    char *page = page_of(p.a);
    assert_int_equal(printed_times(page, "<script"), 2);
    assert_int_equal(printed_times(page, "<style>"), 1);
    assert_int_equal(printed_times(page, "default-src 'none'"), 1);
    assert_int_equal(printed_times(page, " src="), 0);
    assert_int_equal(printed_times(page, "url(http"), 0);
    assert_int_equal(printed_times(page, "data-run=\"0\""), 4);
    assert_int_equal(printed_times(page, "data-run=\"1\""), 4);
    assert_true(strlen(page) <= 200 * 1024);
    free(page);
    hide(&p);
}

/* Of runs in which nothing happened the page does not ask how it could have been kept from happening. */
static void it_asks_of_what_happened(void **state)
{
    (void)state;
    static const char grave[] = "kept from happening", calm[] = "the least room at the rim";
    const char *const names[] = {"water-while-quiet.bath", "water-while-boiling.bath"};
    for (size_t i = 0; i < 2; i++) {
        shown p;
        show(&p, names[i], NULL);
        assert_int_equal(carried_out_gravest(&p.a->runs[0].done) >= BOIL_SEVERITY_WARNING, i == 0);
        char *page = page_of(p.a);
        assert_int_equal(printed_times(page, grave), i == 0);
        assert_int_equal(printed_times(page, calm), i == 1);
        free(page);
        hide(&p);
    }
}

/* What the tank looks like at a moment: the part of that name, up to its end. */
static void assert_part(const lesson_answer *a, double time_s, const char *part, const char *has, bool any)
{
    printed p;
    printed_begin(&p);
    html h = html_to(p.to);
    lesson_picture(&h, a, 0, time_s);
    char *text = printed_end(&p), name[40];
    snprintf(name, sizeof name, "data-part=\"%s\"", part);
    char *from = strstr(text, name);
    assert_non_null(from);
    *strstr(from, "</g>") = '\0';
    assert_int_equal(strstr(from, has) != NULL, any);
    free(text);
}

/* No bubble in a quiet bath. */
static void bubbles_are_of_the_boil(void **state)
{
    (void)state;
    shown p;
    show(&p, "water-while-quiet.bath", NULL);
    const replay *r = &p.a->runs[0].replay;
    size_t told[2] = {0};
    for (size_t i = 0; i < r->rows_count; i++) {
        const boil_row *row = &r->rows[i];
        if (told[row->boiling]++ > 0 || replay_at(r, row->time_s).boiling != row->boiling)
            continue;
        assert_part(p.a, row->time_s, "bubbles", "<circle", row->boiling);
    }
    assert_true(told[0] > 0 && told[1] > 0);
    hide(&p);
}

/* A is the reckless script, B the careful one, and each choice a run; what came of each is what the terms say. */
static void a_lesson_has_each_answer(void **state)
{
    (void)state;
    shown p;
    show(&p, "lessons/01-water-while-it-boils.bath", NULL);
    const lesson_answer *a = p.a;
    assert_int_equal(a->count, 2);
    assert_int_equal(a->choices, p.s[0].lesson.choices_count);
    assert_false(a->runs[0].verdict.passed);
    assert_true(a->runs[1].verdict.passed);
    assert_non_null(strstr(lesson_outcome(a, &a->runs[0]).text, "Not passed: "));
    assert_non_null(strstr(lesson_outcome(a, &a->runs[0]).text, "over the rim"));
    assert_non_null(strstr(lesson_outcome(a, &a->runs[1]).text, "Passed"));
    assert_string_equal(a->runs[2].title, p.s[0].lesson.choices[0].says); /* the acts of the reckless script */
    assert_close(a->runs[2].done.central.summary.overflow_s, a->runs[0].done.central.summary.overflow_s, 1e-12, 0);
    char *data = data_of(a);
    assert_int_equal(printed_times(data, "\"tank\":"), 2 + a->choices);
    assert_int_equal(printed_times(data, "\"tank\":1,"), 1);
    assert_int_equal(printed_times(data, "\"run\":"), a->choices);
    for (size_t i = 0; i < a->choices; i++)
        assert_int_equal(strtol(behind(data, "\"run\":", i), NULL, 10), (long)(2 + i));
    assert_close(strtod(behind(data, "\"at\":", 0), NULL), p.s[0].lesson.stops[0].at_s, 0, 1e-9);
    free(data);
    hide(&p);
}

/* A shift alone where nothing could be done better, else with the careful one as B; of a lesson it is not named but judged. */
static void a_shift_stands_beside_the_careful_one(void **state)
{
    (void)state;
    static const char *const names[] = {"water-while-quiet.bath", "lessons/08-weak-bath.bath"};
    scenario s;
    lesson_answer *a = calloc(1, sizeof *a);
    assert_non_null(a);
    for (int i = 0; i < 4; i++) {
        bool cared = i % 2 == 1, asks = i / 2 == 1;
        read_shipped(names[asks], &s);
        assert_int_equal(lesson_answer_of_shift(&s, cared ? &s : NULL, a), BOIL_OK);
        assert_int_equal(a->count, cared ? 2 : 1);
        assert_true((a->of != NULL) == asks && a->start_s == 9 * 3600);
        assert_string_equal(a->runs[0].title, asks ? "As done" : s.title);
        assert_true(!cared || strcmp(a->runs[1].title, asks ? "With care" : "The same shift, with care") == 0);
        lesson_answer_free(a);
        scenario_free(&s);
    }
    free(a);
}

/* At one time of day by that clock, else by none: by the time from their starts, which is said. */
static void two_that_start_apart_count_from_their_starts(void **state)
{
    (void)state;
    const scenario *failed;
    scenario s[2];
    lesson_answer *a = calloc(1, sizeof *a);
    assert_non_null(a);
    read_shipped("water-while-quiet.bath", &s[0]);
    read_shipped("water-while-boiling.bath", &s[1]);
    for (int apart = 0; apart < 2; apart++) {
        s[1].start_s = apart ? 22.5 * 3600 : 9 * 3600;
        assert_int_equal(lesson_answer_of(s, 2, a, &failed), BOIL_OK);
        for (int i = 0; i < 2; i++)
            assert_true(a->runs[i].done.scenario->start_s == (apart ? 0 : 9 * 3600));
        assert_true(a->start_s == a->runs[0].as.start_s);
        assert_string_equal(a->apart.text,
                            apart ? "A starts at 9:00, B at 22:30: times are counted from the start of each." : "");
        lesson_answer_free(a);
    }
    for (int i = 0; i < 2; i++)
        scenario_free(&s[i]);
    free(a);
}

/* The foot of the page names each file once: of a lesson the one that both scripts and all choices come from. */
static void the_foot_names_each_file(void **state)
{
    (void)state;
    static const char *const second[] = {"water-while-boiling.bath", NULL};
    static const char *const first[] = {"water-while-quiet.bath", "lessons/01-water-while-it-boils.bath"};
    for (size_t i = 0; i < 2; i++) {
        shown p;
        show(&p, first[i], second[i]);
        char *page = page_of(p.a), *foot = strstr(page, "<footer");
        assert_non_null(foot);
        assert_int_equal(p.a->count, 2);
        assert_int_equal(printed_times(foot, ".bath"), p.count);
        for (size_t k = 0; k < p.count; k++)
            assert_int_equal(printed_times(foot, p.s[k].path), 1);
        free(page);
        hide(&p);
    }
}

/* And says that figures are coarser only of a page that had to be made smaller. */
static void the_foot_tells_coarser_figures(void **state)
{
    (void)state;
    shown p;
    show(&p, "water-while-quiet.bath", NULL);
    for (int coarser = 0; coarser < 2; coarser++) {
        p.a->runs[0].replay.slack = coarser ? 1.5 : 1;
        char *page = page_of(p.a);
        assert_int_equal(printed_times(page, "figures coarser than usual"), coarser);
        free(page);
    }
    hide(&p);
}

/* One act waited for in vain is enough to be told; of none nothing is said. */
static void what_was_waited_for_in_vain_is_told(void **state)
{
    (void)state;
    lesson_answer *a = calloc(1, sizeof *a);
    const lesson of = {.terms_count = 0};
    assert_non_null(a);
    a->of = &of;
    for (size_t waited = 0; waited < 3; waited++) {
        a->runs[0].verdict.waited = waited;
        assert_int_equal(strstr(lesson_outcome(a, &a->runs[0]).text, "what was waited for did not come") != NULL, waited > 0);
    }
    free(a);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(figures_are_the_replays),
        cmocka_unit_test(lines_hold_every_event),
        cmocka_unit_test(a_page_is_whole),
        cmocka_unit_test(bubbles_are_of_the_boil),
        cmocka_unit_test(it_asks_of_what_happened),
        cmocka_unit_test(a_lesson_has_each_answer),
        cmocka_unit_test(b_may_be_laid_on_as_boil),
        cmocka_unit_test(events_of_a_second_share_a_cell),
        cmocka_unit_test(a_shift_stands_beside_the_careful_one),
        cmocka_unit_test(two_that_start_apart_count_from_their_starts),
        cmocka_unit_test(the_foot_names_each_file),
        cmocka_unit_test(the_last_event_is_the_last),
        cmocka_unit_test(the_foot_tells_coarser_figures),
        cmocka_unit_test(what_was_waited_for_in_vain_is_told),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
