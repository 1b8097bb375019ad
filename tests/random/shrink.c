#include "random/shrink.h"

#include <string.h>

static draft without(const draft *d, size_t line)
{
    draft less = *d;
    memmove(&less.lines[line], &less.lines[line + 1], (d->count - line - 1) * sizeof less.lines[0]);
    less.count--;
    return less;
}

static bool still(const draft *d, const invariant_means *m, invariant broken)
{
    verdict_of v;
    /* What is broken by being written otherwise is asked of each way. */
    invariants_judge(d, m, broken == HOLDS_READ ? HOLDS_ALL : broken, &v);
    return v.valid && v.broken[broken];
}

/* How many lines went. */
static size_t pass(draft *d, const invariant_means *m, invariant broken, bool acts)
{
    size_t before = d->count;
    for (size_t i = d->count; i-- > 0;) {
        draft less = without(d, i);
        if (acts == (strcmp(d->lines[i].section, "schedule") == 0) && still(&less, m, broken))
            *d = less;
    }
    return before - d->count;
}

draft shrink(const draft *d, const invariant_means *m, invariant broken)
{
    draft least = *d;
    while (pass(&least, m, broken, true) + pass(&least, m, broken, false) > 0)
        ;
    return least;
}
