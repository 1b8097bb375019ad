/* Steam from water that mixes with the hot bath: how much, from which mixture, and from which bath on. A textbook's flash:
   tests/validate/heats.c. Numbers without another source
   come from an independent calculation on the same correlations: they check arithmetic, not physics. */
#include "support/brine.h"

#include "equipment/ambient.h"
#include "properties/water.h"
#include "transfer/flash.h"

static const double caustic[BOIL_SALTS] = {1, 0, 0}, mixed[BOIL_SALTS] = {0.8, 0.15, 0.05};
static const double layers_degC[] = {15.6, 40, 60, 80, 100};
enum { LAYERS = sizeof layers_degC / sizeof *layers_degC };

/* Below its boil by so much, at 101.325 kPa. */
static boil_flash_bath bath(const double blend[BOIL_SALTS], double salt_fraction, double below_K)
{
    boil_flash_bath b = {.air = boil_conditions_at(BOIL_STANDARD_ATMOSPHERE, 1),
                         .mixture = boil_mixture_of(blend, salt_fraction),
                         .dilution_factor = 1};
    b.temperature_K = brine_boils_at(&b.air, &b.mixture, NULL) - below_K;
    return b;
}

/* What is left is at its boil and the books balance; a mixture that already boils gives nothing, one below it lacks some. */
static void flash_conserves_enthalpy(void **state)
{
    (void)state;
    const boil_conditions air = boil_conditions_at(90e3, 1);
    const boil_mixture m = boil_mixture_of(mixed, 0.45);
    const double boils = brine_boils_at(&air, &m, NULL);
    for (double over = -20; over < 45; over += 8) {
        const double enthalpy = boil_solution_heat(&m, boils + over).enthalpy_J;
        const double steam = boil_flash_steam(&air, &m, enthalpy);
        boil_mixture left = m;
        left.water -= steam;
        const double T = brine_boils_at(&air, &left, NULL);
        assert_close(boil_solution_heat(&left, T).enthalpy_J + steam * boil_steam_enthalpy(T, 90e3), enthalpy, 1e-11, 0);
        assert_true(over == 0 || (steam > 0) == (over > 0));
    }
    assert_close(boil_flash_steam(&air, &m, boil_solution_heat(&m, boils).enthalpy_J), 0, 0, 1e-10);
    assert_true(isnan(boil_flash_steam(&air, &(boil_mixture){1, {50, 0, 0}}, 0)));
}

static void limit_at_the_boil(void **state)
{
    (void)state;
    const double yields[LAYERS] = {0.0522, 0.0882, 0.1176, 0.1471, 0.1767};
    const boil_flash_bath b = bath(mixed, 0.512, 0);
    for (int i = 0; i < LAYERS; i++) {
        const double limit = boil_flash_yield_limit(&b, KELVIN(layers_degC[i]));
        assert_close(limit, yields[i], 0, 1.5e-4);
        assert_close(boil_flash_yield_at(&b, KELVIN(layers_degC[i]), 0.999), limit, 2e-3, 0);
        assert_close(boil_flash_yield(&b, KELVIN(layers_degC[i]), NULL), limit, 5e-4, 0);
    }
}

/* y_inf with L1 at -445, -422 and -375 kJ/kg, of cold and of boiling water. */
static void heat_of_dilution_is_a_range(void **state)
{
    (void)state;
    const double factors[] = {BOIL_FLASH_DILUTION_GRAVE, 1, BOIL_FLASH_DILUTION_MILD};
    const double cold[] = {0.0599, 0.0522, 0.0365}, hot[] = {0.1834, 0.1767, 0.1631};
    boil_flash_bath b = bath(mixed, 0.512, 0);
    const boil_heat h = boil_solution_heat(&b.mixture, b.temperature_K);
    assert_close((h.water - boil_water_enthalpy(b.temperature_K)) / 1e3, -422.4, 0, 0.5);
    for (int i = 0; i < 3; i++) {
        b.dilution_factor = factors[i];
        assert_close(boil_flash_yield_limit(&b, KELVIN(15.6)), cold[i], 0, 1e-3);
        assert_close(boil_flash_yield_limit(&b, KELVIN(100)), hot[i], 0, 1e-3);
        assert_close(boil_flash_yield_at(&b, KELVIN(15.6), 0.9999), boil_flash_yield_limit(&b, KELVIN(15.6)), 1e-3, 0);
    }
}

