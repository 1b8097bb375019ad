/* Conduction in a body of constant properties against the exact series, and the heat balance. Textbook examples: tests/validate. */
#include "transfer/conduction.h"

#include <gsl/gsl_eigen.h>
#include <gsl/gsl_sort.h>

#include "support/close.h"
#include "support/heating.h"
#include "support/published.h"
#include "support/series.h"

#define START_K 293.15
#define FLUID_K 414.15

static const char *const name[] = {"", "slab", "cylinder", "sphere"};

static boil_metal constant_metal(double conductivity, double volumetric)
{
    return (boil_metal){.density_kg_m3 = 1000, .heat_capacity = {volumetric / 1000}, .conductivity = {conductivity}};
}

/* One square metre of it, without the limit on fast answers. */
static boil_conduction_body constant_body(int dimension, double radius_m, double conductivity, double volumetric)
{
    return (boil_conduction_body){.dimension = dimension,
                                  .unknowns = 1,
                                  .radius_m = radius_m,
                                  .area_m2 = 1,
                                  .mass_kg = 1000 * radius_m / dimension,
                                  .density_kg_m3 = 1000,
                                  .fastest_s = 0,
                                  .metal = constant_metal(conductivity, volumetric)};
}

/* First the yardstick itself: roots and coefficients of Cengel & Ghajar, Table 4-2, and the mean temperatures. */
static void series_gives_the_published_tables(void **state)
{
    (void)state;
    double worst_root = 0, worst_mean = 0;
    published *p = published_open("tests/published/conduction_series.csv");
    while (published_next(p)) {
        const series s = series_create((int)published_number(p, "dimension"), published_number(p, "biot"));
        const char *quantity = published_text(p, "quantity");
        const double want = published_number(p, "value"), allowed = published_number(p, "band");
        const bool mean = strcmp(quantity, "mean") == 0;
        const double got = mean                            ? series_mean(&s, published_number(p, "fourier"))
                           : strcmp(quantity, "root") == 0 ? s.root[0]
                                                           : s.coefficient[0];
        assert_close(got, want, 0, allowed);
        double *worst = mean ? &worst_mean : &worst_root;
        *worst = fmax(*worst, fabs(got - want));
    }
    published_close(p);
    print_message("series: Table 4-2 within %.1e, mean temperatures within %.1e\n", worst_root, worst_mean);
}

/* A part taken at one temperature has no resistance inside. With the metal's own, r/((d+2)k) is in series and the answer slower by
   h r/((d+2)k). */
static void resistance_inside_is_in_series(void **state)
{
    (void)state;
    const double r = 0.0254, k = 43.3, h = 11.36;
    boil_conduction_body b = constant_body(3, r, k, 3615249.4);
    double y[1], slower[1], rate[1];
    boil_conduction_init(&b, START_K, y);
    boil_conduction_rates(&b, y, FLUID_K, h, 1, slower);
    b.conductivity_W_mK = HUGE_VAL;
    boil_conduction_rates(&b, y, FLUID_K, h, 1, rate);
    assert_close(rate[0] / slower[0], 1 + h * r / (5 * k), 1e-14, 0);
}

/* Worst deviation of the mean temperature from the series, as a share of the rise, from a Fourier number on. */
static double worst_against_series(const boil_conduction_body *b, double biot, double from_fourier, double *worst_fourier)
{
    const double k = boil_metal_conductivity(&b->metal, START_K);
    const series s = series_create(b->dimension, biot);
    heating h = heating_start(b, START_K, FLUID_K, biot * k / b->radius_m);
    const double volumetric = b->density_kg_m3 * boil_metal_heat_capacity(&b->metal, START_K);
    const double fourier_s = volumetric * b->radius_m * b->radius_m / k;
    double worst = 0, theta = 1;
    for (double fourier = from_fourier; theta > 0.005; fourier *= 1.15) {
        heating_advance(&h, fourier * fourier_s);
        theta = series_mean(&s, fourier);
        const double off = (h.y[0] - FLUID_K) / (START_K - FLUID_K) - theta;
        if (fabs(off) > fabs(worst)) {
            worst = off;
            *worst_fourier = fourier;
        }
    }
    return worst;
}

