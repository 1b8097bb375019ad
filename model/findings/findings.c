#include "findings/findings.h"

#include <math.h>
#include <stdlib.h>

#include "findings/finding_parts.h"
#include "base/array.h"
#include "case/checks.h"
#include "case/closures.h"

const char *boil_severity_word(boil_severity s)
{
    static const char *const words[] = {"NOTICE", "CAUTION", "WARNING", "DANGER"};
    return (unsigned)s < sizeof words / sizeof words[0] ? words[s] : "";
}

static int by_rank(const void *a, const void *b)
{
    const boil_finding *x = a, *y = b;
    if (x->rank != y->rank)
        return x->rank > y->rank ? -1 : 1;
    double tx = isnan(x->time_s) ? -1 : x->time_s, ty = isnan(y->time_s) ? -1 : y->time_s;
    return tx < ty ? -1 : tx > ty ? 1 : x->kind < y->kind ? -1 : x->kind > y->kind;
}

static void sort(boil_findings *f)
{
    for (size_t i = 0; i < f->count; i++) {
        boil_finding *of = &f->list[i];
        of->rank = boil_grading_rank(&boil_gradings[of->kind], of->measure, of->severity, of->certainty != BOIL_POSSIBLE);
    }
    if (f->count > 1)
        qsort(f->list, f->count, sizeof *f->list, by_rank);
}

static boil_finding *of_kind(const boil_findings *f, size_t kind)
{
    for (size_t i = 0; i < f->count; i++)
        if (f->list[i].kind == kind)
            return &f->list[i];
    return NULL;
}

/* Of what is only possible the first is that of all runs of the set, and not that of the gravest. */
static void be_first_of(boil_finding *f, const boil_finding *other)
{
    for (int i = 0; i < BOIL_SEVERITIES; i++)
        f->grades[i].from_s = fmin(f->grades[i].from_s, other->grades[i].from_s);
    if (f->severity == other->severity && other->time_s < f->time_s)
        f->time_s = other->time_s;
}

/* One more, or the graver one of the same thing. */
static boil_outcome keep(boil_findings *f, const boil_finding *one, boil_certainty certainty)
{
    boil_finding *same = of_kind(f, one->kind);
    if (same == NULL) {
        boil_finding *list = boil_array_reserve(f->list, &f->capacity, f->count, sizeof *list);
        if (list == NULL)
            return BOIL_NO_MEMORY;
        f->list = list;
        same = &list[f->count++];
        *same = (boil_finding){.kind = one->kind};
    } else if (same->severity > one->severity || (same->severity == one->severity && !(same->measure < one->measure))) {
        same->before_boil = same->before_boil || (one->before_boil && same->severity == one->severity);
        if (certainty == BOIL_POSSIBLE)
            be_first_of(same, one);
        return BOIL_OK;
    }
    const boil_finding milder = *same;
    bool before_boil = one->before_boil || (same->id == one->id && same->severity == one->severity && same->before_boil);
    *same = *one;
    same->before_boil = before_boil;
    if (certainty == BOIL_POSSIBLE && milder.id == one->id)
        be_first_of(same, &milder);
    same->certainty = certainty;
    return BOIL_OK;
}

static boil_outcome judge_all(boil_judged *j, bool of_set_only)
{
    *j->list = (boil_findings){.list = NULL};
    for (size_t i = 0; i < BOIL_FOUND_KINDS; i++) {
        const boil_finding_row *r = boil_finding_row_at(i);
        j->kind = (boil_found_kind)i;
        j->more_than = false;
        if ((r->of_set || !of_set_only) && (!j->refused || i == BOIL_FOUND_NOT_RESOLVED))
            r->judge(j);
    }
    return j->outcome;
}

