/* What a plan says of itself, made up here: no search and no run. Times are seconds from 6:00; a made-up value is told as it is. */
#include "support/printed.h"
#include "support/shipped.h"

#include <stdlib.h>
#include <string.h>

#include "commands/plan/answer.h"

enum { DIPS = 2 };

/* Two dips, the second of which never boils again in some run; between them somebody pours. */
typedef struct {
    scenario s;
    boil_plan_job jobs[DIPS];
    boil_plan_part parts[DIPS];
    boil_plan_dip dips[DIPS];
    boil_plan_seen seen[DIPS];
    boil_plan_pour pour;
    boil_plan_act acts[DIPS];
    size_t order[DIPS];
    plan_answer a;
} made;

/* What hung there as the shift was planned on. */
typedef struct {
    made of;
    now_section now;
    now_job hung[3];
    plan_rest rest;
} made_rest;

static void begin(made *m)
{
    memset(m, 0, sizeof *m);
    read_shipped("plan/five-jobs.bath", &m->s);
    for (size_t i = 0; i < DIPS; i++) {
        m->jobs[i] = (boil_plan_job){.due_s = (double)INFINITY};
        m->parts[i] = (boil_plan_part){.job = i, .of = 1};
        m->dips[i] =
            (boil_plan_dip){.first = i, .count = 1, .enters_s = 600 + 1200 * (double)i, .leaves_s = 3000 + 60 * (double)i};
        m->seen[i] = (boil_plan_seen){.likely_s = 50, .gravest_s = i == 0 ? 75 : (double)INFINITY};
        m->order[i] = i;
    }
    m->pour = (boil_plan_pour){.start_s = 900, .over_s = 120, .mass_kg = 6};
    m->a.plan.table =
        (boil_plan_timetable){.dips = m->dips, .dips_count = DIPS, .parts = m->order, .pours = &m->pour, .pours_count = 1};
    m->a.plan.table.value.of[BOIL_PLAN_LAST_OUT_S] = 3060;
    m->a.plan.seen = m->seen;
    m->a.plan.carried.schedule.duration_s = 3600;
    m->a.scenario = &m->s;
    m->a.system = UNITS_SI;
    m->a.jobs = m->jobs;
    m->a.planning.parts = (boil_plan_parts){m->parts, DIPS};
    m->a.planning.bath.limit_s = 120;
    m->a.problem = (boil_plan_problem){.positions = 2, .end_s = (double)INFINITY};
    m->a.best = &m->a.plan;
}

static void end(made *m)
{
    scenario_free(&m->s);
}

/* Brackets and one of two baskets of pins in one place since 5:50; covers in another. Now it is 6:00. */
static void begin_rest(made_rest *r)
{
    memset(r, 0, sizeof *r);
    begin(&r->of);
    r->hung[0] = (now_job){.kind = NOW_HANGS, .job = 0, .of = 1, .dip = 0};
    r->hung[1] = (now_job){.kind = NOW_HANGS, .job = 1, .number = 1, .of = 2, .dip = 0};
    r->hung[2] = (now_job){.kind = NOW_HANGS, .job = 2, .of = 1, .dip = 1};
    r->now = (now_section){.reads_K = 410, .boils = true, .list = r->hung, .count = 3, .dips = 2};
    r->rest = (plan_rest){.now = &r->now, .of = r->of.s.jobs.list, .under_way.set_K = 413.15};
    r->of.a.rest = &r->rest;
    r->of.a.problem.hanging_count = 2;
    r->of.a.lifts[0] = (boil_plan_hanging_dip){.leaves_s = 300, .number = 1};
    r->of.a.lifts[1] = (boil_plan_hanging_dip){.leaves_s = 420, .number = 2};
    for (size_t i = 0; i < 2; i++)
        r->of.a.hanging[i] = (boil_plan_resumed){r->of.a.lifts[i], 500};
}

