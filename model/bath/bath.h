/* bath/bath.h -- the state of the tank and how fast it changes. One well-mixed bath in one of two modes, the water that
   floats on it, the steam it holds, the heater, and the steel in it.

   QUIET: temperature free, from the enthalpy H = m h(T, m) + E_steel(T).
   BOILING: T = Tb(m), the boiling point of what the bath contains. With H_i the partial enthalpies, C the heat capacity
   of solution and tank steel together,
       K_i = H_i + C dTb/dm_i
       steam = [Q + w (h_w - K_water) - e (hv(Ts) - K_water)] / [hv(Tb) - K_water]                                    (1)
   Q: heater less walls, radiation and convection, loads and the layer; w: water mixing in, at enthalpy h_w; e: evaporation.
   (1) follows from d/dt [m h(T, m) + E_steel(T)] = Q + w h_w - e hv(Ts) - steam hv(Tb) with T = Tb(m). Ready-mixed liquid
   (flows f_i of each component, enthalpy h) adds  f h - sum f_i K_i  to its numerator; dry salt coming in at T_s adds
   s_i [h_s(T_s) - h_s(T)]; salt dissolving at rate d_i adds  d_i [h_s(T) - K_i]. Drag-out leaves at the bath's composition
   and enthalpy and drops out: Tb depends on proportions only. H is integrated in
   both modes, so that comparing it with the property functions audits (1). BOILING ends when (1) turns negative, or less than
   what flashes at once of water that soaks into dry salt (transfer/flash.h (4)), which comes whatever the mode; QUIET when T
   reaches Tb; under a crust that steam has to break, when T is above Tb by what that takes. The heat E above Tb is then set free
   into the boil within some two seconds (judgement, 1 to 5): Q has a term E/tau, and dE/dt = -E/tau. Steam
   leaves mass and energy when it forms; what is held in the pool only swells and stirs.

   The steam held follows  d held/dt = (steam - leaving)/loop.  loop = 1 but where water that the steam stirs in takes heat
   from the boil (a weak bath): there the loop steam -> stirring -> water -> steam would answer up to twenty-five times as
   fast as bubbles rise, which nothing stirred by rising bubbles can. With
       loop = 1 + s (K_water - h_w)/(hv - K_water) dw/d leaving,  s = steam/leaving within 0 to 1                       (2)
   (for s = 1, 1 - d steam/d leaving) it answers in the rise time; where it comes to rest, steam = leaving, does not change.
   s makes both modes agree where steam vanishes: were loop above 1 there, the bath would chatter between them. */
#ifndef BOIL_BATH_BATH_H
#define BOIL_BATH_BATH_H

#include <stdbool.h>
#include <stddef.h>

#include "boilback.h"
#include "case/plant.h"
#include "case/schedule.h"
#include "properties/dilution.h"
#include "transfer/surface.h"

/* Of the bath, kg/kg: water afloat that is no more counts as gone. */
#define BOIL_BATH_LAYER_GONE 1e-6

