/* The guards of what ends a mode, of made-up views. */
#include "support/close.h"

#include "bath/modes.h"
#include "bath/rates.h"
#include "support/cases.h"

/* A layer that has come to nothing is gone, but not while water still falls on it, if only a drop a second, nor under a lid that
   drips. */
static void a_layer_is_not_gone_while_water_comes(void **state)
{
    (void)state;
    boil_plant p = open_plant(60e3);
    boil_bath b;
    boil_rates_guess guess;
    boil_rates_view v;
    double y[BOIL_STATE_FIXED], g[BOIL_GUARDS];
    assert_int_equal(boil_modes_start(&b, &p, y, &guess), BOIL_OK);
    assert_int_equal(boil_rates_at(&b, 0, y, &guess, &v, NULL), BOIL_OK);
    b.layer = BOIL_WATER_LAYER_STILL;
    v.layer.mass_kg = 0;
    v.inflow.water_kg_s = 0;
    boil_modes_guards(&b, &v, 0, g);
    assert_close(g[BOIL_GUARD_LAYER_GONE], BOIL_BATH_LAYER_GONE, 0, 0);
    v.inflow.water_kg_s = 1e-4;
    boil_modes_guards(&b, &v, 0, g);
    assert_close(g[BOIL_GUARD_LAYER_GONE], -1, 0, 0);
    v.inflow.water_kg_s = 0;
    b.lid_on = true;
    boil_modes_guards(&b, &v, 0, g);
    assert_close(g[BOIL_GUARD_LAYER_GONE], -1, 0, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(a_layer_is_not_gone_while_water_comes)};
    return cmocka_run_group_tests_name("modes", tests, NULL, NULL);
}
