/* What the search knows of a bath and of a part, by the definitions of model/planning/probe.h from runs made here. */
#include "support/close.h"

#include "analysis/pour_rate.h"
#include "plan/parts.h"
#include "planning/probe.h"
#include "simulate/run.h"
#include "support/cases.h"

#define BAND_K 5.0

static boil_plant banded(void)
{
    boil_plant p = planned_trough(97e3, 2);
    p.limits.boiling_point_low_K = p.charge.value - BAND_K;
    p.limits.boiling_point_high_K = p.charge.value + BAND_K;
    return p;
}

static boil_plan_bath probed(const boil_plant *p, double water_kg_s)
{
    boil_run_options o = boil_run_options_default();
    boil_plan_problem of = {.positions = 2, .hoist_s = 60, .settle_s = 60, .end_s = HUGE_VAL, .water_kg_s = water_kg_s};
    boil_plan_bath b;
    double bath_K;
    assert_int_equal(boil_plan_probe_bath(p, &of, &o, &b, &bath_K), BOIL_OK);
    assert_close(bath_K, p->charge.value, 1e-9, 0);
    return b;
}

/* A load after a minute, none where it is NULL: what a run makes of it. */
static boil_summary run(const boil_plant *p, const boil_load *l, double for_s, boil_closures by, boil_load_result *r)
{
    boil_run_options o = boil_run_options_default();
    boil_schedule s;
    boil_history h;
    boil_action a = {.kind = BOIL_ACTION_LOAD, .time_s = 60};
    o.closures = by;
    boil_schedule_init(&s, for_s);
    if (l != NULL) {
        a.is.load = *l;
        assert_int_equal(boil_schedule_add(&s, &a), BOIL_OK);
    }
    assert_int_equal(boil_run(p, &s, &o, &h), BOIL_OK);
    boil_summary summary = h.summary;
    if (l != NULL)
        *r = h.loads[0];
    boil_history_free(&h);
    boil_schedule_free(&s);
    return summary;
}

/* Quarter-inch plates as warm as the room. */
static boil_plan_part plate(const boil_plant *p, double mass_kg)
{
    boil_plan_part part = {.of = 1, .load = boil_load_default()};
    part.load.mass_kg = mass_kg;
    part.load.size_m = 0.00635;
    part.load.temperature_K = p->ambient.temperature_K;
    boil_plan_part_estimate(&part, p->charge.value);
    return part;
}

static void two_numbers_come_from_three_plates(void **state)
{
    (void)state;
    const double shares[] = {0.4, 0.8, 1.1};
    double heat[3], back[3];
    boil_plant p = banded();
    boil_plan_bath b = probed(&p, 0);
    double for_s = 60 + 1200 + 2 * p.limits.recovery_s;
    boil_summary last = {.vented_total_kg = 0}, still = run(&p, NULL, 1200, BOIL_CLOSURES_LIKELY, NULL);
    for (int i = 0; i < 3; i++) {
        boil_plan_part part = plate(&p, shares[i] * b.most_kg);
        boil_load_result r;
        last = run(&p, &part.load, for_s, BOIL_CLOSURES_SUDDEN, &r);
        heat[i] = part.heat_J;
        back[i] = r.recovery_s;
    }
    double quiet_W = (heat[2] - heat[0]) / (back[2] - back[0]), off_kg_s = still.vented_total_kg / 1200;
    assert_close(b.quiet_W, quiet_W, 1e-9, 0);
    assert_close(b.offset_s, back[1] - heat[1] / quiet_W, 1e-9, 1e-9);
    assert_close(b.boils_off_kg_s, off_kg_s, 1e-9, 0);
    assert_close(b.dries_kg_s, off_kg_s - (off_kg_s * for_s - last.vented_total_kg) / back[2], 1e-9, 0);
    assert_true(b.dries_kg_s > 0 && b.dries_kg_s < b.boils_off_kg_s);
}

static void what_the_plant_says_is_taken_over(void **state)
{
    (void)state;
    boil_plant p = banded();
    boil_initial_state s;
    boil_plan_bath b = probed(&p, 0);
    assert_int_equal(boil_plant_initial(&p, &s), BOIL_OK);
    assert_true(b.limit_s == p.limits.recovery_s && b.steady_s == p.by_hand.steady_s && b.guard_s == 75 && !b.valve);
    assert_close(b.most_kg, p.limits.load_per_volume_kg_m3 * s.volume_m3, 1e-12, 0);
    assert_true(b.ready_s == 0 && b.flow_kg_s == 0 && b.missing_kg == 0 && b.outside_K == 0);
    assert_close(b.fire_W, p.heater.input_W, 1e-9, 0);
    assert_true(b.efficiency == p.heater.efficiency && b.calm_W == 0);
    p.heat_control.mode = BOIL_HEAT_CONTROL_THERMOSTAT;
    p.heat_control.set_point_K = p.charge.value + 4;
    p.heat_control.differential_K = 2;
    b = probed(&p, 0);
    assert_close(b.calm_W, (p.heater.input_W * p.heater.efficiency - b.quiet_W) / p.heater.efficiency, 1e-9, 0);
}

