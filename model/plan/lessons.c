#include "plan/lessons.h"

#include <stdlib.h>

#include "statistics/stream.h"

uint64_t boil_plan_lesson_key(const size_t parts[], size_t count)
{
    uint64_t sum = 0;
    for (size_t i = 0; i < count; i++)
        sum += boil_stream_hash((uint64_t)parts[i] + 1);
    return sum != 0 ? sum : 1;
}

/* Where it is kept, or would be; there is always an empty place. */
static size_t place_of(const boil_plan_lessons *l, uint64_t parts)
{
    size_t i = (size_t)(parts % l->room);
    while (l->list[i].parts != 0 && l->list[i].parts != parts)
        i = (i + 1) % l->room;
    return i;
}

boil_plan_lesson boil_plan_lesson_of(const boil_plan_lessons *l, uint64_t parts)
{
    const boil_plan_lesson none = {.parts = parts};
    if (l == NULL || l->count == 0)
        return none;
    boil_plan_lesson found = l->list[place_of(l, parts)];
    return found.parts == parts ? found : none;
}

static boil_outcome grow(boil_plan_lessons *l)
{
    boil_plan_lessons wider = {.room = l->room > 0 ? 2 * l->room : 64, .count = l->count};
    wider.list = calloc(wider.room, sizeof *wider.list);
    if (wider.list == NULL)
        return BOIL_NO_MEMORY;
    for (size_t i = 0; i < l->room; i++)
        if (l->list[i].parts != 0)
            wider.list[place_of(&wider, l->list[i].parts)] = l->list[i];
    free(l->list);
    *l = wider;
    return BOIL_OK;
}

boil_outcome boil_plan_lesson_learn(boil_plan_lessons *l, const boil_plan_lesson *what)
{
    if (2 * (l->count + 1) > l->room && grow(l) != BOIL_OK)
        return BOIL_NO_MEMORY;
    boil_plan_lesson *to = &l->list[place_of(l, what->parts)];
    l->count += to->parts == 0;
    *to = *what;
    return BOIL_OK;
}

boil_outcome boil_plan_lessons_add(const boil_plan_lessons *from, boil_plan_lessons *to)
{
    boil_outcome outcome = BOIL_OK;
    for (size_t i = 0; i < from->room && outcome == BOIL_OK; i++)
        if (from->list[i].parts != 0)
            outcome = boil_plan_lesson_learn(to, &from->list[i]);
    return outcome;
}

void boil_plan_lessons_free(boil_plan_lessons *l)
{
    free(l->list);
    *l = (boil_plan_lessons){.list = NULL};
}
