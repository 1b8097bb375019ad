#include "describe/headline.h"

#include <math.h>
#include <string.h>

#include "case/grading.h"

static const boil_finding *at(const carried_out *o, size_t i)
{
    return i < o->found.count ? &o->found.list[i] : &o->possible.list[i - o->found.count];
}

static size_t count_of(const carried_out *o)
{
    return o->found.count + o->possible.count;
}

static double begins_s(const boil_finding *f)
{
    return isnan(f->time_s) ? 0 : f->time_s;
}

/* Whether number i comes before number k. */
static bool before(const carried_out *o, size_t i, size_t k)
{
    const boil_finding *a = at(o, i), *b = at(o, k);
    if (a->rank != b->rank)
        return a->rank > b->rank;
    return begins_s(a) != begins_s(b) ? begins_s(a) < begins_s(b) : i < k;
}

static size_t place_of(const carried_out *o, const boil_finding *f)
{
    size_t i = 0;
    while (i < count_of(o) && at(o, i) != f)
        i++;
    return i;
}

const boil_finding *headline_next(const carried_out *o, const boil_finding *after)
{
    size_t last = place_of(o, after), count = count_of(o), best = count;
    for (size_t i = 0; i < count; i++)
        if ((after == NULL || before(o, last, i)) && (best == count || before(o, i, best)))
            best = i;
    return best < count ? at(o, best) : NULL;
}

const boil_finding *headline_of(const carried_out *o)
{
    const boil_finding *first = headline_next(o, NULL);
    return first != NULL && first->severity > BOIL_SEVERITY_NOTICE ? first : NULL;
}

/* Freeboard, band and recovery are the user's own limits. */
static bool is_out(const boil_finding *f)
{
    return f->severity > BOIL_SEVERITY_NOTICE || f->kind == BOIL_FOUND_FREEBOARD || f->kind == BOIL_FOUND_TOO_HOT ||
           f->kind == BOIL_FOUND_TOO_COOL || f->kind == BOIL_FOUND_BOIL_LOST;
}

/* A moment before its own grade's, when it was less grave. */
static double out_s(const boil_finding *f)
{
    double first_s = begins_s(f);
    for (size_t i = 0; i < f->grades_count; i++)
        first_s = fmin(first_s, f->grades[i].from_s);
    return first_s;
}

const boil_finding *headline_first_out(const carried_out *o, double *time_s)
{
    const boil_finding *first = NULL;
    *time_s = (double)NAN;
    for (const boil_finding *f = NULL; (f = headline_next(o, f)) != NULL;) {
        if (!is_out(f) || (first != NULL && out_s(f) >= *time_s))
            continue;
        first = f;
        *time_s = out_s(f);
    }
    return first;
}

bool headline_is_possible(const carried_out *o, const boil_finding *f)
{
    return place_of(o, f) >= o->found.count;
}

const boil_finding *headline_cause(const carried_out *o, const boil_finding *f)
{
    bool asked = f->severity > BOIL_SEVERITY_NOTICE && f->because != NULL;
    for (size_t i = 0; asked && i < count_of(o); i++)
        if (strcmp(at(o, i)->id, f->because) == 0)
            return at(o, i);
    return NULL;
}
