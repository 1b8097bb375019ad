/* Whole scenario files: what they come to in SI, every mistake at its place, and no crash on anything. */
#include "support/close.h"

#include <math.h>
#include <stdbool.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "boilback.h"
#include "properties/water.h"
#include "scenario/scenario.h"

#define INCH 0.0254
#define GALLON (231 * INCH * INCH * INCH)
#define POUND 0.45359237
#define FAHRENHEIT(t) (((t) + 459.67) / 1.8)

#define PLANT                                                                                                                  \
    "[tank]\nlength = 60 in\nwidth = 30 in\ndepth = 36 in\n"                                                                   \
    "level = 26 in\n"                                                                                                          \
    "[bath]\nsalts = 80 % NaOH, 15 % NaNO3, 5 % NaNO2\n"                                                                       \
    "boiling point = 285 degF\n"                                                                                               \
    "[heat]\ninput = 500 kBtu/h\n"
#define PLANT_LINES 10
#define SCHEDULE PLANT "[schedule]\n" /* actions start on line 12 */

static const char full[] = "\xEF\xBB\xBFtitle    = Two baskets an hour # in a 200-gallon trough\r\n"
                           "start    = 6:00                   # wall clock\r\n"
                           "DURATION = 4 h\n"
                           "\n"
                           "[Tank]\n"
                           "shape      = box\n"
                           "length     = 60 in\n"
                           "width      = 30\u00a0in\n"
                           "depth      = 36 in                # floor to rim\n"
                           "level\t=\t26 in\n"
                           "wall       = 1/4 in\n"
                           "insulation = 2 in\n"
                           "heated     = from  below\n"
                           "# a comment\n"
                           "[bath]\n"
                           "salts         = 80 % NaOH, 15 % NaNO3, 5 % NaNO2\n"
                           "boiling point = 285 \u00b0F\n"
                           "temperature   = 280 degF\n"
                           "elevation factor = 1\n"
                           "[heat]\n"
                           "source     = electric\n"
                           "input      = 500 kBtu/h\n"
                           "lag        = 45 s\n"
                           "[losses]\n"
                           "wall coefficient   = 1.2 W/m\u00b2K\n"
                           "evaporation factor = 0.9\n"
                           "[room]\n"
                           "altitude    = 900 ft\n"
                           "temperature = 75 degF\n"
                           "humidity    = 40 %\n"
                           "draught     = 0.5 m/s\n"
                           "[limits]\n"
                           "recovery      = 3 min\n"
                           "freeboard     = 6 in\n"
                           "boiling point = 280 degF to 295 degF\n"
                           "load          = 1 lb per 2 gal\n"
                           "[schedule]\n"
                           "0:05  load    100 lb, plate 1/4 in, at 90 degF, for 20 min, basket 25 lb\n"
                           "0:20  water   2 gal over 4 min\n"
                           "0:20  heat    50 %\n"
                           "90 min  water   2 gal at 30 gal/h, at 60 degF\n"
                           "every 30 min from 0:06 to 1:36  load 100 lb iron, bar 3/4 in, for 20 min, as Rack  3\n"
                           "3:00 load 3 kg, tube 1 1/4 in wall 2 mm, packed 6 in, lowered over 5 s, as B, area 2 ft2\n"
                           "3:10 load 3 kg, ball 10 mm, rinse 50 mL/m2, coefficient 400 W/m2K\n"
                           "3:20 lift b\n"
                           "3:30 lift\n";

/* What `full` leaves out. */
static const char other[] = "title = A steam coil, automatic water and all that is switched: the rest\n"
                            "duration = 62 h  # from Friday evening to Monday morning, which is what a lid is for\n"
                            "[tank]\nlength = 60 in\nwidth = 30 in\ndepth = 36 in\nlevel = 26 in\n"
                            "[bath]\nsalts = 80 % NaOH, 15 % NaNO3, 5 % NaNO2\nstrength = 6 lb/gal\n"
                            "[heat]\nsource = steam\nsteam pressure = 125 psig\ncoil area = 30 ft2\n"
                            "coil coefficient = 700 W/m2K\n"
                            "[water control]\nmode = on/off\nset point = 285 degF\ndifferential = 1 degF\n"
                            "rate = 12 gal/h\nwater temperature = 60 degF\ndead time = 5 s\nsensor lag = 20 s\n"
                            "only while boiling = no\nlow level cut-off = 20 in\n"
                            "# What stands behind such a sign is for people, and may be anything: [tank], 1/0, gal.\n"
                            "[fittings]\nmixer power = 0.3 kW\nmixer = on\nlid = off\nexhaust = on\n"
                            "still draught = 20 ft/min\nlid coefficient = 5 W/m2K\nlid return = 60 %\n"
                            "grain size = 2 mm\n"
                            "[schedule]\n"
                            "0:10 salts 6 lb over 3 min, blend 60 % NaOH, 40 % NaNO2, at 100 degF\n"
                            "0:20 liquid 4 gal over 2 min, at 200 degF, boiling point 270 degF\n"
                            "0:30 liquid 20 kg over 2 min, strength 5 lb/gal\n"
                            "0:40 load 5 kg, bar 1 in, for 5 min, drag-out 40 mL/m2\n"
                            "1:00 lid on\n1:00 exhaust off\n1:00 mixer off\n";

static char folder[] = "/tmp/boilback-scenario-XXXXXX";
static char path[64], sheet_path[64];

static void write_file(const char *name, const char *text, size_t length)
{
    FILE *f = fopen(name, "wb");
    assert_non_null(f);
    assert_int_equal(fwrite(text, 1, length, f), length);
    assert_int_equal(fclose(f), 0);
}

static int read_bytes(const char *text, size_t length, scenario *s, messages *m)
{
    write_file(path, text, length);
    messages_init(m);
    return scenario_read(path, s, m);
}

static int read_text(const char *text, scenario *s, messages *m)
{
    return read_bytes(text, strlen(text), s, m);
}

static void forget(scenario *s, messages *m)
{
    scenario_free(s);
    messages_free(m);
}

static void read_good(const char *text, scenario *s, messages *m)
{
    if (read_text(text, s, m) != BOIL_OK)
        fail_msg("refused: %zu:%zu: %s", m->list[0].line, m->list[0].column, m->list[0].text);
}

/* Exactly these messages, "line:column: text", in this order; a text may be the beginning only. */
static void expect(const char *text, const char *const *wanted)
{
    scenario s;
    messages m;
    size_t i = 0;
    char got[1000];
    assert_int_equal(read_text(text, &s, &m), BOIL_BAD_INPUT);
    for (; i < m.count && wanted[i] != NULL; i++) {
        snprintf(got, sizeof got, "%zu:%zu: %s", m.list[i].line, m.list[i].column, m.list[i].text);
        if (strncmp(got, wanted[i], strlen(wanted[i])) != 0)
            fail_msg("got '%s', want '%s'", got, wanted[i]);
    }
    if (i < m.count)
        fail_msg("too much: %zu:%zu: %s", m.list[i].line, m.list[i].column, m.list[i].text);
    if (wanted[i] != NULL)
        fail_msg("'%s' was not said", wanted[i]);
    forget(&s, &m);
}

static void expect_one(const char *text, const char *wanted)
{
    const char *const list[] = {wanted, NULL};
    expect(text, list);
}

#define EXPECT(text, ...) expect((text), (const char *const[]){__VA_ARGS__, NULL})

static void the_plant_is_in_si(void **state)
{
    (void)state;
    scenario s;
    messages m;
    read_good(full, &s, &m);
    const boil_plant *p = &s.plant;
    assert_string_equal(s.title, "Two baskets an hour # in a 200-gallon trough");
    assert_close(s.start_s, 6 * 3600, 0, 0);
    assert_close(s.schedule.duration_s, 4 * 3600, 0, 0);
    assert_int_equal(p->tank.shape, BOIL_TANK_BOX);
    assert_close(p->tank.length_m, 60 * INCH, 1e-15, 0);
    assert_close(p->tank.width_m, 30 * INCH, 1e-15, 0);
    assert_close(p->tank.depth_m, 36 * INCH, 1e-15, 0);
    assert_close(p->tank.level_m, 26 * INCH, 1e-15, 0);
    assert_close(p->tank.wall_thickness_m, INCH / 4, 1e-15, 0);
    assert_close(p->charge.blend[BOIL_NAOH], 0.80, 1e-15, 0);
    assert_close(p->charge.blend[BOIL_NANO2], 0.05, 1e-15, 0);
    assert_int_equal(p->charge.basis, BOIL_INITIAL_BY_BOILING_POINT);
    assert_close(p->charge.value, FAHRENHEIT(285), 1e-15, 0);
    assert_close(p->charge.temperature_K, FAHRENHEIT(280), 1e-15, 0);
    assert_int_equal(p->heater.source, BOIL_HEAT_ELECTRIC);
    assert_close(p->heater.input_W, 500e3 * 1055.05585262 / 3600, 1e-15, 0);
    assert_close(p->heater.efficiency, boil_heater_default(BOIL_HEAT_ELECTRIC).efficiency, 0, 0);
    assert_close(p->heater.lag_s, 45, 0, 0);
    assert_close(p->losses.wall_coefficient_W_m2K, 1.2, 0, 0);
    assert_close(p->losses.evaporation_factor, 0.9, 0, 0);
    assert_close(p->ambient.pressure_Pa, boil_ambient_pressure_at_altitude(900 * 12 * INCH), 1e-15, 0);
    assert_close(p->ambient.relative_humidity, 0.4, 1e-15, 0);
    assert_close(p->limits.recovery_s, 180, 0, 0);
    assert_close(p->limits.boiling_point_high_K, FAHRENHEIT(295), 1e-15, 0);
    assert_close(p->limits.load_per_volume_kg_m3, POUND / (2 * GALLON), 1e-14, 0);
    forget(&s, &m);
}

static const boil_action *action_worded(const scenario *s, const char *words, size_t skip)
{
    for (size_t i = 0; i < s->schedule.count; i++)
        if (strcmp(s->wording.lines[s->wording.line_of[i]].words, words) == 0 && skip-- == 0)
            return &s->schedule.actions[i];
    fail_msg("nobody said '%s'", words);
    return NULL;
}

static void loads_are_in_si(void **state)
{
    (void)state;
    scenario s;
    messages m;
    read_good(full, &s, &m);
    const boil_load *l = &action_worded(&s, "100 lb of 1/4 in plate", 0)->is.load;
    assert_close(l->mass_kg, 100 * POUND, 1e-15, 0);
    assert_close(l->size_m, INCH / 4, 1e-15, 0);
    assert_close(l->temperature_K, FAHRENHEIT(90), 1e-15, 0);
    assert_close(l->immersed_s, 1200, 0, 0);
    assert_close(l->basket_kg, 25 * POUND, 1e-15, 0);
    assert_close(l->rinse_kg_m2, BOIL_RINSE_FLAT_KG_M2, 0, 0);
    l = &action_worded(&s, "3 kg of 1.25 in tube (B)", 0)->is.load;
    assert_int_equal(l->shape, BOIL_SHAPE_TUBE);
    assert_close(l->size_m, 1.25 * INCH, 1e-15, 0);
    assert_close(l->tube_wall_m, 0.002, 1e-15, 0);
    assert_close(l->packed_depth_m, 6 * INCH, 1e-15, 0);
    assert_close(l->rinse_kg_m2, BOIL_RINSE_PACKED_KG_M2, 0, 0);
    assert_close(l->lowering_s, 5, 0, 0);
    assert_close(l->area_m2, 2 * 144 * INCH * INCH, 1e-15, 0);
    assert_close(l->temperature_K, FAHRENHEIT(75), 1e-15, 0);
    assert_true(isinf(l->immersed_s));
    l = &action_worded(&s, "3 kg of 10 mm ball", 0)->is.load;
    assert_close(l->rinse_kg_m2, 50e-6 * boil_water_density(FAHRENHEIT(75)), 1e-14, 0);
    assert_close(l->coefficient_W_m2K, 400, 0, 0);
    forget(&s, &m);
}

static void water_is_weighed_at_its_own_temperature(void **state)
{
    (void)state;
    scenario s;
    messages m;
    read_good(full, &s, &m);
    const boil_action_water *w = &action_worded(&s, "2 gal of water over 4 min", 0)->is.water;
    assert_close(w->temperature_K, FAHRENHEIT(75), 1e-15, 0);
    assert_close(w->mass_kg, 2 * GALLON * boil_water_density(FAHRENHEIT(75)), 1e-14, 0);
    assert_close(w->over_s, 240, 0, 0);
    w = &action_worded(&s, "2 gal of water at 30 gal/h", 0)->is.water;
    assert_close(w->mass_kg, 2 * GALLON * boil_water_density(FAHRENHEIT(60)), 1e-14, 0);
    assert_close(w->over_s, 240, 1e-14, 0);
    forget(&s, &m);
    read_good(SCHEDULE "0:10 water 3 kg at 20 L/min, at 20 degC\n0:20 water 3 L at 6 kg/min, at 20 degC\n", &s, &m);
    double density = boil_water_density(293.15);
    assert_close(s.schedule.actions[0].is.water.over_s, 3 / (density * 20e-3 / 60), 1e-14, 0);
    assert_close(s.schedule.actions[1].is.water.over_s, 3e-3 * density / (6.0 / 60), 1e-14, 0);
    forget(&s, &m);
}

