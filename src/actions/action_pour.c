#include "actions/action_pour.h"

#include <math.h>

#include "acts/tap.h"
#include "base/constants.h"
#include "base/words.h"

#define SAME_PLACE(member)                                                                                                     \
    (offsetof(boil_action_water, member) == offsetof(boil_action_salts, member) &&                                             \
     offsetof(boil_action_water, member) == offsetof(boil_action_liquid, member))
_Static_assert(SAME_PLACE(mass_kg) && SAME_PLACE(over_s) && SAME_PLACE(temperature_K), "what is added begins alike");

static const bounds added_mass = {"kg", 0.001, 1e5};
static const bounds added_time = {"s", 1, 86400};

/* "at 0.5 gal/min until the mark" */
static bool read_until(const action_reader *r, cursor *c, action_pour *p, boil_action *a)
{
    p->at_rate = true;
    if (!quantity_read(c, "at", UNIT_OF(DIM_VOLUME_FLOW) | UNIT_OF(DIM_MASS_FLOW), &p->pace))
        return false;
    if (!cursor_take(c, "until"))
        return cursor_error(c, c->at, "say until what: 'until the mark', 'until level 20 in', 'until boiling point 285 degF'");
    return pour_hangs_goal(r, c, &p->hangs, &a->pour);
}

/* A number of units, or of the shop's own measures. */
static bool read_amount(cursor *c, const action_reader *r, action_pour *p)
{
    const char *what = p->type->keyword;
    unsigned amounts = p->material->amounts;
    cursor_done(c);
    cursor to = *c;
    if (p->material->until && (cursor_take(&to, "to") || cursor_take(&to, "up to") || cursor_take(&to, "until")))
        return cursor_error(c, c->at,
                            "say how fast it goes there: '%s at 0.5 gal/min until the mark, at most 15 gal', or how much, "
                            "'%s 2 gal over 4 min'",
                            what, what);
    if (quantity_comes(*c, UNIT_OF(DIM_CONCENTRATION)))
        return cursor_error(
            c, c->at, "'%s' needs an amount; how strong it is stands behind it: 'liquid 5 gal over 5 min, strength 5 lb/gal'",
            what);
    return measure_amount(c, &r->measures, what, amounts, &p->amount, &p->measure, &p->count);
}

static bool read_pace(cursor *c, action_pour *p)
{
    cursor_done(c);
    p->pace_at = c->at;
    p->at_rate = p->material->by_rate && cursor_take(c, "at");
    if (p->at_rate)
        return quantity_read(c, "at", UNIT_OF(DIM_VOLUME_FLOW) | UNIT_OF(DIM_MASS_FLOW), &p->pace) && cursor_expect_end(c);
    if (!cursor_take(c, "over"))
        return cursor_error(c, c->at, "%s", p->material->how_fast);
    return quantity_read(c, "over", UNIT_OF(DIM_TIME), &p->pace) && cursor_expect_end(c);
}

static const bounds portion_time = {"s", 1, 86400};

/* "one every 10 min", behind a whole number of measures; each has the pace that follows. */
static bool read_portions(cursor *c, action_pour *p, action_line *line)
{
    quantity every;
    const char *start = c->at;
    if (p->measure == NULL || p->count != floor(p->count) || p->count < 1 || p->count > 1000)
        return cursor_error(c, start, "'one every' counts whole measures, such as 2 bags of [measures]");
    if (!cursor_take(c, "one every") || !quantity_read(c, "one every", UNIT_OF(DIM_TIME), &every) ||
        !quantity_within(c, "one every", &every, &portion_time))
        return false;
    line->portions = (size_t)p->count;
    line->portion_every_s = every.si;
    p->amount.si /= p->count;
    return true;
}

/* How much and how fast, or until when: one part of the line, or two where it comes in portions. */
static bool read_dose(cursor *rest, cursor *part, const action_reader *r, action_pour *p, boil_action *a, action_line *line)
{
    if (p->material->until && cursor_take(part, "at"))
        return read_until(r, part, p, a);
    if (!read_amount(part, r, p))
        return false;
    cursor_done(rest);
    if (!cursor_done(part) || words_taken(rest->at, rest->end, "one every") == 0)
        return read_pace(part, p);
    cursor_part(rest, part);
    return read_portions(part, p, line) && read_pace(part, p);
}

