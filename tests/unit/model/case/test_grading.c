/* Grades and ranks by one measure. The break points are common practice or judgement, no source; what is tested is that each grade
   changes at its break point and nowhere else, that a larger measure never ranks lower, and the ranks worked by hand from
   R = 1000 S + 200 k + 50 c + 49 (1 - exp(-(x - b)/s)). */
#include "support/close.h"

#include "case/grading.h"

static const boil_limits limits = {.recovery_s = 120, .freeboard_m = 0.1524};

static double scale_of(const boil_grading *g)
{
    double low = (double)INFINITY, high = 0;
    for (int s = 0; s < BOIL_SEVERITIES; s++)
        if (!isnan(g->from[s])) {
            low = fmin(low, g->from[s]);
            high = fmax(high, fabs(g->from[s]));
        }
    return fmax(high - low, fmax(high, g->last));
}

/* The grade that all break points up to x make, told from the table itself. */
static int expected(const boil_grading *g, double x)
{
    int passed = -1;
    for (int s = 0; s < BOIL_SEVERITIES; s++)
        if (x > g->from[s])
            passed = s;
    return passed < 0 ? BOIL_SEVERITIES : passed;
}

static void each_grade_changes_at_its_break_point(void **state)
{
    (void)state;
    for (int k = 0; k < BOIL_FOUND_KINDS; k++) {
        const boil_grading *g = &boil_gradings[k];
        double margin = boil_grading_margin(g, &limits), off = 1.05 * margin + 1e-6 * scale_of(g);
        int points = 0;
        for (int s = 0; s < BOIL_SEVERITIES; s++) {
            if (isnan(g->from[s]))
                continue;
            points++;
            for (int side = -1; side <= 1; side += 2) {
                double x = g->from[s] + side * off;
                assert_int_equal(boil_grading_of(g, x, margin), expected(g, x));
            }
            bool by_measure = s == BOIL_SEVERITIES - 1 || !(g->from[s + 1] == g->from[s]);
            if (by_measure)
                assert_int_equal(boil_grading_of(g, g->from[s] + off, margin), s);
        }
        assert_true(points > 0);
        assert_int_equal(boil_grading_of(g, (double)NAN, margin), BOIL_SEVERITIES);
    }
}

#define IN 0.0254
#define LB 0.45359237
#define DEGF(t) (((t) + 459.67) / 1.8)

