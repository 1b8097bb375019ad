/* describe/gist.h -- a run in the few lines that decide: what is worst and what to do about that first, loads, water, where it boils,
   level and freeboard, and what was first out of order. The same in the text, on the page and in `compare`. */
#ifndef DESCRIBE_GIST_H
#define DESCRIBE_GIST_H

#include "base/format.h"
#include "describe/carried_out.h"

typedef struct {
    const char *label; /* "freeboard" */
    TEXT_OF(300) says; /* "least 7.9 in at 6:25, limit 6.0" */
} gist_row;

#define GIST_ROWS 11 /* one more than usual of a run that stopped early, of one that starts quiet, and of a lesson */

typedef struct {
    const boil_finding *headline; /* NULL: nothing is above NOTICE */
    const char *word;             /* the signal word; "NOTHING ABOVE NOTICE"; of a run that stopped and found none "STOPPED" */
    TEXT_OF(160) behind;          /* " (possible) 9:06  the boiling surface reaches the rim"; may be empty */
    gist_row rows[GIST_ROWS];
    size_t rows_count;
} gist;

gist gist_of(const carried_out *o, unit_system s);

#endif
