/* unit/model/case/test_limits.c -- what a case may hold: each range of model/boilback.h with its ends, which belong to it, and the next
   number beyond each, which does not. */
#include <string.h>

#include "support/close.h"

#include "case/checks.h"
#include "case/plant.h"
#include "case/schedule.h"
#include "support/cases.h"
#include "transfer/interface_heat.h"

typedef struct {
    size_t offset;
    double low, high;
    const char *says;
} range;

/* The ends are in, their neighbours and NaN are not, and the message is that of the range. */
static void asks_range(void *of, size_t size, const char *(*problem)(const void *), const range *r)
{
    unsigned char kept[sizeof(boil_plant) + sizeof(boil_load)];
    const double in[] = {r->low, r->high}, out[] = {nextafter(r->low, -HUGE_VAL), nextafter(r->high, HUGE_VAL), (double)NAN};
    assert_true(size <= sizeof kept);
    memcpy(kept, of, size);
    for (int i = 0; i < 2; i++) {
        memcpy((unsigned char *)of + r->offset, &in[i], sizeof in[i]);
        const char *got = problem(of);
        if (got != NULL)
            fail_msg("%.17g is refused: %s", in[i], got);
    }
    for (int i = 0; i < 3; i++) {
        memcpy((unsigned char *)of + r->offset, &out[i], sizeof out[i]);
        const char *got = problem(of);
        if (got == NULL)
            fail_msg("%.17g passes, against: %s", out[i], r->says);
        assert_string_equal(got, r->says);
    }
    memcpy(of, kept, size);
}

static const char *of_plant(const void *p)
{
    return boil_plant_problem(p);
}

static const char *of_load(const void *l)
{
    return boil_load_problem(l);
}

#define PLANT(field, low, high, says)                                                                                          \
    {                                                                                                                          \
        offsetof(boil_plant, field), low, high, says                                                                           \
    }
#define LOAD(field, low, high, says)                                                                                           \
    {                                                                                                                          \
        offsetof(boil_load, field), low, high, says                                                                            \
    }

static void each_range_of_a_plant_has_its_ends(void **state)
{
    (void)state;
    static const range all[] = {
        PLANT(limits.recovery_s, 1, 86400, "recovery limit must be between 1 s and 86400 s"),
        PLANT(limits.freeboard_m, 0, 2, "freeboard limit must be between 0 m and 2 m"),
        PLANT(fittings.mixer_W, 0, 1e5, "mixer power must be between 0 W and 1e5 W"),
        PLANT(fittings.still_draught_m_s, 0, 3, "draught with the exhaust off must be between 0 m/s and 3 m/s"),
        PLANT(fittings.lid_W_m2K, 1, 20, "coefficient of the lid must be between 1 W/m2K and 20 W/m2K"),
        PLANT(fittings.lid_return, 0, 1, "share returned by the lid must be between 0 % and 100 %"),
        PLANT(fittings.grain_m, 2e-4, 0.01, "grain size of the salts must be between 0.2 mm and 10 mm"),
        PLANT(by_hand.steady_s, 1, 3600, "a boil is steady after 1 s to 3600 s"),
        PLANT(by_hand.reaction_s, 1, 600, "reaction must be between 1 s and 600 s"),
        PLANT(by_hand.thermometer_step_K, 0, 10, "step of the thermometer must be between 0 K and 10 K"),
        PLANT(by_hand.mark_step_m, 0, 0.1, "step of the mark must be between 0 m and 0.1 m"),
        PLANT(transport.viscosity_factor, 0.7, 1.5, "viscosity factor must be between 0.7 and 1.5"),
        PLANT(transport.conductivity_W_mK, 0.5, 0.8, "conductivity of the bath must be between 0.5 W/mK and 0.8 W/mK"),
        PLANT(transport.expansion_1_K, 4e-4, 8e-4, "thermal expansion of the bath must be between 4e-4 1/K and 8e-4 1/K"),
        PLANT(transport.surface_tension_N_m, 0.06, 0.10, "surface tension of the bath must be between 0.06 N/m and 0.10 N/m"),
        PLANT(rinse.temperature_K, 273.15, 373.15, "temperature of the rinse must be between 273.15 K and 373.15 K"),
        PLANT(rinse.dwell_s, 0, 86400, "dwell in the rinse must be between 0 s and 86400 s"),
        PLANT(charge.temperature_K, 273.15, 473.15, "temperature of the bath must be between 273.15 K and 473.15 K"),
        PLANT(afloat.mass_kg, 0, 1e4, "water afloat must be between 0 kg and 1e4 kg"),
        PLANT(elevation_factor, 0.85, 1.10, "elevation factor must be between 0.85 and 1.10"),
        PLANT(dilution_factor, 0.85, 1.10, "dilution factor must be between 0.85 and 1.10"),
    };
    boil_plant p = open_plant(34e3);
    p.afloat.temperature_K = CELSIUS(20);
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++)
        asks_range(&p, sizeof p, of_plant, &all[i]);
    p.rinse.temperature_K = p.charge.temperature_K = 0; /* not said */
    p.rinse.film_m3_m2 = 1e-3;
    assert_null(boil_plant_problem(&p));
    p.rinse.film_m3_m2 = nextafter(1e-3, 1);
    assert_string_equal(boil_plant_problem(&p), "film from the rinse must be at most 1e-3 m3/m2");
    assert_string_equal(boil_plant_problem(NULL), "there is no plant");
}

