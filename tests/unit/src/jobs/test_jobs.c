/* What a line of [jobs], a row of a list from a spreadsheet and a section [now] come to, in SI: each number by hand from the words; and
   what may just be said, and what just not. */
#include "support/close.h"

#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "reading/source.h"
#include "scenario/scenario.h"

#define POUND_KG 0.45359237

static const char head[] =
    "start = 6:00\ntimes = by the clock\n[tank]\nshape = box\nlength = 72 in\nwidth = 36 in\ndepth = 30 in\n"
    "level = 20 in\npositions = 2\n[bath]\nsalts = 80 % NaOH, 20 % NaNO3\nboiling point = 285 degF\n"
    "[heat]\nsource = gas\ninput = 330 kBtu/h\n[room]\ntemperature = 75 degF\n[plan]\nend = 8:00\n";
enum { HEAD_LINES = 19 };

/* A scenario of that head and what follows it, and a list of jobs beside it. */
typedef struct {
    char path[40], list[40];
    scenario s;
    messages m;
    bool good;
} shift;

static void make_file(char *path, const char *first, const char *then)
{
    strcpy(path, "/tmp/boilback-test-XXXXXX");
    int file = mkstemp(path);
    FILE *f = file < 0 ? NULL : fdopen(file, "w");
    assert_non_null(f);
    fprintf(f, "%s%s", first, then);
    fclose(f);
}

static void begin(shift *r, const char *behind, const char *list)
{
    char all[4000];
    make_file(r->list, list, "");
    snprintf(all, sizeof all, "%s%s%s\n%s", head, list[0] != '\0' ? "jobs = " : "", list[0] != '\0' ? r->list : "", behind);
    make_file(r->path, all, "");
    messages_init(&r->m);
    r->good = scenario_read(r->path, &r->s, &r->m) == BOIL_OK && !messages_any(&r->m);
}

static void end(shift *r)
{
    scenario_free(&r->s);
    messages_free(&r->m);
    unlink(r->path);
    unlink(r->list);
}

static const scenario *good(shift *r, const char *behind, const char *list)
{
    begin(r, behind, list);
    if (!r->good)
        messages_print(&r->m, stderr, "read");
    assert_true(r->good);
    return &r->s;
}

/* That is all that is wrong. */
static void refused(const char *behind, const char *list, const char *why)
{
    shift r;
    begin(&r, behind, list);
    assert_false(r.good);
    if (r.m.count - r.m.remarks != 1 || strstr(r.m.list[0].text, why) == NULL) {
        messages_print(&r.m, stderr, "read");
        fail_msg("not alone: %s", why);
    }
    end(&r);
}

/* Behind [jobs]. */
static void line_refused(const char *line, const char *why)
{
    char text[400];
    snprintf(text, sizeof text, "[jobs]\n%s\n", line);
    refused(text, "", why);
}

static void line_taken(const char *line)
{
    char text[400];
    shift r;
    snprintf(text, sizeof text, "[jobs]\n%s\n", line);
    good(&r, text, "");
    end(&r);
}

static void a_line_says_a_job(void **state)
{
    (void)state;
    shift r;
    const scenario *s = good(&r,
                             "[jobs]\n"
                             "long frames 190 lb, plate 1/4 in, 38 pieces, for 15 min to 25 min, basket 12 lb, may split\n"
                             "clips 30 kg, bar 8 mm, for 12 min, from 6:50, due 7:14, must, at 50 degF, may share\n"
                             "pins 2 lb iron, ball 1 in, for 1 min, low\n",
                             "");
    assert_int_equal(s->jobs.count, 3);
    const boil_plan_job *j = &s->jobs.list[0].job;
    assert_string_equal(s->jobs.list[0].name, "long frames");
    assert_string_equal(s->jobs.list[0].steel, ", plate 1/4 in, basket 12 lb");
    assert_close(j->load.mass_kg, 190 * POUND_KG, 1e-12, 0);
    assert_close(j->load.basket_kg, 12 * POUND_KG, 1e-12, 0);
    assert_close(j->load.size_m, 0.00635, 1e-12, 0);
    assert_true(j->load.pieces == 38 && j->least_s == 900 && j->most_s == 1500 && j->earliest_s == 0 && isinf(j->due_s));
    assert_true(j->may_split && !j->may_share && j->priority == BOIL_PLAN_NORMAL);
    assert_int_equal(s->jobs.list[0].line, HEAD_LINES + 3);
    j = &s->jobs.list[1].job;
    assert_true(j->least_s == 720 && j->most_s == 720 + 900 && j->earliest_s == 3000 && j->due_s == 4440);
    assert_true(j->priority == BOIL_PLAN_MUST && !j->may_split && j->may_share && j->load.shape == BOIL_SHAPE_BAR);
    assert_close(j->load.temperature_K, 283.15, 1e-9, 0);
    j = &s->jobs.list[2].job;
    assert_true(j->priority == BOIL_PLAN_LOW && j->load.shape == BOIL_SHAPE_BALL && j->least_s == 60);
    assert_string_equal(s->jobs.list[2].steel, " iron, ball 1 in");
    end(&r);
}

