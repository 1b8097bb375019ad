/* unit/src/lesson/test_care.c -- the schedule that care makes of a shift: each act in its place, what follows an act behind all that
   came of it, and always one that can be carried out. */
#include "support/close.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "case/checks.h"
#include "case/grading.h"
#include "lesson/care.h"

#define ACTS 5
enum { LOAD, WATER, LIFT, HEAT, SALTS };

typedef struct {
    boil_plant plant;
    boil_schedule done, care;
    debrief_care acts[ACTS];
    size_t *origin;
} made;

/* A load until it is lifted, water a minute after its boil is back, heat twenty seconds after that, and salts. */
static void make(made *m, double duration_s)
{
    *m = (made){.plant = boil_plant_default()};
    m->plant.tank.length_m = m->plant.tank.width_m = m->plant.tank.level_m = 1;
    boil_action acts[ACTS] = {[LOAD] = {.time_s = 100, .kind = BOIL_ACTION_LOAD, .position = 2, .is.load = boil_load_default()},
                              [WATER] = {.time_s = 170,
                                         .kind = BOIL_ACTION_WATER,
                                         .is.water = {7, 60, 290},
                                         .wait = {.state = BOIL_WAIT_BACK, .follows = true, .after = LOAD, .for_s = 60}},
                              [LIFT] = {.time_s = 400, .kind = BOIL_ACTION_LIFT},
                              [HEAT] = {.time_s = 420,
                                        .kind = BOIL_ACTION_HEAT,
                                        .is.heat = {BOIL_HEAT_TURN, 0.9, 0},
                                        .wait = {.follows = true, .after = LIFT, .delay_s = 20}},
                              [SALTS] = {.time_s = 500, .kind = BOIL_ACTION_SALTS, .is.salts = {40, 20, 290, {1, 0, 0}}}};
    acts[LOAD].is.load.mass_kg = 90;
    acts[LOAD].is.load.basket_kg = 9;
    acts[LOAD].is.load.size_m = 6e-3;
    boil_schedule_init(&m->done, duration_s);
    for (size_t i = 0; i < ACTS; i++)
        assert_int_equal(boil_schedule_add(&m->done, &acts[i]), BOIL_OK);
    assert_true(boil_check_schedule(&m->done));
}

/* In place of what was made of it before. */
static void with_care(made *m)
{
    boil_schedule_free(&m->care);
    free(m->origin);
    assert_int_equal(care_schedule(&m->plant, &m->done, m->acts, &m->care, &m->origin), BOIL_OK);
    assert_true(boil_check_schedule(&m->care));
}

static void forget(made *m)
{
    boil_schedule_free(&m->done);
    boil_schedule_free(&m->care);
    free(m->origin);
}

static const boil_action *first_of(const made *m, size_t act)
{
    for (size_t i = 0; i < m->care.count; i++)
        if (m->origin[i] == act)
            return &m->care.actions[i];
    fail_msg("nothing comes of act %zu", act);
    return NULL;
}

static void without_care_all_is_the_same(void **state)
{
    (void)state;
    made m;
    make(&m, 3600);
    with_care(&m);
    assert_int_equal(m.care.count, ACTS);
    for (size_t i = 0; i < ACTS; i++) {
        assert_int_equal(m.origin[i], i);
        assert_int_equal(debrief_change_of(&m.acts[i]), DEBRIEF_SAME);
        assert_memory_equal(&m.care.actions[i].is, &m.done.actions[i].is, sizeof m.done.actions[i].is);
        assert_close(m.care.actions[i].time_s, m.done.actions[i].time_s, 0, 0);
    }
    forget(&m);
}

