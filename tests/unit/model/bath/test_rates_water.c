/* What is bailed and drained takes of the water afloat, the bath and its undissolved salt: volumes and shares by hand. And what a lid
   condenses of a boil. */
#include "support/begun.h"
#include "support/close.h"

#include "bath/rates.h"
#include "bath/rates_parts.h"
#include "properties/water.h"
#include "support/cases.h"

#define BATH_KG_M3 1500.0

static const boil_rates_solution solution = {.mass_kg = 1000, .density_kg_m3 = BATH_KG_M3};

/* Two streams of one kind, the second twice as wide. */
static boil_rates_outflow outflow_of(boil_feed_kind kind, double rate_m3_s, const double y[], const boil_rates_salts *salts,
                                     const boil_rates_layer *layer)
{
    boil_bath_feed feeds[] = {{.kind = kind, .rate_kg_s = rate_m3_s / 3}, {.kind = kind, .rate_kg_s = rate_m3_s * 2 / 3}};
    const boil_bath b = {.feeds = feeds, .feeds_count = 2};
    return boil_rates_of_outflow(&b, y, &solution, salts, layer);
}

/* A vessel leaves of what floats as much as it takes in two seconds: q V/(V + 2 q). What it takes is as large as it is. */
static void a_vessel_takes_what_floats_first(void **state)
{
    (void)state;
    const double y[BOIL_STATE_FIXED] = {0}, water_kg_m3 = boil_water_density(300), floats_m3 = 0.01, rate_m3_s = 1.5e-3;
    const boil_rates_salts salts = {.undissolved_kg = 0};
    const boil_rates_layer layer = {.mass_kg = floats_m3 * water_kg_m3, .temperature_K = 300}, none = {.mass_kg = 0};
    boil_rates_outflow o = outflow_of(BOIL_FEED_BAIL, rate_m3_s, y, &salts, &layer);
    double floating_m3_s = 0.5e-3 * 0.01 / (0.01 + 1e-3) + 1e-3 * 0.01 / (0.01 + 2e-3);
    assert_close(o.layer_kg_s, floating_m3_s * water_kg_m3, 1e-12, 0);
    assert_close(o.layer_kg_s / water_kg_m3 + o.liquid_kg_s / BATH_KG_M3, rate_m3_s, 1e-12, 0);
    o = outflow_of(BOIL_FEED_BAIL, rate_m3_s, y, &salts, &none);
    assert_close(o.layer_kg_s, 0, 0, 0);
    assert_close(o.liquid_kg_s, rate_m3_s * BATH_KG_M3, 1e-12, 0);
}

/* Of 15 kg of salt 5 are a crust, which stays, and of the rest 4 lie on the floor; 0.3 % of the liquid leave in a second. */
static void a_drain_takes_salt_in_its_share(void **state)
{
    (void)state;
    double y[BOIL_STATE_FIXED] = {0};
    const double solid_kg[BOIL_SALTS] = {9, 4.5, 1.5}, rate_m3_s = 2e-3;
    const boil_rates_salts salts = {.undissolved_kg = 10, .crust_kg = 5}, crust = {.undissolved_kg = 0, .crust_kg = 5};
    const boil_rates_layer layer = {.mass_kg = 10, .temperature_K = 300};
    for (int i = 0; i < BOIL_SALTS; i++)
        y[BOIL_STATE_SOLID_NAOH + i] = solid_kg[i];
    y[BOIL_STATE_BED_MASS] = 4;
    boil_rates_outflow o = outflow_of(BOIL_FEED_DRAIN, rate_m3_s, y, &salts, &layer);
    assert_close(o.liquid_kg_s, 3, 1e-12, 0);
    assert_close(o.layer_kg_s, 0, 0, 0);
    for (int i = 0; i < BOIL_SALTS; i++)
        assert_close(o.solid_kg_s[i], 0.003 * solid_kg[i] * 10 / 15, 1e-12, 0);
    assert_close(o.bed_kg_s, 0.003 * 4, 1e-12, 0);
    o = outflow_of(BOIL_FEED_DRAIN, rate_m3_s, y, &crust, &layer);
    assert_close(o.liquid_kg_s, 3, 1e-12, 0);
    assert_close(o.solid_kg_s[0] + o.bed_kg_s, 0, 0, 0);
}

