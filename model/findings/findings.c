#include "findings/findings.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "findings/finding_parts.h"
#include "base/array.h"
#include "case/checks.h"

const char *boil_severity_word(boil_severity s)
{
    static const char *const words[] = {"NOTICE", "CAUTION", "WARNING", "DANGER"};
    return (unsigned)s < sizeof words / sizeof words[0] ? words[s] : "";
}

void boil_find_needing(boil_judged *j, boil_severity severity, double time_s, double value, double limit, double needed_W,
                       double needed_kg)
{
    const boil_finding_row *r = j->row;
    boil_findings *f = j->list;
    boil_finding finding = {r->id,   r->title, r->advice, severity,        time_s, value,      limit,
                            r->unit, needed_W, needed_kg, r->needed_words, 1,      BOIL_LIKELY};
    if (f->count > 0 && f->list[f->count - 1].id == r->id) { /* its finds follow each other */
        boil_finding *before = &f->list[f->count - 1];
        finding.count = before->count + 1;
        if (severity > before->severity)
            *before = finding;
        before->count = finding.count;
        return;
    }
    boil_finding *list = boil_array_reserve(f->list, &f->capacity, f->count, sizeof *list);
    if (!list) {
        j->outcome = BOIL_NO_MEMORY;
        return;
    }
    f->list = list;
    list[f->count++] = finding;
}

void boil_find(boil_judged *j, boil_severity severity, double time_s, double value, double limit)
{
    boil_find_needing(j, severity, time_s, value, limit, (double)NAN, (double)NAN);
}

static int graver(const void *a, const void *b)
{
    const boil_finding *x = a, *y = b;
    if (x->severity != y->severity)
        return x->severity > y->severity ? -1 : 1;
    double tx = isnan(x->time_s) ? -1 : x->time_s, ty = isnan(y->time_s) ? -1 : y->time_s;
    return tx < ty ? -1 : tx > ty ? 1 : strcmp(x->id, y->id);
}

static void sort(boil_findings *f)
{
    if (f->count > 1)
        qsort(f->list, f->count, sizeof *f->list, graver);
}

static boil_finding *named(const boil_findings *f, const char *id)
{
    for (size_t i = 0; i < f->count; i++)
        if (strcmp(f->list[i].id, id) == 0)
            return &f->list[i];
    return NULL;
}

/* One more, or the graver one of the same thing. */
static boil_outcome keep(boil_findings *f, const boil_finding *one, boil_certainty certainty)
{
    boil_finding *same = named(f, one->id);
    if (same == NULL) {
        boil_finding *list = boil_array_reserve(f->list, &f->capacity, f->count, sizeof *list);
        if (list == NULL)
            return BOIL_NO_MEMORY;
        f->list = list;
        same = &list[f->count++];
    } else if (same->severity >= one->severity) {
        return BOIL_OK;
    }
    *same = *one;
    same->certainty = certainty;
    return BOIL_OK;
}

static boil_outcome judge_all(boil_judged *j, bool of_set_only)
{
    *j->list = (boil_findings){.list = NULL};
    for (size_t i = 0; (j->row = boil_finding_row_at(i)) != NULL; i++)
        if (j->row->of_set || !of_set_only)
            j->row->judge(j);
    return j->outcome;
}

static bool of_set(const char *id)
{
    const boil_finding_row *r;
    for (size_t i = 0; (r = boil_finding_row_at(i)) != NULL; i++)
        if (strcmp(r->id, id) == 0)
            return r->of_set;
    return false;
}

/* What the wide pool's drift shows milder is likely only so far, or as what it shows instead; the rest is possible. */
static boil_outcome hold_against_wide(boil_findings *found, const boil_findings *wide, boil_findings *possible)
{
    size_t kept = 0;
    boil_outcome outcome = BOIL_OK;
    for (size_t i = 0; i < found->count && outcome == BOIL_OK; i++) {
        const boil_finding *also = named(wide, found->list[i].id);
        bool stands = !of_set(found->list[i].id) || (also != NULL && also->severity >= found->list[i].severity);
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
        outcome = keep(found, &wide->list[i], BOIL_CERTAIN);
    return outcome;
}

/* Certain is what this mild run shows as well. */
static void hold_against_mild(boil_findings *found, const boil_findings *mild)
{
    for (size_t i = 0; i < found->count; i++) {
        const boil_finding *also = named(mild, found->list[i].id);
        if (of_set(found->list[i].id) && (also == NULL || also->severity < found->list[i].severity))
            found->list[i].certainty = BOIL_LIKELY;
    }
}

static bool is_mild(boil_closures c)
{
    return c == BOIL_CLOSURES_MILD || c == BOIL_CLOSURES_MILD_8;
}

/* The likely run gone on beyond the end is still likely; the others are possible. */
static boil_outcome take_in(boil_closures c, const boil_findings *seen, boil_findings *found, boil_findings *possible)
{
    boil_outcome outcome = BOIL_OK;
    if (c == BOIL_CLOSURES_LIKELY_WIDE)
        return hold_against_wide(found, seen, possible);
    for (size_t i = 0; i < seen->count && outcome == BOIL_OK && !is_mild(c); i++)
        outcome = c == BOIL_CLOSURES_LIKELY ? keep(found, &seen->list[i], BOIL_CERTAIN)
                                            : keep(possible, &seen->list[i], BOIL_POSSIBLE);
    return outcome;
}

static void drop_known(boil_findings *possible, const boil_findings *found)
{
    size_t kept = 0;
    for (size_t i = 0; i < possible->count; i++) {
        const boil_finding *known = named(found, possible->list[i].id);
        if (known == NULL || known->severity < possible->list[i].severity)
            possible->list[kept++] = possible->list[i];
    }
    possible->count = kept;
}

static boil_outcome judge_others(boil_judged *j, const boil_run_of_set *others, size_t count, boil_findings *found,
                                 boil_findings *possible)
{
    boil_outcome outcome = BOIL_OK;
    for (int mild = 0; mild < 2; mild++)
        for (size_t i = 0; i < count && outcome == BOIL_OK; i++) {
            boil_findings seen;
            if (is_mild(others[i].closures) != (mild == 1))
                continue;
            j->history = &others[i].history;
            j->list = &seen;
            outcome = judge_all(j, true);
            if (outcome == BOIL_OK)
                outcome = take_in(others[i].closures, &seen, found, possible);
            if (mild == 1)
                hold_against_mild(found, &seen);
            boil_findings_free(&seen);
        }
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
                     .needed = needed != NULL ? *needed : unknown,
                     .list = found,
                     .outcome = BOIL_OK};
    boil_outcome outcome = judge_all(&j, false);
    for (size_t i = 0; i < found->count; i++)
        found->list[i].certainty = count > 0 ? BOIL_CERTAIN : BOIL_LIKELY;
    if (possible != NULL)
        *possible = (boil_findings){.list = NULL};
    if (outcome == BOIL_OK && count > 0)
        outcome = judge_others(&j, others, count, found, possible);
    sort(found);
    if (possible != NULL) {
        drop_known(possible, found);
        sort(possible);
    }
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
