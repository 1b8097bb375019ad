#include <math.h>
#include <stdatomic.h>
#include <stdlib.h>
#include <string.h>

#include "base/clock.h"
#include "base/program.h"
#include "base/threads.h"
#include "commands/plan/answer.h"

/* Draws of a count: 2 * REPLICATES * POINTS. 128 tell 95 % from 89 and 98: judgement between that and the time of as many runs. */
enum { REPLICATES = 8, POINTS = 8, DRAWS = 2 * REPLICATES * POINTS };

/* Plans that leave more and more time, after the first. */
enum { TRIALS = 4 };

/* One count, under way. */
typedef struct {
    const plan_answer *of;
    scenario_text *text;
    boil_sampling design;
    boil_plan_draw *draws;
    threads threads;
    atomic_bool refused; /* memory, for a draw */
    bool wanted;         /* somebody sees how far it is */
    double shown_s;
    size_t done;
} count_of;

/* Not that of the bath, where it was read: the odds of what is left count from there. */
bool plan_odds_possible(const plan_answer *a)
{
    const scenario *s = a->scenario;
    for (size_t i = 0; i < s->uncertain_count; i++)
        if (a->rest == NULL || !plan_rest_reads(s->uncertain[i].thing.key))
            return true;
    return program_complain("%s: nothing %sis uncertain, so there are no odds: say what is in a section [uncertain], such as "
                            "'heat efficiency = 55 %% to 65 %%'",
                            s->path, s->uncertain_count > 0 ? "that [now] does not read " : "");
}

static boil_outcome carry_out(const plan_answer *a, const scenario *drawn, boil_simulation **own, boil_plan_draw *out)
{
    boil_plant plant = drawn->plant;
    boil_plan_job *jobs = calloc(a->problem.jobs_count, sizeof *jobs);
    if (jobs == NULL)
        return BOIL_NO_MEMORY;
    if (a->rest != NULL)
        plan_rest_drawn(a->rest, drawn, &plant, jobs);
    else
        for (size_t i = 0; i < a->problem.jobs_count; i++)
            jobs[i] = drawn->jobs.list[i].job; /* of the same text: as many */
    boil_outcome outcome = boil_plan_draw_of(&a->planning, &a->best->table, &plant, jobs, own, out);
    free(jobs);
    return outcome;
}

/* In its own scenario, with the numbers of a row of the design. */
static boil_outcome draw(const count_of *c, size_t row, boil_simulation **own, boil_plan_draw *out)
{
    const plan_answer *a = c->of;
    scenario_change changes[BOIL_SAMPLING_INPUTS];
    double u[BOIL_SAMPLING_INPUTS];
    scenario s;
    messages m;
    *out = boil_plan_draw_failed();
    boil_sampling_row(&c->design, row, u);
    for (size_t i = 0; i < a->scenario->uncertain_count; i++) {
        const uncertain *what = &a->scenario->uncertain[i];
        changes[i] = (scenario_change){&what->thing, boil_spread_at(&what->spread, u[i])};
    }
    messages_init(&m);
    boil_outcome outcome = scenario_of_text(c->text, changes, a->scenario->uncertain_count, &s, &m);
    if (outcome == BOIL_OK)
        outcome = carry_out(a, &s, own, out);
    messages_free(&m);
    scenario_free(&s);
    return outcome == BOIL_NO_MEMORY ? outcome : BOIL_OK; /* no such bath: it does not hold in it */
}

static void show(count_of *c)
{
    const double often_s = 0.3;
    double now = clock_now_s();
    c->done++;
    if (!c->wanted || now - c->shown_s < often_s)
        return;
    c->shown_s = now;
    fprintf(stderr, "\r %zu of %d draws, last out %s   ", c->done, (int)DRAWS,
            plan_clock_at(c->of, c->of->best->table.value.of[BOIL_PLAN_LAST_OUT_S]).text);
}

/* What one thread makes of them, all in one workspace. */
static void make_some(count_of *c)
{
    boil_simulation *own = NULL;
    size_t rows = boil_sampling_rows(&c->design), kinds = rows / (REPLICATES * POINTS);
#ifdef _OPENMP
#pragma omp for schedule(dynamic)
#endif
    for (size_t i = 0; i < DRAWS; i++) {
        if (threads_asked_to_stop() || atomic_load(&c->refused))
            continue;
        if (draw(c, i / 2 * kinds + i % 2, &own, &c->draws[i]) != BOIL_OK)
            atomic_store(&c->refused, true);
#ifdef _OPENMP
#pragma omp critical
#endif
        show(c);
    }
    boil_simulation_free(own);
}

static void make_all(count_of *c)
{
#ifdef _OPENMP
#pragma omp parallel num_threads(c->threads.count)
#endif
    make_some(c);
}

/* Draws that nobody made a plan with before: the seed goes on by one from count to count. */
static boil_outcome count_draws(plan_answer *a, size_t counted, scenario_text *text, const plan_work *w, boil_plan_draw draws[])
{
    const unsigned long seeds = 4294967295;
    count_of c = {.of = a, .text = text, .draws = draws, .wanted = w->progress};
    boil_sampling_plan design = {.inputs = a->scenario->uncertain_count,
                                 .points = POINTS,
                                 .replicates = REPLICATES,
                                 .seed = (uint32_t)((w->seed - 1 + counted) % seeds + 1)};
    boil_outcome outcome = boil_sampling_init(&c.design, &design);
    if (outcome != BOIL_OK)
        return outcome;
    for (size_t i = 0; i < DRAWS; i++)
        draws[i] = boil_plan_draw_failed();
    threads_begin(&c.threads, w->threads);
    make_all(&c);
    threads_end(&c.threads);
    if (c.shown_s > 0)
        fputc('\n', stderr);
    a->stopped = a->stopped || threads_asked_to_stop();
    if (!a->stopped)
        a->odds.counted = boil_plan_odds_of(draws, DRAWS);
    return c.refused ? BOIL_NO_MEMORY : BOIL_OK;
}

