/* The guards of what ends a mode, of made-up views. */
#include "support/begun.h"
#include "support/close.h"

#include "bath/modes.h"
#include "support/cases.h"

/* A layer that has come to nothing is gone, but not while water still falls on it, if only a drop a second, nor under a lid that
   drips. */
static void a_layer_is_not_gone_while_water_comes(void **state)
{
    (void)state;
    boil_plant p = open_plant(60e3);
    double g[BOIL_GUARDS];
    begun n;
    begun_of(&n, &p);
    n.b.layer = BOIL_WATER_LAYER_STILL;
    n.v.layer.mass_kg = 0;
    n.v.inflow.water_kg_s = 0;
    boil_modes_guards(&n.b, &n.v, 0, g);
    assert_close(g[BOIL_GUARD_LAYER_GONE], BOIL_BATH_LAYER_GONE, 0, 0);
    n.v.inflow.water_kg_s = 1e-4;
    boil_modes_guards(&n.b, &n.v, 0, g);
    assert_close(g[BOIL_GUARD_LAYER_GONE], -1, 0, 0);
    n.v.inflow.water_kg_s = 0;
    n.b.lid_on = true;
    boil_modes_guards(&n.b, &n.v, 0, g);
    assert_close(g[BOIL_GUARD_LAYER_GONE], -1, 0, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(a_layer_is_not_gone_while_water_comes)};
    return cmocka_run_group_tests_name("modes", tests, NULL, NULL);
}
