#include "simulate/recorder.h"

#include <math.h>

#include "base/constants.h"
#include "properties/hydrostatic.h"
#include "properties/solubility.h"
#include "transfer/overflow.h"

/* simulate/recorder_summary.c -- the summary of a run: its start, the extremes on the way, its end and totals. */

static const double NEVER = (double)NAN;

/* Above it nothing crystallises of a bath that works; of one that has boiled far down it does, and then a crust shows it. */
static bool is_cool(const boil_rates_view *v)
{
    return v->solution.temperature_K <= BOIL_ZERO_CELSIUS + 140;
}

static bool may_crystallise(const boil_rates_view *v)
{
    return is_cool(v) || v->salts.crust_kg > 0;
}

/* While it is hot as much as its crust shows: that is half of it (transfer/dissolution.h). The last of a crust goes ever more slowly;
   what is within the error of the steps is none. */
double boil_recorder_crystals(const boil_rates_view *v)
{
    const double trace = 1e-6; /* of the bath */
    if (!may_crystallise(v))
        return 0;
    double all = boil_solubility_excess(&v->solution.mixture, v->solution.temperature_K) + v->salts.crust_kg;
    double shows = is_cool(v) ? all : fmin(all, 2 * v->salts.crust_kg);
    return shows > trace * v->solution.mass_kg ? shows : 0;
}

static void highest(boil_extreme *e, double value, double t)
{
    if (!(value <= e->value))
        *e = (boil_extreme){value, t};
}

static void lowest(boil_extreme *e, double value, double t)
{
    if (!(value >= e->value))
        *e = (boil_extreme){value, t};
}

/* A stir sets a tenth of the store free: judgement. */
static double stored_rise_m(const boil_bath *b, const boil_rates_view *v)
{
    const double freed = 0.1;
    double steel_J_K = v->solution.heat.capacity_J_K - v->solution.heat.solution.heat_capacity_J_K;
    boil_hydrostatic stored;
    if (boil_hydrostatic_store(&b->air, &v->solution.mixture, v->levels.still_m, steel_J_K, &stored) != BOIL_OK)
        return NEVER;
    double vapour_kg_m3 = boil_bath_steam_density(b, v->solution.boiling_point_K);
    return freed * stored.steam_kg / (b->area_m2 * vapour_kg_m3);
}

void boil_recorder_summary_begin(boil_summary *s, const boil_bath *b, const boil_rates_view *v)
{
    boil_extreme none = {NEVER, NEVER};
    s->level_max_m = s->freeboard_min_m = s->still_level_min_m = s->steam_peak_kg_s = s->layer_max_kg = none;
    s->temperature_max_K = s->temperature_min_K = s->surge_peak_kg_s = s->bed_superheat_max_K = none;
    s->heated_crystals_kg = s->crystals_fire = s->crust_superheat_K = none;
    s->crystals_from_K = s->crystals_s = NEVER;
    s->dry_steam_kg_s = none;
    s->dry_wetted_s = s->high_limit_s = NEVER;
    s->time_to_boil_s = s->overflow_s = s->still_overflow_s = NEVER;
    s->surge_freeboard_m = NEVER;
    s->temperature_start_K = v->solution.temperature_K;
    s->boiling_point_start_K = v->solution.boiling_point_K;
    s->salt_fraction_start = boil_mixture_salt_fraction(&v->solution.mixture);
    s->strength_start_kg_m3 = boil_solution_strength(&b->air, &v->solution.mixture);
    s->bath_mass_start_kg = v->solution.mass_kg;
    s->still_level_start_m = v->levels.still_m;
    s->steam_steady_kg_s = b->boiling ? v->steam.formed_kg_s : NEVER;
    s->stored_rise_m = stored_rise_m(b, v);
}

/* A surge is followed until what it lifted has settled: bubbles rise for seconds, waves run for as long. */
static void watch_surge(boil_recorder *r, double t, const boil_rates_view *v, const boil_recorder_peak *peak)
{
    const double settles_s = 60;
    boil_summary *s = &r->history->summary;
    double excess = peak->steam_kg_s - v->steam.calm_kg_s;
    if (excess > fmin(v->steam.calm_kg_s, s->steam_steady_kg_s))
        r->surged_s = t;
    if (t <= r->surged_s + settles_s)
        s->surge_freeboard_m = fmin(s->surge_freeboard_m, r->plant->tank.depth_m - v->levels.upper_m);
}

