/* Exponentials less one against the C library's. */
#include "base/exponential.h"
#include "support/close.h"

static void as_the_library_over_all_sizes(void **state)
{
    (void)state;
    for (double x = 1e-200; x < 700; x *= 1.07) {
        assert_close(boil_exponential_less_1(x), expm1(x), 5e-16, 0);
        assert_close(boil_exponential_less_1(-x), expm1(-x), 5e-16, 0);
    }
    assert_true(boil_exponential_less_1(0) == 0 && boil_exponential_less_1(-1e9) == -1);
    assert_true(isinf(boil_exponential_less_1(1e9)) && isnan(boil_exponential_less_1((double)NAN)));
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(as_the_library_over_all_sizes)};
    return cmocka_run_group_tests_name("exponential", tests, NULL, NULL);
}
