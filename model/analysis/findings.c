#include "analysis/findings.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "analysis/finding_parts.h"
#include "base/array.h"
#include "simulate/checks.h"

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
    boil_finding finding = {r->id, r->title, r->advice, severity,  time_s,          value,
                            limit, r->unit,  needed_W,  needed_kg, r->needed_words, 1};
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

/* What only the fast run shows, or shows graver. */
static void keep_what_is_new(boil_findings *fast, const boil_findings *central)
{
    size_t kept = 0;
    for (size_t i = 0; i < fast->count; i++) {
        bool known = false;
        for (size_t k = 0; k < central->count; k++)
            known = known ||
                    (strcmp(fast->list[i].id, central->list[k].id) == 0 && fast->list[i].severity <= central->list[k].severity);
        if (!known)
            fast->list[kept++] = fast->list[i];
    }
    fast->count = kept;
}

static boil_outcome judge_all(boil_judged *j, bool of_mixing_only)
{
    *j->list = (boil_findings){.list = NULL};
    for (size_t i = 0; (j->row = boil_finding_row_at(i)) != NULL; i++)
        if (j->row->of_mixing || !of_mixing_only)
            j->row->judge(j);
    return j->outcome;
}

boil_outcome boil_findings_of_unchecked(const boil_plant *p, const boil_schedule *s, const boil_remedies *needed,
                                        const boil_history *central, const boil_history *fast, boil_findings *of_central,
                                        boil_findings *of_fast)
{
    boil_judged j = {.plant = p,
                     .schedule = s,
                     .history = central,
                     .fast = fast != NULL ? fast : central,
                     .needed = needed != NULL ? *needed : boil_remedies_unknown(),
                     .list = of_central,
                     .outcome = BOIL_OK};
    boil_outcome outcome = judge_all(&j, false);
    sort(of_central);
    if (of_fast)
        *of_fast = (boil_findings){.list = NULL};
    if (fast && of_fast) {
        j.history = fast;
        j.list = of_fast;
        outcome = judge_all(&j, true);
        keep_what_is_new(of_fast, of_central);
        sort(of_fast);
    }
    if (outcome != BOIL_OK) {
        boil_findings_free(of_central);
        boil_findings_free(of_fast);
    }
    return outcome;
}

boil_outcome boil_findings_of(const boil_plant *p, const boil_schedule *s, const boil_remedies *needed,
                              const boil_history *central, const boil_history *fast, boil_findings *of_central,
                              boil_findings *of_fast)
{
    if (of_central == NULL || (fast != NULL && of_fast == NULL))
        return BOIL_BAD_INPUT;
    *of_central = (boil_findings){.list = NULL};
    if (of_fast != NULL)
        *of_fast = (boil_findings){.list = NULL};
    if (central == NULL || !boil_check_plant(p) || !boil_check_schedule(s))
        return BOIL_BAD_INPUT;
    return boil_findings_of_unchecked(p, s, needed, central, fast, of_central, of_fast);
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