/* Largest superheat of the partial mixtures, K, and the yield. */
typedef struct {
    const double *blend;
    double salt_fraction, below_K;
    double superheat_K[LAYERS], yield[LAYERS];
} partial;

static const partial partials[] = {{mixed, 0.512, 0, {3.9, 9.9, 16.3, 24.2, 33.6}, {0.0522, 0.0882, 0.1176, 0.1471, 0.1767}},
                                   {mixed, 0.512, 1, {3.1, 9.2, 15.7, 23.6, 33.1}, {0.030, 0.067, 0.097, 0.128, 0.158}},
                                   {mixed, 0.512, 5, {0.0, 6.4, 13.2, 21.4, 31.1}, {0.000, 0.038, 0.070, 0.101, 0.133}},
                                   {mixed, 0.512, 10, {-3.8, 3.0, 10.1, 18.6, 28.6}, {0, 0.016, 0.048, 0.080, 0.113}},
                                   {mixed, 0.512, 20, {-11, -3.6, 4.1, 13.2, 23.9}, {0, 0, 0.017, 0.051, 0.084}},
                                   {caustic, 0.466, 0, {4.7, 11.0, 17.8, 25.9, 35.6}, {0.056, 0.092, 0.121, 0.151, 0.180}},
                                   {caustic, 0.466, 5, {0.9, 7.6, 14.7, 23.1, 33.0}, {0.006, 0.044, 0.075, 0.107, 0.138}}};

/* The table is printed to 0.001 and was searched to phi 0.995 only, which loses 1 % at the boil. */
static void partial_mixtures_are_superheated(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof partials / sizeof *partials; i++) {
        const boil_flash_bath b = bath(partials[i].blend, partials[i].salt_fraction, partials[i].below_K);
        for (int j = 0; j < LAYERS; j++) {
            double most = -HUGE_VAL;
            for (double phi = 0.3; phi < 0.999; phi += 0.01)
                most = fmax(most, boil_flash_superheat(&b, KELVIN(layers_degC[j]), phi));
            assert_close(most, partials[i].superheat_K[j], 0, partials[i].superheat_K[j] <= -11 ? 0.5 : 0.15);
            assert_close(boil_flash_yield(&b, KELVIN(layers_degC[j]), NULL), partials[i].yield[j], 0, 1e-3);
        }
    }
}

static void superheat_over_the_mixing_fraction(void **state)
{
    (void)state;
    const double cold[][2] = {{0.5, -17.2}, {0.6, -7.1}, {0.65, -3.1}, {0.7, 0},   {0.75, 2.2},
                              {0.8, 3.5},   {0.85, 3.9}, {0.9, 3.4},   {0.95, 2.1}};
    const double warm[][2] = {{0.35, -3.6}, {0.4, 1},    {0.5, 8.8}, {0.6, 14.1},
                              {0.7, 16.3},  {0.8, 14.8}, {0.9, 9.2}, {0.95, 5.1}};
    const boil_flash_bath b = bath(mixed, 0.512, 0);
    for (size_t i = 0; i < sizeof cold / sizeof *cold; i++)
        assert_close(boil_flash_superheat(&b, KELVIN(15.6), cold[i][0]), cold[i][1], 0, 0.1);
    for (size_t i = 0; i < sizeof warm / sizeof *warm; i++)
        assert_close(boil_flash_superheat(&b, KELVIN(60), warm[i][0]), warm[i][1], 0, 0.1);
}

