/* support/whole_bath/pots.h -- rows E21 to E25: pots with and without a lid, as measured in kitchens. */
#ifndef SUPPORT_WHOLE_BATH_POTS_H
#define SUPPORT_WHOLE_BATH_POTS_H

#include "support/whole_bath/water.h"

static inline boil_plant pot(double litres, double across_m, double temperature_K)
{
    boil_plant p = water_tank(temperature_K);
    p.tank.shape = BOIL_TANK_UPRIGHT_CYLINDER;
    p.tank.diameter_m = across_m;
    p.tank.wall_thickness_m = 5e-4;
    p.tank.level_m = 1e-3 * litres / boil_tank_area(&p.tank);
    p.tank.depth_m = 1.5 * p.tank.level_m + 0.05;
    p.ambient.draught_m_s = 0;
    return p;
}

static inline double cools_with_its_lid_on(double wall_W_m2K)
{
    boil_plant p = pot(24, 0.36, 0);
    p.fittings.lid_on = true;
    p.losses.wall_coefficient_W_m2K = wall_W_m2K;
    boil_history h = follow(&p, HOUR, NULL, 0);
    double fell = h.summary.temperature_start_K - h.summary.temperature_end_K;
    boil_history_free(&h);
    return fell;
}

static inline double cools_with_bare_walls(void)
{
    return cools_with_its_lid_on(-1);
}

static inline double cools_with_bright_walls(void)
{
    return cools_with_its_lid_on(7);
}

static inline double seconds_to_boil(const boil_plant *p, double most_s)
{
    boil_history h = follow(p, most_s, NULL, 0);
    double s = h.summary.time_to_boil_s;
    boil_history_free(&h);
    assert_true(s > 0);
    return s;
}

/* Times to boil, without over with a lid, with the heat that boils it with a lid in lidded_s; the time falls nearly as the heat
   rises. */
static inline double lid_saves(double litres, double across_m, double lidded_s)
{
    boil_plant p = pot(litres, across_m, CELSIUS(16));
    const double most_s = 1.5 * lidded_s;
    double off = 1;
    p.heater.input_W = 1.05 * litres * 4186 * 84 / lidded_s;
    p.fittings.lid_on = true;
    for (int i = 0; i < 12 && fabs(off) > 1e-4; i++) {
        off = seconds_to_boil(&p, most_s) / lidded_s - 1;
        p.heater.input_W *= 1 + off;
    }
    assert_close(off, 0, 0, 1e-4);
    p.fittings.lid_on = false;
    return seconds_to_boil(&p, most_s) / lidded_s;
}

static inline double lid_on_two_gallons(void)
{
    return lid_saves(7.571, 0.26, 26 * 60 + 20);
}

static inline double lid_on_two_quarts(void)
{
    return lid_saves(1.893, 0.20, 10 * 60 + 30);
}

static inline double lid_on_four_quarts(void)
{
    return lid_saves(3.785, 0.25, 12 * 60);
}

#endif
