/* actions/action_switch.c -- what is only on or off: mixer, lid, exhaust. */
#include <stdio.h>

#include "actions/action_table.h"

static bool parse(action_reader *r, cursor *c, boil_action *a, action_line *line)
{
    const char *what = action_type_of(a->kind)->keyword;
    (void)r;
    a->is.on = cursor_take(c, "on");
    if (!a->is.on && !cursor_take(c, "off")) {
        cursor_error(c, c->at, "say '%s on' or '%s off'", what, what);
        return false;
    }
    snprintf(line->words, sizeof line->words, "%s %s", what, a->is.on ? "on" : "off");
    return cursor_expect_end(c);
}

static const char *mixer_caution(const action_view *v)
{
    return v->action->is.on ? "Stand back: stirring can set free stored heat at once." : "No dry salt once it stands still.";
}

static const char *lid_caution(const action_view *v)
{
    return v->action->is.on ? "Steam at the gap. What condenses drips back and floats."
                            : "Open it away from you: steam, and perhaps water afloat.";
}

static const char *exhaust_caution(const action_view *v)
{
    return v->action->is.on ? "" : "Fumes stay in the room.";
}

const action_type action_mixer = {
    .keyword = "mixer",
    .form = "on|off",
    .meaning = "the mixer is switched",
    .group = ACTION_SWITCH,
    .lane = ACTION_LANE_SET,
    .parse = parse,
    .verb = "switch ",
    .caution_of = mixer_caution,
};

const action_type action_lid = {
    .keyword = "lid",
    .form = "on|off",
    .meaning = "the lid is laid on or taken off",
    .group = ACTION_SWITCH,
    .lane = ACTION_LANE_SET,
    .parse = parse,
    .caution_of = lid_caution,
};

const action_type action_exhaust = {
    .keyword = "exhaust",
    .form = "on|off",
    .meaning = "the exhaust over the bath is switched",
    .group = ACTION_SWITCH,
    .lane = ACTION_LANE_SET,
    .parse = parse,
    .verb = "switch ",
    .caution_of = exhaust_caution,
};
