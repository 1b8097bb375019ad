#include "doings.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "array.h"
#include "boil.h"
#include "loading.h"
#include "water.h"
#include "words.h"

static const bounds water_mass = {"kg", 0.001, 1e5};
static const bounds water_time = {"s", 1, 86400};
static const bounds dial_share = {"%", 0, 100};

int doing_name(acts *a, cursor *c)
{
    const char *start = words_skip(c->at, c->end);
    size_t length = (size_t)(words_trim(start, c->end) - start);
    c->at = c->end;
    for (size_t i = 0; i < a->name_count; i++)
        if (words_same(start, length, a->names[i]))
            return (int)i + 1;
    char **names = array_room(a->names, &a->name_room, a->name_count, sizeof *names);
    char *copy = names != NULL && a->name_count < ACTS_NAMES_MAX ? array_text(start, length) : NULL;
    if (names != NULL)
        a->names = names;
    if (copy == NULL) {
        cursor_error(c, start, "there are more than %d names of loads", ACTS_NAMES_MAX);
        return 0;
    }
    names[a->name_count++] = copy;
    return (int)a->name_count;
}

static bool read_lift(acts *a, cursor *c, boil_act *act, act_line *said)
{
    act->kind = BOIL_ACT_LIFT;
    act->name = 0;
    snprintf(said->words, sizeof said->words, "lift everything");
    if (cursor_done(c))
        return true;
    snprintf(said->words, sizeof said->words, "lift %s", words_quoted(c->at, (size_t)(c->end - c->at)).text);
    act->name = doing_name(a, c);
    return act->name > 0;
}

static bool read_heat(acts *a, cursor *c, boil_act *act, act_line *said)
{
    quantity q = {0};
    (void)a;
    act->kind = BOIL_ACT_HEAT;
    cursor_done(c);
    const char *start = c->at;
    if (cursor_take(c, "on"))
        act->is.dial = 1;
    else if (cursor_take(c, "off"))
        act->is.dial = 0;
    else if (quantity_share(c, "heat", &q) && quantity_within(c, "heat", &q, &dial_share))
        act->is.dial = q.si;
    else
        return false;
    snprintf(said->words, sizeof said->words, "heat %s", words_quoted(start, (size_t)(c->at - start)).text);
    return cursor_expect_end(c);
}

/* The amounts as written: how much, and how long or how fast. */
typedef struct {
    quantity amount, pace;
    bool at_rate;
} pour;

static bool read_pour(cursor *c, pour *p)
{
    if (!quantity_read(c, "water", UNIT_OF(DIM_VOLUME) | UNIT_OF(DIM_MASS), &p->amount))
        return false;
    p->at_rate = cursor_take(c, "at");
    if (p->at_rate)
        return quantity_read(c, "at", UNIT_OF(DIM_VOLUME_FLOW) | UNIT_OF(DIM_MASS_FLOW), &p->pace) &&
               cursor_expect_end(c);
    if (!cursor_take(c, "over")) {
        cursor_error(c, c->at, "say how fast: 'over 4 min' or 'at 30 gal/h'");
        return false;
    }
    return quantity_read(c, "over", UNIT_OF(DIM_TIME), &p->pace) && cursor_expect_end(c);
}

/* ", at 60 degF"; water is liquid in the air it is poured through. */
static bool read_water_temperature(const acts *a, cursor *rest, boil_water_act *w)
{
    cursor part;
    quantity q;
    bounds liquid = {"degC", 0,
                     floor(boil_water_saturation_temperature(a->plant->room.pressure_Pa) - BOIL_ZERO_CELSIUS)};
    w->temperature_K = a->plant->room.temperature_K;
    if (!cursor_part(rest, &part)) {
        if (w->temperature_K >= BOIL_ZERO_CELSIUS)
            return true;
        cursor_error(rest, rest->at,
                     "the room is below freezing: say how warm the water is, for example ', at 50 degF'");
        return false;
    }
    if (!cursor_take(&part, "at")) {
        cursor_error(&part, part.at, "expected 'at' and a temperature, got '%s'",
                     words_quoted(part.at, (size_t)(part.end - part.at)).text);
        return false;
    }
    if (!quantity_read(&part, "at", UNIT_OF(DIM_TEMPERATURE), &q) || !cursor_expect_end(&part) ||
        !quantity_within(&part, "at", &q, &liquid) || !cursor_expect_end(rest))
        return false;
    w->temperature_K = q.si;
    return true;
}

