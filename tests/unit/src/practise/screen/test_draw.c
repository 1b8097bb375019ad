/* What the screen shows of the bath: every figure again from the history, converted by hand, and each line where it is looked for. */
#include <gsl/gsl_errno.h>

#include "support/worked_screen.h"

#include <math.h>
#include <stdlib.h>

#define TEXT "title = Two gallons, and a load\n" WORKED_TOP WORKED_PLANT
#define LOAD "load 42 lb, plate 1/4 in, at 70 degF, for 15 min, basket 7 lb"
enum { PANEL = 46 };

static const char *part(worked_screen *t, int row, int column)
{
    const char *all = worked_screen_row(t, row);
    return strlen(all) > (size_t)column ? all + column : "";
}

static canvas_look look(const worked_screen *t, int row, int column)
{
    return (canvas_look)t->s.canvas.cell[row][column].look;
}

static panel now(const worked_screen *t)
{
    return panel_of(&t->w.shift, shift_history(&t->w.shift), t->w.shift.now_s);
}

static double degF(double K)
{
    return (K - 273.15) * 1.8 + 32;
}

static double inches(double m)
{
    return m / 0.0254;
}

/* So it reads there. */
__attribute__((format(printf, 3, 4))) static void reads(worked_screen *t, int row, const char *format, ...)
{
    char want[80];
    va_list values;
    va_start(values, format);
    vsnprintf(want, sizeof want, format, values);
    va_end(values);
    assert_string_equal(part(t, row, PANEL), want);
}

/* What is sent to standard output, which is a file meanwhile. */
static void printed_out(screen *s, char *text, size_t size)
{
    FILE *to = tmpfile();
    int before = dup(STDOUT_FILENO);
    fflush(stdout);
    assert_true(to != NULL && before >= 0 && dup2(fileno(to), STDOUT_FILENO) >= 0);
    screen_draw(s);
    fflush(stdout);
    dup2(before, STDOUT_FILENO);
    close(before);
    rewind(to);
    text[fread(text, 1, size - 1, to)] = '\0';
    fclose(to);
}

static void the_title_tells_clock_speed_and_state(void **state)
{
    (void)state;
    worked_screen t = {.row = ""};
    worked_screen_begin(&t, TEXT, UNITS_US);
    assert_string_equal(worked_screen_row(&t, 0), " 9:00:00      Two gallons, and a load             20x   PAUSED");
    assert_int_equal(look(&t, 0, 56), CANVAS_REVERSE);
    assert_int_equal(strlen(worked_screen_row(&t, 1)), CANVAS_COLUMNS);
    t.s.running = true;
    assert_string_equal(part(&t, 0, 50), "20x   running");
    assert_int_equal(look(&t, 0, 56), CANVAS_PLAIN);
    t.s.slow = true;
    assert_string_equal(part(&t, 0, 50), "0.5x  SLOW");
    t.s.running = false;
    assert_string_equal(part(&t, 0, 50), "20x   PAUSED");
    t.s.slow = false;
    worked_screen_go_on(&t, 2000);
    assert_string_equal(worked_screen_row(&t, 0), " 9:30:00      Two gallons, and a load             20x   OVER");
    worked_screen_end(&t);
}

/* A boiling bath is at its boiling point: the mark stands at the end of its scale. */
static void a_boiling_bath_is_read_off(void **state)
{
    (void)state;
    worked_screen t = {.row = ""};
    worked_screen_begin(&t, TEXT, UNITS_US);
    worked_screen_go_on(&t, 100);
    panel p = now(&t);
    assert_string_equal(part(&t, 2, PANEL), "TO THE RIM");
    reads(&t, 3, "  %.1f in  (limit 6.0)", inches(p.row.freeboard_m));
    assert_string_equal(part(&t, 4, PANEL), "");
    assert_string_equal(part(&t, 6, PANEL), "BOILS");
    assert_string_equal(part(&t, 7, PANEL), "-10 .........................V 0");
    reads(&t, 9, "temperature  %.1f degF", degF(p.row.temperature_K));
    reads(&t, 10, "boils at     %.1f degF", degF(p.row.boiling_point_K));
    reads(&t, 11, "salts        %.1f %%", 100 * p.row.salt_fraction);
    reads(&t, 12, "steam        x%.1f of usual", p.row.steam_kg_s / p.row.calm_kg_s);
    assert_string_equal(part(&t, 13, PANEL), "floats       nothing");
    assert_string_equal(part(&t, 14, PANEL), "heat         100 %");
    for (int row = 15; row < 18; row++)
        assert_string_equal(part(&t, row, PANEL), "");
    worked_screen_end(&t);
}

