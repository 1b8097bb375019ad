/* The rest of a shift as a scenario of its own, from what [now] says: each number by hand from the words. It is 7:00 of a shift from 6:00. */
#include "support/complained.h"
#include "support/scratch.h"

#include <string.h>

#include "support/close.h"

#include "commands/plan/rest.h"
#include "reading/source.h"
#include "scenario/keys.h"

static const char head[] =
    "start = 6:00\ntimes = by the clock\n[tank]\nshape = box\nlength = 72 in\nwidth = 36 in\ndepth = 30 in\nlevel = 20 in\n"
    "positions = 2\n[heat]\nsource = gas\ninput = 330 kBtu/h\n[room]\ntemperature = 75 degF\n[breaks]\n7:30 to "
    "7:40\n[plan]\nend = "
    "9:00\n[jobs]\nframes 90 kg, plate 6 mm, 9 pieces, for 15 min, from 6:30, due 8:00, may split, basket 4 kg\n"
    "angles 60 kg, plate 6 mm, for 15 min, from 7:10, may split\npins 20 kg, bar 20 mm, for 20 min to 30 min, due 7:30\n"
    "covers 10 kg, plate 3 mm, for 15 min, from 8:00\nshims 5 kg, plate 3 mm, for 15 min\n[bath]\nsalts = 80 % NaOH, 20 % "
    "NaNO3\n"
    "boiling point = 140 degC\n";

static const char now[] =
    "[now]\nclock = 7:00\nreads = 142 degC\nboils = yes\nlevel = 500 mm\n"
    "in the tank = pins + frames 2/3 since 6:45, out by 7:05\nout = frames 1/3, angles 1/4\nwithdrawn = shims\n"
    "urgent = covers by 7:50\n";

/* What was read, and what it leaves. */
typedef struct {
    scenario s;
    plan_rest rest;
    boil_outcome result;
    bool good;
} resumed;

static void begin(resumed *r, const char *bath, const char *lines)
{
    messages m;
    FILE *f = fopen(scratch_path, "w");
    assert_non_null(f);
    fprintf(f, "%s%s%s", head, bath, lines);
    fclose(f);
    messages_init(&m);
    assert_int_equal(scenario_read(scratch_path, &r->s, &m), BOIL_OK);
    messages_free(&m);
    r->good = plan_rest_of(&r->s, &r->rest, &r->result);
}

static void end(resumed *r)
{
    plan_rest_free(&r->rest);
    scenario_free(&r->s);
}

static void expect_job(const boil_plan_job *j, double mass_kg, double pieces, double earliest_s, double due_s)
{
    assert_close(j->load.mass_kg, mass_kg, 1e-12, 0);
    assert_true(isnan(pieces) ? !(j->load.pieces > 0) : j->load.pieces == pieces);
    assert_close(j->earliest_s, earliest_s, 1e-12, 0);
    assert_true(isinf(due_s) ? isinf(j->due_s) : fabs(j->due_s - due_s) < 1e-9);
}

/* A third of the frames and three quarters of the angles; what hangs, is out or is withdrawn is gone. */
static void what_is_left_of_jobs_counts_from_now(void **state)
{
    (void)state;
    resumed r;
    begin(&r, "", now);
    assert_true(r.good);
    const scenario_jobs *left = &r.rest.scenario.jobs;
    assert_int_equal(left->count, 3);
    expect_job(&left->list[0].job, 30, 3, 0, 3600);
    expect_job(&left->list[1].job, 45, (double)NAN, 600, HUGE_VAL);
    expect_job(&left->list[2].job, 10, (double)NAN, 0, 3000); /* so urgent that it may go in at once */
    assert_true(left->list[0].job.may_split && left->list[2].job.priority == BOIL_PLAN_MUST);
    assert_string_equal(left->list[2].name, "covers");
    assert_true(r.rest.scenario.start_s == 7 * 3600 && r.rest.scenario.plan.end_s == 7200);
    assert_true(r.rest.scenario.schedule.breaks[0].from_s == 1800 && r.rest.scenario.schedule.breaks[0].to_s == 2400);
    end(&r);
}