/* So much water lost, the bath boils 85 % of the way up its band; where nobody said a band there is no end to it. */
static void the_room_of_the_band_is_water(void **state)
{
    (void)state;
    boil_plant p = banded();
    boil_initial_state s;
    boil_plan_bath b = probed(&p, 0);
    boil_conditions c = boil_conditions_at(p.ambient.pressure_Pa, p.elevation_factor);
    double T;
    assert_int_equal(boil_plant_initial(&p, &s), BOIL_OK);
    s.mixture.water -= b.strongest_kg;
    assert_int_equal(boil_solution_boiling_point(&c, &s.mixture, &T), BOIL_OK);
    assert_close(T, p.charge.value + 0.85 * BAND_K, 0, 1e-6);
    p.limits.boiling_point_high_K = p.charge.value - 1;
    assert_close(probed(&p, 0).outside_K, 1, 0, 1e-9);
    p.limits.boiling_point_high_K = 0;
    assert_true(isinf(probed(&p, 0).strongest_kg));
    p.limits.boiling_point_low_K = p.charge.value + 2;
    assert_close(probed(&p, 0).outside_K, -2, 0, 1e-9);
}

/* No more than may be poured, and no more than what ten minutes of it may be poured at. */
static void a_pour_is_as_fast_as_it_may(void **state)
{
    (void)state;
    boil_plant p = banded();
    boil_run_options o = boil_run_options_default();
    boil_pour_rate fastest;
    const double hose_kg_s = 0.2;
    boil_action a =
        boil_pour_rate_action(BOIL_ACTION_WATER, 600 * hose_kg_s, p.charge.blend, 0, fmax(p.ambient.temperature_K, 273.15));
    assert_true(probed(&p, 0.001).flow_kg_s == 0.001);
    assert_int_equal(boil_pour_rate_fastest(&p, &a, 0, &o, &fastest), BOIL_OK);
    assert_true(fastest.rate_kg_s < hose_kg_s);
    assert_close(probed(&p, hose_kg_s).flow_kg_s, fastest.rate_kg_s, 1e-9, 0);
    p.control = (boil_water_control){.mode = BOIL_WATER_CONTROL_ON_OFF,
                                     .set_point_K = p.charge.value,
                                     .differential_K = 1,
                                     .rate_kg_s = 0.05,
                                     .water_K = 290};
    boil_plan_bath b = probed(&p, hose_kg_s);
    assert_true(b.valve && b.flow_kg_s == 0);
}

static void a_quiet_bath_is_ready_when_it_boils(void **state)
{
    (void)state;
    boil_plant p = banded();
    boil_plan_bath hot = probed(&p, 0);
    p.charge.temperature_K = p.charge.value - 8;
    boil_plan_bath b = probed(&p, 0);
    boil_summary s = run(&p, NULL, 7200, BOIL_CLOSURES_LIKELY, NULL);
    assert_true(s.time_to_boil_s > 60);
    assert_close(b.ready_s, s.time_to_boil_s, 1e-6, 0);
    assert_close(b.quiet_W, hot.quiet_W, 1e-9, 0); /* of what it is once it is up */
}

/* Hot as the likely run has it; and the heat by which the two numbers give how long its boil was away. */
static void a_part_is_probed_by_itself(void **state)
{
    (void)state;
    boil_run_options o = boil_run_options_default();
    boil_plant p = banded();
    boil_plan_bath b = probed(&p, 0);
    boil_plan_part part = plate(&p, 30), light = plate(&p, 0.01);
    boil_load_result likely, sudden;
    double for_s = 60 + fmax(900, 6 * part.lag_s) + 2 * b.limit_s;
    run(&p, &part.load, for_s, BOIL_CLOSURES_LIKELY, &likely);
    run(&p, &part.load, for_s, BOIL_CLOSURES_SUDDEN, &sudden);
    assert_int_equal(boil_plan_probe_part(&p, &b, &o, &part), BOIL_OK);
    assert_close(part.hot_s, likely.hot_s, 1e-9, 0);
    assert_close(b.offset_s + part.heat_J / b.quiet_W, sudden.recovery_s, 1e-9, 0);
    double heat_J = light.heat_J;
    assert_int_equal(boil_plan_probe_part(&p, &b, &o, &light), BOIL_OK);
    assert_true(light.heat_J == heat_J); /* it never stopped the boil */
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(two_numbers_come_from_three_plates),  cmocka_unit_test(what_the_plant_says_is_taken_over),
        cmocka_unit_test(the_room_of_the_band_is_water),       cmocka_unit_test(a_pour_is_as_fast_as_it_may),
        cmocka_unit_test(a_quiet_bath_is_ready_when_it_boils), cmocka_unit_test(a_part_is_probed_by_itself),
    };
    return cmocka_run_group_tests_name("probe", tests, NULL, NULL);
}
