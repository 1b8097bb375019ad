/* Real steel in a bath whose boil stops and returns, against a fine finite-volume solution; and the heat balance. */
#include "case/load.h"

#include "support/close.h"
#include "support/heating.h"
#include "support/series.h"
#include "support/volumes.h"

#define START_K 293.15
#define FLUID_K 414.15
#define COUNT(a) (sizeof(a) / sizeof *(a))

static const char *const name[] = {"plate", "bar", "ball"};

static boil_conduction_body steel_body(boil_shape shape, double size_m)
{
    boil_load l = boil_load_default();
    l.mass_kg = 20;
    l.shape = shape;
    l.size_m = size_m;
    assert_null(boil_load_problem(&l));
    return boil_load_parts(&l);
}

/* The boil stops at 5 s and is back at 43 s. */
static double coefficient_at(double t)
{
    return t >= 5 && t < 43 ? 800 : 3000;
}

/* The yardstick itself against the series, a coarse step of its own. */
static void volumes_follow_the_series(void **state)
{
    (void)state;
    const boil_metal m = {.density_kg_m3 = 7850, .heat_capacity = {480}, .conductivity = {50}};
    double worst = 0;
    for (int d = 1; d <= 3; d++) {
        const double r = 0.03, h = 3000, fourier_per_s = 50 / (7850 * 480 * r * r);
        const series s = series_create(d, h * r / 50);
        volumes v = volumes_create(&m, d, r, START_K);
        for (int i = 1; i <= 2000; i++) {
            volumes_step(&v, FLUID_K, h, 0.05);
            const double theta = (volumes_mean(&v) - FLUID_K) / (START_K - FLUID_K);
            if (i >= 10)
                worst = fmax(worst, fabs(theta - series_mean(&s, i * 0.05 * fourier_per_s)));
        }
    }
    print_message("finite volumes against the series: %.1e of the rise\n", worst);
    assert_true(worst < 1e-4);
}

typedef struct {
    double mean, heat, at_s; /* shares of the rise, and of the heat to be taken; time of the worse */
} deviation;

/* Side by side until 99 % of the rise; steps that meet the switches at 5 and 43 s. */
static deviation worst_deviation(const boil_conduction_body *b, double start_K, double steps_per_s)
{
    const double full = boil_metal_enthalpy(&b->metal, FLUID_K) - boil_metal_enthalpy(&b->metal, start_K);
    heating g = heating_start(b, start_K, FLUID_K, 0);
    volumes v = volumes_create(&b->metal, b->dimension, b->radius_m, start_K);
    v.metal.density_kg_m3 = b->density_kg_m3;
    deviation worst = {0};
    for (int i = 0; volumes_mean(&v) < FLUID_K - 0.01 * (FLUID_K - start_K); i++) {
        g.coefficient_W_m2K = coefficient_at((i + 0.5) / steps_per_s);
        volumes_step(&v, FLUID_K, g.coefficient_W_m2K, 1 / steps_per_s);
        heating_advance(&g, (i + 1) / steps_per_s);
        const double mean = (g.y[0] - volumes_mean(&v)) / (FLUID_K - start_K);
        const double heat = (boil_metal_enthalpy(&b->metal, g.y[0]) - volumes_enthalpy(&v)) / full;
        worst.heat = fabs(heat) > fabs(worst.heat) ? heat : worst.heat;
        if (fabs(mean) > fabs(worst.mean)) {
            worst.mean = mean;
            worst.at_s = (i + 1) / steps_per_s;
        }
    }
    return worst;
}

/* The sizes include the largest that have one and two unknowns: 28.8 and 70.7 mm plate, 36.5 and 81.6 mm bar, 44.1 and
   92.5 mm ball. */
