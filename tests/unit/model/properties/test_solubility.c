/* Which salts fall out of a cooling bath: hand calculations for mixtures. Published solubilities: tests/validate. */
#include "properties/naoh.h"
#include "properties/solubility.h"
#include "support/brine.h"

#include <gsl/gsl_errno.h>

/* By calculation, no measured table was found; 0.75 % apart from it because the handbook dissolves 10.78 mol/kg in
   water, the calculation 10.7. */
static void caustic_drives_nitrate_out(void **state)
{
    (void)state;
    static const double rows[][2] = {{0, 10.7}, {4, 7.5}, {8, 5.4}, {10, 4.7}, {20, 3.5}};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
        assert_close(boil_solubility(BOIL_NANO3, KELVIN(25), rows[i][0]), rows[i][1], 0.01, 0);
}

/* Hand calculation, 1 kg of 55 % salts, 65/35: 0.45 kg of water with 0.3575 kg of NaOH, 19.86 mol/kg, which leaves
   0.3287 of the solubility; at 25 degC 0.916 kg/kg of that, 0.1355 kg; 0.1925 are there, 0.0570 fall out. All is
   dissolved where water alone would hold 0.1925/0.45/0.3287 = 1.3016 kg/kg: 64.5 degC. NaOH counts
   1.39 times beside 5.03 mol/kg of nitrate: 27.61 mol/kg, 52.48 %, freezes at 22.0. */
static void a_bath_cools(void **state)
{
    (void)state;
    const boil_mixture m = boil_mixture_of(brine_blends[2], 0.55);
    assert_close(boil_solubility_excess(&m, KELVIN(25)), 0.0570, 0, 1e-4);
    assert_close(boil_solubility_crystals_from(&m), KELVIN(64.5), 0, 0.05);
    assert_close(boil_solubility_above_liquidus(&m, KELVIN(25)), 25 - 22.0, 0, 0.1);
    assert_true(boil_solubility_excess(&m, KELVIN(64.6)) == 0 && boil_solubility_excess(&m, KELVIN(64.4)) > 0);
}

/* No crystals in a boiling bath. On cooling, what comes first is nitrate where there is much of it: there the water
   holds what the bath has; else NaOH, at its liquidus. */
static void working_baths(void **state)
{
    (void)state;
    const boil_conditions c = boil_conditions_at(BOIL_STANDARD_ATMOSPHERE, 1);
    print_message("first crystals at");
    for (int i = 0; i < BRINE_BLENDS; i++) {
        double w;
        assert_int_equal(boil_solution_fraction_boiling_at(&c, brine_blends[i], KELVIN(140.56), &w), BOIL_OK);
        const boil_mixture m = boil_mixture_of(brine_blends[i], w);
        assert_true(boil_solubility_excess(&m, KELVIN(140.56)) == 0 && boil_solubility_above_liquidus(&m, KELVIN(140.56)) > 50);
        const double first = boil_solubility_crystals_from(&m), hydroxide = m.salt[BOIL_NAOH] / BOIL_NAOH_MOLAR_MASS / m.water;
        const double nitrate = m.salt[BOIL_NANO3] / boil_salt_molar_mass(BOIL_NANO3) / m.water;
        if (i < 2) /* the nitrate of the second, saturated beside it, is less */
            assert_close(boil_solubility_above_liquidus(&m, first), 0, 0, 1e-9);
        else
            assert_close(boil_solubility(BOIL_NANO3, first, hydroxide), nitrate, 1e-5, 0);
        print_message(" %.1f", first - BOIL_ZERO_CELSIUS);
    }
    print_message(" degC\n");
}

/* A saturated solution of nitrate boils at 120 degC with 222 g per 100 g of water [boiling table, from memory]; straight
   on from 80 and 100 degC it is 203: less is counted as dissolved than is. A boiling bath of half nitrate is clear. */
