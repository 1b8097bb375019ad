/* The orders that a person would try first, of lists whose order is plain to see. */
#include "plan/starts.h"
#include "support/close.h"

enum { PARTS = 12 };

typedef struct {
    boil_plan_job jobs[PARTS];
    boil_plan_part parts[PARTS];
    boil_plan_problem problem;
    boil_plan_bath bath;
    boil_plan_case of;
    boil_plan_order order;
} listed;

/* All alike, three of them as heavy as a dip may be. */
static void set_up(listed *l, size_t count)
{
    *l = (listed){.problem = {.jobs = l->jobs, .jobs_count = count, .positions = 1, .end_s = HUGE_VAL}};
    for (size_t i = 0; i < count; i++) {
        l->jobs[i] =
            (boil_plan_job){.load = {.mass_kg = 20}, .least_s = 600, .most_s = 1800, .due_s = HUGE_VAL, .may_share = true};
        l->parts[i] = (boil_plan_part){.job = i, .of = 1, .load = {.mass_kg = 20}, .heat_J = 1e5, .lag_s = 10, .hot_s = 30};
    }
    l->bath = (boil_plan_bath){.limit_s = 100, .quiet_W = 1e6, .most_kg = 60};
    l->of = (boil_plan_case){&l->problem, &l->bath, l->parts, count, NULL};
    assert_int_equal(boil_plan_order_begin(&l->order, count), BOIL_OK);
}

static void expect_order(listed *l, boil_plan_rule rule, const size_t order[])
{
    boil_plan_start(&l->of, rule, false, &l->order);
    assert_int_equal(l->order.dips_count, l->of.parts_count);
    for (size_t i = 0; i < l->of.parts_count; i++) {
        assert_int_equal(l->order.parts[i], order[i]);
        assert_int_equal(boil_plan_order_size(&l->order, i), 1);
    }
}

/* Three parts, of which each rule puts others first. */
static void each_rule_has_its_order(void **state)
{
    (void)state;
    listed l;
    set_up(&l, 3);
    l.jobs[0].due_s = 5000;
    l.jobs[1].due_s = 3000;
    l.jobs[2].due_s = 4000;
    l.jobs[0].earliest_s = 100;
    l.parts[0].hot_s = 60; /* the longest */
    l.parts[2].hot_s = 50;
    l.parts[2].heat_J = 3e5; /* the heaviest */
    l.parts[0].heat_J = 2e5;
    expect_order(&l, BOIL_PLAN_BY_LIST, (const size_t[]){0, 1, 2});
    expect_order(&l, BOIL_PLAN_BY_DUE, (const size_t[]){1, 2, 0});
    expect_order(&l, BOIL_PLAN_BY_LONGEST, (const size_t[]){0, 2, 1});
    expect_order(&l, BOIL_PLAN_BY_HEAVIEST, (const size_t[]){2, 0, 1});
    expect_order(&l, BOIL_PLAN_BY_EARLIEST_AND_DUE, (const size_t[]){1, 2, 0});
    expect_order(&l, BOIL_PLAN_BY_EARLIEST_AND_LONGEST, (const size_t[]){2, 1, 0});
    boil_plan_order_free(&l.order);
}

static void expect_dips(listed *l, const size_t sizes[], size_t count)
{
    boil_plan_start(&l->of, BOIL_PLAN_BY_LIST, true, &l->order);
    assert_int_equal(l->order.dips_count, count);
    for (size_t k = 0; k < count; k++)
        assert_int_equal(boil_plan_order_size(&l->order, k), sizes[k]);
}

/* Three a dip, the first dips first; stays of more than five minutes apart are not put together, and what may not share is alone. */
static void packed_they_fill_the_dips(void **state)
{
    (void)state;
    listed l;
    set_up(&l, 7);
    expect_dips(&l, (const size_t[]){3, 3, 1}, 3);
    l.jobs[1].least_s = 900; /* five minutes longer than the first: no more than that */
    expect_dips(&l, (const size_t[]){3, 3, 1}, 3);
    l.jobs[1].least_s = 901;
    expect_dips(&l, (const size_t[]){3, 1, 3}, 3);
    l.jobs[1].least_s = 600;
    l.jobs[0].may_share = false;
    expect_dips(&l, (const size_t[]){1, 3, 3}, 3);
    boil_plan_order_free(&l.order);
}

/* Only the last six dips are asked: a light part behind six heavy ones is put to the first of these, behind seven not. */
static void the_last_six_dips_are_asked(void **state)
{
    (void)state;
    for (size_t heavy = 5; heavy < 8; heavy++) {
        listed l;
        set_up(&l, heavy + 2);
        for (size_t i = 1; i <= heavy; i++)
            l.parts[i].load.mass_kg = 60;
        boil_plan_start(&l.of, BOIL_PLAN_BY_LIST, true, &l.order);
        assert_int_equal(boil_plan_order_size(&l.order, 0), heavy < 6 ? 2 : 1);
        boil_plan_order_free(&l.order);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(each_rule_has_its_order),
        cmocka_unit_test(packed_they_fill_the_dips),
        cmocka_unit_test(the_last_six_dips_are_asked),
    };
    return cmocka_run_group_tests_name("starts", tests, NULL, NULL);
}