/* The break points as a shop says them, five in a hundred to both sides (of floor temperatures: of what lies over 212 degF). */
static const struct {
    boil_found_kind kind;
    boil_severity severity;
    double x, side;
} said[] = {
    {BOIL_FOUND_NEVER_RETURNS, BOIL_SEVERITY_CAUTION, 1, 0.05},
    {BOIL_FOUND_LAYER_OUTLASTS, BOIL_SEVERITY_DANGER, 1, 0.05},
    {BOIL_FOUND_BOIL_LOST, BOIL_SEVERITY_NOTICE, 1, 0.05},
    {BOIL_FOUND_BOIL_LOST, BOIL_SEVERITY_CAUTION, 3, 0.15},
    {BOIL_FOUND_BOIL_LOST, BOIL_SEVERITY_WARNING, 15, 0.75},
    {BOIL_FOUND_LIQUID_STOPS, BOIL_SEVERITY_NOTICE, 1, 0.05},
    {BOIL_FOUND_LIQUID_STOPS, BOIL_SEVERITY_CAUTION, 3, 0.15},
    {BOIL_FOUND_LIQUID_STOPS, BOIL_SEVERITY_WARNING, 15, 0.75},
    {BOIL_FOUND_LOAD_HEAVY, BOIL_SEVERITY_NOTICE, 1, 0.05},
    {BOIL_FOUND_LOAD_HEAVY, BOIL_SEVERITY_CAUTION, 2, 0.1},
    {BOIL_FOUND_LOAD_QUIET, BOIL_SEVERITY_CAUTION, 1, 0.05},
    {BOIL_FOUND_LOAD_THROUGH, BOIL_SEVERITY_WARNING, 1.0 / 3, 0.017},
    {BOIL_FOUND_LOAD_THROUGH, BOIL_SEVERITY_DANGER, 1, 0.05},
    {BOIL_FOUND_LEFT_RANGE, BOIL_SEVERITY_WARNING, 0.5, 0.025},
    {BOIL_FOUND_WATER_QUIET, BOIL_SEVERITY_WARNING, 0.05 * LB, 0.0025 * LB},
    {BOIL_FOUND_SALT_QUIET, BOIL_SEVERITY_WARNING, 0.05 * LB, 0.0025 * LB},
    {BOIL_FOUND_VALVE_QUIET, BOIL_SEVERITY_WARNING, 0.05 * LB, 0.0025 * LB},
    {BOIL_FOUND_LAYER, BOIL_SEVERITY_CAUTION, 1.0 / 3, 0.017},
    {BOIL_FOUND_LAYER, BOIL_SEVERITY_WARNING, 2.0 / 3, 0.033},
    {BOIL_FOUND_LAYER, BOIL_SEVERITY_DANGER, 1, 0.05},
    {BOIL_FOUND_WATER_SHORT, BOIL_SEVERITY_NOTICE, 0.5, 0.025},
    {BOIL_FOUND_WATER_SHORT, BOIL_SEVERITY_CAUTION, 1, 0.05},
    {BOIL_FOUND_SURGE, BOIL_SEVERITY_NOTICE, 2, 0.1},
    {BOIL_FOUND_SURGE, BOIL_SEVERITY_WARNING, 3, 0.15},
    {BOIL_FOUND_FREEBOARD, BOIL_SEVERITY_CAUTION, 1.0 / 3, 0.017},
    {BOIL_FOUND_FREEBOARD, BOIL_SEVERITY_WARNING, 2.0 / 3, 0.033},
    {BOIL_FOUND_TOO_HOT, BOIL_SEVERITY_CAUTION, 5 / 1.8, 0.25 / 1.8},
    {BOIL_FOUND_TOO_HOT, BOIL_SEVERITY_WARNING, 25 / 1.8, 1.25 / 1.8},
    {BOIL_FOUND_TOO_COOL, BOIL_SEVERITY_CAUTION, 15 / 1.8, 0.75 / 1.8},
    {BOIL_FOUND_NEARLY_DRY, BOIL_SEVERITY_CAUTION, -0.36, 0.018},
    {BOIL_FOUND_NEARLY_DRY, BOIL_SEVERITY_WARNING, -18.015 / 58.012, 0.016}, /* one water to each NaOH */
    {BOIL_FOUND_NEARLY_DRY, BOIL_SEVERITY_DANGER, -0.25, 0.0125},
    {BOIL_FOUND_HEATER_BARE, BOIL_SEVERITY_CAUTION, -2 * IN, 0.1 * IN},
    {BOIL_FOUND_FLOOR_BARE, BOIL_SEVERITY_CAUTION, -6 * IN, 0.3 * IN},
    {BOIL_FOUND_FLOOR_BARE, BOIL_SEVERITY_WARNING, -3 * IN, 0.15 * IN},
    {BOIL_FOUND_FLOOR_HOT, BOIL_SEVERITY_CAUTION, DEGF(400), 9.4 / 1.8},
    {BOIL_FOUND_FLOOR_HOT, BOIL_SEVERITY_WARNING, DEGF(500), 14.4 / 1.8},
    {BOIL_FOUND_FLOOR_HOT, BOIL_SEVERITY_DANGER, DEGF(650), 21.9 / 1.8},
    {BOIL_FOUND_SUPERHEAT, BOIL_SEVERITY_CAUTION, 1, 0.05},
    {BOIL_FOUND_SUPERHEAT, BOIL_SEVERITY_WARNING, 3, 0.15},
    {BOIL_FOUND_TALL, BOIL_SEVERITY_NOTICE, 1.2, 0.06},
    {BOIL_FOUND_TALL, BOIL_SEVERITY_CAUTION, 2, 0.1},
    {BOIL_FOUND_SALT_SLUG, BOIL_SEVERITY_WARNING, 1.0 / 3, 0.017},
    {BOIL_FOUND_SALT_SLUG, BOIL_SEVERITY_DANGER, 1, 0.05},
    {BOIL_FOUND_DRY_SALT, BOIL_SEVERITY_DANGER, 1, 0.05},
    {BOIL_FOUND_SALT_MUCH, BOIL_SEVERITY_CAUTION, 1.0 / 3, 0.017},
    {BOIL_FOUND_SALT_MUCH, BOIL_SEVERITY_WARNING, 1, 0.05},
    {BOIL_FOUND_SALT_BED, BOIL_SEVERITY_CAUTION, 10, 0.5},
    {BOIL_FOUND_SALT_BED, BOIL_SEVERITY_WARNING, 30, 1.5},
    {BOIL_FOUND_VALVE_HUNTS, BOIL_SEVERITY_NOTICE, 12, 0.6},
    {BOIL_FOUND_CRYSTALS, BOIL_SEVERITY_NOTICE, 0.001, 5e-5},
    {BOIL_FOUND_CRYSTALS, BOIL_SEVERITY_CAUTION, 0.01, 5e-4},
    {BOIL_FOUND_CRUST, BOIL_SEVERITY_NOTICE, IN / 16, 0.1 * IN / 16},
    {BOIL_FOUND_CRUST, BOIL_SEVERITY_WARNING, IN / 4, 0.05 * IN / 4},
    {BOIL_FOUND_RESTART, BOIL_SEVERITY_WARNING, 30, 1.5},
    {BOIL_FOUND_RESTART, BOIL_SEVERITY_DANGER, 200, 10},
    {BOIL_FOUND_HOLLOWS, BOIL_SEVERITY_CAUTION, 1.0 / 3, 0.017},
    {BOIL_FOUND_HOLLOWS, BOIL_SEVERITY_WARNING, 2.0 / 3, 0.033},
    {BOIL_FOUND_HOLLOWS, BOIL_SEVERITY_DANGER, 1, 0.05},
    {BOIL_FOUND_BAIL_HOT, BOIL_SEVERITY_WARNING, DEGF(150), 7.5 / 1.8},
    {BOIL_FOUND_GOAL_MISSED, BOIL_SEVERITY_NOTICE, 1, 0.05},
    {BOIL_FOUND_LEVEL_HIGH, BOIL_SEVERITY_NOTICE, 0.5 * IN, 0.1 * IN},
    {BOIL_FOUND_LEVEL_HIGH, BOIL_SEVERITY_CAUTION, 1.5 * IN, 0.1 * IN},
    {BOIL_FOUND_UNATTENDED, BOIL_SEVERITY_CAUTION, 1, 0.05},
    {BOIL_FOUND_BOIL_SHORT, BOIL_SEVERITY_NOTICE, 60, 3},
};

