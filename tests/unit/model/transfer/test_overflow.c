/* Steam that lifts a bath over its rim: the steady rate, the volume, and the surge of a layer. Numbers come from an independent
   calculation of the same formulas: they check arithmetic. */
#include "support/close.h"

#include "transfer/overflow.h"

#define INCH 0.0254 /* m, exact */

/* Baths of 0.53 kg/m3 steam: levels in inches, w* in kg/s at K 1.18, 1.53, 3.19, 5, P* in kg. */
typedef struct {
    double area_m2, level_in, depth_in;
    double critical[4], potential;
} tank;

static const tank tanks[] = {{0.929, 16.3, 24.5, {0.0504, 0.0654, 0.1363, 0.2136}, 0.1025},
                             {0.519, 65, 75, {0.0080, 0.0104, 0.0216, 0.0339}, 0.070},
                             {1.672, 20, 30, {0.0901, 0.1169, 0.2437, 0.3819}, 0.225}};
enum { TANKS = sizeof tanks / sizeof *tanks };

static boil_overflow_pool pool(const tank *t)
{
    return (boil_overflow_pool){t->area_m2, t->depth_in * INCH, t->level_in * INCH, 0.53};
}

/* V of a bath of 1438 kg/m3: 0.2374, 0.4949, 0.7758 m/s for K 1.53, 3.19, 5. */
static double drift_velocity(double drift)
{
    boil_swell law = boil_swell_default();
    law.drift = drift;
    return boil_swell_drift_velocity(&law, 0.085, 1438, 0.53);
}

static void drift_velocities(void **state)
{
    (void)state;
    assert_close(drift_velocity(1.53), 0.2374, 0, 5e-5);
    assert_close(drift_velocity(3.19), 0.4949, 0, 6e-5);
    assert_close(drift_velocity(5), 0.7758, 0, 5e-5);
}

static void critical_steam_rates(void **state)
{
    (void)state;
    const double drifts[] = {1.18, 1.53, 3.19, 5};
    const boil_swell law = boil_swell_default();
    for (int i = 0; i < TANKS; i++) {
        const boil_overflow_pool p = pool(&tanks[i]);
        for (int k = 0; k < 4; k++)
            assert_close(boil_overflow_critical_steam_rate(&p, &law, drift_velocity(drifts[k])), tanks[i].critical[k], 0, 6e-5);
        assert_close(boil_overflow_potential_to_rim(&p), tanks[i].potential, 5e-3, 0);
    }
}

/* At that rate the swelled level of the drift-flux law is the rim, for any C0 and K. */
static void critical_steam_brings_the_surface_to_the_rim(void **state)
{
    (void)state;
    for (double distribution = 1; distribution < 1.6; distribution += 0.25) {
        for (double level = 10; level < 24.5; level += 3.5) {
            const tank t = {0.929, level, 24.5, {0}, 0};
            const boil_overflow_pool p = pool(&t);
            boil_swell law = boil_swell_default();
            law.distribution = distribution;
            for (double V = 0.1; V < 1; V *= 1.6) {
                const double j = boil_overflow_critical_steam_rate(&p, &law, V) / (p.area_m2 * p.vapour_kg_m3);
                assert_close(p.still_level_m / (1 - boil_swell_void_upper(&law, V, j)), p.depth_m, 1e-12, 0);
            }
        }
    }
}

static void critical_steam_has_limits(void **state)
{
    (void)state;
    const boil_swell law = boil_swell_default();
    boil_overflow_pool p = {0.929, 0.6, 0.6, 0.53};
    assert_true(boil_overflow_critical_steam_rate(&p, &law, 0.24) == 0 && boil_overflow_potential_to_rim(&p) == 0);
    p.still_level_m = 0.7; /* over the rim already */
    assert_true(boil_overflow_critical_steam_rate(&p, &law, 0.24) == 0 && boil_overflow_potential_to_rim(&p) == 0);
    assert_true(boil_overflow_rim_void(&p) == 0);
    p.still_level_m = 0.6 * (1 - 1 / 1.2) * 1.001; /* just above a sixth of the depth */
    assert_true(boil_overflow_critical_steam_rate(&p, &law, 0.24) > 10);
    p.still_level_m = 0.6 * (1 - 1 / 1.2) * 0.999;
    assert_true(isinf(boil_overflow_critical_steam_rate(&p, &law, 0.24)));
}

/* A bench tank at 1600 m, 9.8 of 32 cm: 0.0244 kg of potential is 1.8 times what fills the freeboard, and surges at 0.47 kg/s
   against a critical 0.059. Without the depth and at C 1 it would seem 0.054: too little. */
