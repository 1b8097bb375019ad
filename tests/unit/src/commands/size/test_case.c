/* What is sized for: its loads, and how many baskets hang in a tank of which nobody said so. Sizes and gaps are the header's own: judgement. */
#include "support/close.h"

#include "commands/size/answer.h"
#include "support/shipped.h"

#define INCH 0.0254

/* 4 in from either end, baskets of 12 in and 3 in between: 20 in hold one, 35 in hold two, 72 in four. */
static void baskets_hang_along_the_longer_side(void **state)
{
    (void)state;
    static const double sides_in[] = {10, 20, 34.9, 35, 72}, places[] = {1, 1, 1, 2, 4};
    scenario s;
    read_shipped("normal-shift.bath", &s);
    size_case c = {.scenario = &s};
    for (size_t i = 0; i < sizeof places / sizeof places[0]; i++)
        for (int turned = 0; turned < 2; turned++) {
            s.plant.tank.length_m = turned ? 5 * INCH : sides_in[i] * INCH;
            s.plant.tank.width_m = turned ? sides_in[i] * INCH : 5 * INCH;
            size_case_place(&c, 0);
            assert_close(c.plant.tank.positions, places[i], 0, 0);
            assert_true(c.counted);
        }
    size_case_place(&c, 7); /* as it is asked for */
    assert_close(c.plant.tank.positions, 7, 0, 0);
    s.plant.tank.positions = 3; /* as the scenario says */
    size_case_place(&c, 0);
    assert_close(c.plant.tank.positions, 3, 0, 0);
    assert_false(c.counted);
    s.plant.tank.positions = 1; /* one is said as well */
    size_case_place(&c, 0);
    assert_close(c.plant.tank.positions, 1, 0, 0);
    scenario_free(&s);
}

/* 20 degC, or what the room, or the first load of the schedule, is below that. */
static void parts_are_as_cold_as_they_may_be(void **state)
{
    (void)state;
    static const double room_C[] = {30, 5, 30, 5, 5}, load_C[] = {30, 30, 4, 4, 6}, plate_C[] = {20, 5, 4, 4, 5};
    for (size_t i = 0; i < sizeof room_C / sizeof room_C[0]; i++) {
        boil_action load = {.kind = BOIL_ACTION_LOAD, .is.load = {.mass_kg = 10, .temperature_K = 273.15 + load_C[i]}};
        scenario s = {.plant.ambient.temperature_K = 273.15 + room_C[i], .schedule = {.actions = &load, .count = 1}};
        assert_close(size_case_plate(&s, NULL, 0.01).temperature_K, 273.15 + plate_C[i], 1e-12, 0);
    }
}

/* Wherever it stands among what is done: the first is not it. */
static void the_heaviest_load_is_found(void **state)
{
    (void)state;
    boil_action acts[] = {{.kind = BOIL_ACTION_LOAD, .is.load.mass_kg = 20},
                          {.kind = BOIL_ACTION_WATER, .is.water.mass_kg = 90},
                          {.kind = BOIL_ACTION_LOAD, .is.load.mass_kg = 36},
                          {.kind = BOIL_ACTION_LOAD, .is.load.mass_kg = 30}};
    const size_case c = {.load = acts[0].is.load, .schedule = {.actions = acts, .count = 4}};
    assert_close(size_case_heaviest(&c), 36, 0, 0);
    acts[0].is.load.mass_kg = 40;
    assert_close(size_case_heaviest(&c), 40, 0, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(baskets_hang_along_the_longer_side),
        cmocka_unit_test(the_heaviest_load_is_found),
        cmocka_unit_test(parts_are_as_cold_as_they_may_be),
    };
    return cmocka_run_group_tests_name("case of a size", tests, NULL, NULL);
}
