#include "commands/plan/answer.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/memory.h"
#include "base/program.h"
#include "plan/hands.h"

/* In the order of time, one that begins in another taken into it. */
static size_t merge_breaks(const boil_schedule *s, boil_break list[])
{
    size_t count = 0;
    for (size_t i = 0; i < s->breaks_count; i++) {
        if (!(s->breaks[i].to_s > 0)) /* over, as the rest of a shift begins */
            continue;
        size_t at = count++;
        for (; at > 0 && list[at - 1].from_s > fmax(0, s->breaks[i].from_s); at--)
            list[at] = list[at - 1];
        list[at] = (boil_break){fmax(0, s->breaks[i].from_s), s->breaks[i].to_s};
    }
    size_t kept = 0;
    for (size_t i = 0; i < count; i++)
        if (kept > 0 && list[i].from_s <= list[kept - 1].to_s)
            list[kept - 1].to_s = fmax(list[kept - 1].to_s, list[i].to_s);
        else
            list[kept++] = list[i];
    return kept;
}

/* What a scenario has to say for a plan, and must not. */
static bool can_be_planned(const scenario *s)
{
    bool good = true;
    if (s->jobs.count == 0)
        good = program_complain("%s: no jobs: list them in [jobs], or name a file: 'jobs = FILE.csv' in [plan], as "
                                "'scenarios/plan/short-morning.bath' does, which comes with the program",
                                s->path);
    if (s->times != MOMENTS_BY_CLOCK)
        good = program_complain(
            "%s: a plan counts by the clock: set 'times = by the clock' and 'start' above the first section", s->path);
    if (!(s->plant.tank.positions > 0))
        good = program_complain("%s: [tank] needs 'positions', the places for loads side by side", s->path);
    if (s->schedule.count > 0)
        good = program_complain("%s: its acts are what a plan finds: take them out, or 'run' it as it is", s->path);
    return good;
}

static boil_plan_problem problem_of(plan_answer *a, const scenario *s)
{
    for (size_t i = 0; i < s->jobs.count; i++)
        a->jobs[i] = s->jobs.list[i].job;
    return (boil_plan_problem){.jobs = a->jobs,
                               .jobs_count = s->jobs.count,
                               .positions = (size_t)s->plant.tank.positions,
                               .hoist_s = s->plan.hoist_s,
                               .settle_s = s->plan.settle_s,
                               .end_s = s->plan.end_s,
                               .water_kg_s = s->plan.water_kg_s,
                               .breaks = a->breaks,
                               .breaks_count = merge_breaks(&s->schedule, a->breaks)};
}

bool plan_begin(plan_answer *a, const scenario *s, const plan_rest *rest, unit_system told, boil_outcome *result)
{
    boil_run_options o = boil_run_options_default();
    *a = (plan_answer){.scenario = s, .system = told, .rest = rest};
    *result = BOIL_OK;
    if (!can_be_planned(s))
        return false;
    a->jobs = calloc(s->jobs.count, sizeof *a->jobs);
    if (a->jobs == NULL) {
        *result = BOIL_NO_MEMORY;
        return false;
    }
    a->problem = problem_of(a, s);
    boil_outcome outcome = boil_planning_begin(&s->plant, &a->problem, &o, &a->planning);
    if (outcome == BOIL_NO_ROOT)
        return program_complain("%s: this heat does not bring the boil back: 'size' says what would", s->path);
    if (outcome == BOIL_BAD_INPUT)
        return program_complain("%s: the jobs come to more than %zu baskets", s->path, BOIL_PLAN_PARTS_MAX);
    if (outcome == BOIL_OK && rest != NULL)
        outcome = boil_plan_take_up(&a->planning, &rest->under_way, &a->problem, a->jobs, a->hanging, a->lifts);
    *result = outcome;
    return outcome == BOIL_OK;
}

void plan_free(plan_answer *a)
{
    boil_plan_proof_free(&a->plan);
    boil_plan_proof_free(&a->listed);
    boil_planning_free(&a->planning);
    free(a->jobs);
    *a = (plan_answer){.scenario = NULL};
}

double plan_part_bears_kg(const plan_answer *a, const boil_plan_part *p)
{
    const boil_plan_bath *b = &a->planning.bath;
    double basket = p->load.basket_kg, by_heat = boil_plan_most_heat(b) / p->heat_J * boil_plan_part_mass(p);
    return fmax(0, fmin(by_heat, b->most_kg) - basket);
}

static bool part_fits(const plan_answer *a, const boil_plan_part *p)
{
    const boil_plan_bath *b = &a->planning.bath;
    bool by_run = boil_plan_part_mass(p) <= b->most_kg && p->heat_J <= boil_plan_most_heat(b);
    return by_run || boil_plan_parts_needed(&a->scenario->jobs.list[p->job].job, b, a->planning.bath_K) > 0;
}

const boil_plan_part *plan_part_unfit(const plan_answer *a)
{
    for (size_t i = 0; i < a->planning.parts.count; i++)
        if (!part_fits(a, &a->planning.parts.list[i]))
            return &a->planning.parts.list[i];
    return NULL;
}