static void break_points_are_as_a_shop_says_them(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof said / sizeof said[0]; i++) {
        const boil_grading *g = &boil_gradings[said[i].kind];
        double margin = boil_grading_margin(g, &limits);
        int inside = (int)boil_grading_of(g, said[i].x - said[i].side, margin);
        assert_true(inside == BOIL_SEVERITIES || inside < (int)said[i].severity);
        assert_int_equal(boil_grading_of(g, said[i].x + said[i].side, margin), said[i].severity);
        assert_close(g->from[said[i].severity], said[i].x, 1e-2, 0); /* as rounded there */
    }
}

/* What is one as soon as there is anything of it, and how grave that first is. Common practice, no source. */
static void some_are_found_as_soon_as_there_is_anything(void **state)
{
    (void)state;
    const struct {
        boil_found_kind kind;
        boil_severity severity;
    } at_once[] = {
        {BOIL_FOUND_NEVER_BOILS, BOIL_SEVERITY_WARNING},    {BOIL_FOUND_NEVER_RETURNS, BOIL_SEVERITY_NOTICE},
        {BOIL_FOUND_LAYER_OUTLASTS, BOIL_SEVERITY_WARNING}, {BOIL_FOUND_LOAD_QUIET, BOIL_SEVERITY_NOTICE},
        {BOIL_FOUND_LOAD_THROUGH, BOIL_SEVERITY_CAUTION},   {BOIL_FOUND_LOAD_COLD, BOIL_SEVERITY_NOTICE},
        {BOIL_FOUND_TUBES, BOIL_SEVERITY_CAUTION},          {BOIL_FOUND_NOT_RESOLVED, BOIL_SEVERITY_WARNING},
        {BOIL_FOUND_LEFT_RANGE, BOIL_SEVERITY_NOTICE},      {BOIL_FOUND_LAYER, BOIL_SEVERITY_NOTICE},
        {BOIL_FOUND_SURFACE_BOILS, BOIL_SEVERITY_WARNING},  {BOIL_FOUND_WATER_QUENCHES, BOIL_SEVERITY_WARNING},
        {BOIL_FOUND_WATER_FAST, BOIL_SEVERITY_CAUTION},     {BOIL_FOUND_OVERFLOW, BOIL_SEVERITY_DANGER},
        {BOIL_FOUND_OVERFLOW_STILL, BOIL_SEVERITY_DANGER},  {BOIL_FOUND_FREEBOARD, BOIL_SEVERITY_NOTICE},
        {BOIL_FOUND_TOO_HOT, BOIL_SEVERITY_NOTICE},         {BOIL_FOUND_TOO_COOL, BOIL_SEVERITY_NOTICE},
        {BOIL_FOUND_HEATER_BARE, BOIL_SEVERITY_WARNING},    {BOIL_FOUND_PARTS_BARE, BOIL_SEVERITY_NOTICE},
        {BOIL_FOUND_SALT_SLUG, BOIL_SEVERITY_CAUTION},      {BOIL_FOUND_DRY_SALT, BOIL_SEVERITY_WARNING},
        {BOIL_FOUND_SALT_BED, BOIL_SEVERITY_NOTICE},        {BOIL_FOUND_SALT_MUCH, BOIL_SEVERITY_NOTICE},
        {BOIL_FOUND_VALVE_SHORT, BOIL_SEVERITY_CAUTION},    {BOIL_FOUND_RESTART, BOIL_SEVERITY_CAUTION},
        {BOIL_FOUND_THERMOSTAT, BOIL_SEVERITY_CAUTION},     {BOIL_FOUND_HOLLOWS, BOIL_SEVERITY_NOTICE},
        {BOIL_FOUND_UNATTENDED, BOIL_SEVERITY_NOTICE},      {BOIL_FOUND_PLACE_TAKEN, BOIL_SEVERITY_CAUTION},
        {BOIL_FOUND_BREAK_QUIET, BOIL_SEVERITY_NOTICE},     {BOIL_FOUND_SALT_UNSTATED, BOIL_SEVERITY_CAUTION},
    };
    for (size_t i = 0; i < sizeof at_once / sizeof at_once[0]; i++) {
        const boil_grading *g = &boil_gradings[at_once[i].kind];
        double margin = boil_grading_margin(g, &limits), little = 1.05 * margin + 1e-6;
        int without = (int)boil_grading_of(g, -1e-6, margin);
        assert_true(without == BOIL_SEVERITIES || without < (int)at_once[i].severity);
        assert_int_equal(boil_grading_of(g, little, margin), at_once[i].severity);
    }
}