static const range of_equipment[] = {
    PLANT(ambient.pressure_Pa, 60e3, 110e3,
          "station pressure must be between 60000 Pa and 110000 Pa (not reduced to sea level)"),
    PLANT(ambient.temperature_K, 243, 333.15, "room temperature must be between 243 K and 333.15 K"),
    PLANT(ambient.relative_humidity, 0, 1, "relative humidity must be between 0 and 1"),
    PLANT(ambient.draught_m_s, 0, 3, "draught must be between 0 m/s and 3 m/s"),
    PLANT(heat_control.set_point_K, 273.15, 473.15, "set point of the heat must be between 273.15 K and 473.15 K"),
    PLANT(heat_control.differential_K, 0.1, 50, "differential of the heat's control must be between 0.1 K and 50 K"),
    PLANT(heat_control.band_K, 0.2, 50, "band of the heat's control must be between 0.2 K and 50 K"),
    PLANT(heat_control.minimum_fire, 0, 1, "minimum fire must be between 0 and 1"),
    PLANT(heat_control.sensor_lag_s, 0, 600, "sensor lag of the heat's control must be between 0 s and 600 s"),
    PLANT(heat_control.relight_s, 0, 600, "time to relight must be between 0 s and 600 s"),
    PLANT(heat_control.high_limit_K, 273.15, 573.15, "high limit must be between 273.15 K and 573.15 K"),
    PLANT(heater.efficiency, 0.05, 1, "heater efficiency must be between 0.05 and 1"),
    PLANT(heater.coil_area_m2, 0.01, 100, "area of the steam coil must be between 0.01 m2 and 100 m2"),
    PLANT(heater.coil_W_m2K, 60, 1700, "coefficient of the steam coil must be between 60 W/m2K and 1700 W/m2K"),
    PLANT(heater.steam_K, 373.15, 473.15, "temperature of the steam must be between 373.15 K and 473.15 K"),
    PLANT(heater.lag_s, 0, 3600, "heater lag must be between 0 s and 3600 s"),
    PLANT(heater.dial, 0, 1, "heater dial must be between 0 and 1"),
    PLANT(tank.length_m, 0.1, 20, "length of the tank must be between 0.1 m and 20 m"),
    PLANT(tank.width_m, 0.1, 20, "width of the tank must be between 0.1 m and 20 m"),
    PLANT(tank.depth_m, 0.1, 5, "depth of the tank must be between 0.1 m and 5 m"),
    PLANT(tank.wall_thickness_m, 0, 0.05, "wall thickness must be between 0 m and 0.05 m"),
    PLANT(tank.insulation_m, 0, 0.5, "insulation must be between 0 m and 0.5 m"),
    PLANT(control.set_point_K, 373.15, 473.15, "set point of the water control must be between 373.15 K and 473.15 K"),
    PLANT(control.differential_K, 0.1, 20, "differential of the water control must be between 0.1 K and 20 K"),
    PLANT(control.band_K, 0.2, 20, "band of the water control must be between 0.2 K and 20 K"),
    PLANT(control.period_s, 10, 3600, "period of the water control must be between 10 s and 3600 s"),
    PLANT(control.water_K, 273.15, 373.15, "temperature of the water must be between 273.15 K and 373.15 K"),
    PLANT(control.dead_time_s, 0, 600, "dead time of the water control must be between 0 s and 600 s"),
    PLANT(control.sensor_lag_s, 0, 600, "sensor lag of the water control must be between 0 s and 600 s"),
    PLANT(control.low_level_m, 0, 5, "low level of the water control must be between 0 m and 5 m"),
};

