/* The decoder against a checker that knows nothing of it: every limit of plan/plan.h, asked of the finished timetable alone. */
#include "support/close.h"
#include "lists.h"

enum { LISTS = 10000, SMALL_LISTS = 300 };

#define ROUNDING_S 1e-6

/* Both ends open. */
static bool meet(double a, double b, double from, double to)
{
    return a < to - ROUNDING_S && from < b - ROUNDING_S;
}

static bool in_break(const boil_plan_problem *p, double from, double to)
{
    for (size_t i = 0; i < p->breaks_count; i++)
        if (meet(p->breaks[i].from_s, p->breaks[i].to_s, from, to))
            return true;
    return false;
}

/* The two moves of a dip: in 0, out 1. */
static boil_break move_of(const boil_plan_problem *p, const boil_plan_dip *d, int which)
{
    return which == 0 ? (boil_break){d->enters_s - p->hoist_s, d->enters_s + 10}
                      : (boil_break){d->leaves_s, d->leaves_s + p->hoist_s};
}

static void check_hoist(const boil_plan_problem *p, const boil_plan_timetable *t)
{
    for (size_t i = 0; i < 2 * t->dips_count; i++) {
        boil_break a = move_of(p, &t->dips[i / 2], (int)(i % 2));
        if (t->dips[i / 2].unplaced)
            continue;
        assert_false(in_break(p, a.from_s, a.to_s));
        for (size_t k = 0; k < i; k++) {
            boil_break b = move_of(p, &t->dips[k / 2], (int)(k % 2));
            assert_false(!t->dips[k / 2].unplaced && meet(a.from_s, a.to_s, b.from_s, b.to_s));
        }
    }
}

static void check_places(const boil_plan_problem *p, const boil_plan_timetable *t)
{
    for (size_t i = 0; i < t->dips_count; i++) {
        size_t in = 0;
        for (size_t k = 0; k < t->dips_count; k++)
            in += t->dips[k].enters_s <= t->dips[i].enters_s &&
                  t->dips[i].enters_s < t->dips[k].leaves_s + p->hoist_s - ROUNDING_S;
        assert_true(t->dips[i].unplaced || in <= p->positions);
    }
}

static void check_stays(const boil_plan_case *c, const boil_plan_timetable *t)
{
    for (size_t i = 0; i < t->dips_count; i++) {
        const boil_plan_dip *d = &t->dips[i];
        double stay = d->leaves_s - d->enters_s;
        for (size_t k = 0; k < d->count && !d->unplaced; k++) {
            const boil_plan_part *part = &c->parts[t->parts[d->first + k]];
            const boil_plan_job *j = &c->problem->jobs[part->job];
            assert_true(d->enters_s >= j->earliest_s && d->enters_s >= c->problem->hoist_s);
            assert_true(stay >= part->hot_s + j->least_s - ROUNDING_S);
            assert_true(stay <= part->hot_s + 60 + j->most_s + ROUNDING_S); /* in company it may be hot a minute later */
            assert_true(d->count == 1 || j->may_share);
        }
    }
}

/* (1) of plan/plan.h, over all dips. */
static double recovery_of(const boil_plan_case *c, const boil_plan_timetable *t, size_t i)
{
    double heat = t->dips[i].heat_J;
    for (size_t k = 0; k < i; k++)
        if (t->dips[k].leaves_s > t->dips[i].enters_s)
            heat += t->dips[k].heat_J * exp(-(t->dips[i].enters_s - t->dips[k].enters_s) / t->dips[k].lag_s);
    return fmax(0, c->bath->offset_s + heat / c->bath->quiet_W);
}

static void check_boil(const boil_plan_case *c, const boil_plan_timetable *t)
{
    const double forgotten_s = 1000 / c->bath->quiet_W * (double)t->dips_count;
    for (size_t i = 0; i < t->dips_count; i++) {
        const boil_plan_dip *d = &t->dips[i];
        double r = recovery_of(c, t, i);
        assert_close(d->recovery_s, r, 0, forgotten_s);
        assert_close(d->back_s, d->enters_s + d->recovery_s, 0, ROUNDING_S);
        if (d->unplaced)
            continue;
        assert_true(d->too_cold || r <= 0.97 * c->bath->limit_s + forgotten_s);
        assert_false(in_break(c->problem, d->enters_s, d->back_s));
        assert_true(i == 0 || d->enters_s >= t->dips[i - 1].back_s + fmax(30, c->problem->settle_s) - ROUNDING_S);
    }
}

