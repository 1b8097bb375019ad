/* A replay against the dense trace of the run that it is made of: what is shown anywhere lies within the bounds, its highest level is
   the run's own, and what the band says holds for every run of the set. */
#include "support/scenario_run.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>

#include "case/closures.h"
#include "replay/abreast.h"
#include "replay/replay.h"
#include "support/shipped.h"

typedef struct {
    scenario s;
    carried_out o;
    replay r;
} replayed;

static void replay_it(replayed *p)
{
    boil_run_options options = replay_options(&p->s.schedule);
    assert_int_equal(carried_out_of(&p->s, &options, &p->o), 0);
    assert_true(replay_of(&p->o, UNITS_US, 1, &p->r));
}

static void make(replayed *p, const char *name)
{
    read_shipped(name, &p->s);
    replay_it(p);
}

static void unmake(replayed *p)
{
    replay_free(&p->r);
    carried_out_free(&p->o);
    scenario_free(&p->s);
}

static void assert_faithful(const replayed *p)
{
    const boil_history *h = &p->o.central;
    for (size_t i = 0; i < h->rows_count; i++) {
        const boil_row *row = &h->rows[i];
        if (i + 1 < h->rows_count && h->rows[i + 1].time_s == row->time_s)
            continue; /* before a jump: shown is what comes after it */
        boil_row shown = replay_at(&p->r, row->time_s);
        assert_close(shown.level_m, row->level_m, 0, 5.01e-4);
        assert_close(shown.still_level_m, row->still_level_m, 0, 5.01e-4);
        assert_close(shown.temperature_K, row->temperature_K, 0, 0.0301);
        assert_close(shown.boiling_point_K, row->boiling_point_K, 0, 0.0301);
        assert_close(shown.steam_kg_s, row->steam_kg_s, 0, fmax(2.01e-4, 0.0201 * row->steam_kg_s));
        assert_close(shown.layer_kg, row->layer_kg, 0, fmax(0.0201, 0.0101 * row->layer_kg));
        assert_int_equal(shown.boiling, row->boiling);
    }
}

static void what_is_shown_is_what_was(void **state)
{
    static const char *const names[] = {"tall-narrow.bath", "salt-slug.bath"};
    assert_faithful(*state);
    for (size_t i = 0; i < sizeof names / sizeof names[0]; i++) {
        replayed p;
        make(&p, names[i]);
        assert_faithful(&p);
        assert_in_range(p.r.rows_count, 2, p.o.central.rows_count / 4);
        unmake(&p);
    }
}

/* The rows lie close where it rises, so that the highest of them is the run's own extreme to the millimetre in half a metre. */
static void the_highest_is_the_runs_own(void **state)
{
    const replayed *p = *state;
    double most_m = 0;
    for (size_t i = 0; i < p->r.rows_count; i++)
        most_m = fmax(most_m, p->r.rows[i].level_m);
    assert_close(most_m, p->o.central.summary.level_max_m.value, 0.01, 0);
    assert_close(p->r.tide[p->r.tide_count - 1].likely_m, most_m, 0, 2.1e-3);
}

/* What is possible is no less than what is likely, also where the band is thinned to a few millimetres. */
static void what_is_likely_is_possible(void **state)
{
    static const char *const names[] = {"water-while-boiling.bath", "salt-sifted.bath", "lessons/04-drum-of-salt.bath"};
    (void)state;
    for (size_t i = 0; i < sizeof names / sizeof names[0]; i++) {
        replayed p;
        make(&p, names[i]);
        assert_true(p.r.tide_count > 0);
        for (size_t k = 0; k < p.r.tide_count; k++)
            assert_true(p.r.tide[k].possible_m >= p.r.tide[k].likely_m);
        unmake(&p);
    }
}

/* Of each run but the mild ones the highest level lies within the band at the moment that answers to it. */
static void the_band_holds_every_run(void **state)
{
    const replayed *p = *state;
    size_t looked_at = 0;
    for (size_t i = 0; i < p->o.set.count; i++) {
        const boil_run_of_set *other = &p->o.set.other[i];
        if (other->refused || boil_closures_is_mild(other->closures))
            continue;
        abreast clock = abreast_of(&p->o.central, &other->history);
        for (double t = 0; t <= p->o.central.end_s; t += 7) {
            double other_s = abreast_other(&clock, t);
            size_t k = 0;
            while (k + 1 < other->history.rows_count && other->history.rows[k + 1].time_s <= other_s)
                k++;
            assert_true(other->history.rows[k].level_m <= replay_band_at(&p->r, t).high_m * 1.005 + 3.1e-3);
            looked_at++;
        }
        abreast_free(&clock);
    }
    assert_true(looked_at > 500);
}

