/* actions/action_take.c -- bath liquid is bailed or drained, and what was kept of it runs back in. */

#include <math.h>
#include <string.h>

#include "actions/action.h"
#include "actions/pour_hangs.h"
#include "base/words.h"

static const bounds taken_volume = {"L", 0.01, 1e6}, taken_time = {"s", 1, 86400};
static const double over_heater_m = 0.0508; /* two inches: judgement */

/* As written. */
typedef struct {
    action_reader *reader;
    boil_action *action;
    quantity amount, pace;
    pour_hangs hangs;
    bool at_rate, named, of_surface;
} reading;

static const char *keyword(const reading *t)
{
    return action_type_of(t->action->kind)->keyword;
}

static bool read_rate(cursor *c, reading *t)
{
    t->at_rate = true;
    return quantity_read(c, "at", UNIT_OF(DIM_VOLUME_FLOW), &t->pace);
}

/* Never down to a bare heater, unless the amount is said. */
static bool read_goal(cursor *c, reading *t)
{
    const boil_tank *tank = &t->reader->plant->tank;
    boil_pour *p = &t->action->pour;
    if (!pour_hangs_goal(t->reader, c, &t->hangs, p))
        return false;
    if (p->goal != BOIL_GOAL_LEVEL)
        return cursor_error(c, t->hangs.goal, "'%s' goes by a level: 'to the mark' or 'to level 20 in'", keyword(t));
    if (tank->heated == BOIL_TANK_HEATED_INSIDE && tank->heater_top_m > 0)
        p->goal_value = fmax(p->goal_value, tank->heater_top_m + over_heater_m);
    return true;
}

static bool read_how_much(cursor *c, reading *t)
{
    if (cursor_take(c, "to"))
        return read_goal(c, t);
    if (cursor_take(c, "at"))
        return read_rate(c, t) &&
               (cursor_take(c, "until") ? read_goal(c, t)
                                        : cursor_error(c, c->at, "say until what: 'until the mark' or 'until level 20 in'"));
    const own_measure *measure;
    double count;
    if (!measure_amount(c, &t->reader->measures, keyword(t), UNIT_OF(DIM_VOLUME), &t->amount, &measure, &count) ||
        !quantity_within(c, keyword(t), &t->amount, &taken_volume))
        return false;
    if (cursor_take(c, "at"))
        return read_rate(c, t) && cursor_expect_end(c);
    if (!cursor_take(c, "over"))
        return cursor_error(c, c->at, "say how fast: 'over 5 min' or 'at 2 gal/min'");
    return quantity_read(c, "over", UNIT_OF(DIM_TIME), &t->pace) && quantity_within(c, "over", &t->pace, &taken_time) &&
           cursor_expect_end(c);
}

static bool read_name(cursor *part, reading *t)
{
    if (cursor_done(part))
        return cursor_error(part, part->at, "'as' needs a name");
    t->named = true;
    t->action->name = load_names_read(&t->reader->names, part);
    t->reader->names.kept[t->action->name] = true;
    return t->action->name > 0;
}

static bool read_clause(cursor *part, reading *t)
{
    const char *start = part->at;
    if (cursor_take(part, "as"))
        return action_clause_first(part, start, "as", t->named) && read_name(part, t);
    if (cursor_take(part, "at most"))
        return pour_hangs_most(t->reader, part, start, UNIT_OF(DIM_VOLUME), &t->hangs) &&
               quantity_within(part, "at most", &t->hangs.most, &taken_volume);
    if (cursor_take(part, "at"))
        return action_clause_first(part, start, "at", t->at_rate || t->amount.text != NULL) && read_rate(part, t) &&
               cursor_expect_end(part);
    if (cursor_take(part, "from the surface") && t->action->kind == BOIL_ACTION_BAIL) {
        t->of_surface = true; /* as it is anyway: said, it stands on the sheet */
        return cursor_expect_end(part);
    }
    return cursor_error(part, start, "expected 'as' and a name%s, got '%s'",
                        t->hangs.goal != NULL ? ", 'at' and a flow, or 'at most' and a volume" : "",
                        words_quoted(start, (size_t)(part->end - start)).text);
}

