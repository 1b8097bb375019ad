/* bath.h -- the state of the tank and how fast it changes. One well-mixed bath in one of two modes, the water that floats
   on it, the steam it holds, the heater, and the steel in it.

   QUIET: temperature free, from the enthalpy H = m h(T, m) + E_steel(T).
   BOILING: T = Tb(m), the boiling point of what the bath contains. With H_i the partial enthalpies, C the heat capacity
   of solution and tank steel together,
       K_i = H_i + C dTb/dm_i
       steam = [Q + w (h_w - K_water) - e (hv(Ts) - K_water)] / [hv(Tb) - K_water]                                    (1)
   Q: heater less walls, radiation and convection, loads and the layer; w: water mixing in, at enthalpy h_w; e: evaporation.
   (1) follows from d/dt [m h(T, m) + E_steel(T)] = Q + w h_w - e hv(Ts) - steam hv(Tb) with T = Tb(m). H is integrated in
   both modes, so that comparing it with the property functions audits (1). BOILING ends when (1) turns negative, QUIET when T
   reaches Tb. Steam leaves mass and energy when it forms; what is held in the pool only swells and stirs.

   The steam held follows  d held/dt = (steam - leaving)/loop.  loop = 1 but where water that the steam stirs in takes heat
   from the boil (a weak bath): there the loop steam -> stirring -> water -> steam would answer up to twenty-five times as
   fast as bubbles rise, which nothing stirred by rising bubbles can. With
       loop = 1 + s (K_water - h_w)/(hv - K_water) dw/d leaving,  s = steam/leaving within 0 to 1                       (2)
   (for s = 1, 1 - d steam/d leaving) it answers in the rise time; where it comes to rest, steam = leaving, does not change.
   s makes both modes agree where steam vanishes: were loop above 1 there, the bath would chatter between them. */
#ifndef BOIL_BATH_H
#define BOIL_BATH_H

#include <stdbool.h>
#include <stddef.h>

#include "plant.h"
#include "schedule.h"

/* The unknowns, in kg, J and W; then the bodies' temperatures in K, each body's in a row. */
enum {
    BATH_WATER, BATH_NAOH, BATH_NANO3, BATH_NANO2, /* dissolved in the bath */
    BATH_HEAT,                                     /* H: solution and wetted tank steel */
    LAYER_MASS, LAYER_HEAT,
    STEAM_HELD,
    HEATER_OUTPUT,
    /* What has crossed the boundary (bath, layer and tank steel inside; loads outside). */
    TOTAL_STEAM,          /* formed in the pool */
    TOTAL_EVAPORATED,     /* from bath and layer */
    TOTAL_LAYER_BOILED,
    TOTAL_WATER_IN,       /* additions and rinse water */
    HEAT_FROM_HEATER, HEAT_TO_WALLS, HEAT_TO_AIR /* radiation and convection */, HEAT_TO_LOADS,
    HEAT_WITH_VAPOUR, HEAT_WITH_WATER,
    BATH_FIXED
};

typedef enum { BOIL_LAYER_NONE, BOIL_LAYER_STILL, BOIL_LAYER_BOILS } boil_layer_state;

/* A body in the bath: parts of a load, or its basket. */
typedef struct {
    boil_body body;
    double coefficient_W_m2K;   /* 0: from the bath's stirring */
    double displaced_m3;        /* fully immersed */
    double entry_K;             /* its temperature on entry */
    double in_start_s, in_end_s;   /* lowering; share immersed rises linearly */
    double out_start_s, out_end_s; /* lifting; infinity until known */
    size_t at;                  /* its unknowns begin at y[BATH_FIXED + at] */
    size_t load;                /* number of the load it belongs to */
} boil_bath_body;

/* A stream of water onto the surface, at a constant rate from start to end. */
typedef struct {
    double start_s, end_s;
    double rate_kg_s, enthalpy_J_kg;
} boil_bath_feed;

