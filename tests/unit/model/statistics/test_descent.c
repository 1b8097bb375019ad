/* The way down to the least sum of squares, on a line: what is asked and answered can be reckoned by hand. */
#include "support/close.h"

#include "statistics/descent.h"

/* r(u) = u - answer, in one row; none above `most`, none below `least`. */
typedef struct {
    double answer, least, most;
} line;

static boil_outcome residual_of(void *context, const double u[], double residual[])
{
    const line *l = context;
    residual[0] = u[0] - l->answer;
    return u[0] >= l->least && u[0] <= l->most ? BOIL_OK : BOIL_OUT_OF_RANGE;
}

static const double difference = 1e-4;

static boil_outcome descended(line *l, double from, size_t most_steps, boil_descent *d, bool *converged)
{
    *d = (boil_descent){.residuals = residual_of, .context = l, .rows = 1, .parameters = 1, .difference = difference};
    assert_int_equal(boil_descent_begin(d), BOIL_OK);
    d->u[0] = from;
    return boil_descent_run(d, most_steps, converged);
}

/* Where one side is no case the slope is that of the other; where neither is, there is none. */
static void slopes_come_from_the_side_that_is_a_case(void **state)
{
    (void)state;
    line cases[] = {{5, -HUGE_VAL, HUGE_VAL}, {5, -HUGE_VAL, 1}, {5, 1, HUGE_VAL}, {5, 1, 1}};
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        boil_descent d;
        bool converged;
        boil_outcome outcome = descended(&cases[i], 1, 0, &d, &converged);
        assert_int_equal(outcome, i < 3 ? BOIL_OK : BOIL_NO_ROOT);
        assert_false(converged);
        if (outcome == BOIL_OK)
            assert_close(d.jacobian[0], 1, 1e-9, 0);
        boil_descent_end(&d);
    }
}

/* As near as its derivatives are good for, the square of their difference, from wherever it begins. */
static void it_ends_within_the_square_of_the_difference(void **state)
{
    (void)state;
    for (double away = 1e-7; away < 10; away *= 1.15) {
        line l = {0, -HUGE_VAL, HUGE_VAL};
        boil_descent d;
        bool converged;
        assert_int_equal(descended(&l, away, 50, &d, &converged), BOIL_OK);
        assert_true(converged);
        assert_close(d.u[0], 0, 0, difference * difference);
        boil_descent_end(&d);
    }
}

/* The failure at the start is the answer. */
static void a_start_that_is_no_case_is_refused(void **state)
{
    (void)state;
    line l = {0, 0, 1};
    boil_descent d;
    bool converged = true;
    assert_int_equal(descended(&l, 2, 50, &d, &converged), BOIL_OUT_OF_RANGE);
    assert_false(converged);
    boil_descent_end(&d);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(slopes_come_from_the_side_that_is_a_case),
        cmocka_unit_test(it_ends_within_the_square_of_the_difference),
        cmocka_unit_test(a_start_that_is_no_case_is_refused),
    };
    return cmocka_run_group_tests_name("descent", tests, NULL, NULL);
}