static bool is_told(plan_words (*told)(const plan_answer *a, size_t index), const plan_answer *a, const char *words)
{
    for (size_t i = 0;; i++) {
        const plan_words w = told(a, i);
        if (w.text[0] == '\0')
            return false;
        if (strstr(w.text, words) != NULL)
            return true;
    }
}

static void each_reason_why_there_is_none_is_told(void **state)
{
    static const struct {
        boil_plan_condition is;
        const char *words;
    } of[] = {
        {{BOIL_PLAN_NEEDS_TIME, 1, 3900, 3600},
         "pins, alone in the tank, is out at 7:05:00 at the earliest, and should be by 7:00"},
        {{BOIL_PLAN_NEEDS_WINDOW, 0, 0, 0},
         "brackets, alone in the tank, finds no time between the breaks at which it can be lifted"},
        {{BOIL_PLAN_NEEDS_PLACES, 0, 7200, 3600},
         "all stays together take 2 h of the positions, which have 60 min until the end"},
        {{BOIL_PLAN_NEEDS_HEAT, 0, 7200, 3600},
         "one boil after the other is back in 2 h at the least, and there are 60 min until the end"},
        {{BOIL_PLAN_NEEDS_WATER, 0, 30, 20},
         "30.0 kg of water would be missing before the last job may go in, the band bears 20.0 kg"},
        {{BOIL_PLAN_NEEDS_BAND, 0, 1.5, 0}, "the bath boils 1.5 K above its band as it begins"},
        {{BOIL_PLAN_NEEDS_BAND, 0, -1.5, 0}, "the bath boils 1.5 K below its band as it begins"},
    };
    made_rest r;
    made m;
    (void)state;
    begin(&m);
    for (size_t i = 0; i < sizeof of / sizeof of[0]; i++) {
        m.a.failed[0] = of[i].is;
        assert_string_equal(plan_failed(&m.a, 0).text, of[i].words);
    }
    m.a.planning.idle[0] = (boil_plan_fault){"freeboard below the limit", BOIL_SEVERITY_CAUTION};
    m.a.planning.idle_count = 1;
    assert_string_equal(plan_failed(&m.a, 0).text,
                        "the bath by itself, before anything goes in: CAUTION: freeboard below the limit");
    assert_string_equal(plan_failed(&m.a, 1).text, of[sizeof of / sizeof of[0] - 1].words);
    end(&m);
    begin_rest(&r);
    r.of.a.failed[0] = (boil_plan_condition){BOIL_PLAN_NEEDS_LIFT, 1, 3900, 3600};
    assert_string_equal(plan_failed(&r.of.a, 0).text, "covers hangs there until 7:05:00, and should be out by 7:00");
    r.of.a.failed[0] = (boil_plan_condition){BOIL_PLAN_NEEDS_TIME, 1, 3900, 3600};
    assert_string_equal(plan_failed(&r.of.a, 0).text,
                        "pins, if nothing else goes in, is out at 7:05:00 at the earliest, and should be by 7:00");
    end(&r.of);
}

