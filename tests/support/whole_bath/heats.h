/* support/whole_bath/heats.h -- rows E26 to E43, E62 and E003 to E028: closed forms, evaporators, mixing, steel and caustic in water. */
#ifndef SUPPORT_WHOLE_BATH_HEATS_H
#define SUPPORT_WHOLE_BATH_HEATS_H

#include "support/whole_bath/water.h"

static inline double enthalpy(double salt_fraction, double temperature_K)
{
    const boil_mixture m = boil_mixture_of((double[]){1, 0, 0}, salt_fraction);
    return boil_solution_heat(&m, temperature_K).enthalpy_J;
}

/* As much as warms by a kelvin on average with capacity_J_K between two temperatures. */
static inline double mass_of_capacity(double capacity_J_K, double salt_fraction, double from_K, double to_K)
{
    return capacity_J_K * (to_K - from_K) / (enthalpy(salt_fraction, to_K) - enthalpy(salt_fraction, from_K));
}

static inline double heats_by_a_coil(void)
{
    boil_plant p = water_tank(CELSIUS(20));
    no_losses(&p);
    fill_with(&p, mass_of_capacity(4180e3, 0, CELSIUS(20), CELSIUS(90)));
    p.heater = boil_heater_default(BOIL_HEAT_STEAM);
    p.heater.lag_s = 0;
    p.heater.coil_area_m2 = 2;
    p.heater.coil_W_m2K = 1000;
    p.heater.steam_K = CELSIUS(150);
    boil_history h = follow(&p, HOUR, NULL, 0);
    double s = passes_at(&h, CELSIUS(90));
    boil_history_free(&h);
    return s;
}

static inline double heats_against_its_walls(void)
{
    boil_plant p = water_tank(CELSIUS(20));
    no_losses(&p);
    p.charge.value = 0.5;
    fill_with(&p, mass_of_capacity(1811.7e3, 0.5, CELSIUS(20), CELSIUS(120)));
    p.losses.wall_coefficient_W_m2K = 60 / boil_tank_cooled_area(&p.tank);
    p.heater.input_W = 30e3;
    boil_history h = follow(&p, 3 * HOUR, NULL, 0);
    double s = passes_at(&h, CELSIUS(120));
    boil_history_free(&h);
    return s;
}

static inline double boils_off_kg_s(void)
{
    boil_plant p = water_tank(0);
    no_losses(&p);
    square_tank(&p, 1, 0.3);
    p.heater.input_W = 28250;
    boil_history h = follow(&p, HOUR, NULL, 0);
    double rate = h.summary.steam_total_kg / HOUR;
    boil_history_free(&h);
    return rate;
}

static inline double boils_off_a_minute(void)
{
    return 60 * boils_off_kg_s();
}

static inline double boils_off_a_gallon(void)
{
    return 28.25 / boils_off_kg_s() * US_GALLON * boil_water_density(CELSIUS(15)) / HOUR;
}

/* J per kg of feed thickened, with the vapour's enthalpy as printed. */
static inline double thickens(double weak, double weak_K, double strong, double strong_K, double vapour_J_kg)
{
    const double liquor = weak / strong;
    return liquor * enthalpy(strong, strong_K) + (1 - liquor) * vapour_J_kg - enthalpy(weak, weak_K);
}

static inline double evaporator_W(void)
{
    return 4536 / HOUR * thickens(0.2, CELSIUS(60), 0.5, CELSIUS(89.5), 2667e3);
}

static inline double evaporator_kW(void)
{
    return 1e-3 * evaporator_W();
}

static inline double evaporator_steam(void)
{
    return evaporator_W() / 2214e3 * HOUR;
}

static inline double evaporator_economy(void)
{
    return 4536 * (1 - 0.2 / 0.5) / evaporator_steam();
}

static inline double evaporator_Btu_h(void)
{
    const double vapour = 1146 * BTU / POUND;
    return 10000 * POUND * thickens(0.1, FAHRENHEIT(70), 0.5, FAHRENHEIT(190), vapour) / BTU;
}

static inline double evaporator_area(void)
{
    const double boils = boil_water_saturation_temperature(101325), vapour = boil_water_vapour_enthalpy(boils);
    return 9072 / HOUR * thickens(0.01, 311, 0.015, boils, vapour) / (1704 * 10);
}

static inline double evaporator_steam_lb_h(void)
{
    const double vapour = (1116 + 0.46 * (198 - 125)) * BTU / POUND;
    return 5000 * thickens(0.2, FAHRENHEIT(100), 0.4, FAHRENHEIT(198), vapour) * POUND / BTU / 960;
}

/* J per kg of feed of 30 degC that is water but in name, half of it boiled off. */
static inline double halves(double boils_K, double vapour_J_kg)
{
    return 0.5 * boil_water_enthalpy(boils_K) + 0.5 * vapour_J_kg - boil_water_enthalpy(CELSIUS(30));
}

static inline double halved_W(void)
{
    return 5000 / HOUR * halves(CELSIUS(100), boil_water_vapour_enthalpy(CELSIUS(100)));
}

static inline double halving_economy(void)
{
    return 2500 / HOUR * 2230.2e3 / halved_W();
}

