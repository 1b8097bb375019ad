/* practise/journal.h -- a shift as it is being worked, as the scenario it would be: the file as it was read, with the acts as they were
   done in place of its schedule; of a lesson behind it, for what its schedule says happens in any case, and without its scripts. What is saved is what was
   carried out: both are read from this text. */
#ifndef PRACTISE_JOURNAL_H
#define PRACTISE_JOURNAL_H

#include "scenario/scenario.h"

typedef struct {
    double time_s; /* from the start, whole */
    char *doing;   /* "water 2 gal over 1 min" */
    bool planned;  /* the line says itself when: "every 30 min from 0:30 load ..."; time_s is when it was given */
    char *asked;   /* "when boiling for 1 min", for what it waited; NULL: for nothing */
    bool quiet;    /* that is a bath that is quiet; else one that boils */
    double for_s;  /* for so long */
} journal_act;

typedef struct {
    char *name;          /* of the file, for messages */
    char *above, *below; /* its lines before and behind the acts, each with its end */
    moment_frame frame;  /* by which they are written */
    journal_act *acts;   /* in the order of time */
    size_t count, capacity;
    size_t kept;     /* acts of a lesson's own schedule: they are done in any case */
    size_t left_out; /* acts of any other file's, which are left to whoever practises */
    char *left;      /* their lines, each with its end; of a run sheet none */
} journal;

/* Of a file and what was read from it. False when memory is refused; to be freed either way. */
bool journal_begin(journal *j, const source *file, const scenario *read);
void journal_free(journal *j);

/* A copy goes behind all others. False when memory is refused: it is as it was. */
bool journal_add(journal *j, const journal_act *act);
void journal_drop(journal *j); /* the last one, if there is any */

moment_text journal_moment(const journal *j, double s); /* "0:05:20": as the schedule writes it */

/* As done: each act at its time, so that the run is the shift; what it waited for is a comment. As asked: what waited does not
   come before that either, but waits in other runs of a set, in which the boil is back later: whoever waited for it would have. */
typedef enum { JOURNAL_DONE, JOURNAL_ASKED } journal_view;

/* The scenario's text, to be freed; NULL when memory is refused. */
char *journal_text(const journal *j, journal_view v, size_t *length);

/* The scenario itself. BOIL_OK; BOIL_BAD_INPUT with what is wrong in `m`; BOIL_NO_MEMORY. To be freed either way. */
boil_outcome journal_read(const journal *j, journal_view v, scenario *out, messages *m);

/* Of the last act in that text, from 1. */
size_t journal_last_line(const journal *j);

#endif
