/* Pours that hang on the boil or on a gauge, in a run. */
#include <gsl/gsl_errno.h>

#include "support/close.h"

#include "support/cases.h"

static const double pace_kg_s = 0.05, step_K = 1 / 1.8, step_m = 0.003175;

static boil_action hanging(double time_s, double mass_kg, boil_pour p)
{
    boil_action a = {.time_s = time_s, .kind = BOIL_ACTION_WATER, .pour = p};
    a.is.water = (boil_action_water){mass_kg, mass_kg / pace_kg_s, CELSIUS(20)};
    return a;
}

static boil_run_options each_second(void)
{
    boil_run_options o = boil_run_options_default();
    o.row_interval_s = 1;
    return o;
}

/* A load at 300 s takes the boil of a pour that began at the start: it is shut a reaction later, and goes on once the boil is steady. */
static void a_pour_while_boiling_pauses(void **state)
{
    (void)state;
    boil_plant p = open_plant(34e3);
    boil_run_options o = boil_run_options_default();
    boil_action all[] = {hanging(0, 40, (boil_pour){.while_boiling = true}), plate_action(300, 2)};
    boil_history h = run_actions(&p, 1800, &o, all, 2);
    const boil_addition_result *a = &h.additions[0];
    assert_int_equal(h.quiet_count, 1);
    double paused_s = h.quiet[0].end_s + 30 - (h.quiet[0].start_s + 10);
    assert_int_equal(a->end, BOIL_POUR_ALL_IN);
    assert_close(a->over_s, 40 / pace_kg_s + paused_s, 1e-12, 0);
    assert_close(a->mass_kg, 40, 1e-12, 0);
    assert_close(a->quiet_poured_kg, 10 * pace_kg_s, 1e-9, 0); /* the reaction: 10 s */
    assert_close(h.summary.water_added_kg, 40, 1e-9, 0);
    boil_history_free(&h);
    all[0].pour = (boil_pour){.once = true};
    h = run_actions(&p, 1800, &o, all, 2);
    assert_int_equal(h.additions[0].end, BOIL_POUR_BOIL_LOST);
    assert_close(h.additions[0].over_s, h.quiet[0].start_s + 10, 1e-12, 0);
    assert_close(h.summary.water_added_kg, pace_kg_s * (h.quiet[0].start_s + 10), 1e-9, 0);
    boil_history_free(&h);
}

/* The moment at which the gauge shows it is read off the run's own rows of a second. */
static void water_runs_until_the_gauge_shows_it(void **state)
{
    (void)state;
    boil_plant p = open_plant(34e3);
    boil_run_options o = each_second();
    double start_K, seen_s = 0;
    boil_history h = run_actions(&p, 60, &o, NULL, 0);
    start_K = h.rows[0].boiling_point_K;
    boil_history_free(&h);
    boil_action all[] = {hanging(60, 100, (boil_pour){.goal = BOIL_GOAL_BOILING_POINT, .goal_value = start_K - 1})};
    h = run_actions(&p, 1800, &o, all, 1);
    for (size_t i = 0; i < h.rows_count && seen_s == 0; i++)
        if (h.rows[i].time_s > 60 && h.rows[i].boiling_point_K <= start_K - 1 + step_K / 2)
            seen_s = h.rows[i].time_s;
    assert_int_equal(h.additions[0].end, BOIL_POUR_GOAL);
    assert_close(60 + h.additions[0].over_s, seen_s + 10, 0, 1);
    assert_close(h.additions[0].mass_kg, pace_kg_s * h.additions[0].over_s, 1e-12, 0);
    boil_history_free(&h);
}

