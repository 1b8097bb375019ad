/* Fewer rows, and nothing lost that a picture shows; and what stands between two rows. */
#include "support/close.h"

#include <stdlib.h>

#include "analysis/trace.h"

#define ROWS 20000

static boil_row *calm_rows(void)
{
    boil_row *rows = calloc(ROWS, sizeof *rows);
    assert_non_null(rows);
    for (size_t i = 0; i < ROWS; i++)
        rows[i] = (boil_row){.time_s = (double)i, .boiling = true, .temperature_K = 413, .level_m = 0.5};
    return rows;
}

static const boil_row *row_of_time(const boil_row *rows, size_t count, double t)
{
    for (size_t i = 0; i < count; i++)
        if (rows[i].time_s == t)
            return &rows[i];
    return NULL;
}

static void few_rows_stay_as_they_are(void **state)
{
    (void)state;
    boil_row rows[3] = {{.time_s = 0}, {.time_s = 1}, {.time_s = 2}};
    assert_int_equal(boil_trace_thinned(rows, 3, 3), 3);
    assert_int_equal(boil_trace_thinned(rows, 0, 100), 0);
    assert_int_equal(boil_trace_thinned(rows, 3, 2), 3); /* too few to keep what matters */
    assert_true(rows[2].time_s == 2);
}

static void a_peak_of_one_row_survives(void **state)
{
    (void)state;
    boil_row *rows = calm_rows();
    rows[7777].steam_kg_s = 1;
    rows[12345].level_m = 0.7;
    rows[13001].level_m = 0.4;
    rows[3].layer_m = 0.01;
    rows[19998].temperature_K = 400;
    size_t n = boil_trace_thinned(rows, ROWS, 2000);
    assert_in_range(n, 100, 2000);
    assert_true(row_of_time(rows, n, 7777)->steam_kg_s == 1);
    assert_true(row_of_time(rows, n, 12345)->level_m == 0.7);
    assert_true(row_of_time(rows, n, 13001)->level_m == 0.4);
    assert_true(row_of_time(rows, n, 3)->layer_m == 0.01);
    assert_true(row_of_time(rows, n, 19998)->temperature_K == 400);
    free(rows);
}

static void both_ends_and_the_order_stay(void **state)
{
    (void)state;
    boil_row *rows = calm_rows();
    size_t n = boil_trace_thinned(rows, ROWS, 500);
    assert_true(rows[0].time_s == 0 && rows[n - 1].time_s == ROWS - 1);
    for (size_t i = 1; i < n; i++)
        assert_true(rows[i].time_s > rows[i - 1].time_s);
    free(rows);
}

static void a_quiet_second_keeps_its_moments(void **state)
{
    (void)state;
    boil_row *rows = calm_rows();
    rows[5000].boiling = false;
    size_t n = boil_trace_thinned(rows, ROWS, 500);
    for (double t = 4999; t <= 5001; t++) {
        const boil_row *r = row_of_time(rows, n, t);
        assert_non_null(r);
        assert_true(r->boiling == (t != 5000));
    }
    free(rows);
}

/* Two points make a line: the values between follow from it by hand. */
static void between_rows_it_is_straight(void **state)
{
    (void)state;
    boil_row rows[] = {{.time_s = 0, .temperature_K = 400, .still_level_m = 0.5},
                       {.time_s = 10, .temperature_K = 410, .still_level_m = 0.6},
                       {.time_s = 20, .temperature_K = 390, .still_level_m = 0.6},
                       {.time_s = 25, .temperature_K = 395, .still_level_m = 0.2}};
    boil_history h = {.rows = rows, .rows_count = 4};
    const size_t temperature = offsetof(boil_row, temperature_K), level = offsetof(boil_row, still_level_m);
    assert_close(boil_trace_at(&h, temperature, 0), 400, 0, 1e-12);
    assert_close(boil_trace_at(&h, temperature, 2.5), 402.5, 0, 1e-12);
    assert_close(boil_trace_at(&h, temperature, 10), 410, 0, 1e-12);
    assert_close(boil_trace_at(&h, temperature, 15), 400, 0, 1e-12);
    assert_close(boil_trace_at(&h, level, 22.5), 0.4, 0, 1e-12);
    assert_close(boil_trace_at(&h, level, 25), 0.2, 0, 1e-12);
    assert_close(boil_trace_at(&h, level, 30), 0.2, 0, 1e-12);
    h.rows_count = 1;
    assert_close(boil_trace_at(&h, temperature, 5), 400, 0, 1e-12);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(few_rows_stay_as_they_are),    cmocka_unit_test(a_peak_of_one_row_survives),
        cmocka_unit_test(both_ends_and_the_order_stay), cmocka_unit_test(a_quiet_second_keeps_its_moments),
        cmocka_unit_test(between_rows_it_is_straight),
    };
    return cmocka_run_group_tests_name("trace", tests, NULL, NULL);
}
