/* Properties of the bath liquid's functions: one answer whatever the guess, inverses, ranges. */
#include "support/brine.h"

#include <gsl/gsl_errno.h>

/* --- Boiling point --- */

/* Equation (1) alone, at a fixed temperature, must find what (1) and (2) found together. */
static void pressure_at_the_boil_is_the_air_s(void **state)
{
    (void)state;
    unsigned long long seed = 1;
    double worst = 0;
    for (int i = 0; i < 5000; i++) {
        const brine_bath b = brine_draw_bath(&seed);
        double molality = 0, by_T, by_strength;
        const double p = exp(boil_solution_log_vapour_pressure(&b.c, &b.m, b.T, 1e-6, &molality, &by_T, &by_strength));
        assert_close(p, b.c.pressure_Pa, 1e-10, 0);
        assert_close(molality, b.equivalent_molality, 1e-9, 1e-12);
        worst = fmax(worst, fabs(p / b.c.pressure_Pa - 1));
    }
    print_message("vapour pressure at the boil: within %.1g of the air's\n", worst);
}

/* 10 000 baths, each from a cold start and from a guess that may be 20 decades or 500 K off. */
static void boiling_point_forgets_the_guess(void **state)
{
    (void)state;
    unsigned long long seed = 2;
    double worst = 0;
    for (int i = 0; i < 10000; i++) {
        const brine_bath b = brine_draw_bath(&seed);
        boil_solution_guess wild = {pow(10, -12 + 16 * brine_draw(&seed)), 200 + 500 * brine_draw(&seed)};
        double T;
        assert_int_equal(boil_solution_boiling_point_near(&b.c, &b.m, &wild, &T, NULL), BOIL_OK);
        assert_close(T, b.T, 0, 1e-8);
        worst = fmax(worst, fabs(T - b.T));
    }
    print_message("boiling point from wild guesses: within %.1g K of a cold start\n", worst);
}

static int all_finite(const boil_slope *s)
{
    return isfinite(s->water) && isfinite(s->salt[BOIL_NAOH]) && isfinite(s->salt[BOIL_NANO3]) && isfinite(s->salt[BOIL_NANO2]);
}

/* Beyond the range too: an answer is a number or no answer. */
static void never_a_nan_with_ok(void **state)
{
    (void)state;
    unsigned long long seed = 3;
    int refused = 0;
    for (int i = 0; i < 10000; i++) {
        const boil_conditions c = brine_draw_conditions(&seed);
        double blend[BOIL_SALTS], T = (double)NAN;
        boil_slope slope;
        brine_draw_blend(&seed, blend);
        const boil_mixture m = boil_mixture_of(blend, 1 - pow(10, -6 * brine_draw(&seed)));
        boil_solution_guess guess = {pow(10, -3 + 6 * brine_draw(&seed)), 200 + 500 * brine_draw(&seed)};
        if (boil_solution_boiling_point_near(&c, &m, &guess, &T, &slope) != BOIL_OK) {
            refused++;
            continue;
        }
        assert_true(isfinite(T) && all_finite(&slope));
        assert_true(T > c.saturation_K - 1e-6 && T <= KELVIN(250));
    }
    assert_true(refused > 0 && refused < 10000);
}

/* Every salt added raises the boil, water lowers it, and a stronger solution of one blend boils hotter. */
static void more_salt_boils_hotter(void **state)
{
    (void)state;
    unsigned long long seed = 4;
    for (int i = 0; i < 100; i++) {
        const boil_conditions c = brine_draw_conditions(&seed);
        double blend[BOIL_SALTS], before = c.saturation_K;
        brine_draw_blend(&seed, blend);
        for (double w = 0.005; w < 0.95; w += 0.005) {
            const boil_mixture m = boil_mixture_of(blend, w);
            boil_solution_guess guess = {0, 0};
            boil_slope slope;
            double T;
            if (boil_solution_boiling_point_near(&c, &m, &guess, &T, &slope) != BOIL_OK ||
                boil_solution_range_at(T, guess.equivalent_molality).margin <= 0)
                break;
            assert_true(T > before);
            assert_true(slope.water < 0 && slope.salt[0] > 0 && slope.salt[1] > 0 && slope.salt[2] > 0);
            before = T;
        }
        assert_true(before > c.saturation_K + 10);
    }
}

static void water_boils_as_water(void **state)
{
    (void)state;
    for (double f = 0.85; f < 1.11; f += 0.05) {
        const boil_conditions c = boil_conditions_at(90e3, f);
        const boil_mixture water = {.water = 2};
        assert_close(brine_boils_at(&c, &water, NULL), c.saturation_K, 0, 1e-8);
    }
}

/* --- Inverses --- */