static bool settle(const cursor *place, reading *t)
{
    boil_action_take *a = &t->action->is.take;
    const boil_tank *tank = &t->reader->plant->tank;
    bool goal = t->hangs.goal != NULL;
    if (goal && !t->at_rate)
        return cursor_error(place, place->at, "say how fast: add ', at 2 gal/min'");
    if (t->at_rate && !(t->pace.si > 0))
        return cursor_error(place, t->pace.text, "a rate must be above zero");
    if (!goal && t->hangs.most.text != NULL)
        return cursor_error(place, t->hangs.most.text, "'at most' belongs to 'to' or 'until'; here the amount is said");
    double most_m3 = t->hangs.most.text != NULL ? t->hangs.most.si : boil_tank_area(tank) * tank->depth_m;
    a->volume_m3 = goal ? most_m3 : t->amount.si;
    a->over_s = t->at_rate ? a->volume_m3 / t->pace.si : t->pace.si;
    return true;
}

static bool parse(action_reader *r, cursor *c, boil_action *a, action_line *line)
{
    reading t = {.reader = r, .action = a};
    cursor place = *c, part;
    if (!cursor_part(c, &part))
        return cursor_error(c, c->at, "say how much, for example '%s 5 gal over 5 min' or '%s to the mark, at 5 gal/min'",
                            keyword(&t), keyword(&t));
    snprintf(line->words, sizeof line->words, "%s %s", keyword(&t), words_quoted(part.at, (size_t)(part.end - part.at)).text);
    bool good = read_how_much(&part, &t);
    while (cursor_part(c, &part))
        good = read_clause(&part, &t) && good;
    if (t.of_surface)
        TEXT_ADD(line->words, ", from the surface");
    return good && settle(&place, &t);
}

static void details(const action_view *v, action_text *t)
{
    const boil_action_take *a = &v->action->is.take;
    const boil_tank *tank = &v->plant->tank;
    bool bounded = v->action->pour.goal != BOIL_GOAL_NONE && a->volume_m3 < boil_tank_area(tank) * tank->depth_m;
    if (v->action->pour.goal == BOIL_GOAL_NONE)
        TEXT_ADD(t->text, "%s", action_amount_of(v->units, DIM_VOLUME, a->volume_m3).text);
    else
        TEXT_ADD(t->text, "until the level is %s%s", action_amount_of(v->units, DIM_LENGTH, v->action->pour.goal_value).text,
                 tank->heater_top_m > 0 && v->action->pour.goal_value == tank->heater_top_m + over_heater_m
                     ? ", just over the heater"
                     : "");
    if (bounded)
        TEXT_ADD(t->text, ", at most %s", action_amount_of(v->units, DIM_VOLUME, a->volume_m3).text);
    TEXT_ADD(t->text, ", %s a minute", action_amount_of(v->units, DIM_VOLUME, a->volume_m3 / a->over_s * 60).text);
    if (v->action->name > 0)
        TEXT_ADD(t->text, ", kept");
}

/* clang-format off */
const action_type action_bail = {
    .keyword = "bail", .letter = 'B', .form = "VOLUME over TIME|at FLOW [, as NAME] [, from the surface]",
    .meaning = "bath liquid is taken from the surface, what floats on it first; also 'bail to the mark|level LENGTH, at FLOW' and "
               "'bail at FLOW until the mark|level LENGTH', both perhaps with ', at most VOLUME'; a name keeps it",
    .group = ACTION_SWITCH, .lane = ACTION_LANE_SET, .parse = parse, .details = details,
    .caution = "Only once it has cooled under 150 degF; dry steel vessel, long handle. Never into anything wet.",
};

const action_type action_drain = {
    .keyword = "drain", .letter = 'D', .form = "VOLUME over TIME|at FLOW [, as NAME]",
    .meaning = "bath liquid runs out at the floor, undissolved salt in its share; also 'drain to the mark|level LENGTH, at FLOW' "
               "and 'drain at FLOW until the mark|level LENGTH', both perhaps with ', at most VOLUME'; a name keeps it",
    .group = ACTION_SWITCH, .lane = ACTION_LANE_SET, .parse = parse, .details = details,
    .caution = "Only once it has cooled under 150 degF; into a dry steel vessel; stand aside of the valve.",
};
/* clang-format on */

