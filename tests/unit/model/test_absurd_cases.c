/* Cases that make no sense: each gets an answer, at once, and a number that is given is finite. What used to end the process, or
   never to end. */
#include "support/close.h"

#include <string.h>

#include "support/cases.h"

static const double nan_ = (double)NAN, inf = (double)INFINITY;

/* Everything that takes a plant, a schedule and options, one after another. ------------------------------------------ */

enum { ASKED = 10 };

typedef struct {
    const char *what;
    boil_outcome outcome;
    double number; /* meant to be finite with BOIL_OK */
} answered;

static boil_outcome ran(const boil_plant *p, const boil_schedule *s, const boil_run_options *o)
{
    boil_history h;
    boil_findings likely;
    boil_remedies needed;
    boil_outcome outcome = boil_run(p, s, o, &h);
    if (outcome != BOIL_OK)
        return outcome;
    assert_true(isfinite(h.summary.temperature_end_K) && isfinite(h.balance.water.closure));
    assert_int_equal(boil_remedies_of(p, s, o, &h, &needed), BOIL_OK);
    assert_int_equal(boil_findings_of(p, s, NULL, &h, NULL, 0, &likely, NULL), BOIL_OK);
    boil_findings_free(&likely);
    boil_history_free(&h);
    return outcome;
}

static void ask_plans(const boil_plant *p, const boil_run_options *o, answered a[])
{
    static boil_charge_plan plan;
    boil_correction correction;
    boil_schedule nothing;
    boil_schedule_init(&nothing, 0);
    const boil_charge_case charge = {.added_K = CELSIUS(25), .liquid_K = CELSIUS(25)};
    boil_correct_case correct = {CELSIUS(142), 0.5, 0.45, false, 0, CELSIUS(20), CELSIUS(40), boil_load_default()};
    correct.next_load.mass_kg = 10;
    a[0] = (answered){"charge", boil_charge_plan_of(p, &charge, o, &plan), 0};
    a[1] = (answered){"correct", boil_correct(p, &correct, o, &correction), 0};
}

static void ask_all(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, answered a[ASKED])
{
    double x[8] = {0};
    boil_steady_state calm;
    boil_plant other;
    memset(&calm, 0, sizeof calm);
    ask_plans(p, o, a);
    a[2] = (answered){"run", ran(p, s, o), 0};
    a[3] = (answered){"for recovery", boil_heater_size_for_recovery(p, s, o, 120, 0.1, &x[0]), x[0]};
    a[4] = (answered){"heaviest", boil_load_size_heaviest(p, s, o, 120, &x[1]), x[1]};
    a[5] = (answered){"opening load", boil_load_size_opening_load(p, s, o, 120, &x[2]), x[2]};
    a[6] = (answered){"opening area", boil_load_size_opening_area(p, s, o, 120, &x[3]), x[3]};
    a[7] = (answered){"steady state", boil_steady_state_at(p, 60e3, &calm), calm.losses_W};
    a[8] = (answered){"watered", boil_load_size_watered(p, &other), 0};
    a[9] = (answered){"heat up", boil_steady_state_heat_up(p, o, 60e3, &x[4]), 0};
    for (size_t i = 3; i < 7; i++)
        a[i].number = x[i - 3];
    a[7].number = calm.losses_W;
}

static void expect_answers(const char *name, const answered a[ASKED])
{
    for (size_t i = 0; i < ASKED; i++) {
        if (a[i].outcome < BOIL_NOT_FINITE || a[i].outcome > BOIL_OK)
            fail_msg("%s, %s: outcome %d", name, a[i].what, a[i].outcome);
        if (a[i].outcome == BOIL_OK && !isfinite(a[i].number))
            fail_msg("%s, %s: %g", name, a[i].what, a[i].number);
    }
}

static void expect_refusals(const char *name, const answered a[ASKED], size_t from, size_t to)
{
    for (size_t i = from; i < to; i++)
        if (a[i].outcome != BOIL_BAD_INPUT)
            fail_msg("%s, %s: outcome %d", name, a[i].what, a[i].outcome);
}

/* One place at a time of a case that does make sense. ---------------------------------------------------------------- */

static boil_schedule one_load(void)
{
    const boil_action load = plate_action(10, 2);
    return schedule_with(240, &load, 1);
}

