/* What a flame leaves to use, and the burner to order. */
#include "support/close.h"

#include "design/burner.h"
#include "design/combustion.h"
#include "design/published_units.h"

/* Of methane's flue gas, by volume: CO2 1, O2 2x, N2 7.52 (1 + x). */
static double dry_oxygen(double excess_air)
{
    return 2 * excess_air / (1 + 2 * excess_air + 7.52 * (1 + excess_air));
}

/* Worked out anew from the enthalpies of the gases, %; the flue in degF, the air at 77 degF. */
static void available_heat_is_as_worked_out(void **state)
{
    static const double excess[] = {0, 0.10, 0.25, 0.50, 1.00, 1.50}, flue[] = {400, 600, 800, 1000, 1200, 1400};
    static const double want[6][6] = {{83.5, 79.2, 74.9, 70.4, 65.7, 61.0}, {82.9, 78.3, 73.6, 68.7, 63.7, 58.5},
                                      {82.1, 76.9, 71.6, 66.2, 60.6, 54.9}, {80.7, 74.6, 68.4, 62.0, 55.5, 48.8},
                                      {77.8, 70.0, 62.0, 53.7, 45.3, 36.6}, {75.0, 65.4, 55.5, 45.4, 35.0, 24.4}};
    (void)state;
    for (int x = 0; x < 6; x++)
        for (int t = 0; t < 6; t++)
            assert_close(100 * boil_combustion_available(BOIL_FAHRENHEIT(flue[t]), BOIL_FAHRENHEIT(77), excess[x]), want[x][t],
                         0, 0.2);
}

/* kJ/mol over 298.15 K at 500, 1000 and 1500 K, NIST-JANAF thermochemical tables (from memory): what the flue gas of a mole of
   methane carries, and what each more of its air does. To 0.2 %, as the tables' own steps and those of the fits differ. */
static void gases_hold_what_the_tables_say(void **state)
{
    static const double kelvin[] = {500, 1000, 1500};
    static const double dioxide[] = {8.305, 33.397, 61.705}, steam[] = {6.925, 26.000, 48.151};
    static const double oxygen[] = {6.084, 22.703, 40.599}, nitrogen[] = {5.911, 21.463, 38.405};
    (void)state;
    for (int i = 0; i < 3; i++) {
        const double none = boil_combustion_available(kelvin[i], 298.15, 0),
                     twice = boil_combustion_available(kelvin[i], 298.15, 1);
        assert_close(802.6 - 890.6 * none, dioxide[i] + 2 * steam[i] + 7.52 * nitrogen[i], 2e-3, 0);
        assert_close(890.6 * (none - twice), 2 * oxygen[i] + 7.52 * nitrogen[i], 2e-3, 0);
    }
}

/* The two halves of each gas's polynomial meet at 1000 K, as they were fitted (McBride, Gordon and Reno, NASA TM-4513, 1993, from
   memory): to a joule in a mole of methane, so that no coefficient is off by a digit. */
static void the_halves_of_a_polynomial_meet(void **state)
{
    (void)state;
    for (double x = 0; x < 3; x++) {
        const double below = boil_combustion_available(1000 - 1e-6, 298.15, x),
                     above = boil_combustion_available(1000, 298.15, x);
        assert_close(890.6e3 * (below - above), 0, 0, 1);
    }
}

/* "Excess air: is it such a big deal?", Process Heating: a chart read by eye, flue 1400 degF: 52 % at 25 % of excess air, 57 % at 10 %. */
static void available_heat_is_near_a_published_chart(void **state)
{
    (void)state;
    assert_close(boil_combustion_available(BOIL_FAHRENHEIT(1400), BOIL_FAHRENHEIT(60), 0.25), 0.52, 0, 0.03);
    assert_close(boil_combustion_available(BOIL_FAHRENHEIT(1400), BOIL_FAHRENHEIT(60), 0.10), 0.57, 0, 0.03);
}

/* Siegert's loss, of the net heat, T in degC: (T_f - T_a) [0.66/(21 - O2) + 0.009] % (German 1. BImSchV, from memory). */
static void available_heat_agrees_with_siegert(void **state)
{
    static const double flue[] = {400, 800, 1000}, excess[] = {0.10, 0.50, 0.50}, within[] = {0.002, 0.01, 0.018};
    (void)state;
    for (int i = 0; i < 3; i++) {
        const double rise = (flue[i] - 77) / 1.8, oxygen = 100 * dry_oxygen(excess[i]);
        const double net = 1 - rise * (0.66 / (21 - oxygen) + 0.009) / 100;
        const double ours = boil_combustion_available(BOIL_FAHRENHEIT(flue[i]), BOIL_FAHRENHEIT(77), excess[i]) * 890.6 / 802.6;
        assert_close(ours, net, 0, within[i]);
    }
}

