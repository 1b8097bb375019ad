/* The run against an independent integration of the same equations: classical fourth-order
   Runge-Kutta with fixed small steps and its own event search by bisection to 1e-9 s; no adaptive steps, no recorder. And the
   mutation that proves the energy balance can fail. */
#include <gsl/gsl_errno.h>
#include <string.h>

#include "support/close.h"

#include "properties/water.h"
#include "bath/modes.h"
#include "bath/rates.h"
#include "support/cases.h"

#define MOST 64

/* A cold start every time: nothing may depend on what was evaluated before. */
static void rates_at(const boil_bath *b, double t, const double y[], boil_rates_view *v, double dydt[])
{
    boil_rates_tables tables = {0};
    boil_rates_guess guess = boil_rates_guess_at(y[BOIL_STATE_SENSOR], &tables);
    assert_int_equal(boil_rates_at(b, t, y, &guess, v, dydt), BOIL_OK);
}

static void start(boil_bath *b, const boil_plant *p, double y[])
{
    boil_rates_tables tables;
    boil_rates_guess guess;
    assert_int_equal(boil_modes_start(b, p, y, &tables, &guess), BOIL_OK);
}

static void add(size_t n, const double y[], double h, const double k[], double out[])
{
    for (size_t i = 0; i < n; i++)
        out[i] = y[i] + h * k[i];
}

static void rk4(boil_bath *b, double t, double h, double y[])
{
    size_t n = boil_bath_unknowns(b);
    boil_rates_view v;
    double k1[MOST], k2[MOST], k3[MOST], k4[MOST], s[MOST];
    rates_at(b, t, y, &v, k1);
    add(n, y, h / 2, k1, s);
    rates_at(b, t + h / 2, s, &v, k2);
    add(n, y, h / 2, k2, s);
    rates_at(b, t + h / 2, s, &v, k3);
    add(n, y, h, k3, s);
    rates_at(b, t + h, s, &v, k4);
    for (size_t i = 0; i < n; i++)
        y[i] += h / 6 * (k1[i] + 2 * k2[i] + 2 * k3[i] + k4[i]);
}

static double mode_guard(boil_bath *b, double t, const double y[])
{
    boil_rates_view v, bubbleless;
    double g[BOIL_GUARDS], without[MOST];
    memcpy(without, y, boil_bath_unknowns(b) * sizeof(double));
    without[BOIL_STATE_STEAM_HELD] = 0;
    rates_at(b, t, y, &v, NULL);
    rates_at(b, t, without, &bubbleless, NULL);
    boil_modes_guards(b, &v, boil_modes_boils_by(&v, boil_modes_is_in_doubt(&v) ? &bubbleless : NULL), g);
    return g[BOIL_GUARD_MODE];
}

/* Integrate to `end`, changing mode where it falls; the times of change go to changes[]. */
static size_t integrate(boil_bath *b, double t, double end, double step, double y[], double changes[])
{
    size_t n = boil_bath_unknowns(b), count = 0;
    while (t < end - 1e-9) {
        double h = fmin(step, end - t), saved[MOST];
        memcpy(saved, y, n * sizeof(double));
        double before = mode_guard(b, t, y);
        rk4(b, t, h, y);
        if (before < -1e-10 && mode_guard(b, t + h, y) >= 0) {
            double low = 0, high = h;
            while (high - low > 1e-9) {
                double middle = (low + high) / 2;
                memcpy(y, saved, n * sizeof(double));
                rk4(b, t, middle, y);
                *(mode_guard(b, t + middle, y) >= 0 ? &high : &low) = middle;
            }
            memcpy(y, saved, n * sizeof(double));
            rk4(b, t, high, y);
            h = high;
            boil_rates_view v;
            rates_at(b, t + h, y, &v, NULL);
            boil_modes_change(b, y, &v, !b->boiling);
            changes[count++] = t + h;
        }
        t += h;
    }
    return count;
}