/* A partial mixture gives off steam just where it is above its boil, whatever the heat of dilution. */
static void superheat_and_yield_agree(void **state)
{
    (void)state;
    for (double factor = 0.89; factor < 1.1; factor += 0.055) {
        boil_flash_bath b = bath(mixed, 0.512, 4);
        b.dilution_factor = factor;
        for (double phi = 0.31; phi < 0.99; phi += 0.02) {
            const double over = boil_flash_superheat(&b, KELVIN(30), phi);
            assert_true((boil_flash_yield_at(&b, KELVIN(30), phi) > 0) == (over > 0));
        }
    }
}

/* Cold water on a bath close to its boil, where a curve clipped at nothing would lead a search astray. */
static void narrow_maxima_are_found(void **state)
{
    (void)state;
    const double cases[][4] = {
        {5, 0, 0.0365, 1}, {5, 1, 0.014, 0.915}, {5, 2, 0.004, 0.885}, {15.6, 3, 0.0126, 0.862}, {15.6, 4, 0.0060, 0.845}};
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        const boil_flash_bath b = bath(mixed, 0.512, cases[i][1]);
        double phi;
        assert_close(boil_flash_yield(&b, KELVIN(cases[i][0]), &phi), cases[i][2], 0, 3e-4);
        assert_close(phi, cases[i][3], 0, 5e-3);
    }
}

/* Short of any steam, a kelvin of the bath brings it nearer by at most 0.04 kg/kg, one of the layer by half that: whoever knows how
   far it is need not look again until then (bath/potential.c). */
static void warmth_brings_steam_no_faster(void **state)
{
    (void)state;
    for (double salt = 0.3; salt < 0.6; salt += 0.06) {
        for (double below = 0.25; below < 60; below *= 1.5) {
            for (double layer = 5; layer < 96; layer += 30) {
                const boil_flash_bath b = bath(mixed, salt, below), warmer = bath(mixed, salt, below - 0.1);
                const boil_flash_top top = boil_flash_top_near(&b, KELVIN(layer), 0);
                if (!(top.yield < 0))
                    continue;
                assert_true(boil_flash_top_near(&warmer, KELVIN(layer), top.bath_share).yield < top.yield + 4e-3);
                assert_true(boil_flash_top_near(&b, KELVIN(layer + 0.1), top.bath_share).yield < top.yield + 2e-3);
            }
        }
    }
}

/* A sixteenth of the way to its boil, at most 1.5 K, colder or warmer, and the layer as far: the line is lower by less than the
   1.2e-3 kg/kg that bath/potential.c adds to it. */
static void near_by_the_top_follows_its_slopes(void **state)
{
    (void)state;
    double worst = 0;
    for (double salt = 0.45; salt < 0.6; salt += 0.05) {
        for (double below = 4; below < 60; below *= 1.4) {
            for (double layer = 10; layer < 96; layer += 20) {
                for (int side = -1; side < 2; side += 2) {
                    const double moved_K = side * fmin(1.5, below / 16);
                    const boil_flash_bath b = bath(mixed, salt, below), then = bath(mixed, salt, below - moved_K);
                    const boil_flash_top top = boil_flash_top_near(&b, KELVIN(layer), 0);
                    const double y = boil_flash_top_near(&then, KELVIN(layer + moved_K), top.bath_share).yield;
                    if (y > 0)
                        worst = fmax(worst, y - (top.yield + (top.by_bath_K + top.by_layer_K) * moved_K));
                }
            }
        }
    }
    print_message("yield above the line: at most %.5f\n", worst);
    assert_true(worst < 1.2e-3);
}

