/* Memory is refused, once, at the first, the second, ... allocation: each time that is what is answered, never another answer,
   and nothing stays behind. Linked so that the library's own allocations come here (Makefile). */
#include "support/close.h"

#include <stdlib.h>

#include "support/cases.h"
#include "support/refused.h"

/* Cases: short ones, coarsely stepped. ------------------------------------------------------------------------------- */

/* In `s`, also when memory is refused on the way. */
static boil_outcome schedule_of(boil_schedule *s, double duration_s, const boil_action actions[], size_t count)
{
    boil_outcome outcome = BOIL_OK;
    boil_schedule_init(s, duration_s);
    for (size_t i = 0; i < count && outcome == BOIL_OK; i++)
        outcome = boil_schedule_add(s, &actions[i]);
    return outcome;
}

static boil_outcome one_load(boil_schedule *s)
{
    const boil_action load = plate_action(10, 2);
    return schedule_of(s, 240, &load, 1);
}

/* Everything that can be done, with a valve, a trace and a water layer. */
static boil_outcome busy_run(boil_plant *p, boil_schedule *s, boil_history *h)
{
    boil_action actions[] = {plate_action(10, 2),
                             two_gallons_action(20, 30),
                             plate_action(30, 1),
                             {.time_s = 60, .kind = BOIL_ACTION_SALTS, .is.salts = {5, 60, CELSIUS(20), {1, 0, 0}}},
                             {.time_s = 90, .kind = BOIL_ACTION_LIQUID, .is.liquid = {5, 60, CELSIUS(60), {1, 0, 0}, 0.3}},
                             {.time_s = 200, .kind = BOIL_ACTION_LIFT}};
    boil_run_options o = coarse();
    o.row_interval_s = 10;
    *p = low_plant();
    p->control.mode = BOIL_WATER_CONTROL_PROPORTIONED;
    p->control.set_point_K = CELSIUS(139);
    p->control.rate_kg_s = 0.05;
    p->control.period_s = 20;
    boil_outcome outcome = schedule_of(s, 300, actions, sizeof actions / sizeof actions[0]);
    return outcome == BOIL_OK ? boil_run(p, s, &o, h) : outcome;
}

static boil_outcome ask_run(void)
{
    boil_plant p;
    boil_schedule s;
    boil_history h;
    boil_outcome outcome = busy_run(&p, &s, &h);
    if (outcome == BOIL_OK) {
        assert_true(h.valve_count > 0 && h.quiet_count > 0 && h.additions_count == 3 && h.loads_count == 2);
        boil_history_free(&h);
    }
    boil_schedule_free(&s);
    return outcome;
}

/* The run itself is refused nothing: only what is found in it. */
static boil_outcome ask_findings(void)
{
    boil_plant p;
    boil_schedule s;
    boil_history h;
    boil_findings likely, possible;
    const long left = refusal.left;
    refusal.left = refusal_never;
    assert_int_equal(busy_run(&p, &s, &h), BOIL_OK);
    refusal.left = left;
    const boil_run_of_set other = {.closures = BOIL_CLOSURES_GRAVE, .history = h};
    boil_outcome outcome = boil_findings_of(&p, &s, NULL, &h, &other, 1, &likely, &possible);
    refusal.left = outcome == BOIL_OK ? refusal.left : refusal_never;
    boil_findings_free(&likely);
    boil_findings_free(&possible);
    boil_history_free(&h);
    boil_schedule_free(&s);
    return outcome;
}

static boil_outcome ask_charge(void)
{
    static boil_charge_plan plan;
    const boil_plant p = low_plant();
    const boil_run_options o = coarse();
    const boil_charge_case c = {.added_K = CELSIUS(25), .liquid_K = CELSIUS(25)};
    return boil_charge_plan_of(&p, &c, &o, &plan);
}

static boil_outcome ask_correct(void)
{
    boil_correction a;
    boil_schedule s, nothing;
    const boil_plant p = low_plant();
    const boil_run_options o = coarse();
    boil_schedule_init(&nothing, 0);
    const boil_correct_case c = {.reads_K = CELSIUS(142.5),
                                 .uncertain_K = 0.5,
                                 .level_m = 0.47,
                                 .added_K = CELSIUS(20),
                                 .liquid_K = CELSIUS(40),
                                 .next_load = boil_correct_next_load(&p, &nothing)};
    boil_outcome outcome = boil_correct(&p, &c, &o, &a);
    if (outcome == BOIL_OK) {
        assert_int_equal(a.end, BOIL_CORRECT_DONE);
        outcome = boil_correct_schedule(&a, &s);
        boil_schedule_free(&s);
    }
    return outcome;
}

typedef boil_outcome sizing(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, double *answer);

static boil_outcome sized(sizing *size)
{
    boil_schedule s;
    double answer;
    const boil_plant p = low_plant();
    const boil_run_options o = coarse();
    boil_outcome outcome = one_load(&s);
    if (outcome == BOIL_OK)
        outcome = size(&p, &s, &o, &answer);
    boil_schedule_free(&s);
    return outcome;
}