/* The gap in which it pours: a dip's number, or that behind the last. */
static size_t gap_of_pour(const boil_plan_timetable *t, const boil_plan_pour *w)
{
    size_t k = 0;
    while (k < t->dips_count && t->dips[k].enters_s < w->start_s)
        k++;
    return k;
}

static void check_pours(const boil_plan_case *c, const boil_plan_timetable *t)
{
    for (size_t i = 0; i < t->pours_count; i++) {
        const boil_plan_pour *w = &t->pours[i];
        size_t k = gap_of_pour(t, w);
        double end = w->start_s + w->over_s;
        assert_true(w->mass_kg > 0 && w->mass_kg <= c->bath->flow_kg_s * w->over_s * (1 + 1e-9));
        assert_true(w->start_s >= (k > 0 ? t->dips[k - 1].back_s : 0) + c->bath->steady_s - ROUNDING_S);
        assert_true(k == t->dips_count || end <= t->dips[k].enters_s - c->bath->guard_s + ROUNDING_S);
        assert_false(in_break(c->problem, w->start_s, end));
        bool cut = i > 0 && k == t->dips_count && in_break(c->problem, w[-1].start_s + w[-1].over_s, w->start_s);
        assert_true(i == 0 || gap_of_pour(t, w - 1) < k || cut); /* only what restores the bath may go on behind a break */
    }
}

/* Salts: between boil and load as water is, the water before them at rest, never more than was carried out by then nor less
   than is worth it, and no faster than they may be. */
static void check_salts(const boil_plan_case *c, const boil_plan_timetable *t)
{
    const double rest_s = 120, spare_kg = 1e-9;
    double given = 0, gone = 0;
    for (size_t i = 0; i < t->salts_count; i++) {
        const boil_plan_pour *s = &t->salts[i];
        size_t k = gap_of_pour(t, s);
        double end = s->start_s + s->over_s;
        gone = 0;
        for (size_t d = 0; d < t->dips_count; d++)
            gone += t->dips[d].leaves_s <= end ? t->dips[d].drag_kg : 0;
        assert_true(gone - given > c->bath->owes_kg);
        given += s->mass_kg;
        assert_true(s->mass_kg >= c->bath->owes_kg / 2 && s->mass_kg <= c->bath->sift_kg_s * s->over_s * (1 + 1e-9));
        assert_true(s->over_s >= 60 && given <= gone + spare_kg);
        assert_true(s->start_s >= (k > 0 ? t->dips[k - 1].back_s : 0) + c->bath->steady_s - ROUNDING_S);
        assert_true(k == t->dips_count || end <= t->dips[k].enters_s - c->bath->guard_s + ROUNDING_S);
        assert_false(in_break(c->problem, s->start_s, end));
        for (size_t w = 0; w < t->pours_count; w++)
            assert_true(gap_of_pour(t, &t->pours[w]) != k || t->pours[w].start_s + t->pours[w].over_s <= s->start_s - rest_s);
    }
    gone = 0;
    for (size_t d = 0; d < t->dips_count; d++)
        gone += t->dips[d].drag_kg;
    bool asks = c->bath->sift_kg_s > 0 && (c->bath->valve || c->bath->flow_kg_s > 0) && gone - given > c->bath->owes_kg;
    assert_close(t->owed_kg, asks ? gone - given : 0, 0, spare_kg);
}

/* Water missing at t, by what went off, what salts take and what was poured until then. */
static double missing_at(const boil_plan_case *c, const boil_plan_timetable *t, double at)
{
    double boiling = at, quiet = 0, poured = 0;
    for (size_t i = 0; i < t->dips_count; i++)
        quiet += fmax(0, fmin(at, t->dips[i].back_s) - fmin(at, t->dips[i].enters_s));
    for (size_t i = 0; i < t->pours_count; i++)
        poured += t->pours[i].mass_kg * fmax(0, fmin(1, (at - t->pours[i].start_s) / t->pours[i].over_s));
    for (size_t i = 0; i < t->salts_count; i++)
        poured -= t->salts[i].start_s < at ? t->salts[i].mass_kg * (1 / c->bath->salt_fraction - 1) : 0;
    boiling -= quiet;
    return c->bath->boils_off_kg_s * boiling + c->bath->dries_kg_s * quiet - poured;
}