/* What would do stands by itself, each with when the last is out; all that would not in one sentence. */
static void what_would_have_to_give_is_told(void **state)
{
    static const boil_plan_relaxation gives[] = {{BOIL_PLAN_GIVES_END, 0, 0, true, 3600, BOIL_PLAN_UNPROVED},
                                                 {BOIL_PLAN_GIVES_MUST, 4, 0, true, 3500, BOIL_PLAN_UNPROVED},
                                                 {BOIL_PLAN_GIVES_JOB, 1, 0, false, 0, BOIL_PLAN_UNPROVED},
                                                 {BOIL_PLAN_GIVES_POSITIONS, 0, 4, false, 0, BOIL_PLAN_UNPROVED},
                                                 {BOIL_PLAN_GIVES_HEAT, 0, 1.5, false, 0, BOIL_PLAN_UNPROVED},
                                                 {BOIL_PLAN_GIVES_LIMIT, 0, 180, false, 0, BOIL_PLAN_UNPROVED},
                                                 {BOIL_PLAN_GIVES_HOIST, 0, 30, false, 0, BOIL_PLAN_UNPROVED}};
    const char *not = "ound no help in: pins left out; 4 positions; 1.50 times the heat; recovery in 3 min, and dips as much "
                      "heavier; a move of the hoist in 30 s.";
    made m;
    printed p;
    (void)state;
    begin(&m);
    m.a.gives_count = sizeof gives / sizeof gives[0];
    memcpy(m.a.gives, gives, sizeof gives);
    printed_begin(&p);
    plan_none_report(&m.a, p.to);
    char *text = printed_end(&p);
    printed_unwrap(text);
    assert_non_null(strstr(text, "- an open end: last out 7:00:00 "));
    assert_non_null(strstr(text, "- levers need not be out when due: last out 6:58:20 "));
    assert_non_null(strstr(text, not ));
    assert_null(strstr(text, "in whatever order"));
    free(text);
    m.a.gives[0].works = m.a.gives[1].works = false;
    printed_begin(&p);
    plan_none_report(&m.a, p.to);
    assert_true(printed_says(&p, "It found no help in: an open end; levers need not be out when due; pins left out;"));
    end(&m);
}

static void where_the_shift_stands_is_told(void **state)
{
    made_rest r;
    plan_answer *a = &r.of.a;
    (void)state;
    begin_rest(&r);
    r.of.s.plant.charge.value = 413.15;
    r.of.s.plant.limits.boiling_point_low_K = 410;
    r.of.s.plant.limits.boiling_point_high_K = 418;
    assert_true(is_told(plan_told, a,
                        "It is 6:00:00, the bath reads 136.9 degC and boils; it boiled at 140.0 degC as the shift began."));
    assert_true(is_told(plan_told, a, "No load before 6:10:00, no water before 6:15:00."));
    assert_false(is_told(plan_told, a, "outside its band"));
    r.of.s.plant.charge.value = 418.5;
    assert_true(is_told(plan_told, a, "It boils outside its band"));
    r.of.s.plant.limits.boiling_point_high_K = 0; /* a band without an upper end */
    assert_false(is_told(plan_told, a, "outside its band"));
    r.of.s.plant.charge.value = 409;
    assert_true(is_told(plan_told, a, "It boils outside its band"));
    a->plan.table.pours_count = 0;
    r.now.boils = false;
    a->planning.bath.ready_s = 299.2;
    assert_true(
        is_told(plan_told, a, "DOES NOT BOIL. Heat it up first: it may boil from 6:05:00 on. No water and no load before it"));
    assert_true(is_told(plan_told, a, "Then it may float there"));
    assert_true(is_told(plan_told, a, "No load before 6:10:00, and no water."));
    end(&r.of);
}

/* Late is what is lifted behind its due time, by which of those that hang together is due first; overdone what has had its most. */
static void what_hangs_too_long_is_told(void **state)
{
    made_rest r;
    const plan_answer *a = &r.of.a;
    (void)state;
    begin_rest(&r);
    for (size_t i = 0; i < 3; i++)
        r.of.s.jobs.list[i].job.due_s = (double)INFINITY;
    assert_string_equal(plan_hanging_name(a, 0).text, "brackets + pins 2/2");
    assert_false(is_told(plan_told, a, "LATE"));
    assert_false(is_told(plan_told, a, "Longer"));
    r.of.s.jobs.list[0].job.due_s = 320;
    r.of.s.jobs.list[1].job.due_s = 270;
    assert_true(is_told(plan_told, a, "IN THE TANK, AND LATE: brackets + pins 2/2 by 30 s."));
    r.of.s.jobs.list[2].job.due_s = 360;
    assert_true(is_told(plan_told, a, "LATE: brackets + pins 2/2 by 30 s, covers by 60 s."));
    r.of.a.hanging[1].most_s = 400;
    assert_true(is_told(plan_told, a, "Longer in than it may be by its lift: covers."));
    r.of.a.hanging[0].most_s = 299;
    assert_true(is_told(plan_told, a, "Longer in than it may be by its lift: brackets + pins 2/2, covers."));
    end(&r.of);
}