/* Steel in a boiling bath, 3000 W/m2K: the Biot number then fixes the size, and the size the number of unknowns. */
static void mean_follows_the_series(void **state)
{
    (void)state;
    static const double biot[] = {0.1, 0.2, 0.5, 1, 2, 5, 10};
    for (int d = 1; d <= 3; d++) {
        for (size_t i = 0; i < sizeof biot / sizeof *biot; i++) {
            boil_conduction_body b = constant_body(d, biot[i] * 50 / 3000, 50, 7850 * 480.0);
            b.fastest_s = 1;
            b.unknowns = boil_conduction_unknowns(&b, START_K);
            b.fastest_s = 0;
            double at = 0;
            const double worst = worst_against_series(&b, biot[i], 5e-4, &at);
            print_message("%s Bi %g, n %d: off %+.2f %% of the rise at Fo %.3f\n", name[d], biot[i], b.unknowns, 100 * worst,
                          at);
            assert_close(worst, 0, 0, 0.01);
        }
    }
}

/* Of the linear system that an integrator meets, 1/s, the slowest first. */
static void rates_of(const boil_conduction_body *b, double coefficient, double rate[BOIL_CONDUCTION_UNKNOWNS_MAX])
{
    gsl_matrix *m = gsl_matrix_alloc((size_t)b->unknowns, (size_t)b->unknowns);
    for (int j = 0; j < b->unknowns; j++) {
        double y[BOIL_CONDUCTION_UNKNOWNS_MAX] = {0}, dydt[BOIL_CONDUCTION_UNKNOWNS_MAX];
        y[j] = 1;
        boil_conduction_rates(b, y, 0, coefficient, 1, dydt); /* linear: a column of its matrix */
        for (int i = 0; i < b->unknowns; i++)
            gsl_matrix_set(m, (size_t)i, (size_t)j, -dydt[i]);
    }
    gsl_vector_complex *rates = gsl_vector_complex_alloc((size_t)b->unknowns);
    gsl_eigen_nonsymm_workspace *w = gsl_eigen_nonsymm_alloc((size_t)b->unknowns);
    assert_int_equal(gsl_eigen_nonsymm(m, rates, w), GSL_SUCCESS);
    for (size_t i = 0; i < rates->size; i++)
        rate[i] = GSL_REAL(gsl_vector_complex_get(rates, i));
    gsl_sort(rate, 1, rates->size);
    gsl_eigen_nonsymm_free(w);
    gsl_vector_complex_free(rates);
    gsl_matrix_free(m);
}

static double fastest_rate(const boil_conduction_body *b, double coefficient)
{
    double rate[BOIL_CONDUCTION_UNKNOWNS_MAX];
    rates_of(b, coefficient, rate);
    return rate[b->unknowns - 1];
}

/* The slowest rates are the squares of the exact roots, in k/(rho c r^2): of three unknowns the first within a hundred-thousandth, the second
   within a fiftieth. */
static void unknowns_decay_by_the_exact_roots(void **state)
{
    static const double biot[] = {0.1, 1, 5};
    (void)state;
    for (int d = 1; d <= 3; d++)
        for (size_t i = 0; i < sizeof biot / sizeof *biot; i++) {
            const series s = series_create(d, biot[i]);
            boil_conduction_body b = constant_body(d, 1, 1, 1);
            double rate[BOIL_CONDUCTION_UNKNOWNS_MAX];
            b.unknowns = 3;
            rates_of(&b, biot[i], rate);
            print_message("%s Bi %g: rates off by %+.1e and %+.1e\n", name[d], biot[i], rate[0] / (s.root[0] * s.root[0]) - 1,
                          rate[1] / (s.root[1] * s.root[1]) - 1);
            assert_close(rate[0], s.root[0] * s.root[0], 1e-5, 0);
            assert_close(rate[1], s.root[1] * s.root[1], 0.02, 0);
        }
}

/* What an explicit integrator meets: the fastest rate, for every size and up to an infinite coefficient. */
static void no_unknown_is_fast(void **state)
{
    (void)state;
    double worst_bath = 0, worst_ever = 0;
    for (int d = 1; d <= 3; d++) {
        for (double radius = 1e-4; radius < 0.3; radius *= 1.05) {
            boil_conduction_body b = constant_body(d, radius, 53, 7850 * 440.0);
            b.area_m2 = d * b.mass_kg / (b.density_kg_m3 * radius);
            b.fastest_s = 1;
            b.unknowns = boil_conduction_unknowns(&b, START_K);
            worst_bath = fmax(worst_bath, fastest_rate(&b, 5000));
            worst_ever = fmax(worst_ever, fastest_rate(&b, HUGE_VAL));
        }
    }
    print_message("fastest answer at 1 s asked: %.2f 1/s to 5000 W/m2K, %.2f 1/s at an infinite coefficient\n", worst_bath,
                  worst_ever);
    assert_true(worst_bath < 1.01);
    assert_true(worst_ever < 2.9);
}

