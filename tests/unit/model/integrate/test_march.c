/* From event to event: errors against exact solutions, events where they are known to be, a copy that goes on as the original, and
   the cubic between two steps. */
#include <math.h>
#include <string.h>

#include "support/close.h"

#include "integrate/march.h"

enum { LAGS = 3, FIRST = 2, UNKNOWNS = FIRST + LAGS + 1 };

/* A circle, c = cos t and s = sin t; lags, each of which follows the one before it, the first the cosine; and a sum: it gathers the
   last. Exactly, in its cycle, a first lag is cos(t - d)/sqrt(1 + lag^2), d = atan(lag), and so on. */
typedef struct {
    double lag_s[LAGS];
    double level; /* of the guard: the first lag - level */
    size_t looks;
    double refused_from; /* the rates are not told from this time on */
} lags;

static boil_outcome follow(double t, const double y[], double dydt[], void *context)
{
    lags *l = context;
    l->looks++;
    if (t >= l->refused_from)
        return BOIL_OUT_OF_RANGE;
    dydt[0] = -y[1];
    dydt[1] = y[0];
    for (int i = 0; i < LAGS; i++)
        dydt[FIRST + i] = (y[i > 0 ? FIRST + i - 1 : 0] - y[FIRST + i]) / l->lag_s[i];
    dydt[UNKNOWNS - 1] = y[FIRST + LAGS - 1];
    return BOIL_OK;
}

static void above(double t, const double y[], double g[], void *context)
{
    (void)t;
    g[0] = y[FIRST] - ((lags *)context)->level;
}

static const double sizes[UNKNOWNS] = {1, 1, 1, 1, 1, 1};

static boil_march_problem problem(lags *l, double tolerance)
{
    return (boil_march_problem){.system = {.unknowns = UNKNOWNS,
                                           .rates = follow,
                                           .context = l,
                                           .size = sizes,
                                           .sums_first = UNKNOWNS - 1,
                                           .sums_end = UNKNOWNS,
                                           .leads = FIRST + LAGS,
                                           .lead = {0, 1, 2, 3, 4},
                                           .blocks_first = UNKNOWNS},
                                .guards = 1,
                                .guard = above,
                                .tolerance = tolerance,
                                .step_max_s = 1200};
}

/* When the start is forgotten. The sum is left alone. */
static void in_cycle(const lags *l, double t, double y[])
{
    double share = 1, late = 0;
    y[0] = cos(t);
    y[1] = sin(t);
    for (int i = 0; i < LAGS; i++) {
        share /= sqrt(1 + l->lag_s[i] * l->lag_s[i]);
        late += atan(l->lag_s[i]);
        y[FIRST + i] = share * cos(t - late);
    }
}

static boil_march *begin(lags *l, double tolerance, bool plain, double y[])
{
    boil_march *m = boil_march_create();
    assert_non_null(m);
    boil_march_problem p = problem(l, tolerance);
    p.plain = plain;
    in_cycle(l, 0, y);
    y[UNKNOWNS - 1] = 0;
    assert_int_equal(boil_march_begin(m, &p, 0, y), BOIL_OK);
    return m;
}

static double worst_after(lags *l, double tolerance, bool plain, double end)
{
    double y[UNKNOWNS], exact[UNKNOWNS], t = 0, off = 0;
    size_t guard;
    boil_march *m = begin(l, tolerance, plain, y);
    boil_march_news news;
    while ((news = boil_march_step(m, &t, y, end, &guard)) == BOIL_MARCH_STEPPED)
        ;
    assert_int_equal(news, BOIL_MARCH_ARRIVED);
    assert_true(t == end);
    in_cycle(l, end, exact);
    for (int i = 0; i < UNKNOWNS - 1; i++)
        off = fmax(off, fabs(y[i] - exact[i]));
    boil_march_free(m);
    return off;
}

static const lags slow = {{1, 0.5, 2}, 10, 0, HUGE_VAL};

