#include "scenario/uncertain.h"

#include <stdlib.h>
#include <string.h>

#include "base/words.h"
#include "scenario/record.h"

#define AT(member) offsetof(scenario, member)

/* The model's own, with the ranges its headers give. */
/* clang-format off */
static const uncertain_thing constants[] = {
    {"mixing time factor", NULL, "of the time in which water mixes in; three either way by judgement",
     KEY_FACTOR, DIM_COUNT, {NULL, 0.3, 3}, AT(plant.layer.turnover_factor)},
    {"part coefficient factor", NULL,
     "of heat from the bath to parts, relative to the correlations; not of loads that state theirs",
     KEY_FACTOR, DIM_COUNT, {NULL, 0.5, 2}, AT(plant.pool.part_coefficient_factor)},
    {"mixing efficiency", NULL, "share of the stirring power that lifts the bath into floating water", KEY_FACTOR,
     DIM_COUNT, {NULL, 0.02, 0.2}, AT(plant.layer.mixing_efficiency)},
    {"distribution", NULL, "of steam over the pool, C0 of the drift flux", KEY_FACTOR, DIM_COUNT, {NULL, 1, 1.5},
     AT(plant.pool.distribution)},
    {"drift", NULL, "of bubbles, K of the drift flux; low for a foaming bath", KEY_FACTOR, DIM_COUNT, {NULL, 0.3, 1.6},
     AT(plant.pool.drift)},
    {"dilution factor", NULL, "of water's heat of dilution in the bath, -422 kJ/kg at 51.2 % and the boil", KEY_FACTOR, DIM_COUNT,
     {NULL, 0.89, 1.055}, AT(plant.dilution_factor)},
    {"viscosity factor", NULL, "of the bath's viscosity; it is extrapolated above 70 degC", KEY_FACTOR, DIM_COUNT,
     {NULL, 0.7, 1.5}, AT(plant.transport.viscosity_factor)},
    {"liquid coefficient", NULL, "of heat from the bath to its surface", KEY_QUANTITY, DIM_COEFFICIENT,
     {"W/m2K", 1000, 3000}, AT(plant.losses.liquid_coefficient_W_m2K)},
};
/* clang-format on */

#define CONSTANTS (sizeof constants / sizeof constants[0])

const uncertain_thing *uncertain_constant(size_t index)
{
    return index < CONSTANTS ? &constants[index] : NULL;
}

static bool is_one_number(const key *k)
{
    bool of_runs = k->only != CASE_EXHAUST && k->only != CASE_DESIGN;
    return k->section[0] != '\0' && of_runs &&
           (k->kind == KEY_QUANTITY || k->kind == KEY_AFLOAT || k->kind == KEY_SHARE || k->kind == KEY_FACTOR);
}

uncertain_thing uncertain_setting(const key *k)
{
    uncertain_thing t = {
        .key = k, .meaning = k->meaning, .kind = k->kind, .dimension = k->dimension, .within = k->within, .where = k->where};
    snprintf(t.words, sizeof t.words, "%s %s", k->section, k->words);
    return t;
}

/* The nearest word is kept by its address, so all names must stand until the message is made. */
static bool unknown(const cursor *c, size_t length)
{
    words_nearest n = words_near(c->at, length);
    uncertain_thing *things = calloc(key_count(), sizeof *things);
    for (size_t i = 0; things != NULL && i < key_count(); i++) {
        things[i] = uncertain_setting(key_at(i));
        if (is_one_number(key_at(i)))
            words_consider(&n, things[i].words);
    }
    for (size_t i = 0; i < CONSTANTS; i++)
        words_consider(&n, constants[i].words);
    if (things == NULL)
        return messages_lost(c->messages);
    cursor_error(c, c->at, "'%s' is no number of a scenario that may be uncertain, such as 'heat efficiency'%s",
                 words_quoted(c->at, length).text, words_suggestion(&n).text);
    free(things);
    return false;
}

