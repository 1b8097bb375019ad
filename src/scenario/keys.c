#include "scenario/keys.h"

#include <stddef.h>
#include <string.h>

#include "base/words.h"
#include "scenario/scenario.h"

#define AT(member) offsetof(scenario, member)

/* In the order of the model's enums. */
/* clang-format off */
static const char *const tank_shapes[] = {"box", "upright cylinder", NULL};
static const char *const tank_heated[] = {"from below", "inside", NULL};
static const char *const heat_sources[] = {"gas", "electric", "steam", NULL};
static const char *const control_modes[] = {"none", "on/off", "time-proportioned", NULL};
static const char *const no_yes[] = {"no", "yes", NULL};
static const char *const off_on[] = {"off", "on", NULL};

static const char *const sections[] = {"tank",          "bath",     "heat",   "losses",   "room",
                                       "water control", "fittings", "limits", "schedule", "uncertain", NULL};

#define NO_BOUNDS {NULL, 0, 0}
#define PUBLISHED_FACTOR {NULL, 0, 3}

/* Bounds are those the model states, or common sense where it states none. */
static const key table[] = {
    {"", "title", "what the scenario shows",
     KEY_TITLE, NEED_NOT, DIM_COUNT, NO_BOUNDS, .where = AT(title)},
    {"", "start", "wall clock at the start, for report and run sheet",
     KEY_CLOCK, NEED_NOT, DIM_TIME, NO_BOUNDS, .where = AT(start_s)},
    {"", "duration", "how long to follow the tank; default 30 min after the last act ends",
     KEY_SPAN, NEED_NOT, DIM_TIME, {"h", 0.01, 336}, .where = AT(schedule.duration_s)},
    {"", "schedule", "a CSV run sheet with the header time,act, instead of a [schedule] section",
     KEY_PATH, NEED_NOT, DIM_COUNT, NO_BOUNDS, .where = AT(run_sheet)},

    {"tank", "shape", "seen from above",
     KEY_CHOICE, NEED_NOT, DIM_COUNT, NO_BOUNDS, .where = AT(plant.tank.shape), .choices = tank_shapes},
    {"tank", "length", "of a box, inside",
     KEY_QUANTITY, NEED_ALWAYS, DIM_LENGTH, {"m", 0.1, 20}, .where = AT(plant.tank.length_m), .only = CASE_BOX},
    {"tank", "width", "of a box, inside",
     KEY_QUANTITY, NEED_ALWAYS, DIM_LENGTH, {"m", 0.1, 20}, .where = AT(plant.tank.width_m), .only = CASE_BOX},
    {"tank", "diameter", "of an upright cylinder, inside",
     KEY_QUANTITY, NEED_ALWAYS, DIM_LENGTH, {"m", 0.1, 20}, .where = AT(plant.tank.diameter_m),
     .only = CASE_CYLINDER},
    {"tank", "depth", "floor to rim",
     KEY_QUANTITY, NEED_ALWAYS, DIM_LENGTH, {"m", 0.1, 5}, .where = AT(plant.tank.depth_m)},
    {"tank", "level", "still surface above the floor at the start",
     KEY_QUANTITY, NEED_ALWAYS, DIM_LENGTH, {"m", 0.02, 5}, .where = AT(plant.tank.level_m)},
    {"tank", "wall", "thickness of the steel",
     KEY_QUANTITY, NEED_NOT, DIM_LENGTH, {"m", 0, 0.05}, .where = AT(plant.tank.wall_thickness_m), .zero = "none"},
    {"tank", "insulation", "thickness around the walls",
     KEY_QUANTITY, NEED_NOT, DIM_LENGTH, {"m", 0, 0.5}, .where = AT(plant.tank.insulation_m), .zero = "none"},
    {"tank", "heated", "where the heat enters",
     KEY_CHOICE, NEED_NOT, DIM_COUNT, NO_BOUNDS, .where = AT(plant.tank.heated), .choices = tank_heated},
    {"tank", "heater top", "top of a heater inside, above the floor",
     KEY_QUANTITY, NEED_NOT, DIM_LENGTH, {"m", 0, 5}, .where = AT(plant.tank.heater_top_m),
     .otherwise = "left to the model"},
    {"tank", "parts top", "top of the hanging parts, above the floor",
     KEY_QUANTITY, NEED_NOT, DIM_LENGTH, {"m", 0, 5}, .where = AT(plant.tank.parts_top_m),
     .otherwise = "left to the model"},

    {"bath", "salts", "the dry blend, by mass",
     KEY_BLEND, NEED_SALTS, DIM_FRACTION, {"%", 0, 100}, .where = AT(plant.charge.blend)},
    {"bath", "boiling point", "says how strong the bath is",
     KEY_QUANTITY, NEED_STRENGTH, DIM_TEMPERATURE, {"degC", 80, 200}, .where = AT(plant.charge.value)},
    {"bath", "strength", "salts per volume of bath at its boiling point; 0: plain water",
     KEY_QUANTITY, NEED_STRENGTH, DIM_CONCENTRATION, {"kg/m3", 0, 2000}, .where = AT(plant.charge.value)},
    {"bath", "salt fraction", "salts by mass of bath; 0 %: plain water",
     KEY_SHARE, NEED_STRENGTH, DIM_FRACTION, {"%", 0, 89}, .where = AT(plant.charge.value)},
    {"bath", "temperature", "at the start",
     KEY_QUANTITY, NEED_NOT, DIM_TEMPERATURE, {"degC", 0, 200}, .where = AT(plant.charge.temperature_K),
     .otherwise = "at its boiling point"},
    {"bath", "elevation factor", "boiling point's rise above water's, relative to the correlation",
     KEY_FACTOR, NEED_NOT, DIM_COUNT, {NULL, 0.85, 1.10}, .where = AT(plant.elevation_factor)},

    {"heat", "source", "sets the defaults below",
     KEY_CHOICE, NEED_NOT, DIM_COUNT, NO_BOUNDS, .where = AT(plant.heater.source), .choices = heat_sources},
    {"heat", "input", "fuel or current at full dial",
     KEY_QUANTITY, NEED_ALWAYS, DIM_POWER, {"kW", 0, 1e5}, .where = AT(plant.heater.input_W), .only = CASE_FUEL},
    {"heat", "efficiency", "share of the input that reaches the tank",
     KEY_SHARE, NEED_NOT, DIM_FRACTION, {"%", 5, 100}, .where = AT(plant.heater.efficiency), .only = CASE_FUEL},
    {"heat", "steam temperature", "of the saturated steam in the coil",
     KEY_QUANTITY, NEED_STEAM, DIM_TEMPERATURE, {"degC", 100, 200}, .where = AT(plant.heater.steam_K),
     .only = CASE_STEAM},
    {"heat", "steam pressure", "says the same; psig and barg count from the room's pressure, the others from zero",
     KEY_QUANTITY, NEED_STEAM, DIM_GAUGE_PRESSURE, {"psig", 0, 200}, .where = AT(steam_gauge_Pa), .only = CASE_STEAM,
     .other = DIM_PRESSURE, .within_other = {"kPa", 101.42, 1550}},
    {"heat", "coil area", "outside of the steam coil",
     KEY_QUANTITY, NEED_ALWAYS, DIM_AREA, {"m2", 0.01, 100}, .where = AT(plant.heater.coil_area_m2),
     .only = CASE_STEAM},
    {"heat", "coil coefficient", "heat through the coil per area and difference of steam and bath",
     KEY_QUANTITY, NEED_NOT, DIM_COEFFICIENT, {"W/m2K", 60, 1700}, .where = AT(plant.heater.coil_W_m2K),
     .only = CASE_STEAM},
    {"heat", "lag", "time constant of the output",
     KEY_QUANTITY, NEED_NOT, DIM_TIME, {"s", 0, 3600}, .where = AT(plant.heater.lag_s)},
    {"heat", "dial", "setting at the start",
     KEY_SHARE, NEED_NOT, DIM_FRACTION, {"%", 0, 100}, .where = AT(plant.heater.dial)},

    {"losses", "wall coefficient", "heat through the walls",
     KEY_QUANTITY, NEED_NOT, DIM_COEFFICIENT, {"W/m2K", 0, 50}, .where = AT(plant.losses.wall_coefficient_W_m2K),
     .otherwise = "from insulation and air"},
    {"losses", "evaporation factor", "scales the published correlation; 0 switches it off",
     KEY_FACTOR, NEED_NOT, DIM_COUNT, PUBLISHED_FACTOR, .where = AT(plant.losses.evaporation_factor)},
    {"losses", "convection factor", "scales the published correlation; 0 switches it off",
     KEY_FACTOR, NEED_NOT, DIM_COUNT, PUBLISHED_FACTOR, .where = AT(plant.losses.convection_factor)},
    {"losses", "radiation factor", "scales radiation from the surface; 0 switches it off",
     KEY_FACTOR, NEED_NOT, DIM_COUNT, PUBLISHED_FACTOR, .where = AT(plant.losses.radiation_factor)},

    {"room", "altitude", "above sea level; gives the pressure",
     KEY_QUANTITY, NEED_PRESSURE, DIM_LENGTH, {"m", -400, 4000}, .where = AT(altitude_m)},
    {"room", "station pressure", "as read on the spot, not reduced to sea level",
     KEY_QUANTITY, NEED_PRESSURE, DIM_PRESSURE, {"kPa", 60, 110}, .where = AT(plant.ambient.pressure_Pa)},
    {"room", "temperature", "of the air, and of water and parts unless they say otherwise",
     KEY_QUANTITY, NEED_NOT, DIM_TEMPERATURE, {"degC", -30, 60}, .where = AT(plant.ambient.temperature_K)},
    {"room", "humidity", "relative",
     KEY_SHARE, NEED_NOT, DIM_FRACTION, {"%", 0, 100}, .where = AT(plant.ambient.relative_humidity)},
    {"room", "draught", "air speed over the bath",
     KEY_QUANTITY, NEED_NOT, DIM_SPEED, {"m/s", 0, 3}, .where = AT(plant.ambient.draught_m_s)},

    {"water control", "mode", "how the valve is moved; 'none' leaves it shut",
     KEY_CHOICE, NEED_NOT, DIM_COUNT, NO_BOUNDS, .where = AT(plant.control.mode), .choices = control_modes,
     .only = CASE_CONTROL},
    {"water control", "set point", "temperature of the bath to hold",
     KEY_QUANTITY, NEED_ALWAYS, DIM_TEMPERATURE, {"degC", 100, 200}, .where = AT(plant.control.set_point_K),
     .only = CASE_CONTROL},
    {"water control", "differential", "between opening and shutting, half above and half below the set point",
     KEY_QUANTITY, NEED_NOT, DIM_DIFFERENCE, {"K", 0.1, 20}, .where = AT(plant.control.differential_K),
     .only = CASE_ON_OFF},
    {"water control", "band", "from always shut to always open, half above and half below the set point",
     KEY_QUANTITY, NEED_NOT, DIM_DIFFERENCE, {"K", 0.2, 20}, .where = AT(plant.control.band_K),
     .only = CASE_PROPORTIONED},
    {"water control", "period", "from one opening to the next",
     KEY_QUANTITY, NEED_NOT, DIM_TIME, {"s", 10, 3600}, .where = AT(plant.control.period_s),
     .only = CASE_PROPORTIONED},
    {"water control", "rate", "what the open valve lets in, by mass or volume",
     KEY_QUANTITY, NEED_ALWAYS, DIM_MASS_FLOW, {"kg/min", 0.001, 600}, .where = AT(plant.control.rate_kg_s),
     .only = CASE_CONTROL, .other = DIM_VOLUME_FLOW, .within_other = {"L/min", 0.001, 600}},
    {"water control", "water temperature", "of what the valve lets in; as the room unless it says so",
     KEY_QUANTITY, NEED_NOT, DIM_TEMPERATURE, {"degC", 0, 85}, .where = AT(plant.control.water_K),
     .only = CASE_CONTROL},
    {"water control", "dead time", "from the decision to the water",
     KEY_QUANTITY, NEED_NOT, DIM_TIME, {"s", 0, 600}, .where = AT(plant.control.dead_time_s), .only = CASE_CONTROL},
    {"water control", "sensor lag", "time constant of the thermometer in its pocket",
     KEY_QUANTITY, NEED_NOT, DIM_TIME, {"s", 0, 600}, .where = AT(plant.control.sensor_lag_s), .only = CASE_CONTROL},
    {"water control", "only while boiling", "the valve stays shut, and shuts, while the bath does not boil",
     KEY_SWITCH, NEED_NOT, DIM_COUNT, NO_BOUNDS, .where = AT(plant.control.only_while_boiling), .choices = no_yes,
     .only = CASE_CONTROL},
    {"water control", "low level cut-off", "still level above the floor below which the heat is cut off",
     KEY_QUANTITY, NEED_NOT, DIM_LENGTH, {"m", 0, 5}, .where = AT(plant.control.low_level_m), .zero = "none",
     .only = CASE_CONTROL},

    {"fittings", "mixer", "at the start",
     KEY_SWITCH, NEED_NOT, DIM_COUNT, NO_BOUNDS, .where = AT(plant.fittings.mixer_on), .choices = off_on},
    {"fittings", "mixer power", "that reaches the liquid while the mixer is on",
     KEY_QUANTITY, NEED_NOT, DIM_POWER, {"W", 0, 1e5}, .where = AT(plant.fittings.mixer_W),
     .otherwise = "0.2 W per litre of bath"},
    {"fittings", "lid", "at the start",
     KEY_SWITCH, NEED_NOT, DIM_COUNT, NO_BOUNDS, .where = AT(plant.fittings.lid_on), .choices = off_on},
    {"fittings", "lid coefficient", "heat through a closed lid",
     KEY_QUANTITY, NEED_NOT, DIM_COEFFICIENT, {"W/m2K", 1, 20}, .where = AT(plant.fittings.lid_W_m2K)},
    {"fittings", "lid return", "share of what condenses under the lid that drips back",
     KEY_SHARE, NEED_NOT, DIM_FRACTION, {"%", 0, 100}, .where = AT(plant.fittings.lid_return)},
    {"fittings", "exhaust", "at the start",
     KEY_SWITCH, NEED_NOT, DIM_COUNT, NO_BOUNDS, .where = AT(plant.fittings.exhaust_on), .choices = off_on},
    {"fittings", "still draught", "air speed over the bath while the exhaust is off",
     KEY_QUANTITY, NEED_NOT, DIM_SPEED, {"m/s", 0, 3}, .where = AT(plant.fittings.still_draught_m_s)},
    {"fittings", "grain size", "of dry salts as they are added",
     KEY_QUANTITY, NEED_NOT, DIM_LENGTH, {"mm", 0.2, 10}, .where = AT(plant.fittings.grain_m)},

    {"limits", "recovery", "longest time a load may stop the boil",
     KEY_QUANTITY, NEED_NOT, DIM_TIME, {"s", 1, 86400}, .where = AT(plant.limits.recovery_s)},
    {"limits", "freeboard", "least distance from the swelled surface to the rim",
     KEY_QUANTITY, NEED_NOT, DIM_LENGTH, {"m", 0, 2}, .where = AT(plant.limits.freeboard_m)},
    {"limits", "boiling point", "the band to hold while the bath boils",
     KEY_RANGE, NEED_NOT, DIM_TEMPERATURE, {"degC", 100, 200}, .where = AT(plant.limits.boiling_point_low_K)},
    {"limits", "load", "heaviest usual load per volume of bath",
     KEY_QUANTITY, NEED_NOT, DIM_CONCENTRATION, {"kg/m3", 1, 5000}, .where = AT(plant.limits.load_per_volume_kg_m3)},
};
/* clang-format on */

#define KEYS (sizeof table / sizeof table[0])

_Static_assert(offsetof(boil_limits, boiling_point_high_K) == offsetof(boil_limits, boiling_point_low_K) + sizeof(double),
               "a range is two doubles in a row");

size_t key_count(void)
{
    return KEYS;
}

const key *key_at(size_t index)
{
    return &table[index];
}

const char *const *key_sections(void)
{
    return sections;
}

size_t key_index(const key *k)
{
    return (size_t)(k - table);
}

bool key_has_other(const key *k)
{
    return k->within_other.unit != NULL;
}

const key *key_find(const char *section, const char *text, size_t length)
{
    for (size_t i = 0; i < KEYS; i++)
        if (strcmp(table[i].section, section) == 0 && words_same(text, length, table[i].words))
            return &table[i];
    return NULL;
}

const key *key_find_elsewhere(const char *text, size_t length)
{
    for (size_t i = 0; i < KEYS; i++)
        if (words_same(text, length, table[i].words))
            return &table[i];
    return NULL;
}

key_section_text key_place(const char *section)
{
    key_section_text t = {"above the first section"};
    if (section[0] != '\0')
        snprintf(t.text, sizeof t.text, "in [%s]", section);
    return t;
}
