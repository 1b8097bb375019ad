#include "actions/action.h"

#include <stdio.h>
#include <string.h>

#include "base/words.h"

static const action_type *const types[] = {
    [BOIL_ACTION_LOAD] = &action_load,   [BOIL_ACTION_LIFT] = &action_lift,     [BOIL_ACTION_WATER] = &action_water,
    [BOIL_ACTION_SALTS] = &action_salts, [BOIL_ACTION_LIQUID] = &action_liquid, [BOIL_ACTION_HEAT] = &action_heat,
    [BOIL_ACTION_MIXER] = &action_mixer, [BOIL_ACTION_LID] = &action_lid,       [BOIL_ACTION_EXHAUST] = &action_exhaust,
};

const char *const action_addition_words[] = {
    [BOIL_ACTION_WATER] = "water", [BOIL_ACTION_SALTS] = "salts", [BOIL_ACTION_LIQUID] = "liquid"};

#define TYPES (sizeof types / sizeof types[0])

const action_type *action_type_listed(size_t index)
{
    return index < TYPES ? types[index] : NULL;
}

const action_type *action_type_of(boil_action_kind kind)
{
    return types[kind];
}

double action_takes_s(const boil_action *a)
{
    size_t at = types[a->kind]->takes_at;
    double s = 0;
    if (at > 0)
        memcpy(&s, (const char *)a + at, sizeof s);
    return s;
}

const boil_load *action_load_of(const boil_action *a)
{
    return types[a->kind]->group == ACTION_LOAD ? &a->is.load : NULL;
}

/* "load, lift, ... and exhaust" */
static action_text known(void)
{
    action_text t = {""};
    for (size_t i = 0; i < TYPES; i++)
        action_text_add(&t, "%s%s", i == 0 ? "" : i + 1 < TYPES ? ", " : " and ", types[i]->keyword);
    return t;
}

bool action_read(action_reader *r, cursor *c, boil_action *a, action_line *line)
{
    size_t token = cursor_token(c);
    words_nearest n = words_near(c->at, token);
    for (size_t i = 0; i < TYPES; i++) {
        if (cursor_take(c, types[i]->keyword)) {
            a->kind = (boil_action_kind)i;
            return types[i]->parse(r, c, a, line);
        }
        words_consider(&n, types[i]->keyword);
    }
    if (token == 0)
        cursor_error(c, c->at, "expected something to do: %s", known().text);
    else
        cursor_error(c, c->at, "unknown act '%s'; known are %s%s", words_quoted(c->at, token).text, known().text,
                     words_suggestion(&n).text);
    return false;
}