/* The boil of each other run comes back at the same moment of the likely run's clock. */
static void boils_come_back_abreast(void **state)
{
    const replayed *p = *state;
    const boil_quiet_result *mine = &p->o.central.quiet[0];
    for (size_t i = 0; i < p->o.set.count; i++) {
        const boil_quiet_result *theirs = abreast_spell(&p->o.central, 0, &p->o.set.other[i].history);
        if (theirs == NULL || !(theirs->end_s > theirs->start_s))
            continue;
        abreast clock = abreast_of(&p->o.central, &p->o.set.other[i].history);
        assert_close(abreast_other(&clock, mine->end_s), theirs->end_s, 0, 1e-9);
        for (size_t k = 1; k < clock.count; k++)
            assert_true(clock.moments[k].likely_s > clock.moments[k - 1].likely_s &&
                        clock.moments[k].other_s > clock.moments[k - 1].other_s);
        abreast_free(&clock);
    }
}

static const replay_event *event_with(const replay *r, const char *words)
{
    for (size_t i = 0; i < r->events_count; i++)
        if (strstr(r->events[i].text.text, words) != NULL)
            return &r->events[i];
    return NULL;
}

/* It slows down where it comes over the rim and nowhere in the careful twin; and says so in the order of time. */
static void it_slows_down_where_it_matters(void **state)
{
    const replayed *quiet = *state;
    replayed boiling;
    make(&boiling, "water-while-boiling.bath");
    double over_s = quiet->o.central.summary.overflow_s;
    assert_int_equal(boiling.r.spans_count, 0);
    assert_int_equal(quiet->r.spans_count, 1);
    assert_true(quiet->r.spans[0].from_s + 2 <= over_s && over_s + 2 <= quiet->r.spans[0].to_s);
    assert_close(quiet->r.spans[0].speed, (quiet->r.spans[0].to_s - quiet->r.spans[0].from_s) / 12, 1e-9, 0);
    const replay_event *over = event_with(&quiet->r, "over the rim. At the most"),
                       *under = event_with(&quiet->r, "below the rim again");
    assert_non_null(over);
    assert_non_null(under);
    assert_true(over->grave && !under->grave && under->time_s > over->time_s);
    assert_close(over->time_s, over_s, 0, 0.2);
    assert_null(event_with(&boiling.r, "over the rim"));
    for (size_t i = 1; i < quiet->r.events_count; i++)
        assert_true(quiet->r.events[i].time_s >= quiet->r.events[i - 1].time_s);
    unmake(&boiling);
}

/* Of a bath that stands too high from the start it is said at the start, and once. */
static void too_high_from_the_start_is_said_then(void **state)
{
    (void)state;
    replayed p;
    read_shipped("water-while-boiling.bath", &p.s);
    p.s.plant.limits.freeboard_m = 9 * 0.0254; /* it begins 7.1 in below the rim */
    replay_it(&p);
    const replay_event *limit = event_with(&p.r, "Less than 9.0 in to the rim.");
    assert_non_null(limit);
    assert_true(limit->grave && limit->time_s == 0 && limit == &p.r.events[0]);
    for (size_t i = 1; i < p.r.events_count; i++)
        assert_null(strstr(p.r.events[i].text.text, "Less than"));
    unmake(&p);
}

/* The state in words says what may come before it comes, and nothing once it has. */
static void words_warn_before(void **state)
{
    const replayed *p = *state;
    double over_s = p->o.central.summary.overflow_s;
    assert_null(strstr(replay_state(&p->r, 200).text, "lets go"));
    assert_non_null(strstr(replay_state(&p->r, over_s - 5).text, "quiet"));
    assert_non_null(strstr(replay_state(&p->r, over_s - 5).text, "if it lets go now: over the rim"));
    assert_non_null(strstr(replay_state(&p->r, over_s + 0.5).text, "over the rim"));
    assert_null(strstr(replay_state(&p->r, over_s + 60).text, "lets go"));
}

