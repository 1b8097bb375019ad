/* schedule/moment.h -- moments as a schedule writes them: counted from the start, or by the clock on the wall. */
#ifndef SCHEDULE_MOMENT_H
#define SCHEDULE_MOMENT_H

#include "base/text.h"
#include "reading/quantity.h"

/* No act is later, and no shift longer: 14 days. */
#define SCHEDULE_LATEST_S (14 * 86400.0)

typedef enum { MOMENTS_FROM_START, MOMENTS_BY_CLOCK } moment_count; /* in the order of the key's words */

/* What moments are read against. */
typedef struct {
    moment_count count;
    bool start_said; /* by the scenario */
    double start_s;  /* wall clock, after midnight */
    double end_s;    /* of the shift, from the start; infinity: not known yet */
} moment_frame;

/* A clock ("+1d" behind it, by the clock) or a time with its unit; the value is from the start, s. False, with a message. */
bool moment_read(const moment_frame *f, cursor *c, const char *what, quantity *q);

/* False, with a message, when it lies after the end. */
bool moment_within(const moment_frame *f, const cursor *c, const char *at, double s);

/* The same two, for its value alone: `*s` is unchanged where it is false. */
bool moment_read_within(const moment_frame *f, cursor *c, const char *what, double *s);

/* "1:30" from the start, or "7:30", "5:30+1d" by the clock: as the schedule would write it. */
typedef TEXT_OF(32) moment_text;
moment_text moment_words(const moment_frame *f, double s);

/* A remark where the first act lies so late that its clock was hardly meant to count from the start: `at` is where it is
   written, if it is a clock. */
void moment_remark_late(const moment_frame *f, const cursor *c, double s);

#endif