#define LB_FT3 (POUND / (12 * INCH * 12 * INCH * 12 * INCH))

static const boil_action *last_action(const scenario *s)
{
    assert_true(s->schedule.count > 0);
    return &s->schedule.actions[s->schedule.count - 1];
}

static void salts_are_the_baths_own_unless_said(void **state)
{
    (void)state;
    scenario s;
    messages m;
    read_good(SCHEDULE "0:10 salts 6 lb over 3 min\n"
                       "0:20 salts 2 kg over 20 s, blend 60 % NaOH, 40 % sodium nitrite, at 100 degF\n"
                       "0:30 salts 2 kg over 20 s, at 25 degC, blend 100 % NaNO3\n",
              &s, &m);
    const boil_action_salts *a = &action_worded(&s, "6 lb of salts over 3 min", 0)->is.salts;
    assert_int_equal(s.schedule.actions[0].kind, BOIL_ACTION_SALTS);
    assert_close(a->mass_kg, 6 * POUND, 1e-15, 0);
    assert_close(a->over_s, 180, 0, 0);
    assert_close(a->temperature_K, 293.15, 1e-15, 0);
    assert_memory_equal(a->blend, s.plant.charge.blend, sizeof a->blend);
    a = &s.schedule.actions[1].is.salts;
    assert_close(a->blend[BOIL_NAOH], 0.6, 1e-15, 0);
    assert_close(a->blend[BOIL_NANO2], 0.4, 1e-15, 0);
    assert_close(a->blend[BOIL_NANO3], 0, 0, 0);
    assert_close(a->temperature_K, FAHRENHEIT(100), 1e-15, 0);
    a = &s.schedule.actions[2].is.salts;
    assert_close(a->blend[BOIL_NANO3], 1, 0, 0);
    assert_close(a->temperature_K, 298.15, 1e-15, 0);
    assert_close(s.schedule.duration_s, 1800 + 20 + 1800, 0, 0); /* they end when they are in */
    forget(&s, &m);
}

static double density_of(const boil_action_liquid *l)
{
    boil_mixture m = boil_mixture_of(l->blend, l->salt_fraction);
    return boil_solution_density(&m, l->temperature_K);
}

static void liquid_is_as_strong_as_the_bath_unless_said(void **state)
{
    (void)state;
    scenario s;
    messages m;
    boil_initial_state bath;
    double want;
    read_good(SCHEDULE "0:10 liquid 4 gal over 2 min\n"
                       "0:20 liquid 4 gal over 2 min, at 200 degF, boiling point 270 degF\n"
                       "0:30 liquid 20 kg over 2 min, strength 5 lb/gal\n",
              &s, &m);
    const boil_action_liquid *l = &action_worded(&s, "4 gal of liquid over 2 min", 0)->is.liquid;
    assert_int_equal(s.schedule.actions[0].kind, BOIL_ACTION_LIQUID);
    assert_int_equal(boil_plant_initial(&s.plant, &bath), BOIL_OK);
    assert_close(l->salt_fraction, bath.salt_fraction, 1e-15, 0);
    assert_close(l->temperature_K, 293.15, 1e-15, 0);
    assert_close(l->mass_kg, 4 * GALLON * density_of(l), 1e-14, 0);
    assert_in_range((long)(density_of(l) / LB_FT3), 90, 105); /* 50 % NaOH at room temperature: 95 lb/ft3 */
    assert_memory_equal(l->blend, s.plant.charge.blend, sizeof l->blend);
    boil_conditions air = boil_conditions_at(s.plant.ambient.pressure_Pa, 1);
    l = &s.schedule.actions[1].is.liquid;
    assert_int_equal(boil_solution_fraction_boiling_at(&air, l->blend, FAHRENHEIT(270), &want), BOIL_OK);
    assert_close(l->salt_fraction, want, 1e-12, 0);
    assert_close(l->mass_kg, 4 * GALLON * density_of(l), 1e-14, 0);
    l = &s.schedule.actions[2].is.liquid;
    assert_int_equal(boil_solution_fraction_of_strength(&air, l->blend, 5 * POUND / GALLON, &want), BOIL_OK);
    assert_close(l->salt_fraction, want, 1e-12, 0);
    assert_close(l->mass_kg, 20, 0, 0);
    assert_close(s.schedule.duration_s, 1800 + 120 + 1800, 0, 0);
    forget(&s, &m);
}

static void switches_and_drag_out_are_read(void **state)
{
    (void)state;
    scenario s;
    messages m;
    boil_initial_state bath;
    read_good(SCHEDULE "0:10 mixer on\n0:11 LID  off\n0:12 exhaust off\n"
                       "0:20 load 5 kg, bar 1 in, for 5 min, drag-out 1 gal/1000ft2\n"
                       "0:30 load 5 kg, bar 1 in, for 5 min\n",
              &s, &m);
    assert_int_equal(action_worded(&s, "mixer on", 0)->kind, BOIL_ACTION_MIXER);
    assert_true(action_worded(&s, "mixer on", 0)->is.on);
    assert_int_equal(action_worded(&s, "lid off", 0)->kind, BOIL_ACTION_LID);
    assert_false(action_worded(&s, "lid off", 0)->is.on);
    assert_int_equal(action_worded(&s, "exhaust off", 0)->kind, BOIL_ACTION_EXHAUST);
    assert_int_equal(boil_plant_initial(&s.plant, &bath), BOIL_OK);
    assert_close(s.schedule.actions[3].is.load.drag_out_kg_m2, GALLON / (1000 * 144 * INCH * INCH) * bath.density_kg_m3, 1e-12,
                 0);
    assert_true(last_action(&s)->is.load.drag_out_kg_m2 < 0); /* left to the model */
    forget(&s, &m);
}

static void a_steam_coil_has_keys_of_its_own(void **state)
{
    (void)state;
    scenario s;
    messages m;
    static const char *const stated[] = {"125 psig", "8.6184466 bar(g)", "139.69595 psia", "963.17 kPa", "9.5057 atm"};
    for (size_t i = 0; i < sizeof stated / sizeof stated[0]; i++) {
        char text[600];
        snprintf(text, sizeof text,
                 "[tank]\nlength = 60 in\nwidth = 30 in\ndepth = 36 in\nlevel = 26 in\n"
                 "[bath]\nsalts = 100 %% NaOH\nboiling point = 285 degF\n"
                 "[heat]\nsource = steam\nsteam pressure = %s\ncoil area = 30 ft2\n[room]\nstation pressure = 1 atm\n",
                 stated[i]);
        read_good(text, &s, &m);
        /* 963.17 kPa: 178.1 degC in the steam tables, 353 degF beside 125 psig in a handbook's table, from memory */
        assert_close(s.plant.heater.steam_K, boil_water_saturation_temperature(963.17e3), 0, 0.01);
        assert_close(s.plant.heater.coil_area_m2, 30 * 144 * INCH * INCH, 1e-14, 0);
        assert_close(s.plant.heater.coil_W_m2K, 800, 0, 0);
        assert_close(s.plant.heater.lag_s, 30, 0, 0);
        assert_int_equal(s.settings[key_index(key_find("heat", "input", 5))].state, SETTING_ABSENT);
        assert_int_equal(s.settings[key_index(key_find("heat", "steam temperature", 17))].state, SETTING_ABSENT);
        forget(&s, &m);
    }
}

/* clang-format off */
#define TANK "[tank]\nlength = 60 in\nwidth = 30 in\ndepth = 36 in\nlevel = 26 in\n" \
             "[bath]\nsalts = 100 % NaOH\nboiling point = 285 degF\n" /* 8 lines */
/* clang-format on */

static void mistakes_about_steam_are_named(void **state)
{
    (void)state;
    EXPECT(TANK "[heat]\nsource = steam\ninput = 50 kW\nefficiency = 50 %\n", "9:1: [heat] needs 'coil area'",
           "9:1: [heat] needs one of 'steam temperature' and 'steam pressure'",
           "11:1: 'input' does not belong to a steam coil, whose heat follows from its steam, area and coefficient",
           "12:1: 'efficiency' does not belong to a steam coil");
    EXPECT(TANK "[heat]\nsource = steam\ncoil area = 3 m2\ncoil coefficient = 20 W/m2K\nsteam pressure = 50 psi\n"
                "steam temperature = 300 degF\n",
           "12:20: 'coil coefficient' must be between 60 W/m2K and 1700 W/m2K, got '20 W/m2K'",
           "13:1: 'steam pressure' stands beside 'steam temperature' of line 14: give only one of them",
           "13:21: 'psi' does not say from where it counts");
    expect_one(TANK "[heat]\nsource = steam\ncoil area = 3 m2\nsteam pressure = 400 psig\n",
               "12:18: 'steam pressure' must be between 0 psig and 200 psig, got '400 psig'");
    expect_one(TANK "[heat]\nsource = steam\ncoil area = 3 m2\nsteam pressure = 10 kPa\n",
               "12:18: 'steam pressure' must be between 101.42 kPa and 1550 kPa, got '10 kPa'");
    expect_one(TANK "[heat]\ninput = 50 kW\ncoil area = 3 m2\n",
               "11:1: 'coil area' belongs to a steam coil; this source has 'input' and 'efficiency'");
    expect_one(TANK "[heat]\nsource = steem\ncoil area = 3 m2\n",
               "10:10: 'source' must be gas or electric or steam, got 'steem'; did you mean 'steam'?");
    /* A gauge that stands at nothing, high up: its steam is colder than the model's least. */
    expect_one(TANK "[heat]\nsource = steam\ncoil area = 3 m2\nsteam pressure = 0 psig\n[room]\naltitude = 9000 ft\n",
               "9:1: temperature of the steam must be between");
    expect_one(TANK "[heat]\ninput = 50 kW\n[room]\nstation pressure = 14 psig\n",
               "12:23: 'psig' counts from the room's own pressure");
}

#define TANK_ONLY "[tank]\nlength = 60 in\nwidth = 30 in\ndepth = 36 in\nlevel = 26 in\n"

static void water_may_float_already(void **state)
{
    (void)state;
    scenario s;
    messages m;
    read_good(PLANT "[room]\ntemperature = 60 degF\n[fittings]\nlid = off\n", &s, &m);
    assert_true(s.plant.afloat.mass_kg == 0);
    forget(&s, &m);
    read_good("[bath]\nwater afloat = 2 gal\nsalts = 100 % NaOH\nboiling point = 280 degF\ntemperature = 270 degF\n" TANK_ONLY
              "[heat]\ninput = 50 kW\n[room]\ntemperature = 60 degF\n",
              &s, &m);
    assert_close(s.plant.afloat.temperature_K, (60 - 32) / 1.8 + 273.15, 0, 1e-9);
    assert_close(s.plant.afloat.mass_kg, 2 * GALLON * boil_water_density(s.plant.afloat.temperature_K), 1e-12, 0);
    forget(&s, &m);
    read_good("[bath]\nwater afloat = 5 kg at 90 degC\nsalts = 100 % NaOH\nboiling point = 280 degF\n" TANK_ONLY
              "[heat]\ninput = 50 kW\n",
              &s, &m);
    assert_close(s.plant.afloat.temperature_K, 363.15, 0, 1e-9);
    assert_close(s.plant.afloat.mass_kg, 5, 1e-12, 0);
    forget(&s, &m);
    EXPECT("[bath]\nwater afloat = 2 in\nsalts = 100 % NaOH\nboiling point = 280 degF\n" TANK_ONLY "[heat]\ninput = 50 kW\n",
           "2:18: 'in' is a length");
    EXPECT("[bath]\nwater afloat = 2 gal at 110 degC\nsalts = 100 % NaOH\nboiling point = 280 degF\n" TANK_ONLY
           "[heat]\ninput = 50 kW\n",
           "2:25: 'at' must be between 0 degC and 100 degC");
    /* at 9000 ft water boils at 91 degC, and the mistake stands where the water does */
    EXPECT("[bath]\nwater afloat = 2 gal at 95 degC\nsalts = 100 % NaOH\nboiling point = 280 degF\n" TANK_ONLY
           "[heat]\ninput = 50 kW\n[room]\naltitude = 9000 ft\n",
           "2:16: water afloat must be between 273.15 K and the boiling point of water in the room");
}

