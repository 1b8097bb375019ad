#include "simulate/recorder.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/array.h"
#include "base/constants.h"
#include "properties/solubility.h"

static const double NEVER = (double)NAN;

/* An addition counts to ten minutes after its end, and so does a quiet spell. */
#define TAIL_S 600

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

/* Boiling point at the floor less at the surface: the hydrostatic head raises the pressure there. */
static double hydrostatic_superheat(const boil_bath *b, const boil_rates_view *v)
{
    double head = v->solution.density_kg_m3 * BOIL_GRAVITY * v->solution.volume_m3 / b->area_m2, T;
    boil_conditions floor = boil_conditions_at(b->air.pressure_Pa + head, b->air.elevation_factor);
    boil_solution_guess guess = {0, 0};
    if (boil_solution_boiling_point_near(&floor, &v->solution.mixture, &guess, &T, NULL) != BOIL_OK)
        return NEVER;
    return T - v->solution.boiling_point_K;
}

boil_outcome boil_recorder_begin(boil_recorder *r, boil_history *history, const boil_plant *p, double row_interval_s,
                                 const boil_bath *b, const double y[], const boil_rates_view *v)
{
    *history = (boil_history){.end = BOIL_RUN_DONE};
    *r = (boil_recorder){.history = history,
                         .plant = p,
                         .row_interval_s = row_interval_s,
                         .boil_began_s = b->boiling ? 0 : NEVER,
                         .quiet_start = !b->boiling};
    boil_summary *s = &history->summary;
    boil_extreme none = {NEVER, NEVER};
    s->level_max_m = s->freeboard_min_m = s->still_level_min_m = s->steam_peak_kg_s = s->layer_max_kg = none;
    s->temperature_max_K = s->temperature_min_K = s->surge_peak_kg_s = s->bed_superheat_max_K = none;
    s->heated_crystals_kg = none;
    s->crystals_from_K = s->crystals_s = NEVER;
    s->time_to_boil_s = s->overflow_s = s->still_overflow_s = s->layer_boil_s = NEVER;
    s->temperature_start_K = v->solution.temperature_K;
    s->boiling_point_start_K = v->solution.boiling_point_K;
    s->salt_fraction_start = boil_mixture_salt_fraction(&v->solution.mixture);
    s->strength_start_kg_m3 = boil_solution_strength(&b->air, &v->solution.mixture);
    s->bath_mass_start_kg = v->solution.mass_kg;
    s->still_level_start_m = v->levels.still_m;
    s->steam_steady_kg_s = b->boiling ? v->steam.formed_kg_s : NEVER;
    s->hydrostatic_superheat_K = hydrostatic_superheat(b, v);
    return b->boiling ? BOIL_OK : boil_recorder_mode(r, 0, b, y, v);
}

void boil_recorder_free(boil_recorder *r)
{
    free(r->unknowns);
    r->unknowns = NULL;
    r->unknowns_capacity = 0;
}

boil_outcome boil_recorder_load(boil_recorder *r, double t, const boil_load *load, const boil_bath *b, const boil_rates_view *v,
                                size_t *number)
{
    boil_history *h = r->history;
    boil_load_result *list = boil_array_reserve(h->loads, &r->loads_capacity, h->loads_count, sizeof *list);
    if (!list)
        return BOIL_NO_MEMORY;
    h->loads = list;
    *number = h->loads_count++;
    list[*number] = (boil_load_result){.time_s = t,
                                       .mass_kg = load->mass_kg,
                                       .was_quiet = !b->boiling,
                                       .boil_lost_s = b->boiling ? NEVER : t,
                                       .lowest_temperature_K = v->solution.temperature_K,
                                       .recovery_s = b->boiling ? 0 : NEVER,
                                       .hot_s = NEVER,
                                       .lifted_s = NEVER,
                                       .level_max_m = v->levels.upper_m};
    h->summary.rinse_added_kg += boil_load_rinse(load);
    return BOIL_OK;
}