/* Three parts of a third each, in as long as the whole was; the water follows the last. */
static void a_load_in_parts(void **state)
{
    (void)state;
    made m;
    double mass_kg = 0, last_s = 0;
    size_t parts = 0;
    make(&m, 3600);
    m.acts[LOAD].parts = 3;
    with_care(&m);
    for (size_t i = 0; i < m.care.count; i++) {
        const boil_action *a = &m.care.actions[i];
        if (a->kind != BOIL_ACTION_LOAD)
            continue;
        assert_int_equal(m.origin[i], LOAD);
        assert_close(a->is.load.immersed_s, 300, 1e-12, 0);
        assert_close(a->is.load.basket_kg, 3, 1e-12, 0);
        assert_int_equal(a->wait.state, parts == 0 ? BOIL_WAIT_NONE : BOIL_WAIT_BACK);
        mass_kg += a->is.load.mass_kg;
        last_s = a->time_s;
        parts++;
    }
    assert_int_equal(parts, 3);
    assert_close(mass_kg, 90, 1e-12, 0);
    const boil_action *water = first_of(&m, WATER);
    assert_int_equal(m.care.actions[0].kind, BOIL_ACTION_LOAD);
    assert_true(water->time_s >= last_s);
    assert_int_equal(debrief_change_of(&m.acts[LOAD]), DEBRIEF_SPLIT);
    forget(&m);
}

/* What waits for the boil waits for the last part: at the boil between two of them the next part goes in. */
static void what_waits_waits_for_the_last_part(void **state)
{
    (void)state;
    made m;
    make(&m, 3600);
    m.acts[LOAD].parts = 3;
    m.acts[SALTS].sifted = true;
    with_care(&m);
    const boil_action *salts = first_of(&m, SALTS), *last = NULL;
    for (size_t i = 0; i < m.care.count; i++)
        if (m.care.actions[i].kind == BOIL_ACTION_LOAD)
            last = &m.care.actions[i];
    assert_int_equal(salts->wait.state, BOIL_WAIT_BACK);
    assert_true(salts->wait.follows);
    assert_int_equal(salts->wait.after, last->order);
    assert_close(salts->wait.for_s, 60, 0, 0);
    assert_close(salts->time_s, 500, 0, 0); /* never before its own time */
    m.done.actions[SALTS].time_s = 101;
    with_care(&m);
    for (size_t i = 0; i < m.care.count; i++)
        if (m.care.actions[i].kind == BOIL_ACTION_LOAD)
            last = &m.care.actions[i];
    assert_close(first_of(&m, SALTS)->time_s, last->time_s + last->is.load.lowering_s + 60, 1e-9, 0);
    forget(&m);
}

/* By trapezoids between rows, from the end of the pour before to its own; what was never done has none. */
static void what_had_gone_off_before_each_pour(void **state)
{
    (void)state;
    boil_action acts[] = {{.kind = BOIL_ACTION_WATER, .is.water = {9, 10, 290}},
                          {.kind = BOIL_ACTION_HEAT},
                          {.kind = BOIL_ACTION_WATER, .is.water = {9, 20, 290}},
                          {.kind = BOIL_ACTION_WATER, .is.water = {9, 20, 290}}};
    boil_act_result results[] = {{.done_s = 20}, {.done_s = 25}, {.done_s = 50}, {.done_s = (double)NAN}};
    boil_row rows[10] = {{.time_s = 0}};
    for (size_t i = 0; i < 10; i++)
        rows[i] = (boil_row){.time_s = 10.0 * (double)i, .vented_kg_s = 0.1 * (double)i};
    const boil_schedule s = {.actions = acts, .count = 4};
    const boil_history h = {.rows = rows, .rows_count = 9, .acts = results, .acts_count = 4};
    debrief_care care[4] = {{.less_kg = 7}, {.less_kg = 7}, {.less_kg = 7}, {.less_kg = 7}};
    care_measure_water(&s, &h, care);
    assert_close(care[0].less_kg, 0.5 * 0.3 * 30, 1e-12, 0);              /* 0 to 30 s */
    assert_close(care[1].less_kg, 7, 0, 0);                               /* no water */
    assert_close(care[2].less_kg, 0.5 * (0.7 * 70 - 0.3 * 30), 1e-12, 0); /* 30 to 70 s */
    assert_close(care[3].less_kg, 7, 0, 0);
}