static inline double halving_coefficient(void)
{
    return halved_W() / (69 * 10);
}

static inline double halving_area_at_75(void)
{
    return 5000 / HOUR * halves(CELSIUS(75), 2635.3e3) / (2862 * 35);
}

/* As much heat, 6000 kg/h: what is left. */
static inline double halving_faster(void)
{
    const double liquor = boil_water_enthalpy(CELSIUS(100)), vapour = boil_water_vapour_enthalpy(CELSIUS(100));
    const double warming = 6000 * (liquor - boil_water_enthalpy(CELSIUS(30)));
    return 6000 - (3187.56 * 2230.2e3 - warming) / (vapour - liquor);
}

static inline double mixes_hot(void)
{
    boil_plant p = water_tank(CELSIUS(21));
    no_losses(&p);
    p.charge.value = 0.1;
    fill_with(&p, 300);
    p.tank.depth_m = 1.5;
    boil_action strong = {.time_s = 10, .kind = BOIL_ACTION_LIQUID};
    strong.is.liquid = (boil_action_liquid){300, 60, CELSIUS(93), {1, 0, 0}, 0.7};
    boil_history h = follow(&p, 120, &strong, 1);
    double t = h.summary.temperature_end_K - BOIL_ZERO_CELSIUS;
    boil_history_free(&h);
    return t;
}

static inline double cools_the_mixture(void)
{
    return 1e-3 * (enthalpy(0.4, CELSIUS(mixes_hot())) - enthalpy(0.4, CELSIUS(21)));
}

static inline double iron_cools_in_water(void)
{
    boil_plant p = water_tank(CELSIUS(25));
    no_losses(&p);
    square_tank(&p, 1, 0.5);
    boil_action iron = plate_action(0, 50 / 22.68);
    iron.is.load.temperature_K = CELSIUS(80);
    boil_history h = follow(&p, 2 * HOUR, &iron, 1);
    double t = h.summary.temperature_end_K - BOIL_ZERO_CELSIUS;
    boil_history_free(&h);
    return t;
}

static inline boil_history caustic_in_water(bool mixer_on, double duration_s)
{
    boil_plant p = water_tank(CELSIUS(30));
    no_losses(&p);
    square_tank(&p, 0.4, 0.18 / 0.4);
    p.fittings.mixer_on = mixer_on;
    boil_action salts = {.time_s = 10, .kind = BOIL_ACTION_SALTS, .is.salts = {7.2, 60, CELSIUS(30), {1, 0, 0}}};
    return follow(&p, duration_s, &salts, 1);
}

static inline double caustic_warms_water(void)
{
    boil_history h = caustic_in_water(true, 20 * 60);
    double t = h.summary.temperature_end_K - BOIL_ZERO_CELSIUS;
    assert_true(h.rows[h.rows_count - 1].undissolved_kg < 1e-3);
    boil_history_free(&h);
    return t;
}

static inline double caustic_lies_unstirred(void)
{
    boil_history h = caustic_in_water(false, HOUR);
    double left = h.rows[h.rows_count - 1].undissolved_kg;
    boil_history_free(&h);
    return left;
}

/* As the laboratory took it from its readings: the bar's mean temperature from 37 to 55 degC, all of it at one temperature. */
static inline double bar_in_a_bath(bool pumped)
{
    boil_plant p = water_tank(CELSIUS(58));
    no_losses(&p);
    square_tank(&p, 1, 0.5);
    p.fittings.mixer_on = pumped;
    boil_action a = {.time_s = 1, .kind = BOIL_ACTION_LOAD, .is.load = boil_load_default()};
    boil_load *bar = &a.is.load;
    bar->mass_kg = 1;
    bar->shape = BOIL_SHAPE_BAR;
    bar->size_m = 0.03;
    bar->temperature_K = CELSIUS(20);
    bar->lowering_s = 1;
    bar->rinse_kg_m2 = 0;
    bar->immersed_s = (double)INFINITY;
    boil_history h = follow(&p, 600, &a, 1);
    size_t i = 2, from, to;
    while (h.rows[i].coldest_load_K < CELSIUS(37))
        i++;
    for (from = to = i; h.rows[to].coldest_load_K < CELSIUS(55);)
        to++;
    double bath = CELSIUS(58), capacity = bar->metal.density_kg_m3 * boil_metal_heat_capacity(&bar->metal, CELSIUS(46));
    double fell = log((bath - h.rows[from].coldest_load_K) / (bath - h.rows[to].coldest_load_K));
    double coefficient = capacity * bar->size_m / 4 * fell / (h.rows[to].time_s - h.rows[from].time_s);
    boil_history_free(&h);
    return coefficient;
}

static inline double bar_in_a_still_bath(void)
{
    return bar_in_a_bath(false);
}

static inline evidence bar_in_a_pumped_bath(void)
{
    return (evidence){bar_in_a_bath(false), bar_in_a_bath(true)};
}

static inline double coil_in_a_vessel(void)
{
    const boil_convection_liquid water = {997, 4181, 8.9e-4, 0.607, 2.6e-4};
    const boil_convection_bath stirred = boil_convection_bath_of(&water, boil_convection_as_gas(0.2));
    return boil_convection_bath_side(&stirred, 0.8, 0);
}

#endif