static void watch_extremes(boil_recorder *r, double t, const boil_bath *b, const boil_rates_view *v,
                           const boil_recorder_peak *peak)
{
    boil_summary *s = &r->history->summary;
    double depth = r->plant->tank.depth_m;
    if (!(v->levels.upper_m <= s->level_max_m.value))
        s->swell_spread_m = v->levels.upper_m - v->levels.lower_m;
    highest(&s->level_max_m, v->levels.upper_m, t);
    lowest(&s->freeboard_min_m, depth - v->levels.upper_m, t);
    lowest(&s->still_level_min_m, v->levels.still_m, t);
    highest(&s->steam_peak_kg_s, peak->steam_kg_s, t);
    s->steam_more_than = s->steam_more_than || peak->steam_more_than;
    highest(&s->layer_max_kg, v->layer.mass_kg, t);
    highest(&s->surge_peak_kg_s, peak->steam_kg_s - v->steam.calm_kg_s, t);
    watch_surge(r, t, v, peak);
    if (b->boiling) {
        highest(&s->temperature_max_K, peak->hottest_K, t);
        lowest(&s->temperature_min_K, peak->coolest_K, t);
    }
    if (isnan(s->overflow_s) && v->levels.upper_m >= depth)
        s->overflow_s = t;
    if (isnan(s->still_overflow_s) && v->levels.still_m >= depth)
        s->still_overflow_s = t;
    if (isnan(s->steam_steady_kg_s) && b->boiling && t >= r->boil_began_s + 60)
        s->steam_steady_kg_s = v->steam.formed_kg_s;
}

/* Crystals on cooling, and heat under them on the way back. */
static void watch_crystals(boil_recorder *r, double t, const boil_rates_view *v)
{
    boil_summary *s = &r->history->summary;
    if (!may_crystallise(v))
        return;
    double crystals = boil_recorder_crystals(v);
    if (!(crystals > 0 || boil_solubility_above_liquidus(&v->solution.mixture, v->solution.temperature_K) < 0))
        return;
    if (isnan(s->crystals_s)) {
        s->crystals_s = t;
        s->crystals_from_K = boil_solubility_crystals_from(&v->solution.mixture);
    }
    s->crystals_max_kg = fmax(s->crystals_max_kg, crystals);
    if (boil_recorder_is_heated(r, v))
        highest(&s->heated_crystals_kg, crystals, t);
    if (crystals > 0)
        highest(&s->crystals_fire, boil_recorder_fire(r, v, v->heater.heat_W), t);
}

static void watch_solids(boil_recorder *r, double t, const boil_rates_view *v)
{
    boil_summary *s = &r->history->summary;
    s->undissolved_max_kg = fmax(s->undissolved_max_kg, v->salts.undissolved_kg);
    s->bed_max_m = fmax(s->bed_max_m, v->salts.bed_m);
    if (v->salts.bed_superheat_K > 0)
        highest(&s->bed_superheat_max_K, v->salts.bed_superheat_K, t);
    s->crust_max_kg = fmax(s->crust_max_kg, v->salts.crust_kg);
    double superheat_K = v->solution.temperature_K - v->solution.boiling_point_K;
    if (v->salts.crust_kg > 0 && superheat_K > 0)
        highest(&s->crust_superheat_K, superheat_K, t);
}

/* Steam that lifts the bath to the rim: for good, or filling the freeboard while water soaks in. */
static double lifting_steam(const boil_recorder *r, const boil_bath *b, const boil_rates_view *v)
{
    const boil_overflow_pool pool = {b->area_m2, r->plant->tank.depth_m, v->levels.still_m, v->pool.vapour_kg_m3};
    return fmin(boil_overflow_critical_steam_rate(&pool, &r->plant->pool, v->pool.drift_velocity_m_s),
                boil_overflow_potential_to_rim(&pool) / BOIL_RATES_SOAKS_S);
}

/* What pours onto dry salt counts from the moment it begins to: the run may end at the next. */
static void watch_dry_salt(boil_recorder *r, double t, const boil_bath *b, const boil_rates_view *v)
{
    boil_summary *s = &r->history->summary;
    double wets = fmax(v->layer.soaking_kg_s, v->salts.dry * v->inflow.water_kg_s);
    if (!(wets > 0))
        return;
    if (isnan(s->dry_wetted_s))
        s->dry_wetted_s = t;
    if (wets * v->layer.wetted.steam <= s->dry_steam_kg_s.value)
        return;
    s->dry_steam_kg_s = (boil_extreme){wets * v->layer.wetted.steam, t};
    s->dry_steam_lifts_kg_s = lifting_steam(r, b, v);
}

void boil_recorder_watch_summary(boil_recorder *r, double t, const boil_bath *b, const boil_rates_view *v,
                                 const boil_recorder_peak *peak)
{
    watch_extremes(r, t, b, v, peak);
    watch_solids(r, t, v);
    watch_crystals(r, t, v);
    watch_dry_salt(r, t, b, v);
}