/* From the first row behind the last that has any. */
static void when_crystals_are_gone(void **state)
{
    (void)state;
    boil_row rows[] = {{.time_s = -10, .crystals_kg = 1}, {.time_s = 0},  {.time_s = 10, .crystals_kg = 2},
                       {.time_s = 20, .crystals_kg = 1},  {.time_s = 30}, {.time_s = 40}};
    boil_history h = {.rows = rows + 1, .rows_count = 5};
    assert_close(care_crystals_gone(&h), 30, 0, 0);
    h.rows_count = 3; /* not before its end */
    assert_true(isinf(care_crystals_gone(&h)));
    h.rows_count = 1; /* there were none: from the first row on, and what stands before it is not read */
    assert_close(care_crystals_gone(&h), 0, 0, 0);
}

/* What the shift has no time for is left out, and what follows it. */
static void what_has_no_time_left(void **state)
{
    (void)state;
    made m;
    make(&m, 3600);
    m.done.duration_s = 250;
    m.done.count = WATER + 1;
    m.acts[LOAD].parts = 12;
    with_care(&m);
    for (size_t i = 0; i < m.care.count; i++)
        assert_true(m.care.actions[i].time_s <= 250);
    assert_int_equal(m.care.actions[m.care.count - 1].kind, BOIL_ACTION_WATER);
    forget(&m);
}

/* Half a gallon a minute at most, four times as long once more than that was wrong, and 2.5 lb a minute for each 250 gal of bath:
   judgement, the figures of lesson/care.h. */
static void pours_are_thinner(void **state)
{
    (void)state;
    made m;
    const double gallon_m3 = 3.785411784e-3, pound_kg = 0.45359237;
    make(&m, 3600);
    m.acts[WATER].waits = m.acts[SALTS].sifted = true;
    with_care(&m);
    double thin_s = 7 / (0.5 * gallon_m3 / 60 * boil_water_density(290));
    assert_close(first_of(&m, WATER)->is.water.over_s, thin_s, 1e-12, 0);
    assert_int_equal(first_of(&m, WATER)->wait.state, BOIL_WAIT_BACK); /* it waits for the boil as it is */
    assert_close(first_of(&m, SALTS)->is.salts.over_s, 40 / (2.5 * pound_kg / 60 / (250 * gallon_m3)), 1e-12, 0);
    assert_int_equal(first_of(&m, SALTS)->wait.state, BOIL_WAIT_BOILING);
    m.acts[WATER] = (debrief_care){.slower = 2};
    m.acts[SALTS] = (debrief_care){.slower = 1};
    with_care(&m);
    assert_close(first_of(&m, WATER)->is.water.over_s, 8 * 60, 1e-12, 0);
    assert_close(first_of(&m, SALTS)->is.salts.over_s, 4 * 20, 1e-12, 0);
    assert_int_equal(debrief_change_of(&m.acts[SALTS]), DEBRIEF_SLOWER);
    forget(&m);
}

static void less_is_less(void **state)
{
    (void)state;
    made m;
    make(&m, 3600);
    m.acts[WATER] = (debrief_care){.less = 1, .less_kg = 5};
    m.acts[HEAT].steps = 3;
    with_care(&m);
    assert_close(first_of(&m, WATER)->is.water.mass_kg, 5, 1e-12, 0);
    assert_close(first_of(&m, HEAT)->is.heat.dial, 0.75, 1e-12, 0);
    m.acts[WATER].less_kg = 50; /* never more than was given */
    m.acts[HEAT].steps = 19;
    with_care(&m);
    assert_close(first_of(&m, WATER)->is.water.mass_kg, 7, 1e-12, 0);
    assert_close(first_of(&m, HEAT)->is.heat.dial, 0.05, 1e-12, 0);
    forget(&m);
}