/* Ten kilograms that lower the level by half an inch: all of them, most, or none put back. */
static void salts_that_parts_carry_out_are_told(void **state)
{
    made m;
    boil_plan_pour sifted = {.start_s = 2000, .over_s = 300, .mass_kg = 9};
    (void)state;
    begin(&m);
    m.a.plan.drag_out_salts_kg = 10;
    m.a.planning.bath.owes_kg = 10.1;
    assert_false(is_told(plan_bath_told, &m.a, "carry out"));
    m.a.planning.bath.owes_kg = 5;
    assert_true(
        is_told(plan_bath_told, &m.a,
                "Parts carry out 10.0 kg of salts, which lowers the level by 13 mm: at no pace do they go back in well. "
                "After the last load read the bath, and make it up as 'correct' says."));
    m.a.planning.bath.sift_kg_s = 0.03;
    assert_true(is_told(plan_bath_told, &m.a, ": there is no time to put them back. After the last load"));
    m.a.plan.table.salts = &sifted;
    m.a.plan.table.salts_count = 1;
    assert_true(is_told(plan_bath_told, &m.a, "by 13 mm: 9.00 kg is sifted back in."));
    assert_false(is_told(plan_bath_told, &m.a, "correct"));
    assert_non_null(strstr(plan_rule(&m.a).text, "Salts likewise, sifted"));
    assert_false(is_told(plan_bath_told, &m.a, "once more"));
    m.a.planning.bath.owed_kg = 2;
    assert_true(
        is_told(plan_bath_told, &m.a,
                "By the reading, and what parts carry out yet, 12.0 kg of salts go in the whole shift, which lowers the "
                "level by 15 mm: 9.00 kg is sifted back in"));
    assert_true(is_told(plan_bath_told, &m.a, "Before salts go in read level and boiling point once more: "));
    m.a.planning.bath.owed_kg = 0;
    sifted.mass_kg = 4.9;
    assert_true(is_told(plan_bath_told, &m.a, ": 4.90 kg is sifted back in, not all. After the last load"));
    end(&m);
}

/* Of a shift that has an end: more than the shortest pour, a minute of 0.05 kg/s, whatever is left. */
static void water_that_the_end_leaves_no_time_for_is_told(void **state)
{
    made m;
    (void)state;
    begin(&m);
    m.a.planning.bath.flow_kg_s = 0.05;
    m.a.plan.table.left_kg = 3.1;
    assert_false(is_told(plan_bath_told, &m.a, "lacks"));
    m.a.problem.end_s = 3700;
    assert_true(is_told(plan_bath_told, &m.a, "As the shift ends the bath still lacks 3.11 L of water: pour it after the end"));
    m.a.plan.table.left_kg = 2.9;
    assert_false(is_told(plan_bath_told, &m.a, "lacks"));
    end(&m);
}

static void what_came_of_the_odds_is_told(void **state)
{
    made m;
    plan_odds *o = &m.a.odds;
    (void)state;
    begin(&m);
    assert_false(is_told(plan_odds_told, &m.a, "dds"));
    *o = (plan_odds){.asked = 0.95};
    assert_true(is_told(plan_odds_told, &m.a, "Its odds were not counted."));
    assert_false(is_told(plan_odds_told, &m.a, "given up"));
    o->plans = 3;
    assert_true(is_told(plan_odds_told, &m.a, "After 3 plans it was given up."));
    assert_true(is_told(plan_odds_told, &m.a, "says what to measure first"));
    assert_true(is_told(plan_odds_told, &m.a, "The draws mix as is likely"));
    o->met = o->replanned = true;
    o->without_last_s = 3060;
    assert_false(is_told(plan_odds_told, &m.a, "given up"));
    assert_true(is_told(plan_odds_told, &m.a, "That costs nothing against the plan without, which is out at 6:51:00"));
    assert_true(is_told(plan_odds_told, &m.a, "says what to measure first"));
    o->replanned = false;
    assert_false(is_told(plan_odds_told, &m.a, "says what to measure first"));
    uncertain mixing = {.thing.words = "mixing time factor"};
    m.s.uncertain = &mixing;
    m.s.uncertain_count = 1;
    assert_false(is_told(plan_odds_told, &m.a, "The draws mix as is likely"));
    m.s.uncertain = NULL;
    m.s.uncertain_count = 0;
    end(&m);
}

