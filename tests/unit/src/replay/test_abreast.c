/* Two clocks laid side by side, of made-up runs whose moments are told by hand. */
#include "support/close.h"

#include <stdlib.h>

#include "replay/abreast.h"

/* Two spells and two acts of the likely run; in the other all of that comes a little later. */
typedef struct {
    boil_quiet_result quiet[2];
    boil_act_result acts[2];
    boil_history history;
} made_up;

static const boil_history *make_up(made_up *m)
{
    *m = (made_up){
        {{.start_s = 100, .end_s = 200, .cause = BOIL_QUIET_LOAD}, {.start_s = 1000, .end_s = 1300, .cause = BOIL_QUIET_WATER}},
        {{50, BOIL_ACT_DONE}, {500, BOIL_ACT_DONE}},
        {.quiet_count = 2, .acts_count = 2, .end_s = 2000}};
    m->history.quiet = m->quiet;
    m->history.acts = m->acts;
    return &m->history;
}

static void expect(const boil_history *h, const boil_history *other, const double clocks[][2], size_t count)
{
    abreast a = abreast_of(h, other);
    assert_int_equal(a.count, count);
    for (size_t i = 0; i < count; i++) {
        assert_close(a.moments[i].likely_s, clocks[i][0], 1e-12, 0);
        assert_close(a.moments[i].other_s, clocks[i][1], 1e-12, 0);
        assert_close(abreast_other(&a, clocks[i][0]), clocks[i][1], 1e-12, 0);
    }
    for (size_t i = 1; i < count; i++) /* evenly between them */
        assert_close(abreast_other(&a, 0.25 * clocks[i - 1][0] + 0.75 * clocks[i][0]),
                     0.25 * clocks[i - 1][1] + 0.75 * clocks[i][1], 1e-12, 0);
    assert_close(abreast_other(&a, clocks[count - 1][0] + 60), clocks[count - 1][1] + 60, 1e-12, 0);
    abreast_free(&a);
}

#define COUNT(list) (sizeof(list) / sizeof(list)[0])

static void what_is_done_lost_and_back_falls_together(void **state)
{
    (void)state;
    static const double clocks[][2] = {{0, 0},     {50, 55},     {100, 110},   {200, 260},
                                       {500, 520}, {1000, 1100}, {1300, 1500}, {2000, 1800}};
    boil_quiet_result theirs[] = {{.start_s = 110, .end_s = 260, .cause = BOIL_QUIET_LOAD},
                                  {.start_s = 1100, .end_s = 1500, .cause = BOIL_QUIET_WATER}};
    boil_act_result acts[] = {{55, BOIL_ACT_DONE}, {520, BOIL_ACT_DONE}, {700, BOIL_ACT_DONE}};
    const boil_history other = {.quiet = theirs, .quiet_count = 2, .acts = acts, .acts_count = 3, .end_s = 1800};
    made_up m;
    expect(make_up(&m), &other, clocks, COUNT(clocks));
}

/* A boil that never returned, an act that was not done, acts and spells that only one of both has, spells of another cause. */
static void what_only_one_run_has_is_left_out(void **state)
{
    (void)state;
    static const double with_start[][2] = {{0, 0}, {50, 55}, {100, 110}, {2000, 2000}},
                        with_ends[][2] = {{0, 0}, {50, 55}, {2000, 2000}};
    boil_quiet_result theirs[] = {{.start_s = 110, .end_s = (double)NAN, .cause = BOIL_QUIET_LOAD}};
    boil_act_result acts[] = {{55, BOIL_ACT_DONE}, {(double)NAN, BOIL_ACT_LAPSED}};
    made_up m;
    const boil_history *h = make_up(&m);
    boil_history other = {.quiet = theirs, .quiet_count = 1, .acts = acts, .acts_count = 2, .end_s = 2500};
    expect(h, &other, with_start, COUNT(with_start));
    assert_null(abreast_spell(h, 1, &other));
    other.acts_count = 1;
    theirs[0].cause = BOIL_QUIET_WATER;
    expect(h, &other, with_ends, COUNT(with_ends));
    theirs[0].cause = BOIL_QUIET_LOAD;
    theirs[0].start_s = 100 + 600;
    assert_ptr_equal(abreast_spell(h, 0, &other), &theirs[0]);
    theirs[0].start_s = 100 + 600.01;
    assert_null(abreast_spell(h, 0, &other));
}

/* An act done at the very start in both is one moment; one that the other run did before it is no moment at all. */
static void of_moments_that_contradict_the_earlier_counts(void **state)
{
    (void)state;
    static const double clocks[][2] = {{0, 0}, {100, 110}, {200, 260}, {2000, 2000}};
    boil_quiet_result theirs[] = {{.start_s = 110, .end_s = 260, .cause = BOIL_QUIET_LOAD}};
    boil_act_result acts[] = {{0, BOIL_ACT_DONE}, {260, BOIL_ACT_DONE}};
    const boil_history other = {.quiet = theirs, .quiet_count = 1, .acts = acts, .acts_count = 2, .end_s = 2000};
    made_up m;
    make_up(&m);
    m.acts[0].done_s = 0;
    expect(&m.history, &other, clocks, COUNT(clocks));
    m.acts[1].done_s = 2001; /* behind the likely run's end */
    acts[1].done_s = 1000;
    expect(&m.history, &other, clocks, COUNT(clocks));
}

/* The order in which two moments at one time of the likely run are taken does not hang on that in which they were put. */
static void of_two_at_one_time_the_other_runs_first_counts(void **state)
{
    (void)state;
    static const double clocks[][2] = {{0, 0}, {500, 400}, {2000, 2000}};
    boil_act_result mine_done[] = {{500, BOIL_ACT_DONE}, {500, BOIL_ACT_DONE}};
    for (int way = 0; way < 2; way++) {
        boil_act_result acts[] = {{way ? 400 : 700, BOIL_ACT_DONE}, {way ? 700 : 400, BOIL_ACT_DONE}};
        const boil_history h = {.acts = mine_done, .acts_count = 2, .end_s = 2000},
                           other = {.acts = acts, .acts_count = 2, .end_s = 2000};
        expect(&h, &other, clocks, COUNT(clocks));
    }
}

/* What stands behind the last spell in memory is none, though the other run has one that would answer to it. */
static void the_last_spell_is_the_last(void **state)
{
    (void)state;
    static const double clocks[][2] = {{0, 0}, {100, 110}, {200, 260}, {2000, 1800}};
    boil_quiet_result theirs[] = {{.start_s = 110, .end_s = 260, .cause = BOIL_QUIET_LOAD},
                                  {.start_s = 1100, .end_s = 1500, .cause = BOIL_QUIET_WATER}};
    const boil_history other = {.quiet = theirs, .quiet_count = 2, .end_s = 1800};
    made_up m;
    make_up(&m);
    m.history.quiet_count = 1;
    expect(&m.history, &other, clocks, COUNT(clocks));
}

static void without_moments_the_clocks_are_one(void **state)
{
    (void)state;
    const abreast none = {0};
    assert_close(abreast_other(&none, 123), 123, 1e-15, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_is_done_lost_and_back_falls_together),
        cmocka_unit_test(what_only_one_run_has_is_left_out),
        cmocka_unit_test(of_moments_that_contradict_the_earlier_counts),
        cmocka_unit_test(of_two_at_one_time_the_other_runs_first_counts),
        cmocka_unit_test(the_last_spell_is_the_last),
        cmocka_unit_test(without_moments_the_clocks_are_one),
    };
    return cmocka_run_group_tests_name("abreast", tests, NULL, NULL);
}