typedef struct {
    const boil_plant *plant;
    boil_conditions air;
    double area_m2, steel_kg;
    boil_metal steel;
    double steam_enthalpy[3]; /* hv(T) at the room's pressure: quadratic through IF97 at three temperatures */
    double steam_density[3];  /* 1/rho_v likewise */

    bool boiling;
    boil_layer_state layer;
    double layer_since_s;     /* when the present layer began */
    double layer_fresh_J_kg;  /* enthalpy of the water that began it: the temperature of a layer of no mass */
    double heater_set_W;      /* where the output is heading */
    double lowering_m_s;      /* speed of a load going in or out: stirs the interface */
    boil_bath_body *bodies;   size_t bodies_count, bodies_room;
    boil_bath_feed *feeds;    size_t feeds_count, feeds_room;

    /* Where the last searches ended: only ever starting points. */
    boil_solution_guess boil_guess, skin_guess;
    double temperature_guess_K, skin_guess_K, layer_skin_guess_K;
} boil_bath;

/* Everything that follows from a state. */
typedef struct {
    boil_mixture mixture;
    double mass_kg, temperature_K, boiling_point_K, equivalent_molality;
    double density_kg_m3, heat_capacity_J_K /* solution and steel */;
    boil_range range;
    double steam_kg_s;           /* (1); in QUIET zero */
    double steam_if_boiling_kg_s; /* (1) whatever the mode, at T: its sign decides */
    double calm_steam_kg_s;      /* what heater and losses alone would boil off, without loads, water or evaporation */
    double leaving_kg_s, steam_velocity_m_s, drift_velocity_m_s, vapour_kg_m3;
    double void_upper, void_lower;
    boil_surface_flow surface, layer_surface;
    double heater_W, wall_W, air_W, loads_W, layer_W;
    double water_cooling_W;      /* what mixing water in takes from the boil; negative: it feeds the boil */
    double loop;                 /* (2), 1 or more */
    double layer_kg, layer_m, layer_K, layer_mixing_kg_s, layer_mixing_slope_kg_s /* by ln of stirring */,
        layer_boiled_kg_s, layer_boil_margin_W;
    double feed_kg_s, feed_W;
    double solution_m3, displaced_m3, still_level_m, level_m, level_lower_m, surge_m;
    double stirring_W_kg, mixing_time_s;
} boil_bath_view;

/* Set the bath up for a plant (kept by reference) and fill y[0..BATH_FIXED): charged, nothing in it, in its mode: BOILING
   with steady steam and heater when it starts at its boiling point and the heat carries it, else QUIET; a bath that starts
   cold starts with a cold heater. BOIL_RANGE: no such bath. */
int boil_bath_init(boil_bath *b, const boil_plant *p, double y[]);
void boil_bath_free(boil_bath *b);

size_t boil_bath_unknowns(const boil_bath *b);

/* What follows from (t, y); BOIL_OK or BOIL_NO_ROOT/BOIL_NOT_FINITE. dydt may be NULL. */
int boil_bath_look(boil_bath *b, double t, const double y[], boil_bath_view *v, double dydt[]);

/* Guards for the march: each rises through zero where something changes. */
enum { BATH_GUARD_MODE, BATH_GUARD_LAYER, BATH_GUARD_LAYER_GONE, BATH_GUARD_RANGE, BATH_GUARD_RIM, BATH_GUARDS };
void boil_bath_guards(const boil_bath *b, const boil_bath_view *v, double g[BATH_GUARDS]);

/* Change of mode at (t, y): H is taken anew from the property functions, so that no integration error is carried along (the
   balance compares inventory with what crossed, and does not see H). */
int boil_bath_change_mode(boil_bath *b, double t, double y[], bool boiling);

/* Mix what is left of the layer in at once, balances kept. */
int boil_bath_absorb_layer(boil_bath *b, double y[]);

/* Steam, kg, that forms when water_kg holding heat_J is mixed into the bath as it is, without heat from outside, and the bath
   comes to its boiling point by flashing. Negative: the bath would come to rest below its boil. NaN: no such bath. */
double boil_bath_flash(boil_bath *b, const double y[], double water_kg, double heat_J);

/* Heat in the tank, J: bath, steel and layer, from state and property functions alone. */
double boil_bath_inventory(boil_bath *b, double t, const double y[]);

/* Steam enthalpy and density at the room's pressure, J/kg and kg/m3. */
double boil_bath_steam_enthalpy(const boil_bath *b, double temperature_K);
double boil_bath_steam_density(const boil_bath *b, double temperature_K);

/* Share of a body that is immersed at a time, 0 to 1. */
double boil_bath_body_immersed(const boil_bath_body *b, double t);

#endif