#define COLD "[bath]\nsalts = 60 % NaOH, 30 % NaNO3, 10 % NaNO2\nboiling point = 285 degF\ntemperature = 80 degF\ncrust = "
#define COLD_TANK "\n" TANK_ONLY "[heat]\ninput = 50 kW\n"

static void a_crust_may_hang_already(void **state)
{
    (void)state;
    scenario s;
    messages m;
    read_good(COLD "40 lb" COLD_TANK, &s, &m);
    assert_close(s.plant.crust_kg, 40 * POUND, 1e-12, 0);
    forget(&s, &m);
    /* half an inch over 60 in by 30 in; a plate of salt, 2200 kg/m3 with three tenths to a half of pores */
    read_good(COLD "1/2 in" COLD_TANK, &s, &m);
    double solid_kg = 0.5 * INCH * 60 * INCH * 30 * INCH * 2200;
    assert_true(s.plant.crust_kg > 0.5 * solid_kg && s.plant.crust_kg < 0.7 * solid_kg);
    forget(&s, &m);
    EXPECT(COLD "4000 lb" COLD_TANK, "5:9: crust and salt on the floor must be less than the nitrate and nitrite of the bath");
    EXPECT(COLD "2 gal" COLD_TANK, "5:11: 'gal' is a volume, but 'crust' is a length or a mass");
    EXPECT("[bath]\nsalts = 60 % NaOH, 30 % NaNO3, 10 % NaNO2\nboiling point = 285 degF\ncrust = 40 lb" COLD_TANK,
           "4:9: bath with crust or salt on the floor must be colder than the boiling point of what is left dissolved");
}

/* The same plate on the floor; "none" is a statement too, and silence is none. */
static void salt_may_lie_on_the_floor_already(void **state)
{
    (void)state;
    scenario s, crusted;
    messages m, n;
    read_good(COLD "none\nsalt on the floor = 1/2 in" COLD_TANK, &s, &m);
    read_good(COLD "1/2 in" COLD_TANK, &crusted, &n);
    assert_close(s.plant.bed_kg, crusted.plant.crust_kg, 1e-12, 0);
    assert_true(s.plant.crust_kg == 0 && s.plant.salt_stated);
    forget(&s, &m);
    forget(&crusted, &n);
    read_good(COLD "none" COLD_TANK, &s, &m);
    assert_true(s.plant.salt_stated);
    forget(&s, &m);
    read_good("[bath]\nsalts = 60 % NaOH, 30 % NaNO3, 10 % NaNO2\nboiling point = 285 degF\ntemperature = 80 degF" COLD_TANK,
              &s, &m);
    assert_false(s.plant.salt_stated);
    forget(&s, &m);
    EXPECT(COLD "200 lb\nsalt on the floor = 4000 lb" COLD_TANK,
           "5:9: crust and salt on the floor must be less than the nitrate and nitrite of the bath");
}

/* 91.5 kBtu a gallon, from memory. */
static void propane_may_be_said_by_its_flow(void **state)
{
    (void)state;
    scenario s;
    messages m;
    read_good(TANK "[heat]\nfuel = propane\ninput = 3.6 gal/h\n[prices]\ngas = 2.50 per gal\n", &s, &m);
    assert_close(s.plant.heater.input_W, 3.6 * 91.5e3 * 1055.056 / 3600, 1e-6, 0);
    assert_close(s.prices.gas, 2.5 / GALLON, 1e-12, 0);
    forget(&s, &m);
    read_good(TANK "[heat]\nfuel = propane\ninput = 330 kBtu/h\n[prices]\ngas = 1.20 per therm\n", &s, &m);
    assert_int_equal(s.fuel, FUEL_PROPANE);
    forget(&s, &m);
    read_good(TANK "[heat]\nsource = natural gas\nfuel = natural gas\ninput = 330 kBtu/h\n", &s, &m);
    assert_true(s.fuel == FUEL_NATURAL_GAS && m.remarks == 1); /* about the source */
    forget(&s, &m);
    EXPECT(TANK "[heat]\ninput = 3.6 gal/h\n[prices]\ngas = 2.50 per gal\n", "10:9: a flow is an input of liquid propane alone",
           "12:7: natural gas is priced by its heat");
    EXPECT(TANK "[heat]\nsource = electric\nfuel = propane\ninput = 50 kW\n", "11:1: 'fuel' belongs to source = gas");
    EXPECT(TANK "[heat]\nfuel = propan\ninput = 50 kW\n",
           "10:8: 'fuel' must be natural gas or propane, got 'propan'; did you mean 'propane'?");
    EXPECT(TANK "[heat]\nsource = propane\ninput = 50 kW\n",
           "10:10: 'propane' is a gas too: write source = gas, with fuel = propane");
}

static void what_is_taken_may_be_counted(void **state)
{
    (void)state;
    scenario s;
    messages m;
    read_good(PLANT "[measures]\npail = 5 gal\nbag = 50 lb\n[schedule]\n0:05 bail 2 pails over 5 min, as drum 1\n"
                    "0:15 drain to level 20 in, at 5 gal/min, at most 1/2 pail\n"
                    "0:30 water at 1 gal/min until the mark, at most 2 pails\n0:50 return drum 1 over 5 min, at 200 degF\n",
              &s, &m);
    const boil_action *a = s.schedule.actions;
    assert_close(a[0].is.take.volume_m3, 10 * GALLON, 1e-12, 0);
    assert_close(a[1].is.take.volume_m3, 2.5 * GALLON, 1e-12, 0);
    assert_close(a[1].is.take.over_s, 30, 1e-9, 0);
    assert_close(a[2].is.water.mass_kg, 10 * GALLON * boil_water_density(a[2].is.water.temperature_K), 1e-9, 0);
    assert_close(a[3].is.back.temperature_K, FAHRENHEIT(200), 0, 1e-9);
    forget(&s, &m);
    EXPECT(PLANT "[measures]\nbag = 50 lb\n[schedule]\n0:05 bail 2 bags over 5 min, as drum 1\n"
                 "0:05 bail 2 pails over 5 min\n0:05 bail 2 gal over 5 min, at most 1 gal\n"
                 "0:05 drain to the mark, at 1 gal/min, at most 1 bag\n"
                 "0:05 drain to the mark, at 1 gal/min, at most 1 gal, at most 2 gal\n"
                 "0:05 bail 2 gal over 5 min, as drum 2\n0:15 return drum 2 over 5 min, at 500 degF\n"
                 "0:15 return drum 2 over 5 min, slowly\n0:15 return drum 2 over 5 min, at 90 degF, at 90 degF\n",
           "14:11: a 'bag' is weighed, but 'bail' is a volume",
           "15:13: 'pail' is no measure yet: add '[measures]' with 'pail = 5 gal'",
           "16:37: 'at most' belongs to 'to' or 'until'; here the amount is said",
           "17:47: a 'bag' is weighed, but 'at most' is a volume", "18:54: 'at most' is said twice",
           "20:35: 'at' must be between", "21:32: expected 'at' and a temperature, got 'slowly'",
           "22:44: 'at 90 degF' is not expected here");
}

static void parts_come_from_a_rinse(void **state)
{
    (void)state;
    scenario s;
    messages m;
    read_good(PLANT
              "[room]\ntemperature = 70 degF\n[rinse]\ntemperature = 160 degF\nfilm = 80 mL/m2\ndwell = 20 min\n[schedule]\n"
              "0:05 load 80 lb, plate 1/4 in\n0:06 load 80 lb, plate 1/4 in, at 90 degF, rinse 20 mL/m2\n"
              "0:07 load 80 lb, plate 1/4 in, straight in\n"
              "0:08 load 80 lb, plate 1/4 in, 120 pieces, pockets 15 mL each\n"
              "0:09 load 80 lb, plate 1/4 in, 120 pieces, pockets 1.8 L in all, drained\n"
              "0:10 load 80 lb, plate 1/4 in, pockets 1 L in all\n",
              &s, &m);
    const boil_action *a = s.schedule.actions;
    double hot = FAHRENHEIT(160), water = boil_water_density(hot);
    assert_close(a[0].is.load.temperature_K, hot, 0, 1e-6);
    assert_close(a[0].is.load.rinse_kg_m2, 80e-6 * water, 1e-12, 0);
    assert_close(a[1].is.load.temperature_K, FAHRENHEIT(90), 0, 1e-9);
    assert_close(a[1].is.load.rinse_kg_m2, 20e-6 * boil_water_density(FAHRENHEIT(90)), 1e-12, 0);
    assert_close(a[1].is.load.water_K, hot, 0, 1e-9);
    assert_true(a[2].is.load.rinse_kg_m2 == 0 && a[2].is.load.water_K == 0);
    assert_close(a[2].is.load.temperature_K, FAHRENHEIT(70), 0, 1e-9);
    assert_close(a[3].is.load.trapped_kg, 1.8e-3 * water, 1e-12, 0);
    assert_close(a[3].is.load.hollow_m3, 15e-6, 1e-12, 0);
    assert_close(a[4].is.load.trapped_kg, 0.18e-3 * water, 1e-12, 0);
    assert_close(a[4].is.load.hollow_m3, 1.5e-6, 1e-12, 0);
    assert_close(a[5].is.load.hollow_m3, 1e-3, 1e-12, 0);
    forget(&s, &m);
}

static void a_stay_may_count_at_the_boil(void **state)
{
    (void)state;
    scenario s;
    messages m;
    read_good(SCHEDULE "0:05 load 8 lb, plate 1/4 in, for 20 min at the boil\n"
                       "0:06 load 8 lb, plate 1/4 in, for 20 min at the  boil , no later than 1:00, as rack 1\n"
                       "0:50 lift rack 1\n1:10 load 8 lb, plate 1/4 in, for 20 min\n",
              &s, &m);
    const boil_action *a = s.schedule.actions;
    assert_true(a[0].is.load.at_boil && a[1].is.load.at_boil && !a[3].is.load.at_boil);
    assert_close(a[0].is.load.immersed_s, 1200, 0, 0);
    assert_close(a[0].is.load.latest_s, 0, 0, 0);
    assert_close(a[1].is.load.latest_s, 3600, 0, 0);
    forget(&s, &m);
    EXPECT(SCHEDULE "0:05 load 8 lb, plate 1/4 in, for 20 min, no later than 1:00\n"
                    "0:05 load 8 lb, plate 1/4 in, no later than 1:00, for 20 min at the boil, no later than 1:00\n"
                    "1:05 load 8 lb, plate 1/4 in, for 20 min at the boil, no later than 1:00\n"
                    "0:05 load 8 lb, plate 1/4 in, for at the boil\n"
                    "0:05 load 8 lb, plate 1/4 in, for 20 min at boil\n",
           "12:43: 'no later than' belongs to a time that counts at the boil: 'for 20 min at the boil'",
           "13:75: 'no later than' is said twice", "14:6: 'no later than' is not after the act's own time",
           "15:34: 'for' has no value", "16:42: 'at boil' is not expected here");
}

static void mistakes_about_hollows_are_named(void **state)
{
    (void)state;
    EXPECT(SCHEDULE
           "0:05 load 80 lb, plate 1/4 in, pockets 15 mL each\n0:06 load 80 lb, plate 1/4 in, 12 pieces, pockets 15 mL\n"
           "0:07 load 80 lb, plate 1/4 in, drained\n0:08 load 80 lb, plate 1/4 in, straight in, rinse 20 mL/m2\n"
           "0:09 load 80 lb, tube 1 in wall 2 mm, closed\n0:10 load 80 lb, plate 1/4 in, 12 pieces, 13 pieces\n"
           "0:11 load 80 lb, plate 1/4 in, position 1\n",
           "12:40: 'pockets ... each' needs how many: add '120 pieces'", "13:56: 'pockets' needs 'each' or 'in all'",
           "14:32: 'drained' says how hollows were left", "15:32: 'straight in' brings no water from a rinse",
           "16:39: a closed hollow bursts in the bath: drill it, or leave it out", "17:43: 'pieces' is said twice",
           "18:32: how many places are there? Give 'positions' in [tank]");
}

#define PLACES "[tank]\nlength = 60 in\nwidth = 30 in\ndepth = 36 in\nlevel = 26 in\npositions = "
#define PLACED                                                                                                                 \
    "\n[bath]\nsalts = 100 % NaOH\nboiling point = 285 degF\n[heat]\ninput = 50 kW\n[schedule]\n" /* from line 13 on */

