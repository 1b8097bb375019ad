#include "simulate/recorder.h"

#include <math.h>

#include "base/constants.h"
#include "base/array.h"
#include "bath/rates.h"
#include "transfer/overflow.h"

/* simulate/recorder.c -- the recorder as a whole, the automatic valve, and the rows of the trace. */
static const double NEVER = (double)NAN;

void boil_recorder_begin(boil_recorder *r, boil_history *history, const boil_plant *p, const boil_run_options *o,
                         const boil_bath *b, const double y[], const boil_rates_view *v)
{
    bool finer = o->row_fast_s > 0 && o->row_fast_s < o->row_interval_s;
    *r = (boil_recorder){.history = history,
                         .plant = p,
                         .rows_capacity = r->rows_capacity,
                         .unknowns = r->unknowns,
                         .row_unit_s = finer ? o->row_fast_s : o->row_interval_s,
                         .row_units = finer ? (size_t)lround(o->row_interval_s / o->row_fast_s) : 1,
                         .surged_s = -(double)INFINITY,
                         .boil_began_s = b->boiling ? 0 : NEVER,
                         .quiet_start = !b->boiling};
    boil_recorder_summary_begin(&history->summary, b, v);
    boil_recorder_watch_begin(r);
    if (!b->boiling)
        boil_recorder_mode(r, 0, b, y, v);
}

void boil_recorder_restart(boil_recorder *r)
{
    r->level.count = r->steam.count = 0;
    r->step = (boil_recorder_step){.near = NULL};
    r->coolest_K = r->hottest_K = NEVER;
}

static void note(boil_recorder_turn *w, double t, double x)
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
}

/* Add a value; gives the extreme just passed, if one lies at the middle of the last three, else the value itself. */
static double turning(boil_recorder_turn *w, double t, double x)
{
    note(w, t, x);
    if (w->count < 3)
        return x;
    double a = w->time_s[0] - w->time_s[1], b = t - w->time_s[1];
    double left = (w->value[0] - w->value[1]) / a, right = (x - w->value[1]) / b;
    if (!(left * right < 0) || !(a < 0 && b > 0))
        return x;
    double curvature = (right - left) / (b - a), slope = left - curvature * a;
    return w->value[1] - slope * slope / (4 * curvature);
}

static boil_recorder_peak peaks_of(boil_recorder *r, double t, const boil_bath *b, const boil_rates_view *v)
{
    double T = v->solution.temperature_K;
    boil_overflow_pool pool = {b->area_m2, r->plant->tank.depth_m, v->levels.still_m, v->pool.vapour_kg_m3};
    boil_recorder_peak p = {.coolest_K = fmin(T, r->coolest_K), .hottest_K = fmax(T, r->hottest_K)};
    note(&r->level, t, v->levels.upper_m);
    r->coolest_K = r->hottest_K = NEVER;
    p.steam_kg_s = fmax(v->steam.formed_kg_s, turning(&r->steam, t, v->steam.formed_kg_s));
    p.steam_more_than =
        p.steam_kg_s > 2 * boil_overflow_critical_steam_rate(&pool, &r->plant->pool, v->pool.drift_velocity_m_s);
    return p;
}

static void watch_control(boil_recorder *r, double t, const boil_bath *b, const boil_rates_view *v)
{
    boil_summary *s = &r->history->summary;
    if (r->valve_was_open) {
        r->valve_open_s += t - r->last_s;
        if (!b->boiling)
            s->valve_quiet_kg += r->plant->control.rate_kg_s * (t - r->last_s);
    }
    if (v->control.valve_open != r->valve_was_open)
        r->history->valve_s[r->history->valve_count++] = t;
    s->valve_openings += v->control.valve_open && !r->valve_was_open;
    r->valve_was_open = v->control.valve_open;
}

void boil_recorder_moment(boil_recorder *r, double t, const boil_bath *b, const double y[], const boil_rates_view *v)
{
    boil_recorder_peak peak = peaks_of(r, t, b, v);
    boil_recorder_watch_spells(r, t, b, y, v, &peak);
    boil_recorder_watch_summary(r, t, b, v, &peak);
    boil_recorder_watch(r, t, b, v, &peak);
    watch_control(r, t, b, v);
    boil_recorder_settle_spells(r, t);
    if (b->boiling)
        r->boiling_s += t - r->last_s;
    r->last_s = t;
    r->layer_m = v->layer.thickness_m;
}

