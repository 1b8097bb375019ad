#include "replay/abreast.h"

#include <math.h>
#include <stdlib.h>

#include "base/memory.h"

static const double near_s = 600; /* judgement: no spell of the shipped scenarios begins so much later in another run */

const boil_quiet_result *abreast_spell(const boil_history *likely, size_t spell, const boil_history *other)
{
    const boil_quiet_result *mine = &likely->quiet[spell], *theirs = spell < other->quiet_count ? &other->quiet[spell] : NULL;
    bool same = theirs != NULL && theirs->cause == mine->cause && fabs(theirs->start_s - mine->start_s) <= near_s;
    return same ? theirs : NULL;
}

static void put(abreast *a, double likely_s, double other_s)
{
    if (isfinite(likely_s) && isfinite(other_s))
        a->moments[a->count++] = (abreast_moment){likely_s, other_s};
}

static int by_likely(const void *left, const void *right)
{
    const abreast_moment *a = left, *b = right;
    if (a->likely_s != b->likely_s)
        return a->likely_s < b->likely_s ? -1 : 1;
    return (a->other_s > b->other_s) - (a->other_s < b->other_s);
}

/* Of moments that contradict each other the earlier counts. */
static void keep_rising(abreast *a, double end_s)
{
    size_t n = 0;
    qsort(a->moments, a->count, sizeof *a->moments, by_likely);
    for (size_t i = 0; i < a->count; i++) {
        const abreast_moment *m = &a->moments[i], *last = n > 0 ? &a->moments[n - 1] : NULL;
        if (m->likely_s <= end_s && (last == NULL || (m->likely_s > last->likely_s && m->other_s > last->other_s)))
            a->moments[n++] = *m;
    }
    a->count = n;
}

abreast abreast_of(const boil_history *likely, const boil_history *other)
{
    abreast a = {0};
    size_t most = 2 + 2 * likely->quiet_count + likely->acts_count;
    a.moments = memory_needed(malloc(most * sizeof *a.moments));
    if (a.moments == NULL)
        return a;
    put(&a, 0, 0);
    for (size_t i = 0; i < likely->quiet_count; i++) {
        const boil_quiet_result *theirs = abreast_spell(likely, i, other);
        if (theirs != NULL) {
            put(&a, likely->quiet[i].start_s, theirs->start_s);
            put(&a, likely->quiet[i].end_s, theirs->end_s);
        }
    }
    for (size_t i = 0; i < likely->acts_count && i < other->acts_count; i++)
        put(&a, likely->acts[i].done_s, other->acts[i].done_s);
    put(&a, likely->end_s, fmin(likely->end_s, other->end_s));
    keep_rising(&a, likely->end_s);
    return a;
}

void abreast_free(abreast *a)
{
    free(a->moments);
    *a = (abreast){0};
}

double abreast_other(const abreast *a, double likely_s)
{
    size_t i = 1;
    while (i < a->count && a->moments[i].likely_s < likely_s)
        i++;
    if (i >= a->count)
        return a->count == 0 ? likely_s : a->moments[a->count - 1].other_s + likely_s - a->moments[a->count - 1].likely_s;
    const abreast_moment *from = &a->moments[i - 1], *to = &a->moments[i];
    return from->other_s + (likely_s - from->likely_s) / (to->likely_s - from->likely_s) * (to->other_s - from->other_s);
}
