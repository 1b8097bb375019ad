/* unit/model/test_refused_input.c -- what makes no sense is refused, and what is missing is not asked: each answer of model/boilback.h,
   of nothing and of numbers beyond its ranges, says BOIL_BAD_INPUT or is not a number. Nothing is run for it. */
#include <gsl/gsl_errno.h>
#include <stdint.h>
#include <string.h>

#include "support/close.h"

#include "acts/tap.h"
#include "acts/wait.h"
#include "base/array.h"
#include "base/bisection.h"
#include "base/root.h"
#include "case/load.h"
#include "case/schedule.h"
#include "support/cases.h"

#define REFUSED(asked) assert_int_equal((asked), BOIL_BAD_INPUT)

static const double beyond[] = {(double)NAN, HUGE_VAL, -HUGE_VAL};
enum { BEYOND = sizeof beyond / sizeof beyond[0] };

/* A number of what is asked, and what lies beyond its ends. */
typedef struct {
    double *number, wrong[3];
} beyond_end;

/* Each number set to what lies beyond, one at a time, asked with and put back. */
#define WITH_EACH_BEYOND(ends, asked)                                                                                          \
    do {                                                                                                                       \
        for (size_t at = 0; at < sizeof(ends) / sizeof(ends)[0]; at++)                                                         \
            for (int which = 0; which < 3; which++) {                                                                          \
                const double kept = *(ends)[at].number;                                                                        \
                *(ends)[at].number = (ends)[at].wrong[which];                                                                  \
                asked;                                                                                                         \
                *(ends)[at].number = kept;                                                                                     \
            }                                                                                                                  \
    } while (0)

typedef struct {
    boil_plant plant, no_plant; /* the other: a tank without a depth */
    boil_run_options options, no_options;
    boil_schedule schedule, no_schedule;
} given;

static given begin(void)
{
    given g = {.plant = open_plant(34e3), .options = coarse()};
    g.no_plant = g.plant;
    g.no_plant.tank.depth_m = 0;
    g.no_options = g.options;
    g.no_options.tolerance = 0;
    boil_schedule_init(&g.schedule, 60);
    g.no_schedule = g.schedule;
    g.no_schedule.duration_s = -1;
    return g;
}

static void steady_states(void **state)
{
    (void)state;
    given g = begin();
    boil_steady_state steady;
    double x;
    REFUSED(boil_steady_state_at(NULL, 1e4, &steady));
    REFUSED(boil_steady_state_at(&g.plant, 1e4, NULL));
    REFUSED(boil_steady_state_hold(&g.plant, &g.options, NULL));
    REFUSED(boil_steady_state_hold(&g.no_plant, &g.options, &x));
    REFUSED(boil_steady_state_hold(NULL, &g.options, &x));
    REFUSED(boil_steady_state_hold(&g.plant, &g.no_options, &x));
    REFUSED(boil_steady_state_hold(&g.plant, NULL, &x));
    REFUSED(boil_steady_state_heat_up(&g.plant, &g.options, 1e4, NULL));
    REFUSED(boil_steady_state_heat_up(&g.no_plant, &g.options, 1e4, &x));
    REFUSED(boil_steady_state_heat_up(&g.plant, &g.no_options, 1e4, &x));
    for (int i = 0; i < BEYOND; i++) {
        REFUSED(boil_steady_state_at(&g.plant, beyond[i], &steady));
        REFUSED(boil_steady_state_heat_up(&g.plant, &g.options, beyond[i], &x));
    }
}

