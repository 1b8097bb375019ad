#include "simulate/recorder.h"

#include <math.h>

#include "base/constants.h"
#include "base/false_position.h"
#include "properties/hydrostatic.h"

/* simulate/recorder_spells.c -- loads, additions and quiet spells: what begins, whose fault a lost boil is, and what each saw. */

static const double NEVER = (double)NAN;

/* An addition counts to ten minutes after its end, and so does a quiet spell. */
#define TAIL_S 600

static void note_met(boil_history *h, const boil_bath *b)
{
    if (!b->boiling && h->quiet_count > 0)
        h->quiet[h->quiet_count - 1].met++;
}

/* What a load meets that goes into a quiet bath. */
static void note_quiet(boil_recorder *r, double t, const boil_bath *b, const boil_rates_view *v, boil_load_result *l)
{
    const boil_history *h = r->history;
    l->quiet_before_s = h->quiet_count > 0 ? t - h->quiet[h->quiet_count - 1].start_s : 0;
    if (!(v->layer.mass_kg > 0))
        return;
    boil_potential p = boil_potential_of(b, v, r->plant->limits.freeboard_m, &r->yield);
    if (!(p.without_m > 0 && p.left_m < p.without_m - BOIL_RECORDER_NOTHING_M))
        return;
    l->left_m = p.left_m;
    l->may_overflow = p.overflows;
}

/* What equal hollows do together: of all loads whose water has not let go yet. */
static void note_hollows(boil_load_result *l, const boil_load *load, const boil_bath *b, const boil_rates_view *v)
{
    double kg = load->trapped_kg;
    for (size_t i = 0; i < b->bodies_count; i++)
        if (b->bodies[i].pocket_kg > 0 && isinf(b->bodies[i].released_s))
            kg += b->bodies[i].pocket_kg;
    boil_potential p = boil_potential_of_hollows(b, v, kg, boil_load_displaced(load));
    l->trapped_kg = load->trapped_kg;
    l->pockets_kg = p.steam_kg;
    l->pockets_left_m = p.left_m;
    l->pockets_surge_kg_s = p.surge_kg_s;
    l->pockets_critical_kg_s = p.critical_kg_s;
    l->pockets_overflow = p.overflows;
}

size_t boil_recorder_load(boil_recorder *r, double t, const boil_load *load, const boil_bath *b, const boil_rates_view *v)
{
    boil_history *h = r->history;
    size_t number = h->loads_count++;
    note_met(h, b);
    h->summary.rinse_added_kg += boil_load_rinse(load);
    h->summary.trapped_kg += load->trapped_kg;
    h->loads[number] = (boil_load_result){.action = r->action,
                                          .time_s = t,
                                          .mass_kg = load->mass_kg,
                                          .was_quiet = !b->boiling,
                                          .boil_lost_s = b->boiling ? NEVER : t,
                                          .lowest_temperature_K = v->solution.temperature_K,
                                          .recovery_s = b->boiling ? 0 : NEVER,
                                          .recovery_stored_s = b->boiling ? 0 : NEVER,
                                          .hot_s = NEVER,
                                          .lifted_s = NEVER,
                                          .released_s = NEVER,
                                          .pockets_left_m = NEVER,
                                          .left_m = NEVER,
                                          .level_max_m = v->levels.upper_m};
    if (load->trapped_kg > 0)
        note_hollows(&h->loads[number], load, b, v);
    if (!b->boiling)
        note_quiet(r, t, b, v, &h->loads[number]);
    return number;
}

/* What is left of the way decays as it did until now: exponentially in the mean. */
static double short_of_hot(double in_s, double unheated)
{
    const double lacks = 0.05, hardly = 0.999;
    double u = fmin(unheated, hardly);
    return u > lacks ? in_s * log(u / lacks) / -log(u) : 0;
}

void boil_recorder_lift(boil_recorder *r, double t, size_t number, double drag_out_kg, double unheated)
{
    boil_load_result *l = &r->history->loads[number];
    l->lifted_s = t;
    l->drag_out_kg = drag_out_kg;
    l->short_s = isnan(l->hot_s) ? short_of_hot(t - l->time_s, unheated) : 0;
}

