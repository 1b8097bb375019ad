/* loading.h -- the act "load": mass and metal, shape, clauses. */
#ifndef LOADING_H
#define LOADING_H

#include "acts.h"

bool loading_read(acts *a, cursor *c, boil_act *act, act_line *said);

#endif
