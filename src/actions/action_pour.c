#include "actions/action_pour.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "base/boil.h"
#include "base/words.h"
#include "properties/water.h"
#include "reading/blend.h"

static const bounds added_mass = {"kg", 0.001, 1e5};
static const bounds added_time = {"s", 1, 86400};
static const bounds solid_salts = {"degC", -30, 200};

/* Clauses of one quantity. */
typedef enum { CLAUSE_AT, CLAUSE_STRENGTH, CLAUSE_BOILING_POINT, CLAUSES } clause;

static const struct {
    const char *words;
    unit_dimension dimension;
} clauses[CLAUSES] = {[CLAUSE_AT] = {"at", DIM_TEMPERATURE},
                      [CLAUSE_STRENGTH] = {"strength", DIM_CONCENTRATION},
                      [CLAUSE_BOILING_POINT] = {"boiling point", DIM_TEMPERATURE}};

/* What is poured, and in what words. */
typedef struct {
    const char *words, *example, *how_fast;
    unsigned amounts;
    bool by_rate;
    size_t clauses; /* how many of the list above it takes */
    bool blend;
    const char *expected; /* in place of an unknown clause */
} material;

static const material water = {"water",
                               "water 2 gal over 4 min",
                               "say how fast: 'over 4 min' or 'at 30 gal/h'",
                               UNIT_OF(DIM_VOLUME) | UNIT_OF(DIM_MASS),
                               true,
                               1,
                               false,
                               "'at' and a temperature"};
static const material salts = {"salts",
                               "salts 6 lb over 3 min",
                               "say how slowly: 'over 3 min'",
                               UNIT_OF(DIM_MASS),
                               false,
                               1,
                               true,
                               "'at' and a temperature, or 'blend' and the salts"};
static const material liquid = {"liquid",
                                "liquid 4 gal over 2 min",
                                "say how slowly: 'over 2 min'",
                                UNIT_OF(DIM_VOLUME) | UNIT_OF(DIM_MASS),
                                false,
                                CLAUSES,
                                false,
                                "'at' and a temperature, 'strength' or 'boiling point'"};

/* The action as written. */
typedef struct {
    const material *material;
    cursor place; /* for complaints */
    quantity amount, pace;
    bool at_rate;
    bool said[CLAUSES], blend_said;
    quantity clause[CLAUSES];
    double blend[BOIL_SALTS];
} pour;

/* Reading --------------------------------------------------------------------------------------------------------- */

static bool read_amount(cursor *c, pour *p)
{
    const material *m = p->material;
    if (!quantity_read(c, m->words, m->amounts, &p->amount))
        return false;
    p->at_rate = m->by_rate && cursor_take(c, "at");
    if (p->at_rate)
        return quantity_read(c, "at", UNIT_OF(DIM_VOLUME_FLOW) | UNIT_OF(DIM_MASS_FLOW), &p->pace) && cursor_expect_end(c);
    if (!cursor_take(c, "over")) {
        cursor_error(c, c->at, "%s", m->how_fast);
        return false;
    }
    return quantity_read(c, "over", UNIT_OF(DIM_TIME), &p->pace) && cursor_expect_end(c);
}

static bool once(const cursor *part, const char *at, const char *words, bool *said)
{
    if (*said)
        cursor_error(part, at, "'%s' is said twice", words);
    bool first = !*said;
    *said = true;
    return first;
}

static bool read_clause(cursor *part, pour *p)
{
    const material *m = p->material;
    const char *start = part->at;
    for (size_t i = 0; i < m->clauses; i++)
        if (cursor_take(part, clauses[i].words))
            return once(part, start, clauses[i].words, &p->said[i]) &&
                   quantity_read(part, clauses[i].words, UNIT_OF(clauses[i].dimension), &p->clause[i]) &&
                   cursor_expect_end(part);
    cursor_error(part, start, "expected %s, got '%s'", m->expected, words_quoted(start, (size_t)(part->end - start)).text);
    return false;
}

