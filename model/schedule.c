#include "schedule.h"

#include <stdlib.h>

#include "boil.h"

void boil_schedule_init(boil_schedule *s, double duration_s)
{
    *s = (boil_schedule){.duration_s = duration_s};
}

void boil_schedule_free(boil_schedule *s)
{
    if (!s)
        return;
    free(s->acts);
    *s = (boil_schedule){.duration_s = s->duration_s};
}

int boil_schedule_add(boil_schedule *s, const boil_act *a)
{
    if (s->count == s->room) {
        size_t room = s->room ? 2 * s->room : 16;
        boil_act *acts = realloc(s->acts, room * sizeof *acts);
        if (!acts)
            return BOIL_NO_MEMORY;
        s->acts = acts;
        s->room = room;
    }
    s->acts[s->count++] = *a;
    return BOIL_OK;
}

/* Merge two sorted neighbours into `to`; equal times keep their order. */
static void merge(const boil_act *from, boil_act *to, size_t start, size_t middle, size_t end)
{
    size_t left = start, right = middle;
    for (size_t k = start; k < end; k++) {
        int take_left = left < middle && (right >= end || from[left].time_s <= from[right].time_s);
        to[k] = from[take_left ? left++ : right++];
    }
}

/* qsort is not stable, and file order at equal times is part of the language: a bottom-up merge sort. Without memory for
   the copy the acts are left to an insertion sort. */
static void insertion_sort(boil_act *a, size_t n)
{
    for (size_t i = 1; i < n; i++) {
        boil_act moved = a[i];
        size_t k = i;
        for (; k > 0 && a[k - 1].time_s > moved.time_s; k--)
            a[k] = a[k - 1];
        a[k] = moved;
    }
}

void boil_schedule_sort(boil_schedule *s)
{
    size_t n = s->count;
    boil_act *other = n > 1 ? malloc(n * sizeof *other) : NULL;
    if (!other) {
        insertion_sort(s->acts, n);
        return;
    }
    boil_act *from = s->acts, *to = other;
    for (size_t width = 1; width < n; width *= 2) {
        for (size_t start = 0; start < n; start += 2 * width) {
            size_t middle = start + width < n ? start + width : n, end = start + 2 * width < n ? start + 2 * width : n;
            merge(from, to, start, middle, end);
        }
        boil_act *swap = from;
        from = to;
        to = swap;
    }
    if (from != s->acts)
        for (size_t i = 0; i < n; i++)
            s->acts[i] = from[i];
    free(other);
}
