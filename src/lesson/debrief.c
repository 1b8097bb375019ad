#include "lesson/debrief.h"

#include <math.h>
#include <stdlib.h>

#include "lesson/care.h"

#define ROUNDS 24 /* of care in the likely run: a dial has nineteen steps */
#define SETS 3    /* of runs */
#define ROWS_S 10.0

/* What is worked on. */
typedef struct {
    const boil_plant *plant;
    const boil_schedule *schedule;
    debrief *out;
} work;

static void forget_run(debrief *d)
{
    boil_schedule_free(&d->care);
    boil_history_free(&d->history);
    free(d->origin);
    d->origin = NULL;
}

void debrief_free(debrief *d)
{
    forget_run(d);
    free(d->acts);
    free(d->alone_m);
    *d = (debrief){.acts = NULL};
}

static bool any_gentle(const debrief *d)
{
    for (size_t i = 0; i < d->acts_count; i++)
        if (d->acts[i].gentle)
            return true;
    return false;
}

/* The care as it stands, carried out, with rows. */
static boil_outcome carry_out(work *w)
{
    boil_run_options o = boil_run_options_default();
    o.row_interval_s = ROWS_S;
    forget_run(w->out);
    boil_outcome outcome = care_schedule(w->plant, w->schedule, w->out->acts, &w->out->care, &w->out->origin);
    return outcome == BOIL_OK ? boil_run(w->plant, &w->out->care, &o, &w->out->history) : outcome;
}

/* Heat goes back once it is known when the crystals are gone. */
static bool wait_for_crystals(debrief *d)
{
    double gone_s = any_gentle(d) ? care_crystals_gone(&d->history) : (double)NAN;
    bool changed = false;
    for (size_t i = 0; i < d->acts_count; i++)
        if (d->acts[i].gentle && isinf(d->acts[i].gone_s) && isfinite(gone_s)) {
            d->acts[i].gone_s = gone_s;
            changed = true;
        }
    return changed;
}

static bool take_more(const work *w, const boil_findings *likely, const boil_findings *possible, boil_outcome *outcome)
{
    const care_case c = {w->plant, &w->out->care, &w->out->history, w->out->origin, w->out->acts_count};
    return care_take(&c, likely, possible, w->out->acts, outcome);
}

/* In the likely run alone: until nothing is found that more care could mend. */
static boil_outcome refine(work *w)
{
    boil_outcome outcome = carry_out(w);
    bool changed = true;
    for (int i = 0; i < ROUNDS && changed && outcome == BOIL_OK; i++) {
        boil_findings found;
        changed = wait_for_crystals(w->out);
        outcome = boil_findings_of(w->plant, &w->out->care, NULL, &w->out->history, NULL, 0, &found, NULL);
        if (outcome != BOIL_OK)
            break;
        changed = take_more(w, &found, NULL, &outcome) || changed;
        boil_findings_free(&found);
        if (changed && outcome == BOIL_OK)
            outcome = carry_out(w);
    }
    return outcome;
}

/* Of what care of an act could have mended: a bath that is weak or tall it leaves as it is. */
static boil_severity gravest(const boil_findings *f)
{
    boil_severity most = BOIL_SEVERITY_NOTICE;
    for (size_t i = 0; i < f->count; i++)
        if (care_mends(f->list[i].kind) && f->list[i].severity > most)
            most = f->list[i].severity;
    return most;
}

/* By all the runs; true: more care changes something. */
static bool judge(work *w, boil_outcome *outcome)
{
    boil_run_options o = boil_run_options_default();
    boil_run_set set;
    boil_findings found, possible;
    *outcome = boil_run_set_of(w->plant, &w->out->care, &o, &set);
    if (*outcome != BOIL_OK)
        return false;
    *outcome = boil_findings_of(w->plant, &w->out->care, NULL, &set.likely, set.other, set.count, &found, &possible);
    boil_run_set_free(&set);
    if (*outcome != BOIL_OK)
        return false;
    boil_severity likely = gravest(&found), other = gravest(&possible);
    w->out->gravest = likely > other ? likely : other;
    w->out->holds = likely < BOIL_SEVERITY_WARNING;
    bool changed = take_more(w, NULL, &possible, outcome);
    boil_findings_free(&found);
    boil_findings_free(&possible);
    return changed;
}