/* The circle forgets no error. What a step tells is that of the lower order of the pair, and only in the limit more than its own: up to
   six times as much is let pass, of six looks a step. */
static void error_falls_with_the_tolerance(void **state)
{
    (void)state;
    for (int plain = 0; plain < 2; plain++) {
        double before = 1;
        for (double tolerance = 1e-4; tolerance > 5e-11; tolerance /= 100) {
            lags l = slow;
            double off = worst_after(&l, tolerance, plain == 1, 50);
            print_message("%s, tolerance %.0e: off by %.1e, %zu looks\n", plain == 1 ? "plain" : "implicit", tolerance, off,
                          l.looks);
            assert_true(off < (double)l.looks * tolerance && off < before / 10);
            before = off;
        }
    }
}

/* A lag of a thousandth of a second: explicit steps are held to 0.003 s, the implicit ones are not. */
static void steps_are_as_long_as_the_solution_allows(void **state)
{
    (void)state;
    lags quick = {{1e-3, 1, 2}, 10, 0, HUGE_VAL}, plain = quick;
    double off = worst_after(&quick, 1e-5, false, 50), off_plain = worst_after(&plain, 1e-5, true, 50);
    print_message("stiff: %zu looks, off by %.1e; explicit %zu, %.1e\n", quick.looks, off, plain.looks, off_plain);
    assert_true(off < (double)quick.looks * 1e-5 && off_plain < 50 * 1e-5);
    assert_true(quick.looks < plain.looks / 5);
}

/* The first lag is cos(t - atan 1)/sqrt 2, and rises through `level` at t = 2 pi k + pi/4 - acos(level sqrt 2). */
static void events_are_where_they_are(void **state)
{
    (void)state;
    lags l = slow;
    l.level = 0.3;
    double y[UNKNOWNS], t = 0;
    size_t guard = 9;
    boil_march *m = begin(&l, 1e-9, false, y);
    for (int k = 1; k < 6; k++) {
        boil_march_news news;
        while ((news = boil_march_step(m, &t, y, 100, &guard)) == BOIL_MARCH_STEPPED)
            ;
        assert_int_equal(news, BOIL_MARCH_EVENT);
        assert_int_equal(guard, 0);
        assert_true(y[FIRST] >= l.level);
        double rises = 2 * k * acos(-1) + acos(-1) / 4 - acos(0.3 * sqrt(2));
        print_message("event %d: off by %.1e s\n", k, t - rises);
        assert_close(t, rises, 0, 2e-6);
        boil_march_problem p = problem(&l, 1e-9);
        assert_int_equal(boil_march_begin(m, &p, t, y), BOIL_OK);
    }
    boil_march_free(m);
}

/* As near before its level as the problem has it the guard may be taken to have risen: it is told there or later, in fewer looks. */
static void a_guard_may_be_told_a_little_short(void **state)
{
    (void)state;
    const double nears[] = {0, 1e-2};
    size_t looks[2];
    for (int i = 0; i < 2; i++) {
        lags l = slow;
        l.level = 0.3;
        double y[UNKNOWNS], t = 0, most = 0;
        size_t guard = 9;
        in_cycle(&l, t, y);
        y[UNKNOWNS - 1] = 0;
        boil_march_problem p = problem(&l, 1e-4);
        p.near[0] = nears[i];
        boil_march *m = boil_march_create();
        for (int k = 1; k < 6; k++) {
            boil_march_news news;
            assert_int_equal(boil_march_begin(m, &p, t, y), BOIL_OK);
            while ((news = boil_march_step(m, &t, y, 100, &guard)) == BOIL_MARCH_STEPPED)
                ;
            assert_int_equal(news, BOIL_MARCH_EVENT);
            assert_true(y[FIRST] >= l.level - nears[i]);
            most = fmax(most, fabs(t - (2 * k * acos(-1) + acos(-1) / 4 - acos(0.3 * sqrt(2)))));
            t += 0.5; /* past it: the next is the next one */
            in_cycle(&l, t, y);
        }
        looks[i] = boil_march_evaluations(m);
        print_message("up to %g short: %zu looks, %.1e s\n", nears[i], looks[i], most);
        assert_true(most < 2e-3 + 2 * nears[i]);
        boil_march_free(m);
    }
    assert_true(looks[1] < looks[0]);
}