void boil_recorder_lift(boil_recorder *r, double t, size_t number, double drag_out_kg)
{
    r->history->loads[number].lifted_s = t;
    r->history->loads[number].drag_out_kg = drag_out_kg;
}

boil_outcome boil_recorder_addition(boil_recorder *r, double t, boil_action_kind kind, double mass_kg, double over_s,
                                    const boil_bath *b, const boil_rates_view *v)
{
    boil_history *h = r->history;
    boil_addition_result *list = boil_array_reserve(h->additions, &r->additions_capacity, h->additions_count, sizeof *list);
    if (!list)
        return BOIL_NO_MEMORY;
    h->additions = list;
    list[h->additions_count++] = (boil_addition_result){.kind = kind,
                                                        .time_s = t,
                                                        .over_s = over_s,
                                                        .mass_kg = mass_kg,
                                                        .was_quiet_before = !b->boiling,
                                                        .was_quiet = !b->boiling,
                                                        .steam_before_kg_s = v->steam.formed_kg_s,
                                                        .boil_lost_s = b->boiling ? NEVER : t,
                                                        .recovery_s = b->boiling ? 0 : NEVER,
                                                        .freeboard_min_m = (double)INFINITY,
                                                        .level_rise_m = v->levels.upper_m};
    return BOIL_OK;
}

static boil_quiet_cause cause_of(const boil_recorder *r, double t, const boil_rates_view *v)
{
    if (t <= 0)
        return BOIL_QUIET_START;
    const boil_heater *h = &r->plant->heater;
    double dimmed = boil_heater_output(h, h->dial, v->solution.temperature_K) - v->heater.target_W;
    const struct {
        boil_quiet_cause cause;
        double takes_W;
    } takers[] = {{BOIL_QUIET_LOAD, v->loads.heat_W},
                  {BOIL_QUIET_WATER, v->heat.water_cooling_W},
                  {BOIL_QUIET_LIQUID, v->heat.liquid_cooling_W},
                  {BOIL_QUIET_SALTS, v->heat.salts_cooling_W},
                  {BOIL_QUIET_HEAT, dimmed}};
    size_t most = 0;
    for (size_t i = 1; i < sizeof takers / sizeof takers[0]; i++)
        if (takers[i].takes_W > takers[most].takes_W)
            most = i;
    return takers[most].takes_W > 0 ? takers[most].cause : BOIL_QUIET_LOSSES;
}

static boil_quiet_cause cause_by(boil_action_kind addition)
{
    return addition == BOIL_ACTION_WATER    ? BOIL_QUIET_WATER
           : addition == BOIL_ACTION_LIQUID ? BOIL_QUIET_LIQUID
                                            : BOIL_QUIET_SALTS;
}

static boil_outcome begin_quiet(boil_recorder *r, double t, const boil_rates_view *v)
{
    boil_history *h = r->history;
    boil_quiet_result *list = boil_array_reserve(h->quiet, &r->quiet_capacity, h->quiet_count, sizeof *list);
    if (!list)
        return BOIL_NO_MEMORY;
    h->quiet = list;
    list[h->quiet_count++] = (boil_quiet_result){.start_s = t,
                                                 .end_s = NEVER,
                                                 .layer_s = NEVER,
                                                 .lowest_temperature_K = v->solution.temperature_K,
                                                 .cause = cause_of(r, t, v)};
    r->boil_began_s = NEVER;
    for (size_t i = r->first_load; i < h->loads_count; i++)
        if (isnan(h->loads[i].lifted_s) && isnan(h->loads[i].boil_lost_s)) {
            h->loads[i].boil_lost_s = t;
            h->loads[i].recovery_s = NEVER;
        }
    for (size_t i = r->first_addition; i < h->additions_count; i++) {
        boil_addition_result *a = &h->additions[i];
        double end = a->time_s + a->over_s;
        bool its_own = t <= end || (t <= end + TAIL_S && list[h->quiet_count - 1].cause == cause_by(a->kind));
        if (its_own && isnan(a->boil_lost_s)) {
            a->boil_lost_s = t;
            a->recovery_s = NEVER;
        }
    }
    return BOIL_OK;
}

