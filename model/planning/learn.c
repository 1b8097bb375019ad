#include "planning/learn.h"

#include <math.h>
#include <string.h>

#include "plan/decoder.h"
#include "planning/idle.h"

#define SPARE_S 2.0 /* of a stay, and of a boil's return: a little more than the steps of a run; judgement */

/* A finding that water or salts make, and what then helps: by how much is judgement, and rounds repeat what was too little. */
typedef struct {
    const char *id;
    double guard_s, flow, sifting; /* added; times */
} remedy;

static const remedy remedies[] = {
    {"water-layer", 45, 1, 1},        {"water-on-quiet-bath", 45, 1, 1}, {"layer-outlasts-run", 45, 1, 1},
    {"load-through-layer", 45, 1, 1}, {"surface-boils", 45, 0.8, 1},     {"water-too-fast", 0, 0.8, 1},
    {"steam-surge", 0, 0.8, 0.8},     {"freeboard-low", 0, 0.8, 0.8},    {"overflow", 0, 0.6, 0.6},
    {"boil-lost-long", 0, 0.8, 0.8},  {"salt-slug", 0, 1, 0.6},          {"salt-bed", 0, 1, 0.6},
    {"salt-on-quiet-bath", 45, 1, 1}, {"water-on-dry-salt", 45, 1, 0.6},
};

/* NULL: nothing helps. */
static const remedy *remedy_of(const char *id)
{
    for (size_t i = 0; i < sizeof remedies / sizeof remedies[0]; i++)
        if (strcmp(remedies[i].id, id) == 0)
            return &remedies[i];
    return NULL;
}

void boil_plan_heed(boil_plan_bath *b, const char *id)
{
    const remedy *r = remedy_of(id);
    if (r == NULL)
        return;
    b->guard_s += r->guard_s;
    b->flow_kg_s *= r->flow;
    b->sift_kg_s *= r->sifting;
}

static void learn_bath(boil_plan_bath *b, const boil_plan_proof *p)
{
    const double tells = 0.02; /* less is no news; judgement */
    if (fabs(p->boils_off_kg_s - b->boils_off_kg_s) > tells * b->boils_off_kg_s)
        b->boils_off_kg_s = p->boils_off_kg_s;
    if (b->ready_s > 0 && p->table.dips_count > 0)
        b->ready_s += p->seen[0].late_s;        /* heating up took longer */
    b->strongest_kg *= p->over_K > 0 ? 0.9 : 1; /* what is left of the band is kept for what is not known: judgement */
    for (size_t i = 0; i < p->broken_count && i < BOIL_PLAN_BREAKS_KEPT; i++)
        if (p->broken[i].what == BOIL_PLAN_BREAKS_FINDING)
            boil_plan_heed(b, p->broken[i].id);
}

/* What it was planned with, corrected by what was seen. A boil that never was back, or steel that never was hot, says no number. */
static boil_plan_lesson lesson_of(const boil_planning *g, const boil_plan_proof *p, size_t k)
{
    const double never_s = 60; /* longer, where it never was hot: judgement */
    const boil_plan_dip *d = &p->table.dips[k];
    const boil_plan_seen *s = &p->seen[k];
    uint64_t key = boil_plan_lesson_key(p->table.parts + d->first, d->count);
    boil_plan_lesson l = boil_plan_lesson_of(&g->lessons, key);
    l.known = true;
    double away_s = isfinite(s->gravest_s) ? s->gravest_s : g->bath.limit_s;
    l.later_s += away_s + SPARE_S - d->recovery_s / (1 + g->bath.slower);
    l.more_s += isfinite(s->stay_least_s) ? s->stay_least_s + SPARE_S + g->bath.longer_s - d->stay_least_s : never_s;
    if (isfinite(s->stay_most_s))
        l.most_s += s->stay_most_s - SPARE_S - d->stay_most_s;
    return l;
}