/* A blend has commas of its own: it is read from the whole rest. */
static bool read_blend(cursor *rest, const char *start, pour *p)
{
    if (!once(rest, start, "blend", &p->blend_said) || !blend_read(rest, "blend", clauses[CLAUSE_AT].words, p->blend))
        return false;
    if (cursor_done(rest) || *rest->at != ',')
        return cursor_expect_end(rest);
    rest->at++;
    return true;
}

static bool read_clauses(cursor *rest, pour *p)
{
    bool good = true;
    cursor part;
    while (!cursor_done(rest)) {
        const char *start = rest->at;
        if (p->material->blend && cursor_take(rest, "blend")) {
            if (!read_blend(rest, start, p))
                return false;
        } else if (cursor_part(rest, &part)) {
            good = read_clause(&part, p) && good;
        }
    }
    return good;
}

static bool read_pour(cursor *c, const material *m, pour *p, action_line *said)
{
    cursor part;
    *p = (pour){.material = m, .place = *c};
    if (!cursor_part(c, &part)) {
        cursor_error(c, c->at, "say how much %s, for example '%s'", m->words, m->example);
        return false;
    }
    const char *start = part.at;
    bool good = read_amount(&part, p);
    if (!read_clauses(c, p) || !good)
        return false;
    const char *how = start + p->amount.length;
    snprintf(said->words, sizeof said->words, "%s of %s%s", words_quoted(start, p->amount.length).text, m->words,
             words_quoted(how, (size_t)(part.end - how)).text);
    return true;
}

/* Settling: what was written, in the model's terms ---------------------------------------------------------------- */

/* As warm as the room unless it says so; what is liquid must not be frozen. */
static bool settle_temperature(const action_list *a, const pour *p, const bounds *within, double *temperature_K)
{
    *temperature_K = a->plant->ambient.temperature_K;
    if (!p->said[CLAUSE_AT]) {
        if (within->low < 0 || *temperature_K >= BOIL_ZERO_CELSIUS)
            return true;
        cursor_error(&p->place, p->place.end, "the room is below freezing: say how warm the %s is, for example ', at 50 degF'",
                     p->material->words);
        return false;
    }
    *temperature_K = p->clause[CLAUSE_AT].si;
    return quantity_within(&p->place, "at", &p->clause[CLAUSE_AT], within);
}

/* Volumes become masses at the density of what is poured, kg/m3. */
static bool settle_amount(const pour *p, double density, double *mass_kg, double *over_s)
{
    double pace = p->pace.si;
    *mass_kg = p->amount.si * (p->amount.dimension == DIM_VOLUME ? density : 1);
    *over_s = p->at_rate ? *mass_kg / (pace * (p->pace.dimension == DIM_VOLUME_FLOW ? density : 1)) : pace;
    quantity mass = p->amount, time = p->pace;
    mass.si = *mass_kg;
    mass.dimension = DIM_MASS;
    time.si = *over_s;
    time.dimension = DIM_TIME;
    mass.unit = p->amount.dimension == DIM_MASS ? p->amount.unit : NULL;
    time.unit = p->at_rate ? NULL : p->pace.unit;
    if (!quantity_within(&p->place, p->material->words, &mass, &added_mass))
        return false;
    if (p->at_rate && !(pace > 0)) {
        cursor_error(&p->place, p->pace.text, "a rate must be above zero");
        return false;
    }
    return quantity_within(&p->place, p->at_rate ? "time to pour at this rate" : "over", &time, &added_time);
}

/* Liquid in the air it is poured through. */
static bounds liquid_below(double boiling_point_K)
{
    return (bounds){"degC", 0, floor(boiling_point_K - BOIL_ZERO_CELSIUS)};
}

