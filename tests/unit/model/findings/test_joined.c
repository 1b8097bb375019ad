/* unit/model/findings/test_joined.c -- how what is found in the runs of a set becomes one list: the gravest grades, what all agree on
   is certain, what only some show is possible; in histories written down by hand. The rules are those of model/boilback.h and of
   model/case/grading.h. */
#include "support/hand_made.h"

#include "case/grading.h"

#define MOST_RUNS 4

typedef struct {
    hand_made likely, run[MOST_RUNS];
    boil_run_of_set other[MOST_RUNS + 1];
    size_t count;
    boil_findings found, possible;
} joined;

/* A run of what floats, used up by so much of the freeboard limit as it leaves; not above 0: nothing floats. */
static void floats(hand_made *m, double used_up, double worst_s)
{
    boil_watched *w = &m->history.summary.watched[BOIL_WATCH_LAYER];
    if (used_up > 0)
        w->worst = (boil_extreme){used_up, worst_s};
}

static hand_made *with(joined *j, boil_closures closures, double used_up)
{
    hand_made *m = &j->run[j->count];
    hand_made_begin(m);
    floats(m, used_up, 100 + (double)j->count);
    j->other[j->count++] = (boil_run_of_set){.closures = closures, .let_go_s = UNKNOWN, .history = m->history};
    return m;
}

static void join_begin(joined *j, double used_up)
{
    memset(j, 0, sizeof *j);
    hand_made_begin(&j->likely);
    floats(&j->likely, used_up, 50);
}

static void join_once(joined *j)
{
    boil_findings_free(&j->found);
    boil_findings_free(&j->possible);
    assert_int_equal(boil_findings_of_unchecked(&j->likely.plant, &j->likely.schedule, NULL, &j->likely.history, j->other,
                                                j->count, &j->found, &j->possible),
                     BOIL_OK);
}

/* The same whatever run stands behind the last. */
static void join(joined *j)
{
    hand_made behind;
    hand_made_begin(&behind);
    floats(&behind, 1.5, 1);
    j->other[j->count] = (boil_run_of_set){.closures = BOIL_CLOSURES_GRAVE, .let_go_s = UNKNOWN, .history = behind.history};
    join_once(j);
    size_t found = j->found.count, possible = j->possible.count;
    boil_certainty first = found > 0 ? j->found.list[0].certainty : BOIL_LIKELY;
    hand_made_begin(&behind);
    j->other[j->count] = (boil_run_of_set){.closures = BOIL_CLOSURES_MILD, .let_go_s = UNKNOWN, .history = behind.history};
    join_once(j);
    assert_true(j->found.count == found && j->possible.count == possible);
    assert_true(found == 0 || j->found.list[0].certainty == first);
}

static void join_free(joined *j)
{
    boil_findings_free(&j->found);
    boil_findings_free(&j->possible);
}

static void begins(joined *j, size_t run, double caution_s, double warning_s)
{
    double *from_s = j->other[run].history.summary.watched[BOIL_WATCH_LAYER].from_s;
    from_s[BOIL_SEVERITY_NOTICE] = caution_s - 10;
    from_s[BOIL_SEVERITY_CAUTION] = caution_s;
    from_s[BOIL_SEVERITY_WARNING] = warning_s;
}

/* As boilback.h says of time_s: first so grave, in any run of the set; a run that is milder begins its own grades alone. */
static void what_is_possible_begins_where_any_run_shows_it(void **state)
{
    (void)state;
    for (int turned = 0; turned < 2; turned++) {
        joined j;
        join_begin(&j, 0);
        with(&j, BOIL_CLOSURES_GRAVE, turned ? 0.7 : 0.75);
        with(&j, BOIL_CLOSURES_SUDDEN, turned ? 0.75 : 0.7);
        with(&j, BOIL_CLOSURES_SUDDEN_3, 0.4);
        begins(&j, turned ? 1 : 0, 250, 300);
        begins(&j, turned ? 0 : 1, 200, 260);
        begins(&j, 2, 90, UNKNOWN);
        join(&j);
        boil_finding f = hand_made_in(&j.possible, "water-layer");
        assert_true(f.severity == BOIL_SEVERITY_WARNING && f.measure == 0.75 && f.worst_s == 100 + turned);
        assert_true(f.time_s == 260 && f.grades[BOIL_SEVERITY_WARNING].from_s == 260);
        assert_true(f.grades[BOIL_SEVERITY_CAUTION].from_s == 90 && f.grades[BOIL_SEVERITY_NOTICE].from_s == 80);
        join_free(&j);
    }
}

