/* Every clock and value of what is followed through a run, found once more from the rows of its trace: what the program says of a run
   is what its own trace shows. Rows every second, and every hundredth of one while the level moves fast. */
#include <gsl/gsl_errno.h>

#include "support/close.h"

#include "boilback.h"
#include "case/grading.h"
#include "equipment/tank.h"
#include "support/sampled.h"
#include "support/shipped.h"

typedef struct {
    const char *name, *run;
    const boil_plant *plant;
    const boil_history *history;
    double calm_kg_s, calm_from_s, start_kg, surface_since_s;
} traced;

static double used_up(const traced *of, double left_m)
{
    return 1 - left_m / fmax(of->plant->limits.freeboard_m, 1e-3);
}

static bool from_below(const traced *of)
{
    return of->plant->tank.heated == BOIL_TANK_HEATED_FROM_BELOW;
}

static double bath_kg(const boil_row *r)
{
    return r->water_kg + r->naoh_kg + r->nano3_kg + r->nano2_kg;
}

/* By the written rule: 2200 kg/m3 and 0.8 W/mK over the floor, at most 300 K; not with a mixer on, which rows do not show. */
static double under_crystals(const traced *of, const boil_row *r)
{
    double area = boil_tank_area(&of->plant->tank);
    return fmin(300, r->heater_W / area * (r->crystals_kg / (2200 * area)) / 0.8);
}

static double surface_boils(traced *of, const boil_row *r)
{
    bool boils = r->layer_boiling && !r->boiling && r->layer_m > 0.5e-3 && r->boiling_point_K - r->temperature_K > 5;
    if (!boils || isnan(of->surface_since_s))
        of->surface_since_s = boils ? r->time_s : (double)NAN;
    return r->time_s - of->surface_since_s;
}

/* The measure as case/grading.h says it, of a row; NaN: it does not say. */
static double measure(traced *of, boil_watch_kind k, const boil_row *r)
{
    const boil_limits *l = &of->plant->limits;
    const boil_tank *t = &of->plant->tank;
    const double none = (double)NAN;
    switch (k) {
    case BOIL_WATCH_TOO_HOT:
        return r->boiling_point_K - l->boiling_point_high_K;
    case BOIL_WATCH_TOO_COOL:
        return r->boiling ? l->boiling_point_low_K - r->boiling_point_K : none;
    case BOIL_WATCH_NEARLY_DRY:
        return -r->water_kg / bath_kg(r);
    case BOIL_WATCH_FREEBOARD:
        return used_up(of, r->freeboard_m);
    case BOIL_WATCH_OVERFLOW:
        return -r->freeboard_m;
    case BOIL_WATCH_OVERFLOW_STILL:
        return r->still_level_m - t->depth_m;
    case BOIL_WATCH_HEATER_BARE:
        return from_below(of) ? none : boil_tank_heater_top(t) - r->still_level_m;
    case BOIL_WATCH_FLOOR_BARE:
        return from_below(of) ? -r->still_level_m : none;
    case BOIL_WATCH_LEVEL_HIGH:
        return t->mark_m > 0 ? r->still_level_m - t->mark_m : none;
    case BOIL_WATCH_PARTS_BARE:
        return boil_tank_parts_top(t) - r->still_level_m;
    case BOIL_WATCH_SALT_BED:
        return r->bed_superheat_K > 0 ? r->bed_superheat_K : none;
    case BOIL_WATCH_CRYSTALS:
        return r->crystals_kg > 0 ? r->crystals_kg / of->start_kg : none;
    case BOIL_WATCH_RESTART:
        return from_below(of) ? under_crystals(of, r) * fmin(1, fmax(0, r->crystals_kg / (1e-3 * of->start_kg) - 1)) : none;
    case BOIL_WATCH_FLOOR_HOT:
        return from_below(of) ? r->temperature_K + fmax(r->bed_superheat_K, under_crystals(of, r)) : none;
    case BOIL_WATCH_SURFACE_BOILS:
        return surface_boils(of, r);
    case BOIL_WATCH_LAYER:
        return r->boiling ? none : used_up(of, r->left_m);
    case BOIL_WATCH_WATER_FAST:
        return r->boiling ? used_up(of, r->left_m) : none;
    case BOIL_WATCH_SURGE:
        return 1 + fmax(0, r->steam_kg_s - r->calm_kg_s) / (r->time_s < of->calm_from_s ? r->calm_kg_s : of->calm_kg_s);
    default: /* a crust's mass is in no row */
        return none;
    }
}

