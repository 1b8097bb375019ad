/* Parts of the bath's rates by themselves: the wave of a load that goes in, and salt that water soaking in dissolves. */
#include "support/close.h"

#include "base/constants.h"
#include "bath/rates_parts.h"
#include "support/cases.h"

/* The wave is 1.5 times the displaced flow over the area, for a period of the tank's first sloshing mode. In a long shallow tank that is
   2 L/sqrt(g d) [Merian 1828], in a deep one sqrt(4 pi L/g) [Lamb, Hydrodynamics, section 228]. */
static void a_load_raises_a_wave_for_a_sloshing_period(void **state)
{
    (void)state;
    const double long_m = 4, area_m2 = 6, g = 9.80665, depths_m[] = {0.04, 20}, flow_m3_s = 0.02 / 10 + 0.05 / 20;
    const double periods_s[] = {2 * long_m / sqrt(g * 0.04), sqrt(4 * BOIL_PI * long_m / g)};
    boil_plant p = open_plant(60e3);
    p.tank.length_m = 1.5;
    p.tank.width_m = long_m;
    boil_bath_body bodies[] = {{.displaced_m3 = 0.02, .in_start_s = 5, .in_end_s = 15, .lowering = true},
                               {.displaced_m3 = 0.05, .in_start_s = 5, .in_end_s = 25, .lowering = true},
                               {.displaced_m3 = 0.5, .in_start_s = 0, .in_end_s = 5}};
    boil_bath b = {.plant = &p, .area_m2 = area_m2, .bodies = bodies, .bodies_count = 3};
    for (size_t i = 0; i < 2; i++) {
        boil_rates_view v = {.solution.volume_m3 = depths_m[i] * area_m2};
        boil_rates_levels l = boil_rates_of_levels(&b, &v);
        assert_close(l.still_m, depths_m[i], 1e-12, 0);
        assert_close(l.surge_m, 1.5 * flow_m3_s / area_m2 * periods_s[i], 1e-3, 0);
        assert_close(l.upper_m, l.still_m + l.surge_m, 1e-12, 0);
    }
    b.bodies_count = 0;
    assert_close(boil_rates_of_levels(&b, &(boil_rates_view){.solution.volume_m3 = 1}).surge_m, 0, 0, 0);
}

/* Of 15 kg, 5 of them a crust and 4 of the rest on the floor, each salt and the bed give in their share; all of it dissolves. */
static void water_that_soaks_in_dissolves_of_all_salt(void **state)
{
    (void)state;
    double y[BOIL_STATE_FIXED] = {0}, sum = 0;
    const double solid_kg[BOIL_SALTS] = {9, 4.5, 1.5};
    for (int i = 0; i < BOIL_SALTS; i++)
        y[BOIL_STATE_SOLID_NAOH + i] = solid_kg[i];
    y[BOIL_STATE_BED_MASS] = 4;
    boil_rates_salts salts = {.undissolved_kg = 10, .crust_kg = 5, .dissolving_kg_s = {0.01, 0.02, 0.03}, .settling_kg_s = 0.5};
    boil_rates_soak_salts(y, 0.3, &salts);
    for (int i = 0; i < BOIL_SALTS; i++) {
        assert_close(salts.dissolving_kg_s[i] - 0.01 * (i + 1), 0.3 * solid_kg[i] / 15, 1e-12, 0);
        sum += salts.dissolving_kg_s[i];
    }
    assert_close(sum, 0.06 + 0.3, 1e-12, 0);
    assert_close(salts.settling_kg_s, 0.5 - 0.3 * 4 / 10, 1e-12, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_load_raises_a_wave_for_a_sloshing_period),
        cmocka_unit_test(water_that_soaks_in_dissolves_of_all_salt),
    };
    return cmocka_run_group_tests_name("rates of the bath", tests, NULL, NULL);
}
