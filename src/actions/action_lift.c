#include "actions/action.h"

#include <stdio.h>

#include "base/words.h"

static bool parse(action_reader *r, cursor *c, boil_action *a, action_line *line)
{
    snprintf(line->words, sizeof line->words, "lift everything");
    if (cursor_done(c))
        return true;
    snprintf(line->words, sizeof line->words, "lift %s", words_quoted(c->at, (size_t)(c->end - c->at)).text);
    a->name = load_names_read(&r->names, c);
    return a->name > 0;
}

const action_type action_lift = {
    .keyword = "lift",
    .form = "[NAME]",
    .meaning = "a named load, or everything, comes out",
    .group = ACTION_LIFT,
    .parse = parse,
    .caution = "Slowly; drain it over the bath.",
};
