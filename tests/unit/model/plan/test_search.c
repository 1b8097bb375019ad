/* The search against all orders there are, on lists so small that they can be counted; and that it depends on nothing but its seed. */
#include "support/close.h"
#include "lists.h"
#include "plan/conditions.h"
#include "plan/search.h"
#include "plan/starts.h"

#include <string.h>

enum { SMALL_LISTS = 100, SMALL_JOBS = 5, LARGE_LISTS = 8, TRIES = 3000 };

/* The ordered partitions of the parts, one after the other: a permutation, and behind each part whether its dip ends. */
typedef struct {
    const boil_plan_case *of;
    boil_plan_decoder decoder;
    boil_plan_order order;
    boil_plan_value best;
    size_t tried;
} counting;

static bool allowed(const boil_plan_case *c, const boil_plan_order *o)
{
    for (size_t k = 0; k < o->dips_count; k++)
        for (size_t i = 1; i < boil_plan_order_size(o, k); i++)
            if (!boil_plan_may_share(c, o->parts + o->first[k], i, o->parts[o->first[k] + i]))
                return false;
    return true;
}

/* Within a dip only ascending parts, so that each set comes once. */
static void try_cuts(counting *c)
{
    size_t n = c->of->parts_count;
    for (unsigned cuts = 0; cuts < 1u << (n - 1); cuts++) {
        bool ascending = true;
        c->order.dips_count = 1;
        c->order.first[0] = 0;
        for (size_t i = 1; i < n; i++)
            if (cuts >> (i - 1) & 1)
                c->order.first[c->order.dips_count++] = i;
            else
                ascending = ascending && c->order.parts[i - 1] < c->order.parts[i];
        c->order.first[c->order.dips_count] = n;
        if (!ascending || !allowed(c->of, &c->order))
            continue;
        boil_plan_value v = boil_plan_decode(&c->decoder, &c->order)->value;
        if (c->tried++ == 0 || boil_plan_better(&v, &c->best))
            c->best = v;
    }
}

static void try_all(counting *c, size_t from)
{
    size_t n = c->of->parts_count;
    if (from == n)
        try_cuts(c);
    for (size_t i = from; i < n; i++) {
        size_t kept = c->order.parts[from];
        c->order.parts[from] = c->order.parts[i];
        c->order.parts[i] = kept;
        try_all(c, from + 1);
        c->order.parts[i] = c->order.parts[from];
        c->order.parts[from] = kept;
    }
}

static boil_plan_value sought(const boil_plan_case *c, uint64_t seed, uint64_t chain, boil_plan_order *o)
{
    boil_plan_value v;
    boil_plan_search s = {.seed = seed, .chain = chain, .tries = TRIES};
    boil_plan_start(c, BOIL_PLAN_BY_LIST, false, o);
    assert_int_equal(boil_plan_search_run(c, &s, o, &v), BOIL_OK);
    return v;
}

static size_t conditions_that_fail(const boil_plan_case *c)
{
    boil_plan_condition failed[BOIL_PLAN_CONDITIONS_MAX];
    size_t count;
    assert_int_equal(boil_plan_conditions_failed(c, failed, &count), BOIL_OK);
    return count;
}

