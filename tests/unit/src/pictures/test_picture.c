/* What is given to gnuplot, and what becomes of its answer. The real one is asked only where it is installed. */
#include "support/scenario_run.h"
#include "support/close.h"

#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "commands/run/output.h"
#include "pictures/picture.h"
#include "pictures/picture_frame.h"
#include "support/printed.h"

static void assert_text(const char *text, const char *want)
{
    printed p;
    printed_begin(&p);
    picture_text(p.to, text);
    char *got = printed_end(&p);
    assert_string_equal(got, want);
    free(got);
}

static void texts_cannot_end_their_field(void **state)
{
    (void)state;
    assert_text("", "x");
    assert_text("a b  ", "xa b");
    assert_text("\"; system(\"x\")", "x\\042; system(\\042x\\042)");
    assert_text("\\n", "x\\134n");
    assert_text("a\tb\nc", "xa?b?c");
    assert_text("\xff\xc3\xa9", "x?\xc3\xa9");
    assert_text("&#60; &amp;", "x& #60; &amp;");
    assert_text("a ]]> b", "xa ]] > b");
}

static void the_ending_says_the_format(void **state)
{
    (void)state;
    picture_format f;
    assert_true(picture_format_of("-", &f) && f == PICTURE_TERMINAL);
    assert_true(picture_format_of("a.b/c.svg", &f) && f == PICTURE_SVG);
    assert_true(picture_format_of("c.PNG", &f) && f == PICTURE_PNG);
    assert_true(picture_format_of(".pdf", &f) && f == PICTURE_PDF);
    assert_false(picture_format_of("svg", &f));
    assert_false(picture_format_of("c.dumb", &f));
    assert_false(picture_format_of("c.svg.gz", &f));
    assert_false(picture_format_of("c.svg/d", &f));
    assert_false(picture_format_of("", &f));
}

static void long_texts_are_cut(void **state)
{
    (void)state;
    assert_string_equal(picture_fitted("abcdef", 6).text, "abcdef");
    assert_string_equal(picture_fitted("abcdefg", 6).text, "abc...");
    assert_string_equal(picture_fitted("WWWW", 6).text, "W...");
    assert_string_equal(picture_fitted("\xe6\xb0\xb4\xe6\xb0\xb4\xe6\xb0\xb4", 6).text, "\xe6\xb0\xb4\xe6\xb0\xb4\xe6\xb0\xb4");
    assert_string_equal(picture_fitted("\xe6\xb0\xb4\xe6\xb0\xb4\xe6\xb0\xb4z", 6).text, "\xe6\xb0\xb4...");
}

/* A run ------------------------------------------------------------------------------------------------------------ */

static void bars_hold_what_fits(void **state)
{
    (void)state;
    scenario_run c;
    size_t n;
    carry_out(&c, "scenarios/water-while-quiet.bath", 0);
    bar *bars = picture_bars(&c.o, 100, &n);
    assert_int_equal(n, 2);
    assert_true(bars[0].kind == ACTION_LANE_LOADS && bars[1].kind == ACTION_LANE_WATER);
    assert_string_equal(bars[0].words.text, "42 lb of 1/4 in plate");
    assert_close(bars[0].from_s, 300, 0, 1e-6);
    assert_close(bars[1].to_s, 380, 0, 1e-6);
    free(bars);
    bars = picture_bars(&c.o, 20, &n); /* 25 minutes of 30: 16 characters less one */
    assert_string_equal(bars[0].words.text, "42 lb");
    free(bars);
    bars = picture_bars(&c.o, 5, &n);
    assert_string_equal(bars[0].words.text, "");
    free(bars);
    forget(&c);
}

static void bars_too_close_to_tell_apart_are_one(void **state)
{
    (void)state;
    scenario_run c;
    size_t n;
    carry_out(&c, "scenarios/weekend.bath", 0);
    bar *bars = picture_bars(&c.o, 100, &n);
    assert_int_equal(n, 5); /* of eight actions: lid and exhaust go together, and heat with them on Monday */
    assert_string_equal(bars[2].words.text, "exhaust off"); /* behind water and "heat off" */
    free(bars);
    forget(&c);
}