/* k of (1): hot caustic leaves the tank, something happens to bath or people, or a rule of thumb. */
static void only_what_leaves_the_tank_weighs_two_and_rules_of_thumb_nothing(void **state)
{
    (void)state;
    static const boil_found_kind thumb[] = {
        BOIL_FOUND_LOAD_HEAVY, BOIL_FOUND_TUBES,       BOIL_FOUND_WATER_SHORT, BOIL_FOUND_TALL,
        BOIL_FOUND_SALT_MUCH,  BOIL_FOUND_VALVE_HUNTS, BOIL_FOUND_VALVE_SHORT, BOIL_FOUND_THERMOSTAT,
        BOIL_FOUND_BAIL_HOT,   BOIL_FOUND_GOAL_MISSED, BOIL_FOUND_LEVEL_HIGH,  BOIL_FOUND_UNATTENDED,
    };
    int weights[BOIL_FOUND_KINDS];
    for (int k = 0; k < BOIL_FOUND_KINDS; k++)
        weights[k] = 1;
    weights[BOIL_FOUND_OVERFLOW] = weights[BOIL_FOUND_OVERFLOW_STILL] = 2;
    for (size_t i = 0; i < sizeof thumb / sizeof thumb[0]; i++)
        weights[thumb[i]] = 0;
    for (int k = 0; k < BOIL_FOUND_KINDS; k++)
        assert_int_equal(boil_gradings[k].weight, weights[k]);
}

/* What a person would not tell apart is no step over a limit: a second of recovery, a millimetre of freeboard, a twentieth of a kelvin,
   a hundredth of calm steam. Nothing is granted at the rim. Judgement, no source. */
