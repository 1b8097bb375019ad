/* unit/simulate/test_reference.c -- the run against an independent integration of the same equations: classical fourth-order
   Runge-Kutta with fixed small steps and its own event search by bisection to 1e-9 s; no adaptive steps, no recorder. And the
   mutation that proves the energy balance can fail. */
#include <gsl/gsl_errno.h>
#include <string.h>

#include "support/close.h"

#include "properties/water.h"
#include "simulate/modes.h"
#include "support/cases.h"

#define MOST 64

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
    assert_int_equal(boil_rates_at(b, t, y, &v, k1), BOIL_OK);
    add(n, y, h / 2, k1, s);
    assert_int_equal(boil_rates_at(b, t + h / 2, s, &v, k2), BOIL_OK);
    add(n, y, h / 2, k2, s);
    assert_int_equal(boil_rates_at(b, t + h / 2, s, &v, k3), BOIL_OK);
    add(n, y, h, k3, s);
    assert_int_equal(boil_rates_at(b, t + h, s, &v, k4), BOIL_OK);
    for (size_t i = 0; i < n; i++)
        y[i] += h / 6 * (k1[i] + 2 * k2[i] + 2 * k3[i] + k4[i]);
}

static double mode_guard(boil_bath *b, double t, const double y[])
{
    boil_rates_view v;
    double g[BOIL_GUARDS];
    assert_int_equal(boil_rates_at(b, t, y, &v, NULL), BOIL_OK);
    boil_modes_guards(b, &v, g);
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
            assert_int_equal(boil_modes_change(b, t + h, y, !b->boiling), BOIL_OK);
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
    assert_int_equal(boil_modes_start(&b, &p, y), BOIL_OK);
    put_in(&b, &a.is.load, &body, y);
    size_t count = integrate(&b, 0, a.is.load.lowering_s, 0.05, y, changes);
    count += integrate(&b, a.is.load.lowering_s, 900, 0.05, y, changes + count);
    boil_rates_view v;
    assert_int_equal(boil_rates_at(&b, 900, y, &v, NULL), BOIL_OK);
    assert_int_equal(count, 2);
    assert_int_equal(h.mode_changes, 2);
    print_message("boil lost %.6f s (fixed steps %.6f), back %.6f (%.6f), temperature at the end %.8f K (%.8f)\n",
                  h.quiet[0].start_s, changes[0], h.quiet[0].end_s, changes[1], h.summary.temperature_end_K, v.temperature_K);
    assert_close(h.quiet[0].start_s, changes[0], 1e-5, 1e-5);
    assert_close(h.quiet[0].end_s, changes[1], 1e-5, 0);
    assert_close(h.summary.temperature_end_K, v.temperature_K, 1e-5, 0);
    assert_close(h.summary.bath_mass_end_kg, v.mass_kg, 1e-5, 0);
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
    assert_int_equal(boil_rates_at(b, t, y, &v, d), BOIL_OK);
    boil_slope slope;
    boil_solution_guess guess = b->boil_guess;
    double Tb;
    assert_int_equal(boil_solution_boiling_point(&b->air, &v.mixture, &guess, &Tb, &slope), BOIL_OK);
    boil_heat heat = boil_solution_heat(&v.mixture, Tb);
    double hv = boil_bath_steam_enthalpy(b, Tb), k = heat.water + v.heat_capacity_J_K * slope.water;
    double wrong = v.steam_kg_s * (hv - k) / (hv - heat.water), less = v.steam_kg_s - wrong;
    d[BOIL_STATE_BATH_WATER] += less;
    d[BOIL_STATE_BATH_HEAT] += less * hv;
    d[BOIL_STATE_TOTAL_STEAM] -= less;
    d[BOIL_STATE_HEAT_WITH_VAPOUR] -= less * hv;
    for (size_t i = 0; i < BOIL_STATE_FIXED; i++)
        y[i] += h * d[i];
}

static double energy_closure(bool mutated)
{
    boil_plant p = pinned_plant();
    boil_bath b;
    double y[MOST];
    assert_int_equal(boil_modes_start(&b, &p, y), BOIL_OK);
    double start = boil_modes_inventory(&b, 0, y);
    for (int i = 0; i < 12000; i++) {
        if (mutated)
            mutated_rk4(&b, 0.05 * i, 0.05, y);
        else
            rk4(&b, 0.05 * i, 0.05, y);
    }
    double change = boil_modes_inventory(&b, 600, y) - start;
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

/* The quadratic that stands for steam at the room's pressure, against IF97 from 100 to 180 degC. */
static void steam_of_the_bath_follows_if97(void **state)
{
    (void)state;
    boil_plant p = pinned_plant();
    boil_bath b;
    double y[MOST], worst_h = 0, worst_v = 0;
    assert_int_equal(boil_modes_start(&b, &p, y), BOIL_OK);
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
        cmocka_unit_test(steam_of_the_bath_follows_if97),
    };
    return cmocka_run_group_tests_name("reference", tests, NULL, NULL);
}
