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

/* The cut-off of a water control puts the heat out as the still level falls to it, and lets it back a centimetre higher; where there is
   no control, or no level is asked for, it never does. */
static void a_low_level_cuts_the_heat(void **state)
{
    (void)state;
    boil_plant p = open_plant(60e3);
    double g[BOIL_GUARDS];
    begun n;
    begun_of(&n, &p);
    for (int i = 0; i < 8; i++) {
        bool controlled = i % 2 == 1, asked = i / 2 % 2 == 1;
        p.control.mode = controlled ? BOIL_WATER_CONTROL_PROPORTIONED : BOIL_WATER_CONTROL_NONE;
        p.control.low_level_m = asked ? 0.4 : 0;
        n.b.heat_cut = i / 4 == 1;
        n.v.levels.still_m = 0.37;
        boil_modes_guards(&n.b, &n.v, 0, g);
        assert_close(g[BOIL_GUARD_LOW_LEVEL], !(controlled && asked) ? -1 : n.b.heat_cut ? -0.04 : 0.03, 1e-12, 0);
    }
}

/* What a bath holds over its boil under a crust is set free as that breaks, and none is made of it; of one that is not over its boil,
   be it by less than a millionth of a kelvin, it is nothing, never less. */
static void a_crust_that_breaks_sets_free_what_is_over_the_boil(void **state)
{
    (void)state;
    const double over_K[] = {-3, -5e-7, 0, 0.5, 4};
    for (size_t i = 0; i < sizeof over_K / sizeof over_K[0]; i++) {
        boil_plant p = open_plant(60e3);
        p.charge.temperature_K = p.charge.value - 10;
        begun n;
        begun_of(&n, &p);
        boil_rates_solution *s = &n.v.solution;
        s->temperature_K = s->boiling_point_K + over_K[i];
        boil_bath_heat heat = boil_bath_heat_at(&n.b, n.y, s->temperature_K);
        n.y[BOIL_STATE_BATH_HEAT] = heat.total_J;
        n.y[BOIL_STATE_CRUST_MASS] = n.v.salts.crust_kg = 1;
        boil_modes_break_crust(&n.b, n.y, &n.v);
        assert_close(n.y[BOIL_STATE_CRUST_MASS], 0, 0, 0);
        assert_close(n.y[BOIL_STATE_HELD_HEAT], fmax(0, over_K[i]) * heat.capacity_J_K, 0.01, 0);
        assert_close(n.y[BOIL_STATE_BATH_HEAT] + n.y[BOIL_STATE_HELD_HEAT], heat.total_J, 1e-12, 0);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_layer_is_not_gone_while_water_comes),
        cmocka_unit_test(a_low_level_cuts_the_heat),
        cmocka_unit_test(a_crust_that_breaks_sets_free_what_is_over_the_boil),
    };
    return cmocka_run_group_tests_name("modes", tests, NULL, NULL);
}
