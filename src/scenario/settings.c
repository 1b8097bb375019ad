#include "scenario/scenario.h"

#include <math.h>
#include <string.h>

#include "base/words.h"

_Static_assert(sizeof(moment_count) == sizeof(unsigned) && sizeof(boil_tank_shape) == sizeof(unsigned) &&
                   sizeof(boil_tank_heated) == sizeof(unsigned) && sizeof(boil_heat_source) == sizeof(unsigned) &&
                   sizeof(boil_heat_control_mode) == sizeof(unsigned) && sizeof(boil_water_control_mode) == sizeof(unsigned) &&
                   sizeof(heat_fuel) == sizeof(unsigned) && sizeof(boil_hood) == sizeof(unsigned) &&
                   sizeof(slot_along) == sizeof(unsigned) && sizeof(burner_draft) == sizeof(unsigned),
               "a choice is stored as an unsigned number");

static void store(const key *k, scenario *out, const void *value, size_t size)
{
    memcpy((char *)out + k->where, value, size);
}

static bool read_text(const key *k, cursor *c, scenario *out)
{
    char *text = text_copy(c->at, (size_t)(c->end - c->at));
    if (text == NULL)
        return messages_lost(c->messages);
    store(k, out, &text, sizeof text);
    return true;
}

/* What has its own way to be written; the others are quantities. */
static bool (*const numbers[])(cursor *c, const char *what, quantity *q) = {
    [KEY_SHARE] = quantity_share, [KEY_FACTOR] = quantity_factor,     [KEY_CLOCK] = quantity_clock,
    [KEY_SPAN] = quantity_when,   [KEY_TURNDOWN] = quantity_turndown, [KEY_WHOLE] = quantity_factor,
    [KEY_SWITCH] = NULL, /* the last kind */
};

static bool read_number(const key *k, cursor *c, quantity *q)
{
    if (numbers[k->kind] != NULL)
        return numbers[k->kind](c, k->words, q);
    return quantity_read(c, k->words, UNIT_OF(k->dimension) | (key_has_other(k) ? UNIT_OF(k->other) : 0), q);
}

static bool read_single(const key *k, cursor *c, scenario *out)
{
    quantity q;
    double nothing = 0;
    if (k->zero != NULL && words_same(c->at, (size_t)(c->end - c->at), k->zero)) {
        store(k, out, &nothing, sizeof nothing);
        return true;
    }
    if (!read_number(k, c, &q) || !cursor_expect_end(c))
        return false;
    if (k->kind == KEY_CLOCK && !(q.si < 24 * 3600.0))
        return cursor_error(c, q.text, "'%s' must be between 0:00 and 23:59, got '%s'", k->words,
                            words_quoted(q.text, q.length).text);
    bool other = key_has_other(k) && q.dimension == k->other;
    if (k->kind != KEY_CLOCK && !quantity_within(c, k->words, &q, other ? &k->within_other : &k->within))
        return false;
    if (k->kind == KEY_WHOLE && q.si != floor(q.si))
        return cursor_error(c, q.text, "'%s' is a whole number", k->words);
    store(k, out, &q.si, sizeof q.si);
    out->settings[key_index(k)].dimension = q.dimension;
    return true;
}

static bool read_range(const key *k, cursor *c, scenario *out)
{
    quantity low, high;
    if (!quantity_read(c, k->words, UNIT_OF(k->dimension), &low))
        return false;
    if (!cursor_take(c, "to"))
        return cursor_error(c, c->at, "'%s' is a range: write '%s to ...'", k->words, words_quoted(low.text, low.length).text);
    if (!quantity_read(c, k->words, UNIT_OF(k->dimension), &high) || !cursor_expect_end(c))
        return false;
    bool good = quantity_within(c, k->words, &low, &k->within);
    if (!quantity_within(c, k->words, &high, &k->within) || !good)
        return false;
    if (!(low.si < high.si))
        return cursor_error(c, low.text, "'%s' must run from a lower to a higher value", k->words);
    double ends[2] = {low.si, high.si};
    store(k, out, ends, sizeof ends);
    return true;
}

static bool read_afloat(const key *k, cursor *c, scenario *out)
{
    static const bounds liquid = {"degC", 0, 100};
    quantity much, warm = {.si = 0};
    if (!quantity_read(c, k->words, UNIT_OF(k->dimension) | UNIT_OF(k->other), &much) ||
        !quantity_within(c, k->words, &much, much.dimension == k->other ? &k->within_other : &k->within))
        return false;
    if (cursor_take(c, "at") &&
        (!quantity_read(c, "at", UNIT_OF(DIM_TEMPERATURE), &warm) || !quantity_within(c, "at", &warm, &liquid)))
        return false;
    if (!cursor_expect_end(c))
        return false;
    store(k, out, (double[]){much.si, warm.si}, 2 * sizeof(double));
    out->settings[key_index(k)].dimension = much.dimension;
    return true;
}

static void store_choice(const key *k, scenario *out, unsigned index)
{
    bool on = index > 0;
    if (k->kind == KEY_SWITCH)
        store(k, out, &on, sizeof on);
    else
        store(k, out, &index, sizeof index);
}