void boil_recorder_addition(boil_recorder *r, double t, boil_action_kind kind, double mass_kg, double over_s,
                            const boil_bath *b, const boil_rates_view *v)
{
    boil_history *h = r->history;
    note_met(h, b);
    h->additions[h->additions_count++] = (boil_addition_result){.action = r->action,
                                                                .end = BOIL_POUR_ALL_IN,
                                                                .missed_by_m = NEVER,
                                                                .missed_by_K = NEVER,
                                                                .kind = kind,
                                                                .time_s = t,
                                                                .over_s = over_s,
                                                                .mass_kg = mass_kg,
                                                                .was_quiet_before = !b->boiling,
                                                                .was_quiet = !b->boiling,
                                                                .boiling_point_K = v->solution.boiling_point_K,
                                                                .steam_before_kg_s = v->steam.formed_kg_s,
                                                                .boil_lost_s = b->boiling ? NEVER : t,
                                                                .recovery_s = b->boiling ? 0 : NEVER,
                                                                .recovery_stored_s = b->boiling ? 0 : NEVER,
                                                                .freeboard_min_m = (double)INFINITY,
                                                                .level_rise_m = v->levels.upper_m};
}

void boil_recorder_run_back(boil_recorder *r, const boil_mixture *kept)
{
    r->history->summary.returned_kg += boil_mixture_mass(kept);
    r->history->summary.returned_salts_kg += boil_mixture_salts(kept);
    r->history->additions[r->history->additions_count - 1].run_back = true;
}

void boil_recorder_take(boil_recorder *r, double t, boil_action_kind kind, const boil_bath *b, const boil_rates_view *v)
{
    boil_history *h = r->history;
    h->takes[h->takes_count++] = (boil_take_result){.action = r->action,
                                                    .kind = kind,
                                                    .time_s = t,
                                                    .missed_by_m = NEVER,
                                                    .temperature_K = v->solution.temperature_K,
                                                    .was_boiling = b->boiling,
                                                    .layer_kg = v->layer.mass_kg};
}

/* By how much the fire is turned down from the most that was asked of it so far, W; 0 where it would still hold the boil but for what
   else takes from it: then that stops the boil, whatever the dial stood at in the morning. */
static double dimmed_W(const boil_recorder *r, const boil_rates_view *v)
{
    double others_W =
        v->loads.heat_W + v->layer.heat_W + v->heat.water_cooling_W + v->heat.liquid_cooling_W + v->heat.salts_cooling_W;
    double alone_W = v->heat.spare_W + others_W + v->heater.target_W - v->heater.heat_W;
    double full_W = boil_heater_output(&r->plant->heater, 1, v->solution.temperature_K);
    return alone_W > 0 ? 0 : r->most_fire * full_W - v->heater.target_W;
}

