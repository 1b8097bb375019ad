/* The band where another run is laid beside the likely one; both are made up here, and their clocks are one. */
#include "support/close.h"

#include <stdlib.h>

#include "case/closures.h"
#include "replay/replay.h"

enum { ROWS = 4, OTHERS = 7, HIGH = 3, AT = 1 };

static const double told_s[ROWS] = {0, 5, 10, 15}, other_told_s[OTHERS] = {0, 5, 6, 7, 8, 10, 15};

/* Both stand at 0.4 m for 15 s. */
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
    const struct CMUnitTest tests[] = {cmocka_unit_test(what_lies_between_counts_at_both),
                                       cmocka_unit_test(the_lowest_counts_at_its_own),
                                       cmocka_unit_test(mild_and_refused_runs_count_nowhere)};
    return cmocka_run_group_tests_name("band of runs", tests, NULL, NULL);
}
