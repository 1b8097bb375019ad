/* How the clock of the screen goes: so many times as fast as the wall's, slowly while the bath comes over, and not past what wants an
   answer. */
#include <gsl/gsl_errno.h>

#include "support/worked_screen.h"

#include <math.h>

#define LESSON                                                                                                                 \
    WORKED_SCREEN_TEXT                                                                                                         \
        "[lesson]\ngoal = Water only while it boils\nquestion = When?\npass = water >= 8 lb\n"                                 \
        "[schedule]\n0:05 load 42 lb, plate 1/4 in, at 70 degF, for 15 min\n"                                                  \
        "[careful]\n0:08 water 1 gal over 4 min\n[reckless]\n0:05:20 water 1 gal over 1 min\n[idle]\n"                         \
        "[choices]\nat 0:05:18 ask Pour now?\nchoice Yes = 0:05:20 water 1 gal over 1 min\nchoice No = 0:08 water 1 gal "      \
        "over 1 min\n"                                                                                                         \
        "at 0:10 ask And now?\nchoice Yes = 0:10 water 1 gal over 1 min\nchoice No = 0:12 water 1 gal over 1 min\n"
#define LOAD "load 42 lb, plate 1/4 in, at 70 degF, for 15 min"

static void begin(worked_screen *t, const char *text)
{
    *t = (worked_screen){.row = ""};
    worked_screen_begin(t, text, UNITS_US);
    t->s.running = true;
}

static double now_s(const worked_screen *t)
{
    return t->w.shift.now_s;
}

static void it_goes_so_many_times_as_fast(void **state)
{
    (void)state;
    worked_screen t;
    begin(&t, WORKED_SCREEN_TEXT);
    screen_advance(&t.s, 0.1, 0.1);
    assert_true(now_s(&t) == 2);
    t.s.speed = 300;
    screen_advance(&t.s, 0.1, 0.2);
    assert_close(now_s(&t), 32, 1e-12, 0);
    t.s.running = false;
    screen_advance(&t.s, 0.1, 0.3);
    assert_close(now_s(&t), 32, 1e-12, 0);
    t.s.running = true;
    screen_advance(&t.s, 100, 100);
    assert_true(now_s(&t) == 1800 && !t.s.running); /* no further than to its end */
    worked_screen_end(&t);
}

static void what_erupts_is_shown_slowly(void **state)
{
    (void)state;
    worked_screen t;
    begin(&t, WORKED_SCREEN_TEXT);
    assert_true(screen_speed(&t.s) == 20);
    t.s.slow = true;
    assert_true(screen_speed(&t.s) == 0.5);
    t.s.running = false;
    assert_true(screen_speed(&t.s) == 20);
    t.s.running = true;
    t.s.speed = 0.2;
    assert_true(screen_speed(&t.s) == 0.2);
    worked_screen_end(&t);
}

static double freeboard_m(const worked_screen *t)
{
    return panel_of(&t->w.shift, shift_history(&t->w.shift), now_s(t)).row.freeboard_m;
}

/* Water on the quiet bath, and the clock left alone: slow from where the water begins to mix in, for six seconds at the least;
   stopped once, when it is under the rim again or the six seconds are over; after that as fast as before. */
static void it_stands_once_after_an_eruption(void **state)
{
    (void)state;
    worked_screen t;
    begin(&t, WORKED_SCREEN_TEXT);
    worked_screen_do(&t, LOAD);
    worked_screen_go_on(&t, 20);
    worked_screen_do(&t, "water 2 gal over 20 s");
    double slow_s = -1, over_s = -1, least_m = 1, wall_s = 100;
    for (int i = 0; i < 3000 && t.s.running; i++) {
        screen_advance(&t.s, 0.1, wall_s += 0.1);
        slow_s = slow_s < 0 && t.s.slow ? now_s(&t) : slow_s;
        over_s = over_s < 0 && freeboard_m(&t) <= 0 ? now_s(&t) : over_s;
        least_m = fmin(least_m, freeboard_m(&t));
    }
    assert_true(!t.s.running && t.s.met_rim);
    assert_true(slow_s > 20 && over_s >= slow_s && over_s < slow_s + 6);
    assert_true(least_m < -0.05); /* none of it was jumped over */
    assert_true(now_s(&t) > over_s && now_s(&t) < slow_s + 8);
    const boil_history *h = shift_history(&t.w.shift);
    double rim_s = 0;
    for (size_t i = 0; rim_s == 0 && i < h->rows_count; i++)
        rim_s = h->rows[i].freeboard_m <= 0 ? h->rows[i].time_s : 0;
    assert_true(rim_s > 0 && over_s >= rim_s && over_s < rim_s + 0.06); /* at half speed a drawing is a twentieth of a second */
    t.s.running = true;
    double from_s = now_s(&t);
    for (int i = 0; i < 3000 && t.s.running && now_s(&t) < from_s + 300; i++)
        screen_advance(&t.s, 0.1, wall_s += 0.1);
    assert_true(t.s.running && !t.s.slow); /* once */
    worked_screen_end(&t);
}

