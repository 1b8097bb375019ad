/* Loads whose time in the bath counts only while it boils. What they had of it is told by the run's own quiet spells, which are found
   without them; and a load that is lifted by the clock at that moment goes through the same run. */
#include <gsl/gsl_errno.h>

#include "support/close.h"

#include "support/cases.h"

#define ASKED_S 600.0

static boil_action at_boil(double time_s, double kg, double latest_s)
{
    boil_action a = plate_action(time_s, kg);
    a.is.load.at_boil = true;
    a.is.load.immersed_s = ASKED_S;
    a.is.load.latest_s = latest_s;
    return a;
}

/* Of the time between two moments, what the quiet spells leave. */
static double boiled_s(const boil_history *h, double from_s, double to_s)
{
    double sum = to_s - from_s;
    for (size_t i = 0; i < h->quiet_count; i++) {
        double end_s = isnan(h->quiet[i].end_s) ? h->end_s : h->quiet[i].end_s;
        sum -= fmax(0, fmin(end_s, to_s) - fmax(h->quiet[i].start_s, from_s));
    }
    return sum;
}

/* It counts from when it is in. */
static double had_s(const boil_history *h, const boil_action *a)
{
    const boil_load_result *l = &h->loads[0];
    double to_s = isnan(l->lifted_s) ? h->end_s : l->lifted_s;
    return boiled_s(h, l->time_s + a->is.load.lowering_s, to_s);
}

static void only_the_boil_counts(void **state)
{
    (void)state;
    boil_plant p = open_plant(34e3);
    boil_run_options o = boil_run_options_default();
    /* a second load stills the bath once more while the first is in */
    boil_action all[] = {at_boil(60, 2, 0), plate_action(400, 3)};
    boil_history h = run_actions(&p, 1800, &o, all, 2);
    assert_true(h.quiet_count >= 2 && h.quiet[1].start_s > 400 && h.quiet[1].end_s < h.loads[0].lifted_s);
    assert_true(h.loads[0].lifted_s > 60 + ASKED_S + 30);
    assert_close(had_s(&h, &all[0]), ASKED_S, 0, 1e-6);
    assert_close(h.loads[0].boil_short_s, 0, 0, 0);
    assert_close(h.balance.energy.closure, 0, 0, 1e-9);
    boil_action clock[] = {plate_action(60, 2), plate_action(400, 3)};
    clock[0].is.load.immersed_s = h.loads[0].lifted_s - 60;
    boil_history same = run_actions(&p, 1800, &o, clock, 2);
    assert_close(same.loads[0].lifted_s, h.loads[0].lifted_s, 1e-12, 0);
    assert_close(same.summary.steam_total_kg, h.summary.steam_total_kg, 1e-6, 0);
    boil_history_free(&h);
    boil_history_free(&same);
}

static void what_is_lifted_before_is_short(void **state)
{
    (void)state;
    boil_plant p = open_plant(34e3);
    boil_run_options o = boil_run_options_default();
    boil_action lift = {.time_s = 500, .kind = BOIL_ACTION_LIFT};
    boil_action latest[] = {at_boil(60, 2, 500)}, lifted[] = {at_boil(60, 2, 0), lift}, ended[] = {at_boil(60, 2, 0)};
    boil_history a = run_actions(&p, 900, &o, latest, 1), b = run_actions(&p, 900, &o, lifted, 2);
    boil_history c = run_actions(&p, 500, &o, ended, 1);
    assert_close(a.loads[0].lifted_s, 500, 0, 0);
    assert_close(b.loads[0].lifted_s, 500, 0, 0);
    assert_true(isnan(c.loads[0].lifted_s));
    const boil_history *each[] = {&a, &b, &c};
    for (int i = 0; i < 3; i++)
        assert_close(each[i]->loads[0].boil_short_s, ASKED_S - had_s(each[i], &latest[0]), 0, 1e-6);
    boil_history_free(&a);
    boil_history_free(&b);
    boil_history_free(&c);
}

/* A bath that does not boil lifts nothing, and gives no load its time. */
static void a_quiet_bath_counts_nothing(void **state)
{
    (void)state;
    boil_plant p = open_plant(34e3);
    p.charge.temperature_K = CELSIUS(100);
    p.heater.dial = 0;
    boil_run_options o = boil_run_options_default();
    boil_action a = at_boil(60, 2, 0);
    boil_history h = run_actions(&p, 3600, &o, &a, 1);
    assert_true(isnan(h.loads[0].lifted_s));
    assert_close(h.loads[0].boil_short_s, ASKED_S, 0, 0);
    boil_history_free(&h);
}

/* One that waits until it is to be out does not go in. */
static void too_late_it_stays_out(void **state)
{
    (void)state;
    boil_plant p = open_plant(34e3);
    boil_run_options o = boil_run_options_default();
    boil_action a = at_boil(0, 2, 20);
    a.wait = (boil_wait){.state = BOIL_WAIT_BOILING, .for_s = 60};
    p.charge.temperature_K = CELSIUS(139);
    boil_history h = run_actions(&p, 3600, &o, &a, 1);
    assert_int_equal(h.loads_count, 0);
    assert_true(isnan(h.acts[0].done_s) && h.acts[0].end == BOIL_ACT_TOO_LATE);
    boil_history_free(&h);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(only_the_boil_counts),
        cmocka_unit_test(what_is_lifted_before_is_short),
        cmocka_unit_test(a_quiet_bath_counts_nothing),
        cmocka_unit_test(too_late_it_stays_out),
    };
    return cmocka_run_group_tests_name("stays", tests, NULL, NULL);
}