static void put_in(boil_bath *b, const boil_load *l, boil_bath_body *slot, double y[])
{
    *slot = (boil_bath_body){.body = boil_load_parts(l),
                             .coefficient_W_m2K = l->coefficient_W_m2K,
                             .displaced_m3 = boil_load_displaced(l),
                             .entry_K = l->temperature_K,
                             .in_end_s = l->lowering_s,
                             .out_start_s = (double)INFINITY,
                             .out_end_s = (double)INFINITY};
    b->bodies = slot;
    b->bodies_count = 1;
    boil_conduction_init(&slot->body, l->temperature_K, y + BOIL_STATE_FIXED);
}

static void run_agrees_with_fixed_steps(void **state)
{
    (void)state;
    boil_plant p = open_plant(34e3);
    boil_run_options o = boil_run_options_default();
    boil_action a = plate_action(0, 2);
    a.is.load.coefficient_W_m2K = 0;
    a.is.load.size_m = 0.04;
    boil_history h = run_actions(&p, 900, &o, &a, 1);
    boil_bath b;
    boil_bath_body body;
    double y[MOST], changes[8];
    start(&b, &p, y);
    put_in(&b, &a.is.load, &body, y);
    size_t count = integrate(&b, 0, a.is.load.lowering_s, 0.05, y, changes);
    count += integrate(&b, a.is.load.lowering_s, 900, 0.05, y, changes + count);
    boil_rates_view v;
    rates_at(&b, 900, y, &v, NULL);
    assert_int_equal(count, 2);
    assert_int_equal(h.mode_changes, 2);
    print_message("boil lost %.6f s (fixed steps %.6f), back %.6f (%.6f), temperature at the end %.8f K (%.8f)\n",
                  h.quiet[0].start_s, changes[0], h.quiet[0].end_s, changes[1], h.summary.temperature_end_K,
                  v.solution.temperature_K);
    assert_close(h.quiet[0].start_s, changes[0], 1e-5, 1e-5);
    assert_close(h.quiet[0].end_s, changes[1], 1e-5, 0);
    assert_close(h.summary.temperature_end_K, v.solution.temperature_K, 1e-5, 0);
    assert_close(h.summary.bath_mass_end_kg, v.solution.mass_kg, 1e-5, 0);
    assert_close(h.summary.steam_total_kg, y[BOIL_STATE_TOTAL_STEAM], 1e-5, 0);
    boil_history_free(&h);
    b.bodies = NULL;
    b.bodies_count = 0;
}

/* Rates with dTb/dm left out of the steam formula: steam takes the heat that moving along the boiling curve should have. */
static void mutated_rk4(boil_bath *b, double t, double h, double y[])
{
    boil_rates_view v;
    double d[MOST];
    rates_at(b, t, y, &v, d);
    double Tb = v.solution.boiling_point_K;
    boil_heat heat = boil_solution_heat(&v.solution.mixture, Tb);
    double hv = boil_bath_steam_enthalpy(b, Tb), k = heat.water + v.solution.heat.capacity_J_K * v.solution.slope.water;
    double wrong = v.steam.formed_kg_s * (hv - k) / (hv - heat.water), less = v.steam.formed_kg_s - wrong;
    d[BOIL_STATE_BATH_WATER] += less;
    d[BOIL_STATE_BATH_HEAT] += less * hv;
    d[BOIL_STATE_TOTAL_STEAM] -= less;
    d[BOIL_STATE_HEAT_WITH_VAPOUR] -= less * hv;
    for (size_t i = 0; i < BOIL_STATE_FIXED; i++)
        y[i] += h * d[i];
}

static double inventory(const boil_bath *b, double t, const double y[])
{
    boil_rates_view v;
    rates_at(b, t, y, &v, NULL);
    return boil_modes_inventory(b, y, &v);
}