/* A third of the limit is a caution, two thirds a warning. */
static void of_two_runs_the_graver_is_kept(void **state)
{
    (void)state;
    const struct {
        double first, second, kept, worst_s;
    } all[] = {
        {0.4, 0.7, 0.7, 101}, {0.7, 0.4, 0.7, 100}, {0.7, 0.75, 0.75, 101}, {0.75, 0.7, 0.75, 100}, {0.7, 0.7, 0.7, 100}};
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++) {
        joined j;
        join_begin(&j, 0);
        with(&j, BOIL_CLOSURES_GRAVE, all[i].first);
        with(&j, BOIL_CLOSURES_SUDDEN, all[i].second);
        join(&j);
        assert_int_equal(j.found.count, 0);
        assert_int_equal(j.possible.count, 1);
        boil_finding f = hand_made_in(&j.possible, "water-layer");
        assert_true(f.severity == BOIL_SEVERITY_WARNING && f.certainty == BOIL_POSSIBLE && f.of_mixing);
        assert_true(f.measure == all[i].kept && f.worst_s == all[i].worst_s);
        join_free(&j);
    }
}

static void what_is_likely_is_not_possible_as_well_unless_graver(void **state)
{
    (void)state;
    const double grave[] = {0.2, 0.45, 0.7};
    for (size_t i = 0; i < 3; i++) {
        joined j;
        join_begin(&j, 0.4);
        with(&j, BOIL_CLOSURES_GRAVE, grave[i]);
        join(&j);
        boil_finding likely = hand_made_in(&j.found, "water-layer"), possible = hand_made_in(&j.possible, "water-layer");
        assert_true(likely.severity == BOIL_SEVERITY_CAUTION && likely.measure == 0.4 && likely.certainty == BOIL_LIKELY);
        assert_int_equal(possible.severity, i == 2 ? BOIL_SEVERITY_WARNING : BOIL_SEVERITIES);
        join_free(&j);
    }
}

/* Of as many mild runs as there are; what they show beyond is nobody's. */
static void certain_is_what_every_mild_run_shows_as_grave(void **state)
{
    (void)state;
    const struct {
        double mild, mild_8;
        boil_certainty certainty;
    } all[] = {{0.4, 0.4, BOIL_CERTAIN}, {0.7, 0.4, BOIL_CERTAIN}, {0.4, 0.2, BOIL_LIKELY},
               {0.2, 0.4, BOIL_LIKELY},  {0, 0.4, BOIL_LIKELY},    {0.4, 0, BOIL_LIKELY}};
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++) {
        joined j;
        join_begin(&j, 0.45);
        with(&j, BOIL_CLOSURES_MILD, all[i].mild);
        with(&j, BOIL_CLOSURES_MILD_8, all[i].mild_8);
        join(&j);
        assert_int_equal(hand_made_in(&j.found, "water-layer").certainty, all[i].certainty);
        assert_int_equal(j.possible.count, 0);
        join_free(&j);
    }
}

/* A likely run that went on is likely still; made with another drift it is possible. */
static void a_likely_run_gone_on_is_likely(void **state)
{
    (void)state;
    for (int usual = 0; usual < 2; usual++) {
        joined j;
        join_begin(&j, 0.4);
        with(&j, BOIL_CLOSURES_LIKELY, 0.7);
        j.other[0].usual_drift = usual == 1;
        join(&j);
        boil_finding likely = hand_made_in(&j.found, "water-layer"), possible = hand_made_in(&j.possible, "water-layer");
        assert_int_equal(likely.severity, usual ? BOIL_SEVERITY_CAUTION : BOIL_SEVERITY_WARNING);
        assert_int_equal(possible.severity, usual ? BOIL_SEVERITY_WARNING : BOIL_SEVERITIES);
        assert_int_equal(likely.certainty, BOIL_LIKELY);
        join_free(&j);
    }
}

