/* Density of the bath liquid; row by row against published tables in tests/validate. */
#include "properties/naoh.h"
#include "properties/water.h"
#include "support/brine.h"
#include "support/tally.h"

/* The model adds Olsson's apparent volumes to the volume of IAPWS water, so that the correlation's own error for
   water (0.04 to 0.09 %) drops out: mean 0.00, worst 0.14 % over the critical tables' 48 points; the raw correlation
   has -0.05 and 0.19 % there. */
static void density_of_caustic(void **state)
{
    (void)state;
    tally tables = {0};
    published *table = published_open("tests/published/caustic_density.csv");
    while (published_next(table)) {
        const boil_mixture m = brine_of_caustic(published_number(table, "wt_pct"));
        const double rho = boil_solution_density(&m, KELVIN(published_number(table, "t_degC")));
        if (published_text(table, "id")[0] == 'I')
            tally_add(&tables, 100 * evidence_row_deviation(table, rho / 1e3), published_text(table, "id"));
    }
    published_close(table);
    assert_int_equal(tables.count, 48);
    assert_true(fabs(tables.sum / tables.count) < 0.01);
    assert_true(fabs(tables.worst) < 0.15);
    tally_print(&tables, "density of NaOH, critical tables", "%");
}

static void water_alone_is_water(void **state)
{
    (void)state;
    const boil_mixture water = {.water = 3};
    for (double t = 5; t < 150; t += 5)
        assert_close(boil_solution_density(&water, KELVIN(t)), boil_water_density(KELVIN(t)), 1e-14, 0);
}

/* Only ratios matter; density falls with temperature and rises with salt. */
static void density_is_orderly(void **state)
{
    (void)state;
    unsigned long long seed = 11;
    for (int i = 0; i < 500; i++) {
        double blend[BOIL_SALTS];
        brine_draw_blend(&seed, blend);
        const double fraction = 0.05 + 0.40 * brine_draw(&seed), T = KELVIN(20 + 130 * brine_draw(&seed));
        const boil_mixture m = boil_mixture_of(blend, fraction), more = boil_mixture_of(blend, fraction + 0.01);
        boil_mixture tenfold = m;
        tenfold.water *= 10;
        for (int k = 0; k < BOIL_SALTS; k++)
            tenfold.salt[k] *= 10;
        const double rho = boil_solution_density(&m, T);
        assert_close(boil_solution_density(&tenfold, T), rho, 1e-13, 0);
        assert_true(boil_solution_density(&m, T + 1) < rho);
        assert_true(boil_solution_density(&more, T) > rho);
    }
}

/* The apparent volume is held below 0.1 % NaOH: no step there, and the density leaves water's without a jump. */
static void dilute_end_is_smooth(void **state)
{
    (void)state;
    for (double t = 10; t < 150; t += 10) {
        const double T = KELVIN(t);
        assert_close(boil_naoh_apparent_volume(0.999 + 1e-9, T), boil_naoh_apparent_volume(0.999 - 1e-9, T), 0, 1e-9);
        const boil_mixture trace = brine_of_caustic(1e-6);
        assert_close(boil_solution_density(&trace, T), boil_water_density(T), 3e-8, 0);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(density_of_caustic),
        cmocka_unit_test(water_alone_is_water),
        cmocka_unit_test(density_is_orderly),
        cmocka_unit_test(dilute_end_is_smooth),
    };
    return cmocka_run_group_tests_name("density", tests, NULL, NULL);
}
