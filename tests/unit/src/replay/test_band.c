/* The band of a run that nothing else is laid beside: its own levels, thinned. */
#include "support/close.h"

#include <stdlib.h>

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

/* A surge of another run between two moments counts at both, however many of its rows lie between: not at the third. */
static void a_surge_between_two_moments_counts_at_both(void **state)
{
    (void)state;
    boil_row rows[] = {{.time_s = 0, .level_m = 0.4, .left_m = 0.3},
                       {.time_s = 10, .level_m = 0.4, .left_m = 0.3},
                       {.time_s = 20, .level_m = 0.4, .left_m = 0.3},
                       {.time_s = 30, .level_m = 0.4, .left_m = 0.3}};
    boil_row others[31];
    for (int i = 0; i < 31; i++)
        others[i] = (boil_row){.time_s = i, .level_m = i == 5 ? 0.7 : 0.4, .left_m = i == 5 ? 0.1 : 0.3};
    const boil_history likely = {.rows = rows, .rows_count = 4, .end_s = 30};
    const boil_run_of_set other = {.closures = BOIL_CLOSURES_GRAVE, .history = {.rows = others, .rows_count = 31, .end_s = 30}};
    const carried_out o = {.set = {.other = {other}, .count = 1}};
    replay r = {.of = &o, .slack = 1};
    assert_true(replay_band_make(&r, &likely));
    assert_int_equal(r.band_count, 4);
    for (size_t i = 0; i < 4; i++) {
        assert_close(r.band[i].high_m, i < 2 ? 0.7 : 0.4, 1e-12, 0);
        assert_close(r.band[i].left_m, i < 2 ? 0.1 : 0.3, 1e-12, 0);
        assert_close(r.band[i].low_m, 0.4, 1e-12, 0);
    }
    free(r.band);
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

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(what_is_left_out_is_near),
                                       cmocka_unit_test(a_surge_between_two_moments_counts_at_both),
                                       cmocka_unit_test(nothing_afloat_leaves_what_no_tank_has)};
    return cmocka_run_group_tests_name("band", tests, NULL, NULL);
}
