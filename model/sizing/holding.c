#include "sizing/holding.h"

#include <math.h>

#include "base/constants.h"
#include "case/plant.h"
#include "case/schedule.h"
#include "design/makeup.h"
#include "equipment/heater.h"
#include "equipment/water_control.h"
#include "properties/water.h"
#include "simulate/run.h"

static bool is_followed(const boil_schedule *s, const boil_action *a)
{
    for (size_t i = 0; i < s->count; i++)
        if (s->actions[i].wait.follows && s->actions[i].wait.after == a->order)
            return true;
    return false;
}

/* What another action follows stays, as a drop. */
boil_outcome boil_holding_schedule(const boil_plant *p, const boil_schedule *s, boil_schedule *out)
{
    const double drop_kg = 1e-6;
    boil_outcome outcome = boil_schedule_copy(s, out);
    if (outcome != BOIL_OK || p->control.mode != BOIL_WATER_CONTROL_NONE)
        return outcome;
    size_t kept = 0;
    for (size_t i = 0; i < out->count; i++) {
        boil_action a = out->actions[i];
        bool water = a.kind == BOIL_ACTION_WATER;
        if (water && !is_followed(s, &a))
            continue;
        if (water)
            a.is.water.mass_kg = drop_kg;
        out->actions[kept++] = a;
    }
    out->count = kept;
    return BOIL_OK;
}

/* In half an hour, judgement, no load takes heat any more that a boil would miss; and a minute, that the end is seen. */
double boil_holding_watched(const boil_load *l, double limit_s)
{
    const double most_s = 30 * 60, seen_s = 60;
    return fmax(fmin(l->immersed_s, most_s) + 2 * l->lowering_s, limit_s) + seen_s;
}

boil_outcome boil_holding_brief(const boil_schedule *held, double limit_s, boil_schedule *out)
{
    const boil_action *heaviest = NULL;
    boil_outcome outcome = boil_schedule_copy(held, out);
    for (size_t i = 0; i < out->count; i++) {
        const boil_action *a = &out->actions[i];
        if (a->kind == BOIL_ACTION_LOAD && (heaviest == NULL || a->is.load.mass_kg > heaviest->is.load.mass_kg))
            heaviest = a;
    }
    if (outcome != BOIL_OK || heaviest == NULL || heaviest->wait.state != BOIL_WAIT_NONE || heaviest->wait.follows)
        return outcome;
    out->duration_s = fmin(out->duration_s, heaviest->time_s + boil_holding_watched(&heaviest->is.load, limit_s));
    while (out->count > 0 && out->actions[out->count - 1].time_s > out->duration_s)
        out->count--;
    return BOIL_OK;
}

static boil_water_control valve(const boil_plant *p, double heat_W, double boiling_point_K)
{
    const double least_kg_s = 3e-5, most_kg_s = 10; /* above 0, and no more than equipment/water_control.c takes */
    boil_water_control c = boil_water_control_default();
    double water_K = fmax(p->ambient.temperature_K, BOIL_ZERO_CELSIUS);
    double vapour_J_kg = boil_water_enthalpy(boiling_point_K) + boil_water_latent_heat(boiling_point_K);
    c.mode = BOIL_WATER_CONTROL_ON_OFF;
    c.set_point_K = boiling_point_K;
    c.rate_kg_s = fmin(most_kg_s, fmax(least_kg_s, BOIL_MAKEUP_ON_OFF * heat_W / (vapour_J_kg - boil_water_enthalpy(water_K))));
    c.water_K = water_K;
    return c;
}

boil_outcome boil_holding_plant(const boil_plant *p, double heat_W, boil_plant *out)
{
    boil_initial_state bath;
    *out = *p;
    boil_plant_at_boil(out);
    boil_outcome outcome = boil_plant_initial(out, &bath);
    if (outcome != BOIL_OK)
        return outcome;
    if (heat_W > 0)
        out->heater = boil_heater_sized(&p->heater, heat_W, bath.boiling_point_K);
    if (p->control.mode == BOIL_WATER_CONTROL_NONE)
        out->control = valve(p, boil_heater_output(&out->heater, 1, bath.boiling_point_K), bath.boiling_point_K);
    return BOIL_OK;
}

