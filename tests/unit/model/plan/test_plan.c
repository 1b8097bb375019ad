/* What is no problem to plan, and what is wrong with it. */
#include "support/close.h"

#include "lists.h"

static void breaks_lie_one_behind_the_other(void **state)
{
    (void)state;
    static const char wrong[] = "breaks must be in the order of time, none over another";
    boil_break breaks[] = {{0, 10}, {20, 40}, {40, 50}};
    drawn_list l;
    draw_list(&l, 1, LIST_JOBS);
    l.problem.breaks = breaks;
    l.problem.breaks_count = 3;
    assert_null(boil_plan_problem_wrong(&l.problem)); /* one may begin as another ends */
    breaks[2].from_s = 39;                            /* over the second, though behind the first */
    assert_string_equal(boil_plan_problem_wrong(&l.problem), wrong);
    breaks[2] = (boil_break){5, 15};
    assert_string_equal(boil_plan_problem_wrong(&l.problem), wrong);
    breaks[2] = (boil_break){40, 40};
    assert_string_equal(boil_plan_problem_wrong(&l.problem), wrong);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(breaks_lie_one_behind_the_other)};
    return cmocka_run_group_tests_name("plan", tests, NULL, NULL);
}
