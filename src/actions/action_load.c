/* actions/action_load.c -- steel goes in: mass and metal, shape, clauses; and it is lifted out. */
#include <math.h>
#include <string.h>

#include "actions/action.h"
#include "actions/load_carried.h"
#include "actions/load_shape.h"
#include "actions/load_stay.h"
#include "base/constants.h"
#include "base/words.h"

static const bounds load_mass = {"kg", 0.001, 1e5};
static const bounds load_pieces = {NULL, 1, 1e6};

#define AT(member) offsetof(boil_action, is.load.member)

/* "as" takes a name and stands apart. Rinse and drag-out are volumes here and become masses once it is known of what. */
/* clang-format off */
static const action_clause clauses[] = {
    {"at", "how warm the parts are; default as the room", DIM_TEMPERATURE, {"degC", -40, 200}, AT(temperature_K)},
    {"for", "how long it stays; default until lifted", DIM_TIME, {"h", 1.0 / 3600, 336}, AT(immersed_s)},
    {"basket", "steel that goes in and out with the parts", DIM_MASS, {"kg", 0, 1e5}, AT(basket_kg)},
    {"packed", "depth of a dense pack of small parts, which heats as one body", DIM_LENGTH, {"m", 0.01, 2},
     AT(packed_depth_m)},
    {"lowered over", "how long the lowering takes, and the lifting", DIM_TIME, {"s", 1, 600}, AT(lowering_s)},
    {"coefficient", "of heat from bath to parts, in place of the model's own", DIM_COEFFICIENT, {"W/m2K", 10, 1e5},
     AT(coefficient_W_m2K)},
    {"area", "of all parts together, in place of that from mass and shape", DIM_AREA, {"m2", 1e-6, 1e5}, AT(area_m2)},
    {"rinse", "water the parts carry in on their surface", DIM_VOLUME_PER_AREA, {"mL/m2", 0, 1000}, AT(rinse_kg_m2)},
    {"drag-out", "bath liquid the parts carry out on their surface, in place of the model's own", DIM_VOLUME_PER_AREA,
     {"mL/m2", 0, 500}, AT(drag_out_kg_m2)},
};
/* clang-format on */

#define CLAUSES (sizeof clauses / sizeof clauses[0])

/* What is found on the way. */
typedef struct {
    action_reader *reader;
    boil_action *action;
    boil_load *load;     /* of the action */
    bool named, refused; /* refused: for what its metal is, which was said */
    quantity said[CLAUSES], mass, size;
    load_carried carried;
    load_stay stay;
    const char *metal, *shape;
} reading;

static bool read_name(cursor *part, reading *r)
{
    const char *start = part->at;
    if (!cursor_take(part, "as") || !action_clause_first(part, start, "as", r->named))
        return false;
    r->named = true;
    if (cursor_done(part))
        return cursor_error(part, part->at, "'as' needs a name");
    r->action->name = load_names_read(&r->reader->names, part);
    return r->action->name > 0;
}

static bool unknown_clause(cursor *part)
{
    size_t token = cursor_token(part);
    words_nearest n = words_near(part->at, token);
    words_consider(&n, "as");
    words_consider(&n, "pockets");
    words_consider(&n, "drained");
    words_consider(&n, "straight in");
    words_consider(&n, "position");
    words_consider(&n, "no later than");
    for (size_t i = 0; i < CLAUSES; i++)
        words_consider(&n, clauses[i].words);
    return cursor_error(part, part->at, "unknown clause '%s' of a load%s", words_quoted(part->at, token).text,
                        words_suggestion(&n).text);
}

/* "40 pieces", if that is what comes. */
static bool pieces_come(cursor part)
{
    size_t n = cursor_token(&part);
    bool number = n > 0 && part.at[0] >= '0' && part.at[0] <= '9';
    part.at += n;
    return number && cursor_take(&part, "pieces");
}