static void loads_hang_in_places(void **state)
{
    (void)state;
    scenario s;
    messages m;
    read_good(PLACES "2" PLACED
                     "0:05 load 8 lb, plate 1/4 in, for 20 min\n0:10 load 8 lb, plate 1/4 in, for 5 min, position 2\n"
                     "0:16 load 8 lb, plate 1/4 in, for 5 min\n0:26 load 8 lb, plate 1/4 in, for 5 min\n",
              &s, &m);
    const int wanted[] = {1, 2, 2, 1};
    for (size_t i = 0; i < sizeof wanted / sizeof wanted[0]; i++)
        assert_int_equal(s.schedule.actions[i].position, wanted[i]);
    forget(&s, &m);
    EXPECT(PLACES "2" PLACED "0:05 load 8 lb, plate 1/4 in, as rack 1, for 36 min\n0:10 load 8 lb, plate 1/4 in, as rack 2\n"
                  "0:35 load 8 lb, plate 1/4 in, for 5 min\n0:50 lift rack 2\n0:55 load 8 lb, plate 1/4 in, for 1 min\n",
           "15:6: both positions are taken at 0:35: 'rack 1' until 0:41:10, 'rack 2' until 0:50:10");
    expect_one(PLACES "2" PLACED
                      "0:05 load 8 lb, plate 1/4 in, for 5 min\n0:06 load 8 lb, plate 1/4 in, position 1, for 5 min\n",
               "14:6: position 1 is taken at 0:06: the load of 0:05 until 0:10:10");
    expect_one(PLACES "2" PLACED "0:05 load 8 lb, plate 1/4 in, for 5 min, position 3\n",
               "13:51: 'position' must be a whole number from 1 to 2, got '3'");
    /* from one on that waits, or stays at the boil, the run finds the places, but for what is certain */
    read_good(PLACES "2" PLACED
                     "0:05 load 8 lb, plate 1/4 in, for 20 min at the boil\n0:10 load 8 lb, plate 1/4 in, for 20 min\n"
                     "0:26 load 8 lb, plate 1/4 in, for 5 min\n",
              &s, &m);
    const int known[] = {1, 0, 0};
    for (size_t i = 0; i < sizeof known / sizeof known[0]; i++)
        assert_int_equal(s.schedule.actions[i].position, known[i]);
    forget(&s, &m);
    expect_one(PLACES "1" PLACED "0:05 load 8 lb, plate 1/4 in, for 20 min at the boil\n0:25 load 8 lb, plate 1/4 in\n",
               "14:6: the position is taken at 0:25: the load of 0:05 until 0:25:20");
    expect_one(PLACES "1.5" PLACED, "6:13: 'positions' is a whole number");
}

static void the_heat_may_have_a_control(void **state)
{
    (void)state;
    scenario s;
    messages m;
    const boil_heat_control *c = &s.plant.heat_control;
    read_good(PLANT "control = modulating\nset point = 290 degF\nturndown = 4:1\nband = 9 degF\nsensor lag = 10 s\n"
                    "relight = 5 s\nhigh limit = 320 degF\n[schedule]\n0:10 heat thermostat 250 degF\n0:20 heat dial\n"
                    "0:30 heat on\n0:40 heat 30 %\n",
              &s, &m);
    assert_int_equal(c->mode, BOIL_HEAT_CONTROL_MODULATING);
    assert_close(c->set_point_K, (290 - 32) / 1.8 + 273.15, 0, 1e-9);
    assert_close(c->minimum_fire, 0.25, 1e-15, 0);
    assert_close(c->band_K, 5, 1e-12, 0);
    assert_true(c->sensor_lag_s == 10 && c->relight_s == 5);
    assert_close(c->high_limit_K, 160 + 273.15, 0, 1e-9);
    const boil_heat_order orders[] = {BOIL_HEAT_THERMOSTAT, BOIL_HEAT_DIAL, BOIL_HEAT_ON, BOIL_HEAT_TURN};
    for (size_t i = 0; i < sizeof orders / sizeof orders[0]; i++)
        assert_int_equal(s.schedule.actions[i].is.heat.order, orders[i]);
    assert_close(s.schedule.actions[0].is.heat.set_point_K, (250 - 32) / 1.8 + 273.15, 0, 1e-9);
    assert_close(s.schedule.actions[3].is.heat.dial, 0.3, 0, 0);
    forget(&s, &m);
    read_good(PLANT "control = thermostat\nset point = 140 degC\n", &s, &m);
    assert_true(c->differential_K == 4 && c->sensor_lag_s == 30 && c->relight_s == 15 && c->high_limit_K == 0);
    forget(&s, &m);
}

static void mistakes_about_the_heats_control_are_named(void **state)
{
    (void)state;
    EXPECT(PLANT "control = modulating\nturndown = 0.25 to 1\ndial = 50 %\ndifferential = 2 K\n",
           "9:1: [heat] needs 'set point'", "12:12: 'turndown' is at least 1 to 1",
           "13:1: 'dial' belongs to control = dial; a control burns full fire",
           "14:1: 'differential' belongs to an on/off thermostat; a modulating control has a 'band'");
    expect_one(PLANT "control = modulating\nset point = 285 degF\nturndown = 4\n",
               "13:12: 'turndown' is a ratio to 1: write 4 to 1");
    expect_one(PLANT "control = modulating\nset point = 285 degF\nturndown = 4 to 1\nminimum fire = 25 %\n",
               "13:1: 'turndown' stands beside 'minimum fire' of line 14: give only one of them");
    EXPECT(PLANT "control = thermostat\nset point = 285 degF\nband = 2 K\nturndown = 4 to 1\n",
           "13:1: 'band' belongs to control = modulating", "14:1: 'turndown' belongs to control = modulating");
    EXPECT(SCHEDULE "0:10 heat thermostat\n0:20 heat thermostat 50 %\n0:30 heat thermostat 500 degF\n",
           "12:21: 'thermostat' has no value", "13:25: '%' is a percentage", "14:22: 'thermostat' must be between");
}

#define CONTROL PLANT "[water control]\n" /* keys start on line 12 */

static void automatic_water_is_read(void **state)
{
    (void)state;
    scenario s;
    messages m;
    read_good(PLANT, &s, &m);
    assert_int_equal(s.plant.control.mode, BOIL_WATER_CONTROL_NONE);
    assert_int_equal(s.settings[key_index(key_find("water control", "rate", 4))].state, SETTING_ABSENT);
    forget(&s, &m);
    read_good(CONTROL "set point = 285 degF\ndifferential = 1 degF\nrate = 12 gal/h\n[room]\ntemperature = 60 degF\n", &s, &m);
    const boil_water_control *c = &s.plant.control;
    assert_int_equal(c->mode, BOIL_WATER_CONTROL_ON_OFF);
    assert_close(c->set_point_K, FAHRENHEIT(285), 1e-15, 0);
    assert_close(c->differential_K, 1 / 1.8, 1e-14, 0);
    assert_close(c->water_K, FAHRENHEIT(60), 1e-15, 0);
    assert_close(c->rate_kg_s, 12 * GALLON / 3600 * boil_water_density(FAHRENHEIT(60)), 1e-14, 0);
    assert_true(c->only_while_boiling);
    assert_close(c->low_level_m, 0, 0, 0);
    assert_int_equal(s.settings[key_index(key_find("water control", "band", 4))].state, SETTING_ABSENT);
    forget(&s, &m);
    read_good(CONTROL "mode = time-proportioned\nset point = 141 degC\nband = 3 degF\nperiod = 1 min\nrate = 40 kg/h\n"
                      "water temperature = 10 degC\ndead time = 5 s\nsensor lag = 20 s\nonly while boiling = no\n"
                      "low level cut-off = 20 in\n",
              &s, &m);
    assert_int_equal(c->mode, BOIL_WATER_CONTROL_PROPORTIONED);
    assert_close(c->band_K, 3 / 1.8, 1e-14, 0);
    assert_close(c->period_s, 60, 0, 0);
    assert_close(c->rate_kg_s, 40.0 / 3600, 1e-15, 0);
    assert_close(c->water_K, 283.15, 1e-15, 0);
    assert_close(c->dead_time_s, 5, 0, 0);
    assert_close(c->sensor_lag_s, 20, 0, 0);
    assert_false(c->only_while_boiling);
    assert_close(c->low_level_m, 20 * INCH, 1e-15, 0);
    forget(&s, &m);
    read_good(CONTROL "mode = none\nset point = 141 degC\nrate = 40 kg/h\nband = 2 K\ndifferential = 1 K\n", &s, &m);
    assert_int_equal(c->mode, BOIL_WATER_CONTROL_NONE);
    forget(&s, &m);
}

static void mistakes_about_automatic_water_are_named(void **state)
{
    (void)state;
    EXPECT(CONTROL, "11:1: [water control] needs 'set point'", "11:1: [water control] needs 'rate'");
    EXPECT(CONTROL "set point = 90 degC\nrate = 12 gal\nband = 2 K\nonly while boiling = maybe\ndead time = 20 min\n"
                   "differential = 40 degF\nwater temperature = 90 degC\n",
           "12:13: 'set point' must be between 100 degC and 200 degC, got '90 degC'",
           "13:11: 'gal' is a volume, but 'rate' is a volume flow or a mass flow",
           "14:1: 'band' belongs to mode = time-proportioned; an on/off valve has a 'differential'",
           "15:22: 'only while boiling' must be no or yes, got 'maybe'",
           "16:13: 'dead time' must be between 0 s and 600 s, got '20 min'",
           "17:16: 'differential' must be between 0.1 K and 20 K, got '40 degF'",
           "18:21: 'water temperature' must be between 0 degC and 85 degC");
    EXPECT(CONTROL "mode = time-proportioned\nset point = 141 degC\nrate = 700 L/min\ndifferential = 1 K\n",
           "14:8: 'rate' must be between 0.001 L/min and 600 L/min, got '700 L/min'",
           "15:1: 'differential' belongs to mode = on/off; a time-proportioned valve has 'band' and 'period'");
    expect_one(CONTROL "mode = onoff\nset point = 141 degC\nrate = 1 L/min\nband = 2 K\ndifferential = 1 K\n",
               "12:8: 'mode' must be none or on/off or time-proportioned, got 'onoff'");
    expect_one(CONTROL "set point = 141 degC\nrate = 1 L/min\n[room]\ntemperature = -5 degC\n",
               "11:1: [water control] needs 'water temperature', because the room is below freezing");
    expect_one(PLANT "set point = 141 degC\n",
               "11:1: 'set point' belongs to control = thermostat or modulating; that of automatic water");
}

static void fittings_are_read(void **state)
{
    (void)state;
    scenario s;
    messages m;
    read_good(PLANT, &s, &m);
    const boil_fittings *f = &s.plant.fittings;
    assert_true(!f->mixer_on && !f->lid_on && f->exhaust_on);
    assert_close(f->mixer_W, 0, 0, 0);
    forget(&s, &m);
    read_good(PLANT "[fittings]\nmixer power = 0.3 kW\nmixer = on\nlid = on\nexhaust = off\n"
                    "still draught = 20 ft/min\nlid coefficient = 5 W/m2K\nlid return = 60 %\ngrain size = 2 mm\n",
              &s, &m);
    assert_true(f->mixer_on && f->lid_on && !f->exhaust_on);
    assert_close(f->mixer_W, 300, 1e-15, 0);
    assert_close(f->still_draught_m_s, 20 * 12 * INCH / 60, 1e-15, 0);
    assert_close(f->lid_W_m2K, 5, 0, 0);
    assert_close(f->lid_return, 0.6, 1e-15, 0);
    assert_close(f->grain_m, 0.002, 1e-15, 0);
    forget(&s, &m);
    EXPECT(PLANT "[fittings]\nmixer power = 200 kW\nlid = closed\nexhaust = 1\nstill draught = 4 m/s\n"
                 "lid coefficient = 50 W/m2K\nlid return = 0.6\ngrain size = 1 in\n",
           "12:15: 'mixer power' must be between 0 W and 100000 W, got '200 kW'", "13:7: 'lid' must be off or on, got 'closed'",
           "14:11: 'exhaust' must be off or on, got '1'", "15:17: 'still draught' must be between 0 m/s and 3 m/s",
           "16:19: 'lid coefficient' must be between 1 W/m2K and 20 W/m2K", "17:17: 'lid return' is a percentage",
           "18:14: 'grain size' must be between 0.2 mm and 10 mm");
}