/* "at 150 degF", if there is more. Hotter than its own boil no liquid is poured: the run sees to that. */
static bool read_back_at(cursor *c, boil_action *a)
{
    static const bounds warm = {"degC", 0, 200};
    cursor part;
    quantity q;
    if (!cursor_part(c, &part))
        return true;
    if (!cursor_take(&part, "at"))
        return cursor_error(&part, part.at, "expected 'at' and a temperature, got '%s'",
                            words_quoted(part.at, (size_t)(part.end - part.at)).text);
    if (!quantity_read(&part, "at", UNIT_OF(DIM_TEMPERATURE), &q) || !quantity_within(&part, "at", &q, &warm) ||
        !cursor_expect_end(&part))
        return false;
    a->is.back.temperature_K = q.si;
    return cursor_expect_end(c);
}

static void details_of_return(const action_view *v, action_text *t)
{
    if (v->action->is.back.temperature_K > 0)
        TEXT_ADD(t->text, "at %s", action_amount_of(v->units, DIM_TEMPERATURE, v->action->is.back.temperature_K).text);
}

/* "drum 1 over 10 min": the name goes to the word 'over'. */
static bool parse_return(action_reader *r, cursor *c, boil_action *a, action_line *line)
{
    quantity q;
    cursor part;
    cursor_done(c);
    cursor name = *c;
    while (c->at < c->end && words_taken(c->at, c->end, "over") == 0)
        c->at++;
    name.end = words_trim(name.at, c->at);
    if (name.at == name.end || !cursor_take(c, "over"))
        return cursor_error(&name, name.at, "say what and how slowly: 'return drum 1 over 10 min'");
    const char *comma = memchr(name.at, ',', (size_t)(c->end - name.at)), *said = comma != NULL ? comma : c->end;
    snprintf(line->words, sizeof line->words, "return %s", words_quoted(name.at, (size_t)(said - name.at)).text);
    const char *start = name.at;
    words_quote quoted = words_quoted(name.at, (size_t)(name.end - name.at));
    a->name = load_names_read(&r->names, &name);
    if (a->name > 0 && !r->names.kept[a->name])
        return cursor_error(&name, start, "nothing is kept as '%s' before this: 'bail 5 gal over 5 min, as %s'", quoted.text,
                            quoted.text);
    part = *c; /* where nothing follows */
    cursor_part(c, &part);
    bool good = quantity_read(&part, "over", UNIT_OF(DIM_TIME), &q) && quantity_within(&part, "over", &q, &taken_time) &&
                cursor_expect_end(&part);
    a->is.back.over_s = good ? q.si : 1;
    return good && a->name > 0 && read_back_at(c, a);
}

/* clang-format off */
const action_type action_return = {
    .keyword = "return", .letter = 'R', .form = "NAME over TIME [, at TEMPERATURE]",
    .meaning = "all that was bailed or drained under the name runs back in under the surface: as warm as the room unless it says so, and never "
               "so cold that it crystallises",
    .group = ACTION_SWITCH, .lane = ACTION_LANE_LIQUID, .takes_at = offsetof(boil_action, is.back.over_s), .parse = parse_return, .details = details_of_return,
    .caution = "Under the surface, slowly; stop when the boil stops.",
};
/* clang-format on */

static bool parse_stir(action_reader *r, cursor *c, boil_action *a, action_line *line)
{
    quantity q;
    (void)r;
    if (!cursor_take(c, "for"))
        return cursor_error(c, c->at, "say for how long: 'stir for 2 min'");
    if (!quantity_read(c, "for", UNIT_OF(DIM_TIME), &q) || !quantity_within(c, "for", &q, &taken_time))
        return false;
    a->is.stir_s = q.si;
    snprintf(line->words, sizeof line->words, "stir for %s", words_quoted(q.text, q.length).text);
    return cursor_expect_end(c);
}

/* clang-format off */
const action_type action_stir = {
    .keyword = "stir", .letter = 'P', .form = "for TIME", .meaning = "it is stirred with a paddle, as by the mixer", .group = ACTION_SWITCH,
    .lane = ACTION_LANE_SET, .takes_at = offsetof(boil_action, is.stir_s), .parse = parse_stir,
    .caution = "From the side, long handle: stirring can set free stored heat at once. Never with water afloat.",
};
/* clang-format on */
