#include "planning/draws.h"

#include <gsl/gsl_sort.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "case/checks.h"
#include "findings/findings.h"
#include "planning/learn.h"

#define LATE_S 1.0 /* by the steps of a run */

boil_plan_draw boil_plan_draw_failed(void)
{
    return (boil_plan_draw){.slowest_s = HUGE_VAL};
}

/* The same parts of jobs that are as the draw has them: as warm as its room, where they say nothing else. */
static boil_outcome carry(const boil_planning *g, const boil_plan_timetable *t, const boil_plant *plant,
                          const boil_plan_job jobs[], boil_plan_carried *out)
{
    boil_plan_case c = boil_planning_case(g);
    boil_plan_part *parts = malloc((c.parts_count + 1) * sizeof *parts);
    if (parts == NULL)
        return BOIL_NO_MEMORY;
    for (size_t i = 0; i < c.parts_count; i++) {
        parts[i] = c.parts[i];
        parts[i].load = boil_plan_part_load(&jobs[parts[i].job], parts[i].number, parts[i].of);
    }
    c.parts = parts;
    boil_outcome outcome = boil_plan_carry(&c, t, plant, out);
    free(parts);
    return outcome;
}

/* One load of the run: whether it was back, had its minutes and was out in time. */
static void judge_load(const boil_planning *g, const boil_plan_job *j, const boil_load_result *r, boil_plan_draw *d)
{
    const double never_s = 60; /* longer, where it never was hot: judgement */
    double had_s = boil_plan_hot_for_s(r);
    double due_s = fmin(g->problem->end_s, j->priority == BOIL_PLAN_MUST ? j->due_s : HUGE_VAL);
    d->slowest_s = fmax(d->slowest_s, isnan(r->recovery_s) ? HUGE_VAL : r->recovery_s);
    d->lacks_s = fmax(d->lacks_s, isnan(r->hot_s) ? never_s : j->least_s - had_s);
    d->holds = d->holds && r->lifted_s <= due_s + LATE_S && boil_plan_minutes_hold(j, had_s);
}

static void judge_findings(const boil_findings *f, boil_plan_draw *d)
{
    size_t n = 0;
    for (size_t i = 0; i < f->count; i++) {
        if (f->list[i].severity <= BOIL_SEVERITY_NOTICE)
            continue;
        d->holds = false;
        if (n < BOIL_PLAN_DRAW_FINDINGS)
            d->found[n++] = f->list[i].id;
    }
}

static void judge(const boil_planning *g, const boil_plant *plant, const boil_plan_job jobs[], const boil_plan_carried *c,
                  const boil_history *h, boil_plan_draw *d)
{
    *d = (boil_plan_draw){.holds = h->end == BOIL_RUN_DONE && h->loads_count == g->parts.count};
    for (size_t i = 0; i < h->loads_count; i++)
        judge_load(g, &jobs[g->parts.list[c->acts[h->loads[i].action].part].job], &h->loads[i], d);
    if (h->loads_count < g->parts.count || h->end != BOIL_RUN_DONE)
        d->slowest_s = HUGE_VAL;
    d->back = d->slowest_s <= plant->limits.recovery_s;
    d->holds = d->holds && d->back;
}

static boil_outcome run(const boil_planning *g, const boil_plant *plant, const boil_plan_job jobs[], const boil_plan_carried *c,
                        boil_simulation **own, boil_plan_draw *out)
{
    boil_run_options o = g->options;
    const boil_history *h;
    boil_findings found;
    o.row_interval_s = 0;
    if (!boil_check_case(plant, &c->schedule, &o))
        return BOIL_BAD_INPUT;
    boil_outcome outcome = boil_run_in(own, plant, &c->schedule, &o, &h);
    if (outcome != BOIL_OK)
        return outcome;
    judge(g, plant, jobs, c, h, out);
    outcome = boil_findings_of(plant, &c->schedule, NULL, h, NULL, 0, &found, NULL);
    if (outcome == BOIL_OK)
        judge_findings(&found, out);
    boil_findings_free(&found);
    return outcome;
}

boil_outcome boil_plan_draw_of(const boil_planning *g, const boil_plan_timetable *t, const boil_plant *plant,
                               const boil_plan_job jobs[], boil_simulation **own, boil_plan_draw *out)
{
    boil_plan_carried c = {.acts = NULL};
    *out = boil_plan_draw_failed();
    boil_outcome outcome = carry(g, t, plant, jobs, &c);
    if (outcome == BOIL_OK)
        outcome = run(g, plant, jobs, &c, own, out);
    if (outcome != BOIL_OK)
        *out = boil_plan_draw_failed();
    boil_plan_carried_free(&c);
    return outcome == BOIL_NO_MEMORY ? outcome : BOIL_OK;
}

boil_plan_odds boil_plan_odds_of(const boil_plan_draw draws[], size_t count)
{
    size_t holds = 0, back = 0;
    for (size_t i = 0; i < count; i++) {
        holds += draws[i].holds;
        back += draws[i].back;
    }
    return (boil_plan_odds){boil_odds_of(holds, count), boil_odds_of(back, count)};
}

/* The least value that such a share of them does not pass: one of them, so that infinity stays itself. */
static double at_share(double values[], size_t count, double share)
{
    gsl_sort(values, 1, count);
    size_t at = (size_t)ceil(share * (double)count - 1e-9);
    return values[at > 0 ? at - 1 : 0];
}

/* Once for each thing that is found in more draws than half of what may fail: the rest of that is for the boil. */
static void heed_findings(const boil_plan_draw draws[], size_t count, double allowed, boil_plan_bath *bath)
{
    const char *id, *title;
    for (size_t k = 0; (id = boil_finding_listed(k, &title)) != NULL; k++) {
        size_t in = 0;
        for (size_t i = 0; i < count; i++)
            for (size_t n = 0; n < BOIL_PLAN_DRAW_FINDINGS && draws[i].found[n] != NULL; n++)
                in += strcmp(draws[i].found[n], id) == 0;
        if ((double)in > allowed / 2 * (double)count)
            boil_plan_heed(bath, id);
    }
}

static double slowest_of(const boil_plan_proof *p)
{
    double slowest_s = 0;
    for (size_t k = 0; k < p->table.dips_count; k++)
        slowest_s = fmax(slowest_s, p->seen[k].gravest_s);
    return slowest_s;
}

boil_outcome boil_plan_spare(const boil_plan_draw draws[], size_t count, double share, const boil_plan_proof *of,
                             boil_plan_bath *bath)
{
    const double grows = 1.25, spare_s = 2; /* where what was left did not do: judgement; and the steps of a run */
    double *values = malloc((count + 1) * sizeof *values), allowed = 1 - share;
    if (values == NULL)
        return BOIL_NO_MEMORY;
    for (size_t i = 0; i < count; i++)
        values[i] = draws[i].slowest_s;
    double slowest_s = at_share(values, count, share), planned_s = fmax(slowest_of(of), spare_s);
    if (slowest_s > bath->limit_s)
        bath->slower = fmax(grows * bath->slower, slowest_s / planned_s - 1);
    for (size_t i = 0; i < count; i++)
        values[i] = draws[i].lacks_s;
    double lacks_s = at_share(values, count, 1 - allowed / 2);
    bath->longer_s += lacks_s > 0 ? lacks_s + spare_s : 0;
    heed_findings(draws, count, allowed, bath);
    free(values);
    return isfinite(slowest_s) ? BOIL_OK : BOIL_NO_ROOT;
}
