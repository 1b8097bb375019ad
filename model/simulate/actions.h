/* simulate/actions.h -- what the actions of a schedule do to the bath, one function a kind. */
#ifndef BOIL_SIMULATE_ACTIONS_H
#define BOIL_SIMULATE_ACTIONS_H

#include "boilback.h"
#include "case/schedule.h"
#include "bath/bath.h"
#include "bath/rates_view.h"
#include "simulate/recorder.h"

/* The bath at the moment of an action, and who is told of it. */
typedef struct {
    double time_s;
    double *state; /* the unknowns */
    boil_bath *bath;
    boil_recorder *recorder;
    const boil_rates_view *view;
    boil_mixture *kept;   /* what is kept under the action's name; NULL: it has none */
    size_t tap, addition; /* of a pour by a tap: its place plus one, and that of its result once it has one; 0: none */
} boil_actions_moment;

enum { BOIL_ACTIONS_BODIES = 3 }; /* of a load, at most: parts, basket, water in hollows */

/* A pour by a tap begins to flow, and flows until its feed is ended. Switches what is switched, breaks a crust, begins feeds and
   lifting, and adds the bodies of a load behind those in the bath, as warm as they come (entry_K) and without unknowns yet: the
   caller gives them theirs. There is room for what it begins; a load begins one feed, as any pour does. */
void boil_actions_apply(const boil_action *a, const boil_actions_moment *m);

#endif
