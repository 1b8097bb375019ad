/* The golden section against a top that is known. */
#include "base/golden.h"
#include "support/close.h"

static double its_own_root(double x, void *context)
{
    (void)context;
    return pow(x, 1 / x);
}

static double falls(double x, void *context)
{
    (void)context;
    return -x;
}

/* The number with the greatest root of its own degree is e [Steiner's problem, 1850, from memory]. */
static void the_top_of_a_root_of_itself_is_e(void **state)
{
    (void)state;
    boil_golden top = boil_golden_top(its_own_root, NULL, 1, 6, 30);
    assert_close(top.x, exp(1), 0, 5 * pow(0.6180339887, 30));
    assert_close(top.value, exp(exp(-1)), 1e-12, 0);
}

static void what_only_falls_is_highest_at_its_low_end(void **state)
{
    (void)state;
    boil_golden top = boil_golden_top(falls, NULL, 2, 3, 14);
    assert_in_range(1e6 * (top.x - 2), 0, 1e3);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_top_of_a_root_of_itself_is_e),
        cmocka_unit_test(what_only_falls_is_highest_at_its_low_end),
    };
    return cmocka_run_group_tests_name("golden", tests, NULL, NULL);
}
