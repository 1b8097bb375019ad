/* Lines that are typed while a shift is worked: what each is, when it is to be done, and what is said where it is none. */
#include <gsl/gsl_errno.h>

#include "support/close.h"

#include <string.h>

#include <math.h>

#include "practise/order.h"

/* A shift of half an hour from 9:00, two minutes and a half in; the act before was done at one minute. */
static const order_clock clock = {{MOMENTS_FROM_START, true, 9 * 3600, 1800}, 150.5, 60};

typedef struct {
    source line;
    messages m;
    order o;
    bool good;
} typed;

static void type(typed *t, const order_clock *k, const char *text)
{
    messages_init(&t->m);
    assert_true(source_of_bytes(&t->line, "typed", text_copy(text, strlen(text)), strlen(text), &t->m));
    cursor c = cursor_of_line(&t->line, 1, &t->m);
    t->good = order_read(&c, k, &t->o);
}

static void forget(typed *t)
{
    source_free(&t->line);
    messages_free(&t->m);
}

static void words_to_the_clock(void **state)
{
    (void)state;
    static const struct {
        const char *text;
        order_kind kind;
    } of[] = {{"", ORDER_NOTHING},  {"  # said aside", ORDER_NOTHING},
              {"next", ORDER_NEXT}, {"state", ORDER_STATE},
              {"acts", ORDER_ACTS}, {"back", ORDER_BACK},
              {"help", ORDER_HELP}, {"?", ORDER_HELP},
              {"end", ORDER_END},   {"quit", ORDER_QUIT},
              {"q", ORDER_QUIT},    {"exit", ORDER_QUIT}};
    for (size_t i = 0; i < sizeof of / sizeof of[0]; i++) {
        typed t;
        type(&t, &clock, of[i].text);
        assert_true(t.good);
        assert_int_equal(t.o.kind, of[i].kind);
        forget(&t);
    }
    for (size_t i = 0; order_word_at(i) != NULL; i++) {
        typed t;
        char word[16] = "";
        sscanf(order_word_at(i)->form, "%15s", word);
        type(&t, &clock, strcmp(word, "wait") == 0 ? "wait 2 min" : word);
        assert_true(t.good && t.o.kind != ORDER_NOTHING && t.o.kind != ORDER_ACT);
        forget(&t);
    }
}

static void is_at(const order_clock *k, const char *text, order_kind kind, double at_s, const char *doing)
{
    typed t;
    type(&t, k, text);
    assert_true(t.good);
    assert_int_equal(t.o.kind, kind);
    if (isnan(at_s))
        assert_true(isnan(t.o.at_s));
    else
        assert_close(t.o.at_s, at_s, 0, 1e-9);
    if (doing != NULL) {
        assert_int_equal(t.o.doing.end - t.o.doing.at, strlen(doing));
        assert_memory_equal(t.o.doing.at, doing, strlen(doing));
    }
    forget(&t);
}

static void when_it_is_to_be_done(void **state)
{
    (void)state;
    const double now = (double)NAN;
    is_at(&clock, "wait 2 min", ORDER_WAIT, 270.5, NULL);
    is_at(&clock, "wait until 0:10", ORDER_WAIT, 600, NULL);
    is_at(&clock, "wait until 0:02:30", ORDER_WAIT, 150.5, NULL); /* this second is not over */
    is_at(&clock, "heat 30 %", ORDER_ACT, now, "heat 30 %");
    is_at(&clock, "0:10 heat 30 %", ORDER_ACT, 600, "heat 30 %");
    is_at(&clock, "0:02:30 heat 30 %", ORDER_ACT, 150.5, "heat 30 %");
    is_at(&clock, "+2 min heat 30 %", ORDER_ACT, 180, "heat 30 %"); /* after the act before */
    const order_clock by_wall = {{MOMENTS_BY_CLOCK, true, 9 * 3600, 1800}, 150.5, 60};
    is_at(&by_wall, "9:10 heat 30 %", ORDER_ACT, 600, "heat 30 %");
}

static void waits(const char *text, boil_wait_state state, double for_s, const char *asked, const char *doing)
{
    typed t;
    type(&t, &clock, text);
    assert_true(t.good);
    assert_int_equal(t.o.wait.state, state);
    assert_false(t.o.wait.follows);
    assert_close(t.o.wait.for_s, for_s, 0, 0);
    assert_string_equal(t.o.asked.text, asked);
    assert_int_equal(t.o.doing.end - t.o.doing.at, strlen(doing));
    assert_memory_equal(t.o.doing.at, doing, strlen(doing));
    forget(&t);
}