static void end_quiet(boil_recorder *r, double t, const boil_bath *b, const double y[], const boil_rates_view *v)
{
    boil_history *h = r->history;
    r->boil_began_s = t;
    if (r->quiet_start && isnan(h->summary.time_to_boil_s))
        h->summary.time_to_boil_s = t;
    if (h->quiet_count) {
        h->quiet[h->quiet_count - 1].end_s = t;
        h->quiet[h->quiet_count - 1].layer_at_return_kg = v->layer.mass_kg;
    }
    if (v->layer.mass_kg > 0) {
        double flash = boil_bath_flash(b, y, y[BOIL_STATE_LAYER_MASS], y[BOIL_STATE_LAYER_HEAT]);
        if (flash > h->summary.flash_bound_kg)
            h->summary.flash_bound_kg = flash;
    }
    for (size_t i = r->first_load; i < h->loads_count; i++)
        if (isnan(h->loads[i].recovery_s) && !isnan(h->loads[i].boil_lost_s))
            h->loads[i].recovery_s = t - h->loads[i].boil_lost_s;
    for (size_t i = r->first_addition; i < h->additions_count; i++)
        if (isnan(h->additions[i].recovery_s) && !isnan(h->additions[i].boil_lost_s))
            h->additions[i].recovery_s = t - h->additions[i].boil_lost_s;
}

boil_outcome boil_recorder_mode(boil_recorder *r, double t, const boil_bath *b, const double y[], const boil_rates_view *v)
{
    r->history->mode_changes += t > 0;
    if (!b->boiling)
        return begin_quiet(r, t, v);
    end_quiet(r, t, b, y, v);
    return BOIL_OK;
}

void boil_recorder_restart(boil_recorder *r)
{
    r->temperature.count = r->level.count = r->steam.count = 0;
}

/* Add a value; gives the extreme just passed, if one lies at the middle of the last three, else the value itself. */
static double turning(boil_recorder_turn *w, double t, double x)
{
    if (w->count == 3) {
        w->time_s[0] = w->time_s[1];
        w->value[0] = w->value[1];
        w->time_s[1] = w->time_s[2];
        w->value[1] = w->value[2];
        w->count = 2;
    }
    w->time_s[w->count] = t;
    w->value[w->count++] = x;
    if (w->count < 3)
        return x;
    double a = w->time_s[0] - w->time_s[1], b = t - w->time_s[1];
    double left = (w->value[0] - w->value[1]) / a, right = (x - w->value[1]) / b;
    if (!(left * right < 0) || !(a < 0 && b > 0))
        return x;
    double curvature = (right - left) / (b - a), slope = left - curvature * a;
    return w->value[1] - slope * slope / (4 * curvature);
}

/* Extremes of a moment, those between its step's ends included. */
typedef struct {
    double coolest_K, hottest_K, level_m, steam_kg_s;
} boil_peak;

static boil_peak peaks_of(boil_recorder *r, double t, const boil_rates_view *v)
{
    double T = turning(&r->temperature, t, v->solution.temperature_K);
    return (boil_peak){fmin(T, v->solution.temperature_K), fmax(T, v->solution.temperature_K),
                       fmax(v->levels.upper_m, turning(&r->level, t, v->levels.upper_m)),
                       fmax(v->steam.formed_kg_s, turning(&r->steam, t, v->steam.formed_kg_s))};
}

static void watch_loads(boil_recorder *r, double t, const boil_bath *b, const double y[], const boil_rates_view *v,
                        const boil_peak *peak)
{
    boil_history *h = r->history;
    for (size_t i = 0; i < b->bodies_count; i++) {
        const boil_bath_body *o = &b->bodies[i];
        boil_load_result *l = &h->loads[o->load];
        bool basket = i > 0 && b->bodies[i - 1].load == o->load;
        if (basket)
            continue;
        if (isnan(l->lifted_s) || isnan(l->recovery_s))
            l->lowest_temperature_K = fmin(l->lowest_temperature_K, peak->coolest_K);
        double start = o->entry_K, mean = y[BOIL_STATE_FIXED + o->at];
        if (isnan(l->hot_s) && isnan(l->lifted_s) && mean - start >= 0.95 * (v->solution.temperature_K - start))
            l->hot_s = t - l->time_s;
    }
}