static bool read_pieces(cursor *part, reading *r)
{
    quantity q;
    cursor number = *part;
    number.end = number.at + cursor_token(part);
    if (!action_clause_first(part, part->at, "pieces", r->load->pieces > 0) || !quantity_factor(&number, "pieces", &q) ||
        !cursor_expect_end(&number) || !quantity_within(part, "pieces", &q, &load_pieces))
        return false;
    if (q.si != floor(q.si))
        return cursor_error(part, q.text, "'pieces' must be a whole number");
    r->load->pieces = q.si;
    part->at = number.end;
    return cursor_take(part, "pieces") && cursor_expect_end(part);
}

static bool read_clause(cursor *part, reading *r)
{
    if (pieces_come(*part))
        return read_pieces(part, r);
    if (words_taken(part->at, part->end, "as") > 0)
        return read_name(part, r);
    action_clause_end end = load_stay_read(part, r->reader, &r->stay, r->load);
    if (end == ACTION_CLAUSE_UNKNOWN)
        end = load_carried_read(part, r->reader, &r->carried);
    if (end == ACTION_CLAUSE_UNKNOWN)
        end = action_clause_read(part, clauses, CLAUSES, r->said, r->action);
    return end == ACTION_CLAUSE_UNKNOWN ? unknown_clause(part) : end == ACTION_CLAUSE_READ;
}

static bool read_mass(cursor *part, reading *r)
{
    if (!quantity_read(part, "load", UNIT_OF(DIM_MASS), &r->mass) || !quantity_within(part, "load", &r->mass, &load_mass))
        return false;
    r->load->mass_kg = r->mass.si;
    return r->refused || metal_read(part, &r->metal);
}

static bool read_all(cursor *c, reading *r)
{
    cursor part;
    if (cursor_done(c))
        return cursor_error(c, c->at, "say what goes in, for example 'load 100 lb, plate 1/4 in'");
    r->refused = metal_refused(*c);
    cursor_part(c, &part);
    bool good = read_mass(&part, r) && !r->refused;
    if (!cursor_part(c, &part))
        return cursor_error(c, c->end, "a load needs its shape, for example ', plate 1/4 in'");
    good = load_shape_read(&part, r->load, &r->shape, &r->size) && good;
    while (cursor_part(c, &part))
        good = read_clause(&part, r) && good;
    bool *broken = &r->reader->names.broken[r->action->name];
    *broken = *broken || !good;
    return good;
}

static bool was_said(const reading *r, size_t where)
{
    size_t i = 0;
    while (clauses[i].where != where)
        i++;
    return r->said[i].text != NULL;
}

/* Water on the parts is as warm as they are, within the range of liquid water. */
static void settle_rinse(reading *r)
{
    if (was_said(r, AT(rinse_kg_m2)))
        r->load->rinse_kg_m2 *= boil_water_density(fmax(r->load->temperature_K, BOIL_ZERO_CELSIUS));
    else if (r->load->packed_depth_m > 0)
        r->load->rinse_kg_m2 = BOIL_RINSE_PACKED_KG_M2;
}

/* Bath liquid is carried out at its boil. */
static void settle_drag_out(reading *r)
{
    const action_reader *a = r->reader;
    if (a->bath_known && was_said(r, AT(drag_out_kg_m2)))
        r->load->drag_out_kg_m2 *= boil_solution_density(&a->bath.mixture, a->bath.boiling_point_K);
}

/* "100 lb of 1/4 in plate", "100 lb of 1/4 in iron plate (rack 3)" */
static void describe(action_line *line, const reading *r)
{
    const char *alloy = strcmp(r->metal, "iron") == 0 ? "iron " : "";
    const char *name = load_names_word(&r->reader->names, r->action->name);
    TEXT_JOIN(line->words, quantity_echo(&r->mass).text);
    TEXT_JOIN(line->words, " of ");
    TEXT_JOIN(line->words, quantity_echo(&r->size).text);
    TEXT_JOIN(line->words, " ");
    TEXT_JOIN(line->words, alloy);
    TEXT_JOIN(line->words, r->shape);
    if (*name != '\0') {
        TEXT_JOIN(line->words, " (");
        TEXT_JOIN(line->words, words_quoted(name, strlen(name)).text);
        TEXT_JOIN(line->words, ")");
    }
}

