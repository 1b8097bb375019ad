/* The fire under a thermostat: the cycle, overshoot and steady state of a body whose only loss is through its walls, which obey
   C dT/dt = Q - UA (T - room) and are solved by hand; who has the say; what is counted. */
#include <gsl/gsl_errno.h>

#include "support/close.h"

#include "equipment/heat_control.h"
#include "support/cases.h"
#include "support/range.h"

#define UA_W_m2K 20.0

/* Plain water at 80 degC that loses by its walls alone. */
static boil_plant kettle(void)
{
    boil_plant p = pinned_plant();
    p.charge = (boil_initial_charge){{0, 0, 0}, BOIL_INITIAL_BY_SALT_FRACTION, 0, CELSIUS(80)};
    p.losses.wall_coefficient_W_m2K = UA_W_m2K;
    p.heat_control.mode = BOIL_HEAT_CONTROL_THERMOSTAT;
    p.heat_control.set_point_K = CELSIUS(80);
    p.heat_control.differential_K = 2;
    p.heat_control.relight_s = 0;
    p.heat_control.sensor_lag_s = 0;
    return p;
}

/* Heated from below, it loses by the walls up to the level. */
static double conductance(const boil_plant *p)
{
    const boil_tank *t = &p->tank;
    return UA_W_m2K * 2 * (t->length_m + t->width_m) * t->level_m;
}

static double capacity(const boil_plant *p, double temperature_K)
{
    boil_initial_state c;
    assert_int_equal(boil_plant_initial(p, &c), BOIL_OK);
    return boil_solution_heat(&c.mixture, temperature_K).heat_capacity_J_K;
}

static boil_history run_for(const boil_plant *p, double duration_s, double row_s, const boil_action *a, size_t count)
{
    boil_run_options o = boil_run_options_default();
    o.row_interval_s = row_s;
    return run_actions(p, duration_s, &o, a, count);
}

/* The first row from `from` on in which the heat is on, or not; fails when there is none. */
static size_t row_with(const boil_history *h, size_t from, bool on)
{
    for (size_t i = from; i < h->rows_count; i++)
        if ((h->rows[i].heater_W > 0) == on)
            return i;
    fail_msg("the heat never changed");
    return 0;
}

/* On: T rises to room + Q/UA with C/UA; off: it falls to the room with the same. */
static void a_lumped_body_cycles_by_its_time_constant(void **state)
{
    (void)state;
    boil_plant p = kettle();
    double ua = conductance(&p), tau = capacity(&p, CELSIUS(80)) / ua, room = 20;
    double end = room + p.heater.input_W / ua;
    double warms_s = tau * log((end - 79) / (end - 81)), cools_s = tau * log((81 - room) / (79 - room));
    boil_history h = run_for(&p, 4 * (warms_s + cools_s), 0.1, NULL, 0);
    size_t lit = row_with(&h, 0, true), out = row_with(&h, lit, false), again = row_with(&h, out, true);
    assert_close(h.rows[out].time_s - h.rows[lit].time_s, warms_s, 1e-3, 0.1);
    assert_close(h.rows[again].time_s - h.rows[out].time_s, cools_s, 1e-3, 0.1);
    assert_close(h.rows[lit].temperature_K, CELSIUS(79), 0, 0.01);
    assert_close(h.rows[out].temperature_K, CELSIUS(81), 0, 0.01);
    assert_in_range(h.summary.fires_lit, 3, 5);
    boil_history_free(&h);
}

/* Burning out: C dT/dt = Q exp(-t/lag) - UA (T - room). With x = T - room, x(0) = x0:
   x = x0 e^(-t/tau) + Q/C (e^(-t/lag) - e^(-t/tau))/(1/tau - 1/lag); its highest value lies where the derivative is 0. */
static double overshoot(double x0, double heat_K_s, double tau, double lag)
{
    double rate = 1 / tau - 1 / lag, a = heat_K_s / rate, b = x0 - a;
    double t = log(-a * tau / (b * lag)) / (1 / lag - 1 / tau);
    return a * exp(-t / lag) + b * exp(-t / tau);
}

/* Where the temperature turns next: from rising (sign 1) or falling. */
static size_t turn_of(const boil_history *h, size_t i, double sign)
{
    while (i + 1 < h->rows_count && sign * (h->rows[i + 1].temperature_K - h->rows[i].temperature_K) >= 0)
        i++;
    return i;
}

/* The burner's own heat carries it past the threshold; the call that waits for its flame lets it fall short of the other. */
static void lag_overshoots_and_relighting_undershoots(void **state)
{
    (void)state;
    boil_plant p = kettle();
    double ua = conductance(&p), c = capacity(&p, CELSIUS(80)), tau = c / ua, lag = 20, waits = 60;
    p.heat_control.differential_K = 6; /* warmed for many times the lag: the output is full as it is shut off */
    p.heater.lag_s = lag;
    p.heat_control.relight_s = waits;
    boil_history h = run_for(&p, 4 * 3600, 1, NULL, 0);
    size_t hottest = turn_of(&h, turn_of(&h, 0, -1), 1), coldest = turn_of(&h, hottest, -1);
    double hottest_K = CELSIUS(20) + overshoot(63, p.heater.input_W / c, tau, lag);
    assert_close(h.rows[hottest].temperature_K, hottest_K, 0, 2e-3);
    /* while it waits it cools; then the output rises as Q (1 - exp(-t/lag)): less than that by what the lag holds back */
    double at_flame = CELSIUS(20) + 57 * exp(-waits / tau);
    assert_true(h.rows[coldest].temperature_K < at_flame && h.rows[coldest].temperature_K > at_flame - 57 * lag / tau);
    boil_history_free(&h);
}