/* The level until another goes in belongs to the last load, and to those that went in with it. */
static void watch_level(boil_history *h, const boil_peak *peak)
{
    for (size_t i = h->loads_count; i > 0 && h->loads[i - 1].time_s == h->loads[h->loads_count - 1].time_s; i--)
        h->loads[i - 1].level_max_m = fmax(h->loads[i - 1].level_max_m, peak->level_m);
}

static void watch_additions(boil_recorder *r, double t, const boil_bath *b, const boil_rates_view *v, const boil_peak *peak)
{
    boil_history *h = r->history;
    for (size_t i = r->first_addition; i < h->additions_count; i++) {
        boil_addition_result *a = &h->additions[i];
        if (t < a->time_s || t > a->time_s + a->over_s + TAIL_S)
            continue;
        a->steam_peak_kg_s = fmax(a->steam_peak_kg_s, peak->steam_kg_s);
        a->layer_peak_kg = fmax(a->layer_peak_kg, v->layer.mass_kg);
        a->freeboard_min_m = fmin(a->freeboard_min_m, r->plant->tank.depth_m - peak->level_m);
        bool mixed = a->kind == BOIL_ACTION_LIQUID || (a->kind == BOIL_ACTION_SALTS && b->mixer_on);
        if (t > a->time_s && t <= a->time_s + a->over_s && !b->boiling && !mixed) {
            a->was_quiet = true;
            a->quiet_poured_kg += a->mass_kg / a->over_s * (t - fmax(r->last_s, a->time_s));
        }
    }
}

static void watch_quiet(boil_recorder *r, double t, const boil_bath *b, const boil_rates_view *v, const boil_peak *peak)
{
    boil_history *h = r->history;
    if (h->quiet_count == 0)
        return;
    boil_quiet_result *q = &h->quiet[h->quiet_count - 1];
    if (!b->boiling) {
        q->lowest_temperature_K = fmin(q->lowest_temperature_K, peak->coolest_K);
        if (isnan(q->layer_s) && v->layer.thickness_m >= 1e-3)
            q->layer_s = t;
        q->layer_max_m = fmax(q->layer_max_m, v->layer.thickness_m);
    } else if (t <= q->end_s + TAIL_S) {
        q->steam_peak_after_kg_s = fmax(q->steam_peak_after_kg_s, peak->steam_kg_s);
        q->level_max_after_m = fmax(q->level_max_after_m, peak->level_m);
    }
}

static void watch_extremes(boil_recorder *r, double t, const boil_bath *b, const boil_rates_view *v, const boil_peak *peak)
{
    boil_summary *s = &r->history->summary;
    double depth = r->plant->tank.depth_m;
    if (!(peak->level_m <= s->level_max_m.value))
        s->swell_spread_m = v->levels.upper_m - v->levels.lower_m;
    highest(&s->level_max_m, peak->level_m, t);
    lowest(&s->freeboard_min_m, depth - peak->level_m, t);
    lowest(&s->still_level_min_m, v->levels.still_m, t);
    highest(&s->steam_peak_kg_s, peak->steam_kg_s, t);
    highest(&s->layer_max_kg, v->layer.mass_kg, t);
    highest(&s->surge_peak_kg_s, peak->steam_kg_s - v->steam.calm_kg_s, t);
    if (b->boiling) {
        highest(&s->temperature_max_K, peak->hottest_K, t);
        lowest(&s->temperature_min_K, peak->coolest_K, t);
    }
    if (isnan(s->overflow_s) && peak->level_m >= depth)
        s->overflow_s = t;
    if (isnan(s->still_overflow_s) && v->levels.still_m >= depth)
        s->still_overflow_s = t;
    /* a film of rinse water thinner than half a millimetre may simmer for seconds: nobody would see it */
    if (isnan(s->layer_boil_s) && b->layer == BOIL_WATER_LAYER_BOILS && !b->boiling && v->layer.thickness_m > 0.5e-3)
        s->layer_boil_s = t;
    if (isnan(s->steam_steady_kg_s) && b->boiling && t >= r->boil_began_s + 60)
        s->steam_steady_kg_s = v->steam.formed_kg_s;
}