/* Volumes become masses at the water's own temperature. */
static bool settle_pour(const cursor *c, const pour *p, boil_water_act *w)
{
    double density = boil_water_density(w->temperature_K);
    double pace = p->pace.si;
    w->mass_kg = p->amount.si * (p->amount.dimension == DIM_VOLUME ? density : 1);
    w->over_s = pace;
    if (p->at_rate)
        w->over_s = w->mass_kg / (pace * (p->pace.dimension == DIM_VOLUME_FLOW ? density : 1));
    quantity mass = p->amount, time = p->pace;
    mass.si = w->mass_kg;
    mass.dimension = DIM_MASS;
    time.si = w->over_s;
    time.dimension = DIM_TIME;
    mass.unit = p->amount.dimension == DIM_MASS ? p->amount.unit : NULL;
    time.unit = p->at_rate ? NULL : p->pace.unit;
    if (!quantity_within(c, "water", &mass, &water_mass))
        return false;
    if (p->at_rate && !(pace > 0)) {
        cursor_error(c, p->pace.text, "a rate must be above zero");
        return false;
    }
    return quantity_within(c, p->at_rate ? "time to pour at this rate" : "over", &time, &water_time);
}

static bool read_water(acts *a, cursor *c, boil_act *act, act_line *said)
{
    cursor part;
    pour p;
    act->kind = BOIL_ACT_WATER;
    if (!cursor_part(c, &part)) {
        cursor_error(c, c->at, "say how much water, for example 'water 2 gal over 4 min'");
        return false;
    }
    const char *start = part.at;
    bool good = read_pour(&part, &p);
    if (!read_water_temperature(a, c, &act->is.water) || !good)
        return false;
    const char *how = start + p.amount.length;
    snprintf(said->words, sizeof said->words, "%s of water%s", words_quoted(start, p.amount.length).text,
             words_quoted(how, (size_t)(part.end - how)).text);
    return settle_pour(&part, &p, &act->is.water);
}

static const doing_verb doings[] = {
    {"load", "MASS [steel|iron], SHAPE SIZE [, CLAUSE]...",
     "steel goes in and, with 'for', comes out again by itself", loading_read},
    {"lift", "[NAME]", "a named load, or everything, comes out", read_lift},
    {"water", "AMOUNT over TIME|at FLOW [, at TEMPERATURE]",
     "water is poured, by volume or by mass; as warm as the room unless it says so", read_water},
    {"heat", "on|off|PERCENT", "the dial is set", read_heat},
};

#define DOINGS (sizeof doings / sizeof doings[0])

const doing_verb *doings_listed(size_t index)
{
    return index < DOINGS ? &doings[index] : NULL;
}

bool doing_read(acts *a, cursor *c, boil_act *act, act_line *said)
{
    size_t token = cursor_token(c);
    words_nearest n = words_near(c->at, token);
    for (size_t i = 0; i < DOINGS; i++) {
        if (cursor_take(c, doings[i].verb))
            return doings[i].read(a, c, act, said);
        words_consider(&n, doings[i].verb);
    }
    if (token == 0)
        cursor_error(c, c->at, "expected something to do: load, lift, water or heat");
    else
        cursor_error(c, c->at, "unknown act '%s'; known are load, lift, water and heat%s",
                     words_quoted(c->at, token).text, words_suggestion(&n).text);
    return false;
}
