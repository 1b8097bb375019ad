/* What no order mends: a bath that by itself leaves less than the freeboard, and pipes, which are found wherever they go in. */
#include "support/close.h"

#include <string.h>

#include "planning/idle.h"
#include "planning/learn.h"
#include "support/cases.h"

enum { JOBS = 2 };

typedef struct {
    boil_plant plant;
    boil_plan_job jobs[JOBS];
    boil_plan_problem problem;
    boil_planning planning;
    boil_plan_order order;
} planned;

static void begin(planned *p, double depth_m, bool pipes)
{
    boil_run_options o = boil_run_options_default();
    *p = (planned){.plant = planned_trough(97e3, 2)};
    p->plant.tank.depth_m = depth_m > 0 ? depth_m : p->plant.tank.depth_m;
    for (size_t i = 0; i < JOBS; i++) {
        p->jobs[i] = (boil_plan_job){.load = boil_load_default(), .least_s = 600, .most_s = 900, .due_s = HUGE_VAL};
        p->jobs[i].load.mass_kg = 20;
        p->jobs[i].load.size_m = 0.006;
        if (pipes) {
            p->jobs[i].load.shape = BOIL_SHAPE_TUBE;
            p->jobs[i].load.size_m = 0.05;
            p->jobs[i].load.tube_wall_m = 0.003;
        }
    }
    p->problem = (boil_plan_problem){.jobs = p->jobs,
                                     .jobs_count = JOBS,
                                     .positions = 2,
                                     .hoist_s = 60,
                                     .settle_s = 60,
                                     .end_s = HUGE_VAL,
                                     .water_kg_s = 0.05};
    assert_int_equal(boil_planning_begin(&p->plant, &p->problem, &o, &p->planning), BOIL_OK);
    assert_int_equal(boil_plan_order_begin(&p->order, JOBS), BOIL_OK);
}

static size_t rounds_of(planned *p, bool *holds)
{
    boil_plan_proof best = {.broken_count = 0};
    size_t rounds = 0;
    assert_int_equal(boil_plan_settle(&p->planning, &p->order, &best, &rounds), BOIL_OK);
    *holds = boil_plan_proof_holds(&best);
    boil_plan_proof_free(&best);
    return rounds;
}

static void end(planned *p)
{
    boil_plan_order_free(&p->order);
    boil_planning_free(&p->planning);
}

/* 0.51 m of bath in a tank of 0.58 m: it cannot keep 6 in, 0.15 m, boiling or not. One round, and nothing more is tried. */
static void a_bath_that_is_wrong_by_itself_is_told_at_once(void **state)
{
    planned p;
    bool holds;
    (void)state;
    begin(&p, 0.58, false);
    assert_int_equal(rounds_of(&p, &holds), 1);
    assert_false(holds);
    assert_true(p.planning.idle_count > 0);
    bool told = false;
    for (size_t i = 0; i < p.planning.idle_count; i++)
        told = told || strcmp(p.planning.idle[i].title, "freeboard below the limit") == 0;
    assert_true(told);
    const size_t before = p.planning.idle_count;
    assert_int_equal(boil_plan_look_idle(&p.planning), BOIL_OK);
    assert_int_equal(p.planning.idle_count, before);
    end(&p);
}

/* Pipes are found as often as they go in, and what is learned of them moves nothing; the bath has no fault. */
static void what_teaches_nothing_is_not_tried_eight_times(void **state)
{
    planned p;
    bool holds;
    (void)state;
    begin(&p, 0, true);
    assert_int_equal(rounds_of(&p, &holds), 2);
    assert_false(holds);
    assert_int_equal(p.planning.idle_count, 0);
    end(&p);
    begin(&p, 0, false);
    rounds_of(&p, &holds);
    assert_true(holds);
    assert_false(p.planning.was_idle); /* where nothing is found nobody looks */
    end(&p);
}

/* What is heated up first has no first seconds at its boil. */
static void a_cold_bath_is_not_asked(void **state)
{
    planned p;
    (void)state;
    begin(&p, 0.58, false);
    p.planning.bath.ready_s = 3600;
    assert_int_equal(boil_plan_look_idle(&p.planning), BOIL_OK);
    assert_int_equal(p.planning.idle_count, 0);
    end(&p);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_bath_that_is_wrong_by_itself_is_told_at_once),
        cmocka_unit_test(what_teaches_nothing_is_not_tried_eight_times),
        cmocka_unit_test(a_cold_bath_is_not_asked),
    };
    return cmocka_run_group_tests_name("idle", tests, NULL, NULL);
}