static bool read_clause(const action_reader *r, cursor *part, action_pour *p, boil_action *a)
{
    const char *start = part->at;
    bool taken, good = pour_hangs_clause(r, part, p->material->amounts, &p->hangs, a, &taken);
    if (taken)
        return good;
    action_clause_end end = action_clause_read(part, p->type->clauses, p->type->clause_count, p->said, a);
    if (end == ACTION_CLAUSE_UNKNOWN)
        cursor_error(part, start, "expected %s, got '%s'", p->material->expected,
                     words_quoted(start, (size_t)(part->end - start)).text);
    return end == ACTION_CLAUSE_READ;
}

/* A blend has commas of its own: it is read from the whole rest. */
static bool read_blend(cursor *rest, const char *start, action_pour *p)
{
    bool first = action_clause_first(rest, start, "blend", p->blend_said);
    p->blend_said = true;
    if (!first || !blend_read(rest, "blend", p->type->clauses[0].words, p->blend))
        return false;
    if (cursor_done(rest) || *rest->at != ',')
        return cursor_expect_end(rest);
    rest->at++;
    return true;
}

static bool read_clauses(const action_reader *r, cursor *rest, action_pour *p, boil_action *a)
{
    bool good = true;
    cursor part;
    while (!cursor_done(rest)) {
        const char *start = rest->at;
        if (p->material->blend && cursor_take(rest, "blend")) {
            if (!read_blend(rest, start, p))
                return false;
        } else if (cursor_part(rest, &part)) {
            good = read_clause(r, &part, p, a) && good;
        }
    }
    return good;
}

/* "2 gal of water over 4 min"; of portions "1 bag of salts over 5 min"; "water at 0.5 gal/min until the mark". */
static void describe(const action_pour *p, const char *start, const char *end, action_line *line)
{
    words_quote amount = {""};
    if (p->hangs.goal != NULL) {
        snprintf(line->words, sizeof line->words, "%s %s", p->type->keyword, words_quoted(start, (size_t)(end - start)).text);
        return;
    }
    if (line->portions > 1)
        TEXT_ADD(amount.text, "1 %s", p->measure->word);
    else
        amount = quantity_echo(&p->amount);
    TEXT_JOIN(line->words, amount.text);
    TEXT_JOIN(line->words, " of ");
    TEXT_JOIN(line->words, p->type->keyword);
    TEXT_JOIN(line->words, " ");
    TEXT_JOIN(line->words, words_quoted(p->pace_at, (size_t)(end - p->pace_at)).text);
}

bool action_pour_read(const action_reader *r, cursor *c, const action_material *m, action_pour *p, boil_action *a,
                      action_line *line)
{
    cursor part;
    *p = (action_pour){.type = action_type_of(a->kind), .material = m, .place = *c};
    if (!cursor_part(c, &part))
        return cursor_error(c, c->at, "say how much %s, for example '%s'", p->type->keyword, m->example);
    const char *start = part.at;
    bool good = read_dose(c, &part, r, p, a, line);
    if (!read_clauses(r, c, p, a) || !good || !pour_hangs_settle(&p->place, &p->hangs, a))
        return false;
    describe(p, start, part.end, line);
    return true;
}

bool action_pour_names_salts(const action_reader *r)
{
    const double *blend = r->plant->charge.blend;
    return !r->bath_known || blend[BOIL_NAOH] + blend[BOIL_NANO3] + blend[BOIL_NANO2] > 0;
}

bool action_pour_settle_temperature(const action_pour *p, const boil_plant *plant, const bounds *within, boil_action *a)
{
    quantity at = p->said[0];
    if (at.text != NULL) {
        bool good = quantity_within(&p->place, "at", &at, within);
        a->is.water.temperature_K = at.si;
        return good;
    }
    a->is.water.temperature_K = plant->ambient.temperature_K;
    if (within->low < 0 || plant->ambient.temperature_K >= BOIL_ZERO_CELSIUS)
        return true;
    return cursor_error(&p->place, p->place.end,
                        "the room is below freezing: say how warm the %s is, for example ', at 50 degF'", p->type->keyword);
}

bounds action_pour_liquid_below(double boiling_point_K)
{
    return (bounds){"degC", 0, floor(boiling_point_K - BOIL_ZERO_CELSIUS)};
}

