/* plan.h -- a scenario laid open: every setting in both unit systems, defaults marked, the charge worked out, the acts
   one by one. */
#ifndef PLAN_H
#define PLAN_H

#include <stdio.h>

#include "scenario.h"

#define PLAN_ACTS_MAX ((size_t)40)

void plan_print(const scenario *s, FILE *to);

/* Two columns, US and SI, behind a name. */
void plan_line(FILE *to, const char *name, unit_dimension d, double si, const char *note);

#endif