/* The same jobs as rows, in other columns, with units in the header or in the cells. */
static void a_row_says_a_job(void **state)
{
    (void)state;
    static const char list[] =
        "# of Monday\n"
        "mass [lb],name,shape,size,pieces,material,minutes [min],at most,earliest [clock],due,priority,basket,split,"
        "share,temperature,packed [in],wall [mm]\n"
        "190,long frames,plate,1/4 in,38,,15,25 min,,,,12 lb,yes\n"
        "\n"
        "30.5,clips,bar,8 mm,,steel,12,,6:50,7:14,must,,no,yes,50 degF,2\n"
        "2,pins,tube,1 in,,iron,1,,,,low,,,,,,3\n";
    shift r;
    const scenario *s = good(&r, "", list);
    assert_int_equal(s->jobs.count, 3);
    const boil_plan_job *j = &s->jobs.list[0].job;
    assert_string_equal(s->jobs.list[0].name, "long frames");
    assert_string_equal(s->jobs.list[0].steel, ", plate 1/4 in, basket 12 lb");
    assert_close(j->load.mass_kg, 190 * POUND_KG, 1e-12, 0);
    assert_close(j->load.basket_kg, 12 * POUND_KG, 1e-12, 0);
    assert_true(j->load.pieces == 38 && j->least_s == 900 && j->most_s == 1500 && j->earliest_s == 0 && isinf(j->due_s));
    assert_true(j->may_split && !j->may_share && j->priority == BOIL_PLAN_NORMAL && s->jobs.list[0].line == 3);
    j = &s->jobs.list[1].job;
    assert_close(j->load.mass_kg, 30.5 * POUND_KG, 1e-12, 0);
    assert_true(j->least_s == 720 && j->most_s == 720 + 900 && j->earliest_s == 3000 && j->due_s == 4440);
    assert_true(j->priority == BOIL_PLAN_MUST && !j->may_split && j->may_share && j->load.shape == BOIL_SHAPE_BAR);
    assert_close(j->load.temperature_K, 283.15, 1e-9, 0);
    assert_close(j->load.packed_depth_m, 0.0508, 1e-9, 0);
    j = &s->jobs.list[2].job;
    assert_true(j->priority == BOIL_PLAN_LOW && j->load.shape == BOIL_SHAPE_TUBE && j->load.tube_wall_m == 0.003);
    assert_string_equal(s->jobs.list[2].steel, " iron, tube 1 in wall 3 mm");
    end(&r);
}

/* The shift is two hours long: what just fits, and what just does not. */
static void what_a_job_says_fits_together(void **state)
{
    (void)state;
    line_taken("pins 20 lb, bar 1/2 in, for 120 min");
    line_refused("pins 20 lb, bar 1/2 in, for 121 min",
                 "'pins' needs 2 h, which is 60 s more than the shift has from its earliest");
    line_taken("pins 20 lb, bar 1/2 in, for 20 min, from 7:40");
    line_refused("pins 20 lb, bar 1/2 in, for 20 min, from 7:41",
                 "'pins' needs 20 min, which is 60 s more than the shift has from its earliest");
    line_refused("pins 20 lb, bar 1/2 in, for 20 min, from 8:10",
                 "'pins' needs 20 min, which is 30 min more than the shift has from its earliest");
    line_taken("pins 20 lb, bar 1/2 in, for 20 min, from 6:10, due 6:30");
    line_refused("pins 20 lb, bar 1/2 in, for 20 min, from 6:11, due 6:30",
                 "'pins' is due at 6:30: from 6:11 on 20 min do not fit");
    line_taken("pins 20 lb, bar 1/2 in, for 20 min to 20 min");
    line_refused("pins 20 lb, bar 1/2 in, for 20 min to 19 min", "'pins' may stay no longer than 19 min, but needs 20 min");
    line_refused("pins 20 lb, bar 1/2 in, for 20 min, must", "'pins' must be out, but when? say when it is due");
    line_taken("pins 20 lb, bar 1/2 in, for 20 min, low");
    line_taken("pins 20 lb, bar 1/2 in, for 20 min, may split");
    line_taken("pins 20 lb, bar 1/2 in, 2 pieces, for 20 min, may split");
    line_refused("pins 20 lb, bar 1/2 in, 1 pieces, for 20 min, may split", "'pins' is 1 piece, which cannot be split");
    line_taken("pins 20 lb, bar 1/2 in, 1 pieces, for 20 min");
    line_refused("pins 20 lb, bar 1/2 in, area 2 ft2, for 20 min, may split", "'pins' may split, so leave out 'area'");
    line_taken("pins 20 lb, bar 1/2 in, area 20 ft2, for 20 min");
}

