/* integrate/fehlberg.h -- an explicit step of fifth order with an error of fourth order [Fehlberg, NASA TR R-315 (1969)]. It is what
   other steps are measured against: nothing in it rests on how a system hangs together. */
#ifndef BOIL_INTEGRATE_FEHLBERG_H
#define BOIL_INTEGRATE_FEHLBERG_H

#include "integrate/step.h"

enum { BOIL_FEHLBERG_ORDER = 5 };

bool boil_fehlberg_step(boil_step *p, const boil_system *s, double t, double h); /* false: the rates refuse a stage */

#endif
