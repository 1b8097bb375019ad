/* Acts that wait for the bath, in a run: done when the run's own quiet spells say so, and nothing else changes. */
#include <gsl/gsl_errno.h>

#include "support/close.h"

#include "support/cases.h"

static boil_action waiting(boil_action a, boil_wait w)
{
    a.wait = w;
    return a;
}

static boil_action dial_action(double time_s, double dial)
{
    return (boil_action){.time_s = time_s, .kind = BOIL_ACTION_HEAT, .is.heat = {.order = BOIL_HEAT_TURN, .dial = dial}};
}

/* A load at 60 s stops the boil; the rest hangs on when it is back. */
static void acts_are_done_when_the_bath_is_as_they_ask(void **state)
{
    (void)state;
    boil_plant p = open_plant(34e3);
    boil_run_options o = boil_run_options_default();
    const boil_wait boiling = {.state = BOIL_WAIT_BOILING}, quiet = {.state = BOIL_WAIT_QUIET, .for_s = 20};
    const boil_wait back = {.state = BOIL_WAIT_BACK, .follows = true, .after = 0, .for_s = 120};
    const boil_wait then = {.follows = true, .after = 2, .delay_s = 45};
    boil_action all[] = {plate_action(60, 2), waiting(dial_action(0, 0.9), quiet),
                         waiting(two_gallons_action(90, 120), boiling), waiting(dial_action(135, 1), then),
                         waiting(two_gallons_action(181, 120), back)};
    boil_history h = run_actions(&p, 1800, &o, all, 5);
    assert_int_equal(h.acts_count, 5);
    const boil_quiet_result *q = &h.quiet[0];
    assert_true(h.quiet_count >= 1 && q->start_s > 60 && q->end_s > 90);
    /* sorted by time: quiet, load, water, then, back; the orders are those of the list above */
    assert_close(h.acts[0].done_s, q->start_s + 20, 0, 0);
    assert_close(h.acts[1].done_s, 60, 0, 0);
    assert_close(h.acts[2].done_s, q->end_s + 30, 0, 0);
    assert_close(h.acts[3].done_s, h.acts[2].done_s + 45, 0, 0);
    assert_close(h.acts[4].done_s, q->end_s + 120, 0, 0);
    assert_close(h.additions[0].time_s, h.acts[2].done_s, 0, 0);
    assert_int_equal(h.additions[0].action, 2);
    assert_int_equal(h.loads[0].action, 1);
    boil_history_free(&h);
}

/* A bath that starts at a steady boil has boiled long enough, and an act that is done by the clock at the moment at which a waiting
   one is gives the same run. */
static void a_waiting_act_does_what_the_same_does_by_the_clock(void **state)
{
    (void)state;
    boil_plant p = open_plant(34e3);
    boil_run_options o = boil_run_options_default();
    boil_action waits = waiting(two_gallons_action(0, 120), (boil_wait){.state = BOIL_WAIT_BOILING});
    boil_history first = run_actions(&p, 600, &o, &waits, 1);
    boil_action clock = two_gallons_action(0, 120);
    boil_history second = run_actions(&p, 600, &o, &clock, 1);
    assert_close(first.acts[0].done_s, 0, 0, 0);
    assert_memory_equal(&first.summary, &second.summary, sizeof first.summary);
    assert_memory_equal(&first.balance, &second.balance, sizeof first.balance);
    boil_history_free(&first);
    boil_history_free(&second);
}

static void what_never_comes_is_not_done(void **state)
{
    (void)state;
    boil_plant p = open_plant(34e3);
    boil_run_options o = boil_run_options_default();
    const boil_wait quiet = {.state = BOIL_WAIT_QUIET}, then = {.follows = true, .after = 0, .delay_s = 0};
    boil_action all[] = {waiting(two_gallons_action(0, 120), quiet), waiting(two_gallons_action(0, 120), then),
                         dial_action(900, 1)};
    boil_history h = run_actions(&p, 600, &o, all, 3);
    assert_int_equal(h.acts_count, 2); /* the time of the third did not come */
    assert_true(isnan(h.acts[0].done_s) && h.acts[0].end == BOIL_ACT_WAITING);
    assert_true(isnan(h.acts[1].done_s) && h.acts[1].end == BOIL_ACT_WAITING);
    assert_int_equal(h.additions_count, 0);
    boil_history_free(&h);
}