/* Of nine pieces six are left, or one; of an even job the other half. What is urgent may be said first. */
static void baskets_that_are_left_are_counted(void **state)
{
    (void)state;
    static const char form[] = "[now]\nclock = 7:00\nreads = 142 degC\nboils = yes\nlevel = 500 mm\n";
    static const struct {
        const char *lines;
        double frames_kg, pieces, angles_kg;
        bool may_split;
    } of[] = {{"urgent = frames by 7:50\nout = frames 2/3, angles 2/2\n", 60, 6, 30, true},
              {"out = frames 1/9, frames 2/9, frames 3/9, frames 5/9, frames 6/9, frames 7/9, frames 8/9, frames 9/9\n", 10, 1,
               60, false},
              {"out = frames 1/3, frames 2/3, angles 1/3\nurgent = covers by 8:30", 30, 3, 40, true},
              {"out = frames 1/4, frames 2/4, frames 3/4\n", 20, 2, 60, true}};
    for (size_t i = 0; i < sizeof of / sizeof of[0]; i++) {
        char lines[400];
        resumed r;
        snprintf(lines, sizeof lines, "%s%s", form, of[i].lines);
        begin(&r, "", lines);
        assert_true(r.good && r.rest.scenario.jobs.count == 5);
        expect_job(&r.rest.scenario.jobs.list[0].job, of[i].frames_kg, of[i].pieces, 0, i == 0 ? 3000 : 3600);
        expect_job(&r.rest.scenario.jobs.list[1].job, of[i].angles_kg, (double)NAN, 600, HUGE_VAL);
        assert_int_equal(r.rest.scenario.jobs.list[0].job.may_split, of[i].may_split);
        assert_true(r.rest.scenario.jobs.list[3].job.earliest_s == 3600); /* which its due time allows, urgent or not */
        end(&r);
    }
}

static void what_hangs_counts_from_now(void **state)
{
    (void)state;
    resumed r;
    begin(&r, "", now);
    const boil_plan_under_way *w = &r.rest.under_way;
    assert_true(w->count == 2 && w->dips == 1);
    assert_close(w->set_K, 413.15, 1e-9, 0);
    for (size_t i = 0; i < 2; i++)
        assert_true(w->hung[i].since_s == -900 && w->hung[i].out_s == 300 && w->hung[i].dip == 0);
    assert_true(w->hung[0].least_s == 1200 && w->hung[0].most_s == 1800 && w->hung[1].most_s == 1800);
    assert_close(w->hung[0].load.mass_kg, 20, 1e-12, 0);
    assert_close(w->hung[1].load.mass_kg, 30, 1e-12, 0);
    assert_close(w->hung[1].load.basket_kg, 4, 1e-12, 0);
    end(&r);
}

/* Boiling it is as it reads; else as it boiled last, or as the shift began, and as warm as it reads. */
static void the_bath_is_as_it_was_read(void **state)
{
    (void)state;
    static const char quiet[] = "[now]\nclock = 7:00\nreads = 130 degC\nboils = no\nlevel = 500 mm\n",
                      last[] = "[now]\nclock = 7:00\nreads = 130 degC\nboils = no\nlevel = 500 mm\nlast boiled = 141 degC\n";
    const struct {
        const char *lines;
        double boils_K, is_K;
    } of[] = {{now, 415.15, 0}, {quiet, 413.15, 403.15}, {last, 414.15, 403.15}};
    for (size_t i = 0; i < 3; i++) {
        resumed r;
        begin(&r, "", of[i].lines);
        assert_true(r.good);
        const boil_plant *p = &r.rest.scenario.plant;
        assert_int_equal(p->charge.basis, BOIL_INITIAL_BY_BOILING_POINT);
        assert_close(p->charge.value, of[i].boils_K, 1e-9, 0);
        assert_close(p->charge.temperature_K, of[i].is_K, 1e-9, 0);
        assert_close(p->tank.level_m, 0.5, 1e-12, 0);
        assert_close(r.rest.under_way.set_K, 413.15, 1e-9, 0);
        end(&r);
    }
}

