/* actions/action_switch.c -- what is set: the dial of the heat; mixer, lid and exhaust, which are only on or off. */

#include "actions/action.h"
#include "base/words.h"

static const bounds dial_share = {"%", 0, 100};

static bool parse_dial(action_reader *r, cursor *c, boil_action *a, action_line *line)
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

/* clang-format off */
const action_type action_heat = {
    .keyword = "heat", .form = "on|off|PERCENT", .meaning = "the dial is set", .group = ACTION_SWITCH, .lane = ACTION_LANE_SET,
    .parse = parse_dial, .verb_of = verb_of, .caution_of = caution_of,
};
/* clang-format on */

static bool parse_switch(action_reader *r, cursor *c, boil_action *a, action_line *line)
{
    const char *what = action_type_of(a->kind)->keyword;
    (void)r;
    a->is.on = cursor_take(c, "on");
    if (!a->is.on && !cursor_take(c, "off"))
        return cursor_error(c, c->at, "say '%s on' or '%s off'", what, what);
    snprintf(line->words, sizeof line->words, "%s %s", what, a->is.on ? "on" : "off");
    return cursor_expect_end(c);
}

/* clang-format off */
const action_type action_mixer = {
    .keyword = "mixer", .form = "on|off", .meaning = "the mixer is switched", .group = ACTION_SWITCH, .lane = ACTION_LANE_SET,
    .parse = parse_switch, .verb = "switch ", .caution = "Stand back: stirring can set free stored heat at once.",
    .caution_off = "No dry salt once it stands still.",
};

const action_type action_lid = {
    .keyword = "lid", .form = "on|off", .meaning = "the lid is laid on or taken off", .group = ACTION_SWITCH,
    .lane = ACTION_LANE_SET, .parse = parse_switch, .caution = "Steam at the gap. What condenses drips back and floats.",
    .caution_off = "Open it away from you: steam, and perhaps water afloat.",
};

const action_type action_exhaust = {
    .keyword = "exhaust", .form = "on|off", .meaning = "the exhaust over the bath is switched", .group = ACTION_SWITCH,
    .lane = ACTION_LANE_SET, .parse = parse_switch, .verb = "switch ", .caution = "", .caution_off = "Fumes stay in the room.",
};
/* clang-format on */