/* Of steam, with a valve and a thermostat, so that all of it counts. */
static void each_range_of_the_equipment_has_its_ends(void **state)
{
    (void)state;
    boil_plant p = open_plant(34e3);
    p.heater = boil_heater_default(BOIL_HEAT_STEAM);
    p.tank.length_m = p.tank.width_m = 5; /* room for the largest coil */
    p.heater.coil_area_m2 = 0.1;
    p.heater.steam_K = 430;
    p.control.mode = BOIL_WATER_CONTROL_ON_OFF;
    p.control.rate_kg_s = 0.03;
    p.control.set_point_K = 413;
    p.heat_control.mode = BOIL_HEAT_CONTROL_THERMOSTAT;
    p.heat_control.set_point_K = 413;
    p.tank.level_m = 0.02;
    for (size_t i = 0; i < sizeof of_equipment / sizeof of_equipment[0]; i++)
        asks_range(&p, sizeof p, of_plant, &of_equipment[i]);
}

static void each_range_of_a_law_has_its_ends(void **state)
{
    (void)state;
    static const range all[] = {
        PLANT(losses.evaporation_factor, 0, 3, "evaporation factor must be between 0 and 3"),
        PLANT(losses.convection_factor, 0, 3, "convection factor must be between 0 and 3"),
        PLANT(losses.radiation_factor, 0, 3, "radiation factor must be between 0 and 3"),
        PLANT(losses.emissivity, 0.90, 0.96, "emissivity of the surface must be between 0.90 and 0.96"),
        PLANT(losses.liquid_coefficient_W_m2K, 1000, 3000,
              "bath-side coefficient of the surface must be between 1000 W/m2K and 3000 W/m2K"),
        PLANT(losses.insulation_conductivity_W_mK, 0.04, 0.08,
              "conductivity of the insulation must be between 0.04 W/mK and 0.08 W/mK"),
        PLANT(pool.distribution, 1, 1.5, "distribution parameter of the drift flux must be between 1.0 and 1.5"),
        PLANT(pool.drift, 0.3, 5, "drift coefficient must be between 0.3 and 5"),
        PLANT(pool.part_coefficient_factor, 0.5, 2, "part coefficient factor must be between 0.5 and 2"),
        PLANT(layer.turnover_factor, 0.3, 3, "mixing time factor must be between 0.3 and 3"),
        PLANT(layer.mixing_efficiency, 0.02, 0.2, "mixing efficiency must be between 0.02 and 0.2"),
        PLANT(layer.erosion_factor, 0.3, 3, "erosion factor of a water layer must be between 0.3 and 3"),
        PLANT(layer.mixer_share, 0, 1, "the share of a mixer that stirs the layer must be 0 to 1"),
        PLANT(layer.path_m, BOIL_INTERFACE_PATH_FAST, BOIL_INTERFACE_PATH_SLOW,
              "heat path into a water layer must be between 1.3 mm and 8 mm"),
        PLANT(layer.cover_m, 1e-3, 10e-3, "cover thickness of a water layer must be between 1 mm and 10 mm"),
    };
    boil_plant p = open_plant(34e3);
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++)
        asks_range(&p, sizeof p, of_plant, &all[i]);
    const double transfers[] = {3e-5, 1e-4, HUGE_VAL, 2.9e-5, 1.1e-4, (double)NAN};
    for (int i = 0; i < 6; i++) {
        p.losses.salt_transfer_m_s = transfers[i];
        assert_int_equal(boil_plant_problem(&p) == NULL, i < 3);
    }
}

