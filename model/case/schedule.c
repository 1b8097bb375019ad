#include "case/schedule.h"

#include <stdlib.h>

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

static int earlier(const void *a, const void *b)
{
    const boil_action *x = a, *y = b;
    if (x->time_s != y->time_s)
        return x->time_s < y->time_s ? -1 : 1;
    return x->order < y->order ? -1 : x->order > y->order;
}

void boil_schedule_sort(boil_schedule *s)
{
    if (s != NULL && s->actions != NULL && s->count > 1)
        qsort(s->actions, s->count, sizeof *s->actions, earlier);
}