/* Of a line that waits through a cold morning only the last is done. */
static void one_of_a_line_lapses_when_the_next_is_due(void **state)
{
    (void)state;
    boil_plant p = open_plant(34e3);
    boil_run_options o = boil_run_options_default();
    boil_action all[4];
    p.charge.temperature_K = CELSIUS(135);
    for (int i = 0; i < 4; i++) {
        all[i] = waiting(two_gallons_action(60 * i, 60), (boil_wait){.state = BOIL_WAIT_BOILING});
        all[i].line = i < 3 ? 7 : 8;
    }
    boil_history h = run_actions(&p, 3600, &o, all, 4);
    double boils_s = h.summary.time_to_boil_s;
    assert_true(boils_s > 180);
    assert_int_equal(h.acts[0].end, BOIL_ACT_LAPSED);
    assert_int_equal(h.acts[1].end, BOIL_ACT_LAPSED);
    assert_close(h.acts[2].done_s, boils_s + 30, 0, 0);
    assert_close(h.acts[3].done_s, boils_s + 30, 0, 0);
    assert_int_equal(h.additions_count, 2);
    boil_history_free(&h);
}

/* After the schedule's own end nobody stands there any more: the run goes on without what still waits. */
static void nobody_acts_after_the_end(void **state)
{
    (void)state;
    boil_plant p = open_plant(34e3);
    boil_run_options o = boil_run_options_default();
    boil_action water = waiting(two_gallons_action(0, 60), (boil_wait){.state = BOIL_WAIT_BOILING});
    boil_schedule s;
    boil_history h;
    p.charge.temperature_K = CELSIUS(135);
    boil_schedule_init(&s, 3600);
    assert_int_equal(boil_schedule_add(&s, &water), BOIL_OK);
    s.idle_after_s = 120;
    assert_int_equal(boil_run(&p, &s, &o, &h), BOIL_OK);
    assert_true(h.summary.time_to_boil_s > 120 && h.summary.time_to_boil_s < 3000);
    assert_true(isnan(h.acts[0].done_s));
    boil_history_free(&h);
    boil_schedule_free(&s);
}

static boil_outcome run_one(boil_wait w, size_t loads)
{
    boil_plant p = open_plant(34e3);
    boil_run_options o = boil_run_options_default();
    boil_action load = plate_action(0, 1), water = waiting(two_gallons_action(10, 60), w);
    boil_schedule s;
    boil_history h;
    boil_schedule_init(&s, 20);
    for (size_t i = 0; i < loads; i++)
        assert_int_equal(boil_schedule_add(&s, &load), BOIL_OK);
    assert_int_equal(boil_schedule_add(&s, &water), BOIL_OK);
    boil_outcome outcome = boil_run(&p, &s, &o, &h);
    boil_history_free(&h);
    boil_schedule_free(&s);
    return outcome;
}

static void what_it_follows_must_stand_before_it(void **state)
{
    (void)state;
    assert_int_equal(run_one((boil_wait){.state = BOIL_WAIT_BACK, .follows = true, .after = 0}, 1), BOIL_OK);
    assert_int_equal(run_one((boil_wait){.state = BOIL_WAIT_BACK, .follows = true, .after = 1}, 1), BOIL_BAD_INPUT);
    assert_int_equal(run_one((boil_wait){.follows = true, .after = 5}, 1), BOIL_BAD_INPUT);
    assert_int_equal(run_one((boil_wait){.follows = true, .after = 0}, 0), BOIL_BAD_INPUT); /* itself */
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(acts_are_done_when_the_bath_is_as_they_ask),
        cmocka_unit_test(a_waiting_act_does_what_the_same_does_by_the_clock),
        cmocka_unit_test(what_never_comes_is_not_done),
        cmocka_unit_test(one_of_a_line_lapses_when_the_next_is_due),
        cmocka_unit_test(nobody_acts_after_the_end),
        cmocka_unit_test(what_it_follows_must_stand_before_it),
    };
    return cmocka_run_group_tests_name("waiting", tests, NULL, NULL);
}
