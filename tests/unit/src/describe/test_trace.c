/* How far apart the rows of a picture's run are: no more of them than a day has seconds, and none closer than a second. */
#include "support/close.h"

#include "describe/trace.h"
#include "reading/source.h"

/* A shipped trough that nobody heats, for so long: nothing happens in it. */
static boil_history left_cold(double duration_s)
{
    scenario s;
    messages complaints;
    boil_history h;
    boil_run_options o = boil_run_options_default();
    messages_init(&complaints);
    assert_int_equal(scenario_read("scenarios/normal-shift.bath", &s, &complaints), BOIL_OK);
    messages_free(&complaints);
    s.plant.charge.temperature_K = s.plant.ambient.temperature_K;
    s.plant.heater.dial = 0;
    s.plant.control.mode = BOIL_WATER_CONTROL_NONE;
    s.schedule.count = 0;
    s.schedule.duration_s = duration_s;
    assert_int_equal(trace_of(&s, &o, &h), BOIL_OK);
    scenario_free(&s);
    return h;
}

static void rows_lie_whole_steps_apart(void **state)
{
    (void)state;
    static const struct {
        double duration_s, apart_s;
    } runs[] = {{900, 1}, {86400, 1}, {2 * 86400, 2}, {3 * 86400, 3}};
    for (size_t i = 0; i < sizeof runs / sizeof runs[0]; i++) {
        boil_history h = left_cold(runs[i].duration_s);
        assert_true(h.rows_count > 300 && h.rows_count <= 2000);
        double least_s = HUGE_VAL;
        for (size_t k = 1; k < h.rows_count; k++) {
            assert_close(remainder(h.rows[k].time_s, runs[i].apart_s), 0, 0, 1e-6);
            least_s = fmin(least_s, h.rows[k].time_s - h.rows[k - 1].time_s);
        }
        assert_close(least_s, runs[i].apart_s, 1e-9, 0);
        boil_history_free(&h);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(rows_lie_whole_steps_apart)};
    return cmocka_run_group_tests_name("trace", tests, NULL, NULL);
}
