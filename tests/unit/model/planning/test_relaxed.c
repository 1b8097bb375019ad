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
    boil_plan_order o;
    assert_int_equal(boil_plan_order_begin(&o, g->parts.count), BOIL_OK);
    assert_int_equal(boil_planning_relaxed(&(boil_plan_asked){.of = g, .best = &o, .seed = 1}, &r), BOIL_OK);
    boil_plan_order_free(&o);
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

/* The rest of a shift, in a bath that does not boil: one basket hangs there, a job is to go in. */
typedef struct {
    boil_plant plant;
    boil_plan_job job;
    boil_plan_hung hung;
    boil_plan_under_way under_way;
    boil_plan_problem problem;
    boil_plan_resumed hanging[1];
    boil_plan_hanging_dip lifts[1];
    boil_planning planning;
} rest;

static void begin_rest(rest *r, double end_s, double times)
{
    boil_run_options o = boil_run_options_default();
    boil_load l = boil_load_default();
    l.mass_kg = 15;
    l.size_m = 0.005;
    *r = (rest){.plant = planned_trough(97e3, 1), .hung = {l, 900, 2400, -600, (double)NAN, 0}};
    r->plant.charge.temperature_K = 405;
    r->plant.heater.input_W *= times;
    r->job = (boil_plan_job){.load = l, .least_s = STAY_S, .most_s = 2 * STAY_S, .due_s = HUGE_VAL};
    r->under_way = (boil_plan_under_way){.hung = &r->hung, .count = 1, .dips = 1, .set_K = r->plant.charge.value};
    r->problem = (boil_plan_problem){
        .jobs = &r->job, .jobs_count = 1, .positions = 1, .hoist_s = 60, .settle_s = 60, .end_s = end_s, .water_kg_s = 0.05};
    assert_int_equal(boil_planning_begin(&r->plant, &r->problem, &o, &r->planning), BOIL_OK);
    assert_int_equal(boil_plan_take_up(&r->planning, &r->under_way, &r->problem, &r->job, r->hanging, r->lifts), BOIL_OK);
}

static boil_plan_relaxation asked_rest(const rest *r, boil_plan_gives what, double value)
{
    boil_plan_relaxation a = {.what = what, .value = value, .works = true};
    boil_plan_order o;
    assert_int_equal(boil_plan_order_begin(&o, 1), BOIL_OK);
    assert_int_equal(
        boil_planning_relaxed(&(boil_plan_asked){.of = &r->planning, .under_way = &r->under_way, .best = &o, .seed = 1}, &a),
        BOIL_OK);
    boil_plan_order_free(&o);
    return a;
}

/* When all are out in a plant that has so much heat from the start. */
static double out_s(double times)
{
    rest r;
    begin_rest(&r, HUGE_VAL, times);
    boil_plan_relaxation a = asked_rest(&r, BOIL_PLAN_GIVES_END, 0);
    assert_int_equal(a.proof, BOIL_PLAN_PROVED);
    boil_planning_free(&r.planning);
    return a.last_out_s;
}

/* Against plants that have what gives: the shift ends between what a hundredth more heat and an eighth more does, which the search, that
   thought a hundredth enough, is told. What hangs there has its minutes from the sooner boil. */
static void the_rest_of_a_shift_is_taken_up_again(void **state)
{
    (void)state;
    const double thought = 1.01, next = thought + (BOIL_PLAN_GIVES_TIMES - thought) / 8;
    double little_s = out_s(thought), enough_s = out_s(next);
    rest r;
    assert_true(little_s > enough_s + 60);
    begin_rest(&r, (little_s + enough_s) / 2, 1);
    boil_plan_relaxation a = asked_rest(&r, BOIL_PLAN_GIVES_HEAT, thought);
    assert_int_equal(a.proof, BOIL_PLAN_PROVED);
    assert_close(a.value, next, 1e-12, 0);
    assert_close(a.last_out_s, enough_s, 0, 1);
    a = asked_rest(&r, BOIL_PLAN_GIVES_LIMIT, 121);
    assert_true(a.proof == BOIL_PLAN_DISPROVED && a.value == BOIL_PLAN_GIVES_TIMES * r.plant.limits.recovery_s);
    boil_planning_free(&r.planning);
}

/* A plan that breaks nothing but the end is proved with an open one; the search can only be sooner. */
static void what_was_found_holds_with_an_open_end(void **state)
{
    (void)state;
    boil_plan_dip dip = {.count = 1};
    boil_plan_proof found = {.table = {.dips = &dip, .dips_count = 1}, .broken_count = 1};
    boil_plan_order o;
    rest r;
    begin_rest(&r, 1500, 1);
    double alone_s = asked_rest(&r, BOIL_PLAN_GIVES_END, 0).last_out_s;
    assert_int_equal(boil_plan_order_begin(&o, 1), BOIL_OK);
    const struct {
        boil_plan_breaks what;
        double found_s, last_out_s;
    } of[] = {{BOIL_PLAN_BREAKS_END, alone_s - 100, alone_s - 100},
              {BOIL_PLAN_BREAKS_END, alone_s + 100, alone_s},
              {BOIL_PLAN_BREAKS_DUE, alone_s - 100, alone_s}};
    for (size_t i = 0; i < sizeof of / sizeof of[0]; i++) {
        boil_plan_relaxation a = {.what = BOIL_PLAN_GIVES_END, .works = true};
        const boil_plan_asked asked = {&r.planning, &r.under_way, &o, &found, 1};
        found.broken[0].what = of[i].what;
        found.table.value.of[BOIL_PLAN_LAST_OUT_S] = of[i].found_s;
        assert_int_equal(boil_planning_relaxed(&asked, &a), BOIL_OK);
        assert_int_equal(a.proof, BOIL_PLAN_PROVED);
        assert_close(a.last_out_s, of[i].last_out_s, 0, 1e-9);
    }
    boil_plan_order_free(&o);
    boil_planning_free(&r.planning);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(what_gives_is_carried_out),
                                       cmocka_unit_test(the_rest_of_a_shift_is_taken_up_again),
                                       cmocka_unit_test(what_was_found_holds_with_an_open_end)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
