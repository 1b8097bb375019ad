#include "lesson/lesson.h"

#include <math.h>

#include "base/words.h"
#include "lesson/aftermath.h"

const char *const lesson_script_words[LESSON_SCRIPTS + 1] = {"careful", "reckless", "idle", NULL};

static double water(const boil_plant *p, const boil_history *h)
{
    (void)p;
    return h->summary.water_added_kg;
}

static double steel(const boil_plant *p, const boil_history *h)
{
    (void)p;
    return h->summary.steel_kg;
}

static double salts(const boil_plant *p, const boil_history *h)
{
    (void)p;
    return h->summary.salts_added_kg;
}

static double rim(const boil_plant *p, const boil_history *h)
{
    (void)p;
    return h->summary.freeboard_min_m.value;
}

/* Where nothing floated that could let go, what the bath itself leaves. */
static double left(const boil_plant *p, const boil_history *h)
{
    double least = rim(p, h);
    for (size_t i = 0; i < h->quiet_count; i++)
        least = fmin(least, h->quiet[i].left_m);
    return least;
}

static double afloat(const boil_plant *p, const boil_history *h)
{
    (void)p;
    return h->summary.layer_max_kg.value;
}

static double afloat_quiet(const boil_plant *p, const boil_history *h)
{
    double most = 0;
    (void)p;
    for (size_t i = 0; i < h->quiet_count; i++)
        most = fmax(most, h->quiet[i].layer_max_kg);
    return most;
}

/* A spell that never ends counts to the end. */
static double quiet(const boil_plant *p, const boil_history *h)
{
    double sum = 0;
    (void)p;
    for (size_t i = 0; i < h->quiet_count; i++)
        sum += (isnan(h->quiet[i].end_s) ? h->end_s : h->quiet[i].end_s) - h->quiet[i].start_s;
    return sum;
}

static double slowest(const boil_plant *p, const boil_history *h)
{
    double most = 0;
    (void)p;
    for (size_t i = 0; i < h->loads_count; i++)
        most = fmax(most, isnan(h->loads[i].recovery_s) ? (double)INFINITY : h->loads[i].recovery_s);
    return most;
}

/* Steam over what was there before, or over the calm steam of the start where none was; where there is none of that either the bath
   has not boiled, and nothing surges. */
static double surge(const boil_plant *p, const boil_history *h)
{
    double most = 0;
    for (size_t i = 0; i < h->additions_count; i++) {
        const boil_addition_result *a = &h->additions[i];
        double before = a->steam_before_kg_s > 0 ? a->steam_before_kg_s : h->summary.steam_steady_kg_s;
        if (before > 0)
            most = fmax(most, aftermath_of(p, h, a).steam_kg_s / before);
    }
    return most;
}

/* Any of them may be the one that is more than all others. */
static bool surge_is_more(const boil_plant *p, const boil_history *h)
{
    bool more = false;
    for (size_t i = 0; i < h->additions_count; i++)
        more = more || aftermath_of(p, h, &h->additions[i]).more_than;
    return more;
}

static double lying(const boil_plant *p, const boil_history *h)
{
    (void)p;
    return h->summary.undissolved_max_kg;
}

static double boils_at(const boil_plant *p, const boil_history *h)
{
    (void)p;
    return h->summary.boiling_point_end_K;
}

static double level(const boil_plant *p, const boil_history *h)
{
    (void)p;
    return h->summary.still_level_end_m;
}

static double boils(const boil_plant *p, const boil_history *h)
{
    (void)p;
    return h->quiet_count == 0 || !isnan(h->quiet[h->quiet_count - 1].end_s);
}

static double crust_heat(const boil_plant *p, const boil_history *h)
{
    (void)p;
    return isnan(h->summary.crystals_fire.value) ? 0 : h->summary.crystals_fire.value;
}

/* clang-format off */
static const lesson_measure table[] = {
    {"water", "water given by hand", "water given", DIM_MASS, false, water, NULL},
    {"steel", "parts worked, without their baskets", "steel worked", DIM_MASS, false, steel, NULL},
    {"salts", "dry salts given", "salts given", DIM_MASS, false, salts, NULL},
    {"rim", "least room from the surface, steam in it, to the rim", "least room to the rim", DIM_LENGTH, false, rim, NULL},
    {"left", "least of that room that would have been left, had what floated let go", "left had it let go", DIM_LENGTH, false,
     left, NULL},
    {"afloat", "most water afloat", "most water afloat", DIM_MASS, false, afloat, NULL},
    {"afloat quiet", "most water afloat while the bath did not boil", "afloat on a quiet bath", DIM_MASS, false, afloat_quiet, NULL},
    {"quiet", "time in all in which the bath did not boil", "quiet in all", DIM_TIME, false, quiet, NULL},
    {"slowest", "longest that a load stopped the boil", "slowest boil back", DIM_TIME, false, slowest, NULL},
    {"surge", "most steam after an addition, of that before it", "steam, times that before", DIM_COUNT, false, surge, surge_is_more},
    {"lying", "most salt that lay undissolved", "most salt lying", DIM_MASS, false, lying, NULL},
    {"boils at", "boiling point at the end", "boils at the end at", DIM_TEMPERATURE, false, boils_at, NULL},
    {"level", "still level at the end", "level at the end", DIM_LENGTH, false, level, NULL},
    {"boils", "the bath boils at the end; it stands alone", "boils at the end", DIM_COUNT, true, boils, NULL},
    {"crust heat", "most of the full heat that was on while crystals lay in the bath", "heat under crystals", DIM_FRACTION, false,
     crust_heat, NULL},
};
/* clang-format on */

const lesson_measure *lesson_measure_listed(size_t index)
{
    return index < sizeof table / sizeof table[0] ? &table[index] : NULL;
}

lesson_value lesson_measured(const lesson_measure *m, const boil_plant *p, const boil_history *h)
{
    return (lesson_value){m->of(p, h), m->more_than != NULL && m->more_than(p, h)};
}

const lesson_measure *lesson_measure_named(const char *words, size_t length)
{
    for (size_t i = 0; i < sizeof table / sizeof table[0]; i++)
        if (words_same(words, length, table[i].words))
            return &table[i];
    return NULL;
}
