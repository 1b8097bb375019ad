/* unit/src/lesson/test_debrief.c -- looked back upon, the reckless script of each shipped lesson has bad acts, which done with care hold;
   the careful one has none. What care does is common practice, no source: that it is enough the model says. */
#include <gsl/gsl_errno.h>

#include <stdlib.h>
#include <string.h>

#include "lesson/debrief.h"
#include "support/printed.h"
#include "support/shipped.h"

typedef struct {
    scenario s;
    boil_run_set set;
    boil_findings found, possible;
    debrief d;
} shift;

static void look_back(const char *name, lesson_script script, shift *x)
{
    boil_run_options o = boil_run_options_default();
    boil_remedies needed;
    read_shipped(name, &x->s);
    const boil_plant *p = &x->s.plant;
    const boil_schedule *acts = &x->s.scripts[script].schedule;
    assert_int_equal(boil_run_set_of(p, acts, &o, &x->set), BOIL_OK);
    assert_int_equal(boil_remedies_of(p, acts, &o, &x->set.likely, &needed), BOIL_OK);
    assert_int_equal(boil_findings_of(p, acts, &needed, &x->set.likely, x->set.other, x->set.count, &x->found, &x->possible),
                     BOIL_OK);
    assert_int_equal(debrief_of(&x->s.lesson, p, acts, &x->set.likely, &x->found, &x->possible, &x->d), BOIL_OK);
}

static void forget(shift *x)
{
    debrief_free(&x->d);
    boil_findings_free(&x->found);
    boil_findings_free(&x->possible);
    boil_run_set_free(&x->set);
    scenario_free(&x->s);
}

static const char pour[] = "lessons/01-water-while-it-boils.bath", creep[] = "lessons/06-creeping-level.bath";

/* What care makes of the acts that are changed, in their order; behind the last DEBRIEF_SAME. */
static const struct {
    const char *lesson;
    debrief_change changes[6];
    const char *because; /* of the first */
} reckless[] = {
    {pour, {DEBRIEF_WHEN_BOILING}, "water-on-quiet-bath"},
    {"lessons/02-slow-or-dumped.bath", {DEBRIEF_SLOWER}, "steam-surge"},
    {"lessons/03-heavy-load.bath", {DEBRIEF_SPLIT}, "load-heavy"},
    {"lessons/04-drum-of-salt.bath", {DEBRIEF_SIFTED}, "salt-on-quiet-bath"},
    {"lessons/05-tall-tank.bath", {DEBRIEF_LESS_HEAT}, "overflow"},
    {creep,
     {DEBRIEF_LESS_WATER, DEBRIEF_LESS_WATER, DEBRIEF_LESS_WATER, DEBRIEF_LESS_WATER, DEBRIEF_LESS_WATER},
     "bath-too-cool"},
    {"lessons/07-crusted-restart.bath", {DEBRIEF_GENTLE}, "restart-over-crystals"},
    {"lessons/08-weak-bath.bath", {DEBRIEF_WHEN_BOILING}, "water-on-quiet-bath"},
    {"lessons/09-tubes-full-of-rinse-water.bath", {DEBRIEF_DRAINED}, "pockets"},
    {"lessons/10-monday-morning.bath", {DEBRIEF_WHEN_BOILING}, "water-on-quiet-bath"},
};
#define LESSONS (sizeof reckless / sizeof reckless[0])

static void assert_changes(const debrief *d, const debrief_change *changes, const char *because)
{
    size_t found = 0;
    for (size_t i = 0; i < d->acts_count; i++) {
        debrief_change change = debrief_change_of(&d->acts[i]);
        if (change == DEBRIEF_SAME)
            continue;
        assert_int_equal(change, changes[found]);
        if (found++ == 0)
            assert_string_equal(d->acts[i].because, because);
    }
    assert_int_equal(changes[found], DEBRIEF_SAME);
    assert_int_equal(d->bad, found);
}

/* Done with care each of them passes, and the water, salt and steel of the shift are what they were. */
static void what_is_reckless_done_with_care_holds(void **state)
{
    (void)state;
    for (size_t i = 0; i < LESSONS; i++) {
        shift x;
        look_back(reckless[i].lesson, LESSON_RECKLESS, &x);
        print_message("%s: %zu bad, least room %.3f m for %.3f m\n", x.s.title, x.d.bad,
                      x.d.history.summary.freeboard_min_m.value, x.set.likely.summary.freeboard_min_m.value);
        assert_changes(&x.d, reckless[i].changes, reckless[i].because);
        assert_false(x.d.yours.passed);
        const boil_summary *done = &x.set.likely.summary, *care = &x.d.history.summary;
        assert_close(care->steel_kg, done->steel_kg, 1e-9, 1e-9);
        assert_close(care->salts_added_kg, done->salts_added_kg, 1e-9, 1e-9);
        if (strcmp(reckless[i].because, "bath-too-cool") != 0)
            assert_close(care->water_added_kg, done->water_added_kg, 1e-9, 1e-9);
        assert_true(x.d.cared.passed && x.d.holds);
        assert_true(care->freeboard_min_m.value >= done->freeboard_min_m.value - 1e-3);
        forget(&x);
    }
}