bool action_pour_water(action_list *a, cursor *c, boil_action *action, action_line *said)
{
    pour p;
    boil_action_water *w = &action->is.water;
    action->kind = BOIL_ACTION_WATER;
    bounds within = liquid_below(boil_water_saturation_temperature(a->plant->ambient.pressure_Pa));
    return read_pour(c, &water, &p, said) && settle_temperature(a, &p, &within, &w->temperature_K) &&
           settle_amount(&p, boil_water_density(w->temperature_K), &w->mass_kg, &w->over_s);
}

bool action_pour_salts(action_list *a, cursor *c, boil_action *action, action_line *said)
{
    pour p;
    boil_action_salts *s = &action->is.salts;
    action->kind = BOIL_ACTION_SALTS;
    if (!read_pour(c, &salts, &p, said))
        return false;
    memcpy(s->blend, p.blend_said ? p.blend : a->plant->charge.blend, sizeof s->blend);
    return settle_temperature(a, &p, &solid_salts, &s->temperature_K) &&
           settle_amount(&p, 1, &s->mass_kg, &s->over_s); /* salts are weighed */
}

static bool no_such_liquid(const pour *p, clause k)
{
    cursor_error(&p->place, p->clause[k].text,
                 "there is no boiling liquid of the bath's salts with this '%s' that the correlations cover", clauses[k].words);
    return false;
}

/* As strong as the bath at the start unless it says so. */
static bool settle_strength(const action_list *a, const pour *p, double *salt_fraction)
{
    const boil_plant *plant = a->plant;
    boil_conditions air = boil_conditions_at(plant->ambient.pressure_Pa, plant->elevation_factor);
    double strength = p->clause[CLAUSE_STRENGTH].si, boils_at = p->clause[CLAUSE_BOILING_POINT].si;
    if (p->said[CLAUSE_STRENGTH] && p->said[CLAUSE_BOILING_POINT]) {
        cursor_error(&p->place, p->clause[CLAUSE_BOILING_POINT].text,
                     "'boiling point' stands beside 'strength': give only one of them");
        return false;
    }
    *salt_fraction = a->bath.salt_fraction;
    if (p->said[CLAUSE_STRENGTH] &&
        boil_solution_fraction_of_strength(&air, plant->charge.blend, strength, salt_fraction) != BOIL_OK)
        return no_such_liquid(p, CLAUSE_STRENGTH);
    if (p->said[CLAUSE_BOILING_POINT] &&
        boil_solution_fraction_boiling_at(&air, plant->charge.blend, boils_at, salt_fraction) != BOIL_OK)
        return no_such_liquid(p, CLAUSE_BOILING_POINT);
    return true;
}

static bool boils_at(const action_list *a, const boil_mixture *m, double *boiling_point_K)
{
    boil_solution_guess guess = {0};
    boil_conditions air = boil_conditions_at(a->plant->ambient.pressure_Pa, a->plant->elevation_factor);
    return boil_solution_boiling_point(&air, m, &guess, boiling_point_K, NULL) == BOIL_OK;
}

bool action_pour_liquid(action_list *a, cursor *c, boil_action *action, action_line *said)
{
    pour p;
    boil_action_liquid *l = &action->is.liquid;
    double boiling_point_K;
    action->kind = BOIL_ACTION_LIQUID;
    if (!read_pour(c, &liquid, &p, said))
        return false;
    if (!a->bath_known)
        return true; /* what is wrong with the plant has been said */
    memcpy(l->blend, a->plant->charge.blend, sizeof l->blend);
    if (!settle_strength(a, &p, &l->salt_fraction))
        return false;
    boil_mixture m = boil_mixture_of(l->blend, l->salt_fraction);
    if (!boils_at(a, &m, &boiling_point_K)) {
        cursor_error(&p.place, p.place.at, "this liquid has no boiling point below 250 degC");
        return false;
    }
    bounds within = liquid_below(boiling_point_K);
    return settle_temperature(a, &p, &within, &l->temperature_K) &&
           settle_amount(&p, boil_solution_density(&m, l->temperature_K), &l->mass_kg, &l->over_s);
}