static void margins_are_what_nobody_tells_apart(void **state)
{
    (void)state;
    for (int k = 0; k < BOIL_FOUND_KINDS; k++) {
        const boil_grading *g = &boil_gradings[k];
        if (g->per == BOIL_PER_RECOVERY)
            assert_close(boil_grading_margin(g, &limits), 1 / limits.recovery_s, 1e-12, 0);
        else if (g->per == BOIL_PER_FREEBOARD)
            assert_close(boil_grading_margin(g, &limits), 1e-3 / limits.freeboard_m, 1e-12, 0);
        else
            assert_true(g->margin >= 0 && g->margin <= 1);
    }
    assert_close(boil_grading_margin(&boil_gradings[BOIL_FOUND_TOO_HOT], &limits), 0.05, 1e-12, 0);
    assert_close(boil_grading_margin(&boil_gradings[BOIL_FOUND_SURGE], &limits), 0.01, 1e-12, 0);
    assert_close(boil_grading_margin(&boil_gradings[BOIL_FOUND_OVERFLOW], &limits), 0, 0, 0);
}

/* The scale beyond the last break point, and the margin, of each row: judgement, no source. Entered twice, here and in the table: a
   slip in the one is found by the other. */
static const struct {
    boil_found_kind kind;
    double last, margin;
} entered[] = {
    {BOIL_FOUND_NEVER_BOILS, 0.5, 0},
    {BOIL_FOUND_NEVER_RETURNS, 10, 1},
    {BOIL_FOUND_LAYER_OUTLASTS, 1, 1e-3},
    {BOIL_FOUND_BOIL_LOST, 15, 1},
    {BOIL_FOUND_LIQUID_STOPS, 15, 1},
    {BOIL_FOUND_LOAD_HEAVY, 4, 0.005},
    {BOIL_FOUND_LOAD_QUIET, 5, 1},
    {BOIL_FOUND_LOAD_THROUGH, 1, 1e-3},
    {BOIL_FOUND_LOAD_COLD, 600, 1},
    {BOIL_FOUND_TUBES, 1, 0},
    {BOIL_FOUND_NOT_RESOLVED, 1, 0},
    {BOIL_FOUND_LEFT_RANGE, 1, 0},
    {BOIL_FOUND_WATER_QUIET, 2.27, 0},
    {BOIL_FOUND_LAYER, 1, 1e-3},
    {BOIL_FOUND_SURFACE_BOILS, 3600, 1},
    {BOIL_FOUND_WATER_QUENCHES, 11.1, 0.05},
    {BOIL_FOUND_WATER_FAST, 1, 1e-3},
    {BOIL_FOUND_WATER_SHORT, 1, 0.005},
    {BOIL_FOUND_SURGE, 3, 0.01},
    {BOIL_FOUND_OVERFLOW, 0.1, 0},
    {BOIL_FOUND_OVERFLOW_STILL, 0.0254, 0},
    {BOIL_FOUND_FREEBOARD, 1.0 / 3, 1e-3},
    {BOIL_FOUND_TOO_HOT, 13.9, 0.05},
    {BOIL_FOUND_TOO_COOL, 8.33, 0.05},
    {BOIL_FOUND_NEARLY_DRY, 0.05, 0.001},
    {BOIL_FOUND_HEATER_BARE, 0.0508, 1e-3},
    {BOIL_FOUND_FLOOR_BARE, 0.0762, 1e-3},
    {BOIL_FOUND_FLOOR_HOT, 83.3, 0.05},
    {BOIL_FOUND_PARTS_BARE, 0.0508, 1e-3},
    {BOIL_FOUND_SUPERHEAT, 3, 0.005},
    {BOIL_FOUND_TALL, 2, 0.005},
    {BOIL_FOUND_SALT_QUIET, 9.07, 0},
    {BOIL_FOUND_SALT_SLUG, 1.0 / 3, 1e-3},
    {BOIL_FOUND_DRY_SALT, 1, 0},
    {BOIL_FOUND_SALT_BED, 100, 0.05},
    {BOIL_FOUND_SALT_MUCH, 1, 1e-3},
    {BOIL_FOUND_VALVE_HUNTS, 12, 0.05},
    {BOIL_FOUND_VALVE_SHORT, 2.78, 0.05},
    {BOIL_FOUND_VALVE_QUIET, 2.27, 0},
    {BOIL_FOUND_CRYSTALS, 0.03, 0},
    {BOIL_FOUND_CRUST, 12.7e-3, 1e-4},
    {BOIL_FOUND_RESTART, 200, 0.05},
    {BOIL_FOUND_THERMOSTAT, 5, 0},
    {BOIL_FOUND_HOLLOWS, 1, 1e-3},
    {BOIL_FOUND_BAIL_HOT, 55.6, 0.05},
    {BOIL_FOUND_GOAL_MISSED, 5, 0},
    {BOIL_FOUND_LEVEL_HIGH, 0.0508, 1e-3},
    {BOIL_FOUND_UNATTENDED, 1, 0},
    {BOIL_FOUND_BOIL_SHORT, 300, 1},
    {BOIL_FOUND_PLACE_TAKEN, 1, 0},
    {BOIL_FOUND_BREAK_QUIET, 10, 1},
    {BOIL_FOUND_SALT_UNSTATED, 10, 0.05},
};