/* What stands below the rim stands below it, not at it; and places are counted. */
static void a_tank_holds_what_stands_in_it(void **state)
{
    (void)state;
    boil_plant p = open_plant(34e3);
    double *heights[] = {&p.tank.level_m, &p.tank.mark_m, &p.tank.heater_top_m, &p.tank.parts_top_m};
    for (size_t i = 0; i < sizeof heights / sizeof heights[0]; i++) {
        const double kept = *heights[i], at_m[] = {p.tank.depth_m * 0.999, p.tank.depth_m, -1e-9, (double)NAN};
        for (int k = 0; k < 4; k++) {
            *heights[i] = at_m[k];
            assert_int_equal(boil_plant_problem(&p) == NULL, k == 0);
        }
        *heights[i] = kept;
    }
    p.tank.level_m = nextafter(0.02, 0);
    assert_string_equal(boil_plant_problem(&p), "level must be between 0.02 m and the rim (the depth of the tank)");
    p.tank.level_m = 0.02;
    const double places[] = {0, BOIL_POSITIONS_MAX, 2.5, BOIL_POSITIONS_MAX + 1, -1};
    for (int i = 0; i < 5; i++) {
        p.tank.positions = places[i];
        assert_int_equal(boil_plant_problem(&p) == NULL, i < 2);
    }
    p.tank.positions = 0;
    p.tank.shape = BOIL_TANK_UPRIGHT_CYLINDER;
    p.heater.input_W = 1e3;
    const double across_m[] = {0.1, 20, 0.0999, 20.1};
    for (int i = 0; i < 4; i++) {
        p.tank.diameter_m = across_m[i];
        assert_int_equal(boil_plant_problem(&p) == NULL, i < 2);
    }
}

/* What goes with a state that somebody may not have, is not asked for without it. */
static void what_is_switched_off_is_not_asked_for(void **state)
{
    (void)state;
    boil_plant p = open_plant(34e3);
    p.heater.coil_area_m2 = p.heater.steam_K = (double)NAN;
    p.heat_control.mode = BOIL_HEAT_CONTROL_DIAL;
    p.heat_control.set_point_K = (double)NAN;
    p.heat_control.high_limit_K = 0;
    p.afloat = (boil_water_afloat){0, (double)NAN};
    p.losses.wall_coefficient_W_m2K = -1;
    assert_null(boil_plant_problem(&p));
    p.afloat.mass_kg = 1e-6;
    assert_non_null(boil_plant_problem(&p));
    p.afloat.mass_kg = 0;
    p.losses.wall_coefficient_W_m2K = 50;
    assert_null(boil_plant_problem(&p));
    p.losses.wall_coefficient_W_m2K = 50.1;
    assert_non_null(boil_plant_problem(&p));
}

static void the_band_rises_and_a_load_has_a_limit(void **state)
{
    (void)state;
    const struct {
        double low_K, high_K;
        bool sound;
    } bands[] = {{373.15, 473.15, true}, {373.14, 473.15, false},   {373.15, 473.16, false},
                 {400, 400, false},      {400, 400.1, true},        {401, 400, false},
                 {500, 400, false},      {(double)NAN, 400, false}, {400, (double)NAN, false}};
    boil_plant p = open_plant(34e3);
    for (size_t i = 0; i < sizeof bands / sizeof bands[0]; i++) {
        p.limits.boiling_point_low_K = bands[i].low_K;
        p.limits.boiling_point_high_K = bands[i].high_K;
        const char *problem = boil_plant_problem(&p);
        assert_int_equal(problem == NULL, bands[i].sound);
        assert_true(problem == NULL || strncmp(problem, "boiling point limits", 20) == 0);
    }
    const double loads[] = {0, 1e-9, 5000, 5000.1};
    p = open_plant(34e3);
    for (int i = 0; i < 4; i++) {
        p.limits.load_per_volume_kg_m3 = loads[i];
        assert_int_equal(boil_plant_problem(&p) == NULL, i == 1 || i == 2);
    }
}

