/* What no plan can meet, of lists whose sums are done by hand from the limits of plan/plan.h; at a limit itself it can. */
#include "plan/conditions.h"
#include "support/close.h"

enum { JOBS = 30 };

/* Alike: a quarter of an hour in a bath that boils and needs no water, ten minutes of it until they are hot. */
typedef struct {
    boil_plan_job jobs[JOBS];
    boil_plan_part parts[JOBS];
    boil_plan_problem problem;
    boil_plan_bath bath;
    boil_plan_case of;
    boil_plan_condition failed[BOIL_PLAN_CONDITIONS_MAX + 1];
} listed;

static void set_up(listed *l, size_t jobs)
{
    *l = (listed){.problem = {.jobs = l->jobs, .jobs_count = jobs, .positions = JOBS, .hoist_s = 60, .end_s = 9000}};
    for (size_t i = 0; i < jobs; i++) {
        l->jobs[i] = (boil_plan_job){.load = {.mass_kg = 18, .basket_kg = 2}, .least_s = 300, .most_s = 400, .due_s = HUGE_VAL};
        l->parts[i] = (boil_plan_part){.job = i, .of = 1, .load = l->jobs[i].load, .heat_J = 1e6, .lag_s = 200, .hot_s = 600};
    }
    l->bath = (boil_plan_bath){.limit_s = 100, .quiet_W = 40e3, .most_kg = 60, .valve = true, .efficiency = 1, .fire_W = 1e5};
    l->of = (boil_plan_case){&l->problem, &l->bath, l->parts, jobs, NULL};
}

static size_t failing(listed *l)
{
    size_t count;
    assert_int_equal(boil_plan_conditions_failed(&l->of, l->failed, &count), BOIL_OK);
    return count;
}

/* Nothing fails, or this alone does. */
static void expect(listed *l, bool fails, boil_plan_need what, double value, double limit)
{
    assert_int_equal(failing(l), fails);
    if (fails) {
        assert_int_equal(l->failed[0].what, what);
        assert_close(l->failed[0].value, value, 1e-12, 0);
        assert_close(l->failed[0].limit, limit, 1e-12, 0);
        bool of_one = what <= BOIL_PLAN_NEEDS_WINDOW || what == BOIL_PLAN_NEEDS_LIFT;
        assert_true(of_one || l->failed[0].part == 0);
    }
}

/* Among others that fail. */
static void expect_too(listed *l, boil_plan_need what, double value, double limit)
{
    size_t count = failing(l), found = 0;
    for (size_t i = 0; i < count; i++)
        found +=
            l->failed[i].what == what && fabs(l->failed[i].value - value) < 1e-9 && fabs(l->failed[i].limit - limit) < 1e-9;
    assert_int_equal(found, 1);
}

/* H8: put in after one move of the hoist, it is done 900 s later. What may be late is not waited for. */
static void a_part_alone_is_out_too_late(void **state)
{
    (void)state;
    listed l;
    set_up(&l, 2);
    l.jobs[1].due_s = 959;
    expect(&l, false, BOIL_PLAN_NEEDS_TIME, 0, 0);
    l.jobs[1].priority = BOIL_PLAN_MUST;
    expect(&l, true, BOIL_PLAN_NEEDS_TIME, 960, 959);
    assert_int_equal(l.failed[0].part, 1);
    l.jobs[1].due_s = 960;
    expect(&l, false, BOIL_PLAN_NEEDS_TIME, 0, 0);
    l.jobs[1].due_s = -1; /* it should have been out already */
    l.problem.end_s = 950;
    assert_int_equal(failing(&l), 2);
    assert_true(l.failed[0].what == BOIL_PLAN_NEEDS_TIME && l.failed[0].part == 0 && l.failed[0].limit == 950);
    assert_true(l.failed[1].what == BOIL_PLAN_NEEDS_TIME && l.failed[1].part == 1 && l.failed[1].limit == -1);
}

/* H2: in a bath that is not known well each hangs longer, and this one longer than it may. */
static void a_part_finds_no_time_at_all(void **state)
{
    (void)state;
    listed l;
    set_up(&l, 2);
    l.jobs[0].most_s = 500;
    l.bath.longer_s = 101;
    expect(&l, true, BOIL_PLAN_NEEDS_WINDOW, 1001, 1000);
    assert_int_equal(l.failed[0].part, 1);
    l.bath.longer_s = 100;
    expect(&l, false, BOIL_PLAN_NEEDS_WINDOW, 0, 0);
}

/* H3: six stays of 900 s and a move each are 5760 s of one place; the last is carried off after the end. Three of 20 kg share one of 60 kg;
   one that is heavier than a dip may be takes no more than a dip. */