/* The mark stands at so much of the ten degrees below, of 26 places; further down at the other end. */
static void mark_is_right(worked_screen *t, double most_K, const char *low)
{
    panel p = now(t);
    double below = fmin((p.row.boiling_point_K - p.row.temperature_K) / most_K, 1);
    const char *scale = part(t, 7, PANEL);
    assert_memory_equal(scale, low, 3);
    assert_int_equal(strcspn(scale, "V"), 4 + lround(25 - 25 * below));
    assert_int_equal(strlen(scale), 32);
    assert_int_equal(scale[31], '0');
}

static void a_quiet_bath_is_read_off(void **state)
{
    (void)state;
    worked_screen t = {.row = ""};
    worked_screen_begin(&t, TEXT, UNITS_US);
    worked_screen_do(&t, "load 300 lb, bar 1 in, at 70 degF, for 25 min");
    double least = (double)INFINITY, most = 0;
    for (double s = 2; s < 400; s += 30) {
        worked_screen_go_on(&t, s);
        panel p = now(&t);
        double below = (p.row.boiling_point_K - p.row.temperature_K) * 1.8;
        least = fmin(least, below);
        most = fmax(most, below);
        reads(&t, 6, "QUIET   %.1f degF below boiling", below);
        reads(&t, 16, "in the bath: 300 lb in 1 load");
        reads(&t, 17, "             coldest %.1f degF", degF(p.row.coldest_load_K));
        mark_is_right(&t, 10 / 1.8, "-10");
    }
    assert_true(least < 1 && most > 4);
    worked_screen_end(&t);
}

static void far_below_the_mark_stands_at_the_other_end(void **state)
{
    (void)state;
    worked_screen t = {.row = ""};
    worked_screen_begin(&t, TEXT, UNITS_US);
    worked_screen_do(&t, "load 700 lb, bar 1 in, at 70 degF, for 25 min");
    worked_screen_go_on(&t, 120);
    assert_string_equal(part(&t, 7, PANEL), "-10 V......................... 0");
    worked_screen_end(&t);
    worked_screen_begin(&t, TEXT, UNITS_SI);
    worked_screen_do(&t, "load 150 kg, bar 25 mm, at 20 degC, for 25 min");
    double most_K = 0;
    for (double s = 2; s < 120; s += 10) {
        worked_screen_go_on(&t, s);
        most_K = fmax(most_K, fmin(5, now(&t).row.boiling_point_K - now(&t).row.temperature_K));
        mark_is_right(&t, 5, " -5");
    }
    assert_true(most_K > 2);
    worked_screen_end(&t);
}

/* Water poured on the quiet bath: what it would leave, how much of it there is, and in the end over the rim. */
static void what_floats_is_told_until_it_is_over(void **state)
{
    (void)state;
    worked_screen t = {.row = ""};
    worked_screen_begin(&t, TEXT, UNITS_US);
    worked_screen_do(&t, LOAD);
    worked_screen_go_on(&t, 20);
    worked_screen_do(&t, "water 0.06 gal over 1 s");
    worked_screen_go_on(&t, 26);
    panel p = now(&t);
    assert_true(p.row.layer_kg > 0.045 && p.row.left_m > p.limit_m);
    reads(&t, 4, "if it lets go now: %.1f in", inches(p.row.left_m));
    assert_int_equal(look(&t, 4, PANEL), CANVAS_BOLD);
    assert_memory_equal(part(&t, 13, PANEL), "floats       0.5", 16);
    worked_screen_do(&t, "water 2 gal over 10 s");
    worked_screen_go_on(&t, 45);
    p = now(&t);
    assert_string_equal(part(&t, 4, PANEL), "if it lets go now: OVER");
    assert_int_equal(look(&t, 4, PANEL), CANVAS_REVERSE);
    reads(&t, 13, "floats       %.1f lb of water", p.row.layer_kg / 0.45359237);
    assert_string_equal(part(&t, 0, 64), "");
    for (int i = 0; i < 9000 && now(&t).row.freeboard_m > 0; i++)
        worked_screen_go_on(&t, t.w.shift.now_s + 0.01);
    p = now(&t);
    assert_string_equal(part(&t, 2, PANEL), " OVER THE RIM");
    assert_int_equal(look(&t, 2, PANEL), CANVAS_REVERSE);
    reads(&t, 3, p.row.freeboard_m < -0.2 ? "by more than %.1f in" : "by %.1f in",
          fmin(-inches(p.row.freeboard_m), 0.2 / 0.0254));
    assert_string_equal(part(&t, 4, PANEL), "what leaves the tank is not worked");
    assert_string_equal(part(&t, 5, PANEL), "out: from here on no prediction");
    assert_string_equal(part(&t, 0, 64), "NOT A PREDICTION");
    worked_screen_go_on(&t, t.w.shift.now_s + 60);
    assert_string_equal(part(&t, 2, PANEL), "TO THE RIM");
    assert_string_equal(part(&t, 0, 64), "NOT A PREDICTION");
    worked_screen_end(&t);
}