static void what_it_waits_for(void **state)
{
    (void)state;
    waits("heat 30 %", BOIL_WAIT_NONE, 0, "", "heat 30 %");
    waits("when boiling for 1 min water 1 gal over 2 min", BOIL_WAIT_BOILING, 60, "when boiling for 1 min",
          "water 1 gal over 2 min");
    waits("0:10 when quiet heat 30 %", BOIL_WAIT_QUIET, 0, "when quiet", "heat 30 %");
    waits("1 min after the boil is back heat 30 %", BOIL_WAIT_BACK, 60, "1 min after the boil is back", "heat 30 %");
}

/* What an act waited for goes into the journal; how long, as the rule says for a bath that has been so from the start. */
static void an_act_says_what_it_waited_for(void **state)
{
    (void)state;
    const boil_by_hand hand = {0};
    char doing[] = "heat 30 %";
    typed t;
    type(&t, &clock, "when quiet for 20 s heat 30 %");
    journal_act a = order_act(&t.o, doing, &hand);
    assert_true(a.quiet && !a.planned && a.doing == doing);
    assert_string_equal(a.asked, "when quiet for 20 s");
    assert_close(a.for_s, 20, 0, 0);
    forget(&t);
    type(&t, &clock, "when boiling for 30 s heat 30 %");
    a = order_act(&t.o, doing, &hand);
    assert_false(a.quiet);
    assert_close(a.for_s, 30, 0, 0);
    forget(&t);
    type(&t, &clock, "heat 30 %");
    assert_null(order_act(&t.o, doing, &hand).asked);
    forget(&t);
    type(&t, &clock, "every 10 min from 0:05 heat 30 %");
    assert_true(t.good && order_act(&t.o, doing, &hand).planned);
    forget(&t);
}

static void is_wrong(const order_clock *k, const char *text, const char *why)
{
    typed t;
    type(&t, k, text);
    assert_false(t.good);
    assert_int_equal(t.m.count, 1);
    if (strstr(t.m.list[0].text, why) == NULL)
        fail_msg("'%s' is not '%s'", t.m.list[0].text, why);
    forget(&t);
}

static void what_is_wrong_is_said(void **state)
{
    (void)state;
    const order_clock first = {clock.frame, 150.5, (double)NAN};
    is_wrong(&clock, "0:02:29 heat 30 %",
             "0:02:29 has passed, it is 0:02:30: leave the time away to do it now, or go 'back' first");
    is_wrong(&clock, "wait until 0:01", "0:01 has passed");
    is_wrong(&clock, "+1 min heat 30 %", "0:02 has passed");
    is_wrong(&first, "+1 min heat 30 %", "no act was done before this");
    is_wrong(&clock, "0:45 heat 30 %", "0:45 is after the end");
    is_wrong(&clock, "+40 min heat 30 %", "is after the end");
    is_wrong(&clock, "wait until 0:45", "0:45 is after the end");
    is_wrong(&clock, "wait", "'wait' has no value");
    is_wrong(&clock, "wait 2 min now", "'now' is not expected here");
    is_wrong(&clock, "state now", "'now' is not expected here");
    is_wrong(&clock, "wiat 2 min", "unknown word 'wiat'; did you mean 'wait'?");
    is_wrong(&clock, "0:10", "what is to be done?");
    is_wrong(&clock, "when boiling", "what is to be done?");
    is_wrong(&clock, "every 10 min heat 30 %", "say from when on, as it is 0:02:30");
    is_wrong(&clock, "every 10 min from 0:01 heat 30 %", "0:01 has passed");
}

/* A word that is as near to an act is left to the reader of acts. */
static void a_mistyped_act_is_an_act(void **state)
{
    (void)state;
    is_at(&clock, "watr 2 gal", ORDER_ACT, (double)NAN, "watr 2 gal");
    is_at(&clock, "haet 30 %", ORDER_ACT, (double)NAN, "haet 30 %");
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(words_to_the_clock),    cmocka_unit_test(when_it_is_to_be_done),
        cmocka_unit_test(what_it_waits_for),     cmocka_unit_test(an_act_says_what_it_waited_for),
        cmocka_unit_test(what_is_wrong_is_said), cmocka_unit_test(a_mistyped_act_is_an_act),
    };
    return cmocka_run_group_tests_name("lines that are typed", tests, NULL, NULL);
}