static boil_quiet_cause cause_of(const boil_recorder *r, double t, const boil_rates_view *v)
{
    if (t <= 0)
        return BOIL_QUIET_START;
    const struct {
        boil_quiet_cause cause;
        double takes_W;
    } takers[] = {{BOIL_QUIET_LOAD, v->loads.heat_W},
                  {BOIL_QUIET_WATER, v->heat.water_cooling_W},
                  {BOIL_QUIET_LIQUID, v->heat.liquid_cooling_W},
                  {BOIL_QUIET_SALTS, v->heat.salts_cooling_W},
                  {BOIL_QUIET_HEAT, dimmed_W(r, v)}};
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

static double stored_K(const boil_bath *b, const boil_rates_view *v)
{
    boil_hydrostatic stored;
    bool known = boil_hydrostatic_store(&b->air, &v->solution.mixture, v->levels.still_m, 0, &stored) == BOIL_OK;
    return known ? stored.mean_K : 0;
}

/* By the control: it has turned the fire down; or it does not let a bath boil that stands at its boil from the start. */
static bool stilled_by_control(const boil_quiet_result *q, const boil_bath *b, const boil_rates_view *v)
{
    const double rounding_K = 1e-6;
    bool stands_at_boil = v->solution.temperature_K > v->solution.boiling_point_K - rounding_K;
    return b->heat_controlled &&
           (q->cause == BOIL_QUIET_HEAT || (q->cause == BOIL_QUIET_START && stands_at_boil && !b->fire_lit));
}

static void begin_quiet(boil_recorder *r, double t, const boil_bath *b, const boil_rates_view *v)
{
    boil_history *h = r->history;
    boil_quiet_result *q = &h->quiet[h->quiet_count++];
    *q = (boil_quiet_result){.start_s = t,
                             .end_s = NEVER,
                             .layer_s = NEVER,
                             .lowest_temperature_K = v->solution.temperature_K,
                             .cause = cause_of(r, t, v),
                             .stored_K = stored_K(b, v),
                             .spent_s = NEVER,
                             .refilled_s = NEVER,
                             .left_m = NEVER,
                             .left_s = NEVER,
                             .left_hot_m = NEVER,
                             .may_overflow_s = NEVER,
                             .end_left_m = NEVER,
                             .erupts_s = NEVER};
    q->by_thermostat = stilled_by_control(q, b, v);
    r->boil_began_s = NEVER;
    for (size_t i = r->first_load; i < h->loads_count; i++)
        if (isnan(h->loads[i].lifted_s) && isnan(h->loads[i].boil_lost_s)) {
            h->loads[i].boil_lost_s = t;
            h->loads[i].recovery_s = h->loads[i].recovery_stored_s = NEVER;
        }
    for (size_t i = r->first_addition; i < h->additions_count; i++) {
        boil_addition_result *a = &h->additions[i];
        double end = a->time_s + a->over_s;
        q->met += t < end;
        bool its_own = t <= end || (t <= end + TAIL_S && q->cause == cause_by(a->kind));
        if (its_own && isnan(a->boil_lost_s)) {
            a->boil_lost_s = t;
            a->recovery_s = a->recovery_stored_s = NEVER;
        }
    }
}

/* The part of a spell that is left to who lost the boil in it, were the store full. */
static double quiet_though_stored(const boil_quiet_result *q, double boil_lost_s)
{
    return isnan(q->spent_s) ? 0 : fmax(0, q->refilled_s - fmax(q->spent_s, boil_lost_s));
}

static void end_quiet(boil_recorder *r, double t, const boil_bath *b, const double y[], const boil_rates_view *v)
{
    boil_history *h = r->history;
    r->boil_began_s = t;
    if (r->quiet_start && isnan(h->summary.time_to_boil_s))
        h->summary.time_to_boil_s = t;
    h->quiet[h->quiet_count - 1].end_s = t;
    h->quiet[h->quiet_count - 1].layer_at_return_kg = v->layer.mass_kg;
    if (v->layer.mass_kg > 0) {
        double flash = boil_bath_flash(b, y, y[BOIL_STATE_LAYER_MASS], y[BOIL_STATE_LAYER_HEAT]);
        if (flash > h->summary.flash_bound_kg)
            h->summary.flash_bound_kg = flash;
    }
    const boil_quiet_result *q = &h->quiet[h->quiet_count - 1];
    for (size_t i = r->first_load; i < h->loads_count; i++) {
        boil_load_result *l = &h->loads[i];
        if (isnan(l->recovery_s) && !isnan(l->boil_lost_s)) {
            l->recovery_s = t - l->boil_lost_s;
            l->recovery_stored_s = quiet_though_stored(q, l->boil_lost_s);
        }
    }
    for (size_t i = r->first_addition; i < h->additions_count; i++) {
        boil_addition_result *a = &h->additions[i];
        if (isnan(a->recovery_s) && !isnan(a->boil_lost_s)) {
            a->recovery_s = t - a->boil_lost_s;
            a->recovery_stored_s = quiet_though_stored(q, a->boil_lost_s);
        }
    }
}

void boil_recorder_mode(boil_recorder *r, double t, const boil_bath *b, const double y[], const boil_rates_view *v)
{
    r->history->mode_changes += t > 0;
    if (b->boiling)
        end_quiet(r, t, b, y, v);
    else
        begin_quiet(r, t, b, v);
}

double boil_recorder_unheated(const boil_bath_body *o, const double y[], const boil_rates_view *v)
{
    double way = v->solution.temperature_K - o->entry_K;
    return way != 0 ? 1 - (y[BOIL_STATE_FIXED + o->at] - o->entry_K) / way : 0;
}

/* Since the last moment, on the step's cubic: what lacks falls fast in a bath that stays as it is, and hardly in one that warms as the
   steel does. */
static double hot_at(boil_recorder *r, double t, const boil_bath *b, const boil_bath_body *o, double now, double lacks)
{
    const double close_s = 2e-3;
    boil_false_position p = {r->last_s, lacks - o->unheated, t, lacks - now, 0};
    if (r->step.near == NULL || !(p.at_low < 0))
        return t;
    boil_rates_guess guess = *r->step.near;
    while (p.high - p.low > close_s) { /* off the ends, so that both of them close in */
        boil_rates_view v;
        double x = fmin(fmax(boil_false_position_next(&p), p.low + close_s / 2), p.high - close_s / 2);
        if (boil_recorder_inside(r, b, x, &guess, &v) != BOIL_OK)
            return t;
        double over = lacks - boil_recorder_unheated(o, r->unknowns, &v);
        boil_false_position_narrow(&p, x, over, over >= 0);
    }
    return p.high;
}

static void watch_loads(boil_recorder *r, double t, const boil_bath *b, const double y[], const boil_rates_view *v,
                        const boil_recorder_peak *peak)
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
        const double lacks = 0.05;
        double unheated = boil_recorder_unheated(o, y, v);
        if (isnan(l->hot_s) && isnan(l->lifted_s) && unheated <= lacks)
            l->hot_s = hot_at(r, t, b, o, unheated, lacks) - l->time_s;
    }
}