static boil_outcome valve_moves(boil_recorder *r, double t)
{
    boil_history *h = r->history;
    double *list = boil_array_reserve(h->valve_s, &r->valve_capacity, h->valve_count, sizeof *list);
    if (!list)
        return BOIL_NO_MEMORY;
    h->valve_s = list;
    list[h->valve_count++] = t;
    return BOIL_OK;
}

static boil_outcome watch_control(boil_recorder *r, double t, const boil_bath *b, const boil_rates_view *v)
{
    boil_summary *s = &r->history->summary;
    if (r->valve_was_open) {
        r->valve_open_s += t - r->last_s;
        if (!b->boiling)
            s->valve_quiet_kg += r->plant->control.rate_kg_s * (t - r->last_s);
    }
    boil_outcome outcome = v->control.valve_open != r->valve_was_open ? valve_moves(r, t) : BOIL_OK;
    s->valve_openings += v->control.valve_open && !r->valve_was_open;
    r->valve_was_open = v->control.valve_open;
    return outcome;
}

/* Crystals on cooling, and heat under them on the way back. */
static void watch_crystals(boil_recorder *r, double t, const boil_rates_view *v)
{
    boil_summary *s = &r->history->summary;
    if (v->solution.temperature_K > BOIL_ZERO_CELSIUS + 140)
        return;
    double crystals = boil_solubility_excess(&v->solution.mixture, v->solution.temperature_K);
    if (!(crystals > 0 || boil_solubility_above_liquidus(&v->solution.mixture, v->solution.temperature_K) < 0))
        return;
    if (isnan(s->crystals_s)) {
        s->crystals_s = t;
        s->crystals_from_K = boil_solubility_crystals_from(&v->solution.mixture);
    }
    s->crystals_max_kg = fmax(s->crystals_max_kg, crystals);
    if (v->heater.heat_W > 0.02 * boil_heater_output(&r->plant->heater, 1, v->solution.temperature_K))
        highest(&s->heated_crystals_kg, crystals, t);
}

static void watch_solids(boil_recorder *r, double t, const boil_rates_view *v)
{
    boil_summary *s = &r->history->summary;
    s->undissolved_max_kg = fmax(s->undissolved_max_kg, v->salts.undissolved_kg);
    s->bed_max_m = fmax(s->bed_max_m, v->salts.bed_m);
    if (v->salts.bed_superheat_K > 0)
        highest(&s->bed_superheat_max_K, v->salts.bed_superheat_K, t);
}

/* Move past loads that are out and whose boil is back, and additions whose time is over. */
static void settle(boil_recorder *r, double t)
{
    const boil_history *h = r->history;
    for (; r->first_load < h->loads_count; r->first_load++) {
        const boil_load_result *l = &h->loads[r->first_load];
        if (isnan(l->lifted_s) || isnan(l->recovery_s))
            break;
    }
    for (; r->first_addition < h->additions_count; r->first_addition++) {
        const boil_addition_result *a = &h->additions[r->first_addition];
        if (t <= a->time_s + a->over_s + TAIL_S || isnan(a->recovery_s))
            break;
    }
}

