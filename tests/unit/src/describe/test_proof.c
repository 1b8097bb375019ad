/* unit/src/describe/test_proof.c -- the shipped lessons are lessons: careful passes, reckless and idle do not, what reckless must be
   found for is found, and no verdict stands on the edge of a limit. By how much a limit may move is our own rule: judgement. */
#include <gsl/gsl_errno.h>

#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "describe/proof.h"
#include "support/printed.h"
#include "support/shipped.h"

#define LESSONS 10

static void prove(const char *name, const scenario *s)
{
    proof p;
    assert_int_equal(proof_of(s, &p), BOIL_OK);
    if (!p.holds)
        proof_complain(s, &p);
    print_message("%s: careful passes in %zu of %zu other runs, reckless in %zu of %zu\n", name,
                  p.script[LESSON_CAREFUL].passed, p.script[LESSON_CAREFUL].others, p.script[LESSON_RECKLESS].passed,
                  p.script[LESSON_RECKLESS].others);
    assert_true(p.holds);
    assert_true(p.script[LESSON_CAREFUL].passed == p.script[LESSON_CAREFUL].others);
    assert_true(s->lesson.hint != NULL && s->lesson.debrief != NULL && s->lesson.care != NULL);
    assert_true(s->lesson.stops_count > 0 && s->lesson.must_name_count > 0);
}

static void every_lesson_is_proved(void **state)
{
    (void)state;
    assert_int_equal(each_lesson(prove), LESSONS);
}

/* 5 % of a length of room, a time, a mass afloat or lying, a share or a ratio; a degree Fahrenheit; a quarter inch of level. What is given
   has no margin: it is as much as was poured. */
static double margin_of(const lesson_measure *m, double limit)
{
    static const char *const given[] = {"water", "steel", "salts", "boils"};
    for (size_t i = 0; i < sizeof given / sizeof given[0]; i++)
        if (strcmp(m->words, given[i]) == 0)
            return 0;
    if (m->dimension == DIM_TEMPERATURE)
        return 1 / 1.8;
    return strcmp(m->words, "level") == 0 ? 0.25 * 0.0254 : 0.05 * fabs(limit);
}

typedef struct {
    const char *name;
    const scenario *s;
    boil_history history[LESSON_SCRIPTS];
} judged;

static bool passes(const judged *j, const lesson *l, size_t script)
{
    return lesson_judge(l, &j->s->plant, &j->history[script]).passed;
}

static void shift(const judged *j, size_t term, double by)
{
    lesson moved = j->s->lesson;
    lesson_term *t = &moved.terms[term];
    double low = margin_of(t->measure, t->low), high = margin_of(t->measure, t->high);
    t->low = isinf(t->low) ? t->low : t->low + by * low;
    t->high = isinf(t->high) ? t->high : t->high + by * high;
    for (size_t i = 0; i < LESSON_SCRIPTS; i++)
        if (passes(j, &moved, i) != (i == LESSON_CAREFUL))
            fail_msg("%s: [%s] changes its verdict where the limit of '%s' moves by %+.0f margins", j->name,
                     lesson_script_words[i], t->measure->words, by);
}

/* Turned round, a limit changes a verdict: careful no longer keeps it, or idle does. None at all is both ways the same. */
static void turn(const judged *j, size_t term)
{
    lesson turned = j->s->lesson;
    lesson_term *t = &turned.terms[term];
    if (t->measure->holds || t->high == 0)
        return;
    double low = isinf(t->high) ? -(double)INFINITY : t->high;
    t->high = isinf(t->low) ? (double)INFINITY : t->low;
    t->low = low;
    assert_true(!passes(j, &turned, LESSON_CAREFUL) || passes(j, &turned, LESSON_IDLE));
}

static void hold_margins(const char *name, const scenario *s)
{
    judged j = {.name = name, .s = s};
    boil_run_options o = boil_run_options_default();
    for (size_t i = 0; i < LESSON_SCRIPTS; i++)
        assert_int_equal(boil_run(&s->plant, &s->scripts[i].schedule, &o, &j.history[i]), BOIL_OK);
    for (size_t i = 0; i < s->lesson.terms_count; i++) {
        shift(&j, i, 1);
        shift(&j, i, -1);
        turn(&j, i);
    }
    for (size_t i = 0; i < LESSON_SCRIPTS; i++)
        boil_history_free(&j.history[i]);
}

static void no_verdict_stands_on_an_edge(void **state)
{
    (void)state;
    assert_int_equal(each_lesson(hold_margins), LESSONS);
}

/* An answer is a run like any other: it ends, and its balances close. */
static void run_answers(const char *name, const scenario *s)
{
    boil_run_options o = boil_run_options_default();
    for (size_t i = 0; i < s->lesson.choices_count; i++) {
        boil_history h;
        assert_int_equal(boil_run(&s->plant, &s->choices[i].schedule, &o, &h), BOIL_OK);
        print_message("%s, answer %zu: %s\n", name, i + 1,
                      lesson_judge(&s->lesson, &s->plant, &h).passed ? "passes" : "does not pass");
        assert_int_equal(h.end, BOIL_RUN_DONE);
        assert_true(fabs(h.balance.water.closure) < 1e-9);
        boil_history_free(&h);
    }
}

static void every_answer_can_be_carried_out(void **state)
{
    (void)state;
    assert_int_equal(each_lesson(run_answers), LESSONS);
}

/* What is said on standard error of a proof, to be freed. */
static char *complaints_of(const scenario *s, const proof *p)
{
    char *text = calloc(1, 4000);
    FILE *to = tmpfile();
    int own = dup(STDERR_FILENO);
    assert_true(text != NULL && to != NULL && own >= 0);
    fflush(stderr);
    dup2(fileno(to), STDERR_FILENO);
    proof_complain(s, p);
    fflush(stderr);
    dup2(own, STDERR_FILENO);
    close(own);
    rewind(to);
    assert_true(fread(text, 1, 3999, to) < 3999);
    fclose(to);
    return text;
}

/* Of the careful script each term that fails at its line, of the others that they pass; of one that is a lesson nothing. */
static void each_term_that_fails_is_complained_of(void **state)
{
    (void)state;
    scenario s;
    read_shipped("lessons/01-water-while-it-boils.bath", &s);
    proof p = {.holds = false};
    lesson_verdict *careful = &p.script[LESSON_CAREFUL].likely;
    for (size_t i = 0; i < s.lesson.terms_count; i++)
        careful->holds[i] = true;
    char *none = complaints_of(&s, &p), want[100];
    assert_string_equal(none, "");
    free(none);
    careful->holds[1] = false;
    p.script[LESSON_RECKLESS].likely.passed = true;
    char *two = complaints_of(&s, &p);
    snprintf(want, sizeof want, ".bath:%zu: [careful] does not pass: ", s.lesson.terms[1].line);
    assert_int_equal(printed_times(two, "\n"), 2);
    assert_int_equal(printed_times(two, want), 1);
    assert_int_equal(printed_times(two, ".bath: [reckless] passes: "), 1);
    free(two);
    scenario_free(&s);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_lesson_is_proved),
        cmocka_unit_test(no_verdict_stands_on_an_edge),
        cmocka_unit_test(each_term_that_fails_is_complained_of),
        cmocka_unit_test(every_answer_can_be_carried_out),
    };
    return cmocka_run_group_tests_name("proof", tests, NULL, NULL);
}
