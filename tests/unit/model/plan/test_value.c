/* What a timetable is worth, each sum by hand. */
#include "plan/value.h"
#include "support/close.h"

/* Three jobs, each a dip: must, normal and low, due at 1000, 2000 and 3000 s. */
typedef struct {
    boil_plan_job jobs[3];
    boil_plan_part parts[3];
    boil_plan_problem problem;
    boil_plan_bath bath;
    boil_plan_case of;
    boil_plan_dip dips[3];
    size_t in[3];
    boil_plan_pour pours[2];
    boil_plan_timetable table;
} made;

static void set_up(made *m)
{
    static const boil_plan_priority priority[] = {BOIL_PLAN_MUST, BOIL_PLAN_NORMAL, BOIL_PLAN_LOW};
    *m = (made){.problem = {.jobs = m->jobs, .jobs_count = 3, .end_s = 4000}};
    for (size_t i = 0; i < 3; i++) {
        double s = 1000 * (double)(i + 1);
        m->jobs[i] = (boil_plan_job){.due_s = s, .priority = priority[i]};
        m->parts[i] = (boil_plan_part){.job = i, .of = 1};
        m->dips[i] = (boil_plan_dip){
            .first = i, .count = 1, .enters_s = s - 900, .leaves_s = s, .stay_least_s = 800, .mass_kg = 60, .heat_J = 1e6};
        m->in[i] = i;
    }
    m->bath = (boil_plan_bath){.most_kg = 60, .efficiency = 0.5, .fire_W = 1e5};
    m->of = (boil_plan_case){&m->problem, &m->bath, m->parts, 3, NULL};
    m->table = (boil_plan_timetable){.dips = m->dips, .dips_count = 3, .parts = m->in, .pours = m->pours, .pours_count = 2};
}

static void expect(const made *m, boil_plan_aim aim, double value)
{
    boil_plan_value v = boil_plan_value_of(&m->of, &m->table);
    assert_close(v.of[aim], value, 0, 0);
}

static bool holds(const made *m)
{
    boil_plan_value v = boil_plan_value_of(&m->of, &m->table);
    return boil_plan_holds(&v);
}

/* Full fire until the last is out; or what a calm boil takes, and beyond it the steel. */
static void what_is_in_time_costs_fuel_and_minutes_alone(void **state)
{
    (void)state;
    made m;
    set_up(&m);
    static const double of[BOIL_PLAN_AIMS] = {
        [BOIL_PLAN_LAST_OUT_S] = 3000, [BOIL_PLAN_POURS] = 2, [BOIL_PLAN_FUEL_KJ] = 300e3, [BOIL_PLAN_OVERSTAY_S] = 3 * 100};
    for (int i = 0; i < BOIL_PLAN_AIMS; i++)
        expect(&m, (boil_plan_aim)i, of[i]);
    assert_true(holds(&m));
    m.bath.calm_W = 6e4;
    expect(&m, BOIL_PLAN_FUEL_KJ, 180e3 + 3e3 / 0.5);
    m.bath.calm_W = 1;
    expect(&m, BOIL_PLAN_FUEL_KJ, 3 + 3e3 / 0.5);
}

/* A must is overdue by what it is late, the others weigh three and one. */
static void what_is_late_is_weighed(void **state)
{
    (void)state;
    made m;
    set_up(&m);
    for (size_t i = 0; i < 3; i++)
        m.jobs[i].due_s -= 10 * (double)(i + 1);
    expect(&m, BOIL_PLAN_OVERDUE_S, 10);
    expect(&m, BOIL_PLAN_LATENESS_S, 3 * 20 + 30);
    assert_false(holds(&m));
    m.jobs[0].due_s = 999.75; /* a part of a second is too late as well */
    expect(&m, BOIL_PLAN_OVERDUE_S, 1);
    m.jobs[0].due_s = 1000;
    expect(&m, BOIL_PLAN_OVERDUE_S, 0);
    assert_true(holds(&m));
    m.in[1] = 2;
    m.in[2] = 1;
    m.dips[1].count = 2; /* the others in one dip, out at 2000 s, and the low one's due time is 2970 s */
    m.table.dips_count = 2;
    expect(&m, BOIL_PLAN_LATENESS_S, 3 * 20);
}

/* All over the end of the shift counts, of what hangs there already as well. */
static void what_is_out_after_the_end_is_overdue(void **state)
{
    (void)state;
    static const boil_plan_hanging_dip lifts[] = {{3100, 1}, {2000, 2}};
    made m;
    set_up(&m);
    m.problem.end_s = 2900;
    expect(&m, BOIL_PLAN_OVERDUE_S, 100);
    m.problem.hanging = lifts;
    m.problem.hanging_count = 2;
    expect(&m, BOIL_PLAN_OVERDUE_S, 300);
    expect(&m, BOIL_PLAN_LAST_OUT_S, 3100);
    m.problem.end_s = 3100;
    assert_true(holds(&m));
}

static void what_breaks_a_limit_is_counted_once(void **state)
{
    (void)state;
    made m;
    set_up(&m);
    m.dips[0].too_cold = m.dips[0].too_strong = true;
    m.dips[1].too_strong = true;
    m.dips[2].mass_kg = 60.5;
    expect(&m, BOIL_PLAN_BREACHES, 3);
    assert_false(holds(&m));
    set_up(&m);
    m.dips[1].unplaced = true;
    expect(&m, BOIL_PLAN_UNPLACED, 1);
    assert_false(holds(&m));
}

/* The first that differs decides. */
static void aims_are_held_against_each_other_in_order(void **state)
{
    (void)state;
    for (int i = 0; i < BOIL_PLAN_AIMS; i++) {
        boil_plan_value x = {{0}}, y = {{0}};
        assert_false(boil_plan_better(&x, &y));
        x.of[i] = 1;
        for (int k = i + 1; k < BOIL_PLAN_AIMS; k++)
            y.of[k] = 2;
        assert_true(boil_plan_better(&y, &x));
        assert_false(boil_plan_better(&x, &y));
    }
}

/* What is sifted in counts as a pour; what is left of it a sifting for each quarter inch, and one more. */
static void salts_that_are_left_count_as_more(void **state)
{
    (void)state;
    made m;
    set_up(&m);
    m.bath.owes_kg = 4;
    m.table.salts_count = 3;
    expect(&m, BOIL_PLAN_POURS, 2 + 3);
    m.table.salts_count = 1;
    m.table.owed_kg = 8;
    expect(&m, BOIL_PLAN_POURS, 2 + 1 + 2 + 1);
    m.table.owed_kg = 8.1;
    expect(&m, BOIL_PLAN_POURS, 2 + 1 + 3 + 1);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(salts_that_are_left_count_as_more),
        cmocka_unit_test(what_is_in_time_costs_fuel_and_minutes_alone),
        cmocka_unit_test(what_is_late_is_weighed),
        cmocka_unit_test(what_is_out_after_the_end_is_overdue),
        cmocka_unit_test(what_breaks_a_limit_is_counted_once),
        cmocka_unit_test(aims_are_held_against_each_other_in_order),
    };
    return cmocka_run_group_tests_name("value", tests, NULL, NULL);
}