/* What the wide pool's drift shows milder, or not, is likely only so far; what does not hang on mixing stands. */
static void the_wide_drift_takes_what_is_likely_back(void **state)
{
    (void)state;
    const struct {
        double likely, wide;
        boil_severity found, possible;
    } all[] = {{0.7, 0.75, BOIL_SEVERITY_WARNING, BOIL_SEVERITIES},
               {0.7, 0.4, BOIL_SEVERITY_CAUTION, BOIL_SEVERITY_WARNING},
               {0.7, 0, BOIL_SEVERITIES, BOIL_SEVERITY_WARNING},
               {0.4, 0.7, BOIL_SEVERITY_CAUTION, BOIL_SEVERITIES}};
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++) {
        joined j;
        join_begin(&j, all[i].likely);
        j.likely.history.summary.watched[BOIL_WATCH_TOO_HOT].worst = (boil_extreme){3, 60};
        hand_made *wide = with(&j, BOIL_CLOSURES_LIKELY_WIDE, all[i].wide);
        wide->history.summary.watched[BOIL_WATCH_SURGE].worst = (boil_extreme){2.5, 60};
        j.other[0].history = wide->history;
        join(&j);
        boil_finding of_likely = hand_made_in(&j.found, "water-layer");
        assert_int_equal(of_likely.severity, all[i].found);
        assert_int_equal(hand_made_in(&j.possible, "water-layer").severity, all[i].possible);
        assert_int_equal(hand_made_in(&j.found, "bath-too-hot").severity, BOIL_SEVERITY_CAUTION);
        bool gone = all[i].found == BOIL_SEVERITIES; /* then what it shows instead is likely */
        assert_int_equal(hand_made_in(&j.found, "steam-surge").severity, gone ? BOIL_SEVERITY_NOTICE : BOIL_SEVERITIES);
        bool milder = all[i].possible != BOIL_SEVERITIES;
        assert_int_equal(j.found.count, 2);
        if (of_likely.severity != BOIL_SEVERITIES)
            assert_true(of_likely.measure == (milder ? all[i].wide : all[i].likely) && of_likely.certainty == BOIL_LIKELY);
        join_free(&j);
    }
}

/* A trigger run of a spell from 600 s to 900 s, in which it lets go at 700 s: it overflows at the time given. */
static void with_trigger(joined *j, double used_up, double overflow_s)
{
    hand_made *m = with(j, BOIL_CLOSURES_TRIGGER, used_up);
    m->history.quiet_count = 2;
    m->quiet[0].start_s = 100;
    m->quiet[0].end_s = 200;
    m->quiet[1].start_s = 600;
    m->quiet[1].end_s = 900;
    m->quiet[2].end_s = 2000; /* behind the last */
    m->history.summary.overflow_s = overflow_s;
    m->history.summary.watched[BOIL_WATCH_OVERFLOW].worst = (boil_extreme){0.01, overflow_s};
    boil_run_of_set *r = &j->other[j->count - 1];
    r->let_go_s = 700;
    r->history = m->history;
}

static void what_lets_go_before_the_boil_is_marked(void **state)
{
    (void)state;
    const struct {
        double overflow_s, let_go_s;
        bool before;
    } all[] = {{699.9, 700, false}, {700, 700, true},  {900, 700, true},  {900.1, 700, false},
               {650, 600, true},    {950, 600, false}, {950, 900, false}, {901, 901, true}};
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++) {
        joined j;
        join_begin(&j, 0.4);
        with_trigger(&j, 0.7, all[i].overflow_s);
        j.other[0].let_go_s = all[i].let_go_s;
        join(&j);
        assert_int_equal(hand_made_in(&j.possible, "overflow").before_boil, all[i].before);
        assert_true(hand_made_in(&j.possible, "water-layer").before_boil);
        assert_true(hand_made_in(&j.found, "water-layer").before_boil);
        join_free(&j);
    }
}

/* Where it is as grave as what is likely; and kept by a graver measure of the same grade, not by a graver grade. */
static void a_mark_goes_with_its_grade(void **state)
{
    (void)state;
    joined j;
    const double as_grave[] = {0.6, 0.69}; /* as 0.7 */
    for (int i = 0; i < 2; i++) {
        join_begin(&j, 0.7);
        with_trigger(&j, as_grave[i], UNKNOWN);
        join(&j);
        assert_int_equal(hand_made_in(&j.found, "water-layer").before_boil, i == 1);
        join_free(&j);
    }
    const struct {
        double trigger, other;
        bool first, before;
    } all[] = {{0.4, 0.7, true, false},  {0.69, 0.7, true, true},  {0.69, 0.7, false, true},
               {0.7, 0.69, false, true}, {0.4, 0.7, false, false}, {0.7, 0.4, false, true}};
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++) {
        join_begin(&j, 0);
        if (all[i].first)
            with_trigger(&j, all[i].trigger, UNKNOWN);
        with(&j, BOIL_CLOSURES_GRAVE, all[i].other);
        if (!all[i].first)
            with_trigger(&j, all[i].trigger, UNKNOWN);
        join(&j);
        boil_finding f = hand_made_in(&j.possible, "water-layer");
        assert_true(f.severity == BOIL_SEVERITY_WARNING && f.before_boil == all[i].before);
        join_free(&j);
    }
}

