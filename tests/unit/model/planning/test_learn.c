/* What a proof teaches, by the definitions of model/plan/lessons.h: of dips made up by hand; and how long an order is tried. */
#include "support/close.h"

#include "planning/learn.h"
#include "support/cases.h"

/* One dip of two parts, planned for 100 s away and a stay of 650 to 950 s: by the runs 90 s, and 700 to 900 s. */
typedef struct {
    boil_plan_dip dip;
    size_t parts[2];
    boil_plan_seen seen;
    boil_plan_proof proof;
    boil_planning planning;
    uint64_t key;
} taught;

static void begin(taught *t)
{
    *t = (taught){.parts = {3, 8}};
    t->dip = (boil_plan_dip){.count = 2, .recovery_s = 100, .stay_least_s = 650, .stay_most_s = 950};
    t->seen = (boil_plan_seen){.gravest_s = 90, .likely_s = 80, .stay_least_s = 700, .stay_most_s = 900};
    t->proof.table = (boil_plan_timetable){.dips = &t->dip, .dips_count = 1, .parts = t->parts};
    t->proof.seen = &t->seen;
    t->proof.boils_off_kg_s = 0.02;
    t->planning.bath = (boil_plan_bath){.limit_s = 120,
                                        .slower = 0.25,
                                        .longer_s = 5,
                                        .guard_s = 75,
                                        .flow_kg_s = 0.05,
                                        .sift_kg_s = 0.03,
                                        .boils_off_kg_s = 0.02,
                                        .strongest_kg = 50};
    t->key = boil_plan_lesson_key(t->parts, 2);
}

static boil_plan_lesson learned(taught *t)
{
    assert_int_equal(boil_plan_learn(&t->planning, &t->proof), BOIL_OK);
    return boil_plan_lesson_of(&t->planning.lessons, t->key);
}

/* Away for 80 s but for the quarter that is left, and now 90 and two for the steps of a run; to stay 52 s more, and 5 that are left; and
   52 s less at the most. Seen again it is added to what was known. */
static void a_dip_teaches_its_own_numbers(void **state)
{
    (void)state;
    taught t;
    begin(&t);
    boil_plan_lesson l = learned(&t);
    assert_true(l.known);
    assert_close(l.later_s, 90 + 2 - 100 / 1.25, 1e-12, 0);
    assert_close(l.more_s, 700 + 2 + 5 - 650, 1e-12, 0);
    assert_close(l.most_s, 900 - 2 - 950, 1e-12, 0);
    l = learned(&t);
    assert_close(l.later_s, 2 * (90 + 2 - 100 / 1.25), 1e-12, 0);
    assert_close(l.more_s, 2 * (700 + 2 + 5 - 650), 1e-12, 0);
    assert_close(l.most_s, 2 * (900 - 2 - 950), 1e-12, 0);
    boil_planning_free(&t.planning);
}

/* A boil that never was back counts as one that was away as long as it may; steel that never was hot hangs a minute longer. */
static void what_never_came_is_no_number(void **state)
{
    (void)state;
    taught t;
    begin(&t);
    t.seen = (boil_plan_seen){.gravest_s = HUGE_VAL, .stay_least_s = HUGE_VAL, .stay_most_s = HUGE_VAL};
    boil_plan_lesson l = learned(&t);
    assert_close(l.later_s, 120 + 2 - 100 / 1.25, 1e-12, 0);
    assert_close(l.more_s, 60, 1e-12, 0);
    assert_true(l.most_s == 0);
    boil_planning_free(&t.planning);
}

/* A fiftieth is no news. What is left of the band is a tenth less once it was left; and heating up takes as much longer as the first dip
   had to wait. */
static void a_proof_teaches_of_the_bath(void **state)
{
    (void)state;
    taught t;
    begin(&t);
    boil_plan_bath *b = &t.planning.bath;
    t.proof.boils_off_kg_s = 0.0203;
    t.seen.late_s = 40;
    learned(&t);
    assert_true(b->boils_off_kg_s == 0.02 && b->strongest_kg == 50 && b->ready_s == 0);
    t.proof.boils_off_kg_s = 0.0197;
    learned(&t);
    assert_true(b->boils_off_kg_s == 0.02);
    t.proof.boils_off_kg_s = 0.0195;
    t.proof.over_K = 0.1;
    b->ready_s = 0.5;
    learned(&t);
    assert_close(b->boils_off_kg_s, 0.0195, 1e-12, 0);
    assert_close(b->strongest_kg, 45, 1e-12, 0);
    assert_close(b->ready_s, 40.5, 1e-12, 0);
    t.proof.boils_off_kg_s = 0.0205;
    t.proof.table.dips_count = 0;
    assert_int_equal(boil_plan_learn(&t.planning, &t.proof), BOIL_OK);
    assert_close(b->boils_off_kg_s, 0.0205, 1e-12, 0);
    assert_close(b->ready_s, 40.5, 1e-12, 0);
    boil_planning_free(&t.planning);
}