/* What may be too much behind a pour: the water of the salts that come next, as far as the band bears it. */
static double ahead_of(const boil_plan_case *c, const boil_plan_timetable *t, size_t pour)
{
    double end = t->pours[pour].start_s + t->pours[pour].over_s, next = HUGE_VAL, with = 0;
    for (size_t i = 0; i < t->salts_count; i++)
        if (t->salts[i].start_s > end && t->salts[i].start_s < next) {
            next = t->salts[i].start_s;
            with = t->salts[i].mass_kg * (1 / c->bath->salt_fraction - 1);
        }
    return fmin(with, c->bath->weakest_kg);
}

static void check_band(const boil_plan_case *c, const boil_plan_timetable *t)
{
    const double spare_kg = 1e-6;
    bool marked = c->bath->valve;
    for (size_t i = 0; i < t->dips_count; i++) {
        marked = marked || t->dips[i].too_strong || t->dips[i].unplaced;
        assert_true(marked || missing_at(c, t, t->dips[i].enters_s) <= c->bath->strongest_kg + spare_kg);
        assert_true(marked || missing_at(c, t, t->dips[i].back_s) <= c->bath->strongest_kg + spare_kg);
    }
    for (size_t i = 0; i < t->pours_count && !marked; i++)
        assert_true(missing_at(c, t, t->pours[i].start_s + t->pours[i].over_s) >= -ahead_of(c, t, i) - spare_kg);
}

/* By the end of a shift that has one, or once all is out where that comes later, somebody has poured what was poured; and what
   is missing then is told. */
static void check_end(const boil_plan_case *c, const boil_plan_timetable *t)
{
    const double spare_kg = 1e-6;
    double close_s = c->problem->end_s;
    for (size_t i = 0; i < t->dips_count; i++)
        close_s = fmax(close_s, t->dips[i].leaves_s);
    for (size_t i = 0; i < t->pours_count && isfinite(close_s); i++)
        assert_true(t->pours[i].start_s + t->pours[i].over_s <= close_s + ROUNDING_S);
    if (isfinite(close_s) && t->left_kg > 60 * c->bath->flow_kg_s && c->bath->flow_kg_s > c->bath->boils_off_kg_s &&
        !c->bath->valve &&
        !(t->pours_count > 0 && t->pours[t->pours_count - 1].over_s >= 3599)) /* nobody pours longer at the end */
        assert_close(t->left_kg, fmax(0, missing_at(c, t, close_s)), 0, spare_kg);
}

static void check_value(const boil_plan_case *c, const boil_plan_timetable *t)
{
    double over = 0, last = 0;
    for (size_t i = 0; i < t->dips_count; i++) {
        const boil_plan_dip *d = &t->dips[i];
        last = fmax(last, d->leaves_s);
        over += fmax(0, d->leaves_s - c->problem->end_s);
        for (size_t k = 0; k < d->count; k++) {
            const boil_plan_job *j = &c->problem->jobs[c->parts[t->parts[d->first + k]].job];
            over += j->priority == BOIL_PLAN_MUST ? fmax(0, d->leaves_s - j->due_s) : 0;
        }
    }
    assert_close(t->value.of[BOIL_PLAN_LAST_OUT_S], last, 0, 0.5 + ROUNDING_S);
    assert_true(boil_plan_holds(&t->value) ? over <= ROUNDING_S : true);
    assert_close(t->value.of[BOIL_PLAN_OVERDUE_S], over, 0, 1);
}

static void check_parts(const boil_plan_case *c, const boil_plan_timetable *t)
{
    size_t seen[LIST_JOBS] = {0}, count = 0;
    for (size_t i = 0; i < t->dips_count; i++)
        for (size_t k = 0; k < t->dips[i].count; k++, count++)
            seen[t->parts[t->dips[i].first + k]]++;
    assert_int_equal(count, c->parts_count);
    for (size_t i = 0; i < c->parts_count; i++)
        assert_int_equal(seen[i], 1);
}