static void mistakes_in_additions_are_named(void **state)
{
    (void)state;
    EXPECT("duration = 4 h\n" PLANT "[schedule]\n"
           "0:05 salts 6 lb\n"
           "0:05 salts 6 gal over 3 min\n"
           "0:05 salts 6 lb over 3 min, blend 50 % NaOH, 40 % NaNO3\n"
           "0:05 salts 6 lb over 3 min, blend 50 % NaOH, 50 % NaCl, at 20 degC\n"
           "0:05 salts 6 lb over 3 min, at 300 degC\n"
           "0:05 salts 6 lb over 0.1 s, at 20 degC, at 20 degC\n"
           "0:05 salts 6 lb over 3 min, strength 5 lb/gal\n"
           "0:05 salts\n"
           "4:05 salts 6 lb over 3 min\n"
           "0:05 liquid 4 gal at 2 gal/min\n"
           "0:05 liquid 4 gal over 2 min, strength 5 lb/gal, boiling point 285 degF\n"
           "0:05 liquid 4 gal over 2 min, boiling point 150 degF\n"
           "0:05 liquid 4 gal over 2 min, at 300 degF\n"
           "0:05 liquid 4 gal over 2 min, boiling point 260 degF, at 270 degF\n"
           "0:05 liquid 0 gal over 2 min, blend 100 % NaOH\n"
           "0:05 mixer\n"
           "0:05 lid half\n"
           "0:05 exhaust on fully\n"
           "0:05 load 5 kg, bar 1 in, drag-out 5 L per 1 m2\n",
           "13:16: say how slowly: 'over 3 min'", "14:14: 'gal' is a volume, but 'salts' is a mass",
           "15:34: the shares of 'blend' add up to 90 %: 10 % are missing; NaNO2?",
           "16:51: expected a salt (NaOH, NaNO3 or NaNO2), got 'NaCl'",
           "17:32: 'at' must be between -30 degC and 200 degC, got '300 degC'", "18:41: 'at' is said twice",
           "19:29: expected 'at' and a temperature, or 'blend' and the salts, got 'strength 5 lb/gal'",
           "20:11: say how much salts, for example 'salts 6 lb over 3 min'", "21:1: 4:05 is after the end, 4:00",
           "22:19: say how slowly: 'over 2 min'", "23:64: 'boiling point' stands beside 'strength'",
           "24:45: there is no boiling liquid of the bath's salts with this 'boiling point'",
           "25:34: 'at' must be between 0 degC and 140 degC, got '300 degF'",
           "26:58: 'at' must be between 0 degC and 126 degC, got '270 degF'",
           "27:31: expected 'at' and a temperature, 'strength' or 'boiling point', got 'blend 100 % NaOH'",
           "28:11: say 'mixer on' or 'mixer off'", "29:10: say 'lid on' or 'lid off'", "30:17: 'fully' is not expected here",
           "31:36: 'drag-out' must be between 0 mL/m2 and 500 mL/m2, got '5 L per 1 m2'");
    expect_one(PLANT "[room]\ntemperature = -5 degC\n[schedule]\n0:05 salts 6 lb over 3 min\n"
                     "0:06 liquid 1 L over 1 min\n",
               "15:27: the room is below freezing: say how warm the liquid is");
}

static void actions_are_in_order(void **state)
{
    (void)state;
    static const double minutes[] = {5, 6, 20, 20, 36, 66, 90, 96, 180, 190, 200, 210};
    scenario s;
    messages m;
    read_good(full, &s, &m);
    assert_int_equal(s.schedule.count, sizeof minutes / sizeof minutes[0]);
    for (size_t i = 0; i < s.schedule.count; i++)
        assert_close(s.schedule.actions[i].time_s, 60 * minutes[i], 1e-15, 0);
    assert_int_equal(s.schedule.actions[2].kind, BOIL_ACTION_WATER); /* file order at equal times */
    assert_int_equal(s.schedule.actions[3].kind, BOIL_ACTION_HEAT);
    assert_close(s.schedule.actions[3].is.heat.dial, 0.5, 0, 0);
    assert_int_equal(s.wording.names_count, 2);
    assert_int_equal(s.schedule.actions[10].name, action_worded(&s, "3 kg of 1.25 in tube (B)", 0)->name);
    assert_string_equal(s.wording.names[s.schedule.actions[10].name - 1], "B");
    assert_int_equal(s.schedule.actions[11].name, 0);
    assert_int_equal(s.wording.lines[s.wording.line_of[11]].line, 46);
    forget(&s, &m);
}

static void every_stops_at_the_end_of_the_shift(void **state)
{
    (void)state;
    scenario s;
    messages m;
    read_good("duration = 1 h\n" SCHEDULE "every 20 min heat on\nevery 0.1 h from 0:30 to 0:54 heat off\n", &s, &m);
    assert_int_equal(s.schedule.count, 4 + 5);
    assert_close(s.schedule.actions[0].time_s, 0, 0, 0);
    assert_close(s.schedule.actions[8].time_s, 3600, 0, 0);
    assert_close(s.schedule.actions[7].time_s, 54 * 60, 0, 0);
    forget(&s, &m);
}

/* 30 min after the last thing that goes on. */
static double default_duration(const char *text)
{
    scenario s;
    messages m;
    read_good(text, &s, &m);
    double duration = s.schedule.duration_s;
    assert_int_equal(s.settings[key_index(key_find("", "duration", 8))].state, SETTING_DEFAULT);
    forget(&s, &m);
    return duration;
}

static void duration_follows_the_last_action(void **state)
{
    (void)state;
    assert_close(default_duration(PLANT), 1800, 0, 0);
    assert_close(default_duration(SCHEDULE "1:00 heat off\n"), 3600 + 1800, 0, 0);
    assert_close(default_duration(SCHEDULE "1:00 water 1 gal over 5 min\n"), 3900 + 1800, 0, 0);
    assert_close(default_duration(SCHEDULE "1:00 load 1 lb, bar 1 in, for 20 min, lowered over 7 s\n"), 4807 + 1800, 0, 0);
    assert_close(default_duration(SCHEDULE "1:00 load 1 lb, bar 1 in, lowered over 7 s\n"), 3607 + 1800, 0, 0);
    assert_close(default_duration(SCHEDULE "1:00 load 1 lb, bar 1 in, for 8 h\n2:00 lift\n"), 7210 + 1800, 0, 0);
}

static void settings_know_whether_they_were_given(void **state)
{
    (void)state;
    scenario s;
    messages m;
    double value[SETTING_VALUES];
    read_good(full, &s, &m);
    for (size_t i = 0; i < key_count(); i++) {
        const scenario_setting *set = &s.settings[i];
        size_t count = scenario_setting_value(&s, i, value);
        assert_ptr_equal(set->key, key_at(i));
        assert_int_equal(set->given != NULL, set->state == SETTING_GIVEN);
        if (set->state == SETTING_ABSENT)
            assert_int_equal(count, 0);
        if (strcmp(set->key->words, "diameter") == 0 || strcmp(set->key->words, "station pressure") == 0)
            assert_int_equal(set->state, SETTING_ABSENT);
        if (strcmp(set->key->words, "dial") == 0) {
            assert_int_equal(set->state, SETTING_DEFAULT);
            assert_close(value[0], 1, 0, 0);
        }
        if (strcmp(set->key->words, "wall") == 0) {
            assert_string_equal(set->given, "1/4 in");
            assert_int_equal(set->line, 11);
            assert_close(value[0], INCH / 4, 1e-15, 0);
        }
    }
    forget(&s, &m);
}

static void other_ways_to_say_it(void **state)
{
    (void)state;
    scenario s;
    messages m;
    read_good("[tank]\nshape = Upright Cylinder\ndiameter = 1 m\ndepth = 1 m\nlevel = 0.7 m\nwall = none\n"
              "heated = inside\nheater top = 20 cm\nparts top = 50 cm\n"
              "[bath]\nsalts = 100 % sodium hydroxide\nstrength = 6 lb per 1 gal\n[heat]\ninput = 50 kW\ndial = 40 %\n"
              "[room]\nstation pressure = 28.9 inHg\n",
              &s, &m);
    assert_int_equal(s.plant.tank.shape, BOIL_TANK_UPRIGHT_CYLINDER);
    assert_close(s.plant.tank.diameter_m, 1, 0, 0);
    assert_close(s.plant.tank.wall_thickness_m, 0, 0, 0);
    assert_int_equal(s.plant.tank.heated, BOIL_TANK_HEATED_INSIDE);
    assert_close(s.plant.tank.heater_top_m, 0.2, 1e-15, 0);
    assert_close(s.plant.tank.parts_top_m, 0.5, 1e-15, 0);
    assert_int_equal(s.plant.charge.basis, BOIL_INITIAL_BY_STRENGTH);
    assert_close(s.plant.charge.value, 6 * POUND / GALLON, 1e-14, 0);
    assert_close(s.plant.heater.dial, 0.4, 1e-15, 0);
    assert_close(s.plant.ambient.pressure_Pa, 28.9 * INCH * 13595.1 * 9.80665, 1e-14, 0);
    assert_int_equal(strncmp(s.title, "text", 5), 0);
    forget(&s, &m);
}

static void mistakes_in_settings_are_named(void **state)
{
    (void)state;
    EXPECT("titel = x\nstart = 25:00\nduration = 4\nlevel = 3 in\n[tankk]\nfoo = 3\n" PLANT,
           "1:1: unknown key 'titel' above the first section; did you mean 'title'?",
           "2:9: 'start' must be between 0:00 and 23:59, got '25:00'", "3:13: 'duration' needs a unit: 4 min, 4 s or 4 h?",
           "4:1: 'level' does not belong above the first section, but in [tank]",
           "5:2: unknown section [tankk]; did you mean 'tank'?");
    EXPECT("[tank]\nshape = ball\nlenght = 60 in\nwidth = 30 in\ndepth = -3 in\nlevel = 26 in\nlevel = 3 m\nwall 3 mm\n"
           "[bath]\nsalts = 80 % NaOH, 15 % NaNO3, 5.06 % NaNO2\nboling point = 285 degF\ntemperature = 285 F\n"
           "[heat]\nefficiency = 0.6\nlag = 1:30\n[room]\nhumidity = 120 %\n[Limits]\nboiling point = 290 "
           "degF to 280 degF\n"
           "[room]\ndraught =\n",
           "2:9: 'shape' must be box or upright cylinder, got 'ball'",
           "3:1: unknown key 'lenght' in [tank]; did you mean 'length'?",
           "5:9: 'depth' must be between 0.1 m and 5 m, got '-3 in' (3.937 in to 196.9 in)",
           "7:1: 'level' is set a second time; the first is on line 6", "8:1: expected 'key = value', got 'wall 3 mm'",
           "10:9: the shares of 'salts' must add up to 100 %, not to 100.1 %",
           "11:1: unknown key 'boling point' in [bath]; did you mean 'boiling point'?", "12:18: read as '285 degF'",
           "13:1: [heat] needs 'input'", "14:17: 'efficiency' is a percentage and needs its sign, for example 60 %",
           "15:7: a clock such as 1:30 says only when; 'lag' needs",
           "17:12: 'humidity' must be between 0 % and 100 %, got '120 %'",
           "19:17: 'boiling point' must run from a lower to a higher value",
           "20:1: [room] stands here a second time; the first is on line 16", "21:10: 'draught' has no value");
}

static void what_belongs_together_is_checked(void **state)
{
    (void)state;
    EXPECT("[tank]\nshape = upright cylinder\nlength = 1 m\n", "1:1: [tank] needs 'diameter'", "1:1: [tank] needs 'depth'",
           "1:1: [tank] needs 'level'",
           "3:1: 'length' does not belong to this shape of tank; an upright cylinder has a 'diameter'",
           "3:13: a section [bath] with 'salts', such as 'salts = 80 % NaOH, 15 % NaNO3, 5 % NaNO2' is missing",
           "3:13: a section [heat] with 'input' is missing",
           "3:13: a section [bath] with one of 'boiling point', 'strength' and 'salt fraction' is missing");
    expect_one(PLANT "[room]\naltitude = 900 ft\nstation pressure = 1 atm\n",
               "13:1: 'station pressure' stands beside 'altitude' of line 12: give only one of them");
    expect_one(PLANT "[schedule]\n[bath", "12:6: a section ends with ']'");
}

#define WATER_TANK "[tank]\nlength = 1 m\nwidth = 1 m\ndepth = 1 m\nlevel = 0.6 m\n[heat]\ninput = 1 kW\n[bath]\n"