/* Each load takes the first lane that is free, and the last one where none is; a lane is free again as its load comes out. */
static void loads_at_once_take_lanes_of_their_own(void **state)
{
    (void)state;
    enum { LOADS = 5 };
    static const double in_s[LOADS] = {0, 100, 200, 300, 1000}, out_s[LOADS] = {900, 950, 980, 2000, 1500};
    static const size_t lanes[LOADS] = {0, 1, 2, 2, 0};
    boil_action actions[LOADS];
    boil_act_result acts[LOADS];
    boil_load_result loads[LOADS];
    for (size_t i = 0; i < LOADS; i++) {
        actions[i] = (boil_action){.time_s = in_s[i], .kind = BOIL_ACTION_LOAD, .is.load = boil_load_default()};
        acts[i] = (boil_act_result){in_s[i], BOIL_ACT_DONE};
        loads[i] = (boil_load_result){.action = i, .time_s = in_s[i], .lifted_s = out_s[i]};
    }
    scenario s = {.schedule = {.actions = actions, .count = LOADS, .duration_s = 2000}};
    carried_out o = {.scenario = &s,
                     .central = {.acts = acts, .acts_count = LOADS, .loads = loads, .loads_count = LOADS, .end_s = 2000}};
    size_t n;
    bar *bars = picture_bars(&o, 100, &n);
    assert_int_equal(n, LOADS);
    for (size_t i = 0; i < LOADS; i++) {
        assert_close(bars[i].from_s, in_s[i], 0, 0);
        assert_int_equal(bars[i].lane, lanes[i]);
    }
    free(bars);
}

static void assert_input_has(const picture_run *r, void (*input)(const void *run, FILE *to), const char *part)
{
    printed p;
    printed_begin(&p);
    input(r, p.to);
    char *text = printed_end(&p);
    if (strstr(text, part) == NULL)
        fail_msg("lacks '%s':\n%s", part, text);
    free(text);
}

/* Of what nothing was done there is no lane. */
static void lanes_are_of_what_was_done(void **state)
{
    (void)state;
    scenario_run c;
    picture_run r;
    printed p;
    carry_out(&c, "scenarios/water-while-quiet.bath", 0);
    assert_true(picture_run_begin(&r, &c.o, UNITS_US, PICTURE_SVG, 1800));
    printed_begin(&p);
    picture_lanes(&r, p.to);
    char *text = printed_end(&p);
    assert_string_equal(text, "1\txloads\n2\txwater\n");
    free(text);
    picture_run_end(&r);
    forget(&c);
}

static void inputs_are_in_the_units_asked_for(void **state)
{
    (void)state;
    scenario_run c;
    picture_run r;
    carry_out(&c, "scenarios/water-while-quiet.bath", 0);
    scenario titled = *c.o.scenario;
    titled.title = strdup("a \"title\"");
    c.o.scenario = &titled;
    assert_true(picture_run_begin(&r, &c.o, UNITS_US, PICTURE_SVG, 1800));
    assert_input_has(&r, picture_frame, "time\t32400\t1800\tx\n");
    assert_input_has(&r, picture_frame, "temperature\t1.8\t-459.67\txdegF\n");
    assert_input_has(&r, picture_frame, "title\t0\t0\txa \\042title\\042\n");
    assert_input_has(&r, picture_frame, "overflow\t");
    assert_input_has(&r, picture_frame, "verdict\t0\t0\txDANGER at 9:06:22: the boiling surface reaches the rim;");
    assert_input_has(&r, picture_actions, "2\t320\t380\t1\tx2 gal of water over 1 min\n");
    assert_input_has(&r, picture_marks, "x9:05:33\txwater afloat on the quiet bath");
    picture_run_end(&r);
    free(titled.title);
    forget(&c);
}

/* A row for each, numbered in their order, the likely ones first. */
static void every_finding_has_its_mark(void **state)
{
    (void)state;
    scenario_run c;
    picture_run r;
    printed p;
    carry_out(&c, "scenarios/water-while-quiet.bath", 0);
    const size_t likely = c.o.found.count, all = likely + c.o.possible.count;
    assert_true(likely > 1 && all <= MARKS_MAX);
    assert_true(picture_run_begin(&r, &c.o, UNITS_US, PICTURE_SVG, 1800));
    printed_begin(&p);
    picture_marks(&r, p.to);
    char *text = printed_end(&p), *row = text;
    for (size_t i = 0; i < all; i++) {
        const boil_finding *f = i < likely ? &c.o.found.list[i] : &c.o.possible.list[i - likely];
        size_t lane, number = strtoul(row, &row, 10);
        double time_s = strtod(row, &row);
        lane = strtoul(row, &row, 10);
        assert_true(number == i + 1 && lane < all);
        assert_true(isnan(f->time_s) ? isnan(time_s) : fabs(time_s - f->time_s) < 1e-3);
        assert_int_equal(strtoul(row, &row, 10), f->severity);
        assert_int_equal(strtoul(row, &row, 10), i < likely);
        do
            row = strchr(row, '\n') + 1;
        while (strncmp(row, "0\t", 2) == 0); /* goes on in the next one */
    }
    assert_string_equal(row, "");
    free(text);
    picture_run_end(&r);
    forget(&c);
}

