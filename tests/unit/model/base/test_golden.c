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
    ++*(int *)context;
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

/* Of a bracket that closes in on its low end the inner place nearest to that lies a share g^2 of it away, g = (sqrt 5 - 1)/2: after n
   looks more, g^(n + 2). */
static void what_only_falls_is_highest_at_its_low_end(void **state)
{
    (void)state;
    for (int times = 0; times < 15; times++) {
        int looks = 0;
        boil_golden top = boil_golden_top(falls, &looks, 2, 3, times);
        assert_close(top.x - 2, pow((sqrt(5) - 1) / 2, times + 2), 1e-9, 0);
        assert_close(top.value, -top.x, 0, 0);
        assert_int_equal(looks, 2 + times);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_top_of_a_root_of_itself_is_e),
        cmocka_unit_test(what_only_falls_is_highest_at_its_low_end),
    };
    return cmocka_run_group_tests_name("golden", tests, NULL, NULL);
}
