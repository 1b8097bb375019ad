/* Viscosity of water and of salt solutions. Published values: tests/validate. */
#include "support/brine.h"

#include "properties/viscosity.h"

static const double mixed[BOIL_SALTS] = {0.8, 0.15, 0.05};

/* The same rule evaluated independently, mPa s, three or four digits: arithmetic. */
static void over_temperature(void **state)
{
    (void)state;
    const double t[] = {20, 40, 60, 100, 141};
    const double values[][5] = {{13.27, 5.82, 3.24, 1.46, 0.85},
                                {34.9, 12.6, 6.1, 2.38, 1.27},
                                {81.6, 23.8, 10.1, 3.31, 1.61},
                                {47.1, 15.6, 7.3, 2.63, 1.36}};
    const boil_mixture mixtures[] = {brine_of_caustic(30), brine_of_caustic(40), brine_of_caustic(50),
                                     boil_mixture_of(mixed, 0.512)};
    for (int i = 0; i < 4; i++) {
        for (int j = 0; j < 5; j++)
            assert_close(boil_viscosity_solution(&mixtures[i], KELVIN(t[j])) * 1e3, values[i][j], 8e-3, 0);
    }
}

static void ends_in_water_and_holds_beyond_its_range(void **state)
{
    (void)state;
    const boil_mixture pure = {1, {0, 0, 0}}, film = boil_mixture_of(mixed, 1e-7);
    assert_close(boil_viscosity_solution(&pure, KELVIN(20)), boil_viscosity_water(KELVIN(20)), 1e-12, 0);
    assert_close(boil_viscosity_solution(&film, KELVIN(20)), boil_viscosity_water(KELVIN(20)), 1e-5, 0);
    assert_close(boil_viscosity_solution(&pure, KELVIN(190)), 0.2e-3, 1e-12, 0);
    const boil_mixture end = boil_mixture_of(mixed, 0.56), beyond = boil_mixture_of(mixed, 0.7);
    assert_close(boil_viscosity_solution(&beyond, KELVIN(140)), boil_viscosity_solution(&end, KELVIN(140)), 1e-12, 0);
}

/* Thicker with strength, thinner with warmth; the amount does not matter. */
static void order(void **state)
{
    (void)state;
    for (double t = 0; t < 180; t += 20) {
        for (double w = 0.05; w < 0.55; w += 0.05) {
            const boil_mixture m = boil_mixture_of(mixed, w), more = boil_mixture_of(mixed, w + 0.05);
            const boil_mixture tank = boil_mixture_scaled(&m, 500);
            const double mu = boil_viscosity_solution(&m, KELVIN(t));
            assert_true(boil_viscosity_solution(&more, KELVIN(t)) > mu);
            assert_true(boil_viscosity_solution(&m, KELVIN(t + 5)) <= mu);
            assert_close(boil_viscosity_solution(&tank, KELVIN(t)), mu, 1e-12, 0);
        }
    }
}

/* The table is the rule itself to 5e-8, from below where it begins to beyond where the rule is held, whatever was asked before. */
static void a_table_tells_the_same(void **state)
{
    (void)state;
    static boil_viscosity_table there, back;
    static const double only[BOIL_SALTS] = {1, 0, 0}, none[BOIL_SALTS] = {0, 1, 0};
    const double *const salts[] = {mixed, only, none};
    enum { STEPS = 1201 };
    for (int k = 0; k < 3; k++)
        for (int i = 0; i < STEPS; i++) {
            const boil_mixture up = boil_mixture_of(salts[k], i * 0.6 / STEPS),
                               down = boil_mixture_of(salts[k], (STEPS - 1 - i) * 0.6 / STEPS);
            const double t = KELVIN(20 + i % 120);
            const double told = boil_viscosity_told(&there, &up, t);
            assert_close(told, boil_viscosity_solution(&up, t), 5e-8, 0);
            (void)boil_viscosity_told(&back, &down, t);
            if (i == STEPS - 1 - i || i > STEPS / 2)
                assert_true(told == boil_viscosity_told(&back, &up, t));
        }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(over_temperature),
        cmocka_unit_test(ends_in_water_and_holds_beyond_its_range),
        cmocka_unit_test(order),
        cmocka_unit_test(a_table_tells_the_same),
    };
    return cmocka_run_group_tests_name("viscosity", tests, NULL, NULL);
}
