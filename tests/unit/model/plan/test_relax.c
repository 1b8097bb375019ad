/* What would have to give, of lists whose sums are done by hand: parts that hang one after the other, each in its own time. */
#include "lists.h"
#include "plan/relax.h"
#include "plan/search.h"
#include "support/close.h"

enum { JOBS = 3, MANY = 31 };

static const double stays_s[JOBS] = {600, 900, 1500};

/* Hot at once, in a bath that needs nothing: one place, and a minute for each move. */
typedef struct {
    boil_plan_job jobs[JOBS];
    boil_plan_part parts[JOBS];
    boil_plan_problem problem;
    boil_plan_bath bath;
    boil_plan_case of;
    boil_plan_relaxation list[BOIL_PLAN_RELAXATIONS_MAX];
    size_t count;
} listed;

static void set_up(listed *l)
{
    *l = (listed){.problem = {.jobs = l->jobs, .jobs_count = JOBS, .positions = 1, .hoist_s = 60, .end_s = 2600}};
    for (size_t i = 0; i < JOBS; i++) {
        l->jobs[i] =
            (boil_plan_job){.load = {.mass_kg = 20}, .least_s = stays_s[i], .most_s = stays_s[i] + 600, .due_s = HUGE_VAL};
        l->parts[i] = (boil_plan_part){.job = i, .of = 1, .load = l->jobs[i].load, .heat_J = 1e5};
    }
    l->bath = (boil_plan_bath){.limit_s = 100, .quiet_W = 40e3, .most_kg = 60, .valve = true, .efficiency = 1, .fire_W = 1e5};
    l->of = (boil_plan_case){&l->problem, &l->bath, l->parts, JOBS, NULL};
}

/* One thing at a time, in this order; whether it works, and when all are out then. */
typedef struct {
    boil_plan_gives what;
    size_t job;
    double value;
    bool works;
    double last_out_s;
} expected;

static void expect(listed *l, const expected of[], size_t count)
{
    boil_plan_order o;
    assert_int_equal(boil_plan_order_begin(&o, JOBS), BOIL_OK);
    assert_int_equal(boil_plan_relax(&l->of, &o, 50e3, 1, l->list, &l->count), BOIL_OK);
    boil_plan_order_free(&o);
    assert_int_equal(l->count, count);
    for (size_t i = 0; i < count; i++) {
        const boil_plan_relaxation *r = &l->list[i];
        assert_true(r->what == of[i].what && r->job == of[i].job && r->works == of[i].works);
        assert_close(r->value, of[i].value, 1e-12, 0);
        assert_close(r->last_out_s, of[i].last_out_s, 1e-12, 0);
    }
}

/* In after one move, then all stays, and two moves from one to the next: 60 + 3000 + 240 s. Without one of them its stay and two moves
   are gone; at the end itself it is enough. Two places: the longest hangs while another does, and the third goes in after the first.
   Neither heat nor a limit that is kept anyhow gives a second, half a move five of them. */
static void each_gives_the_time_it_takes(void **state)
{
    (void)state;
    listed l;
    set_up(&l);
    static const expected of[] = {
        {BOIL_PLAN_GIVES_END, 0, 3300, true, 3300},     {BOIL_PLAN_GIVES_JOB, 0, 0, false, 3300 - 720},
        {BOIL_PLAN_GIVES_JOB, 1, 0, true, 3300 - 1020}, {BOIL_PLAN_GIVES_JOB, 2, 0, true, 3300 - 1620},
        {BOIL_PLAN_GIVES_POSITIONS, 0, 2, true, 1740},  {BOIL_PLAN_GIVES_HEAT, 0, 2, false, 3300},
        {BOIL_PLAN_GIVES_LIMIT, 0, 200, false, 3300},   {BOIL_PLAN_GIVES_HOIST, 0, 30, false, 3300 - 5 * 30},
    };
    l.problem.end_s = 3300 - 1020;
    expect(&l, of, sizeof of / sizeof of[0]);
}

/* What must be out sooner than it can hangs on itself alone: that it may be late gives, or that it is left out; here
   half a move too, after which it is out at 930 s. */
