/* An act on the screen: how its line is filled in and written, and that it is done now, waits, or is not done. */
#include <gsl/gsl_errno.h>

#include "support/worked_screen.h"

enum { BACKSPACE = 8, RETURN = 13, KILL_LINE = 21, KILL_WORD = 23, DELETE = 127 };

static void opens(worked_screen *t, int pressed, const char *line)
{
    screen_press(&t->s, pressed);
    assert_string_equal(t->s.line.text, line);
    screen_press(&t->s, KEY_ESCAPE);
}

/* What was done last is what is offered: who poured two gallons in 5 min is likely to again. */
static void the_last_of_its_kind_is_offered(void **state)
{
    worked_screen *t = *state;
    worked_screen_do(t, "water 1 gal over 5 min");
    worked_screen_do(t, "heat 80 %");
    opens(t, 'w', "water 1 gal over 5 min");
    worked_screen_go_on(t, 400);
    worked_screen_do(t, "water 0.5 gal over 2 min");
    opens(t, 'w', "water 0.5 gal over 2 min");
    opens(t, 'h', "heat 80 %");
    opens(t, 's', "salts 10 lb over 5 min");
    opens(t, 'a', "");
}

static void what_is_on_is_offered_off(void **state)
{
    worked_screen *t = *state;
    static const struct {
        int key;
        const char *on, *off;
    } of[] = {{'m', "mixer on", "mixer off"}, {'i', "lid on", "lid off"}};
    for (size_t i = 0; i < sizeof of / sizeof of[0]; i++) {
        opens(t, of[i].key, of[i].on);
        worked_screen_do(t, of[i].on);
        opens(t, of[i].key, of[i].off);
        worked_screen_do(t, of[i].off);
        opens(t, of[i].key, of[i].on);
    }
    assert_int_equal(t->w.shift.journal.count, 4);
}

static void a_line_is_written_as_on_any_terminal(void **state)
{
    worked_screen *t = *state;
    screen_press(&t->s, 'a');
    worked_screen_press(t, "water 2 gal  ~");
    screen_press(&t->s, 31);
    screen_press(&t->s, KEY_OTHER);
    screen_press(&t->s, 200);
    assert_string_equal(t->s.line.text, "water 2 gal  ~");
    screen_press(&t->s, BACKSPACE);
    screen_press(&t->s, DELETE);
    assert_string_equal(t->s.line.text, "water 2 gal ");
    screen_press(&t->s, KILL_WORD);
    assert_string_equal(t->s.line.text, "water 2 ");
    screen_press(&t->s, KILL_WORD);
    screen_press(&t->s, KILL_WORD);
    assert_string_equal(t->s.line.text, "");
    screen_press(&t->s, KILL_WORD);
    screen_press(&t->s, BACKSPACE);
    assert_string_equal(t->s.line.text, "");
    for (int i = 0; i < 2 * SCREEN_LINE_MOST; i++)
        screen_press(&t->s, 'a' + i % 26);
    assert_int_equal(strlen(t->s.line.text), SCREEN_LINE_MOST - 1);
    screen_press(&t->s, KILL_LINE);
    assert_string_equal(t->s.line.text, "");
    screen_press(&t->s, RETURN); /* nothing is nothing */
    assert_int_equal(t->s.mode, SCREEN_WATCHING);
    assert_int_equal(t->w.shift.journal.count, 0);
}

static void an_act_is_done_now_and_the_clock_goes_on(void **state)
{
    worked_screen *t = *state;
    worked_screen_go_on(t, 60);
    worked_screen_do(t, "heat 80 %");
    assert_true(t->s.running && t->s.mode == SCREEN_WATCHING);
    assert_true(t->w.shift.journal.acts[0].time_s == 60);
    assert_int_equal(worked_screen_find(t, " 9:01:00  heat 80 %"), 21);
    worked_screen_do(t, "0:01 heat 70 %"); /* this minute is now */
    assert_int_equal(t->w.shift.journal.count, 2);
    assert_true(t->w.shift.now_s == 60);
}

static void is_refused(worked_screen *t, const char *act, const char *why)
{
    worked_screen_do(t, act);
    assert_int_equal(t->s.mode, SCREEN_WRITING);
    assert_false(t->s.running);
    assert_string_equal(t->s.line.text, act);
    if (strstr(t->s.message.text, why) == NULL)
        fail_msg("'%s' is not '%s'", t->s.message.text, why);
    screen_press(&t->s, KEY_ESCAPE);
    assert_int_equal(t->s.mode, SCREEN_WATCHING);
    assert_string_equal(t->s.message.text, "");
    assert_int_equal(t->w.shift.journal.count, 0);
}