/* Two ways to say that there are no salts; then none need be named. */
static void plain_water_is_a_bath(void **state)
{
    (void)state;
    const char *text[] = {WATER_TANK "salt fraction = 0 %\n", WATER_TANK "strength = 0 lb/gal\n",
                          WATER_TANK "salts = 70 % NaOH, 30 % NaNO3\nsalt fraction = 0 %\n"};
    for (size_t i = 0; i < sizeof text / sizeof *text; i++) {
        scenario s;
        messages m;
        boil_initial_state bath;
        assert_int_equal(read_text(text[i], &s, &m), BOIL_OK);
        assert_int_equal(boil_plant_initial(&s.plant, &bath), BOIL_OK);
        assert_true(bath.salt_fraction == 0);
        assert_close(bath.boiling_point_K, boil_water_saturation_temperature(101325), 0, 1e-9);
        size_t salts = key_index(key_find("bath", "salts", 5));
        assert_int_equal(s.settings[salts].state, i < 2 ? SETTING_ABSENT : SETTING_GIVEN);
        forget(&s, &m);
    }
    expect_one(WATER_TANK "salt fraction = 1 %\n",
               "8:1: [bath] needs 'salts', such as 'salts = 80 % NaOH, 15 % NaNO3, 5 % NaNO2'");
    expect_one(WATER_TANK "boiling point = 100 degC\n",
               "8:1: [bath] needs 'salts', such as 'salts = 80 % NaOH, 15 % NaNO3, 5 % NaNO2'");
    EXPECT(WATER_TANK
           "salt fraction = 0 %\n[uncertain]\nbath salt fraction = 0 % to 2 %\n[schedule]\n0:10 salts 5 kg over 5 min\n"
           "0:20 liquid 5 gal over 5 min\n0:30 salts 5 kg over 5 min, blend 100 % NaOH\n",
           "11:1: where 'bath salt fraction' is uncertain there may be salts: name them in [bath]",
           "13:27: the bath names no salts: say which, for example ', blend 100 % NaOH'",
           "14:12: the bath names no salts that this liquid could be of: name them in [bath]");
    EXPECT(WATER_TANK "salt fraction = -1 %\n", "8:1: [bath] needs 'salts', such as 'salts = 80 % NaOH, 15 % NaNO3, 5 % NaNO2'",
           "9:17: 'salt fraction' must be between 0 % and 89 %, got '-1 %'");
}

static void the_model_has_its_say(void **state)
{
    (void)state;
    scenario s;
    messages m;
    assert_int_equal(read_text("[heat]\ninput = 1 kW\n[tank]\nlength = 1 m\nwidth = 1 m\ndepth = 0.5 m\nlevel = 0.4 m\n"
                               "heater top = 0.6 m\n"
                               "[bath]\nsalts = 100 % NaOH\nsalt fraction = 50 %\n",
                               &s, &m),
                     BOIL_BAD_INPUT);
    assert_int_equal(m.count, 1);
    assert_int_equal(m.list[0].line, 3);
    assert_string_equal(m.list[0].text, boil_tank_problem(&s.plant.tank));
    forget(&s, &m);
    expect_one("[heat]\ninput = 1 kW\n[tank]\nlength = 1 m\nwidth = 1 m\ndepth = 0.5 m\nlevel = 0.6 m\n"
               "[bath]\nsalts = 100 % NaOH\nsalt fraction = 50 %\n",
               "7:9: the level (0.6 m) is above the rim (0.5 m)");
    expect_one("[tank]\nlength = 1 m\nwidth = 1 m\ndepth = 1 m\nlevel = 0.6 m\n[heat]\ninput = 1 kW\n"
               "[bath]\nsalts = 100 % NaOH\nboiling point = 90 degC\n",
               "10:17: there is no boiling bath of these salts with this 'boiling point'");
}

static void mistakes_in_actions_are_named(void **state)
{
    (void)state;
    EXPECT("duration = 4 h\n" PLANT "[schedule]\n"
           "0:05 load 100 lb aluminium, plate 1/4 in\n"
           "0:05 load 100 lb galvanised steel, plat 1/4 in, fro 20 min, at 5 kg, at 20 degC\n"
           "0:05 load 1,000 lb, tube 1 in wall 20 mm, for 1:30\n"
           "4:01 heat 50 %\n"
           "0:1 heat on\n"
           "0:10 haet off\n"
           "0:10 heat 50\n"
           "0:10 water 2 gal\n"
           "0:10 water 2 gal at 60 degF\n"
           "0:10 water 2 gal over 4 min, at 300 degF\n"
           "every 5 min to 5:00 lift\n"
           "0:20 load 5 kg stainless, bar 1 in, drag-out 3 L\n"
           "0:20 load 5 kg, bar 1 in,\n"
           "0:20\n"
           "level = 3 in\n",
           "13:18: 'aluminium' dissolves violently in hot caustic and gives off hydrogen",
           "14:18: 'galvanised' is coated with zinc",
           "14:36: expected a shape (plate, bar, ball or tube) and its size, got 'plat'",
           "14:49: unknown clause 'fro' of a load; did you mean 'for'?", "14:66: 'kg' is a mass, but 'at' is a temperature",
           "14:70: 'at' is said twice", "15:12: '1,000' has a comma: for 'load' write 1000, or 1.000 if thousandths are meant",
           "15:36: the wall of a tube must be less than half", "15:47: a clock such as 1:30 says only when; 'for' needs",
           "16:1: 4:01 is after the end, 4:00. For a longer shift: duration = 5 h",
           "17:1: 'time of the act' needs a clock such as 6:00 or 6:00:00, got '0:1'",
           "18:6: unknown act 'haet'; known are load, lift, water, salts, liquid, heat, mixer, lid, exhaust, crust, bail, "
           "drain, return and stir; did "
           "you mean 'heat'?",
           "19:13: 'heat' is a percentage and needs its sign", "20:17: say how fast",
           "21:24: 'degF' is a temperature, but 'at' is a volume flow or a mass flow",
           "22:33: 'at' must be between 0 degC and 99 degC, got '300 degF' (32 degF to 210.2 degF)",
           "23:16: 5:00 is after the end, 4:00", "24:16: 'stainless' is not blackened by this bath",
           "24:48: 'L' is a volume, but 'drag-out' is a volume per area", "25:25: nothing follows this comma",
           "26:5: expected something to do", "27:1: 'time of the act' needs a number");
}

static void names_come_and_go(void **state)
{
    (void)state;
    scenario s;
    messages m;
    EXPECT(SCHEDULE "0:00 load 1 lb, bar 1 in, as rack 1, for 20 min\n"
                    "0:10 load 1 lb, bar 1 in, as Rack 1\n"
                    "0:30 lift rakc 1\n"
                    "1:00 load 1 lb, bar 1 in, as B, for 10 min\n"
                    "1:10 lift b\n"
                    "1:20 load 1 lb zinc, bar 1 in, as C\n"
                    "1:30 lift c\n",
           "13:6: 'rack 1' is still in the bath, or coming out, at 0:10",
           "14:6: no load is named 'rakc 1'; did you mean 'rack 1'?", "16:6: 'B' is not in the bath at 1:10",
           "17:16: 'zinc' dissolves violently");
    read_good(SCHEDULE "0:00 load 1 lb, bar 1 in, as A\n0:10 lift a\n0:11 load 1 lb, bar 1 in, as a\n0:12 lift\n"
                       "0:13 load 1 lb, bar 1 in, as a, for 2 min\n0:20 load 1 lb, bar 1 in, as a\n",
              &s, &m);
    assert_int_equal(s.wording.names_count, 1);
    forget(&s, &m);
}

static void too_many_actions_are_refused(void **state)
{
    (void)state;
    scenario s;
    messages m;
    expect_one(SCHEDULE "every 1 s from 0:00 to 27:47 heat on\n", "12:30: there are more than 100000 acts");
    expect_one(SCHEDULE "every 5 min heat on\n", "12:7: 'every' without 'to' needs a 'duration' above the first section");
    read_good(SCHEDULE "every 1 s from 1 s to 100000 s heat on\n", &s, &m);
    assert_int_equal(s.schedule.count, 100000);
    forget(&s, &m);
}

static void a_run_sheet_is_read(void **state)
{
    (void)state;
    scenario s;
    messages m;
    static const char sheet[] =
        "\xEF\xBB\xBFTime, Act\r\n0:05,\"load 100 lb, plate 1/4 in, as A\"\r\n,,\r\n# a remark\r\n"
        "\"0:10\", lift  a # out\r\nevery 10 min from 0:20 to 0:40,water 2 gal over 4 min, at 60 degF,,\r\n";
    write_file(sheet_path, sheet, sizeof sheet - 1);
    read_good("schedule = sheet.csv\n" PLANT, &s, &m);
    assert_int_equal(s.schedule.count, 5);
    assert_string_equal(s.wording.lines[s.wording.line_of[0]].words, "100 lb of 1/4 in plate (A)");
    assert_int_equal(s.wording.lines[s.wording.line_of[1]].line, 5);
    assert_close(s.schedule.duration_s, (40 + 4 + 30) * 60, 0, 0);
    forget(&s, &m);
    static const char bad[] = "time,act\n0:05,\"load 1 lb\n0:06 heat on\n0:10,\"heat\" on\n5,heat on\n";
    write_file(sheet_path, bad, sizeof bad - 1);
    EXPECT("schedule = sheet.csv\nfoo = 3\n" PLANT, "2:1: unknown key 'foo'", "2:6: this quote is not closed on its line",
           "3:6: 'heat on' is not expected here", "4:13: expected a comma behind the closing quote",
           "5:2: 'time of the act' needs a unit");
    expect_one("schedule = none.csv\n" PLANT, "0:0: cannot be read: No such file");
    EXPECT("schedule = sheet.csv\n" SCHEDULE "0:10 heat on\n", "1:1: the acts are in a file or in [schedule], not in both");
}

/* A run sheet as spreadsheets write it is that of the proper header; one remark says so. */
static void read_sheet(const char *sheet, const char *header_remark)
{
    scenario s;
    messages m;
    write_file(sheet_path, sheet, strlen(sheet));
    read_good("schedule = sheet.csv\n" PLANT, &s, &m);
    assert_int_equal(m.count, header_remark != NULL);
    if (header_remark != NULL)
        assert_string_equal(m.list[0].text, header_remark);
    assert_int_equal(s.schedule.count, 2);
    assert_close(s.schedule.actions[0].time_s, 300, 0, 0);
    assert_string_equal(s.wording.lines[0].words, "80 lb of 1/4 in plate");
    assert_close(s.schedule.actions[1].time_s, 600, 0, 0);
    forget(&s, &m);
}

static void spreadsheets_are_understood(void **state)
{
    (void)state;
    read_sheet("time,act\n0:05,load 80 lb, plate 1/4 in\n0:10,heat on\n", NULL);
    read_sheet("Time,Action\n0:05,load 80 lb, plate 1/4 in\n0:10,heat on\n", "read as 'time,act'");
    read_sheet("CLOCK;Do;;\n0:05;load 80 lb, plate 1/4 in\n0:10;heat on;;\n", "read as 'time,act'");
    read_sheet("when\tstep\n0:05\tload 80 lb, plate 1/4 in\n0:10\theat on\n", "read as 'time,act'");
    read_sheet("at,what,who\n0:05,\"load 80 lb, plate 1/4 in\",Bob\n0:10,heat on\n",
               "read as 'time,act'; its further column is passed over");
    read_sheet("At;What;Who;Why\n0:05;load 80 lb, plate 1/4 in;Bob;\n0:10;heat on;;cold\n",
               "read as 'time,act'; its further columns are passed over");
    static const char loose[] = "time,act,who\n0:05,load 80 lb, plate 1/4 in,Bob\n";
    write_file(sheet_path, loose, sizeof loose - 1);
    EXPECT("schedule = sheet.csv\n" PLANT, "1:1: read as 'time,act'; its further column is passed over",
           "2:6: this row has more cells than the header has columns: put the act in quotes");
    static const char strange[] = "moment,act\n0:05,heat on\n";
    write_file(sheet_path, strange, sizeof strange - 1);
    EXPECT("schedule = sheet.csv\n" PLANT, "1:1: a run sheet starts with the header 'time,act'");
}

static void times_count_by_the_clock(void **state)
{
    (void)state;
    scenario s;
    messages m;
    read_good("start = 18:00\nduration = 14 h\ntimes = by the clock\n" SCHEDULE
              "18:05 load 80 lb, plate 1/4 in, as A\n20 min lift A\n5:30+1d heat on\n"
              "every 1 h from 19:00 to 3:00+1d water 2 lb over 5 min\n",
              &s, &m);
    assert_int_equal(s.schedule.count, 3 + 9);
    assert_close(s.schedule.actions[0].time_s, 300, 0, 0);
    assert_close(s.schedule.actions[1].time_s, 1200, 0, 0);
    assert_close(s.schedule.actions[2].time_s, 3600, 0, 0);
    assert_close(s.schedule.actions[11].time_s, 11.5 * 3600, 0, 0);
    forget(&s, &m);
    read_good("start = 18:00\nduration = 300 h\ntimes = by the clock\n" SCHEDULE "9:00+10d heat on\n", &s, &m);
    assert_close(s.schedule.actions[0].time_s, (10 * 24 - 9) * 3600, 0, 0);
    forget(&s, &m);
    EXPECT("times = by the clock\n" SCHEDULE "0:05 heat on\n", "1:9: 'by the clock' needs 'start', the clock at the start");
    EXPECT("start = 6:00\nduration = 4 h\ntimes = by the clock\n" SCHEDULE "5:30 heat on\n10:30 heat on\n6:05 pm heat on\n"
           "6:10 load 80 lb, plate 1/4 in, for 20 min, as A\n6:20 load 80 lb, plate 1/4 in, as A\n",
           "15:1: 'by the clock' 5:30 is before the start, 6:00; the next morning is '5:30+1d'",
           "16:1: 10:30 is after the end, 10:00. For a longer shift: duration = 5 h",
           "17:5: the clock has 24 hours: write 18:05", "19:6: 'A' is still in the bath, or coming out, at 6:20");
}