static void refused(const char *bath, const char *lines, const char *why)
{
    complained c;
    resumed r;
    complained_begin(&c);
    begin(&r, bath, lines);
    const char *said = complained_end(&c);
    assert_true(!r.good && r.result == BOIL_OK);
    if (strstr(said, why) == NULL)
        fail_msg("%s", said);
    end(&r);
}

static void what_cannot_be_planned_on_is_refused(void **state)
{
    (void)state;
    refused("", "", "'--now' needs a section [now]");
    refused("", "[now]\nclock = 7:00\nreads = 140 degC\nboils = no\nlevel = 500 mm\n",
            ":30:9: at what it reads this bath boils");
    refused("", "[now]\nclock = 7:00\nreads = 90 degC\nboils = yes\nlevel = 500 mm\n",
            "there is no bath of these salts that boils");
    refused("water afloat = 1 l\n", now, "its bath begins with water afloat");
    refused("",
            "[now]\nclock = 7:00\nreads = 142 degC\nboils = yes\nlevel = 500 mm\nout = frames, angles, pins, covers, shims\n",
            "nothing of its list of jobs is left to go in");
}

/* Of another bath of the same text: all is that one's but what was read. */
static void a_draw_keeps_what_was_read(void **state)
{
    (void)state;
    resumed r;
    boil_plant p;
    boil_plan_job jobs[5];
    begin(&r, "", now);
    scenario drawn = r.s;
    drawn.plant.heater.efficiency = 0.5;
    drawn.plant.tank.level_m = 0.4;
    drawn.plant.charge.value = 410;
    plan_rest_drawn(&r.rest, &drawn, &p, jobs);
    assert_true(p.heater.efficiency == 0.5 && p.tank.level_m == r.rest.scenario.plant.tank.level_m);
    assert_close(p.charge.value, 415.15, 1e-9, 0);
    for (size_t i = 0; i < 3; i++)
        expect_job(&jobs[i], r.rest.scenario.jobs.list[i].job.load.mass_kg, i == 0 ? 3 : (double)NAN,
                   r.rest.scenario.jobs.list[i].job.earliest_s, r.rest.scenario.jobs.list[i].job.due_s);
    end(&r);
}

static void keys_that_now_reads_are_named(void **state)
{
    (void)state;
    static const char *const read[][2] = {{"tank", "level"},         {"tank", "freeboard"}, {"bath", "boiling point"},
                                          {"bath", "salt fraction"}, {"bath", "strength"},  {"bath", "temperature"}};
    size_t found = 0;
    for (size_t i = 0; i < sizeof read / sizeof read[0]; i++)
        assert_true(plan_rest_reads(key_named(read[i][0], read[i][1])));
    for (size_t i = 0; i < key_count(); i++)
        found += plan_rest_reads(key_at(i));
    assert_int_equal(found, sizeof read / sizeof read[0]);
    assert_false(plan_rest_reads(NULL));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_is_left_of_jobs_counts_from_now), cmocka_unit_test(baskets_that_are_left_are_counted),
        cmocka_unit_test(what_hangs_counts_from_now),           cmocka_unit_test(the_bath_is_as_it_was_read),
        cmocka_unit_test(what_cannot_be_planned_on_is_refused), cmocka_unit_test(a_draw_keeps_what_was_read),
        cmocka_unit_test(keys_that_now_reads_are_named),
    };
    return cmocka_run_group_tests_name("rest", tests, scratch_begin, scratch_end);
}