/* A 1 mm sheet would answer in 0.59 s; limited, its mean takes 1 s: heat arrives 0.41 s late at most. */
static void thin_sheet_is_slowed_to_the_limit(void **state)
{
    (void)state;
    boil_conduction_body b = constant_body(1, 0.5e-3, 50, 7850 * 450.0);
    double y[1], dydt[1];
    boil_conduction_init(&b, START_K, y);
    boil_conduction_rates(&b, y, FLUID_K, 3000, 1, dydt);
    assert_close((FLUID_K - START_K) / dydt[0], 7850 * 450.0 * 0.5e-3 * (1 / 3000.0 + 0.5e-3 / (3 * 50)), 1e-14, 0);
    b.fastest_s = 1;
    boil_conduction_rates(&b, y, FLUID_K, 3000, 1, dydt);
    assert_close((FLUID_K - START_K) / dydt[0], 1, 1e-14, 0);
    boil_conduction_rates(&b, y, FLUID_K, HUGE_VAL, 1, dydt);
    assert_close((FLUID_K - START_K) / dydt[0], 1, 1e-14, 0);
}

/* Another area than the body's own scales the coefficient. */
static void area_scales_the_coefficient(void **state)
{
    (void)state;
    boil_conduction_body b = constant_body(2, 0.03, 50, 7850 * 480.0);
    b.unknowns = 3;
    const double y[3] = {300, 20, 5};
    double own[3], half[3];
    const double flow = boil_conduction_rates(&b, y, FLUID_K, 1000, 1, own);
    b.area_m2 = 0.5;
    assert_close(boil_conduction_rates(&b, y, FLUID_K, 2000, 1, half), flow, 1e-14, 0);
    for (int i = 0; i < 3; i++)
        assert_close(half[i], own[i], 1e-13, 0);
}

/* Out of the bath the profile evens out and the mean stays; no coefficient is the same as no area. */
static void out_of_the_bath_only_the_profile_moves(void **state)
{
    (void)state;
    boil_conduction_body b = constant_body(3, 0.05, 50, 7850 * 480.0);
    b.unknowns = 3;
    const double y[3] = {350, 10, 3};
    double out[3], still[3];
    assert_close(boil_conduction_rates(&b, y, FLUID_K, 3000, 0, out), 0, 0, 0);
    assert_close(boil_conduction_rates(&b, y, FLUID_K, 0, 1, still), 0, 0, 0);
    for (int i = 0; i < 3; i++)
        assert_close(out[i], still[i], 1e-14, 0);
    assert_true(out[1] < 0);
    heating h = heating_start(&b, START_K, FLUID_K, 3000);
    heating_advance(&h, 10);
    const double mean = h.y[0];
    h.coefficient_W_m2K = 0;
    heating_advance(&h, 600);
    assert_close(h.y[0], mean, 1e-14, 0);
    assert_close(h.y[1], 0, 0, 1e-6);
    assert_close(h.y[2], 0, 0, 1e-6);
}

static void nothing_and_nonsense(void **state)
{
    (void)state;
    boil_conduction_body b = constant_body(1, 0.0015, 50, 7850 * 480.0);
    b.fastest_s = 1;
    double y[1] = {300}, dydt[1] = {7};
    assert_true(isnan(boil_conduction_rates(&b, y, FLUID_K, (double)NAN, 1, dydt)));
    assert_true(isnan(boil_conduction_rates(&b, y, (double)NAN, 100, 1, dydt)));
    b.mass_kg = b.area_m2 = 0;
    assert_close(boil_conduction_rates(&b, y, FLUID_K, 3000, 1, dydt), 0, 0, 0);
    assert_close(dydt[0], 0, 0, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(series_gives_the_published_tables),
        cmocka_unit_test(resistance_inside_is_in_series),
        cmocka_unit_test(mean_follows_the_series),
        cmocka_unit_test(unknowns_decay_by_the_exact_roots),
        cmocka_unit_test(no_unknown_is_fast),
        cmocka_unit_test(thin_sheet_is_slowed_to_the_limit),
        cmocka_unit_test(area_scales_the_coefficient),
        cmocka_unit_test(out_of_the_bath_only_the_profile_moves),
        cmocka_unit_test(nothing_and_nonsense),
    };
    gsl_set_error_handler_off();
    return cmocka_run_group_tests_name("body", tests, NULL, NULL);
}