static void stays_fill_more_than_the_places(void **state)
{
    (void)state;
    listed l;
    set_up(&l, 6);
    l.problem.positions = 1;
    l.problem.end_s = 5699;
    expect(&l, true, BOIL_PLAN_NEEDS_PLACES, 5760, 5759);
    l.problem.end_s = 5700;
    expect(&l, false, BOIL_PLAN_NEEDS_PLACES, 0, 0);
    l.problem.positions = 2;
    l.problem.end_s = 2800;
    expect(&l, true, BOIL_PLAN_NEEDS_PLACES, 5760, 5720);
    for (size_t i = 0; i < 6; i++)
        l.jobs[i].may_share = true;
    expect(&l, false, BOIL_PLAN_NEEDS_PLACES, 0, 0);
    l.problem.positions = 1;
    l.problem.end_s = 1850;
    expect(&l, true, BOIL_PLAN_NEEDS_PLACES, 1920, 1910);
    l.parts[0].load.mass_kg = 180;
    expect(&l, true, BOIL_PLAN_NEEDS_PLACES, 960 + 5 * 320, 1910);
}

/* H1: 40 kW for 97 % of 100 s is 3.88 MJ a dip. Three of 3.5 MJ are three dips; the last alone leaves 6.62 MJ for the first two boils,
   165.5 s, and two times 50 s until it has settled, and then hangs its 900 s. */
static void boils_come_back_too_late(void **state)
{
    (void)state;
    listed l;
    set_up(&l, 3);
    for (size_t i = 0; i < 3; i++)
        l.parts[i].heat_J = 3.5e6;
    l.problem.settle_s = 50;
    l.bath.steady_s = 30;
    l.problem.end_s = 1165;
    expect(&l, true, BOIL_PLAN_NEEDS_HEAT, 100 + 165.5 + 900, 1165);
    l.problem.end_s = 1165.5;
    expect(&l, false, BOIL_PLAN_NEEDS_HEAT, 0, 0);
    l.bath.steady_s = 60; /* the bath's own is longer */
    expect(&l, true, BOIL_PLAN_NEEDS_HEAT, 120 + 165.5 + 900, 1165.5);
    l.parts[1].hot_s = 500; /* the shortest goes last */
    expect(&l, false, BOIL_PLAN_NEEDS_HEAT, 0, 0);
    l.problem.end_s = 1085;
    l.bath.offset_s = -3; /* and every boil is back sooner, each dip may take 120 kJ more */
    expect(&l, false, BOIL_PLAN_NEEDS_HEAT, 0, 0);
    l.problem.end_s = 1075;
    expect(&l, true, BOIL_PLAN_NEEDS_HEAT, 120 - 6 + (10.5 - 4.0) / 0.04 + 800, 1075);
    l.bath.slower = 0.25; /* or a quarter later, and takes 3.104 + 0.12 MJ */
    expect(&l, true, BOIL_PLAN_NEEDS_HEAT, 180 + 1.25 * (-9 + (10.5 - 3.224) / 0.04) + 800, 1075);
}

/* What hangs there keeps its place until it is carried off; before the boil no place takes anything. Six stays and moves are 5760 s. */
static void what_hangs_there_leaves_less_of_the_places(void **state)
{
    (void)state;
    static const boil_plan_hanging_dip lift = {1000, 1};
    listed l;
    set_up(&l, 6);
    l.problem.positions = 2;
    l.problem.hanging = &lift;
    l.problem.hanging_count = 1;
    l.problem.end_s = 3349;
    expect(&l, true, BOIL_PLAN_NEEDS_PLACES, 5760, 3349 + 60 + 3349 - 1000);
    l.problem.end_s = 3350;
    expect(&l, false, BOIL_PLAN_NEEDS_PLACES, 0, 0);
    l.bath.ready_s = 1100; /* both are empty by then */
    expect(&l, true, BOIL_PLAN_NEEDS_PLACES, 5760, 2 * (3350 + 60 - 1100));
    l.problem.end_s = 3920;
    expect(&l, false, BOIL_PLAN_NEEDS_PLACES, 0, 0);
    l.problem.end_s = 900; /* before all that */
    expect_too(&l, BOIL_PLAN_NEEDS_PLACES, 5760, 0);
}

/* A bath that boils after 400 s gains no heat for steel before. */
static void the_first_boil_comes_first(void **state)
{
    (void)state;
    listed l;
    set_up(&l, 4);
    for (size_t i = 0; i < 4; i++)
        l.parts[i].heat_J = 1.94e6;
    l.bath.ready_s = 400;
    l.problem.end_s = 400 + 97 + 900 - 0.5;
    expect(&l, true, BOIL_PLAN_NEEDS_HEAT, 400 + 97 + 900, l.problem.end_s);
    l.problem.end_s += 0.5;
    expect(&l, false, BOIL_PLAN_NEEDS_HEAT, 0, 0);
    set_up(&l, 1); /* one dip waits for none */
    l.problem.end_s = 899;
    expect_too(&l, BOIL_PLAN_NEEDS_HEAT, 900, 899);
}

