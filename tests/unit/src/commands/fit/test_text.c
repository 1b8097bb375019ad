/* What is said of a fit that is made up here: no search and no run. */
#include "support/close.h"
#include "support/printed.h"
#include "support/shipped.h"

#include "commands/fit/answer.h"

typedef struct {
    scenario scene;
    fit_answer answer;
} made;

/* Heat efficiency and the factor of evaporation, both told well. */
static void make(made *m)
{
    *m = (made){0};
    read_shipped("uncertain-shift.bath", &m->scene);
    fit_answer *f = &m->answer;
    f->scenario = &m->scene;
    f->log_path = "log.csv";
    f->weights = (fit_weights){0.5, 0.005};
    f->temperatures = 50;
    f->levels = 10;
    f->things[1] = 1;
    f->problem.parameters = 2;
    f->problem.count = 60;
    f->problem.start[0] = 0.6;
    f->problem.start[1] = 1;
    f->problem.deviation[0] = 0.06;
    f->problem.deviation[1] = 0.12;
    f->fit.converged = true;
    f->fit.of[0].value = 0.58;
    f->fit.of[0].low = 0.57;
    f->fit.of[0].high = 0.59;
    f->fit.of[1].value = 1.1;
    f->fit.of[1].low = 1.05;
    f->fit.of[1].high = 1.15;
    f->guess[0] = (fit_misses){1, 2, 600};
    f->best[0] = (fit_misses){0.4, 1, 600};
    f->guess[1] = (fit_misses){0.006, 0.01, 600};
    f->best[1] = (fit_misses){0.004, 0.008, 600};
}

static bool told(const made *m, const char *words)
{
    const output o = {.system = UNITS_SI};
    printed p;
    printed_begin(&p);
    fit_report(&m->answer, &o, p.to);
    return printed_says(&p, words);
}

static void what_was_fitted_goes_into_the_scenario(void **state)
{
    made m;
    (void)state;
    make(&m);
    assert_true(told(&m, "heat efficiency 58 % (57 % to 59 %); losses evaporation factor 1.1 (1.05 to 1.15)"));
    assert_true(told(&m, "For the scenario [heat] efficiency = 58 % [losses] evaporation factor = 1.1"));
    assert_false(told(&m, "not settled") || told(&m, "hardly tells") || told(&m, "cannot tell"));
    scenario_free(&m.scene);
}

/* A number at the end of its range, one that the log does not tell, and two that it cannot tell apart. */
static void what_is_not_told_is_said(void **state)
{
    made m;
    (void)state;
    make(&m);
    m.answer.fit.of[0].at_bound = true;
    m.answer.fit.of[0].error = (double)NAN;
    m.answer.fit.of[1].low = 0.8;
    m.answer.fit.of[1].high = 1.3;
    m.answer.fit.correlation[1][0] = -0.99;
    m.answer.fit.converged = false;
    m.answer.left_out = 3;
    assert_true(told(&m, "heat efficiency at the end of its range, 58 %"));
    assert_true(told(&m, "'heat efficiency' ran to the end of the range"));
    assert_true(told(&m, "The log hardly tells 'losses evaporation factor'"));
    assert_true(told(&m, "This log cannot tell 'heat efficiency' from 'losses evaporation factor' (correlation -0.99)"));
    assert_true(told(&m, ": not settled, see below") && told(&m, "The search did not settle"));
    assert_true(told(&m, "Before the start or after the end of the scenario: 3 rows of the log"));
    m.answer.left_out = 1;
    assert_true(told(&m, "Before the start or after the end of the scenario: 1 row of the log"));
    assert_false(told(&m, "evaporation factor = "));
    scenario_free(&m.scene);
}

static void a_run_that_stays_far_off_is_not_to_be_used(void **state)
{
    made m;
    (void)state;
    make(&m);
    assert_false(told(&m, "Do not use these numbers"));
    m.answer.best[0].rms = 1.6;
    assert_true(told(&m, "Do not use these numbers"));
    m.answer.best[0].rms = 0.4;
    m.answer.best[1].rms = 0.016;
    assert_true(told(&m, "Do not use these numbers") && told(&m, "still level, root mean square"));
    m.answer.guess[1].rms = m.answer.best[1].rms = (double)NAN;
    assert_false(told(&m, "Do not use these numbers") || told(&m, "still level, root mean square"));
    scenario_free(&m.scene);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_was_fitted_goes_into_the_scenario),
        cmocka_unit_test(what_is_not_told_is_said),
        cmocka_unit_test(a_run_that_stays_far_off_is_not_to_be_used),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
