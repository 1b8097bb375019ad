/* jobs/now.h -- a section [now]: where a shift stands that is planned on, as somebody read it there. Its lines are settings, of which
   some may stand there more than once; jobs are named by the list of jobs, a basket of one that hangs in several as "frames 2/3". */
#ifndef JOBS_NOW_H
#define JOBS_NOW_H

#include "jobs/list.h"

typedef enum { NOW_HANGS, NOW_OUT, NOW_WITHDRAWN, NOW_URGENT } now_kind;

/* One job, or one of its baskets, and what is said of it. */
typedef struct {
    now_kind kind;
    size_t job;        /* of the list */
    size_t number, of; /* from 0; of 1: all of it */
    size_t dip;        /* that hangs: those of one number hang together, from 0 */
    double since_s;    /* likewise: from the start of the shift */
    double out_s;      /* likewise: it was to be lifted then; NaN: not said */
    double due_s;      /* urgent: it must be out by then */
} now_job;

typedef struct {
    size_t line;     /* of its header; 0: there is none, and nothing of it holds */
    double clock_s;  /* from the start of the shift */
    double reads_K;  /* a thermometer in the bath */
    double level_m;  /* its still surface, with what hangs there */
    double boiled_K; /* where it boiled last, if it does not; NaN: not said */
    bool boils;
    now_job *list;
    size_t count, capacity;
    size_t dips;                     /* that hang */
    size_t reads_line, reads_column; /* where its temperature stands */
} now_section;

/* Reads all its lines, after the list of jobs was read; what is wrong goes to the messages. `header`: its line. */
void now_read(const job_reader *r, const cursor *header, const cursor lines[], size_t count, now_section *out);
void now_free(now_section *n);

/* Its lines for the manual; form NULL beyond the last. */
typedef struct {
    const char *form, *meaning;
} now_line;
now_line now_line_listed(size_t index);

#endif
