/* bath/modes.h -- how a bath starts, and where and how it changes between quiet and boiling. */
#ifndef BOIL_BATH_MODES_H
#define BOIL_BATH_MODES_H

#include "boilback.h"
#include "bath/rates_view.h"

/* Set the bath up for a plant (kept by reference), fill y[0..BOIL_STATE_FIXED) and the first guess, of tables that are emptied:
   charged, nothing in it, in its mode: BOILING with steady steam and heater when it starts at its boiling point with nothing afloat
   and the heat carries it, else QUIET; a bath that starts cold starts with a cold heater. BOIL_OUT_OF_RANGE: no such bath. */
boil_outcome boil_modes_start(boil_bath *b, const boil_plant *p, double y[], boil_rates_tables *tables, boil_rates_guess *g);

/* Guards for the integrator: each rises through zero where something changes. */
enum {
    BOIL_GUARD_MODE,
    BOIL_GUARD_LAYER,
    BOIL_GUARD_LAYER_GONE,
    BOIL_GUARD_RANGE,
    BOIL_GUARD_RIM,
    BOIL_GUARD_VALVE,     /* the on/off control changes its mind */
    BOIL_GUARD_LOW_LEVEL, /* the cut-off trips or resets */
    BOIL_GUARD_FIRE,      /* the control of the heat changes its mind */
    BOIL_GUARD_HIGH_LIMIT,
    BOIL_GUARD_POCKET, /* water trapped in hollows comes to its boil */
    BOIL_GUARD_GOAL,   /* a gauge shows what a pour is to reach */
    BOIL_GUARD_FULL,   /* the still surface is at the rim */
    BOIL_GUARDS
};
/* K, where a quiet bath begins to boil: higher under a crust, by what lifts it. */
double boil_modes_boils_from(const boil_bath *b, const boil_rates_view *v);

/* kg/s that a boil forms, beyond what is made at once, and what it may condense of the steam it holds; below zero it is lost.
   It condenses as much as leaves it anyway, and no more than a few hundredths of a millimetre of the bath give in an hour. Of
   a boil that cold water all but quenches what forms is the small difference of large heats, and follows the steam held within
   hundredths of a second: ended where it first comes to nothing it would be lost and found a hundred times in its last
   seconds, at moments that the last digit decides. While it is in doubt, lacking less than ten times that, it is not lost
   either if it would form some with no bubbles to stir water and salt in, its parts taking the heat that they do: that goes
   to zero as steeply as the heat does, and no pour of a moment moves it. How much steam leaves has no say in the doubt: that
   falls as a boil fades, so that one which was lost would be in doubt again, and alive, some seconds later, and the length of
   a step would decide. `bubbleless` is such a state, NULL where there is no doubt. */
bool boil_modes_is_in_doubt(const boil_rates_view *v);
double boil_modes_boils_by(const boil_rates_view *v, const boil_rates_view *bubbleless);
void boil_modes_guards(const boil_bath *b, const boil_rates_view *v, double boils_by_kg_s, double g[BOIL_GUARDS]);

/* How far the level, m, has risen (of what is taken: fallen), or the boiling point, K, fallen beyond where a gauge shows a feed's goal, half a step before: below
   zero until then, and while there is nothing to read. What it still lacks to the goal itself, NaN for nothing. */
double boil_modes_goal_shows(const boil_bath *b, const boil_rates_view *v, const boil_bath_feed *f);
double boil_modes_goal_lacks(const boil_bath *b, const boil_rates_view *v, const boil_bath_feed *f);

/* Change of mode in the state that the view was made of, where T = Tb whichever way: H is taken anew from the property
   functions, so that no integration error is carried along (the balance compares inventory with what crossed, and does not see
   H). The boil breaks a crust. */
void boil_modes_change(boil_bath *b, double y[], const boil_rates_view *v, bool boiling);

/* A crust is broken, in the state that the view was made of: its pieces are salt in suspension, and what heat it held above Tb, if any,
   is set free from now on. */
void boil_modes_break_crust(const boil_bath *b, double y[], const boil_rates_view *v);

/* Heat in the tank, J: bath, salts, steel, layer and what a crust held, from the property functions at the view's temperature. */
double boil_modes_inventory(const boil_bath *b, const double y[], const boil_rates_view *v);

#endif
