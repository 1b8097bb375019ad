#include <stdio.h>

#include "base/clock.h"
#include "base/threads.h"
#include "commands/plan/answer.h"
#include "plan/search.h"
#include "plan/starts.h"

/* Searches, each with what the proofs of those before taught. The first is right as a rule: the others are shorter, one where it was right,
   and more as long as a dip turns out to take more heat than was thought: its parts then have to hang otherwise. */
enum { PASSES = 3, MOST_PASSES = 10, SHORTER = 4 };

/* The threads, and the line that a person at a terminal sees. */
typedef struct {
    threads threads;
    const plan_answer *answer;
    bool wanted;
    double begun_s, shown_s;
    size_t tried[BOIL_PLAN_CHAINS], before; /* timetables of each chain, and of the searches before */
} progress;

typedef struct {
    progress *of;
    int chain;
} chain_progress;

static void show(progress *p, const boil_plan_value *best)
{
    const double quiet_s = 1, often_s = 0.3;
    double now = clock_now_s();
    size_t tried = p->before;
    if (!p->wanted || now - p->begun_s < quiet_s || now - p->shown_s < often_s)
        return;
    p->shown_s = now;
    for (int i = 0; i < BOIL_PLAN_CHAINS; i++)
        tried += p->tried[i];
    fprintf(stderr, "\r %.0f s  last out %s%s  %zu tried   ", now - p->begun_s,
            plan_clock_at(p->answer, best->of[BOIL_PLAN_LAST_OUT_S]).text, boil_plan_holds(best) ? "" : ", late", tried);
}

/* Chains of a search are told apart by number alone. */
static bool keep_going(void *context, const boil_plan_value *best, size_t tried)
{
    const chain_progress *c = context;
#ifdef _OPENMP
#pragma omp critical
#endif
    {
        c->of->tried[c->chain] = tried;
        show(c->of, best);
    }
    return !threads_asked_to_stop();
}

typedef struct {
    boil_plan_order order;
    boil_plan_value value;
    boil_outcome outcome;
} chain_end;

static void run_chain(const boil_plan_case *c, unsigned long seed, int pass, progress *p, int chain, chain_end *end)
{
    chain_progress told = {p, chain};
    boil_plan_search s = {.seed = seed,
                          .chain = (uint64_t)(pass * BOIL_PLAN_CHAINS + chain),
                          .tries = boil_plan_search_tries(c->parts_count) / (pass > 0 ? SHORTER : 1),
                          .keep_going = keep_going,
                          .context = &told};
    end->outcome = boil_plan_search_run(c, &s, &end->order, &end->value);
}

/* All chains from one order; the best of them, of equal ones the first, takes its place. */
static boil_outcome search(const plan_answer *a, int pass, progress *p, boil_plan_order *o)
{
    boil_plan_case c = boil_planning_case(&a->planning);
    chain_end ends[BOIL_PLAN_CHAINS];
    boil_outcome outcome = BOIL_OK;
    int best = 0;
    for (int i = 0; i < BOIL_PLAN_CHAINS; i++) {
        ends[i] = (chain_end){.outcome = BOIL_OK};
        ends[i].outcome = boil_plan_order_begin(&ends[i].order, c.parts_count);
        if (ends[i].outcome == BOIL_OK)
            boil_plan_order_copy(o, &ends[i].order);
    }
#ifdef _OPENMP
#pragma omp parallel for schedule(dynamic) num_threads(p->threads.count)
#endif
    for (int i = 0; i < BOIL_PLAN_CHAINS; i++)
        if (ends[i].outcome == BOIL_OK)
            run_chain(&c, a->seed, pass, p, i, &ends[i]);
    for (int i = 0; i < BOIL_PLAN_CHAINS; i++) {
        outcome = outcome == BOIL_OK ? ends[i].outcome : outcome;
        if (boil_plan_better(&ends[i].value, &ends[best].value))
            best = i;
        p->before += p->tried[i];
        p->tried[i] = 0;
    }
    if (outcome == BOIL_OK)
        boil_plan_order_copy(&ends[best].order, o);
    for (int i = 0; i < BOIL_PLAN_CHAINS; i++)
        boil_plan_order_free(&ends[i].order);
    return outcome;
}

/* Proofs teach of the bath too; what is learned from an order that nobody means to follow is forgotten, but for its dips. */
static boil_outcome prove_list(plan_answer *a, const boil_plan_order *o)
{
    const boil_plan_bath kept = a->planning.bath;
    boil_outcome outcome = boil_plan_settle(&a->planning, o, &a->listed, &a->proofs);
    a->planning.bath = kept;
    return outcome;
}

/* Whether another order may hold where this one does not: a dip is too cold as it is made up. */
static bool is_made_up_wrong(const boil_plan_proof *p)
{
    for (size_t k = 0; k < p->table.dips_count; k++)
        if (p->table.dips[k].too_cold && p->table.dips[k].count > 1)
            return true;
    return false;
}

/* Once more with what the first proofs taught, and again where what was found does not hold; not at all where the bath by
   itself does not. */
static boil_outcome seek(plan_answer *a, progress *p, boil_plan_order *o)
{
    boil_plan_case c = boil_planning_case(&a->planning);
    boil_plan_start(&c, BOIL_PLAN_BY_LIST, false, o);
    boil_outcome outcome = prove_list(a, o);
    for (int pass = 0; outcome == BOIL_OK && a->planning.idle_count == 0 && !threads_asked_to_stop(); pass++) {
        if (pass >= PASSES && (pass >= MOST_PASSES || !is_made_up_wrong(&a->plan)))
            break;
        outcome = search(a, pass, p, o);
        if (outcome == BOIL_OK)
            outcome = boil_plan_settle(&a->planning, o, &a->plan, &a->proofs);
        if (boil_plan_proof_holds(&a->plan) && pass > 0)
            break;
    }
    return outcome;
}

boil_outcome plan_seek(plan_answer *a, const plan_work *w)
{
    progress p = {.answer = a, .wanted = w->progress, .begun_s = clock_now_s()};
    boil_plan_order o;
    a->seed = w->seed;
    boil_outcome outcome = boil_plan_order_begin(&o, a->planning.parts.count);
    if (outcome != BOIL_OK)
        return outcome;
    threads_begin(&p.threads, w->threads);
    outcome = seek(a, &p, &o);
    threads_end(&p.threads);
    if (p.shown_s > 0)
        fputc('\n', stderr);
    a->stopped = threads_asked_to_stop();
    a->tried = p.before;
    a->best = boil_plan_proof_better(&a->listed, &a->plan) ? &a->listed : &a->plan;
    boil_plan_order_free(&o);
    return outcome;
}
