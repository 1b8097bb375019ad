#include "planning/proof.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "findings/findings.h"
#include "findings/run_set.h"

#define LATE_S 1.0        /* that a dip may go in late in a run, by the steps of its waiting */
#define STAY_ROUNDING 0.5 /* s */

bool boil_plan_proof_holds(const boil_plan_proof *p)
{
    return p->table.dips != NULL && p->broken_count == 0;
}

bool boil_plan_proof_better(const boil_plan_proof *x, const boil_plan_proof *y)
{
    if (x->table.dips == NULL || y->table.dips == NULL)
        return x->table.dips != NULL;
    if (x->broken_count != y->broken_count)
        return x->broken_count < y->broken_count;
    return boil_plan_better(&x->table.value, &y->table.value);
}

static void *copied(const void *from, size_t count, size_t size)
{
    void *to = malloc((count + 1) * size);
    if (to != NULL)
        memcpy(to, from, count * size);
    return to;
}

static boil_outcome copy_table(const boil_plan_case *c, const boil_plan_timetable *from, boil_plan_timetable *to)
{
    *to = *from;
    to->dips = copied(from->dips, from->dips_count, sizeof *to->dips);
    to->parts = copied(from->parts, c->parts_count, sizeof *to->parts);
    to->pours = copied(from->pours, from->pours_count, sizeof *to->pours);
    to->salts = copied(from->salts, from->salts_count, sizeof *to->salts);
    return to->dips != NULL && to->parts != NULL && to->pours != NULL && to->salts != NULL ? BOIL_OK : BOIL_NO_MEMORY;
}

void boil_plan_proof_free(boil_plan_proof *p)
{
    free(p->table.dips);
    free(p->table.parts);
    free(p->table.pours);
    free(p->table.salts);
    free(p->seen);
    boil_plan_carried_free(&p->carried);
    *p = (boil_plan_proof){.broken_count = 0};
}

static const boil_plan_job *job_of(const boil_planning *g, size_t part)
{
    const boil_plan_case c = boil_planning_case(g);
    return boil_plan_job_of(&c, part);
}

static void note(boil_plan_proof *p, const boil_plan_break *b)
{
    if (p->broken_count < BOIL_PLAN_BREAKS_KEPT)
        p->broken[p->broken_count] = *b;
    p->broken_count++;
}

/* Of what a run did with a load. A run that ended before is found by itself. */
static void see_load(const boil_planning *g, boil_plan_proof *p, const boil_load_result *r, bool likely)
{
    const boil_plan_act *act = &p->carried.acts[r->action];
    boil_plan_seen *seen = &p->seen[act->dip];
    double away_s = isnan(r->recovery_s) ? HUGE_VAL : r->recovery_s;
    seen->gravest_s = fmax(seen->gravest_s, away_s);
    seen->late_s = fmax(seen->late_s, r->time_s - p->carried.schedule.actions[r->action].time_s);
    if (!likely)
        return;
    const boil_plan_job *j = job_of(g, act->part);
    double hot_s = isnan(r->hot_s) ? HUGE_VAL : r->hot_s, most_s = hot_s + j->most_s;
    seen->likely_s = fmax(seen->likely_s, away_s);
    seen->stay_least_s = fmax(seen->stay_least_s, hot_s + j->least_s);
    seen->stay_most_s = seen->stay_most_s > 0 ? fmin(seen->stay_most_s, most_s) : most_s;
}

/* All loads of all runs, but of those that are made to see worse than what was planned. */
static void see_runs(const boil_planning *g, boil_plan_proof *p, const boil_run_set *set)
{
    for (size_t k = 0; k < set->likely.loads_count; k++)
        see_load(g, p, &set->likely.loads[k], true);
    for (size_t i = 0; i < set->count; i++)
        for (size_t k = 0; k < set->other[i].history.loads_count && !set->other[i].held_back; k++)
            see_load(g, p, &set->other[i].history.loads[k], false);
}