/* The water that brings the boiling point back to where it began, and the level then. Plain water has no such answer. */
static void restore(boil_summary *s, const boil_bath *b, const double y[], const boil_rates_view *v)
{
    boil_mixture m = v->solution.mixture;
    double salts = 0, blend[BOIL_SALTS], fraction;
    for (int i = 0; i < BOIL_SALTS; i++)
        salts += m.salt[i] += y[BOIL_STATE_SOLID_NAOH + i];
    s->restoring_water_kg = s->restored_level_m = NEVER;
    if (!(salts > 0))
        return;
    for (int i = 0; i < BOIL_SALTS; i++)
        blend[i] = m.salt[i] / salts;
    if (boil_solution_fraction_boiling_at(&b->air, blend, s->boiling_point_start_K, &fraction) != BOIL_OK)
        return;
    s->restoring_water_kg = salts * (1 - fraction) / fraction - m.water - y[BOIL_STATE_LAYER_MASS];
    m.water = salts * (1 - fraction) / fraction;
    s->restored_level_m = boil_mixture_mass(&m) / boil_solution_density(&m, s->boiling_point_start_K) / b->area_m2;
}

/* Of the liquid, what had not been kept before: all but what has been run back until now. */
static double mixed(const boil_history *h, double liquid_kg, double end_s)
{
    double back_kg = 0;
    for (size_t i = 0; i < h->additions_count; i++) {
        const boil_addition_result *a = &h->additions[i];
        back_kg += a->run_back ? a->mass_kg * fmin(1, (end_s - a->time_s) / a->over_s) : 0;
    }
    return fmax(0, liquid_kg - back_kg);
}

static void totals(const boil_recorder *r, const double y[], boil_summary *s)
{
    const boil_history *h = r->history;
    s->steam_total_kg = y[BOIL_STATE_TOTAL_STEAM];
    s->evaporated_total_kg = y[BOIL_STATE_TOTAL_EVAPORATED];
    s->layer_boiled_total_kg = y[BOIL_STATE_TOTAL_LAYER_BOILED];
    s->vented_total_kg = y[BOIL_STATE_TOTAL_STEAM] + y[BOIL_STATE_TOTAL_EVAPORATED] + y[BOIL_STATE_TOTAL_LAYER_BOILED];
    s->heater_total_J = y[BOIL_STATE_HEAT_FROM_HEATER];
    s->input_total_J = y[BOIL_STATE_HEAT_FROM_HEATER] / r->plant->heater.efficiency;
    s->water_controlled_kg = y[BOIL_STATE_TOTAL_VALVE];
    s->condensate_kg = y[BOIL_STATE_TOTAL_CONDENSATE];
    s->released_kg = y[BOIL_STATE_TOTAL_RELEASED];
    s->salts_added_kg = y[BOIL_STATE_TOTAL_SALTS_IN];
    s->liquid_added_kg = y[BOIL_STATE_TOTAL_LIQUID_IN];
    for (int i = 0; i < BOIL_SALTS; i++)
        s->taken_salts_kg += y[BOIL_STATE_TOTAL_TAKEN_NAOH + i];
    s->taken_kg = y[BOIL_STATE_TOTAL_TAKEN_WATER] + s->taken_salts_kg;
    s->waste_kg = fmax(0, s->taken_kg - s->returned_kg);
    s->waste_salts_kg = fmax(0, s->taken_salts_kg - s->returned_salts_kg);
    s->mixed_kg = mixed(h, s->liquid_added_kg, r->last_s);
    s->drag_out_kg = y[BOIL_STATE_TOTAL_DRAG];
    s->drag_out_salts_kg = y[BOIL_STATE_TOTAL_DRAG_SALTS];
    for (size_t i = 0; i < h->loads_count; i++)
        s->steel_kg += h->loads[i].mass_kg;
}

void boil_recorder_summary_end(boil_recorder *r, const boil_bath *b, const double y[], const boil_rates_view *v)
{
    boil_summary *s = &r->history->summary;
    s->temperature_end_K = v->solution.temperature_K;
    s->boiling_point_end_K = v->solution.boiling_point_K;
    s->salt_fraction_end = boil_mixture_salt_fraction(&v->solution.mixture);
    s->strength_end_kg_m3 = boil_solution_strength(&b->air, &v->solution.mixture);
    s->bath_mass_end_kg = v->solution.mass_kg;
    s->still_level_end_m = v->levels.still_m;
    restore(s, b, y, v);
    totals(r, y, s);
}