/* A quarter and the mixer; and the fire as it was once the crystals are gone. */
static void gently_over_crystals(void **state)
{
    (void)state;
    made m;
    make(&m, 3600);
    m.acts[HEAT] = (debrief_care){.gentle = true, .gone_s = (double)INFINITY};
    with_care(&m);
    assert_int_equal(m.care.count, ACTS + 1);
    assert_int_equal(first_of(&m, HEAT)->kind, BOIL_ACTION_MIXER);
    m.acts[HEAT].gone_s = 2000;
    with_care(&m);
    const boil_action *last = &m.care.actions[m.care.count - 1];
    assert_int_equal(m.care.count, ACTS + 2);
    assert_close(last->time_s, 2000, 0, 0);
    assert_close(last->is.heat.dial, 0.9, 0, 0);
    forget(&m);
}

/* Where a control has the fire, a quarter by hand meanwhile and then the control again; gone before the act, crystals hold up nothing. */
static void gently_in_place_of_a_control(void **state)
{
    (void)state;
    made m;
    make(&m, 3600);
    m.done.actions[HEAT].is.heat = (boil_action_heat){BOIL_HEAT_ON, 0, 0};
    m.acts[HEAT] = (debrief_care){.gentle = true, .gone_s = 2000};
    with_care(&m);
    const boil_action *last = &m.care.actions[m.care.count - 1], *gently = last;
    for (size_t i = 0; i < m.care.count && gently == last; i++)
        if (m.care.actions[i].kind == BOIL_ACTION_HEAT)
            gently = &m.care.actions[i];
    assert_int_equal(gently->is.heat.order, BOIL_HEAT_TURN);
    assert_close(gently->is.heat.dial, CARE_GENTLE_DIAL, 0, 0);
    assert_int_equal(last->is.heat.order, BOIL_HEAT_ON);
    assert_close(last->time_s, 2000, 0, 0);
    m.acts[HEAT].gone_s = 300;
    with_care(&m);
    assert_int_equal(m.care.count, ACTS + 1);
    forget(&m);
}

/* Until somebody lifts it by its name, or whatever hangs there; and a load that has to wait does so for the boil. */
static void a_part_stays_until_its_lift(void **state)
{
    (void)state;
    static const struct {
        int lifted;
        double stays_s;
    } of[] = {{0, 300}, {3, 300}, {7, (double)INFINITY}};
    for (size_t i = 0; i < sizeof of / sizeof of[0]; i++) {
        made m;
        make(&m, 3600);
        m.done.actions[LOAD].name = 3;
        m.done.actions[LIFT].name = of[i].lifted;
        m.acts[LOAD] = (debrief_care){.parts = 2, .waits = true};
        with_care(&m);
        assert_true(first_of(&m, LOAD)->is.load.immersed_s == of[i].stays_s);
        assert_int_equal(first_of(&m, LOAD)->wait.state, BOIL_WAIT_BOILING);
        assert_close(first_of(&m, LOAD)->wait.for_s, CARE_STEADY_S, 0, 0);
        forget(&m);
    }
}

/* More parts than the list began with; what waits for the last of them beyond the end is not done, nor what follows it. Breaks stay. */
static void what_comes_too_late_takes_what_follows_it_along(void **state)
{
    (void)state;
    made m;
    make(&m, 700);
    assert_int_equal(boil_schedule_add_break(&m.done, 40, 60), BOIL_OK);
    m.done.actions[HEAT] = m.done.actions[SALTS];
    m.done.actions[HEAT].order = HEAT;
    m.done.actions[SALTS].wait = (boil_wait){.follows = true, .after = HEAT, .delay_s = 20};
    m.acts[LOAD].parts = 40;
    m.acts[HEAT].sifted = true;
    with_care(&m);
    size_t parts = 0;
    for (size_t i = 0; i < m.care.count; i++) {
        assert_true(m.origin[i] != HEAT && m.origin[i] != SALTS);
        parts += m.origin[i] == LOAD;
    }
    assert_true(parts > 5 && m.care.count == parts + 2);
    assert_int_equal(m.care.breaks_count, 1);
    assert_close(m.care.breaks[0].to_s, 60, 0, 0);
    m.done.duration_s = 36000; /* all forty, and all that waits */
    with_care(&m);
    assert_int_equal(m.care.count, 40 + ACTS - 1);
    assert_true(first_of(&m, SALTS)->time_s >= first_of(&m, HEAT)->time_s);
    forget(&m);
}

