/* The screen of a shift by its keys, without a terminal: what is drawn is looked for in its rows, what is sent to one goes nowhere. */
#include <gsl/gsl_errno.h>

#include "support/close.h"
#include "support/complained.h"
#include "support/scratch.h"

#include <fcntl.h>
#include <string.h>

#include "practise/screen/parts.h"

#define PLANT                                                                                                                  \
    "[tank]\nlength = 5 ft\nwidth = 2 ft\ndepth = 24.5 in\nlevel = 16 in\nwall = 3/16 in\ninsulation = 2 in\n"                 \
    "[bath]\nsalts = 80 % NaOH, 15 % NaNO3, 5 % NaNO2\nboiling point = 285 degF\n"                                             \
    "[heat]\nsource = gas\ninput = 190 kBtu/h\nefficiency = 60 %\nlag = 60 s\n"
#define TOP "title = A morning\nstart = 9:00\nduration = 12 min\n"

enum { ESCAPE = KEY_ESCAPE, ENTER = 13, DELETE = 127, KILL_LINE = 21 };

typedef struct {
    scenario_text text;
    scenario read;
    shift shift;
    screen_options o;
    screen s;
} practised;

static void begin(practised *p, const char *text)
{
    messages m;
    FILE *f = fopen(scratch_path, "w");
    assert_non_null(f);
    fputs(text, f);
    fclose(f);
    memset(p, 0, sizeof *p);
    messages_init(&m);
    assert_true(scenario_text_read(scratch_path, &p->text, &m));
    assert_int_equal(scenario_of_text(&p->text, NULL, 0, &p->read, &m), BOIL_OK);
    messages_free(&m);
    assert_int_equal(shift_begin(&p->shift, &p->text.text, &p->read), BOIL_OK);
    p->o = (screen_options){.units = UNITS_US, .read = &p->read, .speed = 20};
    p->s = (screen){.shift = &p->shift, .o = &p->o, .speed = 20, .found_s = -1, .fits = true};
}

static void end(practised *p)
{
    happenings_free(&p->s.happened);
    happenings_free(&p->s.warned);
    free(p->s.page);
    shift_free(&p->shift);
    scenario_free(&p->read);
    scenario_text_free(&p->text);
}

/* Drawn anew, with what the terminal would get sent nowhere. */
static void draw(practised *p)
{
    fflush(stdout);
    int before = dup(STDOUT_FILENO), nowhere = open("/dev/null", O_WRONLY);
    assert_true(before >= 0 && nowhere >= 0 && dup2(nowhere, STDOUT_FILENO) >= 0);
    screen_draw(&p->s);
    fflush(stdout);
    dup2(before, STDOUT_FILENO);
    close(before);
    close(nowhere);
}

static bool shows(practised *p, const char *words)
{
    draw(p);
    for (int row = 0; row < CANVAS_ROWS; row++) {
        char line[CANVAS_COLUMNS + 1] = "";
        for (int i = 0; i < CANVAS_COLUMNS; i++)
            line[i] = p->s.canvas.cell[row][i].character;
        if (strstr(line, words) != NULL)
            return true;
    }
    return false;
}

static void type(practised *p, const char *keys)
{
    for (; *keys != '\0'; keys++)
        screen_press(&p->s, (unsigned char)*keys);
}

/* By the key that opens any act. */
static void does(practised *p, const char *doing)
{
    type(p, "a");
    screen_press(&p->s, KILL_LINE);
    type(p, doing);
    screen_press(&p->s, ENTER);
    assert_int_equal(p->s.mode, SCREEN_WATCHING);
}

/* A frame a second of the shift, at most until then. */
static void goes_on(practised *p, double until_s)
{
    p->s.running = true;
    while (p->s.running && p->shift.now_s < until_s)
        screen_advance(&p->s, 1 / p->s.speed, p->s.looked_s + 2);
}