boil_outcome boil_recorder_moment(boil_recorder *r, double t, const boil_bath *b, const double y[], const boil_rates_view *v)
{
    boil_peak peak = peaks_of(r, t, v);
    watch_loads(r, t, b, y, v, &peak);
    watch_level(r->history, &peak);
    watch_additions(r, t, b, v, &peak);
    watch_quiet(r, t, b, v, &peak);
    watch_extremes(r, t, b, v, &peak);
    watch_solids(r, t, v);
    watch_crystals(r, t, v);
    boil_outcome outcome = watch_control(r, t, b, v);
    settle(r, t);
    if (b->boiling)
        r->boiling_s += t - r->last_s;
    r->last_s = t;
    return outcome;
}

static double coldest_load(const boil_bath *b, const double y[])
{
    double coldest = NEVER;
    for (size_t i = 0; i < b->bodies_count; i++)
        if (!(y[BOIL_STATE_FIXED + b->bodies[i].at] >= coldest))
            coldest = y[BOIL_STATE_FIXED + b->bodies[i].at];
    return coldest;
}

static boil_row row_of(const boil_recorder *r, double t, const boil_bath *b, const double y[], const boil_rates_view *v)
{
    double evaporated = v->surface.bath.evaporation_kg_s + v->layer_vapour.evaporated_kg_s;
    return (boil_row){.time_s = t,
                      .boiling = b->boiling,
                      .temperature_K = v->solution.temperature_K,
                      .boiling_point_K = v->solution.boiling_point_K,
                      .salt_fraction = boil_mixture_salt_fraction(&v->solution.mixture),
                      .water_kg = y[BOIL_STATE_BATH_WATER],
                      .naoh_kg = y[BOIL_STATE_BATH_NAOH],
                      .nano3_kg = y[BOIL_STATE_BATH_NANO3],
                      .nano2_kg = y[BOIL_STATE_BATH_NANO2],
                      .steam_kg_s = v->steam.formed_kg_s,
                      .vented_kg_s = v->steam.formed_kg_s + evaporated + v->layer_vapour.boiled_kg_s,
                      .evaporated_kg_s = evaporated,
                      .heater_W = v->heater.heat_W,
                      .wall_W = v->surface.wall_W,
                      .surface_W = v->surface.air_W,
                      .loads_W = v->loads.heat_W,
                      .layer_kg = v->layer.mass_kg,
                      .layer_m = v->layer.thickness_m,
                      .layer_K = v->layer.mass_kg > 0 ? v->layer.temperature_K : NEVER,
                      .layer_boiling = b->layer == BOIL_WATER_LAYER_BOILS,
                      .undissolved_kg = v->salts.undissolved_kg,
                      .valve_open = v->control.valve_open,
                      .sensor_K = v->control.sensor_K,
                      .still_level_m = v->levels.still_m,
                      .level_m = v->levels.upper_m,
                      .level_lower_m = v->levels.lower_m,
                      .freeboard_m = r->plant->tank.depth_m - v->levels.upper_m,
                      .void_fraction = v->pool.void_upper,
                      .coldest_load_K = coldest_load(b, y)};
}

static boil_outcome add_row(boil_recorder *r, const boil_bath *b, boil_rates_guess *g, double t, const double y[])
{
    boil_history *h = r->history;
    boil_rates_view v;
    boil_row *rows = boil_array_reserve(h->rows, &r->rows_capacity, h->rows_count, sizeof *rows);
    if (!rows)
        return BOIL_NO_MEMORY;
    h->rows = rows;
    if (boil_rates_at(b, t, y, g, &v, NULL) == BOIL_OK)
        rows[h->rows_count++] = row_of(r, t, b, y, &v);
    return BOIL_OK;
}

/* Cubic through values and slopes at both ends of a step. */
static void between(size_t n, double s, double step, const double y0[], const double d0[], const double y1[], const double d1[],
                    double y[])
{
    double h00 = (1 + 2 * s) * (1 - s) * (1 - s), h01 = s * s * (3 - 2 * s);
    double h10 = s * (1 - s) * (1 - s) * step, h11 = -s * s * (1 - s) * step;
    for (size_t i = 0; i < n; i++)
        y[i] = h00 * y0[i] + h10 * d0[i] + h01 * y1[i] + h11 * d1[i];
}

