/* Lists of jobs drawn by a number, on baths of bare numbers: no physics. */
#ifndef TESTS_PLAN_LISTS_H
#define TESTS_PLAN_LISTS_H

#include <math.h>

#include "plan/decoder.h"
#include "plan/parts.h"
#include "random/stream.h"

enum { LIST_JOBS = 12, LIST_BREAKS = 3 };

typedef struct {
    boil_plan_job jobs[LIST_JOBS];
    boil_break breaks[LIST_BREAKS];
    boil_plan_problem problem;
    boil_plan_bath bath;
    boil_plan_part parts[LIST_JOBS];
    boil_plan_case of;
} drawn_list;

static inline void draw_job(boil_stream *s, boil_plan_job *j, boil_plan_part *p, size_t number)
{
    double least_s = stream_evenly(s, 300, 1800);
    *j = (boil_plan_job){.load = boil_load_default(),
                         .least_s = least_s,
                         .most_s = least_s + stream_evenly(s, 60, 1200),
                         .earliest_s = boil_stream_below(s, 2) == 0 ? 0 : floor(stream_evenly(s, 0, 7200)),
                         .due_s = boil_stream_below(s, 3) > 0 ? HUGE_VAL : floor(stream_evenly(s, 1800, 14400)),
                         .priority = (boil_plan_priority)boil_stream_below(s, 3),
                         .may_share = boil_stream_below(s, 3) > 0};
    j->load.mass_kg = stream_evenly(s, 5, 60);
    j->load.size_m = stream_evenly(s, 0.001, 0.04);
    *p = (boil_plan_part){.job = number, .of = 1, .load = j->load};
    boil_plan_part_estimate(p, 414);
}

/* What parts carry out, in two lists of three: by numbers of its own, so that all else is as without. */
static inline void draw_salts(drawn_list *l, uint64_t seed)
{
    boil_stream s = boil_stream_begin(seed, 78);
    l->bath.salt_fraction = stream_evenly(&s, 0.4, 0.7);
    l->bath.owes_kg = stream_evenly(&s, 2, 12);
    l->bath.weakest_kg = stream_evenly(&s, 0, 20);
    l->bath.sift_kg_s = boil_stream_below(&s, 3) == 0 ? 0 : stream_evenly(&s, 0.01, 0.1);
    for (size_t i = 0; i < l->of.parts_count; i++)
        l->parts[i].drag_kg = stream_evenly(&s, 0, 5);
}

static inline void draw_list(drawn_list *l, uint64_t seed, size_t most_jobs)
{
    boil_stream s = boil_stream_begin(seed, 77);
    size_t jobs = 1 + boil_stream_below(&s, most_jobs), breaks = boil_stream_below(&s, LIST_BREAKS + 1);
    for (size_t i = 0; i < jobs; i++)
        draw_job(&s, &l->jobs[i], &l->parts[i], i);
    for (size_t i = 0; i < breaks; i++) {
        double from = 3600 * (1 + 2 * (double)i) + floor(stream_evenly(&s, 0, 3000));
        l->breaks[i] = (boil_break){from, from + floor(stream_evenly(&s, 300, 3600))};
    }
    l->problem = (boil_plan_problem){.jobs = l->jobs, .jobs_count = jobs, .positions = 1 + boil_stream_below(&s, 4)};
    l->problem.hoist_s = floor(stream_evenly(&s, 15, 120));
    l->problem.settle_s = floor(stream_evenly(&s, 0, 120));
    l->problem.end_s = boil_stream_below(&s, 2) == 0 ? HUGE_VAL : floor(stream_evenly(&s, 3600, 36000));
    l->problem.breaks = l->breaks;
    l->problem.breaks_count = breaks;
    l->bath = (boil_plan_bath){.limit_s = stream_evenly(&s, 90, 240),
                               .quiet_W = stream_evenly(&s, 15000, 50000),
                               .offset_s = stream_evenly(&s, -8, 0)};
    l->bath.most_kg = stream_evenly(&s, 40, 70);
    l->bath.steady_s = 30;
    l->bath.guard_s = stream_evenly(&s, 30, 150);
    l->bath.flow_kg_s = boil_stream_below(&s, 4) == 0 ? 0 : stream_evenly(&s, 0.02, 0.1);
    l->bath.boils_off_kg_s = stream_evenly(&s, 0.005, 0.03);
    l->bath.dries_kg_s = l->bath.boils_off_kg_s / 2;
    l->bath.strongest_kg = stream_evenly(&s, 30, 120);
    l->bath.valve = boil_stream_below(&s, 5) == 0;
    l->bath.efficiency = 1;
    l->bath.fire_W = 1e5;
    l->of = (boil_plan_case){&l->problem, &l->bath, l->parts, jobs, NULL};
    draw_salts(l, seed);
}

/* Dips put into any order, and some of them together where they may be. */
static inline void draw_order(boil_stream *s, const boil_plan_case *c, boil_plan_order *o)
{
    for (size_t i = 0; i < 3 * c->parts_count; i++) {
        size_t a = boil_stream_below(s, o->dips_count), b = boil_stream_below(s, o->dips_count);
        boil_plan_order_move(o, a, b);
        a = boil_stream_below(s, o->dips_count);
        b = boil_stream_below(s, o->dips_count);
        const size_t *in = o->parts + o->first[b];
        if (a != b && boil_plan_may_share(c, in, boil_plan_order_size(o, b), o->parts[o->first[a]]))
            boil_plan_order_join(o, a, 0, b);
    }
}

#endif