boil_outcome boil_plan_learn(boil_planning *g, const boil_plan_proof *p)
{
    boil_outcome outcome = BOIL_OK;
    for (size_t k = 0; k < p->table.dips_count && outcome == BOIL_OK; k++) {
        boil_plan_lesson l = lesson_of(g, p, k);
        outcome = boil_plan_lesson_learn(&g->lessons, &l);
    }
    learn_bath(&g->bath, p);
    return outcome;
}

/* What it is the proof of, after the lessons so far. */
static boil_outcome prove_order(const boil_planning *g, const boil_plan_order *o, boil_plan_proof *out)
{
    boil_plan_case c = boil_planning_case(g);
    boil_plan_decoder d;
    boil_outcome outcome = boil_plan_decoder_begin(&d, &c);
    if (outcome != BOIL_OK)
        return outcome;
    outcome = boil_plan_prove(g, boil_plan_decode(&d, o), out);
    boil_plan_decoder_free(&d);
    return outcome;
}

/* What no later time of the same order mends: it breaks a limit by its make-up, or nothing that is broken teaches the next
   round anything. */
static bool is_hopeless(const boil_plan_proof *p)
{
    bool teaches = p->broken_count == 0 || p->broken_count > BOIL_PLAN_BREAKS_KEPT;
    for (size_t i = 0; i < p->broken_count && i < BOIL_PLAN_BREAKS_KEPT; i++) {
        const boil_plan_break *b = &p->broken[i];
        if (b->what <= BOIL_PLAN_BREAKS_END)
            return true;
        teaches = teaches || b->what != BOIL_PLAN_BREAKS_FINDING || remedy_of(b->id) != NULL;
    }
    return !teaches;
}

static bool is_broken(const boil_plan_proof *p, const boil_plan_fault *f)
{
    for (size_t i = 0; i < p->broken_count && i < BOIL_PLAN_BREAKS_KEPT; i++)
        if (p->broken[i].what == BOIL_PLAN_BREAKS_FINDING && strcmp(p->broken[i].title, f->title) == 0)
            return true;
    return false;
}

/* Where the runs found something, what is there before anything goes in. *any: some of it is that. */
static boil_outcome look_for_faults(boil_planning *g, const boil_plan_proof *p, bool *any)
{
    bool found = false;
    size_t kept = 0;
    for (size_t i = 0; i < p->broken_count && i < BOIL_PLAN_BREAKS_KEPT; i++)
        found = found || p->broken[i].what == BOIL_PLAN_BREAKS_FINDING;
    boil_outcome outcome = found ? boil_plan_look_idle(g) : BOIL_OK;
    for (size_t i = 0; found && i < g->idle_count; i++)
        if (is_broken(p, &g->idle[i]))
            g->idle[kept++] = g->idle[i];
    g->idle_count = found ? kept : g->idle_count;
    *any = g->idle_count > 0;
    return outcome;
}

boil_outcome boil_plan_settle(boil_planning *g, const boil_plan_order *o, boil_plan_proof *best, size_t *rounds)
{
    const int patience = 2; /* rounds without hope: what was learned may still move the others; judgement */
    bool holds = false, is_faulty = false;
    int hopeless = 0;
    for (int i = 0; i < BOIL_PLAN_ROUNDS && !holds && !is_faulty && hopeless < patience; i++) {
        boil_plan_proof p;
        boil_outcome outcome = prove_order(g, o, &p);
        if (outcome != BOIL_OK)
            return outcome;
        ++*rounds;
        holds = boil_plan_proof_holds(&p);
        hopeless += is_hopeless(&p);
        outcome = look_for_faults(g, &p, &is_faulty);
        if (outcome == BOIL_OK)
            outcome = boil_plan_learn(g, &p);
        bool better = boil_plan_proof_better(&p, best);
        boil_plan_proof_free(better ? best : &p);
        if (better)
            *best = p;
        if (outcome != BOIL_OK)
            return outcome;
    }
    return BOIL_OK;
}
