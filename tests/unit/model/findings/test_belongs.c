/* unit/model/findings/test_belongs.c -- a finding is given to the acts that it comes of, by what a run recorded of them: histories made
   by hand, where it is known which. */
#include <string.h>

#include "support/close.h"

#include "case/grading.h"
#include "findings/belongs.h"

enum { HEAT, HEAVY, LIGHT, QUIET, BOILING, SALT, ACTS };

typedef struct {
    boil_plant plant;
    boil_action actions[ACTS];
    boil_schedule schedule;
    boil_act_result acts[ACTS];
    boil_load_result loads[2];
    boil_addition_result additions[3];
    boil_history history;
} made;

/* A bath of a cubic metre; the fire is turned up, a heavy load goes in and a light one, water onto the quiet bath and later into the boil,
   and salt: an act a hundred seconds. */
static void make(made *m)
{
    static const boil_action_kind kinds[ACTS] = {BOIL_ACTION_HEAT,  BOIL_ACTION_LOAD,  BOIL_ACTION_LOAD,
                                                 BOIL_ACTION_WATER, BOIL_ACTION_WATER, BOIL_ACTION_SALTS};
    *m = (made){.plant = boil_plant_default()};
    m->plant.tank = (boil_tank){.length_m = 1, .width_m = 1, .depth_m = 1.2, .level_m = 1};
    m->plant.limits.recovery_s = 120;
    m->plant.limits.freeboard_m = 0.15;
    for (size_t i = 0; i < ACTS; i++) {
        double t = 100 * (double)i;
        m->actions[i] = (boil_action){.time_s = t, .kind = kinds[i], .order = i};
        m->acts[i] = (boil_act_result){t, BOIL_ACT_DONE};
    }
    m->actions[HEAT].is.heat = (boil_action_heat){.order = BOIL_HEAT_TURN, .dial = 1};
    m->actions[HEAVY].is.load = boil_load_default();
    m->actions[HEAVY].is.load.mass_kg = 2 * m->plant.limits.load_per_volume_kg_m3;
    m->actions[LIGHT].is.load = boil_load_default();
    m->actions[LIGHT].is.load.mass_kg = 0.1 * m->plant.limits.load_per_volume_kg_m3;
    m->loads[0] =
        (boil_load_result){.action = HEAVY, .time_s = 100, .boil_lost_s = 101, .recovery_s = 300, .left_m = (double)NAN};
    m->loads[1] =
        (boil_load_result){.action = LIGHT, .time_s = 200, .boil_lost_s = 201, .recovery_s = 60, .left_m = (double)NAN};
    const boil_addition_result calm = {
        .freeboard_min_m = 0.3, .boil_lost_s = (double)NAN, .steam_before_kg_s = 0.01, .steam_peak_kg_s = 0.011};
    for (size_t i = 0; i < 3; i++)
        m->additions[i] = calm;
    m->additions[0].action = QUIET;
    m->additions[0].kind = BOIL_ACTION_WATER;
    m->additions[0].quiet_poured_kg = 5;
    m->additions[1].action = BOILING;
    m->additions[1].kind = BOIL_ACTION_WATER;
    m->additions[2].action = SALT;
    m->additions[2].kind = BOIL_ACTION_SALTS;
    m->schedule = (boil_schedule){.actions = m->actions, .count = ACTS, .duration_s = 3600};
    m->history = (boil_history){.acts = m->acts,
                                .acts_count = ACTS,
                                .loads = m->loads,
                                .loads_count = 2,
                                .additions = m->additions,
                                .additions_count = 3};
}

static void assert_belongs(made *m, const boil_finding *f, const bool want[ACTS])
{
    bool got[ACTS] = {false};
    size_t count = 0;
    for (size_t i = 0; i < ACTS; i++)
        count += want[i];
    size_t said = boil_finding_belongs(&m->plant, &m->schedule, &m->history, f, got);
    for (size_t i = 0; i < ACTS; i++)
        if (got[i] != want[i])
            fail_msg("kind %zu: act %zu", f->kind, i);
    assert_int_equal(said, count);
}

static boil_finding of(boil_found_kind kind, double worst_s)
{
    return (boil_finding){.kind = kind, .id = boil_finding_listed(kind, NULL), .worst_s = worst_s};
}

