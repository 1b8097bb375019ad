#include "commands/lesson/answer.h"

#include <math.h>
#include <stdlib.h>

#include "base/memory.h"

double lesson_end(const lesson_answer *a)
{
    double end_s = 0;
    for (size_t i = 0; i < a->count; i++)
        end_s = fmax(end_s, a->runs[i].done.central.end_s);
    return end_s;
}

/* The run whose next event comes first; count: none has one. */
static size_t first_of(const lesson_answer *a, const size_t next[])
{
    size_t first = a->count;
    for (size_t i = 0; i < a->count; i++) {
        const replay *r = &a->runs[i].replay;
        if (next[i] < r->events_count &&
            (first == a->count || r->events[next[i]].time_s < a->runs[first].replay.events[next[first]].time_s))
            first = i;
    }
    return first;
}

lesson_line *lesson_lines(const lesson_answer *a, size_t *count)
{
    size_t most = 1, next[LESSON_RUNS] = {0}, first;
    for (size_t i = 0; i < a->count; i++)
        most += a->runs[i].replay.events_count;
    lesson_line *lines = memory_needed(calloc(most, sizeof *lines));
    *count = 0;
    while (lines != NULL && (first = first_of(a, next)) < a->count) {
        lesson_line *l = &lines[(*count)++];
        l->time_s = a->runs[first].replay.events[next[first]].time_s;
        for (size_t i = 0; i < a->count; i++) {
            const replay *r = &a->runs[i].replay;
            l->of[i] = r->events + next[i];
            for (; next[i] < r->events_count && floor(r->events[next[i]].time_s) == floor(l->time_s); next[i]++)
                l->count[i]++;
        }
    }
    return lines;
}
