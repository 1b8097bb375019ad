/* said.h -- an act in the words of the person who planned it. */
#ifndef SAID_H
#define SAID_H

#include "scenario.h"

typedef struct {
    char text[128];
} said;

said said_of(const scenario *s, size_t act); /* "load 100 lb of 1/4 in plate"; the kind alone when no words were kept */

#endif