/* A hump of time alone, which rates and state do not see: y' = 0 lets steps grow to 1200 s. */
static boil_outcome still(double t, const double y[], double dydt[], void *context)
{
    (void)t;
    (void)y;
    (void)context;
    dydt[0] = 0;
    return BOIL_OK;
}

/* Above zero for the 400 s from 5000 s on. */
static void hump(double t, const double y[], double g[], void *context)
{
    (void)y;
    (void)context;
    g[0] = 200 - fabs(t - 5200);
}

/* What does not move, by steps of so much: the guard is found where it rises. */
static void assert_seen(void (*guard)(double t, const double y[], double g[], void *context), double step_max_s, double at_s)
{
    double y[1] = {1}, t = 0;
    size_t which = 9;
    boil_march *m = boil_march_create();
    const boil_march_problem p = {
        .system = {.unknowns = 1, .rates = still, .size = sizes, .sums_first = 1, .sums_end = 1, .blocks_first = 1},
        .guards = 1,
        .guard = guard,
        .tolerance = 1e-6,
        .step_max_s = step_max_s};
    assert_int_equal(boil_march_begin(m, &p, t, y), BOIL_OK);
    boil_march_news news;
    while ((news = boil_march_step(m, &t, y, 4 * at_s, &which)) == BOIL_MARCH_STEPPED)
        ;
    assert_int_equal(news, BOIL_MARCH_EVENT);
    assert_close(t, at_s, 0, 1e-5);
    boil_march_free(m);
}

static void a_hump_within_a_long_step_is_seen(void **state)
{
    (void)state;
    assert_seen(hump, 1200, 5000);
}

/* Above zero for a second from 4.7 s on. */
static void low_hump(double t, const double y[], double g[], void *context)
{
    (void)y;
    (void)context;
    g[0] = 0.25 - (t - 5.2) * (t - 5.2);
}

/* At the ends of three steps it tells that it turns. */
static void a_hump_within_a_short_step_is_seen(void **state)
{
    (void)state;
    assert_seen(low_hump, 2, 4.7);
}

/* Where the parabola through the last three has its top before, after or below that, there is nothing to look for. */
static void a_guard_has_its_top_where_the_parabola_has(void **state)
{
    (void)state;
    boil_guards g = {.count = 1, .arm = {1e-8}};
    const double notes[][3] = {{-9, -1, -1}, {-9, -1, -2}, {-1, -1, -2}, {-4, -2, -1}, {-9, -3, -3}, {-9, -1, 1}};
    const bool tops[] = {true, true, false, false, false, false};
    for (size_t i = 0; i < sizeof tops / sizeof tops[0]; i++) {
        boil_guards_begin(&g, &notes[i][0]);
        assert_false(boil_guards_top(&g, &notes[i][1], 1));
        boil_guards_note(&g, &notes[i][1], 2);
        assert_int_equal(boil_guards_top(&g, &notes[i][2], 3), tops[i]);
    }
}

/* Rests at zero within rounding, then falls, then rises. */
static void a_guard_at_rest_must_clear_its_arm(void **state)
{
    (void)state;
    boil_guards g = {.count = 1, .arm = {1e-8}};
    const double rest[] = {1e-9}, below[] = {-1e-7};
    boil_guards_begin(&g, rest);
    assert_false(boil_guards_rises(&g, 0, 5e-9));
    assert_true(boil_guards_rises(&g, 0, 2e-8));
    boil_guards_note(&g, below, 1);
    assert_true(boil_guards_rises(&g, 0, 0));
    const double beyond[] = {1e-3};
    boil_guards_begin(&g, beyond);
    assert_false(boil_guards_rises(&g, 0, 1));
}