static void shallow_surge_is_fast(void **state)
{
    (void)state;
    const boil_swell law = boil_swell_default();
    const boil_overflow_pool p = {0.135, 0.32, 0.098, 0.451};
    const double critical = boil_overflow_critical_steam_rate(&p, &law, 0.2349), potential = 0.0244;
    assert_close(critical, 0.059, 0, 5e-4);
    assert_close(potential / boil_overflow_potential_to_rim(&p), 1.8, 0, 0.05);
    assert_close(boil_overflow_surge_rate(potential, p.still_level_m, 0.3), 0.47, 0, 5e-3);
    assert_close(boil_overflow_surge_rate(potential, 0.406, 1), 0.054, 0, 5e-4);
    const double left = boil_overflow_freeboard_left(&p, potential, p.still_level_m, p.still_level_m);
    assert_close(left, 0.222 - 1.1 * potential / (0.135 * 0.451), 1e-12, 0);
    assert_true(left < 0 && boil_overflow_possible(&p, potential, left, critical));
}

/* 1.8 litres of trapped water afloat at 100 degC, normal-shift tank: 0.32 kg, 2.0 kg/s against 0.117. */
static void pockets_of_trapped_water(void **state)
{
    (void)state;
    const boil_overflow_pool p = pool(&tanks[2]);
    assert_close(boil_overflow_surge_rate(0.32, p.still_level_m, 0.3), 2.0, 0, 0.05);
    const double left = boil_overflow_freeboard_left(&p, 0.32, p.still_level_m, p.still_level_m);
    assert_true(boil_overflow_possible(&p, 0.32, left, tanks[2].critical[1]));
    assert_false(
        boil_overflow_possible(&p, 0.16, boil_overflow_freeboard_left(&p, 0.16, p.still_level_m, p.still_level_m), 0.117));
}

/* The lesser of what the calm boil and what the layer leave. */
static void freeboard_left(void **state)
{
    (void)state;
    const boil_overflow_pool p = pool(&tanks[1]);
    assert_close(boil_overflow_freeboard_left(&p, 0, p.still_level_m, p.still_level_m + 0.1), 10 * INCH - 0.1, 1e-12, 0);
    assert_close(boil_overflow_freeboard_left(&p, 0.05, p.still_level_m, p.still_level_m + 0.1), 10 * INCH - 0.2, 1e-2, 0);
    assert_close(boil_overflow_freeboard_left(&p, 0.07, p.still_level_m + 0.02, 0), 10 * INCH - 0.02 - 0.28, 1e-2, 0);
    assert_true(isnan(boil_overflow_freeboard_left(&p, (double)NAN, 1, 1)));
}

static void both_conditions_must_hold(void **state)
{
    (void)state;
    const boil_overflow_pool p = pool(&tanks[0]);
    assert_true(boil_overflow_possible(&p, 0.2, -0.01, 0.1));
    assert_false(boil_overflow_possible(&p, 0.2, 0.01, 0.1));  /* freeboard left */
    assert_false(boil_overflow_possible(&p, 0.2, -0.01, 100)); /* too slow */
    /* 0.2 kg surge at 0.44 kg/s by C 1, at 1.45 by C 0.3, which rules. */
    assert_true(boil_overflow_possible(&p, 0.2, -0.01, 1.4));
    assert_false(boil_overflow_possible(&p, 0.2, -0.01, 1.5));
    assert_true(boil_overflow_possible(&p, 0.2, -0.01, (double)INFINITY));
    assert_false(boil_overflow_possible(&p, 0, -0.01, (double)INFINITY));
    assert_true(boil_overflow_possible(&p, (double)NAN, (double)NAN, 0.1));
    assert_true(boil_overflow_surge_rate(0, 0, 0.3) == 0);
    assert_true(isinf(boil_overflow_surge_rate(0.1, 0, 0.3)));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(drift_velocities),
        cmocka_unit_test(critical_steam_rates),
        cmocka_unit_test(critical_steam_brings_the_surface_to_the_rim),
        cmocka_unit_test(critical_steam_has_limits),
        cmocka_unit_test(shallow_surge_is_fast),
        cmocka_unit_test(pockets_of_trapped_water),
        cmocka_unit_test(freeboard_left),
        cmocka_unit_test(both_conditions_must_hold),
    };
    return cmocka_run_group_tests_name("overflow", tests, NULL, NULL);
}
