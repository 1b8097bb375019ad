#include "actions/action_load.h"

#include <stddef.h>
#include <string.h>

#include "actions/action_table.h"
#include "actions/metals.h"
#include "base/boil.h"
#include "base/words.h"
#include "properties/water.h"

static const bounds load_mass = {"kg", 0.001, 1e5};
static const bounds part_size = {"mm", 0.1, 1000};

#define AT(member) offsetof(boil_load, member)

/* "as" takes a name and stands apart. Rinse and drag-out are volumes here and become masses once it is known of
   what. */
/* clang-format off */
static const action_load_clause clauses[] = {
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
    boil_load load;
    int name;
    bool said[CLAUSES], named;
    quantity mass, size;
    const char *metal, *shape;
} reading;

static const action_load_clause *find(cursor *part, size_t *index)
{
    for (size_t i = 0; i < CLAUSES; i++)
        if (cursor_take(part, clauses[i].words)) {
            *index = i;
            return &clauses[i];
        }
    return NULL;
}

static bool twice(const cursor *part, const char *at, const char *words, bool *said)
{
    if (*said)
        cursor_error(part, at, "'%s' is said twice", words);
    bool before = *said;
    *said = true;
    return before;
}

static bool read_name(action_list *a, cursor *part, reading *r)
{
    const char *start = part->at;
    if (!cursor_take(part, "as") || twice(part, start, "as", &r->named))
        return false;
    if (cursor_done(part)) {
        cursor_error(part, part->at, "'as' needs a name");
        return false;
    }
    r->name = action_load_name(a, part);
    return r->name > 0;
}

static bool unknown_clause(cursor *part)
{
    size_t token = cursor_token(part);
    words_nearest n = words_near(part->at, token);
    words_consider(&n, "as");
    for (size_t i = 0; i < CLAUSES; i++)
        words_consider(&n, clauses[i].words);
    cursor_error(part, part->at, "unknown clause '%s' of a load%s", words_quoted(part->at, token).text,
                 words_suggestion(&n).text);
    return false;
}

static bool read_clause(action_list *a, cursor *part, reading *r)
{
    size_t i;
    quantity q;
    const char *start = part->at;
    if (words_taken(part->at, part->end, "as") > 0)
        return read_name(a, part, r);
    const action_load_clause *k = find(part, &i);
    if (k == NULL)
        return unknown_clause(part);
    if (twice(part, start, k->words, &r->said[i]))
        return false;
    if (!quantity_read(part, k->words, UNIT_OF(k->dimension), &q) || !cursor_expect_end(part) ||
        !quantity_within(part, k->words, &q, &k->within))
        return false;
    memcpy((char *)&r->load + k->where, &q.si, sizeof q.si);
    return true;
}

static bool was_said(const reading *r, size_t where)
{
    for (size_t i = 0; i < CLAUSES; i++)
        if (clauses[i].where == where)
            return r->said[i];
    return false;
}

/* Water on the parts is as warm as they are, within the range of liquid water. */
static void settle_rinse(reading *r)
{
    double T = r->load.temperature_K;
    double liquid = T < BOIL_ZERO_CELSIUS ? BOIL_ZERO_CELSIUS : T;
    if (was_said(r, AT(rinse_kg_m2)))
        r->load.rinse_kg_m2 *= boil_water_density(liquid);
    else if (r->load.packed_depth_m > 0)
        r->load.rinse_kg_m2 = BOIL_RINSE_PACKED_KG_M2;
}

/* Bath liquid is carried out at its boil. */
static void settle_drag_out(const action_list *a, reading *r)
{
    if (a->bath_known && was_said(r, AT(drag_out_kg_m2)))
        r->load.drag_out_kg_m2 *= boil_solution_density(&a->bath.mixture, a->bath.boiling_point_K);
}

static const action_load_shape shapes[] = {
    {"plate", "thickness", BOIL_SHAPE_PLATE},
    {"bar", "diameter", BOIL_SHAPE_BAR},
    {"ball", "diameter", BOIL_SHAPE_BALL},
    {"tube", "outer diameter, then 'wall' and its thickness", BOIL_SHAPE_TUBE},
};