static void scales_and_margins_are_as_entered_twice(void **state)
{
    (void)state;
    assert_int_equal(sizeof entered / sizeof entered[0], BOIL_FOUND_KINDS);
    for (size_t i = 0; i < BOIL_FOUND_KINDS; i++) {
        assert_close(boil_gradings[entered[i].kind].last, entered[i].last, 1e-12, 0);
        assert_close(boil_gradings[entered[i].kind].margin, entered[i].margin, 1e-12, 0);
    }
}

/* By no more than the margin is not past; at the rim it is. */
static void at_a_break_point_it_is_not_past(void **state)
{
    (void)state;
    const boil_grading *tubes = &boil_gradings[BOIL_FOUND_TUBES], *tall = &boil_gradings[BOIL_FOUND_TALL];
    assert_int_equal(boil_grading_of(tubes, 0, 0), BOIL_SEVERITIES);
    assert_int_equal(boil_grading_of(tall, 2, 0), BOIL_SEVERITY_NOTICE);
    assert_int_equal(boil_grading_of(&boil_gradings[BOIL_FOUND_OVERFLOW_STILL], 0, 0), BOIL_SEVERITY_DANGER);
}

static void break_points_never_fall_and_all_has_a_scale(void **state)
{
    (void)state;
    for (int k = 0; k < BOIL_FOUND_KINDS; k++) {
        const boil_grading *g = &boil_gradings[k];
        double before = -(double)INFINITY;
        for (int s = 0; s < BOIL_SEVERITIES; s++)
            if (!isnan(g->from[s])) {
                assert_true(g->from[s] >= before);
                before = g->from[s];
            }
        assert_true(g->last > 0 && g->weight >= 0 && g->weight <= 2);
    }
}

/* As the measure grows, the other conditions being alike, and for whatever these allow at the most. */
static void a_larger_measure_never_ranks_lower(void **state)
{
    (void)state;
    for (int k = 0; k < BOIL_FOUND_KINDS; k++) {
        const boil_grading *g = &boil_gradings[k];
        double span = scale_of(g);
        for (int most = 0; most < BOIL_SEVERITIES; most++) {
            double before = -1;
            for (double x = -2 * span; x < 6 * span; x += span / 211) {
                int s = (int)boil_grading_of(g, x, 0);
                double rank = s == BOIL_SEVERITIES ? -1 : boil_grading_rank(g, x, (boil_severity)(s < most ? s : most), true);
                assert_true(rank >= before);
                before = rank;
            }
        }
    }
}

/* 304.4 degF against 295; a boil lost for 9.18 min against 2; 1.78 lb/gal against 0.5. */
static void ranks_are_as_worked_by_hand(void **state)
{
    (void)state;
    const struct {
        boil_found_kind kind;
        double x;
        boil_severity severity;
        double rank;
    } worked[] = {
        {BOIL_FOUND_TOO_HOT, 9.4 / 1.8, BOIL_SEVERITY_CAUTION, 1259.7},
        {BOIL_FOUND_BOIL_LOST, 4.59, BOIL_SEVERITY_CAUTION, 1256.1},
        {BOIL_FOUND_LOAD_HEAVY, 3.56, BOIL_SEVERITY_CAUTION, 1065.8},
        {BOIL_FOUND_OVERFLOW, 0, BOIL_SEVERITY_DANGER, 3450},
    };
    for (size_t i = 0; i < sizeof worked / sizeof worked[0]; i++) {
        const boil_grading *g = &boil_gradings[worked[i].kind];
        assert_int_equal(boil_grading_of(g, worked[i].x, boil_grading_margin(g, &limits)), worked[i].severity);
        assert_close(boil_grading_rank(g, worked[i].x, worked[i].severity, true), worked[i].rank, 0, 0.1);
    }
}

