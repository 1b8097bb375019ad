/* planning/idle.h -- what is wrong with a bath before anybody does anything: no order of jobs mends that. */
#ifndef BOIL_PLANNING_IDLE_H
#define BOIL_PLANNING_IDLE_H

#include "planning/planning.h"

/* Carries out the first seconds of a bath that boils from the start, until the first load or water could go in, by all the runs
   that judge a case; what they find above NOTICE goes to g->idle. One that is heated up first is not asked, nor one with a
   water valve: what they do then hangs on more than that. Asked a second time it stays as it is. BOIL_OK, or a failure of a
   run. */
boil_outcome boil_plan_look_idle(boil_planning *g);

#endif
