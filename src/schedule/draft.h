/* schedule/draft.h -- a schedule while it is being read: its lines, each time that one is done, and what later lines need of
   those before. */
#ifndef SCHEDULE_DRAFT_H
#define SCHEDULE_DRAFT_H

#include "actions/action.h"
#include "schedule/breaks.h"

/* All repetitions of all "every" together. */
#define SCHEDULE_ACTIONS_MAX 100000.0

typedef struct {
    boil_action action;
    size_t line;    /* index of its action_line */
    double lifts_s; /* a load: when its lifting begins, where its time counts at the boil at the latest; infinity: never */
    double least_s; /* and at the earliest, unless it is lifted before; the same for any other */
} schedule_planned;

/* Of one line, as long as the list stands in the order of the file. */
typedef struct {
    bool any; /* such a line stands there; without occurrences it has a mistake */
    size_t first, count;
} schedule_occurrences;

typedef struct {
    action_reader reader;
    moment_frame frame; /* an infinite end: 30 min after the last action */
    double first_s;     /* of the acts read so far; infinity: none */
    bool first_is_clock;
    cursor first; /* where it is written */
    action_line *lines;
    size_t line_count, line_capacity;
    schedule_planned *list;
    size_t count, capacity;
    schedule_occurrences last, last_load; /* of the line before, and of the load before, in the order of the file */
    break_list breaks;                    /* read before the first act */
} schedule_draft;

#endif
