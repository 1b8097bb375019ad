/* What each key does, in each of what the screen may be at. */
#include <gsl/gsl_errno.h>

#include "support/complained.h"
#include "support/worked_screen.h"

#include <signal.h>

#define LESSON                                                                                                                 \
    WORKED_SCREEN_TEXT                                                                                                         \
        "[lesson]\ngoal = Water only while it boils\nquestion = When?\npass = water >= 8 lb\n"                                 \
        "[schedule]\n0:05 load 42 lb, plate 1/4 in, at 70 degF, for 15 min\n[careful]\n0:08 water 1 gal over 4 min\n"          \
        "[reckless]\n0:05:20 water 1 gal over 1 min\n[idle]\n"
enum { CTRL_C = 3, CTRL_L = 12, RETURN = 13 };

static void speeds_have_five_steps(void **state)
{
    worked_screen *t = *state;
    static const struct {
        double from;
        int key;
        double to;
    } steps[] = {{20, '>', 60},  {60, '>', 300}, {300, '>', 300}, {3600, '>', 3600}, {3600, '<', 300},
                 {300, '<', 60}, {60, '<', 20},  {20, '<', 5},    {5, '<', 1},       {1, '<', 1},
                 {1, '>', 5},    {5, '>', 20},   {30, '>', 60},   {30, '<', 20}};
    for (size_t i = 0; i < sizeof steps / sizeof steps[0]; i++) {
        t->s.speed = steps[i].from;
        screen_press(&t->s, steps[i].key);
        assert_true(t->s.speed == steps[i].to);
    }
}

static void a_key_opens_an_act_with_a_usual_amount(void **state)
{
    worked_screen *t = *state;
    static const struct {
        int key;
        const char *us, *si;
    } acts[] = {{'w', "water 2 gal over 4 min", "water 8 L over 4 min"},
                {'l', "load 40 lb, plate 1/4 in, for 15 min", "load 20 kg, plate 6 mm, for 15 min"},
                {'u', "lift", "lift"},
                {'s', "salts 10 lb over 5 min", "salts 5 kg over 5 min"},
                {'r', "liquid 2 gal over 4 min", "liquid 8 L over 4 min"},
                {'h', "heat 50 %", "heat 50 %"},
                {'m', "mixer on", "mixer on"},
                {'i', "lid on", "lid on"},
                {'e', "exhaust on", "exhaust on"},
                {'a', "", ""}};
    for (size_t i = 0; i < 2 * sizeof acts / sizeof acts[0]; i++) {
        t->o.units = i % 2 == 0 ? UNITS_US : UNITS_SI;
        t->s.running = true;
        screen_press(&t->s, acts[i / 2].key);
        assert_int_equal(t->s.mode, SCREEN_WRITING);
        assert_false(t->s.running);
        assert_string_equal(t->s.line.text, i % 2 == 0 ? acts[i / 2].us : acts[i / 2].si);
        screen_press(&t->s, KEY_ESCAPE);
        assert_int_equal(t->s.mode, SCREEN_WATCHING);
    }
}

static void the_clock_runs_and_stands(void **state)
{
    worked_screen *t = *state;
    static const int keys[] = {' ', '\n', RETURN};
    for (size_t i = 0; i < 3; i++) {
        snprintf(t->s.message.text, sizeof t->s.message.text, "said");
        screen_press(&t->s, keys[i]);
        assert_true(t->s.running && t->s.message.text[0] == '\0');
        screen_press(&t->s, keys[i]);
        assert_false(t->s.running);
    }
    worked_screen_go_on(t, 2000);
    screen_press(&t->s, ' ');
    assert_false(t->s.running);
}

/* Whatever the speed is, which stays what it was; what was shown slowly is still. */
static void a_second_at_a_time(void **state)
{
    worked_screen *t = *state;
    screen_press(&t->s, '.');
    assert_true(t->w.shift.now_s == 1);
    assert_true(t->s.speed == 20 && !t->s.running && !t->s.slow);
    t->s.slow = true;
    t->s.slow_until_s = 100;
    screen_press(&t->s, '.');
    assert_true(t->w.shift.now_s == 2);
    assert_true(t->s.slow && t->s.speed == 20);
}