static void heater_sizes(void **state)
{
    (void)state;
    given g = begin();
    boil_plant sized;
    double x;
    REFUSED(boil_heater_size_plant(NULL, 1e4, &sized));
    REFUSED(boil_heater_size_plant(&g.plant, 1e4, NULL));
    REFUSED(boil_heater_size_plant(&g.plant, -1, &sized));
    REFUSED(boil_heater_size_for_recovery(&g.plant, &g.schedule, &g.options, 120, 0.01, NULL));
    REFUSED(boil_heater_size_for_recovery(&g.no_plant, &g.schedule, &g.options, 120, 0.01, &x));
    REFUSED(boil_heater_size_for_recovery(&g.plant, &g.no_schedule, &g.options, 120, 0.01, &x));
    REFUSED(boil_heater_size_for_recovery(&g.plant, &g.schedule, &g.no_options, 120, 0.01, &x));
    const double limits[] = {0, -1, (double)NAN}, precisions[] = {0.99e-6, 0.51, (double)NAN};
    for (int i = 0; i < 3; i++) {
        REFUSED(boil_heater_size_plant(&g.plant, beyond[i], &sized));
        REFUSED(boil_heater_size_for_recovery(&g.plant, &g.schedule, &g.options, limits[i], 0.01, &x));
        REFUSED(boil_heater_size_for_recovery(&g.plant, &g.schedule, &g.options, 120, precisions[i], &x));
    }
}

static void load_sizes(void **state)
{
    (void)state;
    given g = begin();
    boil_load l = plate_action(0, 1).is.load, none = {.mass_kg = 0};
    boil_plant watered;
    boil_schedule s;
    double x;
    REFUSED(boil_load_size_heaviest(&g.plant, &g.schedule, &g.options, 120, NULL));
    REFUSED(boil_load_size_heaviest(&g.no_plant, &g.schedule, &g.options, 120, &x));
    REFUSED(boil_load_size_opening_load(&g.plant, &g.schedule, &g.options, 120, NULL));
    REFUSED(boil_load_size_opening_load(&g.no_plant, &g.schedule, &g.options, 120, &x));
    REFUSED(boil_load_size_opening_area(&g.plant, &g.schedule, &g.options, 120, NULL));
    REFUSED(boil_load_size_opening_area(&g.no_plant, &g.schedule, &g.options, 120, &x));
    REFUSED(boil_load_size_watered(&g.no_plant, &watered));
    REFUSED(boil_load_size_watered(&g.plant, NULL));
    REFUSED(boil_load_size_interval(&g.plant, &l, &g.options, 120, NULL));
    REFUSED(boil_load_size_interval(&g.no_plant, &l, &g.options, 120, &x));
    REFUSED(boil_load_size_interval(&g.plant, &l, &g.no_options, 120, &x));
    REFUSED(boil_load_size_interval(&g.plant, NULL, &g.options, 120, &x));
    REFUSED(boil_load_size_interval(&g.plant, &none, &g.options, 120, &x));
    REFUSED(boil_load_size_repeated(&l, 600, 120, NULL));
    REFUSED(boil_load_size_repeated(NULL, 600, 120, &s));
    REFUSED(boil_load_size_repeated(&none, 600, 120, &s));
    REFUSED(boil_load_size_repeated(&l, 0.9, 120, &s));
    const double limits[] = {0, -1, (double)NAN};
    for (int i = 0; i < 3; i++) {
        REFUSED(boil_load_size_heaviest(&g.plant, &g.schedule, &g.options, limits[i], &x));
        REFUSED(boil_load_size_opening_load(&g.plant, &g.schedule, &g.options, limits[i], &x));
        REFUSED(boil_load_size_opening_area(&g.plant, &g.schedule, &g.options, limits[i], &x));
        REFUSED(boil_load_size_interval(&g.plant, &l, &g.options, limits[i], &x));
        REFUSED(boil_load_size_repeated(&l, beyond[i], 120, &s));
        REFUSED(boil_load_size_repeated(&l, 600, beyond[i], &s));
    }
}