static void a_careful_shift_is_left_alone(void **state)
{
    (void)state;
    for (size_t i = 0; i < LESSONS; i++) {
        shift x;
        look_back(reckless[i].lesson, LESSON_CAREFUL, &x);
        assert_int_equal(x.d.bad, 0);
        assert_int_equal(x.d.care.count, 0);
        assert_true(x.d.holds && x.d.yours.passed && x.d.cared.passed);
        forget(&x);
    }
}

/* One act was bad: alone it mends all. Of several, each mends a part. */
static void one_act_alone(void **state)
{
    (void)state;
    shift x;
    boil_history h;
    look_back(pour, LESSON_RECKLESS, &x);
    assert_int_equal(debrief_alone(&x.s.plant, &x.s.scripts[LESSON_RECKLESS].schedule, &x.d, 1, &h), BOIL_OK);
    assert_close(h.summary.freeboard_min_m.value, x.d.history.summary.freeboard_min_m.value, 1e-9, 0);
    boil_history_free(&h);
    assert_null(x.d.alone_m);
    forget(&x);
    look_back(creep, LESSON_RECKLESS, &x);
    assert_int_equal(debrief_alone(&x.s.plant, &x.s.scripts[LESSON_RECKLESS].schedule, &x.d, 1, &h), BOIL_OK);
    assert_true(h.summary.freeboard_min_m.value > x.set.likely.summary.freeboard_min_m.value);
    assert_true(h.summary.freeboard_min_m.value < x.d.history.summary.freeboard_min_m.value);
    assert_non_null(x.d.alone_m);
    assert_close(x.d.alone_m[1], h.summary.freeboard_min_m.value, 1e-9, 0);
    assert_true(isnan(x.d.alone_m[0]));
    boil_history_free(&h);
    forget(&x);
}

/* It names the range of moments at which the runs of the set let go: in the likely one as the boil comes back. */
static void it_lets_go_within_a_range(void **state)
{
    (void)state;
    shift x;
    look_back(pour, LESSON_RECKLESS, &x);
    debrief_range r = debrief_lets_go(&x.s.plant, &x.set);
    double likely_s = x.set.likely.quiet[0].end_s;
    assert_true(r.earliest_s <= likely_s && likely_s <= r.latest_s && r.latest_s - r.earliest_s < 300);
    forget(&x);
    look_back(pour, LESSON_CAREFUL, &x);
    assert_true(isnan(debrief_lets_go(&x.s.plant, &x.set).latest_s));
    forget(&x);
}

static void print(const shift *x, lesson_script script, FILE *to)
{
    const scenario *s = &x->s;
    scenario with = scenario_with(s, &s->scripts[script]);
    action_name names[16];
    const char *list[16];
    for (size_t i = 0; i < with.schedule.count; i++) {
        names[i] = action_name_of(&with, i);
        list[i] = names[i].text;
    }
    const debrief_shift of = {.lesson = &s->lesson,
                              .plant = &s->plant,
                              .schedule = &with.schedule,
                              .history = &x->set.likely,
                              .names = list,
                              .start_s = s->start_s,
                              .system = UNITS_US,
                              .lets_go = debrief_lets_go(&s->plant, &x->set)};
    debrief_print(&x->d, &of, to);
}

/* The parts that a person has to find in it, in this order; no line over 79 columns. */
static void it_reads_well(void **state)
{
    (void)state;
    static const char *const parts[] = {"Not passed: 2 of 4 terms hold\n",
                                        " x afloat on a quiet bath",
                                        "at most 0.4 lb\n",
                                        " . water given",
                                        "What was done, and what the bath did\n",
                                        " 9:05:20   2 gal of water over 1 min\n",
                                        "went onto the quiet bath;",
                                        "found: water poured while the bath is quiet\n",
                                        "with care: when boiling for 1 min, over 4 min, at 9:0",
                                        "The same shift",
                                        " least room to the rim              over the rim",
                                        " Nothing happens while you pour.",
                                        " In the runs of the set it lets go between 9:0",
                                        " A prediction is never a permission.\n"};
    printed p;
    shift x;
    printed_begin(&p);
    look_back(pour, LESSON_RECKLESS, &x);
    print(&x, LESSON_RECKLESS, p.to);
    char *text = printed_end(&p);
    const char *at = text;
    for (size_t i = 0; i < sizeof parts / sizeof parts[0]; i++) {
        at = strstr(at, parts[i]);
        if (at == NULL)
            fail_msg("'%s' is not in, or not in its place in:\n%s", parts[i], text);
    }
    for (char *line = strtok(text, "\n"); line != NULL; line = strtok(NULL, "\n"))
        assert_true(strlen(line) <= 79);
    free(text);
    forget(&x);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_is_reckless_done_with_care_holds),
        cmocka_unit_test(a_careful_shift_is_left_alone),
        cmocka_unit_test(one_act_alone),
        cmocka_unit_test(it_lets_go_within_a_range),
        cmocka_unit_test(it_reads_well),
    };
    return cmocka_run_group_tests_name("debrief", tests, NULL, NULL);
}
