#include "analysis/findings.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "analysis/heater_size.h"
#include "base/boil.h"
#include "base/grow.h"

/* Steam over three times calm is a surge: well above what a load or a trickle of water does (1.2), well below what sends a
   usual bath over its rim. Judgement. */
#define SURGE_RATIO 3.0

/* Everything a finding can be, with the words that go with it. */
typedef struct {
    const char *id, *title, *advice;
    boil_unit_kind unit;
    const char *needed_words; /* NULL: it names no mass */
} kind;

static const kind NEVER_BOILS = {"never-boils", "the bath never boils",
                                 "Add no water; give it more heat, less draught, a lid or insulation before loading.",
                                 BOIL_UNIT_POWER, NULL};
static const kind NEVER_RETURNS = {"boil-never-returns", "the boil does not come back before the end",
                                   "Add no water; load less at a time, wait longer between loads, or give it more heat.",
                                   BOIL_UNIT_TIME, NULL};
static const kind BOIL_LOST = {"boil-lost-long", "boil lost longer than the limit",
                               "Load less at a time, warm the parts in a hot rinse, or raise the heat.", BOIL_UNIT_TIME, NULL};
static const kind LOAD_HEAVY = {"load-heavy", "load over the rule of thumb for this volume",
                                "Split the load: a heavy cold load stops the boil for long.", BOIL_UNIT_DENSITY, NULL};
static const kind LOAD_QUIET = {"load-on-quiet-bath", "load put in before the boil was back",
                                "Wait for a steady boil before the next load.", BOIL_UNIT_TIME, NULL};
static const kind LOAD_COLD = {"load-not-hot", "parts lifted before they were hot through",
                               "Leave them in longer: a boil that is back does not show that the steel is hot.", BOIL_UNIT_TIME,
                               NULL};
static const kind TUBES = {"tubes", "tubes or hollow parts",
                           "Open both ends, drain them, lower them slowly and point them away from people: steam in a bore "
                           "throws hot caustic.",
                           BOIL_UNIT_MASS, NULL};
static const kind WATER_QUIET = {"water-on-quiet-bath", "water added while the bath does not boil",
                                 "Stop the water. It floats and can erupt when the boil returns; add water only while it "
                                 "boils.",
                                 BOIL_UNIT_MASS, NULL};
static const kind LAYER = {"water-layer", "water floats on the quiet bath",
                           "Stand back, add nothing, keep hands and parts away; let the boil come back slowly at low heat.",
                           BOIL_UNIT_LENGTH, NULL};
static const kind SURFACE_BOILS = {"surface-boils", "the surface boils, the bath does not",
                                   "Do not take this for the boil: a water layer is boiling on a bath that is still below "
                                   "its own boiling point.",
                                   BOIL_UNIT_TIME, NULL};
static const kind SURGE = {"steam-surge", "surge of steam",
                           "Add water more slowly, and only into a full boil; keep people away from the rim.", BOIL_UNIT_RATIO,
                           NULL};
static const kind OVERFLOW_SWELLED = {"overflow", "the boiling surface reaches the rim",
                                      "Hot caustic leaves the tank: cut the heat early, lower the level, add water more "
                                      "slowly; what follows in this run is not a prediction.",
                                      BOIL_UNIT_LENGTH, NULL};
static const kind OVERFLOW_STILL = {"overflow-still", "the still surface reaches the rim",
                                    "The tank is too full for what goes in: bail out liquid into a dry steel vessel before "
                                    "adding anything.",
                                    BOIL_UNIT_LENGTH, NULL};
static const kind FREEBOARD = {"freeboard-low", "freeboard below the limit",
                               "Lower the level, load less at a time, or turn the heat down while it swells.", BOIL_UNIT_LENGTH,
                               NULL};
static const kind TOO_HOT = {"bath-too-hot", "the bath boils above its band",
                             "It is too strong: add water slowly, while it boils.", BOIL_UNIT_TEMPERATURE, NULL};
static const kind TOO_COOL = {"bath-too-cool", "the bath boils below its band",
                              "It is too weak: let water boil off, or add salts in small portions.", BOIL_UNIT_TEMPERATURE,
                              NULL};
static const kind HEATER_BARE = {"heater-uncovered", "the level falls below the top of the heater",
                                 "Keep the heater covered: a bare one burns out and can ignite what touches it.",
                                 BOIL_UNIT_LENGTH, NULL};