static void plans(void **state)
{
    (void)state;
    given g = begin();
    boil_charge_case c = {.added_K = 293, .liquid_K = 293};
    boil_charge_plan plan;
    boil_correct_case asked = {
        .reads_K = 413, .level_m = 0.5, .added_K = 293, .liquid_K = 293, .next_load = plate_action(0, 1).is.load};
    boil_correction a;
    boil_schedule s;
    REFUSED(boil_charge_plan_of(&g.plant, &c, &g.options, NULL));
    REFUSED(boil_charge_plan_of(&g.plant, NULL, &g.options, &plan));
    REFUSED(boil_charge_plan_of(&g.no_plant, &c, &g.options, &plan));
    REFUSED(boil_charge_plan_of(&g.plant, &c, &g.no_options, &plan));
    REFUSED(boil_correct(&g.plant, &asked, &g.options, NULL));
    REFUSED(boil_correct(&g.plant, NULL, &g.options, &a));
    REFUSED(boil_correct(&g.no_plant, &asked, &g.options, &a));
    REFUSED(boil_correct(&g.plant, &asked, &g.no_options, &a));
    REFUSED(boil_correct_schedule(NULL, &s));
    REFUSED(boil_correct_schedule(&a, NULL));
    for (int i = 0; i < BEYOND; i++) {
        boil_charge_case hot = c;
        boil_correct_case read = asked;
        hot.added_K = read.reads_K = beyond[i];
        REFUSED(boil_charge_plan_of(&g.plant, &hot, &g.options, &plan));
        REFUSED(boil_correct(&g.plant, &read, &g.options, &a));
        assert_true(isnan(boil_charge_salts_first(&g.plant, beyond[i]).hottest_K));
    }
    assert_true(isnan(boil_charge_salts_first(&g.no_plant, 293).hottest_K));
}

static void pours_and_remedies(void **state)
{
    (void)state;
    given g = begin();
    boil_action water = two_gallons_action(0, 60), none = {.kind = BOIL_ACTION_WATER};
    boil_pour_rate rate;
    boil_history h = {.end = BOIL_RUN_DONE};
    boil_remedies needed;
    REFUSED(boil_pour_rate_fastest(&g.plant, &water, 0, &g.options, NULL));
    REFUSED(boil_pour_rate_fastest(NULL, &water, 0, &g.options, &rate));
    REFUSED(boil_pour_rate_fastest(&g.plant, NULL, 0, &g.options, &rate));
    REFUSED(boil_pour_rate_fastest(&g.plant, &none, 0, &g.options, &rate));
    REFUSED(boil_pour_rate_fastest(&g.plant, &water, -1, &g.options, &rate));
    REFUSED(boil_pour_rate_fastest(&g.plant, &water, (double)NAN, &g.options, &rate));
    REFUSED(boil_pour_rate_fastest(&g.plant, &water, 0, &g.no_options, &rate));
    REFUSED(boil_remedies_of(&g.plant, &g.schedule, &g.options, &h, NULL));
    REFUSED(boil_remedies_of(&g.plant, &g.schedule, &g.options, NULL, &needed));
    REFUSED(boil_remedies_of(&g.no_plant, &g.schedule, &g.options, &h, &needed));
    REFUSED(boil_remedies_of(&g.plant, &g.no_schedule, &g.options, &h, &needed));
    REFUSED(boil_remedies_of(&g.plant, &g.schedule, &g.no_options, &h, &needed));
}