/* What people call a choice, or have in its place. */
static const struct {
    const char *section, *words, *typed, *answer;
} miscalled[] = {
    {"tank", "shape", "round", "is called 'upright cylinder', with a 'diameter'"},
    {"tank", "shape", "rectangular", "is called 'box', with 'length' and 'width'"},
    {"heat", "source", "propane", "is a gas too: write source = gas, with fuel = propane"},
};

static const char *miscalled_as(const key *k, const char *text, size_t length)
{
    for (size_t i = 0; i < sizeof miscalled / sizeof miscalled[0]; i++)
        if (strcmp(k->section, miscalled[i].section) == 0 && strcmp(k->words, miscalled[i].words) == 0 &&
            words_same(text, length, miscalled[i].typed))
            return miscalled[i].answer;
    return NULL;
}

static bool read_choice(const key *k, cursor *c, scenario *out)
{
    size_t length = (size_t)(c->end - c->at);
    char known[200] = "";
    words_nearest n = words_near(c->at, length);
    for (unsigned i = 0; k->choices[i] != NULL; i++) {
        if (words_same(c->at, length, k->choices[i])) {
            store_choice(k, out, i);
            return true;
        }
        words_consider(&n, k->choices[i]);
        TEXT_ADD(known, "%s%s", i > 0 ? " or " : "", k->choices[i]);
    }
    const char *answer = miscalled_as(k, c->at, length);
    if (answer != NULL)
        return cursor_error(c, c->at, "'%s' %s", words_quoted(c->at, length).text, answer);
    return cursor_error(c, c->at, "'%s' must be %s, got '%s'%s", k->words, known, words_quoted(c->at, length).text,
                        words_suggestion(&n).text);
}

static bool read_word(const key *k, cursor *c, scenario *out)
{
    size_t length = (size_t)(c->end - c->at);
    if (cursor_token(&(cursor){.at = c->at, .end = c->end}) < length || length > 8)
        return cursor_error(c, c->at, "'%s' is one word of at most 8 letters", k->words);
    return read_text(k, c, out);
}

static bool read_price(const key *k, cursor *c, scenario *out)
{
    quantity q;
    if (!quantity_price(c, k->words, UNIT_OF(k->dimension) | UNIT_OF(k->other), &q) || !cursor_expect_end(c))
        return false;
    store(k, out, &q.si, sizeof q.si);
    out->settings[key_index(k)].dimension = q.dimension;
    return true;
}

static bool read_blend(const key *k, cursor *c, scenario *out)
{
    double blend[BOIL_SALTS];
    if (!blend_read(c, k->words, NULL, blend) || !cursor_expect_end(c))
        return false;
    store(k, out, blend, sizeof blend);
    return true;
}

static const struct {
    bool (*read)(const key *k, cursor *c, scenario *out);
    size_t values; /* doubles in the scenario */
} kinds[] = {
    [KEY_TITLE] = {read_text, 0},           [KEY_PATH] = {read_text, 0},       [KEY_CLOCK] = {read_single, 1},
    [KEY_SPAN] = {read_single, 1},          [KEY_QUANTITY] = {read_single, 1}, [KEY_SHARE] = {read_single, 1},
    [KEY_TURNDOWN] = {read_single, 1},      [KEY_WHOLE] = {read_single, 1},    [KEY_FACTOR] = {read_single, 1},
    [KEY_RANGE] = {read_range, 2},          [KEY_WORD] = {read_word, 0},       [KEY_PRICE] = {read_price, 0},
    [KEY_BLEND] = {read_blend, BOIL_SALTS}, [KEY_AFLOAT] = {read_afloat, 1},   [KEY_CHOICE] = {read_choice, 0},
    [KEY_SWITCH] = {read_choice, 0},
};

bool setting_read(const key *k, const setting_line *line, scenario *out)
{
    cursor value = line->value, *c = &value;
    scenario_setting *s = &out->settings[key_index(k)];
    s->state = SETTING_GIVEN;
    s->line = c->line;
    s->given = text_copy(c->at, (size_t)(c->end - c->at));
    if (s->given == NULL)
        return messages_lost(c->messages);
    if (cursor_done(c))
        return cursor_error(c, c->at, "'%s' has no value", k->words);
    return kinds[k->kind].read(k, c, out);
}

size_t scenario_setting_value(const scenario *s, size_t index, double value[SETTING_VALUES])
{
    const scenario_setting *set = &s->settings[index];
    const key *k = set->key;
    const char *at = (const char *)s + k->where;
    if (set->state == SETTING_ABSENT || (set->state == SETTING_DEFAULT && k->otherwise != NULL))
        return 0;
    if (k->kind == KEY_CHOICE) {
        unsigned choice;
        memcpy(&choice, at, sizeof choice);
        value[0] = (double)choice;
        return 1;
    }
    if (k->kind == KEY_SWITCH) {
        value[0] = *(const bool *)at;
        return 1;
    }
    memcpy(value, at, kinds[k->kind].values * sizeof *value);
    return kinds[k->kind].values;
}
