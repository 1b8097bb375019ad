/* Water in, through what valve; and what goes to the rinse. */
#include "support/close.h"

#include "design/makeup.h"
#include "design/published_units.h"
#include "design/rinse.h"

static const double gallon_hour = 3.785411784e-3 / 3600;

/* NFPA 291 (from memory): 2.5 in, 10 psi, coefficient 1: 590 gpm. */
static void a_hole_lets_through_what_the_standard_says(void **state)
{
    (void)state;
    assert_close(boil_makeup_orifice(590 * BOIL_GALLON_A_MINUTE, 10 * BOIL_PSI, 1) / BOIL_INCH, 2.5, 0.001, 0);
    const double flow = 3 * 16.84 * gallon_hour;
    assert_close(boil_makeup_valve(flow, 40 * BOIL_PSI), 0.133, 0.003, 0);
    assert_close(boil_makeup_orifice(flow, 40 * BOIL_PSI, BOIL_MAKEUP_DISCHARGE) / BOIL_INCH, 0.086, 0.01, 0);
    assert_close(BOIL_MAKEUP_PRESSURE, 40 * BOIL_PSI, 1e-4, 0);
}

/* 1 + k + ... + k^n, k the flow over the drag-out: how many times weaker the last rinse is. */
static double weaker(double k, int stages)
{
    double sum = 1, term = 1;
    for (int i = 0; i < stages; i++)
        sum += term *= k;
    return sum;
}

/* One gallon in 99 of water is 100:1 ("10 minutes to better rinsing"). */
static void rinses_are_never_short_of_the_exact_flow(void **state)
{
    (void)state;
    assert_close(weaker(99, 1), 100, 1e-12, 0);
    for (int stages = 1; stages <= 4; stages++)
        for (double ratio = 1; ratio < 1e6; ratio *= 3)
            assert_true(weaker(boil_rinse_flow(1, ratio, stages), stages) >= ratio);
    assert_close(boil_rinse_flow(0.0136, 1000, 1), 13.6, 1e-9, 0);
    assert_close(boil_rinse_flow(0.0136, 1000, 2), 0.43, 0.002, 0);
    assert_close(boil_rinse_flow(0.0136, 1000, 3), 0.136, 1e-9, 0);
    assert_true(boil_rinse_flow(0, 1000, 2) == 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_hole_lets_through_what_the_standard_says),
        cmocka_unit_test(rinses_are_never_short_of_the_exact_flow),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