static void no_limit_is_broken_unmarked(void **state)
{
    (void)state;
    size_t placed = 0, dips = 0, shared = 0, poured = 0, held = 0, between = 0, last = 0;
    for (uint64_t seed = 1; seed <= LISTS; seed++) {
        static drawn_list l;
        boil_plan_order o;
        boil_plan_decoder d;
        boil_stream s = boil_stream_begin(seed, 5);
        draw_list(&l, seed, LIST_JOBS);
        assert_int_equal(boil_plan_order_begin(&o, l.of.parts_count), BOIL_OK);
        assert_int_equal(boil_plan_decoder_begin(&d, &l.of), BOIL_OK);
        draw_order(&s, &l.of, &o);
        const boil_plan_timetable *t = boil_plan_decode(&d, &o);
        check_parts(&l.of, t);
        check_hoist(&l.problem, t);
        check_places(&l.problem, t);
        check_stays(&l.of, t);
        check_boil(&l.of, t);
        check_pours(&l.of, t);
        check_salts(&l.of, t);
        check_band(&l.of, t);
        check_end(&l.of, t);
        check_value(&l.of, t);
        for (size_t i = 0; i < t->dips_count; i++)
            placed += !t->dips[i].unplaced;
        dips += t->dips_count;
        shared += l.of.parts_count - t->dips_count;
        poured += t->pours_count;
        for (size_t i = 0; i < t->salts_count; i++)
            *(gap_of_pour(t, &t->salts[i]) < t->dips_count ? &between : &last) += 1;
        held += boil_plan_holds(&t->value);
        boil_plan_decoder_free(&d);
        boil_plan_order_free(&o);
    }
    assert_true(placed > 0.95 * (double)dips && shared > LISTS / 2 && poured > LISTS && held > LISTS / 10);
    print_message("salts %zu times between dips, %zu times behind the last\n", between, last);
    assert_true(between > LISTS / 20 && last > LISTS / 20);
}

/* Whether the dip k, alone in its basket, could have gone in at `enters`, given those before it: by looking at every second. */
static bool could_enter(const boil_plan_case *c, boil_plan_timetable *t, size_t k, double enters)
{
    const boil_plan_problem *p = c->problem;
    const boil_plan_part *part = &c->parts[t->parts[t->dips[k].first]];
    const boil_plan_job *j = &p->jobs[part->job];
    boil_plan_dip kept = t->dips[k];
    size_t in = 0;
    t->dips[k].enters_s = enters;
    double r = recovery_of(c, t, k);
    bool good = r <= 0.97 * c->bath->limit_s && !in_break(p, enters, enters + r), lifted = false;
    t->dips[k] = kept;
    if (!good || in_break(p, enters - p->hoist_s, enters + 10))
        return false;
    for (size_t i = 0; i < 2 * k; i++) {
        boil_break m = move_of(p, &t->dips[i / 2], (int)(i % 2));
        in += i % 2 == 0 && t->dips[i / 2].leaves_s + p->hoist_s > enters;
        good = good && !meet(m.from_s, m.to_s, enters - p->hoist_s, enters + 10);
    }
    for (double out = ceil(enters + part->hot_s + j->least_s); out <= enters + part->hot_s + j->most_s && !lifted; out++) {
        lifted = !in_break(p, out, out + p->hoist_s);
        for (size_t i = 0; i < 2 * k && lifted; i++) {
            boil_break m = move_of(p, &t->dips[i / 2], (int)(i % 2));
            lifted = !meet(m.from_s, m.to_s, out, out + p->hoist_s);
        }
    }
    return good && lifted && in < p->positions;
}

/* Each dip of an order goes in at the first moment that its limits leave: no second before would have done. */
static void no_dip_could_go_in_earlier(void **state)
{
    (void)state;
    size_t waited = 0;
    for (uint64_t seed = 1; seed <= SMALL_LISTS; seed++) {
        static drawn_list l;
        boil_plan_order o;
        boil_plan_decoder d;
        draw_list(&l, seed, LIST_JOBS);
        l.bath.valve = true;
        assert_int_equal(boil_plan_order_begin(&o, l.of.parts_count), BOIL_OK);
        assert_int_equal(boil_plan_decoder_begin(&d, &l.of), BOIL_OK);
        boil_plan_decode(&d, &o);
        for (size_t k = 1; k < d.table.dips_count; k++) {
            const boil_plan_dip *dip = &d.table.dips[k], *before = dip - 1;
            double from = fmax(before->back_s + fmax(30, l.problem.settle_s), before->enters_s + 2 * l.problem.hoist_s);
            from = fmax(from, l.jobs[l.parts[d.table.parts[dip->first]].job].earliest_s);
            for (double at = ceil(from); at < dip->enters_s - 1 - ROUNDING_S && !dip->unplaced && !dip->too_cold;
                 at++, waited++)
                assert_false(could_enter(&l.of, &d.table, k, at));
        }
        boil_plan_decoder_free(&d);
        boil_plan_order_free(&o);
    }
    assert_true(waited > 1000 * SMALL_LISTS);
}

