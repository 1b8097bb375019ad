/* A boil that weakens before it is lost: the heat stored below the surface (simulate/recorder.h, properties/hydrostatic.h) as a
   range beside what the run says. Clausius and Clapeyron as there; the values of the store itself: properties/test_hydrostatic.c. */
#include <gsl/gsl_errno.h>

#include "support/close.h"

#include "findings/bands.h"
#include "properties/hydrostatic.h"
#include "support/cases.h"

static boil_run_options each_second(void)
{
    boil_run_options o = boil_run_options_default();
    o.row_interval_s = 1;
    return o;
}

static double below_K(const boil_row *r)
{
    return r->boiling_point_K - r->temperature_K;
}

/* Spent and refilled where the bath, as the trace has it, is dT_f/2 below its boiling point; between them the load is quiet. */
static void quiet_while_the_store_is_spent(void **unused)
{
    (void)unused;
    boil_plant p = open_plant(30e3);
    boil_run_options o = each_second();
    boil_action load = plate_action(60, 6);
    boil_history h = run_actions(&p, 1800, &o, &load, 1);
    const boil_quiet_result *q = &h.quiet[0];
    const boil_load_result *l = &h.loads[0];
    assert_true(q->stored_K > 0.5 && q->stored_K < 1.5);
    assert_true(q->start_s < q->spent_s && q->spent_s < q->refilled_s && q->refilled_s < q->end_s);
    assert_true(below_K(row_at(&h, &o, floor(q->spent_s) - 1)) < q->stored_K);
    assert_true(below_K(row_at(&h, &o, ceil(q->spent_s) + 1)) > q->stored_K);
    assert_true(below_K(row_at(&h, &o, floor(q->refilled_s) - 1)) > q->stored_K);
    assert_true(below_K(row_at(&h, &o, ceil(q->refilled_s) + 1)) < q->stored_K);
    assert_close(l->recovery_stored_s, q->refilled_s - q->spent_s, 1e-12, 0);
    assert_true(l->recovery_stored_s < l->recovery_s);
    boil_history_free(&h);
}

/* A store as deep as the drop is never spent; without a head there is none, and the boil is lost as the run has it. */
static void both_ends(void **unused)
{
    (void)unused;
    boil_plant p = open_plant(30e3);
    boil_run_options o = boil_run_options_default();
    boil_action light = plate_action(60, 1), heavy = plate_action(60, 6);
    p.tank.level_m = 1.2;
    boil_history deep = run_actions(&p, 1800, &o, &light, 1);
    assert_true(deep.loads[0].recovery_s > 0 && isnan(deep.quiet[0].spent_s));
    assert_close(deep.loads[0].recovery_stored_s, 0, 0, 0);
    p.tank.level_m = 0.05;
    boil_history shallow = run_actions(&p, 3600, &o, &heavy, 1);
    assert_true(shallow.loads[0].recovery_s > 0);
    assert_true(shallow.loads[0].recovery_stored_s > 0.97 * shallow.loads[0].recovery_s);
    boil_history_free(&deep);
    boil_history_free(&shallow);
}

/* Who meets a quiet bath is charged from then on only, and a boil that never comes back is told as such. */
static void only_what_is_left_is_charged(void **unused)
{
    (void)unused;
    boil_plant p = open_plant(30e3);
    boil_run_options o = boil_run_options_default();
    boil_action loads[2] = {plate_action(60, 6), plate_action(300, 0.1)};
    boil_history h = run_actions(&p, 3600, &o, loads, 2);
    const boil_quiet_result *q = &h.quiet[0];
    assert_true(h.loads[1].was_quiet);
    assert_close(h.loads[1].recovery_stored_s, q->refilled_s - 300, 1e-9, 0);
    boil_history_free(&h);
    p.heater.input_W = 2e3;
    boil_history cold = run_actions(&p, 1800, &o, loads, 2);
    assert_true(isnan(cold.loads[0].recovery_stored_s) && isnan(cold.loads[0].recovery_s));
    boil_history_free(&cold);
}

/* The band holds every run, and both ends of the store. */
static void the_band_holds_every_run(void **unused)
{
    (void)unused;
    boil_plant p = open_plant(30e3);
    boil_run_options o = boil_run_options_default();
    boil_action load = plate_action(60, 6);
    boil_schedule s;
    boil_run_set set;
    boil_bands b;
    boil_schedule_init(&s, 1800);
    assert_int_equal(boil_schedule_add(&s, &load), BOIL_OK);
    assert_int_equal(boil_run_set_of(&p, &s, &o, &set), BOIL_OK);
    assert_int_equal(boil_bands_of(&set.likely, set.other, set.count, &b), BOIL_OK);
    assert_close(b.recovery_s.likely, set.likely.loads[0].recovery_s, 0, 0);
    assert_true(b.recovery_s.low <= set.likely.loads[0].recovery_stored_s && b.recovery_s.low > 0);
    for (size_t i = 0; i < set.count; i++) {
        const boil_history *h = &set.other[i].history;
        assert_true(b.level_max_m.low <= h->summary.level_max_m.value && h->summary.level_max_m.value <= b.level_max_m.high);
        assert_true(h->loads[0].recovery_s <= b.recovery_s.high && b.recovery_s.low <= h->loads[0].recovery_stored_s);
    }
    assert_true(b.level_max_m.low < b.level_max_m.high);
    const boil_run_of_set refused = {.closures = BOIL_CLOSURES_GRAVE, .refused = true};
    assert_int_equal(boil_bands_of(&set.likely, &refused, 1, &b), BOIL_OK); /* has no figures */
    assert_close(b.level_max_m.low, set.likely.summary.level_max_m.value, 0, 0);
    boil_run_set_free(&set);
    boil_schedule_free(&s);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(quiet_while_the_store_is_spent),
        cmocka_unit_test(both_ends),
        cmocka_unit_test(only_what_is_left_is_charged),
        cmocka_unit_test(the_band_holds_every_run),
    };
    gsl_set_error_handler_off();
    return cmocka_run_group_tests_name("partial boil", tests, NULL, NULL);
}
