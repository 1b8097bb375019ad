/* simulate/simulation.h -- a run under way, for the files that carry it out: simulate/run.c (from start to end), what is due at a
   moment (simulation_due.c), of it what the schedule asks for (simulation_acts.c), pours that hang on something
   (simulation_taps.c), what was bailed and drained (simulation_drums.c), how long loads stay (simulation_stays.c), the automatic
   water (simulation_valve.c) and the fire (simulation_fire.c), the bath as a system to be carried on (simulation_march.c), steps
   and what follows from them (simulation_step.c), the account of it all (balance.c), and the memory for it (simulation_room.c).
   BOIL_OK or a failure throughout.

   The run goes by stretches: what is due is done, the mode settles, the march begins anew and steps until something begins,
   ends or changes. Between two stretches all that the rest of the run depends on is here. */
#ifndef BOIL_SIMULATE_SIMULATION_H
#define BOIL_SIMULATE_SIMULATION_H

#include "acts/tap.h"
#include "integrate/march.h"
#include "bath/modes.h"
#include "simulate/recorder.h"

/* The valve does at a time what the control wanted a dead time before. */
typedef struct {
    double time_s;
    bool open;
} boil_valve_move;

/* A pour that hangs on something. */
typedef struct {
    boil_tap tap;
    size_t action;   /* of the schedule */
    size_t addition; /* place of its result plus one; 0: it has not begun */
} boil_simulation_tap;

/* What was taken and kept under a name. */
typedef struct {
    int name;
    boil_mixture held;
} boil_simulation_drum;

/* What was in the tank at the start, for the balances. */
typedef struct {
    double water_kg, salts_kg, energy_J;
} boil_simulation_start;

/* In which all lists lie but the trace's. */
typedef struct {
    char *block;
    size_t bytes;
} boil_simulation_memory;

/* How many items each list has room for. What hangs on the schedule alone is bounded by it; of the others there is room for as many as
   are to be expected, and before a stretch for all that it may add. */
typedef struct {
    size_t acts, loads, additions, takes; /* actions that wait: as acts; taps and what is kept: as additions */
    size_t bodies;                        /* with as many unknowns as any may have */
    size_t moves, quiet, valve;
} boil_simulation_room;

/* simulate/run.h names it for those who do not look inside. */
typedef struct boil_simulation boil_simulation;
struct boil_simulation {
    boil_simulation_room room;
    boil_simulation_memory memory;
    boil_plant plant; /* a copy: the options change its closures. Bath and recorder refer to it */
    const boil_schedule *schedule;
    boil_run_options options;
    boil_bath bath;
    boil_rates_tables tables;
    boil_rates_guess guess; /* of these tables */
    boil_history history;   /* the recorder writes it */
    boil_recorder record;
    boil_simulation_start start;
    double t, t_before; /* now, and before the last step */
    /* The unknowns now and before the last step, their rates, typical sizes, and the state last evaluated. */
    double *y, *y_before, *rates, *size, *evaluated_y, *bubbleless_y;
    size_t unknowns; /* of each */
    /* The last evaluation: guards, recorder and the march's end-of-step rates ask for the same one. */
    bool evaluated;
    double evaluated_t;
    boil_rates_view view;
    boil_march *march;
    size_t next_action; /* of the schedule, whose time has not come */
    size_t *waiting;    /* actions whose time has come and that still wait, in the order of the schedule */
    size_t waiting_count;
    boil_simulation_tap *taps; /* all there have been: feeds know them by their place */
    size_t taps_count;
    boil_simulation_drum *drums;
    size_t drums_count;
    boil_mixture taken;     /* all that was bailed and drained until the last stretch */
    double since_s;         /* since when it boils, or is quiet; -infinity: the start, at a steady boil */
    bool over;              /* the end has been reached, and what was due then done */
    boil_valve_move *moves; /* what the valve was told and has not done yet, in order of time */
    size_t moves_count;
    double next_period_s;   /* of a time-proportioned valve */
    double held_again_s;    /* when a layer let go is held back again; infinite: it is, or never was */
    double counted_from_s;  /* of the second, or longer, in which changes of mode are counted, ... */
    size_t counted_changes; /* ... and how many there were before it */
    double let_go_s;        /* when what floats lets go of itself; infinite: never */
    double lights_s;        /* when the fire that was called for burns; infinite: none is */
};

