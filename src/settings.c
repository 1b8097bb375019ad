#include "settings.h"

#include <stdlib.h>
#include <string.h>

#include "array.h"
#include "words.h"

_Static_assert(sizeof(boil_tank_shape) == sizeof(unsigned) && sizeof(boil_tank_heated) == sizeof(unsigned) &&
                   sizeof(boil_heat_source) == sizeof(unsigned),
               "a choice is stored as an unsigned number");

static const struct {
    const char *name;
    int salt;
} salts[] = {
    {"NaOH", BOIL_NAOH},           {"sodium hydroxide", BOIL_NAOH}, {"NaNO3", BOIL_NANO3},
    {"sodium nitrate", BOIL_NANO3}, {"NaNO2", BOIL_NANO2},           {"sodium nitrite", BOIL_NANO2},
};

#define SALT_NAMES (sizeof salts / sizeof salts[0])

static void store(const key *k, scenario *out, const void *value, size_t size)
{
    memcpy((char *)out + k->where, value, size);
}

static bool read_text(const key *k, cursor *c, scenario *out)
{
    char *text = array_text(c->at, (size_t)(c->end - c->at));
    if (text == NULL) {
        cursor_error(c, c->at, "out of memory");
        return false;
    }
    store(k, out, &text, sizeof text);
    return true;
}

static bool read_number(const key *k, cursor *c, quantity *q)
{
    switch (k->kind) {
    case KEY_SHARE:
        return quantity_share(c, k->words, q);
    case KEY_FACTOR:
        return quantity_factor(c, k->words, q);
    case KEY_CLOCK:
        return quantity_clock(c, k->words, q);
    case KEY_SPAN:
        return quantity_when(c, k->words, q);
    case KEY_TITLE:
    case KEY_PATH:
    case KEY_QUANTITY:
    case KEY_RANGE:
    case KEY_BLEND:
    case KEY_CHOICE:
        break;
    }
    return quantity_read(c, k->words, UNIT_OF(k->dimension), q);
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
    if (k->kind == KEY_CLOCK && !(q.si < 24 * 3600.0)) {
        cursor_error(c, q.text, "'%s' must be between 0:00 and 23:59, got '%s'", k->words,
                     words_quoted(q.text, q.length).text);
        return false;
    }
    if (k->kind != KEY_CLOCK && !quantity_within(c, k->words, &q, &k->within))
        return false;
    store(k, out, &q.si, sizeof q.si);
    return true;
}

static bool read_range(const key *k, cursor *c, scenario *out)
{
    quantity low, high;
    if (!quantity_read(c, k->words, UNIT_OF(k->dimension), &low))
        return false;
    if (!cursor_take(c, "to")) {
        cursor_error(c, c->at, "'%s' is a range: write '%s to ...'", k->words, words_quoted(low.text, low.length).text);
        return false;
    }
    if (!quantity_read(c, k->words, UNIT_OF(k->dimension), &high) || !cursor_expect_end(c))
        return false;
    bool good = quantity_within(c, k->words, &low, &k->within);
    if (!quantity_within(c, k->words, &high, &k->within) || !good)
        return false;
    if (!(low.si < high.si)) {
        cursor_error(c, low.text, "'%s' must run from a lower to a higher value", k->words);
        return false;
    }
    double ends[2] = {low.si, high.si};
    store(k, out, ends, sizeof ends);
    return true;
}

static bool read_choice(const key *k, cursor *c, scenario *out)
{
    size_t length = (size_t)(c->end - c->at);
    char known[120] = "";
    words_nearest n = words_near(c->at, length);
    for (unsigned i = 0; k->choices[i] != NULL; i++) {
        if (words_same(c->at, length, k->choices[i])) {
            store(k, out, &i, sizeof i);
            return true;
        }
        words_consider(&n, k->choices[i]);
        snprintf(known + strlen(known), sizeof known - strlen(known), "%s%s", i > 0 ? " or " : "", k->choices[i]);
    }
    cursor_error(c, c->at, "'%s' must be %s, got '%s'%s", k->words, known, words_quoted(c->at, length).text,
                 words_suggestion(&n).text);
    return false;
}

