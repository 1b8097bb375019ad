/* When an act that waits is due: all moments worked out by hand. */
#include "support/close.h"

#include "acts/wait.h"

static const boil_by_hand hand = {.steady_s = 30, .reaction_s = 10};
static const double never = (double)INFINITY;

static double due(boil_wait w, double earliest_s, bool boiling, double since_s)
{
    return boil_wait_due(&w, earliest_s, &hand, &(boil_wait_bath){boiling, since_s});
}

static void its_own_time_asks_nothing_of_the_bath(void **state)
{
    (void)state;
    assert_close(due((boil_wait){0}, 600, true, 100), 600, 0, 0);
    assert_close(due((boil_wait){0}, 600, false, 100), 600, 0, 0);
}

static void a_boil_is_waited_for_until_it_is_steady(void **state)
{
    (void)state;
    boil_wait usual = {.state = BOIL_WAIT_BOILING}, long_one = {.state = BOIL_WAIT_BOILING, .for_s = 120};
    assert_close(due(usual, 600, true, 100), 600, 0, 0);    /* steady for long */
    assert_close(due(usual, 600, true, 590), 620, 0, 0);    /* 590 + 30 */
    assert_close(due(usual, 600, true, -never), 600, 0, 0); /* since ever */
    assert_close(due(long_one, 600, true, 590), 710, 0, 0); /* 590 + 120 */
    assert_true(isinf(due(usual, 600, false, 100)));
}

static void a_quiet_bath_is_noticed_after_the_reaction(void **state)
{
    (void)state;
    boil_wait usual = {.state = BOIL_WAIT_QUIET}, long_one = {.state = BOIL_WAIT_QUIET, .for_s = 60};
    assert_close(due(usual, 0, false, 301), 311, 0, 0);
    assert_close(due(long_one, 0, false, 301), 361, 0, 0);
    assert_true(isinf(due(usual, 0, true, 301)));
}

static void back_counts_from_the_load_or_from_the_return(void **state)
{
    (void)state;
    boil_wait back = {.state = BOIL_WAIT_BACK, .follows = true, .for_s = 300}, soon = back;
    soon.for_s = 5;
    assert_close(due(back, 310, true, -never), 610, 0, 0); /* the load did not stop the boil: 310 + 300 */
    assert_close(due(back, 310, true, 400), 700, 0, 0);    /* back at 400 */
    assert_close(due(soon, 310, true, 400), 430, 0, 0);    /* not before it is steady: 400 + 30 */
    assert_true(isinf(due(back, 310, false, 320)));
}

static void what_makes_no_sense_is_refused(void **state)
{
    (void)state;
    assert_true(boil_wait_is_sound(&(boil_wait){0}));
    assert_true(boil_wait_is_sound(&(boil_wait){.state = BOIL_WAIT_BACK, .follows = true}));
    assert_false(boil_wait_is_sound(&(boil_wait){.state = BOIL_WAIT_BACK})); /* of which load? */
    assert_false(boil_wait_is_sound(&(boil_wait){.state = (boil_wait_state)9}));
    assert_false(boil_wait_is_sound(&(boil_wait){.for_s = -1}));
    assert_false(boil_wait_is_sound(&(boil_wait){.for_s = (double)NAN}));
    assert_false(boil_wait_is_sound(&(boil_wait){.follows = true, .delay_s = never}));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(its_own_time_asks_nothing_of_the_bath),
        cmocka_unit_test(a_boil_is_waited_for_until_it_is_steady),
        cmocka_unit_test(a_quiet_bath_is_noticed_after_the_reaction),
        cmocka_unit_test(back_counts_from_the_load_or_from_the_return),
        cmocka_unit_test(what_makes_no_sense_is_refused),
    };
    return cmocka_run_group_tests_name("wait", tests, NULL, NULL);
}
