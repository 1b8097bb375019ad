/* The bath liquid's derivatives against central differences, and its homogeneity in the masses. */
#include "properties/naoh.h"
#include "support/brine.h"

#include <gsl/gsl_errno.h>

/* The i-th of water and the salts, to change it. */
static double *mass_of(boil_mixture *m, int i)
{
    return i == 0 ? &m->water : &m->salt[i - 1];
}

/* A central difference's step: small enough for its own error, and leaving every mass positive. */
static double step_of(const boil_mixture *m, int i)
{
    const double mass = i == 0 ? m->water : m->salt[i - 1];
    return fmin(1e-5, 0.3 * mass);
}

static void boiling_slopes_are_derivatives(void **state)
{
    (void)state;
    unsigned long long seed = 5;
    double worst = 0;
    for (int k = 0; k < 2000; k++) {
        brine_bath b = brine_draw_bath(&seed);
        if (k % 2)
            b.c = boil_conditions_at(b.c.pressure_Pa, k % 4 == 1 ? 1 : 0.9);
        brine_boils_at(&b.c, &b.m, &b.slope);
        for (int i = 0; i <= BOIL_SALTS; i++) {
            const double step = step_of(&b.m, i);
            if (!(step > 1e-7))
                continue;
            boil_mixture more = b.m, less = b.m;
            *mass_of(&more, i) += step;
            *mass_of(&less, i) -= step;
            const double rise = brine_boils_at(&b.c, &more, NULL) - brine_boils_at(&b.c, &less, NULL);
            const double by_difference = rise / (2 * step);
            const double slope = i == 0 ? b.slope.water : b.slope.salt[i - 1];
            assert_close(slope, by_difference, 1e-4, 1e-3);
            worst = fmax(worst, fabs(slope - by_difference) / (10 + fabs(by_difference)));
        }
    }
    print_message("dTb/dm against differences: within %.1g\n", worst);
}

/* The boiling point knows only ratios: sum of m_i dTb/dm_i is zero. */
static void boiling_slopes_balance(void **state)
{
    (void)state;
    unsigned long long seed = 6;
    for (int k = 0; k < 2000; k++) {
        const brine_bath b = brine_draw_bath(&seed);
        double sum = b.m.water * b.slope.water, size = fabs(sum);
        for (int i = 0; i < BOIL_SALTS; i++)
            sum += b.m.salt[i] * b.slope.salt[i];
        assert_close(sum, 0, 0, 1e-12 * (1 + size));
    }
}

/* In range, from the boil to 60 K below it; without the few strongest solutions for which (1) alone finds no root (see
   unit/model/properties/test_solution.c). */
static void pressure_slope_is_the_derivative(void **state)
{
    (void)state;
    unsigned long long seed = 7;
    const double step = 0.01, share = 1e-3;
    double worst = 0;
    int compared = 0;
    for (int k = 0; k < 2000; k++) {
        const brine_bath b = brine_draw_bath(&seed);
        const double T = b.T - 60 * brine_draw(&seed);
        double molality = 0, by_T, by_strength, none;
        const double log_p = boil_solution_log_vapour_pressure(&b.c, &b.m, T, 1e-6, &molality, &by_T, &by_strength);
        assert_true(isfinite(log_p));
        if (boil_solution_range_at(T, molality).margin <= 0)
            continue;
        const double above = boil_solution_log_vapour_pressure(&b.c, &b.m, T + step, 1e-6, &molality, &none, &none);
        const double below = boil_solution_log_vapour_pressure(&b.c, &b.m, T - step, 1e-6, &molality, &none, &none);
        assert_close(by_T, (above - below) / (2 * step), 1e-6, 1e-8);
        boil_mixture strong = b.m, weak = b.m;
        strong.water *= exp(-share);
        weak.water *= exp(share);
        const double stronger = boil_solution_log_vapour_pressure(&b.c, &strong, T, 1e-6, &molality, &none, &none);
        const double weaker = boil_solution_log_vapour_pressure(&b.c, &weak, T, 1e-6, &molality, &none, &none);
        assert_close(by_strength, (stronger - weaker) / (2 * share), 1e-5, 1e-7);
        compared++;
        worst = fmax(worst, fabs(by_T * 2 * step / (above - below) - 1));
    }
    assert_true(compared > 1800);
    print_message("d ln p/dT against differences: within %.1g in %d\n", worst, compared);
}

