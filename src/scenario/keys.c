#include "scenario/keys.h"

#include <string.h>

#include "base/words.h"
#include "scenario/record.h"

#define AT(member) offsetof(scenario, member)
#define PLANT(member) AT(plant.member)

/* In the order of the model's enums. */
/* clang-format off */
static const char *const times_count[] = {"from the start", "by the clock", NULL};
static const char *const tank_shapes[] = {"box", "upright cylinder", NULL};
static const char *const tank_heated[] = {"from below", "inside", NULL};
static const char *const heat_sources[] = {"gas", "electric", "steam", NULL};
static const char *const heat_fuels[] = {"natural gas", "propane", NULL};
static const char *const heat_controls[] = {"dial", "thermostat", "modulating", NULL};
static const char *const control_modes[] = {"none", "on/off", "time-proportioned", NULL};
static const char *const no_yes[] = {"no", "yes", NULL};
static const char *const marks[] = {"still", "boiling", NULL};
static const char *const hoods[] = {"none", "lateral one side", "lateral two sides", "push-pull", "enclosing", NULL};
static const char *const slots[] = {"length", "width", NULL};
static const char *const hazards[] = {"as the bath", "A-1", "A-2", "A-3", "A-4", "B-1", "B-2", "B-3", "B-4", "C-1", "C-2", "C-3",
                                      "C-4", "D-1", "D-2", "D-3", "D-4", NULL};
static const char *const drafts[] = {"atmospheric", "fan", NULL};
static const char *const off_on[] = {"off", "on", NULL};

static const char *const sections[] = {"tank",          "bath",     "heat",   "losses",   "room",
                                       "water control", "fittings", "rinse",  "limits", "by hand",
                                       "prices",        "exhaust",  "design", "measures", "plan", "jobs", "now", "breaks", "schedule",
                                       "uncertain",     "lesson",   "choices", "careful", "reckless", "idle", "must name", NULL};

/* A row: its section, words and meaning, what may stand there, where it goes, and what else there is to say of it. */
#define ROW(section, words, meaning, kind, dimension, unit, low, high, ...) \
    {section, words, meaning, kind, dimension, {unit, low, high}, .where = __VA_ARGS__}