/* The salt named at the cursor, which moves past it; -1 and a message when there is none. */
static int read_salt(cursor *c)
{
    size_t token = cursor_token(c);
    words_nearest n = words_near(c->at, token);
    for (size_t i = 0; i < SALT_NAMES; i++) {
        if (cursor_take(c, salts[i].name))
            return salts[i].salt;
        words_consider(&n, salts[i].name);
    }
    cursor_error(c, c->at, "expected a salt (NaOH, NaNO3 or NaNO2), got '%s'%s", words_quoted(n.text, n.length).text,
                 words_suggestion(&n).text);
    return -1;
}

static bool read_part(const key *k, cursor *c, double blend[BOIL_SALTS], bool named[BOIL_SALTS])
{
    quantity q;
    if (!quantity_share(c, k->words, &q) || !quantity_within(c, k->words, &q, &k->within))
        return false;
    cursor_done(c);
    const char *salt_at = c->at;
    int salt = read_salt(c);
    if (salt < 0)
        return false;
    if (named[salt]) {
        cursor_error(c, salt_at, "this salt is named twice");
        return false;
    }
    named[salt] = true;
    blend[salt] = q.si;
    return true;
}

static bool read_blend(const key *k, cursor *c, scenario *out)
{
    double blend[BOIL_SALTS] = {0}, sum = 0;
    bool named[BOIL_SALTS] = {false};
    const char *start = c->at;
    do {
        if (!read_part(k, c, blend, named))
            return false;
    } while (!cursor_done(c) && *c->at == ',' && c->at++ < c->end);
    if (!cursor_expect_end(c))
        return false;
    for (int i = 0; i < BOIL_SALTS; i++)
        sum += blend[i];
    if (!(sum >= 0.9995 - 1e-9 && sum <= 1.0005 + 1e-9)) {
        cursor_error(c, start, "the shares of '%s' must add up to 100 %%, not to %.4g %%", k->words, 100 * sum);
        return false;
    }
    for (int i = 0; i < BOIL_SALTS; i++)
        blend[i] /= sum;
    store(k, out, blend, sizeof blend);
    return true;
}

static bool read_value(const key *k, cursor *c, scenario *out)
{
    switch (k->kind) {
    case KEY_TITLE:
    case KEY_PATH:
        return read_text(k, c, out);
    case KEY_RANGE:
        return read_range(k, c, out);
    case KEY_BLEND:
        return read_blend(k, c, out);
    case KEY_CHOICE:
        return read_choice(k, c, out);
    case KEY_CLOCK:
    case KEY_SPAN:
    case KEY_QUANTITY:
    case KEY_SHARE:
    case KEY_FACTOR:
        break;
    }
    return read_single(k, c, out);
}

bool setting_read(const key *k, const setting_line *line, scenario *out)
{
    cursor value = line->value, *c = &value;
    scenario_setting *s = &out->settings[key_index(k)];
    s->state = SETTING_GIVEN;
    s->line = c->line;
    s->given = array_text(c->at, (size_t)(c->end - c->at));
    if (s->given == NULL) {
        cursor_error(c, c->at, "out of memory");
        return false;
    }
    if (cursor_done(c)) {
        cursor_error(c, c->at, "'%s' has no value", k->words);
        return false;
    }
    return read_value(k, c, out);
}

static size_t values_of(const key *k)
{
    switch (k->kind) {
    case KEY_TITLE:
    case KEY_PATH:
    case KEY_CHOICE:
        return 0;
    case KEY_RANGE:
        return 2;
    case KEY_BLEND:
        return BOIL_SALTS;
    case KEY_CLOCK:
    case KEY_SPAN:
    case KEY_QUANTITY:
    case KEY_SHARE:
    case KEY_FACTOR:
        break;
    }
    return 1;
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
    memcpy(value, at, values_of(k) * sizeof *value);
    return values_of(k);
}
