#include "findings/belongs.h"

#include <math.h>
#include <string.h>

#include "case/grading.h"
#include "case/load.h"
#include "case/plant.h"

typedef struct {
    const boil_plant *plant;
    const boil_schedule *schedule;
    const boil_history *history;
    double before_s; /* what caused it was begun by then */
    bool *acts;
} asked;

typedef bool of_addition(const asked *q, const boil_addition_result *a);
typedef bool of_load(const asked *q, const boil_load_result *l);
typedef bool of_act(const asked *q, const boil_action *a);

/* Whom it may belong to: all that pass a test, or of those the last alone. NULL: none of that kind. */
typedef struct {
    of_addition *addition;
    of_load *load;
    of_act *act; /* of what leaves no record: a switch */
    bool last;
} suspects;

/* Additions. --------------------------------------------------------------------------------------------------------------- */

static bool is_water(const asked *q, const boil_addition_result *a)
{
    (void)q;
    return a->kind == BOIL_ACTION_WATER;
}

static bool is_salt(const asked *q, const boil_addition_result *a)
{
    (void)q;
    return a->kind == BOIL_ACTION_SALTS;
}

static bool is_any(const asked *q, const boil_addition_result *a)
{
    (void)q, (void)a;
    return true;
}

static bool is_water_on_quiet(const asked *q, const boil_addition_result *a)
{
    return is_water(q, a) && a->quiet_poured_kg > 0;
}

static bool is_salt_on_quiet(const asked *q, const boil_addition_result *a)
{
    return is_salt(q, a) && a->quiet_poured_kg > 0;
}

static bool takes_room(const asked *q, const boil_addition_result *a)
{
    return a->freeboard_min_m < q->plant->limits.freeboard_m && a->level_rise_m > 0;
}

static bool is_slug(const asked *q, const boil_addition_result *a)
{
    return is_salt(q, a) && takes_room(q, a);
}

/* As the surge is graded: of the calm steam, or of what there was before where that is more. */
static bool surges(const asked *q, const boil_addition_result *a)
{
    double calm = fmax(a->steam_before_kg_s, fmax(0, q->history->summary.steam_steady_kg_s));
    return a->steam_peak_kg_s > boil_gradings[BOIL_FOUND_SURGE].from[BOIL_SEVERITY_NOTICE] * calm;
}

static bool is_late(const asked *q, double boil_lost_s, double recovery_s)
{
    return !isnan(boil_lost_s) && !(recovery_s <= q->plant->limits.recovery_s);
}

static bool stills(const asked *q, const boil_addition_result *a)
{
    return is_late(q, a->boil_lost_s, a->recovery_s);
}

/* Loads. ------------------------------------------------------------------------------------------------------------------- */

static const boil_action *act_of(const asked *q, const boil_load_result *l)
{
    return &q->schedule->actions[l->action];
}

static bool is_slow(const asked *q, const boil_load_result *l)
{
    return is_late(q, l->boil_lost_s, l->recovery_s);
}

/* With what goes in within a minute of it. */
static bool is_heavy(const asked *q, const boil_load_result *l)
{
    const double together_s = 60;
    double mass_kg = 0;
    for (size_t i = 0; i < q->history->loads_count; i++) {
        const boil_load *with = &act_of(q, &q->history->loads[i])->is.load;
        if (fabs(q->history->loads[i].time_s - l->time_s) < together_s)
            mass_kg += with->mass_kg + with->basket_kg;
    }
    return mass_kg > boil_plant_usual_load(q->plant);
}

static bool is_in_quiet(const asked *q, const boil_load_result *l)
{
    (void)q;
    return l->was_quiet;
}

static bool is_through_water(const asked *q, const boil_load_result *l)
{
    return l->left_m < q->plant->limits.freeboard_m;
}

static bool is_tube(const asked *q, const boil_load_result *l)
{
    return act_of(q, l)->is.load.shape == BOIL_SHAPE_TUBE;
}

static bool has_pockets(const asked *q, const boil_load_result *l)
{
    (void)q;
    return l->pockets_kg > 0;
}

static bool is_short(const asked *q, const boil_load_result *l)
{
    (void)q;
    return l->short_s > 0 || l->boil_short_s > 0;
}

/* By what it displaces: without it there would have been room. */
static bool lifts_level(const asked *q, const boil_load_result *l)
{
    double rise_m = boil_load_displaced(&act_of(q, l)->is.load) / boil_tank_area(&q->plant->tank);
    double over_m = l->level_max_m - (q->plant->tank.depth_m - q->plant->limits.freeboard_m);
    return over_m > 0 && over_m <= rise_m;
}

/* Switches. ---------------------------------------------------------------------------------------------------------------- */

static bool is_more_heat(const asked *q, const boil_action *a)
{
    (void)q;
    return a->kind == BOIL_ACTION_HEAT && (a->is.heat.order != BOIL_HEAT_TURN || a->is.heat.dial > 0);
}

static bool is_taken(const asked *q, const boil_action *a)
{
    (void)q;
    return a->kind == BOIL_ACTION_BAIL || a->kind == BOIL_ACTION_DRAIN;
}

#define STAGES 3

