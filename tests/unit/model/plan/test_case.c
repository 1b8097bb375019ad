/* What may hang together, each limit by hand and at the limit itself. */
#include "plan/case.h"
#include "support/close.h"

/* Two baskets of 18 and 2 kg, hot after 600 s, for 300 to 400 s; 40 kW, and a boil that may be away 100 s and is back 3 s sooner than heat
   over power: with 97 % of that, 4 MJ a dip. */
typedef struct {
    boil_plan_job jobs[2];
    boil_plan_part parts[2];
    boil_plan_problem problem;
    boil_plan_bath bath;
    boil_plan_case of;
} pair;

static void set_up(pair *p)
{
    *p = (pair){.problem = {.jobs = p->jobs, .jobs_count = 2}};
    for (size_t i = 0; i < 2; i++) {
        p->jobs[i] = (boil_plan_job){.load = {.mass_kg = 18, .basket_kg = 2}, .least_s = 300, .most_s = 400, .may_share = true};
        p->parts[i] = (boil_plan_part){.job = i, .of = 1, .load = p->jobs[i].load, .heat_J = 1e6, .hot_s = 600};
    }
    p->bath = (boil_plan_bath){.limit_s = 100, .quiet_W = 40e3, .offset_s = -3, .most_kg = 40};
    p->of = (boil_plan_case){&p->problem, &p->bath, p->parts, 2, NULL};
}

static bool shares(const pair *p)
{
    return boil_plan_may_share(&p->of, (const size_t[]){0}, 1, 1);
}

static void a_dip_bears_what_lets_the_boil_come_back(void **state)
{
    (void)state;
    pair p;
    set_up(&p);
    assert_close(boil_plan_most_heat(&p.bath), 40e3 * (97 + 3), 1e-12, 0);
    p.bath.slower = 0.25;
    assert_close(boil_plan_most_heat(&p.bath), 40e3 * (97 / 1.25 + 3), 1e-12, 0);
    assert_close(boil_plan_part_mass(&p.parts[0]), 20, 1e-12, 0);
    assert_true(boil_plan_job_of(&p.of, 1) == &p.jobs[1]);
}

static void parts_share_within_each_limit(void **state)
{
    (void)state;
    pair p;
    set_up(&p);
    assert_true(shares(&p)); /* 40 kg of 40 */
    p.parts[0].load.basket_kg = 2.5;
    assert_false(shares(&p));
    set_up(&p);
    p.parts[0].heat_J = boil_plan_most_heat(&p.bath) - 1e6;
    assert_true(shares(&p));
    p.parts[0].heat_J += 1;
    assert_false(shares(&p));
    set_up(&p);
    p.parts[0].hot_s = 500; /* it has had its most as the other has its least */
    assert_true(shares(&p));
    p.parts[0].hot_s = 499;
    assert_false(shares(&p));
    for (size_t i = 0; i < 2; i++) {
        set_up(&p);
        p.jobs[i].may_share = false;
        assert_false(shares(&p));
    }
}

/* An empty dip takes whatever there is. */
static void alone_anything_hangs(void **state)
{
    (void)state;
    pair p;
    set_up(&p);
    p.parts[1].load.mass_kg = 1000;
    p.jobs[1].may_share = false;
    assert_true(boil_plan_may_share(&p.of, NULL, 0, 1));
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(a_dip_bears_what_lets_the_boil_come_back),
                                       cmocka_unit_test(parts_share_within_each_limit), cmocka_unit_test(alone_anything_hangs)};
    return cmocka_run_group_tests_name("case", tests, NULL, NULL);
}
