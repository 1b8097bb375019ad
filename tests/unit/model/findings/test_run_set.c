/* unit/model/findings/test_run_set.c -- which runs a case is judged by: those that model/boilback.h says, beside the likely one; and
   which moments are kept to set off what floats. */
#include <gsl/gsl_errno.h>
#include <string.h>

#include "support/close.h"

#include "case/closures.h"
#include "findings/run_set.h"
#include "findings/trigger.h"
#include "support/cases.h"

#define MOST_ACTIONS 3

static boil_run_set set_of(const boil_plant *p, const boil_run_options *o, double duration_s, const boil_action *actions,
                           size_t count)
{
    boil_run_set set;
    boil_schedule s = schedule_with(duration_s, actions, count);
    assert_int_equal(boil_run_set_of(p, &s, o, &set), BOIL_OK);
    boil_schedule_free(&s);
    return set;
}

static size_t count_of(const boil_run_set *set, boil_closures c)
{
    size_t count = 0;
    for (size_t i = 0; i < set->count; i++)
        count += set->other[i].closures == c;
    return count;
}

static const boil_run_of_set *first_of(const boil_run_set *set, boil_closures c)
{
    for (size_t i = 0; i < set->count; i++)
        if (set->other[i].closures == c)
            return &set->other[i];
    return NULL;
}

static boil_plant shallow_plant(void)
{
    boil_plant p = open_plant(34e3);
    p.tank.depth_m = 0.86;
    return p;
}

/* Nothing floats and nothing hangs on mixing: the likely run, the wide drift, and two grave ones. */
static void a_calm_bath_is_judged_by_four_runs(void **state)
{
    (void)state;
    boil_plant p = shallow_plant();
    boil_run_options o = coarse();
    boil_run_set set = set_of(&p, &o, 120, NULL, 0);
    const boil_closures made[] = {BOIL_CLOSURES_LIKELY_WIDE, BOIL_CLOSURES_GRAVE, BOIL_CLOSURES_SUDDEN};
    assert_int_equal(set.count, 3);
    for (size_t i = 0; i < 3; i++) {
        assert_int_equal(set.other[i].closures, made[i]);
        assert_true(isnan(set.other[i].let_go_s) && !set.other[i].continued && !set.other[i].refused);
        assert_int_equal(set.other[i].history.rows_count, 0);
    }
    boil_run_set_free(&set);
}

/* Cut while the water floats: what may be grave goes on beyond the end and does nothing more then, mild and wide ones do not. */
static void a_run_cut_while_water_floats_goes_on(void **state)
{
    (void)state;
    boil_plant p = shallow_plant();
    boil_run_options o = coarse();
    boil_action actions[MOST_ACTIONS] = {hung_plate_action(300, 40), two_gallons_action(330, 60), two_gallons_action(450, 60)};
    boil_run_set set = set_of(&p, &o, 400, actions, MOST_ACTIONS);
    const boil_closures further[] = {BOIL_CLOSURES_LIKELY, BOIL_CLOSURES_GRAVE, BOIL_CLOSURES_SUDDEN, BOIL_CLOSURES_SUDDEN_3,
                                     BOIL_CLOSURES_SUDDEN_8};
    assert_close(set.likely.end_s, 400, 1e-12, 0);
    for (size_t i = 0; i < sizeof further / sizeof further[0]; i++) {
        const boil_run_of_set *r = first_of(&set, further[i]);
        assert_non_null(r);
        assert_true(r->continued && r->history.end_s > 400);
        assert_int_equal(r->history.additions_count, 1);
    }
    const boil_run_of_set *wide = first_of(&set, BOIL_CLOSURES_LIKELY_WIDE);
    assert_true(!wide->continued && wide->history.end_s == 400);
    assert_true(first_of(&set, BOIL_CLOSURES_MILD) == NULL || !first_of(&set, BOIL_CLOSURES_MILD)->continued);
    size_t triggers = count_of(&set, BOIL_CLOSURES_TRIGGER);
    assert_true(triggers > 0 && triggers <= BOIL_TRIGGERS);
    for (size_t i = 0; i < set.count; i++)
        if (set.other[i].closures == BOIL_CLOSURES_TRIGGER) {
            assert_true(set.other[i].let_go_s >= 330);
            assert_true(set.other[i].history.end_s <= set.other[i].let_go_s + 60 + 1e-6); /* for a minute */
            assert_int_equal(set.other[i].history.additions_count, 1);
        }
    boil_run_set_free(&set);
}