static double coldest_load(const boil_bath *b, const double y[])
{
    double coldest = NEVER;
    for (size_t i = 0; i < b->bodies_count; i++)
        if (!(b->bodies[i].pocket_kg > 0) && !(y[BOIL_STATE_FIXED + b->bodies[i].at] >= coldest))
            coldest = y[BOIL_STATE_FIXED + b->bodies[i].at];
    return coldest;
}

static double row_left(const boil_recorder *r, const boil_bath *b, const boil_rates_view *v)
{
    boil_potential_known known = r->yield; /* a copy: a trace changes nothing of the run */
    if (!(v->layer.mass_kg > 0))
        return NEVER;
    boil_potential p = boil_potential_of(b, v, r->plant->limits.freeboard_m, &known);
    return p.left_m < p.without_m - BOIL_RECORDER_NOTHING_M ? p.left_m : NEVER;
}

static boil_row row_of(const boil_recorder *r, double t, const boil_bath *b, const double y[], const boil_rates_view *v)
{
    double evaporated = v->surface.bath.evaporation_kg_s + v->layer_vapour.evaporated_kg_s;
    double steam = fmax(0, v->steam.formed_kg_s); /* what a dying boil condenses (bath/modes.h) is none that forms */
    return (boil_row){.time_s = t,
                      .boiling = b->boiling,
                      .temperature_K = v->solution.temperature_K,
                      .boiling_point_K = v->solution.boiling_point_K,
                      .salt_fraction = boil_mixture_salt_fraction(&v->solution.mixture),
                      .water_kg = y[BOIL_STATE_BATH_WATER],
                      .naoh_kg = y[BOIL_STATE_BATH_NAOH],
                      .nano3_kg = y[BOIL_STATE_BATH_NANO3],
                      .nano2_kg = y[BOIL_STATE_BATH_NANO2],
                      .steam_kg_s = steam,
                      .vented_kg_s = steam + evaporated + v->layer_vapour.boiled_kg_s,
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
                      .left_m = row_left(r, b, v),
                      .calm_kg_s = v->steam.calm_kg_s,
                      .crystals_kg = boil_recorder_crystals(v),
                      .bed_superheat_K = v->salts.bed_superheat_K,
                      .coldest_load_K = coldest_load(b, y)};
}

static boil_outcome add_row(boil_recorder *r, double t, const boil_bath *b, const boil_rates_view *v, const double y[])
{
    boil_history *h = r->history;
    boil_row *rows = boil_array_reserve(h->rows, &r->rows_capacity, h->rows_count, sizeof *rows);
    if (!rows)
        return BOIL_NO_MEMORY;
    h->rows = rows;
    rows[h->rows_count++] = row_of(r, t, b, y, v);
    return BOIL_OK;
}

/* In the last step three hundredths of the depth a second. */
static bool moves_fast(const boil_recorder *r)
{
    const boil_recorder_turn *l = &r->level;
    if (r->row_units == 1 || l->count < 2)
        return false;
    double took_s = l->time_s[l->count - 1] - l->time_s[l->count - 2];
    return fabs(l->value[l->count - 1] - l->value[l->count - 2]) > BOIL_FAST_LEVEL * r->plant->tank.depth_m * took_s;
}

static void put_row(boil_recorder *r, size_t count)
{
    r->row_count = count;
    r->next_row_s = (double)count * r->row_unit_s;
}

/* To the next whole interval, or where it moves fast to the next unit. */
static void next_row(boil_recorder *r, bool fast)
{
    put_row(r, fast ? r->row_count + 1 : (r->row_count / r->row_units + 1) * r->row_units);
}

/* Where it begins to move fast the rows begin with the step. */
static void begin_rows(boil_recorder *r, bool fast, double t0)
{
    size_t first = (size_t)floor(t0 / r->row_unit_s) + 1;
    if (fast && r->history->rows_count > 0 && first < r->row_count)
        put_row(r, first);
}

boil_outcome boil_recorder_inside(boil_recorder *r, const boil_bath *b, double t, boil_rates_guess *guess, boil_rates_view *v)
{
    boil_hermite_at(&r->step.cubic, boil_bath_unknowns(b), t, r->unknowns);
    return boil_rates_at(b, t, r->unknowns, guess, v, NULL);
}

