/* The band of a run: its own levels, thinned, and what the runs of its set that are laid beside it reach. */
#include "support/close.h"

#include <stdlib.h>

#include "case/closures.h"
#include "replay/replay.h"

/* How many of three moments stay, the one in the middle so much off the line between the others, in m. */
static size_t kept_of(double level_m, double off_m, double left_m, double left_off_m)
{
    boil_row rows[] = {{.time_s = 0, .level_m = level_m, .left_m = left_m},
                       {.time_s = 5, .level_m = level_m + off_m, .left_m = left_m + left_off_m},
                       {.time_s = 10, .level_m = level_m, .left_m = left_m}};
    const boil_history likely = {.rows = rows, .rows_count = 3};
    const carried_out o = {.scenario = NULL};
    replay r = {.of = &o, .slack = 1};
    assert_true(replay_band_make(&r, &likely));
    size_t count = r.band_count;
    assert_true(r.band[0].low_m == level_m && r.band[count - 1].high_m == level_m);
    free(r.band);
    return count;
}

/* Judgement: low and high to 3 mm, the high of a deep bath to half a per cent of its level, the freeboard that floating water would leave
   to 5 mm or a hundredth. In a bath of 2 m the lowest is what counts. */
static void what_is_left_out_is_near(void **state)
{
    (void)state;
    static const double levels_m[] = {0.4, 2};
    for (size_t i = 0; i < sizeof levels_m / sizeof levels_m[0]; i++)
        for (int side = -1; side < 2; side += 2) {
            assert_int_equal(kept_of(levels_m[i], side * 2.9e-3, 0.3, 0), 2);
            assert_int_equal(kept_of(levels_m[i], side * 3.1e-3, 0.3, 0), 3);
            assert_int_equal(kept_of(levels_m[i], 0, 0.3, side * 4.9e-3), 2);
            assert_int_equal(kept_of(levels_m[i], 0, 0.3, side * 5.1e-3), 3);
        }
    assert_int_equal(kept_of(0.4, 0, 1, 9.8e-3), 2);
    assert_int_equal(kept_of(0.4, 0, 1, 10.2e-3), 3);
}

static void nothing_afloat_leaves_what_no_tank_has(void **state)
{
    (void)state;
    assert_int_equal(kept_of(0.4, 0, (double)NAN, 0), 2);
    boil_row rows[] = {{.time_s = 0, .level_m = 1, .left_m = (double)NAN}, {.time_s = 5, .level_m = 1, .left_m = 12}};
    const boil_history likely = {.rows = rows, .rows_count = 2};
    const carried_out o = {.scenario = NULL};
    replay r = {.of = &o, .slack = 1};
    assert_true(replay_band_make(&r, &likely));
    for (size_t i = 0; i < r.band_count; i++)
        assert_true(r.band[i].left_m == REPLAY_NOTHING_M);
    free(r.band);
}

enum { ROWS = 4, OTHERS = 7, HIGH = 3, AT = 1 };

static const double told_s[ROWS] = {0, 5, 10, 15}, other_told_s[OTHERS] = {0, 5, 6, 7, 8, 10, 15};

/* The likely run and one laid beside it, their clocks one: both stand at 0.4 m for 15 s. */
typedef struct {
    boil_row rows[ROWS], others[OTHERS];
    boil_history likely;
    carried_out o;
    replay r;
} made;

static void make(made *m)
{
    *m = (made){.r = {.slack = 1}};
    for (int i = 0; i < ROWS; i++)
        m->rows[i] = (boil_row){.time_s = told_s[i], .level_m = 0.4, .left_m = 0.3};
    for (int i = 0; i < OTHERS; i++)
        m->others[i] = (boil_row){.time_s = other_told_s[i], .level_m = 0.4, .left_m = 0.3};
    m->likely = (boil_history){.rows = m->rows, .rows_count = ROWS, .end_s = 15};
    m->o.set.count = 1;
    m->o.set.other[0].closures = BOIL_CLOSURES_GRAVE;
    m->o.set.other[0].history = (boil_history){.rows = m->others, .rows_count = OTHERS, .end_s = 15};
    m->r.of = &m->o;
}

static void band_of(made *m, replay_band b[ROWS])
{
    assert_true(replay_band_make(&m->r, &m->likely));
    for (int i = 0; i < ROWS; i++)
        b[i] = replay_band_at(&m->r, told_s[i]);
    free(m->r.band);
}

/* Between two moments the other run's highest may lie at either; and so what floats in it. */
static void what_lies_between_counts_at_both(void **state)
{
    (void)state;
    made m;
    replay_band b[ROWS];
    make(&m);
    m.others[HIGH].level_m = 0.6;
    m.others[HIGH].left_m = 0.1;
    band_of(&m, b);
    assert_int_equal(m.r.band_count, ROWS); /* the surge thins none away */
    for (int i = 0; i < ROWS; i++) {
        bool beside = i == 1 || i == 2;
        assert_close(b[i].high_m, beside ? 0.6 : 0.4, 1e-12, 0);
        assert_close(b[i].left_m, beside ? 0.1 : 0.3, 1e-12, 0);
        assert_close(b[i].low_m, 0.4, 1e-12, 0);
    }
}

/* The lowest counts from its moment on, until the next is told. */
static void the_lowest_counts_at_its_own(void **state)
{
    (void)state;
    made m;
    replay_band b[ROWS];
    make(&m);
    m.others[AT].level_m = 0.3;
    band_of(&m, b);
    for (int i = 0; i < ROWS; i++) {
        assert_close(b[i].low_m, i == AT ? 0.3 : 0.4, 1e-12, 0);
        assert_close(b[i].high_m, 0.4, 1e-12, 0);
    }
}

static void mild_and_refused_runs_count_nowhere(void **state)
{
    (void)state;
    for (int refused = 0; refused < 2; refused++) {
        made m;
        replay_band b[ROWS];
        make(&m);
        m.others[AT].level_m = 0.6;
        m.o.set.other[0].refused = refused == 1;
        m.o.set.other[0].closures = refused == 1 ? BOIL_CLOSURES_GRAVE : BOIL_CLOSURES_MILD;
        band_of(&m, b);
        assert_close(b[AT].high_m, 0.4, 1e-12, 0);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_is_left_out_is_near),
        cmocka_unit_test(nothing_afloat_leaves_what_no_tank_has),
        cmocka_unit_test(what_lies_between_counts_at_both),
        cmocka_unit_test(the_lowest_counts_at_its_own),
        cmocka_unit_test(mild_and_refused_runs_count_nowhere),
    };
    return cmocka_run_group_tests_name("band", tests, NULL, NULL);
}