static void a_plant_that_is_none_is_refused(void **state)
{
    (void)state;
    boil_plant p = low_plant();
    double *const places[] = {&p.tank.length_m,
                              &p.tank.level_m,
                              &p.heater.input_W,
                              &p.charge.blend[0],
                              &p.ambient.pressure_Pa,
                              &p.limits.recovery_s,
                              &p.limits.freeboard_m,
                              &p.elevation_factor,
                              &p.losses.emissivity,
                              &p.pool.drift,
                              &p.transport.viscosity_factor,
                              &p.layer.cover_m,
                              &p.fittings.grain_m,
                              &p.heater.lag_s,
                              &p.charge.temperature_K};
    const double values[] = {nan_, inf, -inf, -1, 1e300};
    boil_schedule s = one_load();
    const boil_run_options o = coarse();
    for (size_t i = 0; i < sizeof places / sizeof places[0]; i++)
        for (size_t k = 0; k < sizeof values / sizeof values[0]; k++) {
            answered a[ASKED];
            char name[64];
            const double kept = *places[i];
            *places[i] = values[k];
            snprintf(name, sizeof name, "place %zu, %g", i, values[k]);
            ask_all(&p, &s, &o, a);
            expect_answers(name, a);
            expect_refusals(name, a, 0, 7);
            *places[i] = kept;
        }
    boil_schedule_free(&s);
}

/* No bath boils there: the plans end so, everything else says so. */
static void a_bath_that_cannot_be_is_no_bath(void **state)
{
    (void)state;
    boil_plant p = low_plant();
    const double values[] = {nan_, inf, -inf, -1, 0, 1e300};
    boil_schedule s = one_load();
    const boil_run_options o = coarse();
    for (size_t k = 0; k < sizeof values / sizeof values[0]; k++) {
        answered a[ASKED];
        p.charge.value = values[k];
        ask_all(&p, &s, &o, a);
        expect_answers("no bath", a);
        for (size_t i = 2; i < ASKED; i++)
            assert_int_not_equal(a[i].outcome, BOIL_OK);
    }
    boil_schedule_free(&s);
}

static void options_that_are_none_are_refused(void **state)
{
    (void)state;
    const boil_plant p = low_plant();
    boil_schedule s = one_load();
    boil_run_options o = coarse();
    double *const places[] = {&o.tolerance, &o.row_interval_s};
    const double values[] = {nan_, inf, -1, 1e-300};
    for (size_t i = 0; i < sizeof places / sizeof places[0]; i++)
        for (size_t k = 0; k < sizeof values / sizeof values[0]; k++) {
            boil_history h;
            const double kept = *places[i];
            *places[i] = values[k];
            assert_int_equal(boil_run(&p, &s, &o, &h), BOIL_BAD_INPUT);
            assert_null(h.rows);
            *places[i] = kept;
        }
    boil_history h;
    o.closures = BOIL_CLOSURES;
    assert_int_equal(boil_run(&p, &s, &o, &h), BOIL_BAD_INPUT);
    boil_schedule_free(&s);
}

static void a_schedule_that_is_none_is_refused(void **state)
{
    (void)state;
    const boil_plant p = low_plant();
    const boil_run_options o = coarse();
    boil_schedule s = one_load();
    boil_load *l = &s.actions[0].is.load;
    double *const places[] = {&s.duration_s, &s.actions[0].time_s, &l->mass_kg, &l->size_m, &l->immersed_s, &l->lowering_s};
    const double values[] = {nan_, -inf, -1};
    for (size_t i = 0; i < sizeof places / sizeof places[0]; i++)
        for (size_t k = 0; k < sizeof values / sizeof values[0]; k++) {
            answered a[ASKED];
            const double kept = *places[i];
            *places[i] = values[k];
            ask_all(&p, &s, &o, a);
            expect_answers("schedule", a);
            expect_refusals("schedule", a, 2, 7);
            *places[i] = kept;
        }
    boil_history h;
    s.duration_s = 1e300;
    assert_int_equal(boil_run(&p, &s, &o, &h), BOIL_BAD_INPUT);
    s.duration_s = 240;
    s.count = 1000000;
    boil_action *kept = s.actions;
    s.actions = NULL;
    assert_int_equal(boil_run(&p, &s, &o, &h), BOIL_BAD_INPUT);
    s.actions = kept;
    boil_schedule_free(&s);
}

