/* How finely a step is told, of made-up views of its ends. */
#include "support/close.h"

#include "simulate/recorder.h"
#include "support/cases.h"

/* Two ends of a step that differ in temperature alone, the warmer one so far below its boiling point. */
static int parts_of(double below_K, double apart_K)
{
    const boil_plant p = open_plant(60e3);
    const boil_recorder r = {.plant = &p};
    boil_rates_view a = {.solution = {.boiling_point_K = 413, .temperature_K = 413 - below_K - apart_K}}, b = a;
    b.solution.temperature_K = 413 - below_K;
    return boil_recorder_parts(&r, &a, &b);
}

/* A part for each half a kelvin near the boil; far below it for each sixteenth of the way that is left, which is less often. */
static void a_part_is_half_a_kelvin_near_the_boil(void **state)
{
    (void)state;
    assert_int_equal(parts_of(0, 0.49), 1);
    assert_int_equal(parts_of(0, 0.51), 2);
    assert_int_equal(parts_of(0, 1.01), 3);
    assert_int_equal(parts_of(7, 1.01), 3);
    assert_int_equal(parts_of(32, 1.99), 1);
    assert_int_equal(parts_of(32, 4.01), 3);
    assert_int_equal(parts_of(0, 100), 16);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(a_part_is_half_a_kelvin_near_the_boil)};
    return cmocka_run_group_tests_name("recorder", tests, NULL, NULL);
}