/* The level until another goes in belongs to the last load, and to those that went in with it: two that wait for one thing, each in
   its own unit of time, part by a rounding. */
static void watch_level(boil_history *h, const boil_rates_view *v)
{
    const double with_s = 1e-3;
    for (size_t i = h->loads_count; i > 0 && h->loads[i - 1].time_s >= h->loads[h->loads_count - 1].time_s - with_s; i--)
        h->loads[i - 1].level_max_m = fmax(h->loads[i - 1].level_max_m, v->levels.upper_m);
}

static void watch_additions(boil_recorder *r, double t, const boil_rates_view *v, const boil_recorder_peak *peak)
{
    boil_history *h = r->history;
    for (size_t i = r->first_addition; i < h->additions_count; i++) {
        boil_addition_result *a = &h->additions[i];
        if (t < a->time_s || t > a->time_s + a->over_s + TAIL_S)
            continue;
        a->steam_peak_kg_s = fmax(a->steam_peak_kg_s, peak->steam_kg_s);
        a->steam_more_than = a->steam_more_than || peak->steam_more_than;
        a->layer_peak_kg = fmax(a->layer_peak_kg, v->layer.mass_kg);
        a->freeboard_min_m = fmin(a->freeboard_min_m, r->plant->tank.depth_m - v->levels.upper_m);
    }
}

/* What went onto a quiet bath since the last moment. */
static void watch_feeds(boil_recorder *r, double t, const boil_bath *b)
{
    for (size_t i = 0; i < b->feeds_count && !b->boiling && t > r->last_s; i++) {
        const boil_bath_feed *f = &b->feeds[i];
        bool mixed = f->kind == BOIL_FEED_LIQUID || (f->kind == BOIL_FEED_SALTS && boil_bath_is_stirred(b));
        if (f->addition == 0 || mixed)
            continue;
        r->history->additions[f->addition - 1].was_quiet = true;
        r->history->additions[f->addition - 1].quiet_poured_kg += f->rate_kg_s * (t - r->last_s);
    }
}

/* When what floats could first lift the bath over the rim: by a straight line from the moment before. Where it was the steam that was
   lacking then, at that moment: a warning is never late. */
static double may_overflow_from(const boil_recorder *r, double t, const boil_potential *now)
{
    double before_m = isnan(r->afloat_before_m) ? now->without_m : r->afloat_before_m;
    double share = before_m > 0 && now->left_m < 0 ? before_m / (before_m - now->left_m) : 0;
    return r->last_s + share * (t - r->last_s);
}

/* What floats on a quiet bath, and what it could do. Where the bath would be over the rim without it, it is not the water's doing. */
static void watch_afloat(boil_recorder *r, double t, const boil_bath *b, const boil_rates_view *v, boil_quiet_result *q)
{
    q->end_left_m = NEVER;
    q->end_overflows = false;
    if (!(v->layer.mass_kg > 0))
        return;
    boil_potential now = boil_potential_of(b, v, r->plant->limits.freeboard_m, &r->yield), hot = boil_potential_hot(b, v);
    if (hot.left_m < hot.without_m - BOIL_RECORDER_NOTHING_M) { /* whoever's doing it is that the bath goes over */
        q->left_hot_m = fmin(q->left_hot_m, hot.left_m);
        q->end_left_m = hot.left_m;
        q->end_overflows = hot.overflows;
    }
    if (!(now.without_m > 0 && now.left_m < now.without_m - BOIL_RECORDER_NOTHING_M))
        return;
    r->afloat_left_m = now.left_m;
    if (now.overflows && isnan(q->may_overflow_s))
        q->may_overflow_s = fmax(q->start_s, may_overflow_from(r, t, &now));
    if (now.left_m < r->plant->limits.freeboard_m && now.gain > 1 && now.steam_kg > q->erupts_kg) {
        q->erupts_kg = now.steam_kg;
        q->erupts_s = t;
    }
    if (now.left_m >= q->left_m)
        return;
    q->left_m = now.left_m;
    q->left_s = t;
    q->potential_kg = now.steam_kg;
    q->surge_kg_s = now.surge_kg_s;
    q->critical_kg_s = now.critical_kg_s;
}

