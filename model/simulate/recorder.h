/* simulate/recorder.h -- writes down what happens in a run as it goes: loads, additions, quiet spells, extremes, rows. It
   watches and never interferes.

   Partial boil. Below its surface a boiling bath may be hotter than its boiling point (properties/hydrostatic.h): by nothing,
   as the run has it, up to dT_f/2 in the mean. What a load draws comes out of that store first, while the boil weakens, and what
   the heater gives goes back into it first. A run with the store full thus goes through the same heat, and is quiet only while
   this one is more than dT_f/2 below its boiling point: from `spent_s` to `refilled_s`, never where it does not get there. A range,
   and no sudden release: of that baths come back from loads every day. A stir may set a tenth of it free (judgement). */
#ifndef BOIL_SIMULATE_RECORDER_H
#define BOIL_SIMULATE_RECORDER_H

#include "boilback.h"
#include "bath/potential.h"
#include "bath/rates_view.h"
#include "integrate/hermite.h"

/* What takes no more of the freeboard than this, m, is no layer. */
#define BOIL_RECORDER_NOTHING_M 1e-3

/* The last three values of a quantity since the last restart: where steam turns between steps, a parabola gives the extreme; of level
   and temperature, by which a bath is judged, the cubic does (simulate/recorder_inside.c), and where the level is highest or most floats there is a
   moment. */
typedef struct {
    double time_s[3], value[3];
    int count;
} boil_recorder_turn;

/* The step last taken, to look into, and where the search for what is at its end ended. */
typedef struct {
    boil_hermite cubic;
    const boil_rates_guess *near;
} boil_recorder_step;

typedef struct {
    boil_history *history;
    const boil_plant *plant;
    double row_unit_s, next_row_s; /* rows stand at whole counts of the unit, 0 s: no trace */
    size_t row_count, row_units;   /* of the next one; from one to the next while nothing moves fast */
    double fast_until_s;           /* a second beyond the last step in which it did */
    size_t action;                 /* that is being carried out */
    size_t rows_capacity;
    bool valve_was_open;
    double valve_open_s;
    double last_below_K;                    /* the boiling point, as of the last moment */
    double boiling_s, boil_began_s, last_s; /* for the share of time, and the steady steam after a cold start */
    double layer_m;                         /* what floated, as of the last moment */
    double most_fire;                       /* asked of the fire so far, of all it can give */
    bool quiet_start;
    size_t first_load, first_addition; /* before these all is settled: a long schedule costs no more a step */
    boil_recorder_turn level, steam;
    double first[BOIL_WATCHES],
        margin[BOIL_WATCHES];                    /* of what is watched the lowest break point, and by how much it is passed, */
    double last[BOIL_WATCHES];                   /* and as of the last moment */
    double past_s[BOIL_WATCHES];                 /* when last past the lowest of them; NaN: never */
    double surface_boils_since_s, surface_shows; /* NaN: it does not; by how much it shows, above 0 it does */
    double afloat_left_m,
        afloat_before_m; /* of this moment and the one before, as left_m of a quiet spell; NaN: nothing floats */
    boil_potential_known yield;
    double surged_s;             /* when steam last was over twice the steady steam; -infinity: never */
    boil_recorder_step step;     /* zero: none since the last restart */
    double coolest_K, hottest_K; /* of the bath between the ends of that step; NaN: unknown */
    double *unknowns;            /* room for a state between two steps */
} boil_recorder;

/* Before the first step, of an empty history. Room for its lists, but for that of the rows, and for a state is the caller's. */
void boil_recorder_begin(boil_recorder *r, boil_history *history, const boil_plant *p, const boil_run_options *o,
                         const boil_bath *b, const double y[], const boil_rates_view *v);

/* An action begins. Gives the number of the load, its index in history->loads. */
size_t boil_recorder_load(boil_recorder *r, double t, const boil_load *load, const boil_bath *b, const boil_rates_view *v);
/* unheated: as of boil_recorder_unheated, then. */
void boil_recorder_lift(boil_recorder *r, double t, size_t number, double drag_out_kg, double unheated);
/* Water, liquid or salts. */
void boil_recorder_addition(boil_recorder *r, double t, boil_action_kind kind, double mass_kg, double over_s,
                            const boil_bath *b, const boil_rates_view *v);

/* What was kept begins to run back in: the last addition. */
void boil_recorder_run_back(boil_recorder *r, const boil_mixture *kept);

/* A load goes in or the heat is turned: it meets what is watched. */
void boil_recorder_meet(boil_recorder *r, double t);