static double enthalpy(const boil_mixture *m, double T)
{
    return boil_solution_heat(m, T).enthalpy_J;
}

static void heat_derivatives(void **state)
{
    (void)state;
    unsigned long long seed = 8;
    const double kelvin = 0.01;
    for (int k = 0; k < 2000; k++) {
        const brine_bath b = brine_draw_bath(&seed);
        const double T = b.T - 60 * brine_draw(&seed);
        const boil_heat h = boil_solution_heat(&b.m, T);
        const double cp = (enthalpy(&b.m, T + kelvin) - enthalpy(&b.m, T - kelvin)) / (2 * kelvin);
        assert_close(h.heat_capacity_J_K, cp, 1e-7, 0);
        for (int i = 0; i <= BOIL_SALTS; i++) {
            const double step = step_of(&b.m, i);
            if (!(step > 1e-6))
                continue;
            boil_mixture more = b.m, less = b.m;
            *mass_of(&more, i) += step;
            *mass_of(&less, i) -= step;
            const double partial = i == 0 ? h.water : h.salt[i - 1];
            assert_close(partial, (enthalpy(&more, T) - enthalpy(&less, T)) / (2 * step), 1e-5, 20);
        }
    }
}

/* Euler: H is homogeneous of degree one in the masses, the salts' linear terms included. */
static void enthalpy_is_the_sum_of_its_parts(void **state)
{
    (void)state;
    unsigned long long seed = 9;
    for (int k = 0; k < 5000; k++) {
        const brine_bath b = brine_draw_bath(&seed);
        const boil_heat h = boil_solution_heat(&b.m, b.T);
        double sum = b.m.water * h.water, size = fabs(sum);
        for (int i = 0; i < BOIL_SALTS; i++) {
            sum += b.m.salt[i] * h.salt[i];
            size += fabs(b.m.salt[i] * h.salt[i]);
        }
        assert_close(sum, h.enthalpy_J, 0, 1e-12 * size);
    }
}

static void caustic_derivatives(void **state)
{
    (void)state;
    const double step = 1e-4, kelvin = 0.01;
    for (double x = 0.26; x < 0.9995; x += 0.02) {
        for (double T = KELVIN(25); T < KELVIN(190); T += 15) {
            double a_l, a_T, h_x, h_T, d1, d2;
            boil_naoh_log_activity(log(x), T, &a_l, &a_T);
            boil_naoh_apparent_enthalpy(x, T, &h_x, &h_T);
            assert_close(
                a_l,
                (boil_naoh_log_activity(log(x) + step, T, &d1, &d2) - boil_naoh_log_activity(log(x) - step, T, &d1, &d2)) /
                    (2 * step),
                1e-6, 1e-7);
            assert_close(
                a_T,
                (boil_naoh_log_activity(log(x), T + kelvin, &d1, &d2) - boil_naoh_log_activity(log(x), T - kelvin, &d1, &d2)) /
                    (2 * kelvin),
                1e-6, 1e-10);
            assert_close(
                h_x,
                (boil_naoh_apparent_enthalpy(x + step, T, &d1, &d2) - boil_naoh_apparent_enthalpy(x - step, T, &d1, &d2)) /
                    (2 * step),
                1e-5, 20);
            assert_close(
                h_T,
                (boil_naoh_apparent_enthalpy(x, T + kelvin, &d1, &d2) - boil_naoh_apparent_enthalpy(x, T - kelvin, &d1, &d2)) /
                    (2 * kelvin),
                1e-7, 1e-5);
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(boiling_slopes_are_derivatives),   cmocka_unit_test(boiling_slopes_balance),
        cmocka_unit_test(pressure_slope_is_the_derivative), cmocka_unit_test(heat_derivatives),
        cmocka_unit_test(enthalpy_is_the_sum_of_its_parts), cmocka_unit_test(caustic_derivatives),
    };
    gsl_set_error_handler_off();
    return cmocka_run_group_tests_name("derivatives", tests, NULL, NULL);
}