static bool find(const cursor *c, size_t length, uncertain_thing *thing)
{
    for (size_t i = 0; i < CONSTANTS; i++)
        if (words_same(c->at, length, constants[i].words)) {
            *thing = constants[i];
            return true;
        }
    for (size_t i = 0; i < key_count(); i++) {
        *thing = uncertain_setting(key_at(i));
        if (is_one_number(key_at(i)) && words_same(c->at, length, thing->words))
            return true;
    }
    return unknown(c, length);
}

/* "NAME = ..." up to the sign, which the cursor passes. False, with a message, when nothing is called so. */
static bool name_read(cursor *c, uncertain_thing *thing)
{
    cursor_done(c);
    const char *equals = memchr(c->at, '=', (size_t)(c->end - c->at));
    if (equals == NULL)
        return cursor_error(c, c->at, "expected 'heat efficiency = 50 %% to 70 %%' or the like, got '%s'",
                            words_quoted(c->at, (size_t)(c->end - c->at)).text);
    if (!find(c, (size_t)(words_trim(c->at, equals) - c->at), thing))
        return false;
    c->at = words_skip(equals + 1, c->end);
    return true;
}

static bool number(cursor *part, const uncertain_thing *t, unsigned dimensions, quantity *q)
{
    bool good = t->kind == KEY_SHARE    ? quantity_share(part, t->words, q)
                : t->kind == KEY_FACTOR ? quantity_factor(part, t->words, q)
                                        : quantity_read(part, t->words, dimensions, q);
    return good && cursor_expect_end(part);
}

/* A key of two dimensions takes that of the first value. */
static bool value(cursor part, uncertain_thing *t, quantity *q)
{
    bool two = t->key != NULL && key_has_other(t->key) && t->dimension == t->key->dimension;
    if (!number(&part, t, UNIT_OF(t->dimension) | (two ? UNIT_OF(t->key->other) : 0), q))
        return false;
    if (two && q->dimension != t->dimension) {
        t->dimension = q->dimension;
        t->within = t->key->within_other;
    }
    return true;
}

static bool sane_value(cursor part, uncertain_thing *thing, double *si)
{
    quantity q;
    if (!value(part, thing, &q) || !quantity_within(&part, thing->words, &q, &thing->within))
        return false;
    *si = q.si;
    return true;
}

/* Where a mark stands; NULL when it does not. */
static const char *mark_in(const cursor *c, const char *mark)
{
    size_t length = strlen(mark);
    for (const char *at = c->at; at + length <= c->end; at++)
        if (memcmp(at, mark, length) == 0)
            return at;
    return NULL;
}

static cursor before(const cursor *c, const char *mark)
{
    cursor part = *c;
    part.end = words_trim(part.at, mark);
    return part;
}

static cursor after(const cursor *c, const char *mark, size_t length)
{
    cursor part = *c;
    part.at = words_skip(mark + length, part.end);
    return part;
}

static bool read_list(const cursor *c, uncertain *u)
{
    cursor rest = *c;
    u->spread.kind = BOIL_SPREAD_LISTED;
    for (const char *bar = rest.at; bar != NULL;) {
        bar = mark_in(&rest, "|");
        if (u->spread.count == BOIL_SPREAD_VALUES)
            return cursor_error(c, rest.at, "'%s' has more than %d values", u->thing.words, BOIL_SPREAD_VALUES);
        if (!sane_value(bar != NULL ? before(&rest, bar) : rest, &u->thing, &u->spread.value[u->spread.count++]))
            return false;
        if (bar != NULL)
            rest = after(&rest, bar, 1);
    }
    return true;
}

/* Both ends of what is drawn must be values it can have. */
static bool normal_within(const cursor *c, uncertain *u, quantity likely)
{
    quantity end = likely;
    end.text = c->at;
    end.length = (size_t)(c->end - c->at);
    end.si = boil_spread_at(&u->spread, 0);
    if (!quantity_within(c, u->thing.words, &end, &u->thing.within))
        return false;
    end.si = boil_spread_at(&u->spread, 1);
    return quantity_within(c, u->thing.words, &end, &u->thing.within);
}

