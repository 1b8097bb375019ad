#include "schedule/schedule.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/array.h"
#include "base/memory.h"
#include "schedule/occurrences.h"

schedule_draft schedule_begin(const boil_plant *plant, bool plant_good, const moment_frame *frame)
{
    schedule_draft a = {.reader = {.plant = plant}, .frame = *frame, .first_s = HUGE_VAL};
    a.reader.bath_known = plant_good && memory_good(boil_plant_initial(plant, &a.reader.bath));
    return a;
}

void schedule_draft_free(schedule_draft *a)
{
    load_names_free(&a->reader.names);
    free(a->lines);
    free(a->list);
    *a = (schedule_draft){0};
}

static action_line *new_line(schedule_draft *a, const cursor *place)
{
    action_line *lines = boil_array_reserve(a->lines, &a->line_capacity, a->line_count, sizeof *lines);
    if (lines == NULL)
        return NULL;
    a->lines = lines;
    lines[a->line_count] = (action_line){.place = *place, .portions = 1};
    return &lines[a->line_count++];
}

static bool read_moment_of(void *draft, cursor *c, const char *what, double *s)
{
    const schedule_draft *a = draft;
    return moment_read_within(&a->frame, c, what, s);
}

action_reader *schedule_reader(schedule_draft *a)
{
    a->reader.moment = read_moment_of;
    a->reader.moments = a;
    return &a->reader;
}

/* The earliest act, and where its clock is written, if it is one. */
static void note_first(schedule_draft *a, const cursor *start, size_t length, double s)
{
    if (s >= a->first_s)
        return;
    a->first_s = s;
    a->first = *start;
    a->first_is_clock = memchr(start->at, ':', length) != NULL;
}

static void read_line(schedule_draft *a, cursor *when, cursor *doing)
{
    timing t;
    boil_action action = {0};
    cursor_done(when);
    cursor start = *when;
    if (!timing_read(&a->frame, &a->breaks, when, &t) || (when != doing && !cursor_expect_end(when)))
        return;
    if (!t.wait.follows)
        note_first(a, &start, (size_t)(when->at - start.at), t.from_s);
    cursor_done(doing);
    cursor place = *doing;
    action_line *line = new_line(a, &place);
    action.wait = t.wait;
    if (line == NULL)
        messages_lost(place.messages);
    else if (action_read(schedule_reader(a), doing, &action, line))
        occurrences_enter(a, &place, &t, &action);
}

void schedule_read(schedule_draft *a, cursor *when, cursor *doing)
{
    size_t lines = a->count;
    read_line(a, when, doing);
    a->last.any = true;
    if (a->count == lines)
        a->last.count = 0;
}