/* The unknowns, in kg, J, K and W; then the bodies' temperatures in K, each body's in a row. */
enum {
    BOIL_STATE_BATH_WATER,
    BOIL_STATE_BATH_NAOH,
    BOIL_STATE_BATH_NANO3,
    BOIL_STATE_BATH_NANO2, /* dissolved in the bath */
    BOIL_STATE_BATH_HEAT,  /* H: solution, undissolved salts and wetted tank steel */
    BOIL_STATE_SOLID_NAOH,
    BOIL_STATE_SOLID_NANO3,
    BOIL_STATE_SOLID_NANO2, /* undissolved, at the bath's temperature: in suspension and in the bed */
    BOIL_STATE_BED_MASS,    /* of these, what lies on the floor */
    BOIL_STATE_CRUST_MASS,  /* of these, what hangs over the bath as a crust */
    BOIL_STATE_HELD_HEAT,   /* that a crust had held over the boiling point when it broke: on its way into the boil, J */
    BOIL_STATE_LAYER_MASS,
    BOIL_STATE_LAYER_HEAT,
    BOIL_STATE_STEAM_HELD,
    BOIL_STATE_HEATER_OUTPUT,
    BOIL_STATE_SENSOR,      /* reading of the thermometer of the water control, K */
    BOIL_STATE_HEAT_SENSOR, /* likewise of the heat's control */
    /* What has crossed the boundary (bath, layer, salts and tank steel inside; loads outside). */
    BOIL_STATE_TOTAL_STEAM,      /* formed in the pool */
    BOIL_STATE_TOTAL_EVAPORATED, /* from bath and layer */
    BOIL_STATE_TOTAL_LAYER_BOILED,
    BOIL_STATE_TOTAL_WATER_IN,   /* onto the surface: by hand, with parts, by the valve, from the lid */
    BOIL_STATE_TOTAL_VALVE,      /* of that, by the automatic valve */
    BOIL_STATE_TOTAL_CONDENSATE, /* of that, dripped back from the lid */
    BOIL_STATE_TOTAL_RELEASED,   /* out of hollows of parts */
    BOIL_STATE_TOTAL_LIQUID_IN,
    BOIL_STATE_TOTAL_LIQUID_SALTS, /* ready-mixed liquid, and the salts in it */
    BOIL_STATE_TOTAL_SALTS_IN,     /* dry */
    BOIL_STATE_TOTAL_TAKEN_WATER,
    BOIL_STATE_TOTAL_TAKEN_NAOH,
    BOIL_STATE_TOTAL_TAKEN_NANO3,
    BOIL_STATE_TOTAL_TAKEN_NANO2, /* bailed and drained: of bath and layer, dissolved and not */
    BOIL_STATE_TOTAL_DRAG,
    BOIL_STATE_TOTAL_DRAG_SALTS, /* carried out with parts, and the salts in it */
    BOIL_STATE_HEAT_FROM_HEATER,
    BOIL_STATE_HEAT_TO_WALLS,
    BOIL_STATE_HEAT_TO_AIR /* radiation and convection */,
    BOIL_STATE_HEAT_TO_LOADS,
    BOIL_STATE_HEAT_WITH_VAPOUR,
    BOIL_STATE_HEAT_WITH_WATER,
    BOIL_STATE_HEAT_WITH_RELEASED,
    BOIL_STATE_HEAT_WITH_LIQUID,
    BOIL_STATE_HEAT_WITH_SALTS,
    BOIL_STATE_HEAT_WITH_TAKEN,
    BOIL_STATE_HEAT_WITH_DRAG,
    BOIL_STATE_FIXED
};

typedef enum { BOIL_WATER_LAYER_NONE, BOIL_WATER_LAYER_STILL, BOIL_WATER_LAYER_BOILS } boil_water_layer_state;

/* A body in the bath: parts of a load, or its basket. */
typedef struct {
    boil_conduction_body body;
    double coefficient_W_m2K;      /* 0: from the bath's stirring */
    double displaced_m3;           /* fully immersed */
    double drag_out_kg;            /* bath liquid it carries out while it is lifted */
    double takes_share_s;          /* of a layer of water, each second while it is lowered: fixed as its lowering begins */
    double entry_K;                /* its temperature on entry */
    double unheated;               /* what its mean lacked of the way from there to the bath, a step before: 1 on entry */
    double in_start_s, in_end_s;   /* lowering; share immersed rises linearly */
    double out_start_s, out_end_s; /* lifting; infinity until known */
    bool at_boil;                  /* how long it stays counts at the boil, and is not over */
    double boil_left_s, as_of_s;   /* of that, and when it was so */
    double latest_s;               /* it is lifted then all the same; infinity: no such moment */
    bool lowering, lifting;        /* in this stretch; set between steps, so that no step sees a rate jump */
    size_t at;                     /* its unknowns begin at y[BOIL_STATE_FIXED + at] */
    size_t load;                   /* number of the load it belongs to */
    int name;                      /* of that load, as in its action; 0: none */
    double pocket_kg;              /* water trapped in its hollows: then it is that, and its unknown is J/kg; 0: it is steel */
    double pocket_W_K;             /* heat to that from the bath, per difference */
    double release_s;              /* it takes to let go */
    double released_s;             /* when it began to; infinity: not yet */
} boil_bath_body;

/* A stream at a constant rate; it flows while it is in the bath's list. */
typedef enum {
    BOIL_FEED_WATER,  /* onto the surface: into the layer */
    BOIL_FEED_LIQUID, /* under the surface: into the bath */
    BOIL_FEED_SALTS,  /* undissolved, into the bath */
    BOIL_FEED_BAIL,   /* out of the layer and, as that is used up, out of the bath; m3/s */
    BOIL_FEED_DRAIN   /* out of the bath, undissolved salt with it; m3/s */
} boil_feed_kind;
typedef struct {
    boil_feed_kind kind;
    double start_s, end_s;
    double rate_kg_s, enthalpy_J_kg; /* of what is taken the rate is a volume */
    boil_mixture kilogram;           /* what a kilogram of it is; not of water */
    bool from_hollows;               /* water that floats while the bath is quiet, and mixes at once while it boils */
    size_t load;                     /* of that: whose hollows */
    size_t addition, tap; /* its result and its tap, each place plus one; 0: none. The result of a take is none of these */
    boil_goal goal;       /* of water that pours until a gauge shows it, and none once it does */
    double goal_value;
} boil_bath_feed;