/* At the ends of what a stay may be, where no end of the shift is in the way. */
static void a_stay_is_a_minute_to_two_days(void **state)
{
    (void)state;
    line_taken("pins 20 lb, bar 1/2 in, for 1 min to 2880 min");
    line_refused("pins 20 lb, bar 1/2 in, for 59 s", "'for' must be between 1 min and 2880 min, got '59 s'");
    line_refused("pins 20 lb, bar 1/2 in, for 1 min to 2881 min", "'to' must be between 1 min and 2880 min, got '2881 min'");
}

static void what_is_no_job_is_refused(void **state)
{
    (void)state;
    line_refused("20 lb, bar 1/2 in, for 20 min", "a job begins with its name and its mass");
    line_refused("pins, bar 1/2 in, for 20 min", "a job begins with its name and its mass");
    line_refused("pins 20 lb, bar 1/2 in", "'pins' needs how long it hangs once it is hot");
    line_refused("pins 20 lb, bar 1/2 in, for 20 min, for 20 min", "'for' is said twice");
    line_refused("pins 20 lb, bar 1/2 in, for 20 min, position 1", "the plan finds the position: leave it out");
    line_refused("pins 20 lb, bar 1/2 in, for 20 min\nPINS 20 lb, bar 1/2 in, for 20 min",
                 "name 'PINS' a second time (line 22)");
    refused("", "name,mass [lb],shape,size [in],minutes\npins,20,bar,1/2,20\n", "'minutes' has no unit");
    refused("", "name,mass [lb],shape,size [in],minutes [lb]\n", "'lb' is no unit of 'minutes'");
    refused("", "name,mass [lb],shape [in],size [in],minutes [min]\n", "'shape' has no unit");
    refused("", "name,mass [lb],shape,size [in],minutes [min],due [min]\n", "'due' is a clock");
    refused("", "name,mass [lb],shape,size [in]\n", "a column 'minutes' is missing");
    refused("", "name,mass [lb],shape,size [in],minutes [min],name\n", "column 'name' a second time");
    refused("", "name,mass [lb,shape,size [in],minutes [min]\n", "a unit ends with ']'");
    refused("", "name,mass [lb],shape,size [in],minutes [min]\npins,,bar,1/2,20\n", "empty cell 'mass'");
    refused("", "name,mass [lb],shape,size [in],minutes [min]\npins,20,bar,1/2,20,1\n",
            "this row has more cells than the header");
    refused("", "name,mass [lb],shape,size [in],minutes [min]\npins,20 kg,bar,1/2,20\n", "'20 kg' in a column of lb");
    refused("", "name,mass [lb],shape,size [in],minutes [min],split\npins,20,bar,1/2,20,perhaps\n",
            "'split' is 'no' or 'yes', not 'perhaps'");
    refused("", "name,mass [lb],shape,size [in],minutes [min],at most [min]\npins,20,bar,1/2,20,0.5\n",
            "'at most' must be between 1 min and 2880 min, got '0.5 min'");
    refused("", "name,mass [lb],shape,size [in],minutes [min],due\npins,20,bar,1/2,20,5:00\n",
            "5:00 is before the start, 6:00");
    refused("", "# nothing\n", "no jobs: a list starts with a header");
}

static const char jobs[] =
    "[jobs]\npins 60 lb, bar 3/4 in, for 20 min\nframes 90 lb, plate 1/4 in, 3 pieces, for 15 min, may split\n"
    "covers 45 lb, plate 1/8 in, for 15 min\nshims 20 lb, plate 1/8 in, for 15 min\n";
enum { NOW_LINE = HEAD_LINES + 7 };

static void now_refused(const char *lines, const char *why)
{
    char text[1000];
    snprintf(text, sizeof text, "%s[now]\nclock = 6:45\nreads = 286 degF\nboils = yes\nlevel = 19.5 in\n%s\n", jobs, lines);
    refused(text, "", why);
}

