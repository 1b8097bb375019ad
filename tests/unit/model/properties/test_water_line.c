/* Water on its saturation line by polynomials, against the formulas of IAPWS SR1-86(1992) and IF97 region 4 that they stand for; the
   formulas' own check points are in test_water.c. */
#include "properties/water.h"
#include "properties/water_exact.h"
#include "support/close.h"

static const double COLDEST_K = 273.15, HOTTEST_K = 473.15, STEP_K = 0.013;

static double worse(double worst, double off)
{
    assert_true(isfinite(off));
    return fmax(worst, fabs(off));
}

/* Heat off is told in kelvins: what the bath's temperature is off by. */
static void within_their_bounds(void **state)
{
    (void)state;
    double enthalpy_K = 0, capacity = 0, density = 0, latent = 0, pressure = 0, by_K = 0, back_K = 0;
    for (double T = COLDEST_K; T <= HOTTEST_K; T += STEP_K) {
        double cp, exact_cp, h = boil_water_enthalpy_slope(T, &cp), exact = boil_water_exact_enthalpy(T, &exact_cp), slope;
        enthalpy_K = worse(enthalpy_K, (h - exact) / exact_cp);
        capacity = worse(capacity, cp / exact_cp - 1);
        density = worse(density, boil_water_density(T) / boil_water_exact_density(T) - 1);
        latent = worse(latent, boil_water_latent_heat(T) / boil_water_exact_latent_heat(T) - 1);
        double p = boil_water_saturation_pressure(T), ln_p = boil_water_log_saturation_pressure(T, &slope);
        pressure = worse(pressure, ln_p - log(p));
        by_K = worse(by_K, slope * p / boil_water_saturation_pressure_slope(T) - 1);
        back_K = worse(back_K, boil_water_temperature(exact) - boil_water_exact_temperature(exact));
    }
    print_message(
        "enthalpy %.1e K, heat capacity %.1e, density %.1e, latent heat %.1e, ln p %.1e, its slope %.1e, T(h) %.1e K\n",
        enthalpy_K, capacity, density, latent, pressure, by_K, back_K);
    assert_true(enthalpy_K < 1e-10);
    assert_true(capacity < 1e-9);
    assert_true(density < 1e-11);
    assert_true(latent < 1e-12);
    assert_true(pressure < 5e-12);
    assert_true(by_K < 5e-10);
    assert_true(back_K < 1e-10);
}

/* A layer born at the boil would else begin beyond the guard that ends it. */
static void temperature_undoes_the_polynomial_itself(void **state)
{
    (void)state;
    for (double T = COLDEST_K; T <= HOTTEST_K; T += STEP_K)
        assert_close(boil_water_temperature(boil_water_enthalpy(T)), T, 0, 2e-10);
}

static void slopes_are_those_of_the_polynomials(void **state)
{
    (void)state;
    const double e = 1e-3;
    for (double T = COLDEST_K + 1; T <= HOTTEST_K - 1; T += 0.77) {
        double cp, slope, unused;
        boil_water_enthalpy_slope(T, &cp);
        boil_water_log_saturation_pressure(T, &slope);
        assert_close(cp, (boil_water_enthalpy(T + e) - boil_water_enthalpy(T - e)) / (2 * e), 1e-7, 0);
        assert_close(slope,
                     (boil_water_log_saturation_pressure(T + e, &unused) - boil_water_log_saturation_pressure(T - e, &unused)) /
                         (2 * e),
                     1e-7, 0);
        assert_true(boil_water_heat_capacity(T) == cp);
    }
}

/* Where two pieces meet nothing jumps by more than rounding counts for in a run. */
static void pieces_meet(void **state)
{
    (void)state;
    for (double T = 284.15; T < HOTTEST_K; T += 21) {
        double below = nextafter(T, 0), above = nextafter(T, 1e3), below_cp, above_cp;
        double jump = boil_water_enthalpy_slope(above, &above_cp) - boil_water_enthalpy_slope(below, &below_cp);
        assert_true(fabs(jump / above_cp) < 1e-10);
        assert_close(above_cp, below_cp, 1e-9, 0);
        assert_close(boil_water_density(above), boil_water_density(below), 1e-11, 0);
    }
}

static void beyond_their_ends_the_formulas_stand(void **state)
{
    (void)state;
    const double beyond_K[] = {230, 263, 474, 520};
    for (int i = 0; i < 4; i++) {
        double T = beyond_K[i], cp, exact_cp, slope, exact = boil_water_exact_enthalpy(T, &exact_cp);
        assert_true(boil_water_enthalpy_slope(T, &cp) == exact && cp == exact_cp);
        assert_true(boil_water_enthalpy(T) == exact);
        assert_true(boil_water_density(T) == boil_water_exact_density(T));
        assert_true(boil_water_latent_heat(T) == boil_water_exact_latent_heat(T));
        assert_true(boil_water_log_saturation_pressure(T, &slope) == log(boil_water_saturation_pressure(T)));
    }
    assert_true(boil_water_temperature(-6e4) == boil_water_exact_temperature(-6e4));
    assert_true(isnan(boil_water_enthalpy((double)NAN)) && isnan(boil_water_temperature((double)NAN)));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(within_their_bounds),
        cmocka_unit_test(temperature_undoes_the_polynomial_itself),
        cmocka_unit_test(slopes_are_those_of_the_polynomials),
        cmocka_unit_test(pieces_meet),
        cmocka_unit_test(beyond_their_ends_the_formulas_stand),
    };
    return cmocka_run_group_tests_name("water_line", tests, NULL, NULL);
}
