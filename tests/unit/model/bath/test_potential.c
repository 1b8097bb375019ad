/* What floats on a quiet bath and could let go, against the flash that it is worked out from: transfer/flash.h. */
#include "support/close.h"

#include "bath/modes.h"
#include "bath/potential.h"
#include "bath/rates.h"
#include "properties/water.h"
#include "support/cases.h"

typedef struct {
    boil_plant plant;
    boil_bath bath;
    double y[BOIL_STATE_FIXED];
    boil_rates_tables tables;
    boil_rates_guess guess;
    boil_rates_view view;
} pool;

static void look(pool *p)
{
    assert_int_equal(boil_rates_at(&p->bath, 0, p->y, &p->guess, &p->view, NULL), BOIL_OK);
}

/* So much water of 60 degC on a bath that is so far below its boil, 1 m below a rim that is asked to have 1.2 m. */
static void make(pool *p, double floats_kg, double below_K)
{
    p->plant = open_plant(30e3);
    p->plant.limits.freeboard_m = 1.2;
    p->plant.charge.temperature_K = p->plant.charge.value - below_K;
    assert_int_equal(boil_modes_start(&p->bath, &p->plant, p->y, &p->tables, &p->guess), BOIL_OK);
    assert_false(p->bath.boiling);
    boil_bath_begin_layer(&p->bath, 0, boil_water_enthalpy(CELSIUS(60)));
    p->y[BOIL_STATE_LAYER_MASS] = floats_kg;
    p->y[BOIL_STATE_LAYER_HEAT] = floats_kg * boil_water_enthalpy(CELSIUS(60));
    look(p);
}

static double yield_of(const pool *p)
{
    boil_flash_bath b = {p->bath.air, p->view.solution.mixture, p->view.solution.temperature_K, 1};
    return boil_flash_yield(&b, p->view.layer.temperature_K, NULL);
}

/* Little or much: its mass times the yield, and the 1.2 g/kg that potential.c adds for what a near yield is off. */
static void as_much_erupts_as_floats_and_yields(void **state)
{
    (void)state;
    static const double floats_kg[] = {0.02, 0.9, 1.1, 20};
    for (size_t i = 0; i < sizeof floats_kg / sizeof floats_kg[0]; i++) {
        pool p;
        make(&p, floats_kg[i], 3);
        assert_close(boil_potential_erupts(&p.bath, &p.view), floats_kg[i] * (yield_of(&p) + 1.2e-3), 1e-4, 0);
    }
}

/* None where the freeboard asked for is left, where nothing floats, where it boils, and where it is too cold to flash. */
static void else_nothing_erupts(void **state)
{
    (void)state;
    pool p;
    make(&p, 0.9, 3);
    p.plant.limits.freeboard_m = 0.2;
    assert_true(boil_potential_erupts(&p.bath, &p.view) == 0);
    p.plant.limits.freeboard_m = 1.2;
    p.bath.boiling = true;
    assert_true(boil_potential_erupts(&p.bath, &p.view) == 0);
    make(&p, 0, 3);
    assert_true(boil_potential_erupts(&p.bath, &p.view) == 0);
    make(&p, 0.9, 60);
    assert_true(yield_of(&p) == 0 && boil_potential_erupts(&p.bath, &p.view) == 0);
}

/* A yield that is known serves near where it was worked out, as potential.h says: half a kelvin at the boil; further below it up to 6 K,
   a quarter of what it lacks of its boil. */
static void a_known_yield_serves_nearby(void **state)
{
    (void)state;
    static const double cases[][2] = {{1, 0.5}, {12, 3}, {40, 6}};
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++)
        for (int beyond = 0; beyond < 2; beyond++) {
            pool p;
            make(&p, 5, cases[i][0]);
            boil_potential_known known = {.layer_K = 0};
            boil_potential_of(&p.bath, &p.view, 2, &known);
            const double then_K = known.layer_K, away_K = cases[i][1] * (beyond ? 1.02 : 0.98);
            assert_close(then_K, p.view.layer.temperature_K, 1e-12, 0);
            known.top.yield = 0.05; /* one that no warmth is too little for */
            p.view.layer.temperature_K += away_K;
            boil_potential_of(&p.bath, &p.view, 2, &known);
            assert_close(known.layer_K, then_K + beyond * away_K, 1e-12, 0);
        }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(as_much_erupts_as_floats_and_yields),
        cmocka_unit_test(else_nothing_erupts),
        cmocka_unit_test(a_known_yield_serves_nearby),
    };
    return cmocka_run_group_tests_name("potential", tests, NULL, NULL);
}
