/* A run's memory: asked for as it begins and not again, used anew by the next, and the state in it copied and put back to the last bit.
   Linked so that the library's own allocations come here (Makefile). */
#include <gsl/gsl_errno.h>

#include "support/close.h"

#include "simulate/simulation.h"
#include "support/cases.h"
#include "support/refused.h"
#include "support/same_history.h"
#include "support/shipped.h"

/* From here on all that asks for memory is refused it, the first at once: until `allow`, which tells whether anything did. */
static void refuse(void)
{
    refusal.refused = false;
    refusal.left = 0;
}

static bool allow(void)
{
    refusal.left = refusal_never;
    return refusal.refused;
}

static boil_run_options by(boil_closures laws)
{
    boil_run_options o = boil_run_options_default();
    o.closures = laws;
    return o;
}

/* A stretch at a time, to its end; no list is longer than there was room for when the stretch began, or was then made. */
static boil_outcome go_on(boil_simulation *r)
{
    boil_outcome outcome = BOIL_OK;
    for (boil_simulation_place at; outcome == BOIL_OK && !(at = boil_simulation_at(r)).over;) {
        outcome = boil_simulation_advance(r, nextafter(at.time_s, HUGE_VAL));
        const boil_history *h = boil_simulation_so_far(r);
        const boil_simulation_room *n = &r->room;
        assert_true(h->acts_count <= n->acts && h->loads_count <= n->loads && h->additions_count <= n->additions);
        assert_true(h->takes_count <= n->takes && h->quiet_count <= n->quiet && h->valve_count <= n->valve);
        assert_true(r->bath.bodies_count <= n->bodies && r->unknowns <= boil_simulation_most_unknowns(r));
        assert_true(r->bath.feeds_count <= 2 * n->acts && r->waiting_count <= n->acts && r->moves_count <= n->moves);
        assert_true(r->taps_count <= n->additions && r->drums_count <= n->additions);
    }
    return outcome == BOIL_OK ? boil_simulation_finish(r) : outcome;
}

static void none_after_its_beginning(const char *name, const scenario *s)
{
    boil_simulation *r = NULL;
    for (boil_closures laws = BOIL_CLOSURES_LIKELY; laws < BOIL_CLOSURES_TRIGGER; laws++) {
        const boil_run_options o = by(laws);
        if (laws > BOIL_CLOSURES_LIKELY) /* the first has made it as large as they all take */
            refuse();
        assert_int_equal(boil_simulation_begin(&s->plant, &s->schedule, &o, &r), BOIL_OK);
        refuse();
        boil_outcome outcome = go_on(r);
        if (allow() || outcome != BOIL_OK)
            fail_msg("%s: memory asked for in its run by laws %d", name, (int)laws);
    }
    boil_simulation_free(r);
}

static void a_run_asks_for_memory_only_as_it_begins(void **state)
{
    (void)state;
    assert_true(each_shipped(none_after_its_beginning, 1) > 0);
    assert_true(each_lesson(none_after_its_beginning) > 0);
}

/* A load, water on the quiet bath, a vessel taken and run back, and a valve: something in every list. */
static void busy(boil_plant *p, boil_schedule *s)
{
    boil_action actions[] = {plate_action(60, 2),
                             two_gallons_action(200, 400),
                             {.time_s = 320, .kind = BOIL_ACTION_BAIL, .name = 2, .is = {.take = {0.01, 60}}},
                             {.time_s = 500, .kind = BOIL_ACTION_RETURN, .name = 2, .is = {.back = {.over_s = 60}}},
                             plate_action(700, 1)};
    actions[1].pour.while_boiling = true;
    actions[4].wait.state = BOIL_WAIT_BOILING;
    *p = open_plant(34e3);
    p->control.mode = BOIL_WATER_CONTROL_ON_OFF;
    p->control.set_point_K = CELSIUS(140.5);
    p->control.differential_K = 0.2;
    p->control.rate_kg_s = 0.04;
    *s = schedule_with(1800, actions, sizeof actions / sizeof actions[0]);
}