/* simulate/simulation_room.c. Expect: so much room the schedule wants; heed: no less than another one asks for. Lay out: the lists,
   which are empty or lie elsewhere, move into the block, which is made as large as they want it: where memory is refused they stay. Make
   room: for the stretch that begins. */
void boil_simulation_expect(boil_simulation *r);
void boil_simulation_heed_schedule(boil_simulation *r);
boil_outcome boil_simulation_lay_out(boil_simulation *r);
boil_outcome boil_simulation_make_room(boil_simulation *r);
size_t boil_simulation_most_unknowns(const boil_simulation *r);

/* simulate/simulation_step.c. Evaluate: bring the view up to date with (t, y). Restart: begin a stretch. Step: once toward
   `stop`; *going: the stretch goes on. */
boil_outcome boil_simulation_evaluate(boil_simulation *r, double t, const double y[]);
double boil_simulation_boils_by(boil_simulation *r, double t, const double y[]); /* of the state last evaluated: bath/modes.h */
boil_outcome boil_simulation_settle_heat(boil_simulation *r);
boil_outcome boil_simulation_settle_mode(boil_simulation *r);
boil_outcome boil_simulation_restart(boil_simulation *r);
boil_outcome boil_simulation_step(boil_simulation *r, double stop, bool *going);

/* Over the rim, m, where what happens at once may leave the still surface: rounding is less. */
#define BOIL_SIMULATION_FULL_BY_M 1e-6

/* kg/s, what steam that is none may be after a change of mode. One bound for all who ask: a boil that may begin as far below nothing as
   settle_mode lets it must not be beyond its guard by then, or it would never end. */
double boil_simulation_steam_rounding(const boil_simulation *r);

/* simulate/simulation_march.c: the march made ready for the stretch that begins; the view is up to date. */
boil_outcome boil_simulation_begin_march(boil_simulation *r);

/* simulate/simulation_due.c. What has ended is cleared away, the valve moves, actions are carried out, and what moves in the
   coming stretch is marked; next: when something known begins or ends. */
boil_outcome boil_simulation_do_due(boil_simulation *r);
double boil_simulation_next_stop(const boil_simulation *r);

/* simulate/simulation_acts.c. Do what is due of the schedule; when something that waits will be due if the bath stays as it is; and
   whether a load goes in at this moment, which is not yet done. */
void boil_simulation_do_acts(boil_simulation *r);
double boil_simulation_next_act(const boil_simulation *r);
bool boil_simulation_lowers(const boil_simulation *r);
bool boil_simulation_is_idle(const boil_simulation *r, double at_s); /* nobody begins anything any more */

/* simulate/simulation_taps.c. Add: a pour that hangs on something, whose act is due; it begins when it is turned. Turn: all of them, as
   the bath is now; next: when again if it stays so. See: a gauge shows what a pour is to reach. Next of line: what pours of it ends.
   Close: the run ends. */
void boil_simulation_add_tap(boil_simulation *r, size_t action);
void boil_simulation_turn_taps(boil_simulation *r);
double boil_simulation_next_tap(const boil_simulation *r);
void boil_simulation_see_goals(boil_simulation *r);
void boil_simulation_next_of_line(boil_simulation *r, int line);
void boil_simulation_close_taps(boil_simulation *r);

/* simulate/simulation_drums.c. What was bailed and drained in the stretch that has passed, to whom it belongs: before anything is
   turned. Kept: under a name, which is begun where it has nothing. */
void boil_simulation_share_taken(boil_simulation *r);
boil_mixture *boil_simulation_kept(boil_simulation *r, int name);

/* simulate/simulation_stays.c. When the loads are lifted whose time counts at the boil, as the bath is now. */
void boil_simulation_turn_stays(boil_simulation *r);

/* simulate/simulation_valve.c. Decide: the sensor has crossed a threshold of the on/off control. Move: what the valve was told
   for now; next: when it will move again, infinite if never. */
void boil_simulation_decide_valve(boil_simulation *r);
void boil_simulation_move_valve(boil_simulation *r);
double boil_simulation_next_valve(const boil_simulation *r);

/* simulate/simulation_fire.c. Settle: the fire as its control wants it now, and what was called for lit. Trip: by the high limit. */
void boil_simulation_settle_fire(boil_simulation *r);
void boil_simulation_trip(boil_simulation *r);

/* simulate/balance.c: the history's balances, at the end. */
void boil_simulation_balance(boil_simulation *r);

#endif
