/* What is known of a solution: density at 20 degC against the published tables, heat of dilution against mixing it, and the slope
   of the boiling point against two boiling points. */
#include "support/close.h"

#include <gsl/gsl_errno.h>

#include "base/constants.h"
#include "case/solution_facts.h"
#include "properties/solubility.h"
#include "support/cases.h"
#include "support/pins.h"

/* The bounds are the rows' own or their pins. */
static void density_at_20_degC(void **unused)
{
    (void)unused;
    int rows = 0;
    double worst = 0;
    published *t = published_open("tests/published/caustic_density.csv");
    while (published_next(t)) {
        boil_solution_facts a;
        if (published_number(t, "t_degC") != 20)
            continue;
        boil_plant p = caustic_of(published_number(t, "wt_pct") / 100);
        assert_int_equal(boil_solution_facts_of(&p, &a), BOIL_OK);
        double off = evidence_row_deviation(t, a.cold_kg_m3 / 1000);
        pins_hold_row("caustic_density", t, off);
        worst = fmax(worst, fabs(off));
        rows++;
    }
    published_close(t);
    assert_true(rows >= 3);
    print_message("density at 20 degC: %d rows, within %.3f %%\n", rows, 100 * worst);
}

/* A kilogram of water into ten tonnes sets free what the look-up says. */
static void heat_of_dilution(void **unused)
{
    (void)unused;
    boil_solution_facts a;
    boil_plant p = caustic_of(0.5);
    assert_int_equal(boil_solution_facts_of(&p, &a), BOIL_OK);
    boil_mixture much = boil_mixture_of(p.charge.blend, 0.5), more;
    for (int i = 0; i < BOIL_SALTS; i++)
        much.salt[i] *= 1e4;
    much.water *= 1e4;
    more = much;
    more.water += 1;
    double h_w = a.heat.water + a.dilution_J_kg;
    double free_J =
        boil_solution_heat(&much, a.temperature_K).enthalpy_J + h_w - boil_solution_heat(&more, a.temperature_K).enthalpy_J;
    assert_close(free_J, a.dilution_J_kg, 1e-3, 0);
    assert_true(a.dilution_J_kg > 3e5);
    assert_close(a.crystals_from_K, boil_solubility_liquidus(0.5), 0, 1e-6); /* of hydroxide alone: its liquidus */
}

static void slope_and_range(void **unused)
{
    (void)unused;
    boil_solution_facts a, less, more;
    boil_plant p = caustic_of(0.5), q = caustic_of(0.499), r = caustic_of(0.501);
    assert_int_equal(boil_solution_facts_of(&p, &a), BOIL_OK);
    assert_int_equal(boil_solution_facts_of(&q, &less), BOIL_OK);
    assert_int_equal(boil_solution_facts_of(&r, &more), BOIL_OK);
    assert_close(a.slope_K, (more.boiling_point_K - less.boiling_point_K) / 0.002, 1e-3, 0);
    assert_true(a.temperature_K == a.boiling_point_K && a.density_kg_m3 == a.hot_kg_m3 && a.range.margin > 0);
    p.charge.value = 0.95;
    assert_int_not_equal(boil_solution_facts_of(&p, &a), BOIL_OK);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(density_at_20_degC),
        cmocka_unit_test(heat_of_dilution),
        cmocka_unit_test(slope_and_range),
    };
    gsl_set_error_handler_off();
    return cmocka_run_group_tests_name("solution facts", tests, NULL, NULL);
}