/* One that falls may yet have risen on the way; one that has fallen twice has not. What it was before the beginning does not count. */
static void a_guard_that_begins_low_may_be_near(void **state)
{
    (void)state;
    boil_guards g = {.count = 1, .arm = {1e-8}};
    const double high[] = {5}, low[] = {-1}, lower[] = {-1.6}, lowest[] = {-2.5}, far[] = {-9};
    boil_guards_begin(&g, high);
    boil_guards_begin(&g, low);
    assert_true(boil_guards_near(&g, lower));
    assert_true(boil_guards_near(&g, lowest));
    boil_guards_note(&g, lower, 1);
    assert_false(boil_guards_near(&g, lowest));
    boil_guards_begin(&g, far);
    assert_false(boil_guards_near(&g, (double[]){-8}));
}

/* Copied half-way: both go on alike, to the last bit; and so does a run made anew. */
static void a_copy_goes_on_as_the_original(void **state)
{
    (void)state;
    lags l = slow;
    double y[UNKNOWNS], of_copy[UNKNOWNS], t = 0;
    size_t guard;
    boil_march *m = begin(&l, 1e-7, false, y);
    while (boil_march_step(m, &t, y, 20, &guard) == BOIL_MARCH_STEPPED)
        ;
    boil_march *copy = boil_march_create();
    assert_non_null(copy);
    assert_int_equal(boil_march_copy(copy, m), BOIL_OK);
    memcpy(of_copy, y, sizeof y);
    boil_march *both[] = {m, copy};
    double *states[] = {y, of_copy};
    for (int i = 0; i < 2; i++) {
        boil_march_problem p = problem(&l, 1e-7);
        double now = 20;
        assert_int_equal(boil_march_begin(both[i], &p, now, states[i]), BOIL_OK);
        while (boil_march_step(both[i], &now, states[i], 50, &guard) == BOIL_MARCH_STEPPED)
            ;
    }
    assert_memory_equal(y, of_copy, sizeof y);
    assert_int_equal(boil_march_evaluations(m), boil_march_evaluations(copy));
    boil_march_free(m);
    boil_march_free(copy);
}

/* A circle, and eight that follow its cosine, each a block of its own. */
enum { FOLLOWERS = 8, ROUND = 2 + FOLLOWERS };

static boil_outcome follow_round(double t, const double y[], double dydt[], void *context)
{
    const size_t *unknowns = context;
    (void)t;
    dydt[0] = -y[1];
    dydt[1] = y[0];
    for (size_t i = 2; i < *unknowns; i++)
        dydt[i] = (y[0] - y[i]) * (double)i;
    return BOIL_OK;
}

static size_t each_alone(size_t number, void *context)
{
    const size_t *unknowns = context;
    return number + 2 < *unknowns;
}

/* To `end`, looked into after each step. */
static void go_round(boil_march *m, size_t unknowns, double end, double y[ROUND])
{
    static const double ones[ROUND] = {1, 1, 1, 1, 1, 1, 1, 1, 1, 1};
    double t = 0, inside[ROUND];
    size_t guard;
    boil_march_problem p = {.system = {.unknowns = unknowns,
                                       .rates = follow_round,
                                       .context = &unknowns,
                                       .size = ones,
                                       .leads = 2,
                                       .lead = {0, 1},
                                       .blocks_first = 2,
                                       .block = each_alone},
                            .tolerance = 1e-8,
                            .step_max_s = 1200};
    memset(y, 0, ROUND * sizeof *y);
    y[0] = 1;
    assert_int_equal(boil_march_begin(m, &p, t, y), BOIL_OK);
    while (boil_march_step(m, &t, y, end, &guard) == BOIL_MARCH_STEPPED) {
        boil_hermite h = boil_march_within(m);
        boil_hermite_at(&h, unknowns, (h.t0 + h.t1) / 2, inside);
    }
}