boil_outcome boil_recorder_rows(boil_recorder *r, const boil_bath *b, const boil_rates_guess *near, double t0,
                                const double y0[], const double rates0[], double t1, const double y1[], const double rates1[])
{
    if (!(r->row_interval_s > 0))
        return BOIL_OK;
    size_t n = boil_bath_unknowns(b);
    while (r->unknowns_capacity < n) {
        double *moved = boil_array_reserve(r->unknowns, &r->unknowns_capacity, r->unknowns_capacity, sizeof *moved);
        if (!moved)
            return BOIL_NO_MEMORY;
        r->unknowns = moved;
    }
    boil_rates_guess guess = *near;
    for (; r->next_row_s <= t1; r->next_row_s = (double)r->history->rows_count * r->row_interval_s) {
        double s = t1 > t0 ? fmax(0, (r->next_row_s - t0) / (t1 - t0)) : 1;
        between(n, s, t1 - t0, y0, rates0, y1, rates1, r->unknowns);
        size_t before = r->history->rows_count;
        boil_outcome outcome = add_row(r, b, &guess, r->next_row_s, r->unknowns);
        if (outcome != BOIL_OK)
            return outcome;
        if (r->history->rows_count == before)
            break; /* the state between is beyond the properties: the run is about to stop there */
    }
    return BOIL_OK;
}

static void close_additions(boil_history *h, double depth_m)
{
    for (size_t i = 0; i < h->additions_count; i++) {
        boil_addition_result *a = &h->additions[i];
        a->level_rise_m = isfinite(a->freeboard_min_m) ? depth_m - a->freeboard_min_m - a->level_rise_m : 0;
    }
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

void boil_recorder_end(boil_recorder *r, double t, const boil_bath *b, const double y[], const boil_rates_view *v)
{
    boil_history *h = r->history;
    boil_summary *s = &h->summary;
    close_additions(h, r->plant->tank.depth_m);
    s->temperature_end_K = v->solution.temperature_K;
    s->boiling_point_end_K = v->solution.boiling_point_K;
    s->salt_fraction_end = boil_mixture_salt_fraction(&v->solution.mixture);
    s->strength_end_kg_m3 = boil_solution_strength(&b->air, &v->solution.mixture);
    s->bath_mass_end_kg = v->solution.mass_kg;
    s->still_level_end_m = v->levels.still_m;
    restore(s, b, y, v);
    s->steam_total_kg = y[BOIL_STATE_TOTAL_STEAM];
    s->evaporated_total_kg = y[BOIL_STATE_TOTAL_EVAPORATED];
    s->layer_boiled_total_kg = y[BOIL_STATE_TOTAL_LAYER_BOILED];
    s->vented_total_kg = y[BOIL_STATE_TOTAL_STEAM] + y[BOIL_STATE_TOTAL_EVAPORATED] + y[BOIL_STATE_TOTAL_LAYER_BOILED];
    s->heater_total_J = y[BOIL_STATE_HEAT_FROM_HEATER];
    s->input_total_J = y[BOIL_STATE_HEAT_FROM_HEATER] / r->plant->heater.efficiency;
    s->water_controlled_kg = y[BOIL_STATE_TOTAL_VALVE];
    s->condensate_kg = y[BOIL_STATE_TOTAL_CONDENSATE];
    s->salts_added_kg = y[BOIL_STATE_TOTAL_SALTS_IN];
    s->liquid_added_kg = y[BOIL_STATE_TOTAL_LIQUID_IN];
    s->drag_out_kg = y[BOIL_STATE_TOTAL_DRAG];
    s->drag_out_salts_kg = y[BOIL_STATE_TOTAL_DRAG_SALTS];
    s->valve_open_share = t > 0 ? r->valve_open_s / t : 0;
    for (size_t i = 0; i < h->loads_count; i++)
        s->steel_kg += h->loads[i].mass_kg;
    s->boiling_share = t > 0 ? r->boiling_s / t : 0;
    h->end_s = t;
}