static bool job_fits(const plan_answer *a, const boil_plan_part *p)
{
    const boil_plan_bath *b = &a->planning.bath;
    const scenario_job *j = &a->scenario->jobs.list[p->job];
    boil_plan_job split = j->job;
    if (part_fits(a, p))
        return true;
    split.may_split = true;
    size_t could = boil_plan_parts_needed(&split, b, a->planning.bath_K);
    bool in_list = strcmp(a->scenario->jobs.file, a->scenario->path) != 0;
    formatted_text most = format_quantity(a->system, DIM_MASS, plan_part_bears_kg(a, p));
    if (could > 0)
        return program_complain("%s:%zu: '%s': a dip bears %s of it; %s (%zu parts)", a->scenario->jobs.file, j->line, j->name,
                                most.text, in_list ? "write 'yes' in column 'split'" : "say 'may split'", could);
    return program_complain("%s:%zu: '%s': a dip bears %s of it, and its pieces are heavier", a->scenario->jobs.file, j->line,
                            j->name, most.text);
}

bool plan_jobs_fit(const plan_answer *a)
{
    bool good = true;
    for (size_t i = 0; i < a->planning.parts.count; i++)
        good = job_fits(a, &a->planning.parts.list[i]) && good;
    return good;
}

plan_names plan_part_name(const plan_answer *a, size_t part)
{
    const boil_plan_part *p = &a->planning.parts.list[part];
    plan_names n = {""};
    TEXT_ADD(n.text, "%.60s", text_plain(a->scenario->jobs.list[p->job].name).text);
    if (p->of > 1)
        TEXT_ADD(n.text, " %zu/%zu", p->number + 1, p->of);
    return n;
}

plan_names plan_dip_names(const plan_answer *a, const boil_plan_timetable *t, size_t dip)
{
    const boil_plan_dip *d = &t->dips[dip];
    plan_names n = {""};
    for (size_t i = 0; i < d->count; i++)
        TEXT_ADD(n.text, "%s%s", i > 0 ? " + " : "", plan_part_name(a, t->parts[d->first + i]).text);
    return n;
}

/* The earliest due time of what hangs in a dip; infinity: none. */
static double due_of(const plan_answer *a, const boil_plan_timetable *t, const boil_plan_dip *d)
{
    double due_s = HUGE_VAL;
    for (size_t i = 0; i < d->count; i++)
        due_s = fmin(due_s, a->jobs[a->planning.parts.list[t->parts[d->first + i]].job].due_s);
    return due_s;
}

plan_names plan_dip_reason(const plan_answer *a, const boil_plan_timetable *t, size_t dip)
{
    static const char *const why[BOIL_PLAN_REASONS] = {
        [BOIL_PLAN_FIRST] = "first",        [BOIL_PLAN_BOIL] = "boil is back",    [BOIL_PLAN_HOIST] = "hoist free",
        [BOIL_PLAN_BREAK] = "break over",   [BOIL_PLAN_PLACE] = "place free",     [BOIL_PLAN_EARLIEST] = "not before",
        [BOIL_PLAN_WARM] = "others warmed", [BOIL_PLAN_STAY] = "out in its time", [BOIL_PLAN_WATER] = "watered",
    };
    const boil_plan_dip *d = &t->dips[dip];
    double due_s = due_of(a, t, d);
    plan_names n = {""};
    if (isfinite(due_s))
        TEXT_ADD(n.text, "due %s", format_clock(a->scenario->start_s, due_s).text);
    else
        TEXT_ADD(n.text, "%s", why[d->reason]);
    return n;
}

static int by_time(const void *left, const void *right)
{
    const plan_line *x = left, *y = right;
    if (x->time_s != y->time_s)
        return x->time_s < y->time_s ? -1 : 1;
    return x->kind != y->kind ? (x->kind < y->kind ? -1 : 1) : (x->which > y->which) - (x->which < y->which);
}

plan_line *plan_lines(const plan_answer *a, const boil_plan_timetable *t, size_t *count)
{
    size_t n = 0,
           most = 2 * t->dips_count + t->pours_count + t->salts_count + a->problem.breaks_count + a->problem.hanging_count;
    plan_line *list = memory_needed(malloc((most + 1) * sizeof *list));
    double last_s = t->value.of[BOIL_PLAN_LAST_OUT_S];
    *count = 0;
    if (list == NULL)
        return NULL;
    for (size_t i = 0; i < t->dips_count; i++) {
        list[n++] = (plan_line){PLAN_IN, t->dips[i].enters_s, t->dips[i].leaves_s, i};
        list[n++] = (plan_line){PLAN_OUT, t->dips[i].leaves_s, t->dips[i].leaves_s, i};
    }
    for (size_t i = 0; i < a->problem.hanging_count; i++)
        list[n++] = (plan_line){PLAN_LIFT, a->lifts[i].leaves_s, a->lifts[i].leaves_s, i};
    for (size_t i = 0; i < t->pours_count; i++)
        list[n++] = (plan_line){PLAN_WATER, t->pours[i].start_s, t->pours[i].start_s + t->pours[i].over_s, i};
    for (size_t i = 0; i < t->salts_count; i++)
        list[n++] = (plan_line){PLAN_SALTS, t->salts[i].start_s, t->salts[i].start_s + t->salts[i].over_s, i};
    for (size_t i = 0; i < a->problem.breaks_count; i++)
        if (a->breaks[i].from_s < last_s)
            list[n++] = (plan_line){PLAN_BREAK, a->breaks[i].from_s, a->breaks[i].to_s, i};
    qsort(list, n, sizeof *list, by_time);
    *count = n;
    return list;
}

double plan_slowest_s(const boil_plan_proof *p)
{
    double slowest = 0;
    for (size_t i = 0; i < p->table.dips_count; i++)
        slowest = fmax(slowest, p->seen[i].gravest_s);
    return slowest;
}

formatted_text plan_clock_at(const plan_answer *a, double s)
{
    return format_clock_seconds(a->scenario->start_s, s + 0.5);
}