/* It says nothing but that: its history is empty. */
static void a_refused_run_is_not_resolved_and_nothing_else(void **state)
{
    (void)state;
    const boil_closures closures[] = {BOIL_CLOSURES_GRAVE, BOIL_CLOSURES_MILD};
    for (int i = 0; i < 2; i++) {
        joined j;
        join_begin(&j, 0.4);
        with(&j, closures[i], 0.7);
        j.other[0].refused = true;
        j.other[0].history.end = BOIL_RUN_FAILED;
        join(&j);
        assert_int_equal(j.possible.count, 1);
        boil_finding f = hand_made_in(&j.possible, "not-resolved");
        assert_true(f.severity == BOIL_SEVERITY_WARNING && isnan(f.time_s));
        assert_int_equal(hand_made_in(&j.found, "water-layer").certainty, BOIL_LIKELY);
        join_free(&j);
    }
}

/* By rank, then by time, and what holds for the whole run before what begins in it; then as they are listed. */
static void the_list_goes_by_rank_and_time(void **state)
{
    (void)state;
    joined j;
    join_begin(&j, 0);
    hand_made *m = &j.likely;
    m->history.quiet_count = m->history.additions_count = 1;
    m->quiet[0].start_s = 500; /* 200 s without a boil, and as long once more of liquid: the same row of grades */
    m->quiet[0].end_s = 700;
    m->additions[0].kind = BOIL_ACTION_LIQUID;
    m->additions[0].recovery_s = 200;
    m->history.summary.watched[BOIL_WATCH_TOO_HOT].worst = (boil_extreme){3, 60};
    for (int i = 0; i < 2; i++) {
        m->additions[0].boil_lost_s = i == 0 ? 400 : 900;
        join(&j);
        assert_int_equal(j.found.count, 3);
        assert_string_equal(j.found.list[0].id, "bath-too-hot");
        assert_true(j.found.list[1].rank == j.found.list[2].rank && j.found.list[0].rank > j.found.list[1].rank);
        assert_string_equal(j.found.list[1].id, i == 0 ? "liquid-stops-boil" : "boil-lost-long");
        assert_int_equal(boil_findings_gravest(&j.found), BOIL_SEVERITY_CAUTION);
    }
    join_free(&j);
    join_begin(&j, 0);
    m->history.quiet_count = m->history.additions_count = 1;
    m->quiet[0].end_s = 100;
    m->additions[0].quiet_poured_kg = m->history.summary.valve_quiet_kg = 1;
    m->plant.control.mode = BOIL_WATER_CONTROL_PROPORTIONED;
    m->plant.control.rate_kg_s = 1;
    join(&j);
    assert_string_equal(j.found.list[0].id, "control-on-quiet-bath"); /* it has no time */
    assert_string_equal(j.found.list[1].id, "water-on-quiet-bath");
    assert_true(j.found.list[0].rank == j.found.list[1].rank);
    join_free(&j);
}

/* At the rim as the still surface is, at the same moment: as they are listed, whichever run shows which. */
static void what_is_as_grave_at_once_goes_as_it_is_listed(void **state)
{
    (void)state;
    for (int i = 0; i < 2; i++) {
        joined j;
        join_begin(&j, 0);
        hand_made *swelled = with(&j, i == 0 ? BOIL_CLOSURES_GRAVE : BOIL_CLOSURES_SUDDEN, 0);
        hand_made *still = with(&j, i == 0 ? BOIL_CLOSURES_SUDDEN : BOIL_CLOSURES_GRAVE, 0);
        boil_summary *of = &swelled->history.summary;
        of->overflow_s = 500;
        of->watched[BOIL_WATCH_OVERFLOW].worst = (boil_extreme){0, 500};
        still->history.summary.watched[BOIL_WATCH_OVERFLOW_STILL].worst = (boil_extreme){0, 500};
        j.other[0].history = (i == 0 ? swelled : still)->history;
        j.other[1].history = (i == 0 ? still : swelled)->history;
        join(&j);
        assert_int_equal(j.possible.count, 2);
        const boil_finding *f = j.possible.list;
        assert_true(f[0].rank == f[1].rank && f[0].time_s == f[1].time_s);
        assert_true(f[0].kind == BOIL_FOUND_OVERFLOW && f[1].kind == BOIL_FOUND_OVERFLOW_STILL);
        assert_close(f[0].rank, boil_grading_rank(&boil_gradings[f[0].kind], 0, BOIL_SEVERITY_DANGER, false), 1e-12, 0);
        join_free(&j);
    }
}

