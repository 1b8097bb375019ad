#include "case/schedule.h"

#include <stdlib.h>
#include <string.h>

#include "base/array.h"

void boil_schedule_init(boil_schedule *s, double duration_s)
{
    if (s == NULL)
        return;
    *s = (boil_schedule){.duration_s = duration_s};
}

void boil_schedule_free(boil_schedule *s)
{
    if (!s)
        return;
    free(s->actions);
    *s = (boil_schedule){.duration_s = s->duration_s};
}

boil_outcome boil_schedule_copy(const boil_schedule *s, boil_schedule *out)
{
    *out = *s;
    out->actions = NULL;
    out->count = out->capacity = 0;
    if (s->count == 0)
        return BOIL_OK;
    out->actions = malloc(s->count * sizeof *out->actions);
    if (out->actions == NULL)
        return BOIL_NO_MEMORY;
    memcpy(out->actions, s->actions, s->count * sizeof *out->actions);
    out->count = out->capacity = s->count;
    return BOIL_OK;
}

bool boil_action_takes(boil_action_kind kind)
{
    return kind == BOIL_ACTION_BAIL || kind == BOIL_ACTION_DRAIN;
}

size_t boil_schedule_followed(const boil_schedule *s, size_t waiting)
{
    size_t after = s->actions[waiting].wait.after;
    if (after < waiting && s->actions[after].order == after) /* as it is where none was taken out */
        return after;
    for (size_t i = waiting; i > 0; i--)
        if (s->actions[i - 1].order == after)
            return i - 1;
    return waiting;
}

boil_outcome boil_schedule_add(boil_schedule *s, const boil_action *a)
{
    if (s == NULL || a == NULL)
        return BOIL_BAD_INPUT;
    boil_action *actions = boil_array_reserve(s->actions, &s->capacity, s->count, sizeof *actions);
    if (!actions)
        return BOIL_NO_MEMORY;
    s->actions = actions;
    s->actions[s->count] = *a;
    s->actions[s->count].order = s->count;
    s->count++;
    return BOIL_OK;
}

boil_outcome boil_schedule_add_break(boil_schedule *s, double from_s, double to_s)
{
    if (s == NULL || !(from_s >= 0 && to_s > from_s) || s->breaks_count == BOIL_BREAKS_MAX)
        return BOIL_BAD_INPUT;
    s->breaks[s->breaks_count++] = (boil_break){from_s, to_s};
    return BOIL_OK;
}

static int earlier(const void *a, const void *b)
{
    const boil_action *x = a, *y = b;
    if (x->time_s != y->time_s)
        return x->time_s < y->time_s ? -1 : 1;
    return x->order < y->order ? -1 : x->order > y->order;
}

/* As most are written. */
static bool is_in_order(const boil_schedule *s)
{
    size_t i = 1;
    while (i < s->count && earlier(&s->actions[i - 1], &s->actions[i]) <= 0)
        i++;
    return i >= s->count;
}

void boil_schedule_sort(boil_schedule *s)
{
    if (s != NULL && s->actions != NULL && !is_in_order(s))
        qsort(s->actions, s->count, sizeof *s->actions, earlier);
}