static void what_is_wrong_at_the_start_no_order_mends(void **state)
{
    (void)state;
    static const boil_plan_hanging_dip lifts[] = {{100, 1}, {9001, 2}}, turned[] = {{9001, 2}, {100, 1}};
    listed l;
    set_up(&l, 2);
    l.problem.hanging = lifts;
    l.problem.hanging_count = 2;
    expect(&l, true, BOIL_PLAN_NEEDS_LIFT, 9001, 9000);
    assert_int_equal(l.failed[0].part, 1);
    l.problem.end_s = 9001;
    expect(&l, false, BOIL_PLAN_NEEDS_LIFT, 0, 0);
    l.bath.outside_K = -2;
    expect(&l, true, BOIL_PLAN_NEEDS_BAND, -2, 0);
    l.bath.outside_K = 0;
    l.problem.end_s = 9000;
    l.problem.hanging = turned;
    expect(&l, true, BOIL_PLAN_NEEDS_LIFT, 9001, 9000);
    assert_int_equal(l.failed[0].part, 0);
}

/* Two dips full to the last joule are two. */
static void what_fills_two_dips_takes_no_third(void **state)
{
    (void)state;
    listed l;
    set_up(&l, 4);
    for (size_t i = 0; i < 4; i++)
        l.parts[i].heat_J = 1.94e6;
    l.problem.settle_s = 50;
    l.problem.end_s = 1047 - 0.5;
    expect(&l, true, BOIL_PLAN_NEEDS_HEAT, 50 + 97 + 900, 1047 - 0.5);
}

/* H5: 1/16 kg/s of a quiet bath, which loses less than a boiling one, against a pour of 1/32 kg/s until the last may go in. */
static void the_bath_dries_before_the_last(void **state)
{
    (void)state;
    listed l;
    set_up(&l, 3);
    l.bath.valve = false;
    l.bath.boils_off_kg_s = 0.125;
    l.bath.dries_kg_s = 0.0625;
    l.bath.flow_kg_s = 0.03125;
    l.bath.strongest_kg = 31.5;
    l.jobs[1].earliest_s = 1024;
    expect(&l, true, BOIL_PLAN_NEEDS_WATER, 32, 31.5);
    l.bath.strongest_kg = 32;
    expect(&l, false, BOIL_PLAN_NEEDS_WATER, 0, 0);
    l.bath.strongest_kg = 31.5;
    l.bath.valve = true;
    expect(&l, false, BOIL_PLAN_NEEDS_WATER, 0, 0);
    l.bath.valve = false;
    l.bath.dries_kg_s = 0.25; /* one that holds its fire while it boils */
    expect(&l, true, BOIL_PLAN_NEEDS_WATER, 96, 31.5);
    l.jobs[0].earliest_s = 2048;
    expect(&l, true, BOIL_PLAN_NEEDS_WATER, 192, 31.5);
    l.bath.strongest_kg = 0;
    l.jobs[0].earliest_s = l.jobs[1].earliest_s = 0; /* none has to wait */
    expect(&l, false, BOIL_PLAN_NEEDS_WATER, 0, 0);
}

/* Thirty are too late: as many are told as have room. */
static void no_more_are_told_than_have_room(void **state)
{
    (void)state;
    listed l;
    set_up(&l, JOBS);
    l.problem.end_s = 900;
    l.failed[BOIL_PLAN_CONDITIONS_MAX].value = -1;
    assert_int_equal(failing(&l), BOIL_PLAN_CONDITIONS_MAX);
    assert_int_equal(l.failed[BOIL_PLAN_CONDITIONS_MAX - 1].part, BOIL_PLAN_CONDITIONS_MAX - 1);
    assert_true(l.failed[BOIL_PLAN_CONDITIONS_MAX].value == -1);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_part_alone_is_out_too_late),       cmocka_unit_test(a_part_finds_no_time_at_all),
        cmocka_unit_test(stays_fill_more_than_the_places),    cmocka_unit_test(boils_come_back_too_late),
        cmocka_unit_test(what_fills_two_dips_takes_no_third), cmocka_unit_test(the_bath_dries_before_the_last),
        cmocka_unit_test(no_more_are_told_than_have_room),    cmocka_unit_test(what_hangs_there_leaves_less_of_the_places),
        cmocka_unit_test(the_first_boil_comes_first),         cmocka_unit_test(what_is_wrong_at_the_start_no_order_mends),
    };
    return cmocka_run_group_tests_name("conditions", tests, NULL, NULL);
}
