/* support/cases.h -- plants and actions that several tests share. */
#ifndef SUPPORT_CASES_H
#define SUPPORT_CASES_H

#include <math.h>

#include "boilback.h"
#include "base/constants.h"
#include "simulate/run.h"

#define CELSIUS(t) (BOIL_ZERO_CELSIUS + (t))

/* 100 US gallons of NaOH solution, 0.9 m2 by 0.4206 m, at its boil at 1 atm, every loss off, no wall, 30 kW electric without
   lag. Deep enough never to reach the rim. */
static inline boil_plant pinned_plant(void)
{
    boil_plant p = boil_plant_default();
    p.tank.length_m = 1.5;
    p.tank.width_m = 0.6;
    p.tank.depth_m = 1.5;
    p.tank.level_m = 0.4206;
    p.tank.wall_thickness_m = 0;
    p.tank.insulation_m = 0;
    p.charge = (boil_initial_charge){{1, 0, 0}, BOIL_INITIAL_BY_BOILING_POINT, (285 - 32) / 1.8 + BOIL_ZERO_CELSIUS, 0};
    p.heater = boil_heater_default(BOIL_HEAT_ELECTRIC);
    p.heater.input_W = 30e3;
    p.heater.lag_s = 0;
    p.losses.evaporation_factor = p.losses.convection_factor = p.losses.radiation_factor = 0;
    p.losses.wall_coefficient_W_m2K = 0;
    p.ambient.pressure_Pa = BOIL_STANDARD_ATMOSPHERE;
    p.ambient.temperature_K = CELSIUS(20);
    return p;
}

/* A blend of three salts with every loss on, electric, in a trough of 0.9 m2 by 0.5 m. */
static inline boil_plant open_plant(double heat_W)
{
    boil_plant p = pinned_plant();
    p.tank.level_m = 0.5;
    p.tank.wall_thickness_m = 0.006;
    p.tank.insulation_m = 0.05;
    p.charge = (boil_initial_charge){{0.80, 0.15, 0.05}, BOIL_INITIAL_BY_BOILING_POINT, CELSIUS(140.5), 0};
    p.losses = boil_losses_default();
    p.heater.lag_s = 30;
    p.heater.input_W = heat_W;
    return p;
}

static inline boil_plant low_plant(void)
{
    boil_plant p = open_plant(60e3);
    p.tank.depth_m = 0.75;
    return p;
}

/* A trough of 72 in x 36 in x 30 in, 20 in deep, that boils near 285 degF: what plans are made for. */
static inline boil_plant planned_trough(double input_W, double positions)
{
    boil_plant p = boil_plant_default();
    p.tank.length_m = 1.8288;
    p.tank.width_m = 0.9144;
    p.tank.depth_m = 0.762;
    p.tank.level_m = 0.508;
    p.tank.wall_thickness_m = 0.00635;
    p.tank.insulation_m = 0.0508;
    p.tank.positions = positions;
    p.charge.blend[BOIL_NAOH] = 0.80;
    p.charge.blend[BOIL_NANO3] = 0.15;
    p.charge.blend[BOIL_NANO2] = 0.05;
    p.charge.basis = BOIL_INITIAL_BY_BOILING_POINT;
    p.charge.value = 413.7;
    p.heater.input_W = input_W;
    p.heater.efficiency = 0.6;
    return p;
}

/* Half a cubic metre of plain caustic soda solution, at its boil. */
static inline boil_plant caustic_of(double salt_fraction)
{
    boil_plant p = boil_plant_default();
    p.tank.length_m = p.tank.width_m = p.tank.depth_m = 1;
    p.tank.level_m = 0.5;
    p.charge = (boil_initial_charge){{1, 0, 0}, BOIL_INITIAL_BY_SALT_FRACTION, salt_fraction, 0};
    return p;
}

/* For tests that ask what happens, not how much. */
static inline boil_run_options coarse(void)
{
    boil_run_options o = boil_run_options_default();
    o.tolerance = 1e-4;
    return o;
}

/* `times` 22.68 kg (50 lb) of 6 mm plate, 0.963 m2, at 20 degC, dry, 2000 W/m2K; stays in. Lowered in a second. */
static inline boil_action plate_action(double time_s, double times)
{
    boil_action a = {.time_s = time_s, .kind = BOIL_ACTION_LOAD};
    a.is.load = boil_load_default();
    a.is.load.mass_kg = 22.68 * times;
    a.is.load.size_m = 0.006;
    a.is.load.temperature_K = CELSIUS(20);
    a.is.load.coefficient_W_m2K = 2000;
    a.is.load.rinse_kg_m2 = 0;
    a.is.load.lowering_s = 1;
    a.is.load.immersed_s = (double)INFINITY;
    return a;
}

/* The same plate as it is hung in a shop: in over ten seconds, for twenty minutes, heated as its pool heats it. */
static inline boil_action hung_plate_action(double time_s, double kg)
{
    boil_action a = plate_action(time_s, kg / 22.68);
    a.is.load.coefficient_W_m2K = 0;
    a.is.load.immersed_s = 1200;
    a.is.load.lowering_s = 10;
    return a;
}

/* At 20 degC. */
static inline boil_action water_action(double time_s, double kg, double over_s)
{
    boil_action a = {.time_s = time_s, .kind = BOIL_ACTION_WATER};
    a.is.water = (boil_action_water){kg, over_s, CELSIUS(20)};
    return a;
}

/* Two US gallons at 20 degC. */
static inline boil_action two_gallons_action(double time_s, double over_s)
{
    return water_action(time_s, 2 * 3.785411784e-3 * 998.2, over_s);
}

/* To be freed. */
static inline boil_schedule schedule_with(double duration_s, const boil_action *actions, size_t count)
{
    boil_schedule s;
    boil_schedule_init(&s, duration_s);
    for (size_t i = 0; i < count; i++)
        assert_int_equal(boil_schedule_add(&s, &actions[i]), BOIL_OK);
    return s;
}

/* Run a plant with up to three actions (kind LOAD without mass: none) and check what must always hold. */
static inline boil_history run_actions(const boil_plant *p, double duration_s, const boil_run_options *o,
                                       const boil_action *actions, size_t count)
{
    boil_schedule s = schedule_with(duration_s, actions, count);
    boil_history h;
    boil_schedule_sort(&s);
    assert_null(boil_plant_problem(p));
    assert_int_equal(boil_run(p, &s, o, &h), BOIL_OK);
    boil_schedule_free(&s);
    assert_true(fabs(h.balance.water.closure) < 1e-9 && fabs(h.balance.salts.closure) < 1e-9 &&
                fabs(h.balance.energy.closure) < 1e-9);
    return h;
}

static inline const boil_row *row_at(const boil_history *h, const boil_run_options *o, double time_s)
{
    size_t i = (size_t)(time_s / o->row_interval_s + 0.5);
    assert_true(i < h->rows_count);
    return &h->rows[i];
}

#endif
