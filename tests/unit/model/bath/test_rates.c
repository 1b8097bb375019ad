/* The rates of the whole: how the loop boil, stirring, water, boil is slowed, (2) of bath/bath.h, its slope by differences. */
#include <string.h>

#include "support/begun.h"
#include "support/close.h"

#include "bath/bath.h"
#include "properties/water.h"
#include "support/cases.h"

/* At the same bath, with so much steam in it. */
static boil_rates_view view_with(begun *n, double steam_kg)
{
    boil_rates_view v;
    n->y[BOIL_STATE_STEAM_HELD] = steam_kg;
    assert_int_equal(boil_rates_at(&n->b, 0, n->y, &n->guess, &v, NULL), BOIL_OK);
    return v;
}

/* A weak bath that boils under a milligram to a kilogram of cold water, which all but ends the boil. */
static void a_loop_is_slowed_by_what_the_steam_stirs_in(void **state)
{
    (void)state;
    boil_plant p = open_plant(60e3);
    p.charge.value = CELSIUS(112);
    begun n;
    begun_of(&n, &p);
    assert_true(n.b.boiling);
    double steam_kg = n.y[BOIL_STATE_STEAM_HELD], fresh_J_kg = boil_water_enthalpy(CELSIUS(20));
    boil_bath_begin_layer(&n.b, 0, fresh_J_kg);
    for (double layer_kg = 1e-6; layer_kg < 2; layer_kg *= 100) {
        const double share = 1e-4;
        n.y[BOIL_STATE_LAYER_MASS] = layer_kg;
        n.y[BOIL_STATE_LAYER_HEAT] = layer_kg * fresh_J_kg;
        boil_rates_view more = view_with(&n, steam_kg * (1 + share)), less = view_with(&n, steam_kg * (1 - share)),
                        v = view_with(&n, steam_kg);
        double by = (more.layer.mixing_kg_s - less.layer.mixing_kg_s) / (more.pool.leaving_kg_s - less.pool.leaving_kg_s);
        double s = fmin(1, fmax(0, v.steam.formed_kg_s / v.pool.leaving_kg_s));
        print_message("%g kg: %.3g W of mixing, loop 1 + %.3g\n", layer_kg, v.heat.water_cooling_W, v.steam.loop - 1);
        assert_true(v.heat.water_cooling_W > 0);
        assert_close(v.steam.loop - 1, s * v.heat.mixing_J_kg / v.heat.latent_J_kg * by, 1e-3, 0);
    }
}

/* Amounts that go straight from one state to another, both boiling under water: in between the level is what it is, as near as what a
   kilogram takes up goes straight. */
static void a_level_is_known_between_two(void **state)
{
    (void)state;
    boil_plant p = open_plant(60e3);
    begun n;
    begun_of(&n, &p);
    boil_bath_begin_layer(&n.b, 0, boil_water_enthalpy(CELSIUS(20)));
    double start[BOIL_STATE_FIXED], end[BOIL_STATE_FIXED], y[BOIL_STATE_FIXED];
    boil_rates_view v, w, there;
    n.y[BOIL_STATE_LAYER_MASS] = 3;
    n.y[BOIL_STATE_LAYER_HEAT] = 3 * boil_water_enthalpy(CELSIUS(30));
    memcpy(start, n.y, sizeof start);
    memcpy(end, n.y, sizeof end);
    end[BOIL_STATE_BATH_WATER] += 8;
    end[BOIL_STATE_STEAM_HELD] *= 3;
    end[BOIL_STATE_LAYER_MASS] = 1;
    end[BOIL_STATE_LAYER_HEAT] = boil_water_enthalpy(CELSIUS(60));
    assert_int_equal(boil_rates_at(&n.b, 0, start, &n.guess, &v, NULL), BOIL_OK);
    assert_int_equal(boil_rates_at(&n.b, 0, end, &n.guess, &w, NULL), BOIL_OK);
    assert_close(boil_rates_level_between(&n.b, &v, &w, 0, 0, start), v.levels.upper_m, 1e-14, 0);
    assert_close(boil_rates_level_between(&n.b, &v, &w, 1, 0, end), w.levels.upper_m, 1e-14, 0);
    for (double share = 0.1; share < 1; share += 0.1) {
        for (int i = 0; i < BOIL_STATE_FIXED; i++)
            y[i] = start[i] + share * (end[i] - start[i]);
        assert_int_equal(boil_rates_at(&n.b, 0, y, &n.guess, &there, NULL), BOIL_OK);
        print_message("%.6f m: %.2g m off\n", there.levels.upper_m,
                      boil_rates_level_between(&n.b, &v, &w, share, 0, y) - there.levels.upper_m);
        assert_close(boil_rates_level_between(&n.b, &v, &w, share, 0, y), there.levels.upper_m, 0, 2e-5);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(a_loop_is_slowed_by_what_the_steam_stirs_in),
                                       cmocka_unit_test(a_level_is_known_between_two)};
    return cmocka_run_group_tests_name("rates", tests, NULL, NULL);
}