/* Where only the time bounds it, the schedule makes it less once it knows when it begins. */
static bool settle_by_time(const action_pour *p, double density, boil_action *a, action_line *line)
{
    line->most_by_time = true;
    a->is.water.over_s = a->pour.no_later_s;
    a->is.water.mass_kg = p->pace.si * (p->pace.dimension == DIM_VOLUME_FLOW ? density : 1) * a->pour.no_later_s;
    return p->pace.si > 0 || cursor_error(&p->place, p->pace.text, "a rate must be above zero");
}

bool action_pour_settle_amount(const action_pour *p, double density, boil_action *a, action_line *line)
{
    boil_action_water *to = &a->is.water;
    double pace = p->pace.si;
    const quantity *amount = p->hangs.goal != NULL ? &p->hangs.most : &p->amount;
    if (amount->text == NULL)
        return settle_by_time(p, density, a, line);
    to->mass_kg = amount->si * (amount->dimension == DIM_VOLUME ? density : 1);
    to->over_s = p->at_rate ? to->mass_kg / (pace * (p->pace.dimension == DIM_VOLUME_FLOW ? density : 1)) : pace;
    quantity mass = *amount, time = p->pace;
    mass.si = to->mass_kg;
    mass.dimension = DIM_MASS;
    time.si = to->over_s;
    time.dimension = DIM_TIME;
    mass.unit = amount->dimension == DIM_MASS ? amount->unit : NULL;
    time.unit = p->at_rate ? NULL : p->pace.unit;
    if (!quantity_within(&p->place, p->type->keyword, &mass, &added_mass))
        return false;
    if (p->at_rate && !(pace > 0))
        return cursor_error(&p->place, p->pace.text, "a rate must be above zero");
    return quantity_within(&p->place, p->at_rate ? "time to pour at this rate" : "over", &time, &added_time);
}

void action_pour_details(const action_view *v, action_text *t)
{
    const boil_action_water *a = &v->action->is.water;
    TEXT_ADD(t->text, "%s%s at %s", v->action->pour.goal != BOIL_GOAL_NONE ? "at most " : "",
             action_amount_of(v->units, DIM_MASS, a->mass_kg).text,
             action_amount_of(v->units, DIM_TEMPERATURE, a->temperature_K).text);
    pour_hangs_add(v, t);
}

void action_pour_pace(const action_view *v, double density, action_text *t)
{
    const boil_action_water *a = &v->action->is.water;
    double per_minute = a->mass_kg / a->over_s * 60;
    if (!v->many && !isnan(v->time_s) && !boil_tap_is_needed(&v->action->pour))
        TEXT_ADD(t->text, "; until %s", format_clock_exact(v->start_s, v->time_s + a->over_s).text);
    TEXT_ADD(t->text, "; %s", action_amount_of(v->units, DIM_MASS, per_minute).text);
    if (density > 0)
        TEXT_ADD(t->text, " (%s)", action_amount_of(v->units, DIM_VOLUME, per_minute / density).text);
    TEXT_ADD(t->text, " a minute");
}

/* Less than this above the steam before is no surge, and a millimetre no rise. */
static const double surge_ratio = 1.1, rise_m = 1e-3, afloat_kg = 1e-3;

void action_pour_expected(const action_view *v, action_text *t)
{
    const boil_addition_result *a = v->addition;
    if (boil_tap_is_needed(&v->action->pour))
        TEXT_ADD(t->text, "%s in, over at %s: %s. ", action_amount_of(v->units, DIM_MASS, a->mass_kg).text,
                 format_clock(v->start_s, a->time_s + a->over_s).text, pour_hangs_end_of(a->end));
    action_text_add_boil(t, v->start_s, a->was_quiet_before, a->boil_lost_s, a->recovery_s);
    if (a->layer_peak_kg > afloat_kg)
        TEXT_ADD(t->text, "; %s afloat", action_amount_of(v->units, DIM_MASS, a->layer_peak_kg).text);
    if (a->steam_before_kg_s > 0 && a->steam_peak_kg_s > surge_ratio * a->steam_before_kg_s)
        TEXT_ADD(t->text, "; steam %s %s", a->steam_more_than ? "more than" : "up to",
                 format_ratio(a->steam_peak_kg_s / a->steam_before_kg_s).text);
    if (a->level_rise_m > rise_m)
        TEXT_ADD(t->text, "; level up %s", action_amount_of(v->units, DIM_LENGTH, a->level_rise_m).text);
}