static double energy_closure(bool mutated)
{
    boil_plant p = pinned_plant();
    boil_bath b;
    double y[MOST];
    start(&b, &p, y);
    double before = inventory(&b, 0, y);
    for (int i = 0; i < 12000; i++) {
        if (mutated)
            mutated_rk4(&b, 0.05 * i, 0.05, y);
        else
            rk4(&b, 0.05 * i, 0.05, y);
    }
    double change = inventory(&b, 600, y) - before;
    return (change - y[BOIL_STATE_HEAT_FROM_HEATER] + y[BOIL_STATE_HEAT_WITH_VAPOUR]) /
           (y[BOIL_STATE_HEAT_FROM_HEATER] + y[BOIL_STATE_HEAT_WITH_VAPOUR]);
}

static void leaving_out_the_slope_of_the_boiling_point_breaks_the_balance(void **state)
{
    (void)state;
    double right = energy_closure(false), wrong = energy_closure(true);
    print_message("energy closure %.1e; without dTb/dm %.1e\n", right, wrong);
    assert_true(fabs(right) < 1e-9);
    assert_true(fabs(wrong) > 1e-3);
}

/* Any guess, from a bath 60 K cooler to one 60 K hotter, gives the same rates but for rounding. */
static void rates_forget_the_guess(void **state)
{
    (void)state;
    boil_plant p = open_plant(34e3);
    boil_bath b;
    boil_rates_view v;
    double y[MOST], cold[MOST], warm[MOST], worst = 0;
    start(&b, &p, y);
    boil_bath_begin_layer(&b, 0, boil_water_enthalpy(CELSIUS(20)));
    y[BOIL_STATE_LAYER_MASS] = 1;
    y[BOIL_STATE_LAYER_HEAT] = boil_water_enthalpy(CELSIUS(40));
    for (int quiet = 0; quiet < 2; quiet++, b.boiling = false) {
        rates_at(&b, 60, y, &v, cold);
        for (double off = -60; off <= 60; off += 7.5) {
            boil_rates_tables tables = {0};
            boil_rates_guess guess = boil_rates_guess_at(v.solution.temperature_K + off, &tables);
            guess.boiling.equivalent_molality = v.solution.equivalent_molality * exp(off / 60);
            guess.boiling.boiling_point_K = v.solution.boiling_point_K + off;
            assert_int_equal(boil_rates_at(&b, 60, y, &guess, &v, warm), BOIL_OK);
            for (size_t i = 0; i < BOIL_STATE_FIXED; i++)
                worst = fmax(worst, fabs(warm[i] - cold[i]) / fmax(fabs(cold[i]), 1e-3));
        }
    }
    print_message("rates from guesses 60 K off: within %.1e\n", worst);
    assert_true(worst < 1e-9);
}

/* The quadratic that stands for steam at the room's pressure, against IF97 from 100 to 180 degC. */
static void steam_of_the_bath_follows_if97(void **state)
{
    (void)state;
    boil_plant p = pinned_plant();
    boil_bath b;
    double y[MOST], worst_h = 0, worst_v = 0;
    start(&b, &p, y);
    for (double t = 100; t <= 180; t += 1) {
        worst_h = fmax(worst_h,
                       fabs(boil_bath_steam_enthalpy(&b, CELSIUS(t)) - boil_steam_enthalpy(CELSIUS(t), p.ambient.pressure_Pa)));
        worst_v = fmax(
            worst_v, fabs(boil_bath_steam_density(&b, CELSIUS(t)) / boil_steam_density(CELSIUS(t), p.ambient.pressure_Pa) - 1));
    }
    print_message("steam by a quadratic: enthalpy within %.0f J/kg, density within %.1e\n", worst_h, worst_v);
    assert_true(worst_h < 200);
    assert_true(worst_v < 5e-4);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(run_agrees_with_fixed_steps),
        cmocka_unit_test(leaving_out_the_slope_of_the_boiling_point_breaks_the_balance),
        cmocka_unit_test(rates_forget_the_guess),
        cmocka_unit_test(steam_of_the_bath_follows_if97),
    };
    return cmocka_run_group_tests_name("reference", tests, NULL, NULL);
}