/* The first line of each that anybody passes decides. */
/* clang-format off */
static const suspects table[BOIL_FOUND_KINDS][STAGES] = {
    [BOIL_FOUND_NEVER_RETURNS] = {{.addition = stills, .load = is_slow}, {.act = is_more_heat, .last = true}},
    [BOIL_FOUND_LAYER_OUTLASTS] = {{.addition = is_water_on_quiet, .load = has_pockets}, {.addition = is_water, .last = true}},
    [BOIL_FOUND_BOIL_LOST] = {{.addition = stills, .load = is_slow}},
    [BOIL_FOUND_LIQUID_STOPS] = {{.addition = stills}},
    [BOIL_FOUND_LOAD_HEAVY] = {{.load = is_heavy}},
    [BOIL_FOUND_LOAD_QUIET] = {{.load = is_in_quiet}},
    [BOIL_FOUND_LOAD_THROUGH] = {{.load = is_through_water}},
    [BOIL_FOUND_LOAD_COLD] = {{.load = is_short}},
    [BOIL_FOUND_TUBES] = {{.load = is_tube}},
    [BOIL_FOUND_WATER_QUIET] = {{.addition = is_water_on_quiet}, {.addition = is_water, .last = true}},
    [BOIL_FOUND_LAYER] = {{.addition = is_water_on_quiet, .load = has_pockets}, {.addition = is_water, .last = true}},
    [BOIL_FOUND_SURFACE_BOILS] = {{.addition = is_water_on_quiet}, {.addition = is_water, .last = true}},
    [BOIL_FOUND_WATER_QUENCHES] = {{.addition = is_water}},
    [BOIL_FOUND_WATER_FAST] = {{.addition = is_water, .last = true}},
    [BOIL_FOUND_SURGE] = {{.addition = surges}, {.load = has_pockets}, {.addition = is_any, .last = true}},
    [BOIL_FOUND_OVERFLOW] = {{.addition = takes_room, .load = has_pockets}, {.load = lifts_level}, {.act = is_more_heat, .last = true}},
    [BOIL_FOUND_OVERFLOW_STILL] = {{.addition = takes_room}, {.addition = is_any, .load = lifts_level}},
    [BOIL_FOUND_FREEBOARD] = {{.addition = takes_room, .load = has_pockets}, {.load = lifts_level}, {.act = is_more_heat, .last = true}},
    [BOIL_FOUND_TOO_COOL] = {{.addition = is_water}},
    [BOIL_FOUND_FLOOR_HOT] = {{.addition = is_salt}, {.act = is_more_heat}},
    [BOIL_FOUND_SALT_QUIET] = {{.addition = is_salt_on_quiet}, {.addition = is_salt, .last = true}},
    [BOIL_FOUND_SALT_SLUG] = {{.addition = is_slug}, {.addition = is_salt, .last = true}},
    [BOIL_FOUND_DRY_SALT] = {{.addition = is_water, .last = true}},
    [BOIL_FOUND_SALT_BED] = {{.addition = is_salt}, {.act = is_more_heat}},
    [BOIL_FOUND_SALT_MUCH] = {{.addition = is_salt}},
    [BOIL_FOUND_RESTART] = {{.act = is_more_heat}},
    [BOIL_FOUND_HOLLOWS] = {{.load = has_pockets}},
    [BOIL_FOUND_BAIL_HOT] = {{.act = is_taken}},
    [BOIL_FOUND_LEVEL_HIGH] = {{.addition = is_any}},
    [BOIL_FOUND_BOIL_SHORT] = {{.load = is_short}},
};
/* clang-format on */

static double done_s(const boil_history *h, size_t act)
{
    return act < h->acts_count ? h->acts[act].done_s : (double)NAN;
}

/* Marks what is asked for; how many, or of the last alone 1. */
static size_t mark(const asked *q, const suspects *of)
{
    const boil_history *h = q->history;
    size_t count = 0, last = 0;
    for (size_t i = 0; i < q->schedule->count; i++) {
        bool is = of->act != NULL && of->act(q, &q->schedule->actions[i]);
        for (size_t k = 0; of->addition != NULL && k < h->additions_count && !is; k++)
            is = h->additions[k].action == i && !h->additions[k].run_back && of->addition(q, &h->additions[k]);
        for (size_t k = 0; of->load != NULL && k < h->loads_count && !is; k++)
            is = h->loads[k].action == i && of->load(q, &h->loads[k]);
        if (!is || !(done_s(h, i) <= q->before_s))
            continue;
        last = i;
        count++;
        q->acts[i] = q->acts[i] || !of->last;
    }
    if (of->last && count > 0)
        q->acts[last] = true;
    return of->last && count > 0 ? 1 : count;
}

/* Of what it comes of where that is known. */
static size_t cause_of(const boil_finding *f)
{
    const char *id;
    for (size_t i = 0; f->because != NULL && (id = boil_finding_listed(i, NULL)) != NULL; i++)
        if (strcmp(id, f->because) == 0)
            return i;
    return f->kind;
}

static size_t mark_of_kind(const asked *q, size_t kind)
{
    size_t count = 0;
    for (int i = 0; i < STAGES && count == 0; i++)
        count = mark(q, &table[kind][i]);
    return count;
}

size_t boil_finding_belongs(const boil_plant *p, const boil_schedule *s, const boil_history *h, const boil_finding *f,
                            bool acts[])
{
    asked q = {p, s, h, isnan(f->worst_s) ? (double)INFINITY : f->worst_s, acts};
    size_t count = mark_of_kind(&q, cause_of(f));
    return count > 0 ? count : mark_of_kind(&q, f->kind);
}
