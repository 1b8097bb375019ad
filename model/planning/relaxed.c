#include "planning/relaxed.h"

#include <stdlib.h>

#include "plan/search.h"
#include "plan/starts.h"
#include "planning/learn.h"

enum { PASSES = 3, SHORTER = 4 }; /* searches, each with what the proofs of those before taught; a chain's length over theirs */

/* What gives, in a plant and a problem of its own. */
typedef struct {
    boil_plant plant;
    boil_plan_problem problem;
    boil_plan_job *jobs;
    bool other_bath;
} relaxed;

static void leave_out(relaxed *x, size_t job)
{
    x->problem.jobs_count--;
    for (size_t i = job; i < x->problem.jobs_count; i++)
        x->jobs[i] = x->jobs[i + 1];
}

static void more_heat(boil_heater *h, double times)
{
    h->input_W *= times;
    h->coil_area_m2 *= times;
}

static void give(relaxed *x, const boil_plan_relaxation *r)
{
    boil_plan_relax_shift(r, &x->problem, x->jobs);
    x->other_bath = r->what == BOIL_PLAN_GIVES_HEAT || r->what == BOIL_PLAN_GIVES_LIMIT;
    if (r->what == BOIL_PLAN_GIVES_JOB) {
        leave_out(x, r->job);
    } else if (r->what == BOIL_PLAN_GIVES_POSITIONS) {
        x->plant.tank.positions = r->value;
    } else if (r->what == BOIL_PLAN_GIVES_HEAT) {
        more_heat(&x->plant.heater, r->value);
    } else if (r->what == BOIL_PLAN_GIVES_LIMIT) {
        x->plant.limits.load_per_volume_kg_m3 *= r->value / x->plant.limits.recovery_s;
        x->plant.limits.recovery_s = r->value;
    }
}

static boil_outcome begin(const boil_planning *g, const relaxed *x, boil_planning *out)
{
    boil_planning same = *g;
    if (x->other_bath)
        return boil_planning_begin(&x->plant, &x->problem, &g->options, out);
    same.plant = &x->plant;
    same.problem = &x->problem;
    return boil_planning_again(&same, &g->bath, out);
}

static boil_outcome seek(boil_planning *g, uint64_t seed, boil_plan_proof *best)
{
    boil_plan_order o;
    boil_plan_value v;
    size_t rounds = 0;
    boil_outcome outcome = boil_plan_order_begin(&o, g->parts.count);
    if (outcome != BOIL_OK)
        return outcome;
    for (int pass = 0; pass < PASSES && outcome == BOIL_OK && !boil_plan_proof_holds(best); pass++) {
        boil_plan_case c = boil_planning_case(g);
        boil_plan_search s = {.seed = seed, .chain = (uint64_t)pass, .tries = boil_plan_search_tries(c.parts_count) / SHORTER};
        if (pass == 0)
            boil_plan_start(&c, BOIL_PLAN_BY_LIST, false, &o);
        outcome = boil_plan_search_run(&c, &s, &o, &v);
        if (outcome == BOIL_OK)
            outcome = boil_plan_settle(g, &o, best, &rounds);
    }
    boil_plan_order_free(&o);
    return outcome;
}

boil_outcome boil_planning_relaxed(const boil_planning *g, uint64_t seed, boil_plan_relaxation *r)
{
    relaxed x = {.plant = *g->plant, .problem = *g->problem};
    boil_planning then;
    boil_plan_proof best = {.broken_count = 0};
    x.jobs = malloc(g->problem->jobs_count * sizeof *x.jobs);
    if (x.jobs == NULL)
        return BOIL_NO_MEMORY;
    for (size_t i = 0; i < g->problem->jobs_count; i++)
        x.jobs[i] = g->problem->jobs[i];
    x.problem.jobs = x.jobs;
    give(&x, r);
    boil_outcome outcome = begin(g, &x, &then);
    r->proof = BOIL_PLAN_DISPROVED;
    if (outcome == BOIL_OK) {
        outcome = seek(&then, seed, &best);
        if (outcome == BOIL_OK && boil_plan_proof_holds(&best)) {
            r->proof = BOIL_PLAN_PROVED;
            r->last_out_s = best.table.value.of[BOIL_PLAN_LAST_OUT_S];
        }
        boil_plan_proof_free(&best);
        boil_planning_free(&then);
    }
    free(x.jobs);
    return outcome == BOIL_BAD_INPUT || outcome == BOIL_NO_ROOT ? BOIL_OK : outcome;
}