/* A lid condenses what its loss to the room carries away, U A dT over 2257 kJ/kg [IAPWS R7-97, 100 degC]; a share drips back. Over
   a weak boil as much evaporates; a strong one keeps the air off, and its steam makes up for that. */
static void a_lid_condenses_what_it_loses(void **state)
{
    (void)state;
    boil_plant p = open_plant(60e3);
    p.fittings.lid_on = true;
    begun n;
    begun_of(&n, &p);
    double loss_W = p.fittings.lid_W_m2K * p.tank.length_m * p.tank.width_m * (CELSIUS(140.5) - p.ambient.temperature_K);
    double takes_kg_s = loss_W / 2257e3, returned = p.fittings.lid_return;
    static const double times[] = {50, 0.5};
    for (size_t i = 0; i < 2; i++) {
        boil_rates_surface s;
        assert_int_equal(
            boil_rates_of_surface(&n.b, &n.v.solution, &n.v.salts, &n.v.layer, times[i] * takes_kg_s, &n.guess, &s), BOIL_OK);
        double evaporates_kg_s = s.bath.evaporation_kg_s + s.layer.evaporation_kg_s;
        print_message("steam of %g times what it takes: %.3g kg/s evaporate, %.3g drip\n", times[i], evaporates_kg_s,
                      s.condensate_kg_s);
        assert_int_equal(evaporates_kg_s < 0.5 * takes_kg_s, i == 0);
        assert_close(s.condensate_kg_s, returned * takes_kg_s, 0.01, 0);
    }
}

/* Off its boil the steam of drip that boils on a bath is condensed first, its heat over 2257 kJ/kg [IAPWS R7-97, 100 degC], and the
   bath evaporates so much less; within a degree of the boil the less, the nearer it is. Where the drip gets no heat, or loses some,
   there is none. */
static void drip_that_boils_is_condensed_first(void **state)
{
    (void)state;
    const double below_K[] = {15, 1.5, 0.75, 0.25}, first[] = {1, 1, 0.75, 0.25}, shares[] = {0, -1, 0.25, 0.5};
    for (size_t k = 0; k < sizeof below_K / sizeof below_K[0]; k++) {
        boil_plant p = open_plant(60e3);
        double bath_K = p.charge.temperature_K = p.charge.value - below_K[k];
        p.fittings.lid_on = true;
        begun n;
        begun_of(&n, &p);
        double loss_W = p.fittings.lid_W_m2K * p.tank.length_m * p.tank.width_m * (bath_K - p.ambient.temperature_K);
        boil_rates_surface still, s;
        n.b.layer = BOIL_WATER_LAYER_STILL;
        assert_int_equal(boil_rates_of_surface(&n.b, &n.v.solution, &n.v.salts, &n.v.layer, 0, &n.guess, &still), BOIL_OK);
        n.b.layer = BOIL_WATER_LAYER_BOILS;
        for (size_t i = 0; i < sizeof shares / sizeof shares[0]; i++) {
            n.v.layer.heat_W = shares[i] * loss_W;
            assert_int_equal(boil_rates_of_surface(&n.b, &n.v.solution, &n.v.salts, &n.v.layer, 0, &n.guess, &s), BOIL_OK);
            double less_kg_s = still.bath.evaporation_kg_s - s.bath.evaporation_kg_s;
            assert_close(less_kg_s, first[k] * fmax(0, n.v.layer.heat_W) / 2257e3, 1e-3, 1e-10 * still.bath.evaporation_kg_s);
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_vessel_takes_what_floats_first),
        cmocka_unit_test(a_drain_takes_salt_in_its_share),
        cmocka_unit_test(a_lid_condenses_what_it_loses),
        cmocka_unit_test(drip_that_boils_is_condensed_first),
    };
    return cmocka_run_group_tests_name("rates of water", tests, NULL, NULL);
}