static void hot_baths_hold_more(void **state)
{
    (void)state;
    const double half[BOIL_SALTS] = {0.5, 0.5, 0};
    const boil_conditions c = boil_conditions_at(BOIL_STANDARD_ATMOSPHERE, 1);
    double w;
    assert_int_equal(boil_solution_fraction_boiling_at(&c, half, KELVIN(140.56), &w), BOIL_OK);
    const boil_mixture m = boil_mixture_of(half, w);
    assert_close(boil_solubility(BOIL_NANO3, KELVIN(120), 0) * boil_salt_molar_mass(BOIL_NANO3), 2.03, 1e-12, 0);
    assert_true(boil_solubility_excess(&m, KELVIN(140.56)) == 0);
}

/* Warmer holds more; more NaOH holds less; nothing jumps. */
static void monotone_and_continuous(void **state)
{
    (void)state;
    for (int salt = BOIL_NANO3; salt <= BOIL_NANO2; salt++)
        for (double t = 0; t < 99.9; t += 0.1) {
            const double more = boil_solubility(salt, KELVIN(t + 0.1), 15) - boil_solubility(salt, KELVIN(t), 15);
            assert_true(more > 0 && more < 0.02);
        }
    for (double n = 0; n < 19.9; n += 0.1) {
        const double less = boil_solubility(BOIL_NANO3, KELVIN(25), n) - boil_solubility(BOIL_NANO3, KELVIN(25), n + 0.1);
        assert_true(less > 0 && less < 0.1);
    }
    for (double w = 0; w < 0.78; w += 1e-4) /* the steepest is 22 K for each wt% */
        assert_close(boil_solubility_liquidus(w + 1e-4), boil_solubility_liquidus(w), 0, 0.23);
}

static void weak_baths_have_none(void **state)
{
    (void)state;
    const boil_mixture water = {1, {0, 0, 0}}, weak = {1, {0.2, 0.1, 0.1}};
    assert_true(isnan(boil_solubility_crystals_from(&water)) && isnan(boil_solubility_crystals_from(&weak)));
    assert_true(boil_solubility_excess(&weak, KELVIN(0.5)) == 0);
}

/* In water of 25 degC 53.05 % NaOH [CRC], 91.6 g of nitrate in 100 g of water [a handbook's table]; a blend goes until the first of its
   salts is saturated, and a saturated bath is left as it is. What it has too much of counts only if the solid holds it. */
static void solids_dissolve_to_saturation(void **state)
{
    (void)state;
    const boil_mixture water = {2, {0, 0, 0}};
    const double hydroxide[] = {1, 0, 0}, nitrate[] = {0, 5, 0}, blend[] = {0.6, 0.3, 0.1};
    boil_mixture m = boil_solubility_saturated(&water, hydroxide, KELVIN(25));
    assert_close(m.salt[BOIL_NAOH] / boil_mixture_mass(&m), 0.5305, 1e-6, 0);
    m = boil_solubility_saturated(&water, nitrate, KELVIN(25));
    assert_close(m.salt[BOIL_NANO3], 2 * 0.916, 1e-6, 0);
    const boil_mixture full = boil_solubility_saturated(&m, nitrate, KELVIN(24));
    assert_true(full.salt[BOIL_NANO3] == m.salt[BOIL_NANO3]);
    assert_true(boil_solubility_saturated(&m, hydroxide, KELVIN(24)).salt[BOIL_NAOH] > 0.5);
    for (double t = 20; t <= 150; t += 5) {
        m = boil_solubility_saturated(&water, blend, KELVIN(t));
        assert_true(boil_solubility_excess(&m, KELVIN(t)) < 1e-6 && boil_solubility_above_liquidus(&m, KELVIN(t)) > -1e-3);
        assert_close(m.salt[BOIL_NANO3] / m.salt[BOIL_NAOH], 0.5, 1e-12, 0);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(caustic_drives_nitrate_out),    cmocka_unit_test(a_bath_cools),
        cmocka_unit_test(solids_dissolve_to_saturation), cmocka_unit_test(working_baths),
        cmocka_unit_test(hot_baths_hold_more),           cmocka_unit_test(monotone_and_continuous),
        cmocka_unit_test(weak_baths_have_none),
    };
    gsl_set_error_handler_off();
    return cmocka_run_group_tests_name("saturation", tests, NULL, NULL);
}