/* Of 100 degC at the lowest pressure of a room that the model takes, a lower end. */
#define STEAM_KG_M3 0.4

/* What a reading may be off, in the measure: half of the last place that is printed, or five in a thousand. */
static double allowed(const traced *of, boil_watch_kind k, double worst)
{
    const double half_mm = 1.3e-3, half_K = 0.06, share = 5e-4;
    bool afloat = k == BOIL_WATCH_LAYER || k == BOIL_WATCH_WATER_FAST, of_freeboard = afloat || k == BOIL_WATCH_FREEBOARD;
    if (afloat) /* the yield of what floats is known to 1.2 g/kg on the side of more: simulate/potential.h */
        return 2 * 1.2e-3 * of->history->summary.layer_max_kg.value / STEAM_KG_M3 / boil_tank_area(&of->plant->tank) /
                   fmax(of->plant->limits.freeboard_m, 1e-3) +
               0.005 * fabs(worst);
    double least = of_freeboard ? half_mm / fmax(of->plant->limits.freeboard_m, 1e-3)
                   : k == BOIL_WATCH_TOO_HOT || k == BOIL_WATCH_TOO_COOL || k == BOIL_WATCH_FLOOR_HOT ||
                           k == BOIL_WATCH_SALT_BED || k == BOIL_WATCH_RESTART
                       ? half_K
                   : k == BOIL_WATCH_SURFACE_BOILS                          ? 1
                   : k == BOIL_WATCH_NEARLY_DRY || k == BOIL_WATCH_CRYSTALS ? share
                   : k == BOIL_WATCH_SURGE                                  ? 0.05
                                                                            : half_mm;
    return fmax(least, 0.005 * fabs(worst));
}

typedef struct {
    double worst,
        hides; /* what could hide beside the worst row: as much as it rises or falls from one row to the next nearby */
    double from_s[BOIL_SEVERITIES], spacing_s[BOIL_SEVERITIES];
} retraced;

static retraced retrace(traced *of, boil_watch_kind k, const boil_grading *g, double margin)
{
    const boil_history *h = of->history;
    retraced found = {.worst = -(double)INFINITY};
    double last = (double)NAN, rise = 0;
    size_t since_worst = 0;
    of->surface_since_s = (double)NAN;
    for (int s = 0; s < BOIL_SEVERITIES; s++)
        found.from_s[s] = (double)NAN;
    for (size_t i = 0; i < h->rows_count; i++) {
        double x = measure(of, k, &h->rows[i]), before_s = i > 0 ? h->rows[i - 1].time_s : h->rows[i].time_s;
        double change = fabs(x - last);
        if (since_worst++ < 2)
            found.hides = fmax(found.hides, change);
        if (x > found.worst) {
            found.worst = x;
            found.hides = fmax(change, rise);
            since_worst = 0;
        }
        rise = change;
        last = x;
        for (int s = 0; s < BOIL_SEVERITIES; s++)
            if (isnan(found.from_s[s]) && boil_grading_is_past(g, (boil_severity)s, x, margin)) {
                found.from_s[s] = h->rows[i].time_s;
                found.spacing_s[s] = h->rows[i].time_s - before_s;
            }
    }
    return found;
}

static int compared;