static void liquid_is_slower_and_waits(void **state)
{
    (void)state;
    made m;
    make(&m, 3600);
    m.done.actions[SALTS] = (boil_action){.time_s = 500, .kind = BOIL_ACTION_LIQUID, .order = SALTS};
    m.done.actions[SALTS].is.liquid = (boil_action_liquid){5, 30, 330, {1, 0, 0}, 0.3};
    m.acts[SALTS] = (debrief_care){.slower = 1, .waits = true};
    with_care(&m);
    assert_close(first_of(&m, SALTS)->is.liquid.over_s, 4 * 30, 1e-12, 0);
    assert_close(first_of(&m, SALTS)->is.liquid.mass_kg, 5, 0, 0);
    assert_int_equal(first_of(&m, SALTS)->wait.state, BOIL_WAIT_BOILING);
    forget(&m);
}

/* What care is taken of one act that a finding belongs to. ---------------------------------------------------------------- */

typedef struct {
    boil_plant plant;
    boil_action act;
    boil_schedule schedule;
    boil_act_result done;
    boil_addition_result addition;
    boil_load_result load;
    boil_history history;
    debrief_care care;
} one_act;

/* Of a kind, and all that could be wrong with it is. The bath bears 50 kg of load at a time. */
static void one(one_act *o, boil_action_kind kind)
{
    *o = (one_act){.plant = boil_plant_default(), .act = {.kind = kind}, .done = {.done_s = 0}};
    o->plant.tank.length_m = o->plant.tank.width_m = o->plant.tank.level_m = 1;
    o->plant.limits.load_per_volume_kg_m3 = 50;
    o->addition = (boil_addition_result){.kind = kind,
                                         .quiet_poured_kg = 1,
                                         .freeboard_min_m = -1,
                                         .level_rise_m = 0.1,
                                         .steam_peak_kg_s = 1,
                                         .boil_lost_s = 0,
                                         .recovery_s = (double)NAN};
    o->load = (boil_load_result){
        .was_quiet = true, .left_m = -1, .pockets_kg = 1, .boil_lost_s = 0, .recovery_s = (double)NAN, .level_max_m = 0};
    if (kind == BOIL_ACTION_LOAD) {
        o->act.is.load = boil_load_default();
        o->act.is.load.mass_kg = 90;
        o->act.is.load.basket_kg = 20;
        o->act.is.load.trapped_kg = 1;
    } else if (kind == BOIL_ACTION_HEAT) {
        o->act.is.heat = (boil_action_heat){BOIL_HEAT_TURN, 1, 0};
    }
    o->schedule = (boil_schedule){.actions = &o->act, .count = 1};
    o->history = (boil_history){.acts = &o->done, .acts_count = 1};
    if (kind == BOIL_ACTION_LOAD) {
        o->history.loads = &o->load;
        o->history.loads_count = 1;
    } else if (kind != BOIL_ACTION_HEAT) {
        o->history.additions = &o->addition;
        o->history.additions_count = 1;
    }
}

static bool taken(one_act *o, boil_found_kind kind, boil_severity severity, bool likely)
{
    boil_finding f = {.kind = kind, .id = "it", .severity = severity, .worst_s = 10};
    const boil_findings found = {.list = &f, .count = 1}, none = {.count = 0};
    const care_case c = {&o->plant, &o->schedule, &o->history, NULL, 1};
    boil_outcome outcome = BOIL_OK;
    bool changed = care_take(&c, likely ? &found : &none, likely ? &none : &found, &o->care, &outcome);
    assert_int_equal(outcome, BOIL_OK);
    return changed;
}