static void salt_that_lies_is_told(void **state)
{
    (void)state;
    worked_screen t = {.row = ""};
    worked_screen_begin(&t, TEXT, UNITS_US);
    worked_screen_do(&t, "salts 40 lb over 10 s");
    worked_screen_go_on(&t, 20);
    reads(&t, 15, "undissolved  %.1f lb of salt", now(&t).bed_kg / 0.45359237);
    worked_screen_end(&t);
}

static void warn(worked_screen *t, double time_s, boil_severity severity, const char *title, const char *advice)
{
    happening one = {.time_s = time_s, .finding = true, .severity = severity, .advice = advice};
    snprintf(one.text.text, sizeof one.text.text, "%s", title);
    t->s.warned.list = realloc(t->s.warned.list, (t->s.warned.count + 1) * sizeof one);
    t->s.warned.list[t->s.warned.count++] = one;
}

/* The last three of what happened and was found, the newest lowest; at one moment what was found is the newer. */
static void the_newest_of_what_happened_stands_lowest(void **state)
{
    (void)state;
    worked_screen t = {.row = ""};
    worked_screen_begin(&t, TEXT, UNITS_US);
    for (int row = 19; row < 22; row++)
        assert_string_equal(worked_screen_row(&t, row), "");
    assert_true(happened_add(&t.s.happened, 60, "one"));
    assert_string_equal(worked_screen_row(&t, 21), " 9:01:00  one");
    assert_string_equal(worked_screen_row(&t, 20), "");
    warn(&t, 50, BOIL_SEVERITY_WARNING, "two", "do so");
    assert_string_equal(worked_screen_row(&t, 21), " 9:01:00  one");
    assert_string_equal(worked_screen_row(&t, 20), " 9:00:50  WARNING  two");
    assert_int_equal(look(&t, 20, 1), CANVAS_BOLD);
    assert_int_equal(look(&t, 21, 1), CANVAS_PLAIN);
    warn(&t, 60, BOIL_SEVERITY_CAUTION, "three", "do that");
    assert_string_equal(worked_screen_row(&t, 21), " 9:01:00  CAUTION  three");
    assert_int_equal(look(&t, 21, 1), CANVAS_PLAIN);
    assert_string_equal(worked_screen_row(&t, 20), " 9:01:00  one");
    assert_true(happened_add(&t.s.happened, 61, "four"));
    assert_string_equal(worked_screen_row(&t, 21), " 9:01:01  four");
    assert_string_equal(worked_screen_row(&t, 19), " 9:01:00  one");
    assert_int_equal(worked_screen_find(&t, "two"), -1);
    assert_int_equal(look(&t, 18, 0), CANVAS_PLAIN);
    assert_int_equal(strlen(worked_screen_row(&t, 18)), CANVAS_COLUMNS); /* a rule above them */
    worked_screen_end(&t);
}