/* Against all of the curve; nothing is found where it is negative everywhere. */
static void search_finds_the_largest(void **state)
{
    (void)state;
    for (double below = 0; below < 40; below += 3.3) {
        for (double layer = 2; layer <= 100; layer += 24) {
            const boil_flash_bath b = bath(mixed, 0.48, below);
            double at, dense = 0;
            const double y = boil_flash_yield(&b, KELVIN(layer), &at);
            for (double phi = 0.3; phi < 0.9999; phi += 0.004)
                dense = fmax(dense, boil_flash_yield_at(&b, KELVIN(layer), phi));
            assert_true(y >= dense - 1e-9 && y <= dense + 1e-3);
            for (double off = -0.06; off < 0.07; off += 0.01) { /* near it or not, it is found */
                assert_close(fmax(0, boil_flash_top_near(&b, KELVIN(layer), at + off).yield), y, 0, 1e-5);
            }
        }
    }
}

/* A bath ever colder yields most from ever less of it: once that is less than (2) begins with, no walk from anywhere leads there. */
static void no_walk_leaves_the_range(void **state)
{
    (void)state;
    for (double below = 66; below < 90; below += 2) {
        const boil_flash_bath b = bath(mixed, 0.48, below);
        const double y = boil_flash_yield_at(&b, KELVIN(100), 0.3);
        assert_true(boil_flash_yield_at(&b, KELVIN(100), 0.305) < y);
        for (double near = 0.31; near < 1; near += 0.053) {
            const boil_flash_top top = boil_flash_top_near(&b, KELVIN(100), near);
            assert_close(top.yield, y, 0, 1e-6);
            assert_close(top.bath_share, 0.3, 0, 1e-3);
        }
    }
}

/* A walk begins with a fiftieth to either side, inside of the range: begun where one of the two is its very end it is the search of all
   the curve, to the last bit. */
static void at_an_end_of_the_range_all_is_searched(void **state)
{
    (void)state;
    const double last = 0.9999, apart = 0.02;
    assert_true(last - apart + apart == last);
    for (double below = 0.1; below < 2; below += 0.3) {
        const boil_flash_bath b = bath(mixed, 0.512, below);
        double at;
        const double y = boil_flash_yield(&b, KELVIN(15.6), &at);
        const boil_flash_top top = boil_flash_top_near(&b, KELVIN(15.6), last - apart);
        assert_true(y > 0 && top.yield == y && top.bath_share == at);
    }
}

/* Pure NaOH by a script of its own on the same correlations, its bath 0.4 K hotter. */
static void second_calculation(void **state)
{
    (void)state;
    const double yields[LAYERS] = {0.0570, 0.0935, 0.1229, 0.1522, 0.1817};
    const boil_flash_bath b = bath(caustic, 0.466, 0);
    for (int i = 0; i < LAYERS; i++)
        assert_close(boil_flash_yield(&b, KELVIN(layers_degC[i]), NULL), yields[i], 0.02, 0);
}

static void bounds(void **state)
{
    (void)state;
    boil_flash_bath b = bath(mixed, 0.512, 0);
    const double y = boil_flash_yield(&b, KELVIN(60), NULL);
    b.temperature_K += 5; /* counts as at its boil */
    assert_close(boil_flash_yield(&b, KELVIN(60), NULL), y, 1e-12, 0);
    b.mixture = boil_mixture_scaled(&b.mixture, 543);
    assert_close(boil_flash_yield(&b, KELVIN(60), NULL), y, 1e-9, 0);
    b.mixture = (boil_mixture){1, {50, 0, 0}};
    assert_true(isnan(boil_flash_yield(&b, KELVIN(60), NULL)) && isnan(boil_flash_yield_limit(&b, KELVIN(60))));
    assert_true(isnan(boil_flash_superheat(&b, KELVIN(60), 0.7)) && isnan(boil_flash_yield_at(&b, KELVIN(60), 0.7)));
}

