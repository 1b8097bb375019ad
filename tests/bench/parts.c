/* parts.c -- what the parts cost, and a work-precision table for the choice of a tolerance. */
#include <math.h>

#include "bath/modes.h"
#include "bath/rates.h"
#include "bench.h"
#include "boilback.h"
#include "base/constants.h"

static boil_plant trough(void)
{
    boil_plant p = boil_plant_default();
    p.tank.length_m = 1.5;
    p.tank.width_m = 0.6;
    p.tank.depth_m = 0.8;
    p.tank.level_m = 0.5;
    p.charge = (boil_initial_charge){{0.80, 0.15, 0.05}, BOIL_INITIAL_BY_BOILING_POINT, BOIL_ZERO_CELSIUS + 140.5, 0};
    p.heater = boil_heater_default(BOIL_HEAT_ELECTRIC);
    p.heater.input_W = 34e3;
    return p;
}

/* Four hours, eight loads of 20 kg of 6 mm plate, water after each. */
static void shift(boil_schedule *s)
{
    boil_schedule_init(s, 4 * 3600);
    for (int i = 0; i < 8; i++) {
        boil_action load = {.time_s = 300 + 1800.0 * i, .kind = BOIL_ACTION_LOAD};
        load.is.load = boil_load_default();
        load.is.load.mass_kg = 20;
        load.is.load.size_m = 0.006;
        load.is.load.immersed_s = 1200;
        boil_action water = {.time_s = 700 + 1800.0 * i, .kind = BOIL_ACTION_WATER};
        water.is.water = (boil_action_water){7.5, 600, BOIL_ZERO_CELSIUS + 20};
        boil_schedule_add(s, &load);
        boil_schedule_add(s, &water);
    }
}

static void work_and_precision(void)
{
    boil_plant p = trough();
    boil_schedule s;
    boil_run_options o = boil_run_options_default();
    boil_history exact, h;
    shift(&s);
    o.tolerance = 1e-11;
    if (boil_run(&p, &s, &o, &exact) != BOIL_OK)
        return;
    printf("a shift of four hours and eight loads\n");
    printf("tolerance    time  steps  evaluations  worst event  end temperature  energy closure\n");
    for (double tolerance = 1e-4; tolerance > 5e-11; tolerance /= 10) {
        o.tolerance = tolerance;
        double start = bench_now(), worst = 0;
        if (boil_run(&p, &s, &o, &h) != BOIL_OK)
            return;
        double took = bench_now() - start;
        for (size_t i = 0; i < h.quiet_count && i < exact.quiet_count; i++)
            worst = fmax(worst, fabs(h.quiet[i].end_s - exact.quiet[i].end_s));
        printf("   %.0e  %4.0f ms  %5zu  %11zu    %.1e s        %.1e K         %.0e\n", tolerance, 1e3 * took, h.steps,
               h.evaluations, worst, fabs(h.summary.temperature_end_K - exact.summary.temperature_end_K),
               fabs(h.balance.energy.closure));
        boil_history_free(&h);
    }
    boil_history_free(&exact);
    boil_schedule_free(&s);
}

static void looks(void)
{
    enum { MANY = 200000 };
    boil_plant p = trough();
    boil_bath b;
    boil_rates_view v;
    boil_rates_tables tables;
    boil_rates_guess warm;
    double y[BOIL_STATE_FIXED], rates[BOIL_STATE_FIXED], T = 0;
    if (boil_modes_start(&b, &p, y, &tables, &warm) != BOIL_OK)
        return;
    boil_mixture m = {y[BOIL_STATE_BATH_WATER], {y[BOIL_STATE_BATH_NAOH], y[BOIL_STATE_BATH_NANO3], y[BOIL_STATE_BATH_NANO2]}};
    boil_solution_guess guess = {0, 0};
    boil_slope slope;
    double water = m.water, sum = 0, start = bench_now();
    for (int i = 0; i < MANY; i++) {
        m.water = water * (1 + 1e-6 * (i % 100));
        boil_solution_boiling_point_near(&b.air, &m, &guess, &T, &slope);
        sum += T;
    }
    printf("boiling point with slopes, warm  %4.0f ns\n", (bench_now() - start) / MANY * 1e9);
    start = bench_now();
    for (int i = 0; i < MANY; i++)
        sum += boil_solution_heat(&m, T + 1e-6 * (i % 100)).water;
    printf("enthalpy with its derivatives    %4.0f ns\n", (bench_now() - start) / MANY * 1e9);
    start = bench_now();
    for (int i = 0; i < MANY; i++) {
        y[BOIL_STATE_BATH_WATER] = water * (1 + 1e-6 * (i % 100));
        boil_rates_at(&b, 0, y, &warm, &v, rates);
        sum += rates[BOIL_STATE_BATH_WATER];
    }
    printf("rates of the whole bath          %4.0f ns   (%g)\n", (bench_now() - start) / MANY * 1e9, sum > 0 ? 1.0 : 0.0);
}

void bench_parts(void)
{
    looks();
    work_and_precision();
}
