/* Heat kept down by the weight of the bath. Numbers without another source come from an independent calculation of the same formulas. */
#include "support/brine.h"

#include "equipment/ambient.h"
#include "properties/hydrostatic.h"

static const double mixed[BOIL_SALTS] = {0.8, 0.15, 0.05};

/* Three baths of 51.2 % salts: how much hotter the floor and the mean, MJ, and kg of steam. */
typedef struct {
    double altitude_ft, mass_kg, level_m;
    double floor_K, mean_K, store_MJ, steam_kg;
} tank;

static const tank tanks[] = {{0, 543, 0.406, 1.68, 0.84, 1.39, 0.49},
                             {900, 1228, 0.508, 2.15, 1.08, 4.02, 1.41},
                             {900, 1233, 1.651, 6.50, 3.25, 12.2, 4.30}};

static boil_hydrostatic store_of(const tank *t)
{
    const boil_conditions air = boil_conditions_at(boil_ambient_pressure_at_altitude(t->altitude_ft * 0.3048), 1);
    const boil_mixture one = boil_mixture_of(mixed, 0.512), bath = boil_mixture_scaled(&one, t->mass_kg);
    boil_hydrostatic h;
    assert_int_equal(boil_hydrostatic_store(&air, &bath, t->level_m, 0, &h), BOIL_OK);
    return h;
}

static void stores(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof tanks / sizeof *tanks; i++) {
        const boil_hydrostatic h = store_of(&tanks[i]);
        print_message("floor %.3f K, mean %.3f K, %.3f MJ, %.3f kg\n", h.floor_K, h.mean_K, h.store_J / 1e6, h.steam_kg);
        assert_close(h.floor_K, tanks[i].floor_K, 0.01, 0);
        assert_close(h.mean_K, tanks[i].mean_K, 0.01, 0);
        assert_close(h.store_J / 1e6, tanks[i].store_MJ, 0.01, 0);
        assert_close(h.steam_kg, tanks[i].steam_kg, 0.015, 0);
    }
}

/* What the boiling point at the floor's pressure says, K. */
static double floor_by_boiling_points(double pressure_Pa, double level_m)
{
    const boil_conditions top = boil_conditions_at(pressure_Pa, 1);
    const boil_mixture m = boil_mixture_of(mixed, 0.512);
    const double T = brine_boils_at(&top, &m, NULL), head = boil_solution_density(&m, T) * BOIL_GRAVITY * level_m;
    const boil_conditions floor = boil_conditions_at(pressure_Pa + head, 1);
    return brine_boils_at(&floor, &m, NULL) - T;
}

/* By the vapour pressure instead of the enthalpy of the solution, which are up to 2 % apart in the heat of vaporisation (Olsson et
   al.); the formula is of first order in dT as well. */
static void agrees_with_the_boiling_point_at_that_pressure(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof tanks / sizeof *tanks; i++) {
        const double pressure = boil_ambient_pressure_at_altitude(tanks[i].altitude_ft * 0.3048);
        assert_close(store_of(&tanks[i]).floor_K, floor_by_boiling_points(pressure, tanks[i].level_m), 0.03, 0);
    }
    const boil_conditions thin = boil_conditions_at(60e3, 1);
    const boil_mixture one = boil_mixture_of(mixed, 0.512);
    boil_hydrostatic h;
    assert_int_equal(boil_hydrostatic_store(&thin, &one, 0.406, 0, &h), BOIL_OK);
    assert_close(h.floor_K, floor_by_boiling_points(60e3, 0.406), 0.03, 0);
}

/* Pure water, 0.2 m deep, 958.35 kg/m3 at 100 degC: 1.88 kPa raise the boiling point by IAPWS-IF97 as much. */
static void water_as_the_steam_tables(void **state)
{
    (void)state;
    const boil_conditions air = boil_conditions_at(BOIL_STANDARD_ATMOSPHERE, 1);
    const boil_mixture water = {100, {0, 0, 0}};
    boil_hydrostatic h;
    assert_int_equal(boil_hydrostatic_store(&air, &water, 0.2, 0, &h), BOIL_OK);
    const boil_conditions floor = boil_conditions_at(BOIL_STANDARD_ATMOSPHERE + 958.35 * BOIL_GRAVITY * 0.2, 1);
    assert_close(h.floor_K, floor.saturation_K - air.saturation_K, 0.03, 0);
}

static void limits(void **state)
{
    (void)state;
    tank t = tanks[0];
    t.level_m = 0;
    assert_true(store_of(&t).store_J == 0 && store_of(&t).steam_kg == 0);
    /* E as H^2 A in shallow baths: dT as H, C as H A. */
    t.level_m = 0.01, t.mass_kg = 10;
    tank twice = t;
    twice.level_m = 0.02, twice.mass_kg = 20;
    assert_close(store_of(&twice).store_J / store_of(&t).store_J, 4, 2e-3, 0);
    const boil_conditions air = boil_conditions_at(BOIL_STANDARD_ATMOSPHERE, 1);
    const boil_mixture one = boil_mixture_of(mixed, 0.512);
    boil_hydrostatic low, steel;
    assert_int_equal(boil_hydrostatic_store(&air, &one, 0.4, 0, &low), BOIL_OK);
    assert_int_equal(boil_hydrostatic_store(&air, &one, 0.4, 1000, &steel), BOIL_OK);
    assert_close(steel.store_J - low.store_J, 1000 * low.mean_K, 1e-9, 0);
    assert_int_equal(boil_hydrostatic_store(&air, &(boil_mixture){1, {50, 0, 0}}, 0.4, 0, &low), BOIL_NO_ROOT);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(stores),
        cmocka_unit_test(agrees_with_the_boiling_point_at_that_pressure),
        cmocka_unit_test(water_as_the_steam_tables),
        cmocka_unit_test(limits),
    };
    return cmocka_run_group_tests_name("hydrostatic", tests, NULL, NULL);
}
