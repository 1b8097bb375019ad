/* commands/lesson/answer.h -- one or two scenarios carried out, to be seen beside each other on one clock. The writers are given the
   whole, and work nothing out. */
#ifndef COMMANDS_LESSON_ANSWER_H
#define COMMANDS_LESSON_ANSWER_H

#include "base/html.h"
#include "cli/output.h"
#include "replay/replay.h"

#define LESSON_RUNS 2

typedef struct {
    const char *name; /* "A", "B" */
    carried_out done;
    replay replay;
} lesson_run;

typedef struct {
    lesson_run runs[LESSON_RUNS];
    size_t count; /* 1 or more */
} lesson_answer;

double lesson_end(const lesson_answer *a); /* of the longest, s */

/* What is told of several runs on one clock: the events of each at the same second. */
typedef struct {
    double time_s;
    const replay_event *of[LESSON_RUNS]; /* the first */
    size_t count[LESSON_RUNS];           /* 0: none */
} lesson_line;

/* In the order of time, to be freed; NULL where memory is refused. */
lesson_line *lesson_lines(const lesson_answer *a, size_t *count);

void lesson_report(const void *answer, const output *o, FILE *to);
extern const document lesson_documents[];
void lesson_page(const void *answer, const output *o, const picture_drawn *drawn, const picture_problem *problem, FILE *to);

#endif
