/* A shift that is practised is the run of the scenario that is saved of it, whenever it was looked at and whatever was taken back. */
#include <gsl/gsl_errno.h>

#include "support/worked.h"

#include <math.h>

/* In frames, each looked at: what is seen must not change what comes. */
static void go_on(worked *w, double until_s, double frame_s)
{
    while (w->shift.now_s < until_s && !shift_is_over(&w->shift)) {
        boil_history h;
        assert_int_equal(shift_go_on(&w->shift, fmin(until_s, w->shift.now_s + frame_s)), BOIL_OK);
        assert_int_equal(shift_so_far(&w->shift, &h), BOIL_OK);
        assert_true(h.end_s == w->shift.now_s);
        boil_history_free(&h);
    }
}

/* The run of the journal: the rows to the last digit, and as many quiet spells, loads and additions. */
static void is_its_run(worked *w)
{
    boil_history run, so_far;
    assert_int_equal(boil_run(&w->shift.scenario->plant, &w->shift.scenario->schedule, &w->shift.options, &run), BOIL_OK);
    assert_int_equal(shift_so_far(&w->shift, &so_far), BOIL_OK);
    const boil_history *seen = shift_history(&w->shift);
    assert_int_equal(seen->rows_count,
                     run.rows_count - (run.rows[run.rows_count - 1].time_s > seen->rows[seen->rows_count - 1].time_s));
    for (size_t i = 0; i < seen->rows_count; i++) {
        assert_true(run.rows[i].time_s == seen->rows[i].time_s);
        assert_true(run.rows[i].temperature_K == seen->rows[i].temperature_K);
        assert_true(run.rows[i].layer_kg == seen->rows[i].layer_kg);
        assert_true(run.rows[i].level_m == seen->rows[i].level_m);
    }
    assert_int_equal(run.quiet_count, so_far.quiet_count);
    assert_int_equal(run.loads_count, so_far.loads_count);
    assert_int_equal(run.additions_count, so_far.additions_count);
    assert_true(run.summary.freeboard_min_m.value == so_far.summary.freeboard_min_m.value);
    assert_true(run.summary.vented_total_kg == so_far.summary.vented_total_kg);
    boil_history_free(&run);
    boil_history_free(&so_far);
}

/* What is planned is done at its times, and what is done between stands behind it. */
static void what_is_planned_comes(void **state)
{
    (void)state;
    worked w = {.read = {0}};
    worked_begin(&w, WORKED_TOP WORKED_PLANT);
    go_on(&w, 60, 60);
    assert_int_equal(worked_act(&w, "every 8 min from 0:05 load 20 lb, plate 1/4 in, for 5 min"), BOIL_OK);
    go_on(&w, 400.5, 70);
    assert_int_equal(worked_act(&w, "heat 80 %"), BOIL_OK);
    go_on(&w, (double)INFINITY, 300);
    assert_int_equal(shift_history(&w.shift)->loads_count, 4);
    is_its_run(&w);
    worked_end(&w);
}

static void is_the_run_of_what_is_saved(void **state)
{
    (void)state;
    worked w = {.read = {0}};
    worked_begin(&w, WORKED_TOP WORKED_PLANT);
    go_on(&w, 300, 3.7);
    assert_int_equal(worked_act(&w, "load 42 lb, plate 1/4 in, at 70 degF, for 15 min, basket 7 lb"), BOIL_OK);
    go_on(&w, 320, 0.9);
    assert_int_equal(worked_act(&w, "water 2 gal over 1 min, at 60 degF"), BOIL_OK);
    go_on(&w, 900.3, 21);
    assert_int_equal(worked_act(&w, "heat 40 %"), BOIL_OK);
    assert_true(w.shift.now_s == 901);
    assert_int_equal(worked_act(&w, "lift rack 1"), BOIL_BAD_INPUT);
    go_on(&w, (double)INFINITY, 47);
    assert_true(w.shift.now_s == 1800);
    is_its_run(&w);
    worked_end(&w);
}

static void what_is_taken_back_leaves_no_trace(void **state)
{
    (void)state;
    worked w = {.read = {0}};
    worked_begin(&w, WORKED_TOP WORKED_PLANT);
    go_on(&w, 300, 100);
    assert_int_equal(worked_act(&w, "load 42 lb, plate 1/4 in, at 70 degF, for 15 min"), BOIL_OK);
    go_on(&w, 320, 20);
    assert_int_equal(worked_act(&w, "water 2 gal over 1 min"), BOIL_OK);
    go_on(&w, 500, 50);
    assert_int_equal(shift_go_back(&w.shift), BOIL_OK);
    assert_true(w.shift.now_s == 320);
    go_on(&w, 600, 50);
    assert_int_equal(worked_act(&w, "water 2 gal over 4 min"), BOIL_OK);
    go_on(&w, (double)INFINITY, 500);
    is_its_run(&w);
    assert_int_equal(w.shift.journal.count, 2);
    worked_end(&w);
}