static void breaks_and_exceptions_leave_out(void **state)
{
    (void)state;
    scenario s;
    messages m;
    read_good(
        "start = 6:00\nduration = 4 h\ntimes = by the clock\n" PLANT "[breaks]\n8:00 to 8:30 coffee and rolls\n"
        "[schedule]\nevery 30 min from 6:00 to 9:30 except breaks except 7:00 to 7:01 load 80 lb, plate 1/4 in, for 20 min\n",
        &s, &m);
    const double want[] = {0, 1800, 5400, 9000, 10800, 12600}; /* 6:00 6:30 7:30 8:30 9:00 9:30 */
    assert_int_equal(s.schedule.count, sizeof want / sizeof want[0]);
    for (size_t i = 0; i < s.schedule.count; i++)
        assert_close(s.schedule.actions[i].time_s, want[i], 0, 0);
    assert_int_equal(s.schedule.breaks_count, 1);
    assert_close(s.schedule.breaks[0].from_s, 7200, 0, 0);
    assert_close(s.schedule.breaks[0].to_s, 9000, 0, 0);
    assert_string_equal(s.wording.breaks[0].text, "coffee and rolls");
    assert_int_equal(m.count, 1);
    assert_true(m.list[0].remark);
    assert_string_equal(m.list[0].text, "left out by 'except', and not done at another time: the act of 7:00 and 1 more");
    forget(&s, &m);
    EXPECT("duration = 4 h\n" SCHEDULE "every 30 min except breaks heat on\nevery 30 min except 3:15 to 3:00 heat on\n"
           "every 30 min from 1:00 to 2:00 except 0:30 to 2:01 heat on\nevery 1 h except 1:00 heat on\n",
           "13:14: 'except breaks', but there is no [breaks]", "14:21: 'except 3:15 to 3:00' ends before it begins",
           "15:52: 'except' left nothing of this line", "16:23: say 'to', and when the 'except' ends");
    EXPECT("duration = 4 h\n" PLANT "[breaks]\n0:30 coffee\n2:00 to 1:00\n3:50 to 4:10 tea\n",
           "13:6: say 'to', and when the 'break' ends", "14:1: '2:00 to 1:00' ends before it begins",
           "15:9: 4:10 is after the end, 4:00. For a longer shift: duration = 5 h");
}

static void a_shop_has_its_own_measures(void **state)
{
    (void)state;
    scenario s;
    messages m;
    read_good("duration = 4 h\n" PLANT "[measures]\nbag = 50 lb\nBucket = 5 gal\n[schedule]\n"
              "0:10 salts 2 bags over 30 min\n1:00 salts 2 bags, one every 10 min over 5 min, at 60 degF\n"
              "2:00 water 1/2 bucket over 5 min\n",
              &s, &m);
    assert_int_equal(s.schedule.count, 4);
    assert_close(s.schedule.actions[0].is.salts.mass_kg, 100 * POUND, 1e-12, 0);
    assert_string_equal(s.wording.lines[0].words, "2 bags of salts over 30 min");
    for (size_t i = 1; i < 3; i++) {
        assert_close(s.schedule.actions[i].time_s, i == 1 ? 3600 : 4200, 0, 0);
        assert_close(s.schedule.actions[i].is.salts.mass_kg, 50 * POUND, 1e-12, 0);
        assert_close(s.schedule.actions[i].is.salts.over_s, 300, 0, 0);
        assert_close(s.schedule.actions[i].is.salts.temperature_K, FAHRENHEIT(60), 1e-12, 0);
    }
    assert_string_equal(s.wording.lines[1].words, "1 bag of salts over 5 min");
    assert_close(s.schedule.actions[3].is.water.mass_kg / boil_water_density(s.plant.ambient.temperature_K), 2.5 * GALLON, 1e-9,
                 0);
    forget(&s, &m);
    EXPECT("duration = 4 h\n" PLANT "[measures]\nlb = 5 kg\nbucket = 5 gal\nbucket = 4 gal\nover = 1 L\ntwo bags = 1 lb\nsack\n"
           "pail = 5 s\n[schedule]\n0:10 salts 1 bucket over 5 min\n0:20 salts 2 bags over 5 min\n"
           "0:30 water 3 lb, one every 5 min over 1 min\n0:40 water 2.5 buckets, one every 5 min over 1 min\n"
           "3:50 water 3 buckets, one every 10 min over 1 min\nwhen boiling water 2 buckets, one every 5 min over 1 min\n",
           "13:1: 'lb' is a unit already", "15:1: 'bucket' is said twice", "16:1: 'over' means something else in a schedule",
           "17:1: a measure is one word of at most 23 letters", "18:1: expected a measure, for example 'bag = 50 lb'",
           "19:10: 's' is a time, but 'pail' is a volume or a mass", "21:12: a 'bucket' is a volume, but 'salts' is weighed",
           "22:14: 'bag' is no measure yet: add '[measures]' with 'bag = 50 lb'", "23:18: 'one every' counts whole measures",
           "24:25: 'one every' counts whole measures", "25:6: 4:10 is after the end",
           "26:14: 'one every' needs a moment that the clock says");
}

static void wishes_stand_in_sections_of_their_own(void **state)
{
    scenario s;
    messages m;
    (void)state;
    read_good(PLANT "[exhaust]\nhood = push-pull\nclass = C-1\ndegree days = 5000\n[design]\nmargin = 20 %\nstress = 15 ksi\n"
                    "watt density = 12 W/in2\nfloor bars = 18 in\ninsulation price = 48 per ft3\n",
              &s, &m);
    assert_int_equal(s.exhaust.hood, BOIL_HOOD_PUSH_PULL);
    assert_int_equal(s.exhaust.hazard, 9);
    assert_close(s.exhaust.degree_days_F, 5000, 0, 0);
    assert_close(s.design.margin, 0.2, 1e-12, 0);
    assert_close(s.design.stress_Pa, 15000 * 6894.757293168, 1e-9, 0);
    assert_close(s.design.element_W_m2, 12 / (0.0254 * 0.0254), 1e-12, 0);
    assert_close(s.design.floor_bars_m, 0.4572, 1e-12, 0);
    assert_close(s.design.insulation_price, 48 / 0.028316846592, 1e-9, 0);
    assert_true(isnan(s.design.hours_a_year) && isnan(s.exhaust.winter_K));
    forget(&s, &m);
    read_good(PLANT, &s, &m);
    assert_int_equal(s.exhaust.hood, BOIL_HOOD_NONE);
    assert_close(s.design.margin, 0.15, 0, 0);
    forget(&s, &m);
    EXPECT(PLANT "[exhaust]\nhood = canopy\n[design]\nstress = 15 psi\nfloor = 5 mm\nflue oxygen = 15 %\n",
           "12:8: 'hood' must be none or", "14:13: 'psi' does not say from where it counts",
           "16:15: 'flue oxygen' must be between 0 % and 14 %");
    EXPECT(PLANT "[uncertain]\ndesign margin = 10 % to 20 %\n", "12:1: 'design margin' is no number of a scenario");
}

static void prices_are_by_any_amount(void **state)
{
    (void)state;
    scenario s;
    messages m;
    read_good(PLANT "[prices]\ngas = 1.20 per therm\nwater = 6 per 1000 gal\nsalts = 1.90 per lb\nlabour = 36 per h\n"
                    "liquid = 2 per kg\ncurrency = USD\n",
              &s, &m);
    assert_close(s.prices.gas, 1.20 / (1e5 * 1055.05585262), 1e-12, 0);
    assert_close(s.prices.water, 6 / (1000 * GALLON), 1e-12, 0);
    assert_close(s.prices.salts, 1.90 / POUND, 1e-12, 0);
    assert_close(s.prices.labour, 0.01, 1e-12, 0);
    assert_close(s.prices.liquid, 2, 1e-12, 0);
    assert_true(isnan(s.prices.electricity) && isnan(s.prices.steam));
    assert_string_equal(s.prices.currency, "USD");
    forget(&s, &m);
    EXPECT(PLANT "[prices]\ngas = 1.20\nwater = 6 per lb/gal\nsalts = 2 per gal\nlabour = -1 per h\nliquid = 3 per 0 kg\n"
                 "currency = US dollars\n",
           "12:11: 'gas' is a price: say 'per' and of how much", "13:15: 'lb/gal' is a mass per volume, but 'water' is",
           "14:15: 'gal' is a volume, but 'salts' is a mass", "15:10: 'labour' must be between 0 and 1e9",
           "16:10: 'liquid' must be between 0 and 1e9", "17:12: 'currency' is one word of at most 8 letters");
}

/* A clock meant for the wall in a file that counts from the start. */
static void a_late_first_act_is_remarked(void **state)
{
    (void)state;
    scenario s;
    messages m;
    read_good("start = 6:00\nduration = 8 h\n" SCHEDULE "7:10 heat on\n6:05 load 80 lb, plate 1/4 in, for 20 min\n", &s, &m);
    assert_int_equal(m.count, 1);
    assert_int_equal(m.list[0].line, 15);
    assert_string_equal(m.list[0].text, "6:05 counts from the start: 12:05 by the clock. For 6:05 by the clock write 0:05, or "
                                        "'times = by the clock'");
    forget(&s, &m);
    read_good("start = 6:00\nduration = 8 h\n" SCHEDULE "0:05 heat on\n6:05 load 80 lb, plate 1/4 in, for 20 min\n", &s, &m);
    assert_int_equal(m.count, 0);
    forget(&s, &m);
    read_good("duration = 8 h\n" SCHEDULE "6:05 load 80 lb, plate 1/4 in, for 20 min\n", &s, &m);
    assert_int_equal(m.count, 0);
    forget(&s, &m);
    EXPECT("start = 6:00\nduration = 4 h\n" SCHEDULE "6:05 load 80 lb, plate 1/4 in, for 20 min\n",
           "14:1: 6:05 is after the end, 4:00; by the clock it is 12:05. For 6:05 by the clock write 0:05, or 'times = by");
}

static void opposites_are_not_proposed(void **state)
{
    (void)state;
    EXPECT(SCHEDULE "0:05 unlod rack 1\n", "12:6: unknown act 'unlod'; known are load, lift, water, salts, liquid, heat, "
                                           "mixer, lid, exhaust, crust, bail, drain, return and stir; did you "
                                           "mean 'unload'?");
}

/* Words of shops that could mean two things, or nothing that is followed: what to write is said. */
static void what_is_called_otherwise_is_answered(void **state)
{
    (void)state;
    EXPECT(SCHEDULE "0:05 fill to the mark\n0:06 top up to 20 in\n0:07 remove the sludge\n0:08 low fire\n0:09 burner low\n"
                    "0:10 heat to half\n0:11 water to the mark\n0:12 water up to the mark\n0:13 pour 2 gal\n0:14 top 2 gal\n"
                    "0:15 heat full\n",
           "12:6: no act is called 'fill': say how much and how fast, 'water 2 gal over 4 min', or up to where, 'water at 0.5 "
           "gal/min until the mark, at most 15 gal'; only while it boils",
           "13:6: no act is called 'top up': say how much",
           "14:6: no act is called 'remove the sludge': sludge is not followed",
           "15:6: no act is called 'low fire': set the dial by the share of full fire", "16:6: read as '0:09 heat low'",
           "16:13: 'heat' takes a share of full fire, 'heat 30 %' (how much 'low' is the burner says), or what",
           "17:11: 'heat' takes a share of full fire, 'heat 30 %' (how much 'to half' is the burner says), or what",
           "18:12: say how fast it goes there: 'water at 0.5 gal/min until the mark, at most 15 gal'",
           "19:12: say how fast it goes there", "20:6: no act is called 'pour': say of what and how fast",
           "21:6: no act is called 'top': say how much", "22:11: 'heat' is set by its dial");
}

/* By their code points in Unicode 15: an override, a space of no width, a mark of byte order inside, an isolate, a tag; a variant of a
   sign, an accent beside its letter and right-to-left letters are text like any other. */
