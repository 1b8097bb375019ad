/* schedule/breaks.h -- spells of a shift: breaks, in which nobody stands at the tank, and what an "every" leaves out. */
#ifndef SCHEDULE_BREAKS_H
#define SCHEDULE_BREAKS_H

#include "base/words.h"
#include "boilback.h"
#include "schedule/moment.h"

typedef struct {
    boil_break list[BOIL_BREAKS_MAX];
    words_quote words[BOIL_BREAKS_MAX]; /* what each is called */
    size_t count;
} break_list;

/* Reads "8:00 to 8:15 coffee". False, with a message, when it is none, or there are too many. */
bool break_read(const moment_frame *f, cursor *c, break_list *b);

typedef struct {
    boil_break list[BOIL_BREAKS_MAX];
    size_t count;
} exceptions;

/* "except 8:00 to 8:15 except breaks", if that comes next. False, with a message, on a mistake. */
bool exceptions_read(const moment_frame *f, const break_list *b, cursor *c, exceptions *e);

bool exceptions_hold(const exceptions *e, double s); /* from the first moment of one on, and before its last */

#endif