/* The folder of a file that is open for writing, seen while an input is written. */
static char folder_seen[300];
static mode_t folder_mode;

static void look_around(const void *what, FILE *to)
{
    char link[60];
    struct stat s;
    (void)what;
    snprintf(link, sizeof link, "/proc/self/fd/%d", fileno(to));
    ssize_t length = readlink(link, folder_seen, sizeof folder_seen - 1);
    assert_true(length > 0);
    folder_seen[length] = '\0';
    *strrchr(folder_seen, '/') = '\0';
    assert_int_equal(stat(folder_seen, &s), 0);
    folder_mode = s.st_mode & 0777;
}

static void the_folder_is_private_and_goes(void **state)
{
    (void)state;
    picture_problem problem;
    picture_drawn drawn;
    struct stat s;
    const picture_input inputs[] = {{"frame.tsv", look_around, NULL}, {0}};
    assert_false(picture_draw("no-such-script.gp", PICTURE_SVG, inputs, &drawn, &problem));
    assert_int_equal(folder_mode, 0700);
    assert_int_not_equal(stat(folder_seen, &s), 0);
}

static void an_input_that_cannot_be_written_is_told(void **state)
{
    (void)state;
    picture_problem problem;
    picture_drawn drawn;
    const picture_input inputs[] = {{"missing/frame.tsv", look_around, NULL}, {0}};
    assert_false(picture_draw("run.gp", PICTURE_SVG, inputs, &drawn, &problem));
    assert_non_null(strstr(problem.text, "temporary folder"));
    assert_int_equal(setenv("TMPDIR", "/proc/nowhere", 1), 0);
    assert_false(picture_draw("run.gp", PICTURE_SVG, inputs, &drawn, &problem));
    assert_non_null(strstr(problem.text, "no temporary folder"));
    unsetenv("TMPDIR");
}

static void write_program(const char *path, const char *text)
{
    FILE *f = fopen(path, "w");
    assert_non_null(f);
    fputs(text, f);
    assert_int_equal(fclose(f), 0);
    assert_int_equal(chmod(path, 0700), 0);
}

/* Only what ends well and is whole is a picture. The program that is asked says what it likes. */
static void half_a_picture_is_none(void **state)
{
    (void)state;
    /* clang-format off */
    static const struct {
        const char *does;
        bool good;
    } programs[] = {
        {"echo '<?xml a picture </svg>' >$5", true},
        {"echo '<?xml a picture </svg>' >$5; exit 1", false},
        {"echo '<?xml a picture' >$5", false},
        {"echo 'a picture </svg>' >$5", false},
        {"exit 0", false},
    };
    /* clang-format on */
    char folder[] = "/tmp/boilback-test-XXXXXX", program[sizeof folder + 8], path[1000], *old = getenv("PATH");
    assert_non_null(mkdtemp(folder));
    snprintf(program, sizeof program, "%s/gnuplot", folder);
    snprintf(path, sizeof path, "%s", old);
    assert_int_equal(setenv("PATH", folder, 1), 0);
    for (size_t i = 0; i < sizeof programs / sizeof programs[0]; i++) {
        char text[200];
        picture_problem problem = {""};
        picture_drawn drawn;
        const picture_input none[] = {{0}};
        snprintf(text, sizeof text, "#!/bin/sh\n%s\n", programs[i].does);
        write_program(program, text);
        assert_int_equal(picture_draw("run.gp", PICTURE_SVG, none, &drawn, &problem), programs[i].good);
        assert_string_equal(problem.text, programs[i].good ? "" : "gnuplot failed");
        assert_true((drawn.bytes != NULL) == programs[i].good);
        picture_forget(&drawn);
    }
    assert_int_equal(setenv("PATH", path, 1), 0);
    assert_int_equal(unlink(program), 0);
    assert_int_equal(rmdir(folder), 0);
}

/* A folder with the program that is asked, which alone is found then; and the path as it was. */
typedef struct {
    char folder[40], program[60], path[1000];
} asked;

static void ask_only(asked *a, const char *does)
{
    char text[300];
    snprintf(a->folder, sizeof a->folder, "/tmp/boilback-test-XXXXXX");
    assert_non_null(mkdtemp(a->folder));
    snprintf(a->program, sizeof a->program, "%s/gnuplot", a->folder);
    snprintf(a->path, sizeof a->path, "%s", getenv("PATH"));
    snprintf(text, sizeof text, "#!/bin/sh\n%s\n", does);
    write_program(a->program, text);
    assert_int_equal(setenv("PATH", a->folder, 1), 0);
}