/* One that its row has not is told from the moment that made it so; one that it has not, below it, from none. */
static void a_grade_that_was_raised_is_told_from_its_moment(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    m.history.quiet_count = 1;
    m.quiet[0].end_s = UNKNOWN;
    m.quiet[0].end_left_m = 0.2;
    boil_finding f = hand_made_find(&m, "layer-outlasts-run");
    assert_true(f.severity == BOIL_SEVERITY_NOTICE && f.grades[BOIL_SEVERITY_NOTICE].from_s == 3600);
    assert_true(isnan(f.grades[BOIL_SEVERITY_WARNING].from_s) && isnan(f.needed_W) && isnan(f.needed_kg));
    m.quiet[0].end_left_m = 0.1;
    f = hand_made_find(&m, "layer-outlasts-run");
    assert_true(f.severity == BOIL_SEVERITY_WARNING && f.grades[BOIL_SEVERITY_WARNING].from_s == 3600);
    assert_true(isnan(f.grades[BOIL_SEVERITY_NOTICE].from_s) && isnan(f.grades[BOIL_SEVERITY_CAUTION].from_s));
    boil_watched *w = &m.history.summary.watched[BOIL_WATCH_TOO_HOT];
    *w = (boil_watched){.worst = {3, 900}, .from_s = {100, UNKNOWN, UNKNOWN, UNKNOWN}};
    assert_true(hand_made_find(&m, "bath-too-hot").time_s == 100); /* when it was first out, for want of a better one */
}

static void grades_are_told_from_the_lowest_to_the_one_reached(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    boil_watched *w = &m.history.summary.watched[BOIL_WATCH_TOO_HOT];
    const double high_K = m.plant.limits.boiling_point_high_K;
    *w = (boil_watched){.worst = {14, 900}, .from_s = {100, 300, UNKNOWN, UNKNOWN}, .outside_s = 70, .spells = 3};
    boil_finding f = hand_made_find(&m, "bath-too-hot");
    assert_true(f.severity == BOIL_SEVERITY_WARNING && f.grades_count == BOIL_SEVERITIES && f.count == 3 && f.outside_s == 70);
    assert_true(f.time_s == 300 && f.grades[0].from_s == 100 && f.grades[1].from_s == 300 && f.grades[2].from_s == 300);
    assert_true(isnan(f.grades[3].from_s) && isnan(f.grades[3].limit));
    const double past_K[] = {0, 2.78, 13.9}; /* case/grading.c */
    for (int i = 0; i < 3; i++) {
        assert_close(f.grades[i].limit, high_K + past_K[i], 1e-12, 0);
        assert_int_equal(f.grades[i].severity, i);
    }
    w->from_s[0] = w->from_s[1] = UNKNOWN;
    assert_true(hand_made_find(&m, "bath-too-hot").time_s == 900);
    w->from_s[2] = 0;
    w->outside_s = 0;
    w->spells = 0;
    f = hand_made_find(&m, "bath-too-hot");
    assert_true(f.time_s == 0 && isnan(f.outside_s) && f.count == 1);
    w->worst = (boil_extreme){1, 900};
    f = hand_made_find(&m, "bath-too-hot");
    assert_true(isnan(f.grades[1].from_s) && isnan(f.grades[2].from_s));
}