typedef struct {
    const boil_plant *plant;
    boil_conditions air;
    boil_dilution dilution;
    double area_m2, steel_kg;
    boil_metal steel;
    double steam_enthalpy[3]; /* hv(T) at the room's pressure: quadratic through IF97 at three temperatures */
    double steam_density[3];  /* 1/rho_v likewise */

    bool boiling;
    boil_water_layer_state layer;
    double layer_since_s;       /* when the present layer began */
    double layer_fresh_J_kg;    /* enthalpy of the water that began it: the temperature of a layer of no mass */
    boil_ambient ambient;       /* with the draught of the moment */
    boil_surface_air over;      /* what follows from that for its surface */
    double dial;                /* of the heater, 0 to 1 */
    bool heat_cut;              /* by the low-level cut-off */
    bool heat_controlled;       /* the control sets the fire, not the dial */
    double heat_set_K;          /* its set point */
    bool fire_wanted, fire_lit; /* by the control; lit: after the call has been answered */
    bool high_limit_out;        /* the high limit has put the heat out */
    bool mixer_on, lid_on;
    double paddle_until_s;  /* it is stirred by hand until then */
    bool paddle_on;         /* in this stretch */
    bool valve_wanted;      /* what the water control has decided */
    bool valve_set;         /* what the valve was told, a dead time later; the interlock may still keep it shut */
    bool valve_free;        /* of the interlock: it has boiled for long enough */
    bool layer_held;        /* the layer turns over at its held factor: no boil has come back within the last minute */
    boil_bath_body *bodies; /* room for these two is the caller's */
    size_t bodies_count;
    boil_bath_feed *feeds;
    size_t feeds_count;
} boil_bath;

/* Set the bath up for a plant (kept by reference) and fill y[0..BOIL_STATE_FIXED): charged, nothing in it, QUIET, no steam held.
   *hot: it starts at its boiling point. BOIL_OUT_OF_RANGE: no such bath. See boil_modes_start of bath/modes.h. */
boil_outcome boil_bath_fill(boil_bath *b, const boil_plant *p, double y[], bool *hot);

void boil_bath_set_draught(boil_bath *b, double draught_m_s); /* of the air over it */
/* So near, K, a reading has reached the threshold of a control: a bath may begin right at one, and rounding must not decide there. */
#define BOIL_BATH_READING_K 1e-6

/* Share of full fire that dial, control and cut-offs ask for, the control's thermometer reading so much: 0 to 1. */
double boil_bath_fire(const boil_bath *b, double sensor_K);

bool boil_bath_is_stirred(const boil_bath *b); /* by mixer or paddle */

size_t boil_bath_unknowns(const boil_bath *b);

void boil_bath_add_feed(boil_bath *b, const boil_bath_feed *f); /* begins to flow; there is room for it */

bool boil_bath_takes(const boil_bath_feed *f); /* out of the tank: bailed or drained */

/* Mix what is left of the layer in at once, balances kept. */
boil_outcome boil_bath_absorb_layer(boil_bath *b, double y[]);

/* Steam, kg, that forms when water_kg holding heat_J is mixed into the bath as it is, without heat from outside, and the bath
   comes to its boiling point by flashing. Negative: the bath would come to rest below its boil. NaN: no such bath. */
double boil_bath_flash(const boil_bath *b, const double y[], double water_kg, double heat_J);

/* Enthalpy, J, that solution, undissolved salts and tank steel hold at a temperature, and what follows from it. */
typedef struct {
    boil_heat solution;
    double total_J, capacity_J_K;
} boil_bath_heat;
boil_bath_heat boil_bath_heat_at(const boil_bath *b, const double y[], double temperature_K);

boil_mixture boil_bath_mixture(const double y[]); /* what is dissolved; a salt below nothing, by rounding, is none */

/* A layer begins, of water of the given enthalpy. Nothing happens when there is one. */
void boil_bath_begin_layer(boil_bath *b, double t, double enthalpy_J_kg);

/* Steam enthalpy and density at the room's pressure, J/kg and kg/m3. */
double boil_bath_steam_enthalpy(const boil_bath *b, double temperature_K);
double boil_bath_steam_density(const boil_bath *b, double temperature_K);

/* Share of a body that is immersed at a time, 0 to 1. */
double boil_bath_body_immersed(const boil_bath_body *b, double t);

#endif
