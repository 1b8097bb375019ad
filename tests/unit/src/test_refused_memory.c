/* Memory is refused to the program, once, at the first, the second, ... allocation: each time that is what is answered, never another
   answer, and nothing stays behind. Linked so that its own allocations, and streams into memory, come here (Makefile). */
#include <gsl/gsl_errno.h>

#include "support/refused.h"
#include "support/scratch.h"

#include <fcntl.h>
#include <string.h>

#include "practise/screen/parts.h"
#include "replay/page/answer.h"

#define PLANT                                                                                                                  \
    "[tank]\nlength = 5 ft\nwidth = 2 ft\ndepth = 24.5 in\nlevel = 16 in\npositions = 2\n"                                     \
    "[bath]\nsalts = 80 % NaOH, 15 % NaNO3, 5 % NaNO2\nboiling point = 285 degF\n[heat]\ninput = 190 kBtu/h\nlag = 20 s\n"
#define SHIFT                                                                                                                  \
    "title = A minute\nstart = 9:00\nduration = 1 min\n" PLANT                                                                 \
    "[breaks]\n0:00:50 to 0:00:55\n[schedule]\n0:00:10 water 1 gal over 5 s\n0:00:40 load 20 lb, plate 1/4 in, for 10 s\n"
#define LISTED                                                                                                                 \
    "start = 9:00\ntimes = by the clock\n" PLANT "[uncertain]\nheat efficiency = 50 % to 70 %\n[plan]\nend = 12:00\n"          \
    "[jobs]\nframes 90 lb, plate 1/4 in, 20 pieces, for 15 min, may split\npins 20 lb, bar 1/2 in, for 5 min, due 11:00\n"     \
    "clips 20 lb iron, plate 1/8 in, for 5 min\n"                                                                              \
    "[now]\nclock = 9:30\nreads = 287 degF\nboils = yes\nlevel = 16 in\nin the tank = frames 1/2 since 9:20\nout = pins\n"
#define LESSON                                                                                                                 \
    "duration = 1 min\n[lesson]\ngoal = Wait\nquestion = For what?\npass = quiet <= 60 s\n" PLANT                              \
    "[schedule]\n0:00:05 heat 90 %\n[careful]\n[reckless]\n0:00:10 water 1 gal over 5 s\n"                                     \
    "[choices]\nat 0:00:30 ask What now?\nchoice Nothing =\nchoice Less = 0:00:40 heat 10 %\n"

FILE *__real_open_memstream(char **text, size_t *size);
FILE *__wrap_open_memstream(char **text, size_t *size);

/* Its text is freed by whoever opened it. */
FILE *__wrap_open_memstream(char **text, size_t *size)
{
    if (refusal_now())
        return NULL;
    refusal.held++;
    return __real_open_memstream(text, size);
}

/* What a test asks of: a file's text, and what was read of it. */
static struct {
    scenario_text text;
    scenario read;
    FILE *nowhere;
} of;

static void write_scratch(const char *text)
{
    FILE *f = fopen(scratch_path, "w");
    assert_non_null(f);
    fputs(text, f);
    assert_int_equal(fclose(f), 0);
}

static void begin(const char *text)
{
    messages m;
    write_scratch(text);
    messages_init(&m);
    assert_true(scenario_text_read(scratch_path, &of.text, &m));
    if (scenario_of_text(&of.text, NULL, 0, &of.read, &m) != BOIL_OK)
        fail_msg("%s", m.count > 0 ? m.list[0].text : "nothing read");
    messages_free(&m);
    of.nowhere = fopen("/dev/null", "w");
    assert_non_null(of.nowhere);
}

static void end(void)
{
    fclose(of.nowhere);
    scenario_free(&of.read);
    scenario_text_free(&of.text);
}

static boil_outcome ask_reading(void)
{
    scenario again;
    messages m;
    messages_init(&m);
    boil_outcome outcome = scenario_of_text(&of.text, NULL, 0, &again, &m);
    outcome = m.lost ? BOIL_NO_MEMORY : outcome;
    messages_free(&m);
    scenario_free(&again);
    return outcome;
}

static boil_outcome act(shift *s, const char *doing, const char *asked)
{
    messages m;
    char words[60], waited[60];
    snprintf(words, sizeof words, "%s", doing);
    snprintf(waited, sizeof waited, "%s", asked != NULL ? asked : "");
    const journal_act done = {.doing = words, .asked = asked != NULL ? waited : NULL, .for_s = 5};
    messages_init(&m);
    boil_outcome outcome = shift_act(s, &done, &m);
    messages_free(&m);
    return outcome;
}