/* Times beyond the limit are summed, each grade is from its first, the graver is told. */
static void finds_of_a_kind_are_one(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    m.history.quiet_count = 3;
    const double start_s[] = {300, 1000, 3000}, lasted_s[] = {200, 500, 200};
    for (int i = 0; i < 3; i++) {
        m.quiet[i].start_s = start_s[i];
        m.quiet[i].end_s = start_s[i] + lasted_s[i];
    }
    boil_finding f = hand_made_find(&m, "boil-lost-long");
    assert_true(f.severity == BOIL_SEVERITY_CAUTION && f.count == 3 && f.value == 500 && f.time_s == 1000 && f.worst_s == 1500);
    assert_close(f.outside_s, 80 + 380 + 80, 1e-12, 0);
    assert_true(f.grades[BOIL_SEVERITY_NOTICE].from_s == 300 && f.grades[BOIL_SEVERITY_CAUTION].from_s == 1000);
    m.quiet[2].end_s = 3500; /* as long: the first is told */
    f = hand_made_find(&m, "boil-lost-long");
    assert_true(f.worst_s == 1500 && f.count == 3);
}

static void what_cannot_be_judged_is_refused(void **state)
{
    (void)state;
    joined j;
    join_begin(&j, 0.4);
    with(&j, BOIL_CLOSURES_GRAVE, 0.7);
    hand_made *m = &j.likely;
    const boil_history *h = &m->history;
    boil_schedule_init(&m->schedule, 3600);
    boil_findings *f = &j.found, *may = &j.possible;
    assert_int_equal(boil_findings_of(&m->plant, &m->schedule, NULL, h, j.other, 1, NULL, may), BOIL_BAD_INPUT);
    assert_int_equal(boil_findings_of(&m->plant, &m->schedule, NULL, h, j.other, 1, f, NULL), BOIL_BAD_INPUT);
    assert_int_equal(boil_findings_of(&m->plant, &m->schedule, NULL, h, NULL, 1, f, may), BOIL_BAD_INPUT);
    assert_int_equal(boil_findings_of(&m->plant, &m->schedule, NULL, NULL, NULL, 0, f, may), BOIL_BAD_INPUT);
    assert_int_equal(boil_findings_of(&m->plant, NULL, NULL, h, NULL, 0, f, may), BOIL_BAD_INPUT);
    assert_int_equal(boil_findings_of(NULL, &m->schedule, NULL, h, NULL, 0, f, may), BOIL_BAD_INPUT);
    assert_true(f->list == NULL && f->count == 0 && may->list == NULL);
    assert_int_equal(boil_findings_of(&m->plant, &m->schedule, NULL, h, j.other, 1, f, may), BOIL_OK);
    assert_int_equal(may->count, 1);
    join_free(&j);
    assert_int_equal(boil_findings_of(&m->plant, &m->schedule, NULL, h, NULL, 0, f, NULL), BOIL_OK);
    assert_int_equal(f->count, 1);
    join_free(&j);
    assert_int_equal(boil_findings_gravest(NULL), BOIL_SEVERITY_NOTICE);
    assert_int_equal(boil_findings_gravest(f), BOIL_SEVERITY_NOTICE);
    assert_string_equal(boil_severity_word(BOIL_SEVERITY_DANGER), "DANGER");
    assert_string_equal(boil_severity_word(BOIL_SEVERITIES), "");
    boil_findings_free(NULL);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(of_two_runs_the_graver_is_kept),
        cmocka_unit_test(what_is_possible_begins_where_any_run_shows_it),
        cmocka_unit_test(what_is_likely_is_not_possible_as_well_unless_graver),
        cmocka_unit_test(certain_is_what_every_mild_run_shows_as_grave),
        cmocka_unit_test(a_likely_run_gone_on_is_likely),
        cmocka_unit_test(the_wide_drift_takes_what_is_likely_back),
        cmocka_unit_test(what_lets_go_before_the_boil_is_marked),
        cmocka_unit_test(a_mark_goes_with_its_grade),
        cmocka_unit_test(a_refused_run_is_not_resolved_and_nothing_else),
        cmocka_unit_test(the_list_goes_by_rank_and_time),
        cmocka_unit_test(what_is_as_grave_at_once_goes_as_it_is_listed),
        cmocka_unit_test(a_grade_that_was_raised_is_told_from_its_moment),
        cmocka_unit_test(grades_are_told_from_the_lowest_to_the_one_reached),
        cmocka_unit_test(finds_of_a_kind_are_one),
        cmocka_unit_test(what_cannot_be_judged_is_refused),
    };
    return cmocka_run_group_tests_name("joined findings", tests, NULL, NULL);
}