/* By lesson/care.h. */
static const struct {
    boil_action_kind act;
    boil_found_kind found;
    debrief_change change;
} cares[] = {
    {BOIL_ACTION_WATER, BOIL_FOUND_WATER_QUIET, DEBRIEF_WHEN_BOILING},
    {BOIL_ACTION_WATER, BOIL_FOUND_LAYER, DEBRIEF_WHEN_BOILING},
    {BOIL_ACTION_WATER, BOIL_FOUND_LAYER_OUTLASTS, DEBRIEF_WHEN_BOILING},
    {BOIL_ACTION_WATER, BOIL_FOUND_SURFACE_BOILS, DEBRIEF_WHEN_BOILING},
    {BOIL_ACTION_WATER, BOIL_FOUND_BOIL_LOST, DEBRIEF_WHEN_BOILING},
    {BOIL_ACTION_WATER, BOIL_FOUND_NEVER_RETURNS, DEBRIEF_WHEN_BOILING},
    {BOIL_ACTION_WATER, BOIL_FOUND_TOO_COOL, DEBRIEF_LESS_WATER},
    {BOIL_ACTION_WATER, BOIL_FOUND_SURGE, DEBRIEF_SLOWER},
    {BOIL_ACTION_WATER, BOIL_FOUND_OVERFLOW, DEBRIEF_SLOWER},
    {BOIL_ACTION_WATER, BOIL_FOUND_FREEBOARD, DEBRIEF_SLOWER},
    {BOIL_ACTION_WATER, BOIL_FOUND_WATER_FAST, DEBRIEF_SLOWER},
    {BOIL_ACTION_WATER, BOIL_FOUND_WATER_QUENCHES, DEBRIEF_SAME},
    {BOIL_ACTION_WATER, BOIL_FOUND_SALT_QUIET, DEBRIEF_SAME},
    {BOIL_ACTION_SALTS, BOIL_FOUND_SALT_QUIET, DEBRIEF_SIFTED},
    {BOIL_ACTION_SALTS, BOIL_FOUND_SALT_SLUG, DEBRIEF_SIFTED},
    {BOIL_ACTION_SALTS, BOIL_FOUND_SALT_BED, DEBRIEF_SIFTED},
    {BOIL_ACTION_SALTS, BOIL_FOUND_SURGE, DEBRIEF_SIFTED},
    {BOIL_ACTION_SALTS, BOIL_FOUND_OVERFLOW, DEBRIEF_SIFTED},
    {BOIL_ACTION_SALTS, BOIL_FOUND_BOIL_LOST, DEBRIEF_WHEN_BOILING},
    {BOIL_ACTION_LIQUID, BOIL_FOUND_LIQUID_STOPS, DEBRIEF_WHEN_BOILING},
    {BOIL_ACTION_LIQUID, BOIL_FOUND_SURGE, DEBRIEF_SLOWER},
    {BOIL_ACTION_LOAD, BOIL_FOUND_HOLLOWS, DEBRIEF_DRAINED},
    {BOIL_ACTION_LOAD, BOIL_FOUND_LAYER, DEBRIEF_DRAINED},
    {BOIL_ACTION_LOAD, BOIL_FOUND_LAYER_OUTLASTS, DEBRIEF_DRAINED},
    {BOIL_ACTION_LOAD, BOIL_FOUND_SURGE, DEBRIEF_DRAINED},
    {BOIL_ACTION_LOAD, BOIL_FOUND_OVERFLOW, DEBRIEF_DRAINED},
    {BOIL_ACTION_LOAD, BOIL_FOUND_FREEBOARD, DEBRIEF_DRAINED},
    {BOIL_ACTION_LOAD, BOIL_FOUND_LOAD_HEAVY, DEBRIEF_SPLIT},
    {BOIL_ACTION_LOAD, BOIL_FOUND_BOIL_LOST, DEBRIEF_SPLIT},
    {BOIL_ACTION_LOAD, BOIL_FOUND_NEVER_RETURNS, DEBRIEF_SPLIT},
    {BOIL_ACTION_LOAD, BOIL_FOUND_LOAD_QUIET, DEBRIEF_WHEN_BOILING},
    {BOIL_ACTION_LOAD, BOIL_FOUND_LOAD_THROUGH, DEBRIEF_WHEN_BOILING},
    {BOIL_ACTION_HEAT, BOIL_FOUND_RESTART, DEBRIEF_GENTLE},
    {BOIL_ACTION_HEAT, BOIL_FOUND_OVERFLOW, DEBRIEF_LESS_HEAT},
    {BOIL_ACTION_HEAT, BOIL_FOUND_FREEBOARD, DEBRIEF_LESS_HEAT},
    {BOIL_ACTION_HEAT, BOIL_FOUND_NEVER_RETURNS, DEBRIEF_SAME},
};