/* More lines than a screen has: the last row says how to see them, and Enter begins from any page. */
static void a_long_briefing_is_turned_page_by_page(void **state)
{
    practised p;
    (void)state;
    begin(&p, TOP PLANT "[schedule]\n"
                        "0:01 water 1 gal over 20 s\n0:02 water 1 gal over 20 s\n0:03 water 1 gal over 20 s\n"
                        "0:04 water 1 gal over 20 s\n0:05 water 1 gal over 20 s\n0:06 water 1 gal over 20 s\n"
                        "0:07 water 1 gal over 20 s\n0:08 water 1 gal over 20 s\n0:09 water 1 gal over 20 s\n"
                        "0:10 water 1 gal over 20 s\n0:11 load 40 lb, plate 1/4 in, for 30 s\n");
    screen_show_briefing(&p.s);
    assert_true(shows(&p, "A morning"));
    assert_true(shows(&p, "schedule, 11 acts, is left to you"));
    assert_true(shows(&p, "0:10 water 1 gal over 20 s"));
    assert_true(shows(&p, "... and 1 line more"));
    assert_true(shows(&p, "Space: begin"));
    screen_show_keys(&p.s);
    assert_true(shows(&p, "space: more"));
    type(&p, " ");
    assert_true(p.s.page_line > 0);
    screen_press(&p.s, KEY_OTHER); /* which is none: it stays */
    assert_int_equal(p.s.mode, SCREEN_READING);
    type(&p, "-");
    assert_int_equal(p.s.page_line, 0);
    screen_press(&p.s, ENTER);
    assert_int_equal(p.s.mode, SCREEN_WATCHING);
    end(&p);
}

static void an_act_may_be_the_beginning(void **state)
{
    practised p;
    (void)state;
    begin(&p, TOP PLANT);
    screen_show_briefing(&p.s);
    assert_true(shows(&p, "w l h: begin with an act"));
    type(&p, "h");
    assert_true(shows(&p, "what: heat 50 %_"));
    screen_press(&p.s, DELETE);
    assert_true(shows(&p, "what: heat 50 _"));
    screen_press(&p.s, ESCAPE);
    assert_true(shows(&p, "A prediction on a screen: it allows nothing at a real tank.   Space: begin"));
    screen_show_briefing(&p.s);
    type(&p, "+"); /* any other key: to the bath, where the clock stands */
    assert_int_equal(p.s.mode, SCREEN_WATCHING);
    assert_false(p.s.running);
    end(&p);
}

/* In a bath with salt on its floor that does not boil: what would float or sink is said before it is done. */
static void a_quiet_bath_is_warned_of(void **state)
{
    practised p;
    (void)state;
    begin(&p, TOP "[tank]\nlength = 5 ft\nwidth = 2 ft\ndepth = 24.5 in\nlevel = 16 in\n"
                  "[bath]\nsalts = 80 % NaOH, 15 % NaNO3, 5 % NaNO2\nboiling point = 285 degF\ntemperature = 250 degF\n"
                  "[heat]\ninput = 190 kBtu/h\nlag = 60 s\n");
    p.s.speed = 1;
    type(&p, "w");
    assert_true(shows(&p, "The bath does not boil: the water will float. Enter: do it"));
    screen_press(&p.s, ESCAPE);
    type(&p, "s");
    assert_true(shows(&p, "The bath does not boil: the salt will sink."));
    screen_press(&p.s, ESCAPE);
    type(&p, "l");
    assert_true(shows(&p, "The bath does not boil yet."));
    screen_press(&p.s, ESCAPE);
    type(&p, "h");
    assert_true(shows(&p, " Enter: do it"));
    assert_false(shows(&p, "does not boil"));
    screen_press(&p.s, ESCAPE);
    type(&p, "a when the boil is back water 1 gal"); /* who waits for it need not be told */
    assert_false(shows(&p, "does not boil"));
    screen_press(&p.s, ESCAPE);
    assert_true(shows(&p, "none from boiling"));
    does(&p, "salts 30 lb over 5 s");
    goes_on(&p, 20);
    assert_true(shows(&p, "undissolved  "));
    assert_true(shows(&p, "|:"));
    end(&p);
}

/* Back to before the last act: what happened is gathered anew, and what came before it is among that. */
static void the_acts_before_the_last_stay(void **state)
{
    practised p;
    (void)state;
    begin(&p, TOP PLANT);
    does(&p, "drain 1 gal over 20 s");
    goes_on(&p, 40);
    assert_true(shows(&p, "9:00:20  draining ends"));
    does(&p, "bail 1 gal over 10 s");
    goes_on(&p, 60);
    assert_true(shows(&p, "9:00:50  bailing ends"));
    screen_show_keys(&p.s);
    type(&p, "b"); /* on a page too */
    assert_true(shows(&p, "Back to just before it"));
    assert_int_equal(p.shift.journal.count, 1);
    assert_true(p.shift.now_s == 40);
    assert_true(shows(&p, "9:00:00  drain 1 gal over 20 s"));
    assert_false(shows(&p, "bailing ends"));
    end(&p);
}

