/* Water that a load takes through the surface. Numbers come from an independent calculation of the same formulas: arithmetic. */
#include "support/close.h"

#include "transfer/entrainment.h"

/* 42 lb of 1/4 in plate and a 7 lb basket through 8 mm of water, 7.5 kg. */
static boil_entrainment_passage lowered(double speed_m_s)
{
    return (boil_entrainment_passage){.wetted_m2 = 0.76,
                                      .displaced_m3 = 22.2 / 7850,
                                      .speed_m_s = speed_m_s,
                                      .layer_m = 8e-3,
                                      .layer_kg = 7.5,
                                      .water_kg_m3 = 988,
                                      .viscosity_m2_s = 5.9e-7};
}

static void clinging(void **state)
{
    (void)state;
    const double cases[][2] = {{0.03, 0.39}, {0.1, 0.213}, {0.3, 0.12}};
    for (int i = 0; i < 3; i++) {
        const boil_entrainment_passage p = lowered(cases[i][0]);
        assert_close(boil_entrainment_clinging(&p), cases[i][1], 0.03, 0);
    }
}

static void carried_along(void **state)
{
    (void)state;
    const double cases[][2] = {{BOIL_ENTRAINMENT_DRIFT, 0.56}, {0.5, 1.4}, {1, 2.8}};
    const boil_entrainment_passage p = lowered(0.1);
    for (int i = 0; i < 3; i++)
        assert_close(boil_entrainment(&p, cases[i][0]) - boil_entrainment_clinging(&p), cases[i][1], 0.01, 0);
    assert_close(boil_entrainment(&p, BOIL_ENTRAINMENT_DRIFT), 0.77, 0.01, 0);
}

static void limits(void **state)
{
    (void)state;
    boil_entrainment_passage p = lowered(0.1);
    p.layer_kg = 0.1;
    assert_close(boil_entrainment(&p, 1), 0.1, 1e-15, 0);
    p.layer_m = 0, p.layer_kg = 0;
    assert_true(boil_entrainment(&p, 1) == 0);
    p = lowered(0.1);
    p.layer_m = 0; /* so thin that it is none, whatever is said to be in it */
    assert_true(boil_entrainment(&p, 1) == 0 && boil_entrainment_clinging(&p) == 0);
    p = lowered(0.1);
    p.wetted_m2 = p.displaced_m3 = 0;
    assert_true(boil_entrainment(&p, 1) == 0);
    p = lowered(0); /* stands still */
    assert_true(boil_entrainment(&p, 1) == 0 && boil_entrainment_clinging(&p) == 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(clinging), cmocka_unit_test(carried_along), cmocka_unit_test(limits)};
    return cmocka_run_group_tests_name("entrainment", tests, NULL, NULL);
}
