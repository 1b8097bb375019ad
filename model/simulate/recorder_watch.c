#include "simulate/recorder.h"

#include <math.h>

#include "base/false_position.h"
#include "case/grading.h"
#include "equipment/tank.h"
#include "transfer/dissolution.h"

/* simulate/recorder_watch.c -- what is followed from moment to moment by a measure that grows with the harm: when it first passes
   each break point, its worst, how long and how often it was beyond the first. Crossings are located inside the step; time beyond is
   by a straight line. */

static const double NEVER = (double)NAN;

typedef struct {
    boil_recorder *record;
    double time_s;
    const boil_bath *bath;
    const boil_rates_view *view;
    const boil_recorder_peak *peak;
    double crystals_kg; /* worked out once, as what follows: several measures ask for them */
    bool inside;        /* a step, not at its end: nothing of it is kept */
    bool heated, fed;   /* the heat is on; water, salts or liquid runs in, or parts are being lowered */
} moment;

typedef double measure(const moment *m);

/* The measures: NaN where there is nothing to measure. ---------------------------------------------------------------------- */

static double too_hot(const moment *m)
{
    return m->view->solution.boiling_point_K - m->record->plant->limits.boiling_point_high_K;
}

static double too_cool(const moment *m)
{
    return m->bath->boiling ? m->record->plant->limits.boiling_point_low_K - m->view->solution.boiling_point_K : NEVER;
}

static double nearly_dry(const moment *m)
{
    return boil_mixture_salt_fraction(&m->view->solution.mixture) - 1;
}

static double used_up(const moment *m, double left_m)
{
    const boil_limits *l = &m->record->plant->limits;
    return 1 - left_m / boil_grading_unit(&boil_gradings[BOIL_FOUND_FREEBOARD], l);
}

static double freeboard(const moment *m)
{
    return used_up(m, m->record->plant->tank.depth_m - m->view->levels.upper_m);
}

static double overflow(const moment *m)
{
    return m->view->levels.upper_m - m->record->plant->tank.depth_m;
}

static double overflow_still(const moment *m)
{
    return m->view->levels.still_m - m->record->plant->tank.depth_m;
}

static double level_high(const moment *m)
{
    double mark_m = m->record->plant->tank.mark_m;
    return mark_m > 0 ? m->view->levels.still_m - mark_m : NEVER;
}

static bool from_below(const moment *m)
{
    return m->record->plant->tank.heated == BOIL_TANK_HEATED_FROM_BELOW;
}

static double heater_bare(const moment *m)
{
    return from_below(m) ? NEVER : boil_tank_heater_top(&m->record->plant->tank) - m->view->levels.still_m;
}

static double floor_bare(const moment *m)
{
    return from_below(m) ? -m->view->levels.still_m : NEVER;
}

static double parts_bare(const moment *m)
{
    return boil_tank_parts_top(&m->record->plant->tank) - m->view->levels.still_m;
}

/* So thick is salt over the whole tank without any pores: thinner than transfer/dissolution.h has it, which counts them. */
static double spread_m(const moment *m, double salt_kg)
{
    const double kg_m3 = 2200;
    return salt_kg / (kg_m3 * m->bath->area_m2);
}

/* Were all that crystallised to lie on the floor. A mixer holds in suspension what no crust holds fast. */
static double under_crystals(const moment *m)
{
    bool suspended = boil_bath_is_stirred(m->bath) && !(m->view->salts.crust_kg > 0);
    double flux_W_m2 = m->view->heater.heat_W / m->bath->area_m2;
    return from_below(m) && !suspended ? boil_dissolution_bed_superheat(spread_m(m, m->crystals_kg), flux_W_m2) : 0;
}

/* A first haze of crystals is none; from there to twice as much they count the more, so that when they begin to is found inside a step. */
static double restart(const moment *m)
{
    double haze_kg = BOIL_GRADING_HAZE * m->record->history->summary.bath_mass_start_kg;
    return under_crystals(m) * fmin(1, fmax(0, m->crystals_kg / haze_kg - 1));
}

static double salt_bed(const moment *m)
{
    return m->view->salts.bed_m > 0 ? m->view->salts.bed_superheat_K : NEVER;
}

static double floor_hot(const moment *m)
{
    double over_K = fmax(m->view->salts.bed_superheat_K, under_crystals(m));
    return from_below(m) ? m->view->solution.temperature_K + fmax(0, over_K) : NEVER;
}

