/* Parts from the rinse, and water in their hollows, against a lumped body worked out by hand. Steel: EN 1993-1-2 at 20 degC, 439.8 J/kgK
   and 53.3 W/mK. */
#include "support/close.h"

#include "case/carried_in.h"
#include "properties/water.h"

#define ZERO 273.15

static boil_load plate(void)
{
    boil_load l = boil_load_default();
    l.mass_kg = 36;
    l.size_m = 0.00635;
    return l;
}

static void parts_come_to_the_rinses_temperature_by_their_time_constant(void **state)
{
    (void)state;
    boil_load l = plate();
    double resistance = 1 / 500.0 + 0.003175 / (3 * 53.3), tau = 7850 * 439.8 * 0.003175 * resistance;
    assert_close(tau, 22.4, 0.02, 0);
    assert_close(boil_rinsed_K(&l, ZERO + 20, ZERO + 80, 30), ZERO + 80 - 60 * exp(-30 / tau), 0, 0.05);
    assert_close(boil_rinsed_K(&l, ZERO + 20, ZERO + 80, 0), ZERO + 20, 0, 1e-9);
    assert_close(boil_rinsed_K(&l, ZERO + 20, ZERO + 80, 3600), ZERO + 80, 0, 1e-9);
}

/* 15 mL: a ball of 29.4 cm2; at 333 W/m2K and 4.19 kJ/kgK 64 s. */
static void a_thimbleful_has_a_minute(void **state)
{
    (void)state;
    boil_load l = plate();
    l.water_K = ZERO + 15.6;
    l.hollow_m3 = 15e-6;
    l.trapped_kg = 120 * 15e-6 * boil_water_density(l.water_K);
    boil_hollows h = boil_hollows_of(&l, ZERO + 99);
    assert_close(h.conductance_W_K, 120 * 29.4e-4 * 333, 2e-3, 0);
    assert_close(h.release_s / BOIL_HOLLOW_RELEASE, 64, 5e-3, 0);
    assert_close(h.entry_K, ZERO + 15.6, 0, 1e-12);
}

static void water_is_liquid_and_as_warm_as_said(void **state)
{
    (void)state;
    boil_load l = plate();
    l.temperature_K = ZERO - 10;
    assert_close(boil_carried_in_K(&l, ZERO + 99), ZERO, 0, 0);
    l.temperature_K = ZERO + 150;
    assert_close(boil_carried_in_K(&l, ZERO + 99), ZERO + 99, 0, 0);
    l.water_K = ZERO + 60;
    assert_close(boil_carried_in_K(&l, ZERO + 99), ZERO + 60, 0, 0);
    assert_close(boil_hollows_of(&l, ZERO + 99).water_kg, 0, 0, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(parts_come_to_the_rinses_temperature_by_their_time_constant),
        cmocka_unit_test(a_thimbleful_has_a_minute),
        cmocka_unit_test(water_is_liquid_and_as_warm_as_said),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