static void what_must_be_out_too_soon_gives(void **state)
{
    (void)state;
    listed l;
    set_up(&l);
    static const expected of[] = {
        {BOIL_PLAN_GIVES_END, 0, 3300, false, 3300},        {BOIL_PLAN_GIVES_MUST, 1, 0, true, 3300},
        {BOIL_PLAN_GIVES_JOB, 0, 0, false, 3300 - 720},     {BOIL_PLAN_GIVES_JOB, 1, 0, true, 3300 - 1020},
        {BOIL_PLAN_GIVES_JOB, 2, 0, false, 3300 - 1620},    {BOIL_PLAN_GIVES_POSITIONS, 0, 2, false, 1740},
        {BOIL_PLAN_GIVES_HEAT, 0, 2, false, 3300},          {BOIL_PLAN_GIVES_LIMIT, 0, 200, false, 3300},
        {BOIL_PLAN_GIVES_HOIST, 0, 30, true, 3300 - 5 * 30}};
    l.jobs[1].priority = BOIL_PLAN_MUST;
    l.jobs[1].due_s = 959;
    l.problem.end_s = 4000;
    expect(&l, of, sizeof of / sizeof of[0]);
}

/* A bath that boils after 1200 s: of 90 kW for 40 it does after 533 1/3 s. What hangs in the only place has its minutes 300 s after
   that, and two moves later the first goes in: at 1620 s, and 3240 s later all are out. For 4500 s it must go in 360 s sooner, which is
   0.3428.. of 50 kW more; at 1.34375 times it goes in at 1260 s. In two places the longest hangs from 1620 s on beside the others. */
static void a_quiet_bath_comes_up_sooner_with_more_heat(void **state)
{
    (void)state;
    static const boil_plan_hanging_dip lift = {1500, 1};
    listed l;
    set_up(&l);
    static const expected of[] = {
        {BOIL_PLAN_GIVES_END, 0, 4860, true, 4860},     {BOIL_PLAN_GIVES_JOB, 0, 0, true, 4860 - 720},
        {BOIL_PLAN_GIVES_JOB, 1, 0, true, 4860 - 1020}, {BOIL_PLAN_GIVES_JOB, 2, 0, true, 4860 - 1620},
        {BOIL_PLAN_GIVES_POSITIONS, 0, 2, true, 3120},  {BOIL_PLAN_GIVES_HEAT, 0, 1.34375, true, 4500},
        {BOIL_PLAN_GIVES_LIMIT, 0, 200, false, 4860},   {BOIL_PLAN_GIVES_HOIST, 0, 30, false, 1560 + 3000 + 4 * 30},
    };
    l.problem.hanging = &lift;
    l.problem.hanging_count = 1;
    l.problem.end_s = 4500;
    l.bath.ready_s = 1200;
    expect(&l, of, sizeof of / sizeof of[0]);
}

/* Parts of 20 kg in dips of 18: a limit a ninth longer lets the heaviest be so much heavier; to a 32nd an eighth is the least. */
static void a_longer_limit_bears_heavier_dips(void **state)
{
    (void)state;
    boil_plan_order o;
    listed l;
    set_up(&l);
    l.bath.most_kg = 18;
    l.problem.end_s = 4000;
    assert_int_equal(boil_plan_order_begin(&o, JOBS), BOIL_OK);
    assert_int_equal(boil_plan_relax(&l.of, &o, 50e3, 1, l.list, &l.count), BOIL_OK);
    for (size_t i = 0; i < l.count; i++)
        assert_int_equal(l.list[i].works, l.list[i].what == BOIL_PLAN_GIVES_LIMIT);
    assert_close(l.list[l.count - 2].value, 112.5, 1e-12, 0);
    boil_plan_order_free(&o);
}

