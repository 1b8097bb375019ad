/* bath/rates_view.h -- all that follows from a state of the bath, part by part, in the order of cause; and where the searches
   for it ended. */
#ifndef BOIL_BATH_RATES_VIEW_H
#define BOIL_BATH_RATES_VIEW_H

#include "boilback.h"
#include "bath/bath.h"
#include "properties/boiling_curve.h"
#include "properties/viscosity.h"
#include "transfer/flash.h"
#include "transfer/surface.h"

/* Within which water soaks into dry salt, s: judgement, 1 to 10. */
#define BOIL_RATES_SOAKS_S 2.0

/* Unknowns from BOIL_STATE_BATH_WATER to BOIL_STATE_SOLID_NANO2. */
enum { BOIL_RATES_HELD = BOIL_STATE_SOLID_NANO2 + 1 };

/* What a run tells over and over, filled where it comes by, from nothing but what is told: no answer hangs on another. Zero: empty. */
typedef struct {
    boil_boiling_curve curve; /* of the run's air */
    boil_wall_table wall;     /* of the tank in its room */
    boil_flash_table flash;   /* of the bath whose layer lets go, told once */
    boil_viscosity_table viscosity;
} boil_rates_tables;

/* The bath's solution, at its mode's temperature. */
typedef struct {
    boil_mixture mixture;
    double mass_kg, volume_m3, density_kg_m3;
    double temperature_K, boiling_point_K;
    boil_slope slope; /* of the boiling point */
    double equivalent_molality;
    boil_bath_heat heat;               /* of the solution, undissolved salts and tank steel */
    boil_convection_liquid convection; /* the same liquid, to the laws of convection */
} boil_rates_solution;

typedef struct {
    double sensor_K; /* reading of its control's thermometer */
    double target_W; /* what dial, control and cut-offs ask for */
    double heat_W;   /* what it gives: the target, later by the heater's lag */
} boil_rates_heater;

/* The automatic water. */
typedef struct {
    double sensor_K;
    bool valve_open;
    double valve_kg_s;
} boil_rates_control;

/* Steam held in the pool, the swell and the stirring it makes. */
typedef struct {
    double vapour_kg_m3, drift_velocity_m_s, steam_velocity_m_s;
    double leaving_kg_s; /* steam that rises out of the pool */
    double void_upper, void_lower;
    double stirring_W_kg;
    double agitation_m_s; /* superficial velocity of the gas that would stir as steam and mixer do */
} boil_rates_pool;

/* Parts and baskets in the bath. */
typedef struct {
    double heat_W; /* that they take */
    double displaced_m3;
    double drag_kg_s;   /* bath liquid they carry out */
    double pocket_J_kg; /* that the warmest water trapped in them is beyond its boil, and lets go; -1e6: none */
} boil_rates_loads;

/* Salt not yet dissolved. */
typedef struct {
    double undissolved_kg, volume_m3;
    double dissolving_kg_s[BOIL_SALTS];
    double settling_kg_s; /* onto the bed, less what leaves it */
    double bed_m, bed_superheat_K;
    double crust_kg, crust_cover, crust_kg_s; /* not in undissolved_kg; share of the surface; growing */
    double crust_holds_Pa;                    /* how far over the room's its vapour must get to lift it */
    double dry;                               /* share of the surface that is salt above the liquid */
} boil_rates_salts;

/* Water afloat; without any its mass and flows are 0 and its temperature is the bath's. */
typedef struct {
    double mass_kg, thickness_m, temperature_K;
    double enthalpy_J_kg;                  /* of the water that mixes in; 0 without a layer */
    double cover;                          /* share of the surface */
    double mixing_kg_s, mixing_slope_kg_s; /* into the bath; by ln of stirring */
    double flashing_kg_s;                  /* of what mixes into a bath below its boil, steam that escapes */
    double heat_W;                         /* from the bath */
    double soaking_kg_s;                   /* of what mixes in, into dry salt */
    boil_flash_wetted wetted;              /* by a kilogram of that */
} boil_rates_layer;