/* A load put into the quiet at the end is reason enough to see the boil come back; the one that stilled it is none. */
static void what_met_a_quiet_bath_is_followed_to_its_boil(void **state)
{
    (void)state;
    boil_plant p = shallow_plant();
    boil_run_options o = coarse();
    boil_action loads[2] = {hung_plate_action(300, 60), hung_plate_action(315, 5)};
    boil_run_set alone = set_of(&p, &o, 340, loads, 1);
    assert_true(alone.likely.quiet_count == 1 && isnan(alone.likely.quiet[0].end_s));
    assert_null(first_of(&alone, BOIL_CLOSURES_LIKELY));
    boil_run_set_free(&alone);
    boil_run_set met = set_of(&p, &o, 340, loads, 2);
    assert_non_null(first_of(&met, BOIL_CLOSURES_LIKELY));
    assert_int_equal(count_of(&met, BOIL_CLOSURES_SUDDEN_8), 0);
    assert_int_equal(count_of(&met, BOIL_CLOSURES_TRIGGER), 0); /* lowered through nothing */
    boil_run_set_free(&met);
    p.charge.temperature_K = CELSIUS(100);
    boil_run_set cold = set_of(&p, &o, 60, NULL, 0);
    assert_null(first_of(&cold, BOIL_CLOSURES_LIKELY));
    assert_int_equal(cold.likely.quiet_count, 1);
    boil_run_set_free(&cold);
}

/* A bath that foams is judged by the usual drift as well, in its grave runs; one that lets steam go quickly in its likely one. */
static void another_drift_is_held_against_the_usual(void **state)
{
    (void)state;
    const double usual = boil_swell_default().drift, drifts[] = {0.8 * usual, usual, 1.1 * usual};
    for (int i = 0; i < 3; i++) {
        boil_plant p = shallow_plant();
        boil_run_options o = coarse();
        p.pool.drift = drifts[i];
        assert_null(boil_plant_problem(&p));
        boil_run_set set = set_of(&p, &o, 120, NULL, 0);
        size_t grave = 0, likely = 0, all = 0;
        for (size_t k = 0; k < set.count; k++)
            if (set.other[k].usual_drift) {
                grave += set.other[k].closures == BOIL_CLOSURES_GRAVE || set.other[k].closures == BOIL_CLOSURES_SUDDEN;
                likely += set.other[k].closures == BOIL_CLOSURES_LIKELY;
                all++;
            }
        assert_int_equal(grave, i == 0 ? 2 : 0);
        assert_int_equal(likely, i == 2 ? 1 : 0);
        assert_int_equal(all, i == 0 ? 2 : i == 2 ? 1 : 0);
        boil_run_set_free(&set);
    }
}

/* Strong enough for the curve with the graver elevation to leave what is known, and not for its own: the grave runs are made once more
   with that. Where the likely run leaves it as well it says so itself. */
static void what_the_graver_curve_hides_is_looked_at_with_the_own(void **state)
{
    (void)state;
    boil_plant p = open_plant(60e3);
    boil_run_options o = coarse();
    p.tank.depth_m = 1.2;
    p.charge.value = CELSIUS(192);
    for (int i = 0; i < 2; i++) {
        boil_run_set set = set_of(&p, &o, i == 0 ? 520 : 1200, NULL, 0);
        assert_int_equal(set.likely.end, i == 0 ? BOIL_RUN_DONE : BOIL_RUN_OUT_OF_RANGE);
        size_t own = 0, out = 0;
        for (size_t k = 0; k < set.count; k++) {
            own += set.other[k].own_elevation && set.other[k].history.end == BOIL_RUN_DONE;
            out += !set.other[k].own_elevation && set.other[k].history.end == BOIL_RUN_OUT_OF_RANGE;
        }
        assert_int_equal(own, i == 0 ? 2 : 0);
        assert_int_equal(out, i == 0 ? 2 : 3);
        boil_run_set_free(&set);
    }
}

static bool is_certain(const boil_findings *f, boil_certainty least)
{
    bool any = false;
    for (size_t i = 0; i < f->count; i++)
        any = any || (f->list[i].of_mixing && f->list[i].certainty >= least);
    return any;
}

/* Judged by the runs of the set but those: a mild one is made where the likely run says anything that hangs on mixing, and the second
   where the first leaves some of that certain. Says how many there are. */