/* Shares add up within half a thousandth, at least three tenths of them hydroxide; plain water has none. */
static void the_blend_adds_up(void **state)
{
    (void)state;
    const struct {
        double blend[BOIL_SALTS];
        const char *says;
    } all[] = {
        {{0.3, 0.7, 0}, NULL},
        {{0.2999, 0.7001, 0}, "sodium hydroxide must be at least 30 % of the salts: weaker blends are beyond the correlations"},
        {{0.8, 0.1504, 0.05}, NULL},
        {{0.8, 0.1506, 0.05}, "the shares of the salts must add up to 100 %"},
        {{0.8, 0.1496, 0.05}, NULL},
        {{0.8, 0.1494, 0.05}, "the shares of the salts must add up to 100 %"},
        {{1, 0, 0}, NULL},
        {{1.0004, 0, 0}, "each share of the salts must be between 0 % and 100 %"},
        {{1, 0, -1e-9}, "each share of the salts must be between 0 % and 100 %"},
        {{1, (double)NAN, 0}, "each share of the salts must be between 0 % and 100 %"},
        {{0, 0, 0}, "the shares of the salts must add up to 100 %"}};
    boil_plant p = open_plant(34e3);
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++) {
        memcpy(p.charge.blend, all[i].blend, sizeof all[i].blend);
        const char *problem = boil_plant_problem(&p);
        assert_int_equal(problem == NULL, all[i].says == NULL);
        if (problem != NULL)
            assert_string_equal(problem, all[i].says);
    }
    p.charge.basis = BOIL_INITIAL_BY_SALT_FRACTION; /* of nothing: water */
    p.charge.value = 0;
    memset(p.charge.blend, 0, sizeof p.charge.blend);
    assert_null(boil_plant_problem(&p));
    p.charge.value = 0.1;
    assert_non_null(boil_plant_problem(&p));
    p.charge.value = 0;
    p.charge.blend[BOIL_NANO2] = 0.5; /* named salts must make sense */
    assert_non_null(boil_plant_problem(&p));
}

/* At 3 MW for each m2 of surface: p's surface is 0.9 m2. */
static void heat_beyond_what_a_boil_takes_is_refused(void **state)
{
    (void)state;
    boil_plant p = open_plant(34e3);
    p.tank.wall_thickness_m = 0;
    double most_W = 3e6 * p.tank.length_m * p.tank.width_m / p.heater.efficiency;
    p.heater.input_W = most_W * (1 - 1e-12);
    assert_null(boil_plant_heat_problem(&p));
    p.heater.input_W = most_W * (1 + 1e-12);
    assert_non_null(boil_plant_heat_problem(&p));
}

static void each_range_of_a_load_has_its_ends(void **state)
{
    (void)state;
    static const range all[] = {
        LOAD(mass_kg, 0.001, 1e5, "mass of the parts must be 0.001 to 1e5 kg"),
        LOAD(metal.density_kg_m3, 1000, 25000, "density of the metal must be 1000 to 25000 kg/m3"),
        LOAD(size_m, 1e-4, 1, "thickness or diameter of the parts must be 1e-4 to 1 m"),
        LOAD(part_height_m, 0.02, 1, "height of a part must be 0.02 to 1 m"),
        LOAD(pieces, 1, 1e6, "pieces must be 1 to 1e6, or 0 where nobody counted"),
        LOAD(packed_depth_m, 0.01, 2, "depth of the packed basket must be 0.01 to 2 m, or 0 for parts that hang apart"),
        LOAD(packed_conductivity_W_mK, 3, 15, "conductivity of the packed basket must be 3 to 15 W/mK"),
        LOAD(packed_void, 0.3, 0.7, "void of the packed basket must be 0.3 to 0.7"),
        LOAD(basket_kg, 0, 1e5, "mass of the basket must be 0 to 1e5 kg"),
        LOAD(temperature_K, 233.15, 473.15, "temperature of the parts must be 233.15 to 473.15 K"),
        LOAD(lowering_s, 1, 600, "time of lowering must be 1 to 600 s"),
        LOAD(coefficient_W_m2K, 10, 1e5, "coefficient on the bath side must be 10 to 1e5 W/m2K, or 0 to follow the stirring"),
        LOAD(rinse_kg_m2, 0, 1, "water carried in must be 0 to 1 kg/m2"),
        LOAD(water_K, 273.15, 373.15,
             "temperature of the water carried in must be 273.15 to 373.15 K, or 0 for that of the parts"),
        LOAD(trapped_kg, 0, 1000, "water trapped in hollows must be 0 to 1000 kg"),
        LOAD(hollow_m3, 1e-8, 1, "water in each hollow must be 1e-8 to 1 m3"),
    };
    boil_load l = plate_action(0, 1).is.load;
    l.hollow_m3 = 1e-4;
    l.trapped_kg = 1;
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++)
        asks_range(&l, sizeof l, of_load, &all[i]);
    l.trapped_kg = l.hollow_m3 = 0; /* nothing trapped: no hollow to speak of */
    assert_null(boil_load_problem(&l));
    double *none[] = {&l.pieces, &l.packed_depth_m, &l.coefficient_W_m2K, &l.water_K, &l.area_m2};
    for (size_t i = 0; i < sizeof none / sizeof none[0]; i++)
        *none[i] = 0;
    assert_null(boil_load_problem(&l));
    l.area_m2 = 1e5;
    assert_null(boil_load_problem(&l));
    l.area_m2 = nextafter(1e5, HUGE_VAL);
    assert_non_null(boil_load_problem(&l));
    assert_string_equal(boil_load_problem(NULL), "there is no load");
}

