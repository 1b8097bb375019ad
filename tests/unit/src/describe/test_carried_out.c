/* What is said of an act that the run never came to: nothing is read behind the last one that it has. */
#include "support/close.h"

#include "describe/carried_out.h"

static void what_the_run_never_came_to_is_not_read(void **state)
{
    (void)state;
    boil_act_result acts[] = {{60, BOIL_ACT_DONE}, {120, BOIL_ACT_LAPSED}};
    const carried_out o = {.central = {.acts = acts, .acts_count = 1}};
    assert_close(carried_out_done_s(&o, 0), 60, 0, 0);
    assert_true(isnan(carried_out_done_s(&o, 1)));
    assert_string_equal(carried_out_why_not(&o, 1), "its time did not come");
    const carried_out both = {.central = {.acts = acts, .acts_count = 2}};
    assert_string_equal(carried_out_why_not(&both, 1), "the next of the same line came first");
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(what_the_run_never_came_to_is_not_read)};
    return cmocka_run_group_tests_name("carried out", tests, NULL, NULL);
}