static void the_verdict_says_what_it_is_worth(void **state)
{
    made m;
    (void)state;
    begin(&m);
    m.seen[1].gravest_s = 80.2;
    assert_string_equal(plan_verdict(&m.a).text,
                        "2 dips, last out 6:51; every boil back within 81 s of 120 s; nothing above NOTICE");
    m.a.problem.end_s = 3700;
    assert_non_null(strstr(plan_verdict(&m.a).text, "2 dips, last out 6:51, 10 min before the end of the shift (7:01);"));
    m.a.odds.asked = 0.9;
    assert_non_null(strstr(plan_verdict(&m.a).text, "NO PLAN WITH THESE ODDS was found; the nearest: 2 dips"));
    assert_non_null(strstr(plan_rule(&m.a).text, "This sheet has not the odds that were asked for."));
    m.a.stopped = true;
    assert_non_null(strstr(plan_verdict(&m.a).text, "NO PLAN WITH THESE ODDS was found before it was stopped; the nearest"));
    m.a.plan.broken_count = 1;
    m.a.tried = 7;
    assert_string_equal(plan_verdict(&m.a).text,
                        "NO PLAN THAT HOLDS was found before it was stopped: the best of 7 tries breaks 1 limit");
    assert_non_null(strstr(plan_rule(&m.a).text, "This sheet breaks limits: it is no plan to work by."));
    m.a.tried = 0;
    assert_non_null(strstr(plan_verdict(&m.a).text, ": the list's own order breaks 1 limit"));
    m.a.tried = 7;
    m.a.stopped = false;
    m.a.failed_count = 1;
    assert_string_equal(plan_verdict(&m.a).text, "THERE IS NO PLAN: the best of 7 tries breaks 1 limit");
    end(&m);
}