/* At 900 ft, degF of the water and of the bath, 80/15/5 and NaOH alone. */
static void bath_that_cold_water_quenches(void **state)
{
    (void)state;
    const double turns[][3] = {{40, 265.3, 263.1}, {60, 259.4, 257.3}, {80, 254.0, 252.0}, {140, 238.6, 236.8}};
    const boil_conditions air = boil_conditions_at(boil_ambient_pressure_at_altitude(900 * 0.3048), 1);
    for (size_t i = 0; i < sizeof turns / sizeof *turns; i++) {
        const double water = KELVIN((turns[i][0] - 32) / 1.8);
        for (int j = 0; j < 2; j++) {
            double T;
            assert_int_equal(boil_flash_turning_point(&air, j ? caustic : mixed, 1, water, &T), BOIL_OK);
            assert_close((T - BOIL_ZERO_CELSIUS) * 1.8 + 32, turns[i][1 + j], 0, 0.5);
        }
    }
}

/* Just weaker than there nothing flashes, just stronger a little does: the limit phi -> 1 stands for all of the curve. */
static void turning_point_is_where_the_yield_begins(void **state)
{
    (void)state;
    double T, fraction;
    boil_flash_bath b = bath(mixed, 0.5, 0);
    assert_int_equal(boil_flash_turning_point(&b.air, mixed, 1, KELVIN(15.6), &T), BOIL_OK);
    for (int side = -1; side < 2; side += 2) {
        assert_int_equal(boil_solution_fraction_boiling_at(&b.air, mixed, T + 0.5 * side, &fraction), BOIL_OK);
        b = bath(mixed, fraction, 0);
        assert_true((boil_flash_yield(&b, KELVIN(15.6), NULL) > 0) == (side > 0));
    }
    /* By the mild heat of dilution it takes a stronger bath. */
    double mild;
    assert_int_equal(boil_flash_turning_point(&b.air, mixed, BOIL_FLASH_DILUTION_MILD, KELVIN(15.6), &mild), BOIL_OK);
    assert_true(mild > T + 1 && mild < T + 6);
    assert_int_equal(boil_flash_turning_point(&b.air, mixed, 0.5, KELVIN(0), &T), BOIL_NO_ROOT);
}

/* The table errs on the side of steam, by little, and does not depend on what was asked before. */
static void table_follows_the_search(void **state)
{
    (void)state;
    boil_flash_bath b = bath(mixed, 0.512, 0);
    boil_flash_table forth = boil_flash_table_of(&b), back = forth;
    double above = 0, below = 0;
    for (double layer = 1; layer < 100; layer += 7.3)
        for (double cold = 0; cold < 49; cold += 1.7) {
            boil_flash_bath at = b;
            at.temperature_K -= cold;
            const double y = boil_flash_yield(&at, KELVIN(layer), NULL);
            const double table = boil_flash_table_yield(&forth, KELVIN(layer), cold);
            above = fmax(above, table - y);
            below = fmax(below, y - table);
        }
    print_message("table of yields: at most %.4f above, %.4f below\n", above, below);
    assert_true(above < 5e-3 && below < 1e-4);
    for (double layer = 98; layer > 0; layer -= 31)
        for (double cold = 55; cold > -2; cold -= 3)
            assert_true(boil_flash_table_yield(&back, KELVIN(layer), cold) ==
                        boil_flash_table_yield(&forth, KELVIN(layer), cold));
    assert_close(boil_flash_table_yield(&forth, KELVIN(60), 5), 0.070, 0, 2e-3);
    assert_true(boil_flash_table_yield(&forth, KELVIN(120), 0) == boil_flash_table_yield(&forth, KELVIN(100), 0));
}

/* A cold bath so strong that no mixture of it has a boiling point: in the table it counts as one at its boil, whose yield no other
   exceeds. 10^2/4 K below is a node. */
static void beyond_the_correlation_the_table_has_the_limit(void **state)
{
    (void)state;
    const boil_flash_bath b = bath(caustic, 0.8, 0);
    boil_flash_bath cold = b;
    cold.temperature_K -= 25;
    boil_flash_table t = boil_flash_table_of(&b);
    assert_true(isnan(boil_flash_yield(&cold, KELVIN(60), NULL)));
    assert_close(boil_flash_table_yield(&t, KELVIN(60), 25), boil_flash_yield_limit(&b, KELVIN(60)), 1e-12, 0);
}

