/* actions/action_switch.c -- what is set: the heat, by its dial or a thermostat; mixer, lid and exhaust, which are only on or off. */

#include <string.h>

#include "actions/action.h"
#include "base/words.h"

static const bounds dial_share = {"%", 0, 100};

static const bounds set_point = {"degC", 0, 200};

/* "low", "to low": a burner's own marks. */
static bool is_fire(const cursor *c)
{
    static const char *const marks[] = {"low", "lowest", "minimum", "min", "medium", "half", "high", "highest"};
    cursor at = *c;
    cursor_take(&at, "to");
    for (size_t i = 0; i < sizeof marks / sizeof marks[0]; i++)
        if (cursor_take(&at, marks[i]))
            return true;
    return false;
}

/* "heat low", "heat 220 degF": what people say of a fire that is set back. */
static bool no_share(const cursor *c)
{
    const char *start = c->at;
    size_t n = 0;
    while (start + n < c->end && start[n] != ',')
        n++;
    words_quote q = words_quoted(start, n);
    if (quantity_comes(*c, UNIT_OF(DIM_TEMPERATURE)))
        return cursor_error(c, start, "'heat %s' is a temperature, and the dial has a percentage: write 'heat thermostat %s'",
                            q.text, q.text);
    if (is_fire(c))
        return cursor_error(c, start,
                            "'heat' takes a share of full fire, 'heat 30 %%' (how much '%s' is the burner says), or what the "
                            "bath is held at, 'heat thermostat 250 degF'",
                            q.text);
    return cursor_error(c, start,
                        "'heat' is set by its dial, 'heat 30 %%', by what the bath is held at, 'heat thermostat 250 degF', or "
                        "by 'heat on' and 'heat off', got '%s'",
                        q.text);
}

/* A share, or a number that lacks its sign. */
static bool share_comes(cursor c)
{
    cursor_done(&c);
    return c.at == c.end || (strchr("-0123456789", *c.at) != NULL && !quantity_comes(c, UNIT_OF(DIM_TEMPERATURE)));
}

static bool parse_dial(action_reader *r, cursor *c, boil_action *a, action_line *line)
{
    quantity q = {0};
    boil_action_heat *h = &a->is.heat;
    (void)r;
    cursor_done(c);
    const char *start = c->at;
    if (cursor_take(c, "on"))
        *h = (boil_action_heat){.order = BOIL_HEAT_ON, .dial = 1};
    else if (cursor_take(c, "off"))
        *h = (boil_action_heat){.order = BOIL_HEAT_TURN};
    else if (cursor_take(c, "dial"))
        *h = (boil_action_heat){.order = BOIL_HEAT_DIAL};
    else if (cursor_take(c, "thermostat")) {
        if (!quantity_read(c, "thermostat", UNIT_OF(DIM_TEMPERATURE), &q) || !quantity_within(c, "thermostat", &q, &set_point))
            return false;
        *h = (boil_action_heat){.order = BOIL_HEAT_THERMOSTAT, .set_point_K = q.si};
    } else if (!share_comes(*c))
        return no_share(c);
    else if (quantity_share(c, "heat", &q) && quantity_within(c, "heat", &q, &dial_share))
        *h = (boil_action_heat){.order = BOIL_HEAT_TURN, .dial = q.si};
    else
        return false;
    snprintf(line->words, sizeof line->words, "heat %s", words_quoted(start, (size_t)(c->at - start)).text);
    return cursor_expect_end(c);
}

static const char *verb_of(const boil_action *a)
{
    const boil_action_heat *h = &a->is.heat;
    return h->order == BOIL_HEAT_ON || (h->order == BOIL_HEAT_TURN && h->dial == 0) ? "switch " : "set ";
}

/* The fire that is asked for: what a control or a dial as it stood may come to is not known, and may be full. */
static double fire_of(const boil_action_heat *h)
{
    return h->order == BOIL_HEAT_TURN ? h->dial : 1;
}

static double fire_before(const action_view *v)
{
    for (const boil_action *a = v->action; a > v->schedule->actions; a--)
        if (a[-1].kind == BOIL_ACTION_HEAT)
            return a[-1].is.heat.order == BOIL_HEAT_THERMOSTAT ? 0 : fire_of(&a[-1].is.heat);
    return v->plant->heater.dial;
}

static const char *caution_of(const action_view *v)
{
    const boil_action_heat *h = &v->action->is.heat;
    if (h->order == BOIL_HEAT_THERMOSTAT)
        return "The fire comes and goes by itself: quiet means no water, no load.";
    return fire_of(h) > fire_before(v) ? "Stand back as the boil returns; add nothing until it is steady."
                                       : "It may go quiet: then no water, no load.";
}

/* clang-format off */
const action_type action_heat = {
    .keyword = "heat", .letter = 'H', .form = "on|off|PERCENT|thermostat TEMPERATURE|dial", .meaning = "the dial is set, or what sets the fire", .group = ACTION_SWITCH, .lane = ACTION_LANE_SET,
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
    .keyword = "mixer", .letter = 'M', .form = "on|off", .meaning = "the mixer is switched", .group = ACTION_SWITCH, .lane = ACTION_LANE_SET,
    .parse = parse_switch, .verb = "switch ", .caution = "Stand back: stirring can set free stored heat at once.",
    .caution_off = "No dry salt once it stands still.",
};

const action_type action_lid = {
    .keyword = "lid", .letter = 'C', .form = "on|off", .meaning = "the lid is laid on or taken off", .group = ACTION_SWITCH,
    .lane = ACTION_LANE_SET, .parse = parse_switch, .caution = "Steam at the gap. What condenses drips back and floats.",
    .caution_off = "Open it away from you: steam, and perhaps water afloat.",
};

const action_type action_exhaust = {
    .keyword = "exhaust", .letter = 'E', .form = "on|off", .meaning = "the exhaust over the bath is switched", .group = ACTION_SWITCH,
    .lane = ACTION_LANE_SET, .parse = parse_switch, .verb = "switch ", .caution = "", .caution_off = "Fumes stay in the room.",
};
/* clang-format on */
