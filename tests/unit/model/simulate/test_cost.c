/* What a run costs, counted in looks at its rates: as much again for as much again to do, and the same every time. A long shift is many
   short ones; nobody has published what one costs, so each is measured against another of ours. */
#include <string.h>

#include "support/close.h"

#include "support/cases.h"

enum { SPACE_S = 1200, MOST = 32 };

/* So many loads, and water after each, one like the other. */
static boil_history shift(int loads, double row_interval_s)
{
    boil_plant p = open_plant(40e3);
    boil_run_options o = boil_run_options_default();
    boil_action a[2 * MOST];
    o.row_interval_s = row_interval_s;
    for (int i = 0; i < loads; i++) {
        a[2 * i] = plate_action(60 + SPACE_S * i, 1);
        a[2 * i].is.load.immersed_s = 600;
        a[2 * i + 1] = two_gallons_action(300 + SPACE_S * i, 120);
    }
    return run_actions(&p, (double)SPACE_S * loads, &o, a, (size_t)(2 * loads));
}

static void as_many_loads_again_cost_as_much_again(void **state)
{
    (void)state;
    size_t few = 0;
    for (int loads = 4; loads <= MOST; loads *= 2) {
        boil_history h = shift(loads, 0);
        size_t each = h.evaluations / (size_t)loads;
        print_message("%d loads: %zu looks and %zu steps, %zu looks a load\n", loads, h.evaluations, h.steps, each);
        if (few > 0)
            assert_true(10 * each < 12 * few);
        few = few > 0 ? few : each;
        boil_history_free(&h);
    }
}

/* A trace looks at the cubic between steps, and leaves them alone. */
static void rows_cost_no_step(void **state)
{
    (void)state;
    boil_history none = shift(4, 0), few = shift(4, 60), many = shift(4, 5);
    assert_true(few.rows_count > 70 && many.rows_count > 900);
    assert_int_equal(few.steps, none.steps);
    assert_int_equal(many.steps, none.steps);
    assert_int_equal(many.evaluations, none.evaluations);
    boil_history_free(&none);
    boil_history_free(&few);
    boil_history_free(&many);
}

static void the_same_run_gives_the_same_digits(void **state)
{
    (void)state;
    boil_history one = shift(4, 30), other = shift(4, 30);
    assert_int_equal(one.evaluations, other.evaluations);
    assert_int_equal(one.rows_count, other.rows_count);
    for (size_t i = 0; i < one.rows_count; i++) {
        assert_true(memcmp(&one.rows[i].temperature_K, &other.rows[i].temperature_K, sizeof(double)) == 0);
        assert_true(memcmp(&one.rows[i].level_m, &other.rows[i].level_m, sizeof(double)) == 0);
        assert_true(memcmp(&one.rows[i].water_kg, &other.rows[i].water_kg, sizeof(double)) == 0);
    }
    boil_history_free(&one);
    boil_history_free(&other);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(as_many_loads_again_cost_as_much_again),
        cmocka_unit_test(rows_cost_no_step),
        cmocka_unit_test(the_same_run_gives_the_same_digits),
    };
    return cmocka_run_group_tests_name("cost", tests, NULL, NULL);
}
