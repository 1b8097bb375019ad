/* What would have to give, planned with it and carried out. Against arithmetic alone: two stays of twenty minutes in one place take
   forty, side by side twenty and what it takes to be hot. */
#include "support/close.h"

#include "planning/relaxed.h"
#include "support/cases.h"

#define STAY_S 1200.0
#define END_S 1800.0

static boil_plan_relaxation asked(const boil_planning *g, boil_plan_gives what, double value)
{
    boil_plan_relaxation r = {.what = what, .job = 1, .value = value, .works = true};
    assert_int_equal(boil_planning_relaxed(g, 1, &r), BOIL_OK);
    return r;
}

static void what_gives_is_carried_out(void **state)
{
    (void)state;
    boil_run_options o = boil_run_options_default();
    boil_plant p = planned_trough(140000, 1);
    boil_plan_job jobs[2];
    boil_planning g;
    for (int i = 0; i < 2; i++) {
        jobs[i] = (boil_plan_job){.load = boil_load_default(), .least_s = STAY_S, .most_s = 2 * STAY_S, .due_s = HUGE_VAL};
        jobs[i].load.mass_kg = 15;
        jobs[i].load.size_m = 0.005;
    }
    boil_plan_problem of = {
        .jobs = jobs, .jobs_count = 2, .positions = 1, .hoist_s = 60, .settle_s = 60, .end_s = END_S, .water_kg_s = 0.05};
    assert_int_equal(boil_planning_begin(&p, &of, &o, &g), BOIL_OK);
    boil_plan_relaxation r = asked(&g, BOIL_PLAN_GIVES_END, 0);
    assert_int_equal(r.proof, BOIL_PLAN_PROVED);
    assert_true(r.last_out_s > 2 * STAY_S && r.last_out_s < 3 * STAY_S);
    r = asked(&g, BOIL_PLAN_GIVES_POSITIONS, 2);
    assert_int_equal(r.proof, BOIL_PLAN_PROVED);
    assert_true(r.last_out_s > STAY_S && r.last_out_s <= END_S);
    r = asked(&g, BOIL_PLAN_GIVES_JOB, 0);
    assert_int_equal(r.proof, BOIL_PLAN_PROVED);
    assert_true(r.last_out_s > STAY_S && r.last_out_s <= END_S);
    assert_int_equal(asked(&g, BOIL_PLAN_GIVES_HOIST, 30).proof, BOIL_PLAN_DISPROVED);
    assert_int_equal(asked(&g, BOIL_PLAN_GIVES_HEAT, 1.5).proof, BOIL_PLAN_DISPROVED);
    assert_int_equal(asked(&g, BOIL_PLAN_GIVES_LIMIT, 180).proof, BOIL_PLAN_DISPROVED);
    assert_int_equal(asked(&g, BOIL_PLAN_GIVES_MUST, 0).proof, BOIL_PLAN_DISPROVED);
    boil_planning_free(&g);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(what_gives_is_carried_out)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