static double crust(const moment *m)
{
    double kg = m->view->salts.crust_kg;
    return (m->heated || m->fed) && kg > 0 ? spread_m(m, kg) : NEVER;
}

static double crystals(const moment *m)
{
    double kg = m->crystals_kg;
    return kg > 0 ? kg / m->record->history->summary.bath_mass_start_kg : NEVER;
}

/* Above 0 a boiling surface shows. A film of rinse water thinner than half a millimetre may simmer for seconds, and so near its own
   boil the bath has only just lost it: nobody would see it. */
static double surface_shows(const moment *m)
{
    const double film_m = 0.5e-3, near_K = 5;
    const boil_rates_view *v = m->view;
    return fmin(v->layer.thickness_m / film_m, (v->solution.boiling_point_K - v->solution.temperature_K) / near_K) - 1;
}

static double locate(const moment *m, measure *of, double before, double x, double at, bool rising);

static double surface_gone(const moment *m)
{
    return -surface_shows(m);
}

static double surface_boils(const moment *m)
{
    boil_recorder *r = m->record;
    double shows = surface_shows(m), before = r->surface_shows;
    bool boils = m->bath->layer == BOIL_WATER_LAYER_BOILS && !m->bath->boiling;
    r->surface_shows = boils ? shows : NEVER;
    if (boils && !(shows > 0) && !isnan(r->surface_boils_since_s)) { /* until within this step */
        double since_s = r->surface_boils_since_s;
        r->surface_boils_since_s = NEVER;
        return locate(m, surface_gone, -before, -shows, 0, true) - since_s;
    }
    if (!boils || !(shows > 0))
        r->surface_boils_since_s = NEVER;
    else if (isnan(r->surface_boils_since_s))
        r->surface_boils_since_s = locate(m, surface_shows, before, shows, 0, true);
    return m->time_s - r->surface_boils_since_s;
}

/* Freeboard used up were what floats to let go; nothing where it lowers the freeboard by next to nothing. */
static double let_go(const moment *m, bool over_the_rim_counts)
{
    boil_potential_known known = m->record->yield, *yield = m->inside ? &known : &m->record->yield;
    boil_potential p = boil_potential_of(m->bath, m->view, m->record->plant->limits.freeboard_m, yield);
    bool counts = (over_the_rim_counts || p.without_m > 0) && p.left_m < p.without_m - BOIL_RECORDER_NOTHING_M;
    return counts ? used_up(m, p.left_m) : NEVER;
}

/* Worked out with the quiet spells, before: simulate/recorder_spells.c. */
static double layer(const moment *m)
{
    if (m->inside)
        return !m->bath->boiling && m->view->layer.mass_kg > 0 ? let_go(m, false) : NEVER;
    return isnan(m->record->afloat_left_m) ? NEVER : used_up(m, m->record->afloat_left_m);
}

static double water_fast(const moment *m)
{
    return m->bath->boiling && m->view->layer.mass_kg > 0 ? let_go(m, true) : NEVER;
}

/* Calm is the steam of the boil at the start, or of the first minute of it; before, what the heat full on would boil off. */
static double calm_kg_s(const moment *m)
{
    const boil_rates_view *v = m->view;
    double known = m->record->history->summary.steam_steady_kg_s;
    double full_W = boil_heater_output(&m->record->plant->heater, 1, v->solution.boiling_point_K);
    return isnan(known) ? (v->heat.calm_W - v->heater.heat_W + full_W) / v->heat.latent_J_kg : known;
}

static double surge_of(const moment *m, double steam_kg_s)
{
    double calm = calm_kg_s(m), over = fmax(0, steam_kg_s - m->view->steam.calm_kg_s);
    return calm > 0 ? 1 + over / calm : NEVER;
}

static double surge(const moment *m)
{
    return surge_of(m, m->view->steam.formed_kg_s);
}