/* In the report in full, in JSON and on the page: a boil that is never back, what hung there, and what the list's own order breaks. */
static void every_form_tells_it(void **state)
{
    made_rest r;
    printed p;
    plan_answer *a = &r.of.a;
    const picture_drawn none = {0};
    const picture_problem well = {""};
    (void)state;
    begin_rest(&r);
    a->listed.table = a->plan.table;
    a->listed.seen = a->plan.seen;
    a->listed.broken_count = a->plan.broken_count = 1;
    a->listed.broken[0] = (boil_plan_break){.what = BOIL_PLAN_BREAKS_WATER, .dip = 1};
    a->plan.broken[0] = (boil_plan_break){.what = BOIL_PLAN_BREAKS_LATE, .dip = 0, .value = 30};
    a->failed_count = a->gives_count = 1;
    a->failed[0] = (boil_plan_condition){.what = BOIL_PLAN_NEEDS_WINDOW};
    a->gives[0] = (boil_plan_relaxation){.what = BOIL_PLAN_GIVES_END};

    printed_begin(&p);
    plan_report(a, &(output){.system = UNITS_SI, .full = true}, p.to);
    char *text = printed_end(&p);
    assert_non_null(strstr(text, "\n The list's own order breaks:\n - pins is in as the bath runs short of water\n"));
    assert_non_null(strstr(text, "\n [ ]  6:05:00  OUT   brackets + pins 2/2\n"));
    assert_non_null(strstr(text, " never "));
    assert_non_null(strstr(text, "not back"));
    free(text);

    printed_begin(&p);
    json_document(plan_documents[0].fields, a, p.to);
    text = printed_end(&p);
    printed_unwrap(text);
    assert_int_equal(printed_times(text, "\"broken\": [ { \"words\": \"pins is in as the bath runs short of water\""), 1);
    assert_int_equal(printed_times(text, "\"broken\": [ { \"words\": \"brackets may have to wait 30 s for the boil\""), 1);
    assert_int_equal(printed_times(text, "\"failed\": [ { \"words\": \"brackets, if nothing else goes in, finds no time"), 1);
    assert_int_equal(printed_times(text, "\"gives\": [ { \"words\": \"an open end\", \"works\": false, \"proved\": false,"), 1);
    assert_int_equal(printed_times(text, "\"slowest_back_s\": null"), 2);
    free(text);

    printed_begin(&p);
    plan_csv(a, p.to);
    text = printed_end(&p);
    assert_non_null(strstr(text, "\n300,6:05:00,out,brackets + pins 2/2,,300,,\n"));
    free(text);

    printed_begin(&p);
    plan_page(a, &(output){.system = UNITS_SI}, &none, &well, p.to);
    text = printed_end(&p);
    assert_int_equal(printed_times(text, ">brackets + pins 2/2<"), 2); /* its bar and its line */
    assert_int_equal(printed_times(text, ">- brackets may have to wait 30 s for the boil<"), 1);
    free(text);
    end(&r.of);
}

/* Behind the words of that text on the page, how far down it stands. */
static double down_at(const char *page, const char *words)
{
    const char *at = strstr(page, words), *y = NULL;
    assert_non_null(at);
    for (const char *next = strstr(page, " y=\""); next != NULL && next < at; next = strstr(next + 1, " y=\""))
        y = next;
    assert_non_null(y);
    return strtod(y + strlen(" y=\""), NULL);
}

/* What hung there stands beside its position's number: the first dip by the first, the second by the second. */
static void what_hung_there_stands_by_its_position(void **state)
{
    static const char *const of[][2] = {{">1 <", ">brackets + pins 2/2<"}, {">2 <", ">covers<"}};
    made_rest r;
    printed p;
    const picture_drawn none = {0};
    const picture_problem well = {""};
    (void)state;
    begin_rest(&r);
    printed_begin(&p);
    plan_page(&r.of.a, &(output){.system = UNITS_SI}, &none, &well, p.to);
    char *text = printed_end(&p);
    for (size_t i = 0; i < 2; i++)
        assert_true(down_at(text, of[i][0]) == down_at(text, of[i][1]));
    assert_true(down_at(text, of[1][0]) > down_at(text, of[0][0]));
    double row = down_at(text, of[1][0]) - down_at(text, of[0][0]), height = 0;
    assert_int_equal(sscanf(strstr(text, "<svg viewBox"), "<svg viewBox=\"0 0 %*d %lf", &height), 1);
    assert_true(height > down_at(text, ">water, break<") && height < down_at(text, ">water, break<") + row);
    free(text);
    end(&r.of);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(each_reason_why_there_is_none_is_told),
        cmocka_unit_test(what_would_have_to_give_is_told),
        cmocka_unit_test(where_the_shift_stands_is_told),
        cmocka_unit_test(what_hangs_too_long_is_told),
        cmocka_unit_test(salts_that_parts_carry_out_are_told),
        cmocka_unit_test(water_that_the_end_leaves_no_time_for_is_told),
        cmocka_unit_test(what_came_of_the_odds_is_told),
        cmocka_unit_test(the_verdict_says_what_it_is_worth),
        cmocka_unit_test(every_form_tells_it),
        cmocka_unit_test(what_hung_there_stands_by_its_position),
    };
    return cmocka_run_group_tests_name("what a plan says", tests, NULL, NULL);
}
