/* The larger and the smaller of two, and what becomes of no number. */
#include "base/larger.h"
#include "support/close.h"

static void as_the_library_has_them(void **state)
{
    (void)state;
    const double x[] = {-(double)INFINITY, -3, -1e-300, 0, 1e-300, 2, 7e200, (double)INFINITY};
    for (int i = 0; i < 8; i++)
        for (int k = 0; k < 8; k++) {
            assert_true(boil_larger(x[i], x[k]) == fmax(x[i], x[k]));
            assert_true(boil_smaller(x[i], x[k]) == fmin(x[i], x[k]));
        }
}

static void of_no_number_the_second_is_given(void **state)
{
    (void)state;
    const double none = (double)NAN;
    assert_true(isnan(boil_larger(1, none)) && isnan(boil_smaller(1, none)));
    assert_true(boil_larger(none, 1) == 1 && boil_smaller(none, 1) == 1);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(as_the_library_has_them),
                                       cmocka_unit_test(of_no_number_the_second_is_given)};
    return cmocka_run_group_tests_name("larger", tests, NULL, NULL);
}