static void a_state_is_copied_and_put_back_without_any(void **state)
{
    (void)state;
    const double moments_s[] = {0, 60, 75, 330, 520, 1200};
    boil_plant p;
    boil_schedule s;
    boil_history whole;
    const boil_run_options o = by(BOIL_CLOSURES_LIKELY);
    boil_simulation *r = NULL, *saved = NULL;
    busy(&p, &s);
    assert_int_equal(boil_run(&p, &s, &o, &whole), BOIL_OK);
    assert_true(whole.quiet_count > 0 && whole.valve_count > 0 && whole.loads_count == 2 && whole.takes_count == 1);
    for (size_t i = 0; i < sizeof moments_s / sizeof moments_s[0]; i++) {
        if (i > 0)
            refuse();
        assert_int_equal(boil_simulation_begin(&p, &s, &o, &r), BOIL_OK);
        assert_int_equal(boil_simulation_advance(r, moments_s[i]), BOIL_OK);
        assert_int_equal(boil_simulation_copy(r, &s, &saved), BOIL_OK);
        refuse();
        for (int again = 0; again < 2; again++) {
            assert_int_equal(boil_simulation_finish(r), BOIL_OK);
            assert_same_history(boil_simulation_so_far(r), &whole);
            assert_int_equal(boil_simulation_copy(saved, &s, &r), BOIL_OK);
            assert_true(boil_simulation_at(r).time_s < whole.end_s);
        }
        assert_false(allow());
    }
    boil_simulation_free(saved);
    boil_simulation_free(r);
    boil_history_free(&whole);
    boil_schedule_free(&s);
}

/* Where there is said to be next to no room before each stretch, the lists move before each: the run is the same. */
static void a_run_that_outgrows_its_block_is_the_same(void **state)
{
    (void)state;
    boil_plant p;
    boil_schedule s;
    boil_history whole;
    const boil_run_options o = by(BOIL_CLOSURES_SUDDEN);
    boil_simulation *r = NULL;
    size_t moves = 0;
    busy(&p, &s);
    assert_int_equal(boil_run(&p, &s, &o, &whole), BOIL_OK);
    assert_int_equal(boil_simulation_begin(&p, &s, &o, &r), BOIL_OK);
    for (boil_simulation_place at; !(at = boil_simulation_at(r)).over;) {
        const char *before = r->memory.block;
        r->room.bodies = r->room.moves = r->room.quiet = r->room.valve = 1;
        assert_int_equal(boil_simulation_advance(r, nextafter(at.time_s, HUGE_VAL)), BOIL_OK);
        moves += r->memory.block != before;
    }
    assert_int_equal(boil_simulation_finish(r), BOIL_OK);
    assert_true(moves > 0);
    assert_same_history(boil_simulation_so_far(r), &whole);
    boil_simulation_free(r);
    boil_history_free(&whole);
    boil_schedule_free(&s);
}