static boil_outcome for_recovery(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, double *answer)
{
    return boil_heater_size_for_recovery(p, s, o, 60, 0.1, answer);
}

static boil_outcome heaviest(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, double *answer)
{
    return boil_load_size_heaviest(p, s, o, 120, answer);
}

static boil_outcome interval(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, double *answer)
{
    boil_plant tall = *p, watered; /* the low one leaves no freeboard */
    boil_load l = s->actions[0].is.load;
    tall.tank.depth_m += 0.5;
    l.mass_kg /= 4;
    l.immersed_s = 60;
    boil_outcome outcome = boil_load_size_watered(&tall, &watered);
    return outcome == BOIL_OK ? boil_load_size_interval(&watered, &l, o, 120, answer) : outcome;
}

static boil_outcome opening_load(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, double *answer)
{
    return boil_load_size_opening_load(p, s, o, 60, answer);
}

static boil_outcome opening_area(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, double *answer)
{
    return boil_load_size_opening_area(p, s, o, 60, answer);
}

static boil_outcome heat_up(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, double *answer)
{
    (void)s;
    return boil_steady_state_heat_up(p, o, 120e3, answer);
}

static boil_outcome pour_rate(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, double *answer)
{
    (void)s;
    boil_pour_rate rate;
    const boil_action water = two_gallons_action(0, 60);
    boil_plant low = *p;
    low.limits.freeboard_m = 0.1; /* so that much is found */
    low.limits.boiling_point_low_K = low.limits.boiling_point_high_K = CELSIUS(130);
    boil_outcome outcome = boil_pour_rate_fastest(&low, &water, 0, o, &rate);
    *answer = rate.rate_kg_s;
    return outcome;
}

static boil_outcome ask_for_recovery(void)
{
    return sized(for_recovery);
}

static boil_outcome ask_heaviest(void)
{
    return sized(heaviest);
}

static boil_outcome ask_interval(void)
{
    return sized(interval);
}

static boil_outcome ask_opening_load(void)
{
    return sized(opening_load);
}

static boil_outcome ask_opening_area(void)
{
    return sized(opening_area);
}

static boil_outcome ask_heat_up(void)
{
    return sized(heat_up);
}

static boil_outcome ask_pour_rate(void)
{
    return sized(pour_rate);
}

static boil_outcome ask_repeated(void)
{
    boil_schedule s;
    const boil_load l = plate_action(0, 1).is.load;
    boil_outcome outcome = boil_load_size_repeated(&l, 600, 120, &s);
    boil_schedule_free(&s);
    return outcome;
}

static boil_outcome ask_sampling(void)
{
    static boil_sampling s;
    const boil_sampling_plan p = boil_sampling_plan_default(4);
    return boil_sampling_init(&s, &p);
}

/* A model that takes memory itself, as a run does. */
static boil_outcome line(void *context, const double b[], double residual[])
{
    (void)context;
    double *own = malloc(sizeof *own);
    if (own == NULL)
        return BOIL_NO_MEMORY;
    for (int i = 0; i < 10; i++)
        residual[i] = b[0] + b[1] * i - (1 + 0.5 * i + 0.01 * (i % 3));
    free(own);
    return BOIL_OK;
}

static boil_outcome ask_least_squares(void)
{
    boil_least_squares f;
    boil_least_squares_problem p = {line, NULL, 2, 10, {0, 0}, {-10, -10}, {10, 10}, true, {0, 0}, {5, 5}, .difference = 1e-5};
    return boil_least_squares_run(&p, &f);
}

/* -------------------------------------------------------------------------------------------------------------------- */

#define TEST_OF(what, dense)                                                                                                   \
    static void what##_says_so(void **state)                                                                                   \
    {                                                                                                                          \
        (void)state;                                                                                                           \
        refuse_each(ask_##what, dense);                                                                                        \
    }

TEST_OF(run, 100)
TEST_OF(findings, 100)
TEST_OF(charge, 4)
TEST_OF(correct, 4)
TEST_OF(for_recovery, 4)
TEST_OF(heaviest, 4)
TEST_OF(interval, 4)
TEST_OF(opening_load, 4)
TEST_OF(opening_area, 4)
TEST_OF(heat_up, 100)
TEST_OF(pour_rate, 12)
TEST_OF(repeated, 100)
TEST_OF(sampling, 100)
TEST_OF(least_squares, 100)

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(run_says_so),      cmocka_unit_test(findings_says_so),      cmocka_unit_test(charge_says_so),
        cmocka_unit_test(correct_says_so),  cmocka_unit_test(for_recovery_says_so),  cmocka_unit_test(heaviest_says_so),
        cmocka_unit_test(interval_says_so), cmocka_unit_test(opening_load_says_so),  cmocka_unit_test(opening_area_says_so),
        cmocka_unit_test(heat_up_says_so),  cmocka_unit_test(pour_rate_says_so),     cmocka_unit_test(repeated_says_so),
        cmocka_unit_test(sampling_says_so), cmocka_unit_test(least_squares_says_so),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