/* What water or salts make asks for longer guards, slower pours or slower siftings, and nothing else does. */
static void findings_of_water_and_salts_are_heeded(void **state)
{
    (void)state;
    static const struct {
        const char *id;
        double guard_s, flow, sifting;
    } of[] = {{"water-layer", 45, 1, 1},        {"water-on-quiet-bath", 45, 1, 1}, {"layer-outlasts-run", 45, 1, 1},
              {"load-through-layer", 45, 1, 1}, {"surface-boils", 45, 0.8, 1},     {"water-too-fast", 0, 0.8, 1},
              {"steam-surge", 0, 0.8, 0.8},     {"freeboard-low", 0, 0.8, 0.8},    {"overflow", 0, 0.6, 0.6},
              {"boil-lost-long", 0, 0.8, 0.8},  {"salt-slug", 0, 1, 0.6},          {"salt-bed", 0, 1, 0.6},
              {"salt-on-quiet-bath", 45, 1, 1}, {"water-on-dry-salt", 45, 1, 0.6}, {"bath-too-hot", 0, 1, 1},
              {"load-heavy", 0, 1, 1}};
    for (size_t i = 0; i < sizeof of / sizeof of[0]; i++) {
        taught t;
        begin(&t);
        t.proof.broken[0] = (boil_plan_break){.what = BOIL_PLAN_BREAKS_LATE, .id = "overflow"};
        t.proof.broken[1] = (boil_plan_break){.what = BOIL_PLAN_BREAKS_FINDING, .id = of[i].id};
        t.proof.broken_count = 2;
        learned(&t);
        assert_close(t.planning.bath.guard_s, 75 + of[i].guard_s, 1e-12, 0);
        assert_close(t.planning.bath.flow_kg_s, 0.05 * of[i].flow, 1e-12, 0);
        assert_close(t.planning.bath.sift_kg_s, 0.03 * of[i].sifting, 1e-12, 0);
        boil_planning_free(&t.planning);
    }
}

/* By runs: what holds at once is proved once, what no time of the order mends twice. The better proof of the two orders stays, however
   often the other is proved behind it. */
static void an_order_is_proved_until_it_holds_or_cannot(void **state)
{
    (void)state;
    boil_run_options o = boil_run_options_default();
    boil_plant p = planned_trough(97e3, 1);
    boil_plan_job job = {.load = boil_load_default(), .least_s = 600, .most_s = 900, .due_s = HUGE_VAL};
    boil_plan_problem of = {.jobs = &job, .jobs_count = 1, .positions = 1, .hoist_s = 60, .settle_s = 60, .end_s = HUGE_VAL};
    boil_planning g;
    boil_plan_order order;
    boil_plan_proof best = {.broken_count = 0};
    size_t rounds = 0;
    job.load.mass_kg = 15;
    job.load.size_m = 0.005;
    assert_int_equal(boil_planning_begin(&p, &of, &o, &g), BOIL_OK);
    assert_int_equal(boil_plan_order_begin(&order, 1), BOIL_OK);
    job.priority = BOIL_PLAN_MUST;
    job.due_s = 300;
    assert_int_equal(boil_plan_settle(&g, &order, &best, &rounds), BOIL_OK);
    assert_true(rounds == 2 && best.broken_count == 1 && best.broken[0].what == BOIL_PLAN_BREAKS_DUE);
    job.due_s = HUGE_VAL;
    assert_int_equal(boil_plan_settle(&g, &order, &best, &rounds), BOIL_OK);
    assert_true(rounds == 3 && boil_plan_proof_holds(&best));
    job.due_s = 300;
    assert_int_equal(boil_plan_settle(&g, &order, &best, &rounds), BOIL_OK);
    assert_true(rounds == 5 && boil_plan_proof_holds(&best));
    boil_plan_proof_free(&best);
    boil_plan_order_free(&order);
    boil_planning_free(&g);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_dip_teaches_its_own_numbers),
        cmocka_unit_test(what_never_came_is_no_number),
        cmocka_unit_test(a_proof_teaches_of_the_bath),
        cmocka_unit_test(findings_of_water_and_salts_are_heeded),
        cmocka_unit_test(an_order_is_proved_until_it_holds_or_cannot),
    };
    return cmocka_run_group_tests_name("learn", tests, NULL, NULL);
}