static void it_finds_the_best_of_all_orders(void **state)
{
    (void)state;
    size_t best = 0, listed = 0, impossible = 0;
    for (uint64_t seed = 1; seed <= SMALL_LISTS; seed++) {
        static drawn_list l;
        boil_plan_order o;
        draw_list(&l, seed, SMALL_JOBS);
        counting c = {.of = &l.of};
        assert_int_equal(boil_plan_decoder_begin(&c.decoder, &l.of), BOIL_OK);
        assert_int_equal(boil_plan_order_begin(&c.order, l.of.parts_count), BOIL_OK);
        assert_int_equal(boil_plan_order_begin(&o, l.of.parts_count), BOIL_OK);
        boil_plan_value first = boil_plan_decode(&c.decoder, &o)->value;
        try_all(&c, 0);
        boil_plan_value v = sought(&l.of, seed, 0, &o);
        assert_false(boil_plan_better(&v, &c.best)); /* nothing is better than all */
        assert_false(boil_plan_better(&first, &v));  /* nor is it ever worse than the list's own order */
        best += !boil_plan_better(&c.best, &v);
        size_t failing = conditions_that_fail(&l.of);
        assert_false(failing > 0 && boil_plan_holds(&c.best)); /* none of all orders holds where it is said that none can */
        impossible += failing > 0;
        listed += !boil_plan_better(&c.best, &first);
        boil_plan_decoder_free(&c.decoder);
        boil_plan_order_free(&c.order);
        boil_plan_order_free(&o);
    }
    assert_true(best >= 99 && impossible > 0);
    assert_true(listed < 70); /* the lists are worth a search */
}

static void the_same_seed_gives_the_same_order(void **state)
{
    (void)state;
    size_t differ = 0;
    for (uint64_t seed = 1; seed <= LARGE_LISTS; seed++) {
        static drawn_list l;
        boil_plan_order a, b, c;
        draw_list(&l, seed, LIST_JOBS);
        size_t n = l.of.parts_count;
        assert_true(boil_plan_order_begin(&a, n) == BOIL_OK && boil_plan_order_begin(&b, n) == BOIL_OK &&
                    boil_plan_order_begin(&c, n) == BOIL_OK);
        boil_plan_value x = sought(&l.of, seed, 1, &a), y = sought(&l.of, seed, 1, &b);
        sought(&l.of, seed, 2, &c);
        assert_memory_equal(&x, &y, sizeof x);
        assert_int_equal(a.dips_count, b.dips_count);
        assert_memory_equal(a.parts, b.parts, n * sizeof *a.parts);
        differ += memcmp(a.parts, c.parts, n * sizeof *a.parts) != 0;
        boil_plan_order_free(&a);
        boil_plan_order_free(&b);
        boil_plan_order_free(&c);
    }
    assert_true(differ > 0); /* chains are apart */
}

/* A rule moves no job before one that it ranks the same: what a person wrote first stays first. */
static void what_ranks_the_same_stays_in_the_lists_order(void **state)
{
    (void)state;
    static drawn_list l;
    boil_plan_order o;
    boil_stream s = boil_stream_begin(1, 1);
    for (size_t i = 0; i < 4; i++) {
        draw_job(&s, &l.jobs[i], &l.parts[i], i);
        l.jobs[i] = l.jobs[0];
        l.parts[i] = l.parts[0];
        l.parts[i].job = i;
    }
    l.jobs[2].due_s = l.jobs[2].earliest_s = 0; /* before the others by each of these */
    l.jobs[0].due_s = l.jobs[1].due_s = l.jobs[3].due_s = 7200;
    l.jobs[0].earliest_s = l.jobs[1].earliest_s = l.jobs[3].earliest_s = 600;
    l.problem = (boil_plan_problem){.jobs = l.jobs, .jobs_count = 4, .positions = 1};
    l.of = (boil_plan_case){&l.problem, &l.bath, l.parts, 4, NULL};
    static const boil_plan_rule by[] = {BOIL_PLAN_BY_DUE, BOIL_PLAN_BY_EARLIEST_AND_DUE, BOIL_PLAN_BY_EARLIEST_AND_LONGEST};
    assert_int_equal(boil_plan_order_begin(&o, 4), BOIL_OK);
    for (size_t i = 0; i < sizeof by / sizeof by[0]; i++) {
        boil_plan_start(&l.of, by[i], false, &o);
        assert_memory_equal(o.parts, ((const size_t[]){2, 0, 1, 3}), 4 * sizeof *o.parts);
    }
    boil_plan_order_free(&o);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(it_finds_the_best_of_all_orders),
        cmocka_unit_test(the_same_seed_gives_the_same_order),
        cmocka_unit_test(what_ranks_the_same_stays_in_the_lists_order),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