/* Whether a plan may be sought for what was drawn, and is found; else why not. */
static boil_outcome seek_again(const plan_answer *a, const boil_plan_bath *bath, const plan_work *w, plan_answer *next)
{
    *next = *a;
    next->plan = next->listed = (boil_plan_proof){.broken_count = 0};
    next->best = &next->plan;
    boil_outcome outcome = boil_planning_again(&a->planning, bath, &next->planning);
    const boil_plan_part *unfit = outcome == BOIL_OK ? plan_part_unfit(next) : NULL;
    if (outcome == BOIL_BAD_INPUT)
        TEXT_ADD(next->odds.lacks.text, "jobs would come to more than %zu baskets", BOIL_PLAN_PARTS_MAX);
    else if (unfit != NULL)
        TEXT_ADD(next->odds.lacks.text, "'%.60s' would have to be split, for a dip would bear %s of it",
                 text_plain(a->scenario->jobs.list[unfit->job].name).text,
                 format_quantity(a->system, DIM_MASS, plan_part_bears_kg(next, unfit)).text);
    if (outcome != BOIL_OK || unfit != NULL)
        return outcome == BOIL_BAD_INPUT ? BOIL_OK : outcome;
    outcome = plan_seek(next, w);
    next->tried += a->tried;
    if (outcome == BOIL_OK && !boil_plan_proof_holds(next->best))
        TEXT_ADD(next->odds.lacks.text, "one that leaves more time breaks a limit: %.120s%s",
                 plan_broken(next, next->best, 0).text,
                 next->best->broken[0].what == BOIL_PLAN_BREAKS_HEAT ? "; split or lighter it may do" : "");
    return outcome;
}

static void free_found(plan_answer *a)
{
    boil_plan_proof_free(&a->plan);
    boil_plan_proof_free(&a->listed);
    boil_planning_free(&a->planning);
}

/* What was found later takes the place of what was found before. The jobs and the breaks are those of `a`. */
static void take_over(plan_answer *a, plan_answer *next)
{
    bool listed = next->best == &next->listed;
    free_found(a);
    a->planning = next->planning;
    a->plan = next->plan;
    a->listed = next->listed;
    a->best = listed ? &a->listed : &a->plan;
    a->odds = next->odds;
    a->odds.replanned = true;
    next->planning = (boil_planning){.plant = NULL};
    next->plan = next->listed = (boil_plan_proof){.broken_count = 0};
}

static boil_outcome count_plan(plan_answer *a, scenario_text *text, const plan_work *w, boil_plan_draw draws[])
{
    boil_outcome outcome = count_draws(a, a->odds.plans, text, w, draws);
    a->odds.plans += !a->stopped;
    a->odds.met = !a->stopped && a->odds.counted.holds.chance >= a->odds.asked;
    return outcome;
}

/* One more plan, made with what the one before lacked. *on: it may help to make another. */
static boil_outcome one_more(plan_answer *a, scenario_text *text, const plan_work *w, boil_plan_draw draws[], bool *on)
{
    plan_answer next;
    boil_plan_bath bath = a->planning.bath;
    *on = false;
    boil_outcome outcome = boil_plan_spare(draws, DRAWS, a->odds.asked, a->best, &bath);
    if (outcome == BOIL_NO_ROOT) {
        TEXT_ADD(a->odds.lacks.text, "in more draws than may fail the boil never comes back");
        return BOIL_OK;
    }
    if (outcome != BOIL_OK)
        return outcome;
    outcome = seek_again(a, &bath, w, &next);
    bool holds = outcome == BOIL_OK && next.odds.lacks.text[0] == '\0' && !next.stopped;
    if (holds)
        outcome = count_plan(&next, text, w, draws);
    a->stopped = next.stopped;
    a->tried = next.tried;
    a->proofs = next.proofs;
    a->odds.plans = next.odds.plans;
    a->odds.lacks = next.odds.lacks;
    if (holds && outcome == BOIL_OK && !next.stopped)
        take_over(a, &next);
    *on = holds && !a->stopped;
    free_found(&next);
    return outcome;
}

boil_outcome plan_seek_odds(plan_answer *a, scenario_text *text, const plan_work *w)
{
    bool on = true;
    a->odds = (plan_odds){.asked = w->odds, .counted = boil_plan_odds_of(NULL, 0)};
    a->odds.without = a->odds.counted;
    a->odds.without_last_s = a->best->table.value.of[BOIL_PLAN_LAST_OUT_S];
    if (!boil_plan_proof_holds(a->best) || a->stopped)
        return BOIL_OK;
    boil_plan_draw *draws = malloc(DRAWS * sizeof *draws);
    boil_outcome outcome = draws != NULL ? count_plan(a, text, w, draws) : BOIL_NO_MEMORY;
    a->odds.without = a->odds.counted;
    for (int i = 0; i < TRIALS && on && outcome == BOIL_OK && !a->odds.met && !a->stopped; i++)
        outcome = one_more(a, text, w, draws, &on);
    free(draws);
    return outcome;
}
