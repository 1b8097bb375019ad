#include "plan/order.h"

#include <stdlib.h>
#include <string.h>

boil_outcome boil_plan_order_begin(boil_plan_order *o, size_t parts)
{
    *o = (boil_plan_order){parts, parts, malloc((parts + 1) * sizeof *o->parts), malloc((parts + 2) * sizeof *o->first)};
    if (o->parts == NULL || o->first == NULL) {
        boil_plan_order_free(o);
        return BOIL_NO_MEMORY;
    }
    for (size_t i = 0; i <= parts; i++)
        o->parts[i] = o->first[i] = i;
    return BOIL_OK;
}

void boil_plan_order_free(boil_plan_order *o)
{
    free(o->parts);
    free(o->first);
    *o = (boil_plan_order){.parts = NULL};
}

void boil_plan_order_copy(const boil_plan_order *from, boil_plan_order *to)
{
    to->dips_count = from->dips_count;
    memcpy(to->parts, from->parts, from->parts_count * sizeof *to->parts);
    memcpy(to->first, from->first, (from->dips_count + 1) * sizeof *to->first);
}

size_t boil_plan_order_size(const boil_plan_order *o, size_t dip)
{
    return o->first[dip + 1] - o->first[dip];
}

static void turn(size_t list[], size_t from, size_t to)
{
    for (; from + 1 < to; from++, to--) {
        size_t kept = list[from];
        list[from] = list[to - 1];
        list[to - 1] = kept;
    }
}

/* Two neighbouring stretches change places. */
static void rotate(size_t list[], size_t from, size_t middle, size_t to)
{
    turn(list, from, middle);
    turn(list, middle, to);
    turn(list, from, to);
}

/* The dips [from, middle) and [middle, to) change places. */
static void exchange(boil_plan_order *o, size_t from, size_t middle, size_t to)
{
    size_t begin = o->first[from], inner = o->first[middle], end = o->first[to];
    rotate(o->parts, begin, inner, end);
    for (size_t i = from; i < to; i++)
        o->first[i] = o->first[i + 1] - o->first[i]; /* sizes */
    rotate(o->first, from, middle, to);
    for (size_t i = from, at = begin; i < to; i++) {
        size_t size = o->first[i];
        o->first[i] = at;
        at += size;
    }
}

void boil_plan_order_move(boil_plan_order *o, size_t dip, size_t to)
{
    if (dip < to)
        exchange(o, dip, dip + 1, to + 1);
    else if (to < dip)
        exchange(o, to, dip, dip + 1);
}

void boil_plan_order_swap(boil_plan_order *o, size_t a, size_t b)
{
    size_t low = a < b ? a : b, high = a < b ? b : a;
    if (low == high)
        return;
    boil_plan_order_move(o, high, low);
    boil_plan_order_move(o, low + 1, high);
}

void boil_plan_order_part(boil_plan_order *o, size_t dip, size_t part, size_t before)
{
    size_t at = o->first[dip] + part, alone = o->first[dip + 1] - 1;
    if (boil_plan_order_size(o, dip) > 1) {
        rotate(o->parts, at, at + 1, alone + 1); /* it is the last of its dip, and then a dip behind it */
        memmove(o->first + dip + 2, o->first + dip + 1, (o->dips_count - dip) * sizeof *o->first);
        o->first[dip + 1] = alone;
        o->dips_count++;
        before += before > dip;
        dip++;
    }
    boil_plan_order_move(o, dip, before > dip ? before - 1 : before);
}

void boil_plan_order_join(boil_plan_order *o, size_t dip, size_t part, size_t into)
{
    if (dip == into)
        return;
    size_t count = o->dips_count;
    boil_plan_order_part(o, dip, part, into);
    bool closed_up = o->dips_count == count && dip < into; /* the dip that it was is gone */
    size_t joined = closed_up ? into - 1 : into;           /* it stands there now, and what it joins behind it */
    memmove(o->first + joined + 1, o->first + joined + 2, (o->dips_count - joined - 1) * sizeof *o->first);
    o->dips_count--;
}