static void cold_flue_leaves_what_condenses(void **state)
{
    (void)state;
    for (double x = 0; x < 2; x += 0.3)
        assert_close(boil_combustion_available(298.15, 298.15, x), 802.6 / 890.6, 1e-12, 0);
    for (double x = 0; x < 2; x += 0.1)
        for (double t = 350; t < 1500; t += 100)
            assert_true(boil_combustion_available(t, 298.15, x + 0.1) < boil_combustion_available(t, 298.15, x));
}

/* Textbooks have 2328 K for the flame without dissociation (from memory): all heat is in the flue gas. Beyond the stated range, but
   the polynomials hold. */
static void a_flame_uses_all_its_heat_at_its_own_temperature(void **state)
{
    (void)state;
    assert_close(boil_combustion_available(2326, 298.15, 0), 0, 0, 0.002);
}

static void flue_temperature_is_the_inverse(void **state)
{
    (void)state;
    const double air = BOIL_FAHRENHEIT(75), flue = boil_combustion_flue_temperature(0.65, air, 0.5);
    assert_close(boil_combustion_available(flue, air, 0.5), 0.65, 1e-7, 0);
    assert_close(flue * 1.8 - 459.67, 907, 0, 3);
    assert_true(isnan(boil_combustion_flue_temperature(0.95, air, 0.5)));
    assert_true(isnan(boil_combustion_flue_temperature(-1, air, 0.5)));
}

/* Dry oxygen, %: 2.1, 4.6, 7.5, 11.1, 13.2, worked out from what methane burns to. */
static void oxygen_tells_the_excess_air(void **state)
{
    static const double excess[] = {0, 0.10, 0.25, 0.50, 1.00, 1.50}, oxygen[] = {0, 2.1, 4.6, 7.5, 11.1, 13.2};
    (void)state;
    for (int i = 0; i < 6; i++) {
        assert_close(100 * dry_oxygen(excess[i]), oxygen[i], 0, 0.051);
        assert_close(boil_combustion_excess_of(dry_oxygen(excess[i])), excess[i], 1e-12, 1e-12);
    }
    assert_close(boil_combustion_air(330 * BOIL_KBTU_H, 0.5) * 3600 / (BOIL_FOOT * BOIL_FOOT * BOIL_FOOT), 4950, 1e-9, 0);
}

/* NFPA 54 (2015), table E.1.1(d), as a trade article gives it: 4 % for each 1000 ft above sea level, above 2000 ft. */
static void altitude_takes_from_a_burner_what_the_code_says(void **state)
{
    static const double feet[] = {-300, 0, 2000, 3000, 5250, 10000}, share[] = {1, 1, 1, 0.88, 0.79, 0.60};
    (void)state;
    for (int i = 0; i < 6; i++)
        assert_close(boil_burner_derate(feet[i] * BOIL_FOOT), share[i], 1e-9, 0);
    assert_close(boil_burner_derate(2001 * BOIL_FOOT), 0.92, 1e-4, 0);
    assert_close(boil_burner_derate_from_2000_ft(3000 * BOIL_FOOT), 0.96, 1e-9, 0);
    for (double z = -400; z < 4000; z += 50)
        assert_true(boil_burner_derate(z) <= boil_burner_derate_from_2000_ft(z));
    assert_close(boil_burner_turndown(198.1, 111.1), 1.70, 0, 0.005);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(available_heat_is_as_worked_out),
        cmocka_unit_test(gases_hold_what_the_tables_say),
        cmocka_unit_test(the_halves_of_a_polynomial_meet),
        cmocka_unit_test(available_heat_is_near_a_published_chart),
        cmocka_unit_test(available_heat_agrees_with_siegert),
        cmocka_unit_test(cold_flue_leaves_what_condenses),
        cmocka_unit_test(a_flame_uses_all_its_heat_at_its_own_temperature),
        cmocka_unit_test(flue_temperature_is_the_inverse),
        cmocka_unit_test(oxygen_tells_the_excess_air),
        cmocka_unit_test(altitude_takes_from_a_burner_what_the_code_says),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
