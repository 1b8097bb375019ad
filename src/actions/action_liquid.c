#include <string.h>

#include "actions/action_pour.h"

#include "base/memory.h"

enum { AT, STRENGTH, BOILING_POINT };

/* The strength, in either way of saying it, becomes a salt fraction. */
static const action_clause clauses[] = {
    [AT] = ACTION_POUR_AT,
    [STRENGTH] = {"strength", NULL, DIM_CONCENTRATION, {NULL, 0, 0}, 0},
    [BOILING_POINT] = {"boiling point", NULL, DIM_TEMPERATURE, {NULL, 0, 0}, 0},
};

static const action_material liquid = {.example = "liquid 4 gal over 2 min",
                                       .how_fast = "say how slowly: 'over 2 min'",
                                       .amounts = UNIT_OF(DIM_VOLUME) | UNIT_OF(DIM_MASS),
                                       .expected = "'at' and a temperature, 'strength' or 'boiling point'"};

static bool no_such_liquid(const action_pour *p, int clause)
{
    return cursor_error(&p->place, p->said[clause].text,
                        "there is no boiling liquid of the bath's salts with this '%s' that the correlations cover",
                        clauses[clause].words);
}

/* As strong as the bath at the start unless it says so. */
static bool settle_strength(const action_reader *r, const action_pour *p, const boil_conditions *air, double *salt_fraction)
{
    const quantity *strength = &p->said[STRENGTH], *boils_at = &p->said[BOILING_POINT];
    const double *blend = r->plant->charge.blend;
    if (strength->text != NULL && boils_at->text != NULL)
        return cursor_error(&p->place, boils_at->text, "'boiling point' stands beside 'strength': give only one of them");
    if (!action_pour_names_salts(r))
        return cursor_error(&p->place, p->place.at,
                            "the bath names no salts that this liquid could be of: name them in [bath]");
    *salt_fraction = r->bath.salt_fraction;
    if (strength->text != NULL && !memory_good(boil_solution_fraction_of_strength(air, blend, strength->si, salt_fraction)))
        return no_such_liquid(p, STRENGTH);
    if (boils_at->text != NULL && !memory_good(boil_solution_fraction_boiling_at(air, blend, boils_at->si, salt_fraction)))
        return no_such_liquid(p, BOILING_POINT);
    return true;
}

static boil_mixture mixture_of(const boil_action *a)
{
    return boil_mixture_of(a->is.liquid.blend, a->is.liquid.salt_fraction);
}

static bool parse(action_reader *r, cursor *c, boil_action *a, action_line *line)
{
    action_pour p;
    boil_action_liquid *l = &a->is.liquid;
    boil_conditions air = boil_conditions_at(r->plant->ambient.pressure_Pa, r->plant->elevation_factor);
    boil_solution_guess guess = {0};
    double boiling_point_K;
    if (!action_pour_read(r, c, &liquid, &p, a, line))
        return false;
    if (!r->bath_known)
        return true; /* what is wrong with the plant has been said */
    memcpy(l->blend, r->plant->charge.blend, sizeof l->blend);
    if (!settle_strength(r, &p, &air, &l->salt_fraction))
        return false;
    boil_mixture m = mixture_of(a);
    if (!memory_good(boil_solution_boiling_point_near(&air, &m, &guess, &boiling_point_K, NULL)))
        return cursor_error(&p.place, p.place.at, "this liquid has no boiling point below 250 degC");
    bounds within = action_pour_liquid_below(boiling_point_K);
    return action_pour_settle_temperature(&p, r->plant, &within, a) &&
           action_pour_settle_amount(&p, boil_solution_density(&m, l->temperature_K), a, line);
}

static void details(const action_view *v, action_text *t)
{
    action_pour_details(v, t);
    TEXT_ADD(t->text, ", %.1f %% salts", 100 * v->action->is.liquid.salt_fraction);
}

static void pace(const action_view *v, action_text *t)
{
    boil_mixture m = mixture_of(v->action);
    action_pour_pace(v, boil_solution_density(&m, v->action->is.liquid.temperature_K), t);
}

/* clang-format off */
const action_type action_liquid = {
    .keyword = "liquid", .letter = 'Q', .form = "AMOUNT over TIME [, at TEMPERATURE] [, strength CONCENTRATION|boiling point TEMPERATURE] [, HANGS]...",
    .meaning = "ready-mixed liquid runs in under the surface: as strong as the bath at the start, as warm as the room, "
               "unless it says so",
    .clauses = clauses, .clause_count = sizeof clauses / sizeof clauses[0], .group = ACTION_ADDITION,
    .lane = ACTION_LANE_LIQUID, .takes_at = offsetof(boil_action, is.liquid.over_s), .parse = parse, .details = details,
    .verb = "run in ", .pace = pace, .expected = action_pour_expected,
    .caution = "Under the surface, slowly; stop when the boil stops.",
    .when_quiet = "Quiet then: wait for a steady boil.", .quiet_severity = BOIL_SEVERITY_WARNING,
    .when_it_stops = "The boil stops meanwhile: stop pouring.",
};
/* clang-format on */