/* Of the last five minutes the gravest; of two as grave the later. */
static void advice_is_that_of_the_gravest_of_late(void **state)
{
    (void)state;
    worked_screen t = {.row = ""};
    worked_screen_begin(&t, TEXT, UNITS_US);
    worked_screen_go_on(&t, 400);
    warn(&t, 110, BOIL_SEVERITY_DANGER, "old", "run");
    worked_screen_go_on(&t, 411);
    assert_string_equal(worked_screen_row(&t, 22), "");
    warn(&t, 200, BOIL_SEVERITY_CAUTION, "a", "look");
    assert_string_equal(worked_screen_row(&t, 22), " CAUTION: look");
    warn(&t, 210, BOIL_SEVERITY_WARNING, "b", "mind");
    warn(&t, 220, BOIL_SEVERITY_CAUTION, "c", "see");
    assert_string_equal(worked_screen_row(&t, 22), " WARNING: mind");
    warn(&t, 230, BOIL_SEVERITY_WARNING, "d", "mind more");
    assert_string_equal(worked_screen_row(&t, 22), " WARNING: mind more");
    worked_screen_end(&t);
}

static void says_below(worked_screen *t, int row, const char *words)
{
    const char *shown = worked_screen_row(t, row);
    if (strstr(shown, words) == NULL)
        fail_msg("row %d is '%s', and not '%s'", row, shown, words);
}

/* While an act is written it is said what the bath would make of it. */
static void typed(worked_screen *t, const char *line, const char *foreseen)
{
    char want[120];
    snprintf(want, sizeof want, " %s%sEnter: do it   Esc: drop it", foreseen, foreseen[0] != '\0' ? " " : "");
    snprintf(t->s.line.text, sizeof t->s.line.text, "%s", line);
    t->s.mode = SCREEN_WRITING;
    assert_string_equal(worked_screen_row(t, 23), want);
    snprintf(want, sizeof want, " what: %s_", line);
    assert_string_equal(worked_screen_row(t, 22), want);
    t->s.mode = SCREEN_WATCHING;
}

static void what_an_act_would_do_is_said_before_it_is_done(void **state)
{
    (void)state;
    worked_screen t = {.row = ""};
    worked_screen_begin(&t, TEXT, UNITS_US);
    worked_screen_go_on(&t, 60);
    typed(&t, "water 2 gal", "");
    typed(&t, "salts 10 lb", "");
    typed(&t, "load 40 lb", "");
    worked_screen_do(&t, LOAD);
    worked_screen_go_on(&t, 90);
    typed(&t, "water 2 gal", "The bath does not boil: the water will float.");
    typed(&t, "add water", "The bath does not boil: the water will float.");
    typed(&t, "salts 10 lb", "The bath does not boil: the salt will sink.");
    typed(&t, "load 40 lb", "The bath does not boil yet.");
    typed(&t, "heat 50 %", "");
    typed(&t, "when boiling water 2 gal", "");
    typed(&t, "1 min after the boil is back water 2 gal", "");
    const boil_history *h = shift_history(&t.w.shift);
    while (!(h->quiet_count > 0 && h->quiet[0].end_s <= t.w.shift.now_s)) {
        worked_screen_go_on(&t, t.w.shift.now_s + 1);
        h = shift_history(&t.w.shift);
    }
    double back_s = h->quiet[0].end_s;
    typed(&t, "water 2 gal", "The boil is just back: wait for a minute of it.");
    typed(&t, "salts 10 lb", "");
    worked_screen_go_on(&t, back_s + 57);
    assert_true(t.w.shift.now_s < back_s + 60);
    typed(&t, "water 2 gal", "The boil is just back: wait for a minute of it.");
    worked_screen_go_on(&t, back_s + 60.5);
    typed(&t, "water 2 gal", "");
    worked_screen_end(&t);
}

/* Of a line that is longer than the screen its end is shown, where it is written on. */
static void a_long_line_shows_its_end(void **state)
{
    (void)state;
    worked_screen t = {.row = ""};
    char line[80] = "", want[120];
    worked_screen_begin(&t, TEXT, UNITS_US);
    for (int i = 0; i < 68; i++)
        line[i] = (char)('a' + i % 26);
    t.s.mode = SCREEN_NAMING;
    snprintf(t.s.line.text, sizeof t.s.line.text, "%s", line);
    snprintf(want, sizeof want, " file: %s_", line);
    assert_string_equal(worked_screen_row(&t, 22), want);
    assert_string_equal(worked_screen_row(&t, 23), " Enter: keep it there   Esc: drop it");
    snprintf(t.s.line.text, sizeof t.s.line.text, "%sXY", line);
    snprintf(want, sizeof want, " file: %sXY_", line + 2);
    assert_string_equal(worked_screen_row(&t, 22), want);
    snprintf(t.s.message.text, sizeof t.s.message.text, "no such act");
    assert_string_equal(worked_screen_row(&t, 23), " no such act");
    snprintf(t.s.message.text, sizeof t.s.message.text, "%s%s", line, line);
    assert_int_equal(strlen(worked_screen_row(&t, 23)), CANVAS_COLUMNS - 1);
    worked_screen_end(&t);
}