static void assert_same(traced *of, boil_watch_kind k)
{
    const boil_watched *w = &of->history->summary.watched[k];
    const boil_grading *g = &boil_gradings[boil_grading_watched[k]];
    double margin = boil_grading_margin(g, &of->plant->limits);
    if (k == BOIL_WATCH_CRUST || boil_grading_of(g, w->worst.value, margin) == BOIL_SEVERITIES)
        return;
    retraced found = retrace(of, k, g, margin);
    double off = fmax(allowed(of, k, w->worst.value), isfinite(found.hides) ? found.hides : 0);
    if (!(fabs(found.worst - w->worst.value) <= off))
        fail_msg("%s, %s, %d: worst %g, of the rows %g", of->name, of->run, (int)k, w->worst.value, found.worst);
    for (int s = 0; s < BOIL_SEVERITIES; s++) {
        bool near = w->worst.value - g->from[s] - margin < off; /* it may just not show in a row */
        if (isnan(w->from_s[s]) || near)
            continue;
        double apart = found.from_s[s] - w->from_s[s];
        bool two = k == BOIL_WATCH_LAYER || k == BOIL_WATCH_WATER_FAST || k == BOIL_WATCH_SURFACE_BOILS;
        double rows =
            two ? 2 : 1; /* of a yield known so far only; of a time that begins, too, with the row that shows it first */
        double hidden_s = k == BOIL_WATCH_SURFACE_BOILS ? 30 : 0.05; /* a film that comes and goes within a step */
        if (!(apart >= -hidden_s && apart <= rows * found.spacing_s[s] + 0.05))
            fail_msg("%s, %s, %d: from %g s, of the rows %g s", of->name, of->run, (int)k, w->from_s[s], found.from_s[s]);
        compared++;
    }
    compared++;
}

/* Calm is the steam of the boil at the start, or as it has boiled for a minute. */
static double calm_of(const boil_history *h)
{
    return h->summary.steam_steady_kg_s;
}

/* Before that it is what the heat full on would boil off: the runs that begin quiet and surge have it full on. */
static double calm_from(const boil_history *h)
{
    const double minute_s = 60;
    size_t i = 0;
    if (h->rows[0].boiling)
        return 0;
    while (i + 1 < h->quiet_count && h->quiet[i + 1].start_s - h->quiet[i].end_s < minute_s)
        i++;
    return isnan(h->quiet[i].end_s) ? (double)INFINITY : h->quiet[i].end_s + minute_s;
}

static void retrace_run(const char *name, const scenario *s, const char *run, const boil_history *h)
{
    traced of = {name, run, &s->plant, h, calm_of(h), calm_from(h), h->summary.bath_mass_start_kg, (double)NAN};
    assert_true(h->rows_count > 0);
    for (int k = 0; k < BOIL_WATCHES; k++)
        assert_same(&of, (boil_watch_kind)k);
}

static boil_run_options traced_as(boil_closures c)
{
    boil_run_options o = boil_run_options_default();
    o.row_interval_s = 1;
    o.row_fast_s = 0.002; /* forty kilograms of water let go within a twentieth of a second */
    o.closures = o.traced = c;
    return o;
}

static void retrace_scenario(const char *name, const scenario *s)
{
    const boil_closures runs[] = {BOIL_CLOSURES_LIKELY, BOIL_CLOSURES_GRAVE, BOIL_CLOSURES_SUDDEN, BOIL_CLOSURES_MILD};
    for (size_t i = 0; i < sizeof runs / sizeof runs[0]; i++) {
        boil_run_options o = traced_as(runs[i]);
        boil_history h;
        assert_int_equal(boil_run(&s->plant, &s->schedule, &o, &h), BOIL_OK);
        retrace_run(name, s, boil_closures_name(runs[i]), &h);
        boil_history_free(&h);
    }
}

static void rows_show_what_is_said(void **state)
{
    (void)state;
    each_shipped(retrace_scenario, (size_t)sampled(1, 5));
    print_message("%d clocks and values\n", compared);
    assert_true(compared > sampled(60, 5));
}

/* What is let go has its rows from the run that it comes of. */
static void a_trigger_run_shows_what_is_said(void **state)
{
    (void)state;
    scenario s;
    boil_run_set set;
    int found = 0;
    read_shipped("water-while-quiet.bath", &s);
    boil_run_options o = traced_as(BOIL_CLOSURES_TRIGGER);
    assert_int_equal(boil_run_set_of(&s.plant, &s.schedule, &o, &set), BOIL_OK);
    for (size_t i = 0; i < set.count; i++)
        if (set.other[i].closures == BOIL_CLOSURES_TRIGGER) {
            retrace_run("water-while-quiet.bath", &s, "trigger", &set.other[i].history);
            found++;
        }
    assert_true(found > 0);
    boil_run_set_free(&set);
    scenario_free(&s);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {cmocka_unit_test(rows_show_what_is_said),
                                       cmocka_unit_test(a_trigger_run_shows_what_is_said)};
    return cmocka_run_group_tests_name("retraced", tests, NULL, NULL);
}