static void mixtures(void **state)
{
    (void)state;
    const double blend[BOIL_SALTS] = {1, 0, 0};
    boil_conditions air = boil_conditions_at(BOIL_STANDARD_ATMOSPHERE, 1);
    boil_mixture half = boil_mixture_of(blend, 0.5), wrong[] = {half, half, half};
    wrong[0].water = 0;
    wrong[1].salt[0] = -1;
    wrong[2].salt[2] = (double)NAN;
    double x;
    assert_true(isnan(boil_mixture_mass(NULL)) && isnan(boil_mixture_salts(NULL)) && isnan(boil_mixture_salt_fraction(NULL)));
    assert_true(isnan(boil_mixture_of(NULL, 0.5).water) && isnan(boil_solution_density(NULL, 400)));
    assert_true(isnan(boil_solution_heat(NULL, 400).enthalpy_J) && isnan(boil_solution_strength(NULL, &half)));
    assert_true(isnan(boil_solution_strength(&air, NULL)) && isnan(boil_solubility_crystals_from(NULL)));
    assert_true(isnan(boil_solution_activity(NULL, 400)) && isnan(boil_solution_range(NULL, 400).margin));
    REFUSED(boil_solution_boiling_point(&air, &half, NULL));
    REFUSED(boil_solution_boiling_point(NULL, &half, &x));
    REFUSED(boil_solution_boiling_point(&air, NULL, &x));
    REFUSED(boil_solution_boiling_point(&(boil_conditions){1e5, (double)NAN, 1}, &half, &x));
    REFUSED(boil_solution_fraction_boiling_at(NULL, blend, 410, &x));
    REFUSED(boil_solution_fraction_boiling_at(&air, NULL, 410, &x));
    REFUSED(boil_solution_fraction_boiling_at(&air, blend, 410, NULL));
    REFUSED(boil_solution_fraction_of_strength(NULL, blend, 700, &x));
    REFUSED(boil_solution_fraction_of_strength(&air, NULL, 700, &x));
    REFUSED(boil_solution_fraction_of_strength(&air, blend, 700, NULL));
    for (int i = 0; i < 3; i++) {
        REFUSED(boil_solution_boiling_point(&air, &wrong[i], &x));
        REFUSED(boil_solution_fraction_boiling_at(&air, blend, beyond[i], &x));
        REFUSED(boil_solution_fraction_of_strength(&air, blend, beyond[i], &x));
        assert_true(isnan(boil_solution_activity(&wrong[i], 400)) && isnan(boil_solution_activity(&half, beyond[i])));
        assert_true(isnan(boil_solution_range(&wrong[i], 400).margin) && isnan(boil_solution_range(&half, beyond[i]).margin));
    }
}

/* Water over a solution is less active than pure water, and the less the stronger; and where the correlations hold they say so. */
static void a_solution_has_an_activity_and_a_range(void **state)
{
    (void)state;
    const double blend[BOIL_SALTS] = {0.8, 0.15, 0.05};
    double before = 1;
    for (double fraction = 0.1; fraction < 0.6; fraction += 0.1) {
        boil_mixture m = boil_mixture_of(blend, fraction);
        double a = boil_solution_activity(&m, 400);
        assert_true(a > 0 && a < before);
        assert_true(boil_solution_range(&m, 400).margin > 0);
        before = a;
    }
    assert_true(boil_solution_range(&(boil_mixture){1, {1, 0, 0}}, 650).margin < 0);
}

static boil_outcome above_one(void *context, double x, bool *yes)
{
    (void)context;
    *yes = x > 1;
    return BOIL_OK;
}

static double itself(double x, void *context)
{
    return x < 5 ? x : *(const double *)context;
}

static void searches(void **state)
{
    (void)state;
    double no, yes, far = (double)NAN;
    boil_bisection good = {above_one, NULL, 0.1, 100, 1.5, 0.01};
    const beyond_end ends[] = {{&good.from, {0, -1, HUGE_VAL}},
                               {&good.most, {(double)NAN, HUGE_VAL, -HUGE_VAL}},
                               {&good.ratio, {0, 1, -2}},
                               {&good.precision, {0, -1, (double)NAN}}};
    assert_int_equal(boil_bisect(&good, &no, &yes), BOIL_OK);
    assert_true(no <= 1 && yes > 1 && yes - no <= 0.01 * yes);
    WITH_EACH_BEYOND(ends, REFUSED(boil_bisect(&good, &no, &yes)));
    boil_root r;
    assert_true(boil_root_begin(&r, itself, &far, -1, 2) && boil_root_step(&r));
    assert_false(boil_root_begin(&r, itself, &far, 2, -1));  /* from above */
    assert_false(boil_root_begin(&r, itself, &far, 1, 2));   /* no crossing */
    assert_false(boil_root_begin(&r, itself, &far, -2, -1)); /* nor there */
    assert_false(boil_root_begin(&r, itself, &far, -1, 6));  /* no number */
    far = HUGE_VAL;
    assert_false(boil_root_begin(&r, itself, &far, -1, 6));
    assert_false(boil_root_begin(&r, itself, &far, -HUGE_VAL, 1));
}