/* Hot hydroxide wetted by cold water, by hand: 1 kg of water at 25 degC and 0.555 kg of 3.2 kg of salt at 145 degC, 4 mol of water a
   mol. Heat of solution 34.43 + 44.5 - 42.89 = 36.04 kJ/mol [Felder & Rousseau, Table B.11, taken from infinite dilution as in
   tests/published/heat_of_solution.csv]: 500 kJ. From memory: 36 % boils at 121 degC and holds 3.4 kJ/kgK, the solid 1.6 kJ/kgK. */
static void hot_hydroxide_by_hand(void **state)
{
    (void)state;
    const boil_conditions air = boil_conditions_at(BOIL_STANDARD_ATMOSPHERE, 1);
    const double solution_kJ = 0.555 / 0.040 * 36.04, warming_kJ = 1.555 * 3.4 * (121 - 25);
    const double salt_kJ = 0.555 * 1.6 * (145 - 25) + (3.2 - 0.555) * 1.6 * (145 - 121);
    /* a kilogram of steam: hv - hw 2.2 MJ, heat of dilution 0.25, and the brine warms by 80 K/kg as it leaves */
    const double a_kg_kJ = 2200 + 250 + 1.555 * 3.4 * 80;
    const boil_flash_wetted w = boil_flash_on_salt(&air, caustic, KELVIN(145), KELVIN(25));
    print_message("a kg of water on hydroxide of 145 degC flashes %.4f kg\n", w.steam);
    assert_close(w.steam, (solution_kJ - warming_kJ + salt_kJ) / a_kg_kJ, 0.15, 0);
}

/* What it dissolves in the end: 113 g of NaOH and 91.6 g of NaNO3 in 100 g, 25 degC [Wexler, Constant humidity solutions, CRC Handbook],
   of NaNO2 84.8 g [from memory]; and never more than it wets. */
static void wetted_salt_dissolves_to_saturation(void **state)
{
    (void)state;
    const double nitrate[BOIL_SALTS] = {0, 1, 0}, nitrite[BOIL_SALTS] = {0, 0, 1};
    const boil_conditions air = boil_conditions_at(BOIL_STANDARD_ATMOSPHERE, 1);
    assert_close(boil_flash_on_salt(&air, nitrite, KELVIN(25), KELVIN(25)).dissolved, 0.848, 0.02, 0);
    assert_close(boil_flash_on_salt(&air, caustic, KELVIN(25), KELVIN(25)).dissolved, 1.13, 0.02, 0);
    assert_close(boil_flash_on_salt(&air, nitrate, KELVIN(25), KELVIN(25)).dissolved, 0.916, 0.02, 0);
    assert_close(boil_flash_on_salt(&air, caustic, KELVIN(185), KELVIN(25)).dissolved, 3.2, 1e-9, 0);
}

/* Nitrate cools as it dissolves and gives nothing; hydroxide does from some warmth on, and ever more of it; a little beside nitrate
   gives a little. */
static void only_hot_hydroxide_flashes(void **state)
{
    (void)state;
    const double nitrate[BOIL_SALTS] = {0, 1, 0}, none[BOIL_SALTS] = {0};
    const boil_conditions air = boil_conditions_at(BOIL_STANDARD_ATMOSPHERE, 1);
    assert_true(boil_flash_on_salt(&air, none, KELVIN(145), KELVIN(20)).steam == 0);
    double before = 0;
    for (double T = 5; T < 160; T += 5) {
        const boil_flash_wetted w = boil_flash_on_salt(&air, caustic, KELVIN(T), KELVIN(20));
        assert_true(w.steam >= before && (T > 80 || w.steam == 0) && (T < 110 || w.steam > before));
        assert_true(boil_flash_on_salt(&air, nitrate, KELVIN(T), KELVIN(20)).steam == 0);
        assert_true(boil_flash_on_salt(&air, caustic, KELVIN(T), KELVIN(60)).steam >= w.steam);
        before = w.steam;
    }
    double blend[BOIL_SALTS] = {1e-6, 1, 0};
    assert_close(boil_flash_on_salt(&air, blend, KELVIN(150), KELVIN(20)).steam, 0, 0, 1e-6);
}

