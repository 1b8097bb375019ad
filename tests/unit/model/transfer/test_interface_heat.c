/* Heat from the bath into a layer of water. */
#include "support/close.h"

#include "base/constants.h"
#include "transfer/interface_heat.h"

static const boil_interface_liquid water = {0.65, 983, 4194}, bath = {0.65, 1438, 3045}; /* judged: water at some 60 degC */

static void effusivities(void **state)
{
    (void)state;
    assert_close(boil_interface_effusivity(&water), 1637, 1e-3, 0);
    assert_close(boil_interface_effusivity(&bath), 1687, 1e-3, 0);
}

/* Two half-spaces, worked independently: 15.6 on 140.6 degC. */
static void contact_temperature(void **state)
{
    (void)state;
    assert_close(boil_interface_contact_temperature(&water, 15.6, &bath, 140.6), 79.0, 0, 0.06);
    assert_close(boil_interface_contact_temperature(&water, 15, &water, 85), 50, 1e-12, 0);
}

/* 58.6, 18.5, 7.56 kW/m2 after 1, 10, 60 s for 125 K, as long as the core is thicker than the path (a path without end here). */
static void fresh_layer(void **state)
{
    (void)state;
    const double cases[][2] = {{1, 58.6}, {10, 18.5}, {60, 7.56}};
    for (int i = 0; i < 3; i++)
        assert_close(125 * boil_interface_conductance(&water, &bath, 1, cases[i][0]) / 1e3, cases[i][1], 3e-3, 0);
}

/* The same heat flows out of the one body as into the other: e (T_c - T)/sqrt(pi t). */
static void heat_is_continuous(void **state)
{
    (void)state;
    const double contact = boil_interface_contact_temperature(&water, 20, &bath, 140);
    for (double t = 0.2; t < 100; t *= 3) {
        const double into = boil_interface_effusivity(&water) * (contact - 20) / sqrt(BOIL_PI * t);
        assert_close(boil_interface_effusivity(&bath) * (140 - contact) / sqrt(BOIL_PI * t), into, 1e-12, 0);
        assert_close(120 * boil_interface_conductance(&water, &bath, 1, t), into, 1e-12, 0);
    }
}

/* The path rules from when conduction has reached through it, never before: 0.65 W/mK over 1.3, 3, 8 mm. */
static void old_layer(void **state)
{
    (void)state;
    const double paths[] = {BOIL_INTERFACE_PATH_FAST, BOIL_INTERFACE_PATH_LIKELY, BOIL_INTERFACE_PATH_SLOW};
    for (int i = 0; i < 3; i++) {
        assert_close(boil_interface_conductance(&water, &bath, paths[i], 3600), 0.65 / paths[i], 1e-12, 0);
        for (double t = 0; t < 200; t += 0.5) {
            const double now = boil_interface_conductance(&water, &bath, paths[i], t);
            assert_true(isfinite(now) && now >= 0.65 / paths[i]);
            assert_true(boil_interface_conductance(&water, &bath, paths[i], t + 0.5) <= now);
        }
    }
    /* 1482 W/m2K within the first 0.1 s, 469 sqrt(1 s/t) after. */
    assert_close(boil_interface_conductance(&water, &bath, BOIL_INTERFACE_PATH_LIKELY, 0), 468.7 * sqrt(10), 1e-3, 0);
    assert_close(boil_interface_conductance(&water, &bath, BOIL_INTERFACE_PATH_LIKELY, 0.15), 468.7 / sqrt(0.15), 1e-3, 0);
    assert_true(boil_interface_conductance(&water, &bath, BOIL_INTERFACE_PATH_LIKELY, 1) > 0.65 / BOIL_INTERFACE_PATH_LIKELY);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(effusivities),       cmocka_unit_test(contact_temperature), cmocka_unit_test(fresh_layer),
        cmocka_unit_test(heat_is_continuous), cmocka_unit_test(old_layer),
    };
    return cmocka_run_group_tests_name("interface_heat", tests, NULL, NULL);
}
