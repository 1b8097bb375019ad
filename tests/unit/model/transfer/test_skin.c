/* The skin of an evaporating bath. Numbers without another source come from an independent calculation of the same formulas. */
#include "support/close.h"

#include "transfer/skin.h"

static const boil_skin_liquid bath = {1438, 3045, 0.65, BOIL_SKIN_DIFFUSIVITY};

static void mass_transfer(void **state)
{
    (void)state;
    assert_close(boil_skin_mass_transfer(&bath, 1500), 5.6e-5, 0, 6e-7);
    /* As h_liq, and as the root of D; with D = kappa it is h_liq/(rho c). */
    assert_close(boil_skin_mass_transfer(&bath, 3000) / boil_skin_mass_transfer(&bath, 1500), 2, 1e-12, 0);
    boil_skin_liquid l = bath;
    l.salt_diffusivity_m2_s *= 4;
    assert_close(boil_skin_mass_transfer(&l, 1500) / boil_skin_mass_transfer(&bath, 1500), 2, 1e-12, 0);
    l.salt_diffusivity_m2_s = 0.65 / (1438 * 3045.0);
    assert_close(boil_skin_mass_transfer(&l, 1500), 1500 / (1438 * 3045.0), 1e-12, 0);
}

static void skin_is_stronger(void **state)
{
    (void)state;
    const double cases[][2] = {{1e-3, 1.014}, {2e-3, 1.028}, {4.4e-3, 1.063}};
    for (int i = 0; i < 3; i++)
        assert_close(boil_skin_salt_fraction(0.512, cases[i][0], 1438, 5e-5) / 0.512, cases[i][1], 0, 6e-4);
    assert_close(boil_skin_salt_fraction(0.512, 4.4e-3, 1438, HUGE_VAL), 0.512, 1e-15, 0);
    assert_true(boil_skin_salt_fraction(0.512, -1e-3, 1438, 5e-5) < 0.512);
    assert_true(boil_skin_salt_fraction(0, 1e-3, 1438, 5e-5) == 0);
    assert_true(boil_skin_salt_fraction(0.512, 1e3, 1438, 5e-5) == 1);
}

/* The film's balance e s = rho k_L ds/dz', from bulk to skin, integrated in small steps. */
static void skin_balances_salt(void **state)
{
    (void)state;
    const double e = 3e-3, rho = 1438, k_L = 5.6e-5;
    double s = 0.5;
    enum { STEPS = 100000 };
    for (int i = 0; i < STEPS; i++)
        s += e * s / (rho * k_L) / STEPS;
    assert_close(boil_skin_salt_fraction(0.5, e, rho, k_L), s, 1e-6, 0);
}

/* Near none the series, else the quotient: both are (2), to rounding, from one side of where they meet to the other. */
static void convection_is_the_quotient(void **state)
{
    (void)state;
    for (double phi = -3; phi < 3; phi += 0.013)
        assert_close(boil_skin_convection_factor(phi, 1, 1), phi / expm1(phi), 2e-15, 0);
    assert_close(boil_skin_convection_factor(0.5, 1, 1), boil_skin_convection_factor(nextafter(0.5, 0), 1, 1), 2e-15, 0);
}

/* phi 1.45 at 4.4e-3 kg/m2s and 5.9 W/m2K: 0.44. Smooth through none. */
static void convection_against_the_stream(void **state)
{
    (void)state;
    assert_close(4.4e-3 * 1944 / 5.9, 1.45, 0, 2e-3);
    assert_close(boil_skin_convection_factor(4.4e-3, 1944, 5.9), 0.44, 0, 5e-3);
    assert_close(boil_skin_convection_factor(0, 1944, 5.9), 1, 1e-15, 0);
    for (double e = 1e-14; e < 1e-4; e *= 10) {
        const double phi = e * 1944 / 5.9;
        assert_close(boil_skin_convection_factor(e, 1944, 5.9), 1 - phi / 2 + phi * phi / 12, 1e-8, 0);
        /* Film theory: factor(-phi) = factor(phi) exp phi. */
        assert_close(boil_skin_convection_factor(-e, 1944, 5.9), boil_skin_convection_factor(e, 1944, 5.9) * exp(phi), 1e-8, 0);
    }
    assert_true(boil_skin_convection_factor(1e3, 1944, 5.9) == 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(mass_transfer),
        cmocka_unit_test(skin_is_stronger),
        cmocka_unit_test(skin_balances_salt),
        cmocka_unit_test(convection_is_the_quotient),
        cmocka_unit_test(convection_against_the_stream),
    };
    return cmocka_run_group_tests_name("skin", tests, NULL, NULL);
}
