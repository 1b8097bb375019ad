#include "actions/load_carried.h"

#include <math.h>
#include <string.h>

#include "base/constants.h"
#include "base/words.h"

#define DRAINED_HOLDS 0.1 /* of the hollows' water, after hanging with the mouths down; judgement */

static const bounds hollow = {"mL", 0.01, 1e6};

static const load_carried_clause listed[] = {
    {"pockets VOLUME each|in all",
     "water in hollows that are open but hold it back, of each piece or of all together; it comes to its "
     "boil in the bath and lets go about when the boil comes back"},
    {"drained", "the hollows hung with their mouths down: a tenth of that water is left"},
    {"position NUMBER", "its place among the 'positions' of [tank]; without one it takes the lowest that is free"},
    {"straight in", "not through the rinse of [rinse]: no film of water, and as warm as the room"},
};

load_carried_clause load_carried_listed(size_t index)
{
    return index < sizeof listed / sizeof listed[0] ? listed[index] : (load_carried_clause){NULL, NULL};
}

static bool read_hollows(cursor *part, const char *start, load_carried *c)
{
    if (!action_clause_first(part, start, "pockets", c->hollows.text != NULL))
        return false;
    if (!quantity_read(part, "pockets", UNIT_OF(DIM_VOLUME), &c->hollows) ||
        !quantity_within(part, "pockets", &c->hollows, &hollow))
        return false;
    c->in_all = cursor_take(part, "in all");
    if (!c->in_all && !cursor_take(part, "each"))
        return cursor_error(part, part->at, "'pockets' needs 'each' or 'in all' behind its volume");
    return cursor_expect_end(part);
}

static bool read_position(cursor *part, const char *start, const action_reader *r, load_carried *c)
{
    quantity q;
    if (!action_clause_first(part, start, "position", c->position > 0) || !quantity_factor(part, "position", &q))
        return false;
    if (r->positions == 0)
        return cursor_error(part, start, "how many places are there? Give 'positions' in [tank]");
    if (!(q.si >= 1 && q.si <= (double)r->positions && q.si == floor(q.si)))
        return cursor_error(part, q.text, "'position' must be a whole number from 1 to %zu, got '%s'", r->positions,
                            words_quoted(q.text, q.length).text);
    c->position = (int)q.si;
    return cursor_expect_end(part);
}

/* A word that says all. */
static bool read_word(cursor *part, const char *start, const char *word, const char **at)
{
    if (!action_clause_first(part, start, word, *at != NULL))
        return false;
    *at = start;
    return cursor_expect_end(part);
}

static action_clause_end ended(bool good)
{
    return good ? ACTION_CLAUSE_READ : ACTION_CLAUSE_WRONG;
}

action_clause_end load_carried_read(cursor *part, const action_reader *r, load_carried *c)
{
    static const char *const closed[] = {"closed", "sealed", "capped", "welded shut"};
    const char *start = part->at;
    for (size_t i = 0; i < sizeof closed / sizeof closed[0]; i++)
        if (words_taken(part->at, part->end, closed[i]) > 0)
            return ended(cursor_error(part, start, "a closed hollow bursts in the bath: drill it, or leave it out"));
    if (cursor_take(part, "position"))
        return ended(read_position(part, start, r, c));
    if (cursor_take(part, "pockets"))
        return ended(read_hollows(part, start, c));
    if (cursor_take(part, "drained"))
        return ended(read_word(part, start, "drained", &c->drained_at));
    if (cursor_take(part, "straight in"))
        return ended(read_word(part, start, "straight in", &c->straight_at));
    return ACTION_CLAUSE_UNKNOWN;
}

static bool fits_together(const load_carried *c, const cursor *place, bool rinse_said, const boil_load *l)
{
    bool good = true;
    if (c->hollows.text != NULL && !c->in_all && !(l->pieces > 0))
        good = cursor_error(place, c->hollows.text, "'pockets ... each' needs how many: add '120 pieces'");
    if (c->drained_at != NULL && c->hollows.text == NULL)
        good = cursor_error(place, c->drained_at, "'drained' says how hollows were left: add 'pockets 15 mL each'");
    if (c->straight_at != NULL && rinse_said)
        good = cursor_error(place, c->straight_at, "'straight in' brings no water from a rinse: leave out this or 'rinse'");
    return good;
}

/* Water of the rinse on the parts and in them, and the parts warmed or cooled by it; else the water is as warm as they are. */
static void settle_rinse(const load_carried *c, const boil_plant *p, bool rinse_said, bool at_said, boil_load *l)
{
    const boil_rinse *r = &p->rinse;
    if (c->straight_at != NULL) {
        l->rinse_kg_m2 = 0;
        return;
    }
    if (!(r->temperature_K > 0))
        return;
    l->water_K = r->temperature_K;
    if (!at_said)
        l->temperature_K = boil_rinsed_K(l, p->ambient.temperature_K, r->temperature_K, r->dwell_s);
    if (!rinse_said && r->film_m3_m2 >= 0)
        l->rinse_kg_m2 = r->film_m3_m2 * boil_water_density(r->temperature_K);
}

bool load_carried_settle(const load_carried *c, const cursor *place, const boil_plant *p, bool rinse_said, bool at_said,
                         boil_load *l)
{
    if (!fits_together(c, place, rinse_said, l))
        return false;
    settle_rinse(c, p, rinse_said, at_said, l);
    if (c->hollows.text == NULL)
        return true;
    double count = fmax(1, l->pieces), water_K = l->water_K > 0 ? l->water_K : l->temperature_K;
    double all_m3 = c->hollows.si * (c->in_all ? 1 : count) * (c->drained_at != NULL ? DRAINED_HOLDS : 1);
    l->trapped_kg = all_m3 * boil_water_density(fmin(fmax(water_K, BOIL_ZERO_CELSIUS), BOIL_ZERO_CELSIUS + 100));
    l->hollow_m3 = all_m3 / count;
    return true;
}
