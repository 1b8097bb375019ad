/* Water that floats as the run begins: it counts, it is what was poured a moment before, and the whole set judges it. */
#include <gsl/gsl_errno.h>
#include <string.h>

#include "support/close.h"

#include "findings/findings.h"
#include "support/cases.h"
#include "support/range.h"

static boil_plant afloat_plant(double kg)
{
    boil_plant p = low_plant();
    p.charge.temperature_K = CELSIUS(132);
    p.afloat = (boil_water_afloat){kg, CELSIUS(20)};
    return p;
}

static void what_floats_counts(void **state)
{
    (void)state;
    boil_plant p = afloat_plant(5), without = afloat_plant(0);
    boil_initial_state bath;
    assert_int_equal(boil_plant_initial(&p, &bath), BOIL_OK);
    boil_run_options o = boil_run_options_default();
    o.row_interval_s = 10;
    boil_history h = run_actions(&p, 3600, &o, NULL, 0), dry = run_actions(&without, 3600, &o, NULL, 0);
    assert_close(h.balance.water.start_kg, bath.mixture.water + 5, 1e-12, 0);
    assert_close(h.rows[0].layer_kg, 5, 1e-12, 0);
    assert_close(h.rows[0].layer_K, CELSIUS(20), 0, 1e-6);
    assert_close(h.rows[0].still_level_m - dry.rows[0].still_level_m, 5 / boil_water_density(CELSIUS(20)) / 0.9, 1e-9, 0);
    assert_true(h.balance.water.by_hand_kg == 0 && h.balance.energy.with_water_J == 0);
    boil_history_free(&h);
    boil_history_free(&dry);
}

/* Poured within a second onto the same bath: the same thing, but for that second. */
static void it_is_as_if_just_poured(void **state)
{
    (void)state;
    boil_plant p = afloat_plant(5), poured = afloat_plant(0);
    boil_action water = {.time_s = 0, .kind = BOIL_ACTION_WATER, .is.water = {5, 1, CELSIUS(20)}};
    boil_run_options o = boil_run_options_default();
    boil_history a = run_actions(&p, 3600, &o, NULL, 0), b = run_actions(&poured, 3600, &o, &water, 1);
    assert_close(a.quiet[0].end_s, b.quiet[0].end_s, 5e-3, 0);
    assert_close(a.quiet[0].layer_at_return_kg, b.quiet[0].layer_at_return_kg, 2e-2, 0);
    assert_close(a.summary.level_max_m.value, b.summary.level_max_m.value, 2e-2, 0);
    boil_history_free(&a);
    boil_history_free(&b);
}

/* A bath at its boil begins quiet under it, and boils at once. */
static void a_bath_at_its_boil_takes_it_in(void **state)
{
    (void)state;
    boil_plant p = afloat_plant(1);
    p.charge.temperature_K = 0;
    boil_run_options o = boil_run_options_default();
    boil_history h = run_actions(&p, 600, &o, NULL, 0);
    assert_true(h.quiet_count > 0 && h.quiet[0].start_s == 0 && h.quiet[0].end_s < 120);
    assert_int_equal(h.end, BOIL_RUN_DONE);
    boil_history_free(&h);
}

static void the_whole_set_judges_it(void **state)
{
    (void)state;
    boil_plant p = afloat_plant(5);
    boil_schedule s;
    boil_run_set set;
    boil_findings likely, possible;
    bool found = false;
    boil_run_options o = boil_run_options_default();
    boil_schedule_init(&s, 3600);
    assert_int_equal(boil_run_set_of(&p, &s, &o, &set), BOIL_OK);
    for (size_t i = 0; i < set.count; i++)
        assert_true(set.other[i].refused || set.other[i].history.quiet[0].layer_s == 0);
    assert_int_equal(boil_findings_of(&p, &s, NULL, &set.likely, set.other, set.count, &likely, &possible), BOIL_OK);
    for (size_t i = 0; i < likely.count; i++)
        found = found || (strcmp(likely.list[i].id, "water-layer") == 0 && likely.list[i].severity == BOIL_SEVERITY_DANGER);
    assert_true(found);
    boil_findings_free(&likely);
    boil_findings_free(&possible);
    boil_run_set_free(&set);
}

static void it_must_be_liquid_water(void **state)
{
    (void)state;
    boil_plant p = afloat_plant(5);
    ASSERT_RANGE(p, boil_plant_problem, afloat.temperature_K, 273, 273.15, 373.12, 373.2, "water afloat",
                 "boiling point of water");
    ASSERT_RANGE(p, boil_plant_problem, afloat.mass_kg, -1, 0, 1e4, 1.1e4, "water afloat", "0 kg and 1e4 kg");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_floats_counts),
        cmocka_unit_test(it_is_as_if_just_poured),
        cmocka_unit_test(a_bath_at_its_boil_takes_it_in),
        cmocka_unit_test(the_whole_set_judges_it),
        cmocka_unit_test(it_must_be_liquid_water),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