static const kind PARTS_BARE = {"parts-uncovered", "the level falls below the top of the parts",
                                "Make up the level before the next load.", BOIL_UNIT_LENGTH, NULL};
static const kind SUPERHEAT = {"superheat-stored", "the floor of a deep bath boils much hotter than its surface",
                               "A deep bath stores heat that a stir or a load sets free at once; a shallow one does not.",
                               BOIL_UNIT_DIFFERENCE, NULL};
static const kind TALL = {"tank-tall", "the bath is deep for its area",
                          "Steam per area makes tall narrow tanks boil over: give it more area or less heat.", BOIL_UNIT_RATIO,
                          NULL};

static const kind SALT_QUIET = {"salt-on-quiet-bath", "dry salt on a bath that neither boils nor is mixed",
                                "Stop. It sinks, heats and lies hot on the floor; add salt slowly, into a boiling or mixed "
                                "bath only.",
                                BOIL_UNIT_MASS, NULL};
static const kind SALT_SLUG = {"salt-slug", "slug of dry salt boils up",
                               "Sift it in many times more slowly, in small portions, and let each dissolve.", BOIL_UNIT_LENGTH,
                               NULL};
static const kind SALT_BED = {"salt-bed", "bed of undissolved salt on the floor",
                              "Add no more; turn the heat down and the mixer on until it is gone: a heated floor under salt "
                              "overheats and can throw the bath out when the bed breaks.",
                              BOIL_UNIT_LENGTH, NULL};
static const kind SALT_MUCH = {"salt-too-much", "too much salt for the tank",
                               "The water that brings the boiling point back would not fit: bail out liquid into a dry "
                               "steel vessel before adding it.",
                               BOIL_UNIT_LENGTH, "water to bring the boiling point back:"};
static const kind LIQUID_STOPS = {"liquid-stops-boil", "liquid stops the boil for longer than the limit",
                                  "Add it in smaller portions, each after the boil is back.", BOIL_UNIT_TIME,
                                  "the largest addition that would not:"};
static const kind VALVE_HUNTS = {"control-hunts", "the automatic water hunts",
                                 "Use a smaller valve, a wider differential or a quicker thermometer.", BOIL_UNIT_RATIO, NULL};
static const kind VALVE_SHORT = {"control-cannot-keep-up", "the automatic water cannot keep up",
                                 "Use a larger valve or less heat.", BOIL_UNIT_TEMPERATURE, NULL};
static const kind VALVE_QUIET = {"control-on-quiet-bath", "the valve adds water while the bath does not boil",
                                 "Fit and test the interlock: no boil, no water.", BOIL_UNIT_MASS, NULL};
static const kind CRYSTALS = {"crystals", "salts crystallise as the bath cools",
                              "Let it cool undisturbed under its lid; expect a crust on floor and surface, and measure "
                              "nothing until it has dissolved again.",
                              BOIL_UNIT_TEMPERATURE, "nitrate and nitrite that fall out:"};
static const kind RESTART = {"restart-over-crystals", "heat under crystals",
                             "Heat gently, from the side or the top first, and keep a way open for steam: liquid trapped "
                             "under a crust overheats and can throw it out without warning.",
                             BOIL_UNIT_MASS, NULL};

/* clang-format off */
static const kind *const kinds[] = {
    &NEVER_BOILS, &NEVER_RETURNS, &BOIL_LOST, &LOAD_HEAVY, &LOAD_QUIET, &LOAD_COLD, &TUBES, &WATER_QUIET,
    &LAYER, &SURFACE_BOILS, &SURGE, &OVERFLOW_SWELLED, &OVERFLOW_STILL, &FREEBOARD, &TOO_HOT, &TOO_COOL,
    &HEATER_BARE, &PARTS_BARE, &SUPERHEAT, &TALL, &SALT_QUIET, &SALT_SLUG, &SALT_BED, &SALT_MUCH, &LIQUID_STOPS,
    &VALVE_HUNTS, &VALVE_SHORT, &VALVE_QUIET, &CRYSTALS, &RESTART};

const char *boil_finding_listed(size_t index, const char **title)
{
    if (index >= sizeof kinds / sizeof kinds[0])
        return NULL;
    *title = kinds[index]->title;
    return kinds[index]->id;
}
/* clang-format on */

const char *boil_severity_word(boil_severity s)
{
    static const char *const words[] = {"NOTICE", "CAUTION", "WARNING", "DANGER"};
    return words[s];
}