static size_t check_mild_runs(const boil_plant *p, double duration_s, boil_action *actions, size_t count)
{
    boil_run_options o = coarse();
    boil_schedule s = {.actions = actions, .count = count, .duration_s = duration_s};
    boil_run_set set = set_of(p, &o, duration_s, actions, count);
    size_t mild = 0;
    while (mild < set.count && set.other[mild].closures != BOIL_CLOSURES_MILD &&
           set.other[mild].closures != BOIL_CLOSURES_TRIGGER)
        mild++;
    boil_findings found, possible;
    assert_int_equal(boil_findings_of(p, &s, NULL, &set.likely, set.other, mild, &found, &possible), BOIL_OK);
    bool made = mild < set.count && set.other[mild].closures == BOIL_CLOSURES_MILD;
    assert_int_equal(made, is_certain(&found, BOIL_LIKELY));
    boil_findings_free(&found);
    boil_findings_free(&possible);
    size_t second = count_of(&set, BOIL_CLOSURES_MILD_8);
    if (made && count_of(&set, BOIL_CLOSURES_SUDDEN_8) > 0) { /* something floats */
        assert_int_equal(boil_findings_of(p, &s, NULL, &set.likely, set.other, mild + 1, &found, &possible), BOIL_OK);
        assert_int_equal(second, is_certain(&found, BOIL_CERTAIN));
        boil_findings_free(&found);
        boil_findings_free(&possible);
    }
    boil_run_set_free(&set);
    return made + second;
}

static void mild_runs_are_made_where_they_could_take_certainty(void **state)
{
    (void)state;
    boil_plant p = shallow_plant();
    const double pours_kg[] = {0, 1.5, 3, 7.5};
    for (size_t i = 0; i < sizeof pours_kg / sizeof pours_kg[0]; i++) {
        boil_action actions[2] = {hung_plate_action(300, 40), two_gallons_action(330, 60)};
        actions[1].is.water.mass_kg = pours_kg[i];
        check_mild_runs(&p, 600, actions, pours_kg[i] > 0 ? 2 : 1);
    }
    p.charge.temperature_K = CELSIUS(100); /* what floats as it begins: of little of it the first takes all certainty */
    p.afloat = (boil_water_afloat){0.42, CELSIUS(30)};
    assert_int_equal(check_mild_runs(&p, 60, NULL, 0), 1);
    p.afloat.mass_kg = 0.6;
    assert_int_equal(check_mild_runs(&p, 60, NULL, 0), 2);
}

static bool leaves_too_little(const boil_history *h, double freeboard_m)
{
    for (size_t i = 0; i < h->quiet_count; i++)
        if (h->quiet[i].left_hot_m < freeboard_m)
            return true;
    return false;
}

/* Those of slow heat between the two are made where in any run what floats would, hot, leave less than is asked for: in none of them, in
   the grave ones alone, in all. */
static void runs_of_slow_heat_are_made_where_anything_floats(void **state)
{
    (void)state;
    const double pours_kg[] = {0.4, 0.44, 0.5};
    boil_plant p = shallow_plant();
    boil_run_options o = coarse();
    for (int i = 0; i < 3; i++) {
        boil_action actions[2] = {hung_plate_action(300, 40), two_gallons_action(330, 60)};
        actions[1].is.water.mass_kg = pours_kg[i];
        boil_run_set set = set_of(&p, &o, 600, actions, 2);
        const double limit_m = p.limits.freeboard_m;
        assert_int_equal(leaves_too_little(&set.likely, limit_m), i == 2);
        assert_int_equal(leaves_too_little(&first_of(&set, BOIL_CLOSURES_GRAVE)->history, limit_m), i >= 1);
        assert_int_equal(count_of(&set, BOIL_CLOSURES_SUDDEN_3), i >= 1);
        assert_int_equal(count_of(&set, BOIL_CLOSURES_SUDDEN_8), i >= 1);
        boil_run_set_free(&set);
    }
}

/* Water afloat from the start and nothing to do: gone on with all the same; what is due as the run ends is still done. */
static void what_is_due_at_the_end_is_done(void **state)
{
    (void)state;
    boil_plant p = shallow_plant();
    boil_run_options o = coarse();
    p.charge.temperature_K = CELSIUS(120);
    p.afloat = (boil_water_afloat){5, CELSIUS(30)};
    boil_run_set idle = set_of(&p, &o, 60, NULL, 0);
    assert_true(first_of(&idle, BOIL_CLOSURES_LIKELY) != NULL && first_of(&idle, BOIL_CLOSURES_LIKELY)->continued);
    boil_run_set_free(&idle);
    boil_action stir = {.time_s = 60, .kind = BOIL_ACTION_STIR, .is.stir_s = 20};
    boil_run_set stirred = set_of(&p, &o, 60, &stir, 1);
    assert_int_equal(first_of(&stirred, BOIL_CLOSURES_GRAVE)->history.acts_count, 1);
    boil_run_set_free(&stirred);
}

