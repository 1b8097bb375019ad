/* findings/trigger.h -- what if it lets go now: water afloat on a bath below its boil, set off at the worst moment.

   A lumped bath cannot say when a layer lets go before the boil is back: a nucleus, a dropped part, a ripple decide. So a sudden
   run is followed through its quiet spells, and from each of these moments a run goes on in which it does
   (BOIL_CLOSURES_TRIGGER):
     - that of the largest potential in each spell at which stirring by its own steam would grow (transfer/overturn.h (4));
     - the start of every lowering of a load while there is any such potential;
   and of them all, from however many runs, the BOIL_TRIGGERS with the largest potential, each for a minute without actions beyond
   the schedule. A potential that would leave the freeboard asked for is none: there it could change no grade. */
#ifndef BOIL_FINDINGS_TRIGGER_H
#define BOIL_FINDINGS_TRIGGER_H

#include "boilback.h"
#include "simulate/run.h"

/* A moment to set it off, and the run as it stood at or before that, a stretch away at most. */
typedef struct {
    boil_simulation *base;
    double time_s, steam_kg;
} boil_trigger;

/* Largest potential first, behind them bases that are done with. All zero: none. */
typedef struct {
    boil_trigger list[BOIL_TRIGGERS];
    size_t count;
    boil_trigger worst; /* of the spell that a run is in */
    boil_simulation *spare;
} boil_triggers;

/* A run carried out in one's own workspace, whose triggers are taken in. */
boil_outcome boil_trigger_watch(boil_simulation **own, const boil_plant *p, const boil_schedule *s, const boil_run_options *o,
                                boil_triggers *found, boil_history *out);

/* How it goes on from one of them, in one's own workspace. */
boil_outcome boil_trigger_follow(const boil_trigger *t, boil_simulation **own, const boil_schedule *s, boil_history *out);

void boil_triggers_move(boil_triggers *to, boil_triggers *from); /* the largest of both; `from` is left empty */
void boil_triggers_free(boil_triggers *t);

#endif