static boil_outcome with_care(work *w)
{
    boil_run_options o = boil_run_options_default();
    boil_history rows;
    o.row_interval_s = ROWS_S;
    boil_outcome outcome = boil_run(w->plant, w->schedule, &o, &rows);
    if (outcome != BOIL_OK)
        return outcome;
    care_measure_water(w->schedule, &rows, w->out->acts);
    boil_history_free(&rows);
    bool changed = true;
    for (int i = 0; i < SETS && changed && outcome == BOIL_OK; i++) {
        outcome = refine(w);
        changed = outcome == BOIL_OK && judge(w, &outcome) && i + 1 < SETS;
    }
    return outcome;
}

static void count_bad(debrief *d)
{
    for (size_t i = 0; i < d->acts_count; i++)
        d->bad += debrief_change_of(&d->acts[i]) != DEBRIEF_SAME;
}

/* What each does by itself, where there are several. */
static boil_outcome try_alone(const work *w)
{
    debrief *d = w->out;
    if (d->bad < 2 || d->bad > DEBRIEF_ALONE_MOST)
        return BOIL_OK;
    d->alone_m = calloc(d->acts_count, sizeof *d->alone_m);
    boil_outcome outcome = d->alone_m != NULL ? BOIL_OK : BOIL_NO_MEMORY;
    for (size_t i = 0; i < d->acts_count && outcome == BOIL_OK; i++) {
        boil_history h;
        d->alone_m[i] = (double)NAN;
        if (debrief_change_of(&d->acts[i]) == DEBRIEF_SAME)
            continue;
        outcome = debrief_alone(w->plant, w->schedule, d, i, &h);
        if (outcome == BOIL_OK)
            d->alone_m[i] = h.summary.freeboard_min_m.value;
        boil_history_free(&h);
    }
    return outcome;
}

boil_outcome debrief_of(const lesson *l, const boil_plant *p, const boil_schedule *s, const boil_history *h,
                        const boil_findings *found, const boil_findings *possible, debrief *out)
{
    *out = (debrief){.acts_count = s->count, .acts = calloc(s->count + 1, sizeof *out->acts)};
    work w = {p, s, out};
    const care_case c = {p, s, h, NULL, s->count};
    boil_outcome outcome = out->acts != NULL ? BOIL_OK : BOIL_NO_MEMORY;
    bool bad = outcome == BOIL_OK && care_take(&c, found, possible, out->acts, &outcome);
    if (l != NULL && outcome == BOIL_OK)
        out->yours = out->cared = lesson_judge(l, p, h);
    if (bad && outcome == BOIL_OK)
        outcome = with_care(&w);
    else
        out->holds = gravest(found) < BOIL_SEVERITY_WARNING;
    if (outcome == BOIL_OK) {
        count_bad(out);
        outcome = try_alone(&w);
    }
    if (outcome != BOIL_OK) {
        debrief_free(out);
        return outcome;
    }
    if (l != NULL && bad)
        out->cared = lesson_judge(l, p, &out->history);
    out->holds = out->holds && (l == NULL || out->cared.passed);
    return BOIL_OK;
}

boil_outcome debrief_alone(const boil_plant *p, const boil_schedule *s, const debrief *d, size_t act, boil_history *out)
{
    boil_run_options o = boil_run_options_default();
    boil_schedule one;
    size_t *origin;
    debrief_care *care = calloc(s->count + 1, sizeof *care);
    *out = (boil_history){.acts = NULL};
    if (care == NULL)
        return BOIL_NO_MEMORY;
    care[act] = d->acts[act];
    boil_outcome outcome = care_schedule(p, s, care, &one, &origin);
    free(care);
    if (outcome != BOIL_OK)
        return outcome;
    outcome = boil_run(p, &one, &o, out);
    boil_schedule_free(&one);
    free(origin);
    return outcome;
}

debrief_range debrief_lets_go(const boil_plant *p, const boil_run_set *set)
{
    debrief_range r = {(double)NAN, (double)NAN};
    for (size_t k = 0; k <= set->count; k++) {
        const boil_history *h = k == 0 ? &set->likely : &set->other[k - 1].history;
        for (size_t i = 0; i < h->quiet_count; i++) {
            const boil_quiet_result *q = &h->quiet[i];
            if (!(q->left_m < p->limits.freeboard_m) || isnan(q->end_s))
                continue;
            r.earliest_s = fmin(r.earliest_s, q->end_s);
            r.latest_s = fmax(r.latest_s, q->end_s);
        }
    }
    return r;
}
