/* The boiling point of a run by its curve, against the equations that the curve stands for (properties/solution.h); those are compared
   with published boiling points in test_boiling.c. */
#include <string.h>

#include "properties/boiling_curve.h"
#include "support/close.h"

static const double blends[][BOIL_SALTS] = {{1, 0, 0}, {0.8, 0.15, 0.05}, {0.6, 0.3, 0.1}, {0.4, 0.4, 0.2}, {0.1, 0.6, 0.3}};
enum { BLENDS = sizeof blends / sizeof blends[0] };

typedef struct {
    double boiling_K, by_mass, molality;
} worst;

static double larger(double worst_yet, double off)
{
    assert_true(isfinite(off));
    return fmax(worst_yet, fabs(off));
}

static void compare(boil_boiling_curve *b, const boil_conditions *c, const boil_mixture *m, worst *w)
{
    boil_solution_guess near = {0, 0}, exact_near = {0, 0};
    double T, exact;
    boil_slope slope, exact_slope;
    assert_int_equal(boil_solution_boiling_point_near(c, m, &exact_near, &exact, &exact_slope), BOIL_OK);
    assert_int_equal(boil_boiling_curve_at(b, c, m, &near, &T, &slope), BOIL_OK);
    assert_true(near.boiling_point_K == T);
    w->boiling_K = larger(w->boiling_K, T - exact);
    w->molality = larger(w->molality, near.equivalent_molality / exact_near.equivalent_molality - 1);
    w->by_mass = larger(w->by_mass, slope.water / exact_slope.water - 1);
    for (int i = 0; i < BOIL_SALTS; i++)
        w->by_mass = larger(w->by_mass, slope.salt[i] / exact_slope.salt[i] - 1);
}

static void as_the_equations_it_stands_for(void **state)
{
    (void)state;
    worst w = {0, 0, 0};
    for (double factor = 0.9; factor < 1.06; factor += 0.05)
        for (int k = 0; k < BLENDS; k++) {
            boil_conditions c = boil_conditions_at(70e3 + 8e3 * k, factor);
            boil_boiling_curve b = {.knot = {0}};
            for (double salts = 0.02; salts < 0.7; salts += 0.0037) {
                boil_mixture m = boil_mixture_of(blends[k], salts);
                compare(&b, &c, &m, &w);
            }
        }
    print_message("boiling point within %.1e K, molality %.1e, slopes %.1e\n", w.boiling_K, w.molality, w.by_mass);
    assert_true(w.boiling_K < 2e-9);
    assert_true(w.molality < 1e-9);
    assert_true(w.by_mass < 1e-7);
}

/* The same answer, to the last bit, whatever was asked before. */
static void no_answer_hangs_on_another(void **state)
{
    (void)state;
    boil_conditions c = boil_conditions_at(98e3, 1);
    boil_boiling_curve up = {.knot = {0}}, down = {.knot = {0}};
    enum { STATES = 900 };
    static double first[STATES], again[STATES];
    static boil_slope first_slope[STATES], again_slope[STATES];
    for (int i = 0; i < STATES; i++) {
        boil_mixture m = boil_mixture_of(blends[1], 0.05 + 6e-4 * i);
        boil_solution_guess guess = {0, 0};
        assert_int_equal(boil_boiling_curve_at(&up, &c, &m, &guess, &first[i], &first_slope[i]), BOIL_OK);
    }
    boil_solution_guess guess = {0, 0};
    for (int i = STATES - 1; i >= 0; i--) {
        boil_mixture m = boil_mixture_of(blends[1], 0.05 + 6e-4 * i);
        assert_int_equal(boil_boiling_curve_at(&down, &c, &m, &guess, &again[i], &again_slope[i]), BOIL_OK);
    }
    assert_memory_equal(first, again, sizeof first);
    assert_memory_equal(first_slope, again_slope, sizeof first_slope);
}