/* Grains lie side by side: as much of the water as there is hydroxide may meet hydroxide alone, and gives what it gives there; beside
   nitrate, which cools, that is more than the blend does. */
static void grains_of_hydroxide_flash_for_themselves(void **state)
{
    (void)state;
    const boil_conditions air = boil_conditions_at(BOIL_STANDARD_ATMOSPHERE, 1);
    for (double T = 120; T < 160; T += 20) {
        const double alone = boil_flash_on_salt(&air, caustic, KELVIN(T), KELVIN(20)).steam;
        assert_true(alone > 0.005);
        for (double share = 0.1; share < 0.95; share += 0.2) {
            const double blend[BOIL_SALTS] = {3 * share, 3 * (1 - share), 0};
            assert_true(boil_flash_on_salt(&air, blend, KELVIN(T), KELVIN(20)).steam >= share * alone * (1 - 1e-9));
        }
        const double beside[BOIL_SALTS] = {1, 4, 0};
        assert_close(boil_flash_on_salt(&air, beside, KELVIN(T), KELVIN(20)).steam, alone / 5, 1e-9, 0);
    }
}

/* Salt no hotter than its brine boils gives by its heat of solution alone: the largest of a scan, whose balance is that of (1). */
static void search_on_salt_finds_the_largest(void **state)
{
    (void)state;
    const boil_conditions air = boil_conditions_at(BOIL_STANDARD_ATMOSPHERE, 1);
    const double salt_K = KELVIN(112), water_K = KELVIN(40);
    double most = 0;
    for (double x = 0.2; x < 2; x += 0.005) {
        const boil_mixture m = {1, {x, 0, 0}};
        const double heat = boil_water_enthalpy(water_K) + x * boil_salt_solid_enthalpy(BOIL_NAOH, salt_K);
        most = fmax(most, boil_flash_steam(&air, &m, heat));
    }
    assert_true(most > 0.005);
    assert_close(boil_flash_on_salt(&air, caustic, salt_K, water_K).steam, most, 1e-3, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(flash_conserves_enthalpy),
        cmocka_unit_test(limit_at_the_boil),
        cmocka_unit_test(heat_of_dilution_is_a_range),
        cmocka_unit_test(partial_mixtures_are_superheated),
        cmocka_unit_test(superheat_over_the_mixing_fraction),
        cmocka_unit_test(superheat_and_yield_agree),
        cmocka_unit_test(narrow_maxima_are_found),
        cmocka_unit_test(warmth_brings_steam_no_faster),
        cmocka_unit_test(near_by_the_top_follows_its_slopes),
        cmocka_unit_test(search_finds_the_largest),
        cmocka_unit_test(no_walk_leaves_the_range),
        cmocka_unit_test(at_an_end_of_the_range_all_is_searched),
        cmocka_unit_test(second_calculation),
        cmocka_unit_test(bounds),
        cmocka_unit_test(bath_that_cold_water_quenches),
        cmocka_unit_test(table_follows_the_search),
        cmocka_unit_test(beyond_the_correlation_the_table_has_the_limit),
        cmocka_unit_test(turning_point_is_where_the_yield_begins),
        cmocka_unit_test(hot_hydroxide_by_hand),
        cmocka_unit_test(wetted_salt_dissolves_to_saturation),
        cmocka_unit_test(only_hot_hydroxide_flashes),
        cmocka_unit_test(grains_of_hydroxide_flash_for_themselves),
        cmocka_unit_test(search_on_salt_finds_the_largest),
    };
    return cmocka_run_group_tests_name("flash", tests, NULL, NULL);
}