/* Where the bath passes the store's temperature: by a straight line within the step. */
static void watch_store(boil_recorder *r, double t, const boil_rates_view *v, boil_quiet_result *q)
{
    double below_K = v->solution.boiling_point_K - v->solution.temperature_K, before_K = r->last_below_K;
    bool was_beyond = !isnan(q->spent_s) && isnan(q->refilled_s), is_beyond = below_K > q->stored_K;
    r->last_below_K = below_K;
    if (was_beyond == is_beyond)
        return;
    double share = below_K != before_K ? (q->stored_K - before_K) / (below_K - before_K) : 1;
    double passed_s = fmax(q->start_s, r->last_s + fmin(1, fmax(0, share)) * (t - r->last_s));
    if (is_beyond && isnan(q->spent_s))
        q->spent_s = passed_s;
    q->refilled_s = is_beyond ? NEVER : passed_s;
}

/* When since the last moment a layer has become one that is seen. */
static double seen_since(const boil_recorder *r, double t, double layer_m)
{
    const double seen_m = 1e-3;
    if (!(layer_m >= seen_m))
        return NEVER;
    return r->layer_m < seen_m ? t - (t - r->last_s) * (layer_m - seen_m) / (layer_m - r->layer_m) : t;
}

static void watch_quiet(boil_recorder *r, double t, const boil_bath *b, const boil_rates_view *v,
                        const boil_recorder_peak *peak)
{
    boil_history *h = r->history;
    if (h->quiet_count == 0)
        return;
    boil_quiet_result *q = &h->quiet[h->quiet_count - 1];
    if (!b->boiling) {
        q->lowest_temperature_K = fmin(q->lowest_temperature_K, peak->coolest_K);
        if (isnan(q->layer_s))
            q->layer_s = seen_since(r, t, v->layer.thickness_m);
        q->layer_max_m = fmax(q->layer_max_m, v->layer.thickness_m);
        q->layer_max_kg = fmax(q->layer_max_kg, v->layer.mass_kg);
        watch_store(r, t, v, q);
        watch_afloat(r, t, b, v, q);
        if (v->steam.formed_kg_s > 0)
            q->steam_peak_after_kg_s = fmax(q->steam_peak_after_kg_s, peak->steam_kg_s);
    } else if (t <= q->end_s + TAIL_S) {
        q->steam_peak_after_kg_s = fmax(q->steam_peak_after_kg_s, peak->steam_kg_s);
        q->level_max_after_m = fmax(q->level_max_after_m, v->levels.upper_m);
    }
}

void boil_recorder_watch_spells(boil_recorder *r, double t, const boil_bath *b, const double y[], const boil_rates_view *v,
                                const boil_recorder_peak *peak)
{
    r->most_fire = fmax(r->most_fire, boil_recorder_fire(r, v, v->heater.target_W));
    watch_loads(r, t, b, y, v, peak);
    watch_level(r->history, v);
    r->afloat_before_m = r->afloat_left_m;
    r->afloat_left_m = NEVER;
    watch_additions(r, t, v, peak);
    watch_feeds(r, t, b);
    watch_quiet(r, t, b, v, peak);
}

/* Move past loads that are out and whose boil is back, and additions whose time is over. */
void boil_recorder_settle_spells(boil_recorder *r, double t)
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

void boil_recorder_close_spells(boil_recorder *r)
{
    boil_history *h = r->history;
    double depth_m = r->plant->tank.depth_m;
    for (size_t i = 0; i < h->additions_count; i++) {
        boil_addition_result *a = &h->additions[i];
        a->level_rise_m = isfinite(a->freeboard_min_m) ? depth_m - a->freeboard_min_m - a->level_rise_m : 0;
    }
    for (size_t i = 0; i < h->quiet_count; i++) {
        h->summary.thermostat_stilled += h->quiet[i].by_thermostat;
        h->summary.thermostat_met += h->quiet[i].by_thermostat && h->quiet[i].met > 0;
    }
}