/* Fire (1 - along (1 - least)) Q = UA (T - room), along = (T - set)/band + 1/2. */
static void a_modulating_fire_comes_to_rest_where_it_balances(void **state)
{
    (void)state;
    boil_plant p = kettle();
    p.heat_control.mode = BOIL_HEAT_CONTROL_MODULATING;
    p.heat_control.band_K = 6;
    p.heat_control.minimum_fire = 0.02;
    p.heat_control.sensor_lag_s = 30;
    p.heater.lag_s = 60;
    double ua = conductance(&p), falls = p.heater.input_W * (1 - 0.02) / 6;
    double rest = (p.heater.input_W + falls * (80 - 3) + ua * 20) / (ua + falls);
    boil_history h = run_for(&p, 12 * 3600, 60, NULL, 0);
    assert_in_range((long)(1000 * rest), 77000, 83000);
    assert_close(h.summary.temperature_end_K, CELSIUS(rest), 0, 1e-3);
    assert_int_equal(h.summary.fires_lit, 1);
    boil_history_free(&h);
}

/* A turndown that still burns more than is lost goes out above the band and lights again at the set point. */
static void too_small_a_turndown_goes_out_and_lights_again(void **state)
{
    (void)state;
    boil_plant p = kettle();
    p.heat_control.mode = BOIL_HEAT_CONTROL_MODULATING;
    p.heat_control.minimum_fire = 0.5;
    p.heat_control.band_K = 3;
    boil_history h = run_for(&p, 6 * 3600, 1, NULL, 0);
    size_t lit = row_with(&h, 0, true), out = row_with(&h, lit, false), again = row_with(&h, out, true);
    assert_close(h.rows[out].temperature_K, CELSIUS(83), 0, 0.01);
    assert_close(h.rows[out - 1].heater_W, 0.5 * p.heater.input_W, 1e-9, 0);
    assert_close(h.rows[again].temperature_K, CELSIUS(80), 0, 0.01);
    boil_history_free(&h);
}

static boil_action order(double time_s, boil_heat_order order, double number)
{
    boil_action a = {.time_s = time_s, .kind = BOIL_ACTION_HEAT};
    a.is.heat = (boil_action_heat){order, number, number};
    return a;
}

/* Below the boiling point: the boil goes out and stays out; a load then meets a bath that the thermostat stilled. */
static void a_thermostat_below_the_boil_stills_it(void **state)
{
    (void)state;
    boil_plant p = open_plant(60e3);
    boil_action set_back[] = {order(600, BOIL_HEAT_THERMOSTAT, CELSIUS(120)), plate_action(1800, 1)};
    boil_history h = run_for(&p, 3 * 3600, 30, set_back, 2);
    assert_int_equal(h.summary.thermostat_stilled, 1);
    assert_int_equal(h.summary.thermostat_met, 1);
    assert_true(h.quiet[0].by_thermostat && h.quiet[0].cause == BOIL_QUIET_HEAT);
    assert_close(h.summary.temperature_end_K, CELSIUS(120), 0, 2);
    boil_history_free(&h);
    p.heat_control.mode = BOIL_HEAT_CONTROL_THERMOSTAT; /* and where it stands below from the start */
    p.heat_control.set_point_K = CELSIUS(120);
    h = run_for(&p, 600, 30, NULL, 0);
    assert_true(h.quiet[0].by_thermostat && h.quiet[0].met == 0);
    assert_close(h.summary.heater_total_J, 0, 0, 0);
    boil_history_free(&h);
}

/* Above the boiling point it is full fire, and the run that of the dial, but for steps that a thermometer in use keeps shorter. */
static void a_thermostat_above_the_boil_does_nothing(void **state)
{
    (void)state;
    boil_plant p = open_plant(60e3);
    boil_history by_dial = run_for(&p, 3600, 60, NULL, 0);
    p.heat_control.mode = BOIL_HEAT_CONTROL_THERMOSTAT;
    p.heat_control.set_point_K = CELSIUS(190);
    boil_history h = run_for(&p, 3600, 60, NULL, 0);
    assert_close(h.summary.steam_total_kg, by_dial.summary.steam_total_kg, 1e-7, 0);
    assert_close(h.summary.temperature_end_K, by_dial.summary.temperature_end_K, 0, 1e-5);
    boil_history_free(&h);
    boil_history_free(&by_dial);
}