/* What is only possible has c 0; and a grade that a row has not is ranked from the last one below: 2000 + 50 + 49 (1 - exp(-4/4)). */
static void ranks_of_what_is_possible_and_of_what_is_raised(void **state)
{
    (void)state;
    const boil_grading *heavy = &boil_gradings[BOIL_FOUND_LOAD_HEAVY];
    assert_close(boil_grading_rank(heavy, 6, BOIL_SEVERITY_WARNING, true), 2050 + 49 * (1 - exp(-1)), 1e-12, 0);
    assert_close(boil_grading_rank(heavy, 6, BOIL_SEVERITY_CAUTION, false), 1000 + 49 * (1 - exp(-1)), 1e-12, 0);
    assert_close(boil_grading_rank(&boil_gradings[BOIL_FOUND_OVERFLOW], 0, BOIL_SEVERITY_DANGER, false), 3400, 1e-12, 0);
}

/* The least that is possible as a DANGER comes before the most that is likely as a WARNING; and a rule of thumb behind a like event. */
static void a_possible_danger_comes_before_a_likely_warning(void **state)
{
    (void)state;
    for (int a = 0; a < BOIL_FOUND_KINDS; a++)
        for (int b = 0; b < BOIL_FOUND_KINDS; b++) {
            if (isnan(boil_gradings[a].from[BOIL_SEVERITY_DANGER]))
                continue;
            double least =
                boil_grading_rank(&boil_gradings[a], boil_gradings[a].from[BOIL_SEVERITY_DANGER], BOIL_SEVERITY_DANGER, false);
            double most = boil_grading_rank(&boil_gradings[b], 1e9, BOIL_SEVERITY_WARNING, true);
            assert_true(boil_gradings[a].weight > 0 && least > most);
        }
}

/* 1 s of a recovery of 2 min, 1 mm of 6 in; a limit of nothing counts as a millimetre; at the rim there is no margin. */
static void what_measuring_allows_is_no_breach(void **state)
{
    (void)state;
    const boil_grading *lost = &boil_gradings[BOIL_FOUND_BOIL_LOST], *left = &boil_gradings[BOIL_FOUND_FREEBOARD];
    double allows = boil_grading_margin(lost, &limits);
    assert_close(allows, 1.0 / 120, 1e-12, 0);
    assert_int_equal(boil_grading_of(lost, 120.1 / 120, allows), BOIL_SEVERITIES);
    assert_int_equal(boil_grading_of(lost, 121.6 / 120, allows), BOIL_SEVERITY_NOTICE);
    assert_close(boil_grading_margin(left, &limits), 1e-3 / 0.1524, 1e-12, 0);
    const boil_limits none = {.recovery_s = 120, .freeboard_m = 0};
    assert_close(boil_grading_unit(left, &none), 1e-3, 1e-12, 0);
    assert_close(boil_grading_margin(&boil_gradings[BOIL_FOUND_OVERFLOW], &limits), 0, 0, 0);
    assert_int_equal(boil_grading_of(&boil_gradings[BOIL_FOUND_OVERFLOW], 0, 0), BOIL_SEVERITY_DANGER);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(each_grade_changes_at_its_break_point),
        cmocka_unit_test(break_points_are_as_a_shop_says_them),
        cmocka_unit_test(some_are_found_as_soon_as_there_is_anything),
        cmocka_unit_test(only_what_leaves_the_tank_weighs_two_and_rules_of_thumb_nothing),
        cmocka_unit_test(margins_are_what_nobody_tells_apart),
        cmocka_unit_test(scales_and_margins_are_as_entered_twice),
        cmocka_unit_test(at_a_break_point_it_is_not_past),
        cmocka_unit_test(ranks_of_what_is_possible_and_of_what_is_raised),
        cmocka_unit_test(break_points_never_fall_and_all_has_a_scale),
        cmocka_unit_test(a_larger_measure_never_ranks_lower),
        cmocka_unit_test(ranks_are_as_worked_by_hand),
        cmocka_unit_test(a_possible_danger_comes_before_a_likely_warning),
        cmocka_unit_test(what_measuring_allows_is_no_breach),
    };
    return cmocka_run_group_tests_name("grading", tests, NULL, NULL);
}