static boil_run_options options(const boil_holding_case *c, boil_closures laws)
{
    boil_run_options o = c->run;
    o.closures = laws;
    o.row_interval_s = 0;
    return o;
}

static boil_outcome carry_out(const boil_holding_case *c, double heat_W, boil_closures laws, const boil_history **h)
{
    boil_plant held;
    boil_run_options o = options(c, laws);
    boil_outcome outcome = boil_holding_plant(c->plant, heat_W, &held);
    return outcome == BOIL_OK ? boil_run_in(c->own, &held, c->schedule, &o, h) : outcome;
}

boil_outcome boil_holding_run(const boil_holding_case *c, double heat_W, boil_closures laws, boil_history *out)
{
    const boil_history *h;
    *out = (boil_history){.end = BOIL_RUN_DONE};
    boil_outcome outcome = carry_out(c, heat_W, laws, &h);
    return outcome == BOIL_OK ? boil_simulation_hand_over(*c->own, out) : outcome;
}

static unsigned recoveries(const boil_holding_case *c, const boil_history *h)
{
    for (size_t i = 0; i < h->loads_count; i++)
        if (!(h->loads[i].recovery_s <= c->limit_s) || (c->spaced && h->loads[i].was_quiet))
            return BOIL_BREAKS_RECOVERY;
    return 0;
}

/* One that was charged beyond its band is held where it was. */
static unsigned band(const boil_limits *l, const boil_summary *s)
{
    const double swings_K = 3 /* judgement */, began_K = s->boiling_point_start_K;
    double low = fmin(l->boiling_point_low_K, began_K - swings_K), high = fmax(l->boiling_point_high_K, began_K + swings_K);
    return (s->temperature_min_K.value < low ? BOIL_BREAKS_WEAK : 0) |
           (s->temperature_max_K.value > high ? BOIL_BREAKS_STRONG : 0);
}

boil_holding boil_holding_told(const boil_holding_case *c, const boil_history *h)
{
    const boil_summary *s = &h->summary;
    boil_holding a = {.slowest_s = boil_history_recoveries(h, c->limit_s).slowest_s,
                      .freeboard_min_m = s->freeboard_min_m.value,
                      .end_K = s->boiling_point_end_K,
                      .end_level_m = s->still_level_end_m};
    a.breaks = recoveries(c, h) | band(&c->plant->limits, s);
    if (!(a.freeboard_min_m >= c->plant->limits.freeboard_m))
        a.breaks |= BOIL_BREAKS_FREEBOARD;
    if (h->end != BOIL_RUN_DONE)
        a.breaks |= BOIL_BREAKS_RECOVERY | (h->end == BOIL_RUN_FULL ? BOIL_BREAKS_FREEBOARD : BOIL_BREAKS_KNOWN);
    return a;
}

boil_outcome boil_holding_by(const boil_holding_case *c, double heat_W, boil_closures laws, boil_holding *out)
{
    const boil_history *h;
    boil_outcome outcome = carry_out(c, heat_W, laws, &h);
    if (outcome == BOIL_OK)
        *out = boil_holding_told(c, h);
    return outcome;
}

const boil_closures boil_holding_laws[BOIL_HOLDING_LAWS] = {BOIL_CLOSURES_GRAVE, BOIL_CLOSURES_SUDDEN, BOIL_CLOSURES_LIKELY};

static void worsen(boil_holding *out, const boil_holding *other)
{
    out->breaks |= other->breaks;
    out->slowest_s = isnan(other->slowest_s) || isnan(out->slowest_s) ? (double)NAN : fmax(out->slowest_s, other->slowest_s);
    out->freeboard_min_m = fmin(out->freeboard_min_m, other->freeboard_min_m);
}