static void a_loads_time_and_wall_have_their_ends(void **state)
{
    (void)state;
    boil_load l = plate_action(0, 1).is.load;
    const double immersed_s[] = {0, 1e-9, HUGE_VAL, (double)NAN};
    for (int i = 0; i < 4; i++) {
        l.immersed_s = immersed_s[i];
        l.at_boil = false;
        assert_int_equal(boil_load_problem(&l) == NULL, i == 1 || i == 2);
        l.at_boil = true;
        assert_int_equal(boil_load_problem(&l) == NULL, i == 1);
    }
    l.immersed_s = 600;
    const double latest_s[] = {-1e-9, 0, BOIL_LONGEST_RUN_S, nextafter(BOIL_LONGEST_RUN_S, HUGE_VAL)};
    for (int i = 0; i < 4; i++) {
        l.latest_s = latest_s[i];
        l.at_boil = true;
        assert_int_equal(boil_load_problem(&l) == NULL, i == 1 || i == 2);
        l.at_boil = false;
        assert_int_equal(boil_load_problem(&l) == NULL, i == 1);
    }
    l = plate_action(0, 1).is.load;
    l.size_m = 0.05;
    l.shape = BOIL_SHAPE_TUBE;
    const double walls_m[] = {9.9e-5, 1e-4, 0.0249, 0.025, (double)NAN};
    for (int i = 0; i < 5; i++) {
        l.tube_wall_m = walls_m[i];
        assert_int_equal(boil_load_problem(&l) == NULL, i == 1 || i == 2);
    }
    l.tube_wall_m = 0.002;
    l.drag_out_kg_m2 = 1;
    assert_null(boil_load_problem(&l));
    l.drag_out_kg_m2 = nextafter(1, 2);
    assert_non_null(boil_load_problem(&l));
}

/* What is poured: an amount above nothing, in a time above nothing, and the temperatures of its kind. */
static void each_action_has_its_ends(void **state)
{
    (void)state;
    const double blend[BOIL_SALTS] = {0.8, 0.15, 0.05};
    const struct {
        boil_action_kind kind;
        double low_K, high_K;
    } pours[] = {
        {BOIL_ACTION_WATER, 273.15, 473.15}, {BOIL_ACTION_SALTS, 243.15, 473.15}, {BOIL_ACTION_LIQUID, 273.15, 473.15}};
    for (size_t i = 0; i < sizeof pours / sizeof pours[0]; i++) {
        const double at_K[] = {pours[i].low_K, pours[i].high_K, nextafter(pours[i].low_K, 0), nextafter(pours[i].high_K, 1e3)};
        const double amounts[] = {0, -1, HUGE_VAL, (double)NAN};
        for (int k = 0; k < 8; k++) {
            double kg = k < 4 ? 1 : amounts[k - 4], K = at_K[k < 4 ? k : 0];
            boil_action a = {.kind = pours[i].kind};
            if (a.kind == BOIL_ACTION_WATER)
                a.is.water = (boil_action_water){kg, 10, K};
            else if (a.kind == BOIL_ACTION_SALTS)
                a.is.salts = (boil_action_salts){.mass_kg = kg, .over_s = 10, .temperature_K = K, .blend = {0.8, 0.15, 0.05}};
            else
                a.is.liquid = (boil_action_liquid){.mass_kg = kg,
                                                   .over_s = 10,
                                                   .temperature_K = K,
                                                   .blend = {blend[0], blend[1], blend[2]},
                                                   .salt_fraction = 0.5};
            assert_int_equal(boil_check_action(&a), k < 2);
        }
    }
    const double over_s[] = {0, -1, HUGE_VAL, (double)NAN, 1e-9};
    for (int i = 0; i < 5; i++) {
        boil_action stir = {.kind = BOIL_ACTION_STIR, .is.stir_s = over_s[i]};
        boil_action bail = {.kind = BOIL_ACTION_BAIL, .is.take = {.volume_m3 = 0.01, .over_s = over_s[i]}};
        boil_action water = {.kind = BOIL_ACTION_WATER, .is.water = {1, over_s[i], 293}};
        boil_action late = {.kind = BOIL_ACTION_CRUST, .time_s = over_s[i]};
        assert_int_equal(boil_check_action(&stir), i == 4);
        assert_int_equal(boil_check_action(&bail), i == 4);
        assert_int_equal(boil_check_action(&water), i == 4);
        assert_int_equal(boil_check_action(&late), i == 0 || i == 4);
    }
    assert_false(boil_check_action(NULL));
    assert_false(boil_check_action(&(boil_action){.kind = (boil_action_kind)99}));
}