/* What the wide pool's drift shows milder is likely only so far, or as what it shows instead; the rest is possible. */
static boil_outcome hold_against_wide(boil_findings *found, const boil_findings *wide, boil_findings *possible)
{
    size_t kept = 0;
    boil_outcome outcome = BOIL_OK;
    for (size_t i = 0; i < found->count && outcome == BOIL_OK; i++) {
        const boil_finding *also = of_kind(wide, found->list[i].kind);
        bool stands = !found->list[i].of_mixing || (also != NULL && also->severity >= found->list[i].severity);
        if (!stands)
            outcome = keep(possible, &found->list[i], BOIL_POSSIBLE);
        if (stands)
            found->list[kept++] = found->list[i];
        else if (also != NULL)
            found->list[kept++] = *also;
    }
    bool milder = kept < found->count;
    found->count = outcome == BOIL_OK ? kept : found->count;
    for (size_t i = 0; milder && i < wide->count && outcome == BOIL_OK; i++)
        outcome = keep(found, &wide->list[i], BOIL_LIKELY);
    return outcome;
}

/* Certain is what this mild run shows as well. */
static void hold_against_mild(boil_findings *found, const boil_findings *mild)
{
    for (size_t i = 0; i < found->count; i++) {
        const boil_finding *also = of_kind(mild, found->list[i].kind);
        if (also == NULL || also->severity < found->list[i].severity)
            found->list[i].certainty = BOIL_LIKELY;
    }
}

static bool has_mild(const boil_run_of_set *others, size_t count)
{
    for (size_t i = 0; i < count; i++)
        if (boil_closures_is_mild(others[i].closures))
            return true;
    return false;
}

/* What a trigger run does while the bath is still quiet, it may do before it boils; also where the likely run shows it later. Let go
   as the boil comes back it lifts the bath a moment after that, and would have done so a moment earlier. */
static void mark(const boil_run_of_set *trigger, boil_findings *seen, boil_findings *found)
{
    const double lifts_s = 5; /* judgement: bubbles rise for seconds */
    const boil_history *h = &trigger->history;
    double back_s = (double)INFINITY;
    for (size_t i = 0; i < h->quiet_count; i++)
        if (h->quiet[i].start_s <= trigger->let_go_s && h->quiet[i].end_s >= trigger->let_go_s)
            back_s = fmax(h->quiet[i].end_s, trigger->let_go_s + lifts_s);
    for (size_t i = 0; i < seen->count; i++) {
        boil_finding *f = &seen->list[i], *likely = of_kind(found, f->kind);
        bool in_it = f->time_s >= trigger->let_go_s && f->time_s <= back_s;
        f->before_boil = f->kind == BOIL_FOUND_LAYER || (in_it && f->kind == BOIL_FOUND_OVERFLOW);
        if (f->before_boil && likely != NULL && f->severity >= likely->severity)
            likely->before_boil = true;
    }
}

/* The likely run gone on beyond the end is still likely; the others are possible. */
static boil_outcome take_in(const boil_run_of_set *r, boil_findings *seen, boil_findings *found, boil_findings *possible)
{
    boil_closures c = r->closures;
    boil_outcome outcome = BOIL_OK;
    if (c == BOIL_CLOSURES_TRIGGER)
        mark(r, seen, found);
    if (c == BOIL_CLOSURES_LIKELY_WIDE)
        return hold_against_wide(found, seen, possible);
    for (size_t i = 0; i < seen->count && outcome == BOIL_OK; i++)
        if (!boil_closures_is_mild(c) || seen->list[i].kind == BOIL_FOUND_NOT_RESOLVED)
            outcome = c == BOIL_CLOSURES_LIKELY && !r->usual_drift ? keep(found, &seen->list[i], BOIL_LIKELY)
                                                                   : keep(possible, &seen->list[i], BOIL_POSSIBLE);
    return outcome;
}

static void drop_known(boil_findings *possible, const boil_findings *found)
{
    size_t kept = 0;
    for (size_t i = 0; i < possible->count; i++) {
        const boil_finding *known = of_kind(found, possible->list[i].kind);
        if (known == NULL || known->severity < possible->list[i].severity)
            possible->list[kept++] = possible->list[i];
    }
    possible->count = kept;
}

