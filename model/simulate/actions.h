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
} boil_actions_moment;

/* Switches what is switched, breaks a crust, begins feeds and lifting, and adds the bodies of a load behind those in the bath,
   as warm as they come (entry_K) and without unknowns yet: the caller gives them theirs. BOIL_OK or BOIL_NO_MEMORY. */
boil_outcome boil_actions_apply(const boil_action *a, const boil_actions_moment *m);

#endif
