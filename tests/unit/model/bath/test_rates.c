/* The rates of the whole: how the loop boil, stirring, water, boil is slowed, (2) of bath/bath.h, its slope by differences. */
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

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(a_loop_is_slowed_by_what_the_steam_stirs_in)};
    return cmocka_run_group_tests_name("rates", tests, NULL, NULL);
}