/* The case being judged, and the list being filled. */
typedef struct {
    const boil_plant *plant;
    const boil_schedule *schedule;
    const boil_history *history;
    boil_findings *list;
    int outcome;
} judge;

static void find_needing(judge *j, const kind *k, boil_severity severity, double time, double value, double limit,
                         double needed_W, double needed_kg)
{
    boil_findings *f = j->list;
    boil_finding finding = {k->id,   k->title, k->advice, severity,        time, value, limit,
                            k->unit, needed_W, needed_kg, k->needed_words, 1};
    for (size_t i = 0; i < f->count; i++)
        if (strcmp(f->list[i].id, k->id) == 0) {
            size_t count = f->list[i].count + 1;
            if (severity > f->list[i].severity)
                f->list[i] = finding;
            f->list[i].count = count;
            return;
        }
    boil_finding *list = boil_array_reserve(f->list, &f->capacity, f->count, sizeof *list);
    if (!list) {
        j->outcome = BOIL_NO_MEMORY;
        return;
    }
    f->list = list;
    list[f->count++] = finding;
}

static void find(judge *j, const kind *k, boil_severity severity, double time, double value, double limit)
{
    find_needing(j, k, severity, time, value, limit, (double)NAN, (double)NAN);
}

static double initial_volume(const judge *j)
{
    return boil_tank_area(&j->plant->tank) * j->plant->tank.level_m;
}

static void judge_quiet(judge *j)
{
    const boil_history *h = j->history;
    double limit = j->plant->limits.recovery_s;
    for (size_t i = 0; i < h->quiet_count; i++) {
        const boil_quiet_result *q = &h->quiet[i];
        double lasted = (isnan(q->end_s) ? h->end_s : q->end_s) - q->start_s;
        if (q->cause != BOIL_QUIET_START && q->cause != BOIL_QUIET_HEAT && lasted > limit)
            find(j, &BOIL_LOST, BOIL_CAUTION, q->start_s, lasted, limit);
    }
}

/* The bath never boils, or ends quiet: the smallest heat that changes it comes from running the case itself. */
static void judge_return(judge *j, const boil_run_options *o)
{
    const boil_history *h = j->history;
    if (h->end != BOIL_RUN_DONE || h->quiet_count == 0 || !isnan(h->quiet[h->quiet_count - 1].end_s))
        return;
    const boil_quiet_result *q = &h->quiet[h->quiet_count - 1];
    bool switched_off = q->cause == BOIL_QUIET_HEAT;
    if (switched_off || h->end_s <= 0)
        return; /* somebody turned it down: no fault of the heat */
    double needed = (double)NAN;
    if (o != NULL && boil_heater_size_to_boil(j->plant, j->schedule, o, &needed) != BOIL_OK)
        needed = (double)NAN;
    double heat = boil_heater_output(&j->plant->heater, 1, j->history->summary.boiling_point_end_K);
    if (q->cause == BOIL_QUIET_START)
        find_needing(j, &NEVER_BOILS, BOIL_WARNING, q->start_s, heat, needed, needed, (double)NAN);
    else
        find_needing(j, &NEVER_RETURNS, BOIL_WARNING, q->start_s, h->end_s - q->start_s, j->plant->limits.recovery_s, needed,
                     (double)NAN);
}

static void judge_loads(judge *j)
{
    const boil_schedule *s = j->schedule;
    const boil_history *h = j->history;
    double rule = j->plant->limits.load_per_volume_kg_m3, volume = initial_volume(j);
    size_t number = 0;
    for (size_t i = 0; i < s->count; i++) {
        if (s->actions[i].kind != BOIL_ACTION_LOAD || number >= h->loads_count)
            continue;
        const boil_load *l = &s->actions[i].is.load;
        const boil_load_result *r = &h->loads[number++];
        double heavy = (l->mass_kg + l->basket_kg) / volume;
        /* a load of just the rule's weight is not over it */
        if (heavy > rule * (1 + 1e-6))
            find(j, &LOAD_HEAVY, heavy > 2 * rule ? BOIL_WARNING : BOIL_CAUTION, r->time_s, heavy, rule);
        if (r->was_quiet)
            find(j, &LOAD_QUIET, BOIL_NOTICE, r->time_s, r->time_s, (double)NAN);
        if (l->shape == BOIL_SHAPE_TUBE)
            find(j, &TUBES, BOIL_CAUTION, r->time_s, l->mass_kg, (double)NAN);
        if (!isnan(r->lifted_s) && isnan(r->hot_s))
            find(j, &LOAD_COLD, BOIL_NOTICE, r->lifted_s, r->lifted_s - r->time_s, (double)NAN);
    }
}