/* A decoder that goes on from what it knows and one that begins anew agree to the last bit. */
static void going_on_is_beginning_anew(void **state)
{
    (void)state;
    for (uint64_t seed = 1; seed <= SMALL_LISTS; seed++) {
        static drawn_list l;
        boil_plan_order o;
        boil_plan_decoder kept;
        boil_stream s = boil_stream_begin(seed, 9);
        draw_list(&l, seed, LIST_JOBS);
        double lifted_s = floor(stream_evenly(&s, 0, 3000));
        const boil_plan_hanging_dip lifts[] = {{lifted_s, 1}, {lifted_s + l.problem.hoist_s, 2}};
        l.problem.hanging = lifts;
        l.problem.hanging_count = l.problem.positions < 2 ? 1 : seed % 3;
        assert_int_equal(boil_plan_order_begin(&o, l.of.parts_count), BOIL_OK);
        assert_int_equal(boil_plan_decoder_begin(&kept, &l.of), BOIL_OK);
        for (int i = 0; i < 10; i++) {
            boil_plan_decoder anew;
            boil_plan_order_move(&o, boil_stream_below(&s, o.dips_count), boil_stream_below(&s, o.dips_count));
            if (i % 3 == 0)
                draw_order(&s, &l.of, &o);
            assert_int_equal(boil_plan_decoder_begin(&anew, &l.of), BOIL_OK);
            const boil_plan_timetable *x = boil_plan_decode(&kept, &o), *y = boil_plan_decode(&anew, &o);
            assert_int_equal(x->dips_count, y->dips_count);
            assert_memory_equal(x->value.of, y->value.of, sizeof x->value.of);
            for (size_t k = 0; k < x->dips_count; k++)
                assert_true(x->dips[k].enters_s == y->dips[k].enters_s && x->dips[k].leaves_s == y->dips[k].leaves_s &&
                            x->dips[k].back_s == y->dips[k].back_s && x->dips[k].missing_kg == y->dips[k].missing_kg &&
                            x->dips[k].salts.start_s == y->dips[k].salts.start_s);
            boil_plan_decoder_free(&anew);
        }
        boil_plan_decoder_free(&kept);
        boil_plan_order_free(&o);
    }
}

/* Two plates into a bath that boils: a quarter of an hour each, whose moves and boils are told by hand. */
typedef struct {
    boil_plan_job jobs[2];
    boil_plan_part parts[2];
    boil_plan_problem problem;
    boil_plan_bath bath;
    boil_plan_case of;
} two_dips;

static void set_up_two(two_dips *l)
{
    *l = (two_dips){.problem = {l->jobs, 2, .positions = 2, .hoist_s = 60, .settle_s = 20, .end_s = HUGE_VAL}};
    for (size_t i = 0; i < 2; i++) {
        l->jobs[i] = (boil_plan_job){.load = {.mass_kg = 20}, .least_s = 300, .most_s = 400, .due_s = HUGE_VAL};
        l->parts[i] = (boil_plan_part){.job = i, .of = 1, .load = {.mass_kg = 20}, .heat_J = 4e6, .lag_s = 200, .hot_s = 600};
    }
    l->bath = (boil_plan_bath){
        .limit_s = 1000, .quiet_W = 40e3, .most_kg = 60, .strongest_kg = 50, .valve = true, .fire_W = 1e5, .efficiency = 1};
    l->of = (boil_plan_case){&l->problem, &l->bath, l->parts, 2, NULL};
}

static boil_plan_dip second_of(const two_dips *l)
{
    boil_plan_order o;
    boil_plan_decoder d;
    assert_int_equal(boil_plan_order_begin(&o, 2), BOIL_OK);
    assert_int_equal(boil_plan_decoder_begin(&d, &l->of), BOIL_OK);
    boil_plan_dip dip = boil_plan_decode(&d, &o)->dips[1];
    boil_plan_decoder_free(&d);
    boil_plan_order_free(&o);
    return dip;
}

static void expect_second(const two_dips *l, double enters_s, boil_plan_reason reason)
{
    boil_plan_dip dip = second_of(l);
    assert_false(dip.unplaced);
    assert_close(dip.enters_s, enters_s, 0, 1e-9);
    assert_int_equal(dip.reason, reason);
}

/* The first goes in at 60 s, after one move. Its boil is back 100 s later and settles for 20; the hoist lets go and comes again in
   120. What holds longest is named, and of two that hold as long the first of these: boil, hoist, earliest. */
