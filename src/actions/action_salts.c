#include <string.h>

#include "actions/action_pour.h"

static const bounds solid_salts = {"degC", -30, 200};

static const action_clause clauses[] = {ACTION_POUR_AT};
static const action_material salts = {.example = "salts 6 lb over 3 min",
                                      .how_fast = "say how slowly: 'over 3 min'",
                                      .amounts = UNIT_OF(DIM_MASS),
                                      .blend = true,
                                      .expected = "'at' and a temperature, or 'blend' and the salts"};

static bool parse(action_reader *r, cursor *c, boil_action *a, action_line *line)
{
    action_pour p;
    boil_action_salts *s = &a->is.salts;
    if (!action_pour_read(r, c, &salts, &p, a, line))
        return false;
    if (!p.blend_said && !action_pour_names_salts(r))
        return cursor_error(&p.place, p.place.end, "the bath names no salts: say which, for example ', blend 100 %% NaOH'");
    memcpy(s->blend, p.blend_said ? p.blend : r->plant->charge.blend, sizeof s->blend);
    return action_pour_settle_temperature(&p, r->plant, &solid_salts, a) &&
           action_pour_settle_amount(&p, 1, a, line); /* salts are weighed */
}

static void details(const action_view *v, action_text *t)
{
    const double *blend = v->action->is.salts.blend;
    action_pour_details(v, t);
    if (memcmp(blend, v->plant->charge.blend, sizeof v->plant->charge.blend) != 0)
        TEXT_ADD(t->text, ", %.4g %% NaOH, %.4g %% NaNO3, %.4g %% NaNO2", 100 * blend[BOIL_NAOH], 100 * blend[BOIL_NANO3],
                 100 * blend[BOIL_NANO2]);
}

static void pace(const action_view *v, action_text *t)
{
    action_pour_pace(v, 0, t);
}

/* clang-format off */
const action_type action_salts = {
    .keyword = "salts", .letter = 'S', .form = "MASS over TIME [, at TEMPERATURE] [, blend BLEND] [, HANGS]...",
    .meaning = "dry salts are sifted in: the bath's own blend, as warm as the room, unless it says so", .clauses = clauses,
    .clause_count = 1, .group = ACTION_ADDITION, .lane = ACTION_LANE_SALTS, .takes_at = offsetof(boil_action, is.salts.over_s),
    .parse = parse, .details = details, .verb = "sift in ", .pace = pace, .expected = action_pour_expected,
    .caution = "Only into a boiling or mixed bath, in small portions. No water onto it.",
    .when_quiet = "Quiet then: only with the mixer on.", .quiet_severity = BOIL_SEVERITY_WARNING,
    .when_it_stops = "Quiet then: only with the mixer on.",
};
/* clang-format on */