static void until_something_happens(void **state)
{
    worked_screen *t = *state;
    worked_screen_do(t, "load 42 lb, plate 1/4 in, at 70 degF, for 15 min");
    size_t before = t->s.happened.count;
    screen_press(&t->s, 'n');
    assert_true(t->s.happened.count + t->s.warned.count > before);
    assert_false(t->s.running);
    assert_true(t->w.shift.now_s > 0 && t->w.shift.now_s < 30);
}

static void back_to_before_the_last_act(void **state)
{
    worked_screen *t = *state;
    worked_screen_go_on(t, 60);
    worked_screen_do(t, "heat 50 %");
    worked_screen_go_on(t, 120);
    t->s.running = true;
    screen_press(&t->s, 'b');
    assert_true(t->w.shift.now_s == 60 && !t->s.running);
    assert_int_equal(t->w.shift.journal.count, 0);
    assert_int_equal(worked_screen_find(t, "Back to just before it; the act is undone. Space goes on."), 22);
    t->s.waits = true;
    screen_press(&t->s, 'x');
    assert_false(t->s.waits);
}

static void a_key_that_means_nothing_is_said(void **state)
{
    worked_screen *t = *state;
    screen_press(&t->s, KEY_OTHER);
    assert_string_equal(t->s.message.text, "");
    screen_press(&t->s, '7');
    assert_string_equal(t->s.message.text, "No such key: ? shows the keys, q leaves.");
    screen_press(&t->s, KEY_PASTED);
    assert_string_equal(t->s.message.text, "What was pasted was not taken: press a, then paste one act.");
    assert_int_equal(t->s.mode, SCREEN_WATCHING);
    assert_true(t->w.shift.journal.count == 0 && !t->s.done);
}

static void keys_are_shown_page_by_page(void **state)
{
    worked_screen *t = *state;
    t->s.running = true;
    screen_press(&t->s, '?');
    assert_int_equal(t->s.mode, SCREEN_READING);
    assert_false(t->s.running);
    assert_int_equal(worked_screen_find(t, " w l u s    water, load, lift, salts"), 0);
    assert_int_equal(worked_screen_find(t, " space: more   -: back   Enter: to the bath"), 23);
    for (const char *line = t->s.page; *line != '\0'; line += strcspn(line, "\n") + 1)
        assert_true(strcspn(line, "\n") < CANVAS_COLUMNS);
    screen_press(&t->s, '-');
    assert_int_equal(t->s.page_line, 0);
    screen_press(&t->s, ' ');
    assert_int_equal(t->s.page_line, 22); /* of 23 lines the last is the first of the next page */
    screen_press(&t->s, 'k');
    assert_int_equal(t->s.page_line, 0);
    screen_press(&t->s, ' ');
    screen_press(&t->s, '-');
    assert_int_equal(t->s.page_line, 0);
    while (worked_screen_find(t, "space: more") >= 0)
        screen_press(&t->s, ' ');
    assert_int_equal(worked_screen_find(t, " -: back   Enter: to the bath   b: undo the last act   q: leave"), 23);
    assert_int_equal(t->s.mode, SCREEN_READING);
    screen_press(&t->s, KEY_OTHER);
    screen_press(&t->s, KEY_PASTED);
    assert_int_equal(t->s.mode, SCREEN_READING);
    screen_press(&t->s, ' ');
    assert_int_equal(t->s.mode, SCREEN_WATCHING);
    assert_null(t->s.page);
    screen_press(&t->s, '?');
    screen_press(&t->s, 'q');
    assert_int_equal(t->s.mode, SCREEN_LEAVING);
}

static void from_a_page_the_last_act_is_undone(void **state)
{
    worked_screen *t = *state;
    worked_screen_go_on(t, 60);
    worked_screen_do(t, "heat 50 %");
    worked_screen_go_on(t, 90);
    screen_press(&t->s, '?');
    screen_press(&t->s, 'b');
    assert_int_equal(t->s.mode, SCREEN_WATCHING);
    assert_int_equal(t->w.shift.journal.count, 0);
    screen_press(&t->s, '?');
    screen_press(&t->s, 'z');
    assert_int_equal(t->s.mode, SCREEN_WATCHING);
    assert_true(t->w.shift.now_s == 60 && !t->s.running);
}