#define BELONGS(m, finding, ...)                                                                                               \
    do {                                                                                                                       \
        const boil_finding one = finding;                                                                                      \
        assert_belongs(m, &one, (const bool[ACTS]){__VA_ARGS__});                                                              \
    } while (0)

static void each_to_its_own(void **state)
{
    (void)state;
    made m;
    make(&m);
    BELONGS(&m, of(BOIL_FOUND_LOAD_HEAVY, 100), [HEAVY] = true);
    BELONGS(&m, of(BOIL_FOUND_BOIL_LOST, 400), [HEAVY] = true);
    BELONGS(&m, of(BOIL_FOUND_WATER_QUIET, 300), [QUIET] = true);
    BELONGS(&m, of(BOIL_FOUND_LAYER, 350), [QUIET] = true);
    BELONGS(&m, of(BOIL_FOUND_TOO_COOL, 900), [QUIET] = true, [BOILING] = true);
    BELONGS(&m, of(BOIL_FOUND_SALT_BED, 900), [SALT] = true);
    BELONGS(&m, of(BOIL_FOUND_RESTART, 900), [HEAT] = true);
    BELONGS(&m, of(BOIL_FOUND_TALL, (double)NAN), [HEAT] = false);
    BELONGS(&m, of(BOIL_FOUND_NOT_RESOLVED, 900), [HEAT] = false);
}

/* Where nothing was recorded that shows it, the last that could have done it, begun by then. */
static void what_only_another_run_shows(void **state)
{
    (void)state;
    made m;
    make(&m);
    m.additions[0].quiet_poured_kg = 0;
    BELONGS(&m, of(BOIL_FOUND_LAYER, 900), [BOILING] = true);
    BELONGS(&m, of(BOIL_FOUND_LAYER, 350), [QUIET] = true);
    BELONGS(&m, of(BOIL_FOUND_LAYER, 250), [HEAT] = false);
    BELONGS(&m, of(BOIL_FOUND_SURGE, 900), [SALT] = true);
}

/* Room at the rim is taken by what is poured, by the volume of a load, or by steam. */
static void room_at_the_rim(void **state)
{
    (void)state;
    made m;
    make(&m);
    BELONGS(&m, of(BOIL_FOUND_FREEBOARD, 900), [HEAT] = true);
    m.loads[0].level_max_m = 1.05 + 0.5 * m.actions[HEAVY].is.load.mass_kg / 7850;
    BELONGS(&m, of(BOIL_FOUND_FREEBOARD, 900), [HEAVY] = true);
    m.loads[0].level_max_m = 1.15; /* far more than it displaces */
    BELONGS(&m, of(BOIL_FOUND_FREEBOARD, 900), [HEAT] = true);
    m.additions[1].freeboard_min_m = 0.1;
    m.additions[1].level_rise_m = 0.05;
    BELONGS(&m, of(BOIL_FOUND_FREEBOARD, 900), [BOILING] = true);
    m.additions[1].steam_peak_kg_s = 0.04;
    BELONGS(&m, of(BOIL_FOUND_SURGE, 900), [BOILING] = true);
}

/* An overflow because of a layer belongs to the water of the layer, though that was poured long before. */
static void what_it_comes_of(void **state)
{
    (void)state;
    made m;
    make(&m);
    boil_finding f = of(BOIL_FOUND_OVERFLOW, 3000);
    f.because = boil_finding_listed(BOIL_FOUND_LAYER, NULL);
    BELONGS(&m, f, [QUIET] = true);
    m.loads[1].pockets_kg = 0.1;
    BELONGS(&m, f, [QUIET] = true, [LIGHT] = true);
}

/* An act that never came is to blame for nothing, nor is one that came after. */
static void only_what_was_done(void **state)
{
    (void)state;
    made m;
    make(&m);
    m.acts[HEAVY] = (boil_act_result){(double)NAN, BOIL_ACT_LAPSED};
    BELONGS(&m, of(BOIL_FOUND_LOAD_HEAVY, 900), [HEAT] = false);
    m.history.acts_count = 1;
    BELONGS(&m, of(BOIL_FOUND_WATER_QUIET, 900), [HEAT] = false);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(each_to_its_own),  cmocka_unit_test(what_only_another_run_shows), cmocka_unit_test(room_at_the_rim),
        cmocka_unit_test(what_it_comes_of), cmocka_unit_test(only_what_was_done),
    };
    return cmocka_run_group_tests_name("belongs", tests, NULL, NULL);
}
