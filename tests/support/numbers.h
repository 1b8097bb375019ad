/* support/numbers.h -- which of what is drawn by number are tried: VARIABLE=200 in the environment, the first 200; VARIABLE=17-18,
   that one; without it as usual. */
#ifndef SUPPORT_NUMBERS_H
#define SUPPORT_NUMBERS_H

#include <stdio.h>
#include <stdlib.h>

/* To: the first that is not tried. */
typedef struct {
    int from, to;
} drawn_numbers;

static inline drawn_numbers numbers_asked(const char *variable, drawn_numbers usual)
{
    const char *asked = getenv(variable);
    drawn_numbers n = usual;
    if (asked != NULL && sscanf(asked, "%d-%d", &n.from, &n.to) != 2)
        n = (drawn_numbers){0, atoi(asked)};
    return n;
}

#endif