/* To the last bit as one that never marched before, also where it takes more room than that which was begun with. */
static void one_that_marched_before_goes_as_a_new_one(void **state)
{
    (void)state;
    double after[ROUND], anew[ROUND];
    boil_march *used = boil_march_create(), *fresh = boil_march_create();
    assert_true(used != NULL && fresh != NULL);
    go_round(used, ROUND / 2, 10, after);
    size_t before = boil_march_evaluations(used);
    go_round(used, ROUND, 10, after);
    go_round(fresh, ROUND, 10, anew);
    assert_memory_equal(after, anew, sizeof anew);
    assert_int_equal(boil_march_evaluations(used) - before, boil_march_evaluations(fresh));
    assert_close(anew[0], cos(10), 0, 1e-5);
    boil_march_free(used);
    boil_march_free(fresh);
}

/* How far the first step from the start goes, of a march that has been refused all steps before, or of a new one. */
static double first_step_of(bool refused_before, double *off)
{
    lags l = slow;
    double y[UNKNOWNS], exact[UNKNOWNS], t = 0;
    size_t guard;
    l.level = 2;
    l.refused_from = refused_before ? nextafter(0, 1) : HUGE_VAL;
    boil_march *m = begin(&l, 1e-7, false, y);
    if (refused_before) {
        assert_int_equal(boil_march_step(m, &t, y, 50, &guard), BOIL_MARCH_FAILED);
        l.refused_from = HUGE_VAL;
        boil_march_problem p = problem(&l, 1e-7);
        assert_int_equal(boil_march_begin(m, &p, t, y), BOIL_OK);
    }
    assert_int_equal(boil_march_step(m, &t, y, 50, &guard), BOIL_MARCH_STEPPED);
    in_cycle(&l, t, exact);
    *off = fabs(y[FIRST] - exact[FIRST]);
    boil_march_free(m);
    return t;
}

/* Of a kind that is known, though no step of it was ever taken, the first goes further; and errs no more than it may. */
static void the_first_step_of_a_known_kind_goes_further(void **state)
{
    (void)state;
    double off, off_new, known_s = first_step_of(true, &off), new_s = first_step_of(false, &off_new);
    print_message("first step: %.3g s, of a known kind %.3g s; off by %.1e, %.1e\n", new_s, known_s, off_new, off);
    assert_true(known_s > 2 * new_s);
    assert_true(off < 1e-7 && off_new < 1e-7);
}

static void between_steps_the_cubic_is_as_good_as_they_are(void **state)
{
    (void)state;
    lags l = slow;
    double y[UNKNOWNS], inside[UNKNOWNS], exact[UNKNOWNS], t = 0, off = 0;
    size_t guard;
    boil_march *m = begin(&l, 1e-7, false, y);
    while (boil_march_step(m, &t, y, 50, &guard) == BOIL_MARCH_STEPPED) {
        boil_hermite h = boil_march_within(m);
        assert_true(h.t1 == t);
        for (int k = 1; k < 4; k++) {
            double at = h.t0 + (h.t1 - h.t0) * k / 4;
            boil_hermite_at(&h, UNKNOWNS, at, inside);
            in_cycle(&l, at, exact);
            for (int i = 0; i < UNKNOWNS - 1; i++)
                off = fmax(off, fabs(inside[i] - exact[i]));
        }
    }
    print_message("between steps: off by %.1e\n", off);
    assert_true(off < 1e-4);
    boil_march_free(m);
}

/* Of cubics that turn twice, once and not at all, and of lines: as many places of each tell. */
static void a_cubic_is_known_to_reach_so_far(void **state)
{
    (void)state;
    for (int k = 0; k < 200; k++) {
        const double length = 3, bend = k % 5 == 0 ? 0 : 4;
        double slope0 = bend * sin(k) + 1, slope1 = bend * cos(3 * k) + 1, y0 = k % 7, y1 = y0 + length, least, most;
        const boil_hermite h = {0, length, &y0, &slope0, &y1, &slope1};
        boil_hermite_range(y0, slope0, y1, slope1, length, &least, &most);
        double low = y0, high = y0;
        for (double t = 0; t <= length; t += 1e-4) {
            double y;
            boil_hermite_at(&h, 1, t, &y);
            low = fmin(low, y);
            high = fmax(high, y);
        }
        assert_close(least, fmin(low, y1), 0, 1e-7);
        assert_close(most, fmax(high, y1), 0, 1e-7);
        double top = boil_hermite_top(y0, slope0, y1, slope1, length), there;
        boil_hermite_at(&h, 1, top, &there);
        assert_true(top >= 0 && top <= length);
        assert_close(there, most, 0, 1e-12);
    }
}

