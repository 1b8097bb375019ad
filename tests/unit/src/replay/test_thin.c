/* What is left out of a trace lies no further off than is said, wherever it was sampled. */
#include "support/close.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "replay/thin.h"
#include "support/scenario_run.h"

typedef struct {
    double t, a, b;
} row;

static const thin_column columns[] = {{offsetof(row, a), 0.01, 0}, {offsetof(row, b), 0, 0.02}};

static thin_table table_of(const row *rows, size_t count)
{
    return (thin_table){rows, count, sizeof *rows, offsetof(row, t), columns, 2, 1};
}

static size_t kept_of(const row *rows, size_t count, bool *kept)
{
    size_t n = 0;
    thin_table t = table_of(rows, count);
    memset(kept, 0, count * sizeof *kept);
    thin_mark(&t, kept);
    for (size_t i = 0; i < count; i++)
        n += kept[i];
    return n;
}

/* A straight line is its two ends, and a corner is kept. */
static void corners_are_kept(void **state)
{
    (void)state;
    row rows[21];
    bool kept[21];
    for (size_t i = 0; i < 21; i++)
        rows[i] = (row){(double)i, i < 10 ? (double)i : 10, 1};
    assert_int_equal(kept_of(rows, 21, kept), 3);
    assert_true(kept[0] && kept[10] && kept[20]);
}

/* Two rows at one time, before and after a jump, are both kept. */
static void a_jump_stays_a_jump(void **state)
{
    (void)state;
    row rows[] = {{0, 0, 1}, {1, 0, 1}, {2, 0, 1}, {2, 5, 1}, {3, 5, 1}, {4, 5, 1}};
    bool kept[6];
    assert_int_equal(kept_of(rows, 6, kept), 4);
    assert_true(kept[2] && kept[3]);
}

/* Every row left out lies within its bound of the line between the rows around it. */
static void nothing_is_missed(void **state)
{
    (void)state;
    enum { COUNT = 5000 };
    static row rows[COUNT];
    static bool kept[COUNT];
    for (size_t i = 0; i < COUNT; i++) {
        double t = 0.01 * (double)i;
        rows[i] = (row){t, sin(t) + (t > 20 && t < 20.5 ? 3 : 0), 5 + exp(-0.1 * t) * cos(3 * t)};
    }
    size_t n = kept_of(rows, COUNT, kept), from = 0;
    assert_in_range(n, 20, COUNT / 10);
    for (size_t to = 1; to < COUNT; to++) {
        if (!kept[to])
            continue;
        for (size_t i = from + 1; i < to; i++) {
            double share = (rows[i].t - rows[from].t) / (rows[to].t - rows[from].t);
            assert_close(rows[from].a + share * (rows[to].a - rows[from].a), rows[i].a, 0, 0.01 * 1.000001);
            assert_close(rows[from].b + share * (rows[to].b - rows[from].b), rows[i].b, 0.02 * 1.000001, 0);
        }
        from = to;
    }
}

/* What was marked before stays so, and the cone begins there anew. */
static void marks_stay(void **state)
{
    (void)state;
    row rows[11];
    bool kept[11] = {[5] = true};
    for (size_t i = 0; i < 11; i++)
        rows[i] = (row){(double)i, 0, 1};
    thin_table t = table_of(rows, 11);
    thin_mark(&t, kept);
    assert_true(kept[0] && kept[5] && kept[10] && !kept[4] && !kept[6]);
}

/* Between rows straight, at a jump as behind it, outside as the end; what is no column as in the row before. */
static void a_moment_between_rows(void **state)
{
    (void)state;
    const row rows[] = {{0, 1, 10}, {4, 3, 10}, {4, 7, 20}, {8, 7, 40}};
    const thin_column a = {offsetof(row, a), 0, 0};
    thin_table t = table_of(rows, 4);
    row at = {-1, -1, -1};
    thin_at(&t, 1, &at);
    assert_close(at.a, 1.5, 0, 1e-12);
    thin_at(&t, 4, &at);
    assert_close(at.a, 7, 0, 1e-12);
    thin_at(&t, 99, &at);
    assert_close(at.b, 40, 0, 1e-12);
    thin_at(&t, -3, &at);
    assert_close(at.a, 1, 0, 1e-12);
    t.columns = &a;
    t.columns_count = 1;
    thin_at(&t, 6, &at);
    assert_close(at.b, 20, 0, 1e-12);
    t.count = 0;
    thin_at(&t, 1, &at);
    assert_close(at.b, 20, 0, 1e-12);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(corners_are_kept), cmocka_unit_test(a_jump_stays_a_jump),   cmocka_unit_test(nothing_is_missed),
        cmocka_unit_test(marks_stay),       cmocka_unit_test(a_moment_between_rows),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