static measure *const measures[BOIL_WATCHES] = {
    [BOIL_WATCH_TOO_HOT] = too_hot,
    [BOIL_WATCH_TOO_COOL] = too_cool,
    [BOIL_WATCH_NEARLY_DRY] = nearly_dry,
    [BOIL_WATCH_FREEBOARD] = freeboard,
    [BOIL_WATCH_OVERFLOW] = overflow,
    [BOIL_WATCH_OVERFLOW_STILL] = overflow_still,
    [BOIL_WATCH_HEATER_BARE] = heater_bare,
    [BOIL_WATCH_FLOOR_BARE] = floor_bare,
    [BOIL_WATCH_FLOOR_HOT] = floor_hot,
    [BOIL_WATCH_PARTS_BARE] = parts_bare,
    [BOIL_WATCH_SALT_BED] = salt_bed,
    [BOIL_WATCH_RESTART] = restart,
    [BOIL_WATCH_CRUST] = crust,
    [BOIL_WATCH_CRYSTALS] = crystals,
    [BOIL_WATCH_SURFACE_BOILS] = surface_boils,
    [BOIL_WATCH_LAYER] = layer,
    [BOIL_WATCH_WATER_FAST] = water_fast,
    [BOIL_WATCH_SURGE] = surge,
    [BOIL_WATCH_LEVEL_HIGH] = level_high,
};

/* Moments. ---------------------------------------------------------------------------------------------------------------- */

double boil_recorder_fire(const boil_recorder *r, const boil_rates_view *v, double heat_W)
{
    double full_W = boil_heater_output(&r->plant->heater, 1, v->solution.temperature_K);
    return full_W > 0 ? heat_W / full_W : 0;
}

bool boil_recorder_is_heated(const boil_recorder *r, const boil_rates_view *v)
{
    const double spark = 0.02;
    return boil_recorder_fire(r, v, v->heater.heat_W) > spark;
}

static bool is_fed(double t, const boil_bath *b, const boil_rates_view *v)
{
    bool fed = v->control.valve_kg_s > 0;
    for (size_t i = 0; i < b->feeds_count; i++)
        fed = fed || !boil_bath_takes(&b->feeds[i]);
    for (size_t i = 0; i < b->bodies_count; i++)
        fed = fed || t <= b->bodies[i].in_end_s;
    return fed;
}

static moment moment_of(boil_recorder *r, double t, const boil_bath *b, const boil_rates_view *v,
                        const boil_recorder_peak *peak, bool inside)
{
    return (moment){r, t, b, v, peak, boil_recorder_crystals(v), inside, boil_recorder_is_heated(r, v), is_fed(t, b, v)};
}

/* Following. ---------------------------------------------------------------------------------------------------------------- */

/* The worst within the step where its turn is fitted: see boil_recorder_peak. */
static double worst_of(const moment *m, boil_watch_kind k, double x)
{
    return k == BOIL_WATCH_SURGE ? surge_of(m, m->peak->steam_kg_s) : x;
}

/* Share of the step before a straight line through both ends passes a value; 1 where one of them is unknown, or the same. */
static double passes(double before, double x, double at)
{
    return isnan(before) || before == x ? 1 : fmin(1, fmax(0, (at - before) / (x - before)));
}

/* When since the last moment a measure passes a value, rising or falling, to a fortieth of a second, or by a straight line where the
   step is not there to be looked into; how long a surface has boiled grows by a second in each. */
static double locate(const moment *m, measure *of, double before, double x, double at, bool rising)
{
    const double close_s = 0.025, up = rising ? 1 : -1;
    boil_recorder *r = m->record;
    boil_false_position p = {r->last_s, up * (before - at), m->time_s, up * (x - at), 0};
    double line = p.low + (p.high - p.low) * passes(before, x, at);
    boil_rates_view v;
    if (of == surface_boils)
        return rising ? p.high - (x - at) : line;
    if (r->step.near == NULL || !(p.high > p.low))
        return isnan(before) ? p.high : line;
    boil_rates_guess guess = *r->step.near;
    while (p.high - p.low > close_s) { /* off the ends, so that both of them close in */
        double t = fmin(fmax(boil_false_position_next(&p), p.low + close_s / 2), p.high - close_s / 2);
        if (boil_recorder_inside(r, m->bath, t, &guess, &v) != BOIL_OK)
            return line;
        const moment inside = moment_of(r, t, m->bath, &v, m->peak, true);
        double value = of(&inside), over = isnan(value) ? -up : up * (value - at); /* nothing to measure is not past it */
        boil_false_position_narrow(&p, t, over, over > 0);
    }
    return p.high;
}

