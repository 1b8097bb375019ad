/* simulate/run.h -- a schedule carried out on a plant: what happened, moment by moment and action by action. SI; times from the
   start. A time that never came is NaN. The result is plain data: nothing in it points into the plant or the schedule. */
#ifndef BOIL_SIMULATE_RUN_H
#define BOIL_SIMULATE_RUN_H

#include <stdbool.h>
#include <stddef.h>

#include "boilback.h"
#include "case/plant.h"
#include "case/schedule.h"

/* A run under way, to be stopped, copied and carried on; boil_run is made of these. Plant and options are copied; the schedule
   is kept by reference, and must stand until the simulation is done with.

   It is a workspace as well: who makes many runs, a thread at a time, begins or copies all in the same one, and once it is as large as
   they take nothing is allocated any more but for a trace. `own` below is the caller's: NULL at first, or one that is done with; to be
   freed in the end, whatever the outcomes. In a run memory is asked for only where more happens than its schedule lets expect: rows
   of a trace, loads that wait on one another, quiet spells, moves of a valve. */
typedef struct boil_simulation boil_simulation;

/* Charge the tank; nothing of the schedule is done yet. Outcomes as of boil_run. */
boil_outcome boil_simulation_begin(const boil_plant *p, const boil_schedule *s, const boil_run_options *o,
                                   boil_simulation **own);

/* Go on to the first moment at or after until_s, s, at which an action is due, something begins or ends, or the bath changes:
   there the run stands between two stretches, what is due then not yet done. So actions later than or at until_s may still be
   chosen; with until_s the time of an action it stops just before that. At the run's end, or where it ended early, nothing
   more happens. BOIL_OK, BOIL_NO_MEMORY. */
boil_outcome boil_simulation_advance(boil_simulation *r, double until_s);

/* All of it, the history so far included: going on from the copy gives the history that going on from the original would give,
   to the last digit. The schedule to go on with may be another one that is the same up to now, with as many actions before
   now. BOIL_OK, BOIL_NO_MEMORY. */
boil_outcome boil_simulation_copy(const boil_simulation *from, const boil_schedule *s, boil_simulation **own);

/* Where it stands. */
typedef struct {
    double time_s;
    bool over; /* at its end, or where it ended early */
    bool quiet;
    bool lowers;                         /* a load goes in at this moment, and is not yet in */
    const boil_quiet_result *last_quiet; /* the latest spell, so far; NULL: none yet. Good until it goes on */
} boil_simulation_place;
boil_simulation_place boil_simulation_at(const boil_simulation *r);

/* What happened until there, rows and all; what closes a history at its end (balances, the end's own values) is in it once it is
   finished. Good until it goes on or is done with. */
const boil_history *boil_simulation_so_far(const boil_simulation *r);

/* No more rows from here on: for who asks only what came of it. */
void boil_simulation_end_trace(boil_simulation *r);

/* The steam, kg, that what floats now could give by itself, where that would leave less than the freeboard asked for; else 0. */
double boil_simulation_erupts(boil_simulation *r);

/* At that moment, now or later, what floats lets go of itself: BOIL_CLOSURES_TRIGGER from then on. */
void boil_simulation_let_go(boil_simulation *r, double at_s);

/* Carry it to the end, and close its history: outcomes as of boil_run. Then hand that over, which the caller frees; after that it is
   done with: BOIL_OK, BOIL_NO_MEMORY. */
boil_outcome boil_simulation_finish(boil_simulation *r);
boil_outcome boil_simulation_hand_over(boil_simulation *r, boil_history *out);
void boil_simulation_free(boil_simulation *r); /* NULL is fine */

/* boil_run for a case that is known to make sense, or whose plant need not stand by itself, a part of a search: in one's own workspace,
   where the history is good until the next; and by itself. */
boil_outcome boil_run_in(boil_simulation **own, const boil_plant *p, const boil_schedule *s, const boil_run_options *o,
                         const boil_history **out);
boil_outcome boil_run_unchecked(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, boil_history *out);

#endif