/* Ends by the question; only a key that says so lets the clock run. */
static void the_briefing_begins_the_shift(void **state)
{
    worked_screen *t = *state;
    static const int begins[] = {' ', '\n', RETURN};
    for (size_t i = 0; i < 3; i++) {
        screen_press(&t->s, 'g');
        assert_true(t->s.briefing);
        assert_int_equal(worked_screen_find(t, " Space: begin   w l h: begin with an act   q: leave"), 23);
        screen_press(&t->s, begins[i]);
        assert_true(t->s.mode == SCREEN_WATCHING && t->s.running && !t->s.briefing);
        t->s.running = false;
    }
    screen_press(&t->s, 'g');
    screen_press(&t->s, 'z');
    assert_true(t->s.mode == SCREEN_WATCHING && !t->s.running);
    screen_press(&t->s, 'g');
    screen_press(&t->s, 'w');
    assert_int_equal(t->s.mode, SCREEN_WRITING);
    screen_press(&t->s, KEY_ESCAPE);
    worked_screen_go_on(t, 1);
    screen_press(&t->s, 'g');
    assert_false(t->s.briefing);
    assert_int_equal(worked_screen_find(t, " -: back   Enter: to the bath   b: undo the last act   q: leave"), 23);
    screen_press(&t->s, ' ');
    assert_false(t->s.running);
}

static void a_briefing_of_more_than_a_page_is_turned(void **state)
{
    worked_screen *t = *state;
    worked_screen_end(t);
    worked_screen_begin(t, LESSON, UNITS_US);
    screen_press(&t->s, 'g');
    size_t lines = text_lines(t->s.page);
    assert_int_equal(worked_screen_find(t, "Goal: Water only while it boils"), 3);
    t->s.page_line = 0;
    if (lines > CANVAS_ROWS - 1)
        assert_int_equal(worked_screen_find(t, " space: more   Enter: begin"), 23);
    else
        assert_int_equal(worked_screen_find(t, " Space: begin"), 23);
}

static void who_leaves_is_asked(void **state)
{
    worked_screen *t = *state;
    static const int leave[] = {'q', '\n', RETURN};
    for (size_t i = 0; i < 3; i++) {
        t->s.running = true;
        screen_press(&t->s, 'q');
        assert_true(t->s.mode == SCREEN_LEAVING && !t->s.running && !t->s.done);
        screen_press(&t->s, leave[i]);
        assert_true(t->s.done);
        assert_int_equal(t->s.outcome.signal, 0);
        t->s.done = false;
        t->s.mode = SCREEN_WATCHING;
    }
    screen_press(&t->s, 'q');
    screen_press(&t->s, 'z');
    assert_int_equal(t->s.mode, SCREEN_LEAVING);
    screen_press(&t->s, KEY_ESCAPE);
    assert_int_equal(t->s.mode, SCREEN_WATCHING);
}

static void the_shift_is_kept_where_it_is_said(void **state)
{
    worked_screen *t = *state;
    screen_press(&t->s, 'q');
    screen_press(&t->s, 'f');
    assert_int_equal(t->s.mode, SCREEN_NAMING);
    assert_memory_equal(t->s.line.text, "worked", 6);
    screen_press(&t->s, 21); /* the line away */
    worked_screen_press(t, "mine.bath\n");
    assert_int_equal(t->s.mode, SCREEN_LEAVING);
    assert_string_equal(t->s.outcome.save.text, "mine.bath");
    screen_press(&t->s, 'f');
    assert_string_equal(t->s.line.text, "mine.bath");
    screen_press(&t->s, KEY_ESCAPE);
    assert_int_equal(t->s.mode, SCREEN_WATCHING);
    memset(t->s.outcome.save.text, 'x', SCREEN_LINE_MOST); /* a path longer than the line is not cut */
    screen_press(&t->s, 'q');
    screen_press(&t->s, 'f');
    assert_memory_equal(t->s.line.text, "worked", 6);
    t->s.outcome.save.text[SCREEN_LINE_MOST - 1] = '\0';
    screen_press(&t->s, KEY_ESCAPE);
    screen_press(&t->s, 'q');
    screen_press(&t->s, 'f');
    assert_int_equal(strlen(t->s.line.text), SCREEN_LINE_MOST - 1);
}

