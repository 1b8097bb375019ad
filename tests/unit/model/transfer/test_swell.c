/* Steam held in the pool and mixing by it. Published values: tests/validate. */
#include "support/close.h"

#include <string.h>

#include "transfer/swell.h"

/* Water at 100 degC, as in the tables. */
static double water_drift(const boil_swell *p)
{
    return boil_swell_drift_velocity(p, 0.05891, 958.354, 0.59814);
}

/* Steam entering evenly over the depth: the mean of j z/(C0 j z + V) over z in 0 to 1, by Simpson's rule. */
static double mean_void(const boil_swell *p, double drift, double steam)
{
    enum { PANELS = 200 };
    double sum = 0;
    for (int i = 0; i <= PANELS; i++) {
        const double weight = i == 0 || i == PANELS ? 1 : i % 2 ? 4 : 2;
        sum += weight * boil_swell_void_upper(p, drift, steam * i / PANELS);
    }
    return sum / (3 * PANELS);
}

static void lower_void_is_the_mean_over_depth(void **state)
{
    (void)state;
    unsigned points = 0;
    for (double distribution = 1; distribution < 1.6; distribution += 0.25) {
        for (double steam = 1e-7; steam < 3; steam *= 1.7) {
            boil_swell p = boil_swell_default();
            p.distribution = distribution;
            const double drift = water_drift(&p), lower = boil_swell_void_lower(&p, drift, steam);
            assert_close(lower, mean_void(&p, drift, steam), 1e-6, 0);
            assert_true(lower <= boil_swell_void_upper(&p, drift, steam));
            assert_true(boil_swell_void_upper(&p, drift, steam) < 1 / distribution);
            points++;
        }
    }
    const boil_swell p = boil_swell_default();
    assert_true(boil_swell_void_lower(&p, 0.24, 0) == 0);
    print_message("mean void: against quadrature at %u points\n", points);
}

static void lower_void_has_no_step(void **state)
{
    (void)state;
    const boil_swell p = boil_swell_default();
    const double drift = 0.24, steam = 1e-4 * drift / p.distribution;
    const double below = boil_swell_void_lower(&p, drift, steam * (1 - 1e-9));
    assert_close(boil_swell_void_lower(&p, drift, steam * (1 + 1e-9)), below, 2e-8, 0);
}

static void held_steam_gives_its_velocity_back(void **state)
{
    (void)state;
    const boil_swell p = boil_swell_default();
    for (double steam = 1e-9; steam < 20; steam *= 1.5) {
        const double held = boil_swell_steam_held(&p, 0.237, steam, 0.4);
        assert_close(boil_swell_steam_velocity(&p, 0.237, held, 0.4), steam, 1e-9, 0);
        assert_close(held / (held + 0.4), boil_swell_void_upper(&p, 0.237, steam), 1e-12, 0);
    }
    assert_true(boil_swell_steam_velocity(&p, 0.237, 0, 0.4) == 0);
    /* Beyond what the pool can hold (a trial step of an integrator) the answer is large, not infinite or negative. */
    const double wild = boil_swell_steam_velocity(&p, 0.237, 40, 0.4);
    assert_true(isfinite(wild) && wild > 100);
}

static void mixing_time_follows_the_factor_and_ends_at_infinity(void **state)
{
    (void)state;
    const double tau = boil_swell_mixing_time(1, 0.1, 0.35, 0.7);
    assert_close(boil_swell_mixing_time(1.0 / 3, 0.1, 0.35, 0.7), tau / 3, 1e-14, 0);
    assert_true(isinf(boil_swell_mixing_time(1, 0, 0.35, 0.7)));
    assert_true(isinf(boil_swell_mixing_time(1, (double)NAN, 0.35, 0.7)));
}

/* To 95 %, 37 s of a watt a kilogram in a pool of a metre's radius and depth; with the cube root of the stirring, the radius to the
   power 5/3 and the depth [Mazumdar & Guthrie 1986]. exp(-3) is 5 %. */
static void mixing_time_is_the_published_one(void **state)
{
    (void)state;
    assert_close(3 * boil_swell_mixing_time(1, 1, 1, 1), 37, 1e-12, 0);
    assert_close(3 * boil_swell_mixing_time(1, 8, 1, 1), 37.0 / 2, 1e-12, 0);
    assert_close(3 * boil_swell_mixing_time(1, 1, 8, 1), 37.0 * 32, 1e-12, 0);
    assert_close(3 * boil_swell_mixing_time(1, 1, 1, 4), 37.0 / 4, 1e-12, 0);
}

static void problem_is(boil_swell p, const char *text)
{
    const char *problem = boil_swell_problem(&p);
    assert_non_null(problem);
    assert_non_null(strstr(problem, text));
}

static void problems_are_named(void **state)
{
    (void)state;
    const boil_swell good = boil_swell_default();
    assert_null(boil_swell_problem(&good));
    const double bad_distribution[] = {0.99, 1.51, (double)NAN}, bad_drift[] = {0.29, 5.1, (double)NAN};
    const double bad_coefficient[] = {0.49, 2.01, (double)NAN};
    for (int i = 0; i < 3; i++) {
        boil_swell p = good, q = good, s = good;
        p.distribution = bad_distribution[i];
        q.drift = bad_drift[i];
        s.part_coefficient_factor = bad_coefficient[i];
        problem_is(p, "distribution parameter");
        problem_is(q, "drift coefficient");
        problem_is(s, "part coefficient factor");
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(lower_void_is_the_mean_over_depth),
        cmocka_unit_test(lower_void_has_no_step),
        cmocka_unit_test(held_steam_gives_its_velocity_back),
        cmocka_unit_test(mixing_time_follows_the_factor_and_ends_at_infinity),
        cmocka_unit_test(mixing_time_is_the_published_one),
        cmocka_unit_test(problems_are_named),
    };
    return cmocka_run_group_tests_name("pool", tests, NULL, NULL);
}
