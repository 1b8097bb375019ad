#include "scenario/draft.h"

#include <stdlib.h>

#include "habits/habits.h"

/* Only what has a value here can be uncertain, and only once. */
static bool may_be_uncertain(const draft *d, const cursor *c, const uncertain_thing *t)
{
    const scenario *out = d->out;
    if (!scenario_has(out, t))
        return cursor_error(c, c->at, "'%s' has no value in this scenario that could be uncertain", t->words);
    if (t->key != NULL && t->key->need == NEED_STRENGTH && !scenario_names_salts(out))
        return cursor_error(c, c->at, "where '%s' is uncertain there may be salts: name them in [bath]", t->words);
    for (size_t i = 0; i < out->uncertain_count; i++)
        if (out->uncertain[i].thing.where == t->where)
            return cursor_error(c, c->at, "'%s' stands here a second time", t->words);
    if (out->uncertain_count == BOIL_SAMPLING_INPUTS)
        return cursor_error(c, c->at, "more than %d things are uncertain", BOIL_SAMPLING_INPUTS);
    return true;
}

void draft_read_uncertain(draft *d)
{
    scenario *out = d->out;
    bool any = d->lines[DRAFT_UNCERTAIN].count > 0;
    out->uncertain = any ? calloc(BOIL_SAMPLING_INPUTS, sizeof *out->uncertain) : NULL;
    if (any && out->uncertain == NULL)
        messages_lost(d->messages);
    cursor start, c;
    for (size_t next = 0; out->uncertain != NULL && draft_next_line(d, DRAFT_UNCERTAIN, &next, &start);) {
        uncertain u;
        habits_of_value(&start);
        c = start;
        if (!uncertain_read(&c, &u) || !may_be_uncertain(d, &start, &u.thing))
            continue;
        u.line = start.line;
        out->uncertain[out->uncertain_count++] = u;
    }
}
