/* A layer of water folded into the bath. Numbers come from an independent calculation of the same formulas, printed to two or three
   digits: they check arithmetic, not physics. */
#include "support/close.h"

#include "base/constants.h"
#include "transfer/overturn.h"

static const boil_overturn likely = {.turnover_factor = 1, .mixing_efficiency = 0.05};

/* 1438 kg/m3 under water of 55 degC, 0.39 m deep, stirred by steam of a superficial velocity. */
static boil_overturn_pool boils(double steam_m_s)
{
    return (boil_overturn_pool){
        .area_m2 = 0.929, .depth_m = 0.39, .bath_kg_m3 = 1438, .water_kg_m3 = 985.7, .stirring_W_kg = BOIL_GRAVITY * steam_m_s};
}

static void turnover_times(void **state)
{
    (void)state;
    const double cases[][2] = {{0.025, 0.853}, {0.1, 0.537}, {1, 0.249}};
    for (int i = 0; i < 3; i++) {
        const boil_overturn_pool p = boils(cases[i][0]);
        assert_close(boil_overturn_time(&likely, &p), cases[i][1], 0, 6e-4);
    }
    const boil_overturn_pool p = boils(0.025);
    const boil_overturn grave = {.turnover_factor = 0.3, .mixing_efficiency = 0.05};
    const boil_overturn mild = {.turnover_factor = 3, .mixing_efficiency = 0.05};
    assert_close(boil_overturn_time(&grave, &p), 0.26, 0, 5e-3);
    assert_close(boil_overturn_time(&mild, &p), 2.56, 0, 5e-3);
}

/* Corrsin's mixing time, (1/2) 3 (5/pi)^(2/3) (l^2/eps)^(1/3) at l = H/2 (its last term, for the molecules, adds 0.01 s), from
   memory: within the band of C. */
static void turnover_is_of_the_order_of_turbulent_mixing(void **state)
{
    (void)state;
    const boil_overturn_pool p = boils(0.025);
    const double l = p.depth_m / 2, corrsin = 1.5 * pow(5 / BOIL_PI, 2.0 / 3) * cbrt(l * l / p.stirring_W_kg);
    const double ratio = corrsin / boil_overturn_time(&likely, &p);
    assert_true(ratio > 0.3 && ratio < 3);
    print_message("turnover: %.2f s, by Corrsin %.2f s\n", boil_overturn_time(&likely, &p), corrsin);
}

static void lifting_times(void **state)
{
    (void)state;
    const double cases[][2] = {{0.02, 2.58}, {0.05, 1.03}, {0.2, 0.258}};
    const boil_overturn_pool p = boils(0.025);
    for (int i = 0; i < 3; i++) {
        const boil_overturn o = {1, cases[i][0]};
        assert_close(boil_overturn_lifting_time(&o, &p, 7.5), cases[i][1], 6e-3, 0);
    }
}

static void mixing_has_its_limits(void **state)
{
    (void)state;
    double slope;
    boil_overturn_pool p = boils(0);
    assert_true(boil_overturn_mixing(&likely, &p, 7.5, &slope) == 0 && slope == 0);
    assert_true(isinf(boil_overturn_time(&likely, &p)) && isinf(boil_overturn_lifting_time(&likely, &p, 7.5)));
    p = boils(0.025);
    const double turns = boil_overturn_time(&likely, &p);
    assert_close(boil_overturn_mixing(&likely, &p, 1e-9, NULL), 1e-9 / turns, 1e-8, 0); /* a film: tau_t alone */
    const double limit = 2 * 0.05 * 1438 * 0.929 * p.stirring_W_kg / boil_overturn_buoyancy(&p);
    assert_close(boil_overturn_mixing(&likely, &p, 1e9, NULL), limit, 1e-6, 0); /* a thick one: the energy alone */
    p.depth_m *= 2;
    assert_close(boil_overturn_time(&likely, &p) / turns, 1.587, 0, 1e-3);
    p.water_kg_m3 = 1500; /* heavier: no energy needed */
    assert_true(boil_overturn_lifting_time(&likely, &p, 7.5) == 0 && boil_overturn_buoyancy(&p) < 0);
}

static void slope_is_the_derivative(void **state)
{
    (void)state;
    for (double mass = 1e-3; mass < 100; mass *= 10) {
        boil_overturn_pool p = boils(0.05);
        double slope;
        boil_overturn_mixing(&likely, &p, mass, &slope);
        const double h = 1e-5, eps = p.stirring_W_kg;
        p.stirring_W_kg = eps * exp(h);
        const double more = boil_overturn_mixing(&likely, &p, mass, NULL);
        p.stirring_W_kg = eps * exp(-h);
        assert_close(slope, (more - boil_overturn_mixing(&likely, &p, mass, NULL)) / (2 * h), 1e-8, 0);
    }
}

static void erosion(void **state)
{
    (void)state;
    /* As Ri^(-3/2): with u cubed times u; constant 3.8 at Ri 1000. */
    assert_close(boil_overturn_erosion(5, 0.4, 0.06) / boil_overturn_erosion(5, 0.4, 0.03), 16, 1e-12, 0);
    assert_close(boil_overturn_erosion(5, 0.4, sqrt(2e-3)), sqrt(2e-3) * 3.8 * pow(1000, -1.5), 1e-12, 0);
    assert_close(boil_overturn_erosion(5, 0.4, 10), 2, 1e-14, 0); /* never faster than a fifth */
    assert_close(boil_overturn_erosion(-1, 0.4, 0.1), 0.02, 1e-14, 0);
    assert_true(boil_overturn_erosion(5, 0.4, 0) == 0);
}

/* 236, 590 and 2360 per unit of yield: above 1 from 0.0042, 0.0017 and 0.0004 on. */
static void gain_of_its_own_steam(void **state)
{
    (void)state;
    const double cases[][3] = {{0.02, 236, 0.0042}, {0.05, 590, 0.0017}, {0.2, 2360, 0.0004}};
    const boil_overturn_pool p = boils(0.025);
    for (int i = 0; i < 3; i++) {
        const boil_overturn o = {1, cases[i][0]};
        assert_close(boil_overturn_gain(&o, &p, 0.53, 1), cases[i][1], 5e-3, 0);
        assert_close(boil_overturn_gain(&o, &p, 0.53, cases[i][2]), 1, 0.06, 0);
        /* It is what mixing by tau_e alone answers to the stirring of its own steam. */
        boil_overturn_pool own = p;
        const double steam = 1e-6, escaping = 0.05;
        own.stirring_W_kg = BOIL_GRAVITY * steam / (0.53 * p.area_m2);
        const double mixes = 7.5 / boil_overturn_lifting_time(&o, &own, 7.5);
        assert_close(escaping * mixes / steam, boil_overturn_gain(&o, &p, 0.53, escaping), 1e-12, 0);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(turnover_times),          cmocka_unit_test(turnover_is_of_the_order_of_turbulent_mixing),
        cmocka_unit_test(lifting_times),           cmocka_unit_test(mixing_has_its_limits),
        cmocka_unit_test(slope_is_the_derivative), cmocka_unit_test(erosion),
        cmocka_unit_test(gain_of_its_own_steam),
    };
    return cmocka_run_group_tests_name("overturn", tests, NULL, NULL);
}
