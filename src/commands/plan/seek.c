#include <math.h>
#include <signal.h>
#include <stdlib.h>
#include <time.h>
#include <unistd.h>

#include "base/signals.h"
#include "commands/plan/answer.h"
#include "plan/search.h"
#include "plan/starts.h"

/* Searches, each with what the proofs of those before taught. The first is right as a rule: the others are shorter. */
enum { PASSES = 3, SHORTER = 4 };

static volatile sig_atomic_t asked_to_stop;

static void ask_to_stop(int signal_number)
{
    (void)signal_number;
    asked_to_stop = 1;
}

/* The line that a person at a terminal sees. */
typedef struct {
    const plan_answer *answer;
    bool wanted;
    double begun_s, shown_s;
    size_t tried[BOIL_PLAN_CHAINS], before; /* timetables of each chain, and of the searches before */
} progress;

typedef struct {
    progress *of;
    int chain;
} chain_progress;

static double now_s(void)
{
    struct timespec t;
    clock_gettime(CLOCK_MONOTONIC, &t);
    return (double)t.tv_sec + 1e-9 * (double)t.tv_nsec;
}

static void show(progress *p, const boil_plan_value *best)
{
    const double quiet_s = 1, often_s = 0.3;
    double now = now_s();
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
    return !asked_to_stop;
}

#ifdef _OPENMP
static int threads_of(const plan_work *w)
{
    long processors = sysconf(_SC_NPROCESSORS_ONLN);
    return w->threads > 0 ? (int)w->threads : processors > 1 ? (int)processors : 1;
}
#endif

typedef struct {
    boil_plan_order order;
    boil_plan_value value;
    boil_outcome outcome;
} chain_end;

static void run_chain(const boil_plan_case *c, const plan_work *w, int pass, progress *p, int chain, chain_end *end)
{
    chain_progress told = {p, chain};
    boil_plan_search s = {.seed = w->seed,
                          .chain = (uint64_t)(pass * BOIL_PLAN_CHAINS + chain),
                          .tries = boil_plan_search_tries(c->parts_count) / (pass > 0 ? SHORTER : 1),
                          .keep_going = keep_going,
                          .context = &told};
    end->outcome = boil_plan_search_run(c, &s, &end->order, &end->value);
}

/* All chains from one order; the best of them, of equal ones the first, takes its place. */
static boil_outcome search(plan_answer *a, const plan_work *w, int pass, progress *p, boil_plan_order *o)
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
#pragma omp parallel for schedule(dynamic) num_threads(threads_of(w))
#endif
    for (int i = 0; i < BOIL_PLAN_CHAINS; i++)
        if (ends[i].outcome == BOIL_OK)
            run_chain(&c, w, pass, p, i, &ends[i]);
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

/* As long as a search finds something better, or what was found does not hold. */
static boil_outcome seek(plan_answer *a, const plan_work *w, progress *p, boil_plan_order *o)
{
    boil_plan_case c = boil_planning_case(&a->planning);
    boil_plan_start(&c, BOIL_PLAN_BY_LIST, false, o);
    boil_outcome outcome = prove_list(a, o);
    for (int pass = 0; pass < PASSES && outcome == BOIL_OK && !asked_to_stop; pass++) {
        outcome = search(a, w, pass, p, o);
        if (outcome == BOIL_OK)
            outcome = boil_plan_settle(&a->planning, o, &a->plan, &a->proofs);
        if (boil_plan_proof_holds(&a->plan) && pass > 0)
            break;
    }
    return outcome;
}

/* Signals that end the program are for the thread that began. */
static void begin_threads(const plan_work *w)
{
#ifdef _OPENMP
    sigset_t before;
    signals_hold(&before);
#pragma omp parallel num_threads(threads_of(w))
    (void)0;
    signals_release(&before);
#else
    (void)w;
#endif
}

boil_outcome plan_seek(plan_answer *a, const plan_work *w)
{
    struct sigaction stop = {.sa_handler = ask_to_stop}, old_interrupt, old_terminate;
    progress p = {.answer = a, .wanted = w->progress, .begun_s = now_s()};
    boil_plan_order o;
    begin_threads(w);
    a->seed = w->seed;
    boil_outcome outcome = boil_plan_order_begin(&o, a->planning.parts.count);
    if (outcome != BOIL_OK)
        return outcome;
    asked_to_stop = 0;
    sigaction(SIGINT, &stop, &old_interrupt);
    sigaction(SIGTERM, &stop, &old_terminate);
    outcome = seek(a, w, &p, &o);
    sigaction(SIGINT, &old_interrupt, NULL);
    sigaction(SIGTERM, &old_terminate, NULL);
    if (p.shown_s > 0)
        fputc('\n', stderr);
    a->stopped = asked_to_stop != 0;
    a->tried = p.before;
    a->best = boil_plan_proof_better(&a->listed, &a->plan) ? &a->listed : &a->plan;
    boil_plan_order_free(&o);
    return outcome;
}