/* Ten loads that wait for the boil of a cold bath, each out before the next may go in, go in together: what none could expect. */
static void loads_that_wait_on_one_another_find_room(void **state)
{
    (void)state;
    enum { LOADS = 10 };
    boil_action loads[LOADS];
    boil_plant p = open_plant(60e3);
    p.charge.temperature_K = CELSIUS(120);
    for (int i = 0; i < LOADS; i++) {
        loads[i] = plate_action(60 * i, 0.1);
        loads[i].is.load.immersed_s = 30;
        loads[i].wait.state = BOIL_WAIT_BOILING;
    }
    boil_schedule s = schedule_with(3600, loads, LOADS);
    const boil_run_options o = by(BOIL_CLOSURES_LIKELY);
    boil_simulation *r = NULL;
    assert_int_equal(boil_simulation_begin(&p, &s, &o, &r), BOIL_OK);
    const size_t expected = r->room.bodies;
    boil_history whole;
    assert_int_equal(go_on(r), BOIL_OK);
    assert_true(r->room.bodies > expected);
    assert_int_equal(boil_simulation_hand_over(r, &whole), BOIL_OK);
    assert_int_equal(whole.loads_count, LOADS);
    assert_true(whole.loads[0].time_s > 60 * LOADS && whole.loads[LOADS - 1].time_s == whole.loads[0].time_s);
    assert_close(whole.balance.energy.closure, 0, 0, 1e-9);

    assert_int_equal(boil_simulation_begin(&p, &s, &o, &r), BOIL_OK);
    refuse();
    boil_outcome outcome = boil_simulation_finish(r);
    assert_true(allow());
    assert_int_equal(outcome, BOIL_NO_MEMORY);
    assert_int_equal(r->room.bodies, expected);
    assert_int_equal(go_on(r), BOIL_OK); /* nothing had been done of the stretch that it was refused for */
    assert_same_history(boil_simulation_so_far(r), &whole);
    boil_simulation_free(r);
    boil_history_free(&whole);
    boil_schedule_free(&s);
}

/* Copied into one that was made for less, by a schedule that asks for more. */
static void a_copy_grows_to_what_it_takes(void **state)
{
    (void)state;
    boil_plant p;
    boil_schedule s, none;
    boil_history whole;
    const boil_run_options o = by(BOIL_CLOSURES_GRAVE);
    boil_simulation *little = NULL, *copy = NULL;
    busy(&p, &s);
    boil_schedule_init(&none, s.duration_s);
    assert_int_equal(boil_run(&p, &s, &o, &whole), BOIL_OK);
    assert_int_equal(boil_simulation_begin(&p, &none, &o, &little), BOIL_OK);
    assert_int_equal(boil_simulation_advance(little, 10), BOIL_OK);
    assert_true(boil_simulation_at(little).time_s >= 10);
    assert_int_equal(boil_simulation_begin(&p, &none, &o, &little), BOIL_OK);
    assert_int_equal(boil_simulation_begin(&p, &none, &o, &copy), BOIL_OK);
    assert_int_equal(boil_simulation_copy(little, &s, &copy), BOIL_OK);
    assert_int_equal(boil_simulation_finish(copy), BOIL_OK);
    assert_same_history(boil_simulation_so_far(copy), &whole);
    refuse();
    boil_outcome outcome = boil_simulation_copy(copy, &s, &little);
    assert_true(allow());
    assert_int_equal(outcome, BOIL_NO_MEMORY);
    assert_int_equal(boil_simulation_copy(copy, &s, &little), BOIL_OK);
    assert_same_history(boil_simulation_so_far(little), &whole);
    boil_simulation_free(little);
    boil_simulation_free(copy);
    boil_history_free(&whole);
    boil_schedule_free(&s);
    boil_schedule_free(&none);
}

/* Before and after each: nothing stays behind. */
static int note_held(void **state)
{
    static long held;
    held = refusal.held;
    *state = &held;
    return 0;
}

static int check_held(void **state)
{
    const long *held = *state;
    return refusal.held == *held ? 0 : -1;
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup_teardown(a_run_asks_for_memory_only_as_it_begins, note_held, check_held),
        cmocka_unit_test_setup_teardown(a_state_is_copied_and_put_back_without_any, note_held, check_held),
        cmocka_unit_test_setup_teardown(a_run_that_outgrows_its_block_is_the_same, note_held, check_held),
        cmocka_unit_test_setup_teardown(loads_that_wait_on_one_another_find_room, note_held, check_held),
        cmocka_unit_test_setup_teardown(a_copy_grows_to_what_it_takes, note_held, check_held),
    };
    return cmocka_run_group_tests_name("workspace", tests, NULL, NULL);
}