/* Of many musts the first twenty are asked, and jobs that could be left out where they are two to thirty. */
static void as_many_are_asked_as_a_person_reads_of(void **state)
{
    (void)state;
    static const struct {
        size_t jobs, musts, first, asked_musts, asked_jobs;
    } of[] = {{3, 0, 0, 0, 3}, {3, 1, 0, 1, 3}, {1, 0, 0, 0, 0}, {2, 0, 0, 0, 2}, {30, 25, 5, 20, 30}, {31, 20, 0, 20, 0}};
    boil_plan_order o;
    assert_int_equal(boil_plan_order_begin(&o, JOBS), BOIL_OK);
    for (size_t i = 0; i < sizeof of / sizeof of[0]; i++) {
        boil_plan_job jobs[MANY];
        listed l;
        set_up(&l);
        for (size_t j = 0; j < MANY; j++) {
            jobs[j] = l.jobs[0];
            jobs[j].priority = j >= of[i].first && j < of[i].first + of[i].musts ? BOIL_PLAN_MUST : BOIL_PLAN_NORMAL;
        }
        l.problem.jobs = jobs;
        l.problem.jobs_count = of[i].jobs;
        l.of.parts_count = of[i].jobs < JOBS ? of[i].jobs : JOBS;
        assert_int_equal(boil_plan_relax(&l.of, &o, 50e3, 1, l.list, &l.count), BOIL_OK);
        assert_int_equal(l.count, 1 + of[i].asked_musts + of[i].asked_jobs + 4);
        for (size_t k = 0; k < of[i].asked_musts; k++)
            assert_true(l.list[1 + k].what == BOIL_PLAN_GIVES_MUST && l.list[1 + k].job == of[i].first + k);
        for (size_t k = 0; k < of[i].asked_jobs; k++) {
            const boil_plan_relaxation *r = &l.list[1 + of[i].asked_musts + k];
            assert_true(r->what == BOIL_PLAN_GIVES_JOB && r->job == k);
        }
    }
    boil_plan_order_free(&o);
}

/* A shift that ends when the best of a long search is out: with a little more of anything it works, since each search begins there; none of
   a few thousand tries that began elsewhere would get there. */
static void each_search_begins_at_the_best(void **state)
{
    (void)state;
    static drawn_list l;
    static boil_plan_job jobs[MANY];
    static boil_plan_part parts[MANY];
    boil_plan_order o;
    boil_plan_value v;
    boil_plan_search search = {.seed = 1, .chain = 2, .tries = 60000};
    boil_plan_relaxation list[BOIL_PLAN_RELAXATIONS_MAX];
    boil_stream s = boil_stream_begin(1, 5);
    size_t count;
    draw_list(&l, 4, LIST_JOBS);
    for (size_t i = 0; i < MANY; i++) {
        draw_job(&s, &jobs[i], &parts[i], i);
        jobs[i].priority = BOIL_PLAN_NORMAL;
    }
    l.bath.valve = true;
    l.problem.jobs = jobs;
    l.problem.jobs_count = l.of.parts_count = MANY;
    l.of.parts = parts;
    assert_int_equal(boil_plan_order_begin(&o, MANY), BOIL_OK);
    assert_int_equal(boil_plan_search_run(&l.of, &search, &o, &v), BOIL_OK);
    l.problem.end_s = v.of[BOIL_PLAN_LAST_OUT_S];
    assert_true(boil_plan_holds(&v));
    assert_int_equal(boil_plan_relax(&l.of, &o, 50e3, 1, list, &count), BOIL_OK);
    assert_int_equal(count, 5); /* no jobs: they are too many */
    assert_true(list[0].what == BOIL_PLAN_GIVES_END && list[0].works && list[0].value <= l.problem.end_s);
    assert_true(list[2].what == BOIL_PLAN_GIVES_HEAT && list[2].works && list[2].value == 1 + 1.0 / 32);
    assert_true(list[3].what == BOIL_PLAN_GIVES_LIMIT && list[3].works);
    assert_close(list[3].value, (1 + 1.0 / 32) * l.bath.limit_s, 1e-12, 0);
    boil_plan_order_free(&o);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(each_gives_the_time_it_takes),
                                       cmocka_unit_test(what_must_be_out_too_soon_gives),
                                       cmocka_unit_test(a_quiet_bath_comes_up_sooner_with_more_heat),
                                       cmocka_unit_test(a_longer_limit_bears_heavier_dips),
                                       cmocka_unit_test(as_many_are_asked_as_a_person_reads_of),
                                       cmocka_unit_test(each_search_begins_at_the_best)};
    return cmocka_run_group_tests_name("relax", tests, NULL, NULL);
}