/* Acts that nobody was asked about are not lost for a key that ends programs; else it ends this one as well. */
static void what_was_done_is_not_lost_for_a_key(void **state)
{
    worked_screen *t = *state;
    screen_press(&t->s, CTRL_C);
    assert_true(t->s.done);
    assert_int_equal(t->s.outcome.signal, SIGINT);
    t->s.done = false;
    t->s.outcome.signal = 0;
    worked_screen_do(t, "heat 50 %");
    screen_press(&t->s, CTRL_C);
    assert_true(!t->s.done && t->s.mode == SCREEN_LEAVING);
    screen_press(&t->s, CTRL_C);
    assert_true(t->s.done);
    t->s.done = false;
    t->s.mode = SCREEN_WATCHING;
    snprintf(t->s.outcome.save.text, sizeof t->s.outcome.save.text, "kept.bath");
    screen_press(&t->s, CTRL_C);
    assert_true(t->s.done);
    assert_int_equal(t->s.outcome.signal, SIGINT);
    screen_press(&t->s, KEY_GONE);
    assert_int_equal(t->s.outcome.signal, SIGHUP);
    t->s.canvas.known = true;
    screen_press(&t->s, CTRL_L);
    assert_false(t->s.canvas.known);
}

/* Of a debrief a page for a browser: where it was asked for, and a page that cannot be written is said and ends nothing. */
static void a_debrief_is_written_where_it_is_asked_for(void **state)
{
    worked_screen *t = *state;
    char path[sizeof scratch_path + 8];
    complained c;
    snprintf(path, sizeof path, "%s.html", scratch_path);
    t->o.page = path;
    worked_screen_do(t, "load 42 lb, plate 1/4 in, at 70 degF, for 15 min");
    worked_screen_go_on(t, 20);
    worked_screen_do(t, "water 2 gal over 20 s");
    screen_press(&t->s, '?');
    screen_press(&t->s, 'w'); /* no debrief: a page like any other */
    assert_int_equal(access(path, F_OK), -1);
    screen_press(&t->s, 'd');
    assert_int_equal(worked_screen_find(t, "Debrief, as if nothing more were done until the end"), 0);
    assert_int_equal(worked_screen_find(t, " space: more   -: back   w: write a page   Enter: to the bath   q: leave"), 23);
    screen_press(&t->s, 'w');
    assert_int_equal(worked_screen_find(t, "html is written: open it in a browser"), 23);
    assert_int_equal(unlink(path), 0);
    do
        screen_press(&t->s, ' ');
    while (worked_screen_find(t, "space: more") >= 0);
    assert_int_equal(worked_screen_find(t, " -: back   w: write a page   Enter: to the bath   b: undo last act   q: leave"),
                     23);
    t->o.page = "/proc/none/there.html";
    t->s.canvas.known = true;
    complained_begin(&c);
    screen_press(&t->s, 'w');
    assert_non_null(strstr(complained_end(&c), "there.html"));
    assert_int_equal(worked_screen_find(t, " /proc/none/there.html could not be written here"), 23);
    assert_false(t->s.canvas.known); /* for what was complained of lies over it */
    assert_false(t->s.done);
    screen_press(&t->s, '\n');
    assert_int_equal(t->s.mode, SCREEN_WATCHING);
    worked_screen_go_on(t, 2000);
    screen_press(&t->s, 'd');
    assert_int_equal(worked_screen_find(t, "as if nothing more were done"), -1);
}

#define ANEW(test) cmocka_unit_test_setup_teardown(test, worked_screen_set_up, worked_screen_tear_down)

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        ANEW(speeds_have_five_steps),
        ANEW(a_key_opens_an_act_with_a_usual_amount),
        ANEW(the_clock_runs_and_stands),
        ANEW(a_second_at_a_time),
        ANEW(until_something_happens),
        ANEW(back_to_before_the_last_act),
        ANEW(a_key_that_means_nothing_is_said),
        ANEW(keys_are_shown_page_by_page),
        ANEW(from_a_page_the_last_act_is_undone),
        ANEW(the_briefing_begins_the_shift),
        ANEW(a_briefing_of_more_than_a_page_is_turned),
        ANEW(who_leaves_is_asked),
        ANEW(the_shift_is_kept_where_it_is_said),
        ANEW(what_was_done_is_not_lost_for_a_key),
        ANEW(a_debrief_is_written_where_it_is_asked_for),
    };
    return cmocka_run_group_tests_name("keys of the screen", tests, scratch_begin, scratch_end);
}