static void now_says_where_the_shift_stands(void **state)
{
    (void)state;
    char text[1000];
    shift r;
    snprintf(
        text, sizeof text,
        "%s[now]\nin the tank = Pins + frames 2/3 since 6:20, out by 6:46\nin the tank = covers since 6:45\nreads = 130 degC\n"
        "boils = no\nlast boiled = 286 degF\nlevel = 19.5 in\nout = frames 1/3\nwithdrawn = frames 3/3\nurgent = shims by "
        "6:46\n"
        "clock = 6:45\n",
        jobs);
    const now_section *n = &good(&r, text, "")->now;
    assert_true(n->line == NOW_LINE && n->clock_s == 2700 && !n->boils && n->dips == 2 && n->count == 6);
    assert_close(n->reads_K, 403.15, 1e-12, 0);
    assert_close(n->boiled_K, (286 + 459.67) / 1.8, 1e-12, 0);
    assert_close(n->level_m, 0.4953, 1e-12, 0);
    static const now_job of[] = {{NOW_HANGS, 0, 0, 1, 0, 1200, 2760, 0}, {NOW_HANGS, 1, 1, 3, 0, 1200, 2760, 0},
                                 {NOW_HANGS, 2, 0, 1, 1, 2700, 0, 0},    {NOW_OUT, 1, 0, 3, 0, 0, 0, 0},
                                 {NOW_WITHDRAWN, 1, 2, 3, 0, 0, 0, 0},   {NOW_URGENT, 3, 0, 1, 0, 0, 0, 2760}};
    for (size_t i = 0; i < 6; i++) {
        const now_job *j = &n->list[i];
        assert_true(j->kind == of[i].kind && j->job == of[i].job && j->number == of[i].number && j->of == of[i].of);
        assert_true(j->dip == of[i].dip && j->since_s == of[i].since_s && j->due_s == of[i].due_s);
        assert_true(i < 2 ? j->out_s == of[i].out_s : isnan(j->out_s));
    }
    end(&r);
}

static void what_now_cannot_say_is_refused(void **state)
{
    (void)state;
    now_refused("in the tank = pins since 6:46", "'since' says 6:46, and the clock shows 6:45");
    now_refused("in the tank = pins since 6:20, out by 6:45", "'out by' must lie behind now: it says 6:45");
    now_refused("urgent = pins by 6:45", "'by' must lie behind now: it says 6:45");
    now_refused("in the tank = pins", "say since when it hangs");
    now_refused("in the tank = pins since 6:20\nin the tank = covers since 6:20\nin the tank = shims since 6:20",
                "more hangs here than the tank has positions, 2");
    now_refused("out = frames 1/4", "'frames' cannot hang in 4 baskets");
    now_refused("out = pins 1/2", "'pins' cannot hang in 2 baskets");
    now_refused("out = frames 3/2", "write which basket of how many");
    now_refused("out = frames 1/3, frames 1/2", "'frames' hangs in 2 baskets here and in 3 above");
    now_refused("out = frames 1/3, frames 1/3", "'frames 1/3' stands in [now] a second time");
    now_refused("out = pins\nwithdrawn = pins", "'pins' stands in [now] a second time");
    now_refused("urgent = pins by 7:00, pins by 7:10", "'pins' stands in [now] a second time");
    now_refused("urgent = frames 1/3 by 7:00", "what is left of 'frames' is urgent as a whole");
    now_refused("urgent = pins", "say by when it must be out");
    now_refused("out = pims", "'pims' is no job of the list; did you mean 'pins'?");
    now_refused("last boiled = 286 degF", "'last boiled' is for a bath that does not boil");
    now_refused("level = 19 in", "'level' is said a second time");
    now_refused("weather = fine", "unknown key 'weather' in [now]");
    now_refused("out = ", "'out' says nothing");
    now_refused("out", "expected 'key = value', got 'out'");
}

static void now_lies_within_the_shift(void **state)
{
    (void)state;
    char text[1000];
    shift r;
    static const char form[] = "%s[now]\nclock = %s\nreads = 286 degF\nboils = yes\nlevel = %s\n%s\n";
    snprintf(text, sizeof text, form, jobs, "8:00", "19 in", "");
    refused(text, "", "the shift is over by then: it ends at 8:00");
    snprintf(text, sizeof text, form, jobs, "7:59", "30 in", "");
    refused(text, "", "the level must lie below the rim");
    snprintf(text, sizeof text, form, jobs, "7:59", "29.9 in", "out = frames 3/3\nurgent = pins by 8:30");
    good(&r, text, "");
    end(&r);
    snprintf(text, sizeof text, "%s[now]\nclock = 7:00\nboils = yes\nlevel = 19 in\n", jobs);
    refused(text, "", "[now] needs 'reads = TEMPERATURE'");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_line_says_a_job),
        cmocka_unit_test(a_row_says_a_job),
        cmocka_unit_test(what_a_job_says_fits_together),
        cmocka_unit_test(a_stay_is_a_minute_to_two_days),
        cmocka_unit_test(what_is_no_job_is_refused),
        cmocka_unit_test(now_says_where_the_shift_stands),
        cmocka_unit_test(what_now_cannot_say_is_refused),
        cmocka_unit_test(now_lies_within_the_shift),
    };
    return cmocka_run_group_tests_name("jobs", tests, NULL, NULL);
}