static void judge_boil(const boil_planning *g, boil_plan_proof *p)
{
    for (size_t k = 0; k < p->table.dips_count; k++) {
        const boil_plan_seen *s = &p->seen[k];
        if (s->gravest_s > g->bath.limit_s)
            note(p, &(boil_plan_break){
                        .what = BOIL_PLAN_BREAKS_RECOVERY, .dip = k, .value = s->gravest_s, .limit = g->bath.limit_s});
        if (s->late_s > LATE_S)
            note(p, &(boil_plan_break){.what = BOIL_PLAN_BREAKS_LATE, .dip = k, .value = s->late_s});
    }
    if (p->over_K > 0 || p->under_K > 0)
        note(p, &(boil_plan_break){.what = BOIL_PLAN_BREAKS_BAND, .value = p->over_K > 0 ? p->over_K : -p->under_K});
}

double boil_plan_hot_for_s(const boil_load_result *r)
{
    return isnan(r->hot_s) ? 0 : r->lifted_s - r->time_s - r->hot_s;
}

bool boil_plan_minutes_hold(const boil_plan_job *j, double had_s)
{
    return had_s >= j->least_s - STAY_ROUNDING && had_s <= j->most_s + STAY_ROUNDING;
}

/* By the likely run: it is the work's quality, not danger. Parts that never were hot lack all. */
static void judge_stays(const boil_planning *g, boil_plan_proof *p, const boil_history *h)
{
    for (size_t k = 0; k < h->loads_count; k++) {
        const boil_load_result *r = &h->loads[k];
        const boil_plan_act *act = &p->carried.acts[r->action];
        const boil_plan_job *j = job_of(g, act->part);
        double had_s = boil_plan_hot_for_s(r);
        if (boil_plan_minutes_hold(j, had_s))
            continue;
        if (!(had_s > j->most_s))
            note(p,
                 &(boil_plan_break){
                     .what = BOIL_PLAN_BREAKS_SHORT, .dip = act->dip, .part = act->part, .value = had_s, .limit = j->least_s});
        else
            note(p, &(boil_plan_break){
                        .what = BOIL_PLAN_BREAKS_LONG, .dip = act->dip, .part = act->part, .value = had_s, .limit = j->most_s});
    }
}

static void judge_findings(boil_plan_proof *p, const boil_findings *f)
{
    for (size_t i = 0; i < f->count; i++) {
        const boil_finding *found = &f->list[i];
        if (found->severity > BOIL_SEVERITY_NOTICE)
            note(p, &(boil_plan_break){.what = BOIL_PLAN_BREAKS_FINDING,
                                       .value = found->time_s,
                                       .id = found->id,
                                       .title = found->title,
                                       .severity = found->severity});
    }
}

static void judge_dip(const boil_planning *g, boil_plan_proof *p, size_t k)
{
    const boil_plan_dip *d = &p->table.dips[k];
    if (d->unplaced)
        note(p, &(boil_plan_break){.what = BOIL_PLAN_BREAKS_PLACING, .dip = k});
    if (d->too_cold)
        note(p, &(boil_plan_break){.what = BOIL_PLAN_BREAKS_HEAT, .dip = k});
    if (d->too_strong)
        note(p, &(boil_plan_break){.what = BOIL_PLAN_BREAKS_WATER, .dip = k});
    if (d->mass_kg > g->bath.most_kg)
        note(p, &(boil_plan_break){.what = BOIL_PLAN_BREAKS_MASS, .dip = k, .value = d->mass_kg, .limit = g->bath.most_kg});
    for (size_t i = 0; i < d->count; i++) {
        size_t part = p->table.parts[d->first + i];
        const boil_plan_job *j = job_of(g, part);
        if (j->priority == BOIL_PLAN_MUST && d->leaves_s > j->due_s)
            note(p, &(boil_plan_break){
                        .what = BOIL_PLAN_BREAKS_DUE, .dip = k, .part = part, .value = d->leaves_s, .limit = j->due_s});
    }
}