static void temperature_undoes_enthalpy(void **state)
{
    (void)state;
    unsigned long long seed = 10;
    for (int k = 0; k < 2000; k++) {
        const brine_bath b = brine_draw_bath(&seed);
        const double T = KELVIN(10 + 150 * brine_draw(&seed)), guess = KELVIN(190 * brine_draw(&seed));
        assert_close(boil_solution_temperature(&b.m, boil_solution_heat(&b.m, T).enthalpy_J, guess), T, 0, 1e-7);
    }
    const boil_mixture m = brine_of_caustic(50);
    assert_true(isnan(boil_solution_temperature(&m, 1e8, KELVIN(100))));
}

static void fraction_undoes_boiling_point_and_strength(void **state)
{
    (void)state;
    unsigned long long seed = 11;
    for (int k = 0; k < 300; k++) {
        const boil_conditions c = brine_draw_conditions(&seed);
        double blend[BOIL_SALTS], by_boil, by_strength;
        brine_draw_blend(&seed, blend);
        const double w = 0.01 + 0.49 * brine_draw(&seed);
        const boil_mixture m = boil_mixture_of(blend, w);
        const double strength = boil_solution_strength(&c, &m);
        assert_int_equal(boil_solution_fraction_boiling_at(&c, blend, brine_boils_at(&c, &m, NULL), &by_boil), BOIL_OK);
        assert_int_equal(boil_solution_fraction_of_strength(&c, blend, strength, &by_strength), BOIL_OK);
        assert_close(by_boil, w, 0, 1e-9);
        assert_close(by_strength, w, 0, 1e-9);
        assert_close(boil_mixture_salt_fraction(&m), w, 1e-14, 0);
        assert_close(boil_mixture_mass(&m), 1, 1e-14, 0);
    }
}

static void fraction_beyond_the_range_is_refused(void **state)
{
    (void)state;
    const boil_conditions c = boil_conditions_at(BOIL_STANDARD_ATMOSPHERE, 1);
    double w;
    assert_int_equal(boil_solution_fraction_boiling_at(&c, brine_caustic, KELVIN(99), &w), BOIL_OUT_OF_RANGE);
    assert_int_equal(boil_solution_fraction_boiling_at(&c, brine_caustic, KELVIN(240), &w), BOIL_OUT_OF_RANGE);
    assert_int_equal(boil_solution_fraction_of_strength(&c, brine_caustic, 3000, &w), BOIL_OUT_OF_RANGE);
    assert_int_equal(boil_solution_fraction_of_strength(&c, brine_caustic, -1, &w), BOIL_OUT_OF_RANGE);
}

/* --- Range --- */

static double caustic_margin(double wt_pct, double celsius)
{
    const boil_mixture m = brine_of_caustic(wt_pct);
    const double molality = m.salt[BOIL_NAOH] / boil_salt_molar_mass(BOIL_NAOH) / m.water;
    return boil_solution_range_at(KELVIN(celsius), molality).margin;
}

/* Published: water from 0.5 up to 60 degC, 0.353 to 70, 0.3 to 150, 0.2 to 200; each step is taken 2 K inside. */
static void range_ends_where_it_is_published(void **state)
{
    (void)state;
    static const double ends[][2] = {{50, 30}, {50, 60}, {64.7, 62}, {64.7, 70}, {70, 72}, {70, 150}, {80, 152}, {80, 190}};
    for (size_t i = 0; i < sizeof ends / sizeof *ends; i++) {
        assert_true(caustic_margin(ends[i][0] - 0.01, ends[i][1]) > 0);
        assert_true(caustic_margin(ends[i][0] + 0.01, ends[i][1]) < 0);
    }
    assert_true(caustic_margin(40, 194.9) > 0 && caustic_margin(40, 195.1) < 0);
    assert_true(caustic_margin(10, -4.9) > 0 && caustic_margin(10, -5.1) < 0);
}

static void margin_is_continuous(void **state)
{
    (void)state;
    for (double w = 0; w < 85; w += 5) {
        for (double t = -8; t < 198; t += 0.01)
            assert_close(caustic_margin(w, t + 0.01), caustic_margin(w, t), 0, 1e-3);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(pressure_at_the_boil_is_the_air_s),
        cmocka_unit_test(boiling_point_forgets_the_guess),
        cmocka_unit_test(never_a_nan_with_ok),
        cmocka_unit_test(more_salt_boils_hotter),
        cmocka_unit_test(water_boils_as_water),
        cmocka_unit_test(temperature_undoes_enthalpy),
        cmocka_unit_test(fraction_undoes_boiling_point_and_strength),
        cmocka_unit_test(fraction_beyond_the_range_is_refused),
        cmocka_unit_test(range_ends_where_it_is_published),
        cmocka_unit_test(margin_is_continuous),
    };
    gsl_set_error_handler_off();
    return cmocka_run_group_tests_name("solution", tests, NULL, NULL);
}
