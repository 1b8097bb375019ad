/* The cube root against cubes, and against the C library's. */
#include "base/cube_root.h"
#include "support/close.h"

static void cubes_have_their_roots(void **state)
{
    (void)state;
    for (int i = 1; i < 2000; i++) {
        double x = i / 16.0;
        assert_close(boil_cube_root(x * x * x), x, 5e-16, 0);
    }
}

static void as_the_library_over_all_sizes(void **state)
{
    (void)state;
    for (double x = 1e-210; x < 1e300; x *= 1.37)
        assert_close(boil_cube_root(x), cbrt(x), 5e-16, 0);
}

static void what_is_no_common_number_goes_to_the_library(void **state)
{
    (void)state;
    assert_true(boil_cube_root(0) == 0);
    assert_close(boil_cube_root(-27), -3, 1e-15, 0);
    assert_true(isinf(boil_cube_root((double)INFINITY)));
    assert_true(isnan(boil_cube_root((double)NAN)));
    assert_close(boil_cube_root(1e-300), 1e-100, 1e-15, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(cubes_have_their_roots),
        cmocka_unit_test(as_the_library_over_all_sizes),
        cmocka_unit_test(what_is_no_common_number_goes_to_the_library),
    };
    return cmocka_run_group_tests_name("cube_root", tests, NULL, NULL);
}