static boil_outcome judge_run(boil_judged *j, const boil_run_of_set *r, boil_findings *found, boil_findings *possible)
{
    boil_findings seen;
    j->history = &r->history;
    j->refused = r->refused;
    j->let_go = r->closures == BOIL_CLOSURES_TRIGGER;
    j->only_may =
        r->closures != BOIL_CLOSURES_LIKELY && r->closures != BOIL_CLOSURES_LIKELY_WIDE && !boil_closures_is_mild(r->closures);
    j->list = &seen;
    boil_outcome outcome = judge_all(j, !boil_closures_is_mild(r->closures));
    if (outcome == BOIL_OK)
        outcome = take_in(r, &seen, found, possible);
    if (outcome == BOIL_OK && boil_closures_is_mild(r->closures))
        hold_against_mild(found, &seen);
    boil_findings_free(&seen);
    return outcome;
}

/* The mild ones last: they take certainty from what all the others have left. */
static boil_outcome judge_others(boil_judged *j, const boil_run_of_set *others, size_t count, boil_findings *found,
                                 boil_findings *possible)
{
    boil_outcome outcome = BOIL_OK;
    for (size_t i = 0; i < count && outcome == BOIL_OK; i++)
        if (!boil_closures_is_mild(others[i].closures))
            outcome = judge_run(j, &others[i], found, possible);
    for (size_t i = 0; i < found->count && has_mild(others, count); i++)
        found->list[i].certainty = BOIL_CERTAIN;
    for (size_t i = 0; i < count && outcome == BOIL_OK; i++)
        if (boil_closures_is_mild(others[i].closures))
            outcome = judge_run(j, &others[i], found, possible);
    return outcome;
}

boil_outcome boil_findings_of_unchecked(const boil_plant *p, const boil_schedule *s, const boil_remedies *needed,
                                        const boil_history *likely, const boil_run_of_set *others, size_t count,
                                        boil_findings *found, boil_findings *possible)
{
    const boil_remedies unknown = {(double)NAN, (double)NAN};
    boil_judged j = {.plant = p,
                     .schedule = s,
                     .history = likely,
                     .reaches_end = likely->end == BOIL_RUN_DONE,
                     .needed = needed != NULL ? *needed : unknown,
                     .list = found,
                     .outcome = BOIL_OK};
    boil_outcome outcome = judge_all(&j, false);
    if (possible != NULL)
        *possible = (boil_findings){.list = NULL};
    if (outcome == BOIL_OK && count > 0)
        outcome = judge_others(&j, others, count, found, possible);
    sort(found);
    if (possible != NULL) {
        drop_known(possible, found);
        sort(possible);
    }
    boil_finding_causes(found, possible);
    boil_finding_advice(found, possible);
    if (outcome != BOIL_OK) {
        boil_findings_free(found);
        boil_findings_free(possible);
    }
    return outcome;
}

boil_outcome boil_findings_of(const boil_plant *p, const boil_schedule *s, const boil_remedies *needed,
                              const boil_history *likely, const boil_run_of_set *others, size_t count, boil_findings *found,
                              boil_findings *possible)
{
    if (found == NULL || (count > 0 && (possible == NULL || others == NULL)))
        return BOIL_BAD_INPUT;
    *found = (boil_findings){.list = NULL};
    if (possible != NULL)
        *possible = (boil_findings){.list = NULL};
    if (likely == NULL || !boil_check_plant(p) || !boil_check_schedule(s))
        return BOIL_BAD_INPUT;
    return boil_findings_of_unchecked(p, s, needed, likely, others, count, found, possible);
}

void boil_findings_free(boil_findings *f)
{
    if (!f)
        return;
    free(f->list);
    *f = (boil_findings){.list = NULL};
}

boil_severity boil_findings_gravest(const boil_findings *f)
{
    return f != NULL && f->count ? f->list[0].severity : BOIL_SEVERITY_NOTICE;
}