#define KEYS " w water  l load  s salts  h heat  a other act  space pause  <> speed  ? keys"

static void what_can_be_done_is_said_below(void **state)
{
    (void)state;
    worked_screen t = {.row = ""};
    worked_screen_begin(&t, TEXT, UNITS_US);
    says_below(&t, 22, " A prediction on a screen: it allows nothing at a real tank.   Space: begin");
    assert_string_equal(worked_screen_row(&t, 23), KEYS);
    t.s.running = true;
    assert_string_equal(worked_screen_row(&t, 22), "");
    t.s.running = false;
    snprintf(t.s.message.text, sizeof t.s.message.text, "said");
    assert_string_equal(worked_screen_row(&t, 22), " said");
    t.s.mode = SCREEN_LEAVING;
    says_below(&t, 22, " Leave?   q: leave   f: keep the shift in a file   d: debrief first   Esc: stay");
    t.s.mode = SCREEN_WATCHING;
    t.s.message.text[0] = '\0';
    t.s.met_rim = true;
    says_below(&t, 22, " It came over the rim.  Space: go on   b: undo the last act   d: debrief");
    t.s.running = true;
    assert_string_equal(worked_screen_row(&t, 22), "");
    t.s.running = t.s.met_rim = false;
    t.s.waits = true;
    snprintf(t.s.waiting.text, sizeof t.s.waiting.text, "water 1 gal");
    snprintf(t.s.waited.asked.text, sizeof t.s.waited.asked.text, "when boiling");
    says_below(&t, 22, " x: do not wait any longer");
    says_below(&t, 18, "-- waits when boiling: water 1 gal --");
    t.s.waits = false;
    assert_int_equal(worked_screen_find(&t, "waits"), -1);
    worked_screen_go_on(&t, 1);
    assert_string_equal(worked_screen_row(&t, 22), "");
    worked_screen_go_on(&t, 2000);
    says_below(&t, 22, " The shift is over.   d: what came of it   b: before the last act   q: leave");
    worked_screen_end(&t);
}

/* Off a terminal, which says no size, it has room; only what has changed is sent. */
static void what_is_drawn_is_sent(void **state)
{
    (void)state;
    worked_screen t = {.row = ""};
    char sent[8000], again[8000];
    worked_screen_begin(&t, TEXT, UNITS_US);
    t.s.running = true;
    printed_out(&t.s, sent, sizeof sent);
    assert_non_null(strstr(sent, "Two gallons, and a load"));
    assert_true(t.s.fits && t.s.moment == 1);
    t.s.running = false;
    printed_out(&t.s, again, sizeof again);
    assert_null(strstr(again, "Two gallons"));
    assert_non_null(strstr(again, "PAUSED"));
    assert_true(t.s.moment == 1);
    t.s.fits = false; /* it was too small before: nothing of it is known */
    printed_out(&t.s, again, sizeof again);
    assert_non_null(strstr(again, "Two gallons"));
    worked_screen_end(&t);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_title_tells_clock_speed_and_state),
        cmocka_unit_test(a_boiling_bath_is_read_off),
        cmocka_unit_test(a_quiet_bath_is_read_off),
        cmocka_unit_test(far_below_the_mark_stands_at_the_other_end),
        cmocka_unit_test(what_floats_is_told_until_it_is_over),
        cmocka_unit_test(salt_that_lies_is_told),
        cmocka_unit_test(the_newest_of_what_happened_stands_lowest),
        cmocka_unit_test(advice_is_that_of_the_gravest_of_late),
        cmocka_unit_test(what_an_act_would_do_is_said_before_it_is_done),
        cmocka_unit_test(a_long_line_shows_its_end),
        cmocka_unit_test(what_can_be_done_is_said_below),
        cmocka_unit_test(what_is_drawn_is_sent),
    };
    return cmocka_run_group_tests_name("the bath on the screen", tests, scratch_begin, scratch_end);
}