static boil_outcome looks(const shift *s)
{
    boil_history h;
    size_t length;
    boil_outcome outcome = shift_so_far(s, &h);
    if (outcome != BOIL_OK)
        return outcome;
    boil_history_free(&h);
    char *text = journal_text(&s->journal, JOURNAL_ASKED, &length);
    outcome = text != NULL ? BOIL_OK : BOIL_NO_MEMORY;
    free(text);
    return outcome;
}

static boil_outcome ask_shift(void)
{
    const boil_wait boils = {.state = BOIL_WAIT_BOILING, .for_s = 5};
    bool due;
    shift s;
    boil_outcome outcome = shift_begin(&s, &of.text.text, &of.read);
    if (outcome == BOIL_OK)
        outcome = shift_go_on(&s, 5);
    if (outcome == BOIL_OK)
        outcome = act(&s, "load 20 lb, plate 1/4 in, for 20 s", NULL);
    if (outcome == BOIL_OK)
        outcome = shift_go_on_when(&s, 55, &boils, 5, &due);
    if (outcome == BOIL_OK)
        outcome = act(&s, "heat 90 %", "when boiling for 5 s");
    if (outcome == BOIL_OK)
        outcome = looks(&s);
    if (outcome == BOIL_OK)
        outcome = shift_go_back(&s);
    shift_free(&s);
    return outcome;
}

/* Orders, and at the end what came of each act. */
static boil_outcome ask_lines(void)
{
    const lines_options o = {scratch_path, false, UNITS_US, &of.read, of.nowhere};
    shift s;
    boil_outcome outcome = shift_begin(&s, &of.text.text, &of.read);
    if (outcome == BOIL_OK && lines_practise(&s, &o).refused)
        outcome = BOIL_NO_MEMORY;
    shift_free(&s);
    return outcome;
}

static void press(screen *s, const char *keys)
{
    for (; *keys != '\0' && !s->done; keys++)
        screen_press(s, (unsigned char)*keys);
}

static boil_outcome ask_screen(void)
{
    const screen_options o = {.read = &of.read, .speed = 60};
    shift s;
    boil_outcome outcome = shift_begin(&s, &of.text.text, &of.read);
    screen *on = outcome == BOIL_OK ? calloc(1, sizeof *on) : NULL;
    outcome = outcome == BOIL_OK && on == NULL ? BOIL_NO_MEMORY : outcome;
    if (on != NULL) {
        *on = (screen){.shift = &s, .o = &o, .speed = 60, .found_s = -1, .fits = true};
        screen_show_briefing(on);
        press(on, "w\r");
        for (int i = 0; i < 3 && !on->done; i++)
            screen_advance(on, 0.2, i);
        press(on, "?qd bn");
        outcome = on->outcome.refused ? BOIL_NO_MEMORY : BOIL_OK;
        happenings_free(&on->happened);
        happenings_free(&on->warned);
        free(on->page);
    }
    free(on);
    shift_free(&s);
    return outcome;
}

static boil_outcome ask_lesson(void)
{
    const scenario *failed;
    lesson_answer *a = calloc(1, sizeof *a);
    if (a == NULL)
        return BOIL_NO_MEMORY;
    boil_outcome outcome = lesson_answer_of(&of.read, 1, a, &failed);
    lesson_answer_free(a);
    free(a);
    return outcome;
}

static void reading_says_so(void **state)
{
    static const char *const files[] = {SHIFT, LISTED, LESSON};
    (void)state;
    for (size_t i = 0; i < sizeof files / sizeof files[0]; i++) {
        begin(files[i]);
        refuse_each(ask_reading, 1000);
        end();
    }
}

static void shift_says_so(void **state)
{
    (void)state;
    begin(SHIFT);
    refuse_each(ask_shift, 12);
    end();
}

static void lines_says_so(void **state)
{
    (void)state;
    begin(SHIFT);
    write_scratch("0:00:05 water 1 gal over 5 s\nacts\nback\nwait 5 s\nwater 2 gal over 2 s\nwhen boiling for 5 s heat 90 %\n");
    refuse_each(ask_lines, 5);
    end();
}

static void screen_says_so(void **state)
{
    (void)state;
    begin(SHIFT);
    refuse_each(ask_screen, 5);
    end();
}

static void lesson_says_so(void **state)
{
    (void)state;
    begin(LESSON);
    refuse_each(ask_lesson, 5);
    end();
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(reading_says_so), cmocka_unit_test(shift_says_so),  cmocka_unit_test(lines_says_so),
        cmocka_unit_test(screen_says_so),  cmocka_unit_test(lesson_says_so),
    };
    return cmocka_run_group_tests_name("memory refused", tests, scratch_begin, scratch_end);
}