#define QUANTITY(section, words, meaning, dimension, ...) \
    ROW(section, words, meaning, KEY_QUANTITY, DIM_##dimension, __VA_ARGS__)
#define SHARE(section, words, meaning, ...) ROW(section, words, meaning, KEY_SHARE, DIM_FRACTION, "%", __VA_ARGS__)
#define PRICE(words, meaning, dimension, other_dimension, ...) \
    {"prices", words, meaning, KEY_PRICE, DIM_##dimension, {NULL, 0, 0}, .other = DIM_##other_dimension, \
     .otherwise = "not stated", .only = CASE_PRICES, .where = __VA_ARGS__}
#define WISH(kind, words, meaning, dimension, unit, low, high, ...) \
    {"design", words, meaning, KEY_##kind, DIM_##dimension, {unit, low, high}, .only = CASE_DESIGN, .where = __VA_ARGS__}
#define SAYING(words, meaning, ...) \
    {"lesson", words, meaning, KEY_TITLE, DIM_COUNT, {NULL, 0, 0}, .only = CASE_LESSON, .where = __VA_ARGS__}
#define FACTOR(section, words, meaning, ...) ROW(section, words, meaning, KEY_FACTOR, DIM_COUNT, NULL, __VA_ARGS__)
#define WORD_OF(section, words, meaning, kind, list, ...) \
    {section, words, meaning, kind, DIM_COUNT, {NULL, 0, 0}, .choices = list, .where = __VA_ARGS__}
#define CHOICE(section, words, meaning, ...) WORD_OF(section, words, meaning, KEY_CHOICE, __VA_ARGS__)
#define SWITCH(section, words, meaning, ...) WORD_OF(section, words, meaning, KEY_SWITCH, __VA_ARGS__)

/* Bounds are those the model states, or common sense where it states none. */
static const key table[] = {
    ROW("", "title", "what the scenario shows", KEY_TITLE, DIM_COUNT, NULL, 0, 0, AT(title)),
    ROW("", "start", "wall clock at the start, for report and run sheet", KEY_CLOCK, DIM_TIME, NULL, 0, 0, AT(start_s)),
    CHOICE("", "times", "how the clocks of the schedule count", times_count, AT(times)),
    ROW("", "duration", "how long to follow the tank; default 30 min after the last act ends", KEY_SPAN, DIM_TIME, "h", 0.01,
        336, AT(schedule.duration_s)),
    ROW("", "schedule", "a CSV run sheet with the header time,act, instead of a [schedule] section", KEY_PATH, DIM_COUNT, NULL,
        0, 0, AT(run_sheet)),

    CHOICE("tank", "shape", "seen from above", tank_shapes, PLANT(tank.shape)),
    QUANTITY("tank", "length", "of a box, inside", LENGTH, "m", 0.1, 20, PLANT(tank.length_m), NEED_ALWAYS, CASE_BOX),
    QUANTITY("tank", "width", "of a box, inside", LENGTH, "m", 0.1, 20, PLANT(tank.width_m), NEED_ALWAYS, CASE_BOX),
    QUANTITY("tank", "diameter", "of an upright cylinder, inside", LENGTH, "m", 0.1, 20, PLANT(tank.diameter_m), NEED_ALWAYS,
             CASE_CYLINDER),
    QUANTITY("tank", "depth", "floor to rim", LENGTH, "m", 0.1, 5, PLANT(tank.depth_m), NEED_ALWAYS),
    QUANTITY("tank", "level", "still surface above the floor at the start", LENGTH, "m", 0.02, 5, PLANT(tank.level_m),
             NEED_LEVEL),
    QUANTITY("tank", "freeboard", "says the same: the still surface below the rim at the start", LENGTH, "m", 0, 5,
             AT(freeboard_m), NEED_LEVEL),
    QUANTITY("tank", "mark", "the shop's own mark above the floor", LENGTH, "m", 0.02, 5, PLANT(tank.mark_m),
             .otherwise = "the level at the start"),
    SWITCH("tank", "mark read", "against which surface the mark is held while it boils", marks, PLANT(tank.mark_boiling)),
    QUANTITY("tank", "wall", "thickness of the steel", LENGTH, "m", 0, 0.05, PLANT(tank.wall_thickness_m), .zero = "none"),
    QUANTITY("tank", "insulation", "thickness around the walls", LENGTH, "m", 0, 0.5, PLANT(tank.insulation_m), .zero = "none"),
    ROW("tank", "positions", "places for loads side by side; one more is a mistake", KEY_WHOLE, DIM_COUNT, NULL, 1, BOIL_POSITIONS_MAX,
        PLANT(tank.positions), .otherwise = "no limit"),
    CHOICE("tank", "heated", "where the heat enters", tank_heated, PLANT(tank.heated)),
    QUANTITY("tank", "heater top", "top of a heater inside, above the floor", LENGTH, "m", 0, 5, PLANT(tank.heater_top_m),
             .otherwise = "left to the model"),
    QUANTITY("tank", "parts top", "top of the hanging parts, above the floor", LENGTH, "m", 0, 5, PLANT(tank.parts_top_m),
             .otherwise = "left to the model"),

    ROW("bath", "salts", "the dry blend, by mass", KEY_BLEND, DIM_FRACTION, "%", 0, 100, PLANT(charge.blend), NEED_SALTS),
    QUANTITY("bath", "boiling point", "says how strong the bath is", TEMPERATURE, "degC", 80, 200, PLANT(charge.value),
             NEED_STRENGTH),
    QUANTITY("bath", "strength", "salts per volume of bath at its boiling point; 0: plain water", CONCENTRATION, "kg/m3", 0,
             2000, PLANT(charge.value), NEED_STRENGTH),
    SHARE("bath", "salt fraction", "salts by mass of bath; 0 %: plain water", 0, 89, PLANT(charge.value), NEED_STRENGTH),
    QUANTITY("bath", "temperature", "at the start", TEMPERATURE, "degC", 0, 200, PLANT(charge.temperature_K),
             .otherwise = "at its boiling point"),
    ROW("bath", "water afloat", "on a bath below its boil at the start; as warm as the room unless it says so", KEY_AFLOAT, DIM_MASS,
        "kg", 0, 1e4, PLANT(afloat.mass_kg), .other = DIM_VOLUME, .within_other = {"L", 0, 1e4}, .otherwise = "none"),
    QUANTITY("bath", "crust", "of salt over a cold bath at the start, out of what the bath holds: how much, or how thick", MASS, "kg", 0,
             1e5, PLANT(crust_kg), .other = DIM_LENGTH, .within_other = {"mm", 0, 500}, .otherwise = "none", .zero = "none"),
    QUANTITY("bath", "salt on the floor", "of a cold bath at the start, out of what the bath holds: how much, or how thick", MASS, "kg", 0,
             1e5, PLANT(bed_kg), .other = DIM_LENGTH, .within_other = {"mm", 0, 500}, .otherwise = "none", .zero = "none"),
    FACTOR("bath", "elevation factor", "boiling point's rise above water's, relative to the correlation", 0.85, 1.10,
           PLANT(elevation_factor)),

    CHOICE("heat", "source", "sets the defaults below", heat_sources, PLANT(heater.source)),
    CHOICE("heat", "fuel", "what a gas burner burns", heat_fuels, AT(fuel), .only = CASE_GAS),
    QUANTITY("heat", "input", "fuel or current at full dial; of propane perhaps as liquid, by volume", POWER, "kW", 0, 1e5,
             PLANT(heater.input_W), NEED_ALWAYS, CASE_FUEL, .other = DIM_VOLUME_FLOW, .within_other = {"L/min", 0, 235}),
    SHARE("heat", "efficiency", "share of the input that reaches the tank", 5, 100, PLANT(heater.efficiency),
          .only = CASE_FUEL),
    QUANTITY("heat", "steam temperature", "of the saturated steam in the coil", TEMPERATURE, "degC", 100, 200,
             PLANT(heater.steam_K), NEED_STEAM, CASE_STEAM),
    QUANTITY("heat", "steam pressure", "says the same; psig and barg count from the room's pressure, the others from zero",
             GAUGE_PRESSURE, "psig", 0, 200, AT(steam_gauge_Pa), NEED_STEAM, CASE_STEAM, .other = DIM_PRESSURE,
             .within_other = {"kPa", 101.42, 1550}),
    QUANTITY("heat", "coil area", "outside of the steam coil", AREA, "m2", 0.01, 100, PLANT(heater.coil_area_m2), NEED_ALWAYS,
             CASE_STEAM),
    QUANTITY("heat", "coil coefficient", "heat through the coil per area and difference of steam and bath", COEFFICIENT,
             "W/m2K", 60, 1700, PLANT(heater.coil_W_m2K), .only = CASE_STEAM),
    QUANTITY("heat", "lag", "time constant of the output", TIME, "s", 0, 3600, PLANT(heater.lag_s)),
    CHOICE("heat", "control", "what sets the fire", heat_controls, PLANT(heat_control.mode)),
    SHARE("heat", "dial", "setting at the start", 0, 100, PLANT(heater.dial), .only = CASE_BY_HAND),
    QUANTITY("heat", "set point", "temperature of the bath to hold; a boil is held by none, but by water", TEMPERATURE, "degC", 0,
             200, PLANT(heat_control.set_point_K), NEED_ALWAYS, CASE_BY_CONTROL),
    QUANTITY("heat", "differential", "between lighting and putting out, half below and half above the set point", DIFFERENCE, "K",
             0.1, 50, PLANT(heat_control.differential_K), .only = CASE_NOT_MODULATING),
    QUANTITY("heat", "band", "from full to minimum fire, half below and half above the set point", DIFFERENCE, "K", 0.2, 50,
             PLANT(heat_control.band_K), .only = CASE_MODULATING),
    SHARE("heat", "minimum fire", "of full fire", 0, 100, PLANT(heat_control.minimum_fire), NEED_FIRE, CASE_MODULATING),
    ROW("heat", "turndown", "full fire to minimum fire: says the same", KEY_TURNDOWN, DIM_COUNT, NULL, 1, 1000, AT(turndown),
        NEED_FIRE, CASE_MODULATING),
    QUANTITY("heat", "sensor lag", "time constant of the control's thermometer in its pocket", TIME, "s", 0, 600,
             PLANT(heat_control.sensor_lag_s)),
    QUANTITY("heat", "relight", "from the control's call to the flame", TIME, "s", 0, 600, PLANT(heat_control.relight_s)),
    QUANTITY("heat", "high limit", "above it the heat goes out, until it is switched on again", TEMPERATURE, "degC", 0, 300,
             PLANT(heat_control.high_limit_K), .otherwise = "none"),

    QUANTITY("losses", "wall coefficient", "heat through the walls", COEFFICIENT, "W/m2K", 0, 50,
             PLANT(losses.wall_coefficient_W_m2K), .otherwise = "from insulation and air"),
    FACTOR("losses", "evaporation factor", "scales the published correlation; 0 switches it off", 0, 3,
           PLANT(losses.evaporation_factor)),
    FACTOR("losses", "convection factor", "scales the published correlation; 0 switches it off", 0, 3,
           PLANT(losses.convection_factor)),
    FACTOR("losses", "radiation factor", "scales radiation from the surface; 0 switches it off", 0, 3,
           PLANT(losses.radiation_factor)),

    QUANTITY("room", "altitude", "above sea level; gives the pressure", LENGTH, "m", -400, 4000, AT(altitude_m), NEED_PRESSURE),
    QUANTITY("room", "station pressure", "as read on the spot, not reduced to sea level", PRESSURE, "kPa", 60, 110,
             PLANT(ambient.pressure_Pa), NEED_PRESSURE),
    QUANTITY("room", "temperature", "of the air, and of water and parts unless they say otherwise", TEMPERATURE, "degC", -30,
             60, PLANT(ambient.temperature_K)),
    SHARE("room", "humidity", "relative", 0, 100, PLANT(ambient.relative_humidity)),
    QUANTITY("room", "draught", "air speed over the bath", SPEED, "m/s", 0, 3, PLANT(ambient.draught_m_s)),

    CHOICE("water control", "mode", "how the valve is moved; 'none' leaves it shut", control_modes, PLANT(control.mode),
           .only = CASE_CONTROL),
    QUANTITY("water control", "set point", "temperature of the bath to hold", TEMPERATURE, "degC", 100, 200,
             PLANT(control.set_point_K), NEED_ALWAYS, CASE_CONTROL),
    QUANTITY("water control", "differential", "between opening and shutting, half above and half below the set point",
             DIFFERENCE, "K", 0.1, 20, PLANT(control.differential_K), .only = CASE_ON_OFF),
    QUANTITY("water control", "band", "from always shut to always open, half above and half below the set point", DIFFERENCE,
             "K", 0.2, 20, PLANT(control.band_K), .only = CASE_PROPORTIONED),
    QUANTITY("water control", "period", "from one opening to the next", TIME, "s", 10, 3600, PLANT(control.period_s),
             .only = CASE_PROPORTIONED),
    QUANTITY("water control", "rate", "what the open valve lets in, by mass or volume", MASS_FLOW, "kg/min", 0.001, 600,
             PLANT(control.rate_kg_s), NEED_ALWAYS, CASE_CONTROL, .other = DIM_VOLUME_FLOW,
             .within_other = {"L/min", 0.001, 600}),
    QUANTITY("water control", "water temperature", "of what the valve lets in; as the room unless it says so", TEMPERATURE,
             "degC", 0, 85, PLANT(control.water_K), .only = CASE_CONTROL),
    QUANTITY("water control", "dead time", "from the decision to the water", TIME, "s", 0, 600, PLANT(control.dead_time_s),
             .only = CASE_CONTROL),
    QUANTITY("water control", "sensor lag", "time constant of the thermometer in its pocket", TIME, "s", 0, 600,
             PLANT(control.sensor_lag_s), .only = CASE_CONTROL),
    SWITCH("water control", "only while boiling", "the valve shuts as the bath stops boiling, and stays shut until it has boiled for "
           "5 s again", no_yes,
           PLANT(control.only_while_boiling), .only = CASE_CONTROL),
    QUANTITY("water control", "low level cut-off", "still level above the floor below which the heat is cut off", LENGTH, "m",
             0, 5, PLANT(control.low_level_m), .zero = "none", .only = CASE_CONTROL),

    SWITCH("fittings", "mixer", "at the start", off_on, PLANT(fittings.mixer_on)),
    QUANTITY("fittings", "mixer power", "that reaches the liquid while the mixer is on", POWER, "W", 0, 1e5,
             PLANT(fittings.mixer_W), .otherwise = "0.2 W per litre of bath"),
    SWITCH("fittings", "lid", "at the start", off_on, PLANT(fittings.lid_on)),
    QUANTITY("fittings", "lid coefficient", "heat through a closed lid", COEFFICIENT, "W/m2K", 1, 20,
             PLANT(fittings.lid_W_m2K)),
    SHARE("fittings", "lid return", "share of what condenses under the lid that drips back", 0, 100,
          PLANT(fittings.lid_return)),
    SWITCH("fittings", "exhaust", "at the start", off_on, PLANT(fittings.exhaust_on)),
    QUANTITY("fittings", "still draught", "air speed over the bath while the exhaust is off", SPEED, "m/s", 0, 3,
             PLANT(fittings.still_draught_m_s)),
    QUANTITY("fittings", "grain size", "of dry salts as they are added", LENGTH, "mm", 0.2, 10, PLANT(fittings.grain_m)),

    QUANTITY("rinse", "temperature", "of the water that parts come from; as the room unless it says so", TEMPERATURE, "degC", 0, 100,
             PLANT(rinse.temperature_K), .only = CASE_RINSE),
    QUANTITY("rinse", "film", "water that parts carry in on their surface, per area", VOLUME_PER_AREA, "mL/m2", 0, 1000,
             PLANT(rinse.film_m3_m2), .only = CASE_RINSE, .otherwise = "as the load has it"),
    QUANTITY("rinse", "dwell", "time in it; parts come to it as warm as the room", TIME, "s", 0, 86400, PLANT(rinse.dwell_s),
             .only = CASE_RINSE),

    QUANTITY("limits", "recovery", "longest time a load may stop the boil", TIME, "s", 1, 86400, PLANT(limits.recovery_s)),
    QUANTITY("limits", "freeboard", "least distance from the swelled surface to the rim", LENGTH, "m", 0, 2,
             PLANT(limits.freeboard_m)),
    ROW("limits", "boiling point", "the band to hold while the bath boils", KEY_RANGE, DIM_TEMPERATURE, "degC", 100, 200,
        PLANT(limits.boiling_point_low_K)),
    QUANTITY("limits", "load", "heaviest usual load per volume of bath", CONCENTRATION, "kg/m3", 1, 5000,
             PLANT(limits.load_per_volume_kg_m3)),

    QUANTITY("by hand", "steady", "how long it must boil before anyone adds anything", TIME, "s", 1, 3600,
             PLANT(by_hand.steady_s)),
    QUANTITY("by hand", "reaction", "from the end of the boil, or a reading, to a shut tap", TIME, "s", 1, 600,
             PLANT(by_hand.reaction_s)),
    QUANTITY("by hand", "thermometer step", "what a thermometer shows is the nearest of its steps", DIFFERENCE, "K", 0, 10,
             PLANT(by_hand.thermometer_step_K)),
    QUANTITY("by hand", "mark step", "what the mark shows is the nearest of such steps", LENGTH, "m", 0, 0.1,
             PLANT(by_hand.mark_step_m)),

    PRICE("gas", "of fuel, by the heat in it; of propane perhaps by volume, liquid", ENERGY, VOLUME, AT(prices.gas)),
    PRICE("electricity", "of what heats the tank, or turns the mixer", ENERGY, ENERGY, AT(prices.electricity)),
    PRICE("steam", "of a coil's steam, by heat or by mass", ENERGY, MASS, AT(prices.steam)),
    PRICE("water", "by hand or by the valve", VOLUME, MASS, AT(prices.water)),
    PRICE("salts", "of dry salts, those that the parts carry out and waste takes along included", MASS, MASS, AT(prices.salts)),
    PRICE("liquid", "ready-mixed", VOLUME, MASS, AT(prices.liquid)),
    PRICE("waste", "of getting rid of what is bailed or drained and not run back", VOLUME, MASS, AT(prices.waste)),
    PRICE("labour", "of the whole shift", TIME, TIME, AT(prices.labour)),
    ROW("prices", "currency", "stands behind what it costs", KEY_WORD, DIM_COUNT, NULL, 0, 0, AT(prices.currency), .only = CASE_PRICES, .otherwise = "not stated"),

    CHOICE("exhaust", "hood", "over the bath, for the designer's sheet", hoods, AT(exhaust.hood), .only = CASE_EXHAUST),
    CHOICE("exhaust", "along", "side of a box that a slot runs along", slots, AT(exhaust.along), .only = CASE_EXHAUST),
    SWITCH("exhaust", "baffled", "a wall or baffle behind, as long as the tank and as high above the rim as it is wide", no_yes,
           AT(exhaust.baffled), .only = CASE_EXHAUST),
    QUANTITY("exhaust", "set back", "of a slot behind the rim", LENGTH, "m", 0, 1, AT(exhaust.set_back_m), .only = CASE_EXHAUST),
    QUANTITY("exhaust", "open area", "that an enclosing hood leaves open", AREA, "m2", 0.01, 100, AT(exhaust.open_area_m2),
             .only = CASE_EXHAUST, .otherwise = "not stated"),
    CHOICE("exhaust", "class", "of hazard and evolution; the bath's own by its caustic, its temperature and its boil", hazards,
           AT(exhaust.hazard), .only = CASE_EXHAUST),
    QUANTITY("exhaust", "winter air", "that comes in for what the hood draws", TEMPERATURE, "degC", -60, 60, AT(exhaust.winter_K),
             .only = CASE_EXHAUST, .otherwise = "not stated"),
    FACTOR("exhaust", "degree days", "of heating, in degrees Fahrenheit, a year", 0, 30000, AT(exhaust.degree_days_F),
           .only = CASE_EXHAUST, .otherwise = "not stated"),

    WISH(SHARE, "margin", "over the heat that is needed; 15 % covers the model's own doubt", FRACTION, "%", 0, 200, AT(design.margin)),
    CHOICE("design", "draft", "of a gas burner", drafts, AT(design.draft), .only = CASE_DESIGN),
    WISH(QUANTITY, "flue temperature", "of the flue gas as it leaves the tank", TEMPERATURE, "degC", 50, 1200, AT(design.flue_K), .otherwise = "not stated"),
    WISH(SHARE, "flue oxygen", "in the dry flue gas, by volume", FRACTION, "%", 0, 14, AT(design.flue_oxygen),
           .otherwise = "50 % excess air"),
    WISH(SHARE, "casing loss", "of the fuel's heat, beside the flue gas", FRACTION, "%", 0, 30, AT(design.casing_loss)),
    WISH(SHARE, "tube efficiency", "of a fired immersion tube in water of 180 degF", FRACTION, "%", 60, 80, AT(design.tube_efficiency)),
    WISH(QUANTITY, "watt density", "at the face of an electric element", FLUX, "W/in2", 1, 100, AT(design.element_W_m2)),
    WISH(SHARE, "heated share", "of the floor", FRACTION, "%", 1, 100, AT(design.heated_share)),
    WISH(FACTOR, "peak flux", "over the mean one under a burner", COUNT, NULL, 1, 5, AT(design.peak_flux)),
    WISH(QUANTITY, "floor", "thickness of its steel", LENGTH, "m", 1e-3, 0.05, AT(design.floor_m), .otherwise = "as the walls"),
    WISH(QUANTITY, "floor bars", "from one bar under the floor to the next", LENGTH, "m", 0, 20, AT(design.floor_bars_m), .zero = "none"),
    WISH(QUANTITY, "scale", "of salt on the heated steel", LENGTH, "m", 0, 0.05, AT(design.scale_m)),
    WISH(QUANTITY, "stress", "that the code allows the steel", STRESS, "ksi", 1, 40, AT(design.stress_Pa)),
    WISH(QUANTITY, "corrosion allowance", "of walls and floor", LENGTH, "m", 0, 0.02, AT(design.corrosion_m)),
    WISH(QUANTITY, "basket width", "of one that hangs in the bath", LENGTH, "m", 0.02, 10, AT(design.basket_m), .otherwise = "not stated"),
    WISH(QUANTITY, "spacing", "between two baskets", LENGTH, "m", 0, 2, AT(design.spacing_m)),
    WISH(QUANTITY, "water pressure", "before the makeup valve", GAUGE_PRESSURE, "psig", 1, 200, AT(design.water_gauge_Pa)),
    WISH(QUANTITY, "water temperature", "of the makeup", TEMPERATURE, "degC", 0, 100, AT(design.water_K), .otherwise = "as the room"),
    WISH(FACTOR, "rinse ratio", "how many times weaker than the bath the last rinse is", COUNT, NULL, 1, 1e6, AT(design.rinse_ratio)),
    WISH(FACTOR, "hours a year", "that the line works", COUNT, NULL, 1, 8784, AT(design.hours_a_year), .otherwise = "not stated"),
    WISH(QUANTITY, "idle", "how long the bath stands between shifts", TIME, "h", 0.1, 168, AT(design.idle_s)),
    WISH(PRICE, "insulation price", "of what is put around the walls, by its volume", VOLUME, NULL, 0, 0, AT(design.insulation_price),
         .other = DIM_VOLUME, .otherwise = "not stated"),
    WISH(SHARE, "capital rate", "a year's share of what insulation costs", FRACTION, "%", 1, 100, AT(design.capital_rate)),

    SAYING("goal", "what it teaches", AT(lesson.goal), .need = NEED_ALWAYS),
    SAYING("question", "what is asked of whoever does it", AT(lesson.question), .need = NEED_ALWAYS),
    SAYING("hint", "one line, shown after the first failure", AT(lesson.hint), .otherwise = "none"),
    SAYING("debrief", "one line, shown when it is over", AT(lesson.debrief), .otherwise = "none"),
    SAYING("done with care", "one line beside the shift that is done with care", AT(lesson.care), .otherwise = "none"),

    QUANTITY("plan", "hoist", "one move of it, in or out", TIME, "s", 1, 3600, AT(plan.hoist_s), .only = CASE_PLAN),
    QUANTITY("plan", "settle", "from the boil's return to the next load; never less than 'steady' of [by hand]", TIME, "s", 0, 86400,
             AT(plan.settle_s), .only = CASE_PLAN),
    QUANTITY("plan", "water", "the most that is poured by hand, by mass or volume; slower where the bath does not bear it", MASS_FLOW,
             "kg/min", 0.001, 60, AT(plan.water_kg_s), .only = CASE_PLAN, .other = DIM_VOLUME_FLOW, .within_other = {"L/min", 0.001, 60},
             .zero = "none"),
    ROW("plan", "end", "of the shift, by the clock: all is lifted by then", KEY_CLOCK, DIM_TIME, NULL, 0, 0, AT(plan.end_s),
        .only = CASE_PLAN, .otherwise = "open"),
    SHARE("plan", "odds", "a plan that holds in this share of 128 draws of what is uncertain in [uncertain]", 50, 99, AT(plan.odds),
          .only = CASE_PLAN, .otherwise = "not asked"),
    ROW("plan", "jobs", "a CSV list of jobs, instead of a [jobs] section", KEY_PATH, DIM_COUNT, NULL, 0, 0, AT(plan.jobs_file),
        .only = CASE_PLAN, .otherwise = "in [jobs]"),
};
/* clang-format on */

#define KEYS (sizeof table / sizeof table[0])

_Static_assert(offsetof(boil_water_afloat, temperature_K) == offsetof(boil_water_afloat, mass_kg) + sizeof(double),
               "what floats is two doubles in a row");
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

bool key_section_is_script(const char *section)
{
    static const char *const scripts[] = {"choices", "careful", "reckless", "idle", "must name"};
    for (size_t i = 0; i < sizeof scripts / sizeof scripts[0]; i++)
        if (strcmp(section, scripts[i]) == 0)
            return true;
    return false;
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

const key *key_named(const char *section, const char *words)
{
    return key_find(section, words, strlen(words));
}

/* clang-format off */
static const key_misnomer misnomers[] = {
    {"bath", "boils at", "boiling point", "is called 'boiling point' here"},
    {"tank", "height", "depth", "is called 'depth' here (floor to rim)"},
    {"tank", "volume", "level", NULL},
    {"tank", "fill", "level", "is called 'level' here (still surface above the floor)"},
    {"heat", "power", "input", "is called 'input' here (fuel or current at full dial)"},
};
/* clang-format on */

const key_misnomer *key_misnamed(const char *section, const char *text, size_t length)
{
    for (size_t i = 0; i < sizeof misnomers / sizeof misnomers[0]; i++)
        if (strcmp(misnomers[i].section, section) == 0 && words_same(text, length, misnomers[i].typed))
            return &misnomers[i];
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