static void a_level_is_read_by_the_mark(void **state)
{
    (void)state;
    boil_plant p = open_plant(34e3);
    boil_run_options o = each_second();
    boil_history before = run_actions(&p, 60, &o, NULL, 0);
    const double rises_m = 0.02, starts_m[] = {before.rows[60].still_level_m, before.rows[60].level_m};
    boil_history_free(&before);
    for (int boiling = 0; boiling < 2; boiling++) {
        double goal_m = starts_m[boiling] + rises_m;
        boil_action water = hanging(60, 100, (boil_pour){.goal = BOIL_GOAL_LEVEL, .goal_value = goal_m});
        p.tank.mark_boiling = boiling;
        boil_history h = run_actions(&p, 3600, &o, &water, 1);
        double over_s = h.additions[0].over_s;
        const boil_row *seen = row_at(&h, &o, floor(60 + over_s - 10));
        assert_int_equal(h.additions[0].end, BOIL_POUR_GOAL);
        assert_close(boiling ? seen->level_m : seen->still_level_m, goal_m - step_m / 2, 0, 2e-4);
        boil_history_free(&h);
    }
}

static void what_is_not_reached_says_by_how_much(void **state)
{
    (void)state;
    boil_plant p = open_plant(34e3);
    boil_run_options o = boil_run_options_default();
    boil_action all[] = {hanging(60, 2, (boil_pour){.goal = BOIL_GOAL_LEVEL, .goal_value = 0.6}),
                         hanging(60, 90, (boil_pour){.goal = BOIL_GOAL_LEVEL, .goal_value = 0.4}),
                         hanging(120, 90, (boil_pour){.goal = BOIL_GOAL_LEVEL, .goal_value = 0.6, .no_later_s = 150})};
    boil_history h = run_actions(&p, 100, &o, all, 3);
    assert_int_equal(h.additions_count, 1);
    assert_int_equal(h.additions[0].end, BOIL_POUR_ALL_IN);
    assert_close(h.additions[0].missed_by_m, 0.6 - h.summary.still_level_end_m, 0,
                 2e-4); /* sinks by what boils off in a minute */
    assert_int_equal(h.acts[1].end, BOIL_ACT_NOT_NEEDED);
    boil_history_free(&h);
    h = run_actions(&p, 400, &o, all, 3);
    assert_int_equal(h.additions[1].end, BOIL_POUR_TIME);
    assert_close(h.additions[1].mass_kg, 30 * pace_kg_s, 1e-12, 0);
    boil_history_free(&h);
}

static void the_next_of_a_line_ends_it(void **state)
{
    (void)state;
    boil_plant p = open_plant(34e3);
    boil_run_options o = boil_run_options_default();
    boil_action all[] = {hanging(60, 60, (boil_pour){.while_boiling = true}),
                         hanging(360, 6, (boil_pour){.while_boiling = true})};
    all[0].line = all[1].line = 3;
    boil_history h = run_actions(&p, 900, &o, all, 2);
    assert_int_equal(h.additions[0].end, BOIL_POUR_NEXT);
    assert_close(h.additions[0].mass_kg, 300 * pace_kg_s, 1e-12, 0);
    assert_int_equal(h.additions[1].end, BOIL_POUR_ALL_IN);
    assert_close(h.summary.water_added_kg, 21, 1e-9, 0);
    boil_history_free(&h);
}

/* What still pours as the run ends has been pouring until then, at its pace; it has not ended. */
static void what_still_pours_at_the_end_is_counted(void **state)
{
    (void)state;
    boil_plant p = open_plant(34e3);
    boil_run_options o = boil_run_options_default();
    boil_action all[] = {hanging(60, 90, (boil_pour){.while_boiling = true})};
    boil_history h = run_actions(&p, 300, &o, all, 1);
    assert_int_equal(h.additions_count, 1);
    assert_int_equal(h.additions[0].end, BOIL_POUR_GOES_ON);
    assert_close(h.additions[0].over_s, 240, 1e-12, 0);
    assert_close(h.additions[0].mass_kg, 240 * pace_kg_s, 1e-12, 0);
    assert_close(h.summary.water_added_kg, 240 * pace_kg_s, 1e-9, 0);
    boil_history_free(&h);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_pour_while_boiling_pauses), cmocka_unit_test(water_runs_until_the_gauge_shows_it),
        cmocka_unit_test(a_level_is_read_by_the_mark), cmocka_unit_test(what_is_not_reached_says_by_how_much),
        cmocka_unit_test(the_next_of_a_line_ends_it),  cmocka_unit_test(what_still_pours_at_the_end_is_counted),
    };
    return cmocka_run_group_tests_name("taps", tests, NULL, NULL);
}
