/* What is remarked of a scenario: of the acts that are in it, and of each kind the first. */
#include "support/close.h"

#include <string.h>

#include "describe/remarks.h"
#include "support/shipped.h"

static boil_action water_to(double level_m)
{
    return (boil_action){
        .kind = BOIL_ACTION_WATER, .pour = {.goal = BOIL_GOAL_LEVEL, .goal_value = level_m}, .is.water.mass_kg = 100};
}

/* To raise the level to where it is already lower is told once; what stands behind the schedule is none of it. */
static void water_for_a_lower_level_is_remarked_once(void **state)
{
    (void)state;
    scenario s;
    read_shipped("normal-shift.bath", &s);
    const double level_m = s.plant.tank.level_m;
    boil_action acts[] = {water_to(level_m + 0.05), water_to(level_m - 0.05), water_to(level_m - 0.10)};
    for (size_t count = 0; count <= 3; count++) {
        scenario with = s;
        with.schedule.actions = acts;
        with.schedule.count = count;
        remarks r = remarks_of(&with);
        assert_int_equal(r.count, count >= 2);
        if (r.count > 0)
            assert_non_null(strstr(r.list[0].text, "water raises the level"));
    }
    scenario_free(&s);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(water_for_a_lower_level_is_remarked_once),
    };
    return cmocka_run_group_tests_name("remarks", tests, NULL, NULL);
}