static void judge_water(judge *j)
{
    const boil_history *h = j->history;
    for (size_t i = 0; i < h->additions_count; i++) {
        const boil_addition_result *a = &h->additions[i];
        if (a->quiet_poured_kg > 0.01 * a->mass_kg)
            find(j, a->kind == BOIL_ACTION_WATER ? &WATER_QUIET : &SALT_QUIET, BOIL_WARNING, a->time_s, a->quiet_poured_kg, 0);
    }
}

/* The surge of a slug is judged by the run: what it leaves of the freeboard. */
static void judge_salts(judge *j)
{
    const boil_history *h = j->history;
    const boil_summary *s = &h->summary;
    double limit = j->plant->limits.freeboard_m, depth = j->plant->tank.depth_m;
    for (size_t i = 0; i < h->additions_count; i++) {
        const boil_addition_result *a = &h->additions[i];
        bool rises = a->level_rise_m > 0.25 * (depth - s->still_level_start_m);
        if (a->kind == BOIL_ACTION_SALTS && rises && a->freeboard_min_m < limit)
            find(j, &SALT_SLUG, a->freeboard_min_m <= 0 ? BOIL_DANGER : BOIL_WARNING, a->time_s, a->freeboard_min_m, limit);
    }
    if (s->bed_max_m > 2e-3) /* two grains deep is a bed, less are grains: judgement */
        find(j, &SALT_BED, s->bed_superheat_max_K.value > 10 ? BOIL_WARNING : BOIL_CAUTION, (double)NAN, s->bed_max_m, 2e-3);
    if (s->salts_added_kg > 0 && s->restored_level_m > depth - limit)
        find_needing(j, &SALT_MUCH, s->restored_level_m > depth ? BOIL_WARNING : BOIL_CAUTION, h->end_s, s->restored_level_m,
                     depth - limit, (double)NAN, s->restoring_water_kg);
}

static void judge_liquid(judge *j, const boil_run_options *o)
{
    const boil_schedule *s = j->schedule;
    const boil_history *h = j->history;
    double limit = j->plant->limits.recovery_s;
    size_t number = 0;
    for (size_t i = 0; i < s->count && number < h->additions_count; i++) {
        boil_action_kind k = s->actions[i].kind;
        if (k != BOIL_ACTION_WATER && k != BOIL_ACTION_SALTS && k != BOIL_ACTION_LIQUID)
            continue;
        const boil_addition_result *a = &h->additions[number++];
        double lasted = isnan(a->recovery_s) ? h->end_s - a->boil_lost_s : a->recovery_s;
        if (k != BOIL_ACTION_LIQUID || a->was_quiet_before || !(lasted > limit))
            continue;
        double largest = (double)NAN;
        bool known = o == NULL;
        for (size_t n = 0; n < j->list->count; n++)
            known = known || strcmp(j->list->list[n].id, LIQUID_STOPS.id) == 0;
        if (!known && boil_heater_size_largest_liquid(j->plant, s, o, i, limit, &largest) != BOIL_OK)
            largest = (double)NAN;
        find_needing(j, &LIQUID_STOPS, BOIL_CAUTION, a->boil_lost_s, lasted, limit, (double)NAN, largest);
    }
}

/* A valve that opens more often than every five minutes wears and overshoots: judgement. */
static void judge_control(judge *j)
{
    const boil_water_control *c = &j->plant->control;
    const boil_history *h = j->history;
    const boil_summary *s = &h->summary;
    if (c->mode == BOIL_WATER_CONTROL_NONE || !(h->end_s > 0))
        return;
    double per_hour = (double)s->valve_openings / (h->end_s / 3600), busiest = 12;
    if (c->mode == BOIL_WATER_CONTROL_ON_OFF && s->valve_openings > 4 && per_hour > busiest)
        find(j, &VALVE_HUNTS, BOIL_CAUTION, (double)NAN, per_hour, busiest);
    double too_warm = c->set_point_K + fmax(2 * c->differential_K, 2);
    if (s->temperature_max_K.value > too_warm && s->valve_open_share > 0.2 && s->temperature_end_K > too_warm)
        find(j, &VALVE_SHORT, BOIL_CAUTION, s->temperature_max_K.time_s, s->temperature_max_K.value, c->set_point_K);
    if (s->valve_quiet_kg > 0)
        find(j, &VALVE_QUIET, BOIL_WARNING, (double)NAN, s->valve_quiet_kg, 0);
}