/* Who waits for a boil of a minute sees it boil for a minute, and not the one before the load went in. */
static void a_wait_counts_from_when_it_was_asked(void **state)
{
    (void)state;
    worked w = {.read = {0}};
    bool due;
    const boil_wait boils = {.state = BOIL_WAIT_BOILING, .for_s = 60}, quiet = {.state = BOIL_WAIT_QUIET, .for_s = 5};
    worked_begin(&w, WORKED_TOP WORKED_PLANT);
    go_on(&w, 300, 300);
    assert_int_equal(shift_go_on_when(&w.shift, 400, &boils, 300, &due), BOIL_OK);
    assert_true(due && w.shift.now_s == 360);
    assert_int_equal(worked_act(&w, "load 42 lb, plate 1/4 in, at 70 degF, for 15 min"), BOIL_OK);
    assert_int_equal(shift_go_on_when(&w.shift, 1e9, &boils, 360, &due), BOIL_OK);
    const boil_history *h = shift_history(&w.shift);
    assert_true(due && h->quiet_count == 1);
    assert_close(w.shift.now_s, h->quiet[0].end_s + 60, 1e-12, 1e-9);
    assert_int_equal(shift_go_on_when(&w.shift, 1e9, &quiet, w.shift.now_s, &due), BOIL_OK);
    assert_true(!due && shift_is_over(&w.shift)); /* it never is, as the heat is on */
    worked_end(&w);
}

/* Judged by a set of runs, what waited waits in each: in the likely one it is done where it was. */
static void what_waited_waits_where_it_is_judged(void **state)
{
    (void)state;
    worked w = {.read = {0}};
    bool due;
    char asked[] = "when boiling for 1 min", water[] = "water 2 gal over 4 min";
    const boil_wait boils = {.state = BOIL_WAIT_BOILING, .for_s = 60};
    const journal_act waited = {.doing = water, .asked = asked, .for_s = 60};
    scenario judged;
    boil_history h;
    messages m;
    worked_begin(&w, WORKED_TOP WORKED_PLANT);
    go_on(&w, 300, 300);
    assert_int_equal(worked_act(&w, "load 42 lb, plate 1/4 in, at 70 degF, for 15 min"), BOIL_OK);
    assert_int_equal(shift_go_on_when(&w.shift, 1e9, &boils, 300, &due), BOIL_OK);
    messages_init(&m);
    assert_int_equal(shift_act(&w.shift, &waited, &m), BOIL_OK);
    assert_int_equal(journal_read(&w.shift.journal, JOURNAL_ASKED, &judged, &m), BOIL_OK);
    messages_free(&m);
    assert_int_equal(boil_run(&judged.plant, &judged.schedule, &w.shift.options, &h), BOIL_OK);
    assert_true(h.acts[1].done_s == w.shift.now_s);
    assert_true(h.acts[1].done_s > 400);
    boil_history_free(&h);
    scenario_free(&judged);
    worked_end(&w);
}

static bool holds(const worked *w, const char *words)
{
    size_t length;
    char *text = journal_text(&w->shift.journal, JOURNAL_DONE, &length);
    assert_non_null(text);
    bool found = strstr(text, words) != NULL;
    free(text);
    return found;
}

static void the_journal_keeps_the_file(void **state)
{
    (void)state;
    worked w = {.read = {0}};
    worked_begin(&w, "# Monday\nstart = 9:00\n" WORKED_PLANT
                     "[schedule]\n0:05 water 1 gal over 4 min\n0:20 heat 50 %\n[room]\naltitude = 500 ft\n");
    assert_int_equal(w.shift.journal.left_out, 2);
    assert_int_equal(w.shift.scenario->schedule.count, 0);
    go_on(&w, 61, 61);
    assert_int_equal(worked_act(&w, "water 2 gal over 4 min # slowly"), BOIL_OK);
    assert_true(holds(&w, "# Monday\nstart = 9:00\n"));
    assert_true(holds(&w, "duration = 3000 s\n")); /* as the file's own acts had it: half an hour behind the last */
    assert_true(holds(&w, "[schedule]\n0:01:01 water 2 gal over 4 min # slowly\n\n[room]\naltitude = 500 ft\n"));
    assert_false(holds(&w, "0:20"));
    assert_int_equal(w.shift.scenario->schedule.count, 1);
    worked_end(&w);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(is_the_run_of_what_is_saved),          cmocka_unit_test(what_is_planned_comes),
        cmocka_unit_test(what_is_taken_back_leaves_no_trace),   cmocka_unit_test(a_wait_counts_from_when_it_was_asked),
        cmocka_unit_test(what_waited_waits_where_it_is_judged), cmocka_unit_test(the_journal_keeps_the_file),
    };
    return cmocka_run_group_tests_name("a shift that is practised", tests, scratch_begin, scratch_end);
}
