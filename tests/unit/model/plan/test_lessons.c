/* What was learned of dips, found again by their parts. */
#include "plan/lessons.h"
#include "support/close.h"

enum { DIPS = 500 };

static boil_plan_lesson about(size_t first, double later_s)
{
    const size_t parts[] = {first, first + 1, 2 * first + 7};
    return (boil_plan_lesson){boil_plan_lesson_key(parts, 3), later_s, 2 * later_s, -later_s, true};
}

static void a_dip_is_known_by_its_parts_in_any_order(void **state)
{
    (void)state;
    const size_t here[] = {0, 3, 5}, there[] = {5, 0, 3}, others[] = {0, 3, 6}, fewer[] = {0, 3};
    assert_true(boil_plan_lesson_key(here, 3) == boil_plan_lesson_key(there, 3));
    assert_true(boil_plan_lesson_key(here, 3) != boil_plan_lesson_key(others, 3));
    assert_true(boil_plan_lesson_key(here, 3) != boil_plan_lesson_key(fewer, 2));
    assert_true(boil_plan_lesson_key(here, 0) != 0);
}

static void assert_known(const boil_plan_lessons *l, size_t count)
{
    assert_int_equal(l->count, count);
    for (size_t i = 0; i < DIPS; i++) {
        boil_plan_lesson asked = about(i, 0), found = boil_plan_lesson_of(l, asked.parts);
        double later_s = i < count ? (double)i + 1 : 0;
        assert_true(found.parts == asked.parts && found.known == (i < count));
        assert_true(found.later_s == later_s && found.more_s == 2 * later_s && found.most_s == -later_s);
    }
}

/* Also as there are many; what is new of a dip takes the place of what was. */
static void what_was_learned_is_found_again(void **state)
{
    (void)state;
    boil_plan_lessons l = {.list = NULL}, copy = {.list = NULL};
    assert_false(boil_plan_lesson_of(NULL, 1).known);
    assert_known(&l, 0);
    for (int times = 0; times < 2; times++)
        for (size_t i = 0; i < DIPS; i++) {
            boil_plan_lesson what = about(i, (double)i + times);
            assert_int_equal(boil_plan_lesson_learn(&l, &what), BOIL_OK);
            assert_true(2 * l.count <= l.room); /* or looking for one would take long, or never end */
        }
    assert_known(&l, DIPS);
    assert_int_equal(boil_plan_lessons_add(&l, &copy), BOIL_OK);
    assert_known(&copy, DIPS);
    boil_plan_lessons_free(&l);
    boil_plan_lessons_free(&copy);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(a_dip_is_known_by_its_parts_in_any_order),
                                       cmocka_unit_test(what_was_learned_is_found_again)};
    return cmocka_run_group_tests_name("lessons", tests, NULL, NULL);
}