static void steel_follows_the_boil(void **state)
{
    (void)state;
    static const double mm[][8] = {
        {6, 12, 25, 28.8, 50, 70.7, 100}, {6, 12, 25, 36.5, 50, 81.6, 100}, {6, 12, 25, 44.1, 50, 92.5, 100}};
    for (size_t s = 0; s < COUNT(mm); s++) {
        for (size_t i = 0; mm[s][i] > 0; i++) {
            const boil_conduction_body b = steel_body((boil_shape)s, mm[s][i] / 1000);
            const deviation d = worst_deviation(&b, START_K, mm[s][i] < 20 ? 20 : 10);
            print_message("%4.1f mm %s, n %d: mean %+.2f %% of the rise at %.1f s, heat %+.2f %%\n", mm[s][i], name[s],
                          b.unknowns, 100 * d.mean, d.at_s, 100 * d.heat);
            assert_close(d.mean, 0, 0, 0.01);
            assert_close(d.heat, 0, 0, 0.01);
        }
    }
}

/* Below 1.6 mm of sheet the limit on fast answers shows. A known price, not an error of the expansion: the mean of 1 mm
   sheet takes 0.9 s for 0.6 s, which is 13.6 % of the rise at the worst moment and gone two seconds later. */
static void only_thin_sheet_is_late(void **state)
{
    (void)state;
    static const double mm[] = {1, 1.5, 2, 3}, documented[] = {-0.136, -0.002, 0, 0};
    for (size_t i = 0; i < COUNT(mm); i++) {
        const boil_conduction_body b = steel_body(BOIL_SHAPE_PLATE, mm[i] / 1000);
        const deviation d = worst_deviation(&b, START_K, 50);
        print_message("%.1f mm sheet: mean %+.2f %% of the rise at %.2f s\n", mm[i], 100 * d.mean, d.at_s);
        assert_close(d.mean, documented[i], 0, 0.001);
    }
}

/* A dense basket is poor in conduction, so its Biot number is large. */
static void pack_follows_the_boil(void **state)
{
    (void)state;
    static const double depth_m[] = {0.02, 0.05, 0.1, 0.3};
    for (size_t i = 0; i < COUNT(depth_m); i++) {
        boil_load l = boil_load_default();
        l.mass_kg = 20;
        l.size_m = 0.006;
        l.packed_depth_m = depth_m[i];
        boil_conduction_body b = boil_load_parts(&l);
        b.metal.conductivity[0] = b.conductivity_W_mK; /* for the finite volumes */
        b.metal.conductivity[1] = 0;
        const deviation d = worst_deviation(&b, START_K, depth_m[i] < 0.1 ? 5 : 1);
        print_message("%3.0f mm pack, n %d: mean %+.2f %% of the rise at %.1f s, heat %+.2f %%\n", 1000 * depth_m[i],
                      b.unknowns, 100 * d.mean, d.at_s, 100 * d.heat);
        assert_close(d.mean, 0, 0, 0.01);
    }
}

/* What the bath gives is what the steel has, whatever the coefficient does and however slowly it is lowered. */
static void heat_is_conserved(void **state)
{
    (void)state;
    double worst = 0;
    for (int s = 0; s < 3; s++) {
        static const double mm[] = {1, 6, 40, 100};
        for (size_t i = 0; i < COUNT(mm); i++) {
            const boil_conduction_body b = steel_body((boil_shape)s, mm[i] / 1000);
            heating g = heating_start(&b, START_K, FLUID_K, 0);
            g.lowering_s = 10;
            static const double stop_s[] = {5, 10, 43, 90};
            for (size_t j = 0; j < COUNT(stop_s); j++) {
                g.coefficient_W_m2K = coefficient_at(g.time_s);
                heating_advance(&g, stop_s[j]);
            }
            const double before = boil_metal_enthalpy(&b.metal, START_K);
            const double taken = b.mass_kg * (boil_metal_enthalpy(&b.metal, g.y[0]) - before);
            worst = fmax(worst, fabs(g.y[b.unknowns] / taken - 1));
            assert_close(g.y[b.unknowns], taken, 1e-9, 0);
        }
    }
    print_message("heat given against heat taken: off by %.1e\n", worst);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(volumes_follow_the_series), cmocka_unit_test(steel_follows_the_boil),
        cmocka_unit_test(only_thin_sheet_is_late),   cmocka_unit_test(pack_follows_the_boil),
        cmocka_unit_test(heat_is_conserved),
    };
    gsl_set_error_handler_off();
    return cmocka_run_group_tests_name("body_steel", tests, NULL, NULL);
}