/* Absurd, and yet a case: an outcome, and no number that is none. */
static void extremes_have_an_answer(void **state)
{
    (void)state;
    answered a[ASKED];
    boil_run_options o = coarse();
    boil_schedule none, s = one_load();
    boil_schedule_init(&none, 0);
    boil_plant p = low_plant();
    ask_all(&p, &none, &o, a);
    expect_answers("nothing is done", a);
    p.heater.input_W = 0;
    ask_all(&p, &s, &o, a);
    expect_answers("no heat", a);
    p = low_plant();
    p.heater.input_W = 1e8;
    ask_all(&p, &s, &o, a);
    expect_answers("all the heat there may be", a);
    p = low_plant();
    p.tank.level_m = 0.02;
    ask_all(&p, &s, &o, a);
    expect_answers("hardly a bath", a);
    p = low_plant();
    s.actions[0].is.load.mass_kg = 1e5;
    ask_all(&p, &s, &o, a);
    expect_answers("the heaviest load there may be", a);
    boil_schedule_free(&s);
}

static void nothing_at_all_is_refused(void **state)
{
    (void)state;
    answered a[ASKED];
    ask_all(NULL, NULL, NULL, a);
    expect_refusals("NULL", a, 0, ASKED);
    const boil_plant p = low_plant();
    const boil_run_options o = coarse();
    boil_schedule s = one_load();
    boil_findings f;
    assert_int_equal(boil_run(&p, &s, &o, NULL), BOIL_BAD_INPUT);
    assert_int_equal(boil_heater_size_for_recovery(&p, &s, &o, 120, 0.1, NULL), BOIL_BAD_INPUT);
    assert_int_equal(boil_load_size_heaviest(&p, &s, &o, nan_, NULL), BOIL_BAD_INPUT);
    assert_int_equal(boil_findings_of(&p, &s, NULL, NULL, NULL, 0, &f, NULL), BOIL_BAD_INPUT);
    assert_int_equal(boil_pour_rate_fastest(&p, NULL, 0, &o, NULL), BOIL_BAD_INPUT);
    assert_int_equal(boil_schedule_add(NULL, NULL), BOIL_BAD_INPUT);
    assert_int_equal(boil_sampling_init(NULL, NULL), BOIL_BAD_INPUT);
    assert_int_equal(boil_least_squares_run(NULL, NULL), BOIL_BAD_INPUT);
    assert_int_equal(boil_remedies_of(NULL, NULL, NULL, NULL, NULL), BOIL_BAD_INPUT);
    assert_true(isnan(boil_history_recoveries(NULL, 120).slowest_s));
    boil_schedule_free(&s);
}

/* Sizes that would never come to an end, or never fit. */
static boil_outcome no_residuals(void *context, const double value[], double residual[])
{
    (void)context;
    (void)value;
    (void)residual;
    fail_msg("there is no place for residuals");
    return BOIL_OK;
}

static void counts_beyond_measure_are_refused(void **state)
{
    (void)state;
    const boil_plant p = low_plant();
    const boil_run_options o = coarse();
    boil_schedule s;
    boil_load l = plate_action(0, 1).is.load;
    double x;
    l.immersed_s = 1e12;
    assert_int_equal(boil_load_size_repeated(&l, 1, 120, &s), BOIL_BAD_INPUT);
    assert_int_equal(boil_load_size_interval(&p, &l, &o, 120, &x), BOIL_BAD_INPUT);
    for (int i = 0; i < 2; i++) {
        boil_least_squares f;
        boil_least_squares_problem q = {no_residuals, NULL, 2, i ? SIZE_MAX : SIZE_MAX / 8, .high = {1, 1}, .difference = 1e-3};
        assert_int_equal(boil_least_squares_run(&q, &f), i ? BOIL_BAD_INPUT : BOIL_NO_MEMORY);
    }
    static boil_sampling design;
    boil_sampling_plan plan = boil_sampling_plan_default(4);
    plan.points = SIZE_MAX;
    assert_int_equal(boil_sampling_init(&design, &plan), BOIL_BAD_INPUT);
    plan = boil_sampling_plan_default(SIZE_MAX);
    assert_int_equal(boil_sampling_init(&design, &plan), BOIL_BAD_INPUT);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_plant_that_is_none_is_refused),   cmocka_unit_test(a_bath_that_cannot_be_is_no_bath),
        cmocka_unit_test(options_that_are_none_are_refused), cmocka_unit_test(a_schedule_that_is_none_is_refused),
        cmocka_unit_test(extremes_have_an_answer),           cmocka_unit_test(nothing_at_all_is_refused),
        cmocka_unit_test(counts_beyond_measure_are_refused),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