static void each_act_has_its_care(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof cares / sizeof cares[0]; i++) {
        one_act o;
        one(&o, cares[i].act);
        bool changes = cares[i].change != DEBRIEF_SAME;
        if (taken(&o, cares[i].found, BOIL_SEVERITY_CAUTION, true) != changes)
            fail_msg("case %zu: %s", i, changes ? "nothing was done" : "something was done");
        assert_int_equal(debrief_change_of(&o.care), cares[i].change);
        assert_int_equal(o.care.because != NULL, changes);
    }
}

/* How often more care is taken before there is no more of it. */
static void care_has_an_end(void **state)
{
    (void)state;
    one_act o;
    unsigned times = 0;
    one(&o, BOIL_ACTION_WATER);
    while (taken(&o, BOIL_FOUND_SURGE, BOIL_SEVERITY_CAUTION, true))
        assert_int_equal(o.care.slower, ++times);
    assert_int_equal(times, 5);
    assert_true(taken(&o, BOIL_FOUND_WATER_QUIET, BOIL_SEVERITY_CAUTION, true)); /* it waits, and has no slower left */
    assert_false(taken(&o, BOIL_FOUND_WATER_QUIET, BOIL_SEVERITY_CAUTION, true));
    one(&o, BOIL_ACTION_WATER);
    for (times = 0; taken(&o, BOIL_FOUND_TOO_COOL, BOIL_SEVERITY_CAUTION, true);)
        assert_int_equal(o.care.less, ++times);
    assert_int_equal(times, 5);
    assert_false(taken(&o, BOIL_FOUND_SURGE, BOIL_SEVERITY_CAUTION, true)); /* less of it is slow enough */
    one(&o, BOIL_ACTION_HEAT);
    for (times = 0; taken(&o, BOIL_FOUND_OVERFLOW, BOIL_SEVERITY_CAUTION, true);)
        assert_int_equal(o.care.steps, ++times);
    assert_int_equal(times, 19);
    one(&o, BOIL_ACTION_SALTS); /* sifted first, then slower and slower */
    assert_true(taken(&o, BOIL_FOUND_SALT_BED, BOIL_SEVERITY_CAUTION, true));
    for (times = 0; taken(&o, BOIL_FOUND_SALT_BED, BOIL_SEVERITY_CAUTION, true);)
        assert_int_equal(o.care.slower, ++times);
    assert_int_equal(times, 5);
    one(&o, BOIL_ACTION_HEAT); /* a quarter is gentle enough */
    o.act.is.heat.dial = CARE_GENTLE_DIAL;
    assert_false(taken(&o, BOIL_FOUND_RESTART, BOIL_SEVERITY_CAUTION, true));
}