/* The dial takes over and is taken over; "on" gives back to the control that the plant has. */
static void whoever_was_ordered_last_has_the_say(void **state)
{
    (void)state;
    boil_plant p = kettle();
    p.heat_control.set_point_K = CELSIUS(60);
    boil_action orders[] = {order(100, BOIL_HEAT_TURN, 0.5), order(200, BOIL_HEAT_THERMOSTAT, CELSIUS(95)),
                            order(300, BOIL_HEAT_DIAL, 0),   order(400, BOIL_HEAT_ON, 1),
                            order(500, BOIL_HEAT_TURN, 0),   order(600, BOIL_HEAT_THERMOSTAT, CELSIUS(95))};
    const double share[] = {0, 0.5, 1, 0.5, 0, 0, 1};
    boil_history h = run_for(&p, 700, 10, orders, sizeof orders / sizeof orders[0]);
    for (size_t i = 0; i < sizeof share / sizeof share[0]; i++)
        assert_close(h.rows[10 * i + 5].heater_W, share[i] * p.heater.input_W, 1e-12, 0);
    boil_history_free(&h);
}

static void a_high_limit_puts_the_heat_out_until_it_is_switched_on(void **state)
{
    (void)state;
    boil_plant p = kettle();
    p.heat_control.mode = BOIL_HEAT_CONTROL_DIAL;
    p.heat_control.high_limit_K = CELSIUS(82);
    double heats_s = 2 * capacity(&p, CELSIUS(81)) / (p.heater.input_W - conductance(&p) * 61);
    boil_action orders[] = {order(2 * heats_s, BOIL_HEAT_TURN, 1), order(8000, BOIL_HEAT_ON, 1)};
    boil_history h = run_for(&p, 9000, 10, orders, 2);
    assert_close(h.summary.high_limit_s, heats_s, 2e-3, 0);
    assert_true(h.rows[790].heater_W == 0 && h.rows[810].heater_W == p.heater.input_W);
    boil_history_free(&h);
}

/* A bath that grows stronger creeps towards its limit at half a hundredth of a degree a second: a thermometer that is a few
   thousandths off trips a second off. The exact moment is that of steps a thousand times finer. */
static void a_limit_that_is_crept_upon_trips_at_its_moment(void **state)
{
    (void)state;
    boil_plant p = open_plant(105e3);
    p.heat_control.mode = BOIL_HEAT_CONTROL_DIAL;
    p.heat_control.sensor_lag_s = 30;
    p.heat_control.high_limit_K = CELSIUS(144);
    boil_run_options o = boil_run_options_default();
    boil_history h = run_actions(&p, 1800, &o, NULL, 0);
    o.tolerance /= 1000;
    boil_history fine = run_actions(&p, 1800, &o, NULL, 0);
    assert_in_range(fine.summary.high_limit_s, 600, 1700);
    assert_close(h.summary.high_limit_s, fine.summary.high_limit_s, 0, 0.05);
    boil_history_free(&fine);
    boil_history_free(&h);
}

static void a_control_refuses_what_is_out_of_range(void **state)
{
    (void)state;
    boil_heat_control c = boil_heat_control_default(BOIL_HEAT_GAS);
    assert_null(boil_heat_control_problem(&c));
    assert_non_null(boil_heat_control_problem(NULL));
    c.mode = BOIL_HEAT_CONTROL_MODULATING;
    ASSERT_RANGE(c, boil_heat_control_problem, set_point_K, 273, 273.15, 473.15, 474, "set point", "273.15 K and 473.15 K");
    ASSERT_RANGE(c, boil_heat_control_problem, differential_K, 0.05, 0.1, 50, 51, "differential", "0.1 K and 50 K");
    ASSERT_RANGE(c, boil_heat_control_problem, band_K, 0.1, 0.2, 50, 51, "band", "0.2 K and 50 K");
    ASSERT_RANGE(c, boil_heat_control_problem, minimum_fire, -0.1, 0, 1, 1.1, "minimum fire", "0 and 1");
    ASSERT_RANGE(c, boil_heat_control_problem, sensor_lag_s, -1, 0, 600, 601, "sensor lag", "0 s and 600 s");
    ASSERT_RANGE(c, boil_heat_control_problem, relight_s, -1, 0, 600, 601, "relight", "0 s and 600 s");
    ASSERT_RANGE(c, boil_heat_control_problem, high_limit_K, 273, 273.15, 573.15, 574, "high limit", "273.15 K and 573.15 K");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_lumped_body_cycles_by_its_time_constant),
        cmocka_unit_test(lag_overshoots_and_relighting_undershoots),
        cmocka_unit_test(a_modulating_fire_comes_to_rest_where_it_balances),
        cmocka_unit_test(too_small_a_turndown_goes_out_and_lights_again),
        cmocka_unit_test(a_thermostat_below_the_boil_stills_it),
        cmocka_unit_test(a_thermostat_above_the_boil_does_nothing),
        cmocka_unit_test(whoever_was_ordered_last_has_the_say),
        cmocka_unit_test(a_high_limit_puts_the_heat_out_until_it_is_switched_on),
        cmocka_unit_test(a_limit_that_is_crept_upon_trips_at_its_moment),
        cmocka_unit_test(a_control_refuses_what_is_out_of_range),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