static bool parse(action_reader *a, cursor *c, boil_action *action, action_line *line)
{
    reading r = {.reader = a, .action = action, .load = &action->is.load};
    *r.load = boil_load_default();
    r.load->temperature_K = a->plant->ambient.temperature_K;
    if (!read_all(c, &r))
        return false;
    settle_rinse(&r);
    if (!load_carried_settle(&r.carried, &line->place, a->plant, was_said(&r, AT(rinse_kg_m2)), was_said(&r, AT(temperature_K)),
                             r.load))
        return false;
    if (!load_stay_settle(&r.stay, &line->place, r.load))
        return false;
    settle_drag_out(&r);
    action->position = r.carried.position;
    describe(line, &r);
    const char *problem = boil_load_problem(r.load);
    if (problem != NULL)
        cursor_error(&line->place, line->place.at, "%s", problem);
    return problem == NULL;
}

static void details(const action_view *v, action_text *t)
{
    const boil_load *l = &v->action->is.load;
    TEXT_ADD(t->text, "at %s", action_amount_of(v->units, DIM_TEMPERATURE, l->temperature_K).text);
    load_stay_add(v, t);
    if (l->pieces > 0)
        TEXT_ADD(t->text, ", %.0f pieces", l->pieces);
    if (v->action->position > 0 && !v->many)
        TEXT_ADD(t->text, ", position %d", v->action->position);
    if (l->basket_kg > 0)
        TEXT_ADD(t->text, ", basket %s", action_amount_of(v->units, DIM_MASS, l->basket_kg).text);
    if (l->trapped_kg > 0)
        TEXT_ADD(t->text, ", %s of water in hollows", action_amount_of(v->units, DIM_MASS, l->trapped_kg).text);
    if (l->drag_out_kg_m2 >= 0)
        TEXT_ADD(t->text, ", drag-out %s", action_amount_of(v->units, DIM_MASS, l->drag_out_kg_m2 * boil_load_wetted(l)).text);
}

static void pace(const action_view *v, action_text *t)
{
    TEXT_ADD(t->text, "; lowered over %s", format_duration(v->action->is.load.lowering_s).text);
}

static void expected(const action_view *v, action_text *t)
{
    const boil_load_result *l = v->load;
    action_text_add_boil(t, v->start_s, l->was_quiet, l->boil_lost_s, l->recovery_s);
    if (isnan(l->hot_s))
        TEXT_ADD(t->text, "; not hot through before it is lifted");
    else
        TEXT_ADD(t->text, "; hot through after %s", format_duration(l->hot_s).text);
}

static const char *caution_of(const action_view *v)
{
    return v->action->is.load.shape == BOIL_SHAPE_TUBE
               ? "Only into a steady boil, slowly. Both ends open, drained, pointed away from people."
               : "Only into a steady boil, slowly. Steel only; no water in hollows.";
}

/* clang-format off */
const action_type action_load = {
    .keyword = "load", .letter = 'L', .form = "MASS [steel|iron], SHAPE SIZE [, CLAUSE]...",
    .meaning = "steel goes in and, with 'for', comes out again by itself", .clauses = clauses, .clause_count = CLAUSES,
    .group = ACTION_LOAD, .lane = ACTION_LANE_LOADS, .takes_at = AT(lowering_s), .parse = parse, .details = details,
    .pace = pace, .expected = expected, .caution_of = caution_of,
    .when_quiet = "Quiet then: wait for a steady boil.", .quiet_severity = BOIL_SEVERITY_WARNING,
};
/* clang-format on */

static bool parse_lift(action_reader *r, cursor *c, boil_action *a, action_line *line)
{
    snprintf(line->words, sizeof line->words, "lift everything");
    if (cursor_done(c))
        return true;
    snprintf(line->words, sizeof line->words, "lift %s", words_quoted(c->at, (size_t)(c->end - c->at)).text);
    a->name = load_names_read(&r->names, c);
    return a->name > 0;
}

/* clang-format off */
const action_type action_lift = {
    .keyword = "lift", .letter = 'U', .form = "[NAME]", .meaning = "a named load, or everything, comes out", .group = ACTION_LIFT,
    .parse = parse_lift, .caution = "Slowly; drain it over the bath.",
};
/* clang-format on */