/* As steep as it may be there: it does not go on past its ends, nor, a moment, anywhere. */
static void a_cubic_ends_where_it_ends(void **state)
{
    (void)state;
    const double y0 = 2, slope0 = 30, y1 = -1, slope1 = -50, before[] = {4.9, nextafter(5, 0), 5},
                 after[] = {8, nextafter(8, 9), 9.5};
    const boil_hermite h = {5, 8, &y0, &slope0, &y1, &slope1}, moment = {5, 5, &y0, &slope0, &y1, &slope1};
    for (size_t i = 0; i < sizeof before / sizeof before[0]; i++) {
        double first, last, end;
        boil_hermite_at(&h, 1, before[i], &first);
        boil_hermite_at(&h, 1, after[i], &last);
        boil_hermite_at(&moment, 1, before[i], &end);
        assert_true(first == y0 && last == y1 && end == y1);
    }
}

/* The published limiter keeps a cubic between its ends. */
static void a_limited_cubic_stays_between_its_ends(void **state)
{
    (void)state;
    for (int k = 0; k < 200; k++) {
        double slope0 = 20 * sin(k), slope1 = 20 * cos(3 * k), y0 = 0, y1 = k % 2 == 0 ? 1 : -1;
        boil_hermite_limit(y1 - y0, 2, &slope0, &slope1);
        const boil_hermite h = {0, 2, &y0, &slope0, &y1, &slope1};
        for (double t = 0; t <= 2; t += 0.05) {
            double y;
            boil_hermite_at(&h, 1, t, &y);
            assert_true(y * y1 >= -1e-12 && fabs(y) <= 1 + 1e-12);
        }
    }
}

/* A clock, and what leaps from 0 to 1 at 3.6 s: the cubic over 5 s has it half way at 2.5 s. */
static boil_outcome leap(double t, const double y[], double dydt[], void *context)
{
    const double width_s = 0.5;
    double c = cosh((t - 3.6) / (2 * width_s));
    (void)y;
    (void)context;
    dydt[0] = 1;
    dydt[1] = 1 / (4 * width_s * c * c);
    return BOIL_OK;
}

static void clock_and_leap(double t, const double y[], double g[], void *context)
{
    (void)t;
    (void)context;
    g[0] = y[0] - 3.2;
    g[1] = y[1] - 0.5;
}

/* The cubic has the leap before the clock, and the step ends on the clock. */
static void of_two_guards_the_first_is_found_whatever_the_cubic_says(void **state)
{
    (void)state;
    const double size[2] = {1e6, 1e6};
    size_t guard = 9;
    double t = 0, y[2] = {0, 0};
    const boil_march_problem p = {
        .system = {.unknowns = 2, .rates = leap, .size = size, .sums_first = 2, .sums_end = 2, .blocks_first = 2},
        .guards = 2,
        .guard = clock_and_leap,
        .tolerance = 1e-2,
        .step_max_s = 5};
    boil_march *m = boil_march_create();
    assert_non_null(m);
    assert_int_equal(boil_march_begin(m, &p, t, y), BOIL_OK);
    assert_int_equal(boil_march_step(m, &t, y, 5, &guard), BOIL_MARCH_EVENT);
    print_message("  guard %zu at %.6f s\n", guard, t);
    assert_int_equal(guard, 0);
    assert_close(t, 3.2, 0, 1e-5);
    assert_true(y[1] < 0.5);
    boil_march_free(m);
}