static void statistics(void **state)
{
    (void)state;
    boil_sampling s;
    boil_sensitivity out;
    double u[BOIL_SAMPLING_INPUTS], value[1] = {0};
    boil_sampling_plan plan = {.inputs = 1, .points = 1, .replicates = 2, .seed = 1};
    assert_non_null(boil_spread_problem(NULL));
    assert_non_null(boil_sampling_plan_problem(NULL));
    REFUSED(boil_sampling_init(NULL, &plan));
    REFUSED(boil_sampling_init(&s, NULL));
    assert_true(boil_sampling_rows(NULL) == 0 && boil_sampling_draws(NULL) == 0);
    boil_sampling_row(NULL, 0, u);
    assert_int_equal(boil_sampling_init(&s, &plan), BOIL_OK);
    boil_sampling_row(&s, 0, NULL);
    boil_sampling_results wrong[] = {{NULL, value, 1}, {&s, NULL, 1}, {&s, value, 0}};
    boil_sampling_sensitivity(NULL, 0, &out);
    assert_int_equal(out.points, 0);
    for (int i = 0; i < 3; i++) {
        out.points = 9;
        boil_sampling_sensitivity(&wrong[i], 0, &out);
        assert_int_equal(out.points, 0);
    }
    boil_sampling_sensitivity(&wrong[0], 0, NULL);
    boil_least_squares fit;
    REFUSED(boil_least_squares_run(NULL, &fit));
    REFUSED(boil_least_squares_run(&(boil_least_squares_problem){.parameters = 1, .count = 2}, &fit));
    assert_true(isnan(boil_sampling_quantile(NULL, 1, 0.5)) && isnan(boil_sampling_quantile(value, 1, 1.1)));
    assert_true(isnan(boil_sampling_quantile(value, 1, -0.1)) && isnan(boil_odds_of(2, 1).chance));
}

static void charge_and_reading_have_their_ends(void **state)
{
    (void)state;
    given g = begin();
    boil_charge_case c = {.from_level_m = 0.1, .from_fraction = 0.5, .from_K = 330, .added_K = 293, .liquid_K = 293};
    boil_charge_plan plan;
    const beyond_end charge[] = {
        {&c.liquid_fraction, {-1e-9, 0.9, (double)NAN}},  {&c.from_level_m, {-1e-9, HUGE_VAL, (double)NAN}},
        {&c.from_fraction, {-1e-9, 1, (double)NAN}},      {&c.from_K, {HUGE_VAL, -HUGE_VAL, (double)NAN}},
        {&c.added_K, {HUGE_VAL, -HUGE_VAL, (double)NAN}}, {&c.liquid_K, {HUGE_VAL, -HUGE_VAL, (double)NAN}}};
    boil_correct_case r = {413, 0.5, 0.5, false, 0, 293, 293, plate_action(0, 1).is.load};
    boil_correction a;
    const beyond_end reading[] = {
        {&r.reads_K, {HUGE_VAL, -HUGE_VAL, (double)NAN}},  {&r.uncertain_K, {-1e-9, HUGE_VAL, (double)NAN}},
        {&r.level_m, {0, HUGE_VAL, (double)NAN}},          {&r.liquid_fraction, {-1e-9, 0.9, (double)NAN}},
        {&r.added_K, {HUGE_VAL, -HUGE_VAL, (double)NAN}},  {&r.liquid_K, {HUGE_VAL, -HUGE_VAL, (double)NAN}},
        {&r.next_load.mass_kg, {0, HUGE_VAL, (double)NAN}}};
    WITH_EACH_BEYOND(charge, REFUSED(boil_charge_plan_of(&g.plant, &c, &g.options, &plan)));
    WITH_EACH_BEYOND(reading, REFUSED(boil_correct(&g.plant, &r, &g.options, &a)));
}