static void note_crossings(boil_watched *w, boil_watch_kind k, const moment *m, double x, double worst)
{
    const boil_grading *g = &boil_gradings[boil_grading_watched[k]];
    double margin = m->record->margin[k], before = m->record->last[k];
    for (int s = 0; s < BOIL_SEVERITIES; s++) {
        if (!isnan(w->from_s[s]) || !boil_grading_is_past(g, (boil_severity)s, worst, margin))
            continue;
        double at = g->from[s] + margin;
        w->from_s[s] = x > at ? locate(m, measures[k], before, x, at, true) : m->time_s;
    }
}

static boil_severity lowest(const boil_grading *g)
{
    int s = 0;
    while (s < BOIL_SEVERITIES - 1 && isnan(g->from[s]))
        s++;
    return (boil_severity)s;
}

/* Of the time since the last moment, s, the part beyond a value. */
static double beyond(const moment *m, boil_watch_kind k, double before, double x, double at)
{
    double from = m->record->last_s;
    bool was = before > at, is = x > at;
    if (was == is)
        return is ? m->time_s - from : 0;
    double passed = locate(m, measures[k], before, x, at, is);
    return is ? m->time_s - passed : passed - from;
}

static void note_time(boil_watched *w, boil_watch_kind k, const moment *m, double before, double x)
{
    const boil_grading *g = &boil_gradings[boil_grading_watched[k]];
    double margin = m->record->margin[k], first = m->record->first[k] + margin;
    w->outside_s += beyond(m, k, before, x, first);
    w->spells += x > first && !(before > first);
    if (m->heated)
        w->heated_s += beyond(m, k, before, x, g->from[BOIL_SEVERITY_WARNING] + margin);
}

static void note_fed(boil_watched *w, const boil_grading *g, const moment *m, double margin, double x)
{
    boil_severity s = boil_grading_of(g, x, margin);
    if (s < BOIL_SEVERITIES && (int)s + 1 > w->fed && m->fed)
        w->fed = (int)s + 1;
}

static void note_past(boil_watched *w, boil_watch_kind k, const moment *m, double x, double worst)
{
    note_time(w, k, m, m->record->last[k], x);
    if (isnan(x))
        return;
    note_crossings(w, k, m, x, worst);
    if (boil_grading_of(&boil_gradings[boil_grading_watched[k]], x, m->record->margin[k]) < BOIL_SEVERITIES)
        m->record->past_s[k] = m->time_s;
    note_fed(w, &boil_gradings[boil_grading_watched[k]], m, m->record->margin[k], x);
}

/* Most are below their first break point all the time. */
static void follow(const moment *m, boil_watch_kind k)
{
    boil_recorder *r = m->record;
    boil_watched *w = &r->history->summary.watched[k];
    double x = measures[k](m), worst = isnan(x) ? NEVER : worst_of(m, k, x), first = r->first[k];
    if (r->last[k] >= first || x >= first || worst >= first)
        note_past(w, k, m, x, worst);
    r->last[k] = x;
    if (!isnan(x) && !(worst <= w->worst.value))
        w->worst = (boil_extreme){worst, m->time_s};
}

void boil_recorder_watch_begin(boil_recorder *r)
{
    r->surface_boils_since_s = r->surface_shows = NEVER;
    for (int k = 0; k < BOIL_WATCHES; k++) {
        const boil_grading *g = &boil_gradings[boil_grading_watched[k]];
        r->margin[k] = boil_grading_margin(g, &r->plant->limits);
        r->first[k] = g->from[lowest(g)];
        r->last[k] = r->past_s[k] = NEVER;
        r->history->summary.watched[k] = (boil_watched){.worst = {NEVER, NEVER}, .from_s = {NEVER, NEVER, NEVER, NEVER}};
    }
}

void boil_recorder_watch(boil_recorder *r, double t, const boil_bath *b, const boil_rates_view *v,
                         const boil_recorder_peak *peak)
{
    const moment m = moment_of(r, t, b, v, peak, false);
    for (int k = 0; k < BOIL_WATCHES; k++)
        follow(&m, (boil_watch_kind)k);
}

void boil_recorder_meet(boil_recorder *r, double t)
{
    const double soon_s = 60;
    for (int k = 0; k < BOIL_WATCHES; k++)
        if (t - r->past_s[k] <= soon_s)
            r->history->summary.watched[k].met = true;
}
