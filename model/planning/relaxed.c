#include "planning/relaxed.h"

#include <math.h>
#include <stdlib.h>

#include "plan/search.h"
#include "plan/starts.h"
#include "planning/learn.h"

/* Searches, each with what the proofs of those before taught, and how many begin anew; a chain's length over theirs where all it has to do is
   to hold; and a value above the least that was thought to do to an eighth: judgement. */
enum { PASSES = 3, STARTS = 2, SHORTER = 4, HALVINGS = 3 };

/* What gives, in a plant and a problem of its own. */
typedef struct {
    boil_plant plant;
    boil_plan_problem problem;
    boil_plan_job *jobs;
    boil_plan_resumed hanging[BOIL_POSITIONS_MAX];
    boil_plan_hanging_dip lifts[BOIL_POSITIONS_MAX];
    bool open;              /* its last out is what gives: both starts are tried, in whole chains */
    bool other_bath, fewer; /* fewer jobs: parts have other numbers */
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
    x->open = r->what == BOIL_PLAN_GIVES_END;
    x->fewer = r->what == BOIL_PLAN_GIVES_JOB;
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

/* Jobs wait for what hangs as long as they did, or longer. */
static boil_outcome begin_other(const boil_planning *g, const boil_plan_under_way *w, relaxed *x, boil_planning *out)
{
    boil_outcome outcome = boil_planning_begin(&x->plant, &x->problem, &g->options, out);
    if (outcome != BOIL_OK || w == NULL)
        return outcome;
    outcome = boil_plan_take_up(out, w, &x->problem, x->jobs, x->hanging, x->lifts);
    if (outcome != BOIL_OK)
        boil_planning_free(out);
    return outcome;
}

static boil_outcome begin(const boil_planning *g, const boil_plan_under_way *w, relaxed *x, boil_planning *out)
{
    boil_planning same = *g;
    if (x->other_bath)
        return begin_other(g, w, x, out);
    same.plant = &x->plant;
    same.problem = &x->problem;
    boil_outcome outcome = boil_planning_again(&same, &g->bath, out);
    if (outcome != BOIL_OK || x->fewer)
        return outcome;
    outcome = boil_plan_lessons_add(&g->lessons, &out->lessons);
    if (outcome != BOIL_OK)
        boil_planning_free(out);
    return outcome;
}

/* From the best order that was found, where its parts are these; then from the list's; and from there on. */
static void start(const boil_planning *g, const relaxed *x, const boil_plan_order *best, int pass, boil_plan_order *o)
{
    boil_plan_case c = boil_planning_case(g);
    if (pass == 0 && best->parts_count == o->parts_count && !x->fewer)
        boil_plan_order_copy(best, o);
    else if (pass < STARTS)
        boil_plan_start(&c, BOIL_PLAN_BY_LIST, false, o);
}

static boil_outcome seek(boil_planning *g, const relaxed *x, const boil_plan_asked *a, boil_plan_proof *best)
{
    boil_plan_order o;
    boil_plan_value v;
    size_t rounds = 0;
    const int least = x->open ? STARTS : 1;
    const size_t shorter = x->open ? 1 : SHORTER;
    boil_outcome outcome = boil_plan_order_begin(&o, g->parts.count);
    if (outcome != BOIL_OK)
        return outcome;
    for (int pass = 0; pass < PASSES && outcome == BOIL_OK && (pass < least || !boil_plan_proof_holds(best)); pass++) {
        boil_plan_case c = boil_planning_case(g);
        boil_plan_search s = {
            .seed = a->seed, .chain = (uint64_t)pass, .tries = boil_plan_search_tries(c.parts_count) / shorter};
        start(g, x, a->best, pass, &o);
        outcome = boil_plan_search_run(&c, &s, &o, &v);
        if (outcome == BOIL_OK)
            outcome = boil_plan_settle(g, &o, best, &rounds);
    }
    boil_plan_order_free(&o);
    return outcome;
}

/* When all are out by the plan that was found, if it breaks nothing but the end; infinity: it does. */
static double found_open_s(const boil_plan_proof *found)
{
    if (found == NULL || found->table.dips == NULL)
        return HUGE_VAL;
    for (size_t i = 0; i < found->broken_count; i++)
        if (i >= BOIL_PLAN_BREAKS_KEPT || found->broken[i].what != BOIL_PLAN_BREAKS_END)
            return HUGE_VAL;
    return found->table.value.of[BOIL_PLAN_LAST_OUT_S];
}

static boil_outcome carry_out(const boil_plan_asked *a, boil_plan_relaxation *r)
{
    const boil_planning *g = a->of;
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
    boil_outcome outcome = begin(a->of, a->under_way, &x, &then);
    r->proof = BOIL_PLAN_DISPROVED;
    if (outcome == BOIL_OK) {
        outcome = seek(&then, &x, a, &best);
        double found_s = x.open ? found_open_s(a->found) : HUGE_VAL;
        if (outcome == BOIL_OK && boil_plan_proof_holds(&best))
            found_s = fmin(found_s, best.table.value.of[BOIL_PLAN_LAST_OUT_S]);
        if (isfinite(found_s)) {
            r->proof = BOIL_PLAN_PROVED;
            r->last_out_s = found_s;
        }
        boil_plan_proof_free(&best);
        boil_planning_free(&then);
    }
    free(x.jobs);
    return outcome == BOIL_BAD_INPUT || outcome == BOIL_NO_ROOT ? BOIL_OK : outcome;
}

/* The most that is asked; no more than what is asked already where nothing lies between. */
static double most_of(const boil_planning *g, const boil_plan_relaxation *r)
{
    return r->what == BOIL_PLAN_GIVES_HEAT    ? BOIL_PLAN_GIVES_TIMES
           : r->what == BOIL_PLAN_GIVES_LIMIT ? BOIL_PLAN_GIVES_TIMES * g->bath.limit_s
                                              : r->value;
}

boil_outcome boil_planning_relaxed(const boil_plan_asked *a, boil_plan_relaxation *r)
{
    double least = r->value, most = most_of(a->of, r);
    boil_outcome outcome = carry_out(a, r);
    if (outcome != BOIL_OK || r->proof == BOIL_PLAN_PROVED || !(least < most))
        return outcome;
    r->value = most;
    outcome = carry_out(a, r);
    for (int i = 0; i < HALVINGS && outcome == BOIL_OK && r->proof == BOIL_PLAN_PROVED; i++) {
        boil_plan_relaxation middle = *r;
        middle.value = (least + r->value) / 2;
        outcome = carry_out(a, &middle);
        if (middle.proof == BOIL_PLAN_PROVED)
            *r = middle;
        else
            least = middle.value;
    }
    return outcome;
}
