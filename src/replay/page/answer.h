/* replay/page/answer.h -- runs to be seen beside each other on one clock: one or two scenarios, or what is done recklessly and with
   care in a lesson. The writers are given the whole, and work nothing out. */
#ifndef REPLAY_PAGE_ANSWER_H
#define REPLAY_PAGE_ANSWER_H

#include "base/html.h"
#include "cli/output.h"
#include "lesson/lesson.h"
#include "replay/replay.h"

#define LESSON_SHOWN 2
#define LESSON_RUNS (LESSON_SHOWN + LESSON_CHOICES_MAX)

typedef struct {
    const char *name;  /* "A", "B"; a choice takes A's place */
    const char *title; /* "Recklessly", "With care", the answer chosen; else the scenario's */
    scenario as;       /* the scenario with this run's acts, by the answer's clock: lent, not to be freed */
    carried_out done;
    replay replay;
    lesson_verdict verdict; /* of a lesson */
} lesson_run;

/* A sentence of what is seen. */
typedef TEXT_OF(600) lesson_words;

typedef struct {
    const scenario *scenario;     /* the first */
    double start_s;               /* of the one clock, after midnight; 0 where two start at different times: from their start */
    lesson_words apart;           /* says so; else "" */
    const lesson *of;             /* NULL: no lesson */
    lesson_run runs[LESSON_RUNS]; /* those shown from the start, then a lesson's choices */
    size_t count;                 /* of those shown: 1 or more */
    size_t choices;
} lesson_answer;

/* Carries out `count` scenarios, 1 or 2, or the scripts and choices of one that is a lesson; `s` must outlive the answer. A failure
   of the model names in *failed the scenario it came of. To be freed either way. */
boil_outcome lesson_answer_of(const scenario *s, size_t count, lesson_answer *out, const scenario **failed);

/* A shift as it was done, and the same with care (NULL: there is nothing to do better); of a lesson with what it asks. As above. */
boil_outcome lesson_answer_of_shift(const scenario *done, const scenario *cared, lesson_answer *out);
void lesson_answer_free(lesson_answer *a);

/* False when memory is refused. Slack: of the bounds of what a page leaves out (replay/replay.h). */
bool lesson_replays(lesson_answer *a, unit_system s, double slack);

bool lesson_stopped(const lesson_answer *a); /* one of those shown did not reach its end */
double lesson_end(const lesson_answer *a);   /* of the longest, s */

/* "Passed.", or what did not hold; and what that is worth: "Not passed: rim over the rim, at least 6 in.". "" where it is no lesson. */
lesson_words lesson_outcome(const lesson_answer *a, const lesson_run *r);

/* How much later than in that run the boil comes back in B, s, from the quiet spell of it under which most water floated, or the first:
   so far B may be shown ahead, that both erupt, or do not, at once. 0: no spell of B's answers to that one, or they are within a
   minute of each other, or there is no B. Of a shift that is told by one clock it is nothing that anybody would see. */
double lesson_later(const lesson_answer *a, const lesson_run *r);

/* What is told of several runs on one clock: the events of each at the same second. */
typedef struct {
    double time_s;
    const replay_event *of[LESSON_SHOWN]; /* the first */
    size_t count[LESSON_SHOWN];           /* 0: none */
} lesson_line;

/* In the order of time, to be freed; NULL where memory is refused. */
lesson_line *lesson_lines(const lesson_answer *a, size_t *count);

void lesson_page(const void *answer, const output *o, const picture_drawn *drawn, const picture_problem *problem, FILE *to);

/* Finds the bounds by which the page is no larger than 200 KiB; false, with a complaint, where none are. */
bool lesson_page_fits(lesson_answer *a, const output *o);

/* The page as a file; false, with a complaint, when it could not be written. */
bool lesson_page_write(const lesson_answer *a, const output *o, const char *path);

#endif