static void waits_and_taps_have_their_ends(void **state)
{
    (void)state;
    boil_wait w = {.state = BOIL_WAIT_BOILING};
    boil_pour p = {.goal = BOIL_GOAL_LEVEL, .goal_value = 0.5};
    assert_true(boil_wait_is_sound(&w) && boil_tap_is_sound(&p));
    const double wrong[] = {-1e-9, HUGE_VAL, (double)NAN};
    double *waits[] = {&w.for_s, &w.delay_s}, *pours[] = {&p.no_later_s, &p.goal_value};
    for (int k = 0; k < 3; k++)
        for (int i = 0; i < 2; i++) {
            const double kept = *waits[i], had = *pours[i];
            *waits[i] = *pours[i] = wrong[k];
            assert_false(boil_wait_is_sound(&w) || boil_tap_is_sound(&p));
            *waits[i] = kept;
            *pours[i] = had;
        }
    p.goal_value = 0;
    assert_false(boil_tap_is_sound(&p));
    p.goal = BOIL_GOAL_NONE; /* then it is not asked for */
    assert_true(boil_tap_is_sound(&p));
    p.goal = (boil_goal)(BOIL_GOAL_BOILING_POINT + 1);
    assert_false(boil_tap_is_sound(&p));
    w.state = (boil_wait_state)(BOIL_WAIT_BACK + 1);
    assert_false(boil_wait_is_sound(&w));
}

static void equipment(void **state)
{
    (void)state;
    assert_non_null(boil_tank_problem(NULL));
    assert_non_null(boil_ambient_problem(NULL));
    assert_non_null(boil_heater_problem(NULL));
    assert_non_null(boil_losses_problem(NULL));
    assert_non_null(boil_water_control_problem(NULL));
    assert_true(isnan(boil_tank_area(NULL)) && isnan(boil_heater_output(NULL, 1, 400)) && isnan(boil_load_wetted(NULL)));
    boil_schedule_init(NULL, 1);
    boil_schedule_sort(NULL);
    boil_history_free(NULL);
}

/* Of more items than there are addresses there is no list; the one there was stands. */
static void a_list_does_not_outgrow_memory(void **state)
{
    (void)state;
    size_t capacity = SIZE_MAX / 2 + 1;
    char one;
    assert_null(boil_array_reserve(&one, &capacity, SIZE_MAX / 2 + 1, 1));
    capacity = 8;
    assert_null(boil_array_reserve(&one, &capacity, SIZE_MAX / 4, 16));
    assert_int_equal(capacity, 8);
}

static boil_outcome no_residuals(void *context, const double value[], double residual[])
{
    (void)context;
    residual[0] = residual[1] = value[0];
    return BOIL_OK;
}

static void spreads_have_their_ends(void **state)
{
    (void)state;
    boil_spread s = {.kind = BOIL_SPREAD_TRIANGULAR, .low = 1, .high = 3, .likely = 2, .deviation = 1};
    const beyond_end ends[] = {
        {&s.low, {3, -HUGE_VAL, (double)NAN}}, {&s.high, {1, HUGE_VAL, (double)NAN}}, {&s.likely, {0.9, 3.1, (double)NAN}}};
    WITH_EACH_BEYOND(ends, assert_non_null(boil_spread_problem(&s)); assert_true(isnan(boil_spread_at(&s, 0.5))));
    assert_true(isnan(boil_spread_at(&s, -0.01)) && isnan(boil_spread_at(&s, 1.01)) && isnan(boil_spread_at(&s, (double)NAN)));
    s.kind = BOIL_SPREAD_NORMAL;
    const double deviations[] = {0, HUGE_VAL, (double)NAN};
    for (int k = 0; k < 3; k++) {
        s.deviation = deviations[k];
        assert_non_null(boil_spread_problem(&s));
    }
    s.kind = (boil_spread_kind)9;
    assert_non_null(boil_spread_problem(&s));
}