static void a_mistake_is_said_and_the_line_kept(void **state)
{
    worked_screen *t = *state;
    is_refused(t, "watr 2 gal", "unknown act 'watr'");
    is_refused(t, "lift rack 1", "no load is named 'rack 1'");
    is_refused(t, "0:20 water 1 gal", "Acts are done now here: leave the time away, or wait with 'when boiling'.");
    is_refused(t, "state", "Here that is a key: Esc, then ? shows the keys.");
    is_refused(t, "quit", "Here that is a key");
    assert_false(t->s.done);
}

/* As soon as the bath is so, at a whole second, and once. */
static void what_waits_is_done_when_the_bath_is_so(void **state)
{
    worked_screen *t = *state;
    worked_screen_go_on(t, 60);
    worked_screen_do(t, "when boiling for 30 s water 1 gal over 2 min");
    assert_true(t->s.waits && t->s.running && t->s.mode == SCREEN_WATCHING);
    assert_int_equal(t->w.shift.journal.count, 0);
    assert_int_equal(worked_screen_find(t, "- waits when boiling for 30 s: water 1 gal over 2 min -"), 18);
    worked_screen_go_on(t, 88);
    assert_int_equal(t->w.shift.journal.count, 0);
    worked_screen_go_on(t, 91);
    assert_false(t->s.waits);
    assert_int_equal(t->w.shift.journal.count, 1);
    assert_true(t->w.shift.journal.acts[0].time_s == 90);
    assert_string_equal(t->w.shift.journal.acts[0].asked, "when boiling for 30 s");
    worked_screen_go_on(t, 200);
    assert_int_equal(t->w.shift.journal.count, 1);
}

/* An act is done at a whole second: what happens on the way there is told all the same. */
static void what_happens_before_an_act_is_told(void **state)
{
    worked_screen *t = *state;
    size_t told = 0;
    worked_screen_do(t, "load 42 lb, plate 1/4 in, at 70 degF, for 15 min, lowered over 10 s");
    t->s.speed = 1;
    screen_advance(&t->s, 9.5, 1);
    assert_true(t->w.shift.now_s == 9.5);
    worked_screen_do(t, "heat 80 %");
    assert_true(t->w.shift.now_s == 10);
    for (size_t i = 0; i < t->s.happened.count; i++)
        told += strcmp(t->s.happened.list[i].text.text, "42.0 lb of parts are in") == 0;
    assert_int_equal(told, 1);
}

static void over_nothing_is_done_any_more(void **state)
{
    worked_screen *t = *state;
    worked_screen_go_on(t, 3600);
    screen_press(&t->s, 'w');
    assert_int_equal(t->s.mode, SCREEN_WATCHING);
    assert_string_equal(t->s.message.text, "The shift is over.  b: before the last act   d: debrief   q: leave");
}

static void an_act_clears_what_was_said(void **state)
{
    worked_screen *t = *state;
    screen_press(&t->s, '7');
    assert_string_not_equal(t->s.message.text, "");
    screen_press(&t->s, 'w');
    assert_string_equal(t->s.message.text, "");
    screen_press(&t->s, KEY_ESCAPE);
    worked_screen_do(t, "watr");
    screen_press(&t->s, KILL_LINE);
    worked_screen_press(t, "heat 80 %\n");
    assert_string_equal(t->s.message.text, "");
    assert_int_equal(t->s.mode, SCREEN_WATCHING);
}

#define ANEW(test) cmocka_unit_test_setup_teardown(test, worked_screen_set_up, worked_screen_tear_down)

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        ANEW(the_last_of_its_kind_is_offered),      ANEW(what_is_on_is_offered_off),
        ANEW(a_line_is_written_as_on_any_terminal), ANEW(an_act_is_done_now_and_the_clock_goes_on),
        ANEW(a_mistake_is_said_and_the_line_kept),  ANEW(what_waits_is_done_when_the_bath_is_so),
        ANEW(what_happens_before_an_act_is_told),   ANEW(over_nothing_is_done_any_more),
        ANEW(an_act_clears_what_was_said),
    };
    return cmocka_run_group_tests_name("acts on the screen", tests, scratch_begin, scratch_end);
}