#define SHAPES (sizeof shapes / sizeof shapes[0])

const action_load_clause *action_load_clauses_listed(size_t index)
{
    return index < CLAUSES ? &clauses[index] : NULL;
}

const action_load_shape *action_load_shapes_listed(size_t index)
{
    return index < SHAPES ? &shapes[index] : NULL;
}

static bool unknown_shape(cursor *part)
{
    size_t token = cursor_token(part);
    words_nearest n = words_near(part->at, token);
    for (size_t i = 0; i < SHAPES; i++)
        words_consider(&n, shapes[i].words);
    cursor_error(part, part->at, "expected a shape (plate, bar, ball or tube) and its size, got '%s'%s",
                 words_quoted(part->at, token).text, words_suggestion(&n).text);
    return false;
}

static bool read_size(cursor *part, const char *what, double *value, quantity *q)
{
    if (!quantity_read(part, what, UNIT_OF(DIM_LENGTH), q) || !quantity_within(part, what, q, &part_size))
        return false;
    *value = q->si;
    return true;
}

static bool read_wall(cursor *part, reading *r)
{
    quantity q;
    if (!cursor_take(part, "wall")) {
        cursor_error(part, part->at, "a tube needs its wall, for example 'tube 1 in wall 2 mm'");
        return false;
    }
    if (!read_size(part, "wall", &r->load.tube_wall_m, &q))
        return false;
    if (!(r->load.tube_wall_m < r->load.size_m / 2)) {
        cursor_error(part, q.text, "the wall of a tube must be less than half its diameter");
        return false;
    }
    return true;
}

static bool read_shape(cursor *part, reading *r)
{
    size_t i = 0;
    while (i < SHAPES && !cursor_take(part, shapes[i].words))
        i++;
    if (i == SHAPES)
        return unknown_shape(part);
    r->load.shape = shapes[i].shape;
    r->shape = shapes[i].words;
    if (!read_size(part, r->shape, &r->load.size_m, &r->size))
        return false;
    if (r->load.shape == BOIL_SHAPE_TUBE && !read_wall(part, r))
        return false;
    return cursor_expect_end(part);
}

static bool read_mass(cursor *part, reading *r)
{
    if (!quantity_read(part, "load", UNIT_OF(DIM_MASS), &r->mass) || !quantity_within(part, "load", &r->mass, &load_mass))
        return false;
    r->load.mass_kg = r->mass.si;
    return metal_read(part, &r->metal);
}

/* "100 lb of 1/4 in plate", "100 lb of 1/4 in iron plate (rack 3)" */
static void describe(action_line *said, const action_list *a, const reading *r)
{
    const char *alloy = strcmp(r->metal, "iron") == 0 ? "iron " : "";
    const char *name = r->name > 0 ? a->names[r->name - 1] : "";
    snprintf(said->words, sizeof said->words, "%s of %s %s%s%s%s%s", words_quoted(r->mass.text, r->mass.length).text,
             words_quoted(r->size.text, r->size.length).text, alloy, r->shape, *name ? " (" : "",
             words_quoted(name, strlen(name)).text, *name ? ")" : "");
}

bool action_load_read(action_list *a, cursor *c, boil_action *action, action_line *said)
{
    reading r = {.load = boil_load_default()};
    cursor part;
    r.load.temperature_K = a->plant->ambient.temperature_K;
    if (!cursor_part(c, &part)) {
        cursor_error(c, c->at, "say what goes in, for example 'load 100 lb, plate 1/4 in'");
        return false;
    }
    bool good = read_mass(&part, &r);
    if (!cursor_part(c, &part)) {
        cursor_error(c, c->end, "a load needs its shape, for example ', plate 1/4 in'");
        return false;
    }
    good = read_shape(&part, &r) && good;
    while (cursor_part(c, &part))
        good = read_clause(a, &part, &r) && good;
    a->broken[r.name] = a->broken[r.name] || !good;
    if (!good)
        return false;
    settle_rinse(&r);
    settle_drag_out(a, &r);
    describe(said, a, &r);
    *action = (boil_action){.kind = BOIL_ACTION_LOAD, .name = r.name, .is.load = r.load};
    return true;
}