static void what_is_not_seen_is_refused(void **state)
{
    (void)state;
    scenario s;
    messages m;
    EXPECT("title = a\u202Eb\ntitle = \u200Bc\ntitle = dd\uFEFF\ntitle = \u2066\nti\U000E0041tle = e\n",
           "1:10: character U+202E is not seen, but hides or turns round what is: take it out", "2:9: character U+200B is not",
           "3:11: character U+FEFF is not", "4:9: character U+2066 is not", "5:3: character U+E0041 is not");
    read_good("title = \u26A0\uFE0F e\u0301 \u05E9\u05DC\u05D5\u05DD\n" PLANT, &s, &m);
    assert_string_equal(s.title, "\u26A0\uFE0F e\u0301 \u05E9\u05DC\u05D5\u05DD");
    forget(&s, &m);
}

/* -40 degC is 233.15 K, 392 degF 200 degC, 140 degF 60 degC, 212 degF 100 degC; 1.1 bar 1100 hPa. */
static void an_end_is_allowed_in_any_unit(void **state)
{
    (void)state;
    scenario s;
    messages m;
    read_good(
        "[room]\ntemperature = 140 degF\nstation pressure = 1.1 bar\n[limits]\nboiling point = 212 degF to 392 degF\n" SCHEDULE
        "0:10 load 10 lb, plate 1/4 in, at -40 degC, for 5 min\n0:20 load 10 lb, plate 1/4 in, at -40 degF, for 5 min\n"
        "0:30 load 10 lb, plate 1/4 in, at 392 degF, for 5 min\n0:40 load 10 lb, plate 1/4 in, at 200 degC, for 5 min\n",
        &s, &m);
    for (size_t i = 0; i < 4; i++)
        assert_close(s.schedule.actions[i].is.load.temperature_K, i < 2 ? 233.15 : 473.15, 0, 0);
    assert_close(s.plant.ambient.temperature_K, 333.15, 0, 0);
    assert_close(s.plant.ambient.pressure_Pa, 110000, 0, 0);
    forget(&s, &m);
    expect_one(SCHEDULE "0:10 load 10 lb, plate 1/4 in, at -40.01 degC, for 5 min\n",
               "12:35: 'at' must be between -40 degC and 200");
}

static void what_is_no_text_is_refused(void **state)
{
    (void)state;
    scenario s;
    messages m;
    assert_int_equal(read_bytes("a\0b\n", 4, &s, &m), BOIL_BAD_INPUT);
    assert_string_equal(m.list[0].text, "a NUL byte: this is not a text file");
    assert_int_equal(m.list[0].column, 2);
    forget(&s, &m);
    EXPECT("[tank]\n\u00e9t\xE9\n\xC0\x80\nx\xED\xA0\x80\n\x1B[31m\n\xC2\x85\na\rb\n", "2:3: byte 0xE9 is not UTF-8 text",
           "3:1: byte 0xC0 is not", "4:2: byte 0xED is not", "5:1: control character 0x1B", "6:1: control character 0x85",
           "7:2: control character 0x0D");
    char *big = malloc(SOURCE_BYTES_MAX + 1);
    assert_non_null(big);
    memset(big, '#', SOURCE_BYTES_MAX + 1);
    assert_int_equal(read_bytes(big, SOURCE_BYTES_MAX + 1, &s, &m), BOIL_BAD_INPUT);
    assert_string_equal(m.list[0].text, "is longer than 1 MiB");
    forget(&s, &m);
    for (size_t i = 0; i < SOURCE_BYTES_MAX; i++)
        big[i] = "x\n"[i % 2];
    assert_int_equal(read_bytes(big, SOURCE_BYTES_MAX, &s, &m), BOIL_BAD_INPUT);
    assert_int_equal(m.count, MESSAGES_MAX);
    forget(&s, &m);
    free(big);
    assert_int_equal(scenario_read("/nowhere/at/all", &s, &m), BOIL_BAD_INPUT);
    forget(&s, &m);
}

static void messages_show_line_and_caret(void **state)
{
    (void)state;
    scenario s;
    messages m;
    char *text = NULL, want[400];
    size_t length = 0;
    assert_int_equal(read_text(PLANT "[room]\n\ttemperature = 20 \u00b0R\n", &s, &m), BOIL_BAD_INPUT);
    FILE *f = open_memstream(&text, &length);
    assert_non_null(f);
    messages_print(&m, f, "boilback");
    fclose(f);
    snprintf(want, sizeof want,
             "boilback: %s:12:19: '\u00b0R' is no unit of 'temperature', a temperature: use degC, degF or K%s\n"
             "     temperature = 20 \u00b0R\n                      ^\n",
             path, "");
    assert_string_equal(text, want);
    free(text);
    forget(&s, &m);
}

/* --- mutations --- */

static uint64_t dice_state = 20240607;

static size_t dice(size_t below)
{
    dice_state ^= dice_state << 13;
    dice_state ^= dice_state >> 7;
    dice_state ^= dice_state << 17;
    return (size_t)(dice_state % below);
}

/* clang-format off */
static const char *const scraps[] = {
    "[", "]", "=", "#", ",", ":", "%", " per ", " to ", "every 1 s ", "1e9", "-1", "/0", "\u00b0", "\n", "\r\n",
    "salts", "liquid", "mixer", "blend", "strength", "on", "psig", "steam", "none",
    "bolt ", " x ", "1/4\"", "at ", ";", "+1d", " pull ", " as ", "add 1 gal water", "F", "times = by the clock\n", "5 pieces", "[breaks]\n0:10 to 0:20 x\n", "[measures]\nbag = 5 kg\n", " 2 bags",
    "[prices]\ngas = 1 per kWh\n", " except 0:10 to 0:20 ", ", one every 5 min ",
    "\"", "lift", "load 1 kg, bar 1 mm", ", as B", "water", "min", "0", "\xFF", "\u00a0",
};
/* clang-format on */

#define TEXT_MAX 8192

/* Replaces a stretch of the text with something else. */
static size_t splice(char *text, size_t length, size_t at, size_t gone, const char *with, size_t with_length)
{
    if (length - gone + with_length > TEXT_MAX)
        return length;
    memmove(text + at + with_length, text + at + gone, length - at - gone);
    memcpy(text + at, with, with_length);
    return length - gone + with_length;
}

static size_t mutate(char *text, size_t length)
{
    char copy[64];
    size_t at = dice(length), most = length - at < sizeof copy ? length - at : sizeof copy;
    size_t span = dice(most + 1);
    const char *scrap = scraps[dice(sizeof scraps / sizeof scraps[0])];
    switch (dice(5)) {
    case 0:
        return splice(text, length, at, span, "", 0);
    case 1:
        copy[0] = (char)dice(256);
        return splice(text, length, at, 1, copy, 1);
    case 2:
        return splice(text, length, at, 0, scrap, strlen(scrap));
    case 3:
        return splice(text, length, at, dice(most < 8 ? most + 1 : 8), scrap, strlen(scrap));
    default:
        memcpy(copy, text + at, span);
        return splice(text, length, dice(length), 0, copy, span);
    }
}

static void check_outcome(const scenario *s, const messages *m, int outcome)
{
    assert_int_equal(outcome == BOIL_OK, !messages_any(m));
    for (size_t i = 0; i < m->count; i++)
        assert_true(m->list[i].text != NULL && m->list[i].text[0] != '\0');
    if (outcome != BOIL_OK)
        return;
    assert_null(boil_plant_problem(&s->plant));
    for (size_t i = 0; i < s->schedule.count; i++) {
        const boil_action *a = &s->schedule.actions[i];
        assert_true(a->time_s >= (i > 0 ? a[-1].time_s : 0) && a->time_s <= s->schedule.duration_s);
        assert_true(a->name >= 0 && (size_t)a->name <= s->wording.names_count &&
                    s->wording.line_of[i] < s->wording.lines_count);
        if (a->kind == BOIL_ACTION_LOAD)
            assert_null(boil_load_problem(&a->is.load));
        if (a->kind == BOIL_ACTION_SALTS)
            assert_true(a->is.salts.mass_kg > 0 && a->is.salts.over_s > 0);
        if (a->kind == BOIL_ACTION_LIQUID)
            assert_true(a->is.liquid.mass_kg > 0 && a->is.liquid.over_s > 0 && a->is.liquid.salt_fraction > 0);
    }
}

static void mutations_never_hurt(void **state)
{
    (void)state;
    static char text[TEXT_MAX];
    size_t good = 0, rounds = 3000;
    for (size_t i = 0; i < rounds; i++) {
        scenario s;
        messages m;
        size_t length = (i % 2 == 0 ? sizeof full : sizeof other) - 1;
        memcpy(text, i % 2 == 0 ? full : other, length);
        for (size_t n = dice(4) + 1; n > 0 && length > 1; n--)
            length = mutate(text, length);
        int outcome = read_bytes(text, length, &s, &m);
        check_outcome(&s, &m, outcome);
        good += outcome == BOIL_OK;
        forget(&s, &m);
    }
    print_message("%zu mutations of a scenario, %zu still good\n", rounds, good);
    assert_in_range(good, rounds / 100, rounds - rounds / 10);
}

static int set_up(void **state)
{
    (void)state;
    if (mkdtemp(folder) == NULL)
        return -1;
    snprintf(path, sizeof path, "%s/text.bath", folder);
    snprintf(sheet_path, sizeof sheet_path, "%s/sheet.csv", folder);
    return 0;
}

static int tear_down(void **state)
{
    (void)state;
    remove(path);
    remove(sheet_path);
    return rmdir(folder);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_plant_is_in_si),
        cmocka_unit_test(loads_are_in_si),
        cmocka_unit_test(water_is_weighed_at_its_own_temperature),
        cmocka_unit_test(salts_are_the_baths_own_unless_said),
        cmocka_unit_test(liquid_is_as_strong_as_the_bath_unless_said),
        cmocka_unit_test(switches_and_drag_out_are_read),
        cmocka_unit_test(a_steam_coil_has_keys_of_its_own),
        cmocka_unit_test(mistakes_about_steam_are_named),
        cmocka_unit_test(water_may_float_already),
        cmocka_unit_test(parts_come_from_a_rinse),
        cmocka_unit_test(a_crust_may_hang_already),
        cmocka_unit_test(salt_may_lie_on_the_floor_already),
        cmocka_unit_test(propane_may_be_said_by_its_flow),
        cmocka_unit_test(what_is_taken_may_be_counted),
        cmocka_unit_test(a_stay_may_count_at_the_boil),
        cmocka_unit_test(mistakes_about_hollows_are_named),
        cmocka_unit_test(loads_hang_in_places),
        cmocka_unit_test(the_heat_may_have_a_control),
        cmocka_unit_test(mistakes_about_the_heats_control_are_named),
        cmocka_unit_test(automatic_water_is_read),
        cmocka_unit_test(mistakes_about_automatic_water_are_named),
        cmocka_unit_test(fittings_are_read),
        cmocka_unit_test(mistakes_in_additions_are_named),
        cmocka_unit_test(actions_are_in_order),
        cmocka_unit_test(every_stops_at_the_end_of_the_shift),
        cmocka_unit_test(duration_follows_the_last_action),
        cmocka_unit_test(settings_know_whether_they_were_given),
        cmocka_unit_test(other_ways_to_say_it),
        cmocka_unit_test(mistakes_in_settings_are_named),
        cmocka_unit_test(what_belongs_together_is_checked),
        cmocka_unit_test(plain_water_is_a_bath),
        cmocka_unit_test(the_model_has_its_say),
        cmocka_unit_test(mistakes_in_actions_are_named),
        cmocka_unit_test(names_come_and_go),
        cmocka_unit_test(too_many_actions_are_refused),
        cmocka_unit_test(a_run_sheet_is_read),
        cmocka_unit_test(spreadsheets_are_understood),
        cmocka_unit_test(times_count_by_the_clock),
        cmocka_unit_test(breaks_and_exceptions_leave_out),
        cmocka_unit_test(a_shop_has_its_own_measures),
        cmocka_unit_test(prices_are_by_any_amount),
        cmocka_unit_test(wishes_stand_in_sections_of_their_own),
        cmocka_unit_test(a_late_first_act_is_remarked),
        cmocka_unit_test(opposites_are_not_proposed),
        cmocka_unit_test(what_is_called_otherwise_is_answered),
        cmocka_unit_test(what_is_not_seen_is_refused),
        cmocka_unit_test(an_end_is_allowed_in_any_unit),
        cmocka_unit_test(what_is_no_text_is_refused),
        cmocka_unit_test(messages_show_line_and_caret),
        cmocka_unit_test(mutations_never_hurt),
    };
    return cmocka_run_group_tests_name("scenario", tests, set_up, tear_down);
}
