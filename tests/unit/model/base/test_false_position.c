/* False position against a number with many known digits, and where a straight line is no help. */
#include "base/false_position.h"
#include "support/close.h"

static double beyond_cosine(double x)
{
    return x - cos(x);
}

static int close_in(boil_false_position *f, double within)
{
    int asked = 0;
    for (; f->high - f->low > within && asked < 100; asked++) {
        double x = boil_false_position_next(f), v = beyond_cosine(x);
        assert_true(x > f->low && x < f->high);
        boil_false_position_narrow(f, x, v, v >= 0);
    }
    return asked;
}

/* x = cos x at 0.7390851332151606 [OEIS A003957]. Both ends close in on it, in half of halving's 24 questions. */
static void both_ends_close_in_on_a_known_root(void **state)
{
    (void)state;
    const double root = 0.7390851332151606;
    boil_false_position f = {0, beyond_cosine(0), 1.2, beyond_cosine(1.2), 0};
    assert_in_range(close_in(&f, 1e-7), 1, 12);
    assert_true(f.low < root && f.high >= root);
}

static void an_unknown_end_is_halved(void **state)
{
    (void)state;
    const boil_false_position f = {2, (double)NAN, 6, 1, 0}, flat = {2, 1, 6, 1, 0};
    assert_close(boil_false_position_next(&f), 4, 1e-15, 0);
    assert_close(boil_false_position_next(&flat), 4, 1e-15, 0);
}

static void an_end_that_stays_twice_counts_half(void **state)
{
    (void)state;
    boil_false_position f = {0, -4, 8, 8, 0};
    boil_false_position_narrow(&f, 6, 5, true);
    assert_close(f.at_low, -4, 1e-15, 0);
    boil_false_position_narrow(&f, 5, 3, true);
    assert_close(f.at_low, -2, 1e-15, 0);
    assert_close(f.high, 5, 1e-15, 0);
    boil_false_position_narrow(&f, 1, -1, false);
    assert_close(f.at_high, 3, 1e-15, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(both_ends_close_in_on_a_known_root),
        cmocka_unit_test(an_unknown_end_is_halved),
        cmocka_unit_test(an_end_that_stays_twice_counts_half),
    };
    return cmocka_run_group_tests_name("false_position", tests, NULL, NULL);
}
