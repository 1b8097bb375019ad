#include "actions/action.h"

#include <stdio.h>

#include "base/words.h"
#include "reading/quantity.h"

static const bounds dial_share = {"%", 0, 100};

static bool parse(action_reader *r, cursor *c, boil_action *a, action_line *line)
{
    quantity q = {0};
    (void)r;
    cursor_done(c);
    const char *start = c->at;
    if (cursor_take(c, "on"))
        a->is.dial = 1;
    else if (cursor_take(c, "off"))
        a->is.dial = 0;
    else if (quantity_share(c, "heat", &q) && quantity_within(c, "heat", &q, &dial_share))
        a->is.dial = q.si;
    else
        return false;
    snprintf(line->words, sizeof line->words, "heat %s", words_quoted(start, (size_t)(c->at - start)).text);
    return cursor_expect_end(c);
}

static const char *verb_of(const boil_action *a)
{
    return a->is.dial > 0 && a->is.dial < 1 ? "set " : "switch ";
}

/* How the dial stood before. */
static double dial_before(const action_view *v)
{
    for (const boil_action *a = v->action; a > v->schedule->actions; a--)
        if (a[-1].kind == BOIL_ACTION_HEAT)
            return a[-1].is.dial;
    return v->plant->heater.dial;
}

static const char *caution_of(const action_view *v)
{
    return v->action->is.dial > dial_before(v) ? "Stand back as the boil returns; add nothing until it is steady."
                                               : "It may go quiet: then no water, no load.";
}

const action_type action_heat = {
    .keyword = "heat",
    .form = "on|off|PERCENT",
    .meaning = "the dial is set",
    .group = ACTION_SWITCH,
    .lane = ACTION_LANE_SET,
    .parse = parse,
    .verb_of = verb_of,
    .caution_of = caution_of,
};
