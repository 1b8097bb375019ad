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
    out->uncertain = d->uncertain.count > 0 ? calloc(BOIL_SAMPLING_INPUTS, sizeof *out->uncertain) : NULL;
    if (d->uncertain.count > 0 && out->uncertain == NULL)
        messages_lost(d->messages);
    for (size_t i = 0; out->uncertain != NULL && i < d->uncertain.count && !messages_full(d->messages); i++) {
        cursor start = cursor_of_line(d->text, d->uncertain.list[i], d->messages), c;
        uncertain u;
        habits_of_value(&start);
        c = start;
        if (uncertain_read(&c, &u) && may_be_uncertain(d, &start, &u.thing))
            out->uncertain[out->uncertain_count++] = u;
    }
}