/* A load through water that would leave less than is asked for: its case is judged as if it had been held back, too. */
static void a_load_through_water_is_judged_held_back_as_well(void **state)
{
    (void)state;
    boil_plant p = shallow_plant();
    boil_run_options o = coarse();
    boil_action actions[MOST_ACTIONS] = {hung_plate_action(300, 40), two_gallons_action(330, 60), hung_plate_action(395, 10)};
    boil_run_set set = set_of(&p, &o, 600, actions, MOST_ACTIONS);
    size_t held = 0;
    for (size_t i = 0; i < set.count; i++)
        if (set.other[i].held_back) {
            held++;
            assert_false(boil_closures_is_mild(set.other[i].closures));
            for (size_t k = 0; k < set.other[i].history.loads_count; k++)
                assert_true(set.other[i].history.loads[k].mass_kg == (k == 0 ? actions[0].is.load.mass_kg : 1e-3));
        }
    assert_true(held >= 4);
    size_t lowering[2] = {0, 0}, grave[2] = {0, 0}; /* as the load is lowered, and of itself: in both */
    for (size_t i = 0; i < set.count; i++)
        if (set.other[i].closures == BOIL_CLOSURES_TRIGGER) {
            lowering[set.other[i].held_back] += set.other[i].let_go_s == 395;
            grave[set.other[i].held_back] += set.other[i].let_go_s > 395;
        }
    assert_true(lowering[0] > 0 && lowering[1] > 0 && grave[0] > 0 && grave[1] > 0);
    boil_run_set_free(&set);
}

/* Of a set only one is traced, and of triggers those. */
static void one_run_of_a_set_keeps_its_rows(void **state)
{
    (void)state;
    const boil_closures traced[] = {BOIL_CLOSURES_GRAVE, BOIL_CLOSURES_TRIGGER};
    boil_plant p = shallow_plant();
    boil_action actions[2] = {hung_plate_action(300, 40), two_gallons_action(330, 60)};
    for (int i = 0; i < 2; i++) {
        boil_run_options o = coarse();
        o.row_interval_s = 30;
        o.traced = traced[i];
        boil_run_set set = set_of(&p, &o, 400, actions, 2);
        assert_true(set.likely.rows_count > 0);
        for (size_t k = 0; k < set.count; k++) {
            boil_closures c = set.other[k].closures;
            bool rows = c == traced[i] || (i == 1 && (c == BOIL_CLOSURES_SUDDEN || c == BOIL_CLOSURES_SUDDEN_8));
            assert_int_equal(set.other[k].history.rows_count > 0, rows);
        }
        boil_run_set_free(&set);
    }
}

static boil_run_of_set with_freeboard(boil_closures c, double freeboard_m)
{
    return (boil_run_of_set){.closures = c, .history.summary.freeboard_min_m.value = freeboard_m};
}

/* Of those that count: neither mild nor refused, and of two alike the first. */
static void the_least_freeboard_is_that_of_the_gravest(void **state)
{
    (void)state;
    boil_run_set set = {.likely.summary.freeboard_min_m.value = 0.3, .count = 0};
    assert_ptr_equal(boil_run_set_least_freeboard(&set), &set.likely);
    set.other[0] = with_freeboard(BOIL_CLOSURES_GRAVE, 0.3);
    set.other[1] = with_freeboard(BOIL_CLOSURES_SUDDEN, 0.2);
    set.other[2] = with_freeboard(BOIL_CLOSURES_MILD, 0.1);
    set.other[3] = with_freeboard(BOIL_CLOSURES_SUDDEN_3, 0.1);
    set.other[3].refused = true;
    set.other[4] = with_freeboard(BOIL_CLOSURES_TRIGGER, 0.2);
    set.other[5] = with_freeboard(BOIL_CLOSURES_TRIGGER, 0.1); /* behind the last */
    set.count = 1;
    assert_ptr_equal(boil_run_set_least_freeboard(&set), &set.likely);
    set.count = 5;
    assert_ptr_equal(boil_run_set_least_freeboard(&set), &set.other[1].history);
}

static void a_set_of_no_case_is_refused(void **state)
{
    (void)state;
    boil_plant p = shallow_plant();
    boil_run_options o = coarse();
    boil_schedule s;
    boil_run_set set;
    boil_schedule_init(&s, 60);
    assert_int_equal(boil_run_set_of(&p, &s, &o, NULL), BOIL_BAD_INPUT);
    assert_int_equal(boil_run_set_of(NULL, &s, &o, &set), BOIL_BAD_INPUT);
    assert_int_equal(set.count, 0);
    boil_run_set_free(NULL);
}

