/* jobs/text.h -- the words of a load put together from what a job says: a message about a place in them points at what was typed
   there. */
#ifndef JOBS_TEXT_H
#define JOBS_TEXT_H

#include "jobs/list.h"

#define JOB_TEXT_MAX ((size_t)600)

typedef struct {
    const char *typed; /* the line; all that is added stands in it */
    char text[JOB_TEXT_MAX + 1];
    size_t from[JOB_TEXT_MAX + 1];
    size_t length;
    bool full; /* not all had room */
} job_text;

job_text job_text_begin(const char *typed);
void job_text_add(job_text *t, const char *at, const char *end);   /* a stretch of the line */
void job_text_say(job_text *t, const char *words, const char *at); /* words of ours, for what stands there */

/* A cursor over it, for the line of `line`. False, with a message, when it is too long, or memory is refused. */
bool job_text_cursor(job_text *t, const cursor *line, cursor *c);

/* What a job says beside its load. */
typedef struct {
    const char *name_at;
    size_t name_length;
    quantity least, most; /* text NULL: not said */
    quantity from, due;   /* likewise; from the start */
    boil_plan_priority priority;
    bool ranked; /* a word of it was said */
    bool may_split, may_share;
    bool wrong; /* a clause of it was complained about: what it says is not known */
} job_said;

extern const char *const job_priorities[]; /* words, by boil_plan_priority; NULL after the last */
extern const bounds job_stay_bounds;       /* of how long a job hangs */

/* A moment of a job. */
bool job_moment_read(const job_reader *r, cursor *c, const char *what, quantity *q);

/* Reads the load's words, `load 190 lb, plate 1/4 in, ...`, checks the job as a whole and adds it to the list. What is wrong
   is said once: nothing is held against a clause that could not be read. `place`: its line. */
void job_finish(const job_reader *r, const cursor *place, job_text *load, const job_said *said);

#endif
