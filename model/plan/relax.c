#include "plan/relax.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "plan/search.h"

/* Judgement: half of the shortest search, a value to a 32nd of its span, and no more jobs than a person reads of. */
enum { TRIES = 3000, HALVINGS = 5, MUSTS = 20, JOBS = 30 };

/* A case that may be changed, of the same parts or fewer. */
typedef struct {
    boil_plan_case of;
    boil_plan_problem problem;
    boil_plan_bath bath;
    boil_plan_job *jobs;
    boil_plan_part *parts;
    boil_plan_hanging_dip lifts[BOIL_POSITIONS_MAX];
} trial;

static void trial_free(trial *t)
{
    free(t->jobs);
    free(t->parts);
}

static boil_outcome trial_begin(trial *t, const boil_plan_case *c)
{
    *t = (trial){.problem = *c->problem, .bath = *c->bath};
    t->jobs = malloc(c->problem->jobs_count * sizeof *t->jobs);
    t->parts = malloc(c->parts_count * sizeof *t->parts);
    if (t->jobs == NULL || t->parts == NULL) {
        trial_free(t);
        return BOIL_NO_MEMORY;
    }
    memcpy(t->jobs, c->problem->jobs, c->problem->jobs_count * sizeof *t->jobs);
    memcpy(t->parts, c->parts, c->parts_count * sizeof *t->parts);
    t->problem.jobs = t->jobs;
    t->of = (boil_plan_case){&t->problem, &t->bath, t->parts, c->parts_count, c->lessons};
    return BOIL_OK;
}

/* The whole list, in the order of the best that was found; or what is left of it, in the list's. */
static boil_outcome seek(const trial *t, const boil_plan_order *from, uint64_t seed, boil_plan_value *v)
{
    boil_plan_order o;
    boil_plan_search s = {.seed = seed, .chain = 1, .tries = TRIES};
    boil_outcome outcome = boil_plan_order_begin(&o, t->of.parts_count);
    if (outcome != BOIL_OK)
        return outcome;
    if (from->parts_count == t->of.parts_count)
        boil_plan_order_copy(from, &o);
    outcome = boil_plan_search_run(&t->of, &s, &o, v);
    boil_plan_order_free(&o);
    return outcome;
}

typedef struct {
    const boil_plan_case *of;
    const boil_plan_order *best;
    double heater_W;
    uint64_t seed;
} asking;

static void leave_out(trial *t, size_t job)
{
    size_t kept = 0;
    for (size_t i = 0; i < t->of.parts_count; i++)
        if (t->parts[i].job != job)
            t->parts[kept++] = t->parts[i];
    t->of.parts_count = kept;
    t->of.lessons = NULL; /* they are known by the numbers of parts */
}

void boil_plan_relax_shift(const boil_plan_relaxation *r, boil_plan_problem *p, boil_plan_job jobs[])
{
    if (r->what == BOIL_PLAN_GIVES_END)
        p->end_s = HUGE_VAL;
    else if (r->what == BOIL_PLAN_GIVES_MUST)
        jobs[r->job].priority = BOIL_PLAN_NORMAL;
    else if (r->what == BOIL_PLAN_GIVES_POSITIONS)
        p->positions = (size_t)r->value;
    else if (r->what == BOIL_PLAN_GIVES_HOIST)
        p->hoist_s = r->value;
}

/* A bath that does not boil comes up as much sooner, and from then on what hangs there has its minutes. */
static void more_heat(trial *t, double more_W)
{
    boil_plan_bath *b = &t->bath;
    double ready_s = b->ready_s * b->quiet_W / (b->quiet_W + more_W), sooner_s = b->ready_s - ready_s;
    for (size_t i = 0; i < t->problem.hanging_count; i++) {
        t->lifts[i] = t->problem.hanging[i];
        if (t->lifts[i].leaves_s > b->ready_s)
            t->lifts[i].leaves_s -= sooner_s;
    }
    t->problem.hanging = t->lifts;
    b->ready_s = ready_s;
    b->quiet_W += more_W;
}

