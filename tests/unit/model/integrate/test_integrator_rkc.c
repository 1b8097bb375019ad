/* The stabilised step: its order, how far its stability reaches, and that a run by it is the run it stands for. */
#include <gsl/gsl_errno.h>
#include <string.h>

#include "support/close.h"

#include "findings/findings.h"
#include "boilback.h"
#include "commands/explore/answer.h"
#include "integrate/integrator_rkc.h"
#include "support/shipped.h"

/* y' = rate (y - cos t) - sin t, whose answer is cos t. */
static int pulled(double t, const double y[], double dydt[], void *rate)
{
    dydt[0] = *(double *)rate * (y[0] - cos(t)) - sin(t);
    return GSL_SUCCESS;
}

static double error_after(double rate, double h, int steps)
{
    gsl_odeiv2_system system = {pulled, NULL, 1, &rate};
    gsl_odeiv2_step *step = gsl_odeiv2_step_alloc(boil_rkc, 1);
    double y = 1, off;
    for (int i = 0; i < steps; i++)
        assert_int_equal(gsl_odeiv2_step_apply(step, i * h, h, &y, &off, NULL, NULL, &system), GSL_SUCCESS);
    gsl_odeiv2_step_free(step);
    return fabs(y - cos(steps * h));
}

static void error_falls_with_the_square_of_the_step(void **state)
{
    (void)state;
    double coarse = error_after(-1, 0.1, 20), fine = error_after(-1, 0.05, 40), finer = error_after(-1, 0.025, 80);
    print_message("stabilised step: error falls by %.2f and %.2f when halved\n", coarse / fine, fine / finer);
    assert_close(coarse / fine, 4, 0.15, 0);
    assert_close(fine / finer, 4, 0.08, 0);
}

/* beta = 2/3 (s^2 - 1)(1 - 2/15 eps), eps = 2/13 [Sommeijer, Shampine & Verwer 1998, (2.9)]: 5.22 for three stages. With an
   odd number the polynomial leaves the unit interval only below -1: by hand at z = -6.18. */
static void stability_reaches_as_far_as_published(void **state)
{
    (void)state;
    const int s = BOIL_RKC_STAGES;
    const double beta = 2.0 / 3 * (s * s - 1) * (1 - 2.0 / 15 * 2 / 13);
    assert_true(error_after(-beta, 1, 400) < 1);
    assert_true(error_after(-6.1, 1, 400) < 1);
    assert_true(error_after(-6.3, 1, 400) > 1e3);
}

static int run_as(const scenario *s, const boil_run_options *o, boil_history *h, boil_findings *f)
{
    int outcome = boil_run(&s->plant, &s->schedule, o, h);
    return outcome != BOIL_OK ? outcome : boil_findings_of(&s->plant, &s->schedule, NULL, h, NULL, 0, f, NULL);
}

static double compare_loads(const boil_history *a, const boil_history *b)
{
    double worst = 0;
    assert_int_equal(a->loads_count, b->loads_count);
    for (size_t i = 0; i < a->loads_count; i++) {
        assert_int_equal(isnan(a->loads[i].recovery_s), isnan(b->loads[i].recovery_s));
        if (!isnan(a->loads[i].recovery_s))
            worst = fmax(worst, fabs(a->loads[i].recovery_s - b->loads[i].recovery_s));
        assert_close(b->loads[i].level_max_m, a->loads[i].level_max_m, 0, 1e-3);
        assert_close(b->loads[i].lowest_temperature_K, a->loads[i].lowest_temperature_K, 0, 0.05);
    }
    return worst;
}

static void compare_one(const char *name, const scenario *s)
{
    boil_history h, quick;
    boil_findings f, of_quick;
    boil_run_options o = boil_run_options_default(), coarse = explore_run_options();
    assert_int_equal(run_as(s, &o, &h, &f), BOIL_OK);
    assert_int_equal(run_as(s, &coarse, &quick, &of_quick), BOIL_OK);
    double worst = compare_loads(&h, &quick);
    print_message("%s: recoveries within %.3f s, least freeboard within %.2f mm, energy closes to %.0e, %zu for %zu rates\n",
                  name, worst, 1e3 * fabs(h.summary.freeboard_min_m.value - quick.summary.freeboard_min_m.value),
                  fabs(quick.balance.energy.closure), quick.evaluations, h.evaluations);
    assert_true(worst < 0.05);
    assert_close(quick.summary.freeboard_min_m.value, h.summary.freeboard_min_m.value, 0, 1e-3);
    assert_close(quick.summary.steam_peak_kg_s.value, h.summary.steam_peak_kg_s.value, 0.005, 0);
    assert_close(quick.summary.temperature_end_K, h.summary.temperature_end_K, 0, 0.01);
    assert_int_equal(of_quick.count, f.count);
    for (size_t i = 0; i < f.count; i++) {
        assert_string_equal(of_quick.list[i].id, f.list[i].id);
        assert_int_equal(of_quick.list[i].severity, f.list[i].severity);
    }
    /* While it boils the temperature is that of the composition: energy then closes as well as the steps are exact. */
    assert_true(fabs(quick.balance.water.closure) < 1e-12 && fabs(quick.balance.energy.closure) < 1e-5);
    boil_findings_free(&f);
    boil_findings_free(&of_quick);
    boil_history_free(&h);
    boil_history_free(&quick);
}

static void a_run_is_the_run_it_stands_for(void **state)
{
    (void)state;
    assert_true(each_shipped(compare_one, 1) > 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(error_falls_with_the_square_of_the_step),
        cmocka_unit_test(stability_reaches_as_far_as_published),
        cmocka_unit_test(a_run_is_the_run_it_stands_for),
    };
    gsl_set_error_handler_off();
    return cmocka_run_group_tests_name("stabilised", tests, NULL, NULL);
}
