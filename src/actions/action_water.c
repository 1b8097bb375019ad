#include "actions/action_pour.h"

static const action_clause clauses[] = {ACTION_POUR_AT};
static const action_material water = {.example = "water 2 gal over 4 min",
                                      .how_fast = "say how fast: 'over 4 min' or 'at 30 gal/h'",
                                      .amounts = UNIT_OF(DIM_VOLUME) | UNIT_OF(DIM_MASS),
                                      .by_rate = true,
                                      .until = true,
                                      .expected = "'at' and a temperature, or what it hangs on, such as 'while boiling'"};

static bool parse(action_reader *r, cursor *c, boil_action *a, action_line *line)
{
    action_pour p;
    bounds within = action_pour_liquid_below(boil_water_saturation_temperature(r->plant->ambient.pressure_Pa));
    return action_pour_read(r, c, &water, &p, a, line) && action_pour_settle_temperature(&p, r->plant, &within, a) &&
           action_pour_settle_amount(&p, boil_water_density(a->is.water.temperature_K), a, line);
}

static void pace(const action_view *v, action_text *t)
{
    action_pour_pace(v, boil_water_density(v->action->is.water.temperature_K), t);
}

/* clang-format off */
const action_type action_water = {
    .keyword = "water", .letter = 'W', .form = "AMOUNT over TIME|at FLOW [, at TEMPERATURE] [, HANGS]...",
    .meaning = "water is poured, by volume or by mass; as warm as the room unless it says so", .clauses = clauses,
    .clause_count = 1, .group = ACTION_ADDITION, .lane = ACTION_LANE_WATER, .takes_at = offsetof(boil_action, is.water.over_s),
    .parse = parse, .details = action_pour_details, .verb = "pour ", .pace = pace, .expected = action_pour_expected,
    .caution = "Only while it boils. No boil: stop the water. Never onto dry salt.",
    .when_quiet = "Quiet then: do not pour; wait.",
    .quiet_severity = BOIL_SEVERITY_DANGER, .when_it_stops = "The boil stops meanwhile: stop pouring.",
};
/* clang-format on */
