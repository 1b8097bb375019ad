/* Look-ups: the hydrometer's scales, and the table's rows. */
#include "support/close.h"

#include <gsl/gsl_errno.h>
#include <stdlib.h>

#include "base/constants.h"
#include "commands/solution/answer.h"
#include "support/cases.h"
#include "support/published.h"

static void scales_of_the_hydrometer(void **unused)
{
    (void)unused;
    published *t = published_open("tests/published/hydrometer.csv");
    while (published_next(t))
        assert_close(solution_baume(published_number(t, "specific_gravity")), published_number(t, "baume"), 0,
                     published_number(t, "tolerance") * 100);
    published_close(t);
    assert_close(solution_twaddell(1.5), 100, 1e-12, 0); /* each degree is 0.005 of specific gravity */
    assert_close(solution_twaddell(1), 0, 0, 1e-12);
}

static void rows_of_a_table(void **unused)
{
    (void)unused;
    size_t count;
    boil_plant p = caustic_of(0.5);
    const solution_table tables[] = {{DIM_FRACTION, 0.40, 0.55, 0.05},
                                     {DIM_CONCENTRATION, 500, 800, 100},
                                     {DIM_TEMPERATURE, BOIL_ZERO_CELSIUS + 130, BOIL_ZERO_CELSIUS + 145, 5}};
    for (int k = 0; k < 3; k++) {
        solution_answer *rows = solution_rows(&p, &tables[k], &count);
        assert_non_null(rows);
        assert_int_equal(count, 4);
        for (size_t i = 0; i < count; i++) {
            double want = tables[k].from + (double)i * tables[k].step;
            double got = k == 0 ? rows[i].salt_fraction : k == 1 ? rows[i].strength_kg_m3 : rows[i].boiling_point_K;
            assert_close(got, want, 1e-7, 0);
            assert_true(i == 0 || (rows[i].gravity_60F > rows[i - 1].gravity_60F && rows[i].hot_kg_m3 < rows[i].cold_kg_m3));
        }
        free(rows);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(scales_of_the_hydrometer),
        cmocka_unit_test(rows_of_a_table),
    };
    gsl_set_error_handler_off();
    return cmocka_run_group_tests_name("look-up", tests, NULL, NULL);
}