static void what_is_taken_and_returned_has_its_ends(void **state)
{
    (void)state;
    boil_action bail = {.kind = BOIL_ACTION_DRAIN, .is.take = {.volume_m3 = 0.01, .over_s = 10}};
    bail.pour.goal = BOIL_GOAL_BOILING_POINT; /* taking liquid out moves no boiling point */
    assert_false(boil_check_action(&bail));
    boil_action back = {.kind = BOIL_ACTION_RETURN, .name = 1, .is.back = {.over_s = 10}};
    assert_true(boil_check_action(&back));
    back.name = 0;
    assert_false(boil_check_action(&back));
    back.name = 1;
    const double at_K[] = {273.15, 473.15, 273.14, 473.16, -1};
    for (int i = 0; i < 5; i++) {
        back.is.back.temperature_K = at_K[i];
        assert_int_equal(boil_check_action(&back), i < 2);
    }
    boil_action liquid = {.kind = BOIL_ACTION_LIQUID, .is.liquid = {1, 10, 293, {0, 0, 0}, 0}};
    assert_true(boil_check_action(&liquid)); /* water: no blend */
    const double fractions[] = {1e-9, 0.9, 0.901, -1e-9};
    for (int i = 0; i < 4; i++) {
        liquid.is.liquid = (boil_action_liquid){1, 10, 293, {0.8, 0.15, 0.05}, fractions[i]};
        assert_int_equal(boil_check_action(&liquid), i < 2);
    }
    liquid.is.liquid = (boil_action_liquid){1, 10, 293, {0.8, 0.15, 0.0501}, 0.5};
    assert_false(boil_check_action(&liquid));
    boil_action heat = {.kind = BOIL_ACTION_HEAT};
    const double dials[] = {0, 1, -1e-9, 1.0001};
    for (int i = 0; i < 4; i++) {
        heat.is.heat = (boil_action_heat){.order = BOIL_HEAT_TURN, .dial = dials[i]};
        assert_int_equal(boil_check_action(&heat), i < 2);
        heat.is.heat = (boil_action_heat){.order = BOIL_HEAT_THERMOSTAT, .set_point_K = at_K[i]};
        assert_int_equal(boil_check_action(&heat), i < 2);
    }
    heat.is.heat = (boil_action_heat){.order = BOIL_HEAT_DIAL};
    assert_true(boil_check_action(&heat));
    heat.is.heat.order = (boil_heat_order)(BOIL_HEAT_DIAL + 1);
    assert_false(boil_check_action(&heat));
}

static void a_schedule_goes_forward_and_ends(void **state)
{
    (void)state;
    const double last_s[] = {0, BOIL_LONGEST_RUN_S, -1e-9, nextafter(BOIL_LONGEST_RUN_S, HUGE_VAL), (double)NAN};
    boil_action actions[2] = {plate_action(10, 1), plate_action(10, 1)};
    boil_schedule s = {.actions = actions, .count = 2};
    for (int i = 0; i < 5; i++) {
        s.duration_s = last_s[i];
        assert_int_equal(boil_check_schedule(&s), i < 2);
    }
    s.duration_s = 3600;
    actions[1].time_s = nextafter(10, 0);
    assert_false(boil_check_schedule(&s));
    actions[1].time_s = 10;
    s.idle_after_s = -1;
    assert_false(boil_check_schedule(&s));
    s.idle_after_s = 0;
    actions[1].is.load.mass_kg = 0;
    assert_false(boil_check_schedule(&s));
    s.count = 1;
    assert_true(boil_check_schedule(&s));
    s.actions = NULL;
    assert_false(boil_check_schedule(&s));
    s.count = 0;
    assert_true(boil_check_schedule(&s));
    assert_false(boil_check_schedule(NULL));
    boil_schedule_free(NULL);
}