static bool read_normal(const cursor *c, const char *mark, size_t length, uncertain *u)
{
    quantity likely, deviation;
    cursor right = after(c, mark, length);
    u->spread.kind = BOIL_SPREAD_NORMAL;
    if (!value(before(c, mark), &u->thing, &likely))
        return false;
    unit_dimension d = u->thing.dimension == DIM_TEMPERATURE ? DIM_DIFFERENCE : u->thing.dimension;
    if (!number(&right, &u->thing, UNIT_OF(d), &deviation))
        return false;
    u->spread.likely = likely.si;
    u->spread.deviation = deviation.si;
    return boil_spread_problem(&u->spread) != NULL || normal_within(c, u, likely);
}

static bool read_likely(cursor tail, uncertain *u)
{
    u->spread.kind = BOIL_SPREAD_TRIANGULAR;
    if (!cursor_take(&tail, "likely"))
        return cursor_error(&tail, tail.at, "expected 'likely' and a value, got '%s'",
                            words_quoted(tail.at, (size_t)(tail.end - tail.at)).text);
    tail.at = words_skip(tail.at, tail.end);
    return sane_value(tail, &u->thing, &u->spread.likely);
}

static bool read_range(const cursor *c, const char *mark, uncertain *u)
{
    cursor right = after(c, mark, strlen(" to "));
    const char *comma = mark_in(&right, ",");
    u->spread.kind = BOIL_SPREAD_UNIFORM;
    if (!sane_value(before(c, mark), &u->thing, &u->spread.low) ||
        !sane_value(comma != NULL ? before(&right, comma) : right, &u->thing, &u->spread.high))
        return false;
    return comma == NULL || read_likely(after(&right, comma, 1), u);
}

static bool read_spread(const cursor *c, uncertain *u)
{
    const char *to = mark_in(c, " to "), *plus = mark_in(c, "+-"), *sign = mark_in(c, "\xC2\xB1");
    if (mark_in(c, "|") != NULL)
        return read_list(c, u);
    if (plus != NULL || sign != NULL)
        return read_normal(c, plus != NULL ? plus : sign, 2, u);
    if (to != NULL)
        return read_range(c, to, u);
    return cursor_error(c, c->at, "'%s' needs a spread: 'a to b', 'a to b, likely c', 'a +- b' or 'a | b | c', got '%s'",
                        u->thing.words, words_quoted(c->at, (size_t)(c->end - c->at)).text);
}

bool uncertain_read(cursor *c, uncertain *out)
{
    *out = (uncertain){0};
    if (!name_read(c, &out->thing))
        return false;
    snprintf(out->as_written, sizeof out->as_written, "%.*s", (int)(c->end - c->at), c->at);
    if (!read_spread(c, out))
        return false;
    const char *problem = boil_spread_problem(&out->spread);
    if (problem != NULL)
        cursor_error(c, c->at, "%s", problem);
    return problem == NULL;
}

bool uncertain_grid_read(cursor *c, void *grid)
{
    static const bounds steps = {NULL, 2, UNCERTAIN_STEPS_MAX};
    uncertain_grid *g = grid;
    quantity count;
    const char *colon = mark_in(c, ":");
    if (colon == NULL)
        return cursor_error(c, c->at,
                            "a grid ends with ': ' and the number of its steps, for example "
                            "'heat input = 200 kBtu/h to 500 kBtu/h : 7'");
    cursor range = before(c, colon), tail = after(c, colon, 1);
    if (!uncertain_read(&range, &g->over) || !quantity_factor(&tail, "steps", &count) || !cursor_expect_end(&tail) ||
        !quantity_within(&tail, "steps", &count, &steps))
        return false;
    g->steps = (size_t)count.si;
    if ((double)g->steps < count.si)
        return cursor_error(&tail, tail.at, "the number of steps must be a whole one");
    if (g->over.spread.kind != BOIL_SPREAD_UNIFORM)
        cursor_error(c, c->at, "a grid runs from one value to another: 'a to b : steps'");
    return g->over.spread.kind == BOIL_SPREAD_UNIFORM;
}
