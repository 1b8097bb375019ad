/* Heat that dry salt gives to the bath or takes from it. Published heats: tests/validate/heats.c. */
#include "properties/naoh.h"
#include "properties/water.h"
#include "support/brine.h"
#include "support/tally.h"

#include <gsl/gsl_errno.h>

static const double room_K = 298.15;

/* A solution of one salt in a kg of water. */
static boil_mixture solution_of(int salt, double mol_kg)
{
    boil_mixture m = {.water = 1};
    m.salt[salt] = mol_kg * boil_salt_molar_mass(salt);
    return m;
}

/* kJ per mol of solid added to much solution: taken up counts positive. */
static double differential_heat(const boil_mixture *m, int salt, double T)
{
    return (boil_solution_heat(m, T).salt[salt] - boil_salt_solid_enthalpy(salt, T)) * boil_salt_molar_mass(salt) / 1e3;
}

/* van 't Hoff at saturation: heat = nu R T^2 (dln m/dT)(dln a/dln m), from the mole-fraction law of properties/solution.h, nu =
   2: dln a/dln m = c/(1 + 2 c Mw m), c = 1 nitrate, 1.10 nitrite. Solubilities per kg of water at 20, 25 and 30 (40) degC:
   nitrate 10.31, 10.78, 11.31; nitrite 11.86, 12.29, 13.75 mol/kg. It gives nitrate within 0.5 kJ/mol of the measured
   value, which is why nitrite's estimate is built on it; +-2 kJ/mol. */
static double heat_from_solubility(double log_slope, double m, double c)
{
    return 2 * BOIL_GAS_CONSTANT * room_K * room_K * log_slope * c / (1 + 2 * c * 0.01801528 * m) / 1e3;
}

static void nitrite_follows_from_its_solubility(void **state)
{
    (void)state;
    const double nitrate = heat_from_solubility(log(11.31 / 10.31) / 10, 10.78, 1);
    const double nitrite = heat_from_solubility(log(13.75 / 11.86) / 20, 12.29, 1.10);
    const boil_mixture saturated = solution_of(BOIL_NANO2, 12.29);
    const double model = differential_heat(&saturated, BOIL_NANO2, room_K);
    assert_close(nitrate, 9.98, 0, 0.5);
    assert_close(model, nitrite, 0, 2);
    print_message("at saturation by solubility: NaNO3 %.2f, NaNO2 %.2f; NaNO2 here %.2f kJ/mol\n", nitrate, nitrite, model);
}

/* No calorimetry of hot mixtures was found. Nitrate's own term is 13 +-3 kJ/mol by estimate; mixing it with NaOH's
   solution (which it makes stronger by a third of a mole) takes 6 to 7 more, so that solid nitrate at 140 degC takes
   about 225 kJ/kg, +-40: by an independent evaluation of the same rule. */
static void hot_brine(void **state)
{
    (void)state;
    const boil_conditions c = boil_conditions_at(BOIL_STANDARD_ATMOSPHERE, 1);
    for (int i = 1; i < BRINE_BLENDS; i++) {
        double w;
        assert_int_equal(boil_solution_fraction_boiling_at(&c, brine_blends[i], KELVIN(140), &w), BOIL_OK);
        const boil_mixture m = boil_mixture_of(brine_blends[i], w);
        const double nitrate = differential_heat(&m, BOIL_NANO3, KELVIN(140));
        const double nitrite = differential_heat(&m, BOIL_NANO2, KELVIN(140));
        assert_close(nitrate / boil_salt_molar_mass(BOIL_NANO3), 225, 0, 40);
        assert_true(nitrite > 12 && nitrite < 22);
        if (i == 2)
            print_message("65/35 at 140 degC: NaNO3 takes %.1f, NaNO2 %.1f kJ/mol\n", nitrate, nitrite);
    }
    const boil_mixture own = solution_of(BOIL_NANO3, 25);
    assert_close(differential_heat(&own, BOIL_NANO3, room_K), 13, 0, 3);
}

/* The concentration term leaves NaOH alone exactly as it was: m_w h_w + m_OH phi, and its derivatives. */
static void caustic_alone_is_untouched(void **state)
{
    (void)state;
    for (double w = 5; w < 65; w += 5)
        for (double t = 20; t < 160; t += 20) {
            const boil_mixture m = brine_of_caustic(w);
            const double x = m.water / (m.water + m.salt[BOIL_NAOH]);
            double by_x, by_T;
            const double phi = boil_naoh_apparent_enthalpy(x, KELVIN(t), &by_x, &by_T);
            const boil_heat h = boil_solution_heat(&m, KELVIN(t));
            assert_close(h.enthalpy_J, m.water * boil_water_enthalpy(KELVIN(t)) + m.salt[BOIL_NAOH] * phi, 1e-14, 0);
            assert_close(h.water, boil_water_enthalpy(KELVIN(t)) + (1 - x) * (1 - x) * by_x, 1e-12, 1e-6);
            assert_close(h.salt[BOIL_NAOH], phi - x * (1 - x) * by_x, 1e-12, 1e-6);
        }
}

/* From nothing to 30 mol/kg no partial enthalpy jumps: its steps shrink with the step, and water's starts with none. */
static void smooth_from_pure_water_on(void **state)
{
    (void)state;
    const double step = 0.01;
    boil_mixture before = solution_of(BOIL_NANO3, 0);
    for (double n = step; n < 30; n += step) {
        const boil_mixture m = solution_of(BOIL_NANO3, n);
        const double nitrate = differential_heat(&m, BOIL_NANO3, room_K) - differential_heat(&before, BOIL_NANO3, room_K);
        const double water = boil_solution_heat(&m, room_K).water - boil_solution_heat(&before, room_K).water;
        assert_true(fabs(nitrate) < 4.5 * step && fabs(water) < 6e3 * step); /* 2 d/n0 kJ/mol at the steepest */
        before = m;
    }
    const boil_mixture trace = solution_of(BOIL_NANO3, 1e-9);
    assert_close(boil_solution_heat(&trace, room_K).water, boil_water_enthalpy(room_K), 0, 1e-6);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(nitrite_follows_from_its_solubility),
        cmocka_unit_test(hot_brine),
        cmocka_unit_test(caustic_alone_is_untouched),
        cmocka_unit_test(smooth_from_pure_water_on),
    };
    gsl_set_error_handler_off();
    return cmocka_run_group_tests_name("heat of solution", tests, NULL, NULL);
}