/* A break ends after it begins, and there are so many of them. */
static void a_schedule_has_room_for_its_breaks(void **state)
{
    (void)state;
    boil_schedule s;
    boil_schedule_init(&s, 3600);
    assert_int_equal(boil_schedule_add_break(NULL, 0, 1), BOIL_BAD_INPUT);
    assert_int_equal(boil_schedule_add_break(&s, 10, 10), BOIL_BAD_INPUT);
    assert_int_equal(boil_schedule_add_break(&s, -1e-9, 10), BOIL_BAD_INPUT);
    assert_int_equal(boil_schedule_add_break(&s, (double)NAN, 10), BOIL_BAD_INPUT);
    for (size_t i = 0; i < BOIL_BREAKS_MAX; i++)
        assert_int_equal(boil_schedule_add_break(&s, 0, (double)i + 1), BOIL_OK);
    assert_int_equal(boil_schedule_add_break(&s, 0, 1), BOIL_BAD_INPUT);
    assert_int_equal(s.breaks_count, BOIL_BREAKS_MAX);
    assert_true(s.breaks[BOIL_BREAKS_MAX - 1].to_s == BOIL_BREAKS_MAX);
}

static void options_have_their_ends(void **state)
{
    (void)state;
    boil_run_options o = boil_run_options_default();
    const double tolerances[] = {1e-30, 1e-2, 0, 1.01e-2, (double)NAN}, rows_s[] = {0, 60, -1, HUGE_VAL, (double)NAN};
    for (int i = 0; i < 5; i++) {
        o.tolerance = tolerances[i];
        assert_int_equal(boil_check_options(&o), i < 2);
        o.tolerance = 1e-6;
        o.row_interval_s = rows_s[i];
        assert_int_equal(boil_check_options(&o), i < 2);
        o.row_interval_s = 0;
        o.row_fast_s = rows_s[i];
        assert_int_equal(boil_check_options(&o), i < 2);
        o.row_fast_s = 0;
    }
    o.closures = BOIL_CLOSURES;
    assert_false(boil_check_options(&o));
    o.closures = BOIL_CLOSURES_LIKELY;
    o.traced = BOIL_CLOSURES; /* all */
    assert_true(boil_check_options(&o));
    o.traced = (boil_closures)(BOIL_CLOSURES + 1);
    assert_false(boil_check_options(&o));
    assert_false(boil_check_options(NULL));
    boil_plant p = open_plant(34e3);
    boil_schedule s;
    boil_schedule_init(&s, 1000);
    o = boil_run_options_default();
    o.row_interval_s = 1000. / BOIL_MOST_ROWS;
    assert_true(boil_check_case(&p, &s, &o));
    o.row_interval_s *= 0.999;
    assert_false(boil_check_case(&p, &s, &o));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(each_range_of_a_plant_has_its_ends),
        cmocka_unit_test(each_range_of_the_equipment_has_its_ends),
        cmocka_unit_test(each_range_of_a_law_has_its_ends),
        cmocka_unit_test(a_tank_holds_what_stands_in_it),
        cmocka_unit_test(what_is_switched_off_is_not_asked_for),
        cmocka_unit_test(the_band_rises_and_a_load_has_a_limit),
        cmocka_unit_test(the_blend_adds_up),
        cmocka_unit_test(heat_beyond_what_a_boil_takes_is_refused),
        cmocka_unit_test(each_range_of_a_load_has_its_ends),
        cmocka_unit_test(a_loads_time_and_wall_have_their_ends),
        cmocka_unit_test(each_action_has_its_ends),
        cmocka_unit_test(what_is_taken_and_returned_has_its_ends),
        cmocka_unit_test(a_schedule_goes_forward_and_ends),
        cmocka_unit_test(a_schedule_has_room_for_its_breaks),
        cmocka_unit_test(options_have_their_ends),
    };
    return cmocka_run_group_tests_name("limits of a case", tests, NULL, NULL);
}