static void ask_all(const asked *a)
{
    assert_int_equal(setenv("PATH", a->path, 1), 0);
    unlink(a->program);
    assert_int_equal(rmdir(a->folder), 0);
}

/* The last line of what it said, whatever blanks stand behind. */
static void what_it_said_last_is_told(void **state)
{
    static const struct {
        const char *says, *told;
    } of[] = {
        {"echo 'a warning'; echo 'line 3: undefined function: foo  '; echo", "gnuplot failed: line 3: undefined function: foo"},
        {"echo 'one line' >&2", "gnuplot failed: one line"},
        {"echo; echo '  '", "gnuplot failed"}};
    const picture_input none[] = {{0}};
    (void)state;
    for (size_t i = 0; i < sizeof of / sizeof of[0]; i++) {
        char does[200];
        asked a;
        picture_drawn drawn;
        picture_problem problem = {""};
        snprintf(does, sizeof does, "%s; exit 1", of[i].says);
        ask_only(&a, does);
        assert_false(picture_draw("run.gp", PICTURE_SVG, none, &drawn, &problem));
        ask_all(&a);
        assert_string_equal(problem.text, of[i].told);
    }
}

static void what_is_not_installed_is_told(void **state)
{
    asked a;
    picture_drawn drawn;
    picture_problem asked_before = {""}, problem = {""};
    const picture_input none[] = {{0}};
    (void)state;
    ask_only(&a, "exit 0");
    assert_true(picture_can_be(&asked_before));
    unlink(a.program);
    assert_false(picture_can_be(&asked_before));
    assert_false(picture_draw("run.gp", PICTURE_SVG, none, &drawn, &problem));
    ask_all(&a);
    assert_non_null(strstr(asked_before.text, "gnuplot is not installed"));
    assert_string_equal(problem.text, asked_before.text);
}

/* For the terminal without its form feeds, blanks at the ends of lines, and empty lines at both ends. A folder that does not begin at
   the root is none for it. */
static void a_picture_in_the_terminal_is_tidied(void **state)
{
    asked a;
    picture_drawn drawn;
    picture_problem problem = {""};
    const picture_input none[] = {{0}};
    (void)state;
    ask_only(&a, "printf '\\f\\n   \\n  a b   \\n\\n c\\n  \\n\\n' >$5");
    assert_int_equal(setenv("TMPDIR", "nowhere", 1), 0);
    bool good = picture_draw("run.gp", PICTURE_TERMINAL, none, &drawn, &problem);
    unsetenv("TMPDIR");
    ask_all(&a);
    assert_true(good);
    assert_string_equal(drawn.bytes, "  a b\n\n c\n");
    assert_int_equal(drawn.length, strlen(drawn.bytes));
    picture_forget(&drawn);
}

static bool has_gnuplot(void)
{
    return system("command -v gnuplot >/dev/null") == 0;
}

static void the_shipped_runs_can_be_drawn(void **state)
{
    (void)state;
    scenario_run c;
    picture_drawn drawn;
    picture_problem problem;
    if (!has_gnuplot())
        skip();
    carry_out(&c, "scenarios/tall-narrow.bath", 0);
    for (picture_format f = PICTURE_SVG; f <= PICTURE_TERMINAL; f++) {
        if (!run_picture(&c.o, &(output){.system = UNITS_SI}, f, &drawn, &problem))
            fail_msg("%s", problem.text);
        assert_true(drawn.length > 1000);
        picture_forget(&drawn);
    }
    forget(&c);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(texts_cannot_end_their_field),
        cmocka_unit_test(the_ending_says_the_format),
        cmocka_unit_test(long_texts_are_cut),
        cmocka_unit_test(bars_hold_what_fits),
        cmocka_unit_test(bars_too_close_to_tell_apart_are_one),
        cmocka_unit_test(loads_at_once_take_lanes_of_their_own),
        cmocka_unit_test(lanes_are_of_what_was_done),
        cmocka_unit_test(inputs_are_in_the_units_asked_for),
        cmocka_unit_test(every_finding_has_its_mark),
        cmocka_unit_test(the_folder_is_private_and_goes),
        cmocka_unit_test(an_input_that_cannot_be_written_is_told),
        cmocka_unit_test(half_a_picture_is_none),
        cmocka_unit_test(what_it_said_last_is_told),
        cmocka_unit_test(what_is_not_installed_is_told),
        cmocka_unit_test(a_picture_in_the_terminal_is_tidied),
        cmocka_unit_test(the_shipped_runs_can_be_drawn),
    };
    setenv("BOILBACK_DATA", ".", 1); /* tests are run from the top folder */
    return cmocka_run_group_tests_name("picture", tests, NULL, NULL);
}