/* Into how many parts, and when it is no longer parted or emptied. */
static void loads_are_parted_up_to_an_end(void **state)
{
    (void)state;
    one_act o;
    unsigned times;
    one(&o, BOIL_ACTION_LOAD); /* 110 kg by 50 are three parts */
    for (times = 3; taken(&o, BOIL_FOUND_LOAD_HEAVY, BOIL_SEVERITY_CAUTION, true); times++)
        assert_int_equal(o.care.parts, times);
    assert_int_equal(o.care.parts, 12);
    static const double kg_and_parts[][2] = {
        {9, 2}, {80, 2}, {80.01, 3}}; /* and a basket of 20 kg: two at least, and no more than needed */
    for (size_t i = 0; i < 3; i++) {
        one(&o, BOIL_ACTION_LOAD);
        o.act.is.load.mass_kg = kg_and_parts[i][0];
        assert_true(taken(&o, BOIL_FOUND_BOIL_LOST, BOIL_SEVERITY_CAUTION, true));
        assert_close(o.care.parts, kg_and_parts[i][1], 0, 0);
    }
    one(&o, BOIL_ACTION_LOAD); /* never more parts than pieces, and one piece is none */
    o.act.is.load.pieces = 2;
    assert_true(taken(&o, BOIL_FOUND_LOAD_HEAVY, BOIL_SEVERITY_CAUTION, true));
    assert_int_equal(o.care.parts, 2);
    assert_false(taken(&o, BOIL_FOUND_LOAD_HEAVY, BOIL_SEVERITY_CAUTION, true));
    one(&o, BOIL_ACTION_LOAD);
    o.act.is.load.pieces = 1;
    assert_false(taken(&o, BOIL_FOUND_LOAD_HEAVY, BOIL_SEVERITY_CAUTION, true));
    one(&o, BOIL_ACTION_LOAD); /* nothing to empty */
    o.act.is.load.trapped_kg = 0;
    assert_false(taken(&o, BOIL_FOUND_HOLLOWS, BOIL_SEVERITY_CAUTION, true));
}

/* A likely one of CAUTION, or over a limit at all; a possible one of WARNING. */
static void what_is_grave_enough_for_care(void **state)
{
    (void)state;
    static const struct {
        boil_found_kind found;
        boil_severity severity;
        bool likely, taken;
    } cases[] = {
        {BOIL_FOUND_SURGE, BOIL_SEVERITY_NOTICE, true, false},      {BOIL_FOUND_SURGE, BOIL_SEVERITY_CAUTION, true, true},
        {BOIL_FOUND_SURGE, BOIL_SEVERITY_CAUTION, false, false},    {BOIL_FOUND_SURGE, BOIL_SEVERITY_WARNING, false, true},
        {BOIL_FOUND_TOO_COOL, BOIL_SEVERITY_NOTICE, true, true},    {BOIL_FOUND_TOO_COOL, BOIL_SEVERITY_CAUTION, false, false},
        {BOIL_FOUND_BOIL_LOST, BOIL_SEVERITY_NOTICE, true, true},   {BOIL_FOUND_FREEBOARD, BOIL_SEVERITY_NOTICE, true, true},
        {BOIL_FOUND_FREEBOARD, BOIL_SEVERITY_NOTICE, false, false},
    };
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        one_act o;
        one(&o, BOIL_ACTION_WATER);
        assert_int_equal(taken(&o, cases[i].found, cases[i].severity, cases[i].likely), cases[i].taken);
    }
    assert_true(care_mends(BOIL_FOUND_HOLLOWS) && care_mends(BOIL_FOUND_FREEBOARD));
    assert_false(care_mends(BOIL_FOUND_WATER_QUENCHES) || care_mends(BOIL_FOUND_TUBES));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(without_care_all_is_the_same),
        cmocka_unit_test(a_load_in_parts),
        cmocka_unit_test(what_has_no_time_left),
        cmocka_unit_test(what_waits_waits_for_the_last_part),
        cmocka_unit_test(what_had_gone_off_before_each_pour),
        cmocka_unit_test(when_crystals_are_gone),
        cmocka_unit_test(pours_are_thinner),
        cmocka_unit_test(less_is_less),
        cmocka_unit_test(gently_over_crystals),
        cmocka_unit_test(gently_in_place_of_a_control),
        cmocka_unit_test(a_part_stays_until_its_lift),
        cmocka_unit_test(what_comes_too_late_takes_what_follows_it_along),
        cmocka_unit_test(liquid_is_slower_and_waits),
        cmocka_unit_test(each_act_has_its_care),
        cmocka_unit_test(care_has_an_end),
        cmocka_unit_test(loads_are_parted_up_to_an_end),
        cmocka_unit_test(what_is_grave_enough_for_care),
    };
    return cmocka_run_group_tests_name("care", tests, NULL, NULL);
}