/* What leaves through surface and walls, a lid heeded. */
typedef struct {
    boil_surface_flow bath, layer; /* each from its share of the surface; the layer as if it did not boil */
    double condensate_kg_s, condensate_J_kg;
    double air_W; /* radiation and convection of both */
    double wall_W;
} boil_rates_surface;

/* Where the last searches ended, from which the next ones start; what is asked again, bit for bit, is told again. Whoever evaluates
   owns one; a copy serves as well. */
typedef struct {
    boil_solution_guess boiling;        /* zero: a cold start */
    double held[BOIL_RATES_HELD];       /* the bath's water, salts, heat and undissolved salts, as unknowns, */
    bool boils;                         /* and its mode, */
    boil_rates_solution solution;       /* when this was found; no mass: none was, and of it the temperature is a guess */
    boil_surface_skin skin, layer_skin; /* of the bath, and of what floats */
    double skin_times, skin_stronger;   /* equivalent molality of the skin over that of the boil, and all molalities over the bath's */
    boil_rates_tables *tables;          /* kept by reference, of one thread */
} boil_rates_guess;

/* Streams from outside. */
typedef struct {
    double water_kg_s, water_W; /* onto the surface: poured, with parts, by the valve, from the lid */
    double liquid_kg_s, liquid_W;
    double released_kg_s, released_W;      /* out of hollows; it floats, or mixes at once, as component_kg_s counts it */
    double component_kg_s[1 + BOIL_SALTS]; /* of the liquid: water and each salt */
    double salts_kg_s, salts_W;
    double salt_kg_s[BOIL_SALTS]; /* each dry */
} boil_rates_inflow;

/* What leaves the layer as vapour: it evaporates, or boils. */
typedef struct {
    double evaporated_kg_s, boiled_kg_s;
    double heat_W;        /* with both */
    double boil_margin_W; /* heat over what evaporation would take; 0 where it does not boil */
} boil_rates_layer_vapour;

typedef struct {
    double still_m;          /* no steam in the pool */
    double upper_m, lower_m; /* swelled; the upper one with the surge */
    double surge_m;          /* of a load being lowered */
} boil_rates_levels;

/* Where the heat goes while the bath boils: the terms of (1). */
typedef struct {
    double held_W;                            /* that a broken crust had held back */
    double calm_W;                            /* heater less walls, radiation and convection */
    double water_cooling_W;                   /* what mixing water in takes from the boil; negative: it feeds the boil */
    double liquid_cooling_W, salts_cooling_W; /* likewise ready-mixed liquid, and dry salts */
    double spare_W;                           /* what all leave for steam */
    double mixing_J_kg;                       /* that a kilogram of water mixing in takes: K_water - h_w */
    double latent_J_kg;                       /* that a kilogram of steam takes: hv - K_water */
} boil_rates_heat;

typedef struct {
    double formed_kg_s;     /* (1); in QUIET what flashes from the layer */
    double if_boiling_kg_s; /* (1) whatever the mode, at T: its sign decides */
    double at_once_kg_s;    /* what water soaking into dry salt gives, whatever the mode: more than (1) ends the boil */
    double calm_kg_s;       /* what heater and losses alone would boil off, without loads, water or evaporation */
    double loop;            /* (2), 1 or more */
} boil_rates_steam;

/* What is bailed and drained. */
typedef struct {
    double liquid_kg_s;            /* at the bath's composition */
    double solid_kg_s[BOIL_SALTS]; /* undissolved, with it */
    double bed_kg_s;               /* of that, off the floor */
    double layer_kg_s;             /* off the water that floats */
} boil_rates_outflow;

/* In the order of cause: each part follows from the state and from parts above it. */
typedef struct {
    boil_rates_solution solution;
    boil_rates_heater heater;
    boil_rates_control control;
    boil_rates_pool pool;
    boil_rates_loads loads;
    boil_rates_salts salts;
    boil_rates_layer layer;
    boil_rates_surface surface;
    boil_rates_inflow inflow;
    boil_rates_outflow outflow;
    boil_rates_layer_vapour layer_vapour;
    boil_rates_levels levels;
    boil_rates_heat heat;
    boil_rates_steam steam;
} boil_rates_view;

#endif
