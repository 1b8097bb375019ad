/* What is bailed and drained takes of the water afloat, the bath and its undissolved salt: volumes and shares by hand. */
#include "support/close.h"

#include "bath/rates_parts.h"
#include "properties/water.h"

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

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_vessel_takes_what_floats_first),
        cmocka_unit_test(a_drain_takes_salt_in_its_share),
    };
    return cmocka_run_group_tests_name("rates of water", tests, NULL, NULL);
}