static void what_holds_a_dip_is_named(void **state)
{
    (void)state;
    two_dips l;
    set_up_two(&l);
    expect_second(&l, 180, BOIL_PLAN_BOIL);
    l.jobs[1].earliest_s = 180;
    expect_second(&l, 180, BOIL_PLAN_BOIL);
    l.jobs[1].earliest_s = 181;
    expect_second(&l, 181, BOIL_PLAN_EARLIEST);
    l.bath.steady_s = 30; /* the bath's own is longer than the shop's */
    expect_second(&l, 190, BOIL_PLAN_BOIL);
    l.parts[0].heat_J = 3.2e6;
    expect_second(&l, 181, BOIL_PLAN_EARLIEST);
    l.jobs[1].earliest_s = 180;
    expect_second(&l, 180, BOIL_PLAN_HOIST);
}

/* By one position, by a break over its move, and by a break over its lift. */
static void places_and_breaks_hold_a_dip(void **state)
{
    (void)state;
    two_dips l;
    boil_break away = {150, 300};
    set_up_two(&l);
    l.problem.positions = 1;
    expect_second(&l, 60 + 900 + 60 + 60, BOIL_PLAN_PLACE);
    l.problem.positions = 2;
    l.problem.breaks = &away;
    l.problem.breaks_count = 1;
    l.parts[0].heat_J = 0.8e6; /* back before people leave */
    expect_second(&l, 300 + 60, BOIL_PLAN_BREAK);
    away = (boil_break){1050, 1300}; /* it hangs 1000 s at most */
    expect_second(&l, 300, BOIL_PLAN_STAY);
}

/* What hangs there must leave room for what comes: heat that never goes into it is waited for until it is lifted, unless it is less
   than a kilojoule. */
static void what_still_warms_holds_a_dip(void **state)
{
    (void)state;
    two_dips l;
    set_up_two(&l);
    l.parts[0].heat_J = 1000;
    l.parts[0].lag_s = 1e30;
    l.parts[1].heat_J = 40e3 * 0.97 * 1000;
    expect_second(&l, 60 + 900 + 60 + 60, BOIL_PLAN_HOIST); /* which lifts the one and fetches the other */
    l.parts[0].heat_J = 999;
    expect_second(&l, 180, BOIL_PLAN_HOIST);
}

/* Nobody may go in before 2000 s: 20.5 kg have boiled off as the second is in, back after 100 s and out after 900. From then on
   0.01 kg/s more is poured than boils off, which in 770 s does not bring all of it back: where the shift ends there, some is
   poured before. */
static void what_the_end_leaves_no_time_for_is_poured_before(void **state)
{
    (void)state;
    two_dips l;
    boil_plan_order o;
    boil_plan_decoder d;
    set_up_two(&l);
    l.jobs[1].earliest_s = 2000;
    l.bath.valve = false;
    l.bath.boils_off_kg_s = 0.01;
    l.bath.flow_kg_s = 0.02;
    l.bath.steady_s = 30;
    assert_int_equal(boil_plan_order_begin(&o, 2), BOIL_OK);
    for (int closed = 0; closed < 2; closed++) {
        l.problem.end_s = closed ? 2900 : HUGE_VAL;
        assert_int_equal(boil_plan_decoder_begin(&d, &l.of), BOIL_OK);
        const boil_plan_timetable *t = boil_plan_decode(&d, &o);
        const boil_plan_pour *last = &t->pours[t->pours_count - 1];
        assert_int_equal(t->pours_count, 1 + closed);
        assert_int_equal(last->start_s + last->over_s > 2900, !closed);
        assert_close(t->left_kg, 0, 0, 1e-9);
        boil_plan_decoder_free(&d);
    }
    l.jobs[1].earliest_s = 0; /* no window before: what is left then is told, that which boils off */
    l.problem.end_s = 1130;
    l.bath.flow_kg_s = 0.0105;
    assert_int_equal(boil_plan_decoder_begin(&d, &l.of), BOIL_OK);
    const boil_plan_timetable *t = boil_plan_decode(&d, &o);
    assert_true(t->left_kg > 0.3);
    assert_close(t->left_kg, missing_at(&l.of, t, 1130), 0, 1e-9);
    boil_plan_decoder_free(&d);
    boil_plan_order_free(&o);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(no_limit_is_broken_unmarked),
        cmocka_unit_test(no_dip_could_go_in_earlier),
        cmocka_unit_test(going_on_is_beginning_anew),
        cmocka_unit_test(what_holds_a_dip_is_named),
        cmocka_unit_test(places_and_breaks_hold_a_dip),
        cmocka_unit_test(what_still_warms_holds_a_dip),
        cmocka_unit_test(what_the_end_leaves_no_time_for_is_poured_before),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
