/* Where an answer turns, of answers that turn at a place that is known. */
#include "sizing/turning.h"
#include "support/close.h"

enum { ASKED_MOST = 64, NEVER = ASKED_MOST };

/* Yes from turns_at up, or down to it; what was asked, and the question that fails. */
typedef struct {
    double turns_at;
    bool rising;
    int fails, count;
    double asked[ASKED_MOST];
} teller;

static boil_outcome tell(void *context, double x, bool *yes)
{
    teller *t = context;
    assert_in_range(t->count, 0, ASKED_MOST - 1);
    t->asked[t->count++] = x;
    *yes = t->rising ? x >= t->turns_at : x <= t->turns_at;
    return t->count > t->fails ? BOIL_OUT_OF_RANGE : BOIL_OK;
}

static bool says_yes(const teller *t, double x)
{
    return t->rising ? x >= t->turns_at : x <= t->turns_at;
}

static boil_turning from(teller *t, double near)
{
    return (boil_turning){tell, t, near, 1e-3, 1e3, t->rising, 0.01};
}

/* The no that was asked nearest to the turn. */
static double nearest_no(const teller *t)
{
    double no = t->rising ? 0 : HUGE_VAL;
    for (int i = 0; i < t->count; i++)
        if (!says_yes(t, t->asked[i]))
            no = t->rising ? fmax(no, t->asked[i]) : fmin(no, t->asked[i]);
    return no;
}

static void test_the_turn_is_bracketed_from_either_side(void **state)
{
    (void)state;
    static const double begun[] = {2e-3, 0.6, 0.999, 1.001, 1.7, 900};
    for (int rising = 0; rising < 2; rising++)
        for (size_t i = 0; i < sizeof begun / sizeof begun[0]; i++) {
            teller t = {.turns_at = 1, .rising = rising, .fails = NEVER};
            boil_turning search = from(&t, begun[i]);
            double yes;
            assert_int_equal(boil_turning_find(&search, &yes), BOIL_OK);
            assert_true(says_yes(&t, yes) && fabs(yes / nearest_no(&t) - 1) <= 0.01);
            bool asked = false;
            for (int k = 0; k < t.count; k++) {
                assert_true(t.asked[k] >= 1e-3 && t.asked[k] <= 1e3);
                asked = asked || t.asked[k] == yes;
            }
            assert_true(asked && t.asked[0] == begun[i]);
        }
}

/* Beside the turn a step sees it, and one halving is enough; further off each step is twice the last, of logarithms. */
static void test_what_is_near_is_found_soon(void **state)
{
    (void)state;
    double yes;
    teller beside = {.turns_at = 1, .rising = true, .fails = NEVER}, above = beside;
    boil_turning search = from(&beside, 1 - 1e-6);
    assert_int_equal(boil_turning_find(&search, &yes), BOIL_OK);
    assert_int_equal(beside.count, 3);
    search = from(&above, 1.5);
    assert_int_equal(boil_turning_find(&search, &yes), BOIL_OK);
    const double first = log(above.asked[0] / above.asked[1]);
    for (int k = 1, times = 2; above.asked[k] >= 1; k++, times *= 2)
        assert_close(log(above.asked[k] / above.asked[k + 1]), times * first, 1e-9, 0);
}

/* A bracket of just the precision is narrow enough; it is taken of the end that says no. */
static void test_a_bracket_of_the_precision_is_not_halved(void **state)
{
    (void)state;
    static const struct {
        bool rising;
        double near, turns_at, yes, precision;
    } cases[] = {{true, 1, 1.5, 2, 1}, {true, 2, 1.5, 2, 1}, {false, 2, 1.5, 1, 0.5}, {false, 1, 1.5, 1, 0.5}};
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        teller t = {.turns_at = cases[i].turns_at, .rising = cases[i].rising, .fails = NEVER};
        boil_turning search = {tell, &t, cases[i].near, 1, 2, t.rising, cases[i].precision};
        double yes;
        assert_int_equal(boil_turning_find(&search, &yes), BOIL_OK);
        assert_true(yes == cases[i].yes);
        assert_int_equal(t.count, 2);
    }
}

/* Where all is yes the end that is furthest towards no; where none is, nothing. No question is asked twice. */
static void test_an_answer_that_does_not_turn(void **state)
{
    (void)state;
    static const double begun[] = {1e-4, 1e-3, 1, 1e3, 1e4};
    for (size_t i = 0; i < sizeof begun / sizeof begun[0]; i++)
        for (int rising = 0; rising < 2; rising++) {
            double yes, end = rising ? 1e-3 : 1e3;
            teller always = {.turns_at = end, .rising = rising, .fails = NEVER}, none = always;
            none.turns_at = rising ? 2e3 : 1e-6;
            boil_turning search = from(&always, begun[i]);
            assert_int_equal(boil_turning_find(&search, &yes), BOIL_OK);
            assert_true(yes == end && always.asked[always.count - 1] == end);
            search.context = &none;
            assert_int_equal(boil_turning_find(&search, &yes), BOIL_NO_ROOT);
            assert_true(isnan(yes));
            for (int k = 1; k < none.count; k++)
                assert_true(none.asked[k] != none.asked[k - 1]);
        }
}

static void test_a_question_that_fails_ends_the_search(void **state)
{
    (void)state;
    double yes;
    teller t = {.turns_at = 1, .rising = true, .fails = NEVER};
    boil_turning search = from(&t, 1.5);
    assert_int_equal(boil_turning_find(&search, &yes), BOIL_OK);
    const int whole = t.count;
    for (int fails = 0; fails < whole; fails++) {
        t.fails = fails;
        t.count = 0;
        assert_int_equal(boil_turning_find(&search, &yes), BOIL_OUT_OF_RANGE);
        assert_int_equal(t.count, fails + 1);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_the_turn_is_bracketed_from_either_side),   cmocka_unit_test(test_what_is_near_is_found_soon),
        cmocka_unit_test(test_a_bracket_of_the_precision_is_not_halved), cmocka_unit_test(test_an_answer_that_does_not_turn),
        cmocka_unit_test(test_a_question_that_fails_ends_the_search),
    };
    return cmocka_run_group_tests_name("turning", tests, NULL, NULL);
}
