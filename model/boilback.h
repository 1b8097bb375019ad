/* boilback.h -- an open tank of boiling caustic salt solution, and what happens to its boil when steel, water, salt or heat
   goes in or out. SI units: kg, m, s, K, Pa, W, J; kg/kg for fractions by mass. */
#ifndef BOILBACK_H
#define BOILBACK_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#ifdef __cplusplus
extern "C" {
#endif

#if defined __GNUC__
#define BOIL_PUBLIC __attribute__((visibility("default")))
#else
#define BOIL_PUBLIC
#endif

/* Version ------------------------------------------------------------------------------------------------------------ */

#define BOIL_VERSION_MAJOR 0
#define BOIL_VERSION_MINOR 2
#define BOIL_VERSION_PATCH 0
#define BOIL_VERSION_TEXT "0.2.0"
#define BOIL_VERSION_NUMBER (10000 * BOIL_VERSION_MAJOR + 100 * BOIL_VERSION_MINOR + BOIL_VERSION_PATCH)

/* Of the library that runs; the macros are of the header that was compiled. */
BOIL_PUBLIC const char *boil_version(void);
BOIL_PUBLIC int boil_version_number(void);

/* Outcomes ----------------------------------------------------------------------------------------------------------- */

/* What a function returns that may fail. It never ends the process. */
typedef enum {
    BOIL_OK = 0,
    BOIL_OUT_OF_RANGE = -1, /* beyond a correlation's range */
    BOIL_NO_ROOT = -2,      /* a solver found no answer */
    BOIL_NO_MEMORY = -3,    /* allocation refused */
    BOIL_BAD_INPUT = -4,    /* the case itself makes no sense */
    BOIL_NOT_FINITE = -5    /* a rate came out infinite or not a number */
} boil_outcome;

BOIL_PUBLIC const char *boil_outcome_text(boil_outcome outcome); /* static text, a few words; of any number */

/* Salts and the bath liquid ----------------------------------------------------------------------------------------------- */

/* Sodium hydroxide, nitrate and nitrite in water. A function that gives a number gives NaN where it has none to give. */

enum { BOIL_NAOH, BOIL_NANO3, BOIL_NANO2, BOIL_SALTS };

/* kg of each (any amount; only ratios matter to intensive properties). Water must be positive; without salts all that
   follows is water's. */
typedef struct {
    double water;
    double salt[BOIL_SALTS];
} boil_mixture;

/* The air it boils under. */
typedef struct {
    double pressure_Pa;      /* 60 to 110 kPa */
    double saturation_K;     /* pure water's boiling point there */
    double elevation_factor; /* 1; 0.85 to 1.10 */
} boil_conditions;

/* How far inside the correlations' range: the least margin. */
typedef struct {
    const char *quantity; /* static text */
    const char *unit;
    double value, limit;
    double margin; /* > 0 inside; continuous in the state, in units of the quantity */
} boil_range;

typedef struct {
    double enthalpy_J;        /* from liquid water at 0 degC; salts: any constant */
    double heat_capacity_J_K; /* its derivative with respect to temperature */
    double water;             /* with respect to the mass of water, J/kg */
    double salt[BOIL_SALTS];  /* and of each salt */
} boil_heat;

/* A kilogram of solution of a dry blend, fractions by mass (sum 1), with a total salt fraction of 0 to below 1. */
BOIL_PUBLIC boil_mixture boil_mixture_of(const double blend[BOIL_SALTS], double salt_fraction);

/* kg; of its salts; and kg salts per kg solution. */
BOIL_PUBLIC double boil_mixture_mass(const boil_mixture *m);
BOIL_PUBLIC double boil_mixture_salts(const boil_mixture *m);
BOIL_PUBLIC double boil_mixture_salt_fraction(const boil_mixture *m);

/* At a station pressure, 60 to 110 kPa, with an elevation factor of 0.85 to 1.10 (1: as the correlation has it). */
BOIL_PUBLIC boil_conditions boil_conditions_at(double pressure_Pa, double elevation_factor);

/* Boiling point, K. BOIL_NO_ROOT when there is none below 250 degC; BOIL_OK says nothing about the correlations' range: see
   boil_solution_range. */
BOIL_PUBLIC boil_outcome boil_solution_boiling_point(const boil_conditions *c, const boil_mixture *m, double *boiling_point_K);

/* Water activity, 0 to 1; NaN where there is none. */
BOIL_PUBLIC double boil_solution_activity(const boil_mixture *m, double temperature_K);

/* kg/m3. */
BOIL_PUBLIC double boil_solution_density(const boil_mixture *m, double temperature_K);

/* NaN for what is no solution. */
BOIL_PUBLIC boil_heat boil_solution_heat(const boil_mixture *m, double temperature_K);

/* At a temperature; where the composition has no equivalent within the correlations the margin is NaN. */
BOIL_PUBLIC boil_range boil_solution_range(const boil_mixture *m, double temperature_K);

/* Salts per volume of bath at its boiling point, kg/m3; NaN when it does not boil. */
BOIL_PUBLIC double boil_solution_strength(const boil_conditions *c, const boil_mixture *m);

/* Salt fraction at which the blend boils at a temperature. BOIL_OUT_OF_RANGE: below water's boiling point, or beyond where the
   correlations end. */
BOIL_PUBLIC boil_outcome boil_solution_fraction_boiling_at(const boil_conditions *c, const double blend[BOIL_SALTS],
                                                           double boiling_point_K, double *salt_fraction);

/* Salt fraction at which boil_solution_strength is as wanted. BOIL_OUT_OF_RANGE likewise. */
BOIL_PUBLIC boil_outcome boil_solution_fraction_of_strength(const boil_conditions *c, const double blend[BOIL_SALTS],
                                                            double strength_kg_m3, double *salt_fraction);

/* Highest temperature, K, at which one of the salts of a mixture is saturated, above 0 degC; NaN when none is. */
BOIL_PUBLIC double boil_solubility_crystals_from(const boil_mixture *m);

/* Of saturated liquid water, kg/m3; 273.15 to 473.15 K. */
BOIL_PUBLIC double boil_water_density(double temperature_K);

/* Of saturated liquid water, J/kg, near zero at 0.01 degC; 273.15 to 473.15 K. */
BOIL_PUBLIC double boil_water_enthalpy(double temperature_K);

/* K, at 611.213 Pa to 22.064 MPa. */
BOIL_PUBLIC double boil_water_saturation_temperature(double pressure_Pa);

/* The plant: all that stands there before the first action ---------------------------------------------------------------- */

#define BOIL_POSITIONS_MAX 40

typedef enum { BOIL_TANK_BOX, BOIL_TANK_UPRIGHT_CYLINDER } boil_tank_shape;

typedef enum { BOIL_TANK_HEATED_FROM_BELOW, BOIL_TANK_HEATED_INSIDE } boil_tank_heated;

typedef struct {
    boil_tank_shape shape;
    double length_m, width_m; /* box, 0.1 to 20 m */
    double diameter_m;        /* cylinder, 0.1 to 20 m */
    double depth_m;           /* floor to rim, 0.1 to 5 m */
    double level_m;           /* still surface above the floor at the start; from 0.02 m to below the rim */
    double wall_thickness_m;  /* steel; 0: no wall (neither heat capacity nor loss) ; to 0.05 m */
    double insulation_m;      /* 0: bare; to 0.5 m */
    boil_tank_heated heated;
    double mark_m;       /* the shop's own mark above the floor; below the rim, 0: the level at the start */
    bool mark_boiling;   /* held against the surface as it boils, swelled; else against the still one */
    double heater_top_m; /* heated inside: top of the heater above the floor; below the rim, 0: not stated */
    double parts_top_m;  /* top of hanging parts above the floor; below the rim, 0: not stated */
    double positions; /* places for loads side by side: a whole number to BOIL_POSITIONS_MAX; 0: no limit. A run minds none */
} boil_tank;

typedef enum { BOIL_HEAT_GAS, BOIL_HEAT_ELECTRIC, BOIL_HEAT_STEAM } boil_heat_source;

typedef struct {
    boil_heat_source source;
    double input_W;    /* fuel or electric input at full dial; 0 to 1e8 */
    double efficiency; /* share of the input that reaches the tank; 0.05 to 1 */
    double lag_s;      /* first-order time constant of the output; 0 to 3600 */
    double dial;       /* 0 to 1 at the start */
    /* Steam coil only: the heat is dial UA (T_steam - T_bath), never below zero; input_W and efficiency do not apply. */
    double coil_area_m2; /* 0.01 to 100 */
    double coil_W_m2K;   /* 800, 60 to 1700: natural circulation to fouled */
    double steam_K;      /* saturation temperature of the supply; 373 to 473 K */
} boil_heater;

/* Who sets the fire: a hand at the dial, or the bath's temperature (model/equipment/heat_control.h). */
typedef enum { BOIL_HEAT_CONTROL_DIAL, BOIL_HEAT_CONTROL_THERMOSTAT, BOIL_HEAT_CONTROL_MODULATING } boil_heat_control_mode;

typedef struct {
    boil_heat_control_mode mode;
    double set_point_K;    /* 273.15 to 473.15; by the dial: of no meaning */
    double differential_K; /* on/off: 4, judgement; 0.1 to 50 */
    double band_K;         /* modulating: 6, judgement; 0.2 to 50 */
    double minimum_fire;   /* modulating, of full fire: 0.25, judgement; 0 to 1 */
    double sensor_lag_s;   /* 30, judgement; 0 to 600 */
    double relight_s;      /* from the call to the flame: 15 with gas, judgement, else 0; 0 to 600 */
    double high_limit_K;   /* above it the heat goes out and stays out until switched on again; 273.15 to 573.15, 0: none */
} boil_heat_control;

typedef struct {
    double evaporation_factor;       /* 0 to 3; 1: published */
    double convection_factor;        /* 0 to 3 */
    double radiation_factor;         /* 0 to 3 */
    double wall_coefficient_W_m2K;   /* 0 to 50; negative: from insulation and air */
    double emissivity;               /* 0.95, 0.90 to 0.96; the surroundings have the room's temperature */
    double liquid_coefficient_W_m2K; /* bath side of the surface: 2000, 1000 to 3000, fitted: transfer/surface.h */
    double salt_transfer_m_s;        /* k_L of transfer/skin.h: 5.6e-5, 3e-5 to 1e-4; infinite: a skin as strong as the bath */
    double insulation_conductivity_W_mK; /* as built: 0.070, fitted to published tank tables; 0.04 to 0.08 */
} boil_losses;

typedef struct {
    double pressure_Pa;       /* station pressure, not reduced to sea level; 60 to 110 kPa */
    double temperature_K;     /* 243 to 333.15 K (-30 to 60 degC) */
    double relative_humidity; /* 0 to 1 */
    double draught_m_s;       /* air speed over the bath; 0 to 3 */
} boil_ambient;

typedef enum { BOIL_WATER_CONTROL_NONE, BOIL_WATER_CONTROL_ON_OFF, BOIL_WATER_CONTROL_PROPORTIONED } boil_water_control_mode;

typedef struct {
    boil_water_control_mode mode;
    double set_point_K;      /* 373.15 to 473.15 */
    double differential_K;   /* on/off: 0.1 to 20 */
    double band_K;           /* proportioned: 0.2 to 20 */
    double period_s;         /* proportioned: 10 to 3600 */
    double rate_kg_s;        /* open valve; > 0, to 10 */
    double water_K;          /* 273.15 K to the boiling point of water */
    double dead_time_s;      /* 0 to 600 */
    double sensor_lag_s;     /* 0 to 600; a thermometer in a pocket: 30 */
    bool only_while_boiling; /* the interlock */
    double low_level_m;      /* still level below which the heat is cut off; 0: none */
} boil_water_control;

typedef struct {
    double recovery_s;                                /* longest a load may stop the boil; 1 to 86400 */
    double freeboard_m;                               /* least distance from the swelled surface to the rim; 0 to 2 */
    double boiling_point_low_K, boiling_point_high_K; /* the band the bath should hold while it boils */
    double load_per_volume_kg_m3; /* heaviest usual load per volume of bath: 1 lb per 2 gal; common practice, no source */
} boil_limits;

/* What can be switched by actions. */
typedef struct {
    double mixer_W; /* shaft power that reaches the liquid; 0 to 1e5; default 0.2 W per litre of bath when 0 */
    bool mixer_on, lid_on, exhaust_on; /* at the start: off, off, on */
    double still_draught_m_s;          /* air speed with the exhaust off; 0.1, 0 to 3 */
    double lid_W_m2K;                  /* heat through a lid per difference of bath and room: 7, 1 to 20, judgement */
    double lid_return;                 /* share of what condenses under the lid that drips back; 0.8, 0 to 1, judgement */
    double grain_m;                    /* size of dry salt: 1 mm, 0.2 to 10 mm, judgement */
} boil_fittings;

/* Transport properties of the hot solution: order of magnitude only, judgement, but for the viscosity of its composition and
   temperature (model/properties/viscosity.h). */
typedef struct {
    double viscosity_factor;    /* on that: 1, 0.7 to 1.5, the judged error above 70 degC */
    double conductivity_W_mK;   /* 0.65, 0.5 to 0.8 */
    double expansion_1_K;       /* 5e-4, 4e-4 to 8e-4 */
    double surface_tension_N_m; /* 0.085, 0.06 to 0.10 */
} boil_transport;

typedef struct {
    double distribution;            /* C0: 1.2, 1.0 to 1.5 */
    double drift;                   /* K: 1.53; 0.3 (foaming) to 5 (wide pools) */
    double part_coefficient_factor; /* of heat from pool to parts: 1; 0.5 to 2: a basket is no single body in a wide pool */
} boil_swell;

/* Water afloat: equations in model/transfer/water_layer.h. */
typedef struct {
    double turnover_factor;   /* C of transfer/overturn.h: 1, 0.3 to 3 */
    double held_factor;       /* C in its place until a boil comes back, and again from a minute after that; 0: never */
    double mixing_efficiency; /* eta: 0.05, 0.02 to 0.2, judgement */
    double erosion_factor;    /* 1, 0.3 to 3 */
    double mixer_share;       /* of a mixer's power that stirs the layer in: 1, 0 to 1; 0 counts on none of it */
    double drift_coefficient; /* of a load lowered through it: 0.2; negative: it takes nothing; infinite: all of the layer */
    double path_m;            /* of the heat into it: 3 mm, 1.3 to 8 mm, judgement */
    double cover_m;           /* d0: 3 mm, 1 to 10 mm, judgement */
    double local_steam; /* chi, of the steam of partial mixtures in a bath below its boil, what escapes: 0; 1 as it lets go */
} boil_water_layer_law;

/* How the scenario states the strength of the bath. */
typedef enum { BOIL_INITIAL_BY_SALT_FRACTION, BOIL_INITIAL_BY_STRENGTH, BOIL_INITIAL_BY_BOILING_POINT } boil_initial_basis;

typedef struct {
    double blend[BOIL_SALTS]; /* dry salts by mass: NaOH, NaNO3, NaNO2; sum 1; of plain water all may be 0 */
    boil_initial_basis basis;
    double value;         /* kg/kg solution; kg salts per m3 of bath at its boiling point (0: plain water); or K */
    double temperature_K; /* at the start; 0: at its boiling point */
} boil_initial_charge;

/* What the charge comes to: composition, boiling point, mass. BOIL_OUT_OF_RANGE or BOIL_NO_ROOT when there is no such bath. */
typedef struct {
    boil_mixture mixture; /* kg of water and each salt in the tank */
    double salt_fraction, boiling_point_K, temperature_K, density_kg_m3 /* at its temperature */, volume_m3;
} boil_initial_state;

/* Water that floats on the bath as the run begins: how it came there is not asked. The bath is quiet until it can boil. */
typedef struct {
    double mass_kg;       /* 0 to 1e4; 0: none */
    double temperature_K; /* of any: 273.15 K to the boiling point of water in the room */
} boil_water_afloat;

/* The person at the tank: judgement. */
typedef struct {
    double steady_s;                        /* of boil before anyone pours: 30; 1 to 3600 */
    double reaction_s;                      /* from the boil's end, or a reading, to a shut tap: 10; 1 to 600 */
    double thermometer_step_K, mark_step_m; /* a gauge shows the nearest of its steps: 1 degF, 1/8 in; to 10 K, to 0.1 m */
} boil_by_hand;

/* Where parts come from; 0 K: from nowhere in particular. It is read when loads are, not by a run. */
typedef struct {
    double temperature_K; /* 273.15 to 373.15, or 0 */
    double film_m3_m2;    /* of wetted area; negative: a load's own; to 1e-3 */
    double dwell_s;       /* 30, judgement; 0 to 86400 */
} boil_rinse;

typedef struct {
    boil_tank tank;
    boil_initial_charge charge;
    boil_water_afloat afloat;
    double
        crust_kg; /* of the charge's nitrate and nitrite, in its proportion: hangs over the bath as a crust at the start, not dissolved.
                        It begins quiet then, at a stated temperature below the boil of what is left dissolved. 0: none */
    double bed_kg;    /* likewise, on the floor; both together less than the charge's */
    bool salt_stated; /* somebody looked for crust and bed, if there be none: else a bath cold enough for them is a finding */
    boil_heater heater;
    boil_heat_control heat_control;
    boil_losses losses;
    boil_ambient ambient;
    boil_limits limits;
    boil_water_control control;
    boil_fittings fittings;
    boil_by_hand by_hand;
    boil_rinse rinse;
    double elevation_factor; /* 0.85 to 1.10; 1: as the correlation has it */
    double dilution_factor;  /* on the partial heat of water in the bath: 1, 0.85 to 1.10 */
    boil_transport transport;
    boil_swell pool;
    boil_water_layer_law layer;
} boil_plant;

/* Carbon steel tank and heater without sizes, which are to be given; all else usual. Plain water in it. */
BOIL_PUBLIC boil_plant boil_plant_default(void);

/* NULL, or the first thing that is wrong with the plant as a whole: static text, naming the range. */
BOIL_PUBLIC const char *boil_plant_problem(const boil_plant *p);

/* What the initial charge comes to. BOIL_BAD_INPUT, BOIL_OUT_OF_RANGE or BOIL_NO_ROOT when there is no such bath. */
BOIL_PUBLIC boil_outcome boil_plant_initial(const boil_plant *p, boil_initial_state *out);

/* NULL, or what is wrong with the part alone: static text, naming the range. So all of these. */
BOIL_PUBLIC const char *boil_tank_problem(const boil_tank *t);
BOIL_PUBLIC const char *boil_heater_problem(const boil_heater *h);
BOIL_PUBLIC const char *boil_heat_control_problem(const boil_heat_control *c);
BOIL_PUBLIC const char *boil_losses_problem(const boil_losses *l);
BOIL_PUBLIC const char *boil_ambient_problem(const boil_ambient *r);
BOIL_PUBLIC const char *boil_water_control_problem(const boil_water_control *c);

/* m2, plan. */
BOIL_PUBLIC double boil_tank_area(const boil_tank *t);

/* Gas 65 % and 120 s; electric 100 % and 60 s; steam 100 % (the input is what the coil gives off) and 30 s: usual
   figures, no source. Dial 1. No input: callers must give it. */
BOIL_PUBLIC boil_heater boil_heater_default(boil_heat_source source);

/* By the dial, with the usual numbers of a source, should a control take over. */
BOIL_PUBLIC boil_heat_control boil_heat_control_default(boil_heat_source source);

/* W to the tank when steady, the bath being at a temperature (which only a steam coil minds). */
BOIL_PUBLIC double boil_heater_output(const boil_heater *h, double dial, double bath_K);

/* Station pressure at an altitude, 101325 (1 - 2.25577e-5 z)^5.25588 Pa.
   [International Standard Atmosphere, ISO 2533:1975]; -400 to 4000 m. */
BOIL_PUBLIC double boil_ambient_pressure_at_altitude(double altitude_m);

/* Loads and the schedule of actions --------------------------------------------------------------------------------------- */

#define BOIL_LONGEST_RUN_S (366 * 86400.0)

/* cp(t) = sum heat_capacity[i] t^i in J/kgK, k(t) = sum conductivity[i] t^i in W/mK, t in degC. */
typedef struct {
    double density_kg_m3;
    double heat_capacity[4];
    double conductivity[2];
} boil_metal;

typedef enum { BOIL_SHAPE_PLATE, BOIL_SHAPE_BAR, BOIL_SHAPE_BALL, BOIL_SHAPE_TUBE } boil_shape;

typedef struct {
    double mass_kg; /* of the parts, 0.001 to 1e5 */
    boil_metal metal;
    boil_shape shape;
    double size_m;                   /* plate thickness, bar or ball diameter, tube outer diameter; 1e-4 to 1 m */
    double tube_wall_m;              /* tube only: 1e-4 m to less than half its diameter */
    double packed_depth_m;           /* 0: parts hang apart; else a dense basket of this depth, 0.01 to 2 m */
    double packed_conductivity_W_mK; /* 7, 3 to 15, judgement: wet bed of small steel parts */
    double packed_void;              /* 0.5, 0.3 to 0.7 */
    double temperature_K;            /* on entry; 233.15 to 473.15 K: much hotter parts would boil the bath on their faces */
    double immersed_s;               /* from entry to lifting, above 0; infinity: until lifted */
    bool at_boil;                    /* immersed_s, then not infinite, counts only while it is in and the bath boils */
    double latest_s;                 /* of one that counts so: it is lifted then, from the start of the run, and does not go in
                                        later; 0: no such moment, at most BOIL_LONGEST_RUN_S */
    double basket_kg;                /* steel of the basket, 0 to 1e5; as 3 mm wire or sheet */
    double lowering_s;               /* time to go in, and to come out; 1 to 600 s */
    double coefficient_W_m2K;        /* bath side, 10 to 1e5; 0: from the bath's own stirring */
    double area_m2;                  /* that meets the bath, to 1e5; 0: from mass, shape and size. Mass and size stay */
    double rinse_kg_m2; /* water carried in per wetted area; 0 to 1; 0.05 for parts that hang apart, 0.15 for packed ones */
    double
        drag_out_kg_m2;   /* bath liquid carried out per wetted area of the parts; negative: from the film that stays on them */
    double part_height_m; /* for natural convection; 0.1, 0.02 to 1; hardly matters */
    double pieces;        /* how many parts, for what is told apiece; 1 to 1e6; 0: nobody counted */
    /* Water carried in (model/case/carried_in.h): its temperature, 273.15 to 373.15 K, 0: as the parts; that in hollows that hold it
       back, in all, 0 to 1000 kg, and in each, m3, 1e-8 to 1. Closed hollows are not for a bath: they burst. */
    double water_K, trapped_kg, hollow_m3;
} boil_load;

typedef enum {
    BOIL_ACTION_LOAD,
    BOIL_ACTION_LIFT,
    BOIL_ACTION_WATER,
    BOIL_ACTION_SALTS,
    BOIL_ACTION_LIQUID,
    BOIL_ACTION_HEAT,
    BOIL_ACTION_MIXER,
    BOIL_ACTION_LID,
    BOIL_ACTION_EXHAUST,
    BOIL_ACTION_CRUST,  /* it is broken up */
    BOIL_ACTION_BAIL,   /* bath liquid leaves from the top: what floats first */
    BOIL_ACTION_DRAIN,  /* from the floor: undissolved salt in its share */
    BOIL_ACTION_RETURN, /* what was taken and kept under this name runs back in, under the surface */
    BOIL_ACTION_STIR    /* by a paddle, as by the mixer, for a time */
} boil_action_kind;

typedef struct {
    double mass_kg;       /* > 0 */
    double over_s;        /* > 0 */
    double temperature_K; /* 273.15 K to the boiling point of water in the room */
} boil_action_water;

/* Dry salts sifted in at a steady rate. */
typedef struct {
    double mass_kg, over_s;   /* > 0 */
    double temperature_K;     /* 243.15 to 473.15 K */
    double blend[BOIL_SALTS]; /* sum 1 */
} boil_action_salts;

/* Bath liquid taken out, at the bath's temperature and strength. A name keeps it, all that is taken under one name together. */
typedef struct {
    double volume_m3, over_s; /* > 0: the most, and in what time that would leave */
} boil_action_take;

/* All that is kept under the name runs in at a steady pace. */
typedef struct {
    double over_s; /* > 0 */
    double
        temperature_K; /* 273.15 to 473.15; 0: as warm as the room. Never below 5 K over where it would crystallise, nor over its boil */
} boil_action_return;

/* Ready-mixed liquid: solution of the given composition, run in under the surface, so it mixes at once. */
typedef struct {
    double mass_kg, over_s;   /* > 0 */
    double temperature_K;     /* 273.15 K to its boiling point */
    double blend[BOIL_SALTS]; /* of its salts, sum 1 */
    double salt_fraction;     /* 0 to where the correlations end; 0 is water that mixes at once */
} boil_action_liquid;

/* To whoever or whatever sets the fire. */
typedef enum {
    BOIL_HEAT_TURN,       /* the dial is turned, and counts from now on */
    BOIL_HEAT_ON,         /* full; where the plant has a control, that takes over with its own set point. A high limit resets */
    BOIL_HEAT_THERMOSTAT, /* the control takes over with this set point; a plant without one has an on/off one */
    BOIL_HEAT_DIAL        /* the dial counts again, as it stood */
} boil_heat_order;

typedef struct {
    boil_heat_order order;
    double dial;        /* turn: 0 to 1; else it does not matter */
    double set_point_K; /* thermostat: as boil_heat_control's; else it does not matter */
} boil_action_heat;

/* What an action waits for. The one before: see boil_wait. */
typedef enum {
    BOIL_WAIT_NONE,    /* its time */
    BOIL_WAIT_BOILING, /* the bath has boiled that long; 0: as long as the plant's steady_s */
    BOIL_WAIT_QUIET,   /* it has been quiet that long; 0: reaction_s */
    BOIL_WAIT_BACK     /* it has boiled that long, at least steady_s, since the load that it follows is in */
} boil_wait_state;

/* Beyond its time, which then is the earliest. All zero: it waits for nothing. */
typedef struct {
    boil_wait_state state;
    double for_s;   /* 0 or more */
    bool follows;   /* it counts from another action, done when that one was: the nearest before it in the schedule ... */
    size_t after;   /* ... that has this order */
    double delay_s; /* from there, 0 or more; of BOIL_WAIT_BACK nothing */
} boil_wait;

typedef enum {
    BOIL_GOAL_NONE,
    BOIL_GOAL_LEVEL,        /* m above the floor, as the mark is read */
    BOIL_GOAL_BOILING_POINT /* K, read while it boils: so it pours only then */
} boil_goal;

/* On what a pour hangs. All zero: on nothing. What begins by the boil waits for the plant's steady_s of it, and what ends by it, or by
   a goal, ends reaction_s later. */
typedef struct {
    boil_goal goal; /* of water, and the level of what is taken: the amount is then the most */
    double
        goal_value; /* reached half a step of the gauge before: water lifts a level and lowers a boiling point, a take lowers a level */
    double no_later_s;  /* it ends then, from the start; 0: no such moment */
    bool while_boiling; /* shut while the bath does not boil */
    bool once;          /* and, once it was shut for that, for good */
} boil_pour;

typedef struct {
    double time_s; /* from the start */
    boil_action_kind kind;
    size_t order; /* in which it was added: set by boil_schedule_add, breaks ties in time */
    boil_wait wait;
    boil_pour pour; /* of water, salts, liquid and what is taken */
    int line; /* actions of one such number take each other's place: one that still waits lapses at the next one's time; 0: none */
    int position; /* load: its place in the tank, from 1; 0: the lowest that is free. A run does not mind it */
    int name; /* load and lift: a number that stands for the load's name; 0 = unnamed; lift 0 = everything; take, return: what
                     keeps it */
    union {
        boil_load load;
        boil_action_water water;
        boil_action_salts salts;
        boil_action_liquid liquid;
        boil_action_take take;
        boil_action_return back;
        double stir_s; /* > 0 */
        boil_action_heat heat;
        bool on; /* mixer, lid, exhaust */
    } is;
} boil_action;

/* A spell in which nobody stands at the tank, s from the start. It changes nothing in the bath. */
typedef struct {
    double from_s, to_s;
} boil_break;

#define BOIL_BREAKS_MAX 64

typedef struct {
    boil_action *actions;
    size_t count, capacity;
    double duration_s;   /* 0 to BOIL_LONGEST_RUN_S */
    double idle_after_s; /* later than that nothing is done that still waits; 0: to the end */
    boil_break breaks[BOIL_BREAKS_MAX];
    size_t breaks_count;
} boil_schedule;

/* EN 1993-1-2, 20 to 600 degC: 7850 kg/m3. */
BOIL_PUBLIC boil_metal boil_carbon_steel(void);

/* Carbon steel plate of no mass, 20 degC, until lifted, lowered over 10 s. */
BOIL_PUBLIC boil_load boil_load_default(void);

/* NULL, or what is wrong with it: static text, naming the range. */
BOIL_PUBLIC const char *boil_load_problem(const boil_load *l);

/* K, of parts that came from_K warm into a rinse of rinse_K and hung there for a time. */
BOIL_PUBLIC double boil_rinsed_K(const boil_load *l, double from_K, double rinse_K, double dwell_s);

/* m2 of the parts' own surface, packed or not. */
BOIL_PUBLIC double boil_load_wetted(const boil_load *l);

/* An empty schedule of a duration, s, above 0. Whatever it was before is not freed. */
BOIL_PUBLIC void boil_schedule_init(boil_schedule *s, double duration_s);

/* Keeps a copy. BOIL_NO_MEMORY: the schedule is as it was. */
BOIL_PUBLIC boil_outcome boil_schedule_add(boil_schedule *s, const boil_action *a);

/* BOIL_BAD_INPUT when it does not end after it begins, or there are BOIL_BREAKS_MAX already. */
BOIL_PUBLIC boil_outcome boil_schedule_add_break(boil_schedule *s, double from_s, double to_s);

/* By time; actions at equal times keep their order. boil_run wants it sorted. */
BOIL_PUBLIC void boil_schedule_sort(boil_schedule *s);

/* Leaves it empty, breaks and all, of the same duration. NULL and an empty one are fine. */
BOIL_PUBLIC void boil_schedule_free(boil_schedule *s);

/* A run ------------------------------------------------------------------------------------------------------------------- */

/* What happened, moment by moment and action by action. Times are from the start, s; one that never came is NaN. A history is plain
   data: nothing in it points into the plant or the schedule. */

#define BOIL_MOST_ROWS 1e7
#define BOIL_FAST_LEVEL 0.03 /* 1/s */

/* Which of the uncertain laws of water afloat and of swell a run is made with. No one number errs on the safe side, so a case is
   judged by the gravest of several runs: see model/case/closures.h. Trigger is how a sudden run goes on in a set: a run of its own
   has no moment at which it lets go. */
typedef enum {
    BOIL_CLOSURES_LIKELY,
    BOIL_CLOSURES_LIKELY_WIDE,
    BOIL_CLOSURES_GRAVE,
    BOIL_CLOSURES_SUDDEN,
    BOIL_CLOSURES_SUDDEN_3,
    BOIL_CLOSURES_SUDDEN_8,
    BOIL_CLOSURES_MILD,
    BOIL_CLOSURES_MILD_8,
    BOIL_CLOSURES_TRIGGER,
    BOIL_CLOSURES
} boil_closures;
BOIL_PUBLIC const char *boil_closures_name(boil_closures c); /* "likely", "likely-wide", "grave", "sudden", "sudden-3", ... */

typedef struct {
    boil_closures closures; /* the uncertain laws that it is made with */
    bool own_elevation;     /* but with the plant's own boiling curve, whatever the laws have */
    double tolerance;      /* error per step relative to each unknown's size; 1e-4 to 1e-11, and refused beyond 1e-2 or 1e-30 */
    bool plain_steps;      /* explicit ones of at most 30 s: several times as many, to measure the usual ones against */
    double row_interval_s; /* rows of the trace, at most BOIL_MOST_ROWS; 0: no trace */
    double row_fast_s;     /* rows while the level moves by over BOIL_FAST_LEVEL of the depth a second; 0: no closer */
    boil_closures traced;  /* of a set: the run that keeps its trace besides the likely one; BOIL_CLOSURES: all */
    bool (*keep_going)(void *context,
                       double time_s); /* told after each step, may be NULL; false ends the run as "interrupted" */
    void *context;
} boil_run_options;

/* One row of the trace. */
typedef struct {
    double time_s;
    bool boiling;
    double temperature_K, boiling_point_K;
    double salt_fraction; /* dissolved salts by mass of solution */
    double water_kg, naoh_kg, nano3_kg, nano2_kg;
    double steam_kg_s;  /* formed in the pool */
    double vented_kg_s; /* formed, evaporated and boiled off the layer */
    double evaporated_kg_s;
    double heater_W, wall_W, surface_W, loads_W; /* surface: convection and radiation */
    double layer_kg, layer_m, layer_K;
    bool layer_boiling;
    double undissolved_kg; /* dry salts not yet dissolved */
    bool valve_open;       /* of the automatic water addition */
    double sensor_K;
    double still_level_m; /* no steam in it */
    double level_m;       /* swelled: upper estimate, with surge */
    double level_lower_m; /* swelled: lower estimate */
    double freeboard_m;   /* rim less level_m; negative: over the rim */
    double void_fraction;
    double left_m;          /* freeboard that what floats would leave if it let go now; NaN: nothing floats */
    double calm_kg_s;       /* steam that heater and losses alone would boil off */
    double crystals_kg;     /* out of solution, by what its solubility holds; 0 for a hot bath */
    double bed_superheat_K; /* floor under a bed of salt above the bath; 0: no bed */
    double coldest_load_K;  /* mean temperature of the coldest load in the bath; NaN: none in */
} boil_row;

/* What became of an action whose time came, in the order of the schedule. */
typedef enum {
    BOIL_ACT_WAITING, /* it still waited at the end */
    BOIL_ACT_DONE,
    BOIL_ACT_LAPSED,     /* it still waited as the next of its line came */
    BOIL_ACT_TOO_LATE,   /* it still waited at its no_later_s, or a load at its latest_s */
    BOIL_ACT_NOT_NEEDED, /* its goal was reached before, or nothing was kept to be returned */
} boil_act_end;
typedef struct {
    double done_s; /* when it was done, or begun; NaN: it was not */
    boil_act_end end;
} boil_act_result;

typedef struct {
    size_t action; /* of the schedule */
    double time_s;
    double mass_kg;              /* parts, without basket */
    bool was_quiet;              /* the bath did not boil when it went in */
    double boil_lost_s;          /* first quiet moment at or after entry and before lifting; entry if already quiet; NaN none */
    double recovery_s;           /* from then to the end of that spell; 0 never lost; NaN: still quiet at the end */
    double recovery_stored_s;    /* the same with the floor's store full, which a load spends first; 0: weakened only */
    double lowest_temperature_K; /* of the bath, from entry to the end of that spell (or to lifting) */
    double hot_s;                /* from entry until its mean is 95 % of the way to the bath; NaN never */
    double short_s;        /* that it lacked of it as it was lifted, by its own pace until then; 0: it was hot, or is in */
    double quiet_before_s; /* how long the bath had been quiet as it went in */
    double left_m;         /* freeboard that what floated would have left, had it let go as it went in; NaN: nothing did */
    bool may_overflow;     /* and it could have lifted the bath over the rim */
    double lifted_s;       /* when its lifting began; NaN: still in at the end */
    double boil_short_s;   /* of one whose time counts at the boil: what it lacked of it as it was lifted, or at the end */
    double drag_out_kg;    /* bath liquid it carried out; 0 while in */
    double level_max_m;    /* highest swelled level from its entry to that of a later one, or the end */
    double trapped_kg;     /* water in its hollows */
    double released_s;     /* when that let go; NaN never, or none */
    /* What it could do with all that was trapped in loads then in the bath, were it afloat at its boil when the boil returns: steam,
       freeboard left, NaN: none trapped; the surge, and the steam that lifts the bath to the rim; whether it may overflow. See
       model/bath/potential.h. */
    double pockets_kg, pockets_left_m, pockets_surge_kg_s, pockets_critical_kg_s;
    bool pockets_overflow;
} boil_load_result;

/* Why a pour ended. */
typedef enum {
    BOIL_POUR_GOES_ON, /* it has not: the run ended */
    BOIL_POUR_ALL_IN,  /* its amount, or the most that was to go in */
    BOIL_POUR_GOAL,
    BOIL_POUR_TIME, /* its no_later_s */
    BOIL_POUR_BOIL_LOST,
    BOIL_POUR_NEXT /* the next of its line came */
} boil_pour_end;

typedef struct {
    size_t action; /* of the schedule */
    boil_pour_end end;
    double missed_by_m, missed_by_K; /* what was lacking to its goal as it ended; NaN: reached, or no such goal */
    boil_action_kind kind;           /* water, salts or liquid */
    bool run_back;                   /* liquid that was bailed or drained before */
    double time_s;
    double over_s;
    double mass_kg;
    bool was_quiet_before;          /* the bath did not boil as it began */
    bool was_quiet;                 /* the bath did not boil at some moment of the pour */
    double boiling_point_K;         /* as it began */
    double quiet_poured_kg;         /* share that went onto a quiet bath */
    double steam_peak_kg_s;         /* largest steam formed, from its start to 10 min after its end (or the next addition) */
    bool steam_more_than;           /* it was that or more: above twice what lifts the bath to the rim no law holds */
    double steam_before_kg_s;       /* as it began */
    double boil_lost_s, recovery_s; /* as for a load; spells that begin while it pours, or that water causes within ten
                                           minutes of its end; NaN, 0: never lost */
    double recovery_stored_s;       /* as for a load */
    double layer_peak_kg;
    double freeboard_min_m;
    double level_rise_m; /* highest less the level as it began */
} boil_addition_result;

/* Bath liquid bailed or drained. */
typedef struct {
    size_t action;         /* of the schedule */
    boil_action_kind kind; /* bail or drain */
    boil_pour_end end;
    double time_s, over_s;
    double mass_kg;       /* liquid, undissolved salt in it, and water that floated */
    double missed_by_m;   /* what was lacking to its level as it ended; NaN: reached, or none */
    double temperature_K; /* of the bath as it began */
    bool was_boiling;     /* the bath as it began */
    double layer_kg;      /* water afloat as it began */
} boil_take_result;

typedef enum {
    BOIL_QUIET_START,
    BOIL_QUIET_LOAD,
    BOIL_QUIET_WATER,
    BOIL_QUIET_HEAT,
    BOIL_QUIET_LOSSES,
    BOIL_QUIET_LIQUID,
    BOIL_QUIET_SALTS
} boil_quiet_cause;

typedef struct {
    double start_s, end_s; /* end NaN: never */
    double lowest_temperature_K;
    boil_quiet_cause cause;
    bool by_thermostat;           /* the control of the heat had turned it down, and that is the cause */
    size_t met;                   /* loads that went in, and additions that were being poured, while it lasted */
    double stored_K;              /* by which the mean of a boiling bath may lie over its boiling point; simulate/recorder.h */
    double spent_s, refilled_s;   /* when it is that much below, and no longer: the spell, had the store been full; NaN never */
    double layer_s;               /* when a layer of 1 mm first floated in it; NaN never */
    double layer_max_m;           /* thickest water layer while quiet */
    double layer_max_kg;          /* and heaviest */
    double layer_at_return_kg;    /* water floating when the boil came back; 0 if never */
    double steam_peak_after_kg_s; /* in it, or within ten minutes of its end, or until the next spell; 0 if never back */
    double level_max_after_m;     /* within ten minutes of its end, or until the next spell; 0 if never back */
    double potential_kg;          /* steam that the water afloat could give, when it left least freeboard */
    double left_m, left_s;        /* that freeboard, and when; NaN: nothing floated that lowers it. See bath/potential.h */
    double left_hot_m;            /* the least, had the water been at its boil, and the bath at its own; NaN likewise */
    double surge_kg_s, critical_kg_s; /* the surge it could make then, and the steam that lifts the bath to the rim */
    double may_overflow_s;            /* when what floated could first lift the bath over the rim; NaN never */
    double end_left_m;                /* as left_hot_m, as of the last moment of the spell so far; NaN: nothing floats then */
    bool end_overflows;               /* and whether that could lift the bath over the rim */
    double erupts_s, erupts_kg; /* when most of all what floats may let go before the bath boils, and the steam then, where
                                           that leaves less than the freeboard asked for; NaN, 0: never */
} boil_quiet_result;

/* Full: the still surface is at the rim. What is put in from then on, or as much of the bath, runs over, and is not modelled. */
typedef enum { BOIL_RUN_DONE, BOIL_RUN_OUT_OF_RANGE, BOIL_RUN_FAILED, BOIL_RUN_INTERRUPTED, BOIL_RUN_FULL } boil_run_end;

/* Extremes and the moment of each. */
typedef struct {
    double value, time_s;
} boil_extreme;

/* Signal words as ANSI Z535 defines them. */
typedef enum {
    BOIL_SEVERITY_NOTICE,
    BOIL_SEVERITY_CAUTION,
    BOIL_SEVERITY_WARNING,
    BOIL_SEVERITY_DANGER,
    BOIL_SEVERITIES
} boil_severity;

/* What is followed from moment to moment: each by a measure that grows with the harm, in model/case/grading.h. */
typedef enum {
    BOIL_WATCH_TOO_HOT,        /* boiling point over the band, K */
    BOIL_WATCH_TOO_COOL,       /* below it while it boils, K */
    BOIL_WATCH_NEARLY_DRY,     /* share of water in the bath, less than nothing */
    BOIL_WATCH_FREEBOARD,      /* used up, of the limit */
    BOIL_WATCH_OVERFLOW,       /* swelled surface over the rim, m */
    BOIL_WATCH_OVERFLOW_STILL, /* still surface over it, m */
    BOIL_WATCH_HEATER_BARE,    /* level below the top of a heater inside, m */
    BOIL_WATCH_FLOOR_BARE,     /* level over a heated floor, less than nothing, m */
    BOIL_WATCH_FLOOR_HOT,      /* metal of a heated floor under salt, K */
    BOIL_WATCH_PARTS_BARE,     /* level below the top of the parts, m */
    BOIL_WATCH_SALT_BED,       /* floor under a bed of salt over the bath, K */
    BOIL_WATCH_RESTART,        /* floor below crystals over the bath while it is heated, K */
    BOIL_WATCH_CRUST,          /* thickness of the crust over the bath, m, while it is heated or anything goes in */
    BOIL_WATCH_CRYSTALS,       /* out of solution, of the bath */
    BOIL_WATCH_SURFACE_BOILS,  /* the water afloat, on a bath over 5 K below its own boil, for so long, s */
    BOIL_WATCH_LAYER,          /* freeboard used up if what floats on a quiet bath let go, of the limit */
    BOIL_WATCH_WATER_FAST,     /* freeboard used up if what floats on a boiling bath let go, of the limit */
    BOIL_WATCH_SURGE,          /* steam, in calm ones */
    BOIL_WATCH_LEVEL_HIGH,     /* still level over the shop's own mark, m */
    BOIL_WATCHES
} boil_watch_kind;

/* By that measure; moments are located within steps. */
typedef struct {
    boil_extreme worst;             /* NaN: it was never looked at */
    double from_s[BOIL_SEVERITIES]; /* first past each break point; NaN never */
    double outside_s;               /* past the lowest of them */
    double heated_s;                /* the heat being on, past that of a WARNING */
    size_t spells;                  /* past the lowest */
    int fed;                        /* break points that were passed, at the most, as anything went into the tank */
    bool met;                       /* a load went in or the heat was turned past the lowest, or within a minute after */
} boil_watched;

typedef struct {
    double temperature_start_K, temperature_end_K;
    double boiling_point_start_K, boiling_point_end_K;
    double salt_fraction_start, salt_fraction_end;
    double strength_start_kg_m3, strength_end_kg_m3; /* salts per volume of bath at its boiling point */
    double bath_mass_start_kg, bath_mass_end_kg;
    double still_level_start_m, still_level_end_m;
    boil_extreme level_max_m, freeboard_min_m, still_level_min_m;
    boil_extreme steam_peak_kg_s, layer_max_kg;
    bool steam_more_than; /* the peak of steam was that or more: above twice what lifts the bath to the rim no law holds */
    boil_extreme temperature_max_K, temperature_min_K; /* while boiling: the band finding; NaN if it never boiled */
    boil_extreme surge_peak_kg_s;                      /* most steam over the steady steam of that moment */
    double
        surge_freeboard_m; /* least while the steam over that is more than the steady steam, and for a minute after; NaN: it never is */
    double steam_steady_kg_s; /* at the start if boiling, else at the first minute of boil; NaN */
    double swell_spread_m;    /* upper less lower level at the highest */
    double steam_total_kg, vented_total_kg, evaporated_total_kg, layer_boiled_total_kg;
    double water_added_kg, rinse_added_kg; /* by hand; with the parts, on their surface */
    double trapped_kg, released_kg;        /* in their hollows, and of that what let go in the bath */
    double water_controlled_kg;            /* by the automatic valve */
    double condensate_kg;                  /* dripped back from the lid */
    double salts_added_kg, liquid_added_kg;
    double drag_out_kg, drag_out_salts_kg; /* carried out with the parts: liquid, and the salts in it */
    double taken_kg, taken_salts_kg;       /* bailed and drained, and the salts in it, dissolved and not */
    double returned_kg, returned_salts_kg; /* of it run back in, counting as liquid added as well: begun to; salts in it */
    double mixed_kg;                       /* ready-mixed, of the liquid added: what was not run back */
    double waste_kg, waste_salts_kg;       /* bailed and drained and not run back, and the salts in it */
    double heater_total_J, input_total_J;  /* to the tank; fuel or electricity (of a steam coil: the same) */
    double steel_kg;                       /* parts worked, without baskets */
    double undissolved_max_kg, bed_max_m;  /* salt not yet dissolved; thickest bed on the floor */
    boil_extreme bed_superheat_max_K;      /* floor under the bed above the bath */
    double dry_wetted_s;                   /* when water first met salt that stood above the liquid; NaN never */
    boil_extreme dry_steam_kg_s;           /* most steam that it could give as it soaked in; NaN never */
    double dry_steam_lifts_kg_s;           /* what then lifts the bath to the rim */
    double valve_quiet_kg;                 /* let in by the valve while the bath did not boil */
    double restoring_water_kg;             /* water that would bring the boiling point back to where it began; NaN: none can */
    double restored_level_m;               /* still level of the bath then, hot */
    size_t valve_openings;
    double valve_open_share;            /* of the time */
    size_t thermostat_stilled;          /* times that the control of the heat stilled the boil */
    size_t thermostat_met;              /* of these, what a load or a pour met */
    size_t fires_lit;                   /* times that the control lit the fire */
    double high_limit_s;                /* when the high limit first put the heat out; NaN never */
    double crystals_from_K;             /* bath temperature at which the first salt would crystallise; NaN none
                                                          above 0 degC */
    double crystals_s;                  /* when the bath first was below it; NaN never */
    double crystals_max_kg;             /* nitrate and nitrite that would have fallen out, at the most */
    double crust_max_kg;                /* of these, the most that hung over the bath */
    boil_extreme crust_superheat_K;     /* furthest over its boiling point that the bath was heated under it; NaN never */
    boil_extreme heated_crystals_kg;    /* the most that lay there while the heat was on; NaN none */
    boil_extreme crystals_fire;         /* most of the full heat that was on while any lay there, a share; NaN: none lay */
    double time_to_boil_s;              /* from a quiet start; NaN otherwise */
    double boiling_share;               /* of the time */
    double overflow_s;                  /* level first at the rim; NaN never */
    double still_overflow_s;            /* still surface first at the rim; NaN never */
    double stored_rise_m;               /* height of tank that a tenth of the steam would fill which a deep bath may store
                                        (simulate/recorder.h), at the start; NaN: it has no boiling point */
    boil_watched watched[BOIL_WATCHES]; /* by boil_watch_kind */
    double flash_bound_kg;              /* adiabatic mix, then flash, of the largest layer at a return of the boil */
} boil_summary;

/* Balances: what was in the tank, what came in, what went out, what is there. Closure: the end less the start less what came in
   plus what went out, over the larger of start and crossing; rounding and integration leave 1e-9 at most. */
typedef struct {
    double start_kg;
    double by_hand_kg, with_parts_kg, from_hollows_kg, by_valve_kg, from_lid_kg, in_liquid_kg;
    double steam_kg, evaporated_kg, layer_boiled_kg, drag_out_kg, taken_kg;
    double bath_kg, layer_kg; /* at the end */
    double closure;
} boil_water_balance;

typedef struct {
    double start_kg;
    double dry_kg, in_liquid_kg;
    double drag_out_kg, taken_kg;
    double dissolved_kg, undissolved_kg; /* at the end */
    double closure;
} boil_salts_balance;

/* Enthalpies from the zeros of properties/solution.h: only sums mean something. Closure: over what crossed, if anything did. */
typedef struct {
    double start_J;
    double heater_J, with_water_J, from_hollows_J, with_liquid_J, with_salts_J;
    double walls_J, air_J, loads_J, with_vapour_J, with_drag_J,
        with_taken_J; /* air: radiation and convection; loads: without what they held */
    double end_J;
    double closure;
} boil_energy_balance;

typedef struct {
    boil_water_balance water;
    boil_salts_balance salts;
    boil_energy_balance energy;
} boil_balance;

typedef struct {
    boil_act_result *acts; /* of the schedule's actions; those whose time did not come are not among them */
    size_t acts_count;
    boil_load_result *loads;
    size_t loads_count;
    boil_addition_result *additions;
    size_t additions_count;
    boil_take_result *takes;
    size_t takes_count;
    boil_quiet_result *quiet;
    size_t quiet_count;
    boil_row *rows;
    size_t rows_count;
    double *valve_s;
    size_t valve_count; /* when the automatic valve opened, shut, opened, ... */
    boil_summary summary;
    boil_balance balance;
    boil_run_end end;
    double end_s; /* when the run ended */
    /* when out of range: what, its value and limit (SI) */
    const char *stop_quantity; /* static text, e.g. "sodium hydroxide strength" ; NULL when done */
    double stop_value, stop_limit;
    const char *stop_unit; /* "kg/kg", "K", ... */
    size_t steps, evaluations, mode_changes;
    void *lists; /* the memory of all of the above but the rows */
} boil_history;

/* Of all loads of a run. */
typedef struct {
    size_t back, never; /* within the limit and a second; not at all */
    double slowest_s;   /* NaN when one never was back, or there is none */
} boil_recoveries;

/* Likely closures, the tolerance that was tested, no trace. */
BOIL_PUBLIC boil_run_options boil_run_options_default(void);

/* Carries a schedule out on a plant. On BOIL_OK the history is filled, even when the run stopped early (see `end`), and is the
   caller's to free by boil_history_free; on anything else it is empty and there is nothing to free. BOIL_BAD_INPUT when a part of
   plant, schedule or options is wrong (the functions ..._problem say what), BOIL_OUT_OF_RANGE or BOIL_NO_ROOT when there is no such
   bath, BOIL_NO_MEMORY. Runs share nothing: they may go on in several threads at once. */
BOIL_PUBLIC boil_outcome boil_run(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, boil_history *out);

/* Leaves it empty. NULL and an empty one are fine. */
BOIL_PUBLIC void boil_history_free(boil_history *h);
BOIL_PUBLIC boil_recoveries boil_history_recoveries(const boil_history *h, double limit_s);

/* Findings ---------------------------------------------------------------------------------------------------------------- */

/* What in a run deserves a word, how grave it is, and the quantity behind it. */

typedef enum {
    BOIL_UNIT_TIME,        /* s */
    BOIL_UNIT_LENGTH,      /* m */
    BOIL_UNIT_MASS,        /* kg */
    BOIL_UNIT_MASS_FLOW,   /* kg/s */
    BOIL_UNIT_TEMPERATURE, /* K */
    BOIL_UNIT_DIFFERENCE,  /* K */
    BOIL_UNIT_POWER,       /* W */
    BOIL_UNIT_DENSITY,     /* kg/m3: load per volume */
    BOIL_UNIT_RATIO,       /* 1 */
    BOIL_UNIT_SHARE,       /* 1, of a whole */
    BOIL_UNITS
} boil_unit_kind;

typedef struct {
    double heat_W;    /* smallest heat to the tank with which a run that ends quiet would end boiling */
    double liquid_kg; /* the first addition of liquid that stops the boil for longer than the limit: largest that would not */
} boil_remedies;

/* Possible: only some run of a set shows it so grave. Likely: the likely run does, also with the wide pool's drift. Certain:
   the mild runs, which are made where there is anything to be in doubt of, do as well: as far as the band of the set goes. */
typedef enum { BOIL_POSSIBLE, BOIL_LIKELY, BOIL_CERTAIN } boil_certainty;

typedef struct {
    boil_severity severity;
    double from_s; /* first so grave; NaN: never */
    double limit;  /* from which value on it is; NaN: there is no such grade, or its value alone does not make it */
} boil_finding_grade;

typedef struct {
    size_t kind;        /* its place in boil_finding_listed */
    const char *id;     /* stable, lower case with hyphens: "boil-lost-long" */
    const char *title;  /* a few words */
    const char *advice; /* one sentence: what to do */
    boil_severity severity;
    double measure;                             /* by which it is graded: model/case/grading.h */
    double rank;                                /* by which the list is sorted: model/case/grading.h (1) */
    double time_s;                              /* first so grave, if it is possible in any run; NaN: in the whole run */
    double value, limit;                        /* the worst of it; limit NaN: none */
    const char *value_words;                    /* what the value is, to be put before it; NULL: what the title says */
    double worst_s;                             /* when; NaN likewise */
    double outside_s;                           /* beyond the limit; NaN: not a matter of time */
    boil_finding_grade grades[BOIL_SEVERITIES]; /* one of each severity */
    size_t grades_count;                        /* all of them */
    const char *because;                        /* id of a finding that causes it; NULL: none is known */
    boil_unit_kind unit;
    double needed_W;          /* boil-never-returns, never-boils: smallest heat to the tank that would do; else NaN */
    double needed_kg;         /* liquid-stops-boil: largest addition that would not; salt-too-much: water to
                                restore; crystals: how much falls out; else NaN */
    const char *needed_words; /* what needed_kg is, to be put before it; NULL when there is none */
    size_t count;             /* spells, or times: the worst is shown */
    boil_certainty certainty;
    bool of_mixing;   /* it depends on the laws in which the runs of a set differ: else its certainty says little */
    bool before_boil; /* a trigger run shows it as grave: it may come before the boil is back */
    bool more_than;   /* the value is one that no law holds for any more: it was that or more */
    bool own_cause;   /* its advice is for what made it so: no other finding did */
} boil_finding;

typedef struct {
    boil_finding *list; /* by rank, then by time */
    size_t count, capacity;
} boil_findings;

/* Of a run of this case with these options. Each is NaN where it is not wanting, or nothing tried would do. BOIL_BAD_INPUT where the
   case makes no sense; BOIL_NO_MEMORY. */
BOIL_PUBLIC boil_outcome boil_remedies_of(const boil_plant *p, const boil_schedule *s, const boil_run_options *o,
                                          const boil_history *h, boil_remedies *out);

/* One case carried out as often as it takes to judge it: model/findings/run_set.h. */
#define BOIL_RUN_SET_MORE_S 3600.0

#define BOIL_TRIGGERS 4 /* runs in which what floats lets go of itself, at most */

typedef struct {
    boil_closures closures;
    bool continued;     /* beyond the schedule's end */
    double let_go_s;    /* of a trigger run: when; else NaN */
    bool refused;       /* it could not be carried out at all: its history is empty */
    bool usual_drift;   /* made with the usual drift in place of the scenario's own */
    bool held_back;     /* the loads that go in through water afloat held back: model/findings/held_back.h */
    bool own_elevation; /* with the plant's own boiling curve, because the graver one left what is known */
    boil_history history;
} boil_run_of_set;

typedef struct {
    boil_history likely;                                           /* as asked for, with its trace */
    boil_run_of_set other[BOIL_CLOSURES + 3 * BOIL_TRIGGERS + 12]; /* last what is made without foam, held back, and anew */
    size_t count;
} boil_run_set;

/* Outcomes as of boil_run; what the options say of closures is not heeded, and only the likely run has a trace. On BOIL_OK the
   set is to be freed by boil_run_set_free; on anything else it is empty. */
BOIL_PUBLIC boil_outcome boil_run_set_of(const boil_plant *p, const boil_schedule *s, const boil_run_options *o,
                                         boil_run_set *out);

/* Leaves it empty. NULL and an empty one are fine. */
BOIL_PUBLIC void boil_run_set_free(boil_run_set *set);

/* A value of the likely run, and the least and the most of all runs made: model/findings/bands.h. */
typedef struct {
    double likely, low, high;
} boil_band;

typedef struct {
    boil_band recovery_s; /* slowest of all loads; 0: never lost, or weakened only; infinity: one not back; NaN: no loads */
    boil_band steam_peak_kg_s, level_max_m;
    bool steam_more_than; /* the high end of steam, or all of it, reads as more than that: boil_summary */
} boil_bands;

/* BOIL_BAD_INPUT: a pointer is NULL that must not be. */
BOIL_PUBLIC boil_outcome boil_bands_of(const boil_history *likely, const boil_run_of_set *others, size_t count,
                                       boil_bands *out);

/* Findings of the likely run, certain or likely, in *found; in *possible those that only others of the set show, or show graver.
   Without others (count 0) `possible` may be NULL. What would have been enough is `needed`, of the likely run; NULL: unknown. On
   BOIL_OK both lists are to be freed by boil_findings_free; on anything else they are empty. */
BOIL_PUBLIC boil_outcome boil_findings_of(const boil_plant *p, const boil_schedule *s, const boil_remedies *needed,
                                          const boil_history *likely, const boil_run_of_set *others, size_t count,
                                          boil_findings *found, boil_findings *possible);

/* Leaves it empty. NULL and an empty one are fine. */
BOIL_PUBLIC void boil_findings_free(boil_findings *f);

/* BOIL_SEVERITY_NOTICE when empty. */
BOIL_PUBLIC boil_severity boil_findings_gravest(const boil_findings *f);

/* Everything that can be found, one by one from 0: its id, and a few words in *title, which may be NULL; NULL beyond the last. Static
   text. */
BOIL_PUBLIC const char *boil_finding_listed(size_t index, const char **title);

/* "NOTICE", "CAUTION", "WARNING" or "DANGER". */
BOIL_PUBLIC const char *boil_severity_word(boil_severity s);

/* Answers ----------------------------------------------------------------------------------------------------------------- */

/* Found by running the case itself, many times: they take from a tenth of a second to minutes. What they write is plain data with
   nothing to free, but for schedules. On anything but BOIL_OK what was to be written is left or cleared, and means nothing. */

typedef struct {
    double
        losses_W; /* least heat to the tank with which the bath boils at all, nothing going in; to hold it: boil_steady_state_hold */
    double volume_m3; /* of still bath */
    double boiling_point_K;
    double steam_kg_s; /* formed in the pool; 0 when the heat does not carry the boil */
    double evaporated_kg_s;
    double
        makeup_kg_s; /* water as warm as the room, at least 0 degC, that holds strength and level: model/analysis/steady_state.h */
    double steam_m3_s; /* both, as steam at the boiling point and the room's pressure */
    double swell_m;    /* upper estimate of the level over the still one */
    double freeboard_m;
} boil_steady_state;

typedef struct {
    double rate_kg_s;
    const char *limited_by; /* title of the finding that a faster pour raises; NULL: nobody pours faster */
    const char *limited_id; /* the id of that finding, or NULL */
} boil_pour_rate;

typedef struct {
    double liquid_fraction;       /* fill with ready-mixed liquid of so many salts by mass; 0: with dry salts */
    double from_level_m;          /* still level of a bath of the same blend that is in the tank; 0: it is empty */
    double from_fraction, from_K; /* of that bath */
    double added_K;               /* temperature of water and salts */
    double liquid_K;              /* of the liquid */
    double weighed_kg;            /* batches of salts are whole numbers of it, but for the last; 0: any mass */
} boil_charge_case;

typedef enum {
    BOIL_CHARGE_DONE,
    BOIL_CHARGE_NO_BATH,       /* no such bath is known */
    BOIL_CHARGE_CRYSTALS,      /* the bath in the tank has crystallised: see from_crystals_K */
    BOIL_CHARGE_TOO_MUCH,      /* it holds more salts than are wanted: see bail_m3 */
    BOIL_CHARGE_TOO_HOT,       /* it boils, or is too hot for what is to go in: see too_hot_above_K */
    BOIL_CHARGE_NO_FREEBOARD,  /* the charge would leave less than the freeboard, still, before it has boiled down */
    BOIL_CHARGE_NO_COOLING,    /* a batch would not be below its boil again within a day */
    BOIL_CHARGE_NO_DISSOLVING, /* nor dissolve: the bath is too cold to take it */
    BOIL_CHARGE_HOT_LIQUID     /* the liquid is liquid only so hot that the water it meets would boil: see asked.liquid_K */
} boil_charge_end;

#define BOIL_CHARGE_STEPS 96

typedef struct {
    boil_action_kind kind; /* water, salts or liquid */
    double mass_kg, over_s;
    double start_s, wait_s; /* on a whole minute, which wait_s fills, so that a printed clock is no earlier */
    double heat_J;          /* released at 25 degC; negative: taken up */
    double temperature_K;   /* after the wait */
    double hottest_K;       /* on the way */
    double adiabatic_K;
    double boils_K;      /* the boiling point then */
    double next_below_K; /* nothing more goes in above that; NaN: the first thing into an empty tank */
    double level_m;
} boil_charge_step;

typedef struct {
    boil_charge_end end;
    boil_charge_case asked;
    /* What is to go in. */
    double water_kg, salts_kg, liquid_kg;
    double water_level_m;                      /* of the water alone, in an empty tank */
    double from_crystals_K, liquid_crystals_K; /* of bath in the tank and liquid; NaN: none above 0 degC */
    double too_hot_above_K, bail_m3;           /* of the bath in the tank, where that is why not */
    boil_charge_step steps[BOIL_CHARGE_STEPS];
    size_t steps_count;
    bool mixer_stated;             /* the scenario has a mixer's power; else a gentle one's is taken */
    double mixer_W, mixing_time_s; /* that the steps were found with; time constant at the end of them */
    double heat_J, filled_s;       /* all the steps */
    double filled_K, adiabatic_K, filled_level_m;
    double heat_J_kg; /* released at 25 degC, per kg of salts; NaN with liquid, or onto a bath */
    /* Heating up, with the heater on full. */
    double heat_up_s;          /* NaN: it does not boil within two weeks */
    double evaporated_kg;      /* while filling and heating up */
    double water_to_add_kg;    /* once it boils; negative: to be boiled down */
    boil_pour_rate water_pace; /* of that; rate NaN: none to add, or at no pace (limited_by says why) */
    double boil_down_s;        /* with that heat; NaN: it never is */
    /* The bath that it comes to. */
    double salt_fraction, boiling_point_K, mass_kg, bath_water_kg, bath_salts_kg;
    double strength_kg_m3;                             /* salts per volume of bath, at its boil */
    bool all_put_in;                                   /* all the water in it is put in as such: an empty tank, and dry salts */
    double per_water_kg_m3;                            /* salts per volume of the water in it, measured at 20 degC */
    double cold_level_m, hot_level_m, swelled_level_m; /* at the room's temperature, still at the boil, boiling */
    double freeboard_m;     /* least, boiling with the heat on full: as it begins to boil, or at the end */
    double crystals_from_K; /* the cold bath crystallises below that; NaN: not above 0 degC */
} boil_charge_plan;

/* Why not salts first: water onto them makes, at once and on the spot, a solution of every strength up to the
   strongest; the hottest of these without losses, and how strong it is. Water boils on what is hotter than its own
   boiling point. */
typedef struct {
    double hottest_K, fraction, water_boils_K;
} boil_charge_paste;

typedef struct {
    double reads_K;           /* temperature at which it boils, as read */
    double uncertain_K;       /* of that reading, either way; 0 or more */
    double level_m;           /* surface above the floor, as measured */
    bool level_boiling;       /* measured while it boiled: the swell is taken out */
    double liquid_fraction;   /* make up with ready-mixed liquid of so many salts by mass; 0: with dry salts */
    double added_K, liquid_K; /* temperature of the water and salts, and of the liquid, that are added */
    boil_load next_load;
} boil_correct_case;

typedef enum {
    BOIL_CORRECT_DONE,         /* there is a plan */
    BOIL_CORRECT_NO_BATH,      /* no bath of these salts boils at the reading, or at the set point */
    BOIL_CORRECT_NO_SALTS,     /* the scenario's bath is plain water: it has no set point to come back to */
    BOIL_CORRECT_NO_FULL_BOIL, /* reads so far below band and set point that it was surely not at a full boil */
    BOIL_CORRECT_NEARLY_DRY, /* nearly dry, by the reading or the high end of its uncertainty: nothing goes in while it is hot */
    BOIL_CORRECT_NO_BAILING,   /* something has to be bailed out, and it never cools for that or never boils again */
    BOIL_CORRECT_NO_BOIL,      /* the heat does not keep it boiling: the reading is none of a boiling point */
    BOIL_CORRECT_NO_FREEBOARD, /* no bath at the set point, however low, keeps the freeboard with the next load in */
    BOIL_CORRECT_NO_POUR_RATE, /* an addition does harm at any pace: see `pace` of that step; or the whole: see `harm` */
    BOIL_CORRECT_TOO_WEAK,     /* to make place for so weak a liquid the bath would first boil down too far: see makeup_K */
    BOIL_CORRECT_HOT_LIQUID    /* the liquid is hotter than the bath boils, and makes steam of it: see asked.liquid_K */
} boil_correct_end;

/* Why something has to be bailed out first. */
typedef enum {
    BOIL_BAIL_NOTHING,
    BOIL_BAIL_FOR_LOAD, /* the next load would not leave the freeboard */
    BOIL_BAIL_FOR_POUR  /* at no pace does the addition leave it, however low a level is aimed at */
} boil_bail;

/* By balance alone, without what boils off. Negative water: to be boiled off. */
typedef struct {
    double salts_kg, liquid_kg, water_kg;
    double level_m; /* still, at the set point, afterwards */
} boil_correct_amounts;

typedef struct {
    double start_s, over_s, mass_kg; /* mass 0: there is no such step; after water, on a whole minute */
    boil_pour_rate pace;
} boil_correct_step;

typedef struct {
    boil_correct_end end;
    boil_correct_case asked;
    /* What there is. */
    double salt_fraction, strength_kg_m3, still_level_m, swell_m /* upper estimate, taken out */, mass_kg;
    double salt_fraction_low, salt_fraction_high; /* by the reading's uncertainty */
    double freeboard_now_m;                       /* as it boils */
    /* What is wanted. */
    double set_point_K;
    double wanted_level_m; /* both are those of the scenario's bath */
    double most_level_m;   /* highest still level at the set point that keeps the freeboard with the next load in */
    /* Before anything else. */
    boil_bail bail;
    double bail_kg, bail_m3;  /* of the bath when it has cooled for that */
    double unbailed_level_m;  /* still level that it would come to without */
    double cool_s, cold_K;    /* heat off from 0 until then: as warm as this */
    double relight_s, back_s; /* bailed out, heat on again; and boiling again: the plan's clock starts then */
    double crystals_from_K;   /* of the cooled bath: salts fall out below; NaN: not above 0 degC */
    double lowered_from_m;    /* level that was given up so that nothing has to be bailed out; 0: none was */
    double bail_to_wanted_m3; /* what to bail out in all so that it ends at the level wanted; 0: it does */
    /* The plan, from the bath that is left. */
    boil_plant start;
    boil_correct_amounts amounts, amounts_low, amounts_high; /* for the reading, and for both ends of its uncertainty */
    boil_correct_step water, salts, liquid;                  /* the water with what boils off meanwhile */
    double boil_down_s;                                      /* before the salts, or alone */
    double makeup_K;                                         /* where it boils as salts or liquid begin */
    const char *harm_id, *harm; /* finding that the whole raises however slowly, and its title; NULL: none */
    double done_s;              /* whole minutes */
    double boiled_off_kg;       /* boiled and evaporated until then */
    /* How it ends, by its run: central, and the least freeboard mixing fast. */
    double end_K, end_fraction, end_strength_kg_m3;
    double end_still_m, end_boiling_m, end_loaded_m /* highest as the next load goes in, mixing fast */;
    double freeboard_min_m, freeboard_loaded_m;
} boil_correction;

/* At the starting charge at its boil, with this heat to the tank. BOIL_OK or why there is no such bath; BOIL_NO_ROOT
   when nothing makes it boil. */
BOIL_PUBLIC boil_outcome boil_steady_state_at(const boil_plant *p, double heat_W, boil_steady_state *out);

/* Smallest heat to the tank, W, with which it boils on, fed at its makeup, or under its lid unfed for a night of 14 h, by the likely
   laws and by the grave ones: to a per cent, from the upper side. `o`: tolerance only. BOIL_NO_ROOT when not even four times
   the losses do. */
BOIL_PUBLIC boil_outcome boil_steady_state_hold(const boil_plant *p, const boil_run_options *o, double *heat_W);

/* Time, s, from the room's temperature (at least 0 degC) to the boil with this heat; NaN when it does not boil within
   two weeks. BOIL_OK, or a failure of the run. */
BOIL_PUBLIC boil_outcome boil_steady_state_heat_up(const boil_plant *p, const boil_run_options *o, double heat_W,
                                                   double *time_s);

/* The fastest pace, to 3 % from the lower side, of an action that adds water, salts or liquid; its time, and over how
   long, do not matter. boils_off_kg_s: what the bath gives off and the action makes up for besides, as long as it pours;
   0: nothing. BOIL_NO_ROOT when not even a hundredth of the hand's pace will do, or what just gains on the boil-off, or what
   is in within a shift: limited_by says why. */
BOIL_PUBLIC boil_outcome boil_pour_rate_fastest(const boil_plant *p, const boil_action *action, double boils_off_kg_s,
                                                const boil_run_options *o, boil_pour_rate *out);

/* At which ready-mixed liquid is poured, K: the room's, or 5 K above where it crystallises, since it comes as a
   liquid. */
BOIL_PUBLIC double boil_pour_rate_liquid_temperature(const double blend[BOIL_SALTS], double salt_fraction, double room_K);

/* BOIL_OK whatever the end, or a failure. `o`: tolerance only. */
BOIL_PUBLIC boil_outcome boil_charge_plan_of(const boil_plant *p, const boil_charge_case *c, const boil_run_options *o,
                                             boil_charge_plan *out);

BOIL_PUBLIC boil_charge_paste boil_charge_salts_first(const boil_plant *p, double temperature_K);

/* `o`: tolerance only. BOIL_OK whatever the end, or a failure. */
BOIL_PUBLIC boil_outcome boil_correct(const boil_plant *p, const boil_correct_case *c, const boil_run_options *o,
                                      boil_correction *out);

/* The heaviest load of the schedule; without any, quarter-inch plate as heavy as the limit for the bath allows. */
BOIL_PUBLIC boil_load boil_correct_next_load(const boil_plant *p, const boil_schedule *s);

/* The plan as actions on `start`, to the minute it is done; to be freed by boil_schedule_free, also after a failure. */
BOIL_PUBLIC boil_outcome boil_correct_schedule(const boil_correction *a, boil_schedule *out);

/* The plant with a heater that gives so much heat, W, to the tank at full dial. BOIL_OK, or there is no such bath. */
BOIL_PUBLIC boil_outcome boil_heater_size_plant(const boil_plant *p, double heat_W, boil_plant *out);

/* Sizes are judged as model/sizing/holding.h says: the bath held at its strength by a valve, by the grave laws as by the likely
   ones, recovery, freeboard and band of each.

   Smallest heat to the tank at full dial, W, with which every load has the boil back within limit_s and none weakens the bath
   below its band: scanned up from what the calm bath loses, then bracketed to `precision` (0.002; 1e-6 to 0.5) and given from the
   upper side. BOIL_NO_ROOT when not even a hundred times the losses would, BOIL_OUT_OF_RANGE when a run leaves the properties'
   range first. */
BOIL_PUBLIC boil_outcome boil_heater_size_for_recovery(const boil_plant *p, const boil_schedule *s, const boil_run_options *o,
                                                       double limit_s, double precision, double *heat_W);

/* Largest number of times as heavy as planned all loads may be (and their baskets, where they get heavier) so that it holds; to
   0.2 %, from the lower side.
   BOIL_NO_ROOT when not even a thousandth does; BOIL_OUT_OF_RANGE when a run leaves the properties' range first. */
BOIL_PUBLIC boil_outcome boil_load_size_heaviest(const boil_plant *p, const boil_schedule *s, const boil_run_options *o,
                                                 double limit_s, double *times);

/* Shortest interval, s, between loads like this, on the watered plant, so that it holds, no load meets a quiet bath and none lacks a
   place ([tank] positions); to 1 %, from the upper side. BOIL_NO_ROOT when four hours are too short. */
BOIL_PUBLIC boil_outcome boil_load_size_interval(const boil_plant *watered, const boil_load *l, const boil_run_options *o,
                                                 double limit_s, double *interval_s);

/* The plant at its boil, nothing afloat and no crust, its water made up automatically: by its own control if it has one, else by
   an on/off valve of three times what its full heat would boil off, as warm as the room, at the starting boiling point, shut while
   the bath does not boil. */
BOIL_PUBLIC boil_outcome boil_load_size_watered(const boil_plant *p, boil_plant *out);

/* One load like this every interval_s, eight more than are in the bath at once, ten thousand at most; one without a time of its own
   stays in until the next. To be freed by boil_schedule_free, also after a failure. */
BOIL_PUBLIC boil_outcome boil_load_size_repeated(const boil_load *l, double interval_s, double limit_s, boil_schedule *out);

/* Where no heat brings the boil back in time and leaves the freeboard, the change that makes one do both, to 2 %: the largest
   share of the loads' mass, or the smallest number of times the tank's area. BOIL_NO_ROOT: not even a hundredth, or
   sixteen times. */
BOIL_PUBLIC boil_outcome boil_load_size_opening_load(const boil_plant *p, const boil_schedule *s, const boil_run_options *o,
                                                     double limit_s, double *share);

BOIL_PUBLIC boil_outcome boil_load_size_opening_area(const boil_plant *p, const boil_schedule *s, const boil_run_options *o,
                                                     double limit_s, double *times);

/* Statistics -------------------------------------------------------------------------------------------------------------- */

/* Pure numbers, in whatever unit an input has. A design lists rows; a row is one run with one value for each uncertain input, and any
   can be had at any time, in any order, on any thread. Points come from a Sobol' sequence in twice as many dimensions as there are
   inputs, repeated in replicates with random shifts. The first half of a point's coordinates is the draw A, the second the draw B, and
   AB_i is A with input i taken from B:

       row = (point * replicates + replicate) * (inputs + 2) + kind,   kind: 0 A, 1 B, 2 + i AB_i */

enum {
    BOIL_SAMPLING_INPUTS = 20,     /* most uncertain inputs: GSL's sequence has 40 dimensions */
    BOIL_SAMPLING_BITS = 20,       /* most points of a replicate: 2^20 */
    BOIL_SAMPLING_REPLICATES = 32, /* most replicates */
    BOIL_SPREAD_VALUES = 16        /* most values of a list */
};

typedef enum {
    BOIL_SPREAD_UNIFORM,    /* low to high */
    BOIL_SPREAD_TRIANGULAR, /* low to high, density highest at likely */
    BOIL_SPREAD_NORMAL,     /* likely +- one standard deviation, cut off at three: 0.27 % lie beyond, and a mass or an
                               efficiency must not turn negative for the sake of a tail nobody has seen */
    BOIL_SPREAD_LISTED      /* each of value[0 .. count - 1] equally likely */
} boil_spread_kind;

/* What is known of one input. Fields a kind does not name are ignored. */
typedef struct {
    boil_spread_kind kind;
    double low, high, likely;
    double deviation; /* > 0 */
    double value[BOIL_SPREAD_VALUES];
    size_t count;
} boil_spread;

typedef struct {
    size_t inputs;     /* 1 to 20 */
    size_t points;     /* of each replicate, 1 to 2^20; rounded up to a power of two, where the sequence is even */
    size_t replicates; /* 2 to 32 */
    uint32_t seed;     /* 1 to 4294967295 */
} boil_sampling_plan;

/* A design: constant once made, so threads may share it. Nothing to free. */
typedef struct {
    size_t inputs, points, replicates;
    uint32_t direction[BOIL_SAMPLING_BITS][2 * BOIL_SAMPLING_INPUTS]; /* the sequence's direction numbers, in 2^-30 */
    double shift[BOIL_SAMPLING_REPLICATES][2 * BOIL_SAMPLING_INPUTS];
} boil_sampling;

/* What came out: value[row * outputs + output]. NaN where a run failed, was not made, or the thing did not happen. */
typedef struct {
    const boil_sampling *design;
    const double *value;
    size_t outputs;
} boil_sampling_results;

/* A chance with its 95 % interval by Clopper and Pearson (1934). Of the usual intervals it is the one that never
   covers less than it says [Brown, Cai & DasGupta 2001], and it stays sensible at 0 of n: danger is not to be
   understated. It takes draws as independent; shifted points are as a rule spread more evenly than that, so it errs
   on the wide side. */
typedef struct {
    size_t yes, count;
    double chance, low, high; /* NaN when count is 0 */
} boil_odds;

typedef struct {
    double value, half_width; /* of the 95 % interval; NaN when fewer than two replicates have points */
} boil_estimate;

/* How much of an output's variance comes from each input: alone (first), and with all that it does together with
   others (total). Estimates: by chance slightly negative where the index is 0. NaN when the output never varies. The
   bars of a yes-or-no output need happenings: measured on u1 u2 > c, they hold the total index as often as they should
   from about ten on, the first index only from about 150. */
typedef struct {
    size_t points; /* complete ones used, of points * replicates: all their inputs + 2 rows gave a number. If rows lack
                      one because something did not happen, the indices are those of the cases where it did */
    boil_estimate mean, variance;
    boil_estimate first[BOIL_SAMPLING_INPUTS], total[BOIL_SAMPLING_INPUTS];
} boil_sensitivity;

#define BOIL_LEAST_SQUARES_PARAMETERS ((size_t)8) /* most of them */

/* Writes `count` residuals. BOIL_OK, or a failure where there is no such case: that trial is given up. BOIL_NO_MEMORY ends the
   search. */
typedef boil_outcome boil_least_squares_residuals(void *context, const double value[], double residual[]);

typedef struct {
    boil_least_squares_residuals *residuals;
    void *context;
    size_t parameters; /* 1 to BOIL_LEAST_SQUARES_PARAMETERS */
    size_t count;      /* more than parameters */
    double start[BOIL_LEAST_SQUARES_PARAMETERS];
    double low[BOIL_LEAST_SQUARES_PARAMETERS],
        high[BOIL_LEAST_SQUARES_PARAMETERS]; /* both finite, or both infinite; start between them */
    bool known;                              /* whether anything was known before, as below; deviations above 0 */
    double mean[BOIL_LEAST_SQUARES_PARAMETERS], deviation[BOIL_LEAST_SQUARES_PARAMETERS];
    double difference; /* of u, for derivatives: 1e-2 for runs, 1e-5 for formulas; 1e-8 to 0.1 */
} boil_least_squares_problem;

/* One parameter. */
typedef struct {
    double value;
    double error;     /* standard error as if readings were independent; NaN when nothing tells it */
    double low, high; /* 95 % interval as above, within the bounds; NaN likewise */
    bool at_bound;    /* the best value lies at a bound, or beyond it; then there is no error and no interval */
} boil_least_squares_estimate;

typedef struct {
    boil_least_squares_estimate of[BOIL_LEAST_SQUARES_PARAMETERS];
    double correlation[BOIL_LEAST_SQUARES_PARAMETERS][BOIL_LEAST_SQUARES_PARAMETERS]; /* NaN where one of both is not told */
    double chi2;                                                                      /* of the readings */
    double serial;    /* correlation from one reading to the next; at most 0.98 */
    double effective; /* independent readings that the residuals are worth */
    size_t trials;    /* times the model was asked */
    bool converged;
} boil_least_squares;

/* NULL, or what is wrong with it: static text. */
BOIL_PUBLIC const char *boil_spread_problem(const boil_spread *s);

/* The value below which the share u of all draws lies; u = 0 and u = 1 give the ends. */
BOIL_PUBLIC double boil_spread_at(const boil_spread *s, double u);

/* 64 points, 16 replicates, seed 1. */
BOIL_PUBLIC boil_sampling_plan boil_sampling_plan_default(size_t inputs);

/* NULL, or what is wrong with it: static text. */
BOIL_PUBLIC const char *boil_sampling_plan_problem(const boil_sampling_plan *p);

/* BOIL_OK, BOIL_BAD_INPUT when the plan has a problem, BOIL_NO_MEMORY. */
BOIL_PUBLIC boil_outcome boil_sampling_init(boil_sampling *s, const boil_sampling_plan *p);

/* Runs to make. */
BOIL_PUBLIC size_t boil_sampling_rows(const boil_sampling *s);

/* Of these, rows of kind A or B. */
BOIL_PUBLIC size_t boil_sampling_draws(const boil_sampling *s);

/* Each input's share u, in (0, 1) and never its ends, for boil_spread_at; u has place for all inputs. NaN from the last row on. */
BOIL_PUBLIC void boil_sampling_row(const boil_sampling *s, size_t row, double u[]);

/* The value below which the given share of sorted draws lies, 0 to 1, interpolated between neighbours; NaN when
   empty. */
BOIL_PUBLIC double boil_sampling_quantile(const double sorted[], size_t count, double share);

BOIL_PUBLIC void boil_sampling_sensitivity(const boil_sampling_results *r, size_t output, boil_sensitivity *out);

/* Of `count` draws `yes` did; yes at most count. */
BOIL_PUBLIC boil_odds boil_odds_of(size_t yes, size_t count);

/* BOIL_OK; BOIL_BAD_INPUT: counts or bounds make no sense; BOIL_NO_MEMORY, also of the model; BOIL_NO_ROOT: the model has no
   derivative where the search went; or the failure of the model at the start. */
BOIL_PUBLIC boil_outcome boil_least_squares_run(const boil_least_squares_problem *p, boil_least_squares *out);

#ifdef __cplusplus
}
#endif

#endif
