/* actions/action_crust.c -- a crust of salt is broken up by hand, as before a cold bath is heated. */

#include "actions/action.h"

static bool parse(action_reader *r, cursor *c, boil_action *a, action_line *line)
{
    (void)r;
    (void)a;
    if (!cursor_take(c, "broken"))
        return cursor_error(c, c->at, "say 'crust broken'");
    snprintf(line->words, sizeof line->words, "crust broken up");
    return cursor_expect_end(c);
}

/* clang-format off */
const action_type action_crust = {
    .keyword = "crust", .letter = 'K', .form = "broken", .meaning = "salt that crystallised over a cold bath is broken up",
    .group = ACTION_SWITCH, .lane = ACTION_LANE_SET, .parse = parse,
    .caution = "Before any heat, with a long bar, from the side: under a hot crust steam waits.",
};
/* clang-format on */