/* Bail or drain. */
void boil_recorder_take(boil_recorder *r, double t, boil_action_kind kind, const boil_bath *b, const boil_rates_view *v);

/* The mode has just changed; bath and view are as after the change. */
void boil_recorder_mode(boil_recorder *r, double t, const boil_bath *b, const double y[], const boil_rates_view *v);

/* The state after a step, or after actions at the same time. */
void boil_recorder_moment(boil_recorder *r, double t, const boil_bath *b, const double y[], const boil_rates_view *v);

/* What the mean of a body lacks of the way from its entry to the bath, 1 to 0: of a moment it keeps that of the one before. */
double boil_recorder_unheated(const boil_bath_body *o, const double y[], const boil_rates_view *v);

/* The march begins anew: what comes next may have a kink, so nothing is fitted across it. */
void boil_recorder_restart(boil_recorder *r);

/* In how many parts the step that begins to be told, r->step, is worth telling, one for its end alone, from what is at its ends. */
int boil_recorder_parts(const boil_recorder *r, const boil_rates_view *a, const boil_rates_view *b);

/* The state at a moment of that step, into r->unknowns, by cubic Hermite interpolation, and all that follows from it. */
boil_outcome boil_recorder_inside(boil_recorder *r, const boil_bath *b, double t, boil_rates_guess *guess, boil_rates_view *v);

/* When the level is highest and when most floats in that step, s, in order, its ends included; what is at them is given. */
#define BOIL_RECORDER_TOPS 2
void boil_recorder_tops(boil_recorder *r, const boil_bath *b, const boil_rates_view *before, const boil_rates_view *after,
                        double time_s[BOIL_RECORDER_TOPS]);

/* Looks for temperatures between those at the ends of that step and beyond both: of the moment that is told next. */
void boil_recorder_look_inside(boil_recorder *r, const boil_bath *b, const boil_rates_view *before,
                               const boil_rates_view *after);

/* Rows due in (t0, t1] of that step; call before anything changes at t1. BOIL_NO_MEMORY, as below: no room for a row. */
boil_outcome boil_recorder_rows(boil_recorder *r, const boil_bath *b);

/* Of a close trace, a row as things are after a jump: beside that before it. */
boil_outcome boil_recorder_row_now(boil_recorder *r, double t, const boil_bath *b, const boil_rates_view *v, const double y[]);

/* After the last step: closes what is open and fills the summary's end, and a trace ends there, whatever its interval. */
boil_outcome boil_recorder_end(boil_recorder *r, double t, const boil_bath *b, const double y[], const boil_rates_view *v);

/* Between the recorder's files ------------------------------------------------------------------------------------- */

/* Extremes of a moment, those between its step's ends included. */
typedef struct {
    double coolest_K, hottest_K, steam_kg_s;
    bool steam_more_than; /* above twice the steam that lifts the bath to the rim: the pool is thrown out, and no law holds */
} boil_recorder_peak;

/* simulate/recorder_spells.c: loads, additions and quiet spells watched; passed over once all is settled; closed at the end. */
void boil_recorder_watch_spells(boil_recorder *r, double t, const boil_bath *b, const double y[], const boil_rates_view *v,
                                const boil_recorder_peak *peak);
void boil_recorder_settle_spells(boil_recorder *r, double t);
void boil_recorder_close_spells(boil_recorder *r);

/* simulate/recorder_watch.c: what is followed by its measure, from moment to moment. */
void boil_recorder_watch_begin(boil_recorder *r);
void boil_recorder_watch(boil_recorder *r, double t, const boil_bath *b, const boil_rates_view *v,
                         const boil_recorder_peak *peak);

double boil_recorder_fire(const boil_recorder *r, const boil_rates_view *v, double heat_W); /* so much, of the full heat */
bool boil_recorder_is_heated(const boil_recorder *r, const boil_rates_view *v); /* more than what is left of a fire gives */

/* kg of crystals in a bath, those of its crust among them; 0 for a hot one: above 140 degC they are looked for only under a crust. */
double boil_recorder_crystals(const boil_rates_view *v);

/* simulate/recorder_summary.c */
void boil_recorder_summary_begin(boil_summary *s, const boil_bath *b, const boil_rates_view *v);
void boil_recorder_watch_summary(boil_recorder *r, double t, const boil_bath *b, const boil_rates_view *v,
                                 const boil_recorder_peak *peak);
void boil_recorder_summary_end(boil_recorder *r, const boil_bath *b, const double y[], const boil_rates_view *v);

#endif