/* The largest first, so many and no more; the next set's take their places among them. */
static void the_largest_moments_are_kept(void **state)
{
    (void)state;
    const double first_kg[BOIL_TRIGGERS + 2] = {3, 1, 7, 5}, more_kg[2] = {4, 9};
    boil_triggers to = {.count = 0};
    for (size_t i = 0; i < 4; i++) {
        boil_triggers from = {.list = {{NULL, 10 * (double)i, first_kg[i]}}, .count = 1};
        boil_triggers_move(&to, &from);
        assert_int_equal(from.count, 0);
    }
    boil_triggers more = {.list = {{NULL, 100, more_kg[0]}, {NULL, 110, more_kg[1]}}, .count = 2};
    boil_triggers_move(&to, &more);
    const double sorted[] = {9, 7, 5, 4, 3, 1};
    assert_int_equal(to.count, BOIL_TRIGGERS < 6 ? BOIL_TRIGGERS : 6);
    for (size_t i = 0; i < to.count; i++)
        assert_true(to.list[i].steam_kg == sorted[i]);
    boil_triggers same = {.list = {{NULL, 200, 9}}, .count = 1}; /* of two as large the first comes first */
    boil_triggers_move(&to, &same);
    assert_true(to.list[0].time_s == 110 && to.list[1].time_s == 200);
    boil_triggers_free(&to);
    assert_int_equal(to.count, 0);
}

/* Each goes on from a run that stands at its moment or less than a stretch before it, in order of what lets go; that of a spell's
   largest potential from before it was there. */
static void check_bases(const boil_plant *p, const boil_action *actions, size_t count, size_t least)
{
    boil_run_options o = coarse();
    o.closures = BOIL_CLOSURES_SUDDEN;
    boil_schedule s = schedule_with(600, actions, count);
    boil_triggers found = {.count = 0};
    boil_simulation *own = NULL;
    boil_history h;
    assert_int_equal(boil_trigger_watch(&own, p, &s, &o, &found, &h), BOIL_OK);
    assert_true(found.count >= least);
    for (size_t i = 0; i < found.count; i++) {
        assert_true(boil_simulation_at(found.list[i].base).time_s <= found.list[i].time_s);
        assert_true(i == 0 || found.list[i].steam_kg <= found.list[i - 1].steam_kg);
    }
    boil_triggers_free(&found);
    boil_simulation_free(own);
    boil_history_free(&h);
    boil_schedule_free(&s);
}

/* In a spell that the boil ends, and in one that goes on long after what floats has mixed in. */
static void what_lets_go_begins_before_its_moment(void **state)
{
    (void)state;
    boil_plant p = shallow_plant(), cold = open_plant(17e3);
    const boil_action actions[MOST_ACTIONS] = {hung_plate_action(300, 40), two_gallons_action(330, 60),
                                               hung_plate_action(395, 10)};
    check_bases(&p, actions, MOST_ACTIONS, 2);
    cold.tank.depth_m = 0.86;
    cold.charge.temperature_K = CELSIUS(120);
    cold.afloat = (boil_water_afloat){5, CELSIUS(30)};
    check_bases(&cold, NULL, 0, 1);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_calm_bath_is_judged_by_four_runs),
        cmocka_unit_test(a_run_cut_while_water_floats_goes_on),
        cmocka_unit_test(what_met_a_quiet_bath_is_followed_to_its_boil),
        cmocka_unit_test(another_drift_is_held_against_the_usual),
        cmocka_unit_test(a_load_through_water_is_judged_held_back_as_well),
        cmocka_unit_test(what_the_graver_curve_hides_is_looked_at_with_the_own),
        cmocka_unit_test(mild_runs_are_made_where_they_could_take_certainty),
        cmocka_unit_test(runs_of_slow_heat_are_made_where_anything_floats),
        cmocka_unit_test(what_is_due_at_the_end_is_done),
        cmocka_unit_test(one_run_of_a_set_keeps_its_rows),
        cmocka_unit_test(the_least_freeboard_is_that_of_the_gravest),
        cmocka_unit_test(what_lets_go_begins_before_its_moment),
        cmocka_unit_test(a_set_of_no_case_is_refused),
        cmocka_unit_test(the_largest_moments_are_kept),
    };
    return cmocka_run_group_tests_name("run set", tests, NULL, NULL);
}
