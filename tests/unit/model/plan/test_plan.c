/* What is no problem to plan, and what is wrong with it: each at the ends of what may be, and just beyond. */
#include <string.h>

#include "support/close.h"

#include "plan/plan.h"

static const char jobs_many[] = "there must be 1 to 500 jobs", places_many[] = "there must be 1 to 40 positions",
                  moves[] = "a move of the hoist takes from above 0 to an hour, and the boil settles within a day",
                  ends[] = "the shift must end after its start, and water not be less than nothing",
                  breaks_wrong[] = "breaks must be in the order of time, none over another",
                  hanging[] = "no more may hang there than there are positions",
                  job_wrong[] =
                      "a job needs steel that may go in, a time to stay from above 0 up, and times not before the start";

typedef struct {
    boil_plan_job jobs[BOIL_PLAN_JOBS_MAX];
    boil_plan_problem problem;
} made;

/* As many jobs as there may be, all right. */
static boil_plan_problem *begin(made *m)
{
    for (size_t i = 0; i < BOIL_PLAN_JOBS_MAX; i++) {
        m->jobs[i] = (boil_plan_job){.load = boil_load_default(), .least_s = 600, .most_s = 900, .due_s = HUGE_VAL};
        m->jobs[i].load.mass_kg = 10;
        m->jobs[i].load.size_m = 0.005;
    }
    m->problem =
        (boil_plan_problem){.jobs = m->jobs, .jobs_count = 2, .positions = 2, .hoist_s = 60, .settle_s = 60, .end_s = 3600};
    return &m->problem;
}

static void breaks_lie_one_behind_the_other(void **state)
{
    (void)state;
    boil_break breaks[] = {{0, 10}, {20, 40}, {40, 50}};
    static made m;
    boil_plan_problem *p = begin(&m);
    p->breaks = breaks;
    p->breaks_count = 3;
    assert_null(boil_plan_problem_wrong(p)); /* one may begin as another ends */
    breaks[2].from_s = 39;                   /* over the second, though behind the first */
    assert_string_equal(boil_plan_problem_wrong(p), breaks_wrong);
    breaks[2] = (boil_break){5, 15};
    assert_string_equal(boil_plan_problem_wrong(p), breaks_wrong);
    breaks[2] = (boil_break){40, 40};
    assert_string_equal(boil_plan_problem_wrong(p), breaks_wrong);
    breaks[2] = (boil_break){40, 50};
    breaks[0] = (boil_break){0, 21}; /* the first two over each other */
    assert_string_equal(boil_plan_problem_wrong(p), breaks_wrong);
    breaks[0] = (boil_break){10, 0};
    assert_string_equal(boil_plan_problem_wrong(p), breaks_wrong);
}

static void whole_numbers_have_ends(void **state)
{
    (void)state;
    static made m;
    boil_plan_problem *p = begin(&m);
    const struct {
        size_t *of, least, most;
        const char *why;
    } all[] = {{&p->jobs_count, 1, BOIL_PLAN_JOBS_MAX, jobs_many},
               {&p->positions, 1, BOIL_POSITIONS_MAX, places_many},
               {&p->hanging_count, 0, 2, hanging}};
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++) {
        const size_t kept = *all[i].of;
        *all[i].of = all[i].least;
        assert_null(boil_plan_problem_wrong(p));
        *all[i].of = all[i].most;
        assert_null(boil_plan_problem_wrong(p));
        *all[i].of = all[i].most + 1;
        assert_string_equal(boil_plan_problem_wrong(p), all[i].why);
        *all[i].of = 0;
        assert_true(all[i].least == 0 || strcmp(boil_plan_problem_wrong(p), all[i].why) == 0);
        *all[i].of = kept;
    }
}

/* A number within its range, and those that are not; NaN: none more. */
typedef struct {
    double *of, good[3], wrong[4];
    const char *why;
} range;

static void try_range(const boil_plan_problem *p, const range *r)
{
    const double kept = *r->of;
    for (size_t i = 0; i < 3 && !isnan(r->good[i]); i++) {
        *r->of = r->good[i];
        assert_null(boil_plan_problem_wrong(p));
    }
    for (size_t i = 0; i < 4 && !isnan(r->wrong[i]); i++) {
        *r->of = r->wrong[i];
        assert_string_equal(boil_plan_problem_wrong(p), r->why);
    }
    *r->of = (double)NAN;
    assert_string_equal(boil_plan_problem_wrong(p), r->why);
    *r->of = kept;
}

static void times_have_ends(void **state)
{
    (void)state;
    static made m;
    const double none = (double)NAN;
    boil_plan_problem *p = begin(&m);
    boil_plan_job *j = &m.jobs[0];
    const range all[] = {
        {&p->hoist_s, {0.5, 3600, none}, {0, -1, 3601, HUGE_VAL}, moves},
        {&p->settle_s, {0, 86400, none}, {-1, 86401, HUGE_VAL, none}, moves},
        {&p->end_s, {0.5, HUGE_VAL, none}, {0, -1, none, none}, ends},
        {&p->water_kg_s, {0, 1, none}, {-1, HUGE_VAL, none, none}, ends},
        {&j->least_s, {0.5, 900, none}, {0, -1, 901, none}, job_wrong},
        {&j->most_s, {600, 1e6, none}, {599, HUGE_VAL, none, none}, job_wrong},
        {&j->earliest_s, {0, 1e6, none}, {-1, HUGE_VAL, none, none}, job_wrong},
        {&j->due_s, {-1, 0, HUGE_VAL}, {none, none, none, none}, job_wrong},
        {&j->load.mass_kg, {10, none, none}, {-1, none, none, none}, job_wrong},
    };
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++)
        try_range(p, &all[i]);
    for (int priority = BOIL_PLAN_NORMAL; priority <= BOIL_PLAN_LOW + 1; priority++) {
        j->priority = (boil_plan_priority)priority;
        assert_true((boil_plan_problem_wrong(p) == NULL) == (priority <= BOIL_PLAN_LOW));
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(breaks_lie_one_behind_the_other),
                                       cmocka_unit_test(whole_numbers_have_ends), cmocka_unit_test(times_have_ends)};
    return cmocka_run_group_tests_name("plan", tests, NULL, NULL);
}