/* A finding of danger that is likely or certain stands out; no warning does, and none that is only possible. */
static void only_danger_that_is_likely_is_grave(void **state)
{
    static const char *const names[] = {"water-while-quiet.bath", "water-while-boiling.bath"};
    (void)state;
    size_t told[2] = {0};
    for (size_t i = 0; i < sizeof names / sizeof names[0]; i++) {
        replayed p;
        make(&p, names[i]);
        for (size_t k = 0; k < p.r.events_count; k++) {
            const replay_event *e = &p.r.events[k];
            bool danger = strncasecmp(e->text.text, "danger (", 8) == 0,
                 warning = strncasecmp(e->text.text, "warning (", 9) == 0;
            if (!danger && !warning)
                continue;
            bool grave = danger && strstr(e->text.text, "(possible)") == NULL;
            assert_int_equal(e->grave, grave);
            told[grave]++;
        }
        unmake(&p);
    }
    assert_true(told[0] > 0 && told[1] > 0);
}

/* Of a bath that nothing is done to a row a second is enough: closer they lie only where the surface moves fast. */
static void rows_lie_close_only_where_it_moves(void **state)
{
    const replayed *p = *state;
    const boil_history *h = &p->o.central;
    double first_s = p->s.schedule.actions[0].time_s;
    size_t calm = 0;
    assert_true(first_s > 60);
    while (h->rows[calm].time_s < first_s)
        calm++;
    print_message("%zu rows in %g s, then %zu in %g s\n", calm, first_s, h->rows_count - calm, h->end_s - first_s);
    assert_true((double)calm <= first_s + 1);
    assert_true((double)(h->rows_count - calm) > h->end_s - first_s + 20); /* it comes over the rim at twenty a second */
}

/* What may be left out of a page, as replay.c has it: a row that lies off the line between its neighbours by a twenty-fifth more is
   kept, and one by as much less is not. */
static void what_is_left_out_is_not_seen(void **state)
{
    static const struct {
        size_t where;
        double within;
    } seen[] = {{offsetof(boil_row, level_m), 5e-4},       {offsetof(boil_row, still_level_m), 5e-4},
                {offsetof(boil_row, temperature_K), 0.03}, {offsetof(boil_row, boiling_point_K), 0.03},
                {offsetof(boil_row, steam_kg_s), 2e-4},    {offsetof(boil_row, layer_m), 2e-5},
                {offsetof(boil_row, layer_kg), 0.02},      {offsetof(boil_row, void_fraction), 0.005},
                {offsetof(boil_row, left_m), 2e-3},        {offsetof(boil_row, coldest_load_K), 0.5},
                {offsetof(boil_row, heater_W), 100},       {offsetof(boil_row, undissolved_kg), 0.1},
                {offsetof(boil_row, crystals_kg), 0.1}};
    (void)state;
    for (size_t i = 0; i < sizeof seen / sizeof seen[0]; i++)
        for (int more = 0; more < 2; more++) {
            boil_row rows[3] = {{.time_s = 0}, {.time_s = 1}, {.time_s = 2}};
            const double off = seen[i].within * (more ? 1.04 : 0.96);
            bool kept[3] = {false};
            memcpy((char *)&rows[1] + seen[i].where, &off, sizeof off);
            const replay r = {.rows = rows, .rows_count = 3, .slack = 1};
            const thin_table table = replay_rows_table(&r);
            thin_mark(&table, kept);
            assert_int_equal(kept[1], more);
        }
}

static int begin(void **state)
{
    replayed *p = calloc(1, sizeof *p);
    assert_non_null(p);
    make(p, "water-while-quiet.bath");
    *state = p;
    return 0;
}

static int end(void **state)
{
    unmake(*state);
    free(*state);
    return 0;
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_is_shown_is_what_was),
        cmocka_unit_test(the_highest_is_the_runs_own),
        cmocka_unit_test(what_is_likely_is_possible),
        cmocka_unit_test(the_band_holds_every_run),
        cmocka_unit_test(boils_come_back_abreast),
        cmocka_unit_test(it_slows_down_where_it_matters),
        cmocka_unit_test(too_high_from_the_start_is_said_then),
        cmocka_unit_test(words_warn_before),
        cmocka_unit_test(only_danger_that_is_likely_is_grave),
        cmocka_unit_test(rows_lie_close_only_where_it_moves),
        cmocka_unit_test(what_is_left_out_is_not_seen),
    };
    return cmocka_run_group_tests(tests, begin, end);
}