static void give(trial *t, const asking *a, const boil_plan_relaxation *r)
{
    boil_plan_relax_shift(r, &t->problem, t->jobs);
    if (r->what == BOIL_PLAN_GIVES_JOB) {
        leave_out(t, r->job);
    } else if (r->what == BOIL_PLAN_GIVES_HEAT) {
        more_heat(t, (r->value - 1) * a->heater_W);
    } else if (r->what == BOIL_PLAN_GIVES_LIMIT) {
        t->bath.most_kg *= r->value / t->bath.limit_s;
        t->bath.limit_s = r->value;
    }
}

static boil_outcome ask(const asking *a, boil_plan_relaxation *r)
{
    trial t;
    boil_plan_value v;
    boil_outcome outcome = trial_begin(&t, a->of);
    if (outcome != BOIL_OK)
        return outcome;
    give(&t, a, r);
    outcome = seek(&t, a->best, a->seed, &v);
    r->works = outcome == BOIL_OK && boil_plan_holds(&v);
    r->last_out_s = outcome == BOIL_OK ? v.of[BOIL_PLAN_LAST_OUT_S] : 0;
    trial_free(&t);
    return outcome;
}

/* The least value from `least`, which does not do, that does; the most is asked first. */
static boil_outcome ask_least(const asking *a, double least, boil_plan_relaxation *r)
{
    boil_plan_relaxation most = *r;
    boil_outcome outcome = ask(a, &most);
    *r = most;
    for (int i = 0; i < HALVINGS && outcome == BOIL_OK && most.works; i++) {
        boil_plan_relaxation middle = *r;
        middle.value = (least + r->value) / 2;
        outcome = ask(a, &middle);
        if (middle.works)
            *r = middle;
        else
            least = middle.value;
    }
    return outcome;
}

static boil_outcome ask_jobs(const asking *a, boil_plan_relaxation list[], size_t *count)
{
    const boil_plan_problem *p = a->of->problem;
    boil_outcome outcome = BOIL_OK;
    size_t musts = 0;
    for (size_t j = 0; j < p->jobs_count && outcome == BOIL_OK; j++)
        if (p->jobs[j].priority == BOIL_PLAN_MUST && musts++ < MUSTS) {
            list[*count] = (boil_plan_relaxation){.what = BOIL_PLAN_GIVES_MUST, .job = j};
            outcome = ask(a, &list[(*count)++]);
        }
    bool some_left = p->jobs_count > 1 && p->jobs_count <= JOBS;
    for (size_t j = 0; some_left && j < p->jobs_count && outcome == BOIL_OK; j++) {
        list[*count] = (boil_plan_relaxation){.what = BOIL_PLAN_GIVES_JOB, .job = j};
        outcome = ask(a, &list[(*count)++]);
    }
    return outcome;
}

boil_outcome boil_plan_relax(const boil_plan_case *c, const boil_plan_order *best, double heater_W, uint64_t seed,
                             boil_plan_relaxation list[BOIL_PLAN_RELAXATIONS_MAX], size_t *count)
{
    const asking a = {c, best, heater_W, seed};
    const struct {
        boil_plan_relaxation ask;
        double least; /* NaN: there is nothing between */
    } others[] = {
        {{.what = BOIL_PLAN_GIVES_POSITIONS, .value = (double)c->problem->positions + 1}, (double)NAN},
        {{.what = BOIL_PLAN_GIVES_HEAT, .value = BOIL_PLAN_GIVES_TIMES}, 1},
        {{.what = BOIL_PLAN_GIVES_LIMIT, .value = BOIL_PLAN_GIVES_TIMES * c->bath->limit_s}, c->bath->limit_s},
        {{.what = BOIL_PLAN_GIVES_HOIST, .value = c->problem->hoist_s / 2}, (double)NAN},
    };
    list[0] = (boil_plan_relaxation){.what = BOIL_PLAN_GIVES_END};
    *count = 1;
    boil_outcome outcome = ask(&a, &list[0]);
    list[0].value = list[0].last_out_s;
    if (outcome == BOIL_OK)
        outcome = ask_jobs(&a, list, count);
    for (size_t i = 0; i < sizeof others / sizeof others[0] && outcome == BOIL_OK; i++) {
        boil_plan_relaxation *r = &list[(*count)++];
        *r = others[i].ask;
        outcome = isnan(others[i].least) ? ask(&a, r) : ask_least(&a, others[i].least, r);
    }
    return outcome;
}