static void judge_table(const boil_planning *g, boil_plan_proof *p)
{
    const double last_s = p->table.value.of[BOIL_PLAN_LAST_OUT_S];
    for (size_t k = 0; k < p->table.dips_count; k++)
        judge_dip(g, p, k);
    if (last_s > g->problem->end_s)
        note(p, &(boil_plan_break){.what = BOIL_PLAN_BREAKS_END, .value = last_s, .limit = g->problem->end_s});
}

/* How far a watch went past its first break point, which is the band's end. */
static double past(const boil_summary *s, boil_watch_kind w)
{
    return isnan(s->watched[w].worst.value) ? 0 : fmax(0, s->watched[w].worst.value);
}

/* Boil-off by which the timetable's own times of boil and quiet, which are those of the gravest run, give what the likely run lost. */
static double boils_off(const boil_planning *g, const boil_plan_timetable *t, const boil_summary *s, double end_s)
{
    double quiet_s = 0;
    for (size_t k = 0; k < t->dips_count; k++)
        quiet_s += t->dips[k].recovery_s;
    double gone_kg = s->vented_total_kg - s->rinse_added_kg - g->bath.dries_kg_s * quiet_s;
    return end_s > quiet_s ? fmax(0, gone_kg / (end_s - quiet_s)) : g->bath.boils_off_kg_s;
}

static void sum_up(const boil_planning *g, boil_plan_proof *p, const boil_run_set *set)
{
    const boil_summary *s = &set->likely.summary;
    p->freeboard_m = boil_run_set_least_freeboard(set)->summary.freeboard_min_m.value;
    p->boils_end_K = s->boiling_point_end_K;
    p->over_K = past(s, BOIL_WATCH_TOO_HOT);
    p->under_K = past(s, BOIL_WATCH_TOO_COOL);
    p->boils_off_kg_s = boils_off(g, &p->table, s, set->likely.end_s);
    p->fuel_J = s->input_total_J;
    p->drag_out_kg = s->drag_out_kg;
    p->drag_out_salts_kg = s->drag_out_salts_kg;
    p->drag_out_m = s->drag_out_kg / g->bath.density_kg_m3 / boil_tank_area(&g->plant->tank);
}

static boil_outcome judge(const boil_planning *g, const boil_run_set *set, boil_plan_proof *p)
{
    boil_findings found, possible;
    boil_outcome outcome = boil_findings_of_unchecked(g->plant, &p->carried.schedule, NULL, &set->likely, set->other,
                                                      set->count, &found, &possible);
    if (outcome != BOIL_OK)
        return outcome;
    see_runs(g, p, set);
    sum_up(g, p, set);
    judge_table(g, p);
    judge_boil(g, p);
    judge_stays(g, p, &set->likely);
    judge_findings(p, &found);
    judge_findings(p, &possible);
    boil_findings_free(&found);
    boil_findings_free(&possible);
    return BOIL_OK;
}

boil_outcome boil_plan_prove(const boil_planning *g, const boil_plan_timetable *t, boil_plan_proof *out)
{
    boil_plan_case c = boil_planning_case(g);
    boil_run_options o = g->options;
    boil_run_set set = {.count = 0};
    *out = (boil_plan_proof){.seen = calloc(t->dips_count + 1, sizeof *out->seen)};
    o.row_interval_s = 0;
    boil_outcome outcome = copy_table(&c, t, &out->table);
    if (outcome == BOIL_OK)
        outcome = out->seen == NULL ? BOIL_NO_MEMORY : boil_plan_carry(&c, t, g->plant, &out->carried);
    if (outcome == BOIL_OK)
        outcome = boil_run_set_of(g->plant, &out->carried.schedule, &o, &set);
    if (outcome == BOIL_OK)
        outcome = judge(g, &set, out);
    boil_run_set_free(&set);
    if (outcome != BOIL_OK)
        boil_plan_proof_free(out);
    return outcome;
}
