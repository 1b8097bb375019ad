#include "actions/action_table.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "actions/action_load.h"
#include "actions/action_pour.h"
#include "base/array.h"
#include "base/boil.h"
#include "base/words.h"

static const bounds dial_share = {"%", 0, 100};

int action_load_name(action_list *a, cursor *c)
{
    const char *start = words_skip(c->at, c->end);
    size_t length = (size_t)(words_trim(start, c->end) - start);
    c->at = c->end;
    for (size_t i = 0; i < a->name_count; i++)
        if (words_same(start, length, a->names[i]))
            return (int)i + 1;
    char **names = array_reserve(a->names, &a->name_capacity, a->name_count, sizeof *names);
    char *copy = names != NULL && a->name_count < ACTIONS_NAMES_MAX ? array_text(start, length) : NULL;
    if (names != NULL)
        a->names = names;
    if (copy == NULL) {
        cursor_error(c, start, "there are more than %d names of loads", ACTIONS_NAMES_MAX);
        return 0;
    }
    names[a->name_count++] = copy;
    return (int)a->name_count;
}

static bool read_lift(action_list *a, cursor *c, boil_action *action, action_line *said)
{
    action->kind = BOIL_ACTION_LIFT;
    action->name = 0;
    snprintf(said->words, sizeof said->words, "lift everything");
    if (cursor_done(c))
        return true;
    snprintf(said->words, sizeof said->words, "lift %s", words_quoted(c->at, (size_t)(c->end - c->at)).text);
    action->name = action_load_name(a, c);
    return action->name > 0;
}

static bool read_heat(action_list *a, cursor *c, boil_action *action, action_line *said)
{
    quantity q = {0};
    (void)a;
    action->kind = BOIL_ACTION_HEAT;
    cursor_done(c);
    const char *start = c->at;
    if (cursor_take(c, "on"))
        action->is.dial = 1;
    else if (cursor_take(c, "off"))
        action->is.dial = 0;
    else if (quantity_share(c, "heat", &q) && quantity_within(c, "heat", &q, &dial_share))
        action->is.dial = q.si;
    else
        return false;
    snprintf(said->words, sizeof said->words, "heat %s", words_quoted(start, (size_t)(c->at - start)).text);
    return cursor_expect_end(c);
}

static bool read_switch(cursor *c, boil_action *action, action_line *said, const char *what, boil_action_kind kind)
{
    action->kind = kind;
    action->is.on = cursor_take(c, "on");
    if (!action->is.on && !cursor_take(c, "off")) {
        cursor_error(c, c->at, "say '%s on' or '%s off'", what, what);
        return false;
    }
    snprintf(said->words, sizeof said->words, "%s %s", what, action->is.on ? "on" : "off");
    return cursor_expect_end(c);
}

static bool read_mixer(action_list *a, cursor *c, boil_action *action, action_line *said)
{
    (void)a;
    return read_switch(c, action, said, "mixer", BOIL_ACTION_MIXER);
}

static bool read_lid(action_list *a, cursor *c, boil_action *action, action_line *said)
{
    (void)a;
    return read_switch(c, action, said, "lid", BOIL_ACTION_LID);
}

static bool read_exhaust(action_list *a, cursor *c, boil_action *action, action_line *said)
{
    (void)a;
    return read_switch(c, action, said, "exhaust", BOIL_ACTION_EXHAUST);
}

static const action_type doings[] = {
    {"load", "MASS [steel|iron], SHAPE SIZE [, CLAUSE]...", "steel goes in and, with 'for', comes out again by itself",
     action_load_read},
    {"lift", "[NAME]", "a named load, or everything, comes out", read_lift},
    {"water", "AMOUNT over TIME|at FLOW [, at TEMPERATURE]",
     "water is poured, by volume or by mass; as warm as the room unless it says so", action_pour_water},
    {"salts", "MASS over TIME [, at TEMPERATURE] [, blend BLEND]",
     "dry salts are sifted in: the bath's own blend, as warm as the room, unless it says so", action_pour_salts},
    {"liquid", "AMOUNT over TIME [, at TEMPERATURE] [, strength CONCENTRATION|boiling point TEMPERATURE]",
     "ready-mixed liquid runs in under the surface: as strong as the bath at the start, as warm as the room, unless it "
     "says so",
     action_pour_liquid},
    {"heat", "on|off|PERCENT", "the dial is set", read_heat},
    {"mixer", "on|off", "the mixer is switched", read_mixer},
    {"lid", "on|off", "the lid is laid on or taken off", read_lid},
    {"exhaust", "on|off", "the exhaust over the bath is switched", read_exhaust},
};

#define KNOWN "load, lift, water, salts, liquid, heat, mixer, lid and exhaust"
#define DOINGS (sizeof doings / sizeof doings[0])

const action_type *action_type_listed(size_t index)
{
    return index < DOINGS ? &doings[index] : NULL;
}

bool action_read(action_list *a, cursor *c, boil_action *action, action_line *said)
{
    size_t token = cursor_token(c);
    words_nearest n = words_near(c->at, token);
    for (size_t i = 0; i < DOINGS; i++) {
        if (cursor_take(c, doings[i].verb))
            return doings[i].read(a, c, action, said);
        words_consider(&n, doings[i].verb);
    }
    if (token == 0)
        cursor_error(c, c->at, "expected something to do: " KNOWN);
    else
        cursor_error(c, c->at, "unknown act '%s'; known are " KNOWN "%s", words_quoted(c->at, token).text,
                     words_suggestion(&n).text);
    return false;
}
