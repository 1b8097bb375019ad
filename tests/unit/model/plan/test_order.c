/* Orders of dips, against the same done with a list for each dip. */
#include <string.h>

#include "plan/order.h"
#include "statistics/stream.h"
#include "support/close.h"

enum { PARTS = 9, CHANGES = 20000 };

/* Dips as lists of their own. */
typedef struct {
    size_t dip[PARTS + 1][PARTS], size[PARTS + 1], count;
} lists;

static void insert_dip(lists *l, size_t at, const size_t parts[], size_t size)
{
    for (size_t k = l->count++; k > at; k--) {
        memcpy(l->dip[k], l->dip[k - 1], sizeof l->dip[k]);
        l->size[k] = l->size[k - 1];
    }
    memcpy(l->dip[at], parts, size * sizeof *parts);
    l->size[at] = size;
}

static void remove_dip(lists *l, size_t at)
{
    l->count--;
    for (size_t k = at; k < l->count; k++) {
        memcpy(l->dip[k], l->dip[k + 1], sizeof l->dip[k]);
        l->size[k] = l->size[k + 1];
    }
}

static void move_dip(lists *l, size_t dip, size_t to)
{
    size_t parts[PARTS], size = l->size[dip];
    memcpy(parts, l->dip[dip], sizeof parts);
    remove_dip(l, dip);
    insert_dip(l, to, parts, size);
}

static void swap_dips(lists *l, size_t a, size_t b)
{
    lists was = *l;
    memcpy(l->dip[a], was.dip[b], sizeof l->dip[a]);
    memcpy(l->dip[b], was.dip[a], sizeof l->dip[b]);
    l->size[a] = was.size[b];
    l->size[b] = was.size[a];
}

/* The part, and whether its dip is left empty; that stays. */
static size_t take_out(lists *l, size_t dip, size_t part)
{
    size_t taken = l->dip[dip][part];
    l->size[dip]--;
    for (size_t i = part; i < l->size[dip]; i++)
        l->dip[dip][i] = l->dip[dip][i + 1];
    return taken;
}

static void join(lists *l, size_t dip, size_t part, size_t into)
{
    if (dip == into)
        return;
    size_t taken = take_out(l, dip, part);
    l->dip[into][l->size[into]++] = taken;
    if (l->size[dip] == 0)
        remove_dip(l, dip);
}

static void part_alone(lists *l, size_t dip, size_t part, size_t before)
{
    size_t taken = take_out(l, dip, part);
    insert_dip(l, before, &taken, 1);
    size_t was = dip + (before <= dip);
    if (l->size[was] == 0)
        remove_dip(l, was);
}

/* The same dips one after the other, and in each the same parts; in a dip they have no order. */
static void assert_same(const boil_plan_order *o, const lists *l)
{
    assert_int_equal(o->dips_count, l->count);
    assert_int_equal(o->first[0], 0);
    assert_int_equal(o->first[o->dips_count], PARTS);
    for (size_t k = 0; k < l->count; k++) {
        assert_int_equal(boil_plan_order_size(o, k), l->size[k]);
        for (size_t i = 0; i < l->size[k]; i++) {
            size_t found = 0;
            for (size_t j = o->first[k]; j < o->first[k + 1]; j++)
                found += o->parts[j] == l->dip[k][i];
            assert_int_equal(found, 1);
        }
    }
}

/* Parts are named by their number, for places in a dip may differ. */
static size_t place_of(const lists *l, size_t dip, size_t part)
{
    size_t i = 0;
    while (l->dip[dip][i] != part)
        i++;
    return i;
}

static void change(boil_plan_order *o, lists *l, boil_stream *s)
{
    size_t dip = boil_stream_below(s, l->count), to = boil_stream_below(s, l->count);
    size_t part = boil_stream_below(s, l->size[dip]), named = o->parts[o->first[dip] + part];
    switch (boil_stream_below(s, 4)) {
    case 0:
        boil_plan_order_move(o, dip, to);
        move_dip(l, dip, to);
        break;
    case 1:
        boil_plan_order_swap(o, dip, to);
        swap_dips(l, dip, to);
        break;
    case 2:
        boil_plan_order_join(o, dip, part, to);
        join(l, dip, place_of(l, dip, named), to);
        break;
    default:
        to = boil_stream_below(s, l->count + 1);
        boil_plan_order_part(o, dip, part, to);
        part_alone(l, dip, place_of(l, dip, named), to);
        break;
    }
}

static void every_change_is_that_of_lists(void **state)
{
    (void)state;
    boil_plan_order o, copy;
    boil_stream s = boil_stream_begin(1, 0);
    lists l = {.count = 0};
    assert_true(boil_plan_order_begin(&o, PARTS) == BOIL_OK && boil_plan_order_begin(&copy, PARTS) == BOIL_OK);
    for (size_t i = 0; i < PARTS; i++)
        insert_dip(&l, i, &i, 1);
    assert_same(&o, &l);
    for (int i = 0; i < CHANGES; i++) {
        change(&o, &l, &s);
        assert_same(&o, &l);
        boil_plan_order_copy(&o, &copy);
        assert_same(&copy, &l);
    }
    boil_plan_order_free(&o);
    boil_plan_order_free(&copy);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(every_change_is_that_of_lists)};
    return cmocka_run_group_tests_name("order", tests, NULL, NULL);
}
