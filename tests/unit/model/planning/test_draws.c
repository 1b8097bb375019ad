/* How much a plan leaves for what is not known, and what a draw is counted as. */
#include "support/close.h"

#include "planning/draws.h"
#include "planning/learn.h"
#include "support/cases.h"

enum { DRAWS = 100 };

/* One dip whose boil is away for 100 s of 120; in the draws for 51, 52, ... 150 s. Definitions: the 95 % quantile of these is 145 s. */
static void quantiles_of_draws_say_what_to_leave(void **state)
{
    (void)state;
    boil_plan_draw draws[DRAWS];
    boil_plan_dip dip = {.count = 1};
    boil_plan_seen seen = {.gravest_s = 100};
    boil_plan_proof proof = {.table = {.dips = &dip, .dips_count = 1}, .seen = &seen};
    boil_plan_bath bath = {.limit_s = 120, .guard_s = 75, .flow_kg_s = 0.05};
    for (int i = 0; i < DRAWS; i++)
        draws[(37 * i) % DRAWS] = (boil_plan_draw){.slowest_s = 51 + i, .lacks_s = i - 89.5, .back = i < 70, .holds = i < 60};
    for (int i = 0; i < 3; i++)
        draws[i].found[0] = "water-layer";
    assert_int_equal(boil_plan_spare(draws, DRAWS, 0.95, &proof, &bath), BOIL_OK);
    assert_close(bath.slower, 0.45, 1e-12, 0);
    assert_close(bath.longer_s, 7.5 + 2, 1e-12, 0); /* 97.5 % of 100 is the 98th, 97 - 89.5; and two for the steps */
    assert_close(bath.guard_s, 75 + 45, 1e-12, 0);  /* in 3 %: more than half of what may fail */
    assert_int_equal(boil_plan_spare(draws, DRAWS, 0.95, &proof, &bath), BOIL_OK);
    assert_true(bath.slower > 0.5); /* asked again it leaves more */
    boil_plan_odds odds = boil_plan_odds_of(draws, DRAWS);
    assert_int_equal(odds.holds.yes, 60);
    assert_int_equal(odds.back.yes, 70);
    for (int i = 0; i < 6; i++)
        draws[i].slowest_s = HUGE_VAL;
    assert_int_equal(boil_plan_spare(draws, DRAWS, 0.95, &proof, &bath), BOIL_NO_ROOT);
    assert_int_equal(boil_plan_spare(draws, DRAWS, 0.94, &proof, &bath), BOIL_OK);
}

/* The plan's own bath is a draw in which it holds; with a third less heat, by the balance of a quiet bath, the boil is away for so long that
   the same plan does not; a part that comes in colder, or must stay longer, is the draw's own. */
static void draws_are_judged_as_they_are(void **state)
{
    (void)state;
    boil_plant p = planned_trough(97e3, 1), weak = p; /* a plate of 40 kg, for 15 min once it is hot */
    boil_run_options o = boil_run_options_default();
    boil_plan_job job = {.load = boil_load_default(), .least_s = 900, .most_s = 1500, .due_s = HUGE_VAL};
    boil_plan_problem of = {.jobs = &job, .jobs_count = 1, .positions = 1, .hoist_s = 60, .settle_s = 60, .end_s = HUGE_VAL};
    boil_planning g;
    boil_plan_order order;
    boil_plan_proof proof = {.broken_count = 0};
    boil_plan_draw own, other;
    boil_simulation *runs = NULL;
    size_t rounds = 0;
    job.load.mass_kg = 40;
    job.load.size_m = 0.00635;
    job.load.temperature_K = 297;
    assert_int_equal(boil_planning_begin(&p, &of, &o, &g), BOIL_OK);
    assert_int_equal(boil_plan_order_begin(&order, g.parts.count), BOIL_OK);
    assert_int_equal(boil_plan_settle(&g, &order, &proof, &rounds), BOIL_OK);
    assert_true(boil_plan_proof_holds(&proof));
    assert_int_equal(boil_plan_draw_of(&g, &proof.table, &p, &job, &runs, &own), BOIL_OK);
    assert_true(own.holds && own.back);
    assert_close(own.slowest_s, proof.seen[0].likely_s, 0, 1);
    weak.heater.efficiency = 0.4;
    assert_int_equal(boil_plan_draw_of(&g, &proof.table, &weak, &job, &runs, &other), BOIL_OK);
    assert_true(!other.holds && !other.back && other.slowest_s > p.limits.recovery_s);
    boil_plan_job longer = job;
    longer.least_s = 1020;
    assert_int_equal(boil_plan_draw_of(&g, &proof.table, &p, &longer, &runs, &other), BOIL_OK);
    assert_true(other.back && !other.holds);
    assert_true(other.lacks_s > 100 && other.lacks_s <= 120);
    double out_s = proof.table.dips[0].leaves_s;
    of.end_s = out_s + 0.5; /* by the steps of a run */
    assert_int_equal(boil_plan_draw_of(&g, &proof.table, &p, &job, &runs, &other), BOIL_OK);
    assert_true(other.holds);
    of.end_s = out_s - 2;
    assert_int_equal(boil_plan_draw_of(&g, &proof.table, &p, &job, &runs, &other), BOIL_OK);
    assert_true(other.back && !other.holds);
    of.end_s = HUGE_VAL;
    boil_plan_job due = job;
    due.due_s = out_s - 2;
    assert_int_equal(boil_plan_draw_of(&g, &proof.table, &p, &due, &runs, &other), BOIL_OK);
    assert_true(other.holds); /* it may be late */
    due.priority = BOIL_PLAN_MUST;
    assert_int_equal(boil_plan_draw_of(&g, &proof.table, &p, &due, &runs, &other), BOIL_OK);
    assert_true(other.back && !other.holds);
    weak = p;
    weak.limits.recovery_s = own.slowest_s - 1; /* the draw's own limit */
    assert_int_equal(boil_plan_draw_of(&g, &proof.table, &weak, &job, &runs, &other), BOIL_OK);
    assert_true(!other.back && !other.holds);
    weak = p;
    weak.tank.level_m = -1; /* no such bath */
    assert_int_equal(boil_plan_draw_of(&g, &proof.table, &weak, &job, &runs, &other), BOIL_OK);
    assert_true(!other.back && !other.holds && isinf(other.slowest_s) && other.found[0] == NULL);
    boil_simulation_free(runs);
    boil_plan_proof_free(&proof);
    boil_plan_order_free(&order);
    boil_planning_free(&g);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(quantiles_of_draws_say_what_to_leave),
        cmocka_unit_test(draws_are_judged_as_they_are),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