/* No more than a surge, without its limit: nothing to slow down for. */
static void a_calm_bath_is_not_slowed(void **state)
{
    (void)state;
    worked_screen t;
    begin(&t, WORKED_SCREEN_TEXT);
    worked_screen_do(&t, "water 2 gal over 4 min");
    double wall_s = 0;
    for (int i = 0; i < 300; i++) {
        screen_advance(&t.s, 0.1, wall_s += 0.1);
        assert_false(t.s.slow);
    }
    assert_true(t.s.running && !t.s.met_rim);
    worked_screen_end(&t);
}

/* What is found is looked at once a second of the wall, and when the clock stands. */
static void what_is_found_is_looked_at_once_a_second(void **state)
{
    (void)state;
    worked_screen t;
    begin(&t, WORKED_SCREEN_TEXT);
    t.s.looked_s = 10;
    screen_advance(&t.s, 0.1, 10.9);
    assert_true(t.s.found_s == -1 && t.s.looked_s == 10);
    screen_advance(&t.s, 0.1, 11);
    assert_true(t.s.found_s == 4 && t.s.looked_s == 11);
    screen_advance(&t.s, 0.1, 11.5);
    assert_true(t.s.found_s == 4);
    t.s.running = false;
    screen_advance(&t.s, 0.1, 11.6);
    assert_true(t.s.found_s == 6 && t.s.looked_s == 11.6);
    worked_screen_end(&t);
}

static void a_lesson_asks_and_the_clock_stands(void **state)
{
    (void)state;
    worked_screen t;
    begin(&t, LESSON);
    screen_advance(&t.s, 20, 20);
    assert_true(now_s(&t) == 318 && !t.s.running);
    assert_string_equal(t.s.message.text, "Pour now?");
    assert_int_equal(worked_screen_find(&t, " 9:05:18  Pour now?"), 21);
    assert_int_equal(t.s.asked, 1);
    t.s.running = true;
    screen_advance(&t.s, 20, 40);
    assert_true(now_s(&t) == 600 && !t.s.running);
    assert_string_equal(t.s.message.text, "And now?");
    t.s.running = true;
    screen_advance(&t.s, 20, 60);
    assert_true(now_s(&t) == 1000 && t.s.running); /* no third */
    worked_screen_end(&t);
}

/* Within two minutes before the question: who has acted has answered. */
static void who_has_just_acted_is_not_asked(void **state)
{
    (void)state;
    static const struct {
        double act_s;
        bool asked;
    } of[] = {{197, true}, {198, true}, {199, false}, {310, false}};
    for (size_t i = 0; i < sizeof of / sizeof of[0]; i++) {
        worked_screen t;
        begin(&t, LESSON);
        t.s.speed = 1;
        screen_advance(&t.s, of[i].act_s, 1);
        worked_screen_do(&t, "water 0.2 gal over 1 min");
        screen_advance(&t.s, 200, 2);
        assert_true(t.s.running != of[i].asked);
        assert_int_equal(t.s.asked, 1);
        assert_int_equal(worked_screen_find(&t, "Pour now?") >= 0, of[i].asked);
        worked_screen_end(&t);
    }
}