/* Steam that would be calm after a quiet spell. */
static double calm_steam(const boil_history *h)
{
    return h->summary.steam_steady_kg_s;
}

/* How grave a layer is depends on what its return does: SURGE_RATIO times the calm steam, half the freeboard, the rim. */
static boil_severity return_severity(const judge *j, const boil_history *h, const boil_quiet_result *q)
{
    double depth = j->plant->tank.depth_m, half = depth - 0.5 * (depth - h->summary.still_level_start_m);
    if (q->level_max_after_m >= depth)
        return BOIL_DANGER;
    bool surges = q->steam_peak_after_kg_s > SURGE_RATIO * calm_steam(h) || q->level_max_after_m > half;
    return surges ? BOIL_WARNING : BOIL_NOTICE;
}

static boil_severity graver_of(boil_severity a, boil_severity b)
{
    return a > b ? a : b;
}

/* Layers of the case, judged by what the same quiet spells of the fast run do when they end. */
static void judge_layers(judge *j, const boil_history *fast)
{
    const boil_history *h = j->history;
    size_t k = 0;
    for (size_t i = 0; i < h->quiet_count; i++) {
        const boil_quiet_result *q = &h->quiet[i];
        double end = isnan(q->end_s) ? h->end_s : q->end_s;
        while (k < fast->quiet_count && fast->quiet[k].end_s < q->start_s - 1)
            k++; /* spells come in order of time; one that never ends compares false and stays */
        if (!(q->layer_max_m >= 1e-3))
            continue;
        boil_severity s = q->layer_max_m >= 3e-3 ? BOIL_CAUTION : BOIL_NOTICE;
        for (size_t n = k; n < fast->quiet_count && fast->quiet[n].start_s <= end + 1; n++)
            s = graver_of(s, return_severity(j, fast, &fast->quiet[n]));
        find(j, &LAYER, s, q->layer_s, q->layer_max_m, 1e-3);
    }
    if (!isnan(h->summary.layer_boil_s))
        find(j, &SURFACE_BOILS, BOIL_WARNING, h->summary.layer_boil_s, h->summary.layer_boil_s, (double)NAN);
}

static void judge_surge(judge *j)
{
    const boil_summary *s = &j->history->summary;
    double calm = calm_steam(j->history), peak = s->steam_peak_kg_s.value;
    if (calm > 0 && peak > SURGE_RATIO * calm && s->surge_peak_kg_s.value > (SURGE_RATIO - 1) * calm)
        find(j, &SURGE, BOIL_WARNING, s->steam_peak_kg_s.time_s, peak / calm, SURGE_RATIO);
}

static void judge_level(judge *j)
{
    const boil_summary *s = &j->history->summary;
    const boil_tank *t = &j->plant->tank;
    double limit = j->plant->limits.freeboard_m, least = s->freeboard_min_m.value;
    if (!isnan(s->overflow_s))
        find(j, &OVERFLOW_SWELLED, BOIL_DANGER, s->overflow_s, s->level_max_m.value, t->depth_m);
    if (!isnan(s->still_overflow_s))
        find(j, &OVERFLOW_STILL, BOIL_DANGER, s->still_overflow_s, t->depth_m, t->depth_m);
    if (least < limit && least > 0)
        find(j, &FREEBOARD, least < limit / 2 ? BOIL_WARNING : BOIL_CAUTION, s->freeboard_min_m.time_s, least, limit);
    if (t->heated == BOIL_HEATED_INSIDE && s->still_level_min_m.value < boil_tank_heater_top(t))
        find(j, &HEATER_BARE, BOIL_WARNING, s->still_level_min_m.time_s, s->still_level_min_m.value, boil_tank_heater_top(t));
    if (s->still_level_min_m.value < boil_tank_parts_top(t))
        find(j, &PARTS_BARE, BOIL_CAUTION, s->still_level_min_m.time_s, s->still_level_min_m.value, boil_tank_parts_top(t));
}