static double change(double a, double b, double much)
{
    return fabs(b - a) / much;
}

/* Near the boil what floats can do hangs on half a kelvin; far below it on a sixteenth of the way. */
static double much_warmer(const boil_rates_view *a, const boil_rates_view *b)
{
    const double least_K = 0.5, share = 0.0625;
    double below_K =
        fmin(a->solution.boiling_point_K - a->solution.temperature_K, b->solution.boiling_point_K - b->solution.temperature_K);
    return fmax(least_K, share * below_K);
}

/* So that what is fitted between two moments is as good as where steps are short: by how much what is watched changes. A surge goes
   up and down within a step. */
int boil_recorder_parts(const boil_recorder *r, const boil_rates_view *a, const boil_rates_view *b)
{
    const double layer_m = 4e-4, steam_share = 0.1, surge = 1.5;
    const double heat_share = 0.1;
    enum { SURGING = 8, MOST = 16 };
    double steam = fmax(fmax(a->steam.formed_kg_s, b->steam.formed_kg_s), fmax(a->steam.calm_kg_s, b->steam.calm_kg_s));
    double full_W = boil_heater_output(&r->plant->heater, 1, b->solution.temperature_K);
    double most = change(a->solution.temperature_K, b->solution.temperature_K, much_warmer(a, b));
    most = fmax(most, change(a->layer.thickness_m, b->layer.thickness_m, layer_m));
    most = fmax(most, change(a->steam.formed_kg_s, b->steam.formed_kg_s, steam_share * fmax(steam, 1e-9)));
    most = fmax(most, change(a->heater.heat_W, b->heater.heat_W, heat_share * full_W));
    bool surges = fmax(a->steam.formed_kg_s, b->steam.formed_kg_s) > surge * fmax(0, b->steam.calm_kg_s);
    return 1 + (int)fmin(MOST - 1, fmax(surges ? SURGING - 1 : 0, most));
}

static boil_outcome due_rows(boil_recorder *r, const boil_bath *b, bool fast)
{
    boil_rates_guess guess = *r->step.near;
    for (; r->next_row_s <= r->step.cubic.t1; next_row(r, fast)) {
        boil_rates_view v;
        if (boil_recorder_inside(r, b, r->next_row_s, &guess, &v) != BOIL_OK)
            return BOIL_OK; /* the state between is beyond the properties: the run is about to stop there */
        boil_outcome outcome = add_row(r, r->next_row_s, b, &v, r->unknowns);
        if (outcome != BOIL_OK)
            return outcome;
    }
    return BOIL_OK;
}

boil_outcome boil_recorder_rows(boil_recorder *r, const boil_bath *b)
{
    if (!(r->row_unit_s > 0))
        return BOIL_OK;
    const double turns_s = 1; /* where a fast rise turns it is slow at its highest */
    bool moves = moves_fast(r), fast = moves || r->step.cubic.t0 < r->fast_until_s;
    if (moves)
        r->fast_until_s = r->step.cubic.t1 + turns_s;
    begin_rows(r, fast, r->step.cubic.t0);
    return due_rows(r, b, fast);
}

boil_outcome boil_recorder_row_now(boil_recorder *r, double t, const boil_bath *b, const boil_rates_view *v, const double y[])
{
    return r->row_units > 1 && r->history->rows_count > 0 ? add_row(r, t, b, v, y) : BOIL_OK;
}

/* A row that is due there may be off by rounding. */
static boil_outcome last_row(boil_recorder *r, double t, const boil_bath *b, const double y[], const boil_rates_view *v)
{
    const boil_history *h = r->history;
    bool there = h->rows_count > 0 && h->rows[h->rows_count - 1].time_s >= t * (1 - 1e-12);
    return r->row_unit_s > 0 && !there ? add_row(r, t, b, v, y) : BOIL_OK;
}

boil_outcome boil_recorder_end(boil_recorder *r, double t, const boil_bath *b, const double y[], const boil_rates_view *v)
{
    boil_summary *s = &r->history->summary;
    boil_recorder_close_spells(r);
    boil_recorder_summary_end(r, b, y, v);
    s->valve_open_share = t > 0 ? r->valve_open_s / t : 0;
    s->boiling_share = t > 0 ? r->boiling_s / t : 0;
    r->history->end_s = t;
    return last_row(r, t, b, y, v);
}