/* A clock that from when it has been seen late is not told for two seconds before. */
static boil_outcome tick(double t, const double y[], double dydt[], void *context)
{
    (void)y;
    if (*(bool *)context && t > 43 && t < 45.5)
        return BOIL_OUT_OF_RANGE;
    dydt[0] = 1;
    return BOIL_OK;
}

static void late(double t, const double y[], double g[], void *context)
{
    bool *seen = context;
    (void)t;
    g[0] = y[0] - 50.3;
    *seen = *seen || g[0] >= 0;
}

/* A step that was taken whole may be refused as it is taken anew to an event within: a shorter one is not, and from there it goes on. */
static void an_event_is_found_where_the_step_to_it_is_refused(void **state)
{
    (void)state;
    const double size = 1, end = 120;
    bool seen = false;
    size_t guard = 9;
    double t = 0, y = 0;
    boil_march_problem p = {
        .system =
            {.unknowns = 1, .rates = tick, .context = &seen, .size = &size, .sums_first = 1, .sums_end = 1, .blocks_first = 1},
        .guards = 1,
        .guard = late,
        .tolerance = 1e-5,
        .step_max_s = 1200};
    boil_march *m = boil_march_create();
    assert_non_null(m);
    assert_int_equal(boil_march_begin(m, &p, t, &y), BOIL_OK);
    boil_march_news news = BOIL_MARCH_STEPPED;
    for (int i = 0; i < 20 && news == BOIL_MARCH_STEPPED; i++)
        news = boil_march_step(m, &t, &y, end, &guard);
    assert_int_equal(news, BOIL_MARCH_EVENT);
    assert_int_equal(guard, 0);
    assert_close(t, 50.3, 0, 1e-5);
    assert_close(y, t, 0, 1e-9);
    boil_march_free(m);
}

static void where_rates_are_refused_it_stops_with_the_last_good_state(void **state)
{
    (void)state;
    lags l = slow;
    l.refused_from = 7;
    double y[UNKNOWNS], exact[UNKNOWNS], t = 0;
    size_t guard;
    boil_march *m = begin(&l, 1e-7, false, y);
    boil_march_news news;
    while ((news = boil_march_step(m, &t, y, 50, &guard)) == BOIL_MARCH_STEPPED)
        ;
    assert_int_equal(news, BOIL_MARCH_FAILED);
    assert_true(t < 7 && t > 6.9);
    in_cycle(&l, t, exact);
    assert_close(y[0], exact[0], 0, 1e-5);
    boil_march_free(m);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(error_falls_with_the_tolerance),
        cmocka_unit_test(steps_are_as_long_as_the_solution_allows),
        cmocka_unit_test(events_are_where_they_are),
        cmocka_unit_test(a_guard_may_be_told_a_little_short),
        cmocka_unit_test(a_hump_within_a_long_step_is_seen),
        cmocka_unit_test(a_hump_within_a_short_step_is_seen),
        cmocka_unit_test(a_guard_has_its_top_where_the_parabola_has),
        cmocka_unit_test(a_guard_at_rest_must_clear_its_arm),
        cmocka_unit_test(a_guard_that_begins_low_may_be_near),
        cmocka_unit_test(a_copy_goes_on_as_the_original),
        cmocka_unit_test(one_that_marched_before_goes_as_a_new_one),
        cmocka_unit_test(the_first_step_of_a_known_kind_goes_further),
        cmocka_unit_test(between_steps_the_cubic_is_as_good_as_they_are),
        cmocka_unit_test(a_cubic_is_known_to_reach_so_far),
        cmocka_unit_test(a_cubic_ends_where_it_ends),
        cmocka_unit_test(a_limited_cubic_stays_between_its_ends),
        cmocka_unit_test(of_two_guards_the_first_is_found_whatever_the_cubic_says),
        cmocka_unit_test(an_event_is_found_where_the_step_to_it_is_refused),
        cmocka_unit_test(where_rates_are_refused_it_stops_with_the_last_good_state),
    };
    return cmocka_run_group_tests_name("march", tests, NULL, NULL);
}