/* Its slopes are those of its own answers: a balance that goes along them closes. */
static void slopes_are_its_own(void **state)
{
    (void)state;
    boil_conditions c = boil_conditions_at(98e3, 0.95);
    boil_boiling_curve b = {.knot = {0}};
    boil_solution_guess guess = {0, 0};
    const double e = 2e-6;
    for (double salts = 0.3; salts < 0.6; salts += 0.0131) {
        boil_mixture m = boil_mixture_of(blends[2], salts), more = m, less = m;
        double T, above, below;
        boil_slope slope;
        more.water += e;
        less.water -= e;
        assert_int_equal(boil_boiling_curve_at(&b, &c, &m, &guess, &T, &slope), BOIL_OK);
        assert_int_equal(boil_boiling_curve_at(&b, &c, &more, &guess, &above, NULL), BOIL_OK);
        assert_int_equal(boil_boiling_curve_at(&b, &c, &less, &guess, &below, NULL), BOIL_OK);
        assert_close(slope.water, (above - below) / (2 * e), 1e-6, 0);
    }
}

static void nearly_water_and_nonsense_go_to_the_equations(void **state)
{
    (void)state;
    boil_conditions c = boil_conditions_at(101325, 1);
    boil_boiling_curve b = {.knot = {0}};
    boil_solution_guess guess = {0, 0};
    double T;
    boil_slope slope;
    boil_mixture water = {.water = 1}, dry = {.water = 0.01, .salt = {1, 0, 0}};
    assert_int_equal(boil_boiling_curve_at(&b, &c, &water, &guess, &T, &slope), BOIL_OK);
    assert_close(T, c.saturation_K, 0, 1e-9);
    assert_int_equal(boil_boiling_curve_at(&b, &c, &dry, &guess, &T, &slope), BOIL_NO_ROOT);
}

/* Just below 3 mol/kg, and from 80 on, which is where the curve ends: to the last bit, whatever that is. */
static void beyond_its_ends_it_answers_as_the_equations_do(void **state)
{
    (void)state;
    boil_conditions c = boil_conditions_at(101325, 1);
    boil_boiling_curve b = {.knot = {0}};
    for (int k = 0; k < 40; k++) {
        double molality = (k % 2 == 0 ? 2.9501 : 80.0001) + 0.049 * k / 40;
        boil_mixture m = {.water = 1, .salt = {molality * boil_salt_molar_mass(BOIL_NAOH), 0, 0}};
        boil_solution_guess near = {0, 0}, exact_near = {0, 0};
        double T = 0, exact = 0;
        boil_slope slope = {0}, exact_slope = {0};
        boil_outcome outcome = boil_boiling_curve_at(&b, &c, &m, &near, &T, &slope);
        assert_int_equal(outcome, boil_solution_boiling_point_near(&c, &m, &exact_near, &exact, &exact_slope));
        assert_memory_equal(&T, &exact, sizeof T);
        assert_memory_equal(&slope, &exact_slope, sizeof slope);
        assert_true(near.equivalent_molality == exact_near.equivalent_molality);
    }
}

/* And within them by itself: it keeps the cell. */
static void within_its_ends_it_answers_by_its_cells(void **state)
{
    (void)state;
    boil_conditions c = boil_conditions_at(101325, 1);
    boil_boiling_curve b = {.knot = {0}};
    const double molalities[] = {3.01, 79.99};
    const int knots[] = {60, 1599};
    for (size_t i = 0; i < 2; i++) {
        boil_mixture m = {.water = 1, .salt = {molalities[i] * boil_salt_molar_mass(BOIL_NAOH), 0, 0}};
        boil_solution_guess near = {0, 0};
        double T;
        assert_int_equal(boil_boiling_curve_at(&b, &c, &m, &near, &T, NULL), BOIL_OK);
        assert_int_equal(b.knot[knots[i] % BOIL_CURVE_CELLS], knots[i]);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(as_the_equations_it_stands_for),
        cmocka_unit_test(no_answer_hangs_on_another),
        cmocka_unit_test(slopes_are_its_own),
        cmocka_unit_test(nearly_water_and_nonsense_go_to_the_equations),
        cmocka_unit_test(beyond_its_ends_it_answers_as_the_equations_do),
        cmocka_unit_test(within_its_ends_it_answers_by_its_cells),
    };
    return cmocka_run_group_tests_name("boiling_curve", tests, NULL, NULL);
}