static void who_goes_back_is_asked_again(void **state)
{
    (void)state;
    worked_screen t;
    begin(&t, LESSON);
    screen_advance(&t.s, 10, 10);
    worked_screen_do(&t, "heat 90 %");
    screen_advance(&t.s, 20, 20);
    t.s.running = true;
    screen_advance(&t.s, 20, 30);
    assert_int_equal(t.s.asked, 2);
    t.s.waits = t.s.erupts = t.s.slow = t.s.met_rim = true;
    screen_press(&t.s, 'b');
    assert_true(now_s(&t) == 200);
    assert_int_equal(t.s.asked, 0);
    assert_false(t.s.waits || t.s.erupts || t.s.slow || t.s.met_rim);
    assert_int_equal(worked_screen_find(&t, "Pour now?"), -1);
    screen_advance(&t.s, 1, 40);
    t.s.running = true;
    screen_advance(&t.s, 10, 50);
    assert_string_equal(t.s.message.text, "Pour now?");
    assert_true(now_s(&t) == 318);
    worked_screen_do(&t, "heat 80 %");
    screen_advance(&t.s, 5, 60);
    screen_press(&t.s, 'b'); /* to the very moment of the question: it is asked once more */
    assert_true(now_s(&t) == 318);
    t.s.message.text[0] = '\0';
    t.s.running = true;
    screen_advance(&t.s, 5, 70);
    assert_string_equal(t.s.message.text, "Pour now?");
    assert_true(now_s(&t) == 318 && !t.s.running);
    worked_screen_end(&t);
}

static size_t times(const happenings *h, const char *words)
{
    size_t n = 0;
    for (size_t i = 0; i < h->count; i++)
        n += strcmp(h->list[i].text.text, words) == 0;
    return n;
}

/* What happened before the moment is there again, and what comes later no more; no act is lost. */
static void after_going_back_what_happened_is_gathered_anew(void **state)
{
    (void)state;
    worked_screen t;
    begin(&t, WORKED_SCREEN_TEXT);
    worked_screen_do(&t, LOAD);
    screen_advance(&t.s, 15, 15);
    worked_screen_do(&t, "water 1 gal over 20 s");
    screen_advance(&t.s, 5, 20);
    assert_int_equal(times(&t.s.happened, "the load stops the boil"), 1);
    assert_int_equal(times(&t.s.happened, "the water is in"), 1);
    screen_press(&t.s, 'b');
    assert_true(now_s(&t) == 300);
    assert_int_equal(times(&t.s.happened, LOAD), 1);
    assert_int_equal(times(&t.s.happened, "water 1 gal over 20 s"), 0);
    assert_int_equal(times(&t.s.happened, "the load stops the boil"), 1);
    assert_int_equal(times(&t.s.happened, "the water is in"), 0);
    assert_true(t.s.found_s == 300);
    screen_press(&t.s, 'b');
    assert_true(now_s(&t) == 0 && t.s.happened.count == 0 && t.s.warned.count == 0);
    assert_true(t.s.found_s == -1);
    worked_screen_end(&t);
}

/* At a stride, but no further than to what happens. */
static void to_the_next_goes_on_until_something_happens(void **state)
{
    (void)state;
    worked_screen t;
    begin(&t, WORKED_SCREEN_TEXT);
    worked_screen_do(&t, "water 2 gal over 4 min");
    screen_to_next(&t.s);
    assert_true(now_s(&t) == 240 && !t.s.running);
    assert_int_equal(times(&t.s.happened, "the water is in"), 1);
    screen_to_next(&t.s);
    assert_true(shift_is_over(t.s.shift));
    worked_screen_end(&t);
}

static void refused_memory_ends_it(void **state)
{
    (void)state;
    worked_screen t;
    begin(&t, WORKED_SCREEN_TEXT);
    assert_true(screen_memory(&t.s, true));
    assert_false(t.s.done || t.s.outcome.refused);
    assert_false(screen_memory(&t.s, false));
    assert_true(t.s.done && t.s.outcome.refused);
    assert_true(screen_memory(&t.s, true));
    assert_true(t.s.done && t.s.outcome.refused);
    screen_advance(&t.s, 1, 1);
    assert_true(now_s(&t) == 0);
    worked_screen_end(&t);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(it_goes_so_many_times_as_fast),
        cmocka_unit_test(what_erupts_is_shown_slowly),
        cmocka_unit_test(it_stands_once_after_an_eruption),
        cmocka_unit_test(a_calm_bath_is_not_slowed),
        cmocka_unit_test(what_is_found_is_looked_at_once_a_second),
        cmocka_unit_test(a_lesson_asks_and_the_clock_stands),
        cmocka_unit_test(who_has_just_acted_is_not_asked),
        cmocka_unit_test(who_goes_back_is_asked_again),
        cmocka_unit_test(after_going_back_what_happened_is_gathered_anew),
        cmocka_unit_test(to_the_next_goes_on_until_something_happens),
        cmocka_unit_test(refused_memory_ends_it),
    };
    return cmocka_run_group_tests_name("the clock of the screen", tests, scratch_begin, scratch_end);
}
