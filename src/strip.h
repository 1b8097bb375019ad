/* strip.h -- temperature and level over time in plain characters, 80 columns wide. */
#ifndef STRIP_H
#define STRIP_H

#include <stdio.h>

#include "outcome.h"
#include "show.h"

void strip_print(const outcome *o, show_system s, FILE *to); /* nothing when the run has no trace */

#endif
