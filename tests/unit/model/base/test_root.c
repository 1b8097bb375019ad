/* Where a function crosses zero, of functions whose roots have many known digits; and that the library behind it is never asked what it
   would end the process for. */
#include <gsl/gsl_errno.h>

#include "base/root.h"
#include "support/close.h"

static size_t complaints;

static void count_them(const char *reason, const char *file, int line, int number)
{
    (void)reason, (void)file, (void)line, (void)number;
    complaints++;
}

static double beyond_cosine(double x, void *context)
{
    (void)context;
    return x - cos(x);
}

/* Up or down by the sign of the context, through zero at 3, and no number beyond `known`. */
typedef struct {
    double slope, known;
} line;

static double straight(double x, void *context)
{
    const line *l = context;
    return x <= l->known ? l->slope * (x - 3) : (double)NAN;
}

static double cubed(double x, void *context)
{
    const line *l = context;
    return x <= l->known ? l->slope * (x * x * x - 27) : (double)NAN;
}

static double without_end(double x, void *context)
{
    (void)context;
    return 1 / x - 1;
}

/* x = cos x at 0.7390851332151606 [OEIS A003957]; Brent's method takes fewer steps than the 40 that halving takes to a trillionth. */
static void it_closes_in_on_a_known_root(void **state)
{
    (void)state;
    const double root = 0.7390851332151606;
    boil_root r;
    assert_true(boil_root_begin(&r, beyond_cosine, NULL, 0, 1.2));
    assert_true(r.near == 0 && r.far == 1.2);
    for (int i = 0; i < 12; i++) {
        assert_true(boil_root_step(&r));
        assert_true(r.near <= root + 1e-15 && root <= r.far + 1e-15);
    }
    assert_close(r.best, root, 1e-12, 0);
}

/* Upward and downward; a root that lies at an end is one. */
static void it_crosses_either_way(void **state)
{
    (void)state;
    static const double ends[][2] = {{1, 7}, {3, 7}, {1, 3}};
    for (int way = -1; way < 2; way += 2)
        for (size_t i = 0; i < sizeof ends / sizeof ends[0]; i++) {
            line l = {way, HUGE_VAL};
            boil_root r;
            assert_true(boil_root_begin(&r, cubed, &l, ends[i][0], ends[i][1]));
            for (int k = 0; k < 30; k++)
                assert_true(boil_root_step(&r));
            assert_close(r.best, 3, 1e-9, 0);
        }
}

static void what_has_no_crossing_is_not_begun(void **state)
{
    (void)state;
    boil_root r;
    line up = {1, HUGE_VAL}, down = {-1, HUGE_VAL}, unknown = {1, 5};
    complaints = 0;
    assert_false(boil_root_begin(&r, straight, &up, 4, 7));
    assert_false(boil_root_begin(&r, straight, &up, 0, 2));
    assert_false(boil_root_begin(&r, straight, &down, 4, 7));
    assert_false(boil_root_begin(&r, straight, &down, 0, 2));
    assert_false(boil_root_begin(&r, straight, &up, 7, 1)); /* the ends are turned round, or one */
    assert_false(boil_root_begin(&r, straight, &up, 3, 3));
    assert_false(boil_root_begin(&r, straight, &unknown, 1, 7));
    assert_false(boil_root_begin(&r, without_end, NULL, 0, 7)); /* infinite at one end */
    assert_false(boil_root_begin(&r, without_end, NULL, 0.5, (double)NAN));
    assert_int_equal(complaints, 0);
}

static void a_function_that_fails_on_the_way_ends_it(void **state)
{
    (void)state;
    boil_root r;
    line l = {1, HUGE_VAL};
    complaints = 0;
    assert_true(boil_root_begin(&r, cubed, &l, 1, 7));
    l.known = 0;
    assert_false(boil_root_step(&r));
    assert_int_equal(complaints, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(it_closes_in_on_a_known_root),
        cmocka_unit_test(it_crosses_either_way),
        cmocka_unit_test(what_has_no_crossing_is_not_begun),
        cmocka_unit_test(a_function_that_fails_on_the_way_ends_it),
    };
    gsl_set_error_handler(count_them);
    return cmocka_run_group_tests_name("root", tests, NULL, NULL);
}