/* A lesson asks once: who goes back behind its question is asked again, and who went on is not. */
static void a_question_is_asked_where_it_stands(void **state)
{
    practised p;
    (void)state;
    begin(&p, TOP "[lesson]\ngoal = Wait\nquestion = For what?\npass = quiet <= 60 s\n" PLANT
                  "[careful]\n[reckless]\n0:02 heat 10 %\n"
                  "[choices]\nat 0:01 ask What now?\nchoice Nothing =\nchoice Less = 0:01:10 heat 90 %\n");
    goes_on(&p, 200);
    assert_true(shows(&p, "What now?"));
    assert_true(p.shift.now_s == 60);
    assert_false(p.s.running);
    goes_on(&p, 70);
    does(&p, "heat 90 %");
    goes_on(&p, 100);
    does(&p, "heat 80 %");
    goes_on(&p, 110);
    type(&p, "b");
    assert_int_equal(p.s.asked, 1);
    type(&p, "b"); /* before the first act, behind the question */
    assert_int_equal(p.s.asked, 1);
    type(&p, "b"); /* to the start */
    assert_true(p.shift.now_s == 0);
    assert_int_equal(p.s.asked, 0);
    end(&p);
}

/* At the end nothing is done any more; the file that was asked for is offered, and where nobody types any more it is over. */
static void at_the_end_it_is_kept(void **state)
{
    practised p;
    (void)state;
    begin(&p, TOP PLANT);
    type(&p, "n"); /* nothing happens: to the end */
    assert_true(shift_is_over(&p.shift));
    assert_true(shows(&p, "The shift is over.   d: what came of it"));
    type(&p, " ");
    assert_false(p.s.running);
    snprintf(p.s.outcome.save.text, sizeof p.s.outcome.save.text, "monday.bath");
    type(&p, "qf");
    assert_true(shows(&p, "file: monday.bath_"));
    assert_true(shows(&p, "Enter: keep it there"));
    screen_press(&p.s, ENTER);
    assert_string_equal(p.s.outcome.save.text, "monday.bath");
    assert_true(shows(&p, "Leave?"));
    screen_press(&p.s, KEY_GONE);
    assert_true(p.s.done);
    assert_int_equal(p.s.outcome.signal, SIGHUP);
    end(&p);
}

/* What came of it is longer than a screen; where its page cannot be written that is said there, and nothing is lost. */
static void a_page_that_cannot_be_written_is_told(void **state)
{
    practised p;
    complained c;
    (void)state;
    begin(&p, TOP PLANT);
    does(&p, "load 42 lb, plate 1/4 in, at 70 degF, for 5 min");
    goes_on(&p, 20);
    does(&p, "water 2 gal over 1 min");
    type(&p, "d");
    assert_true(shows(&p, "Debrief, as if nothing more were done until the end"));
    assert_true(shows(&p, "space: more   -: back   w: write a page"));
    p.o.page = "/proc/nowhere/page.html";
    complained_begin(&c);
    type(&p, "w");
    assert_non_null(strstr(complained_end(&c), "could not write '/proc/nowhere/page.html'"));
    assert_true(shows(&p, "/proc/nowhere/page.html could not be written here"));
    assert_int_equal(p.s.mode, SCREEN_READING);
    while (p.s.page_line + CANVAS_ROWS - 1 < text_lines(p.s.page))
        type(&p, " ");
    assert_true(shows(&p, " -: back   w: write a page   Enter: to the bath   b: undo last act"));
    type(&p, "b");
    assert_int_equal(p.shift.journal.count, 1);
    end(&p);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_long_briefing_is_turned_page_by_page),
        cmocka_unit_test(an_act_may_be_the_beginning),
        cmocka_unit_test(a_quiet_bath_is_warned_of),
        cmocka_unit_test(the_acts_before_the_last_stay),
        cmocka_unit_test(a_question_is_asked_where_it_stands),
        cmocka_unit_test(at_the_end_it_is_kept),
        cmocka_unit_test(a_page_that_cannot_be_written_is_told),
    };
    return cmocka_run_group_tests_name("a shift on the screen", tests, scratch_begin, scratch_end);
}