static void judge_band(judge *j)
{
    const boil_summary *s = &j->history->summary;
    const boil_limits *l = &j->plant->limits;
    if (s->temperature_max_K.value > l->boiling_point_high_K)
        find(j, &TOO_HOT, BOIL_CAUTION, s->temperature_max_K.time_s, s->temperature_max_K.value, l->boiling_point_high_K);
    if (s->temperature_min_K.value < l->boiling_point_low_K)
        find(j, &TOO_COOL, BOIL_NOTICE, s->temperature_min_K.time_s, s->temperature_min_K.value, l->boiling_point_low_K);
}

/* Wide and shallow is well, tall and narrow boils over: common practice, no source; the limits are judgement. */
static void judge_tank(judge *j)
{
    const double tall = 1.2, superheat = 5;
    double ratio = j->plant->tank.level_m / sqrt(boil_tank_area(&j->plant->tank));
    if (ratio > tall)
        find(j, &TALL, BOIL_CAUTION, (double)NAN, ratio, tall);
    if (j->history->summary.hydrostatic_superheat_K > superheat)
        find(j, &SUPERHEAT, BOIL_CAUTION, (double)NAN, j->history->summary.hydrostatic_superheat_K, superheat);
}

/* Some kilograms of crystals are a crust; a first haze is not: a thousandth of the bath, judgement. */
static void judge_crystals(judge *j)
{
    const boil_summary *s = &j->history->summary;
    double crust = 1e-3 * s->bath_mass_start_kg;
    if (!isnan(s->crystals_s))
        find_needing(j, &CRYSTALS, BOIL_CAUTION, s->crystals_s, s->crystals_from_K, (double)NAN, (double)NAN,
                     s->crystals_max_kg);
    if (s->heated_crystals_kg.value > crust)
        find(j, &RESTART, j->plant->tank.heated == BOIL_HEATED_FROM_BELOW ? BOIL_WARNING : BOIL_CAUTION,
             s->heated_crystals_kg.time_s, s->heated_crystals_kg.value, crust);
}

static int graver(const void *a, const void *b)
{
    const boil_finding *x = a, *y = b;
    if (x->severity != y->severity)
        return x->severity > y->severity ? -1 : 1;
    double tx = isnan(x->time_s) ? -1 : x->time_s, ty = isnan(y->time_s) ? -1 : y->time_s;
    return tx < ty ? -1 : tx > ty ? 1 : strcmp(x->id, y->id);
}

static void sort(boil_findings *f)
{
    if (f->count > 1)
        qsort(f->list, f->count, sizeof *f->list, graver);
}

/* What only the fast run shows, or shows graver. */
static void keep_what_is_new(boil_findings *fast, const boil_findings *central)
{
    size_t kept = 0;
    for (size_t i = 0; i < fast->count; i++) {
        bool known = false;
        for (size_t k = 0; k < central->count; k++)
            known = known ||
                    (strcmp(fast->list[i].id, central->list[k].id) == 0 && fast->list[i].severity <= central->list[k].severity);
        if (!known)
            fast->list[kept++] = fast->list[i];
    }
    fast->count = kept;
}

int boil_findings_of(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, const boil_history *central,
                     const boil_history *fast, boil_findings *of_central, boil_findings *of_fast)
{
    *of_central = (boil_findings){.list = NULL};
    judge j = {p, s, central, of_central, BOIL_OK};
    judge_return(&j, o);
    judge_quiet(&j);
    judge_loads(&j);
    judge_water(&j);
    judge_layers(&j, fast ? fast : central);
    judge_surge(&j);
    judge_level(&j);
    judge_band(&j);
    judge_tank(&j);
    judge_salts(&j);
    judge_liquid(&j, o);
    judge_control(&j);
    judge_crystals(&j);
    sort(of_central);
    if (of_fast)
        *of_fast = (boil_findings){.list = NULL};
    if (fast && of_fast) {
        judge f = {p, s, fast, of_fast, BOIL_OK};
        judge_water(&f);
        judge_layers(&f, fast);
        judge_surge(&f);
        judge_level(&f);
        judge_salts(&f);
        keep_what_is_new(of_fast, of_central);
        sort(of_fast);
        j.outcome = j.outcome != BOIL_OK ? j.outcome : f.outcome;
    }
    return j.outcome;
}

void boil_findings_free(boil_findings *f)
{
    if (!f)
        return;
    free(f->list);
    *f = (boil_findings){.list = NULL};
}

boil_severity boil_findings_gravest(const boil_findings *f)
{
    return f->count ? f->list[0].severity : BOIL_NOTICE;
}
