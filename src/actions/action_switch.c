/* actions/action_switch.c -- what is only on or off: mixer, lid, exhaust. */
#include <stdio.h>

#include "actions/action.h"

static bool parse(action_reader *r, cursor *c, boil_action *a, action_line *line)
{
    const char *what = action_type_of(a->kind)->keyword;
    (void)r;
    a->is.on = cursor_take(c, "on");
    if (!a->is.on && !cursor_take(c, "off"))
        return cursor_error(c, c->at, "say '%s on' or '%s off'", what, what);
    snprintf(line->words, sizeof line->words, "%s %s", what, a->is.on ? "on" : "off");
    return cursor_expect_end(c);
}

const action_type action_mixer = {
    .keyword = "mixer",
    .form = "on|off",
    .meaning = "the mixer is switched",
    .group = ACTION_SWITCH,
    .lane = ACTION_LANE_SET,
    .parse = parse,
    .verb = "switch ",
    .caution = "Stand back: stirring can set free stored heat at once.",
    .caution_off = "No dry salt once it stands still.",
};

const action_type action_lid = {
    .keyword = "lid",
    .form = "on|off",
    .meaning = "the lid is laid on or taken off",
    .group = ACTION_SWITCH,
    .lane = ACTION_LANE_SET,
    .parse = parse,
    .caution = "Steam at the gap. What condenses drips back and floats.",
    .caution_off = "Open it away from you: steam, and perhaps water afloat.",
};

const action_type action_exhaust = {
    .keyword = "exhaust",
    .form = "on|off",
    .meaning = "the exhaust over the bath is switched",
    .group = ACTION_SWITCH,
    .lane = ACTION_LANE_SET,
    .parse = parse,
    .verb = "switch ",
    .caution = "",
    .caution_off = "Fumes stay in the room.",
};