boil_outcome boil_holding_by_others(const boil_holding_case *c, double heat_W, boil_holding *out)
{
    boil_outcome outcome = BOIL_OK;
    for (size_t i = 1; i < BOIL_HOLDING_LAWS && outcome == BOIL_OK; i++) {
        boil_holding other;
        outcome = boil_holding_by(c, heat_W, boil_holding_laws[i], &other);
        if (outcome == BOIL_OK)
            worsen(out, &other);
    }
    return outcome;
}

boil_outcome boil_holding_by_all(const boil_holding_case *c, double heat_W, boil_holding *out)
{
    boil_outcome outcome = boil_holding_by(c, heat_W, BOIL_CLOSURES_GRAVE, out);
    return outcome == BOIL_OK ? boil_holding_by_others(c, heat_W, out) : outcome;
}

/* Of a run under way, what its rest cannot mend: extremes only widen, and a boil that is away for too long already will be back too
   late or never. */
static unsigned broken_so_far(const boil_holding_case *c, const boil_simulation *r)
{
    const boil_history *h = boil_simulation_so_far(r);
    double now_s = boil_simulation_at(r).time_s;
    unsigned breaks = band(&c->plant->limits, &h->summary);
    if (h->summary.freeboard_min_m.value < c->plant->limits.freeboard_m)
        breaks |= BOIL_BREAKS_FREEBOARD;
    for (size_t i = 0; i < h->loads_count; i++) {
        const boil_load_result *l = &h->loads[i];
        double away_s = isnan(l->recovery_s) ? now_s - l->boil_lost_s : l->recovery_s;
        if (away_s > c->limit_s || (c->spaced && l->was_quiet))
            breaks |= BOIL_BREAKS_RECOVERY;
    }
    return breaks;
}

/* A stretch at a time. */
static boil_outcome carry_until_broken(const boil_holding_case *c, boil_simulation *r, unsigned heeded, unsigned *breaks)
{
    boil_outcome outcome = BOIL_OK;
    for (*breaks = 0; outcome == BOIL_OK && !(*breaks & heeded) && !boil_simulation_at(r).over;) {
        outcome = boil_simulation_advance(r, nextafter(boil_simulation_at(r).time_s, (double)INFINITY));
        *breaks = broken_so_far(c, r);
    }
    return outcome;
}

boil_outcome boil_holding_breaks(const boil_holding_case *c, double heat_W, boil_closures laws, unsigned heeded,
                                 unsigned *breaks)
{
    boil_plant held;
    boil_run_options o = options(c, laws);
    boil_outcome outcome = boil_holding_plant(c->plant, heat_W, &held);
    if (outcome == BOIL_OK)
        outcome = boil_simulation_begin(&held, c->schedule, &o, c->own);
    if (outcome == BOIL_OK)
        outcome = carry_until_broken(c, *c->own, heeded, breaks);
    if (outcome == BOIL_OK && !(*breaks & heeded) && (outcome = boil_simulation_finish(*c->own)) == BOIL_OK)
        *breaks = boil_holding_told(c, boil_simulation_so_far(*c->own)).breaks;
    return outcome;
}

boil_outcome boil_holding_breaks_by_any(const boil_holding_case *c, double heat_W, size_t laws, unsigned heeded, size_t *first,
                                        bool *breaks)
{
    boil_outcome outcome = BOIL_OK;
    const size_t from = *first;
    *breaks = false;
    for (size_t i = 0; i < laws && outcome == BOIL_OK && !*breaks; i++) {
        size_t law = (from + i) % laws;
        unsigned all = 0;
        outcome = boil_holding_breaks(c, heat_W, boil_holding_laws[law], heeded, &all);
        *breaks = all & heeded;
        if (*breaks)
            *first = law;
    }
    return outcome;
}