static void fits_have_their_ends(void **state)
{
    (void)state;
    boil_least_squares fit;
    boil_least_squares_problem p = {.residuals = no_residuals,
                                    .parameters = 1,
                                    .count = 2,
                                    .start = {2},
                                    .low = {1},
                                    .high = {3},
                                    .known = true,
                                    .mean = {2},
                                    .deviation = {1},
                                    .difference = 1e-5};
    const beyond_end numbers[] = {{&p.start[0], {0.9, 3.1, (double)NAN}},   {&p.low[0], {3, -HUGE_VAL, (double)NAN}},
                                  {&p.high[0], {1, HUGE_VAL, (double)NAN}}, {&p.mean[0], {HUGE_VAL, -HUGE_VAL, (double)NAN}},
                                  {&p.deviation[0], {0, -1, (double)NAN}},  {&p.difference, {0.99e-8, 0.11, (double)NAN}}};
    WITH_EACH_BEYOND(numbers, REFUSED(boil_least_squares_run(&p, &fit)));
    p.count = SIZE_MAX;
    REFUSED(boil_least_squares_run(&p, &fit));
    p.count = 1;
    REFUSED(boil_least_squares_run(&p, &fit));
    p.count = 20;
    p.parameters = BOIL_LEAST_SQUARES_PARAMETERS + 1;
    REFUSED(boil_least_squares_run(&p, &fit));
    p.parameters = 0;
    REFUSED(boil_least_squares_run(&p, &fit));
}

/* Every outcome has a text of its own, and what is none says so; the version is the header's. */
static void the_library_says_who_it_is(void **state)
{
    (void)state;
    const boil_outcome all[] = {BOIL_OK, BOIL_OUT_OF_RANGE, BOIL_NO_ROOT, BOIL_NO_MEMORY, BOIL_BAD_INPUT, BOIL_NOT_FINITE};
    const char *none = boil_outcome_text((boil_outcome)99);
    assert_string_equal(none, "no outcome of this library");
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++)
        for (size_t k = 0; k < i; k++)
            assert_string_not_equal(boil_outcome_text(all[i]), boil_outcome_text(all[k]));
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++)
        assert_string_not_equal(boil_outcome_text(all[i]), none);
    assert_string_equal(boil_version(), BOIL_VERSION_TEXT);
    assert_int_equal(boil_version_number(), BOIL_VERSION_NUMBER);
    assert_non_null(boil_finding_listed(0, NULL)); /* its title need not be asked for */
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(steady_states),
        cmocka_unit_test(heater_sizes),
        cmocka_unit_test(load_sizes),
        cmocka_unit_test(plans),
        cmocka_unit_test(pours_and_remedies),
        cmocka_unit_test(mixtures),
        cmocka_unit_test(a_solution_has_an_activity_and_a_range),
        cmocka_unit_test(searches),
        cmocka_unit_test(statistics),
        cmocka_unit_test(charge_and_reading_have_their_ends),
        cmocka_unit_test(waits_and_taps_have_their_ends),
        cmocka_unit_test(equipment),
        cmocka_unit_test(a_list_does_not_outgrow_memory),
        cmocka_unit_test(spreads_have_their_ends),
        cmocka_unit_test(fits_have_their_ends),
        cmocka_unit_test(the_library_says_who_it_is),
    };
    return cmocka_run_group_tests_name("refused input", tests, NULL, NULL);
}
